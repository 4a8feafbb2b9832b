#include "law/deadlines.h"

#include "law/applies.h"

#include <algorithm>

namespace wearline {

bool pays_back(const Deadline& deadline, const Registry& registry) {
  return deadline.who == Who::landlord && registry.deadlines[deadline.name].posted == registry.event("refund-sent") &&
         deadline.met == EventId::none;
}

namespace {

/// The first of two events that is known; else the first that may have happened.
EventId first_known(EventId a, EventId b, const FactView& view) {
  if (a == EventId::none || b == EventId::none) return a == EventId::none ? b : a;
  if (view.event(a).happened == Tri::yes) return a;
  if (view.event(b).happened == Tri::yes) return b;
  return view.event(a).happened == Tri::no && !view.event(a).assumed ? a : b;
}

/// Was an event in time? Only for one that happened.
Tri in_time(const DaySpan& on, const DeadlineResult& r) {
  if (r.first) {
    if (on.earliest >= r.first->latest) return true;
    return on.latest < r.first->earliest ? Tri::no : Tri::unknown;
  }
  if (on.latest <= r.last->earliest) return true;
  return on.earliest > r.last->latest ? Tri::no : Tri::unknown;
}

/// What was done about a deadline, as far as the case tells.
struct Doing {
  Tri happened;
  Tri timely; ///< where it happened and there is a last day
  bool arrival_open = false;
  bool by_fact = false; ///< known from a yes/no fact, without a day
};

void ask_for(DeadlineResult& r, EventId id) {
  add_ask(r.grounds.unknown, {Ask::Kind::event, static_cast<std::uint16_t>(id)});
}

void note_done(DeadlineResult& r, EventId id, const EventState& s) {
  r.done = id;
  r.done_assumed = s.assumed;
  if (s.happened == Tri::yes) r.done_on = s.on;
  if (s.assumed) add_ask(r.grounds.assumed, {Ask::Kind::event, static_cast<std::uint16_t>(id)});
}

/// A deadline for which no event is kept: a fact may say that it was done, and done as the law asks.
Doing doing_by_fact(DeadlineResult& r, FactId fact, const FactView& view) {
  Doing out;
  if (fact == FactId::none) return out;
  const FactState& s = view.fact(fact);
  if (s.kind != FactState::Kind::yes_no) {
    add_ask(r.grounds.unknown, {Ask::Kind::fact, static_cast<std::uint16_t>(fact)});
    return out;
  }
  out.happened = s.yes;
  out.by_fact = true;
  if (s.yes) out.timely = true;
  return out;
}

bool dated(const DeadlineResult& r) { return r.last || r.first; }

/// In time by sending or by arrival. Where the law does not say which, by sending; that it came late is noted.
void compare_with_last_day(DeadlineResult& r, Doing& out, EventId posted, EventId arrived, const FactView& view) {
  const EventState &sent = view.event(posted), &got = view.event(arrived);
  const MetBy by = r.deadline->met_by;
  const bool needs_arrival = by == MetBy::delivery || by == MetBy::receipt;
  const Tri sent_timely = in_time(sent.on, r);
  if (by == MetBy::posting || sent_timely == Tri::no) { // what is sent late arrives late
    out.timely = sent_timely;
    if (!out.timely.known() && !sent.on.known()) ask_for(r, posted);
    return;
  }
  Tri got_timely;
  if (got.happened == Tri::yes) got_timely = in_time(got.on, r);
  if (needs_arrival && got.happened == Tri::no) {
    out.happened = false;
    return;
  }
  if (needs_arrival) {
    out.timely = got_timely;
    if (got.happened.known()) note_done(r, arrived, got);
  } else {
    out.timely = sent_timely; // where the law is silent, sending in time is taken to be enough
    out.arrival_open = got_timely == Tri::no;
  }
  if (out.timely.known()) return;
  if (got.happened != Tri::yes || !got.on.known()) ask_for(r, arrived);
  if (!sent.on.known()) ask_for(r, posted);
}

Doing doing(DeadlineResult& r, const Registry& registry, const FactView& view) {
  const Deadline& deadline = *r.deadline;
  const DeadlineInfo& name = registry.deadlines[deadline.name];
  EventId posted = deadline.met, arrived = deadline.met;
  if (posted == EventId::none) {
    posted = first_known(name.posted, name.or_posted, view);
    arrived = posted == name.posted ? name.arrived : name.or_arrived;
    if (arrived == EventId::none) arrived = posted;
  }
  if (posted == EventId::none) return doing_by_fact(r, name.fact, view);
  const EventState& sent = view.event(posted);
  Doing out;
  out.happened = sent.happened;
  out.by_fact = sent.happened.known() && !sent.assumed && sent.on == DaySpan{};
  note_done(r, posted, sent);
  if (!sent.happened.known()) ask_for(r, posted);
  else if (sent.happened.known_yes() && dated(r)) compare_with_last_day(r, out, posted, arrived, view);
  return out;
}

struct Standing {
  DeadlineState state;
  DeadlineReason reason;
};

/// The state of a deadline without a last day.
Standing undated_standing(const DeadlineResult& r, const Doing& d, const FactView& view) {
  if (d.happened == Tri::yes) return {DeadlineState::met, DeadlineReason::done_in_time};
  const bool never = std::any_of(r.periods.begin(), r.periods.end(), [](const PeriodCount& l) { return l.never; });
  if (never) return {DeadlineState::not_needed, DeadlineReason::not_started};
  // "No inspection was offered" is an answer only once the tenancy is over.
  const EventState& end = view.event("tenancy-ended");
  if (d.happened == Tri::no && d.by_fact)
    return end.happened == Tri::yes && end.on.earliest > view.today()
               ? Standing{DeadlineState::open, DeadlineReason::time_left}
               : Standing{DeadlineState::missed, DeadlineReason::not_done};
  return {DeadlineState::undetermined, DeadlineReason::no_number};
}

/// Counted back from events that are all past.
bool event_past(const DeadlineResult& r, Day today) {
  return std::all_of(r.periods.begin(), r.periods.end(),
                     [&](const PeriodCount& l) { return l.period->before && !l.may_never && l.start.latest < today; });
}

/// The state of a deadline not to act before a day. It asks for nothing while its time has not come, nor once the event
/// it has to come before is past.
Standing window_standing(const DeadlineResult& r, const Doing& d, Day today) {
  if (d.happened == Tri::yes) {
    if (!d.timely.known()) return {DeadlineState::undetermined, DeadlineReason::date_open};
    return d.timely.known_yes() ? Standing{DeadlineState::met, DeadlineReason::done_in_time}
                                : Standing{DeadlineState::missed, DeadlineReason::done_early};
  }
  if (event_past(r, today)) return {DeadlineState::not_needed, DeadlineReason::window_past};
  if (today < r.first->earliest) return {DeadlineState::open, DeadlineReason::window_shut};
  if (today >= r.first->latest) return {DeadlineState::open, DeadlineReason::window_open};
  return {DeadlineState::undetermined, DeadlineReason::date_open};
}

/// The state of a deadline that applies, from what was done and what day it is.
Standing standing(const DeadlineResult& r, const Doing& d, const FactView& view) {
  if (r.first) return window_standing(r, d, view.today());
  if (!r.last) return undated_standing(r, d, view);
  const Day today = view.today();
  if (d.happened == Tri::yes) {
    if (!d.timely.known()) return {DeadlineState::undetermined, DeadlineReason::date_open};
    if (!d.timely.known_yes()) return {DeadlineState::missed, DeadlineReason::done_late};
    return {DeadlineState::met, d.arrival_open ? DeadlineReason::arrival_open : DeadlineReason::done_in_time};
  }
  if (today <= r.last->earliest) return {DeadlineState::open, DeadlineReason::time_left};
  if (d.happened == Tri::no && today > r.last->latest) return {DeadlineState::missed, DeadlineReason::not_done};
  return {DeadlineState::undetermined, DeadlineReason::date_open};
}

void conclude(DeadlineResult& r, Standing v) { conclude(r, v.state, v.reason); }

void judge_refund(DeadlineResult& r, Tri refund_owed, Standing v) {
  if (r.hangs_on_refund) {
    if (refund_owed == Tri::no) v = {DeadlineState::not_needed, DeadlineReason::nothing_owed};
    else if (!refund_owed.known()) v = {DeadlineState::undetermined, DeadlineReason::owed_open};
  }
  conclude(r, v);
}

/// The last day of the whole deadline from those of its periods: first those whose time runs, then those whose time may
/// not run at all, which can move the end only one way.
void join_periods(DeadlineResult& r) {
  const Governing governing = r.deadline->governing;
  const bool needs_all = r.deadline->needs_all;
  bool open_number = false, waits = false;
  for (const PeriodCount& l : r.periods) {
    waits = waits || l.period->earliest;
    if (l.never && needs_all) return;
    open_number = open_number || (!l.never && !l.rule);
  }
  for (const bool may_never : {false, true})
    for (const PeriodCount& l : r.periods) {
      if (l.never || !l.rule || (l.may_never && !needs_all) != may_never) continue;
      if (!r.last) r.last = l.last;
      else if (!may_never) r.last = governing_day(governing, *r.last, l.last);
      else if (governing == Governing::latest) r.last->latest = std::max(r.last->latest, l.last.latest);
      else r.last->earliest = std::min(r.last->earliest, l.last.earliest);
    }
  if (!r.last) return;
  if (open_number && governing == Governing::latest) r.last->latest = max_day;
  for (std::size_t i = 0; i < r.periods.size(); ++i)
    if (r.periods[i].rule && r.periods[i].last.latest >= r.last->earliest &&
        r.periods[i].last.earliest <= r.last->latest)
      r.governing.push_back(i);
  if (waits) std::swap(r.last, r.first);
}

/// Questions are worth asking only while the answer can change.
void drop_idle_questions(DeadlineResult& r) {
  const std::optional<DaySpan>& day = r.first ? r.first : r.last;
  const bool exact = !day || day->known();
  const bool settled =
      r.state == DeadlineState::open ? exact && r.applies.known() : r.state != DeadlineState::undetermined;
  if (settled) r.grounds.unknown.clear();
}

} // namespace

void conclude(DeadlineResult& r, DeadlineState state, DeadlineReason reason) {
  r.state = state;
  r.reason = reason;
  const auto is = [&](DeadlineState s) -> Tri {
    if (state == DeadlineState::undetermined) return Tri::unknown;
    return state == s ? (r.applies.known() ? Tri::yes : Tri::unknown) : Tri::no;
  };
  r.met = is(DeadlineState::met);
  r.missed = is(DeadlineState::missed);
  r.open = is(DeadlineState::open);
  if (!r.applies.known() && state == DeadlineState::missed) {
    r.state = DeadlineState::undetermined;
    r.reason = DeadlineReason::condition_open;
  }
}

DeadlineResult judge_deadline(std::size_t position, const Pack& pack, const Registry& registry,
                              const Holidays& holidays, const FactView& view, Tri refund_owed) {
  DeadlineResult r;
  r.position = position;
  r.deadline = &pack.deadlines[position];
  const Deadline& deadline = *r.deadline;
  r.applies = applies(deadline, view, nullptr, &r.grounds);
  if (r.applies == Tri::no) {
    const bool out_of_force = in_force(deadline, view) == Tri::no;
    conclude(r,
             {DeadlineState::not_needed, out_of_force ? DeadlineReason::not_in_force : DeadlineReason::not_called_for});
    return r;
  }
  for (const Period& period : deadline.periods)
    r.periods.push_back(count_period(period, deadline.needs_all, deadline, pack, holidays, view, &r.grounds));
  join_periods(r);
  const Doing d = doing(r, registry, view);
  const Standing s = standing(r, d, view);
  r.hangs_on_refund =
      pays_back(deadline, registry) && s.state == DeadlineState::missed && s.reason == DeadlineReason::not_done;
  judge_refund(r, refund_owed, s);
  drop_idle_questions(r);
  return r;
}

Tri is_in_state(const DeadlineResult& r, DeadlineState state, Grounds* grounds) {
  if (grounds) grounds->add(r.grounds);
  switch (state) {
  case DeadlineState::met:
    return r.met;
  case DeadlineState::missed:
    return r.missed;
  case DeadlineState::open:
    return r.open;
  default:
    return r.state == state;
  }
}

std::vector<DeadlineResult> judge_deadlines(const Pack& pack, const Registry& registry, const Holidays& holidays,
                                            const FactView& view, Tri refund_owed) {
  std::vector<DeadlineResult> out;
  out.reserve(pack.deadlines.size());
  for (std::size_t i = 0; i < pack.deadlines.size(); ++i)
    out.push_back(judge_deadline(i, pack, registry, holidays, view, refund_owed));
  return out;
}

void settle_refund_deadlines(std::vector<DeadlineResult>& results, Tri refund_owed) {
  for (DeadlineResult& r : results)
    if (r.hangs_on_refund) judge_refund(r, refund_owed, {DeadlineState::missed, DeadlineReason::not_done});
}

} // namespace wearline
