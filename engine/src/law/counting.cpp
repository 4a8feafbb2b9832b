#include "law/counting.h"

#include "law/applies.h"

#include <algorithm>
#include <date/date.h>

namespace wearline {

bool Counting::holds(const DaySet& set, Day day) const {
  const date::weekday weekday{day};
  if (set.saturday && weekday == date::Saturday) return true;
  if (set.sunday && weekday == date::Sunday) return true;
  return set.legal_holiday && holiday_on(day) != nullptr;
}

const Holiday* Counting::holiday_on(Day day) const {
  return holidays && rule && !rule->holidays.empty() ? holidays->on(rule->holidays, day) : nullptr;
}

namespace {

constexpr int hours_a_day = 24;

/// `count` days of the kind that is not in `left_out`, stepping from the first day counted; the day of the event is day
/// 0 or day 1.
Day step_days(Day from, int count, int step, const DaySet& left_out, const Counting& counting) {
  Day day = from;
  int counted = !counting.rule->exclude_first && !counting.holds(left_out, day) ? 1 : 0;
  while (counted < count) {
    day += days{step};
    if (!counting.holds(left_out, day)) ++counted;
  }
  return day;
}

/// The day a period reaches before any roll.
LastDay reach(Day from, int count, Unit unit, int step, const Counting& counting) {
  if (count == 0) return {from, from, false};
  const int included = counting.rule->exclude_first ? 0 : 1;
  Day day = from;
  bool skipped = false;
  switch (unit) {
  case Unit::hour:
    day += days{step * ((count + hours_a_day - 1) / hours_a_day)};
    break;
  case Unit::week:
    day += days{step * (count * 7 - included)};
    break;
  case Unit::month:
    day = add_months(from, Months(step * count)) - days{step * included};
    break;
  case Unit::year:
    day = add_months(from, Years(step * count).in_months()) - days{step * included};
    break;
  case Unit::business_day:
    day = step_days(from, count, step, counting.rule->business_skip, counting);
    skipped = true;
    break;
  case Unit::calendar_day:
    skipped = count < counting.rule->short_under;
    day = skipped ? step_days(from, count, step, counting.rule->short_skip, counting)
                  : from + days{step * (count - included)};
    break;
  }
  return {day, day, skipped};
}

Day bounded(Day day) { return std::clamp(day, min_day, max_day); }

} // namespace

LastDay last_day_after(Day from, int count, Unit unit, const Counting& counting) {
  LastDay end = reach(from, count, unit, 1, counting);
  if (count == 0 || unit == Unit::hour) return end;
  while (counting.holds(counting.rule->roll, end.last)) end.last += days{1};
  return end;
}

LastDay last_day_before(Day before, int count, Unit unit, const Counting& counting) {
  return reach(before, count, unit, -1, counting);
}

DaySpan last_days(const DaySpan& from, int low_count, int high_count, Unit unit, bool backwards,
                  const Counting& counting) {
  const auto end = [&](Day day, int count) {
    return bounded(backwards ? last_day_before(day, count, unit, counting).last
                             : last_day_after(day, count, unit, counting).last);
  };
  // Five hours from some time of a day may end on that day.
  const auto whole_hours = [&](int count) { return unit == Unit::hour ? count / hours_a_day * hours_a_day : count; };
  DaySpan out;
  const int near = whole_hours(low_count), far = high_count;
  if (from.earliest != min_day) out.earliest = end(from.earliest, backwards ? far : near);
  if (from.latest != max_day) out.latest = end(from.latest, backwards ? near : far);
  return out;
}

DaySpan governing_day(Governing governing, const DaySpan& a, const DaySpan& b) {
  if (governing == Governing::latest) return {std::max(a.earliest, b.earliest), std::max(a.latest, b.latest)};
  return {std::min(a.earliest, b.earliest), std::min(a.latest, b.latest)};
}

namespace {

/// From which day a period runs, and which events fall on it.
void find_start(const Period& period, bool needs_all, const FactView& view, PeriodCount& out, Grounds* grounds) {
  bool any_happened = false, any_unknown = false;
  DaySpan known, unknown;
  for (const EventId id : period.after) {
    const EventState& s = view.event(id);
    const Ask ask{Ask::Kind::event, static_cast<std::uint16_t>(id)};
    if (grounds && s.assumed) add_ask(grounds->assumed, ask);
    if (s.happened == Tri::no) {
      if (needs_all) out.never = true;
      continue;
    }
    if (!s.happened.known()) {
      if (grounds) add_ask(grounds->unknown, ask);
      unknown = any_unknown ? governing_day(period.governing, unknown, s.on) : s.on;
      any_unknown = true;
      continue;
    }
    if (grounds && !s.on.known()) add_ask(grounds->unknown, ask);
    known = any_happened ? governing_day(period.governing, known, s.on) : s.on;
    any_happened = true;
  }
  if (!any_happened && !any_unknown) out.never = true;
  if (out.never) return;
  out.may_never = any_unknown && (needs_all || !any_happened);
  if (!any_unknown) out.start = known;
  else if (!any_happened) out.start = unknown;
  else if (needs_all) out.start = governing_day(period.governing, known, unknown);
  // An event that may not happen at all can move the start only one way.
  else if (period.governing == Governing::latest) out.start = {known.earliest, std::max(known.latest, unknown.latest)};
  else out.start = {std::min(known.earliest, unknown.earliest), known.latest};
  for (const EventId id : period.after) {
    const EventState& s = view.event(id);
    const bool can_be = s.happened != Tri::no && s.on.latest >= out.start.earliest && s.on.earliest <= out.start.latest;
    if (can_be) out.from.push_back(id);
  }
}

/// The number of units, where the law leaves it to a fact ("as the lease says, at most 60").
void find_count(const Period& period, const FactView& view, PeriodCount& out, Grounds* grounds) {
  out.low_count = out.high_count = *period.count;
  if (period.count_from == FactId::none) return;
  const FactState& s = view.fact(period.count_from);
  const auto most = static_cast<std::int64_t>(*period.count);
  if (s.kind == FactState::Kind::number) {
    out.low_count = static_cast<int>(std::clamp<std::int64_t>(s.low, 0, most));
    out.high_count = static_cast<int>(std::clamp<std::int64_t>(s.high, 0, most));
  } else {
    out.low_count = 0;
    if (grounds) add_ask(grounds->unknown, {Ask::Kind::fact, static_cast<std::uint16_t>(period.count_from)});
  }
}

} // namespace

PeriodCount count_period(const Period& period, bool needs_all, const Deadline& deadline, const Pack& pack,
                         const Holidays& holidays, const FactView& view, Grounds* grounds) {
  PeriodCount out;
  out.period = &period;
  find_start(period, needs_all, view, out, grounds);
  if (!period.count) return out;
  // While the clock does not run nothing asks for the number's fact; the number itself is still said.
  find_count(period, view, out, out.never ? nullptr : grounds);
  if (out.never) return out;
  for (const auto position : deadline.counting) {
    const CountingRule& rule = pack.counting[position];
    const Tri fits = applies(rule, view, nullptr, grounds);
    if (fits == Tri::no) continue;
    const DaySpan last =
        last_days(out.start, out.low_count, out.high_count, period.unit, period.before, Counting{&rule, &holidays});
    out.last =
        out.rule ? DaySpan{std::min(out.last.earliest, last.earliest), std::max(out.last.latest, last.latest)} : last;
    if (!out.rule) out.rule = &rule;
    if (fits.known()) break;
  }
  return out;
}

} // namespace wearline
