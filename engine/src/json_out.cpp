#include "json_out.h"

#include <cstring>

namespace wearline {

namespace {
/// Whether any of eight bytes must be escaped: below 0x20, a quotation mark or a backslash. Bytes of UTF-8 sequences
/// (0x80 and up) may be reported too; the caller then looks at each.
bool may_need_escape(const char* at) {
  std::uint64_t x = 0;
  std::memcpy(&x, at, 8);
  constexpr std::uint64_t ones = 0x0101010101010101, highs = 0x8080808080808080;
  const auto has_zero = [](std::uint64_t v) { return (v - ones) & ~v & highs; };
  return (((x - ones * 0x20) & ~x & highs) | has_zero(x ^ (ones * '"')) | has_zero(x ^ (ones * '\\'))) != 0;
}
} // namespace

void JsonOut::quoted(std::string_view value) {
  static constexpr char hex[] = "0123456789abcdef";
  // At most six bytes for one, and the two quotation marks.
  std::size_t plain = 0;
  while (plain + 8 <= value.size() && !may_need_escape(value.data() + plain)) plain += 8;
  char* to = grow((value.size() - plain) * 6 + plain + 2);
  *to++ = '"';
  if (plain != 0) std::memcpy(to, value.data(), plain); // an empty view may have no address
  to += plain;
  for (std::size_t at = plain; at < value.size(); ++at) {
    const auto c = static_cast<unsigned char>(value[at]);
    if (c >= 0x20 && c != '"' && c != '\\') {
      *to++ = static_cast<char>(c);
      continue;
    }
    *to++ = '\\';
    switch (c) {
    case '"':
      *to++ = '"';
      break;
    case '\\':
      *to++ = '\\';
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
  }
  *to++ = '"';
  end_at(to);
}

} // namespace wearline
