#pragma once
// Which missing fact matters most, and where an answer turns.

#include "wearline/line_judgement.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wearline {

/// A fact the person could still give. `swing` is how far the likely sum can move with the answer.
struct Question {
  std::string asks;              ///< JSON Pointer into the case
  std::string_view code;         ///< wording key "question.<code>"; "finding" and "law" carry their own words
  const Localised* said = nullptr;
  std::string own_words;         ///< a law fact's question
  std::size_t line = no_line;
  Money swing;
  static constexpr std::size_t no_line = static_cast<std::size_t>(-1);
};

/// The line's open questions, unranked, with their swing.
void ask_about_line(std::size_t index, const Line& line, const Subject& subject, const LineContext& context, const LineResult& result,
                    std::vector<Question>& out);

/// Facts of the tenancy that move many lines at once: move-in day, move-out day.
void ask_about_tenancy(const Case& c, const std::vector<Subject>& subjects, const LineContext& context, const std::vector<LineResult>& results,
                       std::vector<Question>& out);

/// Largest swing first; equal swings in the order of the case. Questions that move nothing are dropped.
void rank(std::vector<Question>& questions);

/// The first installation day that leaves anything to charge: laid on any earlier day, the likely charge is nothing.
/// Empty where age does not count, or nothing is charged even for a thing laid on the last day, or the age cannot bring it to nothing.
std::optional<Day> no_charge_before(const Line& line, const Subject& subject, const LineContext& context, const LineResult& result);

} // namespace wearline
