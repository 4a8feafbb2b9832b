#pragma once
// The statement as a whole: sums, refund arithmetic, the same thing charged twice, charges that contradict each other.

#include "wearline/case.h"
#include "wearline/line_judgement.h"
#include "wearline/reference.h"

#include <string>
#include <string_view>
#include <vector>

namespace wearline {

/// Two kinds of charge that cannot both stand for one place (rules/audit.json).
struct ClashRule {
  struct Side {
    std::vector<std::string> elements, findings;
    bool renewed = false; ///< only if the thing is replaced
  };
  std::string id;
  Side weaker, stronger; ///< the weaker charge falls away where the stronger stands
  Localised text;
};

struct AuditNote {
  std::string_view code;           ///< wording key "audit.<code>", or a clash rule's id with `said`
  std::vector<std::size_t> lines;  ///< the lines concerned; where one falls away it is the first
  Money stated = {}, found = {};
  const Localised* said = nullptr;
  /// What it does to the first line: doubt makes nothing its least, drop makes nothing likely.
  enum class Effect { none, doubt, drop } effect = Effect::none;
};

/// What a line is, for the audit.
struct AuditLine {
  const Line* line = nullptr;
  const Subject* subject = nullptr;
  bool renewed = false;
};

/// Notes in the order: sums, deposit and refund, duplicates, clashes, lines that name no damage.
std::vector<AuditNote> audit(const Case& c, const std::vector<AuditLine>& lines, const std::vector<ClashRule>& clashes);

} // namespace wearline
