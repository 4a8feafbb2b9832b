// What is said, and where: guides by name with those of the place first, a share with what it is a share of, and what
// concerns the whole statement once. The cases are invented; what they lean on is named at each.

#include "rulebook/rule_store.h"
#include "support/real_rules.h"
#include "wearline/engine.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

using nlohmann::json;
using namespace wearline;

namespace {

json judged(const char* place, std::vector<json> lines, const char* language = "en", json more = json::object()) {
  json c = {{"wearline", 2},
            {"jurisdiction", place},
            {"language", language},
            {"tenancy", {{"began", "2022-08-01"}, {"ended", "2026-07-31"}, {"possessionReturned", "2026-07-31"}}},
            {"lines", std::move(lines)}};
  c.update(more);
  json a = json::parse(assess(c.dump(), test::real_rules(), *parse_day("2026-09-01")), nullptr, false);
  REQUIRE(a["errors"].empty());
  return a;
}
json charge(const char* id, const char* element, const char* finding, json more = json::object()) {
  json l = {{"id", id}, {"text", "x"}, {"amount", "300.00"}, {"element", element}, {"finding", finding}};
  l.update(more);
  return l;
}
std::string reason(const json& a) { return a["lines"][0]["reason"]; }
bool says(const std::string& text, const char* part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_CASE("A verdict that rests on guides names them, those of the place's country alone where it has some", "[said]") {
  // Worn carpet is wear in HUD's Appendix 5C (2006) and in guides of other countries.
  const std::string here = reason(judged("US-TX", {charge("1", "carpet", "worn-matted")}));
  CHECK(says(here, "the federal housing guide (HUD, 2006)"));
  CHECK_FALSE(says(here, "Australia"));
  CHECK_FALSE(says(here, "another country"));
  CHECK(says(reason(judged("US-TX", {charge("1", "carpet", "worn-matted")}, "es")), "HUD, 2006"));
}

TEST_CASE("A guide from another country is said to be that", "[said]") {
  // Regular mowing is wear in the Queensland authority's guide alone.
  const std::string abroad = reason(judged("US-TX", {charge("1", "yard-landscape", "routine")}));
  CHECK(says(abroad, "Queensland, Australia"));
  CHECK(says(abroad, "of other countries"));
  CHECK(says(reason(judged("US-TX", {charge("1", "yard-landscape", "routine")}, "es")), "de otros países"));
  const json a = judged("US-TX", {charge("1", "yard-landscape", "routine")});
  CHECK(says(a["sources"]["wear:qld-rta"]["text"], "from another country"));
}

TEST_CASE("Sources of the place's country stand first in a list", "[said]") {
  const json a = judged("US-TX", {charge("1", "carpet", "worn-matted")});
  for (const json& step : a["lines"][0]["steps"])
    if (step["code"] == "reason.guide-wear") CHECK(step["sourceIds"][0] == "wear:hud-5c");
}

TEST_CASE("A share says what it is a share of", "[said]") {
  const json one = {{"chargedQuantity", {{"count", 3}, {"unit", "room"}}},
                    {"damagedQuantity", {{"count", 1}, {"unit", "room"}}},
                    {"installed", "2024-08-01"}};
  const json a = judged("US-TX", {charge("1", "carpet", "burns", one)});
  CHECK(says(a["lines"][0]["steps"][0]["text"], "Carpet: 3 rooms charged, 1 room damaged. $300.00 becomes $100.00."));
  json all = one;
  all["damagedQuantity"]["count"] = 3;
  const json judgment = judged("US-TX", {charge("1", "carpet", "burns", all)});
  for (const json& step : judgment["lines"][0]["steps"]) CHECK_FALSE(says(step["code"], "area-share"));
}

TEST_CASE("What the law says of several charges alike stands at the statement, to be told once", "[said]") {
  // Cal. Civ. Code § 1950.5(e)(2)(A): no charge for ordinary wear.
  const auto bars = [](const json& line) {
    std::vector<std::string> rules;
    for (const json& bar : line["bars"]) rules.push_back(bar["rule"]);
    return rules;
  };
  const auto has = [](const std::vector<std::string>& rules, const char* id) {
    return std::find(rules.begin(), rules.end(), id) != rules.end();
  };
  const json alone = judged("US-CA", {charge("1", "cabinet", "broken-door-drawer")});
  REQUIRE(alone["lines"][0]["verdict"] == "undetermined");
  CHECK(has(bars(alone["lines"][0]), "ordinary-wear"));
  CHECK(alone["law"]["sharedRules"].empty());
  const json both =
      judged("US-CA", {charge("1", "cabinet", "broken-door-drawer"), charge("2", "cabinet", "broken-door-drawer")});
  CHECK(has(bars(both["lines"][0]), "ordinary-wear"));
  bool told = false;
  for (const json& shared : both["law"]["sharedRules"])
    if (shared["rule"] == "ordinary-wear") {
      told = true;
      CHECK(shared["lines"] == json::array({"1", "2"}));
      CHECK(shared["applies"].is_null());
    }
  CHECK(told);
  CHECK(both["law"]["rules"].contains("ordinary-wear"));
  for (const json& step : both["lines"][0]["steps"]) CHECK(step["code"] != "law-perhaps-barred");
  for (const json& defect : both["defects"])
    for (const json& other : both["defects"])
      CHECK((&defect == &other || defect["text"] != other["text"] || defect["ifMissing"] != other["ifMissing"] ||
             defect["lines"] != other["lines"]));
}

TEST_CASE("A step that the law takes names its statute", "[said]") {
  // N.C. Gen. Stat. § 42-51(a): a closed list, on which a fee for leaving early does not stand.
  const json a = judged("US-NC", {charge("1", "early-termination", "lease-break")});
  bool named = false;
  for (const json& step : a["lines"][0]["steps"]) {
    if (step["code"] != "law-barred") continue;
    named = true;
    CHECK(says(step["source"], "N.C. Gen. Stat."));
  }
  CHECK(named);
}
