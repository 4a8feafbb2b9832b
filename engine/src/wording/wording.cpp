#include "wording/wording.h"

namespace wearline {

bool Wording::has(std::string_view key) const { return sentences_.find(key) != sentences_.end(); }

std::string Wording::filled(std::string_view key, const void* values, Write write) const {
  const auto found = sentences_.find(key);
  if (found == sentences_.end()) {
    std::string gap = "[";
    gap += key;
    gap += ']';
    return gap;
  }
  const std::string_view sentence = found->second;
  std::string out;
  out.reserve(sentence.size() + 32);
  std::size_t at = 0;
  while (at < sentence.size()) {
    const std::size_t open = sentence.find('{', at);
    const std::size_t close = open == std::string_view::npos ? open : sentence.find('}', open);
    if (close == std::string_view::npos) {
      out += sentence.substr(at);
      break;
    }
    out += sentence.substr(at, open - at);
    const std::string_view name = sentence.substr(open + 1, close - open - 1);
    if (!write(values, name, out)) out += sentence.substr(open, close - open + 1);
    at = close + 1;
  }
  return out;
}

} // namespace wearline
