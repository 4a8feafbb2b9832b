#pragma once
// Whether a condition holds and a rule applies in one case, in three values: yes, no, unknown.

#include "law/conditions.h"
#include "law/facts.h"
#include "law/pack.h"

namespace wearline {

/// Whether a condition holds. `outcomes` may be null: deadlines and defects are unknown then. `grounds` may be null;
/// where it is given, it gains only the facts that the answer hangs on: unknown ones if the answer is unknown, assumed
/// ones it was built on.
Tri holds(const Condition& condition, const FactView& view, const Outcomes* outcomes = nullptr,
          Grounds* grounds = nullptr);

/// Whether a rule is in force for this case: by the date the law itself uses (`by`; the day of the assessment if the
/// event has not happened). Unknown if that date is not known well enough; `grounds` then gains the event.
Tri in_force(const Rule& rule, const FactView& view, Grounds* grounds = nullptr);

/// In force, and its condition holds.
Tri applies(const Rule& rule, const FactView& view, const Outcomes* outcomes = nullptr, Grounds* grounds = nullptr);

} // namespace wearline
