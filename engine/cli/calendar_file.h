#pragma once
// An iCalendar file (RFC 5545) of whole days.

#include <string>
#include <string_view>
#include <vector>

namespace wearline::cli {

/// One day in the calendar. `day`: "YYYY-MM-DD". `id` is the same for the same deadline whenever the file is written.
struct CalendarDay {
  std::string id, day, summary, description;
};

/// `written`: the day of writing, "YYYY-MM-DD" (DTSTAMP). Text is escaped (section 3.3.11), lines are folded at 75
/// bytes between characters (section 3.1), control characters become spaces.
std::string calendar_file(const std::vector<CalendarDay>& days, std::string_view name, std::string_view written);

} // namespace wearline::cli
