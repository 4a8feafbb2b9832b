#include "reading/list_rows.h"

#include "reading/columns.h"
#include "reading/prose.h"
#include "reading/reading_weights.h"
#include "reading/row_figures.h"

#include <algorithm>
#include <array>
#include <utility>

namespace wearline {

namespace {

Money size_of(Money m) { return m < Money{} ? Money{} - m : m; }

class ListReader {
public:
  ListReader(StatementPaper& paper, const RecogniserRules& rules, Entries& out)
      : paper_(paper), rows_(paper.rows), rules_(rules), w_(rules.weights()), charges_(rules.charges()),
        words_(rules.statement()), credit_(rules.charges().find("mark:credit")), out_(out) {}

  void run() {
    std::size_t i = 0;
    while (i < rows_.size()) {
      if (skip(i)) {
        ++i;
        continue;
      }
      std::size_t end = i;
      while (end < rows_.size() && !rows_[end].row.blank) ++end;
      block(i, end);
      i = end;
    }
    flush_pending("no-amount");
  }

private:
  bool skip(std::size_t i) {
    PaperRow& l = rows_[i];
    if (l.row.blank) {
      l.fate = "blank";
      if (pending_.size() == 1 && pending_.back() + 1 == i && heads_something(i)) heading_from_pending();
      else flush_pending("no-amount");
      last_charge_ = nowhere;
      return true;
    }
    if (l.row.rule) l.fate = "rule";
    return !l.fate.empty();
  }

  // ---------------------------------------------------------------------------------------------------- blocks

  bool reads_as_prose(std::size_t first, std::size_t last) const {
    std::size_t rows = 0, wide = 0, items = 0, length = 0, sums = 0, ends = 0;
    bool inner_stop = false;
    for (std::size_t i = first; i < last; ++i) {
      const PaperRow& l = rows_[i];
      if (!l.fate.empty()) continue;
      ++rows;
      length += l.row.text.size() - l.row.body;
      wide += l.row.cells.size() > 1;
      if (l.row.bulleted || l.row.tabular) return false;
      for (const Number& n : l.m.numbers) sums += is_strong(n);
      if (!l.m.numbers.empty() && can_be_sum(l.m.numbers.back()) && ends_row(l, l.m.numbers.back(), rules_) &&
          l.row.text.back() != '.')
        ++items;
      inner_stop = inner_stop || has_inner_stop(l.row.text);
      ends += l.row.text.back() == '.';
    }
    if (rows == 0 || wide * 3 > rows) return false;
    if (rows == 1) {
      const PaperRow& l = rows_[first];
      const bool flows = inner_stop || (l.row.text.back() == '.' && l.m.tokens.size() > 9) || l.m.tokens.size() > 40;
      return flows && (items == 0 || sums > 1);
    }
    if (items * 2 > rows) return false;
    return length / rows >= 38 || inner_stop || ends * 2 > rows;
  }

  /// No row of the block has columns: what follows a table is no part of it.
  bool one_cell_rows(std::size_t first, std::size_t last) const {
    return std::all_of(rows_.begin() + static_cast<std::ptrdiff_t>(first),
                       rows_.begin() + static_cast<std::ptrdiff_t>(last),
                       [](const PaperRow& l) { return l.row.cells.size() == 1 && !l.row.tabular; });
  }

  void block(std::size_t first, std::size_t last) {
    if (reads_as_prose(first, last) && (!columns_ || one_cell_rows(first, last))) return prose(first, last);
    for (std::size_t i = first; i < last; ++i) {
      if (rows_[i].row.rule) rows_[i].fate = "rule";
      if (rows_[i].fate.empty()) list_row(i);
    }
  }

  void prose(std::size_t first, std::size_t last) {
    flush_pending("no-amount");
    std::vector<std::size_t> rows;
    for (std::size_t i = first; i < last; ++i)
      if (rows_[i].fate.empty()) rows.push_back(i);
    read_prose(paper_, rows, section_, rules_, out_);
  }

  // ------------------------------------------------------------------------------------------------------ rows

  TextPlace place_of(const PaperRow& l, std::uint32_t start, std::uint32_t end) const {
    return {l.row.line, l.row.offset + start, l.row.offset + end};
  }
  TextPlace place_of(const PaperRow& l, const Number& n) const {
    return place_of(l, l.m.tokens[n.first].start, l.m.tokens[n.last].end);
  }
  TextPlace whole_place(const PaperRow& l) const {
    return place_of(l, l.row.body, static_cast<std::uint32_t>(l.row.text.size()));
  }
  std::string_view body_of(const PaperRow& l) const { return std::string_view(l.row.text).substr(l.row.body); }

  /// A new entry with the figures of a row; the sum first among its options' figures.
  Entry entry_of(std::size_t i, const RowFigures& p, std::size_t& main) const {
    const PaperRow& l = rows_[i];
    Entry e;
    std::vector<std::size_t> numbers = p.others;
    if (std::find(numbers.begin(), numbers.end(), p.number) == numbers.end()) numbers = {p.number};
    for (const std::size_t k : numbers) {
      const Number& n = l.m.numbers[k];
      if (k == p.number) main = e.figures.size();
      e.figures.push_back({*n.money(), place_of(l, n), n.slip});
    }
    e.rows = {i};
    e.section = section_;
    e.headed = p.headed;
    return e;
  }

  bool says_who(const PaperRow& l, std::size_t first, std::size_t last) const {
    for (const Mention& m : l.m.statement) {
      if (m.first < first || m.last >= last) continue;
      const std::string& id = words_.at(m.concept_id).id;
      if (id == "st:you" || id == "st:owner") return true;
      for (std::size_t t = m.first; t <= m.last; ++t)
        if (is_word_of(l.m.tokens[t], "w:party", rules_)) return true;
    }
    return false;
  }

