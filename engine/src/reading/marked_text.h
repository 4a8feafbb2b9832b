#pragma once
// A text cut into pieces, with what the word lists know of them.

#include "reading/lexicon.h"
#include "reading/numbers.h"
#include "reading/words.h"

#include <vector>

namespace wearline {

/// A text cut into pieces and looked up in both word lists, so that it is done once.
struct MarkedText {
  std::vector<Token> tokens;
  std::vector<Mention> statement; ///< of the statement's words
  std::vector<Mention> charge;    ///< of the charges' words
  std::vector<Number> numbers;
};

} // namespace wearline
