// Any bytes as a case file, judged by all the rules: always an answer, always the same one, never more than was
// charged.

#include "rules_folder.h"
#include "values/money.h"
#include "wearline/engine.h"

#include <cstdio>
#include <cstdlib>
#include <nlohmann/json.hpp>

namespace {

using nlohmann::json;

[[noreturn]] void fail(const char* what, const std::string& answer) {
  std::fprintf(stderr, "%s\n%s\n", what, answer.c_str());
  std::abort();
}

const wearline::Rulebook& rulebook() {
  static const auto loaded = wearline::cli::load_rules(WEARLINE_ROOT "/engine/rules");
  if (const auto* faults = std::get_if<wearline::Faults>(&loaded))
    fail("The rules do not load", wearline::errors_json(*faults));
  return std::get<wearline::Rulebook>(loaded);
}

wearline::Money money(const json& value, const std::string& answer) {
  const auto read = value.is_string() ? wearline::Money::parse(value.get_ref<const std::string&>()) : std::nullopt;
  if (!read) fail("An amount of the answer cannot be read", answer);
  return *read;
}

void check_line(const json& line, const std::string& answer) {
  if (!line.contains("claimed") || !line["claimed"].is_string() || !line.contains("fair") || !line["fair"].is_object())
    return;
  const json& fair = line["fair"];
  const auto low = money(fair["low"], answer), likely = money(fair["likely"], answer),
             high = money(fair["high"], answer);
  if (low > likely || likely > high) fail("A range is out of order", answer);
  if (high > money(line["claimed"], answer)) fail("More is fair than was charged", answer);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* bytes, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(bytes), size);
  const std::string answer = wearline::assess_text(text, rulebook(), "2026-09-01");
  const json parsed = json::parse(answer, nullptr, false);
  if (!parsed.is_object() || !parsed.contains("errors")) fail("The answer is not an assessment", answer);
  if (wearline::assess_text(text, rulebook(), "2026-09-01") != answer) fail("Two answers to one case", answer);
  if (parsed["errors"].empty())
    for (const json& line : parsed["lines"]) check_line(line, answer);
  return 0;
}
