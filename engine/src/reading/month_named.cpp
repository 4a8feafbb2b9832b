#include "reading/month_named.h"

#include "reading/words.h"

#include <algorithm>

namespace wearline {

namespace {

/// "2026"; 0 for what is no year.
int year_of(const Token& token) {
  if (token.text.size() != 4 || token.text.compare(0, 2, "20") != 0) return 0;
  int year = 0;
  for (const char c : token.text) {
    if (c < '0' || c > '9') return 0;
    year = year * 10 + (c - '0');
  }
  return year;
}

unsigned month_of(const Token& token, std::string_view text, const RecognizerRules& rules) {
  if (!token.word()) return 0;
  // "may" is a word of its own: only with a capital letter it is a month.
  if (token.text == "may" && text[token.start] != 'M') return 0;
  const auto& ideas = rules.charges().ideas_of(token);
  const auto& months = rules.charge_marks().months;
  for (std::size_t m = 0; m < months.size(); ++m)
    if (std::find(ideas.begin(), ideas.end(), months[m]) != ideas.end()) return static_cast<unsigned>(m + 1);
  return 0;
}

} // namespace

std::optional<NamedMonth> month_named(std::string_view text, const RecognizerRules& rules) {
  std::optional<NamedMonth> named;
  for (const Token& token : split_words(text)) {
    if (token.number()) {
      const int year = year_of(token);
      if (year == 0 || (named && named->year != 0)) return std::nullopt;
      if (named) named->year = year, named->end = token.end;
      else return std::nullopt;
    } else if (const unsigned month = month_of(token, text, rules); month != 0) {
      if (named) return std::nullopt;
      named = NamedMonth{month, 0, token.start, token.end};
    }
  }
  return named;
}

} // namespace wearline
