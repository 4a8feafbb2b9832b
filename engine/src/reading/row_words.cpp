#include "reading/row_words.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

namespace wearline {

bool mentions_word(const PaperRow& l, const RecognizerRules& rules, std::string_view id, std::size_t first,
                   std::size_t last) {
  const Lexicon::Id wanted = rules.statement().find(id);
  return std::any_of(l.m.statement.begin(), l.m.statement.end(),
                     [&](const Mention& m) { return m.concept_id == wanted && m.first >= first && m.last < last; });
}

bool mentions_word(const PaperRow& l, const RecognizerRules& rules, std::string_view id) {
  return mentions_word(l, rules, id, 0, l.m.tokens.size() + 1);
}

bool says_who(const PaperRow& l, const RecognizerRules& rules, std::size_t first, std::size_t last) {
  for (const Mention& m : l.m.statement) {
    if (m.first < first || m.last >= last) continue;
    const std::string& id = rules.statement().at(m.concept_id).id;
    if (id == "st:you" || id == "st:owner") return true;
    for (std::size_t t = m.first; t <= m.last; ++t)
      if (is_word_of(l.m.tokens[t], "w:party", rules)) return true;
  }
  return false;
}

bool mentions_rent(const PaperRow& l, const RecognizerRules& rules) {
  return std::any_of(l.m.charge.begin(), l.m.charge.end(),
                     [&](const Mention& m) { return rules.charges().at(m.concept_id).id == "rent"; });
}

bool is_tax(const PaperRow& l, const RowFigures& p, const RecognizerRules& rules) {
  const Lexicon::Id tax = rules.charges().find("tax");
  return std::any_of(l.m.charge.begin(), l.m.charge.end(), [&](const Mention& m) {
    return m.concept_id == tax && m.first >= p.label_first && m.last < p.label_last;
  });
}

bool is_credit(const PaperRow& l, const RowFigures& p, const RecognizerRules& rules) {
  const Lexicon::Id credit = rules.charges().find("mark:credit");
  for (std::size_t t = 0; t < l.m.tokens.size(); ++t) {
    const bool ours = (t >= p.label_first && t < p.label_last) || t >= p.tail_first || t > l.m.numbers[p.number].last;
    const auto& ideas = rules.charges().ideas_of(l.m.tokens[t]);
    if (!ours || std::find(ideas.begin(), ideas.end(), credit) == ideas.end()) continue;
    const bool other = std::any_of(l.m.charge.begin(), l.m.charge.end(), [&](const Mention& m) {
      return m.first <= t && t <= m.last && m.first != m.last && m.concept_id != credit &&
             rules.charges().at(m.concept_id).id != "credit";
    });
    if (!other) return true;
  }
  return false;
}

bool is_free(const PaperRow& l, const Number& n, const RecognizerRules& rules) {
  return std::any_of(l.m.charge.begin(), l.m.charge.end(),
                     [&](const Mention& m) { return m.concept_id == rules.charge_marks().free && m.first > n.last; });
}

bool in_passing(const PaperRow& l, const Number& n, const RecognizerRules& rules) {
  const Lexicon::Id id = rules.statement().find("w:in-passing");
  return std::any_of(l.m.statement.begin(), l.m.statement.end(), [&](const Mention& s) {
    return s.concept_id == id && s.match == Match::exact && s.last < n.first && s.last + 6u > n.first &&
           !names_thing(l.m, rules, s.last + 1u, n.first);
  });
}

bool is_denied(const PaperRow& l, const Number& n, const RecognizerRules& rules) {
  const Lexicon::Id id = rules.statement().find("w:denied");
  return std::any_of(l.m.statement.begin(), l.m.statement.end(), [&](const Mention& s) {
    return s.concept_id == id && s.match == Match::exact && s.first > n.last;
  });
}

bool names_own_charge(const PaperRow& l, const RecognizerRules& rules) {
  const auto own = [&](std::size_t t) {
    return std::any_of(l.m.statement.begin(), l.m.statement.end(), [&](const Mention& s) {
      const std::string& id = rules.statement().at(s.concept_id).id;
      return s.first <= t && t <= s.last &&
             (id == "w:paid-back" || id == "st:held" || id == "st:payment" || id == "st:refund" || id == "st:total" ||
              id == "st:deposit");
    });
  };
  for (std::size_t t = 0; t < l.m.tokens.size(); ++t)
    if (l.m.tokens[t].word() && !own(t) && names_charge(l.m, rules, t, t + 1)) return true;
  return std::any_of(l.m.charge.begin(), l.m.charge.end(), [&](const Mention& c) {
    return c.first != c.last && names_charge(l.m, rules, c.first, c.last + 1u) && !(own(c.first) && own(c.last));
  });
}

bool came_from_you(const MarkedText& m, const RecognizerRules& rules, const Number& n) {
  const Lexicon::Id id = rules.statement().find("w:from-you");
  return can_be_sum(n) && n.thousandths >= 20'000 &&
         std::any_of(m.statement.begin(), m.statement.end(), [&](const Mention& s) {
           return s.concept_id == id && s.match == Match::exact && s.first == n.last + 1u;
         });
}

bool tells_account(const PaperRow& l, const RecognizerRules& rules) {
  if (l.row.bulleted || l.row.cells.size() > 1) return false;
  const auto sums = std::count_if(l.m.numbers.begin(), l.m.numbers.end(), [](const Number& n) {
    return can_be_sum(n) && !n.rate && (is_strong(n) || n.thousandths >= 20'000);
  });
  if (sums != 2 || !can_be_sum(l.m.numbers.back()) || !ends_row(l, l.m.numbers.back(), rules)) return false;
  return (mentions_word(l, rules, "st:deposit") || came_from_you(l.m, rules, l.m.numbers[0])) &&
         (mentions_word(l, rules, "st:refund") || mentions_word(l, rules, "st:leaves")) && !names_own_charge(l, rules);
}

bool names_account_number(const PaperRow& l, const RecognizerRules& rules) {
  for (const Number& n : l.m.numbers) {
    if (!can_be_sum(n) || n.thousandths < 20'000) continue;
    for (const Mention& s : l.m.statement) {
      const std::string& id = rules.statement().at(s.concept_id).id;
      if (id != "st:deposit" && id != "st:refund" && id != "st:total" && id != "st:leaves") continue;
      // "had 600 from you (deposit)"
      const bool alone = id == "st:deposit" && l.m.numbers.size() == 1 && s.first <= n.last + 4u;
      const bool after = s.first == n.last + 1u || (s.first > n.last && alone),
                 before = n.first <= s.last + 2u && n.first > s.last;
      if (after || (before && ends_row(l, n, rules))) return true;
    }
  }
  return false;
}

std::vector<SumRole> heard_roles(const PaperRow& l, const RecognizerRules& rules) {
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
  if (mentions_word(l, rules, "st:payment")) return {SumRole::payment};
  const auto denied = [&](const Mention& m) { // "remote not returned"
    const std::string before = m.first > 0 ? l.m.tokens[m.first - 1u].text : std::string();
    return before == "not" || before == "never" || before == "no";
  };
  std::vector<SumRole> out;
  for (const auto& [id, role] : heard) {
    const Lexicon::Id wanted = rules.statement().find(id);
    if (std::any_of(l.m.statement.begin(), l.m.statement.end(),
                    [&](const Mention& m) { return m.concept_id == wanted && !denied(m); }))
      out.push_back(role);
  }
  const std::size_t body = token_at(l.m, l.row.body);
  if (mentions_word(l, rules, "st:less", body, body + 2)) out.push_back(SumRole::total); // "Less front column"
  return out;
}

bool names_only_room(const PaperRow& l, const RecognizerRules& rules, std::size_t first, std::size_t last) {
  std::size_t words = 0, known = 0;
  std::vector<bool> place(l.m.tokens.size(), false);
  for (const Mention& m : l.m.charge)
    if (rules.charges().at(m.concept_id).role == Role::place)
      for (std::size_t t = m.first; t <= m.last; ++t) place[t] = true;
  for (std::size_t t = first; t < last; ++t)
    if (l.m.tokens[t].word()) ++words, known += place[t];
  return words > 0 && words == known;
}

bool is_room_sum(const PaperRow& l, const RowFigures& p, const RecognizerRules& rules) {
  const Lexicon::Id subtotal = rules.statement().find("st:subtotal");
  return std::any_of(l.m.statement.begin(), l.m.statement.end(), [&](const Mention& s) {
    return s.concept_id == subtotal && s.match == Match::exact && s.first > p.label_first && s.last < p.label_last &&
           !has_words(l, s.last + 1u, p.label_last, rules) && names_only_room(l, rules, p.label_first, s.first);
  });
}

bool is_room(const PaperRow& l, const RecognizerRules& rules) {
  return names_only_room(l, rules, 0, l.m.tokens.size());
}

bool tells_share(const PaperRow& l, const RowFigures& p, const RecognizerRules& rules) {
  return p.label_first < p.label_last && is_word_of(l.m.tokens[p.label_first], "w:per", rules) &&
         !names_thing(l.m, rules, p.label_first, p.label_last);
}

bool is_item_fact(const PaperRow& l, const RowFigures& p, bool record, const RecognizerRules& rules) {
  static constexpr std::array<std::string_view, 5> facts = {"col:qty", "col:unit", "col:rate", "col:fact",
                                                            "col:other-money"};
  const Number& n = l.m.numbers[p.number];
  std::vector<bool> told(l.m.tokens.size(), false);
  bool rate = false;
  for (const Mention& s : l.m.statement) {
    const std::string& id = rules.statement().at(s.concept_id).id;
    const auto last = record ? facts.end() : facts.end() - 1;
    if (s.match != Match::exact || std::find(facts.begin(), last, id) == last) continue;
    rate = rate || (id == "col:rate" && s.last > s.first);
    for (std::size_t t = s.first; t <= s.last; ++t) told[t] = true;
  }
  bool colon = false;
  for (std::size_t t = p.label_first; t < n.first; ++t) {
    colon = colon || l.m.tokens[t].is(':');
    if (l.m.tokens[t].word() && !told[t] && t < p.label_last) return false;
  }
  return colon && (record || rate || (!n.currency && n.decimals != 2));
}

bool only_capitals(const PaperRow& l) {
  bool word = false;
  for (const Token& t : l.m.tokens)
    if (t.word()) {
      if (!t.capitals && t.text.size() > 1) return false;
      word = true;
    }
  return word;
}

bool in_brackets(const PaperRow& l) { return l.row.text[l.row.body] == '(' && l.row.text.back() == ')'; }

} // namespace wearline
