// Federal and local rules as they lie over the law of a state.

#include "assess/assess.h"
#include "support/real_rules.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace wearline;
using namespace wearline::test;
using nlohmann::json;

namespace {

json judged(const std::string& place, const std::string& members, const std::string& today = "2026-11-29") {
  const std::string c = R"({"wearline":1,"jurisdiction":")" + place + "\"," + members + "}";
  return json::parse(assess(c, real_rules(), *parse_day(today)));
}
const std::string tenancy =
    R"("tenancy":{"began":"2023-07-01","ended":"2026-07-31","possessionReturned":"2026-07-31","kind":"fixed-term","monthlyRent":"1500.00","forwardingAddressGiven":"2026-07-20"},)"
    R"("deposits":[{"kind":"security","amount":"1500.00","paid":"2023-07-01"}])";
const std::string early =
    R"(,"lines":[{"id":"1","text":"Lease break fee","amount":"900.00","kind":"fee","element":"early-termination","finding":"lease-break","cause":"tenant"},)"
    R"({"id":"2","text":"Broken door","amount":"200.00","kind":"damage","element":"interior-door","finding":"hole","cause":"tenant"}])";

bool barred_by(const json& line, const std::string& rule) {
  for (const json& bar : line["bars"])
    if (bar["rule"] == rule) return bar["applies"] == true;
  return false;
}

const json* date_of(const json& result, const std::string& id) {
  for (const json& date : result["dates"])
    if (date["id"] == id) return &date;
  return nullptr;
}

} // namespace

// 50 U.S.C. 3955(e)(1): no early termination charge; other obligations due at the end stay.
TEST_CASE("Who left under military orders owes no charge for leaving early, in every state", "[law]") {
  int states = 0;
  for (const auto& [place, pack] : real_rules().rules().packs) {
    if (place.rfind("US-", 0) != 0) continue;
    INFO(place);
    const json result = judged(place, tenancy + R"(,"circumstances":{"left-under-orders":true})" + early);
    REQUIRE(result["errors"].empty());
    CHECK(result["lines"][0]["fair"]["high"] == "0.00");
    CHECK(barred_by(result["lines"][0], "federal-no-early-charge"));
    CHECK_FALSE(barred_by(result["lines"][1], "federal-no-early-charge"));
    ++states;
  }
  CHECK(states > 50);
}

TEST_CASE("Law that was read a year ago says so, by the day of use", "[law]") {
  const auto old = [](const std::string& today) {
    const json result = judged("US-OH", tenancy + R"(,"lines":[])", today);
    for (const json& caution : result["cautions"])
      if (caution["code"] == "old-law") return caution["text"].get<std::string>();
    return std::string();
  };
  const Day read = *real_rules().rules().packs.at("US-OH").reviewed;
  CHECK(old(iso(add_months(read, Months(12)) - days(1))).empty());
  CHECK(old(iso(add_months(read, Months(14)))).find("14 months ago") != std::string::npos);
}

TEST_CASE("Local law that was read a year ago is named by its place", "[law]") {
  const json result = judged("US-WA", R"("locality":"Seattle",)" + tenancy + R"(,"lines":[])", "2028-06-01");
  bool named = false;
  for (const json& caution : result["cautions"])
    named = named ||
            (caution["code"] == "old-law" && caution["text"].get<std::string>().find("Seattle") != std::string::npos);
  CHECK(named);
}

TEST_CASE("Interest whose rate is not known is not told as nothing", "[law]") {
  const auto open = [](const std::string& rate) {
    const json result = judged(
        "US-CA",
        R"("locality":"Santa Cruz","tenancy":{"began":"2024-08-01","ended":"2026-07-31","possessionReturned":"2026-07-31"},)"
        R"("deposits":[{"kind":"security","amount":"1000.00","paid":"2024-08-01")" +
            rate + R"(}],"lines":[])");
    return std::any_of(result["cautions"].begin(), result["cautions"].end(),
                       [](const json& c) { return c["code"] == "interest-open"; });
  };
  CHECK(open(""));
  CHECK_FALSE(open(R"(,"bankRate":"0.01")"));
}

