#include "letters/letter_walk.h"

#include <algorithm>

namespace wearline {

namespace {

/// What one thing shows of the charge about it, in the tenant's favor; empty where it shows nothing, or speaks against.
std::string shown(const Draft& d, const WalkThrough& walk, const SeenThing& thing) {
  if (thing.put_right) return d.say("letter.walk.put-right", {{"when", d.when(*thing.put_right)}});
  if (thing.move_out == "fine" || thing.move_out == "worn") return d.say("letter.walk.", thing.move_out);
  if (walk.list_given == Tri::yes && thing.on_their_list == Tri::no) return d.say("letter.walk.off-list");
  return {};
}

std::vector<std::string> rows(const Draft& d) {
  std::vector<std::string> out;
  if (!d.c.walk_through) return out;
  for (std::size_t i = 0; i < d.c.lines.size(); ++i)
    for (const SeenThing& thing : d.c.walk_through->things) {
      if (thing.line.empty() || thing.line != d.c.lines[i].id) continue;
      const std::string what = shown(d, *d.c.walk_through, thing);
      if (!what.empty()) out.push_back(d.say("letter.walk.row", {{"charge", d.label(i)}, {"what", what}}));
    }
  return out;
}

} // namespace

bool walk_through_shows(const Draft& d) { return !rows(d).empty(); }

void add_walk_through(Draft& d) {
  const std::vector<std::string> said = rows(d);
  if (said.empty()) return;
  const auto& on = d.c.walk_through->on;
  add_list(d, "walk-through", ParagraphRole::list,
           on ? d.say("letter.walk.on", {{"when", d.when(*on)}}) : d.say("letter.walk"), said);
}

void warn_about_hazards(Draft& d) {
  const auto of_things = [&](const Hazard& hazard) {
    return d.c.walk_through &&
           std::any_of(d.c.walk_through->things.begin(), d.c.walk_through->things.end(), [&](const SeenThing& thing) {
             return !thing.move_out.empty() && thing.move_out != "fine" &&
                    concerns(hazard, thing.element, thing.finding, thing.note);
           });
  };
  const auto of_charges = [&](const Hazard& hazard) {
    for (std::size_t i = 0; i < d.c.lines.size(); ++i) {
      const Subject& subject = d.a.lines[i].subject;
      if (concerns(hazard, subject.element ? std::string_view(subject.element->id) : std::string_view(),
                   subject.finding ? std::string_view(subject.finding->id) : std::string_view(), d.c.lines[i].text))
        return true;
    }
    return false;
  };
  for (const Hazard& hazard : d.rules.hazards)
    if (of_things(hazard) || of_charges(hazard)) d.warn("hazard-" + hazard.code, hazard.text.in(d.speech.language()));
}

} // namespace wearline
