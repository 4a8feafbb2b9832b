// One rulebook serves many threads at once. A program of its own runs this under the thread sanitizer.

#include "support/real_rules.h"
#include "wearline/engine.h"

#include <catch2/catch.hpp>
#include <string>
#include <thread>
#include <vector>

using namespace wearline;
using namespace wearline::test;

namespace {

constexpr const char* tenancy =
    R"("tenancy":{"began":"2021-08-01","ended":"2026-07-31","possessionReturned":"2026-07-31","monthlyRent":"1500.00"},)"
    R"("deposits":[{"kind":"security","amount":"1500.00","paid":"2021-08-01"}],)";

std::string case_in(const char* place, int amount) {
  return R"({"wearline":1,"jurisdiction":")" + std::string(place) + "\"," + tenancy +
         R"("statement":{"sent":"2026-09-20"},"lines":[)"
         R"({"id":"1","text":"Replace carpet in bedroom, stained, 6 years old","amount":")" +
         std::to_string(amount) + R"(.50"},{"id":"2","text":"Deep cleaning of oven 3 h at $40/h","amount":"120.00"}]})";
}

/// Everything the engine can be asked, in one string.
std::string asked(int i) {
  static constexpr const char* places[] = {"US-WA", "US-CA", "US-NY", "CA-BC"};
  const std::string subject = case_in(places[i % 4], 700 + i);
  const char* language = i % 2 ? "es" : "en";
  std::string out = assess_text(subject, real_rules(), "2026-10-01");
  out += letter_text(subject, real_rules(), "2026-10-01", R"({"language":")" + std::string(language) + "\"}");
  out += read_statement_text("Carpet 2 x $120.00 $240.00\nPaint hall, two coats $175.00\nTotal $415.00", real_rules(),
                             language);
  return out + catalogue(real_rules(), language);
}

} // namespace

TEST_CASE("Many threads that ask one rulebook at once get the answers that one alone gets", "[threads]") {
  constexpr int questions = 8, threads = 4;
  std::vector<std::string> alone;
  for (int i = 0; i < questions; ++i) alone.push_back(asked(i));

  std::vector<std::vector<std::string>> together(threads);
  std::vector<std::thread> crew;
  for (auto& answers : together)
    crew.emplace_back([&answers] {
      for (int i = 0; i < questions; ++i) answers.push_back(asked(i));
    });
  for (std::thread& each : crew) each.join();

  for (const auto& answers : together) CHECK(answers == alone);
  CHECK(alone[0].find(R"("errors":[{)") == std::string::npos);
}

TEST_CASE("A rulebook filled in one thread answers in another while a second one is filled", "[threads]") {
  Rulebook other;
  std::thread filling([&] { other.add("names.json", "{}"); });
  const std::string answer = asked(3);
  filling.join();
  CHECK(answer == asked(3));
}
