#pragma once
// What lateness or missing documents cost the landlord, and what a court may award. Never added to the fair refund.

#include "case/case.h"
#include "law/facts.h"
#include "law/pack.h"
#include "values/range.h"

#include <vector>

namespace wearline {

/// What is fair and what was paid, once the lines are judged.
struct Reckoning {
  std::vector<Range<Money>> fair; ///< of each line of the case, in order: what may be kept for it on the merits
  std::optional<Money> deposit;   ///< empty: not known; nothing can be reckoned then
  Range<Money> interest;          ///< owed on it
  Range<Money> apart;             ///< of it, what may serve none of the charges
  Range<Money> paid_back;
  Range<Money> over_cap; ///< taken above the cap; filled in by Law
};

struct ForfeitResult {
  std::size_t position = 0; ///< in Pack::forfeits
  const Forfeit* rule = nullptr;
  Tri applies;          ///< its condition; what it `needs` is for a court to find
  bool certain = false; ///< applies and needs nothing more
  Grounds grounds;
};

struct RemedyResult {
  std::size_t position = 0; ///< in Pack::remedies
  const Remedy* rule = nullptr;
  Tri applies;
  bool certain = false; ///< applies, needs nothing more, and the court may not give less
  Money least, most;    ///< of an award under this rule alone, the sum due included
  bool open = false;    ///< the deposit or the rent it is reckoned from is not known: `most` may be more
  Grounds grounds;
};

struct Award {
  Range<Money> sum_due;           ///< on the merits: deposit and interest, less what may be kept and what was paid back
  Range<Money> sum_due_forfeited; ///< the same with every forfeiture that applies or may apply
  bool forfeited = false;         ///< at least one forfeiture is certain
  bool may_be_forfeited = false;
  Money least, most;  ///< what a court may award in all, the sum due included
  bool open = false;  ///< `most` may be more
  bool known = false; ///< false: the deposit is not known, nothing was reckoned
};

/// What goes back: what may serve no charge, and what the charges leave of the rest.
Range<Money> refund_of(const Range<Money>& held, const Range<Money>& apart, const Range<Money>& keeps);

/// Every rule of the pack, with its statute there, under which the landlord loses what may be kept, if it applies or
/// may apply.
std::vector<ForfeitResult> judge_forfeits(const Pack& pack, const FactView& view, const Outcomes& outcomes);

/// The sum due with no forfeiture, with those that are certain, and with those that may apply too.
Award reckon(const std::vector<ForfeitResult>& forfeits, const Case& c, const Reckoning& reckoning);

/// Every remedy of the pack, with its statute there, that applies or may apply; completes `award` with the least and
/// the most. The least counts only what the law gives without any finding; several remedies that come on top add up,
/// others do not.
std::vector<RemedyResult> judge_remedies(const Pack& pack, const FactView& view, const Outcomes& outcomes,
                                         const Reckoning& reckoning, Award& award);

} // namespace wearline
