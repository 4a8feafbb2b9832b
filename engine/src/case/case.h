#pragma once
// The case: what a person knows about one statement of deductions. Any fact may be missing; missing is unknown.

#include "case/charge.h"
#include "case/walk_through.h"
#include "format/older_names.h"
#include "values/calendar.h"
#include "values/money.h"
#include "values/months.h"
#include "values/names.h"
#include "values/range.h"
#include "values/tri.h"

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace wearline {

struct Deposit {
  std::string kind; ///< security, pet, last-month, cleaning, key, utility, other; empty: security
  std::optional<Money> amount;
  std::optional<DaySpan> paid;
  std::optional<Money> interest_paid;
  std::optional<Share> bank_rate; ///< yearly rate the bank paid, 0.0125 = 1.25 %
};

struct Tenancy {
  std::optional<DaySpan> began, ended, possession_returned, rent_paid_through, forwarding_address_given;
  std::string kind; ///< fixed-term, periodic, at-will, seasonal; empty: unknown
  std::optional<Money> monthly_rent;
  std::optional<long> landlord_units, building_units, occupants;
  Tri owner_occupied;
  /// When the home was given back; where nobody said, when the tenancy ended.
  const std::optional<DaySpan>& left() const { return possession_returned ? possession_returned : ended; }
};

struct Statement {
  std::optional<DaySpan> dated, sent, received, refund_sent;
  std::string delivery_method; ///< first-class-mail, certified-mail, personal-delivery, email ...; empty: unknown
  std::optional<Money> stated_total, stated_refund, stated_balance_due, refund_paid;
  std::vector<std::string> enclosed, missing; ///< names of rules/papers.json
  Tri statement_received;                     ///< known that no statement came at all: false
};

struct Checklist {
  Tri made, signed_by_both, tenant_has_copy;
};

struct Records {
  Checklist move_in, move_out;
  Tri inspection_offered, inspection_requested, inspection_held;
  Tri photos_at_move_in, photos_at_move_out;
};

struct Event {
  std::string what;
  DaySpan on;
  std::string delivery_method; ///< how a letter went, as Statement::delivery_method; empty: unknown
};

/// Part of a charged sum: what it was spent on.
enum class CostComponent {
  materials,
  labor,
  repair_labor,
  treatment,
  cleaning,
  disposal,
  delivery,
  tax,
  call_out,
  mark_up,
  other
};
/// What case files and the rules of lives call them.
inline constexpr Named<CostComponent> cost_components[] = {{"materials", CostComponent::materials},
                                                           {"labor", CostComponent::labor},
                                                           {"repair-labor", CostComponent::repair_labor},
                                                           {"treatment", CostComponent::treatment},
                                                           {"cleaning", CostComponent::cleaning},
                                                           {"disposal", CostComponent::disposal},
                                                           {"delivery", CostComponent::delivery},
                                                           {"tax", CostComponent::tax},
                                                           {"service-call", CostComponent::call_out},
                                                           {"markup", CostComponent::mark_up},
                                                           {"other", CostComponent::other}};
struct Part {
  CostComponent component = CostComponent::other;
  Money amount;
  Tri depreciates; ///< override: does this part depreciate
};

/// A count of things ("3 rooms"), kept exact to a thousandth.
struct Quantity {
  std::int64_t thousandths = 0;
  std::string unit;
};

struct Line {
  std::string id, text, element, finding, place, quality, note;
  ChargeKind kind = ChargeKind::unknown;
  std::optional<Money> amount;
  std::optional<DaySpan> installed;
  std::string age_years, age_years_at_move_in; ///< as age_span() reads it: "5", "5~", "7/.."; empty: unknown
  std::vector<std::string> not_from_words;     ///< facts of the text that the person has struck: names of fields
  std::string at_move_in;                      ///< names of the wear catalogue; empty: unknown
  ChargeCause cause = ChargeCause::unknown;
  std::string severity;      ///< light, moderate, heavy; empty: unknown
  std::optional<long> count; ///< how many of the fault (nail holes, stains)
  std::vector<std::string> landlord_factors;
  std::vector<Part> parts;
  std::optional<Quantity> charged, damaged;
  ChargeRemedy remedy = ChargeRemedy::unknown;
  Tri betterment;                    ///< what was put in is better than what was there
  std::optional<Money> repair_price; ///< what a sound repair would cost
  std::optional<Money> price_new;    ///< what the thing costs new, like for like
  std::optional<Months> life_months; ///< from usefulLifeYears: a useful life the person gives
  std::string life_source;           ///< a source id of lives.json to use instead of the default
  std::string method;                ///< a method id of lives.json to use instead of the default
  Tri labor_depreciates;             ///< override: does the labor depreciate
  std::vector<std::string> proof;    ///< names of rules/papers.json that came for this line
  std::vector<std::string> proof_missing;
  Tri credit; ///< a sum in the tenant's favor
  Tri on_move_out_record, in_lease, work_done;
  std::optional<Quantity> hours; ///< the landlord's own work, hours
  std::optional<Money> hourly_rate;
  std::optional<DaySpan> from, to; ///< period charged (rent, utilities)
  std::optional<DaySpan> relet_on; ///< when the home was let again
};

/// An age: at least and at most; open above as `most` empty.
struct AgeSpan {
  Months least, likely;
  std::optional<Months> most;
};
/// "5" (five years as people say it: half a year either side), "5~" (a year either side), "7/..", "../3", "5/6"; years
/// with at most three decimals, up to 200. Empty for other text.
std::optional<AgeSpan> age_span(std::string_view text);

/// "5", "1.5": thousandths as a number without needless zeros.
std::string plain_thousandths(std::int64_t thousandths);

/// The fields of a line that its words can fill.
const NameSet& word_fact_names();

/// What kind of answer a fact has.
enum class FactType { yes_no, count, money, text };

/// A fact of `circumstances`: yes/no, a whole number, a sum, or text.
using FactValue = std::variant<bool, long, Money, std::string>;

struct Case {
  int format = newest_format; ///< the version of its file, and so of the answers to it
  std::string jurisdiction;   ///< ISO 3166-2; empty: unknown, judged without law
  std::string locality;
  std::string side = "tenant";
  std::string language = "en";
  bool show_methods = false; ///< each line by every method of depreciation
  Tenancy tenancy;
  std::vector<Deposit> deposits;
  Statement statement;
  Records records;
  std::vector<Event> events;
  std::map<std::string, FactValue> circumstances;
  std::vector<Line> lines;
  std::optional<WalkThrough> walk_through;
};

/// What the case says of a yes-or-no fact of `circumstances`; unknown where it is silent.
Tri told(const Case& c, std::string_view fact);

} // namespace wearline
