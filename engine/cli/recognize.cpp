// wearline recognize: one description a line on standard input, what each is for on standard output.

#include "answers.h"
#include "output/reading.h"
#include "read_input.h"
#include "rules_folder.h"
#include "wearline/engine.h"

#include <iostream>

namespace wearline::cli {

namespace {

/// "damage  carpet / stains  living room  3 room  $420.00  97 %"
std::string plain_line(const Recognition& r) {
  if (r.not_a_charge) return "no charge" + (r.amount ? "  " + r.amount->grouped() : std::string());
  std::string out = std::string(name_of(r.kind)) + "  " + (r.element.empty() ? "?" : r.element) + " / " +
                    (r.finding.empty() ? "-" : r.finding);
  if (!r.place.empty()) out += "  " + r.place;
  if (r.quantity) out += "  " + plain_thousandths(r.quantity->thousandths) + " " + r.quantity->unit;
  if (r.amount) out += "  " + r.amount->grouped();
  return out + "  " + std::to_string(r.confidence) + " %";
}

} // namespace

int recognize(const Common& o) {
  const auto rules = load_recognizer(rules_folder(o.rules));
  if (const auto* faults = std::get_if<Faults>(&rules)) return refuse(*faults, false);
  std::string line;
  while (std::getline(std::cin, line)) {
    if (!line.empty() && line.back() == '\r') line.pop_back();
    if (const Faults faults = check_text(line); !faults.empty()) return refuse(faults, false);
    const auto& known = std::get<RecognizerRules>(rules);
    std::cout << (o.json ? recognize_text(line, known, o.format) : plain_line(recognize(line, known))) << '\n';
  }
  return status_ok;
}

} // namespace wearline::cli
