#pragma once
// From a case to its assessment.

#include "judging/assessment.h"
#include "rulebook/rule_store.h"
#include "wearline/engine.h"

namespace wearline {

/// The pure function of the engine. `c` is moved into the result. `without_decision`: a decision of rules/precedents to
/// judge as if it had never been read, for measures.
std::unique_ptr<Assessment> assess_case(Case c, const Rules& rules, Day today, std::string_view without_decision = {});

/// Reads a case and sees that the law it names is loaded.
std::variant<Case, Faults> read_case_for(std::string_view case_json, const Rules& rules);

/// The result as JSON, in the language of the case and the present version of the format.
std::string render(const Assessment& assessment, const Rules& rules);

/// The result of a case that could not be read.
std::string render_faults(const Faults& faults, Day today, int format);

/// The version in which a case that could not be read is answered: its own, `otherwise` where it says none that is
/// known.
int answer_format(std::string_view case_json, int otherwise);

/// `assess_text` in the present version whatever the case's: what views are made from.
std::string assess_newest(std::string_view case_json, const Rulebook& rulebook, std::string_view today);

} // namespace wearline
