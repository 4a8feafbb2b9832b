#include "reading/list_rows.h"

#include "reading/account_row.h"
#include "reading/columns.h"
#include "reading/prose.h"
#include "reading/row_dates.h"
#include "reading/row_figures.h"
#include "reading/row_shapes.h"
#include "reading/row_words.h"
#include "reading/sum_roles.h"
#include "reading/too_large.h"
#include "values/ascii.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace wearline {

namespace {

class ListReader {
public:
  ListReader(StatementPaper& paper, const RecognizerRules& rules, Entries& out)
      : paper_(paper), rows_(paper.rows), rules_(rules), w_(rules.weights()), out_(out) {}

  void run() {
    std::size_t i = 0;
    is_record_ = labels_items();
    while (i < rows_.size()) {
      if (skip(i)) {
        ++i;
        continue;
      }
      std::size_t end = i;
      while (end < rows_.size() && !rows_[end].row.blank && !holds_too_large_a_sum(rows_[end].row.text)) ++end;
      block(i, end);
      i = end;
    }
    flush_pending("no-amount");
    take_back();
    correct();
    leave_other_party();
  }

private:
  bool skip(std::size_t i) {
    PaperRow& l = rows_[i];
    if (l.row.blank) {
      l.fate = "blank";
      if (pending_.size() == 1 && pending_.back() + 1 == i && heads_something(i)) heading_from_pending();
      else flush_pending("no-amount");
      last_charge_ = nowhere;
      if (holds_rows_ && !out_.list.empty() && out_.list.back().section == section_) holds_rows_ = false;
      end_bill();
      return true;
    }
    if (l.row.rule) l.fate = "rule";
    if (holds_too_large_a_sum(l.row.text)) {
      flush_pending("no-amount");
      l.fate = "too-large";
    }
    return !l.fate.empty();
  }

  // ---------------------------------------------------------------------------------------------------- blocks

  void block(std::size_t first, std::size_t last) {
    const auto speaks = [](const PaperRow& l) { return !l.row.speaker.empty(); };
    if (std::any_of(rows_.begin() + static_cast<std::ptrdiff_t>(first),
                    rows_.begin() + static_cast<std::ptrdiff_t>(last), speaks)) {
      for (std::size_t i = first; i < last;) { // a message at a time
        std::size_t end = i + 1;
        while (end < last && !speaks(rows_[end])) ++end;
        flush_pending("no-amount");
        rows_block(i, end);
        i = end;
      }
      return;
    }
    rows_block(first, last);
  }

