#pragma once
// The kinds of letters and papers: one table.

#include <optional>
#include <string_view>
#include <vector>

namespace wearline {

enum class LetterKind {
  question_charges,
  ask_for_documents,
  after_deadline,
  reply_to_demand,
  accept_and_claim_rest,
  second_letter,
  objection,
  forwarding_address,
  demand,
  inspection_request,
  itemized_statement,
  late_statement,
  cover_note,
  adviser_note,
  small_claims_sheet
};
/// "question-charges", ...: the names of options and results.
std::string_view name_of(LetterKind kind);
std::optional<LetterKind> letter_kind(std::string_view name);
/// Every kind, in the order of the list above.
std::vector<LetterKind> letter_kinds();
/// The kinds that a side ("tenant", "adviser", "landlord") may want, in the order of the list above.
std::vector<LetterKind> letter_kinds_of(std::string_view side);

/// What a kind is: whose letter, and whether it leaves the house.
struct KindTraits {
  LetterKind kind = LetterKind::question_charges;
  std::string_view name;
  bool tenant = false, landlord = false;
  bool sent = true;
  std::string_view event = {}; ///< the event of the case that its day of sending is; empty: none of its own
};
const KindTraits& traits_of(LetterKind kind);

/// Whether the letter goes to somebody else; false for sheets that stay with their reader.
bool is_sent(LetterKind kind);

} // namespace wearline
