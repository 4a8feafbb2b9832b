#pragma once
// Reading the walk through the home of a case. A program that links its own definition instead (wasm/judge.cpp) leaves
// it unread: nothing of it is judged, letters alone speak of it.

#include "case/case_reader.h"
#include "case/cursor.h"

namespace wearline {

/// What was seen, with every fault named and placed.
void read_walk_through(const Cursor& c, WalkThrough& out, const CaseNames& names);

} // namespace wearline
