#pragma once
// What every letter is built with: the assessment, its words, and the paragraphs so far.

#include "judging/assessment.h"
#include "letters/letter.h"
#include "letters/letter_law.h"
#include "rulebook/rule_store.h"
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

/// "a", "a and b", "a, b and c".
std::string listed(const std::vector<std::string>& items, const Speech& speech);

class Draft {
public:
  Draft(const Assessment& assessment, const Rules& rules, LetterKind kind, std::string_view language);

  const Assessment& a;
  const Case& c;
  const Rules& rules;
  const Speech speech;
  const LawTalk law;
  Letter letter;

  std::string say(std::string_view key, Wording::Args args = {}) const { return speech.say(key, args); }
  std::string say(std::string_view prefix, std::string_view name, Wording::Args args = {}) const;
  bool has(std::string_view prefix, std::string_view name) const;
  std::string money(Money m) const { return speech.money(m); }

  /// "on July 31, 2026", "between ... and ...".
  std::string when(const DaySpan& day) const;
  /// "Charge 2, “Repaint”": how a letter speaks of a charge.
  std::string charge(std::size_t line) const;
  /// "charge 2", "charges 2 and 3".
  std::string charges(const std::vector<std::size_t>& lines) const;
  std::string label(std::size_t line) const; ///< "2. Repaint", for tables

  /// Adds a paragraph that must stand.
  Paragraph& must(std::string id, ParagraphRole role, std::string text);
  /// Adds a paragraph that the person may switch off. Nothing is added for an empty text.
  Paragraph* may(std::string id, ParagraphRole role, std::string text, const std::vector<std::size_t>& lines = {});
  /// The same words are said once.
  void warn(std::string code, std::string text);
};

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