  bool mentions_word(const PaperRow& l, std::string_view id, std::size_t first, std::size_t last) const {
    const Lexicon::Id wanted = words_.find(id);
    return std::any_of(l.m.statement.begin(), l.m.statement.end(),
                       [&](const Mention& m) { return m.concept_id == wanted && m.first >= first && m.last < last; });
  }

  /// "Deposit 1,000.00, less 380.75, refund 619.25": several sums, each with its word before it.
  bool several_sums(std::size_t i) {
    PaperRow& l = rows_[i];
    std::vector<std::size_t> strong;
    for (std::size_t k = 0; k < l.m.numbers.size(); ++k)
      if (can_be_sum(l.m.numbers[k]) && (is_strong(l.m.numbers[k]) || l.m.numbers[k].after_equals)) strong.push_back(k);
    if (strong.size() < 2 || (columns_ && l.row.cells.size() > 2)) return false;
    std::vector<LabelKind> kinds;
    std::size_t from = token_at(l.m, l.row.body);
    bool deposit = false;
    const bool after = l.m.numbers[strong[0]].first <= from; // "$400.00 deposit - $115.00 = $285.00 refund"
    for (std::size_t s = 0; s < strong.size(); ++s) {
      const Number& n = l.m.numbers[strong[s]];
      const std::size_t next = s + 1 < strong.size() ? l.m.numbers[strong[s + 1]].first : l.m.tokens.size();
      LabelKind kind = after ? label_of(l.m, rules_, n.last + 1u, next) : label_of(l.m, rules_, from, n.first);
      const bool less = mentions_word(l, "st:less", from, n.first) || (n.minus && deposit) ||
                        (n.first > 0 && l.m.tokens[n.first - 1u].is('-'));
      if (kind == LabelKind::none && deposit && less) kind = LabelKind::total;
      if (kind == LabelKind::none && deposit && n.after_equals) kind = LabelKind::balance;
      if (kind == LabelKind::none && s > 0 && s + 1 == strong.size() && adds_up(l, strong)) kind = LabelKind::held;
      if (kind == LabelKind::none && deposit && mentions_rent(l) && adds_up(l, strong))
        kind = LabelKind::deposit; // "and last month's rent"
      if (kind == LabelKind::none || kind == LabelKind::fact || kind == LabelKind::letter || kind == LabelKind::heading)
        return false;
      deposit = deposit || kind == LabelKind::deposit || kind == LabelKind::held;
      kinds.push_back(kind);
      from = n.last + 1u;
    }
    from = token_at(l.m, l.row.body);
    for (std::size_t k = 0; k < strong.size(); ++k) {
      const Number& n = l.m.numbers[strong[k]];
      const auto start = l.m.tokens[std::min<std::size_t>(from, n.first)].start;
      add_sum(i, strong[k], kinds[k], l.row.text.substr(start, l.m.tokens[n.first].start - start),
              says_who(l, from, n.first));
      from = n.last + 1u;
    }
    l.fate = "sums";
    return true;
  }

  /// The last of the sums is all others together.
  bool adds_up(const PaperRow& l, const std::vector<std::size_t>& sums) const {
    Money parts;
    for (std::size_t k = 0; k + 1 < sums.size(); ++k) parts += *l.m.numbers[sums[k]].money();
    return sums.size() > 2 && parts == *l.m.numbers[sums.back()].money();
  }

  /// An entry for one sum of a row that the row's words call something.
  void add_sum(std::size_t i, std::size_t number, LabelKind kind, std::string label, bool directed) {
    RowFigures p;
    p.number = number;
    std::size_t main = 0;
    Entry e = entry_of(i, p, main);
    const Money value = e.figures[0].value;
    e.kind = kind;
    e.label = std::move(label);
    e.directed = directed;
    describe_as_charge(e, rows_[i], e.label);
    add_sum_roles(e, kind, value, w_);
    out_.list.push_back(std::move(e));
  }

  void describe_as_charge(Entry& e, const PaperRow& l, const std::string& text) const {
    append_piece(e.charge.text, text);
    if (e.charge.places.empty()) e.charge.places.push_back(whole_place(l));
    e.charge.heading = heading_;
  }

  // ----------------------------------------------------------------------------------------------------- dates

  static DateKind date_kind(std::string_view id) {
    if (id == "date:statement") return DateKind::statement;
    if (id == "date:move-out") return DateKind::move_out;
    if (id == "date:move-in") return DateKind::move_in;
    if (id == "date:due") return DateKind::due;
    if (id == "date:inspected") return DateKind::inspected;
    return DateKind::unknown;
  }

  /// The dates of a row, each with the word before it; a date alone on its line is the statement's.
  bool take_dates(const PaperRow& l) {
    bool any = false;
    std::size_t from = 0;
    for (const Number& n : l.m.numbers) {
      if (n.kind != NumberKind::date) continue;
      const auto day = civil_day(n.day);
      if (!day) continue;
      DateKind kind = DateKind::unknown;
      for (const Mention& m : l.m.statement)
        if (m.first >= from && m.last < n.first && m.match == Match::exact &&
            date_kind(words_.at(m.concept_id).id) != DateKind::unknown)
          kind = date_kind(words_.at(m.concept_id).id);
      if (kind == DateKind::unknown && mentions_word(l, "st:deposit", 0, l.m.tokens.size()))
        kind = DateKind::deposit_paid;
      const std::size_t body = token_at(l.m, l.row.body);
      if (kind == DateKind::unknown && !columns_ &&
          (n.first <= body || (n.first <= body + 3 && ends_row(l, n, rules_))))
        kind = DateKind::statement;
      out_.dates.push_back({kind, *day, place_of(l, n)});
      any = true;
      from = n.last + 1u;
    }
    return any;
  }

