#pragma once
// Dates and ages as words give them, written as a case writes uncertain dates and ages.

#include "reading/fact_rules.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace wearline {

/// The date at an item, with what the words around make of it: "2019", "2019-06", "2019~", "2014/2016", "../2015",
/// "1970/1979". Empty where it names no year.
std::string fact_date(const std::vector<FactItem>& items, std::size_t at, const FactRules& rules);

/// One end of a span of days, "2024-08-01", with what only the other end names: "August 1 to 6, 2024". `year` is the
/// span's own where it is not 0; `begins` for the first end. Empty without a year or for a day that does not exist.
std::string fact_span_end(const FactItem& item, const FactItem& other, int year, bool begins);

/// The age at an item in years: "5", "1.5", "5~", "7/..", "../3", "5/6". `more`: what is to be
/// added, in thousandths of a year. `unit`: what the
/// number counts: "years", "months", "weeks" or "decades".
std::string fact_age(const std::vector<FactItem>& items, std::size_t at, const FactRules& rules, std::int64_t more,
                     std::string_view unit);

} // namespace wearline
