#pragma once
// A statement of deductions as it came (pasted from an e-mail, a document or a PDF, or CSV) as charges, sums and dates.
// Read in passes, each with values handed to the next:
//   text -> rows of one message (paper.h) -> entries: each number that may be a sum, with what it may be and the weight
//   of each (list_rows.h, prose.h) -> the reading of the whole whose own sums close (closing.h) -> what comes out and
//   what does not (arithmetic.h).
// Every line of the text ends somewhere: as a charge, a known sum, a date, a heading, or in the tray of lines not read.
// No sum is ever made up: each is printed at the place given, or is the product of a count and a price printed side by
// side, and then says so.

#include "reading/recognizer_rules.h"
#include "reading/statement.h"

#include <string_view>

namespace wearline {

/// Reads a statement. `language`: "en", "es", or empty: found from the words. Pure and total.
ReadStatement read_statement(std::string_view text, const RecognizerRules& rules, std::string_view language = {});

} // namespace wearline
