#include "support/reading_rules.h"

#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>

namespace reading_test {

std::string file_text(const std::string& path) {
  std::ifstream in(std::string(WEARLINE_ROOT "/") + path);
  REQUIRE(in.good());
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

const wearline::RecognizerRules& rules() {
  static const wearline::RecognizerRules loaded = [] {
    wearline::RecognizerRules made;
    for (const std::string& name : wearline::RecognizerRules::files()) {
      const wearline::Faults faults = made.add(name, file_text("engine/rules/recogniser/" + name));
      for (const wearline::Fault& fault : faults) FAIL_CHECK(fault.at << ": " << fault.text);
    }
    REQUIRE(made.complete());
    return made;
  }();
  return loaded;
}

} // namespace reading_test
