#pragma once
// What the dates of a whole paper are: the day it was written, the day the home was left.

#include "reading/paper.h"
#include "reading/statement.h"

namespace wearline {

/// Adds to the dates that the rows told of themselves: those whose word stands behind them or ends the row above; those
/// without a year, which take it from the paper's own full dates; and the day of the paper, where no word tells it.
void settle_dates(const StatementPaper& paper, const RecognizerRules& rules, std::vector<ReadDate>& dates);

} // namespace wearline
