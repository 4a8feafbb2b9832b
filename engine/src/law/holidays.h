#pragma once
// Legal holidays as rules, one file a place under rules/holidays: the days that count when the law computes a period of
// time.

#include "wearline/day.h"
#include "wearline/fault.h"

#include <cstdint>
#include <date/date.h>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace wearline {

/// One holiday of every year from `from_year` to `to_year` (of every fourth year and the like, where `every` is set).
struct Holiday {
  enum class Kind : std::uint8_t { fixed, nth_weekday, weekday_from, easter };
  std::string id, name;
  Kind kind = Kind::fixed;
  unsigned month = 1;
  int day = 1; ///< fixed: day of the month; nth_weekday: 1 to 5, or -1 for the last; weekday_from: the first such day
               ///< from here on
  date::weekday weekday; ///< nth_weekday, weekday_from
  int plus = 0;          ///< days added to the day found; for easter: from Easter Sunday
  int from_year = 1900, to_year = 2199;
  int every = 1, phase = 0; ///< only years with year % every == phase
  int if_saturday =
      0; ///< a holiday on a Saturday is also kept this many days later (-1: the Friday before); 0: it is not
  int if_sunday = 0; ///< likewise for a Sunday (1: the Monday after)
};

struct HolidayFile {
  std::string name;                 ///< of the place
  std::string base;                 ///< a file whose holidays hold here too; empty: none
  std::vector<std::string> without; ///< ids of base holidays that do not
  std::vector<Holiday> days;
};

/// The files that were loaded, by name ("US-WA").
class Holidays {
public:
  /// Adds rules/holidays/<id>.json.
  Faults add(std::string_view id, std::string_view json);
  bool has(std::string_view id) const { return files_.find(id) != files_.end(); }
  /// The holiday kept on `day` at this place, or null. A place without a file has none.
  const Holiday* on(std::string_view id, Day day) const;

private:
  std::map<std::string, HolidayFile, std::less<>> files_;
};

/// Easter Sunday of the Western churches.
Day easter(int year);

} // namespace wearline
