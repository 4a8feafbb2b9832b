#include "values/calendar.h"

#include <date/date.h>
#include <type_traits>

namespace wearline {

static_assert(std::is_same_v<Day, date::sys_days> && std::is_same_v<days, date::days>);
static_assert(min_day == date::sys_days(date::year{1900} / 1 / 1) &&
              max_day == date::sys_days(date::year{2199} / 12 / 31));

namespace {
/// Reads exactly `digits` digits at `at` and moves on; -1 where there are not that many.
int number(std::string_view text, std::size_t& at, int digits) {
  int value = 0;
  for (int i = 0; i < digits; ++i, ++at) {
    if (at >= text.size() || text[at] < '0' || text[at] > '9') return -1;
    value = value * 10 + (text[at] - '0');
  }
  return value;
}

bool in_bounds(Day day) { return day >= min_day && day <= max_day; }

/// "2019", "2019-06" or "2019-06-14", whole.
std::optional<DaySpan> parse_calendar_date(std::string_view text) {
  std::size_t at = 0;
  const int y = number(text, at, 4);
  if (y < 1900 || y > 2199) return std::nullopt;
  const date::year year{y};
  if (at == text.size()) return DaySpan{date::sys_days(year / 1 / 1), date::sys_days(year / 12 / 31)};
  if (text[at++] != '-') return std::nullopt;
  const int m = number(text, at, 2);
  if (m < 1 || m > 12) return std::nullopt;
  const date::month month{static_cast<unsigned>(m)};
  if (at == text.size()) return DaySpan{date::sys_days(year / month / 1), date::sys_days(year / month / date::last)};
  if (text[at++] != '-') return std::nullopt;
  const int d = number(text, at, 2);
  if (d < 1 || at != text.size()) return std::nullopt;
  const date::year_month_day ymd = year / month / date::day{static_cast<unsigned>(d)};
  if (!ymd.ok()) return std::nullopt;
  return DaySpan{date::sys_days(ymd), date::sys_days(ymd)};
}

Day bounded(Day day) { return day < min_day ? min_day : day > max_day ? max_day : day; }
} // namespace

std::optional<Day> parse_day(std::string_view text) {
  if (text.size() != 10) return std::nullopt;
  const auto span = parse_calendar_date(text);
  if (!span) return std::nullopt;
  return span->earliest;
}

std::string iso(Day day) {
  const date::year_month_day ymd{day};
  std::string out(10, '-');
  int y = static_cast<int>(ymd.year());
  for (int i = 3; i >= 0; --i, y /= 10) out[static_cast<std::size_t>(i)] = static_cast<char>('0' + y % 10);
  const unsigned m = static_cast<unsigned>(ymd.month()), d = static_cast<unsigned>(ymd.day());
  out[5] = static_cast<char>('0' + m / 10);
  out[6] = static_cast<char>('0' + m % 10);
  out[8] = static_cast<char>('0' + d / 10);
  out[9] = static_cast<char>('0' + d % 10);
  return out;
}

Day add_months(Day day, Months months) {
  date::year_month_day moved = date::year_month_day{day} + date::months{static_cast<int>(months.count())};
  if (!moved.ok()) moved = moved.year() / moved.month() / date::last;
  return date::sys_days(moved);
}

Months whole_months(Day from, Day to) {
  if (to < from) return -whole_months(to, from);
  const date::year_month_day a{from}, b{to};
  int months =
      (static_cast<int>(b.year()) - static_cast<int>(a.year())) * 12 +
      (static_cast<int>(static_cast<unsigned>(b.month())) - static_cast<int>(static_cast<unsigned>(a.month())));
  if (b.day() < a.day()) --months;
  return Months(months);
}

Day DaySpan::likely() const {
  if (earliest == min_day) return latest;
  if (latest == max_day) return earliest;
  return earliest + (latest - earliest) / 2;
}

std::optional<DaySpan> parse_day_span(std::string_view text) {
  const std::size_t slash = text.find('/');
  if (slash == std::string_view::npos) {
    if (!text.empty() && text.back() == '~') {
      text.remove_suffix(1);
      const auto span = parse_calendar_date(text);
      if (!span || text.size() == 10) return std::nullopt;
      const Months months = text.size() == 4 ? Years(1).in_months() : Months(1);
      const Day after_end = span->latest + days{1};
      return DaySpan{bounded(add_months(span->earliest, -months)), bounded(add_months(after_end, months) - days{1})};
    }
    return parse_calendar_date(text);
  }
  const std::string_view from = text.substr(0, slash), to = text.substr(slash + 1);
  if (from == ".." && to == "..") return std::nullopt;
  DaySpan span;
  if (from != "..") {
    const auto start = parse_calendar_date(from);
    if (!start) return std::nullopt;
    span.earliest = start->earliest;
  }
  if (to != "..") {
    const auto end = parse_calendar_date(to);
    if (!end) return std::nullopt;
    span.latest = end->latest;
  }
  if (span.latest < span.earliest || !in_bounds(span.earliest) || !in_bounds(span.latest)) return std::nullopt;
  return span;
}

} // namespace wearline
