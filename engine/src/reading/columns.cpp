#include "reading/columns.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace wearline {

namespace {

/// In order of precedence where a head fits several ("charge" is a sum before it is a description).
constexpr std::array<std::pair<std::string_view, ColumnKind>, 13> kinds = {
    {{"col:share", ColumnKind::share},
     {"col:balance", ColumnKind::balance},
     {"col:other-money", ColumnKind::other_money},
     {"col:rate", ColumnKind::rate},
     {"col:fact", ColumnKind::fact},
     {"col:qty", ColumnKind::quantity},
     {"col:unit", ColumnKind::unit},
     {"col:credit", ColumnKind::credit},
     {"col:amount", ColumnKind::amount},
     {"col:date", ColumnKind::date},
     {"col:room", ColumnKind::room},
     {"col:text", ColumnKind::text},
     {"col:number", ColumnKind::number}}};

struct Head {
  ColumnKind kind = ColumnKind::unknown;
  std::size_t words = 0, known = 0;
};

/// What the tokens from byte `start` to `end` head: the kind of the longest known term among them.
Head head_of(const MarkedText& m, const RecognizerRules& rules, std::uint32_t start, std::uint32_t end) {
  Head head;
  std::vector<bool> known(m.tokens.size(), false);
  std::size_t longest = 0;
  std::size_t rank = kinds.size();
  for (const Mention& mention : m.statement) {
    if (m.tokens[mention.first].start < start || m.tokens[mention.last].end > end || mention.match == Match::shortened)
      continue;
    const std::string& id = rules.statement().at(mention.concept_id).id;
    const auto found = std::find_if(kinds.begin(), kinds.end(), [&](const auto& k) { return k.first == id; });
    if (found == kinds.end()) continue;
    for (std::size_t i = mention.first; i <= mention.last; ++i) known[i] = true;
    const std::size_t length = mention.last - mention.first + 1u;
    const auto here = static_cast<std::size_t>(found - kinds.begin());
    if (length < longest || (length == longest && here >= rank)) continue;
    longest = length;
    rank = here;
    head.kind = found->second;
  }
  for (std::size_t i = 0; i < m.tokens.size(); ++i) {
    if (m.tokens[i].start < start || m.tokens[i].end > end || !m.tokens[i].word()) continue;
    ++head.words;
    head.known += known[i];
  }
  return head;
}

bool is_money(ColumnKind k) {
  return k == ColumnKind::amount || k == ColumnKind::share || k == ColumnKind::credit || k == ColumnKind::balance ||
         k == ColumnKind::rate || k == ColumnKind::other_money;
}

void choose_charge(Columns& c) {
  for (std::size_t i = 0; i < c.columns.size(); ++i) {
    if (c.columns[i].kind == ColumnKind::credit) c.credit = i;
    if (c.columns[i].kind == ColumnKind::amount && !(c.charge && c.columns[*c.charge].kind == ColumnKind::share))
      c.charge = i;
    if (c.columns[i].kind == ColumnKind::share) c.charge = i;
  }
  if (c.charge) return;
  for (std::size_t i = 0; i < c.columns.size(); ++i)
    if (c.columns[i].kind == ColumnKind::rate || c.columns[i].kind == ColumnKind::other_money) c.charge = i;
}

/// "Date Description Amount" with single blanks: each known term is a head.
std::vector<Cell> heads_by_words(const Row& row, const MarkedText& m, const RecognizerRules& rules) {
  std::vector<Cell> cells;
  for (const Mention& mention : m.statement) {
    const std::string& id = rules.statement().at(mention.concept_id).id;
    if (id.compare(0, 4, "col:") != 0) continue;
    Cell c;
    c.start = m.tokens[mention.first].start;
    c.end = m.tokens[mention.last].end;
    c.column = screen_column(row.text, c.start);
    c.column_end = screen_column(row.text, c.end);
    if (cells.empty() || cells.back().start != c.start) cells.push_back(c);
  }
  return cells;
}

} // namespace

std::optional<Columns> read_heads(const Row& row, const MarkedText& m, const RecognizerRules& rules) {
  if (row.blank || row.rule || row.bulleted) return std::nullopt;
  for (const Number& n : m.numbers)
    if (n.kind == NumberKind::money || n.kind == NumberKind::date || n.kind == NumberKind::plain) return std::nullopt;
  Columns out;
  out.tabular = row.tabular;
  std::size_t words = 0, known = 0, heads = 0, money = 0;
  const bool spaced = row.cells.size() >= 2;
  const std::vector<Cell> cells = spaced ? row.cells : heads_by_words(row, m, rules);
  for (const Cell& cell : cells) {
    const Head head = head_of(m, rules, cell.start, cell.end);
    words += head.words;
    known += head.known;
    heads += head.kind != ColumnKind::unknown;
    money += is_money(head.kind);
    out.columns.push_back({head.kind, cell.column, cell.column_end});
  }
  if (!spaced)
    words = static_cast<std::size_t>(
        std::count_if(m.tokens.begin(), m.tokens.end(), [](const Token& t) { return t.word(); }));
  if (heads < 2 || money == 0 || known * 3 < words * 2) return std::nullopt;
  if (!spaced && (heads < 3 || known < words)) return std::nullopt;
  choose_charge(out);
  return out;
}

std::optional<std::size_t> column_of(const Columns& c, const Row& row, std::size_t cell) {
  if (c.tabular && row.tabular) return cell < c.columns.size() ? std::optional<std::size_t>(cell) : std::nullopt;
  const Cell& here = row.cells[cell];
  std::optional<std::size_t> best;
  std::int64_t best_overlap = 0;
  for (std::size_t i = 0; i < c.columns.size(); ++i) {
    const std::int64_t overlap = std::min<std::int64_t>(c.columns[i].end, here.column_end) -
                                 std::max<std::int64_t>(c.columns[i].start, here.column);
    if (overlap > best_overlap) best = i, best_overlap = overlap;
  }
  if (best) return best;
  std::int64_t nearest = 12; // further from every head than this belongs to none
  for (std::size_t i = 0; i < c.columns.size(); ++i) {
    const std::int64_t gap = std::min(std::abs(static_cast<std::int64_t>(c.columns[i].end) - here.column_end),
                                      std::abs(static_cast<std::int64_t>(c.columns[i].start) - here.column));
    if (gap < nearest) best = i, nearest = gap;
  }
  return best;
}

} // namespace wearline
