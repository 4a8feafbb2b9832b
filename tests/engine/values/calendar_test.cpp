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
                          "2026-6-1", "06/01/2026", "2026-06-01T00", ""})
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
  for (const char* bad : {"2021/2019", "../..", "2019-06-14~", "19", "2019?", "/", "2019/", "circa 2019"})
    CHECK(span(bad) == "none");
}

TEST_CASE("Months end where the target month ends") {
  CHECK(iso(add_months(day("2026-01-31"), 1)) == "2026-02-28");
  CHECK(iso(add_months(day("2024-01-31"), 1)) == "2024-02-29");
  CHECK(iso(add_months(day("2026-03-31"), -1)) == "2026-02-28");
  CHECK(whole_months(day("2020-03-01"), day("2026-07-31")) == 76);
  CHECK(whole_months(day("2026-01-31"), day("2026-02-28")) == 0);
  CHECK(whole_months(day("2026-01-31"), day("2026-03-01")) == 1);
}
