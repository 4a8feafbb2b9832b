#pragma once
// Letters that a scan or a typist put for digits, and digits for letters: "1O5.0O", "11S.00", "T0tal". The mended text
// is as long as the other, byte for byte, so that places hold.

#include "reading/label.h"

#include <string>
#include <string_view>

namespace wearline {

/// The text with such letters and digits put right where the rest of the word leaves no doubt what it is: a digit
/// between two letters of a word, a letter in a number that has two decimals.
std::string mend_letters(std::string_view text);

/// Marks the numbers of `text` where the mended line differs from the one that came.
void mark_mended(MarkedText& text, std::string_view before, std::string_view after);

} // namespace wearline
