// Any bytes as a file of rules: the first line is its path, the rest its text. What loads must also be usable.

#include "wearline/engine.h"

#include <cstdlib>

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* bytes, std::size_t size) {
  const std::string_view input(reinterpret_cast<const char*>(bytes), size);
  const std::size_t end = input.find('\n');
  if (end == std::string_view::npos) return 0;
  const std::string_view path = input.substr(0, end), text = input.substr(end + 1);

  wearline::Rulebook one, bundled;
  const bool accepted = one.add(path, text).empty();
  bundled.add_bundle(text);
  if (accepted) {
    const auto answer = wearline::assess(
        R"({"wearline":1,"jurisdiction":"US-WA","tenancy":{"began":"2022-08-01","ended":"2026-07-31"},"lines":[)"
        R"({"id":"1","text":"Carpet","amount":"900.00","kind":"damage","element":"carpet","finding":"stains"}]})",
        one, *wearline::parse_day("2026-09-01"));
    if (answer.empty() || wearline::catalogue(one, "es").empty()) std::abort();
  }
  return 0;
}
