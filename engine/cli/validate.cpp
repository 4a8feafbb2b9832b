// wearline validate: whether a folder of rules can be used, and what it holds.

#include "answers.h"
#include "read_input.h"
#include "rules_folder.h"

#include <iostream>
#include <nlohmann/json.hpp>

namespace wearline::cli {

int validate(const Common& o) {
  const std::filesystem::path folder = rules_folder(o.rules);
  const auto rules = load_rules(folder);
  if (const auto* faults = std::get_if<Faults>(&rules)) return refuse(*faults, o.json, {}, o.format);
  const auto known = nlohmann::json::parse(catalogue(std::get<Rulebook>(rules), "en"), nullptr, false);
  nlohmann::json counts = {{"rules", folder.string()}};
  for (const char* list : {"jurisdictions", "elements", "facts", "events", "papers"})
    if (const auto found = known.find(list); found != known.end()) counts[list] = found->size();
  if (o.json) std::cout << counts.dump() << '\n';
  else
    for (const auto& [name, value] : counts.items())
      std::cout << name << ": " << (value.is_string() ? value.get<std::string>() : value.dump()) << '\n';
  return status_ok;
}

} // namespace wearline::cli
