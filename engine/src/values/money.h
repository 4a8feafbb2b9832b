#pragma once
// Money as whole cents, and exact shares of it.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace wearline {

/// An exact fraction, denominator > 0. Used for shares of a price: worn part, damaged part, remaining life.
struct Share {
  std::int64_t num = 1;
  std::int64_t den = 1;

  static constexpr Share none() { return {0, 1}; }
  static constexpr Share whole() { return {1, 1}; }
  friend constexpr bool operator==(Share a, Share b) {
    return static_cast<__int128>(a.num) * b.den == static_cast<__int128>(b.num) * a.den;
  }
  friend constexpr bool operator<(Share a, Share b) {
    return static_cast<__int128>(a.num) * b.den < static_cast<__int128>(b.num) * a.den;
  }
};

/// An amount in whole cents of the case's currency. Never negative in a case; differences may be.
/// Amounts of a case stay below 10^12 cents (ten digits before the point), so sums over the 5,000 lines a case may
/// hold cannot overflow; the arithmetic is checked all the same, and would trap rather than wrap.
class Money {
public:
  constexpr Money() = default;
  static constexpr Money cents(std::int64_t c) { return Money(c); }
  /// Reads "1240.00", "1240" or "1240.5". No sign, no separators, at most two decimals, at most ten digits before the
  /// point.
  static std::optional<Money> parse(std::string_view text);
  static constexpr std::int64_t max_cents = 999'999'999'999;

  constexpr std::int64_t in_cents() const { return cents_; }
  constexpr bool is_zero() const { return cents_ == 0; }

  /// "1240.00", "-3.10": the form of case files and results.
  std::string plain() const;
  /// "1,240.00" with a leading minus where negative: the form of sentences, without currency sign.
  std::string grouped() const;

  friend Money operator+(Money a, Money b);
  friend Money operator-(Money a, Money b);
  Money& operator+=(Money b) { return *this = *this + b; }
  Money& operator-=(Money b) { return *this = *this - b; }
  friend constexpr auto operator<=>(Money, Money) = default;

  /// The share of this amount, rounded half up (away from zero) to the cent: the one rounding rule of the engine.
  Money part(Share share) const;

private:
  constexpr explicit Money(std::int64_t c) : cents_(c) {}
  std::int64_t cents_ = 0;
};

} // namespace wearline
