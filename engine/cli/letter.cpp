// wearline letter: a letter or paper for one case, as text or paragraph by paragraph.

#include "answers.h"
#include "read_input.h"
#include "rules_folder.h"

#include <iostream>
#include <nlohmann/json.hpp>
#include <set>

namespace wearline::cli {

namespace {

/// The letter on standard output; on standard error what to know before it is sent, and the caution.
int show(const std::string& text, bool json) {
  const auto answer = nlohmann::json::parse(text, nullptr, false);
  const Faults faults = faults_of(answer);
  if (json) std::cout << text << '\n';
  else if (!faults.empty()) print_faults(faults);
  else {
    // What can no longer be mended is told before the paper.
    const auto told = [&](bool first) {
      for (const auto& warning : answer["warnings"]) {
        const bool past = warning["code"] == "late" || warning["code"] == "lapsed" || warning["code"] == "own-day-past";
        if (past == first) std::cerr << "* " << warning["text"].get<std::string>() << '\n';
      }
    };
    told(true);
    std::cout << answer["text"].get<std::string>();
    if (answer["noLetter"].is_object() && answer["paragraphs"].empty())
      std::cerr << "* " << answer["noLetter"]["text"].get<std::string>() << '\n';
    for (const char* name : {"readingCopy", "copy"}) // of the present version, of version 1
      if (const auto copy = answer.find(name); copy != answer.end() && copy->is_object())
        std::cout << "\n----\n\n" << (*copy)["text"].get<std::string>();
    told(false);
    for (const auto& paragraph : answer["paragraphs"])
      if (paragraph["role"] == "caution") std::cerr << "* " << paragraph["text"].get<std::string>() << '\n';
  }
  return faults.empty() ? status_ok : status_errors;
}

} // namespace

int letter(const LetterOptions& o) {
  const auto text = read_input(o.file);
  if (const auto* faults = std::get_if<Faults>(&text)) return refuse(*faults, o.json, {}, o.format);
  const std::string& case_json = std::get<std::string>(text);
  const std::set<std::string> places = {place_of(case_json)};
  const auto rulebook = load_rules(rules_folder(o.rules), &places);
  if (const auto* faults = std::get_if<Faults>(&rulebook)) return refuse(*faults, o.json, {}, o.format);
  nlohmann::json options = nlohmann::json::object();
  if (!o.kind.empty()) options["kind"] = o.kind;
  if (!o.language.empty()) options["language"] = o.language;
  const std::string wanted = options.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
  return show(letter_text(case_json, std::get<Rulebook>(rulebook), day_of(o), wanted, o.format), o.json);
}

} // namespace wearline::cli
