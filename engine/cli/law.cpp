// wearline law CODE: every rule held of a place's law, with its source and how that was read.

#include "answers.h"
#include "format/older_names.h"
#include "read_input.h"
#include "rules_folder.h"
#include "values/names.h"
#include "wrapped_text.h"

#include <iostream>
#include <nlohmann/json.hpp>

namespace wearline::cli {

namespace {

using Json = nlohmann::ordered_json;

std::string text_of(const Json& object, const char* name) {
  const auto found = object.find(name);
  return found != object.end() && found->is_string() ? found->get<std::string>() : std::string();
}

/// "RCW 59.18.270 (statute-text); ..." for the ids a rule names.
std::string sources_of(const Json& rule, const Json& sources) {
  std::string out;
  for (const Json& id : rule.value("source", Json::array())) {
    const auto found = id.is_string() ? sources.find(id.get<std::string>()) : sources.end();
    if (found == sources.end()) continue;
    out += (out.empty() ? "[" : "; ") + text_of(*found, "cite") + " (" + text_of(*found, "read") + ")";
  }
  return out.empty() ? out : out + "]";
}

/// Each member of a law file that is a list of rules, in the order of the file.
void print_rules(WrappedText& out, const Json& pack) {
  const Json sources = pack.value("sources", Json::object());
  for (const auto& [section, rules] : pack.items()) {
    if (!rules.is_array()) continue;
    for (const Json& rule : rules) {
      if (!rule.is_object() || !rule.contains("id") || text_of(rule, "text").empty()) continue;
      out.blank();
      out.say("", section + "/" + text_of(rule, "id"));
      for (const char* member : {"text", "ifMissedText", "ifMissingText", "note"})
        if (const std::string text = text_of(rule, member); !text.empty()) out.say("  ", text);
      if (const std::string from = sources_of(rule, sources); !from.empty()) out.say("  ", from);
      if (const std::string check = text_of(rule, "check"); !check.empty()) out.say("  ! ", check);
    }
  }
  for (const Json& check : pack.value("checkThis", Json::array()))
    if (const std::string text = text_of(check, "text"); !text.empty()) {
      out.blank();
      out.say("! ", text);
    }
}

Faults no_law(const std::string& place, const std::filesystem::path& law) {
  NameSet known;
  std::error_code none;
  for (const auto& entry : std::filesystem::directory_iterator(law, none))
    if (entry.path().extension() == ".json") known.add(entry.path().stem().string());
  const std::string near = known.nearest(place);
  return {{"no-law-file", "",
           "There is no law file for \"" + place + "\". Places are named as in ISO 3166-2, such as US-WA or CA-BC." +
               (near.empty() ? "" : " The nearest is " + near + "."),
           near}};
}

} // namespace

int law(const LawOptions& o) {
  const std::filesystem::path folder = rules_folder(o.rules) / "law";
  const auto file = read_input(folder / (o.place + ".json"));
  if (std::holds_alternative<Faults>(file)) return refuse(no_law(o.place, folder), o.json, {}, o.format);
  const std::string& text = std::get<std::string>(file);
  const Json pack = Json::parse(text, nullptr, false);
  if (!pack.is_object())
    return refuse({{"not-json", "", "This law file is not valid JSON.", ""}}, o.json, {}, o.format);
  if (o.json) {
    const std::string text_out = pack.dump();
    std::cout << (o.format == oldest_format ? in_older_names(text_out, older_document("law")) : text_out) << '\n';
    return status_ok;
  }
  WrappedText out;
  out.say("", o.place + "  " + text_of(pack, "name") + ", last reviewed " + text_of(pack, "reviewed"));
  print_rules(out, pack);
  std::cout << out.str();
  return status_ok;
}

} // namespace wearline::cli
