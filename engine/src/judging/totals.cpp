#include "judging/assessment.h"
#include "law/facts.h"

namespace wearline {

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
    totals.fair_refund = excess(held, totals.fair);
    totals.shortfall = excess(*totals.fair_refund, Range<Money>(totals.paid_back));
    totals.owed_by_tenant = excess(totals.fair, held);
  }
  return totals;
}

} // namespace wearline
