#pragma once
// One value of a case file being read: its JSON, the way to it, and where faults go.

#include "case/case.h"
#include "values/names.h"
#include "wearline/fault.h"

#include "json/json_text.h"
#include "json/json_tree.h"
#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace wearline {

/// One JSON value of the case, the way to it (written out only for a fault), and the list faults go to. A cursor must
/// not outlive the one it was made from.
class Cursor {
public:
  Cursor(const JsonTree& tree, Faults& faults) : json_(&tree.root()), tree_(&tree), faults_(&faults) {}

  const JsonValue& json() const { return *json_; }
  std::span<const JsonValue> members() const { return tree_->members(*json_); }
  std::string at() const;
  const JsonValue* find(std::string_view name) const { return tree_->find(*json_, name); }
  Cursor member(std::string_view name) const { return {*find(name), this, name, 0}; }
  Cursor member(const JsonValue& value) const { return {value, this, value.name, 0}; }
  Cursor item(std::size_t index) const { return {members()[index], this, {}, index}; }
  /// The member, where it is there and not null.
  std::optional<Cursor> get(std::string_view name) const {
    const JsonValue* found = find(name);
    if (!found || found->is_null()) return std::nullopt;
    return Cursor(*found, this, name, 0);
  }
  bool has(std::string_view name) const {
    const JsonValue* found = find(name);
    return found && !found->is_null();
  }
  void fault(std::string code, std::string text, std::string near = {}) const;

  /// True if this is an object holding only known names; reports each unknown one.
  bool object(std::initializer_list<std::string_view> known) const;
  bool array() const {
    if (json_->is_list()) return true;
    fault("wrong-type", "This must be a list, [ ... ].");
    return false;
  }

  const std::string_view* text_ptr() const { return json_->if_text(); }

private:
  Cursor(const JsonValue& json, const Cursor* parent, std::string_view name, std::size_t index)
      : json_(&json), tree_(parent->tree_), parent_(parent), name_(name), index_(index), faults_(parent->faults_) {}

  const JsonValue* json_;
  const JsonTree* tree_;
  const Cursor* parent_ = nullptr;
  std::string_view name_;
  std::size_t index_ = 0;
  Faults* faults_;
};

/// Each reads its type, or reports a fault and leaves `out` as it was.
void read(const Cursor& c, std::string& out);
void read(const Cursor& c, Tri& out);
void read(const Cursor& c, std::optional<Money>& out);
void read(const Cursor& c, std::optional<DaySpan>& out);

/// A name of `known` or, where it is given, of `more`; any name where both are empty.
void read_name(const Cursor& c, std::string& out, const NameSet& known, std::string_view what,
               const NameSet* more = nullptr);

/// The member of that name, where it is there and not null.
template <class T> void take(const Cursor& c, std::string_view name, T& out) {
  if (const auto member = c.get(name)) read(*member, out);
}
inline void take_name(const Cursor& c, std::string_view name, std::string& out, const NameSet& known,
                      std::string_view what) {
  if (const auto member = c.get(name)) read_name(*member, out, known, what);
}

} // namespace wearline
