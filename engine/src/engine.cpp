#include "wearline/engine.h"

#include "output/answers.h"
#include "output/reading.h"
#include "rulebook/rule_store.h"

namespace wearline {

std::string assess_text(std::string_view case_json, const Rulebook& rulebook, std::string_view today, int otherwise) {
  if (const Faults faults = check_text(case_json); !faults.empty()) return errors_json(faults, otherwise);
  const auto day = read_today(today);
  if (const Faults* faults = std::get_if<Faults>(&day))
    return errors_json(*faults, answer_format(case_json, otherwise));
  return assess(case_json, rulebook, std::get<Day>(day), otherwise);
}

std::string letter_text(std::string_view case_json, const Rulebook& rulebook, std::string_view today,
                        std::string_view options, int otherwise) {
  for (const std::string_view text : {case_json, options})
    if (const Faults faults = check_text(text); !faults.empty()) return errors_json(faults, otherwise);
  const auto day = read_today(today);
  if (const Faults* faults = std::get_if<Faults>(&day))
    return errors_json(*faults, answer_format(case_json, otherwise));
  return letter(case_json, rulebook, std::get<Day>(day), options, otherwise);
}

std::string read_statement_text(std::string_view text, const Rulebook& rulebook, std::string_view language,
                                int format) {
  if (const Faults faults = check_text(text); !faults.empty()) return errors_json(faults, format);
  const Rules& rules = rulebook.rules();
  return read_statement(text, rules.recognizer, rules.words(language), {}, format);
}

} // namespace wearline
