// Any text as the words of one charge: an answer, with a confidence in its bounds, and facts whose words stand in the
// text.

#include "support.h"

WEARLINE_FUZZ_READY(recognizer)

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* bytes, std::size_t size) {
  using namespace wearline::fuzz;
  const std::string_view text = text_of(bytes, size);
  const wearline::Recognition seen = wearline::recognize(text, recognizer());
  if (seen.confidence < 0 || seen.confidence > 100) fail("A confidence out of its bounds", text);
  if (seen.alternatives.size() > 3) fail("Too many other readings", text);
  for (const wearline::WordFact& fact : seen.facts)
    if (fact.start >= fact.end || fact.end > text.size()) fail("A fact without words", text);
  if (ask_twice(text) && wearline::recognize(text, recognizer()).confidence != seen.confidence)
    fail("Two answers to one text", text);
  return 0;
}
