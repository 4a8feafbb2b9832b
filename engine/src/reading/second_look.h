#pragma once
// Where a paper's own sums do not come out, numbers that were passed over are looked at again: bare ones in sentences,
// sums in remarks. Each may be a charge, at a cost, so that it becomes one only where the sums then come out.

#include "reading/closing.h"
#include "reading/paper.h"
#include "reading/reading_weights.h"

namespace wearline {

/// Appends an entry for each number of the paper that no entry holds and that may be a sum; false if there is none.
bool add_passed_over(const StatementPaper& paper, const RecognizerRules& rules, Entries& out);

/// Where the paper has no other charges: asks about the bare numbers beside which a thing or work is named.
void ask_passed_over(const StatementPaper& paper, const RecognizerRules& rules, Entries& entries,
                     WholeReading& reading);

/// Where charges and sums of the account come out but one of its sums was not found: the number of the paper that it
/// has to be, if there is one.
void name_lacking(const StatementPaper& paper, const RecognizerRules& rules, Entries& entries, WholeReading& reading);

} // namespace wearline
