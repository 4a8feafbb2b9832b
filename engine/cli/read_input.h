#pragma once
// Files and standard input as text.

#include "wearline/fault.h"

#include <filesystem>
#include <string>
#include <variant>

namespace wearline::cli {

/// The bytes of a file, or of standard input where `name` is "-". Faults: `cannot-read`. No more than one byte over
/// `longest_text` is read, so that an endless input ends and the engine can refuse it.
std::variant<std::string, Faults> read_input(const std::filesystem::path& name);

/// One fault a line on standard error: place, sentence, code.
void print_faults(const Faults& faults);

} // namespace wearline::cli
