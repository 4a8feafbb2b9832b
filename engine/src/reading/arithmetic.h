#pragma once
// The paper's own arithmetic: which of its sums come out and which do not, by how much, and what would explain it.

#include "reading/closing.h"
#include "reading/recognizer_rules.h"
#include "reading/statement.h"

namespace wearline {

/// Fills `checks` and `closed` of a statement whose charges and sums are settled.
void check_arithmetic(ReadStatement& statement, const Entries& entries, const WholeReading& reading,
                      const RecognizerRules& rules);

} // namespace wearline
