#include "json/json_tree.h"

#include "json/json_text.h"
#include <algorithm>
#include <cstring>

namespace wearline {

/// Puts the members of a list or an object into the tree when it ends; until then they wait.
class TreeBuilder final : public nlohmann::json_sax<Json> {
public:
  /// Written out, names and texts are never longer than in JSON.
  explicit TreeBuilder(std::size_t size) {
    tree_.text_ = std::make_unique<char[]>(size);
    free_ = tree_.text_.get();
  }

  JsonTree take() {
    tree_.root_ = waiting_.front();
    return std::move(tree_);
  }

  bool null() override { return add(JsonValue::Kind::null), true; }
  bool boolean(bool yes) override { return add(JsonValue::Kind::boolean).yes = yes, true; }
  bool number_integer(number_integer_t n) override { return add(JsonValue::Kind::below_zero).below_zero = n, true; }
  bool number_unsigned(number_unsigned_t n) override { return add(JsonValue::Kind::whole).whole = n, true; }
  bool number_float(number_float_t n, const string_t&) override { return add(JsonValue::Kind::real).real = n, true; }
  bool string(string_t& text) override { return add(JsonValue::Kind::text).text = keep(text), true; }
  bool binary(binary_t&) override { return false; }
  bool start_object(std::size_t) override { return open(JsonValue::Kind::object); }
  bool start_array(std::size_t) override { return open(JsonValue::Kind::list); }
  bool key(string_t& name) override { return name_ = keep(name), true; }
  bool end_array() override { return close(waiting_.begin() + open_.back()); }
  bool end_object() override {
    const auto first = waiting_.begin() + open_.back();
    std::sort(first, waiting_.end(), [](const JsonValue& a, const JsonValue& b) { return a.name < b.name; });
    const auto twice = std::adjacent_find(first, waiting_.end(),
                                          [](const JsonValue& a, const JsonValue& b) { return a.name == b.name; });
    return twice == waiting_.end() && close(first);
  }
  bool parse_error(std::size_t, const std::string&, const nlohmann::detail::exception&) override { return false; }

private:
  using Waiting = std::vector<JsonValue>;

  JsonValue& add(JsonValue::Kind kind) {
    JsonValue& value = waiting_.emplace_back();
    value.kind = kind;
    value.name = name_;
    return value;
  }
  std::string_view keep(const std::string& text) {
    std::memcpy(free_, text.data(), text.size());
    const std::string_view kept(free_, text.size());
    free_ += text.size();
    return kept;
  }
  bool open(JsonValue::Kind kind) {
    add(kind);
    open_.push_back(static_cast<std::ptrdiff_t>(waiting_.size()));
    return open_.size() <= deepest_json;
  }
  bool close(Waiting::iterator first) {
    first[-1].members = {tree_.values_.size(), static_cast<std::size_t>(waiting_.end() - first)};
    tree_.values_.insert(tree_.values_.end(), first, waiting_.end());
    waiting_.erase(first, waiting_.end());
    open_.pop_back();
    return true;
  }

  JsonTree tree_;
  char* free_;
  std::string_view name_; ///< of the value that comes next, where it is a member of an object
  Waiting waiting_;
  std::vector<std::ptrdiff_t> open_; ///< where the members of each list and object that has not ended begin
};

const JsonValue* JsonTree::find(const JsonValue& object, std::string_view name) const {
  if (!object.is_object()) return nullptr;
  for (const JsonValue& member : members(object))
    if (member.name.size() == name.size() && member.name.front() == name.front() && member.name == name) return &member;
  return nullptr;
}

std::variant<JsonTree, Fault> parse_tree(std::string_view text) {
  TreeBuilder builder(text.size());
  if (parse_events(text, builder)) return builder.take();
  return mistake_in(text);
}

} // namespace wearline
