#pragma once
// Parsing JSON text without exceptions, with the place of a mistake, and refusing member names that stand twice.

#include "wearline/fault.h"

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace wearline {

using Json = nlohmann::json;

/// The document, or one fault: not-json (with line and column), or duplicate-member (with its JSON Pointer).
std::variant<Json, Fault> parse_json(std::string_view text);

/// What is wrong with a text that parse_json refuses.
Fault mistake_in(std::string_view text);

/// How deep lists and objects may lie in one another.
constexpr std::size_t deepest_json = 100;

/// Tells `events` of each value in turn; false if it breaks off, or at a mistake.
bool parse_events(std::string_view text, nlohmann::json_sax<Json>& events);

/// The members of the one object that `text` is, each with the text of its value; none if it is no such object or names
/// a member twice. Only the frame is read: whether a value is sound is seen when its own text is parsed.
std::optional<std::vector<std::pair<std::string, std::string_view>>> split_object(std::string_view text);

/// `segment` escaped for a JSON Pointer (RFC 6901 section 3).
std::string pointer_segment(std::string_view segment);

} // namespace wearline
