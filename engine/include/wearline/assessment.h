#pragma once
// The whole answer for a case, as values: lines, totals, dates, defects, remedies, questions, cautions.

#include "wearline/audit.h"
#include "wearline/case.h"
#include "wearline/inquiry.h"
#include "wearline/line_judgement.h"

#include <optional>
#include <string>
#include <vector>

namespace wearline {

struct Rules;

struct LineAssessment {
  Subject subject;
  LineResult result;
  std::vector<Step> steps;
  std::optional<TurningPoint> turning_point;
};

/// Sums over the statement. Empty optionals: the deposit is not known.
struct Totals {
  Money claimed;
  Range<Money> fair;
  std::optional<Money> deposit;
  Range<Money> interest;
  std::optional<Range<Money>> fair_refund;
  Money paid_back;
  bool paid_back_assumed = false; ///< nobody said what was paid back; the statement's own refund is taken
  std::optional<Range<Money>> shortfall;
  std::optional<Range<Money>> owed_by_tenant; ///< fair charges beyond the deposit
  Money ordinary_wear;                        ///< charged for lines that look like ordinary wear
};

/// Sums of the fair lines, the deposit and what came back.
Totals add_up(const Case& c, const std::vector<LineAssessment>& lines, const Range<Money>& interest);

struct Assessment {
  Case c;
  Day today;
  std::vector<LineAssessment> lines;
  std::vector<AuditNote> audit;
  Totals totals;
  std::vector<Question> questions;
  TenancyFacts tenancy;
  bool recognised = false; ///< some line was sorted by its text alone
};

} // namespace wearline
