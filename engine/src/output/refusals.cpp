// What no reader is given: text that is too long or broken, and how a refusal is told.

#include "wearline/engine.h"

#include "json/json_out.h"
#include <optional>

namespace wearline {

namespace {

bool in(unsigned char c, unsigned char low, unsigned char high) { return low <= c && c <= high; }

/// Bytes of the well-formed sequence at the start of `s` (RFC 3629 section 4), 0 if there is none.
std::size_t sequence_length(std::string_view s) {
  const auto at = [&](std::size_t i) { return static_cast<unsigned char>(s[i]); };
  const auto tail = [&](std::size_t i) { return i < s.size() && in(at(i), 0x80, 0xBF); };
  const unsigned char c = at(0);
  if (c < 0x80) return 1;
  if (in(c, 0xC2, 0xDF)) return tail(1) ? 2 : 0;
  if (in(c, 0xE0, 0xEF)) {
    const bool second = s.size() > 1 && in(at(1), c == 0xE0 ? 0xA0 : 0x80, c == 0xED ? 0x9F : 0xBF);
    return second && tail(2) ? 3 : 0;
  }
  if (in(c, 0xF0, 0xF4)) {
    const bool second = s.size() > 1 && in(at(1), c == 0xF0 ? 0x90 : 0x80, c == 0xF4 ? 0x8F : 0xBF);
    return second && tail(2) && tail(3) ? 4 : 0;
  }
  return 0;
}

std::optional<std::size_t> first_bad_byte(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = sequence_length(text.substr(at));
    if (length == 0) return at;
    at += length;
  }
  return std::nullopt;
}

} // namespace

Faults check_text(std::string_view text) {
  if (text.size() > longest_text) return {{"too-long", "", "This text is longer than 16 MiB. Give a shorter one.", ""}};
  if (const auto bad = first_bad_byte(text))
    return {
        {"not-utf-8", "",
         "Byte " + std::to_string(*bad + 1) + " does not belong to UTF-8 text. Save the file as UTF-8 and try again.",
         ""}};
  return {};
}

std::variant<Day, Faults> read_today(std::string_view text) {
  if (const auto day = parse_day(text)) return *day;
  return Faults{{"bad-today", "", "Today's date must be a day that exists, written like \"2026-07-31\".", ""}};
}

std::string errors_json(const Faults& faults, int format) {
  JsonOut out;
  out.object().key("wearline").number(format).pair("engine", version()).key("errors").array();
  for (const Fault& f : faults) {
    out.object().pair("code", f.code).pair("at", f.at).pair("text", f.text).key("near");
    f.near.empty() ? out.null() : out.text(f.near);
    out.end_object();
  }
  out.end_array().end_object();
  return out.take();
}

} // namespace wearline
