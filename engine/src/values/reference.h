#pragma once
// Where a fact comes from, and how it was read.

#include <string>
#include <vector>

namespace wearline {

/// Text in the two languages of the tool; Spanish falls back on English.
struct Localized {
  std::string en, es;
  const std::string& in(std::string_view language) const { return language == "es" && !es.empty() ? es : en; }
  bool empty() const { return en.empty(); }
};

/// `id` is unique over all rules: "law:rcw-59.18.280", "wear:hud-5c", "life:hud-5d".
/// `read` says how it was read: statute-text, official-guide, secondary, memory, practice (common practice, no source).
struct Reference {
  std::string id, text, read, url, edition;
};
using References = std::vector<const Reference*>;

} // namespace wearline
