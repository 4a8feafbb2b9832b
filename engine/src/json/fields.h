#pragma once
// Reading one JSON object of a rules file member by member: every wrong type, unknown name and missing member becomes a
// fault with its place. A member that nobody asked for is a fault too, so a misspelt rule cannot be silently without
// effect.

#include "values/money.h"
#include "values/reference.h"
#include "values/tri.h"
#include "wearline/day.h"
#include "wearline/fault.h"

#include "json/json_text.h"
#include <algorithm>
#include <cstdint>
#include <initializer_list>
#include <iterator>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace wearline {

/// "0.05" or "3" as an exact fraction: digits, a point, at most nine decimals, below a million; empty otherwise.
std::optional<Share> parse_decimal(std::string_view text);

class Fields {
public:
  /// `at` is the JSON Pointer of `json`. A value that is no object is a fault, and then every member reads as missing.
  Fields(const Json& json, std::string at, Faults& faults);

  const std::string& at() const { return at_; }
  Faults& faults() const { return *faults_; }
  /// The member, or null where it is missing or JSON null.
  const Json* get(std::string_view name);
  std::string pointer(std::string_view name) const;
  void fault(std::string code, std::string_view name, std::string text) const;

  std::string text(std::string_view name);
  std::string required_text(std::string_view name);
  /// Text in the languages of the tool: { "en": "...", "es": "..." }, or a text that is English alone.
  Localized localized(std::string_view name);
  Localized required_localized(std::string_view name);
  Tri yes_no(std::string_view name);
  bool flag(std::string_view name, bool otherwise);
  std::optional<std::int64_t> whole(std::string_view name);
  std::optional<Share> decimal(std::string_view name);
  std::optional<Money> money(std::string_view name);
  std::optional<Day> day(std::string_view name);
  std::vector<std::string> texts(std::string_view name);
  /// Each object of a list member, with its own place.
  std::vector<Fields> objects(std::string_view name);
  std::optional<Fields> object(std::string_view name);

  /// One of `names` as its value; a fault and `otherwise` if it is another word, `otherwise` alone if it is missing.
  template <class T> using Words = std::pair<std::string_view, T>;
  template <class T> T word(std::string_view name, const Words<T>* begin, const Words<T>* end, T otherwise) {
    const std::string word = text(name);
    if (word.empty()) return otherwise;
    for (; begin != end; ++begin)
      if (begin->first == word) return begin->second;
    fault("unknown-name", name, "\"" + word + "\" is not one of the words that may stand here.");
    return otherwise;
  }
  template <class T> T word(std::string_view name, std::initializer_list<Words<T>> names, T otherwise) {
    return word<T>(name, names.begin(), names.end(), otherwise);
  }
  template <class T, std::size_t n> T word(std::string_view name, const Words<T> (&names)[n], T otherwise) {
    return word<T>(name, names, names + n, otherwise);
  }

  /// A list of such words; a fault at the place of each that is another.
  template <class T, std::size_t n> std::vector<T> words(std::string_view name, const Words<T> (&names)[n]) {
    std::vector<T> out;
    std::size_t at = 0;
    for (const std::string& word : texts(name)) {
      const auto* found =
          std::find_if(std::begin(names), std::end(names), [&](const Words<T>& known) { return known.first == word; });
      if (found != std::end(names)) out.push_back(found->second);
      else
        faults_->push_back({"unknown-name", pointer(name) + '/' + std::to_string(at),
                            "\"" + word + "\" is not one of the words that may stand here.", ""});
      ++at;
    }
    return out;
  }

  /// Members to leave unread without a fault.
  void ignore(std::initializer_list<std::string_view> names);
  /// Reports every member that was not asked for.
  void done() const;

private:
  const Json* json_;
  std::string at_;
  Faults* faults_;
  std::vector<std::string_view> asked_;
};

} // namespace wearline
