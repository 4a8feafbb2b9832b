// Reads one case a line on standard input and writes its assessment, a line each: for measures over many cases. A line
// that begins with a name and a tab is judged as if the decision of that name had never been read.

#include "assess/assess.h"
#include "output/render.h"
#include "rulebook/rule_store.h"
#include "rules_folder.h"

#include <iostream>
#include <string>

int main(int argc, char** argv) {
  const auto loaded = wearline::cli::load_rules(wearline::cli::rules_folder({}));
  const auto* rulebook = std::get_if<wearline::Rulebook>(&loaded);
  const auto today = wearline::parse_day(argc > 1 ? argv[1] : "");
  if (!rulebook || !today) return 2;
  std::string line;
  while (std::getline(std::cin, line)) {
    const std::size_t tab = line.find('\t');
    const std::string decision = tab == std::string::npos ? std::string() : line.substr(0, tab);
    auto read = wearline::read_case_for(tab == std::string::npos ? line : line.substr(tab + 1), rulebook->rules());
    if (const auto* faults = std::get_if<wearline::Faults>(&read)) {
      std::cout << wearline::render_faults(*faults, *today, wearline::newest_format) << '\n';
      continue;
    }
    const auto made =
        wearline::assess_case(std::move(std::get<wearline::Case>(read)), rulebook->rules(), *today, decision);
    const std::string answer = wearline::render(*made, rulebook->rules());
    std::cout << wearline::in_older_names(answer, wearline::older_document("assessment")) << '\n';
  }
}
