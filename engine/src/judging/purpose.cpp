#include "judging/purpose.h"

#include <algorithm>

namespace wearline {

bool has_purpose(std::string_view kind) { return std::find(purposes.begin(), purposes.end(), kind) != purposes.end(); }

Tri serves(std::string_view kind, const Line& line, const Subject& subject) {
  if (kind == "key") return line.kind == ChargeKind::keys;
  if (kind == "cleaning") return line.kind == ChargeKind::cleaning;
  if (line.cause != ChargeCause::unknown || (subject.element && !subject.element->about_condition))
    return line.cause == ChargeCause::pet;
  if (subject.finding && subject.finding->id.substr(0, 3) == "pet") return true;
  return Tri::unknown;
}

} // namespace wearline
