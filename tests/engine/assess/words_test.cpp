// What a charge's own words say is judged with, marked, and overruled by what a person fills in. The charges are
// invented.

#include "rulebook/rule_store.h"
#include "support/real_rules.h"
#include "wearline/engine.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using nlohmann::json;
using namespace wearline;

namespace {

json judged(const json& line) {
  const json c = {
      {"wearline", 1}, {"tenancy", {{"began", "2022-08-01"}, {"ended", "2026-07-31"}}}, {"lines", json::array({line})}};
  return json::parse(assess(c.dump(), test::real_rules(), *parse_day("2026-09-01")), nullptr, false);
}

json line(const char* text, const json& more = json::object()) {
  json l = {{"id", "1"}, {"text", text}, {"amount", "300.00"}};
  l.update(more);
  return l;
}

const json* fact(const json& assessment, const char* list, const char* field) {
  const json& l = assessment["lines"][0];
  if (!l.contains(list)) return nullptr;
  for (const json& f : l[list])
    if (f["field"] == field) return &f;
  return nullptr;
}

} // namespace

TEST_CASE("Facts of the words are used where the field is empty, and marked", "[facts][assess]") {
  const json a = judged(line("Carpet burned, 12 years old, replaced", {{"element", "carpet"}, {"finding", "burns"}}));
  REQUIRE(a["errors"].empty());
  const json* age = fact(a, "fromWords", "ageYears");
  REQUIRE(age != nullptr);
  CHECK((*age)["fact"] == "its age");
  CHECK((*age)["value"] == 12);
  CHECK((*age)["words"] == "12 years old");
  CHECK((*age)["readFrom"] == json::parse("[15, 27]"));
  CHECK_FALSE((*age)["text"].get<std::string>().empty());
  CHECK(a["lines"][0]["value"]["installed"]["earliest"] == "2014-01-31");
  CHECK(a["lines"][0]["value"]["installed"]["latest"] == "2015-01-31");
}

TEST_CASE("A field that a person fills wins; where the words say otherwise, which is right is asked",
          "[facts][assess]") {
  const json a = judged(line("Carpet burned, laid in 2012, replaced",
                             {{"element", "carpet"}, {"finding", "burns"}, {"installed", "2024-01-15"}}));
  CHECK(fact(a, "fromWords", "installed") == nullptr);
  REQUIRE(fact(a, "againstWords", "installed") != nullptr);
  bool asked = false;
  for (const json& q : a["questions"]) asked = asked || (q["code"] == "words" && q["asks"] == "/lines/0/installed");
  CHECK(asked);
}

TEST_CASE("A fact that the person has struck is not used", "[facts][assess]") {
  const json a =
      judged(line("Carpet burned, 12 years old",
                  {{"element", "carpet"}, {"finding", "burns"}, {"notFromWords", json::array({"ageYears"})}}));
  REQUIRE(a["errors"].empty());
  CHECK(fact(a, "fromWords", "ageYears") == nullptr);
  CHECK(a["lines"][0]["value"]["installed"].is_null());
}

TEST_CASE("Verdicts listen to count, missing parts and recorded state", "[facts][assess]") {
  const auto verdict = [](const char* text) { return judged(line(text))["lines"][0]["verdict"]; };
  CHECK(verdict("40 nail holes from picture wall, patch and repaint") == "chargeable-damage");
  CHECK(verdict("Hole in wall behind door from knob, no door stop") == "landlord-side");
  CHECK(verdict("Wall damage already noted on move-in checklist") == "already-there");
}

TEST_CASE("Readings of an unsure thing that lead to different answers leave the line open and without a middle",
          "[facts][assess]") {
  const json a = judged(line("Filthy and ruined items"));
  const json& l = a["lines"][0];
  REQUIRE(l["recognised"]["confidence"] < 50);
  CHECK(l["verdict"] == "cannot-tell");
  CHECK(l["fair"]["likely"].is_null());
  CHECK(l["fair"]["low"] == "0.00");
  CHECK(l["fair"]["high"] == "300.00");
  const json& steps = l["steps"];
  CHECK(std::any_of(steps.begin(), steps.end(), [](const json& s) { return s["code"] == "other-readings"; }));
  bool asked = false;
  for (const json& q : a["questions"]) asked = asked || (q["code"] == "is-it" && q["asks"] == "/lines/0/element");
  CHECK(asked);
}

TEST_CASE("Of words without end only the beginning is read, cut between two characters", "[facts][assess]") {
  std::string text = "Carpet burned, 12 years old ";
  while (text.size() < 3'000'000) text += "año ";
  const json a = judged(line((text + "laid in 2001").c_str()));
  REQUIRE(a["errors"].empty());
  CHECK(a["lines"][0]["element"] == "carpet");
  CHECK(fact(a, "fromWords", "ageYears") != nullptr);
  CHECK(fact(a, "fromWords", "installed") == nullptr);
  CHECK(a["lines"][0]["text"].get<std::string>().size() > 3'000'000);
}

TEST_CASE("A charge that says what was wrong is not told that it does not", "[facts][assess]") {
  const auto has = [](const json& a, const char* code) {
    const json& steps = a["lines"][0]["steps"];
    return std::any_of(steps.begin(), steps.end(), [&](const json& s) { return s["code"] == code; });
  };
  for (const char* text : {"Torn cooktop", "Cracked mailbox"}) {
    const json a = judged(line(text));
    CHECK_FALSE(has(a, "reason.no-fault-named"));
    CHECK_FALSE(has(a, "reason.nothing-named"));
    CHECK(has(a, "reason.depends"));
  }
  CHECK(has(judged(line("Replace cooktop")), "reason.no-fault-named"));
}

TEST_CASE("Rent is for the days of the month that its words name, where they can be no others", "[facts][assess]") {
  const auto rent = [](const char* text, const char* amount) {
    json c = {{"wearline", 2}};
    c["tenancy"] = {
        {"began", "2022-08-01"}, {"ended", "2026-07-31"}, {"monthlyRent", "900.00"}, {"rentPaidThrough", "2026-07-31"}};
    json charge = {{"id", "1"}};
    charge["text"] = text;
    charge["amount"] = amount;
    c["lines"] = std::vector<json>{charge};
    return json::parse(assess(c.dump(), test::real_rules(), *parse_day("2026-09-01")), nullptr, false);
  };
  const auto days = [](const json& a) {
    std::string out;
    const json& l = a["lines"][0];
    if (l.contains("factsFromText"))
      for (const json& f : l["factsFromText"]) out += f["value"].get<std::string>() + ' ';
    return out;
  };
  CHECK(days(rent("Unpaid August rent", "900.00")) == "2026-08-01 2026-08-31 ");
  CHECK(days(rent("Renta de agosto", "900.00")) == "2026-08-01 2026-08-31 ");
  CHECK(days(rent("Part of August rent", "200.00")) == "2026-08-01 2026-08-31 ");
  CHECK(days(rent("June rent", "900.00")) == "2026-06-01 2026-06-30 ");
  CHECK(rent("June rent", "900.00")["lines"][0]["fair"]["high"] == "0.00"); // it was paid
  CHECK(days(rent("Rent for June 2025", "900.00")) == "2025-06-01 2025-06-30 ");
  CHECK(days(rent("Part of June rent", "200.00")).empty());     // which days is not said
  CHECK(days(rent("June and July rent", "1800.00")).empty());   // two months
  CHECK(days(rent("Rent that may be owed", "900.00")).empty()); // no month
}
