#pragma once
// Whose age it is: "the fridge beside it is 9 years old" says nothing of the outlet that is charged.

#include "reading/recognizer_rules.h"
#include "reading/sense.h"
#include "reading/word_facts.h"

#include <vector>

namespace wearline {

/// Drops the ages and dates that the words give to a thing that does not speak for `element`.
void drop_others_ages(WordFacts& facts, const Sense& line, const std::vector<Token>& tokens, const ElementRule& element,
                      const RecognizerRules& rules);

} // namespace wearline
