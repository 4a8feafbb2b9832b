#include "support/letters.h"

namespace wearline::test {

using nlohmann::json;

json letter_of(std::string_view case_json, std::string_view options, std::string_view today) {
  const auto answer = json::parse(letter(case_json, real_rules(), *parse_day(today), options), nullptr, false);
  REQUIRE_FALSE(answer.is_discarded());
  INFO(answer.dump());
  REQUIRE(answer["errors"].empty());
  return answer;
}

json letter_of_kind(std::string_view case_json, std::string_view kind, std::string_view today) {
  return letter_of(case_json, R"({"kind":")" + std::string(kind) + "\"}", today);
}

json paragraph(const json& letter, std::string_view id) {
  for (const auto& p : letter["paragraphs"])
    if (p["id"] == id) return p;
  return nullptr;
}

std::string words(const json& letter, std::string_view id) {
  const json p = paragraph(letter, id);
  if (p.is_null()) return {};
  std::string out = p["text"];
  for (const auto& row : p["rows"])
    for (const auto& cell : row) out += " | " + cell.get<std::string>();
  return out;
}

bool warns(const json& letter, std::string_view code) {
  for (const auto& warning : letter["warnings"])
    if (warning["code"] == code) return true;
  return false;
}

std::string proposed(const json& letter) {
  std::string out;
  for (const auto& fit : letter["proposed"]) out += (out.empty() ? "" : " ") + fit["kind"].get<std::string>();
  return out;
}

} // namespace wearline::test
