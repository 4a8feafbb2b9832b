// What a rulebook says of the files it was given.

#include "wearline/engine.h"

#include <catch2/catch.hpp>

using namespace wearline;

TEST_CASE("A rules file that waits for one that did not come is reported", "[rulebook]") {
  Rulebook rulebook;
  CHECK(rulebook.pending().empty());
  CHECK(rulebook.add("law/US-WA.json", R"({"jurisdiction":"US-WA"})").empty());
  const Faults without_facts = rulebook.pending();
  REQUIRE(without_facts.size() == 1);
  CHECK(without_facts.front().code == "waits-for-others");
  CHECK(without_facts.front().at == "law/US-WA.json#");
}

TEST_CASE("Sentences of a pack that did not come are reported", "[rulebook]") {
  Rulebook rulebook;
  CHECK(rulebook.add("facts.json", R"({"facts":[],"events":[]})").empty());
  CHECK(rulebook.add("duties.json", R"({"duties":[]})").empty());
  CHECK(rulebook.add("papers.json", R"({"papers":[]})").empty());
  rulebook.add("law-es/US-XX.json", R"({"jurisdiction":"US-XX","rules":{}})");
  const Faults waiting = rulebook.pending();
  REQUIRE(waiting.size() == 1);
  CHECK(waiting.front().at == "law-es/US-XX.json#");
}
