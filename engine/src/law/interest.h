#pragma once
// Interest owed on deposits: exact whole-number arithmetic, rounded half up to the cent.

#include "law/facts.h"
#include "law/pack.h"
#include "values/range.h"

#include <vector>

namespace wearline {

struct InterestShare {
  const InterestRule* rule = nullptr;
  Tri applies;
  Range<Money> gross;    ///< before what was paid already
  bool at_least = false; ///< a rate is unknown and nothing limits it: it may be more than `gross.high()`
  days longest{};        ///< for which a deposit may have earned it
  Grounds grounds;
};

struct InterestResult {
  Range<Money> owed;                       ///< what is still to be paid
  bool at_least = false;                   ///< it may be more
  std::vector<InterestShare> shares;       ///< the rules that apply or may apply
  std::vector<std::size_t> bank_rate_open; ///< deposits whose /deposits/n/bankRate would settle it
  std::vector<std::size_t> paid_open;      ///< deposits whose /deposits/n/interestPaid is not known
};

/// Interest owed by the rules of a pack, each with its statute there, on all deposits of the case, less interest paid
/// already. It runs to the rule's end event; to today while that has not happened. Years run from anniversary to
/// anniversary. A part of a year counts by its days (in days of that year), by its whole months, or not at all, as the
/// rule says; compound interest is credited in whole cents on each anniversary; less than the rule's minimum of months
/// gives nothing. Rates are exact to a billionth.
InterestResult judge_interest(const Pack& pack, const FactView& view);

} // namespace wearline
