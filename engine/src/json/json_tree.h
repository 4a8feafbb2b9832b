#pragma once
// A JSON text as one flat tree, quick to make and to read: what a case is read from. The rules, which are read once,
// use the library's own documents (json_text.h).

#include "wearline/fault.h"

#include <cstdint>
#include <memory>
#include <span>
#include <string_view>
#include <variant>
#include <vector>

namespace wearline {

struct JsonValue {
  enum class Kind : std::uint8_t { null, boolean, whole, below_zero, real, text, list, object };
  struct Members {
    std::size_t at = 0, count = 0; ///< places in the tree
  };
  JsonValue() : members() {}

  Kind kind = Kind::null;
  std::string_view name; ///< of a member of an object
  union {
    Members members;
    std::string_view text;
    bool yes;
    std::uint64_t whole;
    std::int64_t below_zero;
    double real;
  };

  bool is_null() const { return kind == Kind::null; }
  bool is_list() const { return kind == Kind::list; }
  bool is_object() const { return kind == Kind::object; }
  /// The value of this kind, or null.
  const std::string_view* if_text() const { return kind == Kind::text ? &text : nullptr; }
  const bool* if_yes_no() const { return kind == Kind::boolean ? &yes : nullptr; }
  const std::uint64_t* if_whole() const { return kind == Kind::whole ? &whole : nullptr; }
  const std::int64_t* if_below_zero() const { return kind == Kind::below_zero ? &below_zero : nullptr; }
  const double* if_real() const { return kind == Kind::real ? &real : nullptr; }
};

/// The members of an object stand in the order of their names, those of a list in their own.
class JsonTree {
public:
  const JsonValue& root() const { return root_; }
  std::span<const JsonValue> members(const JsonValue& of) const {
    if (!of.is_list() && !of.is_object()) return {};
    return {values_.data() + of.members.at, of.members.count};
  }
  /// Null if there is none of this name.
  const JsonValue* find(const JsonValue& object, std::string_view name) const;

private:
  friend class TreeBuilder;
  JsonValue root_;
  std::vector<JsonValue> values_;
  std::unique_ptr<char[]> text_; ///< names and texts
};

/// The tree, or one fault, as parse_json gives it.
std::variant<JsonTree, Fault> parse_tree(std::string_view text);

} // namespace wearline
