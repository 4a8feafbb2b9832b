#pragma once
// What was allowed in other disputes: decided lines as data (rules/precedents), the few most like a line, and the share
// most often allowed in lines of its class. Evidence of what is usual, never law.

#include "case/case.h"
#include "judging/subject.h"
#include "values/money.h"
#include "wearline/fault.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wearline {

/// What was known of a line that bears on how it went.
enum class PrecedentState : std::uint8_t {
  plain,
  proof_missing,
  there_before,
  tenants_hand,
  landlords_part,
  agreed,    ///< the lease provides for it
  not_agreed ///< the lease does not
};

/// One decided line.
struct Precedent {
  std::string id;       ///< decision and line: "US-CT-1991#0"
  std::string decision; ///< its part before '#'
  ChargeKind kind = ChargeKind::unknown;
  std::string element, finding;
  PrecedentState state = PrecedentState::plain;
  Usual usual = Usual::depends; ///< what the guide calls its fault
  bool names_fault = true;
  bool share_known = true;  ///< false: something was allowed, how much is not known
  std::int64_t percent = 0; ///< of what was claimed, 0..100
};

/// How far a precedent is like a line.
enum class Likeness : std::uint8_t { same_fault, same_thing, same_kind };

/// "same-finding", ...
std::string_view name_of(Likeness likeness);

/// The disputes most like a line, and how they went.
struct Alike {
  std::vector<const Precedent*> most_alike; ///< at most `shown`
  Likeness likeness = Likeness::same_kind;  ///< of the least alike of them
  std::size_t nothing = 0, part = 0, all = 0;
};

class Precedents {
public:
  /// Reads rules/precedents/outcomes.json; `names_fault` tells whether a finding says what was wrong.
  Faults load(std::string_view json);

  /// The share most often allowed in lines of this class: the median over its counts, shrunk to those of the wider
  /// class and at last to all (rules/precedents/README.md). Empty without an element: nothing supports one.
  std::optional<Share> likely(const Line& line, const Subject& subject, std::string_view without_decision = {}) const;
  /// Those of rules/precedents most like the line; empty where there are too few to say anything.
  Alike alike(const Line& line, const Subject& subject, std::string_view without_decision = {}) const;
  bool empty() const { return rows_.empty(); }

private:
  std::vector<Precedent> rows_;
  std::int64_t shrinkage_ = 1; ///< lines that the wider class counts for
  std::size_t shown_ = 5, fewest_ = 3;
};

} // namespace wearline
