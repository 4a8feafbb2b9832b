#pragma once
// Small words that letters share: one line of a case's text, lists, currencies.

#include "wording/speech.h"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace wearline {

/// ISO 4217 code of a place's money; empty where no place is given.
std::string_view currency_of(std::string_view jurisdiction);

/// Text of the case as one line: control characters and runs of space become one space; over 160 characters it ends in
/// "…".
std::string on_one_line(std::string_view text);

/// The first sentence of a text: up to a full stop before a space and a capital letter.
std::string_view first_sentence(std::string_view text);

/// What a translation says of the first sentence of the original: it may take two to say it.
std::string_view opening(std::string_view translated, std::string_view original);
/// The sentences of a text, cut where first_sentence() would.
std::vector<std::string_view> sentences(std::string_view text);

/// "a", "a and b", "a, b and c".
std::string listed(const std::vector<std::string>& items, const Speech& speech);

/// Joins sentences with a space, leaving out empty ones.
class Sentences {
public:
  Sentences& add(std::string_view sentence) {
    if (sentence.empty()) return *this;
    if (!text_.empty()) text_ += ' ';
    text_ += sentence;
    return *this;
  }
  bool empty() const { return text_.empty(); }
  std::string take() { return std::move(text_); }

private:
  std::string text_;
};

} // namespace wearline
