#pragma once
// The wording catalogue: every sentence of page, letter and command line, once per language.

#include <initializer_list>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>

namespace wearline {

/// Sentences by key, with {name} placeholders. Loaded from rules/wording/<language>.json, a flat object of strings.
class Wording {
public:
  using Args = std::initializer_list<std::pair<std::string_view, std::string_view>>;

  void add(std::string key, std::string sentence) { sentences_.insert_or_assign(std::move(key), std::move(sentence)); }
  bool has(std::string_view key) const;
  /// The sentence with its placeholders filled. An unknown key yields "[key]" so that a gap is seen, not hidden; tests
  /// allow none.
  std::string say(std::string_view key, Args args = {}) const {
    return fill(key, [&](std::string_view name, std::string& out) {
      for (const auto& [known, value] : args)
        if (known == name) {
          out += value;
          return true;
        }
      return false;
    });
  }
  /// The same, where a value is only worked out if the sentence has a place for it: `write` appends the value of a
  /// name, or gives false if it knows none.
  using Write = bool (*)(const void* values, std::string_view name, std::string& out);
  template <class Values> std::string fill(std::string_view key, const Values& values) const {
    const Write write = [](const void* of, std::string_view name, std::string& out) -> bool {
      return (*static_cast<const Values*>(of))(name, out);
    };
    return filled(key, &values, write);
  }

private:
  std::string filled(std::string_view key, const void* values, Write write) const;

  struct Hash {
    using is_transparent = void;
    std::size_t operator()(std::string_view s) const { return std::hash<std::string_view>{}(s); }
  };
  std::unordered_map<std::string, std::string, Hash, std::equal_to<>> sentences_;
};

} // namespace wearline
