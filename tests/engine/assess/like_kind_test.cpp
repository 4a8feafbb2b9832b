// Betterment is cut to like kind; what undoes a tenancy's traces never ages; a clause of the lease counts only where
// the place lets it.

#include "rulebook/rule_store.h"
#include "support/real_rules.h"
#include "wearline/engine.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <string>

using nlohmann::json;
using namespace wearline;

namespace {

json judged(json line, const char* place = "US-TX") {
  if (!line.contains("id")) line.update({{"id", "1"}, {"amount", "900.00"}});
  const json c = {{"wearline", 2},
                  {"jurisdiction", place},
                  {"tenancy", {{"began", "2024-08-01"}, {"ended", "2026-07-31"}, {"possessionReturned", "2026-07-31"}}},
                  {"lines", json::array({line})}};
  json a = json::parse(assess(c.dump(), test::real_rules(), *parse_day("2026-09-01")), nullptr, false);
  REQUIRE(a["errors"].empty());
  return a;
}
const json* step(const json& a, const char* code) {
  for (const json& s : a["lines"][0]["steps"])
    if (s["code"] == code) return &s;
  return nullptr;
}
bool read(const char* text) {
  for (const json& f : judged({{"text", text}})["lines"][0].value("factsFromText", json::array()))
    if (f["field"] == "betterment") return f["value"] == true;
  return false;
}
json range(const char* low, const json& likely, const char* high) {
  return {{"low", low}, {"likely", likely}, {"high", high}};
}

} // namespace

TEST_CASE("What is better than what was there is cut to the price of the like, then aged", "[betterment]") {
  // Cal. Civ. Code § 1950.5(e)(2)(B): no charge for improvements. Queensland and New Zealand tribunals count loss net
  // of betterment (tests/reference/data/decided.json, NZ-TT-Wainuiomata-2023-report). Five of ten years: half.
  const json line = {{"text", "Replaced broken blinds"},
                     {"element", "window-covering"},
                     {"finding", "torn-chewed"},
                     {"installed", "2021-07-31"},
                     {"usefulLifeYears", 10},
                     {"betterment", true},
                     {"replacementCost", "100.00"},
                     {"cause", "tenant"}};
  const json a = judged(line);
  CHECK(a["lines"][0]["fair"] == range("50.00", "50.00", "50.00"));
  const json* cut = step(a, "like-kind");
  REQUIRE(cut != nullptr);
  CHECK((*cut)["from"] == "900.00");
  CHECK((*cut)["to"] == "100.00");
}

TEST_CASE("Without the price of the like nothing supports a likely sum, and the price is asked for", "[betterment]") {
  const json a = judged({{"text", "Broken blinds"},
                         {"element", "window-covering"},
                         {"finding", "torn-chewed"},
                         {"installed", "2021-07-31"},
                         {"usefulLifeYears", 10},
                         {"betterment", true},
                         {"cause", "tenant"}});
  CHECK(a["lines"][0]["fair"] == range("0.00", nullptr, "450.00"));
  CHECK(step(a, "like-kind-unknown") != nullptr);
  bool asked = false;
  for (const json& q : a["questions"])
    asked = asked || (q["code"] == "like-kind" && q["asks"] == "/lines/0/replacementCost");
  CHECK(asked);
}

TEST_CASE("Words that tell of something better are read", "[betterment]") {
  for (const char* text :
       {"Replaced damaged vinyl floor with oak hardwood", "Basic blind replaced by plantation shutter",
        "Upgraded broken light fixture in hall", "New premium carpet, pet stains", "Better quality door after hole",
        "Granite countertop instead of laminate, burn", "Se cambió el piso de vinilo por roble, manchas"}) {
    INFO(text);
    CHECK(read(text));
  }
  for (const char* text : {"Replaced vinyl floor, torn", "Replaced broken blinds", "Hardwood floor scratched",
                           "Carpet replaced, pet stains", "No upgrade, same carpet, burns",
                           "Thermostat the tenant upgraded was removed", "Se cambió la alfombra, manchas"}) {
    INFO(text);
    CHECK_FALSE(read(text));
  }
}

TEST_CASE("Cleaning, disposal, mending and safety work never age, whatever they name", "[betterment]") {
  // Common practice, no source (rules/lives, parts): work that undoes this tenancy's traces renews nothing.
  for (const char* text :
       {"Haul away old carpet", "Carpet removal and disposal", "Disposal of damaged refrigerator",
        "Remove and dispose of stained carpet in bedroom", "Clean the carpet", "Minor carpet repair, burn",
        "Fix broken blind slat", "Board up broken window for safety", "Smoke detector battery"}) {
    INFO(text);
    CHECK(judged({{"text", text}})["lines"][0]["depreciation"].is_null());
  }
  // A garbage disposal is a machine, and what was hauled off may be one part of a new one.
  for (const char* text :
       {"Garbage disposal jammed with glass", "Carpet: material 200, install 60, haul off 40, burns"}) {
    INFO(text);
    CHECK_FALSE(judged({{"text", text}})["lines"][0]["depreciation"].is_null());
  }
  // A new one put in ages, though the old one was hauled away too.
  CHECK_FALSE(
      judged({{"text", "Replaced burned carpet and hauled away the old one"}})["lines"][0]["depreciation"].is_null());
}

TEST_CASE("A clause that asks for cleaning counts only where the place lets it", "[betterment]") {
  const json clause = {{"text", "Professional cleaning at move-out"},
                       {"element", "whole-unit-cleaning"},
                       {"finding", "work-only"},
                       {"inLease", true}};
  // Tex. Prop. Code § 92.104(a): charges for which the tenant is liable under the lease.
  CHECK(judged(clause, "US-TX")["lines"][0]["verdict"] == "chargeable-damage");
  // Cal. Civ. Code § 1950.5(e)(2)(C): no more than the cleaning that was needed. Kan. Stat. 58-2550 has no clause.
  for (const char* place : {"US-CA", "US-KS"}) {
    INFO(place);
    const json a = judged(clause, place);
    CHECK(a["lines"][0]["verdict"] == "undetermined");
    CHECK(a["lines"][0]["fair"]["low"] == "0.00");
    CHECK(a["lines"][0]["reason"].get<std::string>().find("does not let a clause alone decide") != std::string::npos);
  }
}
