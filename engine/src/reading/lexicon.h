#pragma once
// The words the recognizer and the reader know, by the idea they stand for, and finding them in a text.

#include "reading/words.h"
#include "wearline/fault.h"

#include <array>
#include <cstdint>
#include <map>
#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace wearline {

/// What an idea does in a line. Things and parts are what money goes to; places are rooms; links ("behind") say how two
/// things relate; marks belong to numbers and papers (units, months, "total"); plain words are known but say nothing.
enum class Role : std::uint8_t { thing, part, work, state, cause, money, place, link, mark, plain };

struct Concept {
  std::string id;
  Role role = Role::plain;
  std::string value;  ///< of a place its name, of a unit its unit; else empty
  bool unit = false;  ///< a unit of count or measure
  bool aside = false; ///< mostly said beside a charge ("photos"): counts little where another thing is named
};

/// How a word of the text was matched to a known one.
enum class Match : std::uint8_t { exact, shortened, misspelt };

/// One idea found in a text: tokens `first`..`last` (inclusive).
struct Mention {
  std::uint16_t concept_id = 0;
  std::uint16_t first = 0, last = 0;
  Match match = Match::exact;
  bool inner =
      false; ///< a thing, part or room named inside a longer term that stands for something else ("high grass")
};

/// Built once from rules/recogniser, then only read.
class Lexicon {
public:
  using Id = std::uint16_t;
  static constexpr Id none = 0xFFFF;

  /// `guesses`: whether unknown words are tried as shortenings and misspellings of known ones.
  explicit Lexicon(bool guesses = true) : guesses_(guesses) {}

  /// Adds `{"concepts": [{"id", "role", "value"?, "<language>": ["term", ...], ...}], "distinct": ["word", ...]}`.
  /// A term in CAPITALS fits only words in capitals ("SD" is a smoke detector, "sd" is not). `aliases` are
  /// abbreviations with the words they stand for (`{"dr": ["door"]}`), so that terms need not repeat them. `distinct`
  /// are words that must not be taken for another form of their root ("molding" is no form of "mold"); they bind files
  /// added later too, so the file that has them comes first. `others` are common words that stand for no idea and so
  /// are no shortening or misspelling of a term ("sunk" is no "stunk"). `articles` may stand inside a term: "fan over
  /// stove" is met by "fan over the stove". Faults: JSON Pointers into the document.
  Faults add(const nlohmann::json& document);

  Id find(std::string_view concept_id) const;
  const Concept& at(Id id) const { return concepts_[id]; }
  std::size_t size() const { return concepts_.size(); }

  /// The ideas in a line, left to right, longest terms first, none overlapping unless one term stands for several
  /// ideas. A word that is not known may be matched as a shortening ("drvwy") or a misspelling ("fauset") of one that
  /// is.
  std::vector<Mention> mentions(const std::vector<Token>& tokens) const;

  /// The ideas a word stands for on its own, whatever longer term it is part of.
  const std::vector<Id>& ideas_of(const Token& token) const;
  /// The words that an abbreviation stands for, in the form it is written in: "pnt'd" is painted. None where it is
  /// none.
  std::vector<std::string> written_out(const std::string& word) const;

private:
  using Word = std::uint32_t;
  static constexpr Word no_word = 0xFFFFFFFF;

  struct Known {
    std::string text, skeleton;
    Word word;
  };
  struct Node {
    std::unordered_map<Word, std::uint32_t> next;
    std::vector<Id> concepts;
  };
  /// The words a token may stand for: itself, itself in capitals, what it abbreviates.
  struct Resolved {
    std::array<Word, 4> words{no_word, no_word, no_word, no_word};
    Match match = Match::exact;
    bool far = false;
    bool article = false;
    bool any() const {
      return words[0] != no_word || words[1] != no_word || words[2] != no_word || words[3] != no_word;
    }
  };
  struct Walk {
    std::uint32_t node = 0;
    std::size_t last = 0;
    Match match = Match::exact;
  };

  Word intern(const std::string& text);
  Word known_word(const std::string& text) const;
  void add_term(std::string_view term, Id id);
  void add_inner(std::vector<Mention>& out, const std::vector<Token>& tokens, const std::vector<std::size_t>& stream,
                 std::size_t from, std::size_t to) const;
  void walk(const std::vector<Resolved>& words, std::size_t at, std::uint32_t node, Match match, Walk& best) const;
  Resolved resolve(const Token& token, bool dotted) const;
  bool same_ideas(Word a, Word b) const;
  Word shortened(const std::string& text, bool dotted) const;
  Word misspelt(const std::string& text) const;

  bool guesses_;
  std::vector<Concept> concepts_;
  std::unordered_map<std::string, Id> ids_;
  std::unordered_map<std::string, Word> words_; ///< by root, or by the word itself where distinct
  std::unordered_map<std::string, bool> distinct_, others_, articles_;
  std::unordered_map<std::string, std::vector<std::string>> aliases_;
  std::vector<std::vector<Known>> by_letter_ = std::vector<std::vector<Known>>(26);
  std::unordered_map<std::string, bool>
      surfaces_; ///< every word of every term, to offer it once as a target of correction
  std::vector<Node> nodes_ = std::vector<Node>(1);
  Word next_word_ = 0;
};

} // namespace wearline
