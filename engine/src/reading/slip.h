#pragma once
// Slips of the pen: what makes one sum of a paper another.

#include "values/money.h"

#include <cstdint>

namespace wearline {

/// What would explain a sum that does not come out.
enum class Slip : std::uint8_t { none, turned_digits, lost_point, left_out };

/// What would make one sum the other: two digits that changed places, a decimal point lost or put too much.
Slip slip_between(Money stated, Money computed);

} // namespace wearline
