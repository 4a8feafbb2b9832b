#pragma once
// What was wrong with an input, as a value.

#include <string>
#include <vector>

namespace wearline {

/// `code` is stable and machine readable ("unknown-member"), `at` is a JSON Pointer (RFC 6901) into the input ("" is
/// the whole), `text` is a plain English sentence that says what to do, `near` the nearest known name where there is
/// one.
struct Fault {
  std::string code;
  std::string at;
  std::string text;
  std::string near;
};
using Faults = std::vector<Fault>;

} // namespace wearline
