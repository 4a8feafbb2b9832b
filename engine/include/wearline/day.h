#pragma once
// A civil day (no time zone): the types of Howard Hinnant's date library and of C++20's calendar, without either's
// headers.

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace wearline {

using days = std::chrono::duration<int, std::ratio<86400>>;
/// A civil day. Differences are `days`; the two cannot be mixed up.
using Day = std::chrono::time_point<std::chrono::system_clock, days>;

/// Days a case may speak of: 1900-01-01 to 2199-12-31.
constexpr Day min_day{days{-25567}};
constexpr Day max_day{days{84005}};

/// "YYYY-MM-DD", a day that exists (2026-02-30 does not) within 1900..2199.
std::optional<Day> parse_day(std::string_view text);
/// "YYYY-MM-DD".
std::string iso(Day day);

} // namespace wearline
