#include "letters/letter_kinds.h"

#include <algorithm>
#include <iterator>

namespace wearline {

namespace {

constexpr KindTraits kinds[] = {
    {.kind = LetterKind::question_charges, .name = "question-charges", .tenant = true, .event = "tenant-demand"},
    {.kind = LetterKind::ask_for_documents,
     .name = "request-documents",
     .tenant = true,
     .event = "documents-requested"},
    {.kind = LetterKind::after_deadline, .name = "after-deadline", .tenant = true, .event = "tenant-demand"},
    {.kind = LetterKind::reply_to_demand, .name = "reply-to-demand", .tenant = true, .event = "tenant-answered"},
    {.kind = LetterKind::accept_and_claim_rest,
     .name = "accept-and-claim-rest",
     .tenant = true,
     .event = "tenant-demand"},
    {.kind = LetterKind::second_letter, .name = "second-letter", .tenant = true, .event = "tenant-demand"},
    {.kind = LetterKind::objection, .name = "objection", .tenant = true, .event = "tenant-objected"},
    {.kind = LetterKind::forwarding_address,
     .name = "forwarding-address",
     .tenant = true,
     .event = "forwarding-address-given"},
    {.kind = LetterKind::demand, .name = "demand", .tenant = true, .event = "tenant-demand"},
    {.kind = LetterKind::inspection_request,
     .name = "inspection-request",
     .tenant = true,
     .event = "inspection-requested"},
    {.kind = LetterKind::itemized_statement, .name = "itemized-statement", .landlord = true},
    {.kind = LetterKind::late_statement, .name = "late-statement", .landlord = true},
    {.kind = LetterKind::cover_note, .name = "cover-note", .landlord = true},
    {.kind = LetterKind::adviser_note, .name = "adviser-note", .tenant = true, .landlord = true, .sent = false},
    {.kind = LetterKind::small_claims_sheet, .name = "small-claims-sheet", .tenant = true, .sent = false},
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

} // namespace wearline
