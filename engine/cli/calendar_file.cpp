#include "calendar_file.h"

#include <algorithm>

namespace wearline::cli {

namespace {

constexpr std::size_t longest_line = 75; // bytes, RFC 5545 section 3.1

std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '\n') out += "\\n";
    else if (c == '\\' || c == ';' || c == ',') (out += '\\') += c;
    else out += static_cast<unsigned char>(c) < 0x20 || c == 0x7F ? ' ' : c;
  }
  return out;
}

std::string without_dashes(std::string_view day) {
  std::string out(day);
  out.erase(std::remove(out.begin(), out.end(), '-'), out.end());
  return out;
}

bool continues_character(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

/// One content line, folded: each further line begins with a space.
void put(std::string& out, std::string_view line) {
  std::size_t room = longest_line;
  while (line.size() > room) {
    std::size_t end = room;
    while (continues_character(line[end])) --end;
    (out += line.substr(0, end)) += "\r\n ";
    line.remove_prefix(end);
    room = longest_line - 1;
  }
  (out += line) += "\r\n";
}

void put_day(std::string& out, const CalendarDay& d, const std::string& stamp) {
  put(out, "BEGIN:VEVENT");
  put(out, "UID:" + escaped(d.id));
  put(out, "DTSTAMP:" + stamp);
  put(out, "DTSTART;VALUE=DATE:" + without_dashes(d.day));
  put(out, "TRANSP:TRANSPARENT");
  put(out, "SUMMARY:" + escaped(d.summary));
  put(out, "DESCRIPTION:" + escaped(d.description));
  for (const char* before : {"-P7D", "-P1D"}) {
    put(out, "BEGIN:VALARM");
    put(out, "ACTION:DISPLAY");
    put(out, "DESCRIPTION:" + escaped(d.summary));
    put(out, std::string("TRIGGER:") + before);
    put(out, "END:VALARM");
  }
  put(out, "END:VEVENT");
}

} // namespace

std::string calendar_file(const std::vector<CalendarDay>& days, std::string_view name, std::string_view written) {
  std::string out;
  put(out, "BEGIN:VCALENDAR");
  put(out, "VERSION:2.0");
  put(out, "PRODID:-//Wearline//Wearline//EN");
  put(out, "X-WR-CALNAME:" + escaped(name));
  const std::string stamp = without_dashes(written) + "T120000Z";
  for (const CalendarDay& d : days) put_day(out, d, stamp);
  put(out, "END:VCALENDAR");
  return out;
}

} // namespace wearline::cli
