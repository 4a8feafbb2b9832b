#pragma once
// The recognizer's real rules, loaded once for all tests of reading.

#include "reading/recognizer.h"

namespace reading_test {

const wearline::RecognizerRules& rules();
/// The text of a file of this repository.
std::string file_text(const std::string& path);

} // namespace reading_test
