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

/// One fault a line on standard error: the file it is about if given, place, sentence, code.
void print_faults(const Faults& faults, const std::filesystem::path& file = {});

/// A JSON object with the member "file" put first; as it is where `file` is empty.
std::string with_file(const std::string& object, const std::filesystem::path& file);

/// Whether standard output, or standard error, is a terminal that takes colors (https://no-color.org).
bool on_terminal(bool error_stream = false);

} // namespace wearline::cli
