// The calls of the page that every module answers. Nothing is decided here: text goes in, the engine's text comes out.

#include "held.h"

#include "wearline/engine.h"

#include <emscripten/bind.h>

namespace wearline {

Rulebook& held_rules() {
  static Rulebook held;
  return held;
}

} // namespace wearline

namespace {

using wearline::held_rules;

/// Adds a bundle of rules files. The answer's "errors" is empty if all went well.
std::string load(const std::string& bundle) {
  wearline::Faults faults = wearline::check_text(bundle);
  if (faults.empty()) faults = held_rules().add_bundle(bundle);
  return wearline::errors_json(faults);
}

std::string assess(const std::string& case_json, const std::string& today) {
  return wearline::assess_text(case_json, held_rules(), today);
}

std::string catalogue(const std::string& language) { return wearline::catalogue(held_rules(), language); }

std::string version() { return std::string(wearline::version()); }

} // namespace

EMSCRIPTEN_BINDINGS(held) {
  emscripten::function("load", &load);
  emscripten::function("assess", &assess);
  emscripten::function("catalogue", &catalogue);
  emscripten::function("version", &version);
}
