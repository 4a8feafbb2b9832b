#pragma once
// The dates of a row, each with what the word before it makes of it.

#include "reading/entries.h"
#include "reading/paper.h"

namespace wearline {

/// Where a number or a stretch of a row stands in the input.
TextPlace place_in(const PaperRow& row, std::uint32_t start, std::uint32_t end);
TextPlace place_in(const PaperRow& row, const Number& number);
/// The row from its body on.
TextPlace place_in(const PaperRow& row);

/// Appends the dates of a row. One that begins the row, outside a table, is the statement's where no word says
/// otherwise. Returns whether there were any.
bool take_dates(const PaperRow& row, bool in_table, const RecognizerRules& rules, std::vector<ReadDate>& out);

} // namespace wearline
