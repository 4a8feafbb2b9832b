#pragma once
// A text looked up in the word lists, and what its words are by them.

#include "reading/marked_text.h"
#include "reading/recognizer_rules.h"

#include <string_view>

namespace wearline {

/// The text cut into words, ideas and numbers. `as_statement` false leaves the statement's words out: enough for a text
/// known to be a charge.
MarkedText mark(std::string_view text, const RecognizerRules& rules, NumberStyle style, bool as_statement = true);

/// Whether a token is one of the words of a statement's idea ("w:per").
bool is_word_of(const Token& token, std::string_view idea, const RecognizerRules& rules);

/// A sign, a currency or "CR": says nothing by itself beside a sum.
bool is_closing_mark(const Token& token, const RecognizerRules& rules);

/// "check 1188", "invoice 20": the word before a number of reference.
bool numbers_something(const MarkedText& text, const Mention& word, const RecognizerRules& rules);

/// A thing, work, state or cause of a charge among the tokens from `first` to `last` (exclusive).
bool names_charge(const MarkedText& text, const RecognizerRules& rules, std::size_t first, std::size_t last);

/// A thing or work: what can be paid for.
bool names_thing(const MarkedText& text, const RecognizerRules& rules, std::size_t first, std::size_t last);

} // namespace wearline
