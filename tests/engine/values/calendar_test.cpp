#include "values/calendar.h"

#include <catch2/catch.hpp>

using namespace wearline;

static Day day(const char* text) { return *parse_day(text); }
static std::string span(const char* text) {
  const auto s = parse_day_span(text);
  return s ? iso(s->earliest) + ".." + iso(s->latest) : "none";
}

TEST_CASE("Only days that exist are days") {
  CHECK(iso(day("2024-02-29")) == "2024-02-29");
  for (const char* bad : {"2026-02-30", "2026-13-01", "2026-00-10", "2025-02-29", "1899-12-31", "2200-01-01",
                          "2026-6-1", "06/01/2026", "2026/06/01", "2026-06/01", "2026-06-00", "2026-06-01T00", ""})
    CHECK_FALSE(parse_day(bad).has_value());
}

// ISO 8601-2:2019 (EDTF); the width of "~" is the case format's own rule.
TEST_CASE("An uncertain date is a span of days") {
  CHECK(span("2019") == "2019-01-01..2019-12-31");
  CHECK(span("2019-06") == "2019-06-01..2019-06-30");
  CHECK(span("2019-06-14") == "2019-06-14..2019-06-14");
  CHECK(span("2019/2021") == "2019-01-01..2021-12-31");
  CHECK(span("../2020") == "1900-01-01..2020-12-31");
  CHECK(span("2019/..") == "2019-01-01..2199-12-31");
  CHECK(span("2019~") == "2018-01-01..2020-12-31");
  CHECK(span("2019-06~") == "2019-05-01..2019-07-31");
  for (const char* bad : {"2021/2019", "2019x06", "2019-13", "2019-00", "2019-06x1", "x/2020", "2020/x", "../..",
                          "2019-06-14~", "19", "2019?", "/", "2019/", "circa 2019"})
    CHECK(span(bad) == "none");
}

TEST_CASE("Months end where the target month ends") {
  CHECK(iso(add_months(day("2026-01-31"), Months(1))) == "2026-02-28");
  CHECK(iso(add_months(day("2024-01-31"), Months(1))) == "2024-02-29");
  CHECK(iso(add_months(day("2026-03-31"), Months(-1))) == "2026-02-28");
  CHECK(whole_months(day("2020-03-01"), day("2026-07-31")) == Months(76));
  CHECK(whole_months(day("2026-01-31"), day("2026-02-28")) == Months(0));
  CHECK(whole_months(day("2026-01-31"), day("2026-03-01")) == Months(1));
}

TEST_CASE("Every day from 1900 to 2199 is written and read back; each month is a span that ends before the next") {
  std::string before;
  int months = 0;
  for (Day d = min_day; d <= max_day; d += days{1}) {
    const std::string text = iso(d);
    // Days in order are words in order.
    if (parse_day(text) != d || text <= before) FAIL(text);
    before = text;
    if (text.substr(8) != "01") continue;
    ++months;
    const auto span_of = *parse_day_span(text.substr(0, 7));
    CHECK(span_of.earliest == d);
    const Day next = span_of.latest + days{1};
    if (next > max_day) continue;
    CHECK(iso(next).substr(8) == "01");
    CHECK(next == add_months(d, Months(1)));
    CHECK(whole_months(d, next) == Months(1));
    CHECK(whole_months(d, span_of.latest) == Months(0));
  }
  CHECK(months == 3600);
  CHECK_FALSE(parse_day_span("1899").has_value());
  CHECK_FALSE(parse_day_span("2200").has_value());
}

// The rule of civil codes and of ISO 8601: a month later is the same date, or the last day of a month that lacks it.
TEST_CASE("Whole months are the most that can be added without passing the later day") {
  for (int i = 0; i < 4000; ++i) {
    const Day from = *parse_day("2019-01-01") + days{i * 7 % 1500}, to = from + days{i * 13 % 900};
    const Months months = whole_months(from, to);
    const bool ends_short = iso(add_months(from, months + Months(1))).substr(8) != iso(from).substr(8);
    CHECK(add_months(from, months) <= to);
    // A shorter month's last day is not yet a whole month later.
    if (!ends_short) CHECK(add_months(from, months + Months(1)) > to);
    CHECK(whole_months(to, from) == -months);
    CHECK(iso(add_months(add_months(from, Years(1).in_months()), Months(-12))).substr(0, 7) == iso(from).substr(0, 7));
  }
}

TEST_CASE("The likely day is the middle, or the end that is known") {
  const auto likely = [](const char* text) { return iso(parse_day_span(text)->likely()); };
  CHECK(likely("2019-06-01/2019-06-11") == "2019-06-06");
  CHECK(likely("../2020-05-05") == "2020-05-05");
  CHECK(likely("2020-05-05/..") == "2020-05-05");
  CHECK(parse_day_span("2020-05-05/..")->open());
  CHECK(parse_day_span("../2020-05-05")->open());
  CHECK_FALSE(parse_day_span("2019")->open());
  CHECK(parse_day_span("2019-06-14")->known());
  CHECK_FALSE(parse_day_span("2019-06")->known());
  // Approximate years at the ends of what is counted stay within it.
  CHECK(span("1900~") == "1900-01-01..1901-12-31");
  CHECK(span("2199~") == "2198-01-01..2199-12-31");
}
