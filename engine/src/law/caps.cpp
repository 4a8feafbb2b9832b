#include "law/caps.h"

#include "law/applies.h"

#include <algorithm>

namespace wearline {

namespace {

constexpr Share weeks_a_month{7 * 12, 365}; // a week's rent is the year's divided by its days

std::optional<Money> taken_of(const Cap& cap, const Case& c) {
  Money total;
  for (const Deposit& d : c.deposits) {
    const std::string_view kind = d.kind.empty() ? std::string_view("security") : d.kind;
    if (!names_money(cap, kind)) continue;
    if (!d.amount) return std::nullopt;
    total += *d.amount;
  }
  if (c.deposits.empty()) return std::nullopt;
  return total;
}

std::optional<Money> rent_of(const Cap& cap, const FactView& view) {
  if (cap.rent == FactId::none) return view.of().tenancy.monthly_rent;
  const FactState& own = view.fact(cap.rent);
  if (own.kind != FactState::Kind::number || own.low != own.high) return std::nullopt;
  return Money::cents(own.low);
}

std::optional<Money> limit_of(const Cap& cap, const FactView& view) {
  if (cap.amount) return cap.amount;
  const auto rent = rent_of(cap, view);
  if (!rent || cap.none) return std::nullopt;
  const Share months =
      cap.months ? *cap.months : Share{cap.weeks->num * weeks_a_month.num, cap.weeks->den * weeks_a_month.den};
  return std::max(rent->part(months), cap.at_least.value_or(Money()));
}

} // namespace

std::vector<CapResult> judge_caps(const Pack& pack, const FactView& view) {
  std::vector<CapResult> out;
  for (const Cap& cap : pack.caps) {
    CapResult r;
    r.rule = &cap;
    r.applies = applies(cap, view, nullptr, &r.grounds);
    if (r.applies == Tri::no) continue;
    r.limit = limit_of(cap, view);
    if (!r.limit && cap.rent != FactId::none && r.applies == Tri::yes)
      add_ask(r.grounds.unknown, {Ask::Kind::fact, static_cast<std::uint16_t>(cap.rent)});
    r.taken = taken_of(cap, view.of());
    Tri over;
    if (cap.none) over = false;
    else if (r.limit && r.taken) over = *r.taken > *r.limit;
    r.exceeded = tri_and(r.applies, over);
    out.push_back(std::move(r));
  }
  return out;
}

} // namespace wearline
