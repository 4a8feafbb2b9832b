#include "reading/statement_reader.h"

#include "reading/columns.h"
#include "reading/label.h"
#include "reading/prose.h"
#include "reading/rows.h"

#include <algorithm>
#include <array>
#include <map>
#include <string>

namespace wearline {

namespace {

constexpr std::size_t nowhere = static_cast<std::size_t>(-1);

/// A row with what its words and numbers are.
struct Looked {
  Row row;
  MarkedText m;
  std::string fate; ///< empty: not settled yet
};

bool can_be_sum(const Number& n) {
  return (n.kind == NumberKind::plain || n.kind == NumberKind::money) && n.money().has_value();
}
bool is_strong(const Number& n) { return n.kind == NumberKind::money; }

/// What one row says in its numbers.
struct Parsed {
  std::size_t number = nowhere;                ///< the sum of the row
  std::size_t label_first = 0, label_last = 0; ///< tokens of its description (end exclusive)
  std::size_t tail_first = 0; ///< tokens after the sum that belong to the description; = tokens.size() if none
  bool minus = false, plus = false, credit_column = false, balance_only = false;
  std::size_t second = nowhere; ///< the last number, where `number` is the one before: perhaps a running balance
  std::optional<std::int64_t> count;
  std::optional<Money> rate;
  std::string unit, room;
  std::vector<std::pair<std::uint32_t, std::uint32_t>> text; ///< byte ranges of the description
  bool found() const { return number != nowhere; }
};

class Reader {
public:
  Reader(std::string_view text, const RecogniserRules& rules, std::string_view language)
      : rules_(rules), charges_(rules.charges()), words_(rules.statement()),
        credit_(rules.charges().find("mark:credit")) {
    out_.language = language.empty() ? guess_language(text) : std::string(language);
    out_.style = number_style(text, out_.language == "es");
    out_.currency = guess_currency(text);
    for (Row& row : split_rows(text)) {
      Looked l;
      l.m = row.blank || row.rule ? MarkedText{} : mark(row.text, rules, out_.style);
      l.row = std::move(row);
      rows_.push_back(std::move(l));
    }
  }

  ReadStatement run() {
    choose_message();
    find_repeated();
    bare_sums_ = counts_bare();
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
    settle();
    collect_tray();
    return std::move(out_);
  }

private:
  // ------------------------------------------------------------------------------------------------------ the whole
  // text

  std::string guess_language(std::string_view text) const {
    static constexpr std::array<std::string_view, 14> spanish = {
        "de", "la", "el", "del", "los", "las", "por", "para", "deposito", "fecha", "con", "su", "se", "y"};
    static constexpr std::array<std::string_view, 14> english = {
        "the", "of", "and", "to", "deposit", "date", "for", "with", "your", "from", "in", "balance", "refund", "you"};
    int es = 0, en = 0;
    for (const Token& t : split_words(text.substr(0, 8000))) {
      if (!t.word()) continue;
      es += std::find(spanish.begin(), spanish.end(), t.text) != spanish.end();
      en += std::find(english.begin(), english.end(), t.text) != english.end();
    }
    return es > en ? "es" : "en";
  }

  std::string guess_currency(std::string_view text) const {
    const std::vector<Token> tokens = split_words(text);
    const auto& ids = rules_.statement_marks().currencies;
    static constexpr std::array<std::string_view, 5> codes = {"USD", "CAD", "EUR", "GBP", "MXN"};
    std::array<int, 5> seen{};
    for (const Mention& m : words_.mentions(tokens))
      for (std::size_t k = 0; k < ids.size(); ++k)
        if (m.concept_id == ids[k] && m.match == Match::exact) ++seen[k];
    for (const Token& t : tokens) seen[2] += t.is('\x80'), seen[3] += t.is('\x81');
    if (seen[1] > 0) return "CAD";
    if (seen[4] > 0 && seen[4] >= seen[0]) return "MXN";
    std::size_t best = 0;
    for (std::size_t k = 1; k < seen.size(); ++k)
      if (seen[k] > seen[best]) best = k;
    return seen[best] > 0 ? std::string(codes[best]) : std::string();
  }

  /// Quoted and unquoted text are different messages: the one with most sums is the statement.
  void choose_message() {
    std::map<int, int> sums;
    for (const Looked& l : rows_)
      for (const Number& n : l.m.numbers)
        if (is_strong(n)) ++sums[l.row.depth];
    int best = 0, most = 0;
    for (const auto& [depth, count] : sums)
      if (count > most) best = depth, most = count;
    if (most == 0) return;
    for (Looked& l : rows_)
      if (!l.row.blank && l.row.depth != best && sums.size() > 0) {
        const bool sum = std::any_of(l.m.numbers.begin(), l.m.numbers.end(), is_strong);
        if (sum || l.row.depth > best || (best > 0 && l.row.depth < best)) l.fate = "other-message";
      }
  }

  static std::string shape(const std::string& text) {
    std::string out;
    for (const char c : text)
      if (c != ' ' && c != '\t') out += c >= '0' && c <= '9' ? '0' : c;
    return out;
  }

  /// A row that comes again without a sum is the head or foot of a page.
  void find_repeated() {
    std::map<std::string, int> seen;
    for (Looked& l : rows_) {
      if (l.row.blank || l.row.rule || !l.fate.empty() ||
          std::any_of(l.m.numbers.begin(), l.m.numbers.end(), is_strong))
        continue;
      const std::string key = shape(l.row.text);
      if (key.size() < 12 || ++seen[key] < 2) continue;
      if (read_heads(l.row, l.m, rules_)) continue;
      l.fate = "page";
    }
  }

  /// Whether the paper writes its sums as bare whole numbers at the end of lines.
  bool counts_bare() const {
    int bare = 0, strong = 0;
    for (const Looked& l : rows_) {
      if (l.row.blank || l.m.numbers.empty() || !l.fate.empty()) continue;
      const Number& last = l.m.numbers.back();
      if (!can_be_sum(last) || !ends_row(l, last)) continue;
      if (is_strong(last)) ++strong;
      else ++bare;
    }
    return bare >= 2 && bare >= strong;
  }

