// The audit of a whole statement, and the figures in the text of a charge. Common practice, no source, where none is
// named.

#include "judging/line_figures.h"
#include "support/real_rules.h"

#include <catch2/catch.hpp>
#include <random>

using namespace wearline;
using namespace wearline::test;
using nlohmann::json;

namespace {

std::vector<std::string> codes(const json& result) {
  std::vector<std::string> out;
  for (const auto& note : result["audit"]) out.push_back(note["code"]);
  return out;
}
bool noted(const json& result, const std::string& code) {
  const auto all = codes(result);
  return std::find(all.begin(), all.end(), code) != all.end();
}
json audited(const std::string& lines, const std::string& more = "") {
  return assessed(R"({"wearline":1,)" + more + R"("lines":[)" + lines + "]}");
}

std::string product(std::string_view text) {
  const auto p = product_in(text);
  return p ? p->product.plain() : "none";
}

} // namespace

TEST_CASE("A product in a charge's text is read where something shows the price") {
  CHECK(product("Cleaning, 3 hours at $25.00") == "75.00");
  CHECK(product("Cleaning 2.5 hrs @ 30/hr") == "75.00");
  CHECK(product("Hauling, 3 hours at 25") == "75.00"); // "at" after the unit: a price in whole dollars
  CHECK(product("2 doors @ 40") == "80.00");
  CHECK(product("4 x $12.50 keys") == "50.00");
  CHECK(product("$1,250.00 x 2") == "2500.00");
  CHECK(product("12 sq ft \xC3\x97 4.25 = 51.00") == "51.00");
  CHECK(product("3 blinds at 40 each = $120.00") == "120.00");
  CHECK(product_in("2 x 15.00 = 35.00")->total == Money::parse("35.00"));
}

TEST_CASE("Sizes, several products and sums beside a product are no product") {
  CHECK(product("Rug, 8 x 10") == "none");
  CHECK(product("Replace door") == "none");
  CHECK(product("3 hours at $25.00 plus supplies") == "none");
  CHECK(product("3 hours at $25.00, supplies $15.00") == "none");
  CHECK(product("2 x $5.00 and 3 x $7.00") == "none");
  CHECK(product("Apartment 12 at 340 Quince Court") == "none");
  CHECK(product("3 x 99999999.00") == "none");
  CHECK(percentage_in("Sales tax 8.25%") == Share{33, 400});
  CHECK_FALSE(percentage_in("tax 8% and 9%").has_value());
  CHECK_FALSE(percentage_in("tax").has_value());
}

TEST_CASE("A charge above its own figures is noted and cut to them") {
  const json result = audited(
      R"({"id":"a","text":"Cleaning, 3 hours at $25.00","amount":"95.00","kind":"cleaning","element":"whole-unit-cleaning","finding":"heavy-soil","cause":"tenant"})");
  CHECK(noted(result, "product-wrong"));
  CHECK(result["lines"][0]["fair"]["high"] == "75.00");
  CHECK_FALSE(noted(
      audited(
          R"({"id":"a","text":"Cleaning, 3 hours at $25.00","amount":"75.00","kind":"cleaning","element":"whole-unit-cleaning","finding":"heavy-soil"})"),
      "product-wrong"));
}

