#include "law/pack.h"

namespace wearline {

std::string_view name_of(Unit unit) {
  switch (unit) {
  case Unit::business_day:
    return "business-day";
  case Unit::week:
    return "week";
  case Unit::month:
    return "month";
  case Unit::year:
    return "year";
  case Unit::hour:
    return "hour";
  case Unit::calendar_day:
    break;
  }
  return "calendar-day";
}

References references_of(const Pack& pack, const Rule& rule) {
  References out;
  for (const std::uint16_t at : rule.sources) out.push_back(&pack.sources[at]);
  return out;
}

} // namespace wearline
