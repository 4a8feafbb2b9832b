#include "law/law.h"

#include <algorithm>

namespace wearline {

Law::Law(const Case& c, const Pack& pack, const Registry& registry, const Holidays& holidays, Day today)
    : pack_(&pack), registry_(&registry), view_(c, registry, &pack, today),
      duties_(judge_duties(pack, registry, holidays, view_, std::nullopt)),
      papers_(judge_papers(pack, registry, view_)), caps_(judge_caps(pack, view_)),
      interest_(judge_interest(pack, view_)), line_rules_(pack, registry, view_) {
  line_rules_.refresh(this);
}

std::vector<Permission> Law::permissions(const Line& line, const LineView& of_line) const {
  return wearline::permissions(line, of_line, *pack_, *registry_, view_, this);
}

namespace {
/// More than nothing for certain, nothing for certain, or open.
Tri more_than_nothing(const Range<Money>& sum) {
  if (!sum.low().is_zero()) return true;
  return sum.high().is_zero() ? Tri(false) : std::nullopt;
}

/// The largest sum above a cap: certain, and possible.
Range<Money> over_cap(const std::vector<CapResult>& caps) {
  Money sure, possible;
  for (const CapResult& r : caps) {
    if (r.exceeded == Tri(false) || !r.limit || !r.taken || *r.taken <= *r.limit) continue;
    const Money excess = *r.taken - *r.limit;
    if (r.exceeded) sure = std::max(sure, excess);
    possible = std::max(possible, excess);
  }
  return {sure, sure, possible};
}
} // namespace

void Law::settle(const Reckoning& given) {
  Reckoning reckoning = given;
  reckoning.over_cap = over_cap(caps_);
  view_.know_refund_short(std::nullopt);
  forfeits_.clear();
  award_ = reckon(forfeits_, view_.of(), reckoning);
  if (!award_.known) {
    forfeits_ = judge_forfeits(*pack_, view_, *this);
    remedies_ = judge_remedies(*pack_, view_, *this, reckoning, award_);
    return;
  }
  // First on the merits; then again, as what lateness costs may make money owed that was not.
  for (int round = 0; round < 2; ++round) {
    const Tri owed = more_than_nothing({award_.least, award_.sum_due.likely(), award_.most});
    settle_refund_duties(duties_, owed);
    view_.know_refund_short(owed);
    forfeits_ = judge_forfeits(*pack_, view_, *this);
    award_ = reckon(forfeits_, view_.of(), reckoning);
  }
  remedies_ = judge_remedies(*pack_, view_, *this, reckoning, award_);
}

Asks Law::assumed() const {
  Asks out;
  const auto take = [&](const Grounds& grounds) {
    for (const Ask& ask : grounds.assumed) add_ask(out, ask);
  };
  for (const DutyResult& r : duties_) take(r.grounds);
  for (const PaperResult& r : papers_) take(r.grounds);
  for (const CapResult& r : caps_) take(r.grounds);
  for (const InterestShare& r : interest_.shares) take(r.grounds);
  for (const ForfeitResult& r : forfeits_) take(r.grounds);
  for (const RemedyResult& r : remedies_) take(r.grounds);
  return out;
}

Tri Law::duty_is(std::size_t duty, DutyState state, Grounds* grounds) const {
  const DutyResult& r = duties_[duty];
  if (grounds) grounds->add(r.grounds);
  switch (state) {
  case DutyState::met:
    return r.met;
  case DutyState::missed:
    return r.missed;
  case DutyState::open:
    return r.open;
  default:
    return r.state == state;
  }
}

Tri Law::defect(std::size_t rule, Grounds* grounds) const {
  if (rule < papers_.size()) {
    if (grounds) grounds->add(papers_[rule].grounds);
    return papers_[rule].defect;
  }
  const Cap* cap = &pack_->caps[rule - papers_.size()];
  for (const CapResult& r : caps_)
    if (r.rule == cap) {
      if (grounds) grounds->add(r.grounds);
      return r.exceeded;
    }
  return false;
}

} // namespace wearline