// 24 CFR 880.608(b), 891.435(b)(1): the account's interest is the family's; a state's own rule pays the same money.
TEST_CASE("Interest of a federal program's account is asked for, computed when told, and never owed twice", "[law]") {
  const auto home = [](const std::string& place, const std::string& rate) {
    const std::string members =
        R"("tenancy":{"began":"2024-08-01","ended":"2026-07-31","possessionReturned":"2026-07-31","kind":"fixed-term","monthlyRent":"400.00"},)"
        R"("deposits":[{"kind":"security","amount":"400.00","paid":"2024-08-01","interestPaid":"0.00")" +
        rate +
        R"(}],"statement":{"refundPaid":"400.00","refundSent":"2026-08-01"},"circumstances":{"program-home":true},"lines":[])";
    return judged(place, members, "2026-08-10");
  };
  const std::string told = R"(,"bankRate":"0.02")";
  CHECK(home("US-OH", told)["totals"]["interest"]["high"] == "16.00"); // 400 x 0.02 x 2
  CHECK(home("US-MO", told)["totals"]["interest"]["low"] == "16.00");
  const json untold = home("US-MO", "");
  bool asked = false;
  for (const json& question : untold["questions"]) asked = asked || question["asks"] == "/deposits/0/bankRate";
  CHECK(asked);
  // Missouri and Iowa leave it to the landlord, Iowa for five years: federal law holds all the same.
  CHECK(home("US-IA", told)["totals"]["interest"]["low"] == "16.00");
  // Where the state's own rate of the bank is owed too it is the same money.
  CHECK(home("US-NH", told)["totals"]["interest"]["high"] == "16.00");
}

TEST_CASE("Without orders the federal rule bars nothing", "[law]") {
  const json result = judged("US-OH", tenancy + early);
  CHECK_FALSE(barred_by(result["lines"][0], "federal-no-early-charge"));
}

TEST_CASE("A local rule takes the place of the state's where the home is inside", "[law]") {
  const std::string silent = R"(,"statement":{"came":false,"refundPaid":"0.00"},"lines":[])";
  // Oak Park Village Code 12-6-11(C): 30 days, to Sunday, August 30, so Monday. 765 ILCS 710/1: 45 days.
  const json inside = judged("US-IL", R"("locality":"Oak Park",)" + tenancy + silent);
  REQUIRE(date_of(inside, "oak-park-refund"));
  CHECK((*date_of(inside, "oak-park-refund"))["last"]["latest"] == "2026-08-31");
  CHECK((*date_of(inside, "oak-park-refund"))["state"] == "missed");
  CHECK_FALSE(date_of(inside, "refund"));
  const json outside = judged("US-IL", R"("locality":"another place",)" + tenancy + silent);
  REQUIRE(date_of(outside, "refund"));
  CHECK((*date_of(outside, "refund"))["last"]["latest"] == "2026-09-14");
  CHECK_FALSE(date_of(outside, "oak-park-refund"));
}

TEST_CASE("Where no city is given state law stands, that is said, and the city is asked for", "[law]") {
  const json result = judged("US-WA", tenancy + R"(,"lines":[])");
  const auto has = [&](const char* list, const char* member, const char* value) {
    for (const json& item : result[list])
      if (item[member] == value) return true;
    return false;
  };
  CHECK(has("questions", "asks", "/locality"));
  CHECK(has("assumptions", "asks", "/locality"));
}

TEST_CASE("A place whose rule could not be read says so and where to ask", "[law]") {
  const json result = judged("US-CA", R"("locality":"Watsonville",)" + tenancy + R"(,"lines":[])");
  bool said = false;
  for (const json& caution : result["cautions"]) said = said || caution["code"] == "local-rules-not-read";
  CHECK(said);
}

