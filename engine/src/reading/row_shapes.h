#pragma once
// Whether rows are sentences or lines of a list, by their shape: stops, length, where the sums stand.

#include "reading/paper.h"

#include <optional>
#include <vector>

namespace wearline {

/// Where the numbered paragraph that begins with the row ends ("4. The deposit was $1,850.00. This leaves / $1,228.20
/// for Tenant."); the next row if it is none.
std::size_t paragraph_end(const std::vector<PaperRow>& rows, std::size_t row, std::size_t last,
                          const RecognizerRules& rules);
/// The rows from `first` to `last` (exclusive) flow as sentences.
bool reads_as_prose(const std::vector<PaperRow>& rows, std::size_t first, std::size_t last,
                    const RecognizerRules& rules);
/// No row of the block has columns: what follows a table is no part of it.
bool one_cell_rows(const std::vector<PaperRow>& rows, std::size_t first, std::size_t last);
/// Sentences, or sums strung together in one line, among the rows of a list without column heads.
bool is_sentence(const PaperRow& row, const RecognizerRules& rules);

/// A count and a price side by side, and no sum: "Blinds 3 @ 24.00".
struct Product {
  Money amount;
  std::size_t price = 0; ///< the number that is the price of one
};
std::optional<Product> price_times_count(const PaperRow& row); ///< "$18 x 2 for the keys"
std::optional<Product> product_of(const PaperRow& row, const RecognizerRules& rules);

} // namespace wearline
