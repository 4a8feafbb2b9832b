#include "reading/fact_dates.h"

#include <array>

namespace wearline {

namespace {

constexpr int full_year(std::int64_t two) { return static_cast<int>(two < 70 ? 2000 + two : 1900 + two); }

std::string two_digits(int n) { return n < 10 ? "0" + std::to_string(n) : std::to_string(n); }

/// Year, month and day of an item; 0 where unknown.
NamedDay day_of(const FactItem& item) {
  NamedDay day = item.day;
  if (day.year != 0) return day;
  const bool digits = item.over >= 1 && item.over <= 12 && item.decimals == 2;
  if (item.number == NumberKind::date || item.number == NumberKind::fraction)
    return digits ? NamedDay{full_year(item.under), static_cast<int>(item.over), 0, false} : NamedDay{};
  if (item.kind == FactItem::Kind::number && item.thousandths >= 1'900'000 && item.thousandths < 2'100'000)
    day.year = static_cast<int>(item.thousandths / 1000);
  return day;
}

std::string written(const NamedDay& day) {
  std::string out = std::to_string(day.year);
  if (day.month != 0) out += "-" + two_digits(day.month);
  if (day.month != 0 && day.day != 0) out += "-" + two_digits(day.day);
  return out;
}

/// The class of modifier that the words before an item make ("about", "at least"), looking past one small word.
bool before(const std::vector<FactItem>& items, std::size_t at, const FactRules& rules, std::string_view name) {
  for (std::size_t steps = 0; at-- > 0 && steps < 3; ++steps) {
    if (steps == 0 && items[at].is('.') && at > 0 && rules.in_class(items[at - 1], name)) return true; // "approx. 2012"
    if (rules.in_class(items[at], name)) return true;
    if (!rules.in_class(items[at], "small-word")) return false;
  }
  return false;
}

bool joins(const FactItem& item, const FactRules& rules) { return item.is('-') || rules.in_class(item, "range-word"); }

std::string years_text(std::int64_t thousandths) {
  std::string out = std::to_string(thousandths / 1000);
  if (thousandths % 1000 == 0) return out;
  std::string rest = std::to_string(1000 + thousandths % 1000).substr(1);
  while (rest.back() == '0') rest.pop_back();
  return out + "." + rest;
}

} // namespace

std::string fact_date(const std::vector<FactItem>& items, std::size_t at, const FactRules& rules) {
  const NamedDay day = day_of(items[at]);
  if (day.year < 1900 || day.year > 2099) return {};
  std::string here = written(day);
  if (items[at].decade) return here + "/" + std::to_string(day.year + 9);
  if (at + 2 < items.size() && joins(items[at + 1], rules) && day.day == 0) {
    const NamedDay until = day_of(items[at + 2]);
    if (until.year > day.year && until.year < 2100 && until.day == 0) return here + "/" + written(until);
  }
  if (at >= 2 && joins(items[at - 1], rules) && day.day == 0) {
    const NamedDay since = day_of(items[at - 2]);
    if (since.year != 0 && since.year < day.year && since.day == 0) return written(since) + "/" + here;
  }
  if (before(items, at, rules, "about")) return day.day == 0 ? here + "~" : here;
  if (before(items, at, rules, "no-later")) return "../" + here;
  if (before(items, at, rules, "no-earlier")) return here + "/..";
  return here;
}

std::string fact_span_end(const FactItem& item, const FactItem& other, int year, bool begins) {
  NamedDay day = item.day, with = other.day;
  if (item.number != NumberKind::date) // "the 1st", "20"
    day = {0, with.month, static_cast<int>(item.number == NumberKind::ordinal ? item.over : item.thousandths / 1000),
           false};
  else if (other.number == NumberKind::date && day.year == 0 && with.year != 0 && begins && day.month > with.month)
    --with.year; // "Dec 20 to Jan 5, 2025"
  if (day.year == 0) day.year = year != 0 ? year : with.year;
  return civil_day(day) ? written(day) : std::string();
}

std::string fact_age(const std::vector<FactItem>& items, std::size_t at, const FactRules& rules, std::int64_t more,
                     std::string_view unit) {
  const auto years = [&](const FactItem& n) {
    const std::int64_t value = n.under > 0 ? 1000 * n.over / n.under : n.thousandths;
    return years_text(unit == "months"    ? (value + 6) / 12
                      : unit == "weeks"   ? (value + 26) / 52
                      : unit == "decades" ? value * 10
                                          : value);
  };
  std::string here = years(items[at]);
  if (more != 0) return years_text(items[at].thousandths + more);
  if (at >= 2 && joins(items[at - 1], rules) && items[at - 2].kind == FactItem::Kind::number &&
      items[at - 2].thousandths < items[at].thousandths && items[at - 2].thousandths > 0)
    return years(items[at - 2]) + "/" + here;
  if (at + 2 < items.size() && joins(items[at + 1], rules) && items[at + 2].kind == FactItem::Kind::number &&
      items[at + 2].thousandths > items[at].thousandths)
    return here + "/" + years(items[at + 2]);
  if (at + 1 < items.size() && items[at + 1].is('+')) return here + "/..";
  if (before(items, at, rules, "least") || (at + 1 < items.size() && rules.in_class(items[at + 1], "or-more")))
    return here + "/..";
  if (before(items, at, rules, "most")) return "../" + here;
  if (unit == "seasons" || before(items, at, rules, "about")) return here + "~"; // "two summers ago"
  return here;
}

} // namespace wearline
