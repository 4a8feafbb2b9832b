#pragma once
// Letters and papers made from an assessment, as paragraphs: the page, plain text, print and word-processor files are
// views of them. A letter is its sender's: it asks first and for all that the law may give, and admits nothing that is
// open.

#include "letters/letter_kinds.h"

#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace wearline {

enum class ParagraphRole { address, date, opening, table, line, list, ask, closing, caution, enclosures };
std::string_view name_of(ParagraphRole role);

/// One paragraph. `id` is the same for the same thing in every version of a letter ("group-wear", "ask"), so that a
/// person's own wording can be kept when facts change. A table has rows of cells under `head` (may be empty); a list
/// has rows of one cell.
struct Paragraph {
  std::string id;
  ParagraphRole role = ParagraphRole::opening;
  std::string text;
  std::vector<std::string> lines; ///< ids of the charges it speaks of
  std::vector<std::string> cites; ///< citations of law in its text, word for word
  std::vector<std::string> head;
  std::vector<std::vector<std::string>> rows;
  bool optional = false; ///< the person may switch it off
  bool on = true;        ///< off: not part of the text that is sent
};

/// Something the person should know before sending; never part of the letter.
struct LetterWarning {
  std::string code, text;
};
/// What a warning of a landlord's paper is about: "day", "charge", "proof", "form"; empty for any other.
std::string_view about(const LetterWarning& warning);

/// A name, address or number that the case does not hold: in the letter it stands as "[label]" until `value` is given.
struct Blank {
  std::string id, label, value;
};
/// What fills the blanks, by their ids. It comes with the request and is kept nowhere.
using Names = std::map<std::string, std::string, std::less<>>;

struct Letter {
  LetterKind kind = LetterKind::question_charges;
  std::string language, title;
  std::string sent_as; ///< the event of the case that its day of sending is; empty where it has none
  std::vector<Paragraph> paragraphs;
  std::vector<LetterWarning> warnings;
  std::vector<Blank> blanks; ///< in the order in which they first stand in the letter
};

/// The letter as plain text: a blank line between paragraphs, no line breaks within one, a table row a line. Paragraphs
/// that are off and the caution are left out.
std::string plain_text(const Letter& letter);

} // namespace wearline
