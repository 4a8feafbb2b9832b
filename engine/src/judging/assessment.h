#pragma once
// The whole answer for a case, as values: lines, totals, dates, defects, remedies, questions, cautions.

#include "case/case.h"
#include "judging/audit.h"
#include "judging/line_judgment.h"
#include "judging/precedents.h"
#include "law/law.h"
#include "reading/line_names.h"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wearline {

/// Where age brings a charge to its least. Laid on any day before `day`, nothing of the thing's own price is left and
/// only `floor` remains (parts that do not age: cleaning, treatment; often nothing). Laid on `day` or later, more than
/// that is charged.
struct TurningPoint {
  Day day;
  Money floor;
};

/// A fact the person could still give. `swing` is how far the likely sum can move with the answer.
struct Question {
  std::string asks;      ///< JSON Pointer into the case
  std::string_view code; ///< wording key "question.<code>"; "finding" and "law" carry their own words
  const Localized* said = nullptr;
  std::size_t line = no_line;
  Money effect;
  std::string_view id = {}; ///< the law's name of the fact or event
  bool turns_day = false;   ///< whether a day was kept hangs on it, and something follows if it was not
  static constexpr std::size_t no_line = static_cast<std::size_t>(-1);
};

struct LineAssessment {
  FromWords words; ///< what the line's own words filled in
  Subject subject;
  LineResult result;
  std::vector<Step> steps;
  std::vector<Permission> permissions; ///< what the law says of it
  std::optional<TurningPoint> turning_point;
  std::vector<MethodFair> methods; ///< only if the case asks for them
  Alike alike;                     ///< other disputes most like it
};

/// Sums over the statement. Empty optionals: the deposit is not known.
struct Totals {
  Money claimed;
  Range<Money> fair;                ///< `likely` counts the lines that have a middle
  std::size_t lines = 0;            ///< lines with an amount
  std::size_t without_middle = 0;   ///< of them, those that nothing supports a likely sum for
  Range<Money> fair_without_middle; ///< and what they can come to; part of `fair`, but of its likely sum
  bool has_middle() const { return without_middle < lines || lines == 0; }
  std::optional<Money> deposit; ///< what the law calls one (is_deposit)
  Range<Money> interest;
  Range<Money> kept_apart; ///< part of it that serves another purpose than the charges
  Range<Money> paid_apart; ///< fair charges that money which is no deposit was paid for: they come out of that first
  /// Fair charges that the deposit has to answer for.
  Range<Money> against_deposit() const {
    return {fair.low() - paid_apart.low(), fair.likely() - paid_apart.likely(), fair.high() - paid_apart.high()};
  }
  std::optional<Range<Money>> fair_refund;
  Money paid_back;
  bool paid_back_assumed = false; ///< nobody said what was paid back; the statement's own refund is taken
  std::optional<Range<Money>> shortfall;
  std::optional<Range<Money>> owed_by_tenant; ///< fair charges beyond the deposit
  Money ordinary_wear;                        ///< charged for lines that look like ordinary wear
};

/// Money paid for one purpose (pet, key, cleaning) that the charges may not use, where the law holds it to that
/// purpose (`deposits` of its bars): it goes back whatever else is owed.
Range<Money> kept_apart(const Case& c, const std::vector<LineAssessment>& lines, const Pack* pack);
/// What of each fair charge the deposit has to answer for: money that is no deposit here and was paid for such charges
/// (pet, key, cleaning) pays them first.
std::vector<Range<Money>> against_deposit(const Case& c, const std::vector<LineAssessment>& lines, const Pack* pack);
/// Sums of the fair lines, the deposit and what came back; what counts as deposit is the pack's to say, with its
/// statute. Arithmetic alone: what is fair and not covered by what is held is owed, the rest comes back.
Totals add_up(const Case& c, const std::vector<LineAssessment>& lines, const Range<Money>& interest, const Pack* pack);

/// Made in place and never moved: the law half points into the case.
struct Assessment {
  Assessment() = default;
  Assessment(const Assessment&) = delete;
  Assessment& operator=(const Assessment&) = delete;

  Case c;
  Day today;
  const Pack* pack = nullptr; ///< null: judged without law
  std::unique_ptr<Law> law;   ///< null with it
  std::vector<LineAssessment> lines;
  std::vector<AuditNote> audit;
  Totals totals;
  std::vector<Question> questions;
  TenancyFacts tenancy;
  bool recognized = false; ///< some line was sorted by its text alone
};

} // namespace wearline
