#include "reading/prose.h"

#include "reading/mending.h"
#include "reading/reading_weights.h"
#include "reading/row_dates.h"
#include "reading/row_words.h"
#include "reading/sum_roles.h"
#include "values/ascii.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace wearline {

namespace {

/// The lines as one text, and back from its bytes to the lines.
struct Joined {
  std::string text;
  std::vector<std::size_t> starts; ///< of each line in the text

  Joined(const StatementPaper& paper, const std::vector<std::size_t>& rows) {
    for (const std::size_t r : rows) {
      if (!text.empty()) text += ' ';
      starts.push_back(text.size());
      text += std::string_view(paper.rows[r].row.text).substr(paper.rows[r].row.body);
    }
  }
  std::size_t line_of(std::size_t byte) const {
    return static_cast<std::size_t>(std::upper_bound(starts.begin(), starts.end(), byte) - starts.begin()) - 1;
  }
};

bool ends_sentence(const std::string& t, std::size_t i, const RecognizerRules& rules) {
  if (t[i] != '.' && t[i] != '!' && t[i] != '?') return false;
  if (i + 1 >= t.size()) return true;
  if (t[i + 1] != ' ') return false;
  std::size_t next = i + 1;
  while (next < t.size() && t[next] == ' ') ++next;
  if (next >= t.size()) return true;
  const auto c = static_cast<unsigned char>(t[next]);
  if (!is_upper(t[next]) && c < 0x80 && c != '"' && c != '(') return false;
  std::size_t word = i;
  while (word > 0 && t[word - 1] != ' ') --word;
  const std::vector<Token> last = split_words(std::string_view(t).substr(word, i - word));
  return last.size() != 1 || !is_word_of(last[0], "w:short-form", rules);
}

class ProseReader {
public:
  ProseReader(StatementPaper& paper, const std::vector<std::size_t>& rows, std::size_t section,
              const RecognizerRules& rules, Entries& out)
      : paper_(paper), rows_(rows), section_(section), rules_(rules), w_(rules.weights()), joined_(paper, rows),
        out_(out) {
    const std::string mended = mend_letters(joined_.text);
    m_ = mark(mended, rules, paper.style);
    mark_mended(m_, joined_.text, mended);
    fates_.assign(rows.size(), "");
  }

  void run() {
    std::size_t from = 0;
    for (std::size_t i = 0; i < joined_.text.size(); ++i)
      if (ends_sentence(joined_.text, i, rules_)) {
        sentence(from, i + 1);
        from = i + 1;
      }
    if (from < joined_.text.size()) sentence(from, joined_.text.size());
    for (std::size_t k = 0; k < rows_.size(); ++k)
      paper_.rows[rows_[k]].fate = fates_[k].empty() ? "remark" : fates_[k];
  }

private:
  std::size_t token_from(std::size_t byte) const { return token_at(m_, static_cast<std::uint32_t>(byte)); }
  TextPlace place(std::size_t start, std::size_t end) const {
    const std::size_t line = joined_.line_of(start);
    const Row& row = paper_.rows[rows_[line]].row;
    const std::size_t limit = std::min(end, joined_.starts[line] + row.text.size() - row.body);
    const auto at = [&](std::size_t byte) {
      return static_cast<std::uint32_t>(row.offset + row.body + byte - joined_.starts[line]);
    };
    return {row.line, at(start), at(limit)};
  }
  std::vector<TextPlace> places(std::size_t start, std::size_t end) const {
    std::vector<TextPlace> all;
    while (start < end) {
      const std::size_t line = joined_.line_of(start);
      const std::size_t stop = line + 1 < joined_.starts.size() ? std::min(end, joined_.starts[line + 1] - 1) : end;
      all.push_back(place(start, stop));
      start = stop + 1;
    }
    return all;
  }
  void settle(std::size_t start, std::size_t end, const char* fate) {
    if (end <= start) return;
    for (std::size_t line = joined_.line_of(start); line <= joined_.line_of(end - 1); ++line)
      if (fates_[line].empty() || fates_[line] == "remark" || std::string_view(fate) == "charge") fates_[line] = fate;
  }
  Lexicon::Id word(std::string_view id) const { return rules_.statement().find(id); }
  bool is(std::size_t token, std::string_view idea) const {
    return token < m_.tokens.size() && is_word_of(m_.tokens[token], idea, rules_);
  }

  /// A sum of the sentence with what it seems to be.
  struct Found {
    std::size_t number = 0, from = 0; ///< `from`: token after the sum before it
    LabelKind kind = LabelKind::none;
  };

