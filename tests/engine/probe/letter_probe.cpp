// Writes letters for the checks of their language: one question a line on standard input, {"case": {...}, "today":
// "...", "options": {...}}, one answer of the engine a line on standard output.

#include "rules_folder.h"
#include "wearline/engine.h"

#include <iostream>
#include <nlohmann/json.hpp>
#include <string>

int main() {
  const auto loaded = wearline::cli::load_rules(wearline::cli::rules_folder({}));
  const auto* rulebook = std::get_if<wearline::Rulebook>(&loaded);
  if (!rulebook) {
    for (const auto& fault : std::get<wearline::Faults>(loaded)) std::cerr << fault.at << ": " << fault.text << '\n';
    return 2;
  }
  for (std::string line; std::getline(std::cin, line);) {
    const auto question = nlohmann::json::parse(line, nullptr, false);
    if (!question.is_object() || !question.contains("case") || !question.contains("today")) return 2;
    std::cout << wearline::letter_text(question["case"].dump(), *rulebook, question["today"].get<std::string>(),
                                       question.contains("options") ? question["options"].dump() : "")
              << '\n';
  }
  return 0;
}
