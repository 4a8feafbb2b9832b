// Any bytes as a day and as an uncertain day: what is read lies in order, within the years a case may speak of.

#include "values/calendar.h"

#include <cstdlib>

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* bytes, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(bytes), size);
  if (const auto day = wearline::parse_day(text))
    if (wearline::iso(*day) != text || *day < wearline::min_day || *day > wearline::max_day) std::abort();
  if (const auto span = wearline::parse_day_span(text)) {
    const bool ordered = span->earliest <= span->likely() && span->likely() <= span->latest;
    if (!ordered || span->earliest < wearline::min_day || span->latest > wearline::max_day) std::abort();
  }
  return 0;
}
