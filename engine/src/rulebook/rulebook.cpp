#include "law/pack_words.h"
#include "reading/line_names.h"
#include "rulebook/rule_store.h"
#include "values/ascii.h"
#include "wearline/engine.h"

#include "json/fields.h"
#include <algorithm>
#include <cctype>

namespace wearline {

namespace {

/// Runs `read` on the parsed document, or reports why it is none.
template <class Read> Faults with_document(std::string_view json, Read&& read) {
  auto parsed = parse_json(json);
  if (auto* fault = std::get_if<Fault>(&parsed)) return {std::move(*fault)};
  Faults faults;
  Fields root(std::get<Json>(parsed), "", faults);
  read(root);
  root.ignore({"about"});
  root.done();
  return faults;
}

ClashRule::Side clash_side(Fields& rule, std::string_view name) {
  ClashRule::Side side;
  if (auto f = rule.object(name)) {
    side.elements = f->texts("elements");
    side.findings = f->texts("findings");
    side.renewed = f->flag("renewed", false);
    side.mended = f->flag("mended", false);
    f->done();
  }
  return side;
}

Faults load_audit(Rules& rules, std::string_view json) {
  return with_document(json, [&](Fields& root) {
    rules.audit = {};
    rules.audit.flat_fees = root.texts("flatFees");
    if (auto tax = root.object("mostTax")) {
      rules.audit.most_tax = tax->decimal("share").value_or(Share::whole());
      tax->ignore({"source", "note"});
      tax->done();
    }
    for (Fields& f : root.objects("clashes")) {
      ClashRule rule;
      rule.id = f.required_text("id");
      rule.weaker = clash_side(f, "weaker");
      rule.stronger = clash_side(f, "stronger");
      rule.doubt_only = f.flag("doubtOnly", false);
      rule.text = f.localized("text");
      f.ignore({"source"});
      f.done();
      rules.audit.clashes.push_back(std::move(rule));
    }
  });
}

Faults load_cautions(Rules& rules, std::string_view json) {
  return with_document(json, [&](Fields& root) { rules.always_cautions = root.texts("always"); });
}

Faults load_hazards(Rules& rules, std::string_view json) {
  return with_document(json, [&](Fields& root) {
    rules.hazards.clear();
    for (Fields& f : root.objects("hazards")) {
      Hazard hazard;
      hazard.code = f.required_text("code");
      hazard.at = f.texts("at");
      hazard.stop = f.texts("stop");
      hazard.words = f.texts("words");
      hazard.text = f.required_localized("text");
      f.ignore({"source", "builtBefore"});
      f.done();
      rules.hazards.push_back(std::move(hazard));
    }
    root.ignore({"sources"});
  });
}

int letter_number(Fields& root, std::string_view name) {
  std::int64_t count = 0;
  if (auto f = root.object(name)) {
    count = f->whole("count").value_or(0);
    f->required_text("source");
    f->done();
  }
  if (count < 1 || count > 366) root.fault("out-of-range", name, "Give a whole number from 1 to 366.");
  return static_cast<int>(count);
}

void read_phrases(Fields& root, std::string_view name, LetterRules::Phrases& out) {
  if (auto f = root.object(name)) {
    for (const std::string_view language : {"en", "es"}) out[std::string(language)] = f->texts(language);
    f->done();
  }
}

Faults load_letters(Rules& rules, std::string_view json) {
  return with_document(json, [&](Fields& root) {
    LetterRules& letters = rules.letters;
    letters = {};
    letters.reply_days = letter_number(root, "replyDays");
    letters.mailing_days = letter_number(root, "mailingDays");
    letters.note_charges = letter_number(root, "noteCharges");
    letters.settled_percent = letter_number(root, "settledPercent");
    letters.smallest_sum = Money::cents(letter_number(root, "smallestSum") * 100);
    for (Fields& f : root.objects("guides")) {
      letters.guides.push_back({f.required_text("source"), f.required_text("place"), f.localized("name")});
      f.done();
    }
    for (Fields& f : root.objects("fixedWords")) {
      letters.fixed_words.push_back({f.required_text("place"), f.required_text("rule"), f.required_text("cite"),
                                     f.required_text("read") == "memory", f.flag("opens", false), f.localized("text")});
      f.done();
    }
    for (Fields& f : root.objects("parties")) {
      letters.parties.push_back(
          {f.required_text("party"), f.required_text("language"), f.required_text("said"), f.required_text("general")});
      f.done();
    }
    for (Fields& f : root.objects("shows")) {
      letters.shows[f.required_text("for")] = f.required_text("show");
      f.done();
    }
    for (Fields& f : root.objects("requestForms")) {
      const std::string place = f.required_text("place");
      letters.request_forms[place] = f.required_text("cite");
      f.done();
    }
    for (Fields& f : root.objects("forums")) {
      const std::string place = f.required_text("place");
      letters.forums[place] = {f.localized("name"), f.flag("court", false), f.flag("holds", false)};
      f.done();
    }
    read_phrases(root, "easing", letters.easing);
    read_phrases(root, "multiples", letters.multiples);
    read_phrases(root, "wearWords", letters.wear_words);
  });
}

void read_places(Fields& root, std::string_view name, NameSet& set, Rules& rules) {
  const Json* places = root.get(name);
  if (!places || !places->is_object()) return;
  Fields each(*places, root.pointer(name), root.faults());
  for (const auto& item : places->items()) {
    set.add(item.key());
    rules.place_names[item.key()] = each.required_localized(item.key());
  }
}

Faults load_places(Rules& rules, std::string_view json) {
  return with_document(json, [&](Fields& root) {
    read_places(root, "withPack", rules.names.jurisdictions, rules);
    read_places(root, "withoutPack", rules.names.places_without_pack, rules);
  });
}

Faults load_wording(Wording& wording, std::string_view json) {
  auto parsed = parse_json(json);
  if (auto* fault = std::get_if<Fault>(&parsed)) return {std::move(*fault)};
  const Json& document = std::get<Json>(parsed);
  Faults faults;
  if (!document.is_object()) return {{"wrong-type", "", "A wording file is one object of sentences.", ""}};
  for (const auto& item : document.items()) {
    if (const auto* text = item.value().get_ptr<const std::string*>()) wording.add(item.key(), *text);
    else faults.push_back({"wrong-type", '/' + pointer_segment(item.key()), "A sentence is text.", ""});
  }
  return faults;
}

/// The names a case may use, from the guide and the tables.
void name_things(Rules& rules) {
  CaseNames& names = rules.names;
  names.elements = {};
  names.findings.clear();
  for (const Element& element : rules.wear.elements) {
    names.elements.add(element.id);
    NameSet& findings = names.findings[element.id];
    for (const Finding& finding : element.findings) findings.add(finding.id);
  }
  const auto take = [](NameSet& set, const std::vector<Choice>& choices) {
    set = {};
    for (const Choice& choice : choices) set.add(choice.id);
  };
  take(names.at_move_in, rules.wear.at_move_in);
  take(names.landlord_factors, rules.wear.landlord_factors);
  names.methods = {};
  for (const DepreciationMethod& method : rules.lives.methods) names.methods.add(method.id);
  names.life_sources = {};
  for (const LifeRow& row : rules.lives.rows) names.life_sources.add(std::string_view(row.source->id).substr(5));
}

/// "law/US-WA.json": "US-WA".
std::string_view stem(std::string_view path) {
  const auto slash = path.rfind('/');
  if (slash != std::string_view::npos) path.remove_prefix(slash + 1);
  return path.substr(0, path.find('.'));
}

// The circumstances of a case hold every fact that has no other place, every derived fact, and every event (false: it
// is known not to have happened).

/// What every place lets a case file say.
Faults named(Faults faults, Rules& rules) {
  CaseNames& names = rules.names;
  for (const FactInfo& f : rules.registry.facts)
    if (!f.read) names.circumstances.insert_or_assign(f.id, f.type);
  for (const EventInfo& e : rules.registry.events) {
    names.events.add(e.id);
    names.circumstances.emplace(e.id, FactType::yes_no);
  }
  for (const DocumentInfo& p : rules.registry.documents) {
    names.documents.add(p.id);
    for (const std::string& alias : p.aliases) {
      names.documents.add(alias);
      names.document_aliases.insert_or_assign(alias, p.id);
    }
  }
  return faults;
}

/// What one place alone lets it say.
void name_own(CaseNames& names, const Pack& pack) {
  CaseNames::OfPlace& place = names.places[pack.jurisdiction];
  for (const FactInfo& f : pack.facts)
    if (!f.read) place.circumstances.insert_or_assign(f.id, f.type);
  for (const EventInfo& e : pack.events) {
    place.events.add(e.id);
    place.circumstances.emplace(e.id, FactType::yes_no);
  }
}

/// Lays a layer, and its sentences, over a pack it belongs to.
Faults lay(Pack& pack, std::string_view id, const Rules::Layer& layer, Rules& rules) {
  if (layer.of.empty() || !layer_fits(layer.of, pack.jurisdiction)) return {};
  Faults faults = lay_over(pack, layer.json, rules.registry);
  if (!faults.empty()) return faults;
  name_own(rules.names, pack);
  return layer.words.empty() ? faults : translate_layer(pack, id, layer.words);
}

Faults lay_everywhere(Rules& rules, std::string_view id) {
  const Rules::Layer& layer = rules.layers.find(id)->second;
  for (auto& [place, pack] : rules.packs)
    if (Faults faults = lay(pack, id, layer, rules); !faults.empty()) return faults;
  return {};
}

Faults add_layer(Rules& rules, std::string_view id, std::string_view json) {
  auto parsed = parse_json(json);
  if (auto* fault = std::get_if<Fault>(&parsed)) return {std::move(*fault)};
  Faults faults;
  Fields root(std::get<Json>(parsed), "", faults);
  std::string of = root.required_text("jurisdiction");
  const std::string name = root.required_text("id");
  if (!faults.empty()) return faults;
  if (name != id) return {{"wrong-name", "/id", "A layer's file has the name of its id.", ""}};
  Rules::Layer& layer = rules.layers[std::string(id)];
  layer.of = std::move(of);
  layer.json = json;
  return lay_everywhere(rules, id);
}

Faults add_layer_words(Rules& rules, std::string_view id, std::string_view json) {
  rules.layers[std::string(id)].words = json;
  return lay_everywhere(rules, id);
}

Faults add_pack(Rules& rules, std::string_view place, std::string_view json) {
  auto loaded = load_pack(json, rules.registry);
  if (auto* faults = std::get_if<Faults>(&loaded)) return std::move(*faults);
  if (std::get<Pack>(loaded).jurisdiction != place)
    return {{"wrong-name", "/jurisdiction", "A pack's file has the name of its place.", ""}};
  Pack& entry = rules.packs[std::string(place)];
  entry = std::move(std::get<Pack>(loaded));
  name_own(rules.names, entry);
  for (const auto& [id, layer] : rules.layers)
    if (Faults faults = lay(entry, id, layer, rules); !faults.empty()) {
      for (Fault& fault : faults) fault.text = "In the layer " + id + ": " + fault.text;
      return faults;
    }
  return {};
}

bool starts(std::string_view text, std::string_view with) { return text.substr(0, with.size()) == with; }

Faults add_file(Rules& rules, std::string_view path, std::string_view json) {
  if (path == "wear/catalogue.json") {
    Faults faults = load_wear_guide(rules.wear, rules.references, json);
    name_things(rules);
    return faults;
  }
  if (path == "wear/ask-for.json") return load_ask_for(rules.wear, json);
  if (path == "wear/weights.json") return load_weights(rules.wear, rules.references, json);
  if (path == "lives/lives.json") {
    Faults faults = load_lives(rules.lives, rules.references, json);
    name_things(rules);
    return faults;
  }
  if (path == "facts.json") return named(load_facts(rules.registry, json), rules);
  if (path == "duties.json") return load_deadlines(rules.registry, json);
  if (path == "papers.json") return named(load_documents(rules.registry, json), rules);
  if (starts(path, "holidays/")) return rules.holidays.add(stem(path), json);
  if (starts(path, "law/")) return add_pack(rules, stem(path), json);
  if (starts(path, "law-layers/")) return add_layer(rules, stem(path), json);
  if (starts(path, "law-layers-es/")) return add_layer_words(rules, stem(path), json);
  if (starts(path, "law-es/")) return translate_pack(rules.packs.find(stem(path))->second, json);
  if (path == "audit.json") return load_audit(rules, json);
  if (path == "precedents/outcomes.json") return rules.precedents.load(json);
  if (path == "precedents/cases.json") return {}; // who decided, where, and the words: for views alone
  if (path == "cautions.json") return load_cautions(rules, json);
  if (path == "hazards.json") return load_hazards(rules, json);
  if (path == "letters.json") return load_letters(rules, json);
  if (path == "jurisdictions.json") return load_places(rules, json);
  if (starts(path, "wording/")) {
    const std::string_view rest = path.substr(8);
    return load_wording(rules.wording[std::string(rest.substr(0, rest.find('/')))], json);
  }
  if (starts(path, "recogniser/")) return add_recognizer_file(rules.recognizer, path.substr(11), json);
  return {{"unknown-file", "", "The engine has no use for a rules file of this name.", ""}};
}

} // namespace

bool names_fault(const std::vector<std::string>& places, std::string_view element, std::string_view finding) {
  return std::any_of(places.begin(), places.end(), [&](std::string_view place) {
    if (!starts(place, element) || element.empty()) return false;
    const std::string_view rest = place.substr(element.size());
    return rest.empty() || (!finding.empty() && rest.front() == '/' && rest.substr(1) == finding);
  });
}

bool concerns(const Hazard& hazard, std::string_view element, std::string_view finding, std::string_view text) {
  if (names_fault(hazard.at, element, finding)) return true;
  return std::any_of(hazard.words.begin(), hazard.words.end(), [&](const std::string& word) {
    const auto same = [](char a, char b) { return b == to_lower(a); };
    const auto found = std::search(text.begin(), text.end(), word.begin(), word.end(), same);
    // The beginning of a word, not "marigold" for "gold".
    return found != text.end() && (found == text.begin() || !std::isalpha(static_cast<unsigned char>(*(found - 1))));
  });
}

const Pack* Rules::pack(std::string_view jurisdiction) const {
  const auto found = packs.find(jurisdiction);
  return found == packs.end() ? nullptr : &found->second;
}

const Wording& Rules::words(std::string_view language) const {
  static const Wording none;
  if (const auto found = wording.find(language); found != wording.end()) return found->second;
  const auto english = wording.find("en");
  return english == wording.end() ? none : english->second;
}

Rulebook::Rulebook() : rules_(std::make_unique<Rules>()) {}
Rulebook::~Rulebook() = default;
Rulebook::Rulebook(Rulebook&&) noexcept = default;
Rulebook& Rulebook::operator=(Rulebook&&) noexcept = default;

namespace {
/// What must be loaded first: deadlines name facts, packs name all three registries, their translations name the rules
/// of a pack.
int turn_of(std::string_view path) {
  if (path == "facts.json") return 0;
  if (path == "duties.json") return 1;
  if (path == "papers.json") return 2;
  if (starts(path, "law/") || starts(path, "law-layers")) return 4;
  return starts(path, "law-es/") ? 5 : 3;
}
} // namespace

bool Rulebook::takes(std::string_view path) {
  constexpr std::string_view ending = ".json";
  if (path.size() < ending.size() || path.substr(path.size() - ending.size()) != ending) return false;
  const std::string_view name = stem(path);
  return !starts(path, "schema/") && !starts(path, "walk/") && name != "page" && !starts(name, "page-") &&
         name != "cli";
}

Faults Rulebook::add(std::string_view path, std::string_view json) {
  // A file that came before what it builds on waits for it.
  waiting_.emplace_back(path, json);
  Faults faults;
  for (bool moved = true; moved;) {
    moved = false;
    for (std::size_t i = 0; i < waiting_.size(); ++i) {
      const int turn = turn_of(waiting_[i].first);
      if (turn < 3 ? turn > registries_ : turn == 4 ? registries_ < 3 : turn == 5 && !has_pack(stem(waiting_[i].first)))
        continue;
      auto [name, text] = std::move(waiting_[i]);
      waiting_.erase(waiting_.begin() + static_cast<std::ptrdiff_t>(i));
      Faults of_file = add_file(*rules_, name, text);
      for (Fault& fault : of_file) {
        fault.at = name + '#' + fault.at;
        faults.push_back(std::move(fault));
      }
      if (turn == registries_) ++registries_;
      moved = true;
      break;
    }
  }
  return faults;
}

Faults Rulebook::add_bundle(std::string_view json) {
  const auto files = split_object(json);
  if (!files) {
    auto parsed = parse_json(json);
    if (auto* fault = std::get_if<Fault>(&parsed)) return {std::move(*fault)};
    return {{"wrong-type", "", "A bundle of rules is one object of files.", ""}};
  }
  Faults faults;
  for (const auto& [path, text] : *files) {
    // Said at once: a file that has to wait for others would be read later, or never.
    if (text.substr(0, 1) != "{") {
      faults.push_back({"wrong-type", path + '#', "A rules file is one JSON object.", ""});
      continue;
    }
    Faults of_file = add(path, text);
    faults.insert(faults.end(), std::make_move_iterator(of_file.begin()), std::make_move_iterator(of_file.end()));
  }
  return faults;
}

Faults Rulebook::pending() const {
  Faults faults;
  for (const auto& [path, text] : waiting_)
    faults.push_back({"waits-for-others", path + '#',
                      starts(path, "law-es/") ? "The law file that this translates was not given."
                                              : "This file needs facts.json, duties.json and papers.json.",
                      ""});
  return faults;
}

bool Rulebook::has_pack(std::string_view jurisdiction) const { return rules_->pack(jurisdiction) != nullptr; }

std::string_view version() { return WEARLINE_VERSION; }

} // namespace wearline
