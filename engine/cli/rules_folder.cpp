#include "rules_folder.h"

#include "read_input.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <vector>

namespace wearline::cli {

namespace fs = std::filesystem;

namespace {

fs::path beside_program() {
  std::error_code none;
  return fs::read_symlink("/proc/self/exe", none).parent_path() / "rules";
}

/// Schemas describe the rules; page.json, page-*.json and cli.json hold the sentences of the views themselves.
bool for_the_engine(const fs::path& relative) {
  const std::string name = relative.filename().string();
  return relative.extension() == ".json" && *relative.begin() != "schema" && name != "page.json" &&
         name.rfind("page-", 0) != 0 && name != "cli.json";
}

std::vector<fs::path> files_under(const fs::path& folder) {
  std::vector<fs::path> files;
  std::error_code none;
  for (const auto& entry : fs::recursive_directory_iterator(folder, none)) {
    fs::path relative = entry.path().lexically_relative(folder);
    if (entry.is_regular_file(none) && for_the_engine(relative)) files.push_back(std::move(relative));
  }
  std::sort(files.begin(), files.end());
  // A law pack is read against the shared names, so it comes after them.
  std::stable_partition(files.begin(), files.end(), [](const fs::path& file) { return *file.begin() != "law"; });
  return files;
}

} // namespace

fs::path rules_folder(const fs::path& asked) {
  if (!asked.empty()) return asked;
  std::error_code none;
  const fs::path built_with = WEARLINE_RULES;
  return fs::is_directory(built_with, none) ? built_with : beside_program();
}

std::variant<Rulebook, Faults> load_rules(const fs::path& folder) {
  const auto files = files_under(folder);
  if (files.empty())
    return Faults{
        {"no-rules", "", "No rules were found in " + folder.string() + ". Give their folder with --rules.", ""}};
  Rulebook rulebook;
  Faults faults;
  for (const fs::path& relative : files) {
    const auto text = read_input(folder / relative);
    const Faults found = std::holds_alternative<Faults>(text)
                             ? std::get<Faults>(text)
                             : rulebook.add(relative.generic_string(), std::get<std::string>(text));
    faults.insert(faults.end(), found.begin(), found.end());
  }
  if (!faults.empty()) return faults;
  return rulebook;
}

Wording load_wording(const fs::path& folder, std::string_view language, std::string_view file) {
  Wording wording;
  const auto text = read_input(folder / "wording" / language / (std::string(file) + ".json"));
  if (!std::holds_alternative<std::string>(text)) return wording;
  const auto sentences = nlohmann::json::parse(std::get<std::string>(text), nullptr, false);
  for (const auto& [key, sentence] : sentences.items())
    if (sentence.is_string()) wording.add(key, sentence.get<std::string>());
  return wording;
}

std::variant<RecogniserRules, Faults> load_recogniser(const fs::path& folder) {
  RecogniserRules rules;
  Faults faults;
  for (const std::string& name : RecogniserRules::files()) {
    const auto text = read_input(folder / "recogniser" / name);
    const Faults found =
        std::holds_alternative<Faults>(text) ? std::get<Faults>(text) : rules.add(name, std::get<std::string>(text));
    faults.insert(faults.end(), found.begin(), found.end());
  }
  if (!faults.empty()) return faults;
  return rules;
}

} // namespace wearline::cli
