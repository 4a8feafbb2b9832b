#pragma once
// The commands of `wearline`. Each adds itself to the program and, when chosen, leaves the exit status in `status`.

#include <CLI/CLI.hpp>

namespace wearline::cli {

constexpr int status_ok = 0;
constexpr int status_errors = 2; ///< the input was refused, or could not be read; nothing was assessed

void add_check(CLI::App& program, int& status);
void add_letter(CLI::App& program, int& status);
void add_read(CLI::App& program, int& status);
void add_recognise(CLI::App& program, int& status);

} // namespace wearline::cli
