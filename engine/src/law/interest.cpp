#include "law/interest.h"

#include "law/applies.h"

#include <algorithm>
#include <date/date.h>

namespace wearline {

namespace {

constexpr std::int64_t billion = 1'000'000'000;
constexpr std::int64_t months_a_year = 12;
/// A common denominator of the parts of a year: days of a common and of a leap year, months.
constexpr std::int64_t year_parts = 365 * 366 * 2;

std::int64_t billionths(Share rate) {
  return static_cast<std::int64_t>((static_cast<__int128>(rate.num) * billion * 2 + rate.den) /
                                   (static_cast<__int128>(rate.den) * 2));
}
/// The day after `day` on which a new rate begins, at the latest `end`.
Day next_rate(Day day, Day end, const Rate& rule) {
  for (const auto& period : rule.periods)
    if (period.first > day) return std::min(end, period.first);
  return end;
}

Day first_of_next_month(Day day) {
  const date::year_month_day ymd{day};
  return date::sys_days((ymd.year() / ymd.month() + date::months{1}) / 1);
}

/// A yearly rate in billionths, known within limits; `open`: nothing limits it above.
struct RateRange {
  std::int64_t low = 0, high = 0;
  bool open = false;
};

/// Sums of rate times part of a year, exactly, and the money they come to.
class Accrual {
public:
  void add(std::int64_t rate, std::int64_t parts, std::int64_t of) {
    sum_ += static_cast<__int128>(rate) * parts * (year_parts / of);
  }
  Money on(Money principal) const {
    const __int128 unit = static_cast<__int128>(billion) * year_parts;
    return Money::cents(static_cast<std::int64_t>((sum_ * principal.in_cents() * 2 + unit) / (unit * 2)));
  }

private:
  __int128 sum_ = 0;
};

/// Adds what accrues within one year from `from` (an anniversary) to `to` (at most the next one, `next`), which is also
/// the day it falls due.
template <class RateOf>
void accrue_year(Accrual& accrual, Day from, Day to, Day next, const InterestRule& rule, RateOf rate_of) {
  if (rule.counts == Counts::whole_year) {
    if (to == next) accrual.add(rate_of(from, to), 1, 1);
  } else if (rule.counts == Counts::whole_month || rule.counts == Counts::calendar_month) {
    const Months months = whole_months(from, to);
    for (Months m; m < months; m = m + Months(1)) accrual.add(rate_of(add_months(from, m), to), 1, months_a_year);
  } else {
    const std::int64_t of = (next - from).count();
    for (Day day = from; day < to;) {
      const Day end = next_rate(day, to, rule.rate);
      accrual.add(rate_of(day, to), (end - day).count(), of);
      day = end;
    }
  }
}

/// Interest from one day to another; `rate_of(day, due)` is the rate, in billionths, of what accrues from `day` and
/// falls due on `due`.
template <class RateOf> Money interest_on(Money principal, Day from, Day to, const InterestRule& rule, RateOf rate_of) {
  if (to <= from || whole_months(from, to) < rule.minimum) return {};
  if (rule.counts == Counts::calendar_month) {
    from = first_of_next_month(from);
    to = first_of_next_month(to);
  }
  from = add_months(from, rule.starts_after);
  const Money lent = principal;
  Accrual accrual;
  for (int year = 0;; ++year) {
    const Day begin = add_months(from, Years(year).in_months());
    if (begin >= to) break;
    const Day next = add_months(from, Years(year + 1).in_months());
    accrue_year(accrual, begin, std::min(to, next), next, rule, rate_of);
    if (rule.method == Method::compound_yearly) {
      principal += accrual.on(principal);
      accrual = {};
    }
  }
  return principal - lent + accrual.on(principal);
}

/// The bank's or published rate as the law lets it count: the tenant's share, within limits, less the landlord's part.
RateRange limited(std::optional<Share> known, const Rate& rule) {
  RateRange r;
  if (known) r.low = r.high = billionths(*known);
  else r.open = true;
  if (known && rule.share) r.low = r.high = billionths(Share{r.high * rule.share->num, billion * rule.share->den});
  if (rule.at_least)
    r = {std::max(r.low, billionths(*rule.at_least)), std::max(r.high, billionths(*rule.at_least)), r.open};
  if (rule.at_most) {
    const std::int64_t most = billionths(*rule.at_most);
    r = {std::min(r.low, most), r.open ? most : std::min(r.high, most), false};
  }
  if (rule.less) {
    const std::int64_t less = billionths(*rule.less);
    r.low = std::max<std::int64_t>(0, r.low - less);
    r.high = std::max<std::int64_t>(0, r.high - less);
  }
  if (rule.or_fixed) {
    const std::int64_t other = billionths(*rule.or_fixed);
    // The landlord chooses, so an unknown bank rate cannot cost more than the fixed one.
    r = {std::min(r.low, other), std::max(r.high, other), false};
  }
  return r;
}

RateRange rate_on(Day day, const Rate& rule, const std::optional<Share>& bank_rate) {
  if (rule.fixed) return limited(rule.fixed, rule);
  if (rule.bank) return limited(bank_rate, rule);
  std::optional<Share> known;
  for (const auto& [from, rate] : rule.periods)
    if (from <= day) known = rate;
  RateRange r = limited(known, rule);
  // A year that the table leaves out: somewhere between nothing and the highest of its rates, or more.
  if (!known && !rule.at_most)
    for (const auto& [from, rate] : rule.periods)
      if (rate) r.high = std::max(r.high, billionths(*rate));
  return r;
}

/// The day whose rate counts for what accrues from `day` and falls due on `due`.
Day rate_day(Day day, Day due, RateBy by, const FactView& view) {
  switch (by) {
  case RateBy::due_day:
    return due;
  case RateBy::tenancy_start:
    return view.event("tenancy-began").on.likely();
  case RateBy::renewal: {
    const EventState& renewed = view.event("lease-renewed");
    const bool since = renewed.happened == Tri::yes && renewed.on.likely() <= day;
    return since ? renewed.on.likely() : view.event("tenancy-began").on.likely();
  }
  case RateBy::day:
    break;
  }
  return day;
}

/// From when to when one deposit earns interest.
struct Earning {
  DaySpan from, to;
};

Earning earning_of(const Deposit& d, const InterestRule& rule, const FactView& view) {
  Earning p;
  const Day today = view.today();
  const auto until_today = [&](DaySpan span) {
    return DaySpan{std::min(span.earliest, today), std::min(span.latest, today)};
  };
  const bool from_paid = rule.starts != EventId::none && view.info(rule.starts).id == "deposit-paid";
  if (from_paid && d.paid) p.from = *d.paid;
  else if (rule.starts != EventId::none) p.from = view.event(rule.starts).on;
  p.from = until_today(p.from);
  p.to = {today, today};
  if (rule.ends == EventId::none) return p;
  const EventState& end = view.event(rule.ends);
  if (end.happened == Tri::yes) p.to = until_today(end.on);
  else if (!end.happened.known()) p.to.earliest = until_today(view.event("tenancy-ended").on).earliest;
  return p;
}

/// Whether this kind of money earns interest under the rule.
bool earns(const Deposit& d, const InterestRule& rule, const Pack* pack) {
  if (rule.deposits.empty()) return is_deposit(d, pack);
  const std::string_view kind = d.kind.empty() ? std::string_view("security") : d.kind;
  return std::find(rule.deposits.begin(), rule.deposits.end(), kind) != rule.deposits.end();
}

/// The part of each deposit that earns interest: all, or what lies above the threshold of all deposits together.
std::vector<Money> earning(const InterestRule& rule, const FactView& view) {
  const Case& c = view.of();
  std::optional<Money> below;
  if (rule.over_months && c.tenancy.monthly_rent) below = c.tenancy.monthly_rent->part(*rule.over_months);
  if (rule.over_amount) below = std::max(below.value_or(Money()), *rule.over_amount);
  std::vector<Money> out;
  for (const Deposit& d : c.deposits) {
    Money amount = earns(d, rule, view.pack()) ? d.amount.value_or(Money()) : Money();
    if (below) {
      const Money off = std::min(*below, amount);
      amount -= off;
      *below -= off;
    }
    out.push_back(amount);
  }
  return out;
}

InterestShare gross_interest(const InterestRule& rule, const FactView& view) {
  InterestShare share;
  share.rule = &rule;
  const Case& c = view.of();
  const std::vector<Money> sums = earning(rule, view);
  // Without the rent the threshold may swallow the whole deposit.
  const bool threshold_open = rule.over_months && !c.tenancy.monthly_rent;
  for (std::size_t i = 0; i < c.deposits.size(); ++i) {
    const Deposit& d = c.deposits[i];
    const Earning p = earning_of(d, rule, view);
    const auto rate = [&](Day day, Day due) {
      return rate_on(rate_day(day, due, rule.rate.by, view), rule.rate, d.bank_rate);
    };
    const auto low = [&](Day day, Day due) { return rate(day, due).low; };
    const auto high = [&](Day day, Day due) {
      const RateRange r = rate(day, due);
      share.at_least = share.at_least || r.open;
      return std::max(r.low, r.high);
    };
    if (p.from.earliest == min_day) continue; // nothing known of when it was paid
    if (p.to.latest != max_day) share.longest = std::max(share.longest, p.to.latest - p.from.earliest);
    share.gross += Range<Money>(interest_on(sums[i], p.from.latest, p.to.earliest, rule, low),
                                interest_on(sums[i], p.from.likely(), p.to.likely(), rule, low),
                                interest_on(sums[i], p.from.earliest, p.to.latest, rule, high));
  }
  if (threshold_open) share.gross = {Money(), Money(), share.gross.high()};
  return share;
}

Range<Money> larger(const Range<Money>& a, const Range<Money>& b) {
  return {std::max(a.low(), b.low()), std::max(a.likely(), b.likely()), std::max(a.high(), b.high())};
}

/// Whether the interest that was paid came with the refund: what came back is then the deposit less the charges, and
/// that interest on top. It is counted once, with the refund.
bool came_with_refund(Money paid, const Case& c, const Pack* pack) {
  const auto deposit = deposit_total(c, pack);
  if (paid.is_zero() || !deposit || !c.statement.refund_paid) return false;
  const auto charges =
      c.lines.empty() ? c.statement.stated_total.value_or(Money()) : claimed_total(c).value_or(Money());
  return *c.statement.refund_paid == *deposit - charges + paid;
}

/// Interest paid already comes off; where it is not known, all of it may have been paid.
Range<Money> less_paid(Range<Money> owed, const Case& c, const Pack* pack, InterestResult& result) {
  Money paid;
  bool all_known = true;
  for (std::size_t i = 0; i < c.deposits.size(); ++i) {
    if (c.deposits[i].interest_paid) {
      paid += *c.deposits[i].interest_paid;
    } else {
      all_known = false;
      result.paid_open.push_back(i);
    }
  }
  if (came_with_refund(paid, c, pack)) paid = Money();
  const auto left = [&](Money sum) { return std::max(Money(), sum - paid); };
  return {all_known ? left(owed.low()) : Money(), left(owed.likely()), left(owed.high())};
}

} // namespace

InterestResult judge_interest(const Pack& pack, const FactView& view) {
  InterestResult out;
  Range<Money> sure, alongside;
  Money possible;
  for (const InterestRule& rule : pack.interest) {
    if (!rule.owed) continue;
    Grounds grounds;
    const Tri in_use = applies(rule, view, nullptr, &grounds);
    if (in_use == Tri::no) continue;
    InterestShare share = gross_interest(rule, view);
    share.applies = in_use;
    share.grounds = std::move(grounds);
    out.at_least = out.at_least || share.at_least;
    // Rules that may apply are variants of one another: not more than one of them holds.
    if (!in_use.known()) possible = std::max(possible, share.gross.high());
    else if (rule.alongside) alongside = larger(alongside, share.gross);
    else sure += share.gross;
    if (rule.rate.bank)
      for (std::size_t i = 0; i < view.of().deposits.size(); ++i)
        if (!view.of().deposits[i].bank_rate && earns(view.of().deposits[i], rule, view.pack()) &&
            std::find(out.bank_rate_open.begin(), out.bank_rate_open.end(), i) == out.bank_rate_open.end())
          out.bank_rate_open.push_back(i);
    out.shares.push_back(std::move(share));
  }
  sure = larger(sure, alongside);
  const Range<Money> owed(sure.low(), sure.likely(), std::max(sure.high(), possible));
  if (owed.high().is_zero() && !out.at_least) return out;
  out.owed = less_paid(owed, view.of(), &pack, out);
  return out;
}

} // namespace wearline
