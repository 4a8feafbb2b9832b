#include "json/json_text.h"

#include <algorithm>
#include <set>
#include <string>
#include <vector>

namespace wearline {

namespace {

/// Reads only as far as the first mistake; keeps nothing but the way to it.
struct MistakeFinder : nlohmann::json_sax<Json> {
  struct Level {
    bool object;
    std::size_t index = 0;
    std::string key;
    std::set<std::string> keys;
  };
  std::vector<Level> levels;
  std::size_t mistake_at = 0;
  bool duplicate = false;
  std::string pointer;

  bool null() override { return value(); }
  bool boolean(bool) override { return value(); }
  bool number_integer(number_integer_t) override { return value(); }
  bool number_unsigned(number_unsigned_t) override { return value(); }
  bool number_float(number_float_t, const string_t&) override { return value(); }
  bool string(string_t&) override { return value(); }
  bool binary(binary_t&) override { return value(); }
  bool start_object(std::size_t) override { return open(true); }
  bool start_array(std::size_t) override { return open(false); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }
  bool key(string_t& name) override {
    Level& level = levels.back();
    level.key = name;
    if (level.keys.insert(name).second) return true;
    duplicate = true;
    return false;
  }
  bool parse_error(std::size_t at, const std::string&, const nlohmann::detail::exception&) override {
    mistake_at = at;
    return false;
  }

  std::string place() const {
    std::string out;
    for (const Level& level : levels) {
      out += '/';
      out += level.object ? pointer_segment(level.key) : std::to_string(level.index);
    }
    return out;
  }

private:
  bool open(bool object) {
    levels.push_back({object, 0, {}, {}});
    return levels.size() < 200;
  }
  bool close() {
    levels.pop_back();
    return value();
  }
  bool value() {
    if (!levels.empty() && !levels.back().object) ++levels.back().index;
    return true;
  }
};

/// Whether any object in the text names a member twice; cheap test by counting members against the parsed document.
std::size_t count_members(const Json& json) {
  std::size_t count = 0;
  std::vector<const Json*> todo{&json};
  while (!todo.empty()) {
    const Json* at = todo.back();
    todo.pop_back();
    if (at->is_object()) {
      count += at->size();
      for (const auto& item : at->items()) todo.push_back(&item.value());
    } else if (at->is_array()) {
      for (const auto& item : *at) todo.push_back(&item);
    }
  }
  return count;
}

/// Where the string that begins at the quotation mark `at` ends: behind the next one that no backslash escapes.
std::size_t behind_string(std::string_view text, std::size_t at) {
  for (++at; at < text.size() && text[at] != '"'; ++at)
    if (text[at] == '\\') ++at;
  return at + 1;
}

/// The shape of a text, read without parsing: colons outside strings (each follows a member's name) and the deepest
/// nesting.
struct Shape {
  std::size_t colons = 0;
  int depth = 0;
};
Shape shape_of(std::string_view text) {
  Shape shape;
  int depth = 0;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const char c = text[at];
    if (c == '"') {
      at = behind_string(text, at) - 1;
    } else if (c == ':') {
      ++shape.colons;
    } else if (c == '{' || c == '[') {
      shape.depth = std::max(shape.depth, ++depth);
    } else if (c == '}' || c == ']') {
      --depth;
    }
  }
  return shape;
}

std::string_view without_mark(std::string_view text) {
  if (text.substr(0, 3) == "\xEF\xBB\xBF") text.remove_prefix(3);
  return text;
}

/// Where a value ends: at the comma or the bracket of what holds it.
std::size_t behind_value(std::string_view text, std::size_t at) {
  for (int depth = 0; at < text.size();) {
    const char c = text[at];
    if (c == '"') {
      at = behind_string(text, at);
      continue;
    }
    if (depth == 0 && (c == ',' || c == '}' || c == ']')) break;
    if (c == '{' || c == '[') ++depth;
    if (c == '}' || c == ']') --depth;
    ++at;
  }
  return at;
}

std::size_t behind_blanks(std::string_view text, std::size_t at) {
  const auto next = text.find_first_not_of(" \t\r\n", at);
  return next == std::string_view::npos ? text.size() : next;
}

} // namespace

std::optional<std::vector<std::pair<std::string, std::string_view>>> split_object(std::string_view text) {
  text = without_mark(text);
  std::vector<std::pair<std::string, std::string_view>> members;
  std::set<std::string> names;
  const auto is = [&](std::size_t at, char c) { return at < text.size() && text[at] == c; };
  std::size_t at = behind_blanks(text, 0);
  if (!is(at, '{')) return std::nullopt;
  at = behind_blanks(text, at + 1);
  for (bool more = !is(at, '}'); more;) {
    if (!is(at, '"')) return std::nullopt;
    const std::size_t name_ends = behind_string(text, at);
    if (name_ends > text.size()) return std::nullopt;
    const Json name = Json::parse(text.substr(at, name_ends - at), nullptr, false);
    const std::size_t colon = behind_blanks(text, name_ends);
    if (!name.is_string() || !names.insert(name.get<std::string>()).second || !is(colon, ':')) return std::nullopt;
    const std::size_t value = behind_blanks(text, colon + 1);
    const std::size_t value_ends = std::min(behind_value(text, value), text.size());
    members.emplace_back(name.get<std::string>(), text.substr(value, value_ends - value));
    more = is(value_ends, ',');
    at = more ? behind_blanks(text, value_ends + 1) : value_ends;
  }
  if (!is(at, '}') || behind_blanks(text, at + 1) != text.size()) return std::nullopt;
  return members;
}

bool parse_events(std::string_view text, nlohmann::json_sax<Json>& events) {
  text = without_mark(text);
  return Json::sax_parse(text.begin(), text.end(), &events);
}

Fault mistake_in(std::string_view text) {
  text = without_mark(text);
  if (shape_of(text).depth > static_cast<int>(deepest_json))
    return {"too-deep", "", "This JSON is nested too deeply to be a case.", ""};
  MistakeFinder finder;
  const bool ok = parse_events(text, finder);
  if (finder.duplicate)
    return {"duplicate-member", finder.place(),
            "The name \"" + finder.levels.back().key + "\" stands twice in the same object. Keep one of the two.", ""};
  if (ok) return {"not-json", "", "This is not a JSON document.", ""};
  std::size_t line = 1, column = 1;
  const std::size_t end = finder.mistake_at == 0 ? 0 : std::min(finder.mistake_at - 1, text.size());
  for (std::size_t at = 0; at < end; ++at) {
    if (text[at] == '\n') {
      ++line;
      column = 1;
    } else {
      ++column;
    }
  }
  return {"not-json", finder.place(),
          "This is not valid JSON: it goes wrong at line " + std::to_string(line) + ", column " +
              std::to_string(column) + ".",
          ""};
}

std::string pointer_segment(std::string_view segment) {
  std::string out;
  for (const char c : segment) {
    if (c == '~') out += "~0";
    else if (c == '/') out += "~1";
    else out += c;
  }
  return out;
}

std::variant<Json, Fault> parse_json(std::string_view text) {
  text = without_mark(text);
  const Shape shape = shape_of(text);
  if (shape.depth > static_cast<int>(deepest_json)) return mistake_in(text);
  Json json = Json::parse(text.begin(), text.end(), nullptr, false);
  if (json.is_discarded()) return mistake_in(text);
  if (shape.colons != count_members(json)) return mistake_in(text);
  return json;
}

} // namespace wearline
