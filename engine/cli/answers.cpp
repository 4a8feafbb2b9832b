#include "answers.h"

#include "output/answers.h"
#include "read_input.h"
#include "rules_folder.h"

#include <algorithm>
#include <ctime>
#include <iostream>
#include <nlohmann/json.hpp>
#include <set>

namespace wearline::cli {

namespace fs = std::filesystem;

std::string local_date() {
  const std::time_t now = std::time(nullptr);
  std::tm parts{};
  localtime_r(&now, &parts);
  char text[16];
  return {text, std::strftime(text, sizeof text, "%Y-%m-%d", &parts)};
}

std::string day_of(const Common& options) { return options.today.empty() ? local_date() : options.today; }

int refuse(const Faults& faults, bool json, const fs::path& file, int format) {
  if (json) std::cout << with_file(errors_json(faults, format), file) << '\n';
  else print_faults(faults, file);
  return status_errors;
}

Faults faults_of(const nlohmann::json& answer) {
  Faults faults;
  const auto text = [](const nlohmann::json& error, const char* name) {
    const auto found = error.find(name);
    return found != error.end() && found->is_string() ? found->get<std::string>() : std::string();
  };
  if (const auto errors = answer.find("errors"); errors != answer.end())
    for (const auto& e : *errors) faults.push_back({text(e, "code"), text(e, "at"), text(e, "text"), text(e, "near")});
  return faults;
}

namespace {

nlohmann::json document_in(const fs::path& file) {
  const auto text = read_input(file);
  const auto* found = std::get_if<std::string>(&text);
  return found ? nlohmann::json::parse(*found, nullptr, false) : nlohmann::json();
}

std::vector<fs::path> cases_under(const fs::path& folder) {
  std::vector<fs::path> files;
  std::error_code none;
  for (const auto& entry : fs::recursive_directory_iterator(folder, none)) {
    if (!entry.is_regular_file(none) || entry.path().extension() != ".json") continue;
    // An assessment has the member too, and its day.
    const auto document = document_in(entry.path());
    if (document.is_object() && document.contains("wearline") && !document.contains("today"))
      files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

} // namespace

std::variant<std::vector<fs::path>, Faults> case_files(const std::vector<fs::path>& asked) {
  std::vector<fs::path> files;
  for (const fs::path& path : asked) {
    std::error_code none;
    if (!fs::is_directory(path, none)) {
      files.push_back(path);
      continue;
    }
    const std::vector<fs::path> found = cases_under(path);
    if (found.empty()) return Faults{{"no-cases", "", "There is no case file in " + path.string() + ".", ""}};
    files.insert(files.end(), found.begin(), found.end());
  }
  return files;
}

std::string place_of(std::string_view case_json) {
  const auto document = nlohmann::json::parse(case_json, nullptr, false);
  if (!document.is_object()) return {};
  const auto place = document.find("jurisdiction");
  return place != document.end() && place->is_string() ? place->get<std::string>() : std::string();
}

Faults judge_each(const std::vector<fs::path>& cases, const Common& options, Answers answers,
                  const std::function<void(Judged)>& take) {
  std::vector<std::variant<std::string, Faults>> texts;
  std::set<std::string> places;
  for (const fs::path& file : cases) {
    texts.push_back(read_input(file));
    if (const auto* text = std::get_if<std::string>(&texts.back())) places.insert(place_of(*text));
  }
  auto loaded = load_rules(rules_folder(options.rules), &places);
  if (auto* faults = std::get_if<Faults>(&loaded)) return std::move(*faults);
  const Rulebook& rules = std::get<Rulebook>(loaded);
  const std::string today = day_of(options);
  for (std::size_t i = 0; i < cases.size(); ++i) {
    if (auto* faults = std::get_if<Faults>(&texts[i])) take({cases[i], std::move(*faults)});
    else if (const std::string& text = std::get<std::string>(texts[i]); answers == Answers::newest)
      take({cases[i], assess_newest(text, rules, today)});
    else take({cases[i], assess_text(text, rules, today, options.format)});
  }
  return {};
}

} // namespace wearline::cli
