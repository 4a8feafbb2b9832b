#include "answers.h"

#include "commands.h"
#include "read_input.h"
#include "wearline/guard.h"

#include <ctime>
#include <iostream>
#include <nlohmann/json.hpp>

namespace wearline::cli {

std::string local_date() {
  const std::time_t now = std::time(nullptr);
  std::tm parts{};
  localtime_r(&now, &parts);
  char text[16];
  return {text, std::strftime(text, sizeof text, "%Y-%m-%d", &parts)};
}

int refuse(const Faults& faults, bool json) {
  if (json) std::cout << errors_json(faults) << '\n';
  else print_faults(faults);
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

} // namespace wearline::cli
