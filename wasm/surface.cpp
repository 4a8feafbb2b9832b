// The calls of the page's module. Nothing is decided here: text goes in, the engine's text comes out.

#include "wearline/engine.h"

#include <emscripten/bind.h>

namespace {

/// The rules the module holds; the page adds the shared ones and the packs it needs.
wearline::Rulebook& held_rules() {
  static wearline::Rulebook held;
  return held;
}

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

std::string letter(const std::string& case_json, const std::string& today, const std::string& options) {
  return wearline::letter_text(case_json, held_rules(), today, options);
}

std::string read_statement(const std::string& text, const std::string& language) {
  return wearline::read_statement_text(text, held_rules(), language);
}

std::string version() { return std::string(wearline::version()); }

} // namespace

EMSCRIPTEN_BINDINGS(wearline) {
  emscripten::function("load", &load);
  emscripten::function("assess", &assess);
  emscripten::function("catalogue", &catalogue);
  emscripten::function("letter", &letter);
  emscripten::function("readStatement", &read_statement);
  emscripten::function("version", &version);
}
