#include "wear/valuation.h"

#include <algorithm>

namespace wearline {

namespace {

Age in_unit(Age age, DepreciationMethod::Unit unit) {
  if (unit == DepreciationMethod::Unit::day) return age;
  const Months whole = age.completed();
  return Age::of(unit == DepreciationMethod::Unit::month ? whole : Years(whole.count() / 12).in_months());
}

Share clipped(__int128 num, __int128 den, Share floor) {
  if (num <= 0) return floor;
  if (num >= den) return Share::whole();
  // Ages and lives are small; the fraction always fits.
  const Share share{static_cast<std::int64_t>(num), static_cast<std::int64_t>(den)};
  return share < floor ? floor : share;
}

Share straight_line(Life life, Age age, Share floor) {
  const __int128 span = static_cast<__int128>(life.months.count()) * age.den;
  return clipped(span - age.num, span, floor);
}

Share by_stay(const DepreciationMethod& method, Age stay) {
  for (const auto& band : method.bands)
    if (!band.under || stay < Age::of(*band.under)) return band.share;
  return Share::none();
}

/// A thing of the class, of this quality where the row tells.
const DepreciationMethod::Grace* grace_of(const DepreciationMethod& method, std::string_view life_class,
                                          std::string_view quality) {
  const DepreciationMethod::Grace* any = nullptr;
  for (const auto& grace : method.graces) {
    if (grace.life_class != life_class) continue;
    if (grace.quality == quality) return &grace;
    if (!any || grace.quality.empty()) any = &grace;
  }
  return any;
}

Share by_grace(const DepreciationMethod::Grace& grace, Age age) {
  const __int128 over = static_cast<__int128>(age.num) - static_cast<__int128>(grace.grace.count()) * age.den;
  if (over <= 0) return Share::whole();
  const __int128 whole = static_cast<__int128>(1200) * age.den;
  return clipped(whole - over * grace.yearly_percent, whole, Share{grace.floor_percent, 100});
}

/// The share left for one life and one age.
Share remaining(const DepreciationMethod& method, const DepreciationMethod::Grace* grace, Life life, Age age) {
  age = in_unit(age, method.unit);
  switch (method.kind) {
  case DepreciationMethod::Kind::stay_bands:
    return by_stay(method, age);
  case DepreciationMethod::Kind::grace_abatement:
    return grace ? by_grace(*grace, age) : Share::whole();
  case DepreciationMethod::Kind::residual:
    return straight_line(life, age, Share{method.residual_percent, 100});
  case DepreciationMethod::Kind::straight_line:
    break;
  }
  return straight_line(life, age, Share::none());
}

} // namespace

Age age_between(Day installed, Day day) {
  if (day <= installed) return {};
  const Months months = whole_months(installed, day);
  const Day from = add_months(installed, months), to = add_months(installed, months + Months(1));
  const std::int64_t in_month = (to - from).count();
  return {months.count() * in_month + (day - from).count(), in_month};
}

const DepreciationMethod* LifeTables::method(std::string_view id) const {
  for (const DepreciationMethod& m : methods)
    if (m.id == id) return &m;
  return nullptr;
}

const PartRule* LifeTables::part(CostComponent component) const {
  for (const PartRule& p : parts)
    if (p.component == component) return &p;
  return nullptr;
}

const LaborPolicy* LifeTables::labor_policy(std::string_view place) const {
  const LaborPolicy* best = nullptr;
  for (const LaborPolicy& p : labor_policies)
    if (inside(place, p.region) &&
        (!best || best->region == "*" || (p.region != "*" && p.region.size() > best->region.size())))
      best = &p;
  return best;
}

const LaborRate* LifeTables::labor_rate(std::string_view place, bool cleaning) const {
  for (const LaborRate& r : labor_rates)
    if (r.cleaning == cleaning && inside(place, r.region)) return &r;
  return nullptr;
}

bool LifeTables::inside(std::string_view place, std::string_view region) {
  if (region == "*" || region.empty()) return true;
  if (place == region) return true;
  return place.size() > region.size() && place.substr(0, region.size()) == region && place[region.size()] == '-';
}

LifeChoice choose_life(const Line& line, std::string_view life_class, std::string_view place, const LifeTables& tables,
                       std::optional<Life> own_life, const Reference* own_source) {
  LifeChoice choice;
  if (line.life_months) {
    choice.life = Range<Life>(Life{*line.life_months});
    choice.from = LifeChoice::From::person;
    return choice;
  }
  if (life_class.empty()) return choice;
  const auto hull = [&](auto&& takes) {
    bool any = false;
    Life low, high;
    for (const LifeRow& row : tables.rows) {
      if (row.life_class != life_class || !takes(row)) continue;
      low = any ? std::min(low, row.low) : row.low;
      high = any ? std::max(high, row.high) : row.high;
      any = true;
      if (std::find(choice.sources.begin(), choice.sources.end(), row.source) == choice.sources.end())
        choice.sources.push_back(row.source);
    }
    if (any) choice.life = Range<Life>(low, Life{Months((low.months + high.months).count() / 2)}, high);
    return any;
  };
  if (!line.life_source.empty() && hull([&](const LifeRow& row) {
        return row.source && row.source->id == "life:" + line.life_source &&
               (line.quality.empty() || row.quality.empty() || row.quality == line.quality);
      })) {
    choice.from = LifeChoice::From::source;
    return choice;
  }
  if (own_life) {
    choice.life = Range<Life>(*own_life);
    if (own_source) choice.sources.push_back(own_source);
    choice.from = LifeChoice::From::jurisdiction;
    return choice;
  }
  const LifeDefault* best = nullptr;
  const auto nearer = [&](const LifeDefault& d) {
    if (!best) return true;
    if (d.quality.empty() != best->quality.empty()) return best->quality.empty();
    return best->region == "*" || (d.region != "*" && d.region.size() > best->region.size());
  };
  for (const LifeDefault& d : tables.defaults)
    if (d.life_class == life_class && (d.quality.empty() || d.quality == line.quality) &&
        LifeTables::inside(place, d.region) && nearer(d))
      best = &d;
  choice.quality_untold = !line.quality.empty() && (!best || best->quality.empty()) &&
                          std::none_of(tables.rows.begin(), tables.rows.end(), [&](const LifeRow& row) {
                            return row.life_class == life_class && row.quality == line.quality;
                          });
  if (best) {
    choice.life = Range<Life>(best->low, best->likely, best->high);
    choice.sources = best->sources;
    choice.why = &best->why;
    choice.from = best->quality.empty() ? LifeChoice::From::tables : LifeChoice::From::quality;
  }
  return choice;
}

bool covers(const DepreciationMethod& method, std::string_view life_class) {
  if (method.kind == DepreciationMethod::Kind::grace_abatement) return grace_of(method, life_class, {}) != nullptr;
  return method.life_class.empty() || method.life_class == life_class;
}

Share remaining_share_at(const DepreciationMethod& method, std::string_view life_class, std::string_view quality,
                         Life life, Age age) {
  return remaining(method, grace_of(method, life_class, quality), life, age);
}

ShareRange remaining_share(const DepreciationMethod& method, std::string_view life_class, std::string_view quality,
                           const Range<Life>& life, const AgeDates& age_dates) {
  const DepreciationMethod::Grace* const grace = grace_of(method, life_class, quality);
  if (method.kind == DepreciationMethod::Kind::stay_bands) {
    if (!age_dates.move_in) return {Share::none(), {1, 2}, Share::whole()};
    const auto stay = [&](Day in, Day out) { return by_stay(method, in_unit(age_between(in, out), method.unit)); };
    return {stay(age_dates.move_in->earliest, age_dates.move_out.latest),
            stay(age_dates.move_in->likely(), age_dates.move_out.likely()),
            stay(age_dates.move_in->latest, age_dates.move_out.earliest)};
  }
  const DaySpan until = method.age_at_move_in && age_dates.move_in ? *age_dates.move_in : age_dates.move_out;
  if (age_dates.installed) {
    const Age likely = age_between(age_dates.installed->likely(), until.likely());
    const bool one_age = age_dates.installed->known() && until.known();
    const auto at = [&](Life l, Day laid, Day day) {
      return remaining(method, grace, l, one_age ? likely : age_between(laid, day));
    };
    return {at(life.low(), age_dates.installed->earliest, until.latest),
            remaining(method, grace, life.likely(), likely),
            at(life.high(), age_dates.installed->latest, until.earliest)};
  }
  // Age unknown: at least as old as the stay, at most worn out. Likely: half of what the newest possible thing would
  // keep.
  const auto newest = [&](Life l, Day in, Day out) { return remaining(method, grace, l, age_between(in, out)); };
  const Day in_latest = age_dates.move_in ? age_dates.move_in->latest : until.earliest;
  const Day in_likely = age_dates.move_in ? age_dates.move_in->likely() : until.likely();
  const Share likely = newest(life.likely(), in_likely, until.likely());
  const Share oldest = remaining(method, grace, life.low(), Age::of(longest_age));
  return {oldest, Share{likely.num, likely.den * 2} < oldest ? oldest : Share{likely.num, likely.den * 2},
          newest(life.high(), in_latest, until.earliest)};
}

} // namespace wearline
