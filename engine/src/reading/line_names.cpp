#include "reading/line_names.h"

#include <algorithm>

namespace wearline {

namespace {

/// From this confidence on, what the recogniser proposes for a bare line is used (and said); below, the person is
/// asked.
constexpr int sure_enough = 50;

} // namespace

int name_from_text(Line& line, const RecogniserRules& recogniser) {
  if (!line.element.empty() || line.text.empty() || !recogniser.complete() || line.credit == Tri(true)) return 100;
  TextContext context;
  context.amount_known = line.amount.has_value();
  Recognition seen = recognise(line.text, recogniser, context);
  if (seen.not_a_charge || seen.element.empty() || seen.confidence < sure_enough) return 100;
  if (!line.kind.empty() && !seen.kind.empty() && line.kind != seen.kind) return 100; // the person says otherwise
  line.element = std::move(seen.element);
  line.finding = std::move(seen.finding);
  if (line.kind.empty()) line.kind = std::move(seen.kind);
  if (line.place.empty()) line.place = std::move(seen.place);
  return std::min(seen.confidence, 99);
}

Faults add_recogniser_file(RecogniserRules& recogniser, std::string_view name, std::string_view json) {
  return recogniser.add(name, json);
}

} // namespace wearline
