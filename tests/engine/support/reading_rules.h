#pragma once
// The recogniser's real rules, loaded once for all tests of reading.

#include "reading/recogniser.h"

namespace reading_test {

const wearline::RecogniserRules& rules();
/// The text of a file of this repository.
std::string file_text(const std::string& path);

} // namespace reading_test
