// wearline recognise [--json]: one description a line on standard input, what each is for on standard output.

#include "commands.h"
#include "output/reading.h"
#include "read_input.h"
#include "rules_folder.h"
#include "wearline/guard.h"

#include <iostream>
#include <memory>

namespace wearline::cli {

namespace {

struct Options {
  std::filesystem::path rules;
  bool json = false;
};

/// "damage  carpet / stains  living room  3 room  $420.00  97 %"
std::string plain_line(const Recognition& r) {
  if (r.not_a_charge) return "no charge" + (r.amount ? "  " + r.amount->grouped() : std::string());
  std::string out =
      r.kind + "  " + (r.element.empty() ? "?" : r.element) + " / " + (r.finding.empty() ? "-" : r.finding);
  if (!r.place.empty()) out += "  " + r.place;
  if (r.quantity) out += "  " + plain_count(r.quantity->thousandths) + " " + r.quantity->unit;
  if (r.amount) out += "  " + r.amount->grouped();
  return out + "  " + std::to_string(r.confidence) + " %";
}

int recognise_lines_of_input(const Options& o) {
  const auto rules = load_recogniser(rules_folder(o.rules));
  if (const auto* faults = std::get_if<Faults>(&rules)) {
    print_faults(*faults);
    return status_errors;
  }
  std::string line;
  while (std::getline(std::cin, line)) {
    if (!line.empty() && line.back() == '\r') line.pop_back();
    if (const Faults faults = check_text(line); !faults.empty()) {
      print_faults(faults);
      return status_errors;
    }
    const auto& known = std::get<RecogniserRules>(rules);
    std::cout << (o.json ? recognise_text(line, known) : plain_line(recognise(line, known))) << '\n';
  }
  return status_ok;
}

} // namespace

void add_recognise(CLI::App& program, int& status) {
  auto* command =
      program.add_subcommand("recognise", "Say what charges are for: one description a line on standard input");
  auto options = std::make_shared<Options>();
  command->add_flag("--json", options->json, "print one JSON record a line");
  command->add_option("--rules", options->rules, "the folder of rules to use");
  command->callback([options, &status] { status = recognise_lines_of_input(*options); });
}

} // namespace wearline::cli
