#include "reading/paper_dates.h"

#include "reading/row_dates.h"
#include "reading/row_words.h"

#include <algorithm>
#include <date/date.h>
#include <optional>

namespace wearline {

namespace {

/// A date of the paper, its year known or not.
struct DateInRow {
  NamedDay named;
  DateKind kind = DateKind::unknown;
  TextPlace place;
  std::size_t row = 0; ///< among the rows that are not blank
  bool sum = false;    ///< its row holds a sum of money
  bool first = false;  ///< it begins its row
  bool last = false;   ///< it ends its row
  bool alone = false;  ///< its row holds little else
  int distance = 8;    ///< pieces between it and the word that tells what it is
};

class DateSettler {
public:
  DateSettler(const StatementPaper& paper, const RecognizerRules& rules, std::vector<ReadDate>& dates)
      : rules_(rules), dates_(dates) {
    for (const PaperRow& l : paper.rows)
      if (!l.row.blank && !l.row.rule) rows_.push_back(&l);
  }

  void run() {
    for (std::size_t r = 0; r < rows_.size(); ++r) gather(r);
    name_the_papers_own();
    // Of several called the same, the one nearest to its word.
    std::stable_sort(found_.begin(), found_.end(),
                     [](const DateInRow& a, const DateInRow& b) { return a.distance < b.distance; });
    for (const DateInRow& d : found_)
      if (const auto day = civil_day(d.named); day && !has(d.kind)) dates_.push_back({d.kind, *day, d.place});
    for (const DateInRow& d : found_)
      if (d.named.year == 0 && d.kind != DateKind::unknown && !has(d.kind))
        if (const auto day = with_year(d)) dates_.push_back({d.kind, *day, d.place});
    if (has(DateKind::move_out)) return;
    for (ReadDate& d : dates_)
      if (d.kind == DateKind::lease_ended) d.kind = DateKind::move_out;
  }

private:
  bool has(DateKind kind) const {
    return std::any_of(dates_.begin(), dates_.end(), [&](const ReadDate& d) { return d.kind == kind; });
  }

  /// The date that a sentence told of itself.
  ReadDate* told_at(const TextPlace& place) {
    const auto found = std::find_if(dates_.begin(), dates_.end(), [&](const ReadDate& d) { return d.place == place; });
    return found == dates_.end() ? nullptr : &*found;
  }

  void gather(std::size_t r) {
    const PaperRow& l = *rows_[r];
    const bool sum = std::any_of(l.m.numbers.begin(), l.m.numbers.end(), is_strong);
    const std::size_t body = token_at(l.m, l.row.body);
    std::size_t from = 0;
    for (const Number& n : l.m.numbers) {
      if (n.kind != NumberKind::date || n.day.day == 0) continue;
      DateInRow d{n.day, DateKind::unknown, place_in(l, n), r, sum, n.first <= body};
      const ReadDate* told = told_at(d.place);
      const bool head = !l.row.speaker.empty() && n.last < body; // of a message in a chat
      if (told && told->kind != DateKind::unknown) d.kind = told->kind;
      else if (!head) kind_of(l, n, from, sum, d);
      // "09/01/2022 - 09/30/2023" of a lease or a bill.
      if (d.kind == DateKind::unknown && from > 0 && n.first - from <= 1u && found_.back().kind == DateKind::other)
        d.kind = DateKind::other;
      if (d.kind == DateKind::unknown && !head && d.first && r > 0 && (!sum || l.m.tokens[n.first].word()))
        d.kind = ending(*rows_[r - 1]);
      if (d.kind == DateKind::unknown && !head && beside_deposit(l, n)) d.kind = DateKind::deposit_paid;
      // What another party wrote may tell when the home was left, not when this paper was written.
      if (l.fate == "other-message" && d.kind != DateKind::move_out) continue;
      d.last = ends_row(l, n, rules_);
      d.alone = !sum && l.m.tokens.size() <= static_cast<std::size_t>(n.last - n.first) + 5;
      found_.push_back(d);
      from = n.last + 1u;
    }
  }

  /// By the nearest word before the date, else by one right behind it. Beside a sum it is the money that was sent.
  void kind_of(const PaperRow& l, const Number& n, std::size_t from, bool sum, DateInRow& d) const {
    const int reach = sum ? 4 : 8;
    for (const Mention& m : l.m.statement)
      if (m.first >= from && m.last < n.first && n.first - m.last <= reach && told(m, sum) && reaches(l.m, m, n) &&
          !stops(l, m.last + 1u, n.first))
        d.kind = of_another(l, m) ? DateKind::other : date_kind(m, rules_), d.distance = n.first - m.last;
    if ((d.kind != DateKind::unknown && d.kind != DateKind::other) || sum) return;
    // "August 31 (the day you left)"; any other word only in a bracket of its own.
    const bool bracket = n.last + 1u < l.m.tokens.size() && l.m.tokens[n.last + 1u].is('(');
    for (const Mention& m : l.m.statement)
      if (m.first > n.last && m.first - n.last <= 4 && told(m, sum) &&
          (date_kind(m, rules_) == DateKind::move_out || (bracket && d.kind == DateKind::unknown)) &&
          reaches(l.m, m, n) && !stops(l, n.last + 1u, m.first) && !dated_itself(l, m.last)) {
        d.kind = date_kind(m, rules_), d.distance = m.first - n.last;
        return;
      }
  }

