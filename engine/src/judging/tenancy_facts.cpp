#include "judging/line_judgment.h"

#include <algorithm>
#include <date/date.h>

namespace wearline {

namespace {

/// The rent the tenant owes: where a housing program paid part of it, the tenant's own part (24 CFR 982.313(c)).
std::optional<Money> own_rent(const Case& c) {
  const auto part = c.circumstances.find("tenant-rent");
  const Money* own = part == c.circumstances.end() ? nullptr : std::get_if<Money>(&part->second);
  return own ? *own : c.tenancy.monthly_rent;
}

} // namespace

TenancyFacts tenancy_facts(const Case& c, Day today) {
  TenancyFacts t;
  t.move_in = c.tenancy.began;
  if (c.tenancy.possession_returned) t.move_out = *c.tenancy.possession_returned;
  else if (c.tenancy.ended) t.move_out = *c.tenancy.ended;
  else if (c.statement.dated) t.move_out = *c.statement.dated;
  else if (c.statement.sent) t.move_out = *c.statement.sent;
  else t.move_out = {today, today};
  t.move_out_assumed = !c.tenancy.possession_returned && !c.tenancy.ended;
  if (t.move_in) {
    t.stay.months = std::max(Months(), whole_months(t.move_in->latest, t.move_out.earliest));
    t.stay.months_most = std::max(Months(), whole_months(t.move_in->earliest, t.move_out.latest));
  }
  t.stay.occupants = c.tenancy.occupants;
  t.stay.nothing_recorded = c.records.move_in.made == Tri::no && c.records.photos_at_move_in == Tri::no;
  t.stay.nothing_shown = c.records.move_out.made == Tri::no && c.records.photos_at_move_out == Tri::no;
  t.monthly_rent = own_rent(c);
  t.rent_paid_through = c.tenancy.rent_paid_through;
  return t;
}

std::optional<Range<Money>> rent_for_period(const Line& line, const TenancyFacts& tenancy) {
  if (!tenancy.monthly_rent || !line.from || !line.to || !line.from->known() || !line.to->known()) return std::nullopt;
  Day from = line.from->earliest, to = line.to->earliest;
  if (tenancy.rent_paid_through && tenancy.rent_paid_through->known())
    from = std::max(from, tenancy.rent_paid_through->earliest + days{1});
  if (line.relet_on && line.relet_on->known()) to = std::min(to, line.relet_on->earliest - days{1});
  if (to < from) return Range<Money>(Money());
  const Money rent = *tenancy.monthly_rent;
  Money actual;
  std::int64_t thirtieths = 0;
  for (Day at = from; at <= to;) {
    const date::year_month_day ymd{at};
    const Day month_end = date::sys_days(ymd.year() / ymd.month() / date::last);
    const Day until = std::min(month_end, to);
    const std::int64_t in_month = static_cast<unsigned>(date::year_month_day{month_end}.day()),
                       count = (until - at).count() + 1;
    actual += rent.part({count, in_month});
    thirtieths += count == in_month ? 30 : std::min<std::int64_t>(count, 30);
    at = until + days{1};
  }
  const std::int64_t count = (to - from).count() + 1;
  const Money by_thirty = rent.part({thirtieths, 30}), by_year = rent.part({count * 12, 365});
  return Range<Money>(std::min({actual, by_thirty, by_year}), actual, std::max({actual, by_thirty, by_year}));
}

} // namespace wearline
