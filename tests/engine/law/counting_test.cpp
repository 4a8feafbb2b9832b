// Counting periods of law, one rule at a time. 240,000 generated periods stand against date-fns in
// tests/reference/check-counting.mjs.

#include "support/small_law.h"

using namespace wearline;
using namespace wearline::test;

namespace {

/// The last day of `count` units from a day, by a rule of the letters s, u, h (Saturday, Sunday, legal holiday of
/// `place`).
std::string last(const std::string& from, int count, Unit unit, const std::string& roll,
                 const std::string& place = "US-WA", bool exclude_first = true) {
  CountingRule rule;
  const auto has = [&](char c) { return roll.find(c) != std::string::npos; };
  rule.roll = {has('s'), has('u'), has('h')};
  rule.business_skip = {true, true, true};
  rule.holidays = place;
  rule.exclude_first = exclude_first;
  return iso(last_day_after(*parse_day(from), count, unit, Counting{&rule, &real_rules().rules().holidays}).last);
}

} // namespace

TEST_CASE("Thirty days from the end of July end on a Sunday and move to Monday", "[law]") {
  // RCW 1.12.040: first day out, last day in, unless it is a holiday, Saturday or Sunday, which is then also left out.
  CHECK(last("2026-07-31", 30, Unit::calendar_day, "suh") == "2026-08-31");
  CHECK(last("2026-07-31", 30, Unit::calendar_day, "") == "2026-08-30");
}

TEST_CASE("Ohio moves past a Sunday or holiday, not past a Saturday", "[law]") {
  // Ohio Rev. Code § 1.14. 5 September 2026 is a Saturday, 7 September Labor Day.
  CHECK(last("2026-08-06", 30, Unit::calendar_day, "uh", "US-OH") == "2026-09-05");
  CHECK(last("2026-08-07", 30, Unit::calendar_day, "uh", "US-OH") == "2026-09-08");
}

TEST_CASE("A holiday kept on the Friday before moves a last day where the law keeps it so", "[law]") {
  // 4 July 2026 is a Saturday: kept on Friday 3 July in Washington (RCW 1.16.050), not in New York (Gen. Constr. Law §
  // 24).
  CHECK(last("2026-06-13", 20, Unit::calendar_day, "suh", "US-WA") == "2026-07-06");
  CHECK(last("2026-06-13", 20, Unit::calendar_day, "suh", "US-NY") == "2026-07-03");
}

TEST_CASE("Business days leave out weekends and holidays", "[law]") {
  // A.R.S. § 33-1321(D): fourteen days, excluding Saturdays, Sundays and other legal holidays. Labor Day is 7 September
  // 2026.
  CHECK(last("2026-08-26", 14, Unit::business_day, "h", "US-AZ") == "2026-09-16");
  CHECK(last("2026-07-31", 1, Unit::business_day, "") == "2026-08-03");
}

TEST_CASE("Georgia leaves weekends and holidays out of periods under seven days alone", "[law]") {
  // O.C.G.A. § 1-3-1(d)(3): "less than seven days". 3 September 2026 is a Thursday, 7 September Labor Day.
  CountingRule rule;
  rule.roll = rule.short_skip = {true, true, true};
  rule.short_under = 7;
  rule.holidays = "US-GA";
  const Counting georgia{&rule, &real_rules().rules().holidays};
  const auto last_of = [&](int count) {
    return iso(last_day_after(*parse_day("2026-09-03"), count, Unit::calendar_day, georgia).last);
  };
  CHECK(last_of(6) == "2026-09-14"); // 4, 8, 9, 10, 11, 14
  CHECK(last_of(7) == "2026-09-10");
}

TEST_CASE("A month ends on the same numbered day, or the last of a shorter month", "[law]") {
  // Colo. Rev. Stat. § 2-4-108(3): a month to the same numerical day, or the last day of the month if there is none.
  CHECK(last("2025-10-31", 1, Unit::month, "") == "2025-11-30");
  CHECK(last("2025-10-31", 1, Unit::month, "suh", "US-CO") == "2025-12-01");
  CHECK(last("2024-01-31", 1, Unit::month, "") == "2024-02-29");
  CHECK(last("2024-02-29", 1, Unit::year, "") == "2025-02-28");
}

TEST_CASE("Weeks are sevens of days, hours whole days that do not roll", "[law]") {
  CHECK(last("2026-07-31", 3, Unit::week, "") == "2026-08-21");
  CHECK(last("2026-07-31", 72, Unit::hour, "suh") == "2026-08-03");
  CHECK(last("2026-07-30", 72, Unit::hour, "suh") == "2026-08-02"); // a Sunday: hours run on
}

TEST_CASE("Counting the first day ends a period one day sooner", "[law]") {
  CHECK(last("2026-07-01", 10, Unit::calendar_day, "", "US-WA", false) == "2026-07-10");
  CHECK(last("2026-07-01", 1, Unit::month, "", "US-WA", false) == "2026-07-31");
}

