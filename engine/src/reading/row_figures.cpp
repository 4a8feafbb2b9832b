#include "reading/row_figures.h"

#include <algorithm>

namespace wearline {

namespace {

class FigureFinder {
public:
  FigureFinder(const PaperRow& row, const std::optional<Columns>& columns, SumStyle style, const RecognizerRules& rules)
      : l_(row), columns_(columns), style_(style), rules_(rules) {}

  RowFigures run() const {
    if (columns_) {
      RowFigures p = by_columns();
      if (p.found() || l_.row.tabular) return p;
    }
    if (style_.first)
      if (RowFigures p = by_first(); p.found()) return p;
    return by_shape();
  }

private:
  std::size_t lone(std::size_t cell) const { return lone_number(l_, cell, rules_); }
  const Number& number(std::size_t k) const { return l_.m.numbers[k]; }

  /// Dashes in several cells, or in front of one, stand for "nothing here"; only the one at a sum is its sign.
  bool signs_next(std::size_t cell) const {
    if (l_.row.tabular || cell + 1 >= l_.row.cells.size() || lone(cell + 1) == nowhere) return false;
    if (cell > 0 && is_sign_cell(l_, cell - 1)) return false;
    return l_.row.cells[cell + 1].column - l_.row.cells[cell].column_end <= 8;
  }
  void take_sign(std::size_t cell, RowFigures& p) const {
    const std::string_view t = l_.row.cell(cell);
    if (t[0] == '+') p.plus = true;
    else if (t[0] != '$') p.minus = true;
  }

  /// A row under heads: every number by its column.
  RowFigures by_columns() const {
    RowFigures p;
    p.headed = true;
    if (l_.row.cells.empty()) return p;
    const Columns& c = *columns_;
    std::vector<std::size_t> label;
    std::size_t credit = nowhere, last_money = nowhere, room = nowhere;
    for (std::size_t i = 0; i < l_.row.cells.size(); ++i) {
      if (l_.row.cells[i].start == l_.row.cells[i].end) continue;
      const std::size_t n = lone(i);
      const auto column = column_of(c, l_.row, i);
      const ColumnKind kind = column ? c.columns[*column].kind : ColumnKind::unknown;
      if (is_sign_cell(l_, i)) {
        if (signs_next(i) && column_of(c, l_.row, i + 1) == column) take_sign(i, p);
        continue;
      }
      if (n == nowhere || !can_be_sum(number(n))) {
        if (kind == ColumnKind::room) p.room = std::string(l_.row.cell(i)), room = i;
        else if (kind == ColumnKind::unit) p.unit = std::string(l_.row.cell(i));
        else if (n != nowhere && (kind == ColumnKind::date || kind == ColumnKind::number || kind == ColumnKind::fact))
          continue;
        else if (kind == ColumnKind::text || kind == ColumnKind::unknown || label.empty()) label.push_back(i);
        continue;
      }
      if (column && c.charge && *column == *c.charge) p.number = n;
      else if (column && c.credit && *column == *c.credit) credit = n;
      else if (kind == ColumnKind::balance) p.balance = n;
      else if (kind == ColumnKind::quantity) p.count = number(n).thousandths;
      else if (kind == ColumnKind::rate) p.rate = number(n).money();
      else if (kind == ColumnKind::unknown && is_strong(number(n))) last_money = n;
      else if (kind == ColumnKind::text) label.push_back(i);
      if (is_strong(number(n)) && kind != ColumnKind::rate && kind != ColumnKind::quantity) p.others.push_back(n);
    }
    if (label.empty() && room != nowhere) label.push_back(room), p.room.clear(); // "TOTAL" in the column of rooms
    describe_by_cells(l_, p, label);
    if (!p.found() && credit != nowhere) p.number = credit, p.credit_column = true;
    if (!p.found() && p.balance != nowhere) p.number = p.balance, p.balance_only = true;
    if (!p.found() && last_money != nowhere) p.number = last_money;
    return p;
  }

  bool is_measure(const Number& n) const {
    if (n.currency) return false;
    for (const Mention& m : l_.m.charge)
      if (m.first == n.last + 1u && is_unit(m) && rules_.charges().at(m.concept_id).id != "unit:each") return true;
    return false;
  }
  bool is_unit(const Mention& m) const { return rules_.charges().at(m.concept_id).id.compare(0, 5, "unit:") == 0; }

  bool acceptable(const Number& n, bool apart) const {
    if (!can_be_sum(n) || is_measure(n)) return false;
    if (is_strong(n)) return true;
    if (n.thousandths == 0) return false;
    return apart || style_.bare;
  }

  /// "4  each  22.00  88.00": a unit between numbers does not end them.
  bool unit_cell(std::size_t cell, const std::vector<std::size_t>& numbers) const {
    if (numbers.empty() || l_.row.cells[cell].end - l_.row.cells[cell].start > 8 || cell == 0) return false;
    const std::size_t t = token_at(l_.m, l_.row.cells[cell].start);
    return std::any_of(l_.m.charge.begin(), l_.m.charge.end(),
                       [&](const Mention& m) { return m.first == t && is_unit(m); }) &&
           lone(cell - 1) != nowhere;
  }

