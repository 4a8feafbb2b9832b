#pragma once
// Reading as text in, text out: what the page and the command line call.

#include "reading/recognizer.h"
#include "reading/statement_reader.h"
#include "wording/wording.h"

#include <string>
#include <string_view>

namespace wearline {

/// A statement that came, as JSON. `language`: "en", "es", or empty to find it from the words; it also sorts out which
/// of day and month comes first where the text leaves that open. `wording` gives the sentences (keys reading.*). Pure:
/// the same text, the same bytes.
///
// clang-format off
///   { "lines": [ { "text", "amount", "role": "charge" | "credit" | "tax", "computed": bool, "mended": bool,
///                  "kind", "element", "finding", "place", "quantity": { "count", "unit" } | null, "confidence": 0..100,
///                  "facts": { fields of a case's line }, "readFrom": { "installed": [27, 41], ... },
///                  "basis": [ words of the text ],
///                  "from": [ { "line", "start", "end" } ],                  // the description, line by line
///                  "amountFrom": { "line", "start", "end" },
///                  "alternatives": [ { "element", "finding", "confidence" } ] } ],
///     "deposit", "interest", "statedTotal", "statedRefund", "statedBalanceDue", "payment",   // sums or null
///     "deposits": [ { "text", "amount", "from" } ], "otherSums": [ { "text", "amount", "from" } ],
///     "sum": "...",                                                           // of the lines as read
///     "dates": { "statement", "sent", "moveOut", "moveIn", "due", "inspected", "depositPaid" },  // YYYY-MM-DD or null
///     "places": { "deposit": { "line", "start", "end" }, ... },               // of the sums and dates above, by name
///     "currency": "USD" | ... | null, "language": "en" | "es",
///     "tray": [ { "line", "text", "why", "say" } ],                           // lines read as words only, or not read
///     "inputLines": [ what became of each input line ],
///     "checks": [ { "code", "text", "slip", "line", "stated", "computed" } ], // the paper's arithmetic that does not come out; what would explain it
///     "closed": [ { "code", "text", "line", "stated", "from": [ lines ] } ],  // and that which does, with the lines it is made of
///     "choices": [ { "text", "amount", "reading", "from", "amountFrom" } ] }  // a charge in one reading, none in another as likely
// clang-format on
///
/// Sums are decimal strings, negative where in the tenant's favor. Lines of the input count from 1; `start` and `end`
/// count UTF-16 code units of that line, as JavaScript strings do. An element that is null could not be told; below a
/// confidence of 50 ask, from 70 on it is safe to go on. `computed` marks a sum that is not printed but follows from a
/// printed count and price; `mended` one that was read with letters taken for digits. Choices are not among the lines.
std::string read_statement(std::string_view text, const RecognizerRules& rules, const Wording& wording,
                           std::string_view language = {});

/// One description as JSON:
/// {"text","amount","kind","element","finding","place","quantity","facts","readFrom","confidence","notACharge","basis",
/// "alternatives"}. `facts` holds what the words state, in the fields of a case's line; `readFrom` for each of them the
/// code points of the text it was read from, end exclusive.
std::string recognize_text(std::string_view text, const RecognizerRules& rules);

/// What the lines of a statement are for: `recognize` with what the statement says around each.
std::vector<Recognition> recognize_lines(const ReadStatement& statement, const RecognizerRules& rules);

/// The key of the sentence on what would explain a sum that does not come out; empty for none.
std::string slip_key(Slip slip);

/// "4", "1.5": a count as people write it.
std::string plain_count(std::int64_t thousandths);

} // namespace wearline
