#include "reading/paper.h"

#include "reading/columns.h"
#include "reading/mending.h"
#include "values/ascii.h"

#include <algorithm>
#include <array>
#include <map>
#include <utility>

namespace wearline {

namespace {

/// The language most of whose small words stand in the text.
std::string guess_language(std::string_view text, const RecognizerRules& rules) {
  const Lexicon& words = rules.statement();
  const Lexicon::Id es = words.find("w:spanish"), en = words.find("w:english");
  int spanish = 0, english = 0;
  for (const Token& t : split_words(text.substr(0, 8000))) {
    if (!t.word()) continue;
    for (const Lexicon::Id id : words.ideas_of(t)) spanish += id == es, english += id == en;
  }
  return spanish > english ? "es" : "en";
}

std::string guess_currency(std::string_view text, const RecognizerRules& rules) {
  const std::vector<Token> tokens = split_words(text);
  const auto& ids = rules.statement_marks().currencies;
  static constexpr std::array<std::string_view, 5> codes = {"USD", "CAD", "EUR", "GBP", "MXN"};
  std::array<int, 5> seen{};
  for (const Mention& m : rules.statement().mentions(tokens))
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

bool mentions_idea(const MarkedText& m, const RecognizerRules& rules, std::string_view idea) {
  const Lexicon::Id id = rules.statement().find(idea);
  return std::any_of(m.statement.begin(), m.statement.end(),
                     [&](const Mention& s) { return s.concept_id == id && s.match == Match::exact; });
}

/// The messages of a paper, newest first: quoted text is another message, and so is what follows "Original message".
std::vector<int> messages_of(const std::vector<PaperRow>& rows, const RecognizerRules& rules) {
  std::vector<int> message(rows.size(), 0);
  int below = 0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const PaperRow& r = rows[i];
    const bool begins = !r.row.blank && !r.row.rule && i > 0 && r.m.numbers.size() < 3 && r.m.tokens.size() < 24 &&
                        mentions_idea(r.m, rules, "w:older-message");
    below += begins;
    message[i] = r.row.blank && i > 0 ? message[i - 1] : r.row.depth + below;
  }
  return message;
}

/// How much of an account a message holds: the sums it sets out.
struct Weight {
  int sums = 0, kinds = 0;
};

Weight weigh_message(const std::vector<PaperRow>& rows, const std::vector<int>& message, int which,
                     const RecognizerRules& rules) {
  Weight w;
  std::array<bool, 3> seen{};
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (message[i] != which || rows[i].row.blank) continue;
    int here = 0;
    for (const Number& n : rows[i].m.numbers) here += is_strong(n);
    w.sums += here;
    if (here == 0) continue;
    seen[0] = seen[0] || mentions_idea(rows[i].m, rules, "st:total");
    seen[1] = seen[1] || mentions_idea(rows[i].m, rules, "st:deposit");
    seen[2] = seen[2] || mentions_idea(rows[i].m, rules, "st:refund");
  }
  w.kinds = seen[0] + seen[1] + seen[2];
  return w;
}

/// The newest message that is an account of its own, else the one with most sums.
void choose_message(std::vector<PaperRow>& rows, const RecognizerRules& rules) {
  const std::vector<int> message = messages_of(rows, rules);
  std::map<int, Weight> weights;
  for (const int m : message) weights[m] = {};
  if (weights.size() < 2) return;
  int best = 0, most = 0;
  for (auto& [which, weight] : weights) {
    weight = weigh_message(rows, message, which, rules);
    if (weight.sums > most) best = which, most = weight.sums;
  }
  if (most == 0) return;
  for (const auto& [which, weight] : weights)
    if (weight.kinds >= 2 && weight.sums >= 4 && weight.sums * 2 >= most) {
      best = which;
      break;
    }
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows[i].row.blank || message[i] == best) continue;
    const bool sum = std::any_of(rows[i].m.numbers.begin(), rows[i].m.numbers.end(), is_strong);
    if (sum || message[i] > best || best > 0) rows[i].fate = "other-message";
  }
}

