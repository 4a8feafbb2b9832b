#pragma once
// Which missing fact matters most, and where an answer turns.

#include "judging/assessment.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wearline {

/// The line's open questions, unranked, with their swing.
void ask_about_line(std::size_t index, const Line& line, const Subject& subject, const LineContext& context,
                    const LineResult& result, std::vector<Question>& out);

/// Facts of the tenancy that move many lines at once: move-in day, move-out day.
void ask_about_tenancy(const Case& c, const std::vector<LineAssessment>& lines, const LineContext& context,
                       std::vector<Question>& out);

/// What the law hangs on and the case does not say: dates, documents, circumstances.
void ask_about_law(const Assessment& assessment, std::vector<Question>& out);

/// What turns a day first, then the largest swing; equal swings in the order of the case. Questions that move nothing
/// are dropped.
void rank(std::vector<Question>& questions);

/// Empty where age does not count or no installation day would leave more than the floor.
std::optional<TurningPoint> turning_point(const Line& line, const Subject& subject, const LineContext& context,
                                          const LineResult& result);

} // namespace wearline