  // ------------------------------------------------------------------------------------------------- list rows

  void list_row(std::size_t i) {
    PaperRow& l = rows_[i];
    if (auto heads = read_heads(l.row, l.m, rules_)) {
      flush_pending("no-amount");
      columns_ = std::move(heads);
      l.fate = "columns";
      return;
    }
    if (several_sums(i)) {
      flush_pending("no-amount");
      take_dates(l);
      return;
    }
    if (is_sentence(l)) return prose(i, i + 1);
    if (pairs_row(i)) return;
    const RowFigures p = figures_of(l, columns_, paper_.bare_sums, rules_);
    if (!p.found()) return words_row(i);
    const bool empty_label = p.label_last <= p.label_first || !has_words(l, p.label_first, p.label_last, rules_);
    if (empty_label && pending_.empty()) return bare_row(i);
    if (empty_label) return close_pending(i, p);
    const LabelKind kind = label_of(l.m, rules_, p.label_first, p.label_last);
    if (p.credit_column && kind != LabelKind::deposit && kind != LabelKind::interest && kind != LabelKind::held &&
        kind != LabelKind::refund)
      return charge_row(i, p);
    if (in_brackets(l)) return detail_row(i);
    if (section_holds_ && !section_credits_ && kind == LabelKind::none && mentions_rent(l))
      return sum_row(i, p, LabelKind::deposit);
    switch (kind) {
    case LabelKind::none:
    case LabelKind::heading:
    case LabelKind::letter:
      return charge_row(i, p);
    case LabelKind::fact:
      return fact_row(i, p);
    case LabelKind::page:
      l.fate = "page";
      return;
    case LabelKind::charges:
      return sum_row(i, p, LabelKind::total);
    default:
      return sum_row(i, p, kind);
    }
  }

  /// Sentences, or sums strung together in one line, among the rows of a list.
  bool is_sentence(const PaperRow& l) const {
    if (l.row.bulleted || l.row.cells.size() > 1 || columns_) return false;
    std::size_t sums = 0;
    for (const Number& n : l.m.numbers) sums += is_strong(n) && !n.rate && !n.after_equals;
    if (sums == 0) return false;
    const Number& last = l.m.numbers.back();
    if (l.row.text.back() == '.' && l.m.tokens.size() > 8 && !ends_row(l, last, rules_)) return true;
    if (sums == 2 && is_strong(last) && ends_row(l, last, rules_) && account_word_first(l)) return true;
    const bool announces = l.row.text.back() == ':' && is_strong(l.m.numbers.back());
    const bool ends = l.row.text.back() == '.' && l.m.tokens.size() > 8 && sums >= 2;
    return has_inner_stop(l.row.text) || announces || ends || sums >= 3 || (sums == 2 && strung(l));
  }

  /// "total $160 so u get $540": the first of two sums is called something.
  bool account_word_first(const PaperRow& l) const {
    const auto first = std::find_if(l.m.numbers.begin(), l.m.numbers.end(), is_strong);
    const LabelKind kind = label_of(l.m, rules_, token_at(l.m, l.row.body), first->first);
    return kind == LabelKind::total || kind == LabelKind::deposit || kind == LabelKind::refund;
  }

  /// "Oven cleaned  40.00    Fridge cleaned  30.00": two charges side by side.
  bool pairs_row(std::size_t i) {
    PaperRow& l = rows_[i];
    if (columns_ || l.row.tabular || l.row.cells.size() < 4 || l.row.cells.size() % 2 != 0) return false;
    for (std::size_t c = 0; c < l.row.cells.size(); c += 2) {
      const std::size_t n = lone_number(l, c + 1, rules_);
      if (lone_number(l, c, rules_) != nowhere || is_sign_cell(l, c) || n == nowhere || !is_strong(l.m.numbers[n]) ||
          !l.m.numbers[n].money())
        return false;
      const std::size_t first = token_at(l.m, l.row.cells[c].start), last = token_at(l.m, l.row.cells[c].end);
      if (!has_words(l, first, last, rules_) || label_of(l.m, rules_, first, last) != LabelKind::none) return false;
    }
    flush_pending("no-amount");
    for (std::size_t c = 0; c < l.row.cells.size(); c += 2) {
      RowFigures p;
      p.number = lone_number(l, c + 1, rules_);
      describe_by_cells(l, p, {c});
      charge_row(i, p);
    }
    return true;
  }

  /// "stove 40.00, floor 30.00": a comma after a sum, and words before the next.
  bool strung(const PaperRow& l) const {
    for (std::size_t k = 0; k + 1 < l.m.numbers.size(); ++k) {
      const Number& n = l.m.numbers[k];
      const std::size_t t = n.last + 1u;
      if (!is_strong(n) || n.rate || t >= l.m.tokens.size() || !(l.m.tokens[t].is(',') || l.m.tokens[t].is(';')))
        continue;
      if (has_words(l, token_at(l.m, l.row.body), n.first, rules_) &&
          names_thing(l.m, rules_, t, l.m.numbers[k + 1].first))
        return true;
    }
    return false;
  }

  bool mentions_rent(const PaperRow& l) const {
    return std::any_of(l.m.charge.begin(), l.m.charge.end(),
                       [&](const Mention& m) { return charges_.at(m.concept_id).id == "rent"; });
  }

