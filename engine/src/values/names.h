#pragma once
// Sets of known names, and the known name nearest to a mistyped one.

#include <cstddef>
#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>
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

/// A row of a table of names: "cleaning", and what it stands for. The value that stands in no row is what is unknown.
template <class T> using Named = std::pair<std::string_view, T>;

/// The name of a value; empty for what is unknown.
template <class T, std::size_t n> constexpr std::string_view name_in(const Named<T> (&table)[n], T value) {
  for (const auto& [name, known] : table)
    if (known == value) return name;
  return {};
}

/// What a name stands for; T() where it is no name of the table.
template <class T, std::size_t n> constexpr T value_in(const Named<T> (&table)[n], std::string_view name) {
  for (const auto& [known, value] : table)
    if (known == name) return value;
  return T();
}

template <class T, std::size_t n> NameSet names_in(const Named<T> (&table)[n]) {
  NameSet names;
  for (const auto& row : table) names.add(row.first);
  return names;
}

/// Insertions, deletions and replacements between two names; stops counting past `limit`.
int edits(std::string_view a, std::string_view b, int limit);

} // namespace wearline
