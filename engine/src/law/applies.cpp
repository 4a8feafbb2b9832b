#include "law/applies.h"

#include "values/ascii.h"

#include <algorithm>

namespace wearline {

namespace {

/// Names of cities are typed in any case and with blanks around them.
bool same_name(std::string_view a, std::string_view b) {
  const auto trim = [](std::string_view s) {
    while (!s.empty() && s.front() == ' ') s.remove_prefix(1);
    while (!s.empty() && s.back() == ' ') s.remove_suffix(1);
    return s;
  };
  a = trim(a);
  b = trim(b);
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](char x, char y) { return to_lower(x) == to_lower(y); });
}

Tri fact_holds(const Condition& c, const FactState& s) {
  switch (c.op) {
  case Condition::Op::yes_no:
    if (s.kind != FactState::Kind::yes_no) return Tri::unknown;
    return s.yes == c.wanted;
  case Condition::Op::text_in:
    if (s.kind != FactState::Kind::text) {
      const auto ruled_out = [&](const std::string& n) { return !s.not_text.empty() && same_name(n, s.not_text); };
      return std::all_of(c.names.begin(), c.names.end(), ruled_out) ? Tri(false) : Tri::unknown;
    }
    return std::any_of(c.names.begin(), c.names.end(), [&](const std::string& n) { return same_name(n, s.text); });
  default:
    if (s.kind != FactState::Kind::number) return Tri::unknown;
    if (s.low >= c.low && s.high <= c.high) return true;
    if (s.high < c.low || s.low > c.high) return false;
    return Tri::unknown;
  }
}

Tri event_holds(const Condition& c, const EventState& s) {
  if (c.op == Condition::Op::event_happened)
    return s.happened.known() ? Tri(s.happened.known_yes() == c.wanted) : Tri::unknown;
  if (s.happened == Tri::no) return false;
  if (s.on.latest < c.span.earliest || s.on.earliest > c.span.latest) return false;
  if (!s.happened.known()) return Tri::unknown;
  if (s.on.earliest >= c.span.earliest && s.on.latest <= c.span.latest) return true;
  return Tri::unknown;
}

Tri leaf_holds(const Condition& c, const FactView& view, const Outcomes* outcomes, Grounds* grounds) {
  switch (c.op) {
  case Condition::Op::deadline_is:
    return outcomes ? outcomes->deadline_is(c.which, c.state, grounds) : Tri::unknown;
  case Condition::Op::defect:
    return outcomes ? outcomes->defect(c.which, grounds) : Tri::unknown;
  case Condition::Op::event_happened:
  case Condition::Op::event_on: {
    const EventState& s = view.event(EventId{c.which});
    const Tri answer = event_holds(c, s);
    if (grounds && !answer.known()) add_ask(grounds->unknown, {Ask::Kind::event, c.which});
    if (grounds && answer.known() && s.assumed) add_ask(grounds->assumed, {Ask::Kind::event, c.which});
    return answer;
  }
  default: {
    const FactState& s = view.fact(FactId{c.which});
    const bool silent = c.unless_said && s.kind == FactState::Kind::unknown;
    const Tri answer = silent ? Tri::no : fact_holds(c, s);
    if (grounds && !answer.known()) add_ask(grounds->unknown, {Ask::Kind::fact, c.which});
    if (grounds && answer.known() && (s.assumed || silent)) add_ask(grounds->assumed, {Ask::Kind::fact, c.which});
    return answer;
  }
  }
}

/// `all` where decisive is false, `any` where decisive is true: one decisive part settles it, whatever the others are.
Tri list_holds(const Condition& c, bool decisive, const FactView& view, const Outcomes* outcomes, Grounds* grounds) {
  Tri answer = !decisive;
  Grounds mine;
  for (const Condition& part : c.parts) {
    Grounds of_part;
    const Tri one = holds(part, view, outcomes, grounds ? &of_part : nullptr);
    if (one == Tri(decisive)) {
      if (grounds) grounds->add(of_part);
      return decisive;
    }
    if (!one.known()) answer = Tri::unknown;
    if (grounds) mine.add(of_part);
  }
  if (grounds) grounds->add(mine);
  return answer;
}

} // namespace

Tri holds(const Condition& c, const FactView& view, const Outcomes* outcomes, Grounds* grounds) {
  switch (c.op) {
  case Condition::Op::all:
    return list_holds(c, false, view, outcomes, grounds);
  case Condition::Op::any:
    return list_holds(c, true, view, outcomes, grounds);
  case Condition::Op::none_of:
    return tri_not(holds(c.parts.front(), view, outcomes, grounds));
  default:
    return leaf_holds(c, view, outcomes, grounds);
  }
}

Tri in_force(const Rule& rule, const FactView& view, Grounds* grounds) {
  if (!rule.from && !rule.to) return true;
  const DaySpan force{rule.from.value_or(min_day), rule.to.value_or(max_day)};
  DaySpan on{view.today(), view.today()};
  if (rule.by != EventId::none) {
    const EventState& event = view.event(rule.by);
    if (event.happened != Tri::no) on = event.on;
    if (grounds && event.assumed) add_ask(grounds->assumed, {Ask::Kind::event, static_cast<std::uint16_t>(rule.by)});
  }
  if (on.latest < force.earliest || on.earliest > force.latest) return false;
  if (on.earliest >= force.earliest && on.latest <= force.latest) return true;
  if (grounds) add_ask(grounds->unknown, {Ask::Kind::event, static_cast<std::uint16_t>(rule.by)});
  return Tri::unknown;
}

Tri applies(const Rule& rule, const FactView& view, const Outcomes* outcomes, Grounds* grounds) {
  Grounds of_force;
  const Tri force = in_force(rule, view, grounds ? &of_force : nullptr);
  if (force == Tri::no) return false;
  Grounds of_condition;
  const Tri condition = holds(rule.when, view, outcomes, grounds ? &of_condition : nullptr);
  if (grounds && condition != Tri::no) grounds->add(of_force);
  if (grounds) grounds->add(of_condition);
  return tri_and(force, condition);
}

} // namespace wearline
