#include "values/reference.h"

#include <algorithm>

namespace wearline {

Nearness nearness(const Reference& source, std::string_view place) {
  const std::string_view region = source.region;
  const bool inside =
      place.substr(0, region.size()) == region && (place.size() == region.size() || place[region.size()] == '-');
  if (region.empty() || region == "*" || place.empty() || source.read == "practice" || inside) return Nearness::here;
  return region.substr(0, 2) == place.substr(0, 2) ? Nearness::same_country : Nearness::abroad;
}

References nearest_first(References sources, std::string_view place) {
  std::stable_sort(sources.begin(), sources.end(),
                   [&](const Reference* a, const Reference* b) { return nearness(*a, place) < nearness(*b, place); });
  return sources;
}

} // namespace wearline
