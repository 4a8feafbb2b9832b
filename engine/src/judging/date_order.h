#pragma once
// Days that cannot all be right: the end before the beginning, a statement sent before anyone moved in.

#include "case/case.h"

#include <string>
#include <string_view>
#include <vector>

namespace wearline {

/// One impossible order. `code` is the end of a wording key ("dates-ended-before-began"); `asks` the JSON Pointer of
/// the day to look at again; `line` the line it stands in.
struct DateClash {
  std::string_view code;
  std::string asks;
  std::size_t line = no_line;
  static constexpr std::size_t no_line = static_cast<std::size_t>(-1);
};

/// Every order that no reading of the days allows. An uncertain day clashes only where all of it does.
std::vector<DateClash> impossible_dates(const Case& c);

} // namespace wearline
