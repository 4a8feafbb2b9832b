#include "law/remedies.h"

#include "law/applies.h"

#include <algorithm>

namespace wearline {

namespace {

/// Whether the landlord loses the right to keep money for a line.
bool lost(Loses loses, const Line& line) {
  return loses == Loses::all_deductions || loses == Loses::whole_deposit_claim || about_condition(line.kind) != Tri::no;
}

/// What may be kept in all, with the forfeitures that `counts` admits.
template <class Counts>
Range<Money> kept(const std::vector<ForfeitResult>& forfeits, const Case& c, const Reckoning& r, Counts counts) {
  Range<Money> sum;
  for (std::size_t i = 0; i < c.lines.size() && i < r.fair.size(); ++i) {
    const bool forfeited = std::any_of(forfeits.begin(), forfeits.end(), [&](const ForfeitResult& f) {
      return counts(f) && lost(f.rule->loses, c.lines[i]);
    });
    if (!forfeited) sum += r.fair[i];
  }
  return sum;
}

Range<Money> due(const Range<Money>& keeps, const Reckoning& r) {
  return excess(refund_of(Range<Money>(*r.deposit) + r.interest, r.apart, keeps), r.paid_back);
}

/// The figures one remedy is reckoned from, at one end of their ranges.
struct Figures {
  Money due, deposit, interest, paid_back, keeps, over_cap;
  std::optional<Money> rent;
};

std::optional<Money> base_of(Base base, const Figures& f) {
  switch (base) {
  case Base::wrongfully_withheld:
    return f.due;
  case Base::withheld:
    return positive(f.deposit + f.interest - f.paid_back);
  case Base::whole_deposit:
    return f.deposit;
  case Base::monthly_rent:
    return f.rent;
  case Base::interest:
    return f.interest;
  case Base::over_cap:
    return f.over_cap;
  default:
    return Money();
  }
}

struct Ends {
  Money low, high;
  bool open = false;
};

Ends both(Ends a, Ends b) { return {std::min(a.low, b.low), std::max(a.high, b.high), a.open || b.open}; }

/// The multiple and the fixed sum, within the remedy's own limits; for a whole deposit also with lawful charges taken
/// off.
Ends multiple(const Remedy& remedy, const Figures& f) {
  std::optional<Money> base = remedy.multiplier ? base_of(remedy.base, f) : Money();
  const bool open = !base;
  const auto of = [&](Money from, Money off_after) {
    Money sum = remedy.multiplier ? positive(from.part(*remedy.multiplier) - off_after) : Money();
    if (remedy.fixed) sum += *remedy.fixed;
    if (remedy.least) sum = std::max(sum, *remedy.least);
    if (remedy.cap) {
      std::optional<Money> most = remedy.cap->amount;
      if (!most)
        if (const auto cap_base = base_of(remedy.cap->of, f)) most = cap_base->part(remedy.cap->times);
      if (most) sum = std::min(sum, *most);
    }
    return sum;
  };
  const Money from = base.value_or(Money());
  const Money before = of(positive(from - f.keeps), Money()), after = of(from, f.keeps), plain = of(from, Money());
  switch (remedy.charges_off) {
  case ChargesOff::before:
    return {before, before, open};
  case ChargesOff::after:
    return {after, after, open};
  case ChargesOff::either:
    return {std::min(before, after), std::max(before, after), open};
  case ChargesOff::not_at_all:
    break;
  }
  return {plain, plain, open};
}

/// The award if the multiple holds the sum due in itself.
Money containing(const Remedy& remedy, Money sum, const Figures& f) {
  if (remedy.base == Base::whole_deposit) return std::max(f.due, sum - f.paid_back);
  if (remedy.base == Base::interest) return positive(f.due - f.interest) + std::max(sum, std::min(f.interest, f.due));
  return std::max(f.due, sum);
}

/// An award under one remedy alone.
Ends award_of(const Remedy& remedy, const Figures& f) {
  const Ends sum = multiple(remedy, f);
  const Ends inside{containing(remedy, sum.low, f), containing(remedy, sum.high, f), sum.open};
  const Ends on_top{f.due + sum.low, f.due + sum.high, sum.open};
  if (!remedy.includes_sum_due.known()) return both(inside, on_top);
  return remedy.includes_sum_due.known_yes() ? inside : on_top;
}

Figures figures(const Reckoning& r, Money due, Money interest, Money paid_back, Money keeps, Money over_cap,
                const Case& c) {
  return {due, *r.deposit, interest, paid_back, keeps, over_cap, c.tenancy.monthly_rent};
}

} // namespace

Range<Money> refund_of(const Range<Money>& held, const Range<Money>& apart, const Range<Money>& keeps) {
  const auto at = [](Money all, Money aside, Money kept) { return aside + positive(all - aside - kept); };
  return {at(held.low(), apart.low(), keeps.high()), at(held.likely(), apart.likely(), keeps.likely()),
          at(held.high(), apart.high(), keeps.low())};
}

std::vector<ForfeitResult> judge_forfeits(const Pack& pack, const FactView& view, const Outcomes& outcomes) {
  std::vector<ForfeitResult> out;
  for (std::size_t i = 0; i < pack.forfeits.size(); ++i) {
    ForfeitResult r;
    r.position = i;
    r.rule = &pack.forfeits[i];
    r.applies = applies(*r.rule, view, &outcomes, &r.grounds);
    if (r.applies == Tri::no) continue;
    r.certain = r.applies.known() && r.rule->needs == Needs::none;
    out.push_back(std::move(r));
  }
  return out;
}

Award reckon(const std::vector<ForfeitResult>& forfeits, const Case& c, const Reckoning& r) {
  Award a;
  if (!r.deposit) return a;
  a.known = true;
  a.forfeited = std::any_of(forfeits.begin(), forfeits.end(), [](const ForfeitResult& f) { return f.certain; });
  a.may_be_forfeited = !forfeits.empty();
  a.sum_due = due(kept(forfeits, c, r, [](const ForfeitResult&) { return false; }), r);
  a.sum_due_forfeited = due(kept(forfeits, c, r, [](const ForfeitResult&) { return true; }), r);
  const Range<Money> certain = due(kept(forfeits, c, r, [](const ForfeitResult& f) { return f.certain; }), r);
  a.least = certain.low();
  a.most = std::max(certain.high(), a.sum_due_forfeited.high());
  return a;
}

std::vector<RemedyResult> judge_remedies(const Pack& pack, const FactView& view, const Outcomes& outcomes,
                                         const Reckoning& r, Award& award) {
  std::vector<RemedyResult> out;
  if (!award.known) return out;
  const Case& c = view.of();
  Range<Money> keeps;
  for (const auto& fair : r.fair) keeps += fair;
  // The low end: what is due for certain, all lawful charges counted; the high end: the most that may be due.
  const Figures low = figures(r, award.least, r.interest.low(), r.paid_back.high(), keeps.high(), r.over_cap.low(), c);
  const Figures high = figures(r, award.most, r.interest.high(), r.paid_back.low(), keeps.low(), r.over_cap.high(), c);
  Money inside_least = low.due, inside_most = high.due, top_least, top_sure, top_possible;
  for (std::size_t i = 0; i < pack.remedies.size(); ++i) {
    RemedyResult one;
    one.position = i;
    one.rule = &pack.remedies[i];
    one.applies = applies(*one.rule, view, &outcomes, &one.grounds);
    if (one.applies == Tri::no) continue;
    const Ends least = award_of(*one.rule, low), most = award_of(*one.rule, high);
    one.certain = one.applies.known() && one.rule->needs == Needs::none && !one.rule->up_to;
    one.least = one.certain ? least.low : low.due;
    one.most = most.high;
    one.open = most.open;
    award.open = award.open || one.open;
    if (one.rule->includes_sum_due == std::optional(false)) {
      const Money extra = one.most - high.due;
      if (one.certain) top_least += one.least - low.due;
      if (one.applies.known()) top_sure += extra;
      else top_possible = std::max(top_possible, extra);
    } else {
      inside_least = std::max(inside_least, one.least);
      inside_most = std::max(inside_most, one.most);
    }
    out.push_back(std::move(one));
  }
  award.least = inside_least + top_least;
  award.most = inside_most + top_sure + top_possible;
  return out;
}

} // namespace wearline
