#pragma once
// What the sender of a tenant's letter asks for: where it stands on each charge, and the sum that follows.

#include "letters/letter_draft.h"

namespace wearline {

/// What a letter does with a charge.
enum class Stand {
  undisputed, ///< the whole charge is fair, whatever the open facts
  limited,    ///< settled: a part is fair
  refused,    ///< settled: nothing of it is fair
  open,       ///< what is fair hangs on something that is not known: the letter agrees to nothing
  credit,     ///< a sum in the tenant's favor
  no_amount   ///< the charge has no amount
};
/// Whether a field of a charge was filled from its own words: what the landlord's list says, and no knowledge of the
/// sender's.
bool said_by_the_list(const LineAssessment& judged, std::string_view field);

/// A charge is settled where the guide, the law or the sender leaves no doubt who answers for it and what is left to
/// reckon is small beside the charge (rules/letters.json, settledPercent). What the list alone says against the tenant
/// settles nothing for the tenant.
Stand stand_of(const Line& line, const LineAssessment& judged, const LetterRules& rules);

struct LineStand {
  Stand stand = Stand::open;
  Money granted;    ///< what the sender does not dispute; a credit is less than nothing
  Money back;       ///< what is asked back of it
  bool own = false; ///< the sender entered that it is theirs: only then a letter says that it is not disputed
};

struct Claim {
  std::vector<LineStand> lines;
  std::optional<Money> deposit;             ///< all deposits but rent paid ahead; empty: not known
  Money interest;                           ///< the part that is certain
  Money granted;                            ///< of all charges
  Money paid;                               ///< paid back, or to come back by the statement
  bool paid_known = false;                  ///< it was entered that it was paid (nothing included)
  bool paid_stated = false;                 ///< not entered, but the statement says that it comes back
  Money on_merits;                          ///< deposit and interest, less what is granted and paid
  const ForfeitResult* forfeited = nullptr; ///< the rule under which nothing may be kept
  bool perhaps_forfeited = false;           ///< nothing may be kept, unless something that is open speaks against it
  Money sum;                                ///< what is asked for
  bool bill = false; ///< it answers a bill for more than the deposit: nothing of that is granted that is disputed
  /// All that was kept is asked for first; the charges come after that.
  bool keeps_nothing() const { return forfeited || perhaps_forfeited; }
  Money kept() const { return deposit.value_or(Money()) - paid; }
  bool disputes() const; ///< some charge is not granted in full
  bool open() const;     ///< what is fair of some charge hangs on something that is not known
};
Claim claim_of(const Draft& d);

/// Whether a thing was not given back: that is plain, and so is about what it costs.
bool not_given_back(const LineAssessment& judged);
/// Whether it is said what was wrong: nobody then has to ask for that again.
bool names_harm(const LineAssessment& judged);
/// Whether it is a charge for taking away what was left.
bool is_removal(const LineAssessment& judged);
/// Whether a bill for a charge came: with it, or with the list.
bool bill_came(const Draft& d, std::size_t line);

/// A sum below it is not worth a sentence, nor a charge (common practice, no source).
inline Money small_change() { return Money::cents(100); }

/// Whether a charge is a debt for days after the tenant left: what of it is owed hangs on how the home was let again,
/// which the landlord has to show.
/// Of these charges those that the sender says are not on the record of the move-out; a record there was.
std::vector<std::size_t> not_on_record(const Draft& d, const std::vector<std::size_t>& lines);

bool days_after_leaving(const Draft& d, std::size_t line);

/// What is still to come back, and what the tenant may owe beyond the deposit: the totals of the assessment without the
/// rent paid ahead that they count as held. Empty where the deposit is not known.
std::optional<Range<Money>> still_due(const Draft& d, const Claim& claim);
std::optional<Range<Money>> owed_beyond(const Draft& d, const Claim& claim);

/// What the sender does not dispute of these charges.
Money granted_of(const std::vector<std::size_t>& lines, const Claim& claim);
/// Whether the sum is worth a letter (rules/letters.json, smallestSum).
bool worth_a_letter(const Claim& claim, const Draft& d);

/// Positions of the lines with this stand.
std::vector<std::size_t> lines_that_are(Stand stand, const Claim& claim);

} // namespace wearline
