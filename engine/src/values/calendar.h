#pragma once
// Counting in calendar months, and uncertain days.

#include "values/months.h"
#include "wearline/day.h"

#include <optional>
#include <string_view>

namespace wearline {

/// `day` moved by whole calendar months; a day the target month lacks becomes its last day (31 January + 1 month =
/// 28/29 February).
Day add_months(Day day, Months months);

/// Completed months from one day to a later one: 31 January to 28 February is 0, to 1 March is 1. Negative if `to` is
/// earlier.
Months whole_months(Day from, Day to);

/// What is known of a day: it lies from `earliest` to `latest`, both inclusive. Open ends are `first_day` and
/// `last_day`.
struct DaySpan {
  Day earliest = min_day;
  Day latest = max_day;

  constexpr bool known() const { return earliest == latest; }
  constexpr bool open() const { return earliest == min_day || latest == max_day; }
  /// The middle of the span; of a half-open span its closed end. The engine's likely day.
  Day likely() const;
  friend constexpr bool operator==(const DaySpan&, const DaySpan&) = default;
};

/// The EDTF subset of case files (ISO 8601-2:2019): "2019", "2019-06", "2019-06-14", "2019/2021", "../2020", "2019/..",
/// and the approximate "2019~" (one year either side), "2019-06~" (one month either side). Empty optional: not of these
/// forms.
std::optional<DaySpan> parse_day_span(std::string_view text);

} // namespace wearline