  /// Sums without words: of what stands above, or nothing we know.
  void bare_row(std::size_t i) {
    PaperRow& l = rows_[i];
    for (std::size_t k = 0; k < l.m.numbers.size(); ++k) {
      if (!can_be_sum(l.m.numbers[k])) continue;
      RowFigures p;
      p.number = k;
      std::size_t main = 0;
      Entry e = entry_of(i, p, main);
      e.passing_fate = "sum-without-words";
      e.may_be(SumRole::passing, e.figures[0].value, 0);
      if (is_strong(l.m.numbers[k]) && l.m.numbers.size() == 1) { // several: the feet of columns
        e.may_be(SumRole::total, e.figures[0].value, w_.spare_total);
        e.may_be(SumRole::held, e.figures[0].value, w_.spare_total);
        e.may_be(SumRole::refund, e.figures[0].value, w_.sum_is_other);
      }
      out_.list.push_back(std::move(e));
    }
    section_credits_ = false; // its foot
    l.fate = "sum-without-words";
  }

  bool in_brackets(const PaperRow& l) const { return l.row.text[l.row.body] == '(' && l.row.text.back() == ')'; }

  /// Says more about the charge above it; its sums are part of that one, or none.
  void detail_row(std::size_t i) {
    PaperRow& l = rows_[i];
    if (last_charge_ == nowhere) {
      l.fate = "information";
      return;
    }
    l.fate = "detail";
    out_.list[last_charge_].charge.places.push_back(whole_place(l));
    last_row_ = i;
  }

  /// Rows set in under a charge whose sums come to that charge only split it up.
  void take_details(std::size_t i) {
    const PaperRow& l = rows_[i];
    const Money whole = out_.list[last_charge_].options[0].value;
    Money parts;
    std::size_t end = i + 1;
    bool any = false;
    for (;
         end < rows_.size() && !rows_[end].row.blank && rows_[end].fate.empty() && rows_[end].row.indent > l.row.indent;
         ++end)
      for (const Number& n : rows_[end].m.numbers)
        if (is_strong(n) && n.money() && !n.rate && !n.bracketed) parts += *n.money(), any = true;
    if (!any || parts != whole) return;
    for (std::size_t k = i + 1; k < end; ++k) detail_row(k);
  }

  void fact_row(std::size_t i, const RowFigures& p) {
    PaperRow& l = rows_[i];
    const Number& n = l.m.numbers[p.number];
    const bool at_end = ends_row(l, n, rules_) && (l.row.cells.size() > 1 || is_strong(n)) && !n.rate && !n.bracketed;
    if (at_end && names_thing(l.m, rules_, 0, l.m.tokens.size())) return charge_row(i, p);
    take_dates(l);
    if (at_end) {
      std::size_t main = 0;
      Entry e = entry_of(i, p, main);
      e.passing_fate = "information";
      describe_as_charge(e, l, description_of(l, p));
      e.may_be(SumRole::passing, e.figures[main].value, 0, main);
      e.may_be(SumRole::charge, e.figures[main].value, w_.fact_is_charge, main);
      out_.list.push_back(std::move(e));
    }
    l.fate = "information";
  }

  void sum_row(std::size_t i, const RowFigures& p, LabelKind kind) {
    PaperRow& l = rows_[i];
    flush_pending("no-amount");
    const Number& n = l.m.numbers[p.number];
    const std::string text = description_of(l, p);
    const bool directed = says_who(l, p.label_first, p.label_last);
    l.fate = "sums";
    if (kind == LabelKind::held && split_held(i, p)) return;
    if ((n.bracketed || n.minus) &&
        (kind == LabelKind::balance || kind == LabelKind::refund || kind == LabelKind::due) && !directed)
      kind = LabelKind::due;
    if (kind == LabelKind::deposit || kind == LabelKind::interest) take_dates(l);
    std::size_t main = 0;
    Entry e = entry_of(i, p, main);
    e.kind = kind;
    e.label = text;
    e.directed = directed;
    describe_as_charge(e, l, text);
    if (section_credits_ && kind == LabelKind::refund) // "Refund of unused parking" among the credits
      e.may_be(SumRole::credit, size_of(e.figures[main].value), 0);
    add_sum_roles(e, kind, e.figures[main].value, w_);
    if (section_credits_ && kind == LabelKind::refund)
      for (RoleOption& o : e.options) o.cost += o.role == SumRole::refund ? w_.spare_total : 0;
    if (kind == LabelKind::total || kind == LabelKind::held) section_credits_ = false; // its foot
    for (RoleOption& o : e.options) o.figure = main;
    out_.list.push_back(std::move(e));
    last_charge_ = nowhere;
  }

  /// "Deposit and interest ($1,300.00 + $6.50)  $1,306.50"
  bool split_held(std::size_t i, const RowFigures& p) {
    const PaperRow& l = rows_[i];
    std::vector<std::size_t> parts;
    for (std::size_t k = 0; k < l.m.numbers.size(); ++k)
      if (k != p.number && is_strong(l.m.numbers[k]) && l.m.numbers[k].money()) parts.push_back(k);
    if (parts.size() != 2 ||
        *l.m.numbers[parts[0]].money() + *l.m.numbers[parts[1]].money() != *l.m.numbers[p.number].money())
      return false;
    const bool interest = mentions_word(l, "st:interest", 0, l.m.tokens.size()) ||
                          std::any_of(l.m.tokens.begin(), l.m.tokens.end(),
                                      [&](const Token& t) { return is_word_of(t, "st:interest", rules_); });
    const std::string text = description_of(l, p);
    add_sum(i, parts[0], LabelKind::deposit, text, true);
    add_sum(i, parts[1], interest ? LabelKind::interest : LabelKind::deposit, text, true);
    return true;
  }

