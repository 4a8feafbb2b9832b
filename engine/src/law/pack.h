#pragma once
// One jurisdiction's law as typed rules, read once from rules/law/<J>.json (format: rules/law/README.md).

#include "law/conditions.h"
#include "law/registry.h"
#include "values/money.h"
#include "values/reference.h"
#include "wearline/day.h"
#include "wearline/fault.h"

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace wearline {

/// What a rule says in another language. Where a sentence is empty, English stands in for it.
struct RuleWords {
  std::string text, when_text, consequence, check;
};

/// What every rule carries: its name, where it stands in the law, when it applies, and what it says to people.
struct Rule {
  std::string id;
  std::vector<std::uint16_t> sources; ///< positions in Pack::sources
  Condition when;
  std::string when_text;
  std::optional<Day> from, to; ///< in force, both inclusive
  EventId by = EventId::none;  ///< whose date counts; none: the day of the assessment
  std::string text, note, check;
  RuleWords es;

  const std::string& text_in(std::string_view language) const { return in(language, es.text, text); }
  const std::string& when_text_in(std::string_view language) const { return in(language, es.when_text, when_text); }
  const std::string& check_in(std::string_view language) const { return in(language, es.check, check); }

protected:
  static const std::string& in(std::string_view language, const std::string& spanish, const std::string& english) {
    return language == "es" && !spanish.empty() ? spanish : english;
  }
};

/// Days that are left out or rolled past.
struct DaySet {
  bool saturday = false, sunday = false, legal_holiday = false;
  bool empty() const { return !saturday && !sunday && !legal_holiday; }
};

struct CountingRule : Rule {
  bool exclude_first = true;
  DaySet roll;
  std::int64_t short_under = 0; ///< periods of fewer days leave out `short_skip`
  DaySet short_skip;
  DaySet business_skip;
  std::string holidays;               ///< file of rules/holidays; empty: holidays do not matter
  std::vector<std::string> deadlines; ///< limited to these; empty: all others
};

enum class Unit : std::uint8_t { calendar_day, business_day, week, month, year, hour };
/// As packs and wording keys write it: "business-day".
std::string_view name_of(Unit unit);
enum class Governing : std::uint8_t { latest, earliest };

struct Period {
  std::optional<int> count; ///< units; empty: the law names no number
  Unit unit = Unit::calendar_day;
  std::vector<EventId> after;
  Governing governing = Governing::latest;
  bool before = false;              ///< counted back from the event
  bool earliest = false;            ///< not before that day
  FactId count_from = FactId::none; ///< this fact's number instead, at most `count`
};

enum class Who : std::uint8_t { landlord, tenant };
enum class MetBy : std::uint8_t { posting, delivery, receipt, unknown };

struct Deadline : Rule {
  Who who = Who::landlord;
  std::uint16_t name = 0xffff; ///< position in Registry::deadlines
  EventId met = EventId::none; ///< event that meets it instead of the usual one
  std::vector<Period> periods;
  Governing governing = Governing::latest;
  bool needs_all = false;
  MetBy met_by = MetBy::unknown;
  std::vector<std::string> if_missed;
  std::string if_missed_text;
  const std::string& if_missed_text_in(std::string_view language) const {
    return in(language, es.consequence, if_missed_text);
  }
  bool tenant_loses = false;
  std::vector<std::uint16_t> counting; ///< positions in Pack::counting: the first whose condition holds
  std::vector<std::string> beside;     ///< deadlines of the same name that run at the same time, not instead
  std::uint16_t family = 0;            ///< deadlines of one family stand in for one another: not more than one applies
};

struct DocumentRule : Rule {
  std::vector<DocumentId> requires_all, or_else;
  std::vector<std::string> delivery_methods;
  std::vector<std::string> if_missing;
  std::string if_missing_text;
  const std::string& if_missing_text_in(std::string_view language) const {
    return in(language, es.consequence, if_missing_text);
  }
};

/// All members given must match.
struct LineMatcher {
  std::vector<ChargeKind> kind;
  std::vector<ChargeRemedy> remedy;
  std::vector<std::string> element, finding, at_move_in, verdict;
  std::optional<Months> older_than;
  std::vector<DocumentId> proof_missing;
};

struct Allow : Rule {
  bool closed = false;
  bool grants = false; ///< may be taken even where nothing is damaged
  bool clause = false; ///< what the lease makes the tenant pay counts because the lease says so
  std::vector<LineMatcher> lines;
};

enum class Effect : std::uint8_t { bar, needs_proof, damaged_portion_only, limit, caution };
enum class Base : std::uint8_t {
  none,
  wrongfully_withheld,
  withheld,
  whole_deposit,
  monthly_rent,
  interest,
  over_cap,
  line_amount,
  actual_cost
};

/// A sum, or a multiple of something.
struct Limit {
  std::optional<Money> amount;
  Share times{0, 1};
  Base of = Base::none;
  std::optional<Money> at_least; ///< never less than this
};

struct Bar : Rule {
  LineMatcher line;
  Effect effect = Effect::bar;
  std::optional<Condition> unless;
  std::vector<DocumentId> proof;
  Limit limit;
  std::vector<std::string> deposits; ///< money of these kinds serves only its own purpose (kept_apart)
};

struct Cap : Rule {
  std::vector<std::string> deposits;
  std::optional<Share> months, weeks;
  std::optional<Money> amount;
  std::optional<Money> at_least; ///< the cap is never less than this sum
  FactId rent = FactId::none;    ///< the fact that is the rent, where it is not the monthly rent
  bool none = false;
};

/// Kinds of money held that this law does not call a deposit (rent paid ahead, a key): outside its refund, its days and
/// its awards.
struct NotDeposit : Rule {
  std::vector<std::string> deposits;
};
/// Kinds that it calls a deposit although they are none by their name (rent paid ahead).
struct AlsoDeposit : Rule {
  std::vector<std::string> deposits;
};

/// Which day's rate counts: that of each day; of the day the tenancy began; of the day it was last renewed, or began;
/// of the day on which the year's interest falls due (the anniversary, or the day of leaving).
enum class RateBy : std::uint8_t { day, tenancy_start, renewal, due_day };

struct Rate {
  std::optional<Share> fixed;
  /// From each day to the next: the rate; empty: not known. Ascending. A table by calendar years begins each on
  /// January 1.
  std::vector<std::pair<Day, std::optional<Share>>> periods;
  RateBy by = RateBy::day;
  bool bank = false;                      ///< the bank's own rate: asked for
  std::optional<Share> at_least, at_most; ///< limits of the rate
  std::optional<Share> share;             ///< the tenant's part of the rate
  std::optional<Share> less;              ///< the landlord's part, taken off
  std::optional<Share> or_fixed;          ///< this rate may count instead
};
enum class Method : std::uint8_t { simple, compound_yearly };
/// calendar_month: from the first day of the month after the start to the last day of the month of the end.
enum class Counts : std::uint8_t { day, whole_month, whole_year, calendar_month };

struct InterestRule : Rule {
  bool owed = false;
  std::vector<std::string> deposits; ///< on these kinds only; empty: on all that this law calls a deposit
  Rate rate;
  Method method = Method::simple;
  Counts counts = Counts::day;
  Months minimum;
  EventId starts = EventId::none, ends = EventId::none;
  Months starts_after;              ///< nothing accrues before so many months
  std::optional<Share> over_months; ///< only on the part above the greater of these
  std::optional<Money> over_amount;
  bool alongside = false; ///< holds whatever other laws say; the money is owed once, by the rule that gives more
};

enum class Loses : std::uint8_t { all_deductions, damage_deductions, documented_lines_only, whole_deposit_claim };
enum class Needs : std::uint8_t { none, bad_faith, willful, after_demand, other };

struct Forfeit : Rule {
  Loses loses = Loses::all_deductions;
  Needs needs = Needs::none;
};

enum class Fees : std::uint8_t { none, tenant, prevailing, court_may };
enum class ChargesOff : std::uint8_t { not_at_all, before, after, either };

struct Remedy : Rule {
  std::optional<Share> multiplier;
  Base base = Base::none;
  ChargesOff charges_off = ChargesOff::not_at_all;
  Tri includes_sum_due;
  bool up_to = false;
  std::optional<Money> fixed, least;
  std::optional<Limit> cap;
  Needs needs = Needs::none;
  Fees fees = Fees::none;
  bool costs = false;
};

/// A rule that is shown and not computed, with the few members that a view or a letter asks for.
struct Remark : Rule {
  Tri required, right;
  Tri when_left; ///< an inspection as the home is given back, at which nothing can be put right any more
  std::string who, if_missing, method;
  std::optional<std::int64_t> days;
  std::optional<Money> amount;
  std::vector<std::string> exempt, topics;
  std::vector<std::pair<std::string, Share>> lives; ///< years by element
  bool limit_to_damaged_portion = false;
};

struct Doubt {
  Localized text;
  std::vector<std::string> rules;
};

/// A city or county with rules of its own over those of the state, or known to have some.
struct Place {
  std::string id;
  Localized name;
  std::vector<std::string> localities; ///< the names a case may give it (/locality); the first is the one to choose
  Localized inside;                    ///< how a person tells that the home is inside
  Localized ask;                       ///< what could not be read and where to ask; else empty
  Condition here;                      ///< the case says that the home is inside
  std::optional<Day> reviewed;         ///< when its rules were last read against their sources
};

struct Guide {
  std::string title, publisher, url;
};

/// Where a person finds help: `kind` is guide, court or legal-aid; `read` how the address was read.
struct Help {
  std::string kind, title, publisher, url, read;
};

struct Pack {
  std::string jurisdiction, name, currency;
  std::optional<Day> reviewed;
  bool weak = false;
  std::optional<Guide> guide;
  std::vector<Help> help;
  std::vector<Reference> sources; ///< `id` is "law:" and the key; `text` the citation
  std::vector<FactInfo> facts;    ///< FactIds follow those of the registry
  std::vector<EventInfo> events;  ///< EventIds follow those of the registry
  std::vector<CountingRule> counting;
  std::vector<Deadline> deadlines;
  std::vector<DocumentRule> documents;
  std::vector<Allow> allows;
  std::vector<Bar> bars;
  std::vector<Cap> caps;
  std::vector<NotDeposit> not_deposit;
  std::vector<AlsoDeposit> also_deposit;
  std::vector<InterestRule> interest;
  std::vector<Forfeit> forfeits;
  std::vector<Remedy> remedies;
  std::vector<Remark> records, inspection, demand, address, wear, depreciation, holder, scope, small_claims, others,
      not_found;
  std::vector<Doubt> check_this;
  std::vector<std::string> layers; ///< ids of the federal and local rules that were laid over it
  std::vector<Place> places;       ///< those it has rules or a remark for
};

/// In a condition on a defect, caps are numbered from here, document rules from nothing.
constexpr std::uint16_t first_cap = 0x8000;

/// The sources of a rule. They live as long as the pack.
References references_of(const Pack& pack, const Rule& rule);

/// Reads a pack; the registry must be complete. Either the whole pack or every fault found, with JSON Pointers into the
/// file.
std::variant<Pack, Faults> load_pack(std::string_view json, const Registry& registry);

/// Lays federal or local rules over a pack (format: rules/law/README.md, "Layers"). A layer that lies there already
/// changes nothing. The pack is as it was where there are faults.
Faults lay_over(Pack& pack, std::string_view json, const Registry& registry);

/// Whether a rule names money of this kind ("pet", "last-month") among its `deposits`.
template <class AnyRule> bool names_money(const AnyRule& rule, std::string_view kind) {
  return std::find(rule.deposits.begin(), rule.deposits.end(), kind) != rule.deposits.end();
}
/// Whether one of several rules does.
template <class AnyRule> bool one_names_money(const std::vector<AnyRule>& rules, std::string_view kind) {
  return std::any_of(rules.begin(), rules.end(), [&](const AnyRule& rule) { return names_money(rule, kind); });
}

/// Whether a layer belongs to a place: "US" to every state, "US-IL" to Illinois alone.
bool layer_fits(std::string_view of_layer, std::string_view jurisdiction);

} // namespace wearline
