#pragma once
// What every letter is built with: the assessment, its words, and the paragraphs so far.

#include "judging/assessment.h"
#include "letters/letter_kinds.h"
#include "letters/letter_law.h"
#include "letters/letter_text.h"
#include "letters/letter_words.h"
#include "rulebook/rule_store.h"
#include "wording/speech.h"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace wearline {

class Draft {
public:
  Draft(const Assessment& assessment, const Rules& rules, LetterKind kind, std::string_view language,
        const Names& names = {});

  const Assessment& a;
  const Case& c;
  const Rules& rules;
  const Speech speech;
  const bool several;  ///< more than one tenant signs: "we"
  const bool deposits; ///< more than one deposit was paid, rent paid ahead apart
  const LawTalk law;
  Letter letter;

  /// A sentence with its values. A place named after a blank ("{home}") is filled by its name or stands as "[label]";
  /// "{I|we}" takes the word for one sender or for several, "{deposit||deposits}" that for one deposit or for several.
  std::string say(std::string_view key, Wording::Args args = {}) const;
  std::string say(std::string_view prefix, std::string_view name, Wording::Args args = {}) const;
  bool has(std::string_view prefix, std::string_view name) const;
  std::string money(Money m) const { return speech.money(m); }
  /// Without cents, for what is reckoned by rules of thumb: "$113". Rounded down, as the sums that letters name are.
  std::string about(Money m) const;

  /// "on July 31, 2026", "in July 2026", "between ... and ...".
  std::string when(const DaySpan& day) const;
  std::string label(std::size_t line) const; ///< "2. Repaint", for tables
  /// "charge 2", "charges 2 and 3".
  std::string charges(const std::vector<std::size_t>& lines) const;

  /// Money held that the law of the place does not call a deposit, rent paid ahead apart: it is in none of the sums.
  std::vector<const Deposit*> held_apart() const;
  /// The charges that such money was paid for; each is of the first money of its kind.
  std::vector<std::size_t> served_by(const Deposit& own) const;
  /// A sentence for each of them, with its `sum` and `kind`; empty where there are none.
  std::string say_apart(std::string_view key) const;

  /// Adds a paragraph that must stand.
  Paragraph& must(std::string id, ParagraphRole role, std::string text);
  /// Adds a paragraph that the person may switch off. Nothing is added for an empty text.
  Paragraph* may(std::string id, ParagraphRole role, std::string text, const std::vector<std::size_t>& lines = {});
  /// The same words are said once.
  void warn(std::string code, std::string text);
  /// Fills Letter::blanks with those that stand in the letter, and Paragraph::cites.
  void close();

private:
  bool fill(std::string_view name, Wording::Args args, std::string& out) const;

  const Names names_;
};

/// One list under a title; nothing if it is empty.
Paragraph* add_list(Draft& d, std::string id, ParagraphRole role, std::string title,
                    const std::vector<std::string>& items);
/// Who decides in this place, or in its country; null where small claims court does.
const Forum* own_forum(const Draft& d);
/// "small claims court", or the place's own body.
std::string forum(const Draft& d);
/// Every blank that a letter may have, by its id.
std::vector<std::string_view> blank_names();

} // namespace wearline