TEST_CASE("A place without a law file says what is known: no deposit allowed, or no statute found", "[law]") {
  const auto said = [](const char* place) {
    const json result = judged(place, R"("lines":[])");
    for (const json& caution : result["cautions"])
      if (caution["code"] == "no-pack") return caution["text"].get<std::string>();
    return std::string();
  };
  CHECK(said("CA-ON").find("should not be held") != std::string::npos);
  CHECK(said("CA-QC").find("should not be held") != std::string::npos);
  for (const char* place : {"US-PR", "US-VI", "US-AS", "US-MP"})
    CHECK(said(place).find("No statute on deposits was found") != std::string::npos);
}

TEST_CASE("The catalogue lists the places of each state that have rules of their own", "[law]") {
  const json list = json::parse(catalogue(real_rules(), "en"))["localities"];
  const auto found = std::find_if(list.begin(), list.end(), [](const json& p) { return p["id"] == "US-WA-seattle"; });
  REQUIRE(found != list.end());
  CHECK((*found)["of"] == "US-WA");
  CHECK((*found)["value"] == "Seattle");
  CHECK_FALSE((*found)["inside"].get<std::string>().empty());
}

// S.F. Admin. Code 49.2: the rate in force on the yearly day; for the last part of a year that of the day of leaving.
// 1500.00: a year to 2024-07-01 at 5.2 %, a year to 2025-07-01 at 5.0 %, a year to 2026-07-01 and 30 days at 4.2 %:
// 78.00 + 75.00 + 63.00 + 1500 x 0.042 x 30/365 = 5.18.
TEST_CASE("Interest by years that do not begin in January takes the rate of the day it falls due", "[law]") {
  const json result = judged("US-CA", R"("locality":"San Francisco",)" + tenancy + R"(,"lines":[])");
  CHECK(result["totals"]["interest"]["high"] == "221.18");
}

// Boulder: the rate of the year in which the lease was signed or renewed, by months held.
TEST_CASE("A rate keyed to a renewal changes on the day of it", "[law]") {
  const std::string held =
      R"("locality":"Boulder","tenancy":{"began":"2024-01-01","ended":"2026-01-01","possessionReturned":"2026-01-01","kind":"fixed-term","monthlyRent":"1200.00"},)"
      R"("deposits":[{"kind":"security","amount":"1200.00","paid":"2024-01-01","interestPaid":"0.00"}],"statement":{"refundPaid":"1200.00","refundSent":"2026-01-01"})";
  // 24 months at 2.33 %: 1200 x 0.0233 x 2 = 55.92
  CHECK(judged("US-CO", held + R"(,"lines":[])")["totals"]["interest"]["likely"] == "55.92");
  // 12 at 2.33 %, 12 at 2.92 %: 27.96 + 35.04 = 63.00
  CHECK(judged("US-CO",
               held + R"(,"events":[{"what":"lease-renewed","on":"2025-01-01"}],"lines":[])")["totals"]["interest"]
                                                                                             ["likely"] == "63.00");
}

TEST_CASE("Laying a layer twice changes nothing; one that names no rule is refused and changes nothing", "[law]") {
  const Rules& rules = real_rules().rules();
  Pack pack = rules.packs.at("US-WA");
  const std::size_t caps = pack.caps.size();
  const std::string seattle = rules.layers.at("US-WA-seattle").json;
  CHECK(lay_over(pack, seattle, rules.registry).empty());
  CHECK(pack.caps.size() == caps);
  const Faults faults =
      lay_over(pack, R"({"id":"x","jurisdiction":"US-WA","sources":{},"drops":["no-such-rule"]})", rules.registry);
  REQUIRE(faults.size() == 1);
  CHECK(faults.front().code == "unknown-rule");
  CHECK(pack.caps.size() == caps);
}
