#include "case/case.h"
#include "values/ascii.h"

#include <algorithm>

namespace wearline {

namespace {

/// Years with at most three decimals as thousandths.
std::optional<std::int64_t> years(std::string_view text) {
  std::int64_t whole = 0, part = 0;
  std::size_t at = 0, places = 0;
  for (; at < text.size() && is_digit(text[at]); ++at) {
    if (at == 3) return std::nullopt;
    whole = whole * 10 + (text[at] - '0');
  }
  if (at == 0 || (at == 3 && text[0] == '0')) return std::nullopt;
  if (at + 1 < text.size() && text[at] == '.')
    for (++at; at < text.size() && is_digit(text[at]) && places < 3; ++at, ++places)
      part = part * 10 + (text[at] - '0');
  if (at != text.size() || whole > 200) return std::nullopt;
  for (; places < 3; ++places) part *= 10;
  return whole * 1000 + part;
}

constexpr Months half_a_year(6), a_year = Years(1).in_months();

} // namespace

std::optional<AgeSpan> age_span(std::string_view text) {
  if (const std::size_t slash = text.find('/'); slash != std::string_view::npos) {
    const std::string_view from = text.substr(0, slash), to = text.substr(slash + 1);
    if (from == ".." && to == "..") return std::nullopt;
    const auto least = from == ".." ? std::optional<std::int64_t>(0) : years(from);
    if (!least) return std::nullopt;
    const Months low = months_of_years(*least);
    if (to == "..") return AgeSpan{low, low, std::nullopt};
    const auto most = years(to);
    if (!most || *most < *least) return std::nullopt;
    const Months high = months_of_years(*most);
    return AgeSpan{low, from == ".." ? high : Months((low + high).count() / 2), high};
  }
  const bool about = !text.empty() && text.back() == '~';
  if (about) text.remove_suffix(1);
  const auto value = years(text);
  if (!value) return std::nullopt;
  const Months likely = months_of_years(*value), slack = about ? a_year : half_a_year;
  return AgeSpan{std::max(Months(), likely - slack), likely, likely + slack};
}

std::string plain_thousandths(std::int64_t thousandths) {
  std::string out = std::to_string(thousandths / 1000);
  std::string rest = std::to_string(1000 + thousandths % 1000).substr(1);
  while (!rest.empty() && rest.back() == '0') rest.pop_back();
  return rest.empty() ? out : out + "." + rest;
}

const NameSet& word_fact_names() {
  static const NameSet names = [] {
    NameSet set;
    for (const std::string_view name : {"installed",
                                        "ageYears",
                                        "ageYearsAtMoveIn",
                                        "conditionAtMoveIn",
                                        "cause",
                                        "severity",
                                        "count",
                                        "chargedQuantity",
                                        "damagedQuantity",
                                        "landlordFactors",
                                        "costComponents",
                                        "remedy",
                                        "betterment",
                                        "repairCost",
                                        "replacementCost",
                                        "usefulLifeYears",
                                        "credit",
                                        "supportingDocuments",
                                        "missingDocuments",
                                        "onMoveOutRecord",
                                        "inLease",
                                        "workDone",
                                        "hours",
                                        "hourlyRate",
                                        "periodStart",
                                        "periodEnd",
                                        "reletOn"})
      set.add(name);
    return set;
  }();
  return names;
}

Tri told(const Case& c, std::string_view fact) {
  const auto found = c.circumstances.find(std::string(fact));
  const bool* yes = found == c.circumstances.end() ? nullptr : std::get_if<bool>(&found->second);
  return yes ? Tri(*yes) : Tri::unknown;
}

} // namespace wearline
