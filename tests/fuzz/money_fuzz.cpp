// Any bytes as a sum: what is read is written back as a sum that reads the same.

#include "values/money.h"

#include <cstdlib>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* bytes, std::size_t size) {
  const auto read = wearline::Money::parse(std::string_view(reinterpret_cast<const char*>(bytes), size));
  if (!read) return 0;
  const auto again = wearline::Money::parse(read->plain());
  if (!again || *again != *read) std::abort();
  return 0;
}
