#pragma once
// Parsing JSON text without exceptions, with the place of a mistake, and refusing member names that stand twice.

#include "wearline/fault.h"

#include <nlohmann/json.hpp>
#include <optional>
#include <string_view>
#include <variant>

namespace wearline {

using Json = nlohmann::json;

/// The document, or one fault: not-json (with line and column), or duplicate-member (with its JSON Pointer).
std::variant<Json, Fault> parse_json(std::string_view text);

/// `segment` escaped for a JSON Pointer (RFC 6901 section 3).
std::string pointer_segment(std::string_view segment);

} // namespace wearline
