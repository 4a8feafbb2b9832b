#pragma once
// A judged line in words.

#include "judging/assessment.h"
#include "wording/speech.h"

#include <string>

namespace wearline {

/// The thing a line is about, as people call it; the line's own text where it is not known.
std::string thing_of(const Line& line, const Subject& subject, const Speech& speech);
/// The verdict in a few words: damage that nothing was left of is said to be that.
std::string verdict_text(const LineAssessment& line, const Speech& speech);
/// "5 disputes like this: 3 allowed nothing, 1 part of it, 1 all of it."
std::string alike_text(const Alike& alike, const Speech& speech);
/// Two or three sentences: why this verdict, where a guide says so with its name.
std::string why(const LineAssessment& line, std::string_view place, const Speech& speech);
/// One step of the arithmetic.
std::string step_text(const Step& step, const LineAssessment& line, std::string_view place, const Speech& speech);
/// "read in the law's own text", ... for a way of reading.
std::string source_basis_text(std::string_view read, const Speech& speech);
std::string question_text(const Question& question, const Case& c, const std::vector<LineAssessment>& lines,
                          const Speech& speech);
std::string audit_text(const AuditNote& note, const Case& c, const Speech& speech);

} // namespace wearline
