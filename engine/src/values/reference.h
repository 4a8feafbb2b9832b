#pragma once
// Where a fact comes from, and how it was read.

#include <string>
#include <string_view>
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
/// `region` is where it speaks of ("US", "US-CA"), empty where that is the place of its pack; `name` what people call
/// it.
struct Reference {
  std::string id, text, read, url, edition, region;
  bool bill = false; ///< the text of a bill, not known to be law as it stands: no letter cites it
  Localized name;
};
using References = std::vector<const Reference*>;

/// How far a source is from a place: of the place itself or of none, of its country, of another country.
enum class Nearness { here, same_country, abroad };
Nearness nearness(const Reference& source, std::string_view place);
/// Those of the place first, then those of its country; otherwise in their order.
References nearest_first(References sources, std::string_view place);

} // namespace wearline
