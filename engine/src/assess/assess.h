#pragma once
// From a case to its assessment.

#include "judging/assessment.h"
#include "rulebook/rule_store.h"
#include "wearline/fault.h"

#include <memory>
#include <string_view>
#include <variant>

namespace wearline {

/// The pure function of the engine. `c` is moved into the result. `without_decision`: a decision of rules/precedents to
/// judge as if it had never been read, for measures.
std::unique_ptr<Assessment> assess_case(Case c, const Rules& rules, Day today, std::string_view without_decision = {});

/// Reads a case and sees that the law it names is loaded.
std::variant<Case, Faults> read_case_for(std::string_view case_json, const Rules& rules);

} // namespace wearline
