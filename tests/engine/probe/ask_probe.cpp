// Answers as the page's module does, to compare builds of the engine with it: one question a line on standard input,
// {"text": "...", "today": "..."} an assessment, with "options" a letter, {"text": "...", "language": "en"} a statement
// that came, {"text": "...", "recognize": true} what one description is for, {"catalogue": "en"} what there is to
// choose from, each with "format": 1 or 2; one answer a line on standard output.

#include "output/reading.h"
#include "rulebook/rule_store.h"
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
    const int format = question.value("format", 1);
    if (question.contains("catalogue")) std::cout << wearline::catalogue(*rulebook, member("catalogue"), format);
    else if (question.contains("recognize"))
      std::cout << wearline::recognize_text(member("text"), rulebook->rules().recognizer, format);
    else if (question.contains("language"))
      std::cout << wearline::read_statement_text(member("text"), *rulebook, member("language"), format);
    else if (question.contains("options"))
      std::cout << wearline::letter_text(member("text"), *rulebook, member("today"), member("options"), format);
    else std::cout << wearline::assess_text(member("text"), *rulebook, member("today"), format);
    std::cout << '\n';
  }
}
