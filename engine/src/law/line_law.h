#pragma once
// What the judgment of a line asks of the law, and what the law answers.

#include "case/case.h"
#include "values/range.h"
#include "wear/wear.h"

#include <optional>

namespace wearline {

/// What the law says of one line. Built by the law half.
struct LineLaw {
  Tri barred = false;               ///< nothing may be taken; unknown: perhaps
  bool barred_as_wear = false;      ///< only because it is wear
  Tri damaged_portion_only = false; ///< matching undamaged parts may not be charged
  std::optional<Money> limit;       ///< no more than this
};

/// What the law needs to know of a line besides the line itself.
struct LineFacts {
  Verdict wear = Verdict::undetermined;
  std::optional<Range<Months>> age_months; ///< completed months the thing is old, at least and at most
  bool renewed = false;                    ///< charged as replacement
};

/// The law's answer for a line; the judgment asks it again when a fact is varied.
class LineLawBook {
public:
  virtual ~LineLawBook() = default;
  virtual LineLaw of(const Line& line, const LineFacts& facts) const = 0;
  /// Whether the law lets this charge be taken even where nothing is damaged (carpet cleaning by a clause of the
  /// lease).
  virtual Tri grants(const Line& line) const = 0;
  /// Whether what the lease makes the tenant pay counts here because the lease says so.
  virtual Tri lets_clause_decide(const Line& line) const = 0;
};

} // namespace wearline
