#include "reading/marked_words.h"

#include <algorithm>

namespace wearline {

MarkedText mark(std::string_view text, const RecognizerRules& rules, NumberStyle style, bool as_statement) {
  MarkedText out;
  out.tokens = split_words(text);
  if (as_statement) out.statement = rules.statement().mentions(out.tokens);
  out.charge = rules.charges().mentions(out.tokens);
  out.numbers = find_numbers(out.tokens, out.charge, rules.charges(), rules.charge_marks(), style);
  return out;
}

bool is_word_of(const Token& token, std::string_view idea, const RecognizerRules& rules) {
  if (!token.word()) return false;
  const auto& ideas = rules.statement().ideas_of(token);
  return std::find(ideas.begin(), ideas.end(), rules.statement().find(idea)) != ideas.end();
}

bool is_closing_mark(const Token& token, const RecognizerRules& rules) {
  if (!token.word()) return !token.number() && !token.is('%');
  return token.text.size() <= 3 && is_word_of(token, "w:closing", rules);
}

bool numbers_something(const MarkedText& m, const Mention& c, const RecognizerRules& rules) {
  const auto& ideas = rules.charges().ideas_of(m.tokens[c.last]);
  return std::find(ideas.begin(), ideas.end(), rules.charge_marks().number) != ideas.end() &&
         c.last + 1u < m.tokens.size() && (m.tokens[c.last + 1u].number() || m.tokens[c.last + 1u].is('#'));
}

bool names_charge(const MarkedText& m, const RecognizerRules& rules, std::size_t first, std::size_t last) {
  return std::any_of(m.charge.begin(), m.charge.end(), [&](const Mention& c) {
    if (c.first < first || c.last >= last || c.match == Match::shortened || numbers_something(m, c, rules) ||
        (c.match == Match::misspelt && m.tokens[c.first].text.size() < 6)) // too short to be sure
      return false;
    const Concept& idea = rules.charges().at(c.concept_id);
    return idea.role == Role::thing || idea.role == Role::work ||
           (idea.role == Role::state && idea.id != "left-behind" && idea.id != "unpaid" && idea.id != "balance");
  });
}

bool names_thing(const MarkedText& m, const RecognizerRules& rules, std::size_t first, std::size_t last) {
  return std::any_of(m.charge.begin(), m.charge.end(), [&](const Mention& c) {
    const Role role = rules.charges().at(c.concept_id).role;
    return c.first >= first && c.last < last && (role == Role::thing || role == Role::work);
  });
}

} // namespace wearline
