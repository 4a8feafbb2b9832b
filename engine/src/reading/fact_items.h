#pragma once
// A charge's words as the items that the patterns of facts run over: words, numbers with what they are, signs.

#include "reading/marked_text.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace wearline {

struct FactItem {
  enum class Kind : std::uint8_t { word, number, sign };
  Kind kind = Kind::sign;
  std::uint16_t first = 0, last = 0; ///< tokens, inclusive
  std::string text;                  ///< of a word, sign or lone number, folded
  NumberKind number = NumberKind::plain;
  std::int64_t thousandths = 0;
  std::uint8_t decimals = 0;
  bool currency = false;
  bool worded = false;              ///< a number written as a word: "two"
  bool bracketed = false;           ///< "(6)"
  bool decade = false;              ///< "1970s"
  bool hyphened = false;            ///< joined to the word after it: "6-panel"
  bool rate = false;                ///< a price for one, as numbers.h has it
  bool thing = false;               ///< part of a term that names a thing
  bool no_count = false;            ///< a pattern says that it counts nothing: "section 9"
  NamedDay day;                     ///< of a date or year
  std::int64_t over = 0, under = 0; ///< of a fraction: over / under
  std::vector<std::uint16_t> words; ///< what it is in the rules' own words; filled by FactRules

  /// "3/4", as of an hour, be it a date elsewhere.
  bool part_of_one() const {
    return (number == NumberKind::fraction || number == NumberKind::date) && day.year == 0 && over > 0 &&
           over < under && under <= 8;
  }
  bool is(char sign) const { return kind == Kind::sign && text.size() == 1 && text[0] == sign; }
};

/// A word that is a number, in thousandths: "two" is 2000, "half" 500; or a decade by its first year: "fifties" is
/// 1950000.
struct NumberWord {
  std::string word;
  std::int64_t thousandths = 0;

  bool decade() const { return thousandths >= 1'900'000; }
};

/// "w/" and "w/o" at this token, written out, and the token after them; 0 where neither stands.
std::pair<std::string_view, std::size_t> with_or_without(const std::vector<Token>& tokens, std::size_t at);

/// Hyphens inside words, points of abbreviations and quotation marks are left out; a point before a capital letter
/// stays, as the end of a sentence. `source` is the text that was marked.
std::vector<FactItem> fact_items(const MarkedText& text, std::string_view source, const std::vector<NumberWord>& words);

} // namespace wearline
