#include "reading/too_large.h"

#include "values/ascii.h"
#include "values/money_size.h"

#include <string>

namespace wearline {

bool holds_too_large_a_sum(std::string_view row) {
  for (std::size_t at = 0; at < row.size();) {
    if (!is_digit(row[at])) {
      ++at;
      continue;
    }
    const std::string_view before = row.substr(0, at);
    const bool dollars = before.ends_with('$') || before.ends_with("$ ");
    std::string digits;
    for (; at < row.size() && (is_digit(row[at]) || row[at] == ','); ++at)
      if (row[at] != ',') digits += row[at];
    const bool cents = at + 2 < row.size() && row[at] == '.' && is_digit(row[at + 1]) && is_digit(row[at + 2]);
    if ((dollars || cents) && too_large_for_money(digits)) return true;
  }
  return false;
}

} // namespace wearline
