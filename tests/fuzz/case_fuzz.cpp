// Any bytes as a case file, judged with the law of one place: always an answer, always the same one, never more than
// was charged.

#include "support.h"
#include "values/money.h"

#include <nlohmann/json.hpp>

namespace {

using nlohmann::json;
using namespace wearline::fuzz;

wearline::Money money(const json& value, const std::string& answer) {
  const auto read = value.is_string() ? wearline::Money::parse(value.get_ref<const std::string&>()) : std::nullopt;
  if (!read) fail("An amount of the answer cannot be read", answer);
  return *read;
}

void check_line(const json& line, const std::string& answer) {
  if (!line.contains("claimed") || !line["claimed"].is_string() || !line.contains("fair") || !line["fair"].is_object())
    return;
  const json& fair = line["fair"];
  const auto low = money(fair["low"], answer), high = money(fair["high"], answer);
  if (low > high) fail("A range is out of order", answer);
  // Where nothing supports a middle there is none.
  if (!fair["likely"].is_null()) {
    const auto likely = money(fair["likely"], answer);
    if (low > likely || likely > high) fail("A range is out of order", answer);
  }
  if (high > money(line["claimed"], answer)) fail("More is fair than was charged", answer);
}

} // namespace

WEARLINE_FUZZ_READY(small_rulebook)

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* bytes, std::size_t size) {
  const std::string_view text = text_of(bytes, size);
  const std::string answer = wearline::assess_text(text, small_rulebook(), "2026-09-01");
  const json parsed = json::parse(answer, nullptr, false);
  if (!parsed.is_object() || !parsed.contains("errors")) fail("The answer is not an assessment", answer);
  if (ask_twice(text) && wearline::assess_text(text, small_rulebook(), "2026-09-01") != answer)
    fail("Two answers to one case", answer);
  if (parsed["errors"].empty())
    for (const json& line : parsed["lines"]) check_line(line, answer);
  return 0;
}
