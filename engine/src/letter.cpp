#include "wearline/engine.h"

#include "assess.h"
#include "json_out.h"

namespace wearline {

// The letter module replaces this: until then the page is told plainly that there is none.
std::string letter(std::string_view case_json, const Rulebook& rulebook, Day today, std::string_view) {
  const auto read = read_case(case_json, rulebook.rules().names);
  if (const auto* faults = std::get_if<Faults>(&read)) return render_faults(*faults, today);
  return render_faults({{"no-letter", "", "Letters are not written yet.", ""}}, today);
}

} // namespace wearline