/// "Ms. Duarte 9:02 AM" alone on its row: who wrote what follows; empty where it is not that.
std::string names_speaker(const PaperRow& r) {
  if (r.m.numbers.size() != 1 || r.m.numbers[0].kind != NumberKind::clock || r.m.numbers[0].first == 0) return {};
  const std::size_t words = static_cast<std::size_t>(std::count_if(
      r.m.tokens.begin(), r.m.tokens.begin() + r.m.numbers[0].first, [](const Token& t) { return t.word(); }));
  const std::size_t after = r.m.tokens.size() - r.m.numbers[0].last - 1u;
  return words > 0 && words <= 3 && after <= 1
             ? r.row.text.substr(r.row.body, r.m.tokens[r.m.numbers[0].first].start - r.row.body)
             : std::string();
}

/// In a chat of two or more the account is that of the one who names its sums; what the others say charges nothing.
void find_other_party(std::vector<PaperRow>& rows, const RecognizerRules& rules) {
  std::map<std::string, int> says;
  std::vector<std::string> by(rows.size());
  std::string now;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    PaperRow& r = rows[i];
    if (r.row.blank || r.row.rule) continue;
    if (!r.row.speaker.empty()) now = r.row.speaker;
    else if (const std::string name = names_speaker(r); !name.empty()) now = name;
    if (now.empty()) continue;
    by[i] = now;
    int& said = says[now];
    const bool sum = std::any_of(r.m.numbers.begin(), r.m.numbers.end(), [](const Number& n) { return can_be_sum(n); });
    if (!sum) continue;
    const bool account = mentions_idea(r.m, rules, "st:total") || mentions_idea(r.m, rules, "st:deposit") ||
                         mentions_idea(r.m, rules, "st:refund");
    said += account ? 4 : 1;
  }
  if (says.size() < 2) return;
  std::string owner;
  int most = 0;
  for (auto& [name, said] : says) {
    for (const Token& t : split_words(name))
      said += is_word_of(t, "st:owner", rules) ? 100 : is_word_of(t, "st:you", rules) ? -100 : 0;
    if (said == most) owner.clear();
    if (said > most) most = said, owner = name;
  }
  if (owner.empty()) return;
  for (std::size_t i = 0; i < rows.size(); ++i) rows[i].other_party = !by[i].empty() && by[i] != owner;
}

std::string shape(const std::string& text) {
  std::string out;
  for (const char c : text)
    if (c != ' ' && c != '\t') out += is_digit(c) ? '0' : c;
  return out;
}

/// A row that comes again without a sum is the head or foot of a page.
void find_repeated(std::vector<PaperRow>& rows, const RecognizerRules& rules) {
  std::map<std::string, int> seen;
  for (PaperRow& r : rows) {
    if (r.row.blank || r.row.rule || !r.fate.empty() || std::any_of(r.m.numbers.begin(), r.m.numbers.end(), is_strong))
      continue;
    const std::string key = shape(r.row.text);
    if (key.size() < 12 || ++seen[key] < 2 || read_heads(r.row, r.m, rules)) continue;
    r.fate = "page";
  }
}

/// The text with what is struck out ("~~Refund 481.40~~") as blanks; every byte keeps its place.
std::string without_struck(const std::string& text) {
  std::string t(text);
  for (std::size_t from = t.find("~~"); from != std::string::npos;) {
    const std::size_t end = t.find("~~", from + 2);
    if (end == std::string::npos || end == from + 2) break;
    std::fill(t.begin() + static_cast<std::ptrdiff_t>(from), t.begin() + static_cast<std::ptrdiff_t>(end + 2), ' ');
    from = t.find("~~", end + 2);
  }
  return t;
}

bool counts_bare(const std::vector<PaperRow>& rows, const RecognizerRules& rules) {
  int bare = 0, strong = 0;
  for (const PaperRow& r : rows) {
    if (r.row.blank || r.m.numbers.empty() || !r.fate.empty()) continue;
    const Number& last = r.m.numbers.back();
    if (!can_be_sum(last) || !ends_row(r, last, rules)) continue;
    if (is_strong(last)) ++strong;
    else ++bare;
  }
  return bare >= 2 && bare >= strong;
}

