#pragma once
// Kinds of characters of plain ASCII; a byte of any other letter is none of them. The ones of the standard library
// follow a locale.

namespace wearline {

constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }
constexpr bool is_lower(char c) { return c >= 'a' && c <= 'z'; }
constexpr bool is_upper(char c) { return c >= 'A' && c <= 'Z'; }
constexpr bool is_letter(char c) { return is_lower(c) || is_upper(c); }
constexpr char to_lower(char c) { return is_upper(c) ? static_cast<char>(c - 'A' + 'a') : c; }

} // namespace wearline