  bool is_tax(const PaperRow& l, const RowFigures& p) const {
    const Lexicon::Id tax = charges_.find("tax");
    return std::any_of(l.m.charge.begin(), l.m.charge.end(), [&](const Mention& m) {
      return m.concept_id == tax && m.first >= p.label_first && m.last < p.label_last;
    });
  }
  /// "Credit for paint", "35.00 CR". A credit check and a credit card are no credit.
  bool is_credit(const PaperRow& l, const RowFigures& p) const {
    for (std::size_t t = 0; t < l.m.tokens.size(); ++t) {
      const bool ours = (t >= p.label_first && t < p.label_last) || t >= p.tail_first || t > l.m.numbers[p.number].last;
      const auto& ideas = charges_.ideas_of(l.m.tokens[t]);
      if (!ours || std::find(ideas.begin(), ideas.end(), credit_) == ideas.end()) continue;
      const bool other = std::any_of(l.m.charge.begin(), l.m.charge.end(), [&](const Mention& m) {
        return m.first <= t && t <= m.last && m.first != m.last && m.concept_id != credit_ &&
               charges_.at(m.concept_id).id != "credit";
      });
      if (!other) return true;
    }
    return false;
  }

  void charge_row(std::size_t i, const RowFigures& p) {
    PaperRow& l = rows_[i];
    std::size_t main = 0;
    Entry e = entry_of(i, p, main);
    if (!pending_.empty() && continues_pending(l)) take_pending(e);
    else flush_pending("no-amount");
    append_piece(e.charge.text, description_of(l, p));
    for (const auto& [start, end] : p.text) e.charge.places.push_back(place_of(l, start, end));
    finish_charge(i, p, main, std::move(e));
  }

  /// A sum alone on its line closes the description above it.
  void close_pending(std::size_t i, const RowFigures& p) {
    PaperRow& l = rows_[i];
    PaperRow& last = rows_[pending_.back()];
    const LabelKind kind = label_of(last.m, rules_, 0, last.m.tokens.size());
    if (kind != LabelKind::none && kind != LabelKind::heading && kind != LabelKind::letter && kind != LabelKind::fact &&
        kind != LabelKind::page) {
      const std::string text(body_of(last));
      const bool directed = says_who(last, 0, last.m.tokens.size());
      last.fate = l.fate = "sums";
      pending_.pop_back();
      flush_pending("no-amount");
      add_sum(i, p.number, kind, text, directed);
      return;
    }
    std::size_t main = 0;
    Entry e = entry_of(i, p, main);
    take_pending(e);
    finish_charge(i, p, main, std::move(e));
  }

  void finish_charge(std::size_t i, const RowFigures& p, std::size_t main, Entry e) {
    PaperRow& l = rows_[i];
    const Number& n = l.m.numbers[p.number];
    ReadCharge& c = e.charge;
    c.heading = p.room.empty() ? heading_ : p.room;
    c.count = p.count;
    c.unit = p.unit;
    c.rate = p.rate;
    e.label = c.text;
    e.minus = p.minus || n.minus || n.bracketed;
    e.plus = p.plus || n.plus;
    const bool credit = p.credit_column || is_credit(l, p) || section_credits_;
    if (is_tax(l, p)) c.role = ChargeRole::tax;
    const bool free = is_free(l, n);
    e.named = std::any_of(e.rows.begin(), e.rows.end(), [&](std::size_t r) { return names_own_charge(rows_[r]); });
    hear_roles(e, l, 0, l.m.tokens.size());
    add_charge_roles(e, main, credit, free, in_passing(l, n));
    out_.list.push_back(std::move(e));
    last_charge_ = out_.list.size() - 1;
    last_row_ = i;
    l.fate = "charge";
    if (!columns_) take_details(i);
  }

  /// "bought May 2021 for", "usually": words soon before the sum that make it a price.
  bool in_passing(const PaperRow& l, const Number& n) const {
    const Lexicon::Id id = words_.find("w:in-passing");
    return std::any_of(l.m.statement.begin(), l.m.statement.end(), [&](const Mention& s) {
      return s.concept_id == id && s.match == Match::exact && s.last < n.first && s.last + 6u > n.first &&
             !names_thing(l.m, rules_, s.last + 1u, n.first);
    });
  }

  /// Names a thing, work or state with words that are not the account's own ("check", "hold").
  bool names_own_charge(const PaperRow& l) const {
    const auto own = [&](std::size_t t) {
      return std::any_of(l.m.statement.begin(), l.m.statement.end(), [&](const Mention& s) {
        const std::string& id = words_.at(s.concept_id).id;
        return s.first <= t && t <= s.last &&
               (id == "w:paid-back" || id == "st:held" || id == "st:payment" || id == "st:refund" || id == "st:total" ||
                id == "st:deposit");
      });
    };
    for (std::size_t t = 0; t < l.m.tokens.size(); ++t)
      if (l.m.tokens[t].word() && !own(t) && names_charge(l.m, rules_, t, t + 1)) return true;
    return std::any_of(l.m.charge.begin(), l.m.charge.end(), [&](const Mention& c) {
      return c.first != c.last && names_charge(l.m, rules_, c.first, c.last + 1u) && !(own(c.first) && own(c.last));
    });
  }

