#pragma once
// Reading as text in, text out: what the page and the command line call.

#include "format/older_names.h"
#include "reading/recognizer.h"
#include "reading/statement_reader.h"
#include "wording/wording.h"

#include <string>
#include <string_view>

namespace wearline {

/// A statement that came, as JSON (rules/schema/reading.schema.json). `language`: "en", "es", or empty to find it from
/// the words; it also sorts out which of day and month comes first where the text leaves that open. `wording` gives the
/// sentences (keys reading.*). Pure: the same text, the same bytes.
///
/// Sums are decimal strings, negative where in the tenant's favor. Lines of the input count from 1; `start` and `end`
/// count UTF-16 code units of that line, as JavaScript strings do. An element that is null could not be told; below a
/// confidence of 50 ask, from 70 on it is safe to go on. `computed` marks a sum that is not printed but follows from a
/// printed count and price; `corrected` one that was read with letters taken for digits. Uncertain charges are not
/// among the lines.
std::string read_statement(std::string_view text, const RecognizerRules& rules, const Wording& wording,
                           std::string_view language = {}, int format = oldest_format);

/// One description as JSON (rules/schema/recognition.schema.json). `facts` holds what the words state, in the fields of
/// a case's line; `factSpans` for each of them the code points of the text it was read from, end exclusive.
std::string recognize_text(std::string_view text, const RecognizerRules& rules, int format = oldest_format);

/// What the lines of a statement are for: `recognize` with what the statement says around each.
std::vector<Recognition> recognize_lines(const ReadStatement& statement, const RecognizerRules& rules);

/// The key of the sentence on what would explain a sum that does not come out; empty for none.
std::string slip_key(Slip slip);

} // namespace wearline
