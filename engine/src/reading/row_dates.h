#pragma once
// The dates of a row, and what the words of the list make of a date they stand by.

#include "reading/entries.h"
#include "reading/paper.h"

namespace wearline {

/// Where a number or a stretch of a row stands in the input.
TextPlace place_in(const PaperRow& row, std::uint32_t start, std::uint32_t end);
TextPlace place_in(const PaperRow& row, const Number& number);
/// The row from its body on.
TextPlace place_in(const PaperRow& row);

/// What a word says of the date it stands by; `unknown` for any other word.
DateKind date_kind(const Mention& mention, const RecognizerRules& rules);

/// A word of three letters at most ("in", "out") tells of a date only right beside it.
bool reaches(const MarkedText& text, const Mention& mention, const Number& date);

/// Whether a full date stands in the row.
bool names_day(const PaperRow& row);

} // namespace wearline
