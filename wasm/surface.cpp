// What the whole engine answers beside the calls of held.cpp: it writes letters and reads statements.

#include "held.h"
#include "wearline/engine.h"

#include <emscripten/bind.h>

namespace {

using wearline::held_rules;

std::string letter(const std::string& case_json, const std::string& today, const std::string& options) {
  return wearline::letter_text(case_json, held_rules(), today, options);
}

std::string read_statement(const std::string& text, const std::string& language) {
  return wearline::read_statement_text(text, held_rules(), language);
}

} // namespace

EMSCRIPTEN_BINDINGS(wearline) {
  emscripten::function("letter", &letter);
  emscripten::function("readStatement", &read_statement);
}