  void sentence(std::size_t start, std::size_t end) {
    const std::size_t first = token_from(start), last = token_from(end);
    dates(first, last);
    std::vector<Found> found;
    std::size_t from = first;
    for (std::size_t k = 0; k < m_.numbers.size(); ++k) {
      const Number& n = m_.numbers[k];
      if (n.first < first || n.last >= last || !can_be_sum(n) || measure_follows(n) ||
          numbers_house(m_, joined_.text, n))
        continue;
      if ((n.rate && count_before(n, first)) ||
          per_follows(n)) { // "the bill of $120, $60 each": beside other sums it may be one
        if (is_strong(n) && !found.empty()) found.push_back({k, from, LabelKind::none});
        continue;
      }
      const LabelKind kind = kind_of(from, n, last, first, found);
      if (!is_strong(n) && !frames_account(kind) && !(kind == LabelKind::none && beside_sums(found, n, first, last))) {
        pass_over(n, first, last);
        continue;
      }
      found.push_back({k, from, kind});
      if (is_strong(n) || (frames_account(kind) && (named_after(n) || named_beside(n)))) from = n.last + 1u;
      if (kind == LabelKind::total) from = after_own_word(n, from);
    }
    bool any = false;
    const Lexicon::Id older = word("w:superseded");
    superseded_ = std::any_of(m_.statement.begin(), m_.statement.end(), [&](const Mention& s) {
      return s.concept_id == older && s.match == Match::exact && s.first >= first && s.last < last;
    });
    told_ = std::count_if(found.begin(), found.end(), [](const Found& f) { return frames_account(f.kind); }) > 1;
    for (std::size_t i = 0; i < found.size(); ++i) {
      if (found[i].kind == LabelKind::none) charge_entry(found, i, first, last, end);
      else sum_entry(found[i]);
      any = any || is_strong(m_.numbers[found[i].number]);
    }
    if (!any) product_sentence(start, end, first, last);
  }

  /// A bare number that a second look may take for a sum.
  void pass_over(const Number& n, std::size_t first, std::size_t last) {
    std::size_t from = first;
    for (const Number& other : m_.numbers)
      if (other.last < n.first && other.last >= from) from = other.last + std::size_t{1};
    if (says_passing(from, n, last) || in_remark(n, first) || denied(n, last) || taken_back(n, last) ||
        bought_in_year(n, last) || share_of(n, first) || corrected(n, last))
      out_.spoken_against.push_back(place(m_.tokens[n.first].start, m_.tokens[n.last].end));
  }

  /// "64.50 for the gate; 35 for the rug": a bare number that is for something, after sums that were.
  bool beside_sums(const std::vector<Found>& found, const Number& n, std::size_t first, std::size_t last) const {
    if (!n.whole || n.thousandths < 2000 || !spent_on(n, last)) return false;
    bool asks = std::any_of(found.begin(), found.end(), [](const Found& f) { return f.kind == LabelKind::none; });
    for (std::size_t t = first; t < n.first && !asks; ++t) asks = is(t, "w:asks");
    return asks;
  }

  static bool frames_account(LabelKind k) {
    return k == LabelKind::deposit || k == LabelKind::total || k == LabelKind::refund || k == LabelKind::due ||
           k == LabelKind::held;
  }

  Entry new_entry(const Number& n, std::size_t from) const {
    Entry e;
    const std::size_t start = m_.tokens[n.first].start;
    e.figures.push_back({*n.money(), place(start, m_.tokens[n.last].end), n.slip, 0});
    for (std::size_t line = joined_.line_of(std::min<std::size_t>(m_.tokens[from].start, start));
         line <= joined_.line_of(start); ++line)
      e.rows.push_back(rows_[line]);
    e.section = section_;
    e.prose = true;
    return e;
  }

  void sum_entry(const Found& f) {
    const Number& n = m_.numbers[f.number];
    Entry e = new_entry(n, f.from);
    e.kind = f.kind;
    e.label = clause_text(f.from, n.first);
    e.directed = true;
    e.charge.text =
        e.label.empty() ? clause_text(n.last + 1u, std::min<std::size_t>(m_.tokens.size(), n.last + 9u)) : e.label;
    e.charge.places = places(m_.tokens[f.from].start, m_.tokens[n.last].end);
    const Money value = e.figures[0].value;
    if (f.kind == LabelKind::fact) {
      e.passing_fate = "information";
      e.may_be(SumRole::passing, value, 0);
      e.may_be(SumRole::charge, value, w_.fact_is_charge);
    } else {
      e.passing_fate = "remark";
      const bool bare = (!is_strong(n) && !told_ && !named_beside(n)) || superseded_;
      if (bare) e.may_be(SumRole::passing, value, 0);
      add_sum_roles(e, f.kind, value, w_);
      if (bare)
        for (RoleOption& o : e.options) o.cost += o.role == SumRole::passing ? 0 : w_.spare_total;
    }
    settle(m_.tokens[f.from].start, m_.tokens[n.last].end, f.kind == LabelKind::fact ? "information" : "sums");
    out_.list.push_back(std::move(e));
  }

