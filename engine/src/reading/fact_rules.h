#pragma once
// The patterns that say what a charge's words tell of its facts: rules/recogniser/facts.json, compiled and matched.
// A pattern is a row of slots over the items of a line; engine/rules/recogniser/README.md has its grammar.

#include "case/charge.h"
#include "reading/fact_items.h"
#include "reading/lexicon.h"
#include "wearline/fault.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <map>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <variant>
#include <vector>

namespace wearline {

/// What a rule sets a fact to: one of the pattern's numbers (1 is the first), a name, or yes/no.
using FactSetting = std::variant<int, std::string, bool>;

/// One rule met by a stretch of the items.
struct FactMatch {
  static constexpr std::size_t most_numbers = 5;
  std::uint16_t rule = 0;
  std::uint16_t first = 0, last = 0;                 ///< items, inclusive
  std::array<std::uint16_t, most_numbers> numbers{}; ///< items of the pattern's numbers
  std::uint8_t count = 0;
};

class FactRules {
public:
  struct Rule {
    std::vector<std::pair<std::string, FactSetting>> sets;
    std::string unit;              ///< of its first number: "years", "months", "room" ...
    std::vector<ChargeKind> kinds; ///< kinds of charge it holds for; empty: all
    std::uint64_t hides = 0;       ///< facts that may not read these words any more
    std::uint64_t facts = 0;       ///< facts it sets, as bits
    /// Facts and values that the line says are not so, wherever its words stand: "we never had a dog".
    std::vector<std::pair<std::string, std::string>> denies;
  };

  /// Compiles the document; words and ideas of `charges` are the recognizer's. Faults: JSON Pointers into it.
  Faults add(const nlohmann::json& document, const Lexicon& charges);

  /// Every match, rule by rule in the order of the file: a match hides its words from the facts its rule names, and
  /// its numbers from all later rules.
  std::vector<FactMatch> matches(const MarkedText& text, std::vector<FactItem>& items, const Lexicon& charges,
                                 ChargeKind kind) const;

  const Rule& rule(std::size_t i) const { return rules_[i]; }
  const std::vector<NumberWord>& number_words() const { return number_words_; }
  /// Whether the item is a word of the class.
  bool in_class(const FactItem& item, std::string_view name) const;
  /// Places that are one room each, and those that say only whereabouts ("upstairs").
  bool is_room(Lexicon::Id id) const { return std::find(rooms_.begin(), rooms_.end(), id) != rooms_.end(); }
  bool wide_place(Lexicon::Id id) const { return std::find(wide_.begin(), wide_.end(), id) != wide_.end(); }

private:
  using Word = std::uint16_t;
  enum class SlotKind : std::uint8_t {
    words,   ///< one of these words or phrases, or an idea of the recognizer, by name or by role
    number,  ///< a number of a kind
    gap,     ///< up to `most` words and numbers
    loose,   ///< up to `most` words that name no thing and link nothing
    far,     ///< up to `most` items of the same sentence
    without, ///< not one of these words here; takes nothing
    start,   ///< of a part of the line
    line_start,
    end
  };
  enum class NumberWant : std::uint8_t { count, bracketed, size, when, year, date, day, money, share, any };
  /// Several words in a row, each a set.
  using Phrase = std::vector<std::uint16_t>;
  /// What may stand at a place in a line. Patterns share those of the same text.
  struct Choice {
    std::vector<Word> words; ///< sorted
    std::vector<Phrase> phrases;
    std::vector<Word> first_words; ///< of the phrases
    std::vector<Lexicon::Id> ideas;
    bool end = false;         ///< or nothing, where a part of the line ends
    std::uint32_t roles = 0;  ///< bits by Role
    std::uint16_t set = 0;    ///< its words
    std::uint16_t begins = 0; ///< its words and the first words of its phrases
  };
  struct Slot {
    SlotKind kind = SlotKind::words;
    bool optional = false;
    std::uint8_t most = 0;
    NumberWant want = NumberWant::count;
    std::uint16_t choice = 0; ///< of words, by place in `choices_`
  };
  struct Pattern {
    std::uint16_t rule = 0;
    std::vector<Slot> slots;
    std::vector<std::uint16_t> needs; ///< sets of which the line must hold a word
    std::size_t numbers = 0;          ///< how many numbers the line must hold
  };
  struct Matching;

  Word intern(const std::string& text);
  std::vector<Slot> compile(std::string_view text, const Lexicon& charges, const std::string& at, Faults& faults);
  std::uint16_t choice_of(std::string_view text, const Lexicon& charges, const std::string& at, Faults& faults);
  void add_alternative(std::string_view text, Choice& choice, const std::string& at, Faults& faults);
  static void add_idea(std::string_view name, Choice& choice, const Lexicon& charges, const std::string& at,
                       Faults& faults);
  std::uint16_t set_of(const std::vector<Word>& words);
  std::uint16_t number(Choice choice);
  void find_needs(Pattern& pattern) const;
  void index(std::uint16_t pattern);
  std::uint64_t bit_of(const std::string& fact);
  void name_words(FactItem& item, bool known, const Lexicon& charges) const;

  std::vector<Rule> rules_;
  std::vector<Pattern> patterns_;
  std::vector<Choice> choices_;
  std::unordered_map<std::string, std::uint16_t> choice_numbers_; ///< by their text in a pattern
  std::vector<std::vector<std::uint16_t>> sets_of_;               ///< by word: the sets of words it is in
  std::map<std::vector<Word>, std::uint16_t> set_numbers_;
  std::vector<NumberWord> number_words_;
  std::vector<Lexicon::Id> rooms_, wide_;
  std::unordered_map<std::string, Word> words_;
  std::array<std::vector<std::pair<std::string, Word>>, 26> prefixes_; ///< by first letter
  std::array<std::vector<std::pair<std::string, Word>>, 26> endings_;  ///< "*ed", by last letter
  /// Words by their first letter and consonants.
  std::unordered_map<std::string, std::vector<std::pair<std::string, Word>>> shortenings_;
  std::array<std::vector<std::pair<std::string, Word>>, 26> long_words_; ///< of six letters and more, by first letter
  std::map<std::string, std::uint16_t, std::less<>> classes_;            ///< by name: their choice
  std::vector<std::vector<std::uint16_t>> by_set_; ///< patterns that can begin with a word of a set
  std::unordered_map<Lexicon::Id, std::vector<std::uint16_t>> by_idea_;
  std::array<std::vector<std::uint16_t>, 10> by_role_; ///< in the order of Role
  std::vector<std::uint16_t> by_number_, by_any_;
  std::map<std::string, std::uint64_t, std::less<>> bits_;
  Word next_word_ = 1;
};

} // namespace wearline
