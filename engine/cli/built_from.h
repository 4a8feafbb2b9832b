#pragma once
// What this program was built from.

#include <string>

namespace wearline::cli {

/// The engine's version, then each library and the compiler with its own, as their headers tell it: one a line.
std::string versions();

} // namespace wearline::cli