  void rows_block(std::size_t first, std::size_t last) {
    if (reads_as_prose(rows_, first, last, rules_) && (!columns_ || one_cell_rows(rows_, first, last)))
      return prose(first, last);
    for (std::size_t i = first; i < last; ++i) {
      if (rows_[i].row.rule) rows_[i].fate = "rule";
      if (!rows_[i].fate.empty()) continue;
      if (const std::size_t end = paragraph_end(rows_, i, last, rules_); end > i + 1 && !columns_) prose(i, end);
      else list_row(i);
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

  std::string_view body_of(const PaperRow& l) const { return std::string_view(l.row.text).substr(l.row.body); }

  static std::uint32_t right_of(const PaperRow& l, const Number& n) {
    const std::uint32_t end = l.m.tokens[n.last].end;
    if (!l.row.tabular) return screen_column(l.row.text, end);
    const auto cell = std::find_if(l.row.cells.begin(), l.row.cells.end(), [&](const Cell& c) { return c.end >= end; });
    return static_cast<std::uint32_t>(cell - l.row.cells.begin());
  }

  /// A new entry with the figures of a row; the sum first among its options' figures.
  Entry entry_of(std::size_t i, const RowFigures& p, std::size_t& main) const {
    const PaperRow& l = rows_[i];
    Entry e;
    std::vector<std::size_t> numbers = p.others;
    if (std::find(numbers.begin(), numbers.end(), p.number) == numbers.end()) numbers = {p.number};
    for (const std::size_t k : numbers) {
      const Number& n = l.m.numbers[k];
      if (k != p.number && !n.money()) continue; // more than two decimals
      if (k == p.number) main = e.figures.size();
      e.figures.push_back({n.money().value_or(Money{}), place_in(l, n), n.slip, right_of(l, n)});
    }
    e.rows = {i};
    e.section = section_;
    e.headed = p.headed;
    e.two_sided = columns_ && columns_->credit.has_value();
    return e;
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
    if (e.charge.places.empty()) e.charge.places.push_back(place_in(l));
    e.charge.heading = heading_;
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
    if (account_row(i)) return;
    if (!columns_ && (is_sentence(l, rules_) || tells_account(l, rules_))) return prose(i, i + 1);
    if (pairs_row(i)) return;
    if (const auto made = price_times_count(l); made && !columns_) return computed_row(i, *made);
    const RowFigures p = figures_of(l, columns_, paper_.sums, rules_);
    if (!p.found()) return words_row(i);
    const bool empty_label = p.label_last <= p.label_first || !has_words(l, p.label_first, p.label_last, rules_);
    if (empty_label && pending_.empty()) return bare_row(i);
    if (empty_label) return close_pending(i, p);
    LabelKind kind =
        is_room_sum(l, p, rules_) ? LabelKind::subtotal : label_of(l.m, rules_, p.label_first, p.label_last);
    if (kind == LabelKind::none || kind == LabelKind::fact) kind = lone_label(l, p, kind);
    if (p.credit_column && kind != LabelKind::deposit && kind != LabelKind::interest && kind != LabelKind::held &&
        kind != LabelKind::refund)
      return charge_row(i, p);
    if (in_brackets(l)) return detail_row(i);
    if (kind == LabelKind::none && heads_its_rows(i, p)) return section_row(i, p);
    const bool of_item = is_record_ && l.row.cells.size() == 1 && !is_credit(l, p, rules_) &&
                         (kind == LabelKind::fact || (kind == LabelKind::none && !pending_.empty()));
    if (!columns_ && (of_item || is_item_fact(l, p, is_record_, rules_))) {
      l.fate = "information";
      return;
    }
    if (kind == LabelKind::charges && is_record_ && !pending_.empty() && is_item_sum(l)) return close_pending(i, p);
    if (section_holds_ && !section_credits_ && kind == LabelKind::none && mentions_rent(l, rules_))
      return sum_row(i, p, LabelKind::deposit);
    if ((kind == LabelKind::none || kind == LabelKind::fact) && !columns_ && !l.row.bulleted &&
        !is_strong(l.m.numbers[p.number]) && names_account_number(l, rules_) && !names_own_charge(l, rules_))
      return prose(i, i + 1);
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

  /// "all   357.50", "left   542.50": one word, which sums up or, below charges, gives the rest back.
  LabelKind lone_label(const PaperRow& l, const RowFigures& p, LabelKind kind) const {
    const Token* word = nullptr;
    for (std::size_t t = p.label_first; t < p.label_last; ++t) {
      if (!l.m.tokens[t].word()) continue;
      if (word != nullptr) return kind;
      word = &l.m.tokens[t];
    }
    if (word == nullptr || std::none_of(out_.list.begin(), out_.list.end(), is_charge_entry)) return kind;
    if (is_word_of(*word, "w:sums-up", rules_)) return LabelKind::total;
    return is_word_of(*word, "w:rest-alone", rules_) ? LabelKind::refund : kind;
  }

  /// "Oven cleaned  40.00    Fridge cleaned  30.00": two charges side by side.
  bool pairs_row(std::size_t i) {
    PaperRow& l = rows_[i];
    if (columns_) return false;
    std::vector<std::size_t> cells;
    for (std::size_t c = 0; c < l.row.cells.size(); ++c)
      if (l.row.cells[c].start < l.row.cells[c].end) cells.push_back(c);
    if (cells.size() < 4 || cells.size() % 2 != 0) return false;
    for (std::size_t k = 0; k < cells.size(); k += 2) {
      const std::size_t c = cells[k], n = lone_number(l, cells[k + 1], rules_);
      if (lone_number(l, c, rules_) != nowhere || is_sign_cell(l, c) || n == nowhere || !is_strong(l.m.numbers[n]) ||
          !l.m.numbers[n].money())
        return false;
      const std::size_t first = token_at(l.m, l.row.cells[c].start), last = token_at(l.m, l.row.cells[c].end);
      if (!has_words(l, first, last, rules_)) return false;
    }
    flush_pending("no-amount");
    for (std::size_t k = 0; k < cells.size(); k += 2) {
      const Cell& words = l.row.cells[cells[k]];
      if (const LabelKind kind = label_of(l.m, rules_, token_at(l.m, words.start), token_at(l.m, words.end));
          is_account(kind)) {
        add_sum(i, lone_number(l, cells[k + 1], rules_), kind, std::string(l.row.cell(cells[k])), false);
        if (l.fate.empty()) l.fate = "sums";
        continue;
      }
      RowFigures p;
      p.number = lone_number(l, cells[k + 1], rules_);
      describe_by_cells(l, p, {cells[k]});
      charge_row(i, p);
    }
    return true;
  }

  bool account_row(std::size_t i) {
    PaperRow& l = rows_[i];
    if (columns_ && l.row.cells.size() > 2) return false;
    const std::vector<AccountSum> sums = account_sums(l, rules_);
    if (sums.empty()) return false;
    flush_pending("no-amount");
    for (const AccountSum& s : sums) {
      const Number& n = l.m.numbers[s.number];
      const auto start = l.m.tokens[std::min<std::size_t>(s.first, n.first)].start;
      add_sum(i, s.number, s.kind, l.row.text.substr(start, l.m.tokens[n.first].start - start),
              says_who(l, rules_, s.first, n.first));
    }
    l.fate = "sums";
    return true;
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
      if ((is_strong(l.m.numbers[k]) || paper_.sums.bare || paper_.sums.first) &&
          l.m.numbers.size() == 1) { // several: the feet of columns
        e.may_be(SumRole::total, e.figures[0].value, w_.spare_total);
        e.may_be(SumRole::held, e.figures[0].value, w_.spare_total);
        e.may_be(SumRole::refund, e.figures[0].value, w_.sum_is_other);
      } else if (l.m.numbers[k].after_equals && k + 1 == l.m.numbers.size()) { // "1,841.25 - 276.50 = 1,564.75"
        e.may_be(SumRole::refund, e.figures[0].value, w_.spare_total);
        e.may_be(SumRole::due, e.figures[0].value, w_.sum_is_other);
        e.may_be(SumRole::total, e.figures[0].value, w_.sum_is_other);
      } else if (is_strong(l.m.numbers[k])) {
        e.may_be(SumRole::total, e.figures[0].value, w_.sum_is_none);
      }
      out_.list.push_back(std::move(e));
    }
    section_credits_ = holds_rows_ = false; // its foot
    l.fate = "sum-without-words";
  }

  /// Says more about the charge above it; its sums are part of that one, or none.
  void detail_row(std::size_t i) {
    PaperRow& l = rows_[i];
    if (last_charge_ == nowhere) {
      l.fate = "information";
      return;
    }
    l.fate = "detail";
    out_.list[last_charge_].charge.places.push_back(place_in(l));
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
    const bool in_column = p.headed && !p.balance_only && p.others.size() > 1;
    const bool at_end =
        (in_column || ends_row(l, n, rules_)) && (l.row.cells.size() > 1 || is_strong(n)) && !n.rate && !n.bracketed;
    if (at_end && names_thing(l.m, rules_, 0, l.m.tokens.size())) return charge_row(i, p);
    if (at_end) {
      std::size_t main = 0;
      Entry e = entry_of(i, p, main);
      e.passing_fate = "information";
      e.kind = LabelKind::fact;
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
    const bool directed = says_who(l, rules_, p.label_first, p.label_last);
    l.fate = "sums";
    if (kind == LabelKind::held && split_held(i, p)) return;
    if ((n.bracketed || n.minus) &&
        (kind == LabelKind::balance || kind == LabelKind::refund || kind == LabelKind::due) && !directed)
      kind = LabelKind::due;
    std::size_t main = 0;
    Entry e = entry_of(i, p, main);
    e.kind = kind;
    e.label = text;
    e.directed = directed;
    describe_as_charge(e, l, text);
    const bool more_words = std::count_if(l.m.tokens.begin() + static_cast<std::ptrdiff_t>(p.label_first),
                                          l.m.tokens.begin() + static_cast<std::ptrdiff_t>(p.label_last),
                                          [](const Token& t) { return t.word(); }) > 1;
    const bool refunded = section_credits_ && kind == LabelKind::refund && more_words;
    if (refunded) // "Refund of unused parking" among the credits
      e.may_be(SumRole::credit, size_of(e.figures[main].value), 0);
    // Nothing stands before it that it could carry on: an old balance.
    if (kind == LabelKind::carried && std::none_of(out_.list.begin(), out_.list.end(), is_charge_entry))
      e.may_be(SumRole::charge, size_of(e.figures[main].value), 0);
    const Money printed = e.figures[main].value;
    const bool below_zero = kind == LabelKind::due && n.minus;
    add_sum_roles(e, kind, below_zero ? Money{} - size_of(printed) : printed, w_);
    if (refunded)
      for (RoleOption& o : e.options) o.cost += o.role == SumRole::refund ? w_.spare_total : 0;
    if (kind == LabelKind::total || kind == LabelKind::held) section_credits_ = holds_rows_ = false; // its foot
    for (RoleOption& o : e.options) o.figure = main;
    if (tells_share(l, p, rules_)) leave_out(e, "information", w_.spare_total);
    if (e.options[0].role == SumRole::total || e.options[0].role == SumRole::subtotal)
      for (std::size_t k = 0; k < e.figures.size(); ++k) // the feet of other columns
        if (k != main) e.may_be(e.options[0].role, size_of(e.figures[k].value), w_.other_figure, k);
    out_.list.push_back(std::move(e));
    last_charge_ = nowhere;
  }

  static bool is_charge_entry(const Entry& e) { return e.options[0].role == SumRole::charge; }

  /// "charge: 120.00", in every item of a record: no total, but the sum of the words above it.
  bool is_item_sum(const PaperRow& l) const {
    if (l.row.blank || l.m.numbers.size() != 1 || !is_strong(l.m.numbers[0])) return false;
    const std::size_t first = token_at(l.m, l.row.body), last = l.m.numbers[0].first;
    return last == first + 2 && l.m.tokens[first + 1].is(':') &&
           label_of(l.m, rules_, first, last) == LabelKind::charges;
  }
  bool labels_items() const {
    return std::count_if(rows_.begin(), rows_.end(), [&](const PaperRow& l) { return is_item_sum(l); }) > 1;
  }

  /// "Living room (155.00)" over rows set in deeper that have their own sums: what they come to, said before them.
  bool heads_its_rows(std::size_t i, const RowFigures& p) const {
    const PaperRow& l = rows_[i];
    const Number& n = l.m.numbers[p.number];
    const bool heads = n.bracketed || names_only_room(l, rules_, p.label_first, p.label_last);
    if (columns_ || l.row.bulleted || !heads || !ends_row(l, n, rules_)) return false;
    std::size_t below = 0;
    for (std::size_t k = i + 1; k < rows_.size() && !rows_[k].row.blank && rows_[k].row.indent > l.row.indent; ++k)
      below += !rows_[k].m.numbers.empty() && is_strong(rows_[k].m.numbers.back()) &&
               ends_row(rows_[k], rows_[k].m.numbers.back(), rules_);
    return below > 1 || (below == 1 && n.bracketed);
  }
  void section_row(std::size_t i, const RowFigures& p) {
    sum_row(i, p, LabelKind::subtotal);
    out_.list.back().options.resize(1); // it stands before its rows, so it is never their total
    const std::string room = description_of(rows_[i], p);
    set_heading(rows_[i]);
    heading_ = room;
    out_.sections.back().heading = room;
    rows_[i].fate = "sums";
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
    const bool interest = mentions_word(l, rules_, "st:interest") ||
                          std::any_of(l.m.tokens.begin(), l.m.tokens.end(),
                                      [&](const Token& t) { return is_word_of(t, "st:interest", rules_); });
    const std::string text = description_of(l, p);
    add_sum(i, parts[0], LabelKind::deposit, text, true);
    add_sum(i, parts[1], interest ? LabelKind::interest : LabelKind::deposit, text, true);
    return true;
  }

  void charge_row(std::size_t i, const RowFigures& p) {
    PaperRow& l = rows_[i];
    std::size_t main = 0;
    Entry e = entry_of(i, p, main);
    if (!pending_.empty() && continues_pending(l)) take_pending(e);
    else flush_pending("no-amount");
    append_piece(e.charge.text, description_of(l, p));
    for (const auto& [start, end] : p.text) e.charge.places.push_back(place_in(l, start, end));
    finish_charge(i, p, main, std::move(e));
  }

  /// A sum alone on its line closes the description above it.
  void close_pending(std::size_t i, const RowFigures& p) {
    PaperRow& l = rows_[i];
    PaperRow& last = rows_[pending_.back()];
    LabelKind kind = label_of(last.m, rules_, 0, last.m.tokens.size());
    const char end = last.row.text.back();
    if (!is_account(kind) && (end == '?' || (end == ':' && begins_with_deposit(last)))) kind = asked_for(last);
    if (is_account(kind)) {
      const std::string text(body_of(last));
      const bool directed = says_who(last, rules_, 0, last.m.tokens.size());
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

  bool begins_with_deposit(const PaperRow& l) const {
    const std::size_t body = token_at(l.m, l.row.body);
    return mentions_word(l, rules_, "st:deposit", body, body + 4) && mentions_word(l, rules_, "st:less");
  }

  /// "How much was your deposit?", "Deposit minus what I paid:"
  LabelKind asked_for(const PaperRow& l) const {
    static constexpr std::array<std::pair<std::string_view, LabelKind>, 3> kinds = {
        {{"st:refund", LabelKind::refund}, {"st:deposit", LabelKind::deposit}, {"st:total", LabelKind::total}}};
    for (const auto& [id, kind] : kinds)
      if (mentions_word(l, rules_, id)) return kind;
    return LabelKind::none;
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
    const bool credit = p.credit_column || is_credit(l, p, rules_) || section_credits_;
    e.tick = l.row.tick;
    if (is_tax(l, p, rules_)) c.role = ChargeRole::tax;
    const bool free = is_free(l, n, rules_);
    e.named =
        std::any_of(e.rows.begin(), e.rows.end(), [&](std::size_t r) { return names_own_charge(rows_[r], rules_); });
    e.rent = mentions_rent(l, rules_);
    e.heard = heard_roles(l, rules_);
    const bool share = tells_share(l, p, rules_);
    add_charge_roles(e, main, {credit, free, in_passing(l, n, rules_), is_denied(l, n, rules_), account_is_closed()},
                     w_);
    if (share) leave_out(e, "information", w_.spare_total);
    if (holds_rows_) // "Deposits held": what stands under it may be one of them
      for (RoleOption& o : e.options)
        if (o.role == SumRole::deposit) o.cost = std::min(o.cost, w_.spare_total);
    out_.list.push_back(std::move(e));
    last_charge_ = out_.list.size() - 1;
    last_row_ = i;
    l.fate = "charge";
    if (!columns_) take_details(i);
  }

  // -------------------------------------------------------------------------------------------------- taken back

  /// The number right behind "make that", where no thing is named before it.
  const Number* corrected_to(const PaperRow& l) const {
    const Lexicon::Id id = rules_.statement().find("w:corrects");
    const std::size_t body = token_at(l.m, l.row.body);
    if (l.row.speaker.empty() && l.m.tokens.size() > 12) return nullptr; // a sentence speaks of its own sums
    for (const Number& n : l.m.numbers)
      if (n.first > body && can_be_sum(n) && !names_charge(l.m, rules_, body, n.first) &&
          std::any_of(l.m.statement.begin(), l.m.statement.end(), [&](const Mention& s) {
            return s.concept_id == id && s.match == Match::exact && s.last < n.first && s.last + 3u > n.first &&
                   s.first != s.last; // more than "but" or "sorry"
          }))
        return &n;
    return nullptr;
  }
  /// "make that 80": a row of its own that names nothing gives the last charge another sum.
  void correct() {
    for (std::size_t r = 1; r < rows_.size(); ++r) {
      const PaperRow& l = rows_[r];
      const Number* said = l.row.blank || l.other_party ? nullptr : corrected_to(l);
      if (said == nullptr) continue;
      std::size_t at = out_.list.size(), own = at;
      for (std::size_t k = 0; k < out_.list.size(); ++k) {
        if (out_.list[k].rows.empty()) continue;
        if (out_.list[k].rows.back() == r || out_.list[k].rows.front() == r) own = k;
        if (out_.list[k].rows.back() < r && is_charge_entry(out_.list[k])) at = k;
      }
      if (at == out_.list.size() || (own != out_.list.size() && out_.list[own].prose)) continue;
      Entry& e = out_.list[at];
      const Number& n = *said;
      const RoleOption was = e.options[0];
      e.figures.push_back({*n.money(), place_in(l, n), n.slip, e.figures[was.figure].right});
      for (RoleOption& o : e.options)
        if (o.role == SumRole::charge) o.cost += w_.leave_in_sentence;
      e.options.insert(e.options.begin(), {SumRole::charge, *n.money(), was.cost, e.figures.size() - 1});
      e.rows.push_back(r);
      if (own != out_.list.size()) out_.list.erase(out_.list.begin() + static_cast<std::ptrdiff_t>(own));
    }
  }

  /// What the tenant says in a chat is no charge, unless the sums come out with it.
  void leave_other_party() {
    for (Entry& e : out_.list) {
      if (e.rows.empty() || !rows_[e.rows.front()].other_party || e.options[0].role == SumRole::passing) continue;
      leave_out(e, e.passing_fate, w_.leave_in_sentence);
    }
  }

  /// "ok found the pic. forget the fan then": an earlier charge may no longer be one. The paper's sums decide.
  void take_back() {
    for (std::size_t r = 0; r < rows_.size(); ++r) {
      const PaperRow& l = rows_[r];
      if (l.row.blank || l.fate == "other-message" || !takes_back(l)) continue;
      if (Entry* e = taken_back_in(r)) {
        for (RoleOption& o : e->options)
          if (o.role == SumRole::passing) o.cost = std::min(o.cost, w_.leave_price_in_passing);
      }
    }
  }
  bool takes_back(const PaperRow& l) const {
    const Lexicon::Id id = rules_.statement().find("w:takes-back");
    return std::any_of(l.m.statement.begin(), l.m.statement.end(),
                       [&](const Mention& s) { return s.concept_id == id && s.match == Match::exact; });
  }
  /// The last charge above that shares a word with the row; where none does, the last charge of all.
  Entry* taken_back_in(std::size_t r) {
    static constexpr std::size_t near = 8, telling = 3;
    Entry* last = nullptr;
    for (std::size_t k = out_.list.size(); k-- > 0;) {
      Entry& e = out_.list[k];
      if (e.rows.empty() || e.rows.back() >= r || e.options[0].role != SumRole::charge) continue;
      if (last == nullptr && e.rows.back() + near > r) last = &e;
      for (const Token& t : split_words(e.charge.text))
        if (t.word() && t.text.size() >= telling && !is_word_of(t, "w:english", rules_) &&
            !is_word_of(t, "w:spanish", rules_) &&
            std::any_of(rows_[r].m.tokens.begin(), rows_[r].m.tokens.end(),
                        [&](const Token& o) { return o.text == t.text; }))
          return &e;
    }
    return last;
  }

  // ---------------------------------------------------------------------------------------- rows without a sum

  bool continues_pending(const PaperRow& l) const {
    if (l.row.bulleted) return false;
    const PaperRow& first = rows_[pending_.front()];
    const PaperRow& before = rows_[pending_.back()];
    if (&before + 1 != &l) return false;
    if (first.row.bulleted) return true;
    const char c = l.row.text[l.row.body];
    const bool lower = is_lower(c);
    const bool open = before.row.text.back() == ',' || before.row.text.back() == '-';
    if (label_of(before.m, rules_, 0, before.m.tokens.size()) == LabelKind::heading || before.row.text.back() == ':')
      return false;
    if (is_room(before, rules_) || only_capitals(before)) return false;
    if (open) return true;
    return (lower && before.m.tokens.size() > 4) || (l.row.indent > first.row.indent && before.m.tokens.size() > 4);
  }

  void take_pending(Entry& e) {
    std::vector<std::size_t> rows = pending_;
    for (const std::size_t r : pending_) {
      PaperRow& l = rows_[r];
      append_piece(e.charge.text, body_of(l));
      e.charge.places.push_back(place_in(l));
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
    const std::size_t words = static_cast<std::size_t>(
        std::count_if(l.m.tokens.begin(), l.m.tokens.end(), [](const Token& t) { return t.word(); }));
    section_credits_ =
        words <= 4 && mentions_word(l, rules_, "w:credits") && !mentions_word(l, rules_, "st:charge-word");
    const LabelKind kind = label_of(l.m, rules_, 0, l.m.tokens.size());
    section_holds_ =
        mentions_word(l, rules_, "st:held") || section_credits_ || (kind == LabelKind::deposit && words <= 2);
    holds_rows_ = section_holds_ && !section_credits_;
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
    s.attached = out_.sections.back().attached || (account_before() && mentions_word(l, rules_, "w:attached"));
    s.bill = mentions_word(l, rules_, "w:attached");
    out_.sections.push_back(std::move(s));
    section_ = out_.sections.size() - 1;
  }

  /// A bill ends with the blank line after its lines; what follows is of the account again.
  void end_bill() {
    const Section& now = out_.sections.back();
    if (!now.bill || now.attached || out_.list.empty() || out_.list.back().section != section_) return;
    Section s;
    s.heading = now.heading;
    s.follows = now.follows;
    out_.sections.push_back(std::move(s));
    section_ = out_.sections.size() - 1;
  }

  void words_row(std::size_t i) {
    PaperRow& l = rows_[i];
    if (!l.row.bulleted && !std::any_of(l.m.numbers.begin(), l.m.numbers.end(), is_strong) && begins_bill(l) &&
        account_before()) {
      flush_pending("no-amount");
      set_heading(l);
      columns_.reset();
      return;
    }
    if (!l.row.bulleted && !columns_ && l.row.cells.size() == 1 && names_account_number(l, rules_))
      return prose(i, i + 1);
    const bool dated = names_day(l);
    if (!l.row.speaker.empty() && says_account(l)) return prose(i, i + 1); // the date is that of the message
    if (dated && !l.row.bulleted) {
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
    if (const auto made = product_of(l, rules_)) return computed_row(i, *made);
    const char last = l.row.text.back();
    const bool attached =
        !money && l.m.tokens.size() < 12 && mentions_word(l, rules_, "w:attached") && account_before();
    if (!money &&
        (attached || last == ':' || kind == LabelKind::heading || is_room(l, rules_) || only_capitals(l) ||
         heads_deeper_rows(i)) &&
        !l.row.bulleted && !next_is_sum(i)) {
      flush_pending("no-amount");
      set_heading(l);
      return;
    }
    if (l.row.bulleted) {
      flush_pending("no-amount");
      if (money) return prose(i, i + 1); // "- The door: I paid $85.00 for it."
      pending_.push_back(i);
      return;
    }
    if (last_charge_ != nowhere && last_row_ + 1 == i && pending_.empty() && belongs_to_last(l)) {
      Entry& e = out_.list[last_charge_];
      append_piece(e.charge.text, body_of(l));
      e.charge.places.push_back(place_in(l));
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

  /// "INVOICE  Northside Floors  no. 4471  June 6": its first word is that of a bill.
  bool begins_bill(const PaperRow& l) const {
    const Lexicon::Id id = rules_.statement().find("w:attached");
    const std::size_t body = token_at(l.m, l.row.body);
    return l.m.tokens.size() < 24 && std::any_of(l.m.statement.begin(), l.m.statement.end(), [&](const Mention& s) {
             return s.concept_id == id && s.match == Match::exact && s.first <= body + 1u;
           });
  }

  /// A bare number and a word of the account in one message: "so thats 95, i'll send you 805".
  bool says_account(const PaperRow& l) const {
    static constexpr std::array<std::string_view, 5> words = {"st:deposit", "st:refund", "st:total", "st:leaves",
                                                              "st:makes"};
    return std::any_of(l.m.numbers.begin(), l.m.numbers.end(),
                       [&](const Number& n) { return can_be_sum(n) && l.m.tokens[n.first].start >= l.row.body; }) &&
           std::any_of(words.begin(), words.end(), [&](std::string_view id) { return mentions_word(l, rules_, id); });
  }

  /// A few words, and right under them two rows or more, set in alike, that end with their sums.
  bool heads_deeper_rows(std::size_t i) const {
    const PaperRow& l = rows_[i];
    if (l.m.tokens.size() > 4 || i + 2 >= rows_.size()) return false;
    const std::uint32_t indent = rows_[i + 1].row.indent;
    if (indent <= l.row.indent) return false;
    for (std::size_t k = i + 1; k <= i + 2; ++k) {
      const PaperRow& next = rows_[k];
      if (next.row.blank || next.row.rule || next.row.indent != indent || next.m.numbers.empty()) return false;
      const Number& sum = next.m.numbers.back();
      if (!is_strong(sum) || !ends_row(next, sum, rules_) || !has_words(next, 0, sum.first, rules_)) return false;
      const char first = next.row.text[next.row.body];
      if (k == i + 1 && is_lower(first) && l.m.tokens.size() > 2) return false; // goes on
    }
    return true;
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
    const bool lower = is_lower(c);
    return deeper && (lower || item.row.bulleted);
  }

  void computed_row(std::size_t i, const Product& made) {
    PaperRow& l = rows_[i];
    flush_pending("no-amount");
    Entry e;
    append_piece(e.charge.text, body_of(l));
    e.charge.places.push_back(place_in(l));
    e.charge.computed = true;
    e.charge.heading = heading_;
    e.figures.push_back({made.amount, place_in(l, l.m.numbers[made.price]), false, 0});
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
  const RecognizerRules& rules_;
  const ReadingWeights& w_;
  Entries& out_;
  std::optional<Columns> columns_;
  std::vector<std::size_t> pending_;
  std::string heading_;
  bool section_holds_ = false, section_credits_ = false;
  bool holds_rows_ = false; ///< under a heading of what is held, up to its foot or a blank line
  bool is_record_ = false;  ///< of items set out as "word: value"
  std::size_t section_ = 0;
  std::size_t last_charge_ = nowhere, last_row_ = nowhere;
};

} // namespace

void read_rows(StatementPaper& paper, const RecognizerRules& rules, Entries& out) {
  ListReader(paper, rules, out).run();
}

} // namespace wearline
