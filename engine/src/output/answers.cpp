#include "output/answers.h"

#include "assess/assess.h"
#include "case/case_reader.h"
#include "format/older_names.h"
#include "output/render.h"

namespace wearline {

int answer_format(std::string_view case_json, int otherwise) {
  const int format = case_format(case_json);
  return format >= oldest_format && format <= newest_format ? format : otherwise;
}

std::string assess_newest(std::string_view case_json, const Rulebook& rulebook, std::string_view today) {
  if (const Faults faults = check_text(case_json); !faults.empty()) return errors_json(faults, newest_format);
  const auto day = read_today(today);
  if (const Faults* faults = std::get_if<Faults>(&day)) return errors_json(*faults, newest_format);
  auto read = read_case_for(case_json, rulebook.rules());
  if (const auto* faults = std::get_if<Faults>(&read)) return render_faults(*faults, std::get<Day>(day), newest_format);
  const auto made = assess_case(std::move(std::get<Case>(read)), rulebook.rules(), std::get<Day>(day));
  return render(*made, rulebook.rules());
}

std::string assess(std::string_view case_json, const Rulebook& rulebook, Day today, int otherwise) {
  const Rules& rules = rulebook.rules();
  auto read = read_case_for(case_json, rules);
  if (const auto* faults = std::get_if<Faults>(&read))
    return render_faults(*faults, today, answer_format(case_json, otherwise));
  Case& c = std::get<Case>(read);
  const bool older = c.format == oldest_format;
  std::string answer = render(*assess_case(std::move(c), rules, today), rules);
  return older ? in_older_names(answer, older_document("assessment")) : answer;
}

} // namespace wearline
