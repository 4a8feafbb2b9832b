// A landlord who sent neither money nor a word for five months, in every place: late, or it is said what would tell.

#include "rulebook/rule_store.h"
#include "support/real_rules.h"
#include "wearline/engine.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <set>

using namespace wearline;
using namespace wearline::test;
using nlohmann::json;

namespace {

json silent(const std::string& place) {
  const std::string c =
      R"({"wearline":1,"jurisdiction":")" + place +
      R"(","side":"adviser","tenancy":{"began":"2022-01-01","ended":"2026-07-01","possessionReturned":"2026-07-01","monthlyRent":"2000.00","forwardingAddressGiven":"2026-06-20"},)"
      R"("deposits":[{"kind":"security","amount":"2000.00","paid":"2022-01-01"}],"statement":{"came":false,"refundPaid":"0.00"},"lines":[]})";
  return json::parse(assess(c, real_rules(), *parse_day("2026-11-29")));
}

bool pays_or_lists(const json& date) {
  static const std::set<std::string> names{"return-deposit", "refund-balance", "itemise", "notice-of-claim"};
  return date["who"] == "landlord" && names.count(date["duty"]) == 1;
}

} // namespace

TEST_CASE("A silent landlord is late wherever every last day is past, whichever rule applies", "[law]") {
  // Both branches of the rule are past: rent stabilized or not, fixed term or not, 30 days or up to 60.
  for (const char* place : {"US-AK", "US-AR", "US-CO", "US-ID", "US-IL", "US-KY", "US-LA", "US-MA", "US-ME", "US-MT",
                            "US-NY", "US-TN", "US-CA", "US-TX", "US-WA"}) {
    INFO(place);
    bool missed = false;
    const json result = silent(place);
    for (const json& date : result["dates"]) missed = missed || (pays_or_lists(date) && date["state"] == "missed");
    CHECK(missed);
  }
}

TEST_CASE("Where a silent landlord's day cannot be told, what is needed is named and asked for", "[law]") {
  for (const auto& [place, pack] : real_rules().rules().packs) {
    INFO(place);
    const json result = silent(place);
    std::set<std::string> asked;
    for (const json& question : result["questions"]) asked.insert(question["asks"]);
    for (const json& date : result["dates"]) {
      if (!pays_or_lists(date) || date["state"] != "cannot-tell") continue;
      INFO(date["id"].get<std::string>() << ": " << date["stateText"].get<std::string>());
      if (date["last"].is_null() && date["needs"].empty()) continue; // the law names no day
      CHECK_FALSE(date["needs"].empty());
      for (const json& need : date["needs"]) CHECK(asked.count(need) == 1);
    }
  }
}

TEST_CASE("No result prints a day that stands for no end", "[law]") {
  for (const auto& [place, pack] : real_rules().rules().packs) {
    INFO(place);
    const std::string whole = silent(place).dump();
    CHECK(whole.find("2199") == std::string::npos);
    CHECK(whole.find(" 0 days after") == std::string::npos);
    CHECK(whole.find("\"0 days after") == std::string::npos);
  }
}