  /// A first cell that is only a date or a number of the line.
  bool is_marginal(std::size_t cell) const {
    const std::size_t n = lone(cell);
    return n != nowhere &&
           (number(n).kind == NumberKind::date || (number(n).whole && number(n).thousandths < 1'000'000));
  }

  /// A row that begins with its sum, where the paper's rows do.
  RowFigures by_first() const {
    RowFigures p;
    if (l_.m.numbers.empty()) return p;
    const Number& n = number(0);
    const std::size_t after = n.last + 1u;
    if (after < l_.m.tokens.size() && l_.m.tokens[after].glued) return p; // "3B Wicklow St"
    if (!can_be_sum(n) || n.rate || has_words(l_, 0, n.first, rules_) ||
        !has_words(l_, after, l_.m.tokens.size(), rules_))
      return p;
    p.number = 0;
    p.minus = n.first > 0 && l_.m.tokens[n.first - 1u].is('-');
    p.plus = n.first > 0 && l_.m.tokens[n.first - 1u].is('+');
    p.label_first = p.tail_first = after;
    p.label_last = l_.m.tokens.size();
    p.text.emplace_back(l_.m.tokens[n.last].end, static_cast<std::uint32_t>(l_.row.text.size()));
    return p;
  }

  /// A row without heads: the numbers at its end, in cells of their own or after the words.
  RowFigures by_shape() const {
    RowFigures p;
    const std::size_t cells = l_.row.cells.size();
    std::size_t first_number = cells;
    std::vector<std::size_t> numbers;
    while (first_number > 0) {
      const std::size_t c = first_number - 1;
      const std::size_t n = lone(c);
      if (n != nowhere && can_be_sum(number(n))) numbers.insert(numbers.begin(), n);
      else if (!is_sign_cell(l_, c) && l_.row.cells[c].start != l_.row.cells[c].end &&
               !(n != nowhere && number(n).kind == NumberKind::percent && !numbers.empty()) && !unit_cell(c, numbers))
        break;
      --first_number;
    }
    if (numbers.empty() || !acceptable(number(numbers.back()), first_number > 0)) return by_words();
    p.number = numbers.back();
    if (numbers.size() == 1 && number(p.number).after_equals) take_step(p, p.number);
    if (numbers.size() >= 2)
      for (const std::size_t n : numbers)
        if (is_strong(number(n)) || style_.bare) p.others.push_back(n);
    std::vector<std::size_t> label;
    for (std::size_t c = 0; c < first_number; ++c)
      if (!(c == 0 && first_number > 1 && is_marginal(c)) && l_.row.cells[c].end > l_.row.cells[c].start)
        label.push_back(c);
    describe_by_cells(l_, p, label);
    for (std::size_t c = first_number; c + 1 < cells; ++c)
      if (is_sign_cell(l_, c) && signs_next(c) && lone(c + 1) == p.number) take_sign(c, p);
    return p;
  }

  RowFigures by_words() const {
    RowFigures p;
    std::size_t pick = nowhere;
    for (std::size_t k = l_.m.numbers.size(); k-- > 0;) {
      const Number& n = number(k);
      if (in_remark(n)) continue; // "$1,050.00 (two checks of $525.00)"
      if ((ends_row(l_, n, rules_) || ends_before_remark(n)) && acceptable(n, after_divider(n)) && !n.rate &&
          !priced_by(k)) {
        pick = k;
        break;
      }
    }
    if (pick == nowhere && !l_.m.numbers.empty() && begins_row(l_.m.numbers.front())) pick = 0;
    if (pick == nowhere) pick = only_sum_inside();
    if (pick == nowhere) return p;
    const Number& n = number(pick);
    p.number = pick;
    if (n.after_equals) take_step(p, pick);
    p.label_first = token_at(l_.m, l_.row.body);
    p.label_last = n.first;
    p.tail_first = n.last + 1u;
    const std::uint32_t to = n.first < l_.m.tokens.size() ? l_.m.tokens[n.first].start : 0;
    if (to > l_.row.body) p.text.emplace_back(l_.row.body, to);
    if (!ends_row(l_, n, rules_))
      p.text.emplace_back(l_.m.tokens[n.last].end, static_cast<std::uint32_t>(l_.row.text.size()));
    if (p.label_last <= p.label_first || !has_words(l_, p.label_first, p.label_last, rules_))
      p.label_first = p.tail_first, p.label_last = l_.m.tokens.size();
    return p;
  }

  /// "less 85 for the stove top = 1115": what is taken off, and what is then left.
  void take_step(RowFigures& p, std::size_t rest) const {
    std::size_t step = nowhere;
    for (std::size_t k = 0; k < rest; ++k) {
      if (!can_be_sum(number(k)) || number(k).rate) continue;
      if (step != nowhere) return;
      step = k;
    }
    if (step != nowhere) p.others = {step, rest};
  }

