#pragma once
// The door for callers that hold nothing but text (the page, the command line): the same refusals for both, word for
// word.

#include "wearline/calendar.h"
#include "wearline/engine.h"
#include "wearline/fault.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>

namespace wearline {

/// The longest text taken from outside, in bytes: 16 MiB.
constexpr std::size_t longest_text = std::size_t{16} << 20;

/// Faults of a text before anything reads it: `too-long` (over `longest_text`), `not-utf-8` (RFC 3629; names the byte).
Faults check_text(std::string_view text);

/// The day a caller calls today, "YYYY-MM-DD"; otherwise the fault `bad-today`.
std::variant<Day, Faults> read_today(std::string_view text);

/// {"wearline":1,"engine":"...","errors":[{"code","at","text","near"}]}: an answer that holds nothing but faults.
std::string errors_json(const Faults& faults);

/// `assess` and `letter` with `today` as text; every argument checked first.
std::string assess_text(std::string_view case_json, const Rulebook& rulebook, std::string_view today);
std::string letter_text(std::string_view case_json, const Rulebook& rulebook, std::string_view today,
                        std::string_view options);

/// `read_statement` (reading.h) with the rules of a rulebook; the text is checked first. `language` is that of the
/// sentences in the answer; the statement's own is found from its words.
std::string read_statement_text(std::string_view text, const Rulebook& rulebook, std::string_view language);

} // namespace wearline
