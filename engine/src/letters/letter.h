#pragma once
// Letters and papers made from an assessment, as paragraphs: the page, plain text, print and word-processor files are
// views of them. A letter is its sender's: it asks first and for all that the law may give, and admits nothing that is
// open.

#include "values/calendar.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wearline {

struct Assessment; // assessment.h
struct Rules;

enum class LetterKind {
  question_charges,
  ask_for_documents,
  after_deadline,
  reply_to_demand,
  accept_and_claim_rest,
  second_letter,
  objection,
  forwarding_address,
  demand,
  inspection_request,
  itemized_statement,
  cover_note,
  adviser_note,
  small_claims_sheet
};
/// "question-charges", ...: the names of options and results.
std::string_view name_of(LetterKind kind);
std::optional<LetterKind> letter_kind(std::string_view name);
/// Every kind, in the order of the list above.
std::vector<LetterKind> letter_kinds();
/// The kinds that a side ("tenant", "adviser", "landlord") may want, in the order of the list above.
std::vector<LetterKind> letter_kinds_of(std::string_view side);

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

/// A letter of a kind in "en" or "es" (a language that is not loaded is written in English). Any kind can be written
/// for any case; what the facts do not bear is left out and named in the warnings. A caution is always the last
/// paragraph; it is for the reader of the page and no part of what is sent.
Letter write_letter(const Assessment& assessment, const Rules& rules, LetterKind kind, std::string_view language,
                    const Names& names = {});

/// Whether the letter goes to somebody else; false for sheets that stay with their reader.
bool is_sent(LetterKind kind);

/// A kind that fits. `reason` is the wording key "letter.fits.<reason>"; `day` is named in it where there is one.
struct LetterProposal {
  LetterKind kind = LetterKind::question_charges;
  std::string_view reason;
  std::optional<Day> day;
};
/// The kinds that fit the facts and dates, best first. Where none does, `none_because` says why: the wording key
/// "letter.none.<reason>", with its day.
struct LetterChoice {
  std::vector<LetterProposal> kinds;
  std::string_view none_because;
  std::optional<Day> day;
};
LetterChoice propose_letters(const Assessment& assessment, const Rules& rules);

/// The letter as plain text: a blank line between paragraphs, no line breaks within one, a table row a line. Paragraphs
/// that are off and the caution are left out.
std::string plain_text(const Letter& letter);

} // namespace wearline
