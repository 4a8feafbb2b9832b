#pragma once
// Deadlines that stand in for one another (the same thing to be done, by another day or on another condition) where the
// case leaves open which of them applies. What follows whichever it is, follows.

#include "law/deadlines.h"
#include "law/ways.h"

#include <vector>

namespace wearline {

/// One way in which open facts may turn out, with the deadlines that hang on them as they then stand.
struct DeadlineWay {
  Way way;
  std::vector<DeadlineResult> deadlines; ///< of the open families, in the pack's order
  const DeadlineResult* deadline(std::size_t position) const;
};

class Alternatives {
public:
  Alternatives(const Pack& pack, const Registry& registry, const Holidays& holidays)
      : pack_(&pack), registry_(&registry), holidays_(&holidays) {}

  /// Finds the families of which more than one deadline may apply, and the ways in which their open facts may turn out.
  void find(const std::vector<DeadlineResult>& each, const FactView& view);

  /// Judges the deadlines that pay back again, in each way. `owed` as for settle_refund_duties.
  void settle(Tri owed);

  /// One result for each family, in the pack's order: the deadline that applies, or may; where it is open which one
  /// does, what is the same in every way, with the span of the last days they set. Deadlines that cannot apply stand as
  /// they are.
  std::vector<DeadlineResult> fold(const std::vector<DeadlineResult>& each) const;

  /// The ways all open families have together; null if nothing is open or there are too many.
  std::vector<DeadlineWay>* ways() {
    return open_.size() == 1 && !open_.front().ways.empty() ? &open_.front().ways : nullptr;
  }

private:
  struct Family {
    std::uint16_t id;
    std::vector<std::size_t> members; ///< those that may apply
  };
  /// Families with the ways in which their open facts may turn out.
  struct Open {
    std::vector<Family> families;
    std::vector<DeadlineWay> ways;
  };
  void add(std::vector<Family> families, const FactView& view);
  /// `first`: the first of the family, as the case stands.
  DeadlineResult fold(const Family& family, const std::vector<DeadlineWay>& ways, const DeadlineResult& first) const;

  const Pack* pack_;
  const Registry* registry_;
  const Holidays* holidays_;
  std::vector<Open> open_;
};

} // namespace wearline
