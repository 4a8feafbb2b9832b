#pragma once
// The facts that a charge's own words state: its age, count, cause, state at move-in and so on. What the words do not
// say is not filled in.

#include "case/case.h"
#include "reading/fact_rules.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace wearline {

/// One fact, named as the field of a case's line that it fills.
struct WordFact {
  /// Dates and ages as a case writes them ("2019-06", "7/.."), names, yes/no, whole numbers, sums, counts with a unit,
  /// lists of names, parts of the sum.
  using Value =
      std::variant<std::string, bool, std::int64_t, Money, Quantity, std::vector<std::string>, std::vector<Part>>;
  std::string field;
  Value value;
  std::uint32_t start = 0, end = 0; ///< bytes of the text it was read from, end exclusive
};
using WordFacts = std::vector<WordFact>;

/// The facts of one charge, in the order of a case's fields. `kind` is what the charge is for, `amount` its sum, where
/// they are known; sums that the words split have to come to it. lifeYears is in thousandths of a year.
WordFacts word_facts(const MarkedText& text, std::string_view source, const FactRules& rules, const Lexicon& charges,
                     ChargeKind kind, const std::optional<Money>& amount);

} // namespace wearline
