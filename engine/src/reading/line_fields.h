#pragma once
// A fact of the words as a field of the line.

#include "case/case.h"
#include "reading/word_facts.h"

namespace wearline {

enum class Filled {
  yes,
  no,       ///< the field is filled already, or the fact alone says too little to judge by
  otherwise ///< the field is filled and says something else
};

/// Puts a fact into its field where that is empty. `all` are the facts of the same words: a count of what was damaged
/// needs the count of what was charged.
Filled fill_field(Line& line, const WordFact& fact, const WordFacts& all);

/// Puts a fact into its field, whatever stands there.
void set_field(Line& line, const WordFact& fact);

} // namespace wearline
