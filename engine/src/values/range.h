#pragma once
// What is known about a number: the least it can be, what is most likely, the most it can be.

#include <algorithm>

namespace wearline {

/// low <= likely <= high always holds: every constructor orders its arguments' hull around `likely`.
template <class T> class Range {
public:
  constexpr Range() = default;
  constexpr Range(T exact) : low_(exact), likely_(exact), high_(exact) {} // NOLINT(google-explicit-constructor)
  constexpr Range(T low, T likely, T high)
      : low_(std::min({low, likely, high})), likely_(likely), high_(std::max({low, likely, high})) {}

  constexpr T low() const { return low_; }
  constexpr T likely() const { return likely_; }
  constexpr T high() const { return high_; }
  constexpr bool exact() const { return low_ == high_; }
  constexpr bool contains(T x) const { return !(x < low_) && !(high_ < x); }

  /// The smallest range that holds both; `likely` stays that of *this.
  constexpr Range widened(const Range& other) const {
    return Range(std::min(low_, other.low_), likely_, std::max(high_, other.high_));
  }
  constexpr Range capped(T most) const {
    return Range(std::min(low_, most), std::min(likely_, most), std::min(high_, most));
  }
  constexpr Range& operator+=(const Range& b) {
    return *this = Range(low_ + b.low_, likely_ + b.likely_, high_ + b.high_);
  }
  friend constexpr Range operator+(Range a, const Range& b) { return a += b; }
  friend constexpr bool operator==(const Range&, const Range&) = default;

private:
  T low_{}, likely_{}, high_{};
};

/// `amount`, or nothing where it is less.
template <class T> constexpr T positive(T amount) { return std::max(amount, T()); }

/// a - b for amounts that move independently, never below nothing.
template <class T> Range<T> excess(const Range<T>& a, const Range<T>& b) {
  return Range<T>(positive(a.low() - b.high()), positive(a.likely() - b.likely()), positive(a.high() - b.low()));
}

} // namespace wearline
