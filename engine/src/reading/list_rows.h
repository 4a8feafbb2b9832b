#pragma once
// The rows of a paper as entries: tables, lists with a sum at the end of each line, descriptions that run over lines,
// headings. Paragraphs go to prose.h.

#include "reading/entries.h"
#include "reading/paper.h"

namespace wearline {

/// Appends the entries of all rows whose fate is open, in order, and settles the fate of rows that hold none.
void read_rows(StatementPaper& paper, const RecognizerRules& rules, Entries& out);

} // namespace wearline
