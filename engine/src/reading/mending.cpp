#include "reading/mending.h"

#include "values/ascii.h"

#include <algorithm>
#include <array>

namespace wearline {

namespace {

bool is_wide(char c) { return static_cast<unsigned char>(c) >= 0x80; }

/// The digit a letter looks like, or 0.
char as_digit(char c) {
  switch (c) {
  case 'O':
  case 'o':
  case 'Q':
    return '0';
  case 'I':
  case 'l':
  case '|':
    return '1';
  case 'S':
    return '5';
  case 'B':
    return '8';
  case 'Z':
    return '2';
  default:
    return 0;
  }
}

/// "T0tal": every digit a 0 or 1 between letters.
void mend_word(std::string& t, std::size_t from, std::size_t to) {
  std::size_t letters = 0, digits = 0;
  for (std::size_t i = from; i < to; ++i) letters += !is_digit(t[i]), digits += is_digit(t[i]);
  if (digits == 0 || letters < 3 || digits * 2 > letters) return;
  for (std::size_t i = from; i < to; ++i)
    if (is_digit(t[i]) && ((t[i] != '0' && t[i] != '1') || i == from || i + 1 == to || is_digit(t[i - 1]))) return;
  for (std::size_t i = from; i < to; ++i)
    if (is_digit(t[i])) t[i] = t[i] == '1' ? 'l' : is_upper(t[i - 1]) ? 'O' : 'o';
}

/// "1,O25.00", "11S.0O": digits and look-alikes with two decimals, as many digits as letters at least.
void mend_number(std::string& t, std::size_t from, std::size_t to) {
  std::size_t letters = 0, digits = 0;
  for (std::size_t i = from; i < to; ++i) {
    if (is_digit(t[i])) ++digits;
    else if (as_digit(t[i]) != 0) ++letters;
  }
  const bool cents = to - from >= 4 && (t[to - 3] == '.' || t[to - 3] == ',') && t[to - 2] != '.' && t[to - 1] != '.';
  const bool zeros =
      is_digit(t[from]) && letters <= 5 &&
      std::all_of(t.begin() + static_cast<std::ptrdiff_t>(from), t.begin() + static_cast<std::ptrdiff_t>(to),
                  [](char c) { return as_digit(c) == 0 || as_digit(c) == '0'; });
  const bool year =
      to - from == 4 && digits >= 2 && is_digit(t[from]) &&
      std::all_of(t.begin() + static_cast<std::ptrdiff_t>(from), t.begin() + static_cast<std::ptrdiff_t>(to),
                  [](char c) { return is_digit(c) || c == 'O'; });
  if (letters == 0 || digits == 0 || !(year || (cents && (letters <= digits + 1 || zeros)))) return;
  for (std::size_t i = from; i < to; ++i)
    if (const char digit = as_digit(t[i]); digit != 0) t[i] = digit;
}

/// "120 .00" and "25. 00", as a scan parts them: the figures move to their cents. Every byte keeps its place but these.
void close_gaps(std::string& t) {
  for (std::size_t i = 1; i + 2 < t.size(); ++i) {
    const bool cents = i + 3 < t.size() && t[i] == ' ' && (t[i + 1] == '.' || t[i + 1] == ',') && is_digit(t[i + 2]) &&
                       is_digit(t[i + 3]) && (i + 4 == t.size() || t[i + 4] == ' ');
    const bool after = i + 3 == t.size() && t[i] == ' ' && i > 1 && t[i - 1] == '.' && is_digit(t[i - 2]) &&
                       is_digit(t[i + 1]) && is_digit(t[i + 2]);
    if (!after && (!cents || !is_digit(t[i - 1]))) continue;
    std::size_t from = i;
    while (from > 0 &&
           (is_digit(t[from - 1]) || t[from - 1] == ',' || t[from - 1] == '.' || as_digit(t[from - 1]) != 0))
      --from;
    if (from > 0 && t[from - 1] != ' ') continue;
    for (std::size_t k = i; k > from; --k) t[k] = t[k - 1];
    t[from] = ' ';
  }
}

/// "O9/l2/2O25": three groups of digits and look-alikes between slashes, more digits than look-alikes.
void mend_dates(std::string& t) {
  const auto figure = [&](std::size_t i) { return i < t.size() && (is_digit(t[i]) || as_digit(t[i]) != 0); };
  for (std::size_t from = 0; from < t.size(); ++from) {
    if (!figure(from) || (from > 0 && (is_letter(t[from - 1]) || is_digit(t[from - 1]) || t[from - 1] == '/')))
      continue;
    std::size_t at = from, digits = 0, letters = 0;
    std::array<std::size_t, 3> sizes{};
    for (std::size_t group = 0; group < sizes.size(); ++group) {
      for (; figure(at); ++at) ++sizes[group], is_digit(t[at]) ? ++digits : ++letters;
      if (group < 2 && (at >= t.size() || t[at] != '/')) break;
      if (group < 2) ++at;
    }
    const bool short_ones = sizes[0] >= 1 && sizes[0] <= 2 && sizes[1] >= 1 && sizes[1] <= 2;
    if (!short_ones || (sizes[2] != 2 && sizes[2] != 4) || letters == 0 || letters >= digits ||
        (at < t.size() && (is_letter(t[at]) || t[at] == '/')))
      continue;
    for (std::size_t i = from; i < at; ++i)
      if (const char digit = as_digit(t[i]); digit != 0) t[i] = digit;
  }
}

} // namespace

std::string mend_letters(std::string_view text) {
  std::string t(text);
  close_gaps(t);
  mend_dates(t);
  const auto part_of_word = [&](std::size_t i) { return i < t.size() && (is_letter(t[i]) || is_wide(t[i])); };
  for (std::size_t i = 0; i < t.size();) {
    if (is_digit(t[i]) || as_digit(t[i]) != 0) {
      std::size_t end = i;
      while (end < t.size() && (is_digit(t[end]) || as_digit(t[end]) != 0 ||
                                ((t[end] == '.' || t[end] == ',') && end + 1 < t.size() &&
                                 (is_digit(t[end + 1]) || as_digit(t[end + 1]) != 0))))
        ++end;
      if (!part_of_word(end) && (i == 0 || !part_of_word(i - 1))) {
        mend_number(t, i, end);
        i = std::max(end, i + 1);
        continue;
      }
    }
    if (!is_letter(t[i]) && !is_digit(t[i])) {
      ++i;
      continue;
    }
    std::size_t end = i;
    while (end < t.size() && (is_letter(t[end]) || is_digit(t[end]))) ++end;
    mend_word(t, i, end);
    i = end;
  }
  return t;
}

void mark_mended(MarkedText& text, std::string_view before, std::string_view after) {
  for (Number& n : text.numbers)
    for (std::size_t i = text.tokens[n.first].start; i < text.tokens[n.last].end && i < after.size(); ++i)
      if (before[i] != after[i]) n.slip = true;
}

} // namespace wearline