  bool skip(std::size_t i) {
    Looked& l = rows_[i];
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

  // -------------------------------------------------------------------------------------------------------------
  // blocks

  bool reads_as_prose(std::size_t first, std::size_t last) const {
    std::size_t rows = 0, wide = 0, items = 0, length = 0, sums = 0, ends = 0;
    bool inner_stop = false;
    for (std::size_t i = first; i < last; ++i) {
      const Looked& l = rows_[i];
      if (!l.fate.empty()) continue;
      ++rows;
      length += l.row.text.size() - l.row.body;
      wide += l.row.cells.size() > 1;
      if (l.row.bulleted || l.row.tabular) return false;
      for (const Number& n : l.m.numbers) sums += is_strong(n);
      if (!l.m.numbers.empty() && can_be_sum(l.m.numbers.back()) && ends_row(l, l.m.numbers.back()) &&
          l.row.text.back() != '.')
        ++items;
      inner_stop = inner_stop || has_inner_stop(l.row.text);
      ends += l.row.text.back() == '.';
    }
    if (rows == 0 || wide * 3 > rows) return false;
    if (rows == 1) {
      const Looked& l = rows_[first];
      const bool flows = inner_stop || (l.row.text.back() == '.' && l.m.tokens.size() > 9) || l.m.tokens.size() > 40;
      return flows && (items == 0 || sums > 1);
    }
    if (items * 2 > rows) return false;
    return length / rows >= 38 || inner_stop || ends * 2 > rows;
  }

  static bool has_inner_stop(const std::string& t) {
    for (std::size_t i = 1; i + 2 < t.size(); ++i)
      if ((t[i] == '.' || t[i] == '!' || t[i] == '?') && t[i + 1] == ' ' && t[i + 2] >= 'A' && t[i + 2] <= 'Z' &&
          t[i - 1] >= 'a' && t[i - 1] <= 'z') {
        std::size_t word = i;
        while (word > 0 && t[word - 1] != ' ') --word;
        if (i - word > 3) return true;
      }
    return false;
  }

  void block(std::size_t first, std::size_t last) {
    if (!columns_ && reads_as_prose(first, last)) return prose(first, last);
    for (std::size_t i = first; i < last; ++i) {
      if (rows_[i].row.rule) rows_[i].fate = "rule";
      if (rows_[i].fate.empty()) list_row(i);
    }
  }

  void prose(std::size_t first, std::size_t last) {
    flush_pending("no-amount");
    std::vector<ProseLine> lines;
    for (std::size_t i = first; i < last; ++i)
      if (rows_[i].fate.empty())
        lines.push_back({std::string_view(rows_[i].row.text).substr(rows_[i].row.body), rows_[i].row.line,
                         rows_[i].row.offset + rows_[i].row.body, i});
    ProseResult found = read_prose(lines, rules_, out_.style);
    for (std::size_t k = 0; k < lines.size(); ++k) rows_[lines[k].row].fate = found.fates[k];
    for (ReadCharge& c : found.charges) out_.charges.push_back(std::move(c));
    for (auto& [kind, sum] : found.sums) add_sum(kind, std::move(sum));
    for (ReadDate& d : found.dates) out_.dates.push_back(d);
  }

  // ---------------------------------------------------------------------------------------------------------------
  // rows

  std::size_t token_at(const Looked& l, std::uint32_t byte) const {
    std::size_t i = 0;
    while (i < l.m.tokens.size() && l.m.tokens[i].start < byte) ++i;
    return i;
  }

  bool closing_mark(const Looked& l, std::size_t t) const {
    const Token& token = l.m.tokens[t];
    if (!token.word()) return !token.number() && !token.is('%');
    return token.text == "cr" || token.text == "dr" || token.text == "usd" || token.text == "cad" || token.text == "db";
  }

  /// Nothing but signs after the number, or "CR".
  bool ends_row(const Looked& l, const Number& n) const {
    for (std::size_t t = n.last + 1u; t < l.m.tokens.size(); ++t)
      if (!closing_mark(l, t)) return false;
    return true;
  }

  /// The number a cell holds, if it holds nothing else.
  std::size_t lone_number(const Looked& l, std::size_t cell) const {
    const Cell& c = l.row.cells[cell];
    const std::size_t first = token_at(l, c.start), last = token_at(l, c.end);
    for (std::size_t k = 0; k < l.m.numbers.size(); ++k) {
      const Number& n = l.m.numbers[k];
      if (n.last < first || n.first >= last) continue;
      for (std::size_t t = first; t < last; ++t)
        if ((t < n.first || t > n.last) && !closing_mark(l, t)) return nowhere;
      return k;
    }
    return nowhere;
  }

  bool sign_cell(const Looked& l, std::size_t cell) const {
    const std::string_view t = l.row.cell(cell);
    return t == "-" || t == "+" || t == "$" || t == "\xE2\x80\x93" || t == "\xE2\x88\x92" || t == "- $" || t == "+ $" ||
           t == "-$" || t == "+$";
  }

  void take_sign_cell(const Looked& l, std::size_t cell, Parsed& p) const {
    const std::string_view t = l.row.cell(cell);
    if (t[0] == '+') p.plus = true;
    else if (t[0] != '$') p.minus = true;
  }

  bool is_measure(const Looked& l, const Number& n) const {
    if (n.currency) return false;
    for (const Mention& m : l.m.charge)
      if (m.first == n.last + 1u && charges_.at(m.concept_id).id.compare(0, 5, "unit:") == 0 &&
          charges_.at(m.concept_id).id != "unit:each")
        return true;
    return false;
  }

  void set_label_cells(const Looked& l, Parsed& p, const std::vector<std::size_t>& cells) const {
    p.label_first = l.m.tokens.size();
    p.label_last = 0;
    for (const std::size_t c : cells) {
      const Cell& cell = l.row.cells[c];
      p.text.emplace_back(cell.start, cell.end);
      p.label_first = std::min(p.label_first, token_at(l, cell.start));
      p.label_last = std::max(p.label_last, token_at(l, cell.end));
    }
    if (p.label_first > p.label_last) p.label_first = p.label_last = 0;
    p.tail_first = l.m.tokens.size();
  }

  /// A row under heads: every number by its column.
  Parsed by_columns(const Looked& l) const {
    Parsed p;
    if (l.row.cells.empty()) return p;
    const Columns& c = *columns_;
    std::vector<std::size_t> label;
    std::size_t balance = nowhere, credit = nowhere, last_money = nowhere;
    for (std::size_t i = 0; i < l.row.cells.size(); ++i) {
      if (l.row.cells[i].start == l.row.cells[i].end) continue;
      const std::size_t n = lone_number(l, i);
      const auto column = column_of(c, l.row, i);
      const ColumnKind kind = column ? c.columns[*column].kind : ColumnKind::unknown;
      if (sign_cell(l, i)) {
        const bool at_next = i + 1 < l.row.cells.size() && lone_number(l, i + 1) != nowhere && !l.row.tabular &&
                             column_of(c, l.row, i + 1) == column;
        if (at_next) take_sign_cell(l, i, p);
        continue;
      }
      if (n == nowhere || !can_be_sum(l.m.numbers[n])) {
        if (kind == ColumnKind::room) p.room = std::string(l.row.cell(i));
        else if (kind == ColumnKind::unit) p.unit = std::string(l.row.cell(i));
        else if (n != nowhere && (kind == ColumnKind::date || kind == ColumnKind::number || kind == ColumnKind::fact))
          continue;
        else if (kind == ColumnKind::text || kind == ColumnKind::unknown || label.empty()) label.push_back(i);
        continue;
      }
      const Number& number = l.m.numbers[n];
      const auto money = number.money();
      if (column && c.charge && *column == *c.charge) p.number = n;
      else if (column && c.credit && *column == *c.credit) credit = n;
      else if (kind == ColumnKind::balance) balance = n;
      else if (kind == ColumnKind::quantity) p.count = number.thousandths;
      else if (kind == ColumnKind::rate) p.rate = money;
      else if (kind == ColumnKind::unknown && is_strong(number)) last_money = n;
      else if (kind == ColumnKind::text) label.push_back(i);
    }
    set_label_cells(l, p, label);
    if (!p.found() && credit != nowhere) p.number = credit, p.credit_column = true;
    if (p.found() && credit != nowhere && !p.credit_column) p.second = credit;
    if (!p.found() && balance != nowhere) p.number = balance, p.balance_only = true;
    if (!p.found() && last_money != nowhere) p.number = last_money;
    return p;
  }

  bool acceptable(const Looked& l, const Number& n, bool apart) const {
    if (!can_be_sum(n) || is_measure(l, n)) return false;
    if (is_strong(n)) return true;
    if (n.thousandths == 0) return false;
    return apart || bare_sums_;
  }

  /// A row without heads: the numbers at its end, in cells of their own or after the words.
  Parsed by_shape(const Looked& l) const {
    Parsed p;
    const std::size_t cells = l.row.cells.size();
    std::size_t first_number = cells;
    std::vector<std::size_t> numbers;
    while (first_number > 0) {
      const std::size_t c = first_number - 1;
      const std::size_t n = lone_number(l, c);
      if (n != nowhere && can_be_sum(l.m.numbers[n])) numbers.insert(numbers.begin(), n);
      else if (!sign_cell(l, c) && l.row.cells[c].start != l.row.cells[c].end &&
               !(n != nowhere && l.m.numbers[n].kind == NumberKind::percent && !numbers.empty()) &&
               !unit_cell(l, c, numbers))
        break;
      --first_number;
    }
    if (!numbers.empty() && acceptable(l, l.m.numbers[numbers.back()], first_number > 0)) {
      p.number = numbers.back();
      if (numbers.size() >= 2) p.second = numbers[numbers.size() - 2];
      std::vector<std::size_t> label;
      for (std::size_t c = 0; c < first_number; ++c)
        if (!(c == 0 && first_number > 1 && is_marginal(l, c)) && l.row.cells[c].end > l.row.cells[c].start)
          label.push_back(c);
      set_label_cells(l, p, label);
      for (std::size_t c = first_number; c + 1 < cells; ++c)
        if (sign_cell(l, c) && !l.row.tabular && lone_number(l, c + 1) == p.number) take_sign_cell(l, c, p);
      return p;
    }
    return by_words(l);
  }

  /// "4  each  22.00  88.00": a unit between numbers does not end them.
  bool unit_cell(const Looked& l, std::size_t cell, const std::vector<std::size_t>& numbers) const {
    if (numbers.empty() || l.row.cells[cell].end - l.row.cells[cell].start > 8 || cell == 0) return false;
    const std::size_t t = token_at(l, l.row.cells[cell].start);
    return std::any_of(l.m.charge.begin(), l.m.charge.end(),
                       [&](const Mention& m) {
                         return m.first == t && charges_.at(m.concept_id).id.compare(0, 5, "unit:") == 0;
                       }) &&
           lone_number(l, cell - 1) != nowhere;
  }

  /// A first cell that is only a date or a number of the line.
  bool is_marginal(const Looked& l, std::size_t cell) const {
    const std::size_t n = lone_number(l, cell);
    return n != nowhere && (l.m.numbers[n].kind == NumberKind::date ||
                            (l.m.numbers[n].whole && l.m.numbers[n].thousandths < 1'000'000));
  }

  Parsed by_words(const Looked& l) const {
    Parsed p;
    std::size_t pick = nowhere;
    for (std::size_t k = l.m.numbers.size(); k-- > 0;) {
      const Number& n = l.m.numbers[k];
      if (in_remark(l, n)) continue; // "$1,050.00 (two checks of $525.00)"
      if ((ends_row(l, n) || ends_before_remark(l, n)) && acceptable(l, n, after_divider(l, n)) && !n.rate &&
          !priced_by(l, k)) {
        pick = k;
        break;
      }
    }
    const auto begins = [&](const Number& n) { return !has_words(l, 0, n.first) && is_strong(n); };
    if (pick == nowhere && !l.m.numbers.empty() && begins(l.m.numbers.front()) && !l.m.numbers.front().rate) pick = 0;
    if (pick == nowhere) { // one sum inside the line
      std::size_t strong = 0;
      for (std::size_t k = 0; k < l.m.numbers.size(); ++k)
        if (is_strong(l.m.numbers[k]) && acceptable(l, l.m.numbers[k], true) && !l.m.numbers[k].rate &&
            !priced_by(l, k))
          ++strong, pick = k;
      if (strong != 1) pick = nowhere;
    }
    if (pick == nowhere) return p;
    const Number& n = l.m.numbers[pick];
    p.number = pick;
    p.label_first = token_at(l, l.row.body);
    p.label_last = n.first;
    p.tail_first = n.last + 1u;
    std::uint32_t to = n.first < l.m.tokens.size() ? l.m.tokens[n.first].start : 0;
    if (to > l.row.body) p.text.emplace_back(l.row.body, to);
    if (!ends_row(l, n)) p.text.emplace_back(l.m.tokens[n.last].end, static_cast<std::uint32_t>(l.row.text.size()));
    if (p.label_last <= p.label_first) p.label_first = p.tail_first, p.label_last = l.m.tokens.size();
    return p;
  }

  /// Inside brackets that hold words too.
  bool in_remark(const Looked& l, const Number& n) const {
    std::size_t open = nowhere;
    for (std::size_t t = 0; t < n.first; ++t) {
      if (l.m.tokens[t].is('(')) open = t;
      if (l.m.tokens[t].is(')')) open = nowhere;
    }
    if (open == nowhere || open == 0) return false;
    for (std::size_t t = open + 1; t < l.m.tokens.size() && !l.m.tokens[t].is(')'); ++t)
      if (l.m.tokens[t].word() && l.m.tokens[t].text != "cr") return true;
    return false;
  }
  /// Nothing but a remark in brackets after the number.
  bool ends_before_remark(const Looked& l, const Number& n) const {
    std::size_t t = n.last + 1u;
    if (t >= l.m.tokens.size() || !l.m.tokens[t].is('(')) return false;
    return l.m.tokens.back().is(')') || l.row.text.back() == ')';
  }

  /// "6 x 6.00": the price of a count.
  bool priced_by(const Looked& l, std::size_t k) const {
    const Number& n = l.m.numbers[k];
    return k > 0 && n.first > 0 && l.m.tokens[n.first - 1u].text == "x" && l.m.numbers[k - 1].last + 2u == n.first;
  }

  bool after_divider(const Looked& l, const Number& n) const {
    if (n.first == 0) return false;
    const Token& t = l.m.tokens[n.first - 1u];
    return t.is(':') || t.is('=') || (t.is('-') && !t.glued) || t.is('>');
  }

  Parsed parse(const Looked& l) const {
    if (columns_) {
      Parsed p = by_columns(l);
      if (p.found()) return p;
      if (l.row.tabular) return p;
    }
    return by_shape(l);
  }

  // -------------------------------------------------------------------------------------------------------------- sums

  TextPlace place_of(const Looked& l, std::uint32_t start, std::uint32_t end) const {
    return {l.row.line, l.row.offset + start, l.row.offset + end};
  }
  TextPlace place_of(const Looked& l, const Number& n) const {
    return place_of(l, l.m.tokens[n.first].start, l.m.tokens[n.last].end);
  }

  struct Sum {
    LabelKind kind;
    StatedSum sum;
    bool directed = false; ///< names who gets it
    std::size_t charges_before = 0;
  };

  void add_sum(LabelKind kind, StatedSum sum, bool directed = true) {
    sums_.push_back({kind, std::move(sum), directed, out_.charges.size()});
  }

  bool names_direction(const Looked& l, std::size_t first, std::size_t last) const {
    for (const Mention& m : l.m.statement) {
      if (m.first < first || m.last >= last) continue;
      const std::string& id = words_.at(m.concept_id).id;
      if (id == "st:you" || id == "st:owner") return true;
      for (std::size_t t = m.first; t <= m.last; ++t)
        for (const char* word : {"you", "your", "tenant", "tenants", "inquilino", "favor", "landlord", "owe", "owes",
                                 "owed", "refund", "refunded", "returned", "enclosed", "back", "us"})
          if (l.m.tokens[t].text == word) return true;
    }
    return false;
  }

  /// "Deposit 1,000.00, less 380.75, refund 619.25": several sums, each with its word before it.
  bool several_sums(std::size_t i) {
    Looked& l = rows_[i];
    std::vector<std::size_t> strong;
    for (std::size_t k = 0; k < l.m.numbers.size(); ++k)
      if (can_be_sum(l.m.numbers[k]) && (is_strong(l.m.numbers[k]) || l.m.numbers[k].after_equals)) strong.push_back(k);
    if (strong.size() < 2) return false;
    std::vector<LabelKind> kinds;
    std::size_t from = token_at(l, l.row.body);
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
      if (kind == LabelKind::none || kind == LabelKind::fact || kind == LabelKind::letter || kind == LabelKind::heading)
        return false;
      deposit = deposit || kind == LabelKind::deposit || kind == LabelKind::held;
      kinds.push_back(kind);
      from = n.last + 1u;
    }
    from = token_at(l, l.row.body);
    for (std::size_t k = 0; k < strong.size(); ++k) {
      const Number& n = l.m.numbers[strong[k]];
      const bool directed = names_direction(l, from, n.first);
      add_sum(kinds[k],
              {l.row.text.substr(l.m.tokens[std::min<std::size_t>(from, n.first)].start,
                                 l.m.tokens[n.first].start - l.m.tokens[std::min<std::size_t>(from, n.first)].start),
               *n.money(), place_of(l, n)},
              directed);
      from = n.last + 1u;
    }
    l.fate = "sums";
    return true;
  }

