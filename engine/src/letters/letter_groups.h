#pragma once
// The charges of a tenant's letter, grouped by the reason why they are disputed: one short paragraph a group.

#include "letters/letter_claim.h"

namespace wearline {

/// Charges that are disputed for one reason: wording keys "letter.group.<ground>" and "letter.ground.<ground>".
struct DisputeGroup {
  std::string_view ground;
  std::vector<std::size_t> lines;
};
/// What speaks against a charge that is not granted in full.
std::string_view ground_of(const Draft& d, std::size_t line, Stand stand);
/// Rules against the whole list that a letter says before it comes to the charges.
std::vector<const Rule*> said_of_all(const Draft& d, const Claim& claim);
/// Charges not granted in full, strongest ground first; charges that are too high stand alone.
std::vector<DisputeGroup> groups_of(const Draft& d, const Claim& claim);

/// The paragraph on a group, its law and guide included. A rule that `said` holds is not said again; those that are
/// said are added.
std::string group_text(const Draft& d, const Claim& claim, const DisputeGroup& group, std::vector<const Rule*>& said);

/// The arithmetic of a charge as sentences, in whole dollars. `sum_said`: what it comes to stands there already, to the
/// cent.
std::string arithmetic(const Draft& d, std::size_t line, bool sum_said = false);

/// What would have to be shown, "for charge 2: the bill", for the groups that are open; charges that want the same
/// stand together. Of the charges in `age_asked` their age is asked for as well.
std::vector<std::string> shows(const Draft& d, const Claim& claim, const std::vector<DisputeGroup>& groups,
                               const std::vector<std::size_t>& age_asked = {});

/// Charges that the sender owns to and whose bill is still asked for: whoever owns to damage may see the bill before it
/// is paid.
std::vector<std::size_t> bills_awaited(const Draft& d, const Claim& claim);

/// The table of charges: charged, asked back, with a row of sums. `only_disputed`: those alone of which something is
/// asked back.
void add_charges_table(Draft& d, const Claim& claim, bool only_disputed, std::string_view last_column);

} // namespace wearline