  /// Roles that single words of the row speak for, though the row as a whole is not called so.
  void hear_roles(Entry& e, const PaperRow& l, std::size_t first, std::size_t last) const {
    static constexpr std::array<std::pair<std::string_view, SumRole>, 10> heard = {{{"st:total", SumRole::total},
                                                                                    {"st:makes", SumRole::total},
                                                                                    {"st:refund", SumRole::refund},
                                                                                    {"st:leaves", SumRole::refund},
                                                                                    {"w:paid-back", SumRole::refund},
                                                                                    {"st:balance", SumRole::refund},
                                                                                    {"st:deposit", SumRole::deposit},
                                                                                    {"st:held", SumRole::deposit},
                                                                                    {"st:interest", SumRole::interest},
                                                                                    {"st:due", SumRole::due}}};
    if (mentions_word(l, "st:payment", first, last)) return e.heard.push_back(SumRole::payment);
    for (const auto& [id, role] : heard)
      if (mentions_word(l, id, first, last)) e.heard.push_back(role);
  }

  void add_charge_roles(Entry& e, std::size_t main, bool credit, bool free, bool passing) const {
    const Money value = free ? Money{} : size_of(e.figures[main].value);
    e.may_be(credit ? SumRole::credit : SumRole::charge, value, 0, main);
    if (free) return;
    e.may_be(SumRole::passing, value,
             passing                           ? w_.leave_price_in_passing
             : e.named && !account_is_closed() ? w_.leave_named
                                               : w_.leave_unnamed,
             main);
    if (std::find(e.heard.begin(), e.heard.end(), SumRole::interest) != e.heard.end())
      e.may_be(SumRole::interest, value, w_.heard_sum, main);
    const int turned = e.minus || e.plus ? w_.turned_sign / 2 : e.named ? 2 * w_.turned_sign : w_.turned_sign;
    e.may_be(credit ? SumRole::charge : SumRole::credit, value, turned, main);
    for (const SumRole role : {SumRole::total, SumRole::refund, SumRole::deposit, SumRole::due, SumRole::subtotal}) {
      const auto heard = static_cast<int>(std::count(e.heard.begin(), e.heard.end(), role));
      int cost = e.named ? w_.named_is_sum : w_.unnamed_is_sum;
      if (heard > 0) cost = (e.named ? w_.sum_is_none : w_.heard_sum) / heard;
      if (std::find(e.heard.begin(), e.heard.end(), SumRole::payment) != e.heard.end()) cost += w_.sum_is_other;
      e.may_be(role, value, cost + (role == SumRole::due || role == SumRole::subtotal ? 2 : 0), main);
    }
    for (std::size_t k = 0; k < e.figures.size(); ++k)
      if (k != main && !e.figures[k].value.is_zero())
        e.may_be(credit ? SumRole::credit : SumRole::charge, size_of(e.figures[k].value), w_.other_figure, k);
  }

  bool is_free(const PaperRow& l, const Number& n) const {
    return std::any_of(l.m.charge.begin(), l.m.charge.end(), [&](const Mention& m) {
      return m.concept_id == rules_.charge_marks().free && m.first > n.last;
    });
  }

  // ---------------------------------------------------------------------------------------- rows without a sum

  bool continues_pending(const PaperRow& l) const {
    if (l.row.bulleted) return false;
    const PaperRow& first = rows_[pending_.front()];
    const PaperRow& before = rows_[pending_.back()];
    if (&before + 1 != &l) return false;
    if (first.row.bulleted) return true;
    const char c = l.row.text[l.row.body];
    const bool lower = c >= 'a' && c <= 'z';
    const bool open = before.row.text.back() == ',' || before.row.text.back() == '-';
    if (label_of(before.m, rules_, 0, before.m.tokens.size()) == LabelKind::heading || before.row.text.back() == ':')
      return false;
    if (is_room(before) || only_capitals(before)) return false;
    if (open) return true;
    return (lower && before.m.tokens.size() > 4) || (l.row.indent > first.row.indent && before.m.tokens.size() > 4);
  }

  bool only_capitals(const PaperRow& l) const {
    bool word = false;
    for (const Token& t : l.m.tokens)
      if (t.word()) {
        if (!t.capitals && t.text.size() > 1) return false;
        word = true;
      }
    return word;
  }

  /// Nothing but the name of a room.
  bool is_room(const PaperRow& l) const {
    std::size_t words = 0, known = 0;
    std::vector<bool> place(l.m.tokens.size(), false);
    for (const Mention& m : l.m.charge)
      if (charges_.at(m.concept_id).role == Role::place)
        for (std::size_t t = m.first; t <= m.last; ++t) place[t] = true;
    for (std::size_t t = 0; t < l.m.tokens.size(); ++t)
      if (l.m.tokens[t].word()) ++words, known += place[t];
    return words > 0 && words == known;
  }

  void take_pending(Entry& e) {
    std::vector<std::size_t> rows = pending_;
    for (const std::size_t r : pending_) {
      PaperRow& l = rows_[r];
      append_piece(e.charge.text, body_of(l));
      e.charge.places.push_back(whole_place(l));
      l.fate = "charge";
    }
    rows.insert(rows.end(), e.rows.begin(), e.rows.end());
    e.rows = std::move(rows);
    pending_.clear();
  }

  void flush_pending(const char* why) {
    for (const std::size_t r : pending_)
      if (rows_[r].fate.empty()) rows_[r].fate = why;
    pending_.clear();
  }

  /// A few words alone, with a sum further down.
  bool heads_something(std::size_t i) const {
    if (rows_[pending_.front()].m.tokens.size() > 10) return false;
    for (std::size_t k = i; k < rows_.size(); ++k)
      if (std::any_of(rows_[k].m.numbers.begin(), rows_[k].m.numbers.end(), is_strong)) return true;
    return false;
  }

  void heading_from_pending() {
    PaperRow& l = rows_[pending_.front()];
    set_heading(l);
    pending_.clear();
  }

