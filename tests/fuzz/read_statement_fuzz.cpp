// Any text as a statement: always an answer, always the same one, every line accounted for, no sum that is not printed.

#include "output/reading.h"
#include "support.h"

#include <nlohmann/json.hpp>

namespace {

using namespace wearline::fuzz;

bool has_digit(std::string_view text) { return text.find_first_of("0123456789") != std::string_view::npos; }

} // namespace

WEARLINE_FUZZ_READY(recognizer)

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* bytes, std::size_t size) {
  const std::string_view text = text_of(bytes, size);
  static const wearline::Wording words;
  const wearline::ReadStatement read = wearline::read_statement(text, recognizer());
  if (read.fates.empty()) fail("Lines are not accounted for");
  for (const std::string& fate : read.fates)
    if (fate.empty()) fail("A line ended nowhere");
  for (const wearline::ReadCharge& charge : read.charges)
    if (charge.amount != wearline::Money{} && !has_digit(text)) fail("A sum without a digit");
  if (!ask_twice(text) || !wearline::check_text(text).empty()) return 0;
  const std::string answer = wearline::read_statement(text, recognizer(), words);
  if (nlohmann::json::parse(answer, nullptr, false).is_discarded()) fail("The answer is no JSON");
  if (wearline::read_statement(text, recognizer(), words) != answer) fail("Two answers to one text");
  return 0;
}
