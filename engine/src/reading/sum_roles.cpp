#include "reading/sum_roles.h"

#include <algorithm>
#include <initializer_list>
#include <utility>

namespace wearline {

Money size_of(Money m) { return m < Money{} ? Money{} - m : m; }

void add_sum_roles(Entry& e, LabelKind kind, Money printed, const ReadingWeights& w) {
  const Money value = kind == LabelKind::total || kind == LabelKind::subtotal ? printed : size_of(printed);
  const auto others = [&](std::initializer_list<SumRole> roles, int cost) {
    for (const SumRole role : roles) e.may_be(role, value, cost);
  };
  switch (kind) {
  case LabelKind::total:
  case LabelKind::charges:
    e.may_be(SumRole::total, value, 0);
    others({SumRole::subtotal}, w.spare_total);
    others({SumRole::refund, SumRole::due, SumRole::held, SumRole::deposit, SumRole::passing}, w.sum_is_other);
    break;
  case LabelKind::subtotal:
  case LabelKind::carried:
    e.may_be(SumRole::subtotal, value, 0);
    others({SumRole::total}, w.sum_is_other);
    break;
  case LabelKind::held:
    e.may_be(SumRole::held, value, 0);
    others({SumRole::deposit}, w.spare_total);
    others({SumRole::total, SumRole::refund, SumRole::passing}, w.sum_is_other);
    break;
  case LabelKind::deposit:
    e.may_be(SumRole::deposit, value, 0);
    others({SumRole::held}, w.spare_total);
    others({SumRole::passing}, w.sum_is_other);
    others({SumRole::total, SumRole::refund}, w.sum_is_none + w.spare_total);
    break;
  case LabelKind::interest:
    e.may_be(SumRole::interest, value, 0);
    others({SumRole::passing, SumRole::held}, w.sum_is_other);
    break;
  case LabelKind::refund:
    e.may_be(SumRole::refund, value, 0);
    others({SumRole::due}, e.directed ? w.sum_is_other : w.spare_total);
    others({SumRole::total, SumRole::payment}, w.sum_is_other + 2);
    others({SumRole::deposit}, w.sum_is_none + w.spare_total); // the two never change places
    others({SumRole::passing}, w.sum_is_none);
    break;
  case LabelKind::due:
    e.may_be(SumRole::due, value, 0);
    others({SumRole::refund}, e.directed ? w.sum_is_other : w.spare_total);
    others({SumRole::total}, w.sum_is_other);
    others({SumRole::passing}, w.sum_is_none);
    break;
  case LabelKind::payment:
    e.may_be(SumRole::payment, value, 0);
    others({SumRole::credit, SumRole::refund, SumRole::passing}, w.sum_is_other);
    break;
  case LabelKind::balance:
    e.may_be(SumRole::refund, value, 0);
    e.may_be(SumRole::due, value, 1);
    others({SumRole::total}, w.sum_is_other);
    others({SumRole::passing}, w.sum_is_none);
    break;
  default:
    e.may_be(SumRole::passing, value, 0);
    break;
  }
  if (printed < Money{} && (kind == LabelKind::balance || kind == LabelKind::due))
    e.may_be(SumRole::total, printed, w.sum_is_other); // credits greater than the charges
  if (kind != LabelKind::held && kind != LabelKind::carried && kind != LabelKind::subtotal)
    e.may_be(SumRole::charge, value, w.sum_is_charge);
}

void add_charge_roles(Entry& e, std::size_t main, const ChargeSigns& signs, const ReadingWeights& w) {
  const Money value = signs.free ? Money{} : size_of(e.figures[main].value);
  if (signs.denied && !signs.free) e.may_be(SumRole::passing, value, 0, main);
  e.may_be(signs.credit ? SumRole::credit : SumRole::charge, value, signs.denied ? w.leave_in_sentence : 0, main);
  if (signs.free) return;
  e.may_be(SumRole::passing, value,
           signs.in_passing                  ? w.leave_price_in_passing
           : e.named && !signs.after_account ? w.leave_named
                                             : w.leave_unnamed,
           main);
  if (std::find(e.heard.begin(), e.heard.end(), SumRole::interest) != e.heard.end())
    e.may_be(SumRole::interest, value, w.heard_sum, main);
  const int turned = e.minus || e.plus ? w.turned_sign / 2 : e.named ? 2 * w.turned_sign : w.turned_sign;
  e.may_be(signs.credit ? SumRole::charge : SumRole::credit, value, turned, main);
  for (const SumRole role : {SumRole::total, SumRole::refund, SumRole::deposit, SumRole::due, SumRole::subtotal}) {
    const auto heard = static_cast<int>(std::count(e.heard.begin(), e.heard.end(), role));
    int cost = e.named ? w.named_is_sum : w.unnamed_is_sum;
    if (heard > 0) cost = (e.named ? w.sum_is_none : w.heard_sum) / heard;
    if (std::find(e.heard.begin(), e.heard.end(), SumRole::payment) != e.heard.end()) cost += w.sum_is_other;
    e.may_be(role, value, cost + (role == SumRole::due || role == SumRole::subtotal ? 2 : 0), main);
  }
  for (std::size_t k = 0; k < e.figures.size(); ++k)
    if (k != main && !e.figures[k].value.is_zero())
      e.may_be(signs.credit ? SumRole::credit : SumRole::charge, size_of(e.figures[k].value), w.other_figure, k);
}

void likeliest_first(Entry& e) {
  std::stable_sort(e.options.begin(), e.options.end(),
                   [](const RoleOption& a, const RoleOption& b) { return a.cost < b.cost; });
}

void leave_out(Entry& e, std::string fate, int against) {
  e.passing_fate = std::move(fate);
  e.may_be(SumRole::passing, e.options[0].value, 0, e.options[0].figure);
  for (RoleOption& o : e.options) o.cost = o.role == SumRole::passing ? 0 : o.cost + against;
  likeliest_first(e);
}

} // namespace wearline
