#include "rules_folder.h"

#include "read_input.h"

#include <algorithm>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <vector>

namespace wearline::cli {

namespace fs = std::filesystem;

namespace {

/// The folder of this program. Empty where the system does not tell
/// (https://man7.org/linux/man-pages/man5/proc.5.html).
fs::path program_folder() {
  std::error_code none;
  return fs::read_symlink("/proc/self/exe", none).parent_path();
}

bool holds_rules(const fs::path& folder) {
  std::error_code none;
  return fs::is_regular_file(folder / "facts.json", none);
}

/// Where a program that was built and not installed finds the rules: `engine/rules` of a folder above it.
fs::path rules_of_checkout(fs::path folder) {
  for (; folder.has_relative_path(); folder = folder.parent_path())
    if (holds_rules(folder / "engine/rules")) return folder / "engine/rules";
  return {};
}

std::vector<fs::path> files_under(const fs::path& folder) {
  std::vector<fs::path> files;
  std::error_code none;
  for (const auto& entry : fs::recursive_directory_iterator(folder, none)) {
    fs::path relative = entry.path().lexically_relative(folder);
    if (entry.is_regular_file(none) && Rulebook::takes(relative.generic_string())) files.push_back(std::move(relative));
  }
  std::sort(files.begin(), files.end());
  // A law pack is read against the shared names, so it comes after them.
  std::stable_partition(files.begin(), files.end(), [](const fs::path& file) { return *file.begin() != "law"; });
  return files;
}

/// The places of jurisdictions.json that have a law file of their own.
std::set<std::string> places_with_law(const fs::path& folder) {
  std::set<std::string> places;
  const auto text = read_input(folder / "jurisdictions.json");
  if (!std::holds_alternative<std::string>(text)) return places;
  const auto document = nlohmann::json::parse(std::get<std::string>(text), nullptr, false);
  if (document.is_object() && document.contains("withPack"))
    for (const auto& [code, name] : document["withPack"].items()) places.insert(code);
  return places;
}

/// A law file serves the place that its name begins with (ISO 3166-2, then perhaps a locality); one that begins with no
/// place of the list serves all.
void leave_out_other_places(std::vector<fs::path>& files, const fs::path& folder, const std::set<std::string>& needed) {
  const std::set<std::string> known = places_with_law(folder);
  files.erase(std::remove_if(files.begin(), files.end(),
                             [&](const fs::path& file) {
                               const std::string of = file.begin()->string();
                               if (of != "law" && of != "law-es" && of != "law-layers" && of != "law-layers-es")
                                 return false;
                               const std::string name = file.stem().string();
                               const std::string place = name.substr(0, name.find('-', name.find('-') + 1));
                               return known.count(place) != 0 && needed.count(place) == 0;
                             }),
              files.end());
}

} // namespace

fs::path rules_folder(const fs::path& asked) {
  if (!asked.empty()) return asked;
  if (const char* named = std::getenv("WEARLINE_RULES"); named && *named) return named;
  const fs::path here = program_folder();
  for (const fs::path& folder : {(here / WEARLINE_RULES_FROM_BIN).lexically_normal(), here / "rules"})
    if (holds_rules(folder)) return folder;
  return rules_of_checkout(here);
}

std::variant<Rulebook, Faults> load_rules(const fs::path& folder, const std::set<std::string>* places) {
  std::vector<fs::path> files = files_under(folder);
  if (files.empty())
    return Faults{{"no-rules", "",
                   "No rules were found in " + (folder.empty() ? "the usual places" : folder.string()) +
                       ". Give their folder with --rules or in WEARLINE_RULES.",
                   ""}};
  if (places) leave_out_other_places(files, folder, *places);
  Rulebook rulebook;
  Faults faults;
  const auto take = [&faults](Faults found) {
    faults.insert(faults.end(), std::make_move_iterator(found.begin()), std::make_move_iterator(found.end()));
  };
  for (const fs::path& relative : files) {
    auto text = read_input(folder / relative);
    if (auto* found = std::get_if<Faults>(&text)) take(std::move(*found));
    else take(rulebook.add(relative.generic_string(), std::get<std::string>(text)));
  }
  if (faults.empty()) take(rulebook.pending());
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

std::variant<RecognizerRules, Faults> load_recognizer(const fs::path& folder) {
  RecognizerRules rules;
  Faults faults;
  for (const std::string& name : RecognizerRules::files()) {
    const auto text = read_input(folder / "recogniser" / name);
    const Faults found =
        std::holds_alternative<Faults>(text) ? std::get<Faults>(text) : rules.add(name, std::get<std::string>(text));
    faults.insert(faults.end(), found.begin(), found.end());
  }
  if (!faults.empty()) return faults;
  return rules;
}

} // namespace wearline::cli
