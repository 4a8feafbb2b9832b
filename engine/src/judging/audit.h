#pragma once
// The statement as a whole: sums, refund arithmetic, the same thing charged twice, charges that contradict each other.

#include "case/case.h"
#include "judging/line_judgment.h"
#include "values/reference.h"

#include <string>
#include <string_view>
#include <vector>

namespace wearline {

/// Two kinds of charge that cannot both stand for one place (rules/audit.json).
struct ClashRule {
  struct Side {
    std::vector<std::string> elements, findings;
    bool renewed = false; ///< only if the thing is replaced
    bool mended = false;  ///< only if it is not
  };
  std::string id;
  Side weaker, stronger;   ///< the weaker charge falls away where the stronger stands
  bool doubt_only = false; ///< it may fall away
  Localized text;
};

/// What the audit goes by (rules/audit.json).
struct AuditRules {
  std::vector<ClashRule> clashes;
  std::vector<std::string> flat_fees; ///< "element/finding" of charges that stand for no named work
  Share most_tax = Share::whole();    ///< the highest sales tax there is, as a share of what it is on
};

struct AuditNote {
  std::string_view code;          ///< wording key "audit.<code>", or a clash rule's id with `said`
  std::vector<std::size_t> lines; ///< the lines concerned; where one falls away it is the first
  Money stated = {}, found = {};
  const Localized* said = nullptr;
  /// What it does to the first line: doubt makes nothing its least, drop makes nothing likely, limit lets no more than
  /// `found` stand.
  enum class Effect { none, doubt, drop, limit } effect = Effect::none;
};

/// What a line is, for the audit.
struct AuditLine {
  const Line* line = nullptr;
  const Subject* subject = nullptr;
  bool renewed = false;
  bool barred = false; ///< the law lets nothing be taken for it, so it takes no other charge's place
};

/// Notes in the order: days that cannot be right, sums, deposit and refund, duplicates, days charged twice, clashes,
/// then line by line: amounts, figures in its text, tax, flat sums, the move-out record.
std::vector<AuditNote> audit(const Case& c, const std::vector<AuditLine>& lines, const AuditRules& rules);

} // namespace wearline
