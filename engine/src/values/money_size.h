#pragma once
// Amounts that are too large to be read as money.

#include "values/money.h"

namespace wearline {

/// Whether a text is an amount in all but its size.
inline bool too_large_for_money(std::string_view text) {
  const std::size_t point = text.find_first_not_of("0123456789");
  const std::size_t whole = point == std::string_view::npos ? text.size() : point;
  return whole > 10 && Money::parse(text.substr(whole - 1)).has_value();
}

} // namespace wearline
