#pragma once
// The figures inside the text of a charge: "3 hours at $25.00 = 75.00", "sales tax 8.25%".

#include "values/money.h"

#include <optional>
#include <string_view>

namespace wearline {

/// A count times a price, as a charge's text gives it. `total` is the sum it names after "=", if any.
struct TextProduct {
  Share count; ///< exact, at most three decimals
  Money price, product;
  std::optional<Money> total;
};

/// The one product of a text; empty where there is none, or more than one, where other sums stand beside it, or where
/// nothing shows that a number is a price (a "$", two decimals, "at", "@", "each" or "per"): "8 x 10 rug" is no
/// product.
std::optional<TextProduct> product_in(std::string_view text);

/// The one percentage of a text ("8.25%" is 33/400); empty where there is none or more than one, or it is 100 or more.
std::optional<Share> percentage_in(std::string_view text);

} // namespace wearline
