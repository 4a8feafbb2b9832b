// Answers as the page's module does, to compare builds of the engine with it: one question a line on standard input,
// {"text": "...", "today": "..."} an assessment, with "options" a letter, {"text": "...", "language": "en"} a statement
// that came; one answer a line on standard output.

#include "rules_folder.h"
#include "wearline/engine.h"

#include <iostream>
#include <nlohmann/json.hpp>
#include <string>

int main() {
  std::ios::sync_with_stdio(false);
  const auto loaded = wearline::cli::load_rules(wearline::cli::rules_folder({}));
  const auto* rulebook = std::get_if<wearline::Rulebook>(&loaded);
  if (!rulebook) return 2;
  for (std::string line; std::getline(std::cin, line);) {
    const auto question = nlohmann::json::parse(line, nullptr, false);
    if (!question.is_object()) return 2;
    const auto member = [&question](const char* name) { return question.value(name, std::string()); };
    if (question.contains("language"))
      std::cout << wearline::read_statement_text(member("text"), *rulebook, member("language"));
    else if (question.contains("options"))
      std::cout << wearline::letter_text(member("text"), *rulebook, member("today"), member("options"));
    else std::cout << wearline::assess_text(member("text"), *rulebook, member("today"));
    std::cout << '\n';
  }
}