  /// "deposit was 875", "765 coming to you": a word of the account right at the number.
  bool named_beside(const Number& n) const {
    return n.thousandths >= 20'000 && std::any_of(m_.statement.begin(), m_.statement.end(), [&](const Mention& s) {
             const std::string& id = rules_.statement().at(s.concept_id).id;
             return (id == "st:deposit" || id == "st:refund" || id == "st:total") && s.match == Match::exact &&
                    (s.last + 1u == n.first || s.first == n.last + 1u ||
                     (s.last + 2u == n.first && is(n.first - 1u, "w:is")));
           });
  }
  /// "$215 altogether and": the word that made it the total is not the next sum's.
  std::size_t after_own_word(const Number& n, std::size_t from) const {
    std::size_t end = from;
    for (const Mention& s : m_.statement)
      if (rules_.statement().at(s.concept_id).id == "st:total" && s.match == Match::exact && s.first == n.last + 1u)
        end = std::max<std::size_t>(end, s.last + 1u);
    return end;
  }
  /// "200 total": the word right after the number is its own.
  bool named_after(const Number& n) const {
    return std::any_of(m_.statement.begin(), m_.statement.end(), [&](const Mention& s) {
      const std::string& id = rules_.statement().at(s.concept_id).id;
      return (id == "st:deposit" || id == "st:refund" || id == "st:total" || id == "w:back") &&
             s.match == Match::exact && s.first == n.last + 1u;
    });
  }
  bool measure_follows(const Number& n) const {
    if (n.currency) return false;
    for (const Mention& u : m_.charge)
      if (u.first == n.last + 1u && rules_.charges().at(u.concept_id).id.compare(0, 5, "unit:") == 0) return true;
    return false;
  }
  bool per_follows(const Number& n) const {
    const std::size_t t = n.last + 1u;
    if (t >= m_.tokens.size()) return false;
    const Token& w = m_.tokens[t];
    if (is(t, "w:per") || (w.is('/') && w.glued)) return true;
    if (is(t, "w:purpose") && is(t + 1, "w:of-time")) return true;
    if (is(t, "w:spanish") && is(t + 1, "w:of-time")) return true;
    if ((w.text == "a" || w.text == "an") && t + 1 < m_.tokens.size())
      for (const Mention& u : m_.charge)
        if (u.first == t + 1 && rules_.charges().at(u.concept_id).id.compare(0, 5, "unit:") == 0) return true;
    return false;
  }

  /// Words between two tokens, sums written out in words not counted.
  std::size_t words_between(std::size_t first, std::size_t last) const {
    std::size_t count = 0;
    for (std::size_t t = first; t < last; ++t) count += !is(t, "w:number-word");
    return count;
  }

  /// What a sum in a sentence is: by the nearest word of a statement before it, unless something charged stands
  /// between.
  LabelKind kind_of(std::size_t from, const Number& n, std::size_t last, std::size_t first,
                    const std::vector<Found>& before) const {
    static constexpr std::array<std::pair<std::string_view, LabelKind>, 11> kinds = {
        {{"st:makes", LabelKind::total},
         {"st:held", LabelKind::held},
         {"st:deposit", LabelKind::deposit},
         {"st:interest", LabelKind::interest},
         {"st:refund", LabelKind::refund},
         {"st:leaves", LabelKind::refund},
         {"st:due", LabelKind::due},
         {"st:total", LabelKind::total},
         {"st:balance", LabelKind::balance},
         {"st:subtotal", LabelKind::subtotal},
         {"st:fact", LabelKind::fact}}};
    if (follows(n, last, "st:interest") && n.thousandths < 1'000'000) return LabelKind::interest;
    if (paid_by_you(n, last) || you_paid(from, n)) return LabelKind::deposit;
    if (yours(n) || (came_from_you(m_, rules_, n) && !charged_between(from, n.first))) return LabelKind::deposit;
    if (is_all_deposits(n, before)) return LabelKind::held;
    if (adds_deposit(from, n, before)) return LabelKind::deposit;
    if (is(n.last + 1u, "w:back") && n.last + 1u < last && !bought_in_year(n, last) && !charged_between(from, n.first))
      return LabelKind::refund;
    LabelKind kind = LabelKind::none;
    std::size_t at = 0;
    for (const Mention& s : m_.statement) {
      if (s.first < from || s.last >= n.first || s.match == Match::shortened || words_between(s.last, n.first) > 7)
        continue;
      const std::string& id = rules_.statement().at(s.concept_id).id;
      for (const auto& [name, k] : kinds)
        if (id == name && (s.last >= at || kind == LabelKind::none || k == LabelKind::refund)) {
          if (s.last == at && kind != LabelKind::none && precedence(kind) > precedence(k)) continue;
          kind = k;
          at = s.last;
        }
    }
    if (kind != LabelKind::none && charged_between(at + 1, n.first)) kind = LabelKind::none;
    if (kind == LabelKind::fact && !information(from, n, last)) kind = LabelKind::none;
    if (kind == LabelKind::none && less_than_deposit(from, n, before)) return LabelKind::total;
    if (kind == LabelKind::none && n.after_equals && comes_of_account(before) && !charged_between(from, n.first))
      return LabelKind::balance;
    if (kind == LabelKind::none && follows(n, last, "st:refund") && !charged_between(from, n.first))
      return LabelKind::refund;
    if (kind == LabelKind::none && follows(n, last, "st:deposit")) return LabelKind::deposit;
    if (kind == LabelKind::none && follows(n, last, "st:total") && !charged_between(clause_start(from, n), n.first) &&
        !spent_on(n, last))
      return LabelKind::total;
    if ((kind == LabelKind::total || kind == LabelKind::deposit) && spent_on(n, last)) return LabelKind::none;
    if (kind == LabelKind::total && charged_between(first, n.first) && !sums_up(from, n.first)) return LabelKind::none;
    return kind;
  }
  /// The token after the last comma before a number.
  std::size_t clause_start(std::size_t from, const Number& n) const {
    for (std::size_t t = n.first; t-- > from;)
      if (m_.tokens[t].is(',') || m_.tokens[t].is(';')) return t + 1;
    return from;
  }
  /// "deposit $500 - $125 = $375": deposit and total stand before in the sentence.
  static bool comes_of_account(const std::vector<Found>& before) {
    const auto has = [&](LabelKind kind) {
      return std::any_of(before.begin(), before.end(), [&](const Found& f) { return f.kind == kind; });
    };
    return has(LabelKind::deposit) && has(LabelKind::total);
  }
  /// "deposit $500 minus $125": what is taken off is the total.
  bool less_than_deposit(std::size_t from, const Number& n, const std::vector<Found>& before) const {
    const Lexicon::Id less = word("st:less");
    const bool minus = (n.first > 0 && m_.tokens[n.first - 1u].is('-')) || n.minus ||
                       std::any_of(m_.statement.begin(), m_.statement.end(), [&](const Mention& s) {
                         return s.concept_id == less && s.first >= from && s.last < n.first && s.match == Match::exact;
                       });
    if (!minus || charged_between(from, n.first) || spent_on(n, m_.tokens.size())) return false;
    return std::any_of(before.begin(), before.end(), [](const Found& f) { return f.kind == LabelKind::deposit; }) ||
           std::any_of(out_.list.begin(), out_.list.end(), [](const Entry& e) { return e.kind == LabelKind::deposit; });
  }
  /// "I had $1,200.00 as a security deposit", "$435.00 is enclosed", "$95 total": a word of the account soon after.
  bool follows(const Number& n, std::size_t last, std::string_view id) const {
    const Lexicon::Id wanted = word(id);
    return std::any_of(m_.statement.begin(), m_.statement.end(), [&](const Mention& s) {
      return s.concept_id == wanted && s.first > n.last && s.first <= n.last + 4u && s.last < last &&
             s.match == Match::exact && !charged_between(n.last + 1u, s.first) && no_sum_between(n.last + 1u, s.first);
    });
  }
  bool no_sum_between(std::size_t from, std::size_t to) const {
    return std::none_of(m_.numbers.begin(), m_.numbers.end(),
                        [&](const Number& n) { return n.first >= from && n.last < to; }) &&
           std::none_of(m_.tokens.begin() + static_cast<std::ptrdiff_t>(from),
                        m_.tokens.begin() + static_cast<std::ptrdiff_t>(std::max(from, to)),
                        [](const Token& t) { return t.is('.') || t.is(';') || t.is(','); });
  }
  /// "I kept $75.00 for cleaning the oven"
  bool spent_on(const Number& n, std::size_t last) const {
    const std::size_t t = n.last + 1u;
    return t < last && is(t, "w:purpose") && charged_between(t + 1, std::min(last, t + 7));
  }
  static int precedence(LabelKind k) {
    switch (k) {
    case LabelKind::due:
      return 6;
    case LabelKind::refund:
      return 5;
    case LabelKind::held:
      return 4;
    case LabelKind::interest:
      return 3;
    case LabelKind::total:
      return 2;
    case LabelKind::deposit:
      return 1;
    default:
      return 0;
    }
  }
  /// "In all", "altogether", "the total": sums up even when things are named.
  bool sums_up(std::size_t from, std::size_t to) const {
    for (std::size_t t = from; t < to; ++t)
      if (is(t, "w:sums-up")) return true;
    return false;
  }
  bool charged_between(std::size_t from, std::size_t to) const {
    return std::any_of(m_.charge.begin(), m_.charge.end(), [&](const Mention& c) {
      if (c.first < from || c.last >= to || c.match == Match::shortened) return false;
      const Concept& idea = rules_.charges().at(c.concept_id);
      return (idea.role == Role::thing || idea.role == Role::work) && idea.id != "postage" &&
             idea.id != "report-photos" && idea.id != "returned-check-x";
    });
  }
  bool information(std::size_t from, const Number& n, std::size_t last) const {
    for (std::size_t t = from; t < last && t < n.last + 6u; ++t)
      if (is(t, "w:price")) return true;
    return false;
  }
  /// "the $1,250.00 you paid"
  bool paid_by_you(const Number& n, std::size_t last) const {
    const std::size_t t = n.last + 1u;
    if (t + 1 >= last) return false;
    if (is(t, "st:you") && is(t + 1, "w:given")) return true;
    if (is(t, "st:deposit")) return true;
    return (m_.tokens[t].text == "que" && is(t + 1, "w:given")) ||
           (m_.tokens[t].text == "de" && m_.tokens[t + 1].text == "deposito");
  }

  /// "you paid $1,000.00", where nothing says what for.
  bool you_paid(std::size_t from, const Number& n) const {
    return n.first >= from + 2 && is(n.first - 1u, "w:given") && is(n.first - 2u, "st:you") &&
           !spent_on(n, m_.tokens.size());
  }
  /// "off your 1000", "your $1,250 less": nothing is named behind it.
  bool yours(const Number& n) const {
    return n.first > 0 && n.thousandths >= 100'000 && n.whole && is(n.first - 1u, "w:yours") &&
           !charged_between(n.last + 1u, n.last + 4u);
  }
  /// "a deposit of $1,000.00 plus $250.00 for the dog"
  bool adds_deposit(std::size_t from, const Number& n, const std::vector<Found>& before) const {
    return !before.empty() && before.back().kind == LabelKind::deposit && n.first > from && n.first <= from + 6 &&
           is(n.first - 1u, "st:plus") && !charged_between(from, n.first) && !names_work_after(n);
  }
  bool names_work_after(const Number& n) const {
    return std::any_of(m_.charge.begin(), m_.charge.end(), [&](const Mention& c) {
      const Role role = rules_.charges().at(c.concept_id).role;
      return c.first > n.last && c.first <= n.last + 4u && (role == Role::work || role == Role::state);
    });
  }
  /// The deposits of the sentence together.
  bool is_all_deposits(const Number& n, const std::vector<Found>& before) const {
    Money all;
    std::size_t count = 0;
    for (const Found& f : before)
      if (f.kind == LabelKind::deposit || f.kind == LabelKind::interest) all += *m_.numbers[f.number].money(), ++count;
    return count > 1 && all == *n.money();
  }

  /// The tokens that say what a sum was for: before it, or after it where it reads "$65.00 for cleaning".
  std::pair<std::size_t, std::size_t> clause_of(const std::vector<Found>& found, std::size_t i,
                                                std::size_t last) const {
    const Number& n = m_.numbers[found[i].number];
    const std::size_t next = i + 1 < found.size() ? m_.numbers[found[i + 1].number].first : last;
    const bool after =
        is(n.last + 1u, "w:purpose") && charged_between(n.last + 1u, std::min<std::size_t>(next, n.last + 12u));
    if (!after) return {found[i].from, i + 1 < found.size() ? n.last + 1u : last};
    std::size_t to = next;
    for (std::size_t t = n.last + 2u; t < next; ++t)
      if ((m_.tokens[t].is(',') || m_.tokens[t].is(';')) && i + 1 < found.size() && !charged_between(t, next)) {
        to = t;
        break;
      }
    return {n.last + 1u, to};
  }

  void charge_entry(const std::vector<Found>& found, std::size_t i, std::size_t first, std::size_t last,
                    std::size_t end) {
    const Number& n = m_.numbers[found[i].number];
    const auto [from, to] = clause_of(found, i, last);
    const bool clause = names_charge(m_, rules_, from, to);
    const bool bare = !is_strong(n) || per_follows(n);
    const bool against = superseded_ || says_passing(found[i].from, n, last) || in_remark(n, first) ||
                         denied(n, last) || taken_back(n, last) || said_again(found, i, clause) ||
                         bought_in_year(n, last) || share_of(n, first) || corrected(n, last);
    const bool passing = bare || against;
    Entry e = new_entry(n, found[i].from);
    e.charge.text = n.first >= from && n.last < to ? clause_text(from, to, n) : without_purpose(clause_text(from, to));
    e.charge.places = places(m_.tokens[std::min<std::size_t>(from, n.first)].start,
                             to < m_.tokens.size() ? m_.tokens[to - 1].end : end);
    e.label = clause_text(found[i].from, n.first);
    e.named = clause;
    e.rows.clear();
    for (std::size_t line = joined_.line_of(m_.tokens[std::min<std::size_t>(from, n.first)].start);
         line <= joined_.line_of(m_.tokens[std::max<std::size_t>(to - 1, n.last)].start); ++line)
      e.rows.push_back(rows_[line]);
    const bool credit = credits(from, to);
    const Money value = e.figures[0].value;
    const SumRole role = credit ? SumRole::credit : SumRole::charge;
    const bool kept = clause || names_charge(m_, rules_, first, last) || asked(n, first);
    e.passing_fate = kept ? "in-passing" : "number-without-sign";
    if (kept && !passing) {
      e.may_be(role, value, 0);
      e.may_be(SumRole::passing, value,
               account_before() ? w_.leave_after_account
               : clause         ? w_.leave_named_in_sentence
                                : w_.leave_in_sentence);
    } else {
      e.may_be(SumRole::passing, value, 0);
      e.may_be(role, value, !kept ? w_.sum_is_charge : w_.leave_in_sentence + (against ? 1 : 0));
    }
    e.may_be(credit ? SumRole::charge : SumRole::credit, value, 2 * w_.turned_sign);
    for (const SumRole sum : {SumRole::total, SumRole::refund, SumRole::deposit, SumRole::due, SumRole::payment})
      e.may_be(sum, value, w_.sentence_is_sum);
    settle(m_.tokens[std::min<std::size_t>(from, n.first)].start, m_.tokens[std::max<std::size_t>(to - 1, n.last)].end,
           e.options[0].role == SumRole::passing ? e.passing_fate.c_str() : "charge");
    out_.list.push_back(std::move(e));
  }

  /// An account with its refund stands above: what sentences name after it is mostly in passing.
  bool account_before() const {
    bool total = false, refund = false;
    for (const Entry& e : out_.list) {
      total = total || e.kind == LabelKind::total || e.kind == LabelKind::deposit;
      refund = refund || e.kind == LabelKind::refund || e.kind == LabelKind::due || e.kind == LabelKind::balance;
    }
    return total && refund;
  }

  /// "bought in 2019 for", "usually", "a quote of": a price that is not charged.
  bool says_passing(std::size_t from, const Number& n, std::size_t last) const {
    const Lexicon::Id id = word("w:in-passing");
    // After the sum it is said of this one, not of the next: "$130.00; a new one costs $210.00".
    const auto of_next = [&](const Mention& s) {
      return std::any_of(m_.numbers.begin(), m_.numbers.end(), [&](const Number& next) {
        return next.first > s.last && next.first <= s.last + 4u && next.last < last && can_be_sum(next);
      });
    };
    return std::any_of(m_.statement.begin(), m_.statement.end(), [&](const Mention& s) {
      return s.concept_id == id && s.match == Match::exact && s.first >= from && s.last < last &&
             (s.last < n.first || (s.first <= n.last + 5u && !of_next(s))) &&
             no_sum_between(std::min<std::size_t>(s.last + 1u, n.first), n.first);
    });
  }

  /// "for which we paid 1,890 in 2019": what it cost when it was bought.
  bool bought_in_year(const Number& n, std::size_t last) const {
    const std::size_t t = n.last + 1u;
    return t + 1 < last && is(t, "w:in-year") &&
           std::any_of(m_.numbers.begin(), m_.numbers.end(), [&](const Number& year) {
             return year.kind == NumberKind::year && year.first > n.last && year.first <= t + 2;
           });
  }

  /// "so you are charged $496.00"
  bool asked(const Number& n, std::size_t first) const {
    for (std::size_t t = n.first; t-- > first && t + 4 > n.first;)
      if (is(t, "w:asks")) return true;
    return false;
  }
  /// "75 % of $280.00", "one third of $360.00": what the share is taken of.
  bool share_of(const Number& n, std::size_t first) const {
    if (n.first < first + 2 || !is(n.first - 1u, "w:of-whole")) return false;
    const std::size_t before = n.first - 2u;
    return m_.tokens[before].is('%') || is(before, "w:fraction") ||
           std::any_of(m_.numbers.begin(), m_.numbers.end(), [&](const Number& p) {
             return p.last == before && (p.kind == NumberKind::percent || p.kind == NumberKind::fraction);
           });
  }

  /// "(it cost $62, I split it with you)": inside brackets, after words.
  bool in_remark(const Number& n, std::size_t first) const {
    std::size_t open = n.first;
    for (std::size_t t = n.first; t-- > first && !m_.tokens[t].is(')');)
      if (m_.tokens[t].is('(')) open = t;
    for (std::size_t t = open; t < n.first; ++t)
      if (m_.tokens[t].word() && !is_closing_mark(m_.tokens[t], rules_)) return open < n.first;
    return false;
  }

  /// "cost me $240, but you owe nothing for that": said of the sum just before.
  bool denied(const Number& n, std::size_t last) const {
    const Lexicon::Id id = word("w:denied");
    return std::any_of(m_.statement.begin(), m_.statement.end(), [&](const Mention& s) {
      if (s.concept_id != id || s.match != Match::exact || s.first <= n.last || s.last >= last) return false;
      return std::none_of(m_.numbers.begin(), m_.numbers.end(), [&](const Number& other) {
        return other.first > n.last && other.last < s.first && can_be_sum(other);
      });
    });
  }

  /// "they were 40, but never mind"
  bool taken_back(const Number& n, std::size_t last) const {
    const Lexicon::Id id = word("w:takes-back");
    return std::any_of(m_.statement.begin(), m_.statement.end(), [&](const Mention& s) {
      return s.concept_id == id && s.match == Match::exact && s.first > n.last && s.last < last &&
             std::none_of(m_.numbers.begin(), m_.numbers.end(), [&](const Number& other) {
               return other.first > n.last && other.last < s.first && can_be_sum(other);
             });
    });
  }
  /// "it was 56, I'm looking at it now, 56"
  bool said_again(const std::vector<Found>& found, std::size_t i, bool named) const {
    const Number& n = m_.numbers[found[i].number];
    return !named && i > 0 &&
           std::any_of(found.begin(), found.begin() + static_cast<std::ptrdiff_t>(i), [&](const Found& f) {
             return f.kind == LabelKind::none && m_.numbers[f.number].thousandths == n.thousandths;
           });
  }

  /// "not $85 but $58", "65, no sorry, 56", "from $150 to $105": the sum after it takes its place.
  bool corrected(const Number& n, std::size_t last) const {
    for (const Number& next : m_.numbers) {
      if (next.first <= n.last || next.last >= last || !can_be_sum(next)) continue;
      const std::size_t between = next.first - n.last - 1u;
      bool said =
          n.first > 0 && m_.tokens[n.first - 1u].text == "from" && between == 1 && m_.tokens[n.last + 1u].text == "to";
      const Lexicon::Id id = word("w:corrects");
      said = said || std::any_of(m_.statement.begin(), m_.statement.end(), [&](const Mention& s) {
               return s.concept_id == id && s.match == Match::exact && s.first > n.last && s.last < next.first;
             });
      return said && between <= 6;
    }
    return false;
  }

  std::string without_purpose(std::string text) const {
    const std::vector<Token> tokens = split_words(text);
    if (tokens.size() > 1 && is_word_of(tokens[0], "w:purpose", rules_) && tokens[0].text != "to")
      text.erase(0, tokens[1].start);
    return text;
  }

  /// "three blinds at $20.00 each": only count and price are printed.
  void product_sentence(std::size_t start, std::size_t end, std::size_t first, std::size_t last) {
    for (std::size_t k = 0; k < m_.numbers.size(); ++k) {
      const Number& price = m_.numbers[k];
      if (price.first < first || price.last >= last || !is_strong(price) || !price.money() ||
          !(price.rate || per_follows(price)))
        continue;
      const auto count = count_before(price, first);
      if (!count || !names_charge(m_, rules_, first, last)) continue;
      const std::int64_t cents = *count * (price.thousandths / 10);
      if (cents % 1000 != 0) continue;
      Entry e = new_entry(price, first);
      e.figures[0].value = Money::cents(cents / 1000);
      e.charge.text = clause_text(first, last);
      e.charge.computed = true;
      e.charge.places = places(start, end);
      e.named = true;
      e.may_be(SumRole::charge, e.figures[0].value, 0);
      e.may_be(SumRole::passing, e.figures[0].value, w_.leave_in_sentence);
      out_.list.push_back(std::move(e));
      settle(start, end, "charge");
      return;
    }
  }
  /// The count that the price is for: the nearest whole number or number word before it, no more than five words away.
  std::optional<std::int64_t> count_before(const Number& price, std::size_t first) const {
    std::optional<std::int64_t> count;
    for (const Number& n : m_.numbers)
      if (n.kind == NumberKind::plain && n.first >= first && n.last < price.first && price.first - n.last <= 6 &&
          n.thousandths > 0 && n.thousandths <= 100'000)
        count = n.thousandths;
    if (count) return count;
    const auto& words = rules_.charge_marks().counts;
    for (const Mention& w : m_.charge)
      for (std::size_t k = 1; k < words.size(); ++k)
        if (w.concept_id == words[k] && w.first >= first && w.last < price.first && price.first - w.last <= 6 &&
            m_.tokens[w.first].text != "both")
          count = static_cast<std::int64_t>(k + 1) * 1000;
    return count;
  }

  bool credits(std::size_t from, std::size_t to) const {
    const Lexicon::Id credit = rules_.charges().find("mark:credit");
    return std::any_of(m_.charge.begin(), m_.charge.end(), [&](const Mention& c) {
      return c.concept_id == credit && c.first >= from && c.last < to && c.match == Match::exact;
    });
  }

  /// The clause without its sum and without the joints at its ends.
  std::string clause_text(std::size_t from, std::size_t to) const { return trimmed(piece(from, to)); }
  std::string clause_text(std::size_t from, std::size_t to, const Number& n) const {
    std::string before = trimmed(piece(from, n.first)), after = trimmed(piece(n.last + 1u, to));
    if (before.empty()) return after;
    return after.empty() ? before : before + " " + after;
  }
  std::string_view piece(std::size_t from, std::size_t to) const {
    to = std::min(to, m_.tokens.size());
    if (to <= from) return {};
    return std::string_view(joined_.text).substr(m_.tokens[from].start, m_.tokens[to - 1].end - m_.tokens[from].start);
  }
  bool is_joint(std::string_view piece) const {
    const std::vector<Token> tokens = split_words(piece);
    return tokens.size() == 1 && is_word_of(tokens[0], "w:joint", rules_);
  }
  std::string trimmed(std::string_view t) const {
    for (bool more = true; more;) {
      more = false;
      while (!t.empty() && std::string_view(" ,;:.-").find(t.front()) != std::string_view::npos) t.remove_prefix(1);
      while (!t.empty() && std::string_view(" ,;:.-").find(t.back()) != std::string_view::npos) t.remove_suffix(1);
      const std::size_t first = t.find(' '), last = t.rfind(' ');
      if (first != std::string_view::npos && is_joint(t.substr(0, first))) t.remove_prefix(first + 1), more = true;
      else if (last != std::string_view::npos && is_joint(t.substr(last + 1)))
        t.remove_suffix(t.size() - last), more = true;
    }
    return std::string(t);
  }

  /// A colon stands right behind the words.
  bool heads(const Mention& m) const {
    const std::size_t end = m_.tokens[m.last].end;
    return end < joined_.text.size() && joined_.text[end] == ':';
  }

  void dates(std::size_t first, std::size_t last) {
    std::size_t from = first;
    for (const Number& n : m_.numbers) {
      if (n.kind != NumberKind::date || n.first < first || n.last >= last) continue;
      const auto day = civil_day(n.day);
      if (!day) continue;
      DateKind kind = DateKind::unknown;
      for (const Mention& s : m_.statement) {
        if (s.first < from || s.last >= n.first || n.first - s.last > 8 || s.match != Match::exact ||
            !reaches(m_, s, n))
          continue;
        const DateKind said = date_kind(s, rules_);
        // "Sent: Tuesday, October 20" heads a mail, "Mailed October 29." says it of itself; anywhere else it may as
        // well be a check that was sent.
        if (said == DateKind::sent) {
          if (n.first - s.last <= 5 && (heads(s) || (s.first == first && n.first - s.last <= 2))) kind = said;
        } else if (said == DateKind::statement) {
          if (kind == DateKind::unknown && n.first - s.last <= 5) kind = said;
        } else if (said != DateKind::unknown) {
          kind = said;
        }
      }
      if (kind == DateKind::unknown && last - first <= static_cast<std::size_t>(n.last - n.first) + 4)
        kind = DateKind::statement;
      out_.dates.push_back({kind, *day, place(m_.tokens[n.first].start, m_.tokens[n.last].end)});
      settle(m_.tokens[n.first].start, m_.tokens[n.last].end, "date");
      from = n.last + 1u;
    }
  }

  StatementPaper& paper_;
  const std::vector<std::size_t>& rows_;
  std::size_t section_;
  const RecognizerRules& rules_;
  const ReadingWeights& w_;
  Joined joined_;
  MarkedText m_;
  bool told_ = false;       ///< the sentence at hand names two sums of the account, so bare numbers are sums too
  bool superseded_ = false; ///< it tells what an earlier statement said
  std::vector<std::string> fates_;
  Entries& out_;
};

} // namespace

void read_prose(StatementPaper& paper, const std::vector<std::size_t>& rows, std::size_t section,
                const RecognizerRules& rules, Entries& out) {
  ProseReader(paper, rows, section, rules, out).run();
}

} // namespace wearline
