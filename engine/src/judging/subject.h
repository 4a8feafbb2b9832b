#pragma once
// What a charged line is about, and what goes with that.

#include "wear/rules.h"
#include "wear/valuation.h"

namespace wearline {

/// Methods that speak to a line: the likely one, and others of its place that widen the answer.
struct MethodChoice {
  const DepreciationMethod* likely = nullptr;
  const DepreciationMethod* also[4] = {};
  int count = 0;
};

/// The thing and finding a line is about, as given or as recognized from its text, with the life and methods that go
/// with it. Nothing here hangs on a fact that questions vary.
struct Subject {
  const Element* element = nullptr;
  const Finding* finding = nullptr;
  int confidence = 100;    ///< 0..100; below 100 the recognizer proposed it
  bool harm_named = false; ///< the words say what was wrong, even where no finding of the thing does
  LifeChoice life;
  MethodChoice methods;
  bool labor_depreciates = true; ///< work to put a new thing in depreciates with it here
  bool labor_settled = true;     ///< a decider of this place has said so; else some may not take age off it
};

} // namespace wearline
