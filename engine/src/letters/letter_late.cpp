#include "letters/letter_late.h"

#include "law/applies.h"

#include <algorithm>

namespace wearline {

namespace {

/// The case as it stands once this paper goes out: a day that is past was missed.
class AfterToday final : public Outcomes {
public:
  AfterToday(const Law& law, const std::vector<std::size_t>& past) : law_(&law), past_(&past) {}

  Tri deadline_is(std::size_t deadline, DeadlineState state, Grounds* grounds) const override {
    if (std::find(past_->begin(), past_->end(), deadline) == past_->end())
      return law_->deadline_is(deadline, state, grounds);
    return state == DeadlineState::missed;
  }
  Tri defect(std::size_t rule, Grounds* grounds) const override { return law_->defect(rule, grounds); }

private:
  const Law* law_;
  const std::vector<std::size_t>* past_;
};

bool about_list_or_money(std::string_view name) {
  return name == "itemize" || name == "notice-of-claim" || name == "return-deposit" || name == "refund-balance";
}

bool is_past(const DeadlineResult& deadline, const Draft& d) {
  const std::string_view name = d.law.name_of(*deadline.deadline);
  if (deadline.deadline->who != Who::landlord || !about_list_or_money(name) || deadline.applies == Tri::no ||
      !deadline.last || deadline.last->latest == max_day || deadline.last->latest >= d.a.today)
    return false;
  if (deadline.state == DeadlineState::missed || deadline.state == DeadlineState::open) return true;
  // Whether it applies, or whether money was owed, is open: nothing went out in time.
  const auto& sent = d.c.statement.sent ? d.c.statement.sent : d.c.statement.dated;
  return deadline.state == DeadlineState::undetermined && !deadline.done_on && !sent && !d.c.statement.refund_sent;
}

bool speaks_of(const Condition& condition, const std::vector<std::size_t>& past) {
  if (condition.op == Condition::Op::deadline_is)
    return condition.state == DeadlineState::missed &&
           std::find(past.begin(), past.end(), condition.which) != past.end();
  return std::any_of(condition.parts.begin(), condition.parts.end(),
                     [&](const Condition& part) { return speaks_of(part, past); });
}

MayKeep left_by(Loses loses) {
  switch (loses) {
  case Loses::all_deductions:
  case Loses::whole_deposit_claim:
    return MayKeep::nothing;
  case Loses::damage_deductions:
    return MayKeep::no_damage;
  case Loses::documented_lines_only:
    break;
  }
  return MayKeep::all;
}

} // namespace

LandlordsRight landlords_right(const Draft& d) {
  LandlordsRight out;
  if (!d.law.there()) return out;
  const Law& law = *d.a.law;
  std::vector<std::size_t> past;
  for (const DeadlineResult& deadline : law.deadlines()) {
    if (!is_past(deadline, d)) continue;
    out.past.push_back(&deadline);
    past.push_back(static_cast<std::size_t>(deadline.deadline - law.pack().deadlines.data()));
    past.insert(past.end(), deadline.instead.begin(), deadline.instead.end());
  }
  const AfterToday outcomes(law, past);
  const auto weigh = [&](const Rule& rule, MayKeep left) {
    if (left > out.may_keep) out.may_keep = left, out.by = &rule;
  };
  for (const Forfeit& rule : law.pack().forfeits) {
    if (d.law.footing(rule) == Footing::none) continue;
    const bool late = speaks_of(rule.when, past);
    const Tri holds = applies(rule, law.view(), late ? static_cast<const Outcomes*>(&outcomes) : &law);
    if (late ? holds != Tri::no : holds == Tri::yes && rule.needs == Needs::none) weigh(rule, left_by(rule.loses));
  }
  // A sum reckoned from the whole deposit, or from all that is kept, asks nothing about what was fair to keep.
  for (const Remedy& rule : law.pack().remedies) {
    const bool all_kept =
        (rule.base == Base::whole_deposit && rule.charges_off == ChargesOff::not_at_all) || rule.base == Base::withheld;
    if (!all_kept || rule.needs != Needs::none || !speaks_of(rule.when, past) || d.law.footing(rule) == Footing::none)
      continue;
    if (applies(rule, law.view(), &outcomes) != Tri::no) weigh(rule, MayKeep::nothing);
  }
  return out;
}

} // namespace wearline
