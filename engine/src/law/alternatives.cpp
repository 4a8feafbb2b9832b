#include "law/alternatives.h"

#include "law/applies.h"

#include <algorithm>
#include <tuple>

namespace wearline {

namespace {

/// What becomes of a family in one way: the deadline that then applies, or may; nothing where none can.
struct Outcome {
  const DeadlineResult* deadline = nullptr;
  DeadlineState state = DeadlineState::not_needed;
  bool certain = true; ///< it applies, or none does
};

std::vector<Outcome> outcomes_in(const DeadlineWay& way, const std::vector<std::size_t>& members) {
  std::vector<Outcome> out;
  for (const std::size_t position : members) {
    const DeadlineResult* deadline = way.deadline(position);
    if (!deadline || deadline->applies == Tri::no) continue;
    if (deadline->applies.known()) return {{deadline, deadline->state, true}};
    out.push_back({deadline, deadline->state, false});
  }
  out.push_back({});
  return out;
}

bool same_answer(const Answer& a, const Answer& b) {
  if (a.ask.kind == Ask::Kind::event) return a.event.happened == b.event.happened && a.event.on == b.event.on;
  return a.fact.kind == b.fact.kind && a.fact.yes == b.fact.yes && a.fact.low == b.fact.low &&
         a.fact.high == b.fact.high && a.fact.text == b.fact.text;
}

/// The one thing in which two ways differ; null if in none or in more than one.
const Ask* only_difference(const Way& a, const Way& b) {
  const Ask* found = nullptr;
  if (a.answers.size() != b.answers.size()) return nullptr;
  for (std::size_t i = 0; i < a.answers.size(); ++i) {
    if (!(a.answers[i].ask == b.answers[i].ask)) return nullptr;
    if (same_answer(a.answers[i], b.answers[i])) continue;
    if (found) return nullptr;
    found = &a.answers[i].ask;
  }
  return found;
}

bool same(const std::vector<Outcome>& a, const std::vector<Outcome>& b) {
  const auto day = [](const Outcome& o) { return o.deadline ? o.deadline->last : std::nullopt; };
  return a.size() == b.size() && std::equal(a.begin(), a.end(), b.begin(), [&](const Outcome& x, const Outcome& y) {
           return x.state == y.state && day(x) == day(y);
         });
}

/// The facts whose answer changes what becomes of the family.
Asks turning(const std::vector<DeadlineWay>& ways, const std::vector<std::vector<Outcome>>& outcomes) {
  Asks out;
  for (std::size_t i = 0; i < ways.size(); ++i)
    for (std::size_t j = i + 1; j < ways.size(); ++j)
      if (!same(outcomes[i], outcomes[j]))
        if (const Ask* ask = only_difference(ways[i].way, ways[j].way)) add_ask(out, *ask);
  return out;
}

void widen(std::optional<DaySpan>& day, const std::optional<DaySpan>& by) {
  if (!by) return;
  if (!day) day = by;
  else day = DaySpan{std::min(day->earliest, by->earliest), std::max(day->latest, by->latest)};
}

/// What is the same whichever way it is. Where a deadline may also not be called for, only a missed one is open.
struct Common {
  DeadlineState state;
  bool agreed = true;
};
Common common(const std::vector<Outcome>& all) {
  std::optional<DeadlineState> state;
  bool may_be_none = false;
  for (const Outcome& o : all) {
    if (o.state == DeadlineState::not_needed) {
      may_be_none = true;
      continue;
    }
    if (state && *state != o.state) return {DeadlineState::undetermined, false};
    state = o.state;
  }
  if (!state) return {DeadlineState::not_needed};
  if (may_be_none && *state == DeadlineState::missed) return {DeadlineState::undetermined, false};
  return {*state};
}

/// The outcome to be shown for the family, in its common state: of a missed one that with the latest last day, which
/// none can say was not past; of any other that with the earliest, by which it is done in time whichever applies.
const DeadlineResult* leading(const std::vector<Outcome>& all, DeadlineState state) {
  constexpr std::size_t pack_order = 0xffff; // of equals the first in the pack
  const DeadlineResult* found = nullptr;
  const auto rank = [&](const DeadlineResult& r) {
    const auto day = r.last ? (state == DeadlineState::missed ? r.last->latest : r.last->earliest) : max_day;
    const auto count = day.time_since_epoch().count();
    return std::tuple(r.state == state, state == DeadlineState::missed ? count : -count, pack_order - r.position);
  };
  for (const Outcome& o : all)
    if (o.deadline && (!found || rank(*o.deadline) > rank(*found))) found = o.deadline;
  return found;
}

} // namespace

const DeadlineResult* DeadlineWay::deadline(std::size_t position) const {
  const auto found =
      std::find_if(deadlines.begin(), deadlines.end(), [&](const DeadlineResult& r) { return r.position == position; });
  return found == deadlines.end() ? nullptr : &*found;
}

void Alternatives::find(const std::vector<DeadlineResult>& each, const FactView& view) {
  std::vector<Family> families;
  for (const DeadlineResult& r : each) {
    if (r.applies == Tri::no) continue;
    auto found =
        std::find_if(families.begin(), families.end(), [&](const Family& f) { return f.id == r.deadline->family; });
    if (found == families.end()) found = families.insert(families.end(), Family{r.deadline->family, {}});
    found->members.push_back(r.position);
  }
  families.erase(std::remove_if(families.begin(), families.end(), [](const Family& f) { return f.members.size() < 2; }),
                 families.end());
  if (families.empty()) return;
  add(families, view);
  if (!open_.empty() && !open_.front().ways.empty()) return;
  open_.clear();
  for (const Family& family : families) add({family}, view);
}

void Alternatives::add(std::vector<Family> families, const FactView& view) {
  Asks asks;
  Answers answers(view);
  for (const Family& family : families)
    for (const std::size_t position : family.members) {
      const Deadline& deadline = pack_->deadlines[position];
      Grounds grounds;
      applies(deadline, view, nullptr, &grounds);
      for (const Ask& ask : grounds.unknown) add_ask(asks, ask);
      answers.heed(deadline);
    }
  Open open{std::move(families), {}};
  for (Way& way : ways_of(asks, answers, view)) {
    DeadlineWay made{std::move(way), {}};
    for (const Family& family : open.families)
      for (const std::size_t position : family.members)
        made.deadlines.push_back(judge_deadline(position, *pack_, *registry_, *holidays_, made.way.view, Tri::unknown));
    open.ways.push_back(std::move(made));
  }
  open_.push_back(std::move(open));
}

void Alternatives::settle(Tri owed) {
  for (Open& open : open_)
    for (DeadlineWay& way : open.ways) settle_refund_deadlines(way.deadlines, owed);
}

DeadlineResult Alternatives::fold(const Family& family, const std::vector<DeadlineWay>& ways,
                                  const DeadlineResult& first) const {
  std::vector<std::vector<Outcome>> by_way;
  std::vector<Outcome> all;
  bool always = true;
  for (const DeadlineWay& way : ways) {
    by_way.push_back(outcomes_in(way, family.members));
    for (const Outcome& o : by_way.back()) {
      all.push_back(o);
      always = always && o.deadline && o.certain;
    }
  }
  const Common state = common(all);
  const DeadlineResult* lead = leading(all, state.state);
  if (!lead) { // in no way can any of them apply
    DeadlineResult none = first;
    none.applies = false;
    none.grounds.unknown.clear();
    conclude(none, DeadlineState::not_needed, DeadlineReason::not_called_for);
    return none;
  }
  DeadlineResult out = *lead;
  out.applies = always ? Tri::yes : Tri::unknown;
  out.instead.clear();
  out.last = out.first = std::nullopt;
  out.grounds = {};
  for (const Outcome& o : all) {
    if (!o.deadline) continue;
    widen(out.last, o.deadline->last);
    widen(out.first, o.deadline->first);
    out.grounds.add(o.deadline->grounds);
    if (std::find(out.instead.begin(), out.instead.end(), o.deadline->position) == out.instead.end())
      out.instead.push_back(o.deadline->position);
  }
  std::sort(out.instead.begin(), out.instead.end());
  if (out.instead.size() < 2) out.instead.clear();
  conclude(out, state.state, state.agreed ? out.reason : DeadlineReason::condition_open);
  // What turns nothing is not asked.
  Asks asks = turning(ways, by_way);
  const bool settled = out.state == DeadlineState::missed || out.state == DeadlineState::met;
  if (settled) out.grounds.unknown.clear();
  else
    for (const Ask& ask : asks) add_ask(out.grounds.unknown, ask);
  return out;
}

std::vector<DeadlineResult> Alternatives::fold(const std::vector<DeadlineResult>& each) const {
  std::vector<DeadlineResult> out;
  for (const DeadlineResult& r : each) {
    const Family* family = nullptr;
    const std::vector<DeadlineWay>* ways = nullptr;
    for (const Open& open : open_)
      for (const Family& f : open.families)
        if (f.id == r.deadline->family && r.applies != Tri::no && !open.ways.empty()) {
          family = &f;
          ways = &open.ways;
        }
    if (!family) out.push_back(r);
    else if (family->members.front() == r.position) out.push_back(fold(*family, *ways, r));
  }
  return out;
}

} // namespace wearline
