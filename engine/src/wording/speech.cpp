#include "wording/speech.h"

#include <date/date.h>

namespace wearline {

namespace {
std::string_view digits(unsigned value, char (&buffer)[4]) {
  std::size_t at = sizeof buffer;
  do buffer[--at] = static_cast<char>('0' + value % 10);
  while (value /= 10, value != 0 && at > 0);
  return {buffer + at, sizeof buffer - at};
}
} // namespace

std::string Speech::money(Money m) const {
  const bool dollars = currency_ == "USD" || currency_ == "CAD";
  if (!dollars) return m.grouped();
  return m < Money() ? "-$" + (Money() - m).grouped() : "$" + m.grouped();
}

std::string Speech::money(const Range<Money>& m) const {
  if (m.exact()) return money(m.low());
  return say("number.from-to", {{"low", money(m.low())}, {"high", money(m.high())}});
}

std::string Speech::day(Day d) const {
  const date::year_month_day ymd{d};
  char number[4], year[4];
  std::string key = "month.";
  key += digits(static_cast<unsigned>(ymd.month()), number);
  const std::string month = say(key);
  return say("date.long", {{"month", month},
                           {"day", digits(static_cast<unsigned>(ymd.day()), number)},
                           {"year", digits(static_cast<unsigned>(static_cast<int>(ymd.year())), year)}});
}

std::string Speech::weekday(Day d) const {
  std::string key = "weekday.";
  key += static_cast<char>('0' + date::weekday{d}.c_encoding());
  return say(key);
}

std::string Speech::span(const DaySpan& d) const {
  if (d.known()) return day(d.earliest);
  if (d.earliest == min_day) return say("date.until", {{"day", day(d.latest)}});
  if (d.latest == max_day) return say("date.since", {{"day", day(d.earliest)}});
  return say("date.between", {{"from", day(d.earliest)}, {"to", day(d.latest)}});
}

std::string Speech::length(Age age) const {
  const std::int64_t months = age.completed().count();
  const std::int64_t years = months / 12, rest = months % 12;
  const auto year_text = [&] {
    return say(years == 1 ? "length.year.one" : "length.year.many", {{"n", std::to_string(years)}});
  };
  const auto month_text = [&] {
    return say(rest == 1 ? "length.month.one" : "length.month.many", {{"n", std::to_string(rest)}});
  };
  if (years == 0 && rest == 0) return say("length.days");
  if (years == 0) return month_text();
  if (rest == 0) return year_text();
  return say("length.both", {{"years", year_text()}, {"months", month_text()}});
}

std::string Speech::about(Age age) const {
  const std::int64_t months = (age.num * 2 + age.den) / (age.den * 2);
  return length(Age::of(Months(months < 24 ? months : (months + 6) / 12 * 12)));
}

std::string Speech::percent(Share share) const {
  const __int128 tenths =
      (static_cast<__int128>(share.num) * 2000 + share.den) / (static_cast<__int128>(share.den) * 2);
  const auto whole = static_cast<std::int64_t>(tenths / 10), rest = static_cast<std::int64_t>(tenths % 10);
  std::string out = std::to_string(whole);
  if (rest != 0) out += '.' + std::to_string(rest);
  return out + '%';
}

std::string Speech::quantity(const Quantity& q) const {
  std::string number = std::to_string(q.thousandths / 1000);
  if (std::int64_t rest = q.thousandths % 1000; rest != 0) {
    std::string decimals = std::to_string(1000 + rest).substr(1);
    while (decimals.back() == '0') decimals.pop_back();
    number += '.' + decimals;
  }
  if (q.unit.empty()) return number;
  const std::string key = "unit." + q.unit + (q.thousandths == 1000 ? ".one" : ".many");
  return number + ' ' + (has(key) ? say(key) : q.unit);
}

} // namespace wearline
