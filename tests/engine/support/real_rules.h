#pragma once
// The rules as they stand in engine/rules, and results as JSON documents.

#include "wearline/engine.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <string_view>

namespace wearline::test {

/// Loaded once; a rules file with a fault ends the test run.
const Rulebook& real_rules();

/// The assessment of a case on a day, parsed.
nlohmann::json assessed(std::string_view case_json, std::string_view today = "2026-09-01");

/// A case of one line without law: members of the line, and of the tenancy.
std::string case_of_line(std::string_view line,
                         std::string_view tenancy = R"("began":"2024-08-01","possessionReturned":"2026-07-31")");

/// The only line of such a case.
nlohmann::json line_of(std::string_view line,
                       std::string_view tenancy = R"("began":"2024-08-01","possessionReturned":"2026-07-31")");

} // namespace wearline::test

// A JSON value is a range of itself: without this Catch would print it for ever.
namespace Catch {
template <> struct is_range<nlohmann::json> { static const bool value = false; };
template <> struct StringMaker<nlohmann::json> {
  static std::string convert(const nlohmann::json& json) { return json.dump(); }
};
} // namespace Catch
