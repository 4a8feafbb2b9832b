#include "json_out.h"

namespace wearline {

void JsonOut::quoted(std::string_view value) {
  static constexpr char hex[] = "0123456789abcdef";
  out_ += '"';
  std::size_t plain = 0;
  for (std::size_t at = 0; at < value.size(); ++at) {
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
