#include "letters/letter.h"

#include "letters/letter_parts.h"
#include "letters/letter_writers.h"

namespace wearline {

namespace {

void write(Draft& d) {
  switch (d.letter.kind) {
  case LetterKind::question_charges:
  case LetterKind::after_deadline:
  case LetterKind::reply_to_demand:
  case LetterKind::accept_and_claim_rest:
  case LetterKind::second_letter:
  case LetterKind::objection:
  case LetterKind::demand:
    return write_money_letter(d);
  case LetterKind::ask_for_documents:
    return write_papers_request(d);
  case LetterKind::forwarding_address:
    return write_new_address(d);
  case LetterKind::inspection_request:
    return write_inspection_request(d);
  case LetterKind::itemized_statement:
  case LetterKind::late_statement:
    return write_itemized_statement(d);
  case LetterKind::cover_note:
    return write_cover_note(d);
  case LetterKind::adviser_note:
    return write_adviser_note(d);
  case LetterKind::small_claims_sheet:
    return write_court_sheet(d);
  }
}

} // namespace

Letter write_letter(const Assessment& assessment, const Rules& rules, LetterKind kind, std::string_view language,
                    const Names& names) {
  Draft d(assessment, rules, kind, language, names);
  write(d);
  d.letter.sent_as = kind == LetterKind::demand && notice_of_suit(d) ? "suit-notice-given" : traits_of(kind).event;
  d.close();
  return std::move(d.letter);
}

} // namespace wearline
