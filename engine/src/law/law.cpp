#include "law/law.h"

#include <algorithm>

namespace wearline {

Law::Law(const Case& c, const Pack& pack, const Registry& registry, const Holidays& holidays, Day today)
    : pack_(&pack), registry_(&registry), view_(c, registry, &pack, today),
      each_(judge_deadlines(pack, registry, holidays, view_, Tri::unknown)), alternatives_(pack, registry, holidays),
      documents_(judge_documents(pack, registry, view_)), caps_(judge_caps(pack, view_)),
      interest_(judge_interest(pack, view_)), line_rules_(pack, registry, view_) {
  alternatives_.find(each_, view_);
  deadlines_ = alternatives_.fold(each_);
  line_rules_.refresh(this);
}

std::vector<Permission> Law::permissions(const Line& line, const LineView& of_line) const {
  return wearline::permissions(line, of_line, *pack_, *registry_, view_, this);
}

namespace {
/// More than nothing for certain, nothing for certain, or open.
Tri more_than_nothing(const Range<Money>& sum) {
  if (!sum.low().is_zero()) return true;
  return sum.high().is_zero() ? Tri::no : Tri::unknown;
}

/// The largest sum above a cap: certain, and possible.
Range<Money> over_cap(const std::vector<CapResult>& caps) {
  Money sure, possible;
  for (const CapResult& r : caps) {
    if (r.exceeded == Tri::no || !r.limit || !r.taken || *r.taken <= *r.limit) continue;
    const Money excess = *r.taken - *r.limit;
    if (r.exceeded.known()) sure = std::max(sure, excess);
    possible = std::max(possible, excess);
  }
  return {sure, sure, possible};
}

/// Nothing came yet and the time to pay back still runs: whatever is due, nothing is kept so far.
Tri still_in_time(const Pack& pack, const Registry& registry, const FactView& view, const Outcomes& outcomes) {
  for (const std::string_view came : {"statement-came", "refund-came"})
    if (const FactState& s = view.fact(came); s.kind == FactState::Kind::yes_no && s.yes) return false;
  Tri answer = false;
  for (std::size_t i = 0; i < pack.deadlines.size(); ++i)
    if (pays_back(pack.deadlines[i], registry))
      answer = tri_or(answer, outcomes.deadline_is(i, DeadlineState::open, nullptr));
  return answer;
}
} // namespace

void Law::follow(Consequences& out, const Pack& pack, FactView& view, const Outcomes& outcomes,
                 const Reckoning& reckoning, const std::function<void(Tri)>& settle_deadlines) {
  view.know_refund_short(Tri::unknown);
  out.forfeits.clear();
  out.award = reckon(out.forfeits, view.of(), reckoning);
  if (!out.award.known) {
    out.forfeits = judge_forfeits(pack, view, outcomes);
    out.remedies = judge_remedies(pack, view, outcomes, reckoning, out.award);
    return;
  }
  // First on the merits; then again, as what lateness costs may make money owed that was not.
  for (int round = 0; round < 2; ++round) {
    const Tri owed = more_than_nothing({out.award.least, out.award.sum_due.likely(), out.award.most});
    settle_deadlines(owed);
    out.forfeits = judge_forfeits(pack, view, outcomes);
    out.award = reckon(out.forfeits, view.of(), reckoning);
  }
  out.remedies = judge_remedies(pack, view, outcomes, reckoning, out.award);
}

namespace {
/// Deadlines as they stand in one way; everything else as in the case.
class OutcomesInWay final : public Outcomes {
public:
  OutcomesInWay(const Outcomes& all, const DeadlineWay& way) : all_(&all), way_(&way) {}
  Tri deadline_is(std::size_t deadline, DeadlineState state, Grounds* grounds) const override {
    const DeadlineResult* here = way_->deadline(deadline);
    return here ? is_in_state(*here, state, grounds) : all_->deadline_is(deadline, state, grounds);
  }
  Tri defect(std::size_t rule, Grounds* grounds) const override { return all_->defect(rule, grounds); }

private:
  const Outcomes* all_;
  const DeadlineWay* way_;
};

/// Joins what one way says of a rule to what the ways before said.
template <class Result, class Join>
void join_way(std::vector<Result>& all, std::vector<Result> one, bool first_way, Join join) {
  for (Result& r : all) {
    const auto here = std::find_if(one.begin(), one.end(), [&](const Result& o) { return o.rule == r.rule; });
    if (here == one.end()) {
      if (r.applies.known()) r.applies = Tri::unknown;
      r.certain = false;
      continue;
    }
    if (r.applies != here->applies) r.applies = Tri::unknown;
    r.certain = r.certain && here->certain;
    join(r, *here);
  }
  for (Result& r : one) {
    if (std::any_of(all.begin(), all.end(), [&](const Result& o) { return o.rule == r.rule; })) continue;
    if (!first_way) {
      r.applies = Tri::unknown;
      r.certain = false;
    }
    all.push_back(std::move(r));
  }
  std::sort(all.begin(), all.end(), [](const Result& a, const Result& b) { return a.position < b.position; });
}
} // namespace

void Law::follow_every_way(const Reckoning& reckoning) {
  Consequences all;
  bool first_way = true;
  for (DeadlineWay& way : *alternatives_.ways()) {
    Consequences one;
    const OutcomesInWay outcomes(*this, way);
    FactView view = way.way.view;
    follow(one, *pack_, view, outcomes, reckoning, [&](Tri owed) {
      settle_refund_deadlines(way.deadlines, owed);
      view.know_refund_short(tri_and(owed, tri_not(still_in_time(*pack_, *registry_, view, outcomes))));
    });
    if (first_way) all.award = one.award;
    all.award.least = std::min(all.award.least, one.award.least);
    all.award.most = std::max(all.award.most, one.award.most);
    all.award.open = all.award.open || one.award.open;
    all.award.forfeited = all.award.forfeited && one.award.forfeited;
    all.award.may_be_forfeited = all.award.may_be_forfeited || one.award.may_be_forfeited;
    if (one.award.sum_due_forfeited.high() > all.award.sum_due_forfeited.high())
      all.award.sum_due_forfeited = one.award.sum_due_forfeited;
    join_way(all.forfeits, std::move(one.forfeits), first_way, [](ForfeitResult&, const ForfeitResult&) {});
    join_way(all.remedies, std::move(one.remedies), first_way, [](RemedyResult& r, const RemedyResult& o) {
      r.least = std::min(r.least, o.least);
      r.most = std::max(r.most, o.most);
      r.open = r.open || o.open;
    });
    first_way = false;
  }
  // What is open only by way of the facts that choose among deadlines is asked for as before.
  const auto keep_grounds = [](auto& now, const auto& before) {
    for (auto& r : now)
      for (const auto& b : before)
        if (b.rule == r.rule) {
          r.grounds = b.grounds;
          if (r.applies.known()) r.grounds.unknown.clear();
        }
  };
  keep_grounds(all.forfeits, consequences_.forfeits);
  keep_grounds(all.remedies, consequences_.remedies);
  consequences_ = std::move(all);
}

void Law::settle(const Reckoning& given) {
  Reckoning reckoning = given;
  reckoning.over_cap = over_cap(caps_);
  follow(consequences_, *pack_, view_, *this, reckoning, [&](Tri owed) {
    settle_refund_deadlines(each_, owed);
    alternatives_.settle(owed);
    view_.know_refund_short(tri_and(owed, tri_not(still_in_time(*pack_, *registry_, view_, *this))));
  });
  if (alternatives_.ways()) follow_every_way(reckoning);
  deadlines_ = alternatives_.fold(each_);
}

Asks Law::assumed() const {
  Asks out;
  const auto take = [&](const Grounds& grounds) {
    for (const Ask& ask : grounds.assumed) add_ask(out, ask);
  };
  if (!pack_->places.empty() && view_.of().locality.empty())
    add_ask(out, {Ask::Kind::fact, static_cast<std::uint16_t>(registry_->fact("locality"))});
  for (const DeadlineResult& r : deadlines_) take(r.grounds);
  for (const DocumentResult& r : documents_) take(r.grounds);
  for (const CapResult& r : caps_) take(r.grounds);
  for (const InterestShare& r : interest_.shares) take(r.grounds);
  for (const ForfeitResult& r : consequences_.forfeits) take(r.grounds);
  for (const RemedyResult& r : consequences_.remedies) take(r.grounds);
  return out;
}

Tri Law::deadline_is(std::size_t deadline, DeadlineState state, Grounds* grounds) const {
  return is_in_state(each_[deadline], state, grounds);
}

Tri Law::defect(std::size_t rule, Grounds* grounds) const {
  if (rule < first_cap) {
    if (grounds) grounds->add(documents_[rule].grounds);
    return documents_[rule].defect;
  }
  const Cap* cap = &pack_->caps[rule - first_cap];
  for (const CapResult& r : caps_)
    if (r.rule == cap) {
      if (grounds) grounds->add(r.grounds);
      return r.exceeded;
    }
  return false;
}

} // namespace wearline
