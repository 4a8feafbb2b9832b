#pragma once
// Wear, damage, the landlord's side, or already there: the wear guide and its answer for one line.

#include "case/case.h"
#include "values/reference.h"

#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace wearline {

enum class Verdict {
  ordinary_wear,
  chargeable_damage,
  landlord_responsibility,
  pre_existing,
  barred,
  non_damage_charge,
  undetermined
};
/// "ordinary-wear", ...: the names of results.
std::string_view name_of(Verdict verdict);

/// Conditions of a turn; every one that is set must hold. Unknown facts do not match.
struct TurnTest {
  std::vector<std::string> landlord_factors, severities, at_move_in;
  std::vector<ChargeCause> causes;
  std::optional<long> count_at_least, occupants_at_least;
  std::optional<Months> stay_at_least;
  Tri past_life;
};

/// A document or proof worth asking for. `id` is its name in rules/papers.json where that list has it.
struct Document {
  std::string id;
  Localized text;
};

/// A fact that turns the usual verdict of a finding.
struct Turn {
  TurnTest test;
  Verdict verdict = Verdict::undetermined;
  References sources;
  Localized text;
};

/// A source that says otherwise.
struct Conflict {
  Verdict verdict = Verdict::undetermined;
  const Reference* source = nullptr;
  Localized text;
};

/// Why an answer is not yet settled: what each leaves of the depreciated value of the damage is data
/// (rules/wear/weights.json).
enum class Ground {
  leans_wear,
  leans_damage,
  even,
  unnamed,
  debt_likely,
  debt_open,
  debt_doubtful,
  landlord_factor,
  shared_causes,
  worn_before,
  not_shown,
  not_on_record,
  no_baseline,
  cost_not_shown,
  cost_open,
  work_not_done,
  small_mark
};
constexpr std::size_t ground_count = 17;

/// How far a decider goes while a fact is missing: shares of the depreciated value of the damage, least <= likely <=
/// most.
struct Weight {
  Share least, likely, most;
  std::vector<std::string> documents; ///< it applies where one of these is known to be missing and none of them came
  std::vector<ChargeKind> not_for;    ///< kinds of charge it does not touch
  References sources;
};

struct Weights {
  std::array<Weight, ground_count> of;
  const Weight& operator[](Ground ground) const { return of[static_cast<std::size_t>(ground)]; }
};

enum class Usual { wear, damage, depends };
enum class Lean { wear, damage, even };

struct Finding {
  std::string id;
  Localized label, description, ask;
  Usual usual = Usual::depends;
  Lean lean = Lean::even;
  bool depreciates = false;          ///< the usual remedy renews the thing, so its age counts
  bool turns_on_life = false;        ///< being past its life would turn it
  bool turns_on_stay = false;        ///< a longer stay would turn it
  bool names_fault = true;           ///< false: the charge names work or nothing at all
  bool by_days = false;              ///< rent: no more than that of the days it is charged for
  bool by_hours = false;             ///< the landlord's own work: hours and a rate show it
  bool small_mark = false;           ///< a mark on a thing that still works: a repair or a sum for the mark may do
  bool gradual = false;              ///< comes little by little: on a worn thing nothing tells it from wear
  std::optional<Lean> lean_in_lease; ///< a debt's lean where the lease provides for it
  ChargeRemedy remedy = ChargeRemedy::unknown;
  std::string life_class; ///< class of lives of this part (a toilet's seat); empty: the element's
  References sources;
  std::vector<Conflict> conflicts;
  std::vector<Turn> turns;
  std::vector<const Document*> ask_for;
};

struct Element {
  std::string id, group;
  ChargeKind kind = ChargeKind::unknown;
  Localized label, covers, repairable_area_text;
  bool about_condition = true;
  std::string life_class;           ///< class of lives; empty: its age does not count
  std::string repairable_area_unit; ///< the unit damage is charged by (room, wall); empty: one piece
  std::vector<Finding> findings;

  const Finding* finding(std::string_view id) const;
};

/// What about the tenancy bears on wear.
struct Stay {
  std::optional<Months> months;      ///< completed months lived there, at least
  std::optional<Months> months_most; ///< and at most
  std::optional<long> occupants;
  Tri past_life;                 ///< the thing is past its useful life on every published life
  bool nothing_recorded = false; ///< known that neither list nor photos were made at move-in
  bool nothing_shown = false;    ///< known that neither list nor photos were made at move-out
};

/// How far the tenant answers for the worth of the damage, on what is known: none, part or all of it.
struct WearOpinion {
  Verdict verdict = Verdict::undetermined;
  Share least = Share::none(), likely = {1, 2}, most = Share::whole();
  std::string_view reason; ///< wording key of the reason
  const Turn* turn = nullptr;
  const Finding* finding = nullptr;
  bool rests_on_nothing = false; ///< nothing named, nothing known: `likely` says nothing
  bool cost_open = false;        ///< a bill, or the hours worked, would settle the sum
  bool finding_open = false;     ///< what was wrong, or how bad, would settle it

  bool certain() const { return least == most; }
  /// No more than `weight` leaves.
  void cap(const Weight& weight);
  /// Spans what another opinion leaves too.
  void span(const WearOpinion& other);
};

/// The wear verdict of one line. `element` and `finding` may be null: unknown.
/// Order: move-in record, landlord's own upkeep, cause, state and age of the thing, turns of the finding, its usual
/// verdict. The least is what is left if every open fact falls the tenant's way, the most if every open fact falls the
/// landlord's way and is proved. Rests on the sources of the finding and its turns (rules/wear/catalogue.json: guides,
/// decided cases, practice) and, where a fact is missing, on rules/wear/weights.json (common practice, no source).
WearOpinion judge_wear(const Line& line, const Element* element, const Finding* finding, const Stay& stay,
                       const Weights& weights);

/// What proof that is known to be missing leaves of an opinion: the landlord has to show the damage, that it is new,
/// and its cost. Common practice, held against decided lines (rules/wear/weights.json names those it rests on).
void weigh_proof(WearOpinion& opinion, const Line& line, const Stay& stay, const Weights& weights);

} // namespace wearline
