#pragma once
// Lengths in calendar months and years: ages, useful lives, stays. Neither is a number, nor a count of days.

#include <compare>
#include <cstdint>

namespace wearline {

/// Whole calendar months; negative where counted back.
class Months {
public:
  constexpr Months() = default;
  constexpr explicit Months(std::int64_t count) : count_(count) {}

  constexpr std::int64_t count() const { return count_; }

  friend constexpr Months operator+(Months a, Months b) { return Months(a.count_ + b.count_); }
  friend constexpr Months operator-(Months a, Months b) { return Months(a.count_ - b.count_); }
  friend constexpr Months operator-(Months a) { return Months(-a.count_); }
  friend constexpr auto operator<=>(Months, Months) = default;

private:
  std::int64_t count_ = 0;
};

/// Whole years.
class Years {
public:
  constexpr explicit Years(std::int64_t count) : count_(count) {}
  constexpr std::int64_t count() const { return count_; }
  constexpr Months in_months() const { return Months(count_ * 12); }

private:
  std::int64_t count_;
};

/// Years in thousandths, as people and tables write them, to the nearest month: 1500 is 18 months, 42 is one.
constexpr Months months_of_years(std::int64_t thousandths) { return Months((thousandths * 12 + 500) / 1000); }

/// The longest life or age that is read: 200 years.
constexpr Months longest_age = Years(200).in_months();

} // namespace wearline
