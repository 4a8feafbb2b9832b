#pragma once
// Facts and events that a member of a case holds, by the place of the member.

#include "case/case.h"
#include "law/fact_state.h"

#include <optional>
#include <string_view>

namespace wearline {

/// The reader for a fact or the day of an event held at this place of a case ("/tenancy/kind"); null if there is none.
FactState (*fact_reader(std::string_view at))(const Case&);
const std::optional<DaySpan>* (*event_reader(std::string_view at))(const Case&);

} // namespace wearline
