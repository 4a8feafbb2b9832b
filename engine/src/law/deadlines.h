#pragma once
// Every dated deadline of a law pack in one case: who must do what by when, and whether it was done in time.

#include "law/counting.h"
#include "law/facts.h"
#include "law/pack.h"

#include <optional>
#include <vector>

namespace wearline {

/// Why a deadline is in the state it is in.
enum class DeadlineReason : std::uint8_t {
  not_in_force,   ///< the rule is for other dates
  not_called_for, ///< its condition does not hold
  nothing_owed,   ///< nothing had to be paid back
  done_in_time,
  done_late,
  done_early,     ///< done before its first day
  not_done,       ///< known, or taken, not to have been done, and the last day is past
  time_left,      ///< not done as far as known, and the last day is not past
  not_started,    ///< the clock has not started
  condition_open, ///< whether the deadline applies hangs on something unknown
  date_open,      ///< whether it was done in time hangs on something unknown
  owed_open,      ///< whether money was owed is not known
  window_shut,    ///< it may not be done yet: its first day is to come
  window_open,    ///< it may be done since its first day
  window_past,    ///< the day it had to come before is past
  arrival_open, ///< sent in time and come late, and the law does not say which counts: taken as met, which a court may
                ///< see otherwise
  no_number     ///< the law sets no number of days
};

struct DeadlineResult {
  std::size_t position = 0; ///< in Pack::deadlines
  const Deadline* deadline = nullptr;
  DeadlineState state = DeadlineState::not_needed;
  DeadlineReason reason = DeadlineReason::not_called_for;
  Tri applies;                        ///< in force and called for
  std::optional<DaySpan> last;        ///< the last day; empty: none to compute, or none set
  std::optional<DaySpan> first;       ///< the first day on which it may be done, where the law sets one
  std::vector<PeriodCount> periods;   ///< the arithmetic
  std::vector<std::size_t> governing; ///< the periods that set the last day
  EventId done = EventId::none;       ///< the event that met it, or would
  std::optional<DaySpan> done_on;
  bool done_assumed = false;    ///< that event was taken as usual
  bool hangs_on_refund = false; ///< missed only if money is owed
  Tri met, missed, open;        ///< for conditions of other rules
  Grounds grounds;
  std::vector<std::size_t>
      instead; ///< positions of the deadlines of which one applies and which one is open; else empty
};

/// Whether the refund meets it: a deadline of the landlord to return the deposit or its balance.
bool pays_back(const Deadline& deadline, const Registry& registry);

/// One deadline of a pack, which names its statute.
DeadlineResult judge_deadline(std::size_t position, const Pack& pack, const Registry& registry,
                              const Holidays& holidays, const FactView& view, Tri refund_owed);

/// Sets what other rules may ask of a deadline ("is it missed?") by its state and by whether it applies.
void conclude(DeadlineResult& result, DeadlineState state, DeadlineReason reason);

/// Whether a deadline is in this state, for conditions of other rules.
Tri is_in_state(const DeadlineResult& result, DeadlineState state, Grounds* grounds);

/// All deadlines of a pack, each with its statute there, in its order. `refund_owed`: whether money has to come back,
/// by a fair reckoning; unknown before the lines are judged. A deadline to pay back is missed if nothing came, the last
/// day is past and money is owed.
std::vector<DeadlineResult> judge_deadlines(const Pack& pack, const Registry& registry, const Holidays& holidays,
                                            const FactView& view, Tri refund_owed);

/// Judges again those deadlines that hang on whether money is owed. May be called again with another answer.
void settle_refund_deadlines(std::vector<DeadlineResult>& results, Tri refund_owed);

} // namespace wearline
