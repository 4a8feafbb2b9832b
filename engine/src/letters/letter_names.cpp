#include "letters/letter.h"

#include <algorithm>
#include <iterator>

namespace wearline {

namespace {

struct KindName {
  LetterKind kind;
  std::string_view name;
  bool tenant, landlord; ///< whose letter it is
};
constexpr KindName kinds[] = {
    {LetterKind::question_charges, "question-charges", true, false},
    {LetterKind::ask_for_papers, "ask-for-papers", true, false},
    {LetterKind::after_deadline, "after-deadline", true, false},
    {LetterKind::reply_to_demand, "reply-to-demand", true, false},
    {LetterKind::accept_and_claim_rest, "accept-and-claim-rest", true, false},
    {LetterKind::second_letter, "second-letter", true, false},
    {LetterKind::objection, "objection", true, false},
    {LetterKind::forwarding_address, "forwarding-address", true, false},
    {LetterKind::demand, "demand", true, false},
    {LetterKind::inspection_request, "inspection-request", true, false},
    {LetterKind::itemized_statement, "itemized-statement", false, true},
    {LetterKind::cover_note, "cover-note", false, true},
    {LetterKind::adviser_note, "adviser-note", true, true},
    {LetterKind::small_claims_sheet, "small-claims-sheet", true, false},
};

} // namespace

std::string_view name_of(LetterKind kind) {
  const auto* found =
      std::find_if(std::begin(kinds), std::end(kinds), [&](const KindName& k) { return k.kind == kind; });
  return found == std::end(kinds) ? std::string_view() : found->name;
}

std::optional<LetterKind> letter_kind(std::string_view name) {
  const auto* found =
      std::find_if(std::begin(kinds), std::end(kinds), [&](const KindName& k) { return k.name == name; });
  if (found == std::end(kinds)) return std::nullopt;
  return found->kind;
}

std::vector<LetterKind> letter_kinds() {
  std::vector<LetterKind> out;
  for (const KindName& k : kinds) out.push_back(k.kind);
  return out;
}

std::vector<LetterKind> letter_kinds_of(std::string_view side) {
  std::vector<LetterKind> out;
  for (const KindName& k : kinds)
    if (side == "landlord" ? k.landlord : k.tenant) out.push_back(k.kind);
  return out;
}

bool is_sent(LetterKind kind) { return kind != LetterKind::adviser_note && kind != LetterKind::small_claims_sheet; }

std::string_view name_of(ParagraphRole role) {
  switch (role) {
  case ParagraphRole::address:
    return "address";
  case ParagraphRole::date:
    return "date";
  case ParagraphRole::opening:
    return "opening";
  case ParagraphRole::table:
    return "table";
  case ParagraphRole::line:
    return "line";
  case ParagraphRole::list:
    return "list";
  case ParagraphRole::ask:
    return "ask";
  case ParagraphRole::closing:
    return "closing";
  case ParagraphRole::enclosures:
    return "enclosures";
  case ParagraphRole::caution:
    break;
  }
  return "caution";
}

} // namespace wearline
