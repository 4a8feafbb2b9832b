#include "law/pack_words.h"

#include "json/fields.h"
#include <algorithm>

namespace wearline {

namespace {

/// A rule of any kind, with the sentence that says what follows if it is not met, and its name (deadlines and documents
/// have one).
struct Translatable {
  Rule* rule;
  std::string_view member;
  const std::string* consequence;
};

std::vector<Translatable> rules_of(Pack& pack) {
  std::vector<Translatable> out;
  const auto take = [&](auto& list) {
    for (auto& rule : list) out.push_back({&rule, {}, nullptr});
  };
  for (Deadline& deadline : pack.deadlines) out.push_back({&deadline, "ifMissedText", &deadline.if_missed_text});
  for (DocumentRule& document : pack.documents) out.push_back({&document, "ifMissingText", &document.if_missing_text});
  take(pack.counting);
  take(pack.allows);
  take(pack.bars);
  take(pack.caps);
  take(pack.not_deposit);
  take(pack.also_deposit);
  take(pack.interest);
  take(pack.forfeits);
  take(pack.remedies);
  for (std::vector<Remark>* remarks :
       {&pack.records, &pack.inspection, &pack.demand, &pack.address, &pack.wear, &pack.depreciation, &pack.holder,
        &pack.scope, &pack.small_claims, &pack.others, &pack.not_found})
    take(*remarks);
  return out;
}

/// The sentence under `name`; a fault where English has none to translate.
std::string sentence(Fields& f, std::string_view name, const std::string& english) {
  std::string said = f.text(name);
  if (!said.empty() && english.empty()) f.fault("nothing-to-translate", name, "The pack has no sentence here.");
  return said;
}

void translate_rule(Fields& f, const Translatable& of) {
  Rule& rule = *of.rule;
  rule.es.text = sentence(f, "text", rule.text);
  rule.es.when_text = sentence(f, "whenText", rule.when_text);
  rule.es.check = sentence(f, "check", rule.check);
  if (of.consequence) rule.es.consequence = sentence(f, of.member, *of.consequence);
  f.ignore({"of"}); // for the checker of translations: which English it was made from
  f.done();
}

/// Each member of an object whose names are ids.
template <class Use> void each_named(Fields& f, std::string_view name, Use use) {
  auto named = f.object(name);
  const Json* json = f.get(name);
  if (!named || !json->is_object()) return;
  for (const auto& item : json->items()) {
    Fields entry(item.value(), named->pointer(item.key()), f.faults());
    use(item.key(), entry);
  }
}

template <class List> auto* named(List& list, std::string_view id) {
  const auto found = std::find_if(list.begin(), list.end(), [&](const auto& entry) { return entry.id == id; });
  return found == list.end() ? nullptr : &*found;
}

void translate(Pack& pack, Fields& f, std::string_view layer) {
  if (layer.empty() && f.required_text("jurisdiction") != pack.jurisdiction)
    f.fault("wrong-name", "jurisdiction", "A translation has the name of its place.");
  if (!layer.empty() && f.required_text("id") != layer)
    f.fault("wrong-name", "id", "A translation has the name of its layer.");
  const std::vector<Translatable> rules = rules_of(pack);
  each_named(f, "rules", [&](std::string_view id, Fields& entry) {
    const auto of = std::find_if(rules.begin(), rules.end(), [&](const Translatable& t) { return t.rule->id == id; });
    if (of == rules.end()) entry.fault("unknown-rule", "", "The pack has no rule of this name.");
    else translate_rule(entry, *of);
  });
  each_named(f, "facts", [&](std::string_view id, Fields& entry) {
    FactInfo* fact = named(pack.facts, id);
    if (!fact) return entry.fault("unknown-fact", "", "The pack declares no fact of this name.");
    fact->question.es = entry.required_text("question");
    entry.ignore({"of"});
    entry.done();
  });
  each_named(f, "events", [&](std::string_view id, Fields& entry) {
    EventInfo* event = named(pack.events, id);
    if (!event) return entry.fault("unknown-event", "", "The pack declares no event of this name.");
    event->question.es = entry.required_text("question");
    event->day.es = entry.text("day");
    entry.ignore({"of"});
    entry.done();
  });
  std::vector<Fields> doubts = f.objects("checkThis");
  if (doubts.size() > pack.check_this.size()) f.fault("too-many", "checkThis", "The pack has fewer points in doubt.");
  for (std::size_t i = 0; i < std::min(doubts.size(), pack.check_this.size()); ++i) {
    pack.check_this[i].text.es = doubts[i].text("text");
    doubts[i].ignore({"of"});
    doubts[i].done();
  }
  f.done();
}

} // namespace

namespace {
Faults translate_text(Pack& pack, std::string_view layer, std::string_view text) {
  auto parsed = parse_json(text);
  if (auto* fault = std::get_if<Fault>(&parsed)) return {std::move(*fault)};
  Faults faults;
  Fields document(std::get<Json>(parsed), "", faults);
  translate(pack, document, layer);
  return faults;
}
} // namespace

Faults translate_layer(Pack& pack, std::string_view layer, std::string_view text) {
  return translate_text(pack, layer, text);
}

Faults translate_pack(Pack& pack, std::string_view text) { return translate_text(pack, {}, text); }

} // namespace wearline
