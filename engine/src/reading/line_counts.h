#pragma once
// The counts of a line: "3 rooms @ 35", "two keys", "(4 bgs)", and which of them is priced.

#include "case/case.h"
#include "reading/numbers.h"
#include "reading/sense.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace wearline {

constexpr std::size_t no_number = static_cast<std::size_t>(-1);

struct Counted {
  std::int64_t thousandths = 0;
  std::string unit;
  std::size_t token = 0;
  std::size_t number = no_number; ///< index of the number, if it was written in digits
  bool excluded = false;          ///< a measure that counts nothing ("12 feet", "2 coats")
};

/// Every count, left to right. `amount_known`: the sum stands elsewhere, so a bare number at the end is a count too;
/// `amount_number` is the index of the number that is the sum, `no_number` if none is.
std::vector<Counted> find_counts(const std::vector<Token>& tokens, const Sense& line,
                                 const std::vector<Mention>& mentions, const std::vector<Number>& numbers,
                                 const RecognizerRules& rules, bool amount_known, std::size_t amount_number);

/// The count that is priced: the one whose price makes the sum, else the first; things before the hours spent on them.
std::optional<Quantity> choose_count(std::vector<Counted> counts, const Sense& line, const RecognizerRules& rules,
                                     const std::vector<Number>& numbers, const std::optional<Money>& amount);

} // namespace wearline
