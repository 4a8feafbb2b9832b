#include "law/ways.h"

#include <algorithm>

namespace wearline {

namespace {

Ask event_ask(EventId id) { return {Ask::Kind::event, static_cast<std::uint16_t>(id)}; }
std::int64_t day_count(Day day) { return day.time_since_epoch().count(); }
Day day_of(std::int64_t count) { return Day(days(count)); }

/// Stands for every name that no rule mentions.
constexpr std::string_view another_name = "(another)";

bool is_open(const FactView& view, Ask ask) {
  if (ask.kind == Ask::Kind::fact) {
    const FactState& s = view.fact(FactId{ask.which});
    return s.kind == FactState::Kind::unknown || (s.kind == FactState::Kind::number && s.low != s.high);
  }
  const EventState& s = view.event(EventId{ask.which});
  return !s.happened.known() || (s.happened.known_yes() && !s.on.known());
}

/// Cuts low..high at each edge inside it.
template <class Take> void stretches(std::int64_t low, std::int64_t high, std::vector<std::int64_t> edges, Take take) {
  std::sort(edges.begin(), edges.end());
  for (const std::int64_t edge : edges) {
    if (edge <= low || edge > high) continue;
    take(low, edge - 1);
    low = edge;
  }
  take(low, high);
}

void explore(const Asks& open, std::size_t at, const Answers& answers, Way so_far, std::vector<Way>& out) {
  if (out.size() > most_ways) return;
  // An answer given before may have settled this one too.
  while (at < open.size() && !is_open(so_far.view, open[at])) ++at;
  if (at == open.size()) {
    out.push_back(std::move(so_far));
    return;
  }
  for (const Answer& answer : answers.to(open[at])) {
    Way next = so_far;
    if (answer.ask.kind == Ask::Kind::fact) next.view.suppose(FactId{answer.ask.which}, answer.fact);
    else next.view.suppose(EventId{answer.ask.which}, answer.event);
    next.answers.push_back(answer);
    explore(open, at + 1, answers, std::move(next), out);
  }
}

} // namespace

void Answers::heed(const Rule& rule) {
  heed(rule.when);
  if (rule.by == EventId::none) return;
  if (rule.from) edges_.push_back({event_ask(rule.by), day_count(*rule.from)});
  if (rule.to) edges_.push_back({event_ask(rule.by), day_count(*rule.to) + 1});
}

void Answers::heed(const Condition& c) {
  switch (c.op) {
  case Condition::Op::text_in:
    if (c.unless_said) break; // while the case is silent it is taken to be none of these
    for (const std::string& name : c.names) names_.push_back({{Ask::Kind::fact, c.which}, &name});
    break;
  case Condition::Op::number_in:
    edges_.push_back({{Ask::Kind::fact, c.which}, c.low});
    if (c.high != std::numeric_limits<std::int64_t>::max()) edges_.push_back({{Ask::Kind::fact, c.which}, c.high + 1});
    break;
  case Condition::Op::event_on:
    edges_.push_back({{Ask::Kind::event, c.which}, day_count(c.span.earliest)});
    edges_.push_back({{Ask::Kind::event, c.which}, day_count(c.span.latest) + 1});
    break;
  default:
    for (const Condition& part : c.parts) heed(part);
  }
}

std::vector<Answer> Answers::to(Ask ask) const { return ask.kind == Ask::Kind::fact ? to_fact(ask) : to_event(ask); }

std::vector<Answer> Answers::to_fact(Ask ask) const {
  const FactInfo& info = view_->info(FactId{ask.which});
  std::vector<Answer> out;
  const auto add = [&](FactState state) { out.push_back({ask, state, {}}); };
  FactState state;
  if (info.type == FactType::yes_no) {
    state.kind = FactState::Kind::yes_no;
    for (const bool yes : {true, false}) {
      state.yes = yes;
      add(state);
    }
    return out;
  }
  if (info.type == FactType::text) {
    state.kind = FactState::Kind::text;
    std::vector<std::string_view> names(info.choices.begin(), info.choices.end());
    for (const Name& n : names_)
      if (n.ask == ask && std::find(names.begin(), names.end(), *n.name) == names.end()) names.push_back(*n.name);
    if (info.choices.empty()) names.push_back(another_name);
    for (const std::string_view name : names) {
      state.text = name;
      add(state);
    }
    return out;
  }
  const FactState& now = view_->fact(FactId{ask.which});
  const bool limited = now.kind == FactState::Kind::number;
  state.kind = FactState::Kind::number;
  std::vector<std::int64_t> edges;
  for (const Edge& e : edges_)
    if (e.ask == ask) edges.push_back(e.at);
  stretches(limited ? now.low : 0, limited ? now.high : Money::max_cents, std::move(edges),
            [&](std::int64_t low, std::int64_t high) {
              state.low = low;
              state.high = high;
              add(state);
            });
  return out;
}

std::vector<Answer> Answers::to_event(Ask ask) const {
  const EventState& now = view_->event(EventId{ask.which});
  std::vector<Answer> out;
  if (!now.happened.known()) out.push_back({ask, {}, {false, now.on, false}});
  std::vector<std::int64_t> edges;
  for (const Edge& e : edges_)
    if (e.ask == ask) edges.push_back(e.at);
  stretches(day_count(now.on.earliest), day_count(now.on.latest), std::move(edges),
            [&](std::int64_t low, std::int64_t high) {
              out.push_back({ask, {}, {true, {day_of(low), day_of(high)}, false}});
            });
  return out;
}

std::vector<Way> ways_of(const Asks& open, const Answers& answers, const FactView& view) {
  std::vector<Way> out;
  if (open.empty()) return out;
  Asks order = open; // events first: facts that are worked out from them follow
  std::stable_partition(order.begin(), order.end(), [](const Ask& a) { return a.kind == Ask::Kind::event; });
  explore(order, 0, answers, {view, {}}, out);
  if (out.size() > most_ways) out.clear();
  return out;
}

} // namespace wearline
