#pragma once
// What money that was paid for one purpose (a pet, keys, cleaning) is there for.

#include "case/case.h"
#include "judging/subject.h"

#include <array>
#include <string_view>

namespace wearline {

/// The kinds of money that are paid for one purpose.
inline constexpr std::array<std::string_view, 3> purposes = {"pet", "key", "cleaning"};
bool has_purpose(std::string_view kind);

/// Whether a charge is what money of this kind was paid for: a pet's damage, keys, cleaning.
Tri serves(std::string_view kind, const Line& line, const Subject& subject);

} // namespace wearline
