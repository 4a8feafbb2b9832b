#include "judging/charge_plan.h"

namespace wearline {

void ChargePlan::add(Piece piece) {
  any_whole = any_whole || piece.with_the_whole;
  if (count == most_pieces) join_two_alike();
  pieces[count++] = piece;
}

void ChargePlan::scale(Money from, Money to) {
  if (from == to || from.is_zero()) return;
  for (std::size_t i = 0; i < count; ++i) pieces[i].amount = pieces[i].amount.part({to.in_cents(), from.in_cents()});
}

void ChargePlan::join_two_alike() {
  for (std::size_t i = 0; i < count; ++i)
    for (std::size_t j = i + 1; j < count; ++j)
      if (pieces[i].treated_like(pieces[j])) {
        pieces[i].amount += pieces[j].amount;
        pieces[j] = pieces[--count];
        return;
      }
}

Money price(const ChargePlan& plan, Share area, Share remaining, End end) {
  constexpr std::int64_t fine = 1'000'000;
  Money after;
  std::int64_t before_fine = 0, after_fine = 0;
  const bool any_whole = plan.any_whole;
  for (std::size_t i = 0; i < plan.count; ++i) {
    const Piece& p = plan.pieces[i];
    if (p.doubtful && end != End::most) continue;
    if (p.with_the_whole) continue;
    const auto depreciated_value = [&](Money m) {
      if (p.by_area) m = m.part(area);
      return p.depreciates && !(p.may_not_depreciate && end == End::most) ? m.part(remaining) : m;
    };
    after += depreciated_value(p.amount);
    if (!any_whole) continue;
    before_fine += p.amount.in_cents() * fine;
    after_fine += depreciated_value(Money::cents(p.amount.in_cents() * fine)).in_cents();
  }
  if (!any_whole) return after;
  for (std::size_t i = 0; i < plan.count; ++i) {
    const Piece& p = plan.pieces[i];
    if (p.doubtful && end != End::most) continue;
    if (p.with_the_whole)
      after += before_fine == 0 ? p.amount.part(area).part(remaining) : p.amount.part({after_fine, before_fine});
  }
  return after;
}

} // namespace wearline
