#pragma once
// Where the rules are on this machine, and loading them.

#include "reading/recognizer.h"
#include "wearline/engine.h"
#include "wording/wording.h"

#include <filesystem>
#include <set>
#include <string>
#include <string_view>
#include <variant>

namespace wearline::cli {

/// The folder asked for; else the one in the environment variable WEARLINE_RULES; else the installed one
/// (../share/wearline/rules beside the program's folder), `rules` beside the program, or that of the checkout the
/// program was built in.
std::filesystem::path rules_folder(const std::filesystem::path& asked);

/// A rulebook of the rules files under `folder`: all of them, or without the law of other places where `places` names
/// those that are needed. Faults: `no-rules`, and what `Rulebook::add` and `Rulebook::pending` find.
std::variant<Rulebook, Faults> load_rules(const std::filesystem::path& folder,
                                          const std::set<std::string>* places = nullptr);

/// The sentences of one file of the rules: `wording/<language>/<file>.json`. Empty if it is not there.
Wording load_wording(const std::filesystem::path& folder, std::string_view language, std::string_view file = "cli");

/// The recognizer's files alone: what the commands that only read need. Faults: `cannot-read`, and what
/// `RecognizerRules::add` finds.
std::variant<RecognizerRules, Faults> load_recognizer(const std::filesystem::path& folder);

} // namespace wearline::cli
