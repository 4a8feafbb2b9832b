#pragma once
// Where the rules are on this machine, and loading them.

#include "reading/recogniser.h"
#include "wearline/engine.h"
#include "wording/wording.h"

#include <filesystem>
#include <string_view>
#include <variant>

namespace wearline::cli {

/// The folder asked for; else the one this program was built with; else `rules` beside the program.
std::filesystem::path rules_folder(const std::filesystem::path& asked);

/// A rulebook of every rules file under `folder`. Faults: `no-rules`, and what `Rulebook::add` finds.
std::variant<Rulebook, Faults> load_rules(const std::filesystem::path& folder);

/// The sentences of one file of the rules: `wording/<language>/<file>.json`. Empty if it is not there.
Wording load_wording(const std::filesystem::path& folder, std::string_view language, std::string_view file = "cli");

/// The recogniser's files alone: what the commands that only read need. Faults: `cannot-read`, and what
/// `RecogniserRules::add` finds.
std::variant<RecogniserRules, Faults> load_recogniser(const std::filesystem::path& folder);

} // namespace wearline::cli
