#pragma once
// What a line leaves to its words. A program that links its own definition of these two functions instead
// (wasm/judge.cpp) does without the recogniser, the largest part of the engine that most judgements do not need.

#include "case/case.h"
#include "reading/recogniser.h"
#include "wearline/fault.h"

#include <string_view>

namespace wearline {

/// Fills in what a line leaves to its words: thing, finding, kind and place. Gives the confidence, 100 where nothing
/// was proposed.
int name_from_text(Line& line, const RecogniserRules& recogniser);

/// Adds one file of engine/rules/recogniser to the words.
Faults add_recogniser_file(RecogniserRules& recogniser, std::string_view name, std::string_view json);

} // namespace wearline
