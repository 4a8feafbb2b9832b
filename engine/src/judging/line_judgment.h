#pragma once
// The judgment of one charged line: wear or damage, damaged part, repair or replace, remaining value, proof, never
// more than charged. It is one ordered list of steps (line_judgment.cpp, `steps_in_order`); each returns its record
// and names what it rests on.

#include "case/case.h"
#include "judging/precedents.h"
#include "judging/subject.h"
#include "law/line_law.h"
#include "wear/rules.h"
#include "wear/valuation.h"
#include "wear/wear.h"

#include <optional>
#include <string_view>
#include <vector>

namespace wearline {

/// One move of the sum, with what moved it. `from` and `to` are the likely sums; `low` and `high` the span after the
/// step.
struct Step {
  std::string_view code; ///< wording key "step.<code>"
  Money from, to, low, high;
  Share share = Share::whole();
  Age age, life_low, life, life_high; ///< in months
  Quantity part, whole;
  const Localized* said = nullptr; ///< a sentence of the rules that says why
  References sources;
};

/// What of the tenancy bears on its lines.
struct TenancyFacts {
  std::optional<DaySpan> move_in;
  DaySpan move_out; ///< keys returned, else the end, else the statement's day, else today
  bool move_out_assumed = false;
  Stay stay;
  std::optional<Money> monthly_rent;
  std::optional<DaySpan> rent_paid_through;
};
TenancyFacts tenancy_facts(const Case& c, Day today);

/// A place's own useful life for a class of things, with its source.
struct OwnLife {
  std::string life_class;
  Life life;
  const Reference* source = nullptr;
};
using OwnLives = std::vector<OwnLife>;

struct LineContext {
  const TenancyFacts* tenancy = nullptr;
  const LifeTables* lives = nullptr;
  const Weights* weights = nullptr;
  std::string_view place;                 ///< jurisdiction code or empty
  const LineLawBook* law = nullptr;       ///< null: judged without law
  const OwnLives* own_lives = nullptr;    ///< the place's own table
  const Precedents* precedents = nullptr; ///< what was allowed in other disputes; null: not known
  std::string_view without_decision;      ///< a decision to leave out of them, to measure without it
};

struct LineResult {
  Verdict verdict = Verdict::undetermined;
  Money claimed;
  Range<Money> fair;
  Range<Money> depreciated_value; ///< before liability: what the damage would be worth if the tenant answers for it
  WearOpinion opinion;
  ShareRange remaining; ///< share of the value that remains; whole where nothing depreciates
  const DepreciationMethod* method = nullptr;
  bool depreciates = false;
  bool age_open = false; ///< the installation date would narrow it
  bool age_from_move_in = false;
  bool area_open = false;      ///< how much was damaged would narrow it
  bool repair_open = false;    ///< the price of a repair would narrow it
  bool like_kind_open = false; ///< better than what was there: the price of the like would narrow it
  bool no_middle = false;      ///< nothing supports a likely sum: `fair.likely()` is then the least and is not shown
  bool rent_settled = false;   ///< the days it is charged for settle what is owed
  LineFacts asked;             ///< what the law was asked with
  LineLaw law;                 ///< and its answer
  std::optional<Range<Months>> age_months; ///< completed months the thing is old
  bool certain() const { return fair.exact(); }
  /// As it is without a rule of law that bars the charge.
  Verdict but_for_bars() const { return verdict == Verdict::barred ? opinion.verdict : verdict; }
};

/// A line as one method of depreciation would have it.
struct MethodFair {
  const DepreciationMethod* method = nullptr;
  Range<Money> fair;
};
/// Every method that speaks to the thing of a line, the one in use first. Empty where age does not count.
std::vector<MethodFair> by_methods(const Line& line, const Subject& subject, const LineContext& context,
                                   const LineResult& result);

/// Finds the useful life and the methods for a line whose element is set.
void find_life(Subject& subject, const Line& line, const LineContext& context);

/// Judges a line. `steps`, if given, receives the moves in order.
LineResult judge_line(const Line& line, const Subject& subject, const LineContext& context,
                      std::vector<Step>* steps = nullptr);

/// The likely fair sum of judge_line alone, sooner.
Money likely_fair(const Line& line, const Subject& subject, const LineContext& context);

/// The likely depreciated value of the damage alone, if the tenant answers for it, sooner.
Money likely_depreciated_value(const Line& line, const Subject& subject, const LineContext& context);

/// Rent owed for a period, by actual days of each month (likely), thirtieths and 365ths of the year (the span); common
/// practice, no source. Empty where rent or period is unknown.
std::optional<Range<Money>> rent_for_period(const Line& line, const TenancyFacts& tenancy);

} // namespace wearline
