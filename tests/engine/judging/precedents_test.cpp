// What decided lines like a charge say of it, counted by hand.

#include "judging/precedents.h"

#include <catch2/catch.hpp>

using namespace wearline;

namespace {

/// Carpet burns that were decided, with the share of each that was allowed, in percent.
Precedents decided(std::initializer_list<int> percents) {
  std::string lines;
  int number = 0;
  for (const int percent : percents)
    lines += (lines.empty() ? "" : ",") + std::string(R"({"id":"X-)") + std::to_string(++number) +
             R"(#0","kind":"damage","element":"carpet","finding":"burns","state":"plain","percent":)" +
             std::to_string(percent) + "}";
  Precedents out;
  CHECK(out.load(R"({"shrinkage":1,"shown":9,"fewest":3,"lines":[)" + lines + "]}").empty());
  return out;
}

struct Burnt {
  Element carpet;
  Finding burns;
  Subject subject;
  Line line;
  Burnt() {
    carpet.id = "carpet";
    carpet.kind = line.kind = ChargeKind::damage;
    burns.id = "burns";
    subject.element = &carpet;
    subject.finding = &burns;
  }
};

} // namespace

TEST_CASE("Decided lines most like a charge are told as nothing, a part and all") {
  const Burnt burnt;
  const Precedents mixed = decided({0, 50, 100, 99, 0});
  const Alike alike = mixed.alike(burnt.line, burnt.subject);
  CHECK(alike.most_alike.size() == 5);
  CHECK(alike.likeness == Likeness::same_fault);
  CHECK(alike.nothing == 2);
  CHECK(alike.part == 2);
  CHECK(alike.all == 1);
  CHECK(decided({0, 100}).alike(burnt.line, burnt.subject).most_alike.empty()); // two are too few
  CHECK(mixed.alike(burnt.line, burnt.subject, "X-3").all == 0);                // a decision left out
}

TEST_CASE("How damage to a thing was decided says nothing of wear on it") {
  Burnt worn;
  worn.burns.id = "thin-from-walking";
  Precedents torn;
  const auto line = [](int number, const char* more) {
    return R"({"id":"X-)" + std::to_string(number) +
           R"(#0","kind":"damage","element":"carpet","finding":"torn","percent":100)" + more + "}";
  };
  const auto load = [&](const char* more) {
    CHECK(torn.load(R"({"shrinkage":1,"shown":9,"fewest":3,"lines":[)" + line(1, more) + "," + line(2, more) + "," +
                    line(3, more) + "]}")
              .empty());
  };
  load(R"(,"usual":"damage")");
  CHECK(torn.alike(worn.line, worn.subject).all == 3); // what depends on the facts is like either
  worn.burns.usual = Usual::wear;
  CHECK(torn.alike(worn.line, worn.subject).most_alike.empty());
  load("");
  CHECK(torn.alike(worn.line, worn.subject).all == 3);
}

TEST_CASE("The share most often allowed is the median of its class") {
  const Burnt burnt;
  CHECK(decided({0, 20, 100}).likely(burnt.line, burnt.subject) == Share{20, 100});
  CHECK(decided({0, 0, 100}).likely(burnt.line, burnt.subject) == Share::none());
  CHECK_FALSE(decided({}).likely(burnt.line, burnt.subject).has_value());
  CHECK_FALSE(decided({0, 20, 100}).likely(burnt.line, Subject()).has_value()); // nothing says what it is
}
