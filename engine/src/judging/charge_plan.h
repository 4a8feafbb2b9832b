#pragma once
// A charged sum in pieces, each with what it is subject to: the damaged part, age, or neither.

#include "case/case.h"
#include "values/money.h"

#include <array>
#include <cstddef>

namespace wearline {

/// A sum of the line, and what it is subject to.
struct Piece {
  Money amount;
  CostComponent component = CostComponent::other;
  bool depreciates = false;
  bool by_area = true;
  bool with_the_whole = false;
  bool may_not_depreciate = false; ///< depreciates, but some do not take age off it: the most leaves it whole
  bool doubtful = false;           ///< counts only in the most (a mark-up)

  bool treated_like(const Piece& p) const {
    return depreciates == p.depreciates && by_area == p.by_area && with_the_whole == p.with_the_whole &&
           may_not_depreciate == p.may_not_depreciate && doubtful == p.doubtful;
  }
};

/// Which end of the answer is worked out.
enum class End { least, likely, most };
/// More than the 18 ways to treat a piece (four free flags; labor that may not age, by area or not), so that two alike
/// can always be joined.
constexpr std::size_t most_pieces = 19;

/// All pieces of one charge.
struct ChargePlan {
  std::array<Piece, most_pieces> pieces; ///< those before `count`
  std::size_t count = 0;
  bool parts_given = false;
  bool any_whole = false; ///< some part takes the share of the others
  void add(Piece piece);
  /// The same pieces of another sum, in proportion.
  void scale(Money from, Money to);

private:
  void join_two_alike();
};

/// What a plan comes to for one damaged share and one remaining share. Which parts depreciate is rules/lives, `parts`.
/// Parts that go with the whole take the exact share of the others (in millionths of a cent), so that a tax on a few
/// cents is not thrown about by their rounding.
Money price(const ChargePlan& plan, Share area, Share remaining, End end);

} // namespace wearline
