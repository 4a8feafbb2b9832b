#pragma once
// The charges in a letter: which are accepted, questioned or open, and the sentences that say why.

#include "letters/letter_draft.h"

namespace wearline {

/// What a letter does with a charge.
enum class Stand {
  accepted,   ///< the whole charge is fair, whatever the open facts
  questioned, ///< less is fair, for certain
  open,       ///< what is fair hangs on a fact that is not known
  credit,     ///< a sum in the tenant's favor
  no_amount   ///< the charge has no amount
};
Stand stand_of(const Line& line, const LineAssessment& judged);

/// Positions of the lines with this stand.
std::vector<std::size_t> lines_that_are(Stand stand, const Assessment& a);

/// Why, in the voice of the tenant ("letter.reason.") or of the landlord ("letter.landlord.reason.").
std::string reason(const Draft& d, std::size_t line, std::string_view voice);

/// The arithmetic of a charge as sentences.
std::string arithmetic(const Draft& d, std::size_t line);

/// The open facts of a charge as requests ("Please tell me when it was put in ..."), dearest first.
std::string requests(const Draft& d, std::size_t line);

/// One paragraph on a charge that is questioned or open.
std::string questioned(const Draft& d, std::size_t line);

/// The table of charges: charged, fair, in question, with a row of sums.
void add_charges_table(Draft& d, std::string_view head_prefix);

/// The table of sums: deposit, interest, fair charges, refund, paid back, still to be paid. `voice`: "letter.sums." or
/// "letter.statement.", how the charges and the refund are called.
void add_sums_table(Draft& d, std::string_view voice);

} // namespace wearline
