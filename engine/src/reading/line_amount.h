#pragma once
// The sum of one line that stands alone: "3 screens @ 24.00 72.00", "= 118", "no charge".

#include "reading/line_counts.h"

namespace wearline {

struct AmountFound {
  std::optional<Money> amount;
  bool computed = false;          ///< count times price, or two sums together
  std::size_t number = no_number; ///< index of the number it was taken from
};

AmountFound find_amount(const std::vector<Token>& tokens, const std::vector<Mention>& mentions,
                        const std::vector<Number>& numbers, const RecognizerRules& rules);

} // namespace wearline
