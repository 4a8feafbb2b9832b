#pragma once
// Text set in a column of fixed width.

#include <cstddef>
#include <string>
#include <string_view>

namespace wearline::cli {

/// Collects lines of at most `columns` characters. A word longer than a line is broken, never dropped.
class WrappedText {
public:
  static constexpr std::size_t columns = 100;

  void blank();
  /// `text` with `first` in front of it and the following lines under its first letter.
  void say(std::string_view first, std::string_view text);
  /// `text` with `value` at the right of a column `width` wide: for sums.
  void row(std::string_view indent, std::string_view text, std::string_view value, std::size_t width);
  /// A short line in bold (ECMA-48 SGR 1), for a terminal.
  void strong(std::string_view text);
  const std::string& str() const { return out_; }

private:
  std::string out_;
};

/// Characters (code points) of UTF-8 text.
std::size_t length(std::string_view text);

} // namespace wearline::cli
