// Answers questions about days, one a line on standard input, one answer a line on standard output: for the checks that
// compare the engine with other libraries (tests/reference/check-counting.mjs, check-holidays.mjs).
//
//   count <day> <n> <unit> <after|before> <roll> <skip> <exclude-first 0|1> <short-under> <place|->
//       -> <day reached> <last day>
//       roll, skip: of s (Saturdays), u (Sundays), h (legal holidays), or -; skip holds for short periods and business
//       days
//   months <day> <n>     -> the day n calendar months on
//   between <day> <day>  -> completed months
//   holidays <place> <from year> <to year>  -> "day name; day name; ..."

#include "law/counting.h"

#include <date/date.h>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>

using namespace wearline;

namespace {

Holidays load() {
  Holidays holidays;
  for (const auto& entry : std::filesystem::directory_iterator(std::string(WEARLINE_ROOT) + "/engine/rules/holidays")) {
    if (entry.path().extension() != ".json") continue;
    std::ifstream in(entry.path());
    std::stringstream text;
    text << in.rdbuf();
    for (const Fault& fault : holidays.add(entry.path().stem().string(), text.str())) {
      std::cerr << entry.path() << fault.at << ": " << fault.text << '\n';
      std::exit(1);
    }
  }
  return holidays;
}

DaySet set_of(const std::string& letters) {
  const auto has = [&](char c) { return letters.find(c) != std::string::npos; };
  return {has('s'), has('u'), has('h')};
}

Unit unit_of(const std::string& name) {
  if (name == "business-day") return Unit::business_day;
  if (name == "week") return Unit::week;
  if (name == "month") return Unit::month;
  if (name == "year") return Unit::year;
  return name == "hour" ? Unit::hour : Unit::calendar_day;
}

std::string count(std::istringstream& in, const Holidays& holidays) {
  std::string day, unit, direction, roll, skip, place;
  int n = 0, exclude_first = 1, short_under = 0;
  in >> day >> n >> unit >> direction >> roll >> skip >> exclude_first >> short_under >> place;
  CountingRule rule;
  rule.exclude_first = exclude_first == 1;
  rule.roll = set_of(roll);
  rule.short_under = short_under;
  rule.short_skip = rule.business_skip = set_of(skip);
  if (place != "-") rule.holidays = place;
  const Counting counting{&rule, &holidays};
  const auto from = parse_day(day);
  if (!in || !from) return "?";
  const LastDay end = direction == "before" ? last_day_before(*from, n, unit_of(unit), counting)
                                            : last_day_after(*from, n, unit_of(unit), counting);
  return iso(end.reached) + ' ' + iso(end.last);
}

std::string list_holidays(std::istringstream& in, const Holidays& holidays) {
  std::string place, out;
  int from = 0, to = 0;
  in >> place >> from >> to;
  if (!holidays.has(place)) return "?";
  for (Day day = date::sys_days(date::year{from} / 1 / 1); day <= date::sys_days(date::year{to} / 12 / 31);
       day += days{1})
    if (const Holiday* h = holidays.on(place, day)) out += iso(day) + ' ' + h->name + "; ";
  return out;
}

} // namespace

int main() {
  const Holidays holidays = load();
  for (std::string line; std::getline(std::cin, line);) {
    std::istringstream in(line);
    std::string command, a, b;
    in >> command;
    if (command == "count") {
      std::cout << count(in, holidays) << '\n';
    } else if (command == "holidays") {
      std::cout << list_holidays(in, holidays) << '\n';
    } else if (command == "months") {
      int n = 0;
      in >> a >> n;
      std::cout << iso(add_months(*parse_day(a), Months(n))) << '\n';
    } else if (command == "between") {
      in >> a >> b;
      std::cout << whole_months(*parse_day(a), *parse_day(b)).count() << '\n';
    } else {
      std::cout << "?\n";
    }
  }
}