/// Rows that begin with their sum: most with a minus or decimals, which a list of counts has not.
bool puts_sums_first(const std::vector<PaperRow>& rows, const RecognizerRules& rules) {
  int first = 0, telling = 0, last = 0;
  for (const PaperRow& r : rows) {
    if (r.row.blank || r.row.rule || r.m.numbers.empty() || !r.fate.empty()) continue;
    const Number& begin = r.m.numbers.front();
    const bool leads = can_be_sum(begin) && !begin.rate && !begin.currency &&
                       std::none_of(r.m.tokens.begin(), r.m.tokens.begin() + begin.first,
                                    [](const Token& t) { return t.word() || t.number(); });
    if (leads && !ends_row(r, begin, rules)) {
      ++first;
      const auto signed_before = begin.first > 0 && r.m.tokens[begin.first - 1u].is('-');
      telling += begin.minus || begin.decimals == 2 || signed_before;
    } else if (is_strong(r.m.numbers.back()) && ends_row(r, r.m.numbers.back(), rules)) {
      ++last;
    }
  }
  return first >= 3 && telling * 2 > first && first > last;
}

} // namespace

bool can_be_sum(const Number& n) {
  return (n.kind == NumberKind::plain || n.kind == NumberKind::money) && n.money().has_value();
}
bool is_strong(const Number& n) { return n.kind == NumberKind::money; }

bool numbers_house(const MarkedText& m, std::string_view text, const Number& n) {
  const std::size_t t = n.last + 1u;
  if (is_strong(n) || !n.whole || t >= m.tokens.size()) return false;
  const Token& next = m.tokens[t];
  const bool first_person = next.text[0] == 'i' && next.text.size() < 4;
  return next.word() && !next.glued && !next.capitals && !first_person && next.text.size() > 1 &&
         is_upper(text[next.start]);
}

std::size_t token_at(const MarkedText& m, std::uint32_t byte) {
  return static_cast<std::size_t>(std::lower_bound(m.tokens.begin(), m.tokens.end(), byte,
                                                   [](const Token& t, std::uint32_t at) { return t.start < at; }) -
                                  m.tokens.begin());
}

bool ends_row(const PaperRow& r, const Number& n, const RecognizerRules& rules) {
  for (std::size_t t = n.last + 1u; t < r.m.tokens.size(); ++t)
    if (!is_closing_mark(r.m.tokens[t], rules)) return false;
  return true;
}

bool has_inner_stop(std::string_view t) {
  for (std::size_t i = 1; i + 2 < t.size(); ++i)
    if ((t[i] == '.' || t[i] == '!' || t[i] == '?') && t[i + 1] == ' ' && is_upper(t[i + 2]) &&
        (is_lower(t[i - 1]) || is_digit(t[i - 1]))) {
      std::size_t word = i;
      while (word > 0 && t[word - 1] != ' ') --word;
      const bool number = t[i - 1] <= '9';
      if (number ? word > 3 : i - word > 3) return true; // "keys back on May 31. Deposit", but not "3. Deposit"
    }
  return false;
}

StatementPaper look_at_paper(std::string_view text, const RecognizerRules& rules, std::string_view language) {
  StatementPaper paper;
  paper.language = language.empty() ? guess_language(text, rules) : std::string(language);
  paper.style = number_style(text, paper.language == "es");
  paper.currency = guess_currency(text, rules);
  for (Row& row : split_rows(text)) {
    PaperRow r;
    if (!row.blank && !row.rule) {
      const std::string mended = mend_letters(without_struck(row.text));
      r.m = mark(mended, rules, paper.style);
      mark_mended(r.m, row.text, mended);
    }
    r.row = std::move(row);
    paper.rows.push_back(std::move(r));
  }
  choose_message(paper.rows, rules);
  find_repeated(paper.rows, rules);
  find_other_party(paper.rows, rules);
  paper.sums.bare = counts_bare(paper.rows, rules);
  paper.sums.first = puts_sums_first(paper.rows, rules);
  return paper;
}

} // namespace wearline
