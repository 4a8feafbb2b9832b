#include "answers.h"
#include "commands.h"
#include "read_input.h"
#include "report.h"
#include "rules_folder.h"
#include "wearline/guard.h"

#include <iostream>
#include <memory>
#include <nlohmann/json.hpp>

namespace wearline::cli {

namespace {

struct Options {
  std::filesystem::path file, rules;
  std::string today;
  bool json = false;
};

int show(const std::string& text, const std::filesystem::path& rules, bool json) {
  const auto result = nlohmann::json::parse(text, nullptr, false);
  const Faults faults = faults_of(result);
  if (json) std::cout << text << '\n';
  else if (!faults.empty()) print_faults(faults);
  else std::cout << report(result, load_wording(rules, language_of(result)));
  return faults.empty() ? status_ok : status_errors;
}

int check(const Options& o) {
  const auto text = read_input(o.file);
  if (const auto* faults = std::get_if<Faults>(&text)) return refuse(*faults, o.json);
  const auto folder = rules_folder(o.rules);
  const auto rulebook = load_rules(folder);
  if (const auto* faults = std::get_if<Faults>(&rulebook)) return refuse(*faults, o.json);
  return show(
      assess_text(std::get<std::string>(text), std::get<Rulebook>(rulebook), o.today.empty() ? local_date() : o.today),
      folder, o.json);
}

} // namespace

void add_check(CLI::App& program, int& status) {
  auto* command = program.add_subcommand("check", "Judge the charges of one case file");
  auto options = std::make_shared<Options>();
  command->add_flag("--json", options->json, "print the assessment as JSON");
  command->add_option("--today", options->today, "the day to judge from, YYYY-MM-DD (this machine's date if absent)");
  command->add_option("--rules", options->rules, "the folder of rules to use");
  command->add_option("CASE", options->file, "the case file, JSON; - reads standard input")->required();
  command->callback([options, &status] { status = check(*options); });
}

} // namespace wearline::cli
