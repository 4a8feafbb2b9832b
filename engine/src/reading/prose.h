#pragma once
// Sums and dates inside sentences: "my repair man charged $140.00 to patch the wall".

#include "reading/entries.h"
#include "reading/paper.h"

#include <cstddef>
#include <vector>

namespace wearline {

/// Reads the rows as one paragraph, appends its entries and dates, and settles the rows' fates. Sums are numbers with a
/// currency sign or two decimals; a bare number only where a word of the account stands at it.
void read_prose(StatementPaper& paper, const std::vector<std::size_t>& rows, std::size_t section,
                const RecognizerRules& rules, Entries& out);

} // namespace wearline
