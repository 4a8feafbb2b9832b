#pragma once
// What a charge's own sums say: labor and material, the price of the thing new, how many at what price. All count only
// where they come to the sum charged.

#include "case/case.h"
#include "reading/fact_rules.h"

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

namespace wearline {

/// What was read of the sums, with the items it stands on.
struct SumFacts {
  std::vector<Part> parts;
  std::uint16_t parts_first = 0, parts_last = 0;
  std::optional<Money> price_new; ///< a share of it is the sum charged
  std::uint16_t price_first = 0, price_last = 0;
  std::optional<Quantity> counted; ///< a count and the price of one come to the sum charged
  std::uint16_t counted_first = 0, counted_last = 0;
};

/// `amount`: the sum charged, where it is known; one after "=" is taken before it.
SumFacts sum_facts(const std::vector<FactItem>& items, const FactRules& rules, ChargeKind kind,
                   const std::optional<Money>& amount);

} // namespace wearline
