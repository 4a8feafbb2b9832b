#pragma once
// What damage is worth: damaged part, remaining life, parts that depreciate and parts that do not.

#include "case/case.h"
#include "values/reference.h"

#include <string>
#include <string_view>
#include <vector>

namespace wearline {

/// An age in months, exact: completed months and the share of the running one. num/den.
struct Age {
  std::int64_t num = 0;
  std::int64_t den = 1;
  static constexpr Age of(Months months) { return {months.count(), 1}; }
  constexpr Months completed() const { return Months(num / den); }
  friend constexpr bool operator<(Age a, Age b) {
    return static_cast<__int128>(a.num) * b.den < static_cast<__int128>(b.num) * a.den;
  }
};
/// The age at `day` of a thing laid on `installed`; 0 if it was laid later.
Age age_between(Day installed, Day day);

/// A useful life in whole months, 1..2400.
struct Life {
  Months months;
  friend constexpr auto operator<=>(Life, Life) = default;
};

/// A published row: the life of a class of things, by quality where the source tells.
struct LifeRow {
  std::string life_class, quality;
  Life low, high;
  const Reference* source = nullptr;
  std::string region, note;
};

/// The life taken when nothing more is known, for a region ("US", "US-CA", "*" for anywhere).
struct LifeDefault {
  std::string life_class, quality, region; ///< quality empty: whatever the quality
  Life low, likely, high;
  References sources;
  Localized why;
};

/// How value falls with age.
struct DepreciationMethod {
  enum class Kind { straight_line, stay_bands, grace_abatement, residual };
  enum class Unit { day, month, year }; ///< exact, completed months, completed years
  struct Band {
    std::optional<Months> under;
    Share share;
  };
  struct Grace {
    std::string life_class, quality;
    Months grace;
    long yearly_percent = 0, floor_percent = 0;
  };
  std::string id, life_class, region; ///< empty class: any
  Localized label, text;
  /// by_default: for everything; in_region: the official way of that region; when_named: only if a person or a pack
  /// names it.
  enum class Use { by_default, in_region, when_named } use = Use::when_named;
  Kind kind = Kind::straight_line;
  Unit unit = Unit::day;
  bool age_at_move_in = false; ///< age counted when the tenant moved in, not when they left
  long residual_percent = 0;   ///< what a thing past its life keeps
  std::vector<Band> bands;
  std::vector<Grace> graces;
  References sources;
};

/// What depreciates when a thing is renewed.
struct PartRule {
  CostComponent component = CostComponent::other;
  enum class Depreciates {
    yes,
    no,
    with_the_whole
  } depreciates = Depreciates::no; ///< with_the_whole: the same share as all other parts together
  bool by_area = true;             ///< shrinks with the damaged part
  bool doubtful = false;           ///< deciders mostly leave it out: it counts only in the most
  References sources;
  Localized text;
};

/// What the state at move-in leaves of the value.
struct ConditionRule {
  std::string at_move_in;
  Share least, likely, most;
  References sources;
};

/// Whether the work to put a new thing in depreciates with the thing, in a region.
struct LaborPolicy {
  std::string region;
  bool depreciates = true;
  bool settled = false; ///< rests on more than practice
  References sources;
  Localized text;
};

/// What an hour of a landlord's own work costs in practice, in the currency of the region.
struct LaborRate {
  std::string region;
  bool cleaning = false; ///< else repair
  Money most;
  References sources;
};

struct LifeTables {
  std::vector<LifeRow> rows;
  std::vector<LifeDefault> defaults;
  std::vector<DepreciationMethod> methods;
  std::vector<PartRule> parts;
  std::vector<ConditionRule> conditions;
  std::vector<LaborPolicy> labor_policies;
  std::vector<LaborRate> labor_rates;

  const DepreciationMethod* method(std::string_view id) const;
  const PartRule* part(CostComponent component) const;
  /// The policy of the smallest region around a place; null if there is none at all.
  const LaborPolicy* labor_policy(std::string_view place) const;
  /// Null where no rate is known for the place.
  const LaborRate* labor_rate(std::string_view place, bool cleaning) const;
  /// Region match: "US-CA" is inside "US-CA", "US" and "*".
  static bool inside(std::string_view place, std::string_view region);
};

/// The useful life of a line's thing, with where it comes from.
struct LifeChoice {
  Range<Life> life;
  References sources;
  const Localized* why = nullptr; ///< only for a default
  bool quality_untold = false;    ///< the line names a quality that no table tells apart
  enum class From { person, source, jurisdiction, quality, tables, none } from = From::none;
};
/// `own_life`: the jurisdiction's own figure, if its pack has one. Class empty or unknown: From::none.
LifeChoice choose_life(const Line& line, std::string_view life_class, std::string_view place, const LifeTables& tables,
                       std::optional<Life> own_life, const Reference* own_source);

/// Dates that decide an age.
struct AgeDates {
  std::optional<DaySpan> installed; ///< known, or the move-in day of a thing that was new then
  std::optional<DaySpan> move_in;
  DaySpan move_out;
  bool from_move_in = false; ///< installed taken from "new at move-in"
};

/// The share of the value that remains, least, likely and most; exact arithmetic.
struct ShareRange {
  Share low, likely, high;
};
ShareRange remaining_share(const DepreciationMethod& method, std::string_view life_class, std::string_view quality,
                           const Range<Life>& life, const AgeDates& age_dates);
/// The share left for one life at one age; not for a method of stays.
Share remaining_share_at(const DepreciationMethod& method, std::string_view life_class, std::string_view quality,
                         Life life, Age age);
/// Whether the method can say anything about this class of things.
bool covers(const DepreciationMethod& method, std::string_view life_class);

} // namespace wearline
