#pragma once
// One value of a case file being read: its JSON, the way to it, and where faults go.

#include "case/case.h"
#include "format/older_names.h"
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
/// not outlive the one it was made from. Members are asked for by their present names; `older` is the place in a
/// document of version 1, null in one of the present version. Faults say the names that the file has.
class Cursor {
public:
  Cursor(const JsonTree& tree, Faults& faults, const OlderPlace* older = nullptr)
      : json_(&tree.root()), tree_(&tree), older_(older), faults_(&faults) {}

  const JsonValue& json() const { return *json_; }
  std::span<const JsonValue> members() const { return tree_->members(*json_); }
  std::string at() const;
  const JsonValue* find(std::string_view name) const { return tree_->find(*json_, older_ ? older_->was(name) : name); }
  Cursor member(std::string_view name) const { return {*find(name), this, name}; }
  Cursor member(const JsonValue& value) const { return {value, this, older_ ? older_->now(value.name) : value.name}; }
  Cursor item(std::size_t index) const { return {members()[index], this, index}; }
  /// The member, where it is there and not null.
  std::optional<Cursor> get(std::string_view name) const {
    const JsonValue* found = find(name);
    if (!found || found->is_null()) return std::nullopt;
    return Cursor(*found, this, name);
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

  /// A member's name in this file, and the present name of one of the file (empty where no such member may be in it).
  std::string called(std::string_view name) const { return std::string(older_ ? older_->was(name) : name); }
  std::string now(std::string_view name) const { return std::string(older_ ? older_->now(name) : name); }
  /// The same of a word that stands here.
  std::string_view word_called(std::string_view word) const { return older_ ? older_->word_was(word) : word; }
  std::string_view word_now(std::string_view word) const { return older_ ? older_->word_now(word) : word; }
  /// What a name or word that is not known here should be: that of the file's version where it is of the other one,
  /// else the nearest of `known`, names as the file has them.
  std::string name_here(std::string_view given, const NameSet& known) const;
  std::string word_here(std::string_view given, const NameSet& known) const;

private:
  Cursor(const JsonValue& json, const Cursor* parent, std::string_view name)
      : json_(&json), tree_(parent->tree_), parent_(parent), name_(name),
        older_(parent->older_ ? parent->older_->below(name) : nullptr), faults_(parent->faults_) {}
  Cursor(const JsonValue& json, const Cursor* parent, std::size_t index)
      : json_(&json), tree_(parent->tree_), parent_(parent), index_(index), older_(parent->older_),
        faults_(parent->faults_) {}

  static constexpr std::size_t no_index = static_cast<std::size_t>(-1);
  bool is_item() const { return index_ != no_index; }

  /// The place in the table of names, whatever the file's version; null where nothing was called otherwise.
  const OlderPlace* place() const;

  const JsonValue* json_;
  const JsonTree* tree_;
  const Cursor* parent_ = nullptr;
  std::string_view name_;        ///< the present one, of a member
  std::size_t index_ = no_index; ///< of an item of a list
  const OlderPlace* older_ = nullptr;
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

/// The same as a value of a table of names; an unknown name is a fault and leaves `out` as it was.
template <const auto& table, class T>
void take_word(const Cursor& c, std::string_view name, T& out, std::string_view what) {
  static const NameSet known = names_in(table);
  std::string word;
  take_name(c, name, word, known, what);
  if (!word.empty()) out = value_in(table, word);
}

} // namespace wearline
