#include "law/registry.h"

#include "law/case_members.h"

#include "json/fields.h"
#include <algorithm>
#include <iterator>

namespace wearline {

namespace {

/// The document's fault, or what `read` finds in it.
template <class Read> Faults read_document(std::string_view text, Read read) {
  auto parsed = parse_json(text);
  if (auto* fault = std::get_if<Fault>(&parsed)) return {std::move(*fault)};
  Faults faults;
  Fields document(std::get<Json>(parsed), "", faults);
  document.ignore({"about"});
  read(document);
  document.done();
  return faults;
}

struct DerivedName {
  std::string_view name;
  DerivedFact fact;
};
constexpr DerivedName derived_names[] = {
    {"deductions-made", DerivedFact::deductions_made},
    {"damage-claimed", DerivedFact::damage_claimed},
    {"only-rent-claimed", DerivedFact::only_rent_claimed},
    {"carpet-cleaning-claimed", DerivedFact::carpet_cleaning_claimed},
    {"repair-and-cleaning-total", DerivedFact::repair_and_cleaning_total},
    {"claimed-total", DerivedFact::claimed_total},
    {"deposit-total", DerivedFact::deposit_total},
    {"claims-over-deposit", DerivedFact::claims_over_deposit},
    {"balance-due", DerivedFact::balance_due},
    {"refund-short", DerivedFact::refund_short},
    {"interest-paid", DerivedFact::interest_paid},
    {"statement-came", DerivedFact::statement_came},
    {"refund-came", DerivedFact::refund_came},
    {"address-given", DerivedFact::address_given},
    {"address-given-by-end", DerivedFact::address_given_by_end},
    {"stay-months", DerivedFact::stay_months},
    {"pet-deposit-held", DerivedFact::pet_deposit_held},
};

std::optional<DerivedFact> derived_fact(std::string_view name) {
  for (const DerivedName& known : derived_names)
    if (known.name == name) return known.fact;
  return std::nullopt;
}

void stands_twice(const Fields& f) { f.fault("duplicate-id", "id", "Two entries have this id."); }

/// Finds the events and facts that deadlines name, once both files are loaded.
Faults link_deadlines(Registry& registry) {
  Faults faults;
  if (registry.events.empty()) return faults;
  const auto event = [&](const std::string& name, EventId& id) {
    if (name.empty()) return;
    id = registry.event(name);
    if (id == EventId::none)
      faults.push_back({"unknown-event", "/duties", "\"" + name + "\" is not an event of facts.json.", ""});
  };
  for (DeadlineInfo& deadline : registry.deadlines) {
    event(deadline.names.posted, deadline.posted);
    event(deadline.names.arrived, deadline.arrived);
    event(deadline.names.or_posted, deadline.or_posted);
    event(deadline.names.or_arrived, deadline.or_arrived);
    if (deadline.names.fact.empty()) continue;
    deadline.fact = registry.fact(deadline.names.fact);
    if (deadline.fact == FactId::none)
      faults.push_back({"unknown-fact", "/duties", "\"" + deadline.names.fact + "\" is not a fact of facts.json.", ""});
  }
  return faults;
}

void append(Faults& faults, Faults more) {
  faults.insert(faults.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

/// Takes the texts of a file that is given again; the positions of its names must not have moved, as rules refer to
/// them.
template <class Info>
Faults take_texts(std::vector<Info>& held, const std::vector<Info>& again, std::string_view at, Localized Info::*text) {
  const bool same = std::equal(held.begin(), held.end(), again.begin(), again.end(),
                               [](const Info& a, const Info& b) { return a.id == b.id; });
  if (!same) return {{"other-names", '/' + std::string(at), "This file was loaded before with other names.", ""}};
  for (std::size_t i = 0; i < held.size(); ++i) held[i].*text = again[i].*text;
  return {};
}

/// Reads a file that is given again: its faults, or else those of `take`.
template <class Load, class Take> Faults load_again(std::string_view json, Load load, Take take) {
  Registry again;
  Faults faults = load(again, json);
  return faults.empty() ? take(again) : faults;
}

} // namespace

FactInfo read_fact(Fields& f) {
  FactInfo info;
  info.id = f.required_text("id");
  info.type = f.word<FactType>(
      "type",
      {{"yes-no", FactType::yes_no}, {"count", FactType::count}, {"money", FactType::money}, {"text", FactType::text}},
      FactType::yes_no);
  info.usual = f.yes_no("usual");
  info.choices = f.texts("choices");
  info.question = f.required_localized("question");
  return info;
}

EventInfo read_event(Fields& f) {
  EventInfo info;
  info.id = f.required_text("id");
  info.usual = f.yes_no("usual");
  info.question = f.required_localized("question");
  info.day = f.localized("day");
  return info;
}

Faults load_facts(Registry& registry, std::string_view json) {
  if (!registry.facts.empty())
    return load_again(json, load_facts, [&](const Registry& again) {
      Faults faults = take_texts(registry.facts, again.facts, "facts", &FactInfo::question);
      append(faults, take_texts(registry.events, again.events, "events", &EventInfo::question));
      return faults;
    });
  Faults faults = read_document(json, [&](Fields& document) {
    for (Fields& f : document.objects("facts")) {
      FactInfo info = read_fact(f);
      info.at = f.text("at");
      if (f.flag("derived", false)) {
        info.derived = derived_fact(info.id);
        if (!info.derived) f.fault("unknown-fact", "id", "The engine cannot work out a derived fact of this name.");
      } else if (info.at.rfind("/circumstances/", 0) != 0) {
        info.read = fact_reader(info.at);
        if (!info.read) f.fault("unknown-place", "at", "A case holds no fact at this place.");
      }
      f.done();
      if (!registry.fact_index.add(info.id, registry.facts.size())) stands_twice(f);
      registry.facts.push_back(std::move(info));
    }
    std::vector<std::pair<std::string, std::string>> models; // usualAs, notBefore
    for (Fields& f : document.objects("events")) {
      EventInfo info = read_event(f);
      info.at = f.text("at");
      models.emplace_back(f.text("usualAs"), f.text("notBefore"));
      if (!info.at.empty()) {
        info.read = event_reader(info.at);
        if (!info.read) f.fault("unknown-place", "at", "A case holds no date at this place.");
      }
      f.done();
      if (!registry.event_index.add(info.id, registry.events.size())) stands_twice(f);
      registry.events.push_back(std::move(info));
    }
    const auto model = [&](const std::string& name, EventId& id) {
      if (name.empty()) return;
      id = registry.event(name);
      if (id == EventId::none) document.fault("unknown-event", "events", "\"" + name + "\" is not an event.");
    };
    for (std::size_t i = 0; i < models.size(); ++i) {
      model(models[i].first, registry.events[i].usual_as);
      model(models[i].second, registry.events[i].not_before);
    }
  });
  append(faults, link_deadlines(registry));
  return faults;
}

Faults load_deadlines(Registry& registry, std::string_view json) {
  if (!registry.deadlines.empty())
    return load_again(json, load_deadlines, [&](const Registry& again) {
      return take_texts(registry.deadlines, again.deadlines, "duties", &DeadlineInfo::label);
    });
  Faults faults = read_document(json, [&](Fields& document) {
    for (Fields& f : document.objects("duties")) {
      DeadlineInfo info;
      info.id = f.required_text("id");
      info.label = f.required_localized("label");
      info.names = {f.text("posted"), f.text("arrived"), f.text("orPosted"), f.text("orArrived"), f.text("fact")};
      f.done();
      if (!registry.deadline_index.add(info.id, registry.deadlines.size())) stands_twice(f);
      registry.deadlines.push_back(std::move(info));
    }
  });
  append(faults, link_deadlines(registry));
  return faults;
}

Faults load_documents(Registry& registry, std::string_view json) {
  if (!registry.documents.empty())
    return load_again(json, load_documents, [&](const Registry& again) {
      return take_texts(registry.documents, again.documents, "papers", &DocumentInfo::label);
    });
  return read_document(json, [&](Fields& document) {
    for (Fields& f : document.objects("papers")) {
      DocumentInfo info;
      info.id = f.required_text("id");
      info.label = f.required_localized("label");
      info.aliases = f.texts("aliases");
      info.seen_in_lines = f.flag("seenInLines", false);
      f.done();
      if (!registry.document_index.add(info.id, registry.documents.size())) stands_twice(f);
      registry.documents.push_back(std::move(info));
    }
  });
}

} // namespace wearline
