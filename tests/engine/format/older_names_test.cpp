// Cases and answers of version 1: the table of names, and texts rewritten with it.

#include "format/older_names.h"
#include "support/real_rules.h"
#include "wearline/engine.h"

#include <catch2/catch.hpp>
#include <string>

using namespace wearline;

TEST_CASE("Names and words are looked up by their place, both ways", "[format]") {
  const OlderPlace& c = older_document("case");
  const OlderPlace* statement = c.below("statement");
  REQUIRE(statement);
  CHECK(statement->was("deliveryMethod") == "how");
  CHECK(statement->now("how") == "deliveryMethod");
  CHECK(statement->was("sent") == "sent");
  CHECK(statement->now("sent") == "sent");
  CHECK(statement->now("deliveryMethod").empty()); // only version 2 has it
  CHECK(statement->below("sent") == nullptr);
  CHECK(statement->below("deliveryMethod")->word_was("text-message") == "text");
  CHECK(statement->below("deliveryMethod")->word_now("text-message").empty());
  CHECK(c.below("lines")->below("costComponents")->below("kind")->word_now("labour") == "labor");
  CHECK(c.below("lines")->below("kind") == nullptr); // not the kind of a cost
  CHECK(older_document("assessment").below("sources")->below("any id")->was("basis") == "read");
  CHECK(older_document("no such document").below("lines") == nullptr);
}

TEST_CASE("Pointers into a case are told in its names", "[format]") {
  CHECK(older_pointer("/lines/0/conditionAtMoveIn") == "/lines/0/atMoveIn");
  CHECK(older_pointer("/lines/12/costComponents/3/kind") == "/lines/12/parts/3/nature");
  CHECK(older_pointer("/statement/statementReceived") == "/statement/came");
  CHECK(older_pointer("/circumstances/rent-stabilized") == "/circumstances/rent-stabilised");
  CHECK(older_pointer("/tenancy/ended") == "/tenancy/ended");
  CHECK(older_pointer("/deposits/0") == "/deposits/0");
  CHECK(older_pointer("") == "");
}

TEST_CASE("A text is rewritten where something was called otherwise and is else the same bytes", "[format]") {
  const auto assessment = [](std::string_view json) { return in_older_names(json, older_document("assessment")); };
  CHECK(assessment(R"({"wearline":2,"engine":"0"})") == R"({"wearline":1,"engine":"0"})");
  CHECK(assessment(R"({"lines":[{"text":"reason \"verdict\\","reason":"undetermined","verdict":"undetermined"}]})") ==
        R"({"lines":[{"text":"reason \"verdict\\","why":"undetermined","verdict":"cannot-tell"}]})");
  CHECK(assessment(R"({"dates":[{"dependsOn":["/statement/deliveryMethod"],"last":{"earliest":null}}],"law":null})") ==
        R"({"dates":[{"needs":["/statement/how"],"last":{"earliest":null}}],"law":null})");
  CHECK(assessment("{ \"totals\" : { \"reason\" : [ 1, {} ] },\n  \"lines\" : [ ] }\n") ==
        "{ \"totals\" : { \"reason\" : [ 1, {} ] },\n  \"lines\" : [ ] }\n");
  CHECK(assessment("") == "");
  CHECK(assessment(R"({"lines":[{"reason)") == R"({"lines":[{"why")"); // cut short, never read past its end
}

TEST_CASE("What version 1 does not have is left out, wherever it stands", "[format]") {
  const auto reading = [](std::string_view json) { return in_older_names(json, older_document("reading")); };
  CHECK(reading(R"({"wearline":2,"lines":[]})") == R"({"lines":[]})");
  CHECK(reading(R"({"lines":[],"wearline":2})") == R"({"lines":[]})");
  CHECK(reading(R"({"wearline":2})") == "{}");
}

TEST_CASE("A case is answered in its own version, anything else in the one asked for", "[format]") {
  const Rulebook& rules = test::real_rules();
  const auto begins = [](const std::string& text, std::string_view with) {
    return text.substr(0, with.size()) == with;
  };
  const std::string one = R"({"wearline":1,"lines":[{"id":"1","atMoveIn":"good"}]})";
  const std::string two = R"({"wearline":2,"lines":[{"id":"1","conditionAtMoveIn":"good"}]})";
  for (const int asked : {1, 2}) {
    CHECK(begins(assess_text(one, rules, "2026-09-01", asked), R"({"wearline":1,"engine")"));
    CHECK(begins(assess_text(two, rules, "2026-09-01", asked), R"({"wearline":2,"engine")"));
    CHECK(begins(letter_text(two, rules, "2026-09-01", "{}", asked), R"({"wearline":2,"today")"));
    CHECK(begins(assess_text("{", rules, "2026-09-01", asked), R"({"wearline":)" + std::to_string(asked)));
    CHECK(begins(catalogue(rules, "en", asked), R"({"wearline":)" + std::to_string(asked)));
  }
  CHECK(in_older_names(assess_text(two, rules, "2026-09-01"), older_document("assessment")) ==
        assess_text(one, rules, "2026-09-01"));
  CHECK(begins(read_statement_text("Paint 10.00", rules, "en"), R"({"lines")"));
  CHECK(begins(read_statement_text("Paint 10.00", rules, "en", 2), R"({"wearline":2,"lines")"));
}
