#pragma once
// Conditions of law rules, and what an answer to them hangs on: what would have to be known to settle it.

#include "law/registry.h"

#include <cstdint>
#include <limits>
#include <string>
#include <vector>

namespace wearline {

/// The states a deadline can be in on a given day.
enum class DeadlineState : std::uint8_t { met, missed, open, undetermined, not_needed };

/// A condition as a tree. A leaf looks at one fact, event, deadline or document rule; `all` of nothing always holds.
struct Condition {
  enum class Op : std::uint8_t {
    all,
    any,
    none_of,
    yes_no,
    text_in,
    number_in,
    event_happened,
    event_on,
    deadline_is,
    defect
  };
  Op op = Op::all;
  std::uint16_t which = 0xffff; ///< FactId, EventId, position of the deadline, position of the document rule or cap
  bool wanted = true;           ///< yes_no, event_happened
  bool resolved = false;        ///< duty_is, defect: `which` is a position already
  DeadlineState state = DeadlineState::missed;                 ///< duty_is
  std::int64_t low = std::numeric_limits<std::int64_t>::min(); ///< number_in, inclusive
  std::int64_t high = std::numeric_limits<std::int64_t>::max();
  DaySpan span;                   ///< event_on, inclusive
  std::vector<std::string> names; ///< text_in
  bool unless_said = false;       ///< text_in: taken not to be one of the names while the case is silent
  std::vector<Condition> parts;   ///< all, any, none_of (one part)

  bool always() const { return op == Op::all && parts.empty(); }
};

/// A fact or event that decided something, by being unknown or by having been taken as usual.
struct Ask {
  enum class Kind : std::uint8_t { fact, event };
  Kind kind;
  std::uint16_t which;
  friend bool operator==(const Ask&, const Ask&) = default;
};
using Asks = std::vector<Ask>;

/// What an answer rests on.
struct Grounds {
  Asks unknown; ///< would settle it
  Asks assumed; ///< the case was silent and the usual was taken
  void add(const Grounds& other);
};
void add_ask(Asks& asks, Ask ask);

/// States of deadlines and document rules, where they are known already (conditions of bars, forfeits and remedies).
class Outcomes {
public:
  virtual Tri deadline_is(std::size_t deadline, DeadlineState state, Grounds* grounds) const = 0;
  /// A document rule that is not met or, numbered after the document rules, a cap that is exceeded.
  virtual Tri defect(std::size_t rule, Grounds* grounds) const = 0;

protected:
  ~Outcomes() = default;
};

} // namespace wearline
