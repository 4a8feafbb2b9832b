#pragma once
// Sums with more digits than any sum has here.

#include <string_view>

namespace wearline {

/// "$12345678901.00": whether a row holds what looks like a sum and is too large to be one.
bool holds_too_large_a_sum(std::string_view row);

} // namespace wearline
