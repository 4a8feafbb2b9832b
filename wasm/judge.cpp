// The engine of the page's first load: it judges. What reads words (a statement that came, a line without a thing) and
// what writes letters is in surface.cpp, the whole engine, which the page fetches when it is needed.

#include "case/walk_through_reader.h"
#include "reading/line_names.h"

namespace wearline {

// In place of engine/src/reading/line_names.cpp: no words are read here.
FromWords fill_from_text(Line&, const RecogniserRules&) { return {}; }
Faults add_recogniser_file(RecogniserRules&, std::string_view, std::string_view) {
  return {{"unknown-file", "", "This engine reads no words; the whole engine does.", ""}};
}

// In place of engine/src/case/walk_through_reader.cpp: what was seen is no part of a judgement.
void read_walk_through(const Cursor&, WalkThrough&, const CaseNames&) {}

} // namespace wearline
