#pragma once
// What a landlord's paper may still keep: nothing that the law takes from a landlord whose day has passed, or who left
// undone what the right to keep money hangs on.

#include "letters/letter_draft.h"

namespace wearline {

enum class MayKeep { all, no_damage, nothing };

struct LandlordsRight {
  /// The landlord's own days for the list, the notice of a claim and the money that are past, unmet; in the law's
  /// order.
  std::vector<const DeadlineResult*> past;
  MayKeep may_keep = MayKeep::all;
  const Rule* by = nullptr; ///< the rule by which; null where all may be kept
};

/// A rule counts that holds as the case stands, and one that holds through a day that is past or may hold so, whatever
/// a court has to find besides: a paper that is sent knowing the day is what it would be found from.
LandlordsRight landlords_right(const Draft& d);

} // namespace wearline
