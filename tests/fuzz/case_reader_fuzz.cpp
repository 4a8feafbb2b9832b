// Any bytes as a case file, read alone: either a case, or faults that each have a code, a sentence and a JSON Pointer.

#include "case/case_reader.h"
#include "support.h"

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* bytes, std::size_t size) {
  using namespace wearline::fuzz;
  static const wearline::CaseNames any_name;
  const auto read = wearline::read_case(text_of(bytes, size), any_name);
  const auto* faults = std::get_if<wearline::Faults>(&read);
  if (!faults) return 0;
  if (faults->empty()) fail("Refused without a fault");
  for (const wearline::Fault& fault : *faults)
    if (fault.code.empty() || fault.text.empty() || (!fault.at.empty() && fault.at.front() != '/'))
      fail("A fault without code, sentence or place", fault.text);
  return 0;
}
