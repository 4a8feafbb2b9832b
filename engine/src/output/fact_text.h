#pragma once
// Facts read from words, as JSON.

#include "reading/word_facts.h"

#include "json/json_out.h"
#include <string_view>

namespace wearline {

/// The members "facts" and "factSpans" of the object being written: fields of a case's line, and for each the code
/// points of `text` it came from ([start, end), end exclusive).
void write_facts(JsonOut& out, const WordFacts& facts, std::string_view text);

/// One fact's value.
void write_fact_value(JsonOut& out, const WordFact& fact);

/// Code points in the first `bytes` bytes of a text.
std::int64_t code_points(std::string_view text, std::uint32_t bytes);

} // namespace wearline
