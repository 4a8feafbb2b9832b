#pragma once
// "August rent": the one month that a charge's words name.

#include "reading/recognizer_rules.h"

#include <cstdint>
#include <optional>
#include <string_view>

namespace wearline {

struct NamedMonth {
  unsigned month = 0;               ///< 1 to 12
  int year = 0;                     ///< 0 where none is named
  std::uint32_t start = 0, end = 0; ///< bytes of the text, end exclusive
};

/// Nothing where the words name no month, several, or a part of one: a day, a number of weeks.
std::optional<NamedMonth> month_named(std::string_view text, const RecognizerRules& rules);

} // namespace wearline
