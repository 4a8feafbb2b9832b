#pragma once
// Reading the walk through the home of a case.

#include "case/case_names.h"
#include "case/cursor.h"

namespace wearline {

/// What was seen, with every fault named and placed.
void read_walk_through(const Cursor& c, WalkThrough& out, const CaseNames& names);

} // namespace wearline
