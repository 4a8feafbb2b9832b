#include "format/older_names.h"
#include "rulebook/rule_store.h"
#include "wearline/engine.h"

#include "json/json_out.h"

namespace wearline {

namespace {

void choices(JsonOut& out, std::string_view name, const std::vector<Choice>& list, std::string_view language) {
  out.key(name).array();
  for (const Choice& choice : list)
    out.object().pair("id", choice.id).pair("label", choice.label.in(language)).end_object();
  out.end_array();
}

void findings(JsonOut& out, const Element& element, std::string_view language) {
  out.key("findings").array();
  for (const Finding& f : element.findings) {
    out.object().pair("id", f.id).pair("label", f.label.in(language)).pair("description", f.description.in(language));
    out.pair("usual", f.usual == Usual::wear ? "wear" : f.usual == Usual::damage ? "damage" : "depends");
    out.key("depreciates").boolean(f.depreciates).pair("ask", f.ask.in(language)).end_object();
  }
  out.end_array();
}

/// The cities and counties known to have rules of their own, of the packs that are loaded.
void localities(JsonOut& out, const Rules& rules, std::string_view language) {
  out.key("localities").array();
  for (const auto& [code, pack] : rules.packs)
    for (const Place& place : pack.places)
      out.object()
          .pair("jurisdiction", code)
          .pair("id", place.id)
          .pair("name", place.name.in(language))
          .pair("value", place.localities.front())
          .pair("inside", place.inside.in(language))
          .pair("ask", place.ask.in(language))
          .end_object();
  out.end_array();
}

} // namespace

std::string catalogue(const Rulebook& rulebook, std::string_view language, int format) {
  const Rules& rules = rulebook.rules();
  JsonOut out;
  out.object().key("wearline").number(newest_format).pair("language", language);
  choices(out, "groups", rules.wear.groups, language);
  out.key("elements").array();
  for (const Element& e : rules.wear.elements) {
    out.object()
        .pair("id", e.id)
        .pair("group", e.group)
        .pair("kind", name_of(e.kind))
        .pair("label", e.label.in(language))
        .pair("covers", e.covers.in(language));
    out.key("depreciates").boolean(!e.life_class.empty()).key("repairableArea");
    e.repairable_area_unit.empty() ? out.null()
                                   : out.object()
                                         .pair("unit", e.repairable_area_unit)
                                         .pair("text", e.repairable_area_text.in(language))
                                         .end_object();
    findings(out, e, language);
    out.end_object();
  }
  out.end_array();
  choices(out, "landlordFactors", rules.wear.landlord_factors, language);
  choices(out, "conditionsAtMoveIn", rules.wear.at_move_in, language);
  choices(out, "causes", rules.wear.causes, language);
  out.key("depreciationMethods").array();
  for (const DepreciationMethod& m : rules.lives.methods)
    out.object().pair("id", m.id).pair("label", m.label.in(language)).pair("text", m.text.in(language)).end_object();
  out.end_array();
  out.key("usefulLifeSources").array();
  for (const auto& [id, reference] : rules.references)
    if (id.substr(0, 5) == "life:")
      out.object().pair("id", std::string_view(id).substr(5)).pair("label", reference.text).end_object();
  out.end_array();
  out.key("jurisdictions").array();
  for (const auto& [code, name] : rules.place_names)
    out.object()
        .pair("code", code)
        .pair("name", name.in(language))
        .key("law")
        .boolean(rules.names.jurisdictions.has(code))
        .end_object();
  out.end_array();
  localities(out, rules, language);
  out.end_object();
  std::string answer = out.take();
  return format == oldest_format ? in_older_names(answer, older_document("catalogue")) : answer;
}

} // namespace wearline
