#include "letters/letter_kinds.h"

#include <algorithm>
#include <iterator>

namespace wearline {

namespace {

constexpr KindTraits kinds[] = {
    {.kind = LetterKind::question_charges,
     .name = "question-charges",
     .tenant = true,
     .event = "tenant-demand",
     .write = write_money_letter},
    {.kind = LetterKind::ask_for_documents,
     .name = "request-documents",
     .tenant = true,
     .event = "documents-requested",
     .write = write_papers_request},
    {.kind = LetterKind::after_deadline,
     .name = "after-deadline",
     .tenant = true,
     .event = "tenant-demand",
     .write = write_money_letter},
    {.kind = LetterKind::reply_to_demand,
     .name = "reply-to-demand",
     .tenant = true,
     .event = "tenant-answered",
     .write = write_money_letter},
    {.kind = LetterKind::accept_and_claim_rest,
     .name = "accept-and-claim-rest",
     .tenant = true,
     .event = "tenant-demand",
     .write = write_money_letter},
    {.kind = LetterKind::second_letter,
     .name = "second-letter",
     .tenant = true,
     .event = "tenant-demand",
     .write = write_money_letter},
    {.kind = LetterKind::objection,
     .name = "objection",
     .tenant = true,
     .event = "tenant-objected",
     .write = write_money_letter},
    {.kind = LetterKind::forwarding_address,
     .name = "forwarding-address",
     .tenant = true,
     .event = "forwarding-address-given",
     .write = write_new_address},
    {.kind = LetterKind::demand,
     .name = "demand",
     .tenant = true,
     .event = "tenant-demand",
     .write = write_money_letter},
    {.kind = LetterKind::inspection_request,
     .name = "inspection-request",
     .tenant = true,
     .event = "inspection-requested",
     .write = write_inspection_request},
    {.kind = LetterKind::itemized_statement,
     .name = "itemized-statement",
     .landlord = true,
     .write = write_itemized_statement},
    {.kind = LetterKind::cover_note, .name = "cover-note", .landlord = true, .write = write_cover_note},
    {.kind = LetterKind::adviser_note,
     .name = "adviser-note",
     .tenant = true,
     .landlord = true,
     .sent = false,
     .write = write_adviser_note},
    {.kind = LetterKind::small_claims_sheet,
     .name = "small-claims-sheet",
     .tenant = true,
     .sent = false,
     .write = write_court_sheet},
};

} // namespace

const KindTraits& traits_of(LetterKind kind) {
  const auto* found =
      std::find_if(std::begin(kinds), std::end(kinds), [&](const KindTraits& k) { return k.kind == kind; });
  return found == std::end(kinds) ? kinds[0] : *found;
}

std::string_view name_of(LetterKind kind) { return traits_of(kind).name; }

std::optional<LetterKind> letter_kind(std::string_view name) {
  const auto* found =
      std::find_if(std::begin(kinds), std::end(kinds), [&](const KindTraits& k) { return k.name == name; });
  if (found == std::end(kinds)) return std::nullopt;
  return found->kind;
}

std::vector<LetterKind> letter_kinds() {
  std::vector<LetterKind> out;
  for (const KindTraits& k : kinds) out.push_back(k.kind);
  return out;
}

std::vector<LetterKind> letter_kinds_of(std::string_view side) {
  std::vector<LetterKind> out;
  for (const KindTraits& k : kinds)
    if (side == "landlord" ? k.landlord : k.tenant) out.push_back(k.kind);
  return out;
}

bool is_sent(LetterKind kind) { return traits_of(kind).sent; }

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
