#pragma once
// What a line leaves to its words.

#include "case/case.h"
#include "reading/recognizer.h"
#include "wearline/fault.h"

#include <string_view>

namespace wearline {

/// What a line took from its words.
struct FromWords {
  int confidence = 100;          ///< of the thing; 100 where nothing was proposed
  bool harm_named = false;       ///< they say what was wrong (Recognition)
  std::vector<Alternative> also; ///< other readings of the thing, where it is unsure
  WordFacts used;                ///< facts that filled an empty field
  WordFacts against;             ///< facts that say otherwise than a field does; the field stands

  /// Whether the other readings of the thing are judged as well, and the person is asked.
  bool unsure() const { return confidence < 55; }
};

/// Fills in what a line leaves to its words: thing, finding, kind and place, and the facts they state, but for those
/// the person has struck. A field that is filled always stands.
FromWords fill_from_text(Line& line, const RecognizerRules& recognizer);

/// Adds one file of engine/rules/recogniser to the words.
Faults add_recognizer_file(RecognizerRules& recognizer, std::string_view name, std::string_view json);

} // namespace wearline
