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
/// A charge is settled where the guide, the law or the sender leaves no doubt who answers for it and what is left to
/// reckon is small beside the charge (rules/letters.json, settledPercent).
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
  Money sum;                                ///< what is asked for
  Money kept() const { return deposit.value_or(Money()) - paid; }
  bool disputes() const; ///< some charge is not granted in full
  bool open() const;     ///< what is fair of some charge hangs on something that is not known
};
Claim claim_of(const Draft& d);

/// Whether the sum is worth a letter (rules/letters.json, smallestSum).
bool worth_a_letter(const Claim& claim, const Draft& d);

/// Positions of the lines with this stand.
std::vector<std::size_t> lines_that_are(Stand stand, const Claim& claim);

} // namespace wearline
