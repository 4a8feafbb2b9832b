#pragma once
// What the benchmarks work on.

#include "wearline/engine.h"

#include <string>

namespace bench {

/// The text of a file of this repository. Ends the program if it cannot be read.
std::string file(const char* path);
/// All the rules, loaded anew.
wearline::Rulebook load_rules_again();
/// All the rules, loaded once.
const wearline::Rulebook& rulebook();

} // namespace bench
