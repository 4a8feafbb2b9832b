#include "values/money.h"

#include "values/ascii.h"

#include <limits>

namespace wearline {

namespace {

std::string write(std::int64_t cents, bool grouped) {
  const bool negative = cents < 0;
  const std::uint64_t size = negative ? 0 - static_cast<std::uint64_t>(cents) : static_cast<std::uint64_t>(cents);
  // From the last digit to the first: at most 17 before the point, five commas, and the sign.
  char text[32];
  char* const end = text + sizeof text;
  char* at = end;
  const auto digit = [](std::uint64_t d) { return static_cast<char>('0' + d % 10); };
  *--at = digit(size);
  *--at = digit(size / 10);
  *--at = '.';
  int digits = 0;
  for (std::uint64_t whole = size / 100; digits == 0 || whole != 0; whole /= 10, ++digits) {
    if (grouped && digits != 0 && digits % 3 == 0) *--at = ',';
    *--at = digit(whole);
  }
  if (negative) *--at = '-';
  return {at, end};
}
} // namespace

std::optional<Money> Money::parse(std::string_view text) {
  std::int64_t whole = 0;
  std::size_t at = 0;
  while (at < text.size() && is_digit(text[at])) {
    if (at == 10) return std::nullopt;
    whole = whole * 10 + (text[at++] - '0');
  }
  if (at == 0) return std::nullopt;
  std::int64_t fraction = 0;
  if (at < text.size()) {
    if (text[at++] != '.') return std::nullopt;
    const std::size_t decimals = text.size() - at;
    if (decimals < 1 || decimals > 2) return std::nullopt;
    for (; at < text.size(); ++at) {
      if (!is_digit(text[at])) return std::nullopt;
      fraction = fraction * 10 + (text[at] - '0');
    }
    if (decimals == 1) fraction *= 10;
  }
  return cents(whole * 100 + fraction);
}

std::string Money::plain() const { return write(cents_, false); }
std::string Money::grouped() const { return write(cents_, true); }

// Within the limits of a case (10^12 cents a sum, 5,000 lines) neither can leave the range of int64.
Money operator+(Money a, Money b) {
  std::int64_t sum = 0;
  if (__builtin_add_overflow(a.cents_, b.cents_, &sum)) __builtin_trap();
  return Money(sum);
}
Money operator-(Money a, Money b) {
  std::int64_t difference = 0;
  if (__builtin_sub_overflow(a.cents_, b.cents_, &difference)) __builtin_trap();
  return Money(difference);
}

Money Money::part(Share share) const {
  if (share.num == share.den) return *this;
  // Nearly always 64 bits hold the product, and dividing them is several times quicker.
  if (std::int64_t product = 0;
      !__builtin_mul_overflow(cents_, share.num, &product) && product != std::numeric_limits<std::int64_t>::min()) {
    const std::int64_t size = product < 0 ? -product : product, over = size % share.den;
    const std::int64_t rounded = size / share.den + (over >= share.den - over ? 1 : 0);
    return Money(product < 0 ? -rounded : rounded);
  }
  const __int128 exact = static_cast<__int128>(cents_) * share.num;
  const __int128 size = exact < 0 ? -exact : exact;
  const __int128 rounded = (size * 2 + share.den) / (static_cast<__int128>(share.den) * 2);
  return Money(static_cast<std::int64_t>(exact < 0 ? -rounded : rounded));
}

} // namespace wearline