  bool begins_row(const Number& n) const { return !has_words(l_, 0, n.first, rules_) && is_strong(n) && !n.rate; }
  std::size_t only_sum_inside() const {
    std::size_t strong = 0, pick = nowhere;
    for (std::size_t k = 0; k < l_.m.numbers.size(); ++k)
      if (is_strong(number(k)) && acceptable(number(k), true) && !number(k).rate && !priced_by(k)) ++strong, pick = k;
    return strong == 1 ? pick : nowhere;
  }

  /// Inside brackets that hold words too.
  bool in_remark(const Number& n) const {
    std::size_t open = nowhere;
    for (std::size_t t = 0; t < n.first; ++t) {
      if (l_.m.tokens[t].is('(')) open = t;
      if (l_.m.tokens[t].is(')')) open = nowhere;
    }
    if (open == nowhere || open == 0) return false;
    for (std::size_t t = open + 1; t < l_.m.tokens.size() && !l_.m.tokens[t].is(')'); ++t)
      if (l_.m.tokens[t].word() && !is_closing_mark(l_.m.tokens[t], rules_)) return true;
    return false;
  }
  /// Nothing but a remark in brackets after the number.
  bool ends_before_remark(const Number& n) const {
    const std::size_t t = n.last + 1u;
    if (t >= l_.m.tokens.size() || !l_.m.tokens[t].is('(')) return false;
    return l_.m.tokens.back().is(')') || l_.row.text.back() == ')';
  }

  /// "6 x 6.00": the price of a count.
  bool priced_by(std::size_t k) const {
    const Number& n = number(k);
    return k > 0 && n.first > 0 && l_.m.tokens[n.first - 1u].text == "x" && number(k - 1).last + 2u == n.first;
  }

  bool after_divider(const Number& n) const {
    if (n.first == 0) return false;
    const Token& t = l_.m.tokens[n.first - 1u];
    return t.is(':') || t.is('=') || (t.is('-') && !t.glued) || t.is('>');
  }

  const PaperRow& l_;
  const std::optional<Columns>& columns_;
  SumStyle style_;
  const RecognizerRules& rules_;
};

} // namespace

std::size_t lone_number(const PaperRow& l, std::size_t cell, const RecognizerRules& rules) {
  const Cell& c = l.row.cells[cell];
  const std::size_t first = token_at(l.m, c.start), last = token_at(l.m, c.end);
  for (std::size_t k = 0; k < l.m.numbers.size(); ++k) {
    const Number& n = l.m.numbers[k];
    if (n.last < first || n.first >= last) continue;
    for (std::size_t t = first; t < last; ++t)
      if ((t < n.first || t > n.last) && !is_closing_mark(l.m.tokens[t], rules)) return nowhere;
    return k;
  }
  return nowhere;
}

bool is_sign_cell(const PaperRow& l, std::size_t cell) {
  const std::string_view t = l.row.cell(cell);
  return t == "-" || t == "+" || t == "$" || t == "\xE2\x80\x93" || t == "\xE2\x88\x92" || t == "- $" || t == "+ $" ||
         t == "-$" || t == "+$";
}

bool has_words(const PaperRow& l, std::size_t first, std::size_t last, const RecognizerRules& rules) {
  for (std::size_t t = first; t < last; ++t)
    if (l.m.tokens[t].word() && !is_closing_mark(l.m.tokens[t], rules)) return true;
  return false;
}

std::string description_of(const PaperRow& l, const RowFigures& p) {
  std::string out;
  for (const auto& [start, end] : p.text) append_piece(out, std::string_view(l.row.text).substr(start, end - start));
  return out;
}

void append_piece(std::string& out, std::string_view piece) {
  while (!piece.empty() && std::string_view(" \t:;,-=.").find(piece.back()) != std::string_view::npos &&
         !(piece.back() == '.' && piece.size() > 1 && piece[piece.size() - 2] != '.' && piece[piece.size() - 2] != ' '))
    piece.remove_suffix(1);
  while (!piece.empty() && (piece.front() == ' ' || piece.front() == '\t' || piece.front() == ':' ||
                            piece.front() == '-' || piece.front() == '='))
    piece.remove_prefix(1);
  if (piece.empty()) return;
  if (!out.empty()) out += ' ';
  out += piece;
}

void describe_by_cells(const PaperRow& l, RowFigures& p, const std::vector<std::size_t>& cells) {
  p.label_first = l.m.tokens.size();
  p.label_last = 0;
  for (const std::size_t c : cells) {
    const Cell& cell = l.row.cells[c];
    p.text.emplace_back(cell.start, cell.end);
    p.label_first = std::min(p.label_first, token_at(l.m, cell.start));
    p.label_last = std::max(p.label_last, token_at(l.m, cell.end));
  }
  if (p.label_first > p.label_last) p.label_first = p.label_last = 0;
  p.tail_first = l.m.tokens.size();
}

RowFigures figures_of(const PaperRow& row, const std::optional<Columns>& columns, SumStyle style,
                      const RecognizerRules& rules) {
  return FigureFinder(row, columns, style, rules).run();
}

} // namespace wearline
