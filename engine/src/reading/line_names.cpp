#include "reading/line_names.h"

#include "reading/line_fields.h"

#include <algorithm>

namespace wearline {

namespace {

/// From this confidence on, what the recognizer proposes for a bare line is used (and said). Measured on lines it never
/// saw, one in three is right from 30 to 49 and one in two just above (tests/reference/facts.md): those are judged over
/// their other readings too.
constexpr int sure_enough = 30;

int name_from(Line& line, Recognition& seen) {
  if (!line.element.empty() || seen.not_a_charge || seen.element.empty() || seen.confidence < sure_enough) return 100;
  if (line.kind != ChargeKind::unknown && seen.kind != ChargeKind::unknown && line.kind != seen.kind)
    return 100; // the person says otherwise
  line.element = std::move(seen.element);
  line.finding = std::move(seen.finding);
  if (line.kind == ChargeKind::unknown) line.kind = seen.kind;
  if (line.place.empty()) line.place = std::move(seen.place);
  return std::min(seen.confidence, 99);
}

} // namespace

FromWords fill_from_text(Line& line, const RecognizerRules& recognizer) {
  FromWords out;
  if (line.text.empty() || !recognizer.complete() || line.credit == Tri::yes) return out;
  TextContext context;
  context.amount_known = line.amount.has_value();
  context.amount = line.amount;
  Recognition seen = recognize(line.text, recognizer, context);
  out.harm_named = seen.harm_named && !seen.not_a_charge;
  out.confidence = name_from(line, seen);
  if (out.unsure()) out.also = std::move(seen.alternatives);
  for (WordFact& fact : seen.facts) {
    const auto& struck = line.not_from_words;
    if (std::find(struck.begin(), struck.end(), fact.field) != struck.end()) continue;
    switch (fill_field(line, fact, seen.facts)) {
    case Filled::yes:
      out.used.push_back(fact);
      break;
    case Filled::otherwise:
      out.against.push_back(fact);
      break;
    case Filled::no:
      break;
    }
  }
  return out;
}

Faults add_recognizer_file(RecognizerRules& recognizer, std::string_view name, std::string_view json) {
  return recognizer.add(name, json);
}

} // namespace wearline
