#pragma once
// Which letter at which time, or none.

#include "judging/assessment.h"
#include "letters/letter_kinds.h"
#include "rulebook/rule_store.h"

#include <optional>
#include <string_view>
#include <vector>

namespace wearline {

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

} // namespace wearline
