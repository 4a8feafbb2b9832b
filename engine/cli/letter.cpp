#include "answers.h"
#include "commands.h"
#include "read_input.h"
#include "rules_folder.h"
#include "wearline/guard.h"

#include <iostream>
#include <memory>
#include <nlohmann/json.hpp>

namespace wearline::cli {

namespace {

struct Options {
  std::filesystem::path file, rules;
  std::string kind, language, today;
  bool json = false;
};

/// The letter on standard output; on standard error what to know before it is sent, and the caution.
int show(const std::string& text, bool json) {
  const auto answer = nlohmann::json::parse(text, nullptr, false);
  const Faults faults = faults_of(answer);
  if (json) std::cout << text << '\n';
  else if (!faults.empty()) print_faults(faults);
  else {
    std::cout << answer["text"].get<std::string>();
    if (answer["copy"].is_object()) std::cout << "\n----\n\n" << answer["copy"]["text"].get<std::string>();
    for (const auto& warning : answer["warnings"]) std::cerr << "* " << warning["text"].get<std::string>() << '\n';
    for (const auto& paragraph : answer["paragraphs"])
      if (paragraph["role"] == "caution") std::cerr << "* " << paragraph["text"].get<std::string>() << '\n';
  }
  return faults.empty() ? status_ok : status_errors;
}

int letter(const Options& o) {
  const auto text = read_input(o.file);
  if (const auto* faults = std::get_if<Faults>(&text)) return refuse(*faults, o.json);
  const auto rulebook = load_rules(rules_folder(o.rules));
  if (const auto* faults = std::get_if<Faults>(&rulebook)) return refuse(*faults, o.json);
  nlohmann::json options = nlohmann::json::object();
  if (!o.kind.empty()) options["kind"] = o.kind;
  if (!o.language.empty()) options["language"] = o.language;
  const std::string wanted = options.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
  return show(letter_text(std::get<std::string>(text), std::get<Rulebook>(rulebook),
                          o.today.empty() ? local_date() : o.today, wanted),
              o.json);
}

} // namespace

void add_letter(CLI::App& program, int& status) {
  auto* command = program.add_subcommand("letter", "Write a letter or paper for one case file");
  auto options = std::make_shared<Options>();
  command->add_option("--kind", options->kind, "which letter (the one that fits best if absent)");
  command->add_option("--language", options->language, "the reader's language, en or es");
  command->add_flag("--json", options->json, "print the letter as JSON, paragraph by paragraph");
  command->add_option("--today", options->today, "the day it is written, YYYY-MM-DD (this machine's date if absent)");
  command->add_option("--rules", options->rules, "the folder of rules to use");
  command->add_option("CASE", options->file, "the case file, JSON; - reads standard input")->required();
  command->callback([options, &status] { status = letter(*options); });
}

} // namespace wearline::cli
