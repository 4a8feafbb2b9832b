#pragma once
// What the fuzz targets share: the rules, loaded once, and how a target says what is wrong.

#include "rules_folder.h"
#include "wearline/engine.h"

#include <cstdio>
#include <cstdlib>
#include <set>
#include <string>
#include <string_view>

namespace wearline::fuzz {

[[noreturn]] inline void fail(const char* what, std::string_view about = {}) {
  std::fprintf(stderr, "%s\n%.*s\n", what, static_cast<int>(about.size()), about.data());
  std::abort();
}

inline std::string_view text_of(const unsigned char* bytes, std::size_t size) {
  return {reinterpret_cast<const char*>(bytes), size};
}

/// All the rules with the law of one place: small enough to be searched fast.
inline const Rulebook& small_rulebook() {
  static const auto loaded = [] {
    const std::set<std::string> places{"US-WA"};
    return cli::load_rules(WEARLINE_ROOT "/engine/rules", &places);
  }();
  if (const auto* faults = std::get_if<Faults>(&loaded)) fail("The rules do not load", errors_json(*faults));
  return std::get<Rulebook>(loaded);
}

inline const RecognizerRules& recognizer() {
  static const auto loaded = cli::load_recognizer(WEARLINE_ROOT "/engine/rules");
  if (!std::holds_alternative<RecognizerRules>(loaded)) fail("The rules do not load");
  return std::get<RecognizerRules>(loaded);
}

/// Whether this input is one of the few on which the answer is asked for twice.
inline bool ask_twice(std::string_view text) { return text.size() % 16 == 0; }

} // namespace wearline::fuzz

/// Before the first input, whose time is limited: the rules take longer than an input may.
#define WEARLINE_FUZZ_READY(load)                                                                                      \
  extern "C" int LLVMFuzzerInitialize(int*, char***) {                                                                 \
    wearline::fuzz::load();                                                                                            \
    return 0;                                                                                                          \
  }
