// Reads one case a line on standard input and writes the codes of its faults, or "ok", a line each: for checks that
// compare the reader with the published schema.

#include "case/case_reader.h"
#include "rulebook/rule_store.h"
#include "rules_folder.h"

#include <iostream>
#include <string>

int main() {
  const auto loaded = wearline::cli::load_rules(wearline::cli::rules_folder({}));
  const auto* rulebook = std::get_if<wearline::Rulebook>(&loaded);
  if (!rulebook) return 2;
  std::string line;
  while (std::getline(std::cin, line)) {
    const auto read = wearline::read_case(line, rulebook->rules().names);
    if (const auto* faults = std::get_if<wearline::Faults>(&read)) {
      for (const auto& fault : *faults) std::cout << fault.code << '@' << fault.at << ' ';
      std::cout << '\n';
    } else {
      std::cout << "ok\n";
    }
  }
}
