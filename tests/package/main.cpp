#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <wearline/engine.h>

namespace fs = std::filesystem;

int main() {
  wearline::Rulebook rules;
  for (const auto& entry : fs::recursive_directory_iterator(RULES)) {
    const std::string path = entry.path().lexically_relative(RULES).generic_string();
    if (!entry.is_regular_file() || !wearline::Rulebook::takes(path)) continue;
    std::ifstream file(entry.path());
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    for (const wearline::Fault& fault : rules.add(path, text)) {
      std::cerr << path << ' ' << fault.at << ' ' << fault.text << '\n';
      return 1;
    }
  }
  if (!rules.pending().empty()) return 1;
  const wearline::Day today = *wearline::parse_day("2026-09-01");
  std::cout << wearline::assess(R"({"wearline":1,"lines":[{"id":"1","text":"Blinds","amount":"96.00"}]})", rules, today)
            << '\n';
  // The JSON library still throws for the program.
  try {
    (void)nlohmann::json::parse("{");
  } catch (const nlohmann::json::parse_error&) {
    return 0;
  }
  return 1;
}
