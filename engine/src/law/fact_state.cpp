#include "law/fact_state.h"

namespace wearline {

FactState FactState::of(Tri value) {
  FactState s;
  if (!value.known()) return s;
  s.kind = Kind::yes_no;
  s.yes = value.known_yes();
  return s;
}

FactState FactState::of_range(std::int64_t low, std::int64_t high) {
  FactState s;
  s.kind = Kind::number;
  s.low = low;
  s.high = high;
  return s;
}

FactState FactState::of(const std::optional<long>& value) { return value ? of_range(*value, *value) : FactState{}; }

FactState FactState::of(const std::optional<Money>& value) {
  return value ? of_range(value->in_cents(), value->in_cents()) : FactState{};
}

FactState FactState::of(const std::string& value) {
  FactState s;
  if (value.empty()) return s;
  s.kind = Kind::text;
  s.text = value;
  return s;
}

FactState FactState::said(const FactValue& value) {
  if (const auto* yes = std::get_if<bool>(&value)) return of(Tri(*yes));
  if (const auto* number = std::get_if<long>(&value)) return of_range(*number, *number);
  if (const auto* sum = std::get_if<Money>(&value)) return of(std::optional<Money>(*sum));
  return of(std::get<std::string>(value));
}

} // namespace wearline
