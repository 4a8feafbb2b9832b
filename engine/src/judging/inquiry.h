#pragma once
// Which missing fact matters most, and where an answer turns.

#include "judging/line_judgment.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wearline {

struct LineAssessment; // assessment.h

/// A fact the person could still give. `swing` is how far the likely sum can move with the answer.
struct Question {
  std::string asks;      ///< JSON Pointer into the case
  std::string_view code; ///< wording key "question.<code>"; "finding" and "law" carry their own words
  const Localized* said = nullptr;
  std::size_t line = no_line;
  Money effect;
  std::string_view id = {}; ///< the law's name of the fact or event
  bool turns_day = false;   ///< whether a day was kept hangs on it, and something follows if it was not
  static constexpr std::size_t no_line = static_cast<std::size_t>(-1);
};

/// The line's open questions, unranked, with their swing.
void ask_about_line(std::size_t index, const Line& line, const Subject& subject, const LineContext& context,
                    const LineResult& result, std::vector<Question>& out);

/// Facts of the tenancy that move many lines at once: move-in day, move-out day.
void ask_about_tenancy(const Case& c, const std::vector<LineAssessment>& lines, const LineContext& context,
                       std::vector<Question>& out);

struct Assessment;
/// What the law hangs on and the case does not say: dates, documents, circumstances.
void ask_about_law(const Assessment& assessment, std::vector<Question>& out);

/// What turns a day first, then the largest swing; equal swings in the order of the case. Questions that move nothing
/// are dropped.
void rank(std::vector<Question>& questions);

/// Where age brings a charge to its least. Laid on any day before `day`, nothing of the thing's own price is left and
/// only `floor` remains (parts that do not age: cleaning, treatment; often nothing). Laid on `day` or later, more than
/// that is charged.
struct TurningPoint {
  Day day;
  Money floor;
};
/// Empty where age does not count or no installation day would leave more than the floor.
std::optional<TurningPoint> turning_point(const Line& line, const Subject& subject, const LineContext& context,
                                          const LineResult& result);

} // namespace wearline
