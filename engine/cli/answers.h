#pragma once
// What every command that reads a case does alike: the day to judge from, and what to do with faults.

#include "wearline/fault.h"

#include <nlohmann/json_fwd.hpp>
#include <string>

namespace wearline::cli {

/// The date on the calendar of this machine, in its time zone, "YYYY-MM-DD": the one clock that Wearline reads.
std::string local_date();

/// Prints faults, as JSON on standard output or as lines on standard error; the exit status for them.
int refuse(const Faults& faults, bool json);

/// The faults an answer of the engine carries in its `errors`.
Faults faults_of(const nlohmann::json& answer);

} // namespace wearline::cli
