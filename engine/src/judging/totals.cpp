#include "judging/assessment.h"
#include "judging/purpose.h"
#include "law/facts.h"

#include <algorithm>

namespace wearline {

namespace {

Range<Money> rest_of(Money held, const Range<Money>& used) {
  return {held - std::min(held, used.low()), held - std::min(held, used.likely()), held - std::min(held, used.high())};
}

} // namespace

Range<Money> kept_apart(const Case& c, const std::vector<LineAssessment>& lines, const Pack* pack) {
  Range<Money> apart{Money()};
  if (!pack) return apart;
  for (const std::string_view kind : purposes) {
    if (!one_names_money(pack->bars, kind)) continue;
    Money held;
    for (const Deposit& d : c.deposits)
      if (d.kind == kind && d.amount && is_deposit(d, pack)) held += *d.amount;
    if (held.is_zero()) continue;
    Range<Money> used{Money()};
    for (std::size_t i = 0; i < lines.size(); ++i) {
      const Tri served = serves(kind, c.lines[i], lines[i].subject);
      const Range<Money>& fair = lines[i].result.fair;
      if (served == Tri::yes) used += fair;
      else if (!served.known()) used += Range<Money>(Money(), Money(), fair.high());
    }
    apart += rest_of(held, used);
  }
  return apart;
}

std::vector<Range<Money>> against_deposit(const Case& c, const std::vector<LineAssessment>& lines, const Pack* pack) {
  std::vector<Range<Money>> out;
  out.reserve(lines.size());
  for (const LineAssessment& line : lines) out.push_back(line.result.fair);
  for (const std::string_view kind : purposes) {
    Money held;
    for (const Deposit& d : c.deposits)
      if (d.kind == kind && d.amount && !is_deposit(d, pack)) held += *d.amount;
    Money low = held, likely = held, high = held;
    const auto pay = [](Money& left, Money charge) {
      const Money paid = std::min(left, positive(charge));
      left -= paid;
      return charge - paid;
    };
    for (std::size_t i = 0; i < lines.size() && !held.is_zero(); ++i)
      if (serves(kind, c.lines[i], lines[i].subject) == Tri::yes)
        out[i] = Range<Money>(pay(low, out[i].low()), pay(likely, out[i].likely()), pay(high, out[i].high()));
  }
  return out;
}

Totals add_up(const Case& c, const std::vector<LineAssessment>& lines, const Range<Money>& interest, const Pack* pack) {
  Totals totals;
  totals.interest = interest;
  for (const LineAssessment& line : lines) {
    totals.claimed += line.result.claimed;
    const Range<Money>& fair = line.result.fair;
    ++totals.lines;
    if (line.result.no_middle) {
      ++totals.without_middle;
      totals.fair_without_middle += Range<Money>(fair.low(), fair.low(), fair.high());
    }
    totals.fair += fair;
    if (line.result.verdict == Verdict::ordinary_wear) totals.ordinary_wear += line.result.claimed;
  }
  Range<Money> charges{Money()};
  for (const Range<Money>& part : against_deposit(c, lines, pack)) charges += part;
  totals.paid_apart = {totals.fair.low() - charges.low(), totals.fair.likely() - charges.likely(),
                       totals.fair.high() - charges.high()};
  Money deposit;
  bool known = !c.deposits.empty();
  for (const Deposit& d : c.deposits) {
    if (!is_deposit(d, pack)) continue;
    if (d.amount) deposit += *d.amount;
    else known = false;
  }
  if (known) totals.deposit = deposit;

  if (c.statement.refund_paid) {
    totals.paid_back = *c.statement.refund_paid;
  } else {
    totals.paid_back_assumed = true;
    if (c.statement.stated_refund) totals.paid_back = *c.statement.stated_refund;
  }
  if (totals.deposit) {
    const Range<Money> held = Range<Money>(*totals.deposit) + interest;
    totals.kept_apart = kept_apart(c, lines, pack);
    totals.fair_refund = refund_of(held, totals.kept_apart, charges);
    totals.shortfall = excess(*totals.fair_refund, Range<Money>(totals.paid_back));
    const Range<Money>& apart = totals.kept_apart;
    const auto beyond = [](Money owed, Money all, Money aside) { return positive(owed - (all - aside)); };
    totals.owed_by_tenant = Range<Money>(beyond(charges.low(), held.high(), apart.high()),
                                         beyond(charges.likely(), held.likely(), apart.likely()),
                                         beyond(charges.high(), held.low(), apart.low()));
  }
  return totals;
}

} // namespace wearline
