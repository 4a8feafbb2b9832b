#pragma once
// Cases as text in, assessments as text out; beside what engine.h offers.

#include "wearline/engine.h"

#include <string>
#include <string_view>

namespace wearline {

/// The version in which a case that could not be read is answered: its own, `otherwise` where it says none that is
/// known.
int answer_format(std::string_view case_json, int otherwise);

/// `assess_text` in the present version whatever the case's: what views are made from.
std::string assess_newest(std::string_view case_json, const Rulebook& rulebook, std::string_view today);

} // namespace wearline
