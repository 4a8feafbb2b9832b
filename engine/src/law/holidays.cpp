#include "law/holidays.h"

#include "json/fields.h"
#include <algorithm>

namespace wearline {

// The anonymous Gregorian computus, as J. Meeus prints it (Astronomical Algorithms, chapter 8).
Day easter(int year) {
  const int a = year % 19, b = year / 100, c = year % 100, d = b / 4, e = b % 4, f = (b + 8) / 25, g = (b - f + 1) / 3;
  const int h = (19 * a + b - d - g + 15) % 30, i = c / 4, k = c % 4, l = (32 + 2 * e + 2 * i - h - k) % 7;
  const int m = (a + 11 * h + 22 * l) / 451, n = h + l - 7 * m + 114;
  return date::sys_days(date::year{year} / (n / 31) / (n % 31 + 1));
}

namespace {

/// The day of one year on which the holiday falls, before any move off a weekend; empty if it is not kept that year.
std::optional<Day> falls_on(const Holiday& h, int year) {
  if (year < h.from_year || year > h.to_year || year % h.every != h.phase) return std::nullopt;
  const date::year y{year};
  const date::month m{h.month};
  Day day;
  if (h.kind == Holiday::Kind::easter) {
    day = easter(year);
  } else if (h.kind == Holiday::Kind::weekday_from) {
    day = date::sys_days(y / m / h.day);
    day += h.weekday - date::weekday{day};
  } else if (h.kind == Holiday::Kind::fixed) {
    const date::year_month_day ymd = y / m / h.day;
    if (!ymd.ok()) return std::nullopt;
    day = date::sys_days(ymd);
  } else if (h.day < 0) {
    day = date::sys_days(y / m / h.weekday[date::last]);
  } else {
    const auto nth = y / m / h.weekday[static_cast<unsigned>(h.day)];
    if (!nth.ok()) return std::nullopt;
    day = date::sys_days(nth);
  }
  return day + days{h.plus};
}

bool kept_on(const Holiday& h, Day day) {
  const int year = static_cast<int>(date::year_month_day{day}.year());
  // New Year's Day on a Saturday may be kept in the old year.
  for (const int of : {year - 1, year, year + 1}) {
    const auto found = falls_on(h, of);
    if (!found) continue;
    if (*found == day) return true;
    const date::weekday weekday{*found};
    const int shift = weekday == date::Saturday ? h.if_saturday : weekday == date::Sunday ? h.if_sunday : 0;
    if (shift != 0 && *found + days{shift} == day) return true;
  }
  return false;
}

constexpr std::pair<std::string_view, unsigned> weekday_names[] = {
    {"sunday", 0}, {"monday", 1}, {"tuesday", 2}, {"wednesday", 3}, {"thursday", 4}, {"friday", 5}, {"saturday", 6}};

/// "friday" before or "monday" after a Saturday or Sunday, as days from it.
void read_moves(Fields& f, Holiday& h) {
  auto moves = f.object("also");
  if (!moves) return;
  h.if_saturday = moves->word<int>("saturday", {{"friday", -1}, {"monday", 2}, {"none", 0}}, 0);
  h.if_sunday = moves->word<int>("sunday", {{"monday", 1}, {"none", 0}}, 0);
  moves->done();
}

std::optional<std::pair<unsigned, int>> month_and_day(std::string_view text) {
  const auto day = parse_day("2000-" + std::string(text));
  if (!day) return std::nullopt;
  const date::year_month_day ymd{*day};
  return std::pair{static_cast<unsigned>(ymd.month()), static_cast<int>(static_cast<unsigned>(ymd.day()))};
}

void read_rule(Fields& f, Holiday& h) {
  if (f.get("easter")) {
    h.kind = Holiday::Kind::easter;
    const std::string days_from = f.text("easter"); // "+1", "-2", "0"
    const auto size = parse_decimal(
        days_from.empty() || (days_from[0] != '-' && days_from[0] != '+') ? days_from : days_from.substr(1));
    if (!size || size->den != 1 || size->num > 100)
      return f.fault("bad-number", "easter", "This must be days from Easter, such as \"-2\".");
    h.plus = static_cast<int>(days_from[0] == '-' ? -size->num : size->num);
    return;
  }
  if (const std::string on = f.text("on"); !on.empty()) {
    const auto found = month_and_day(on);
    if (!found) return f.fault("bad-date", "on", "This must be a month and a day, such as \"07-04\".");
    h.month = found->first;
    h.day = found->second;
    return;
  }
  h.kind = Holiday::Kind::nth_weekday;
  if (const std::string from = f.text("onOrAfter"); !from.empty()) {
    const auto found = month_and_day(from);
    h.kind = Holiday::Kind::weekday_from;
    h.weekday = date::weekday{f.word<unsigned>("weekday", weekday_names, 8)};
    if (!found || !h.weekday.ok())
      return f.fault("bad-date", "onOrAfter", "This must be a month and a day, such as \"05-18\", with a \"weekday\".");
    h.month = found->first;
    h.day = found->second;
    return;
  }
  h.day = f.word<int>("nth", {{"first", 1}, {"second", 2}, {"third", 3}, {"fourth", 4}, {"fifth", 5}, {"last", -1}}, 0);
  h.weekday = date::weekday{f.word<unsigned>("weekday", weekday_names, 8)};
  h.month = static_cast<unsigned>(f.whole("month").value_or(0));
  if (h.day == 0 || !h.weekday.ok() || h.month < 1 || h.month > 12)
    return f.fault("missing-member", "on",
                   "A holiday is \"on\" a day, or the \"nth\" \"weekday\" of a \"month\", or a \"weekday\" "
                   "\"onOrAfter\" a day, or so many days from \"easter\".");
  h.plus = static_cast<int>(f.whole("plus").value_or(0));
}

} // namespace

Faults Holidays::add(std::string_view id, std::string_view json) {
  auto parsed = parse_json(json);
  if (auto* fault = std::get_if<Fault>(&parsed)) return {std::move(*fault)};
  Faults faults;
  Fields f(std::get<Json>(parsed), "", faults);
  HolidayFile file;
  file.name = f.required_text("name");
  file.base = f.text("base");
  file.without = f.texts("without");
  f.ignore({"place", "about", "sources", "source", "check"});
  Holiday pattern;
  read_moves(f, pattern);
  for (Fields& item : f.objects("days")) {
    Holiday h = pattern;
    h.id = item.required_text("id");
    h.name = item.required_text("name");
    read_rule(item, h);
    read_moves(item, h);
    if (const auto from = item.whole("from")) h.from_year = static_cast<int>(*from);
    if (const auto to = item.whole("to")) h.to_year = static_cast<int>(*to);
    if (const auto every = item.whole("every"); every && *every > 0) h.every = static_cast<int>(*every);
    if (const auto phase = item.whole("phase")) h.phase = static_cast<int>(*phase);
    item.ignore({"source", "note"});
    item.done();
    file.days.push_back(std::move(h));
  }
  f.done();
  if (faults.empty()) files_.insert_or_assign(std::string(id), std::move(file));
  return faults;
}

const Holiday* Holidays::on(std::string_view id, Day day) const {
  const auto file = files_.find(id);
  if (file == files_.end()) return nullptr;
  for (const Holiday& h : file->second.days)
    if (kept_on(h, day)) return &h;
  const auto base = files_.find(file->second.base);
  if (base == files_.end()) return nullptr;
  const auto& without = file->second.without;
  for (const Holiday& h : base->second.days)
    if (kept_on(h, day) && std::find(without.begin(), without.end(), h.id) == without.end()) return &h;
  return nullptr;
}

} // namespace wearline
