#include "support/real_rules.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace wearline::test {

namespace {
Rulebook load() {
  namespace fs = std::filesystem;
  const fs::path root = fs::path(WEARLINE_ROOT) / "engine/rules";
  Rulebook book;
  // The registries come before the packs that use their names.
  std::vector<fs::path> first, then;
  for (const auto& entry : fs::recursive_directory_iterator(root)) {
    if (entry.path().extension() != ".json") continue;
    const std::string path = fs::relative(entry.path(), root).generic_string();
    if (!Rulebook::takes(path)) continue;
    (path.rfind("law/", 0) == 0 ? then : first).push_back(path);
  }
  std::sort(first.begin(), first.end());
  std::sort(then.begin(), then.end());
  first.insert(first.end(), then.begin(), then.end());
  for (const fs::path& path : first) {
    std::ifstream in(root / path);
    std::stringstream text;
    text << in.rdbuf();
    for (const Fault& fault : book.add(path.generic_string(), text.str())) FAIL(fault.at << ": " << fault.text);
  }
  return book;
}
} // namespace

const Rulebook& real_rules() {
  static const Rulebook book = load();
  return book;
}

nlohmann::json assessed(std::string_view case_json, std::string_view today) {
  const std::string result = assess(case_json, real_rules(), *parse_day(today));
  auto json = nlohmann::json::parse(result, nullptr, false);
  REQUIRE_FALSE(json.is_discarded());
  return json;
}

std::string case_of_line(std::string_view line, std::string_view tenancy) {
  return R"({"wearline":1,"tenancy":{)" + std::string(tenancy) + R"(},"lines":[{)" + std::string(line) + "}]}";
}

nlohmann::json line_of(std::string_view line, std::string_view tenancy) {
  const auto result = assessed(case_of_line(line, tenancy));
  INFO(result.dump());
  REQUIRE(result["errors"].empty());
  return result["lines"][0];
}

} // namespace wearline::test