  bool mentions_word(const Looked& l, std::string_view id, std::size_t first, std::size_t last) const {
    const Lexicon::Id wanted = words_.find(id);
    return std::any_of(l.m.statement.begin(), l.m.statement.end(),
                       [&](const Mention& m) { return m.concept_id == wanted && m.first >= first && m.last < last; });
  }

  // --------------------------------------------------------------------------------------------------------------
  // dates

  static DateKind date_kind(std::string_view id) {
    if (id == "date:statement") return DateKind::statement;
    if (id == "date:move-out") return DateKind::move_out;
    if (id == "date:move-in") return DateKind::move_in;
    if (id == "date:due") return DateKind::due;
    if (id == "date:inspected") return DateKind::inspected;
    return DateKind::unknown;
  }

  /// The dates of a row, each with the word before it; a date alone on its line is the statement's.
  bool take_dates(const Looked& l) {
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
      if (kind == DateKind::unknown && !columns_ &&
          (n.first <= token_at(l, l.row.body) || (n.first <= token_at(l, l.row.body) + 3 && ends_row(l, n))))
        kind = DateKind::statement;
      out_.dates.push_back({kind, *day, place_of(l, n)});
      any = true;
      from = n.last + 1u;
    }
    return any;
  }

  // --------------------------------------------------------------------------------------------------------- list rows

