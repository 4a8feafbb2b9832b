#include "reading/fact_scope.h"

#include <algorithm>

namespace wearline {

namespace {

bool is_age(const WordFact& fact) {
  return fact.field == "installed" || fact.field == "ageYears" || fact.field == "ageYearsAtMoveIn" ||
         fact.field == "usefulLifeYears";
}

bool speaks_for(const Group& group, const ElementRule& element) {
  return std::any_of(element.terms.begin(), element.terms.end(), [&](const WeightedTerm& term) {
    return term.weight > 0 && std::any_of(term.all.begin(), term.all.end(), [&](const auto& any) {
             return std::any_of(any.begin(), any.end(), [&](Lexicon::Id id) {
               return group.has(id & static_cast<Lexicon::Id>(~WeightedTerm::anywhere));
             });
           });
  });
}

bool ends_sentence(const Token& t) { return t.is('.') || t.is(';') || t.is('(') || t.is(')'); }

class Subject {
public:
  Subject(const Sense& line, const std::vector<Token>& tokens, const ElementRule& element, const RecognizerRules& rules)
      : groups_(line.groups()), tokens_(tokens), element_(element), rules_(rules),
        unlisted_(rules.charges().find("unlisted")) {
    for (const char* name : {"with", "in", "behind", "from"}) links_.push_back(rules.charges().find(name));
  }

  /// The thing that the words between two tokens belong to: the one they name, the one they stand before ("9 yr old
  /// fridge"), else the last one named in the same sentence. Null where none is.
  const Group* of(std::size_t first, std::size_t last) const {
    const Group* inside = nullptr;
    const Group* before = nullptr;
    bool aside = false; // behind a word that only says where or with what
    std::uint16_t clause = 0;
    std::size_t sentence = first;
    while (sentence > 0 && !ends_sentence(tokens_[sentence - 1])) --sentence;
    for (const Group& g : groups_) {
      if (g.clause != clause) aside = false;
      aside = aside || std::any_of(links_.begin(), links_.end(), [&](Lexicon::Id link) { return g.has(link); });
      clause = aside && &g + 1 != groups_.data() + groups_.size() ? (&g + 1)->clause : g.clause; // "w/" ends none
      if (aside || (!names_thing(g) && !speaks_for(g, element_))) continue;
      if (g.first >= first && g.first <= last + 1u) inside = &g;
      else if (g.first >= sentence && g.first < first) before = &g;
    }
    return inside != nullptr ? inside : before;
  }

  /// Whether the thing or one that it is joined to in a row of nouns ("hood filter") speaks for the element.
  bool belongs(const Group& subject) const {
    const auto at = static_cast<std::size_t>(&subject - groups_.data());
    std::size_t from = at, to = at;
    while (from > 0 && groups_[from - 1].last + 1u >= groups_[from].first) --from;
    while (to + 1 < groups_.size() && groups_[to].last + 1u >= groups_[to + 1].first) ++to;
    for (std::size_t i = from; i <= to; ++i)
      if (speaks_for(groups_[i], element_)) return true;
    return named_again(subject);
  }

private:
  /// A thing that the words are about, surely: not one that only says where ("behind the stove") or what another is
  /// made of ("countertop, laminate 8 yrs old").
  bool names_thing(const Group& g) const {
    if (!g.thing || g.inner || g.factor <= 45 || g.match != Match::exact) return false;
    return std::none_of(g.ids.begin(), g.ids.end(),
                        [&](Lexicon::Id id) { return rules_.material(id) || id == unlisted_; });
  }
  /// "Shower rod bent; rod was 2 yrs old"
  bool named_again(const Group& subject) const {
    return std::any_of(groups_.begin(), groups_.end(), [&](const Group& g) {
      return g.last < subject.first && speaks_for(g, element_) && tokens_[g.last].text == tokens_[subject.last].text;
    });
  }

  const std::vector<Group>& groups_;
  const std::vector<Token>& tokens_;
  const ElementRule& element_;
  const RecognizerRules& rules_;
  std::vector<Lexicon::Id> links_;
  Lexicon::Id unlisted_ = Lexicon::none;
};

} // namespace

void drop_others_ages(WordFacts& facts, const Sense& line, const std::vector<Token>& tokens, const ElementRule& element,
                      const RecognizerRules& rules) {
  if (std::none_of(facts.begin(), facts.end(), is_age)) return;
  const Subject subjects(line, tokens, element, rules);
  std::erase_if(facts, [&](const WordFact& fact) {
    if (!is_age(fact)) return false;
    const auto from = std::find_if(tokens.begin(), tokens.end(), [&](const Token& t) { return t.end > fact.start; });
    auto to = from;
    while (to != tokens.end() && to->end < fact.end) ++to;
    if (to == tokens.end()) return false;
    const Group* subject =
        subjects.of(static_cast<std::size_t>(from - tokens.begin()), static_cast<std::size_t>(to - tokens.begin()));
    return subject != nullptr && !subjects.belongs(*subject);
  });
}

} // namespace wearline
