#pragma once
// What a case says about one fact or event that the law asks for.

#include "case/case.h"
#include "values/money.h"
#include "values/tri.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace wearline {

/// What a case says about one fact. Sums are numbers of cents; a number known only within limits has low < high.
struct FactState {
  enum class Kind : std::uint8_t { unknown, yes_no, number, text };
  Kind kind = Kind::unknown;
  bool yes = false;
  bool assumed = false; ///< the case is silent and the usual value was taken
  std::int64_t low = 0, high = 0;
  std::string_view text;     ///< points into the case
  std::string_view not_text; ///< of an unknown text: what it surely is not

  /// Unknown where the value is.
  static FactState of(Tri value);
  static FactState of(const std::optional<long>& value);
  static FactState of(const std::optional<Money>& value);
  static FactState of(const std::string& value);
  static FactState of_range(std::int64_t low, std::int64_t high);
  static FactState said(const FactValue& value);
};

/// What a case says about one event. `on` is when it happened or, where that is not known, when it can have happened.
struct EventState {
  Tri happened;
  DaySpan on;
  bool assumed = false; ///< the case is silent and the usual was taken
};

} // namespace wearline
