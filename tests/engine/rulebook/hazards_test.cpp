// The dangers of things in a home: shown at the fault they belong to, and beside the charge that is about it.

#include "rulebook/rule_store.h"
#include "support/letters.h"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace wearline;
using namespace wearline::test;
using nlohmann::json;

namespace {

bool has(const json& list, std::string_view code) {
  return std::any_of(list.begin(), list.end(),
                     [&](const json& one) { return (one.is_object() ? one["code"] : one) == code; });
}

json dangers(std::string_view line) { return line_of(line)["hazards"]; }

} // namespace

TEST_CASE("A hazard names a thing, or one fault of a thing", "[hazards]") {
  const std::vector<std::string> places{"mirror", "window-glass/broken"};
  CHECK(names_fault(places, "mirror", ""));
  CHECK(names_fault(places, "mirror", "cracked"));
  CHECK(names_fault(places, "window-glass", "broken"));
  CHECK_FALSE(names_fault(places, "window-glass", "hardware"));
  CHECK_FALSE(names_fault(places, "window-glass", ""));
  CHECK_FALSE(names_fault(places, "window", "broken"));
  CHECK_FALSE(names_fault(places, "", ""));
}

TEST_CASE("Words of a charge point to a danger where a word begins with them", "[hazards]") {
  Hazard hazard;
  hazard.words = {"mold"};
  CHECK(concerns(hazard, "", "", "Black MOLD in closet"));
  CHECK(concerns(hazard, "", "", "moldy caulk"));
  CHECK_FALSE(concerns(hazard, "", "", "crown-xmolding"));
  CHECK_FALSE(concerns(hazard, "", "", ""));
}

TEST_CASE("Dangers stand with the charge they are about, and no others", "[hazards]") {
  CHECK(has(dangers(R"("amount":"90.00","kind":"damage","element":"caulk","finding":"mouldy")"), "mould"));
  CHECK(has(
      dangers(
          R"("amount":"90.00","text":"Haul e-bike","kind":"disposal","element":"abandoned-items","finding":"furniture")"),
      "battery-fire"));
  CHECK(has(dangers(R"("amount":"90.00","kind":"damage","element":"water-heater","finding":"relight")"), "gas"));
  // A dirty stove is no electric work.
  const json stove = dangers(R"("amount":"90.00","kind":"cleaning","element":"range-oven","finding":"left-dirty")");
  CHECK_FALSE(has(stove, "electric"));
  CHECK(has(stove, "cleaners"));
  CHECK(dangers(R"("amount":"90.00","kind":"rent","element":"rent","finding":"unpaid-month")").empty());
}

TEST_CASE("The words of each danger stand among the cautions, and in the request that offers repair", "[hazards]") {
  const std::string c =
      R"({"wearline":1,"jurisdiction":"US-CA","side":"tenant","tenancy":{"possessionReturned":"2026-12-20","ended":"2026-12-20"},"lines":[],)"
      R"("walkThrough":{"things":[{"id":"1","element":"garage-opener","finding":"door-dented","moveOut":"damaged"},)"
      R"({"id":"2","element":"water-heater","finding":"relight","moveOut":"fine"}]}})";
  const json letter = letter_of_kind(c, "inspection-request", "2026-12-01");
  CHECK(warns(letter, "hazard-springs"));
  CHECK_FALSE(warns(letter, "hazard-gas"));
  const json result =
      assessed(case_of_line(R"("amount":"90.00","kind":"damage","element":"garage-opener","finding":"door-dented")"));
  CHECK(has(result["cautions"], "springs"));
}