TEST_CASE("Tax is checked against the rate it names, and against the highest there is") {
  const std::string part =
      R"({"id":"a","amount":"110.00","kind":"damage","element":"wall-surface","finding":"large-holes","parts":[{"nature":"materials","amount":"100.00"},{"nature":"tax","amount":"10.00"}],"text":")";
  CHECK(noted(audited(part + R"(Board, tax 7%"})"), "tax-wrong"));
  CHECK_FALSE(noted(audited(part + R"(Board, tax 10%"})"), "tax-wrong"));
  CHECK_FALSE(noted(audited(part + R"(Board and tax"})"), "tax-high"));
  const std::string repair =
      R"({"id":"a","amount":"100.00","kind":"damage","element":"wall-surface","finding":"large-holes"},)";
  CHECK(noted(audited(repair + R"({"id":"t","amount":"20.00","kind":"other","element":"other","finding":"tax"})"),
              "tax-high")); // 20 % of 100; Canada's highest is 15 % (from memory)
  CHECK_FALSE(noted(audited(repair + R"({"id":"t","amount":"9.00","kind":"other","element":"other","finding":"tax"})"),
                    "tax-high"));
}

TEST_CASE("A deposit that the figures leave out is named") {
  const std::string deposits =
      R"("deposits":[{"kind":"security","amount":"900.00"},{"kind":"pet","amount":"250.00"}],)";
  const std::string line = R"({"id":"a","amount":"400.00","kind":"damage","element":"carpet","finding":"burns"})";
  const json left_out =
      audited(line, deposits + R"("statement":{"statedTotal":"400.00","statedRefund":"500.00"},)"); // 900 - 400
  CHECK(codes(left_out)[0] == "deposit-left-out");
  CHECK(left_out["audit"][0]["text"].get<std::string>().find("250.00") != std::string::npos);
  CHECK(codes(audited(line, deposits + R"("statement":{"statedTotal":"400.00","statedRefund":"600.00"},)"))[0] ==
        "refund-wrong");
  CHECK_FALSE(noted(audited(line, deposits + R"("statement":{"statedTotal":"400.00","statedRefund":"750.00"},)"),
                    "refund-wrong"));
}

TEST_CASE("A list sent years before the keys went back has a wrong day; one sent before leaving has not") {
  const std::string line = R"({"id":"a","amount":"40.00","kind":"damage","element":"carpet","finding":"burns"})";
  const auto sent = [&](const std::string& day) {
    return audited(line, R"("tenancy":{"possessionReturned":"2026-09-30"},"statement":{"sent":")" + day + R"("},)");
  };
  CHECK(noted(sent("2020-10-20"), "dates-sent-long-before-return"));
  CHECK(noted(sent("2025-09-29"), "dates-sent-long-before-return"));
  CHECK_FALSE(noted(sent("2026-09-01"), "dates-sent-long-before-return"));
  CHECK_FALSE(noted(sent("2026-10-20"), "dates-sent-long-before-return"));
}

TEST_CASE("A room's carpet is renewed once, and a day's rent is owed once") {
  const std::string first =
      R"({"id":"a","amount":"500.00","kind":"damage","element":"carpet","finding":"burns","remedy":"replace","place":"Bedroom","cause":"tenant"},)";
  CHECK(noted(
      audited(
          first +
          R"({"id":"b","amount":"450.00","kind":"damage","element":"carpet","finding":"stains","remedy":"replace","place":"bedroom"})"),
      "renewed-twice"));
  CHECK_FALSE(noted(
      audited(
          first +
          R"({"id":"b","amount":"450.00","kind":"damage","element":"carpet","finding":"stains","remedy":"replace","place":"hall"})"),
      "renewed-twice"));
  CHECK_FALSE(noted(
      audited(
          first +
          R"({"id":"b","amount":"45.00","kind":"damage","element":"carpet","finding":"seams-loose","remedy":"repair","place":"bedroom"})"),
      "renewed-twice"));
  const std::string rent =
      R"({"id":"r","amount":"600.00","kind":"rent","element":"rent","finding":"days-held-over","from":"2026-08-01","to":"2026-08-20"},)";
  CHECK(noted(
      audited(
          rent +
          R"({"id":"s","amount":"300.00","kind":"rent","element":"rent","finding":"notice-shortfall","from":"2026-08-20","to":"2026-08-31"})"),
      "same-days-twice"));
  CHECK_FALSE(noted(
      audited(
          rent +
          R"({"id":"s","amount":"300.00","kind":"rent","element":"rent","finding":"notice-shortfall","from":"2026-08-21","to":"2026-08-31"})"),
      "same-days-twice"));
}

TEST_CASE("Flat sums and charges that may cover each other are said") {
  CHECK(noted(audited(R"({"id":"a","amount":"150.00","kind":"fee","element":"admin-fee","finding":"turnover"})"),
              "flat-fee"));
  const json both = audited(
      R"({"id":"a","amount":"300.00","kind":"cleaning","element":"whole-unit-cleaning","finding":"heavy-soil"},{"id":"b","amount":"60.00","kind":"cleaning","element":"appliance-cleaning","finding":"oven-baked-on","atMoveIn":"clean"})");
  CHECK(noted(both, "whole-and-piece-cleaned"));
  CHECK(both["lines"][1]["fair"]["low"] == "0.00");
  CHECK(both["lines"][1]["fair"]["likely"] == "60.00"); // a doubt, not a finding
}

TEST_CASE("A burned carpet that is replaced elsewhere is no patch, and an unnamed place is a doubt") {
  const std::string replaced =
      R"({"id":"a","amount":"900.00","kind":"damage","element":"carpet","finding":"pet-damage","cause":"pet","place":"bedroom"},)";
  CHECK_FALSE(noted(
      audited(
          replaced +
          R"({"id":"b","amount":"400.00","kind":"damage","element":"carpet","finding":"burns","remedy":"replace","place":"hall"})"),
      "patched-and-replaced"));
  const json patch = audited(
      replaced +
      R"({"id":"b","amount":"80.00","kind":"damage","element":"carpet","finding":"burns","remedy":"repair","cause":"tenant"})");
  CHECK(noted(patch, "patched-and-replaced"));
  CHECK(patch["lines"][1]["fair"]["likely"] == "80.00");
  CHECK(patch["lines"][1]["fair"]["low"] == "0.00");
}

TEST_CASE("Any text has a product that is its price times its count, or none") {
  std::mt19937 random(1);
  const std::vector<std::string> words = {"3",        "25.00", "$",  "x",        "@",    "at", "each",
                                          "per",      "/",     "=",  "1,200.50", "%",    " ",  "hours",
                                          "99999999", "0",     ".5", "\xC3\x97", "\xC3", "+",  "("};
  int found = 0;
  for (int i = 0; i < 20'000; ++i) {
    std::string text;
    for (std::size_t n = random() % 12; n > 0; --n) text += words[random() % words.size()] + (random() % 3 ? " " : "");
    const auto product = product_in(text);
    percentage_in(text);
    if (!product) continue;
    ++found;
    if (product->product != product->price.part(product->count)) FAIL(text);
  }
  CHECK(found > 200);
}

TEST_CASE(
    "The same charge three times is noted twice, each beside the first; the same thing in other words less loudly") {
  const json thrice =
      audited(R"({"id":"1","text":"Paint hall","amount":"50.00"},{"id":"2","text":"paint  Hall","amount":"50.00"},)"
              R"({"id":"3","text":"Paint hall","amount":"50.00"},{"id":"4","text":"Paint hall","amount":"51.00"})");
  std::vector<json> twice;
  for (const auto& note : thrice["audit"])
    if (note["code"] == "charged-twice") twice.push_back(note["lines"]);
  CHECK(twice == std::vector<json>{json{"2", "1"}, json{"3", "1"}});
  // In a named room the words, the thing and the fault are the same: the words decide.
  const std::string hall = R"("place":"hall","element":"interior-paint","finding":"furniture-scuff")";
  const json same = audited(R"({"id":"1","text":"Paint","amount":"50.00",)" + hall +
                            R"(},{"id":"2","text":"Paint","amount":"50.00",)" + hall + "}");
  CHECK(noted(same, "charged-twice"));
  CHECK_FALSE(noted(same, "same-thing-twice"));
  const json other = audited(R"({"id":"1","text":"Paint","amount":"50.00",)" + hall +
                             R"(},{"id":"2","text":"Scuffs","amount":"70.00",)" + hall + "}");
  CHECK(noted(other, "same-thing-twice"));
  CHECK_FALSE(noted(other, "charged-twice"));
}

TEST_CASE("Days of rent are compared with days of rent alone, and the day both periods hold is enough") {
  const auto twice = [](const std::string& kind, const std::string& from, const std::string& more = "") {
    return noted(
        audited(
            R"({"id":"1","text":"First sum","amount":"500.00","kind":"rent","from":"2026-06-01","to":"2026-06-10"},)"
            R"({"id":"2","text":"Second sum","amount":"400.00","kind":")" +
            kind + R"(","from":")" + from + R"(","to":"2026-06-30")" + more + "}"),
        "same-days-twice");
  };
  CHECK(twice("rent", "2026-06-05"));
  CHECK(twice("rent", "2026-06-10"));
  CHECK_FALSE(twice("rent", "2026-06-11"));
  CHECK_FALSE(twice("utility", "2026-06-05"));
  CHECK_FALSE(twice("rent", "2026-06-05", R"(,"credit":true)"));
}
