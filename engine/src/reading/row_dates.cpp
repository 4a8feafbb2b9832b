#include "reading/row_dates.h"

#include "reading/row_words.h"

#include <algorithm>

namespace wearline {

namespace {

DateKind date_kind(std::string_view id) {
  if (id == "date:statement") return DateKind::statement;
  if (id == "date:sent") return DateKind::sent;
  if (id == "date:move-out") return DateKind::move_out;
  if (id == "date:move-in") return DateKind::move_in;
  if (id == "date:due") return DateKind::due;
  if (id == "date:inspected") return DateKind::inspected;
  return DateKind::unknown;
}

} // namespace

TextPlace place_in(const PaperRow& l, std::uint32_t start, std::uint32_t end) {
  return {l.row.line, l.row.offset + start, l.row.offset + end};
}

TextPlace place_in(const PaperRow& l, const Number& n) {
  return place_in(l, l.m.tokens[n.first].start, l.m.tokens[n.last].end);
}

TextPlace place_in(const PaperRow& l) { return place_in(l, l.row.body, static_cast<std::uint32_t>(l.row.text.size())); }

bool take_dates(const PaperRow& l, bool in_table, const RecognizerRules& rules, std::vector<ReadDate>& out) {
  bool any = false;
  std::size_t from = 0;
  // Beside a sum it is the money that was sent.
  const bool sum = std::any_of(l.m.numbers.begin(), l.m.numbers.end(), is_strong);
  for (const Number& n : l.m.numbers) {
    if (n.kind != NumberKind::date) continue;
    const auto day = civil_day(n.day);
    if (!day) continue;
    DateKind kind = DateKind::unknown;
    for (const Mention& m : l.m.statement)
      if (m.first >= from && m.last < n.first && m.match == Match::exact &&
          date_kind(rules.statement().at(m.concept_id).id) != DateKind::unknown)
        kind = date_kind(rules.statement().at(m.concept_id).id);
    if (kind == DateKind::sent && sum) kind = DateKind::unknown;
    if (kind == DateKind::unknown && mentions_word(l, rules, "st:deposit")) kind = DateKind::deposit_paid;
    const std::size_t body = token_at(l.m, l.row.body);
    if (kind == DateKind::unknown && !in_table && (n.first <= body || (n.first <= body + 3 && ends_row(l, n, rules))))
      kind = DateKind::statement;
    out.push_back({kind, *day, place_in(l, n)});
    any = true;
    from = n.last + 1u;
  }
  return any;
}

} // namespace wearline
