// Any bytes as the wishes for a letter: a letter or faults, as JSON, never a crash.

#include "support.h"

#include <nlohmann/json.hpp>

WEARLINE_FUZZ_READY(small_rulebook)

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* bytes, std::size_t size) {
  using namespace wearline::fuzz;
  constexpr std::string_view subject =
      R"({"wearline":1,"jurisdiction":"US-WA","deposits":[{"kind":"security","amount":"900.00"}],)"
      R"("tenancy":{"began":"2022-08-01","ended":"2026-07-31","possessionReturned":"2026-07-31"},"lines":[)"
      R"({"id":"1","text":"Carpet","amount":"700.00","kind":"damage","element":"carpet","finding":"stains"}]})";
  const std::string answer = wearline::letter_text(subject, small_rulebook(), "2026-11-01", text_of(bytes, size));
  if (!nlohmann::json::parse(answer, nullptr, false).is_object()) fail("The answer is no JSON", answer);
  return 0;
}
