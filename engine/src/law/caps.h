#pragma once
// How large a deposit may be.

#include "law/facts.h"
#include "law/pack.h"
#include "values/range.h"

#include <vector>

namespace wearline {

struct CapResult {
  const Cap* rule = nullptr;
  Tri applies;
  std::optional<Money> limit; ///< empty: no cap, or the rent is not known
  std::optional<Money> taken; ///< deposits of the kinds it counts; empty: an amount is not known
  Tri exceeded;               ///< applies and more was taken
  Grounds grounds;
};

/// The caps that are or may be in force, each with its statute in the pack.
std::vector<CapResult> judge_caps(const Pack& pack, const FactView& view);

} // namespace wearline