TEST_CASE("No days at all is the day itself, even a Sunday", "[law]") {
  CHECK(last("2026-08-30", 0, Unit::calendar_day, "suh") == "2026-08-30");
}

TEST_CASE("A start known only within limits gives a last day within limits", "[law]") {
  CountingRule rule;
  const Counting counting{&rule, nullptr};
  const DaySpan july{*parse_day("2026-07-01"), *parse_day("2026-07-31")};
  CHECK(said(last_days(july, 30, 30, Unit::calendar_day, false, counting)) == "2026-07-31..2026-08-30");
  CHECK(said(last_days(july, 14, 14, Unit::calendar_day, true, counting)) == "2026-06-17..2026-07-17");
  CHECK(said(last_days({*parse_day("2026-07-01"), max_day}, 30, 30, Unit::calendar_day, false, counting)) ==
        "2026-07-31..open");
  // Thirty hours from some time of a day may end on the next day or on the one after.
  const DaySpan day{*parse_day("2026-07-01"), *parse_day("2026-07-01")};
  CHECK(said(last_days(day, 30, 30, Unit::hour, false, counting)) == "2026-07-02..2026-07-03");
}

TEST_CASE("A day far in the future stays within the days a case may speak of", "[law]") {
  CountingRule rule;
  const Counting counting{&rule, nullptr};
  const DaySpan late{*parse_day("2199-12-01"), *parse_day("2199-12-01")};
  CHECK(last_days(late, 2, 2, Unit::year, false, counting).latest == max_day);
}

TEST_CASE("Easter and the days that hang on it", "[law]") {
  // Easter Sundays as published: 2020-04-12, 2025-04-20, 2026-04-05, 2038-04-25 (the latest there can be).
  CHECK(iso(easter(2020)) == "2020-04-12");
  CHECK(iso(easter(2025)) == "2025-04-20");
  CHECK(iso(easter(2026)) == "2026-04-05");
  CHECK(iso(easter(2038)) == "2038-04-25");
  const Holidays& holidays = real_rules().rules().holidays;
  REQUIRE(holidays.on("CA-BC", *parse_day("2026-04-03")));
  CHECK(holidays.on("CA-BC", *parse_day("2026-04-03"))->id == "good-friday");
  CHECK(holidays.on("CA-BC", *parse_day("2026-05-18"))->id == "victoria"); // the Monday before 25 May
  CHECK_FALSE(holidays.on("CA-BC", *parse_day("2026-05-25")));
}

TEST_CASE("A new year's day on a Saturday is kept in the old year", "[law]") {
  const Holidays& holidays = real_rules().rules().holidays;
  REQUIRE(holidays.on("US", *parse_day("2021-12-31"))); // 5 U.S.C. § 6103(b)
  CHECK(holidays.on("US", *parse_day("2021-12-31"))->id == "new-year");
  CHECK_FALSE(holidays.on("US-NY", *parse_day("2021-12-31")));
}

TEST_CASE("A place may take over another's holidays and leave some out", "[law]") {
  Holidays holidays;
  CHECK(holidays
            .add("A", R"({"name":"A","days":[{"id":"x","name":"X","on":"05-01"},{"id":"y","name":"Y","on":"05-02"}]})")
            .empty());
  CHECK(
      holidays
          .add(
              "B",
              R"({"name":"B","base":"A","without":["y"],"days":[{"id":"z","name":"Z","on":"05-03","from":2020,"every":2,"phase":0}]})")
          .empty());
  CHECK(holidays.on("B", *parse_day("2026-05-01")));
  CHECK_FALSE(holidays.on("B", *parse_day("2026-05-02")));
  CHECK(holidays.on("B", *parse_day("2026-05-03")));
  CHECK_FALSE(holidays.on("B", *parse_day("2025-05-03")));
  CHECK_FALSE(holidays.on("B", *parse_day("2018-05-03")));
  CHECK_FALSE(holidays.on("C", *parse_day("2026-05-01")));
}

TEST_CASE("A holiday file with a mistake is refused with its place", "[law]") {
  Holidays holidays;
  const auto fault = [&](const char* json) {
    const Faults faults = holidays.add("X", json);
    return faults.empty() ? "ok" : faults.front().code + " " + faults.front().at;
  };
  CHECK(fault(R"({"name":"X","days":[{"id":"a","name":"A","on":"02-30"}]})") == "bad-date /days/0/on");
  CHECK(fault(R"({"name":"X","days":[{"id":"a","name":"A","nth":"sixth","weekday":"monday","month":5}]})") ==
        "unknown-name /days/0/nth");
  CHECK(fault(R"({"name":"X","days":[{"id":"a","name":"A","nth":"first","weekday":"moonday","month":5}]})") ==
        "unknown-name /days/0/weekday");
  CHECK(fault(R"({"name":"X","days":[{"id":"a","name":"A","on":"05-01","evry":2}]})") == "unknown-member /days/0/evry");
  CHECK(fault("[").rfind("not-json", 0) == 0);
  CHECK_FALSE(holidays.has("X"));
}
