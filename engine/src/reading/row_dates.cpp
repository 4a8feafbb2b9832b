#include "reading/row_dates.h"

#include <algorithm>

namespace wearline {

DateKind date_kind(const Mention& mention, const RecognizerRules& rules) {
  const std::string_view id = rules.statement().at(mention.concept_id).id;
  if (id == "date:statement") return DateKind::statement;
  if (id == "date:sent") return DateKind::sent;
  if (id == "date:move-out") return DateKind::move_out;
  if (id == "date:lease-ended") return DateKind::lease_ended;
  if (id == "date:other") return DateKind::other;
  if (id == "date:move-in") return DateKind::move_in;
  if (id == "date:due") return DateKind::due;
  if (id == "date:inspected") return DateKind::inspected;
  return DateKind::unknown;
}

TextPlace place_in(const PaperRow& l, std::uint32_t start, std::uint32_t end) {
  return {l.row.line, l.row.offset + start, l.row.offset + end};
}

TextPlace place_in(const PaperRow& l, const Number& n) {
  return place_in(l, l.m.tokens[n.first].start, l.m.tokens[n.last].end);
}

TextPlace place_in(const PaperRow& l) { return place_in(l, l.row.body, static_cast<std::uint32_t>(l.row.text.size())); }

bool reaches(const MarkedText& text, const Mention& m, const Number& date) {
  if (m.first != m.last || text.tokens[m.first].text.size() > 3) return true;
  return m.last < date.first ? date.first - m.last <= 2 : m.first - date.last <= 2;
}

bool names_day(const PaperRow& l) {
  return std::any_of(l.m.numbers.begin(), l.m.numbers.end(),
                     [](const Number& n) { return n.kind == NumberKind::date && civil_day(n.day).has_value(); });
}

} // namespace wearline
