#pragma once
// What money that was paid for one purpose (a pet, keys, cleaning) is there for.

#include "case/case.h"
#include "judging/subject.h"

#include <string_view>

namespace wearline {

/// Whether a charge is what money of this kind was paid for: a pet's damage, keys, cleaning.
Tri serves(std::string_view kind, const Line& line, const Subject& subject);

} // namespace wearline