  void list_row(std::size_t i) {
    Looked& l = rows_[i];
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
    const Parsed p = parse(l);
    if (!p.found()) return words_row(i);
    const bool empty_label = p.label_last <= p.label_first || !has_words(l, p.label_first, p.label_last);
    if (empty_label && pending_.empty()) return bare_row(i, p);
    if (empty_label) return close_pending(i, p);
    const LabelKind kind = label_of(l.m, rules_, p.label_first, p.label_last);
    if (p.credit_column && kind != LabelKind::deposit && kind != LabelKind::interest && kind != LabelKind::held &&
        kind != LabelKind::refund)
      return charge_row(i, p);
    if (in_brackets(l)) return detail_row(i);
    if (section_is_held_ && kind == LabelKind::none && mentions_rent(l)) return sum_row(i, p, LabelKind::deposit);
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
  bool is_sentence(const Looked& l) const {
    if (l.row.bulleted || l.row.cells.size() > 1 || columns_) return false;
    std::size_t sums = 0;
    for (const Number& n : l.m.numbers) sums += is_strong(n) && !n.rate && !n.after_equals;
    if (sums == 0) return false;
    const bool announces = l.row.text.back() == ':' && is_strong(l.m.numbers.back());
    const bool ends = l.row.text.back() == '.' && l.m.tokens.size() > 8 && sums >= 2;
    return has_inner_stop(l.row.text) || announces || ends || sums >= 3 || (sums == 2 && strung(l));
  }

  /// "Oven cleaned  40.00    Fridge cleaned  30.00": two charges side by side.
  bool pairs_row(std::size_t i) {
    Looked& l = rows_[i];
    if (columns_ || l.row.tabular || l.row.cells.size() < 4 || l.row.cells.size() % 2 != 0) return false;
    for (std::size_t c = 0; c < l.row.cells.size(); c += 2) {
      const std::size_t n = lone_number(l, c + 1);
      if (lone_number(l, c) != nowhere || sign_cell(l, c) || n == nowhere || !is_strong(l.m.numbers[n]) ||
          !l.m.numbers[n].money())
        return false;
      const std::size_t first = token_at(l, l.row.cells[c].start), last = token_at(l, l.row.cells[c].end);
      if (!has_words(l, first, last) || label_of(l.m, rules_, first, last) != LabelKind::none) return false;
    }
    flush_pending("no-amount");
    for (std::size_t c = 0; c < l.row.cells.size(); c += 2) {
      Parsed p;
      p.number = lone_number(l, c + 1);
      set_label_cells(l, p, {c});
      charge_row(i, p);
    }
    return true;
  }

  /// "stove 40.00, floor 30.00": a comma after a sum, and words before the next.
  bool strung(const Looked& l) const {
    for (std::size_t k = 0; k + 1 < l.m.numbers.size(); ++k) {
      const Number& n = l.m.numbers[k];
      const std::size_t t = n.last + 1u;
      if (!is_strong(n) || n.rate || t >= l.m.tokens.size() || !(l.m.tokens[t].is(',') || l.m.tokens[t].is(';')))
        continue;
      if (has_words(l, token_at(l, l.row.body), n.first) && names_charge_between(l, t, l.m.numbers[k + 1].first))
        return true;
    }
    return false;
  }
  bool names_charge_between(const Looked& l, std::size_t first, std::size_t last) const {
    return std::any_of(l.m.charge.begin(), l.m.charge.end(), [&](const Mention& m) {
      const Role role = charges_.at(m.concept_id).role;
      return m.first >= first && m.last < last && (role == Role::thing || role == Role::work);
    });
  }

  bool mentions_rent(const Looked& l) const {
    return std::any_of(l.m.charge.begin(), l.m.charge.end(),
                       [&](const Mention& m) { return charges_.at(m.concept_id).id == "rent"; });
  }

  bool has_words(const Looked& l, std::size_t first, std::size_t last) const {
    for (std::size_t t = first; t < last; ++t)
      if (l.m.tokens[t].word() && !(l.m.tokens[t].text == "usd" || l.m.tokens[t].text == "cr")) return true;
    return false;
  }

  /// A sum without words: the sum of what stands above, or nothing we know.
  void bare_row(std::size_t i, const Parsed& p) {
    Looked& l = rows_[i];
    const Number& n = l.m.numbers[p.number];
    if (last_charge_ != nowhere && i > 0 && last_row_ + 1 == i && out_.charges[last_charge_].amount_place.line == 0)
      return;
    for (const Number& each : l.m.numbers)
      if (can_be_sum(each)) out_.others.push_back({std::string(), *each.money(), place_of(l, each)});
    (void)n;
    l.fate = "sum-without-words";
  }

  bool in_brackets(const Looked& l) const { return l.row.text[l.row.body] == '(' && l.row.text.back() == ')'; }

  /// Says more about the charge above it; its sums are part of that one, or none.
  void detail_row(std::size_t i) {
    Looked& l = rows_[i];
    if (last_charge_ == nowhere) {
      l.fate = "information";
      return;
    }
    l.fate = "detail";
    out_.charges[last_charge_].places.push_back(place_of(l, l.row.body, static_cast<std::uint32_t>(l.row.text.size())));
    last_row_ = i;
  }

  /// Rows set in under a charge whose sums come to that charge only split it up.
  void take_details(std::size_t i) {
    const Looked& l = rows_[i];
    const Money whole = out_.charges[last_charge_].amount;
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

  void fact_row(std::size_t i, const Parsed& p) {
    Looked& l = rows_[i];
    const Number& n = l.m.numbers[p.number];
    const bool at_end = ends_row(l, n) && (l.row.cells.size() > 1 || is_strong(n)) && !n.rate && !n.bracketed;
    if (at_end && names_charge(l)) return charge_row(i, p);
    l.fate = "information";
    take_dates(l);
  }

  bool names_charge(const Looked& l) const {
    return std::any_of(l.m.charge.begin(), l.m.charge.end(), [&](const Mention& m) {
      const Role role = charges_.at(m.concept_id).role;
      return role == Role::thing || role == Role::work;
    });
  }

  void sum_row(std::size_t i, const Parsed& p, LabelKind kind) {
    Looked& l = rows_[i];
    flush_pending("no-amount");
    const Number& n = l.m.numbers[p.number];
    Money amount = *n.money();
    std::string text = description(l, p);
    const bool directed = names_direction(l, p.label_first, p.label_last);
    if (kind == LabelKind::held && split_held(l, p)) {
      l.fate = "held";
      return;
    }
    if ((n.bracketed || n.minus) &&
        (kind == LabelKind::balance || kind == LabelKind::refund || kind == LabelKind::due) && !directed)
      kind = LabelKind::due;
    if (kind == LabelKind::deposit || kind == LabelKind::interest) take_dates(l);
    add_sum(kind, {std::move(text), amount, place_of(l, n)}, directed);
    static const std::map<LabelKind, std::string> fates = {
        {LabelKind::total, "total"},    {LabelKind::subtotal, "subtotal"}, {LabelKind::carried, "carried"},
        {LabelKind::held, "held"},      {LabelKind::deposit, "deposit"},   {LabelKind::interest, "interest"},
        {LabelKind::refund, "refund"},  {LabelKind::due, "balance-due"},   {LabelKind::payment, "payment"},
        {LabelKind::balance, "balance"}};
    const auto fate = fates.find(kind);
    l.fate = fate == fates.end() ? "sums" : fate->second;
    last_charge_ = nowhere;
  }

  /// "Deposit and interest ($1,300.00 + $6.50)  $1,306.50"
  bool split_held(const Looked& l, const Parsed& p) {
    std::vector<const Number*> parts;
    for (std::size_t k = 0; k < l.m.numbers.size(); ++k)
      if (k != p.number && is_strong(l.m.numbers[k]) && l.m.numbers[k].money()) parts.push_back(&l.m.numbers[k]);
    if (parts.size() != 2 || *parts[0]->money() + *parts[1]->money() != *l.m.numbers[p.number].money()) return false;
    const Number& first = *parts[0];
    const Number& second = *parts[1];
    const bool interest = fold(l.row.text).find("inter") != std::string::npos;
    add_sum(LabelKind::deposit, {description(l, p), *first.money(), place_of(l, first)});
    add_sum(interest ? LabelKind::interest : LabelKind::deposit,
            {description(l, p), *second.money(), place_of(l, second)});
    return true;
  }

  std::string description(const Looked& l, const Parsed& p) const {
    std::string out;
    for (const auto& [start, end] : p.text) append(out, std::string_view(l.row.text).substr(start, end - start));
    return out;
  }

  static void append(std::string& out, std::string_view piece) {
    while (
        !piece.empty() && std::string_view(" \t:;,-=.").find(piece.back()) != std::string_view::npos &&
        !(piece.back() == '.' && piece.size() > 1 && piece[piece.size() - 2] != '.' && piece[piece.size() - 2] != ' '))
      piece.remove_suffix(1);
    while (!piece.empty() && (piece.front() == ' ' || piece.front() == '\t' || piece.front() == ':' ||
                              piece.front() == '-' || piece.front() == '='))
      piece.remove_prefix(1);
    if (piece.empty()) return;
    if (!out.empty()) out += ' ';
    out += piece;
  }

  bool is_tax(const Looked& l, const Parsed& p) const {
    const Lexicon::Id tax = charges_.find("tax");
    return std::any_of(l.m.charge.begin(), l.m.charge.end(), [&](const Mention& m) {
      return m.concept_id == tax && m.first >= p.label_first && m.last < p.label_last;
    });
  }
  /// "Credit for paint", "35.00 CR". A credit check and a credit card are no credit.
  bool is_credit(const Looked& l, const Parsed& p) const {
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

  void charge_row(std::size_t i, const Parsed& p) {
    Looked& l = rows_[i];
    const Number& n = l.m.numbers[p.number];
    ReadCharge c;
    const bool joins_pending = !pending_.empty() && continues_pending(l);
    if (joins_pending) take_pending(c);
    else flush_pending("no-amount");
    append(c.text, description(l, p));
    for (const auto& [start, end] : p.text) c.places.push_back(place_of(l, start, end));
    finish_charge(i, p, n, std::move(c));
  }

  /// A sum alone on its line closes the description above it.
  void close_pending(std::size_t i, const Parsed& p) {
    Looked& l = rows_[i];
    const Looked& last = rows_[pending_.back()];
    const LabelKind kind = label_of(last.m, rules_, 0, last.m.tokens.size());
    if (kind != LabelKind::none && kind != LabelKind::heading && kind != LabelKind::letter && kind != LabelKind::fact &&
        kind != LabelKind::page) {
      const Number& n = l.m.numbers[p.number];
      std::string text(last.row.text.substr(last.row.body));
      const bool directed = names_direction(last, 0, last.m.tokens.size());
      rows_[pending_.back()].fate = "sums";
      pending_.pop_back();
      flush_pending("no-amount");
      add_sum(kind, {std::move(text), *n.money(), place_of(l, n)}, directed);
      l.fate = "sums";
      return;
    }
    ReadCharge c;
    take_pending(c);
    finish_charge(i, p, l.m.numbers[p.number], std::move(c));
  }

  void finish_charge(std::size_t i, const Parsed& p, const Number& n, ReadCharge c) {
    Looked& l = rows_[i];
    c.amount = *n.money();
    c.amount_place = place_of(l, n);
    c.heading = p.room.empty() ? heading_ : p.room;
    c.count = p.count;
    c.unit = p.unit;
    c.rate = p.rate;
    if (is_tax(l, p)) c.role = ChargeRole::tax;
    if (p.credit_column || is_credit(l, p)) c.role = ChargeRole::credit;
    if (is_free(l, n)) c.amount = Money{};
    Marks marks;
    marks.minus = p.minus || n.minus || n.bracketed;
    marks.plus = p.plus || n.plus;
    marks.second = p.second;
    marks.row = i;
    marks.number = p.number;
    marks_.push_back(marks);
    marks_.back().charge = out_.charges.size();
    out_.charges.push_back(std::move(c));
    last_charge_ = out_.charges.size() - 1;
    last_row_ = i;
    l.fate = "charge";
    if (!columns_) take_details(i);
  }

  bool is_free(const Looked& l, const Number& n) const {
    return std::any_of(l.m.charge.begin(), l.m.charge.end(), [&](const Mention& m) {
      return m.concept_id == rules_.charge_marks().free && m.first > n.last;
    });
  }

  // -------------------------------------------------------------------------------------------- rows without a sum

  bool continues_pending(const Looked& l) const {
    if (l.row.bulleted) return false;
    const Looked& first = rows_[pending_.front()];
    const Looked& before = rows_[pending_.back()];
    if (&rows_[pending_.back()] + 1 != &l) return false;
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

  bool only_capitals(const Looked& l) const {
    bool word = false;
    for (const Token& t : l.m.tokens)
      if (t.word()) {
        if (!t.capitals && t.text.size() > 1) return false;
        word = true;
      }
    return word;
  }

  /// Nothing but the name of a room.
  bool is_room(const Looked& l) const {
    std::size_t words = 0, known = 0;
    std::vector<bool> place(l.m.tokens.size(), false);
    for (const Mention& m : l.m.charge)
      if (charges_.at(m.concept_id).role == Role::place)
        for (std::size_t t = m.first; t <= m.last; ++t) place[t] = true;
    for (std::size_t t = 0; t < l.m.tokens.size(); ++t)
      if (l.m.tokens[t].word()) ++words, known += place[t];
    return words > 0 && words == known;
  }

  void take_pending(ReadCharge& c) {
    for (const std::size_t r : pending_) {
      Looked& l = rows_[r];
      append(c.text, std::string_view(l.row.text).substr(l.row.body));
      c.places.push_back(place_of(l, l.row.body, static_cast<std::uint32_t>(l.row.text.size())));
      l.fate = "charge";
    }
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
    Looked& l = rows_[pending_.front()];
    set_heading(l);
    pending_.clear();
  }

  void set_heading(Looked& l) {
    heading_ = l.row.text.substr(l.row.body);
    while (!heading_.empty() && std::string_view(" :.-=\t").find(heading_.back()) != std::string_view::npos)
      heading_.pop_back();
    const std::string folded = fold(heading_);
    section_is_held_ = mentions_word(l, "st:held", 0, l.m.tokens.size() + 1) || folded == "deposits" ||
                       folded == "credits" || folded == "deposit";
    l.fate = "heading";
  }

  void words_row(std::size_t i) {
    Looked& l = rows_[i];
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
    if (const auto made = product(l); made && !l.row.blank) return computed_row(i, *made);
    const char last = l.row.text.back();
    if (!money && (last == ':' || kind == LabelKind::heading || is_room(l) || only_capitals(l)) && !l.row.bulleted &&
        !next_is_sum(i)) {
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
      ReadCharge& c = out_.charges[last_charge_];
      append(c.text, std::string_view(l.row.text).substr(l.row.body));
      c.places.push_back(place_of(l, l.row.body, static_cast<std::uint32_t>(l.row.text.size())));
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
      const Looked& next = rows_[k];
      return next.m.numbers.size() == 1 && can_be_sum(next.m.numbers[0]) && !has_words(next, 0, next.m.tokens.size());
    }
    return false;
  }

  /// Words after a row that already had its sum: deeper than the row, in small letters or in brackets.
  bool belongs_to_last(const Looked& l) const {
    const Looked& item = rows_[last_row_];
    const char c = l.row.text[l.row.body];
    if (c == '(') return true;
    const bool deeper = l.row.indent > item.row.indent;
    const bool lower = c >= 'a' && c <= 'z';
    return deeper && (lower || item.row.bulleted);
  }

  struct Product {
    Money amount;
    std::size_t count, price;
  };
  /// "Blinds 3 @ 24.00" without a sum: count and price side by side.
  std::optional<Product> product(const Looked& l) const {
    for (std::size_t k = 0; k + 1 < l.m.numbers.size(); ++k) {
      const Number& count = l.m.numbers[k];
      const Number& price = l.m.numbers[k + 1];
      if (count.kind != NumberKind::plain || count.currency || count.thousandths == 0 || !is_strong(price) ||
          !ends_with_each(l, price))
        continue;
      if (!sign_between(l, count.last, price.first)) continue;
      const std::int64_t cents = count.thousandths * (price.thousandths / 10);
      if (cents % 1000 != 0) continue;
      return Product{Money::cents(cents / 1000), k, k + 1};
    }
    return std::nullopt;
  }
  bool ends_with_each(const Looked& l, const Number& n) const {
    for (std::size_t t = n.last + 1u; t < l.m.tokens.size(); ++t)
      if (l.m.tokens[t].word() && l.m.tokens[t].text != "ea" && l.m.tokens[t].text != "each" &&
          l.m.tokens[t].text != "per" && l.m.tokens[t].text != "hr" && l.m.tokens[t].text != "hour")
        return false;
    return true;
  }
  bool sign_between(const Looked& l, std::size_t from, std::size_t to) const {
    if (to - from > 3) return false;
    for (std::size_t t = from + 1; t < to; ++t)
      if (l.m.tokens[t].is('@') || l.m.tokens[t].text == "x" || l.m.tokens[t].text == "at") return true;
    return false;
  }

  void computed_row(std::size_t i, const Product& made) {
    Looked& l = rows_[i];
    flush_pending("no-amount");
    ReadCharge c;
    append(c.text, std::string_view(l.row.text).substr(l.row.body));
    c.places.push_back(place_of(l, l.row.body, static_cast<std::uint32_t>(l.row.text.size())));
    c.amount = made.amount;
    c.computed = true;
    c.heading = heading_;
    c.amount_place = place_of(l, l.m.numbers[made.price]);
    marks_.push_back({});
    marks_.back().charge = out_.charges.size();
    out_.charges.push_back(std::move(c));
    last_charge_ = out_.charges.size() - 1;
    last_row_ = i;
    l.fate = "charge";
  }

  // -------------------------------------------------------------------------------------------------------------
  // settle

  void settle() {
    running_balances();
    signs();
    settle_sums();
    settle_date();
    check();
  }

  /// A last column that falls (or rises) by the number before it is a running balance; the charge is then the number
  /// before.
  void running_balances() {
    std::size_t fits = 0, rows = 0;
    Money before;
    bool have = false;
    for (const Marks& k : marks_) {
      if (k.second == nowhere || k.row == nowhere || columns_) continue;
      const Money last = *rows_[k.row].m.numbers[k.number].money();
      const Money change = *rows_[k.row].m.numbers[k.second].money();
      if (have) ++rows, fits += before - change == last || before + change == last;
      before = last;
      have = true;
    }
    if (rows < 2 || fits * 3 < rows * 2) return;
    for (const Marks& k : marks_) {
      if (k.second == nowhere || k.row == nowhere) continue;
      const Number& n = rows_[k.row].m.numbers[k.second];
      out_.charges[k.charge].amount = *n.money();
      out_.charges[k.charge].amount_place = place_of(rows_[k.row], n);
    }
  }

  /// A minus or brackets on every charge only marks a deduction; where others stand without, or with a plus, it marks
  /// the other direction.
  void signs() {
    std::size_t minus = 0, plain = 0, plus = 0;
    for (const Marks& k : marks_) {
      const ReadCharge& c = out_.charges[k.charge];
      if (c.role == ChargeRole::credit) continue;
      if (k.minus) ++minus;
      else if (k.plus) ++plus;
      else ++plain;
    }
    for (const Marks& k : marks_) {
      ReadCharge& c = out_.charges[k.charge];
      if (c.role != ChargeRole::credit && minus > 0 && plus > 0 && plain == 0) {
        if (minus >= plus ? k.plus : k.minus) c.role = ChargeRole::credit;
      } else if (c.role != ChargeRole::credit && k.minus && plain + plus > minus) c.role = ChargeRole::credit;
      else if (c.role != ChargeRole::credit && k.plus && minus > 0 && plain == 0) c.role = ChargeRole::credit;
    }
    for (ReadCharge& c : out_.charges)
      if (c.role == ChargeRole::credit && Money{} < c.amount) c.amount = Money{} - c.amount;
  }

  void settle_sums() {
    const Money lines = out_.sum();
    std::vector<Sum*> totals;
    Money deposits;
    for (Sum& s : sums_) {
      if (s.kind == LabelKind::deposit && !repeats_deposit(s)) out_.deposits.push_back(s.sum);
      if (s.kind == LabelKind::interest && !out_.interest) out_.interest = s.sum;
      if (s.kind == LabelKind::total) totals.push_back(&s);
    }
    for (const Sum& s : sums_) // where no deposit is named, what is "held" is it
      if (s.kind == LabelKind::held && out_.deposits.empty()) out_.deposits.push_back(s.sum);
    deposits = out_.deposit().value_or(Money{}) + (out_.interest ? out_.interest->amount : Money{});
    Sum* total = nullptr;
    for (Sum* s : totals)
      if (s->sum.amount == lines) total = s;
    if (total == nullptr && !totals.empty()) total = totals.back();
    if (total != nullptr) out_.total = total->sum;
    const Money charged = out_.total ? out_.total->amount : lines;
    for (Sum& s : sums_) {
      if (s.kind == LabelKind::balance || ((s.kind == LabelKind::due || s.kind == LabelKind::refund) && !s.directed)) {
        const bool to_tenant = deposits - charged == s.sum.amount, to_owner = charged - deposits == s.sum.amount;
        if (to_owner && !to_tenant) s.kind = LabelKind::due;
        else if (to_tenant || s.kind == LabelKind::balance)
          s.kind = charged <= deposits || to_tenant ? LabelKind::refund : LabelKind::due;
      }
      if (s.kind == LabelKind::refund && !out_.refund) out_.refund = s.sum;
      else if (s.kind == LabelKind::due && !out_.balance_due) out_.balance_due = s.sum;
      else if (s.kind == LabelKind::payment && !out_.payment) out_.payment = s.sum;
      else if (s.kind != LabelKind::deposit && s.kind != LabelKind::interest && &s != total)
        out_.others.push_back(s.sum);
    }
    settle_contradiction(deposits, charged);
  }

  /// A paper that says both "refund enclosed" and "you owe" is taken at its sums; the other claim is kept apart.
  void settle_contradiction(Money deposits, Money charged) {
    if (!out_.refund || !out_.balance_due) return;
    if (charged - deposits == out_.balance_due->amount) {
      out_.checks.push_back(
          {"contradiction", out_.refund->text, out_.refund->place.line, out_.refund->amount, Money{}});
      out_.others.push_back(*out_.refund);
      out_.refund.reset();
    } else if (deposits - charged == out_.refund->amount) {
      out_.checks.push_back(
          {"contradiction", out_.balance_due->text, out_.balance_due->place.line, out_.balance_due->amount, Money{}});
      out_.others.push_back(*out_.balance_due);
      out_.balance_due.reset();
    }
  }

  /// Where no date is called the statement's, the first one near the top is.
  void settle_date() {
    const auto named = [](const ReadDate& d) { return d.kind == DateKind::statement || d.kind == DateKind::sent; };
    if (std::any_of(out_.dates.begin(), out_.dates.end(), named)) return;
    std::size_t seen = 0;
    for (const Looked& l : rows_) {
      if (l.row.blank || ++seen > 4) continue;
      if (std::any_of(l.m.numbers.begin(), l.m.numbers.end(), is_strong)) continue;
      for (ReadDate& d : out_.dates)
        if (d.kind == DateKind::unknown && d.place.line == l.row.line) {
          d.kind = DateKind::statement;
          return;
        }
    }
  }

  /// The deposit named again (in the heading of the sum and in a letter above it) is still one deposit.
  bool repeats_deposit(const Sum& s) const {
    return std::any_of(out_.deposits.begin(), out_.deposits.end(),
                       [&](const StatedSum& d) { return d.amount == s.sum.amount; });
  }

  void check() {
    const Money lines = out_.sum();
    if (out_.total && !out_.charges.empty() && out_.total->amount != lines)
      out_.checks.push_back({"sum", out_.total->text, out_.total->place.line, out_.total->amount, lines});
    const auto held = out_.deposit();
    if (held) {
      const Money base = *held + (out_.interest ? out_.interest->amount : Money{});
      const Money charged = out_.total ? out_.total->amount : lines;
      const Money paid = out_.payment ? out_.payment->amount : Money{};
      if (out_.refund && out_.refund->amount != base - charged)
        out_.checks.push_back(
            {"refund", out_.refund->text, out_.refund->place.line, out_.refund->amount, base - charged});
      if (out_.balance_due && out_.balance_due->amount != charged - base - paid)
        out_.checks.push_back({"balance", out_.balance_due->text, out_.balance_due->place.line,
                               out_.balance_due->amount, charged - base - paid});
    }
    check_subtotals();
    check_extensions();
    check_tax();
  }

  void check_subtotals() {
    std::size_t from = 0;
    for (const Sum& s : sums_) {
      if (s.kind != LabelKind::subtotal) continue;
      Money part, all;
      for (std::size_t k = 0; k < s.charges_before; ++k) {
        all += out_.charges[k].amount;
        if (k >= from) part += out_.charges[k].amount;
      }
      if (part != s.sum.amount && all != s.sum.amount)
        out_.checks.push_back({"subtotal", s.sum.text, s.sum.place.line, s.sum.amount, part});
      from = s.charges_before;
    }
  }

  /// Count times price, from columns or from "6 hours at 35.00" in the words.
  void check_extensions() {
    for (const ReadCharge& c : out_.charges) {
      if (c.computed || c.role == ChargeRole::credit) continue;
      std::optional<std::int64_t> count = c.count;
      std::optional<Money> rate = c.rate;
      if (!count || !rate) {
        const MarkedText m = mark(c.text, rules_, out_.style);
        if (std::count_if(m.numbers.begin(), m.numbers.end(), is_strong) != 1) continue;
        for (std::size_t k = 0; k + 1 < m.numbers.size(); ++k) {
          const Number& a = m.numbers[k];
          const Number& b = m.numbers[k + 1];
          if (a.kind == NumberKind::plain && !a.currency && is_strong(b) && b.first > a.last && b.first - a.last <= 4 &&
              priced(m, a.last, b.first))
            count = a.thousandths, rate = b.money();
        }
      }
      if (!count || !rate || *count == 0) continue;
      const __int128 exact = static_cast<__int128>(*count) * rate->in_cents();
      const Money product = Money::cents(static_cast<std::int64_t>((exact + 500) / 1000));
      const bool fits = product == c.amount || exact % 1000 != 0;
      if (!fits) out_.checks.push_back({"extension", c.text, c.amount_place.line, c.amount, product});
    }
  }
  static bool priced(const MarkedText& m, std::size_t from, std::size_t to) {
    for (std::size_t t = from + 1; t < to; ++t)
      if (m.tokens[t].is('@') || m.tokens[t].text == "at" || m.tokens[t].text == "x" || m.tokens[t].text == "a")
        return true;
    return false;
  }

  /// A tax line with its rate, against the subtotal before it or all charges before it.
  void check_tax() {
    for (std::size_t k = 0; k < out_.charges.size(); ++k) {
      const ReadCharge& c = out_.charges[k];
      if (c.role != ChargeRole::tax) continue;
      const MarkedText m = mark(c.text, rules_, out_.style);
      const auto rate = std::find_if(m.numbers.begin(), m.numbers.end(),
                                     [](const Number& n) { return n.kind == NumberKind::percent; });
      if (rate == m.numbers.end()) continue;
      Money before;
      for (std::size_t i = 0; i < k; ++i) before += out_.charges[i].amount;
      std::optional<Money> base;
      for (const Sum& s : sums_)
        if (s.kind == LabelKind::subtotal && s.charges_before == k) base = s.sum.amount;
      const auto taxed = [&](Money of) { return of.part({rate->thousandths, 100'000}); };
      if (taxed(before) == c.amount || (base && taxed(*base) == c.amount)) continue;
      if (!base && !taxes_everything(m)) continue; // what it is on is not said
      out_.checks.push_back({"tax", c.text, c.amount_place.line, c.amount, taxed(base.value_or(before))});
    }
  }
  static bool taxes_everything(const MarkedText& m) { return m.tokens.size() <= 5; }

  // ---------------------------------------------------------------------------------------------------------------
  // tray

  void collect_tray() {
    for (Looked& l : rows_) {
      if (l.fate.empty()) l.fate = "no-amount";
      const bool number = std::any_of(l.m.numbers.begin(), l.m.numbers.end(), can_be_sum);
      if (l.fate == "no-amount" && number) l.fate = "number-without-sign";
      for (std::size_t k = 0; k < l.row.lines; ++k) out_.fates.push_back(l.fate);
      static constexpr std::array<std::string_view, 7> read = {
          "no-amount", "number-without-sign", "remark", "letter", "other-message", "information", "sum-without-words"};
      if (std::find(read.begin(), read.end(), l.fate) != read.end())
        out_.tray.push_back({l.row.line, l.row.text, l.fate});
    }
  }

  struct Marks {
    bool minus = false, plus = false;
    std::size_t second = nowhere, row = nowhere, number = nowhere, charge = 0;
  };

  const RecogniserRules& rules_;
  const Lexicon& charges_;
  const Lexicon& words_;
  Lexicon::Id credit_;
  ReadStatement out_;
  std::vector<Looked> rows_;
  std::vector<Marks> marks_;
  std::vector<Sum> sums_;
  std::optional<Columns> columns_;
  std::vector<std::size_t> pending_;
  std::string heading_;
  bool section_is_held_ = false, bare_sums_ = false;
  std::size_t last_charge_ = nowhere, last_row_ = nowhere;
};

} // namespace

std::optional<Money> ReadStatement::deposit() const {
  if (deposits.empty()) return std::nullopt;
  Money sum_of;
  for (const StatedSum& d : deposits) sum_of += d.amount;
  return sum_of;
}

Money ReadStatement::sum() const {
  Money total_of;
  for (const ReadCharge& c : charges) total_of += c.amount;
  return total_of;
}

ReadStatement read_text(std::string_view text, const RecogniserRules& rules, std::string_view language) {
  return Reader(text, rules, language).run();
}

} // namespace wearline
