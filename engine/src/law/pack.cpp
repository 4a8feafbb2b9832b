#include "law/pack.h"

namespace wearline {

std::string_view name_of(Unit unit) {
  switch (unit) {
  case Unit::business_day:
    return "business-day";
  case Unit::week:
    return "week";
  case Unit::month:
    return "month";
  case Unit::year:
    return "year";
  case Unit::hour:
    return "hour";
  case Unit::calendar_day:
    break;
  }
  return "calendar-day";
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

References references_of(const Pack& pack, const Rule& rule) {
  References out;
  for (const std::uint16_t at : rule.sources) out.push_back(&pack.sources[at]);
  return out;
}

} // namespace wearline
