#pragma once
// The writing of a letter.

#include "judging/assessment.h"
#include "letters/letter_kinds.h"
#include "letters/letter_text.h"
#include "rulebook/rule_store.h"

#include <string_view>

namespace wearline {

/// A letter of a kind in "en" or "es" (a language that is not loaded is written in English). Any kind can be written
/// for any case; what the facts do not bear is left out and named in the warnings. A caution is always the last
/// paragraph; it is for the reader of the page and no part of what is sent.
Letter write_letter(const Assessment& assessment, const Rules& rules, LetterKind kind, std::string_view language,
                    const Names& names = {});

} // namespace wearline