  void set_heading(PaperRow& l) {
    heading_ = l.row.text.substr(l.row.body);
    while (!heading_.empty() && std::string_view(" :.-=\t").find(heading_.back()) != std::string_view::npos)
      heading_.pop_back();
    const std::size_t all = l.m.tokens.size() + 1;
    const std::size_t words = static_cast<std::size_t>(
        std::count_if(l.m.tokens.begin(), l.m.tokens.end(), [](const Token& t) { return t.word(); }));
    section_credits_ =
        words <= 4 && mentions_word(l, "w:credits", 0, all) && !mentions_word(l, "st:charge-word", 0, all);
    const LabelKind kind = label_of(l.m, rules_, 0, l.m.tokens.size());
    section_holds_ =
        mentions_word(l, "st:held", 0, all) || section_credits_ || (kind == LabelKind::deposit && words <= 2);
    new_section(l);
    l.fate = "heading";
  }

  /// The refund or what is owed has been stated: what follows is seldom a charge.
  bool account_is_closed() const {
    bool sum = false, rest = false;
    for (const Entry& e : out_.list) {
      sum = sum || e.kind == LabelKind::total || e.kind == LabelKind::deposit;
      rest = rest || e.kind == LabelKind::refund || e.kind == LabelKind::due || e.kind == LabelKind::balance;
    }
    return sum && rest;
  }
  bool account_before() const {
    return std::any_of(out_.list.begin(), out_.list.end(), [](const Entry& e) {
      return e.options[0].role == SumRole::total || e.options[0].role == SumRole::refund;
    });
  }

  /// What follows an account under "Attachment" or "Invoice" may say it again.
  void new_section(const PaperRow& l) {
    Section s;
    s.heading = heading_;
    s.follows = std::any_of(out_.list.begin(), out_.list.end(), [](const Entry& e) {
      return e.options[0].role == SumRole::refund || e.options[0].role == SumRole::due;
    });
    s.attached =
        out_.sections.back().attached || (account_before() && mentions_word(l, "w:attached", 0, l.m.tokens.size() + 1));
    out_.sections.push_back(std::move(s));
    section_ = out_.sections.size() - 1;
  }

