#pragma once
// Sets of known names, and the known name nearest to a mistyped one.

#include <string>
#include <string_view>
#include <vector>

namespace wearline {

class NameSet {
public:
  NameSet() = default;
  NameSet(std::initializer_list<std::string_view> names);
  void add(std::string_view name);
  bool has(std::string_view name) const;
  /// The known name with the fewest edits (at most a third of its length, at least one), or empty.
  std::string nearest(std::string_view name) const;
  const std::vector<std::string>& sorted() const { return names_; }

private:
  std::vector<std::string> names_;
};

/// Insertions, deletions and replacements between two names; stops counting past `limit`.
int edits(std::string_view a, std::string_view b, int limit);

} // namespace wearline
