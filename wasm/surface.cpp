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

// Each can be called with the version of the format as a last argument, and without it for version 1: see engine.h.

std::string assess(const std::string& case_json, const std::string& today, int otherwise) {
  return wearline::assess_text(case_json, held_rules(), today, otherwise);
}
std::string assess_1(const std::string& case_json, const std::string& today) { return assess(case_json, today, 1); }

std::string catalogue(const std::string& language, int format) {
  return wearline::catalogue(held_rules(), language, format);
}
std::string catalogue_1(const std::string& language) { return catalogue(language, 1); }

std::string letter(const std::string& case_json, const std::string& today, const std::string& options, int otherwise) {
  return wearline::letter_text(case_json, held_rules(), today, options, otherwise);
}
std::string letter_1(const std::string& case_json, const std::string& today, const std::string& options) {
  return letter(case_json, today, options, 1);
}

std::string read_statement(const std::string& text, const std::string& language, int format) {
  return wearline::read_statement_text(text, held_rules(), language, format);
}
std::string read_statement_1(const std::string& text, const std::string& language) {
  return read_statement(text, language, 1);
}

std::string version() { return std::string(wearline::version()); }

} // namespace

EMSCRIPTEN_BINDINGS(wearline) {
  emscripten::function("load", &load);
  emscripten::function("assess", &assess);
  emscripten::function("assess", &assess_1);
  emscripten::function("catalogue", &catalogue);
  emscripten::function("catalogue", &catalogue_1);
  emscripten::function("letter", &letter);
  emscripten::function("letter", &letter_1);
  emscripten::function("readStatement", &read_statement);
  emscripten::function("readStatement", &read_statement_1);
  emscripten::function("version", &version);
}
