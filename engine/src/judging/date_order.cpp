#include "judging/date_order.h"

#include "values/calendar.h"

namespace wearline {

namespace {

using Known = std::optional<DaySpan>;

/// A list of what was damaged is made when somebody leaves, at the earliest some weeks before, never this many months
/// (common practice, no source).
constexpr Months list_ahead(12);

Known long_before(const Known& day) {
  if (!day || day->earliest <= min_day) return std::nullopt;
  const Day earliest = add_months(day->earliest, -list_ahead);
  return DaySpan{earliest, earliest};
}

/// The second day lies before the first for certain.
bool before(const Known& later, const Known& earlier) { return later && earlier && later->latest < earlier->earliest; }

} // namespace

std::vector<DateClash> impossible_dates(const Case& c) {
  std::vector<DateClash> out;
  const Tenancy& t = c.tenancy;
  const Statement& s = c.statement;
  const auto check = [&](const Known& later, const Known& earlier, std::string_view code, std::string asks,
                         std::size_t line = DateClash::no_line) {
    if (before(later, earlier)) out.push_back({code, std::move(asks), line});
  };
  check(t.ended, t.began, "dates-ended-before-began", "/tenancy/ended");
  check(t.possession_returned, t.began, "dates-returned-before-began", "/tenancy/possessionReturned");
  check(s.dated, t.began, "dates-dated-before-began", "/statement/dated");
  check(s.sent, t.began, "dates-sent-before-began", "/statement/sent");
  if (!before(s.dated, t.began))
    check(s.dated, long_before(t.possession_returned), "dates-dated-long-before-return", "/statement/dated");
  if (!before(s.sent, t.began))
    check(s.sent, long_before(t.possession_returned), "dates-sent-long-before-return", "/statement/sent");
  check(s.received, s.sent, "dates-received-before-sent", "/statement/received");
  check(s.received, t.began, "dates-received-before-began", "/statement/received");
  check(s.refund_sent, t.began, "dates-refund-before-began", "/statement/refundSent");
  for (std::size_t i = 0; i < c.lines.size(); ++i) {
    const std::string at = "/lines/" + std::to_string(i);
    check(c.lines[i].to, c.lines[i].from, "dates-period-reversed", at + "/to", i);
    // A thing put in after the tenant had left cannot be what the tenant damaged.
    check(t.possession_returned, c.lines[i].installed, "dates-installed-after-return", at + "/installed", i);
  }
  return out;
}

} // namespace wearline
