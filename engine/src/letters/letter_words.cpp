#include "letters/letter_words.h"

#include "values/ascii.h"

#include <algorithm>

namespace wearline {

std::string_view currency_of(std::string_view jurisdiction) {
  const std::string_view country = jurisdiction.substr(0, 3);
  return country == "US-" ? "USD" : country == "CA-" ? "CAD" : "";
}

std::string on_one_line(std::string_view text) {
  constexpr std::size_t most = 160;
  std::string out;
  std::size_t characters = 0;
  bool gap = false;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte <= ' ' || byte == 0x7F) {
      gap = !out.empty();
      continue;
    }
    const bool begins = (byte & 0xC0) != 0x80; // the first byte of a character
    if (begins && characters >= most) return out + "…";
    if (gap) out += ' ', ++characters;
    gap = false;
    out += c;
    if (begins) ++characters;
  }
  return out;
}

std::string_view first_sentence(std::string_view text) {
  for (std::size_t at = text.find(". "); at != std::string_view::npos; at = text.find(". ", at + 1))
    if (at + 2 < text.size() && is_upper(text[at + 2])) return text.substr(0, at + 1);
  return text;
}

std::string_view opening(std::string_view translated, std::string_view original) {
  // Spanish is as long as English or longer: what is much shorter says a part of it.
  const std::size_t enough = first_sentence(original).size() * 7 / 10;
  std::size_t end = first_sentence(translated).size();
  while (end < enough && end + 1 < translated.size()) end += 1 + first_sentence(translated.substr(end + 1)).size();
  return translated.substr(0, end);
}

std::vector<std::string_view> sentences(std::string_view text) {
  std::vector<std::string_view> out;
  while (!text.empty()) {
    out.push_back(first_sentence(text));
    text.remove_prefix(std::min(text.size(), out.back().size() + 1));
  }
  return out;
}

std::string listed(const std::vector<std::string>& items, const Speech& speech) {
  std::string out;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) out += i + 1 == items.size() ? ' ' + speech.say("letter.and") + ' ' : ", ";
    out += items[i];
  }
  return out;
}

} // namespace wearline
