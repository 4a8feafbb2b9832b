#pragma once
// Three values: a known yes, a known no, or unknown.

#include <concepts>
#include <cstdint>

namespace wearline {

/// What is known of a yes-or-no fact; unknown unless set. It never becomes a bool, so that "known" and "yes" cannot be
/// taken for each other; of a bool itself (nothing that merely converts to one) it is made, as a known answer.
class Tri {
public:
  static const Tri yes, no, unknown;

  constexpr Tri() = default;
  constexpr Tri(std::same_as<bool> auto known) // NOLINT(google-explicit-constructor)
      : state_(known ? State::yes : State::no) {}

  constexpr bool known() const { return state_ != State::unknown; }
  constexpr bool known_yes() const { return state_ == State::yes; }
  constexpr bool known_no() const { return state_ == State::no; }
  /// Yes or no as known, else `otherwise`.
  constexpr bool yes_or(std::same_as<bool> auto otherwise) const { return known() ? known_yes() : otherwise; }
  friend constexpr bool operator==(Tri, Tri) = default;

private:
  enum class State : std::uint8_t { unknown, no, yes };
  constexpr explicit Tri(State state) : state_(state) {}
  State state_ = State::unknown;
};
inline constexpr Tri Tri::yes{State::yes}, Tri::no{State::no}, Tri::unknown{};

/// not, and, or in three values.
constexpr Tri tri_not(Tri a) { return a.known() ? Tri(a.known_no()) : a; }
constexpr Tri tri_and(Tri a, Tri b) {
  if (a.known_no() || b.known_no()) return Tri::no;
  return a.known() && b.known() ? Tri::yes : Tri::unknown;
}
constexpr Tri tri_or(Tri a, Tri b) { return tri_not(tri_and(tri_not(a), tri_not(b))); }

} // namespace wearline
