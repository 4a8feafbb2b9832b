// Any bytes as a sum: what is read is written back as a sum that reads the same.

#include "support.h"
#include "values/money.h"

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* bytes, std::size_t size) {
  using namespace wearline::fuzz;
  const std::string_view text = text_of(bytes, size);
  const auto read = wearline::Money::parse(text);
  if (!read) return 0;
  const auto again = wearline::Money::parse(read->plain());
  if (!again || *again != *read) fail("A sum that reads otherwise when written", text);
  return 0;
}
