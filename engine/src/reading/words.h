#pragma once
// Text as words, numbers and signs, each with its place in the text: the ground the reader and the recognizer stand on.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace wearline {

enum class TokenKind : std::uint8_t { word, number, sign };

/// A piece of a text. `start` and `end` are byte offsets into it (end exclusive).
/// `text` is folded: lower case, without accents or apostrophes; typographic quotes and dashes become ASCII ones.
/// A letter O inside a number ("165.0O") is read as zero and `slip` is set.
struct Token {
  TokenKind kind = TokenKind::sign;
  bool glued = false; ///< no blank between this and the piece before
  bool far = false;   ///< two blanks or a tab before it: another column
  bool slip = false;
  bool capitals = false; ///< a word of two or more letters, all capitals in the text
  std::uint32_t start = 0, end = 0;
  std::string text;

  bool is(char sign) const { return kind == TokenKind::sign && text.size() == 1 && text[0] == sign; }
  bool word() const { return kind == TokenKind::word; }
  bool number() const { return kind == TokenKind::number; }
};

/// Lower case and without accents: Latin letters of the languages of the rules (UTF-8 in; a byte that is not UTF-8
/// becomes a blank).
std::string fold(std::string_view text);

/// The pieces of one line. Words break where letters meet digits: "br1" is "br" and a glued "1". Blanks are dropped.
std::vector<Token> split_words(std::string_view line);

/// What stands between the signs `at`; nothing empty. The pieces lie in `text`.
std::vector<std::string_view> split(std::string_view text, char at);

/// The root two forms of a word share: "replaced", "replaces" and "replacing" give "replac"; "paredes" and "pared" give
/// "pared". Endings only, of English and Spanish; for matching, never for show.
std::string root(std::string_view folded_word);

/// Edits (insert, delete, change, swap of neighbors) that make one word the other, or `most + 1` if more than `most`.
/// At most 24 letters.
unsigned edit_distance(std::string_view a, std::string_view b, unsigned most);

} // namespace wearline
