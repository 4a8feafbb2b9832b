// The engine of the page's first load: it judges. What reads words (a statement that came, a line without a thing) and
// what writes letters is in surface.cpp, the whole engine, which the page fetches when it is needed.

#include "line_names.h"
#include "wearline/guard.h"

#include <emscripten/bind.h>

namespace wearline {

// In place of engine/src/line_names.cpp: no words are read here.
int name_from_text(Line&, const RecogniserRules&) { return 100; }
Faults add_recogniser_file(RecogniserRules&, std::string_view, std::string_view) {
  return {{"unknown-file", "", "This engine reads no words; the whole engine does.", ""}};
}

} // namespace wearline

namespace {

/// The rules this module holds; the page adds the shared ones and the packs it needs.
wearline::Rulebook& rulebook() {
  static wearline::Rulebook held;
  return held;
}

/// Adds a bundle of rules files. The answer's "errors" is empty if all went well.
std::string load(const std::string& bundle) {
  wearline::Faults faults = wearline::check_text(bundle);
  if (faults.empty()) faults = rulebook().add_bundle(bundle);
  return wearline::errors_json(faults);
}

std::string assess(const std::string& case_json, const std::string& today) {
  return wearline::assess_text(case_json, rulebook(), today);
}

std::string catalogue(const std::string& language) { return wearline::catalogue(rulebook(), language); }

std::string version() { return std::string(wearline::version()); }

} // namespace

EMSCRIPTEN_BINDINGS(judge) {
  emscripten::function("load", &load);
  emscripten::function("assess", &assess);
  emscripten::function("catalogue", &catalogue);
  emscripten::function("version", &version);
}
