#pragma once
// Rows in which the account stands in one line: "Deposit 1,000.00, less 380.75, refund 619.25".

#include "reading/paper.h"

#include <vector>

namespace wearline {

/// One sum of such a row with what its words call it.
struct AccountSum {
  std::size_t number = 0; ///< of the row's numbers
  LabelKind kind = LabelKind::none;
  std::size_t first = 0; ///< the token after the sum before it
};

/// The sums of a row with two or more of them, if every one is called something; else none.
std::vector<AccountSum> account_sums(const PaperRow& row, const RecognizerRules& rules);

} // namespace wearline
