#include "reading/recognizer_rules.h"

#include "json/json_text.h"
#include <algorithm>
#include <array>
#include <cmath>
#include <nlohmann/json.hpp>
#include <variant>

namespace wearline {

using nlohmann::json;

namespace {

bool has_text(const json& object, const char* member) {
  return object.is_object() && object.contains(member) && object[member].is_string();
}

} // namespace

const std::vector<std::string>& RecognizerRules::files() {
  static const std::vector<std::string> names = {"concepts.json", "places.json",    "units.json",    "marks.json",
                                                 "plain.json",    "statement.json", "elements.json", "facts.json"};
  return names;
}

Faults RecognizerRules::add(std::string_view name, std::string_view text) {
  const auto& names = files();
  if (std::find(names.begin(), names.end(), name) == names.end())
    return {{"unknown-file", "", "There is no such file of recogniser rules.", ""}};
  const auto parsed = parse_json(text);
  if (const auto* fault = std::get_if<Fault>(&parsed)) return {*fault};
  waiting_.insert_or_assign(std::string(name), std::string(text));
  if (waiting_.size() < names.size()) return {};
  Faults faults = build();
  waiting_.clear();
  return faults;
}

Faults RecognizerRules::build() {
  *this = [&] {
    RecognizerRules fresh;
    fresh.waiting_ = std::move(waiting_);
    return fresh;
  }();
  Faults faults;
  for (const std::string& name : files()) {
    const json document = json::parse(waiting_[name], nullptr, false);
    Faults of_file = name == "elements.json" ? add_elements(document)
                     : name == "facts.json"  ? add_facts(document)
                                             : add_words(name, document);
    for (Fault& fault : of_file) {
      fault.at = name + fault.at;
      faults.push_back(std::move(fault));
    }
  }
  for (Fault& fault : tie()) {
    fault.at = "elements.json" + fault.at;
    faults.push_back(std::move(fault));
  }
  complete_ = faults.empty();
  return faults;
}

/// Numbers and plain words mean the same in a charge and in a statement; the other words are kept apart.
Faults RecognizerRules::add_words(std::string_view name, const json& document) {
  if (name == "statement.json") {
    Faults faults = statement_.add(document);
    ReadingWeights weights;
    for (Fault& fault : read_weights(document.is_object() ? document.value("weights", json()) : json(), weights))
      faults.push_back(std::move(fault));
    weights_ = std::make_shared<const ReadingWeights>(weights);
    return faults;
  }
  Faults faults = charges_.add(document);
  if (name != "units.json" && name != "marks.json" && name != "plain.json") return faults;
  statement_.add(document);
  return faults;
}

Faults RecognizerRules::add_facts(const json& document) {
  facts_ = std::make_shared<FactRules>();
  return facts_->add(document, charges_);
}

Faults RecognizerRules::add_elements(const json& document) {
  Faults faults;
  if (!document.is_object() || !document.contains("elements") || !document["elements"].is_array())
    return {{"wrong-type", "/elements", "A list of elements is needed.", ""}};
  const auto read_terms = [&](const json& terms, const std::string& at) {
    std::vector<PendingTerm> out;
    if (!terms.is_object()) {
      faults.push_back({"wrong-type", at, "Terms are an object of weights.", ""});
      return out;
    }
    for (const auto& [text, weight] : terms.items()) {
      const std::string place = at + '/' + pointer_segment(text);
      if (weight.is_number()) out.push_back({text, place, static_cast<int>(std::lround(weight.get<double>() * 100))});
      else faults.push_back({"wrong-type", place, "A weight is a number.", ""});
    }
    return out;
  };
  const auto take_names = [&](const char* list, IdeaSet& set) {
    if (!document.contains(list)) return;
    for (const json& name : document[list])
      if (name.is_string()) set.names.push_back(name.get<std::string>());
  };
  if (document.contains("words") && document["words"].is_object())
    for (const auto& [list, words] : document["words"].items())
      for (const json& word : words)
        if (word.is_string()) words_[list].push_back(word.get<std::string>());
  take_names("owners", owners_);
  take_names("materials", materials_);
  take_names("bathroom", bathroom_);
  take_names("counted", counted_);
  std::size_t index = 0;
  for (const json& entry : document["elements"]) {
    const std::string at = "/elements/" + std::to_string(index++);
    if (!has_text(entry, "element") || !has_text(entry, "kind") || !entry.contains("terms") ||
        !entry.contains("findings") || !entry["findings"].is_object()) {
      faults.push_back({"missing-member", at, "An element needs element, kind, terms and findings.", ""});
      continue;
    }
    ElementRule rule;
    rule.element = entry["element"].get<std::string>();
    const auto kind_at = [&](const json& name, const std::string& place) {
      const ChargeKind kind = value_in(charge_kinds, name.get<std::string>());
      if (kind == ChargeKind::unknown)
        faults.push_back({"unknown-name", at + place, "This is not a kind of charge.", ""});
      return kind;
    };
    rule.kind = kind_at(entry["kind"], "/kind");
    pending_terms_.push_back(read_terms(entry["terms"], at + "/terms"));
    std::vector<std::vector<PendingTerm>> findings;
    rule.kind_when_cleaned = has_text(entry, "kindWhenCleaned") ? kind_at(entry["kindWhenCleaned"], "/kindWhenCleaned")
                             : rule.kind == ChargeKind::damage  ? ChargeKind::cleaning
                                                                : rule.kind;
    const std::string places = has_text(entry, "places") ? entry["places"].get<std::string>() : "named";
    if (places == "wide") rule.places = PlaceUse::wide;
    else if (places == "closets") rule.places = PlaceUse::closets;
    else if (places == "none") rule.places = PlaceUse::none;
    else if (places != "named")
      faults.push_back({"unknown-name", at + "/places", "Places are named, wide, closets or none.", ""});
    for (const auto& [finding, terms] : entry["findings"].items()) {
      const bool own_kind = entry.contains("kinds") && has_text(entry["kinds"], finding.c_str());
      rule.findings.push_back(
          {finding, own_kind ? kind_at(entry["kinds"][finding], "/kinds/" + finding) : ChargeKind::unknown, {}});
      findings.push_back(read_terms(terms, at + "/findings/" + finding));
    }
    pending_findings_.push_back(std::move(findings));
    elements_.push_back(std::move(rule));
  }
  return faults;
}

WeightedTerm RecognizerRules::compile(const PendingTerm& term, Faults& faults) const {
  WeightedTerm out;
  out.weight = term.weight;
  for (const std::string_view written : split(term.text, ' ')) {
    std::string piece(written);
    const bool absent = piece[0] == '-';
    if (absent) piece.erase(0, 1);
    std::vector<Lexicon::Id> any;
    for (const std::string_view one : split(piece, '|')) {
      std::string name(one);
      std::replace(name.begin(), name.end(), '_', ' ');
      const bool anywhere = name[0] == '!';
      if (anywhere) name.erase(0, 1);
      const auto feature = std::find(feature_names.begin(), feature_names.end(), name);
      const Lexicon::Id id =
          feature != feature_names.end()
              ? static_cast<Lexicon::Id>(WeightedTerm::first_feature + (feature - feature_names.begin()))
              : charges_.find(name);
      if (id == Lexicon::none)
        faults.push_back({"unknown-name", term.at, "No concept is called \"" + name + "\".", ""});
      else any.push_back(anywhere ? static_cast<Lexicon::Id>(id | WeightedTerm::anywhere) : id);
    }
    (absent ? out.none : out.all).push_back(std::move(any));
  }
  return out;
}

void RecognizerRules::fill(IdeaSet& set, const char* at, Faults& faults) const {
  set.in.assign(charges_.size(), false);
  for (const std::string& name : set.names) {
    const Lexicon::Id id = charges_.find(name);
    if (id == Lexicon::none) faults.push_back({"unknown-name", at, "No concept is called \"" + name + "\".", ""});
    else set.in[id] = true;
  }
}

namespace {
/// Where terms of an idea or feature are kept: ideas first, then features.
std::size_t slot_of(Lexicon::Id id, std::size_t ideas) {
  if (id >= WeightedTerm::first_feature) return ideas + (id - WeightedTerm::first_feature);
  return id & static_cast<Lexicon::Id>(~WeightedTerm::anywhere);
}
} // namespace

void RecognizerRules::index_terms() {
  terms_by_idea_.assign(charges_.size() + feature_names.size(), {});
  for (std::size_t e = 0; e < elements_.size(); ++e)
    for (std::size_t t = 0; t < elements_[e].terms.size(); ++t) {
      if (elements_[e].terms[t].all.empty()) continue;
      for (const Lexicon::Id id : elements_[e].terms[t].all[0])
        terms_by_idea_[slot_of(id, charges_.size())].push_back(
            {static_cast<std::uint16_t>(e), static_cast<std::uint16_t>(t)});
    }
}

const std::vector<RecognizerRules::TermPlace>& RecognizerRules::terms_of(Lexicon::Id id) const {
  return terms_by_idea_[slot_of(id, charges_.size())];
}

Faults RecognizerRules::tie() {
  Faults faults;
  for (std::size_t e = 0; e < elements_.size(); ++e) {
    for (const PendingTerm& term : pending_terms_[e]) elements_[e].terms.push_back(compile(term, faults));
    for (std::size_t f = 0; f < elements_[e].findings.size(); ++f)
      for (const PendingTerm& term : pending_findings_[e][f])
        elements_[e].findings[f].terms.push_back(compile(term, faults));
  }
  fill(owners_, "/owners", faults);
  fill(materials_, "/materials", faults);
  fill(bathroom_, "/bathroom", faults);
  fill(counted_, "/counted", faults);
  index_terms();
  charge_marks_.emplace(charges_);
  statement_marks_.emplace(statement_);
  return faults;
}

} // namespace wearline
