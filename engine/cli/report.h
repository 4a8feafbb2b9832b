#pragma once
// An assessment as plain text for a terminal or a printer.

#include "wording/wording.h"

#include <nlohmann/json_fwd.hpp>
#include <string>

namespace wearline::cli {

/// "en" or "es": the language of the assessment's own sentences.
std::string language_of(const nlohmann::json& assessment);

/// Lines of at most 100 columns, each ended by a newline. `assessment` is the answer of `assess` without errors;
/// `wording` holds the headings (wording/<language>/cli.json). `color`: titles and verdicts stand out (ECMA-48 SGR).
std::string report(const nlohmann::json& assessment, const Wording& wording, bool color = false);

} // namespace wearline::cli
