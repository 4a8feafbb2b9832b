#include "reading/line_place.h"

#include <algorithm>

namespace wearline {

namespace {

struct PlaceFound {
  std::string name;
  bool whole_unit = false, closet = false;
};

/// Rooms named inside a longer term ("laundry room key" has none of its own; "kitchen sink drain" has).
bool is_plain_room(const std::string& name) { return name == "kitchen" || name == "bathroom" || name == "bedroom"; }

std::string with_number(const std::vector<Token>& t, const Group& g, const std::string& name, const Lexicon& lexicon,
                        const NumberMarks& marks, const std::vector<Mention>& mentions) {
  if (name != "bedroom" && name != "bathroom") return name;
  std::size_t next = g.last + 1u;
  if (next < t.size() && t[next].is('.') && t[next].glued) ++next;
  if (next < t.size() && t[next].is('#')) ++next;
  if (next < t.size() && t[next].number() && t[next].text.size() == 1 && t[next].text != "0") {
    const std::size_t after = next + 1;
    const bool counted =
        after < t.size() && (t[after].is('@') || t[after].text == "x" || (t[after].is('"') && t[after].glued));
    const bool unit = std::any_of(mentions.begin(), mentions.end(),
                                  [&](const Mention& m) { return m.first == after && lexicon.at(m.concept_id).unit; });
    if (!counted && !unit) return name + " " + t[next].text;
  }
  if (g.first >= 2 && t[g.first - 1u].glued && t[g.first - 2u].number() && t[g.first - 2u].text.size() == 1 &&
      (t[g.first - 1u].text == "nd" || t[g.first - 1u].text == "rd" || t[g.first - 1u].text == "st"))
    return name + " " + t[g.first - 2u].text;
  for (std::size_t k = 0; k < 4 && next < t.size(); ++k)
    for (const Mention& m : mentions)
      if (m.first == next && m.concept_id == marks.counts[k] && t[next].text.size() > 2 && t[next].text != "una" &&
          t[next].text != "both")
        return name + " " + std::to_string(k + 1);
  return name;
}

std::vector<PlaceFound> find_places(const std::vector<Token>& t, const std::vector<Group>& groups,
                                    const std::vector<Mention>& mentions, const RecognizerRules& rules,
                                    bool bath_thing) {
  const Lexicon& lexicon = rules.charges();
  std::vector<PlaceFound> out;
  const auto add = [&](const std::string& name) {
    if (std::none_of(out.begin(), out.end(), [&](const PlaceFound& p) { return p.name == name; }))
      out.push_back({name, name == "whole unit", name == "closet"});
  };
  for (const Group& g : groups) {
    for (const Lexicon::Id id : g.ids) {
      const Concept& c = lexicon.at(id);
      if (c.role != Role::place || describes_size(t, g)) continue;
      std::string name = c.value;
      if (name == "master bedroom" && bath_thing && g.first == g.last &&
          (t[g.first].text == "mstr" || t[g.first].text == "master" || t[g.first].text == "primary"))
        name = "master bathroom";
      add(with_number(t, g, name, lexicon, rules.charge_marks(), mentions));
    }
    if (g.first == g.last || g.place) continue;
    for (std::size_t i = g.first; i <= g.last; ++i)
      for (const Mention& m : lexicon.mentions({t[i]}))
        if (lexicon.at(m.concept_id).role == Role::place &&
            (is_plain_room(lexicon.at(m.concept_id).value) ||
             std::find(g.ids.begin(), g.ids.end(), lexicon.find("deck")) != g.ids.end()) &&
            t[i].text != "bath" && t[i].text != "ba" && m.match == Match::exact)
          add(lexicon.at(m.concept_id).value);
  }
  return out;
}

/// A tub, a toilet: with it "master" is the bathroom.
bool bath_thing(const std::vector<Group>& groups, const RecognizerRules& rules) {
  return std::any_of(groups.begin(), groups.end(), [&](const Group& g) {
    return std::any_of(g.ids.begin(), g.ids.end(), [&](Lexicon::Id id) { return rules.in_bathroom(id); });
  });
}

} // namespace

std::string place_of(const std::vector<Token>& tokens, const Sense& line, const std::vector<Mention>& mentions,
                     const RecognizerRules& rules, const ElementRule* element) {
  if (element != nullptr && element->places == PlaceUse::none) return {};
  const bool wide = element != nullptr && element->places == PlaceUse::wide;
  const bool closets = element != nullptr && element->places == PlaceUse::closets;
  const auto places = find_places(tokens, line.groups(), mentions, rules, bath_thing(line.groups(), rules));
  const auto real =
      std::count_if(places.begin(), places.end(), [](const PlaceFound& p) { return !p.whole_unit && !p.closet; });
  std::string out;
  for (const PlaceFound& p : places) {
    if (p.whole_unit && (!wide || real > 0)) continue;
    if (p.closet && (real > 0 || closets)) continue;
    if (!out.empty()) out += "; ";
    out += p.name;
  }
  return out;
}

} // namespace wearline
