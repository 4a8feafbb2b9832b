#include "commands.h"
#include "wearline/engine.h"

#include <iostream>

int main(int count, char** words) {
  CLI::App program{"Checks the money taken from a residential security deposit."};
  program.set_version_flag("--version", std::string(wearline::version()));
  program.require_subcommand(1);
  int status = wearline::cli::status_ok;
  wearline::cli::add_check(program, status);
  wearline::cli::add_letter(program, status);
  wearline::cli::add_read(program, status);
  wearline::cli::add_recognise(program, status);
  try {
    program.parse(count, words);
  } catch (const CLI::ParseError& e) {
    return program.exit(e) == 0 ? wearline::cli::status_ok : wearline::cli::status_errors;
  } catch (const std::exception& e) { // out of memory, a pipe that closed: never a core dump
    std::cerr << "wearline: " << e.what() << '\n';
    return wearline::cli::status_errors;
  }
  return status;
}
