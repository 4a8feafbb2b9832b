#pragma once
// Facts read from words, as JSON.

#include "reading/word_facts.h"

#include "json/json_out.h"
#include <string_view>

namespace wearline {

/// The members "facts" and "readFrom" of the object being written: fields of a case's line, and for each the code
/// points of `text` it came from ([start, end), end exclusive).
void write_facts(JsonOut& out, const WordFacts& facts, std::string_view text);

} // namespace wearline
