// Each kind of money that is held serves only what it may: rent paid ahead is no deposit unless the law of the place
// says so, and money for a pet, for keys or for cleaning goes back as far as its own purpose leaves it.

#include "rulebook/rule_store.h"
#include "support/real_rules.h"
#include "wearline/engine.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

using nlohmann::json;
using namespace wearline;

namespace {

using List = std::vector<json>;

json judged(const char* place, List deposits, List lines, json tenancy = json::object()) {
  json c = {{"wearline", 2},
            {"jurisdiction", place},
            {"tenancy", {{"began", "2026-02-01"}, {"ended", "2026-07-31"}, {"possessionReturned", "2026-07-31"}}},
            {"deposits", std::move(deposits)},
            {"lines", std::move(lines)}};
  c["tenancy"].update(tenancy);
  json a = json::parse(assess(c.dump(), test::real_rules(), *parse_day("2026-09-01")), nullptr, false);
  REQUIRE(a["errors"].empty());
  return a;
}
json held(const char* kind, const char* amount) { return {{"kind", kind}, {"amount", amount}}; }
json owed(const char* kind, const char* element, const char* finding, const char* amount, const char* cause) {
  return {{"id", element},      {"text", "x"},        {"amount", amount}, {"kind", kind},
          {"element", element}, {"finding", finding}, {"cause", cause},   {"remedy", "repair"}};
}
bool cautioned(const json& a, const char* code) {
  for (const json& caution : a["cautions"])
    if (caution["code"] == code) return true;
  return false;
}

} // namespace

TEST_CASE("Rent paid ahead for the last month is a deposit only where the law says so", "[deposits]") {
  const List both = {held("security", "1000.00"), held("last-month", "900.00")};
  // Iowa Code § 562A.12 and Kan. Stat. 58-2550 speak of deposits alone.
  for (const char* place : {"US-IA", "US-KS"}) {
    INFO(place);
    const json a = judged(place, both, {});
    CHECK(a["totals"]["deposit"] == "1000.00");
    CHECK(cautioned(a, "rent-ahead"));
  }
  // Conn. Gen. Stat. § 47a-21(a)(11); Md. Code, Real Prop. § 8-203(b)(1); ORS 90.300(1); Utah Code 57-17-3(2): the
  // balance of deposit and of prepaid rent.
  for (const char* place : {"US-CT", "US-MD", "US-OR", "US-UT"}) {
    INFO(place);
    const json a = judged(place, both, {});
    CHECK(a["totals"]["deposit"] == "1900.00");
    CHECK_FALSE(cautioned(a, "rent-ahead"));
  }
  // Texas names it itself: Tex. Prop. Code § 92.102.
  CHECK(judged("US-TX", both, {})["totals"]["deposit"] == "1000.00");
}

TEST_CASE("Pet money serves only a pet's damage where the law says so", "[deposits]") {
  const List both = {held("security", "500.00"), held("pet", "300.00")};
  const json wall = owed("damage", "wall-surface", "large-holes", "700.00", "tenant");
  // Residential Tenancy Act (British Columbia) s. 38(7); Alaska Stat. 34.03.070(h). 500 of 700 is met; 300 go back.
  for (const char* place : {"CA-BC", "US-AK"}) {
    INFO(place);
    const json a = judged(place, both, {wall});
    CHECK(a["totals"]["keptApart"] == json({{"low", "300.00"}, {"likely", "300.00"}, {"high", "300.00"}}));
    CHECK(a["totals"]["fairRefund"]["low"].get<std::string>().substr(0, 3) == "300");
    CHECK(a["totals"]["owedByTenant"]["high"].get<std::string>().substr(0, 3) == "200");
  }
  // What the pet did is taken from it: 300 less 120.
  const json pet = owed("damage", "wall-surface", "large-holes", "120.00", "pet");
  CHECK(judged("US-AK", both, {pet})["totals"]["keptApart"]["likely"] == "180.00");
  // Del. Code tit. 25 § 5514(i): the pet deposit first, then the ordinary one; nothing keeps it for pets alone.
  CHECK(judged("US-DE", both, {wall})["totals"]["keptApart"]["high"] == "0.00");
}

TEST_CASE("Key and cleaning money serve keys and cleaning where a deposit is bound to its purpose", "[deposits]") {
  // Miss. Code § 89-8-21(3): only for the purposes for which it was paid.
  const List three = {held("security", "400.00"), held("key", "50.00"), held("cleaning", "150.00")};
  const json key = owed("keys", "lock-keys", "key-not-returned", "30.00", "tenant");
  const json wall = owed("damage", "wall-surface", "large-holes", "600.00", "tenant");
  const json a = judged("US-MS", three, {key, wall});
  CHECK(a["totals"]["keptApart"]["likely"] == "170.00");
  CHECK(a["totals"]["fairRefund"]["low"] == "170.00");
}

TEST_CASE("Money that is no deposit pays the charges it was paid for before the deposit does", "[deposits]") {
  // Mo. Rev. Stat. § 535.300: pet money is not called a deposit.
  const List both = {held("security", "500.00"), held("pet", "300.00")};
  const json some = owed("damage", "wall-surface", "large-holes", "120.00", "pet");
  const json a = judged("US-MO", both, {some});
  CHECK(a["totals"]["deposit"] == "500.00");
  CHECK(a["totals"]["paidApart"] == a["totals"]["fair"]);
  CHECK(a["totals"]["fairRefund"]["low"] == "500.00");
  // What it does not cover comes out of the deposit: at most 400 less 300.
  const json more = owed("damage", "wall-surface", "large-holes", "400.00", "pet");
  CHECK(judged("US-MO", both, {more})["totals"]["fairRefund"]["low"] == "400.00");
  // It pays for nothing else.
  const json wall = owed("damage", "wall-surface", "large-holes", "120.00", "tenant");
  CHECK(judged("US-MO", both, {wall})["totals"]["paidApart"]["high"] == "0.00");
  CHECK(judged("US-MO", both, {wall})["totals"]["fairRefund"]["low"] == "380.00");
}

TEST_CASE("Where the tenant may owe more than the deposit the landlord's claim and its size are told", "[deposits]") {
  const json a = judged("US-TX", {held("security", "500.00")},
                        {owed("damage", "wall-surface", "large-holes", "700.00", "tenant")});
  REQUIRE(a["totals"]["counterclaim"].is_string());
  CHECK(a["totals"]["counterclaim"].get<std::string>().find("$200.00") != std::string::npos);
  CHECK(a["totals"]["counterclaim"].get<std::string>().find("less, or nothing") != std::string::npos);
  const json none = judged("US-TX", {held("security", "900.00")},
                           {owed("damage", "wall-surface", "large-holes", "700.00", "tenant")});
  CHECK(none["totals"]["counterclaim"].is_null());
}

TEST_CASE("Several tenants are told to whom the refund is due", "[deposits]") {
  const json one = judged("US-TX", {held("security", "500.00")}, {}, {{"occupants", 1}});
  CHECK_FALSE(cautioned(one, "several-tenants"));
  CHECK(cautioned(judged("US-TX", {held("security", "500.00")}, {}, {{"occupants", 2}}), "several-tenants"));
}

TEST_CASE("What a court may award is never promised", "[deposits]") {
  const json a = judged("US-TX", {held("security", "500.00")}, {}, {{"forwardingAddressGiven", "2026-07-20"}});
  CHECK(a["remedies"]["text"].get<std::string>().find("A court may give less, or nothing") != std::string::npos);
}
