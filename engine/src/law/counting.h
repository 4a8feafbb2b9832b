#pragma once
// Counting periods of law: the last day of so many days, business days, weeks, months, years or hours from an event.

#include "law/facts.h"
#include "law/holidays.h"
#include "law/pack.h"
#include "values/calendar.h"

#include <vector>

namespace wearline {

/// How one law counts, with the holidays of its place.
struct Counting {
  const CountingRule* rule = nullptr;
  const Holidays* holidays = nullptr;

  bool holds(const DaySet& set, Day day) const;
  /// The legal holiday kept on `day`, or null (also where holidays do not matter).
  const Holiday* holiday_on(Day day) const;
};

/// The end of a period: the day the count reaches, and the last day after moving past the days the law rolls over.
struct LastDay {
  Day reached;
  Day last;
  bool skipped = false; ///< some days were left out of the count
};

/// The last day of `count` units from `from` (count >= 0). The day of the event is left out unless the rule says
/// otherwise; a period of zero is the day itself and never rolls; hours are counted in whole days and never roll, as
/// the hour of an event is not known. A month ends on the same numbered day, or the last day of a shorter month.
LastDay last_day_after(Day from, int count, Unit unit, const Counting& counting);

/// The same backwards: the day that lies `count` units before `before`. It is not rolled.
LastDay last_day_before(Day before, int count, Unit unit, const Counting& counting);

/// A period from a day that is known only within limits. `low_count` to `high_count` where the number itself is not
/// certain. An open end of `from` stays open. Hours that are no whole days end on one of two days.
DaySpan last_days(const DaySpan& from, int low_count, int high_count, Unit unit, bool backwards,
                  const Counting& counting);

/// Why a period has the last day it has.
struct PeriodCount {
  const Period* period = nullptr;
  const CountingRule* rule = nullptr; ///< the counting rule that was used
  bool never = false;                 ///< its events are known not to have happened: the time does not run
  bool may_never = false;             ///< whether any of its events happened is unknown
  DaySpan start;                      ///< the day it runs from
  std::vector<EventId> from;          ///< the events that fall on that day, or may
  int low_count = 0, high_count = 0;
  DaySpan last;
};

/// The last day of one period for one case. With `needs_all`, one event that did not happen stops the clock; without,
/// such events are left aside. `grounds` (may be null) gains the unknown events and facts it hangs on.
PeriodCount count_period(const Period& period, bool needs_all, const Deadline& deadline, const Pack& pack,
                         const Holidays& holidays, const FactView& view, Grounds* grounds);

/// Later or earlier of two spans.
DaySpan governing_day(Governing governing, const DaySpan& a, const DaySpan& b);

} // namespace wearline
