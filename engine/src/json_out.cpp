#include "json_out.h"

#include <cstring>

namespace wearline {

namespace {
/// Whether any of eight bytes must be escaped: below 0x20, a quotation mark or a backslash. Bytes of UTF-8 sequences (0x80 and up)
/// may be reported too; the caller then looks at each.
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
  out_ += '"';
  std::size_t plain = 0;
  for (std::size_t at = 0; at < value.size(); ++at) {
    while (at + 8 <= value.size() && !may_need_escape(value.data() + at)) at += 8;
    if (at == value.size()) break;
    const auto c = static_cast<unsigned char>(value[at]);
    if (c >= 0x20 && c != '"' && c != '\\') continue;
    out_ += value.substr(plain, at - plain);
    plain = at + 1;
    out_ += '\\';
    switch (c) {
    case '"': out_ += '"'; break;
    case '\\': out_ += '\\'; break;
    case '\n': out_ += 'n'; break;
    case '\r': out_ += 'r'; break;
    case '\t': out_ += 't'; break;
    default:
      out_ += "u00";
      out_ += hex[c >> 4];
      out_ += hex[c & 15];
    }
  }
  out_ += value.substr(plain);
  out_ += '"';
}

} // namespace wearline