  /// "Your lease ran out on", "Check 2207 dated": the word tells of something else.
  bool of_another(const PaperRow& l, const Mention& m) const {
    return std::any_of(l.m.statement.begin(), l.m.statement.end(), [&](const Mention& other) {
      return other.match == Match::exact && date_kind(other, rules_) == DateKind::other && other.last < m.first &&
             m.first - other.last <= 3 && !stops(l, other.last + 1u, m.first);
    });
  }

  bool beside_deposit(const PaperRow& l, const Number& n) const {
    return std::any_of(l.m.statement.begin(), l.m.statement.end(), [&](const Mention& m) {
      if (rules_.statement().at(m.concept_id).id != "st:deposit") return false;
      return m.last < n.first ? n.first - m.last <= 8 && !l.m.tokens[n.first].far && !stops(l, m.last + 1u, n.first)
                              : m.first - n.last <= 8 && !stops(l, n.last + 1u, m.first);
    });
  }

  /// What the last word of a row says of the date that begins the next.
  DateKind ending(const PaperRow& l) const {
    DateKind kind = DateKind::unknown;
    if (std::any_of(l.m.numbers.begin(), l.m.numbers.end(),
                    [](const Number& n) { return is_strong(n) || n.kind == NumberKind::date; }))
      return kind;
    for (const Mention& m : l.m.statement)
      if (told(m, true) && m.last + 5u >= l.m.tokens.size() && !stops(l, m.last + 1u, l.m.tokens.size()))
        kind = of_another(l, m) ? DateKind::other : date_kind(m, rules_);
    return kind;
  }

  bool told(const Mention& m, bool sum) const {
    const DateKind kind = m.match == Match::exact ? date_kind(m, rules_) : DateKind::unknown;
    return kind != DateKind::unknown && !(sum && kind == DateKind::sent);
  }
  /// A sentence or a column ends between two tokens; right behind a word its own date may stand in the next column.
  static bool stops(const PaperRow& l, std::size_t from, std::size_t to) {
    bool words = false;
    for (std::size_t i = from; i < to; ++i) {
      const Token& t = l.m.tokens[i];
      const bool leader = t.is('.') && ((i > 0 && l.m.tokens[i - 1].is('.')) ||
                                        (i + 1 < l.m.tokens.size() && l.m.tokens[i + 1].is('.')));
      if (t.is(';') || t.is('?') || (t.is('.') && !leader && i + 1 < to && i > from) || (t.far && words)) return true;
      words = words || t.kind != TokenKind::sign;
    }
    return words && to < l.m.tokens.size() && l.m.tokens[to].far;
  }
  /// Another date stands right behind the word: it is that one's.
  static bool dated_itself(const PaperRow& l, std::size_t last) {
    return std::any_of(l.m.numbers.begin(), l.m.numbers.end(), [&](const Number& n) {
      return n.kind == NumberKind::date && n.first > last && n.first - last <= 4;
    });
  }

  /// Where no date is called the statement's: the first near the top, or one that stands alone at the end.
  void name_the_papers_own() {
    const auto own = [](DateKind k) { return k == DateKind::statement || k == DateKind::sent; };
    if (has(DateKind::statement) || has(DateKind::sent)) return;
    if (std::any_of(found_.begin(), found_.end(), [&](const DateInRow& d) { return own(d.kind) && d.named.year != 0; }))
      return;
    const auto free = [](const DateInRow& d) { return d.kind == DateKind::unknown && d.named.year != 0 && !d.sum; };
    for (DateInRow& d : found_)
      if (free(d) && (d.row == 0 || (d.row < 4 && (d.alone || d.first || d.last)))) return take(d);
    for (auto d = found_.rbegin(); d != found_.rend(); ++d)
      if (free(*d) && d->alone && d->row + 3 >= rows_.size()) return take(*d);
  }
  void take(DateInRow& d) {
    d.kind = DateKind::statement;
    if (ReadDate* told = told_at(d.place)) told->kind = d.kind;
  }

  /// The day the paper was written if it tells that in full, else its latest full date that is past.
  std::optional<Day> reference() const {
    for (const DateKind kind : {DateKind::statement, DateKind::sent})
      for (const ReadDate& d : dates_)
        if (d.kind == kind) return d.day;
    std::optional<Day> latest;
    for (const ReadDate& d : dates_)
      if (d.kind != DateKind::due && d.kind != DateKind::move_in && d.kind != DateKind::other &&
          (!latest || d.day > *latest))
        latest = d.day;
    return latest;
  }

  /// A day that lies ahead is the first after the paper's own, any other the last before; of its own, the first after
  /// the day the home was left.
  std::optional<Day> with_year(const DateInRow& d) const {
    const std::optional<Day> from = reference();
    if (!from) return std::nullopt;
    const bool ahead = d.kind == DateKind::due || d.kind == DateKind::statement;
    const int year = static_cast<int>(date::year_month_day{*from}.year());
    NamedDay named = d.named;
    std::optional<Day> best;
    for (named.year = year - 1; named.year <= year + 1; ++named.year) {
      const auto day = civil_day(named);
      if (!day || (ahead ? *day < *from || best.has_value() : *day > *from)) continue;
      best = day;
    }
    // Not longer ago than papers are written after a home was left.
    return best && std::chrono::abs(*best - *from) <= days{200} ? best : std::nullopt;
  }

  const RecognizerRules& rules_;
  std::vector<ReadDate>& dates_;
  std::vector<const PaperRow*> rows_;
  std::vector<DateInRow> found_;
};

} // namespace

void settle_dates(const StatementPaper& paper, const RecognizerRules& rules, std::vector<ReadDate>& dates) {
  DateSettler(paper, rules, dates).run();
}

} // namespace wearline
