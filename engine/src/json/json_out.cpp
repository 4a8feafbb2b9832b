#include "json/json_out.h"

namespace wearline {

namespace {

constexpr std::size_t word = sizeof(std::uint64_t);

/// Whether any of eight bytes must be escaped: below 0x20, a quotation mark or a backslash. It may say so in vain; the
/// caller then looks at each.
bool may_need_escape(const char* at) {
  std::uint64_t x = 0;
  std::memcpy(&x, at, word);
  constexpr std::uint64_t ones = 0x0101010101010101, highs = 0x8080808080808080;
  const auto has_zero = [](std::uint64_t v) { return (v - ones) & ~v & highs; };
  return (((x - ones * 0x20) & ~x & highs) | has_zero(x ^ (ones * '"')) | has_zero(x ^ (ones * '\\'))) != 0;
}

/// Writes one byte, escaped if it must be: six bytes at most.
char* write_byte(char* to, unsigned char c) {
  static constexpr char hex[] = "0123456789abcdef";
  if (c >= 0x20 && c != '"' && c != '\\') {
    *to++ = static_cast<char>(c);
    return to;
  }
  *to++ = '\\';
  switch (c) {
  case '"':
  case '\\':
    *to++ = static_cast<char>(c);
    break;
  case '\n':
    *to++ = 'n';
    break;
  case '\r':
    *to++ = 'r';
    break;
  case '\t':
    *to++ = 't';
    break;
  default:
    for (const char u : {'u', '0', '0', hex[c >> 4], hex[c & 15]}) *to++ = u;
  }
  return to;
}

} // namespace

JsonOut& JsonOut::text(std::string_view value) {
  char* to = room(value.size() * 6 + 3);
  if (!fresh_) *to++ = ',';
  fresh_ = false;
  *to++ = '"';
  std::size_t at = 0;
  while (value.size() - at >= word) {
    if (may_need_escape(value.data() + at)) {
      for (const std::size_t end = at + word; at < end; ++at)
        to = write_byte(to, static_cast<unsigned char>(value[at]));
    } else {
      std::memcpy(to, value.data() + at, word);
      to += word;
      at += word;
    }
  }
  // What is left is less than a word: the last whole word of the text, if all of it stands as it is, ends with it.
  if (const std::size_t left = value.size() - at;
      value.size() >= word && !may_need_escape(value.data() + at + left - word)) {
    to += left;
    std::memcpy(to - word, value.data() + value.size() - word, word);
  } else {
    for (; at < value.size(); ++at) to = write_byte(to, static_cast<unsigned char>(value[at]));
  }
  *to++ = '"';
  end_at(to);
  return *this;
}

} // namespace wearline
