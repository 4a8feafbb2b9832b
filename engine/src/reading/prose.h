#pragma once
// Sums and dates inside sentences: "my repair man charged $140.00 to patch the wall".

#include "reading/label.h"
#include "reading/statement_reader.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace wearline {

struct ProseLine {
  std::string_view text;
  std::size_t line = 0;     ///< in the input, from 1
  std::uint32_t offset = 0; ///< bytes of the line before `text`
  std::size_t row = 0;
};

struct ProseResult {
  std::vector<ReadCharge> charges;
  std::vector<std::pair<LabelKind, StatedSum>> sums;
  std::vector<ReadDate> dates;
  std::vector<std::string> fates; ///< of each line
};

/// Reads a paragraph. Only sums with a currency sign or two decimals are taken.
ProseResult read_prose(const std::vector<ProseLine>& lines, const RecogniserRules& rules, NumberStyle style);

} // namespace wearline
