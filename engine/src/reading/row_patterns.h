#pragma once
// What the rows of a paper share and one row alone does not tell: running balances, signs, columns that split the
// others.

#include "reading/entries.h"
#include "reading/reading_weights.h"

namespace wearline {

/// Sets the likeliest role and figure of each entry by the pattern of all. Returns whether a running balance comes out
/// row by row.
bool settle_patterns(Entries& entries, const ReadingWeights& weights);

} // namespace wearline
