#include "wrapped_text.h"

#include <algorithm>

namespace wearline::cli {

namespace {

bool starts_character(char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }

/// Bytes of the first `count` characters of `text`.
std::size_t bytes_of(std::string_view text, std::size_t count) {
  std::size_t at = 0;
  for (; at < text.size(); ++at)
    if (starts_character(text[at]) && count-- == 0) break;
  return at;
}

/// Control characters become spaces: text of a case must not drive the terminal.
std::string printable(std::string_view text) {
  std::string out(text);
  for (char& c : out)
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) c = ' ';
  // C1 controls (U+0080 to U+009F) are two bytes in UTF-8, the first of them 0xC2.
  for (std::size_t i = 0; i + 1 < out.size(); ++i)
    if (static_cast<unsigned char>(out[i]) == 0xC2 && static_cast<unsigned char>(out[i + 1]) < 0xA0)
      out.replace(i, 2, " ");
  return out;
}

std::string_view next_word(std::string_view& rest) {
  rest.remove_prefix(std::min(rest.find_first_not_of(' '), rest.size()));
  const std::string_view word = rest.substr(0, rest.find(' '));
  rest.remove_prefix(word.size());
  return word;
}

} // namespace

std::size_t length(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), starts_character));
}

void WrappedText::blank() { out_ += '\n'; }

void WrappedText::strong(std::string_view text) { ((out_ += "\x1b[1m") += printable(text)) += "\x1b[0m\n"; }

void WrappedText::say(std::string_view first, std::string_view text) {
  const std::string clean = printable(text);
  const std::size_t indent = length(first);
  std::string line(first);
  std::size_t used = indent;
  const auto new_line = [&] {
    out_ += line;
    out_ += '\n';
    line.assign(indent, ' ');
    used = indent;
  };
  std::string_view rest = clean;
  for (std::string_view word = next_word(rest); !word.empty(); word = next_word(rest)) {
    if (used > indent && used + 1 + length(word) > columns) new_line();
    if (used > indent) {
      line += ' ';
      ++used;
    }
    while (used + length(word) > columns) {
      const std::size_t bytes = bytes_of(word, columns - used);
      line += word.substr(0, bytes);
      word.remove_prefix(bytes);
      new_line();
    }
    line += word;
    used += length(word);
  }
  out_ += line.substr(0, line.find_last_not_of(' ') + 1);
  out_ += '\n';
}

void WrappedText::row(std::string_view indent, std::string_view text, std::string_view value, std::size_t width) {
  const std::size_t taken = length(text) + length(value);
  out_ += indent;
  out_ += text;
  out_.append(taken < width ? width - taken : 1, ' ');
  out_ += value;
  out_ += '\n';
}

} // namespace wearline::cli
