#pragma once
// Reading a case file, with every fault named and placed.

#include "case/case.h"
#include "case/case_names.h"
#include "wearline/fault.h"

#include <string_view>
#include <variant>

namespace wearline {

/// The case file's name of a cost component.
std::string_view name_of(CostComponent component);

/// Reads one case file (RFC 8259, UTF-8; engine/rules/schema/case.schema.json), or one of version 1. Either the whole
/// case or every fault found, with the names of the file.
std::variant<Case, Faults> read_case(std::string_view json, const CaseNames& names);

/// The version that a case file says it is of; 0 where it says none.
int case_format(std::string_view json);

} // namespace wearline
