#pragma once
// The assessment as JSON (rules/schema/assessment.schema.json).

#include "judging/assessment.h"
#include "rulebook/rule_store.h"
#include "wearline/fault.h"

#include <string>

namespace wearline {

/// The result as JSON, in the language of the case and the present version of the format.
std::string render(const Assessment& assessment, const Rules& rules);

/// The result of a case that could not be read.
std::string render_faults(const Faults& faults, Day today, int format);

} // namespace wearline