  /// "the 450 deposit": a bare number beside a word of the account.
  bool names_account_number(const PaperRow& l) const {
    for (const Number& n : l.m.numbers) {
      if (!can_be_sum(n) || n.thousandths < 20'000) continue;
      for (const Mention& s : l.m.statement) {
        const std::string& id = words_.at(s.concept_id).id;
        if (id != "st:deposit" && id != "st:refund" && id != "st:total" && id != "st:leaves") continue;
        const bool after = s.first == n.last + 1u, before = n.first <= s.last + 2u && n.first > s.last;
        if (after || (before && ends_row(l, n, rules_))) return true;
      }
    }
    return false;
  }

  void words_row(std::size_t i) {
    PaperRow& l = rows_[i];
    if (!l.row.bulleted && !columns_ && l.row.cells.size() == 1 && names_account_number(l)) return prose(i, i + 1);
    if (take_dates(l) && !l.row.bulleted) {
      flush_pending("no-amount");
      l.fate = "date";
      return;
    }
    const LabelKind kind = label_of(l.m, rules_, 0, l.m.tokens.size());
    const bool money = std::any_of(l.m.numbers.begin(), l.m.numbers.end(), is_strong);
    if (kind == LabelKind::page) {
      l.fate = "page";
      return;
    }
    if (const auto made = product(l)) return computed_row(i, *made);
    const char last = l.row.text.back();
    const bool attached = !money && l.m.tokens.size() < 12 &&
                          mentions_word(l, "w:attached", 0, l.m.tokens.size() + 1) && account_before();
    if (!money && (attached || last == ':' || kind == LabelKind::heading || is_room(l) || only_capitals(l)) &&
        !l.row.bulleted && !next_is_sum(i)) {
      flush_pending("no-amount");
      set_heading(l);
      return;
    }
    if (l.row.bulleted) {
      flush_pending("no-amount");
      pending_.push_back(i);
      return;
    }
    if (last_charge_ != nowhere && last_row_ + 1 == i && pending_.empty() && belongs_to_last(l)) {
      Entry& e = out_.list[last_charge_];
      append_piece(e.charge.text, body_of(l));
      e.charge.places.push_back(whole_place(l));
      e.rows.push_back(i);
      l.fate = "charge";
      last_row_ = i;
      return;
    }
    if (kind == LabelKind::letter) {
      flush_pending("no-amount");
      l.fate = "letter";
      return;
    }
    pending_.push_back(i);
  }

  /// Whether the next row with text holds nothing but a sum.
  bool next_is_sum(std::size_t i) const {
    for (std::size_t k = i + 1; k < rows_.size(); ++k) {
      if (rows_[k].row.blank) continue;
      const PaperRow& next = rows_[k];
      return next.m.numbers.size() == 1 && can_be_sum(next.m.numbers[0]) &&
             !has_words(next, 0, next.m.tokens.size(), rules_);
    }
    return false;
  }

  /// Words after a row that already had its sum: deeper than the row, in small letters or in brackets.
  bool belongs_to_last(const PaperRow& l) const {
    const PaperRow& item = rows_[last_row_];
    const char c = l.row.text[l.row.body];
    if (c == '(') return true;
    const bool deeper = l.row.indent > item.row.indent;
    const bool lower = c >= 'a' && c <= 'z';
    return deeper && (lower || item.row.bulleted);
  }

  struct Product {
    Money amount;
    std::size_t price;
  };
  /// "Blinds 3 @ 24.00" without a sum: count and price side by side.
  std::optional<Product> product(const PaperRow& l) const {
    for (std::size_t k = 0; k + 1 < l.m.numbers.size(); ++k) {
      const Number& count = l.m.numbers[k];
      const Number& price = l.m.numbers[k + 1];
      if (count.kind != NumberKind::plain || count.currency || count.thousandths == 0 || !is_strong(price) ||
          !ends_with_each(l, price) || !sign_between(l, count.last, price.first))
        continue;
      const std::int64_t cents = count.thousandths * (price.thousandths / 10);
      if (cents % 1000 != 0) continue;
      return Product{Money::cents(cents / 1000), k + 1};
    }
    return std::nullopt;
  }
  bool ends_with_each(const PaperRow& l, const Number& n) const {
    for (std::size_t t = n.last + 1u; t < l.m.tokens.size(); ++t)
      if (l.m.tokens[t].word() && !is_word_of(l.m.tokens[t], "w:each", rules_)) return false;
    return true;
  }
  bool sign_between(const PaperRow& l, std::size_t from, std::size_t to) const {
    if (to - from > 3) return false;
    for (std::size_t t = from + 1; t < to; ++t)
      if (l.m.tokens[t].is('@') || l.m.tokens[t].text == "x" || l.m.tokens[t].text == "at") return true;
    return false;
  }

  void computed_row(std::size_t i, const Product& made) {
    PaperRow& l = rows_[i];
    flush_pending("no-amount");
    Entry e;
    append_piece(e.charge.text, body_of(l));
    e.charge.places.push_back(whole_place(l));
    e.charge.computed = true;
    e.charge.heading = heading_;
    e.figures.push_back({made.amount, place_of(l, l.m.numbers[made.price]), false});
    e.rows = {i};
    e.section = section_;
    e.named = names_charge(l.m, rules_, 0, l.m.tokens.size());
    e.may_be(SumRole::charge, made.amount, 0);
    e.may_be(SumRole::passing, made.amount, e.named ? w_.leave_named : w_.leave_unnamed);
    out_.list.push_back(std::move(e));
    last_charge_ = out_.list.size() - 1;
    last_row_ = i;
    l.fate = "charge";
  }

  StatementPaper& paper_;
  std::vector<PaperRow>& rows_;
  const RecogniserRules& rules_;
  const ReadingWeights& w_;
  const Lexicon& charges_;
  const Lexicon& words_;
  Lexicon::Id credit_;
  Entries& out_;
  std::optional<Columns> columns_;
  std::vector<std::size_t> pending_;
  std::string heading_;
  bool section_holds_ = false, section_credits_ = false;
  std::size_t section_ = 0;
  std::size_t last_charge_ = nowhere, last_row_ = nowhere;
};

} // namespace

void add_sum_roles(Entry& e, LabelKind kind, Money printed, const ReadingWeights& w) {
  const Money value = kind == LabelKind::total || kind == LabelKind::subtotal ? printed : size_of(printed);
  const auto others = [&](std::initializer_list<SumRole> roles, int cost) {
    for (const SumRole role : roles) e.may_be(role, value, cost);
  };
  switch (kind) {
  case LabelKind::total:
  case LabelKind::charges:
    e.may_be(SumRole::total, value, 0);
    others({SumRole::subtotal}, w.spare_total);
    others({SumRole::refund, SumRole::due, SumRole::held, SumRole::passing}, w.sum_is_other);
    break;
  case LabelKind::subtotal:
  case LabelKind::carried:
    e.may_be(SumRole::subtotal, value, 0);
    others({SumRole::total}, w.sum_is_other);
    break;
  case LabelKind::held:
    e.may_be(SumRole::held, value, 0);
    others({SumRole::deposit}, w.spare_total);
    others({SumRole::total, SumRole::refund, SumRole::passing}, w.sum_is_other);
    break;
  case LabelKind::deposit:
    e.may_be(SumRole::deposit, value, 0);
    others({SumRole::held}, w.spare_total);
    others({SumRole::passing}, w.sum_is_other);
    others({SumRole::total, SumRole::refund}, w.sum_is_none + w.spare_total);
    break;
  case LabelKind::interest:
    e.may_be(SumRole::interest, value, 0);
    others({SumRole::passing, SumRole::held}, w.sum_is_other);
    break;
  case LabelKind::refund:
    e.may_be(SumRole::refund, value, 0);
    others({SumRole::due}, e.directed ? w.sum_is_other : w.spare_total);
    others({SumRole::total, SumRole::deposit, SumRole::payment}, w.sum_is_other + 2);
    others({SumRole::passing}, w.sum_is_none);
    break;
  case LabelKind::due:
    e.may_be(SumRole::due, value, 0);
    others({SumRole::refund}, e.directed ? w.sum_is_other : w.spare_total);
    others({SumRole::total}, w.sum_is_other);
    others({SumRole::passing}, w.sum_is_none);
    break;
  case LabelKind::payment:
    e.may_be(SumRole::payment, value, 0);
    others({SumRole::credit, SumRole::refund, SumRole::passing}, w.sum_is_other);
    break;
  case LabelKind::balance:
    e.may_be(SumRole::refund, value, 0);
    e.may_be(SumRole::due, value, 1);
    others({SumRole::total}, w.sum_is_other);
    others({SumRole::passing}, w.sum_is_none);
    break;
  default:
    e.may_be(SumRole::passing, value, 0);
    break;
  }
  if (kind != LabelKind::held && kind != LabelKind::carried && kind != LabelKind::subtotal)
    e.may_be(SumRole::charge, value, w.sum_is_charge);
}

void read_rows(StatementPaper& paper, const RecogniserRules& rules, Entries& out) {
  ListReader(paper, rules, out).run();
}

} // namespace wearline
