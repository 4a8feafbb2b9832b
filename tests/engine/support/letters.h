#pragma once
// Letters as JSON documents, for the tests of what they say.

#include "support/real_rules.h"

#include <string>
#include <string_view>

namespace wearline::test {

/// A letter written on a day; `options` as the engine takes them ({"kind": "..."}). Faults end the test.
nlohmann::json letter_of(std::string_view case_json, std::string_view options, std::string_view today = "2026-09-10");
/// The same of a kind, in English.
nlohmann::json letter_of_kind(std::string_view case_json, std::string_view kind, std::string_view today = "2026-09-10");

/// The paragraph with this id, or null.
nlohmann::json paragraph(const nlohmann::json& letter, std::string_view id);
/// Its text with its rows, one line; empty if there is none.
std::string words(const nlohmann::json& letter, std::string_view id);
/// Whether a letter warns with this code.
bool warns(const nlohmann::json& letter, std::string_view code);
/// The kinds proposed, in order, joined by spaces.
std::string proposed(const nlohmann::json& letter);

} // namespace wearline::test
