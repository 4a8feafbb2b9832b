#include "wear/rules.h"

#include "json/fields.h"
#include <algorithm>

namespace wearline {

namespace {

References read_sources(Fields& f, std::string_view name, std::string_view prefix, const ReferenceBook& book) {
  References out;
  for (const std::string& id : f.texts(name)) {
    const auto found = book.find(std::string(prefix) + id);
    if (found == book.end()) f.fault("unknown-source", name, "\"" + id + "\" is not a source of this file.");
    else out.push_back(&found->second);
  }
  return out;
}

std::optional<long> read_long(Fields& f, std::string_view name) {
  const auto value = f.whole(name);
  return value ? std::optional<long>(static_cast<long>(*value)) : std::nullopt;
}

std::optional<Months> read_months(Fields& f, std::string_view name) {
  const auto count = read_long(f, name);
  return count ? std::optional(Months(*count)) : std::nullopt;
}

void read_source_book(Fields& root, ReferenceBook& book, const std::string& prefix,
                      std::map<std::string, std::string>* regions) {
  const Json* sources = root.get("sources");
  if (!sources || !sources->is_object()) return;
  for (const auto& item : sources->items()) {
    Fields f(item.value(), root.pointer("sources") + '/' + pointer_segment(item.key()), root.faults());
    Reference source;
    source.id = prefix + item.key();
    const std::string title = f.text("title"), publisher = f.text("publisher");
    source.edition = f.text("edition");
    source.text = publisher.empty() ? title : publisher + ", " + title;
    if (!source.edition.empty()) source.text += " (" + source.edition + ")";
    source.read = f.required_text("read");
    source.url = f.text("url");
    source.region = f.text("region");
    if (item.value().contains("name")) source.name = f.localized("name");
    if (regions) (*regions)[item.key()] = source.region;
    f.ignore({"note", "kind", "year"});
    f.done();
    book.insert_or_assign(source.id, std::move(source));
  }
}

std::vector<Choice> read_choices(Fields& root, std::string_view name, std::string_view prefix,
                                 const ReferenceBook& book) {
  std::vector<Choice> out;
  for (Fields& f : root.objects(name)) {
    Choice choice;
    choice.id = f.required_text("id");
    choice.label = f.localized("label");
    choice.sources = read_sources(f, "source", prefix, book);
    f.ignore({"description", "note", "text"});
    f.done();
    out.push_back(std::move(choice));
  }
  return out;
}

const std::initializer_list<std::pair<std::string_view, Verdict>> verdict_words = {
    {"wear", Verdict::ordinary_wear},
    {"damage", Verdict::chargeable_damage},
    {"landlord-responsibility", Verdict::landlord_responsibility},
    {"pre-existing", Verdict::pre_existing},
    {"depends", Verdict::undetermined},
    {"undetermined", Verdict::undetermined}};

/// How a finding is usually put right; of some charges nothing is.
constexpr Named<ChargeRemedy> remedies[] = {{"replace", ChargeRemedy::replace},
                                            {"repair", ChargeRemedy::repair},
                                            {"clean", ChargeRemedy::clean},
                                            {"none", ChargeRemedy::none}};

Turn read_turn(Fields& f, const ReferenceBook& book) {
  Turn turn;
  if (auto test = f.object("if")) {
    turn.test.landlord_factors = test->texts("landlordFactor");
    turn.test.severities = test->texts("severity");
    turn.test.causes = test->words("cause", charge_causes);
    turn.test.at_move_in = test->texts("atMoveIn");
    turn.test.count_at_least = read_long(*test, "countAtLeast");
    turn.test.stay_at_least = read_months(*test, "stayMonthsAtLeast");
    turn.test.occupants_at_least = read_long(*test, "occupantsAtLeast");
    turn.test.past_life = test->yes_no("itemPastLife");
    test->done();
  }
  turn.verdict = f.word("verdict", verdict_words, Verdict::undetermined);
  turn.sources = read_sources(f, "source", "wear:", book);
  turn.text = f.localized("text");
  f.ignore({"note"});
  f.done();
  return turn;
}

Finding read_finding(Fields& f, const ReferenceBook& book) {
  Finding finding;
  finding.id = f.required_text("id");
  finding.label = f.localized("label");
  finding.description = f.localized("description");
  finding.ask = f.localized("ask");
  finding.usual = f.word<Usual>(
      "verdict", {{"wear", Usual::wear}, {"damage", Usual::damage}, {"depends", Usual::depends}}, Usual::depends);
  finding.lean =
      f.word<Lean>("leans", {{"wear", Lean::wear}, {"damage", Lean::damage}, {"even", Lean::even}}, Lean::even);
  finding.depreciates = f.flag("ages", false);
  finding.remedy = f.word("remedy", remedies, ChargeRemedy::unknown);
  finding.life_class = f.text("life");
  finding.sources = read_sources(f, "source", "wear:", book);
  for (Fields& c : f.objects("conflicts")) {
    Conflict conflict;
    const auto found = book.find("wear:" + c.required_text("source"));
    if (found == book.end()) c.fault("unknown-source", "source", "This is not a source of this file.");
    else conflict.source = &found->second;
    conflict.verdict = c.word("verdict", verdict_words, Verdict::undetermined);
    conflict.text = c.localized("text");
    c.done();
    if (conflict.source) finding.conflicts.push_back(std::move(conflict));
  }
  for (Fields& t : f.objects("turns")) finding.turns.push_back(read_turn(t, book));
  finding.turns_on_life =
      std::any_of(finding.turns.begin(), finding.turns.end(), [](const Turn& t) { return t.test.past_life.known(); });
  finding.turns_on_stay = std::any_of(finding.turns.begin(), finding.turns.end(),
                                      [](const Turn& t) { return t.test.stay_at_least.has_value(); });
  f.ignore({"note"});
  f.done();
  return finding;
}

Element read_element(Fields& f, const ReferenceBook& book) {
  Element element;
  element.id = f.required_text("id");
  element.group = f.text("group");
  element.kind = f.word("kind", charge_kinds, ChargeKind::unknown);
  element.label = f.localized("label");
  element.covers = f.localized("covers");
  element.about_condition = f.flag("aboutCondition", true);
  element.life_class = f.text("life");
  if (auto repairable_area = f.object("seam")) {
    element.repairable_area_unit = repairable_area->text("unit");
    element.repairable_area_text = repairable_area->localized("text");
    repairable_area->ignore({"source", "note"});
    repairable_area->done();
  }
  for (Fields& each : f.objects("findings")) element.findings.push_back(read_finding(each, book));
  f.ignore({"note"});
  f.done();
  return element;
}

Share read_share(Fields& f, std::string_view name, Share otherwise) {
  const Json* pair = f.get(name);
  if (!pair) return otherwise;
  const auto number = [&](std::size_t i) {
    const auto* n =
        pair->is_array() && pair->size() == 2 ? (*pair)[i].get_ptr<const Json::number_unsigned_t*>() : nullptr;
    return n && *n <= 1000 ? static_cast<std::int64_t>(*n) : -1;
  };
  const std::int64_t num = number(0), den = number(1);
  if (num >= 0 && den > 0 && num <= den) return {num, den};
  f.fault("bad-share", name, "A share is two whole numbers, such as [1, 3].");
  return otherwise;
}

Life read_life(Fields& f, std::string_view name, Life otherwise) {
  const auto months = f.whole(name);
  if (!months) return otherwise;
  const Months life(*months);
  if (life < Months(1) || life > longest_age) f.fault("out-of-range", name, "A life is from 1 to 2400 months.");
  return Life{life};
}

LifeDefault read_default(Fields& f, const ReferenceBook& book) {
  LifeDefault d;
  d.life_class = f.required_text("class");
  d.quality = f.text("quality");
  d.region = f.required_text("region");
  d.likely = read_life(f, "likelyMonths", {});
  d.low = read_life(f, "lowMonths", d.likely);
  d.high = read_life(f, "highMonths", d.likely);
  d.sources = read_sources(f, "sources", "life:", book);
  d.why = f.localized("why");
  f.ignore({"note"});
  f.done();
  return d;
}

DepreciationMethod read_method(Fields& f, const ReferenceBook& book) {
  DepreciationMethod m;
  m.id = f.required_text("id");
  m.label = f.localized("label");
  m.text = f.localized("text");
  m.life_class = f.text("class");
  m.region = f.text("region");
  m.use = f.word<DepreciationMethod::Use>("use",
                                          {{"default", DepreciationMethod::Use::by_default},
                                           {"region", DepreciationMethod::Use::in_region},
                                           {"named-only", DepreciationMethod::Use::when_named}},
                                          DepreciationMethod::Use::when_named);
  m.unit = f.word<DepreciationMethod::Unit>("unit",
                                            {{"day", DepreciationMethod::Unit::day},
                                             {"month", DepreciationMethod::Unit::month},
                                             {"year", DepreciationMethod::Unit::year}},
                                            DepreciationMethod::Unit::day);
  m.age_at_move_in = f.text("ageAt") == "move-in";
  if (f.get("bands")) m.kind = DepreciationMethod::Kind::stay_bands;
  else if (f.get("rows")) m.kind = DepreciationMethod::Kind::grace_abatement;
  else if (f.get("percent")) m.kind = DepreciationMethod::Kind::residual;
  for (Fields& b : f.objects("bands")) {
    DepreciationMethod::Band band;
    band.under = read_months(b, "underMonths");
    band.share = read_share(b, "share", Share::none());
    b.done();
    m.bands.push_back(band);
  }
  for (Fields& g : f.objects("rows")) {
    DepreciationMethod::Grace grace;
    grace.life_class = g.required_text("class");
    grace.quality = g.text("quality");
    grace.grace = read_months(g, "graceMonths").value_or(Months());
    grace.yearly_percent = read_long(g, "yearlyPercent").value_or(0);
    grace.floor_percent = read_long(g, "floorPercent").value_or(0);
    g.ignore({"note"});
    g.done();
    m.graces.push_back(std::move(grace));
  }
  m.residual_percent = read_long(f, "percent").value_or(0);
  m.sources = read_sources(f, "source", "life:", book);
  f.ignore({"note"});
  f.done();
  return m;
}

PartRule read_part_rule(Fields& f, const ReferenceBook& book) {
  PartRule rule;
  rule.component = f.word("nature", cost_components, CostComponent::other);
  const Json* depreciates = f.get("ages");
  if (depreciates && depreciates->is_boolean())
    rule.depreciates = *depreciates->get_ptr<const bool*>() ? PartRule::Depreciates::yes : PartRule::Depreciates::no;
  else
    rule.depreciates = f.word<PartRule::Depreciates>(
        "ages",
        {{"follows-remedy", PartRule::Depreciates::yes}, {"follows-whole", PartRule::Depreciates::with_the_whole}},
        PartRule::Depreciates::no);
  rule.by_area = f.text("share") == "area";
  rule.doubtful = f.flag("doubtful", false);
  rule.sources = read_sources(f, "source", "life:", book);
  rule.text = f.localized("text");
  f.ignore({"note"});
  f.done();
  return rule;
}

} // namespace

const Element* WearGuide::element(std::string_view id) const {
  for (const Element& e : elements)
    if (e.id == id) return &e;
  return nullptr;
}

namespace {

const std::initializer_list<std::pair<std::string_view, Ground>> ground_words = {
    {"leans-wear", Ground::leans_wear},
    {"leans-damage", Ground::leans_damage},
    {"even", Ground::even},
    {"unnamed", Ground::unnamed},
    {"debt-likely", Ground::debt_likely},
    {"debt-open", Ground::debt_open},
    {"debt-doubtful", Ground::debt_doubtful},
    {"landlord-factor", Ground::landlord_factor},
    {"shared-causes", Ground::shared_causes},
    {"worn-before", Ground::worn_before},
    {"not-shown", Ground::not_shown},
    {"not-on-record", Ground::not_on_record},
    {"no-baseline", Ground::no_baseline},
    {"cost-not-shown", Ground::cost_not_shown},
    {"cost-open", Ground::cost_open},
    {"work-not-done", Ground::work_not_done},
    {"small-mark", Ground::small_mark}};

/// How closely a rule's place names a finding: 3 both, 2 the element, 1 the finding, 0 not at all.
int closeness(std::string_view rule, std::string_view element, std::string_view finding) {
  const std::size_t slash = rule.find('/');
  const std::string_view e = rule.substr(0, slash), f = rule.substr(slash + 1);
  if ((e != "*" && e != element) || (f != "*" && f != finding)) return 0;
  return (e != "*") * 2 + (f != "*");
}

/// The documents of the rule that names the finding most closely.
std::vector<const Document*> documents_for(const WearGuide& guide, const Element& element, const Finding& finding) {
  const AskRule* best = nullptr;
  int closest = 0;
  for (const AskRule& rule : guide.ask_rules) {
    if (rule.remedy != ChargeRemedy::unknown && rule.remedy == finding.remedy && !best) best = &rule;
    for (const std::string& place : rule.places)
      if (const int close = closeness(place, element.id, finding.id); close > closest) {
        closest = close;
        best = &rule;
      }
  }
  std::vector<const Document*> out;
  if (best)
    for (const std::size_t at : best->documents) out.push_back(&guide.documents[at]);
  return out;
}

/// Marks the findings that weights.json and ask-for.json speak of.
void mark_findings(WearGuide& guide) {
  for (Element& element : guide.elements)
    for (Finding& finding : element.findings) {
      const std::string place = element.id + '/' + finding.id;
      const auto listed = [&](const std::vector<std::string>& places) {
        return std::any_of(places.begin(), places.end(), [&](const std::string& p) {
          return p == place || p == "*/" + finding.id || p == element.id + "/*";
        });
      };
      finding.ask_for = documents_for(guide, element, finding);
      finding.small_mark = listed(guide.small_marks);
      finding.gradual = listed(guide.gradual);
      finding.by_days = listed(guide.by_days);
      finding.by_hours = listed(guide.by_hours);
      finding.names_fault = !listed(guide.nothing_named) || listed(guide.something_named);
      auto lean = guide.leans_in_lease.find(place);
      if (lean == guide.leans_in_lease.end()) lean = guide.leans_in_lease.find(element.id + "/*");
      finding.lean_in_lease = lean == guide.leans_in_lease.end() ? std::nullopt : std::optional<Lean>(lean->second);
    }
}

} // namespace

Faults load_wear_guide(WearGuide& guide, ReferenceBook& sources, std::string_view json) {
  auto parsed = parse_json(json);
  if (auto* fault = std::get_if<Fault>(&parsed)) return {std::move(*fault)};
  Faults faults;
  Fields root(std::get<Json>(parsed), "", faults);
  read_source_book(root, sources, "wear:", nullptr);
  guide.groups = read_choices(root, "groups", "wear:", sources);
  guide.landlord_factors = read_choices(root, "landlordFactors", "wear:", sources);
  guide.at_move_in = read_choices(root, "atMoveIn", "wear:", sources);
  guide.causes = read_choices(root, "causes", "wear:", sources);
  for (const Choice& cause : guide.causes)
    if (value_in(charge_causes, cause.id) == ChargeCause::unknown)
      root.fault("unknown-name", "causes", "\"" + cause.id + "\" is not a cause that a case can name.");
  guide.elements.clear();
  for (Fields& e : root.objects("elements")) guide.elements.push_back(read_element(e, sources));
  if (const Json* kinds = root.get("elementOfKind"); kinds && kinds->is_object())
    for (const auto& [name, id] : kinds->items()) {
      const ChargeKind kind = value_in(charge_kinds, name);
      if (kind == ChargeKind::unknown)
        faults.push_back({"unknown-name", "/elementOfKind/" + pointer_segment(name),
                          "\"" + name + "\" is not a kind of charge.", ""});
      else if (id.is_string()) guide.element_of_kind[kind] = id.get<std::string>();
    }
  root.ignore({"about"});
  root.done();
  mark_findings(guide);
  return faults;
}

Faults load_weights(WearGuide& guide, ReferenceBook& sources, std::string_view json) {
  auto parsed = parse_json(json);
  if (auto* fault = std::get_if<Fault>(&parsed)) return {std::move(*fault)};
  Faults faults;
  Fields root(std::get<Json>(parsed), "", faults);
  read_source_book(root, sources, "weight:", nullptr);
  std::array<bool, ground_count> given{};
  for (Fields& f : root.objects("weights")) {
    const auto ground = static_cast<std::size_t>(f.word("id", ground_words, Ground::even));
    Weight& weight = guide.weights.of[ground];
    weight.least = read_share(f, "least", Share::none());
    weight.likely = read_share(f, "likely", Share::none());
    weight.most = read_share(f, "most", Share::none());
    weight.documents = f.texts("papers");
    weight.not_for = f.words("notFor", charge_kinds);
    weight.sources = read_sources(f, "source", "weight:", sources);
    if (given[ground]) f.fault("duplicate-id", "id", "This weight stands twice.");
    if (weight.likely < weight.least || weight.most < weight.likely)
      f.fault("out-of-order", "likely", "The least comes first, then the likely, then the most.");
    given[ground] = true;
    f.done();
  }
  for (const auto& [name, ground] : ground_words)
    if (!given[static_cast<std::size_t>(ground)])
      root.fault("missing-member", "weights", "The weight \"" + std::string(name) + "\" is missing.");
  guide.small_marks = root.texts("smallMarks");
  guide.gradual = root.texts("gradual");
  guide.nothing_named = root.texts("nothingNamed");
  guide.something_named = root.texts("somethingNamed");
  guide.by_days = root.texts("byDays");
  guide.by_hours = root.texts("byHours");
  guide.leans_in_lease.clear();
  for (Fields& f : root.objects("inLease")) {
    const Lean lean =
        f.word<Lean>("leans", {{"wear", Lean::wear}, {"damage", Lean::damage}, {"even", Lean::even}}, Lean::even);
    for (const std::string& place : f.texts("findings")) guide.leans_in_lease[place] = lean;
    f.done();
  }
  root.ignore({"about"});
  root.done();
  mark_findings(guide);
  return faults;
}

Faults load_ask_for(WearGuide& guide, std::string_view json) {
  auto parsed = parse_json(json);
  if (auto* fault = std::get_if<Fault>(&parsed)) return {std::move(*fault)};
  Faults faults;
  Fields root(std::get<Json>(parsed), "", faults);
  guide.documents.clear();
  guide.ask_rules.clear();
  for (Fields& f : root.objects("papers")) {
    guide.documents.push_back({f.required_text("id"), f.localized("text")});
    f.done();
  }
  for (const char* list : {"findings", "usual"})
    for (Fields& f : root.objects(list)) {
      AskRule rule;
      rule.places = f.texts("at");
      rule.remedy = f.word("remedy", remedies, ChargeRemedy::unknown);
      for (const std::string& id : f.texts("ask")) {
        const auto found =
            std::find_if(guide.documents.begin(), guide.documents.end(), [&](const Document& p) { return p.id == id; });
        if (found == guide.documents.end())
          f.fault("unknown-name", "ask", "\"" + id + "\" is not a paper of this file.");
        else rule.documents.push_back(static_cast<std::size_t>(found - guide.documents.begin()));
      }
      f.done();
      guide.ask_rules.push_back(std::move(rule));
    }
  root.ignore({"about"});
  root.done();
  mark_findings(guide);
  return faults;
}

Faults load_lives(LifeTables& tables, ReferenceBook& sources, std::string_view json) {
  auto parsed = parse_json(json);
  if (auto* fault = std::get_if<Fault>(&parsed)) return {std::move(*fault)};
  Faults faults;
  Fields root(std::get<Json>(parsed), "", faults);
  std::map<std::string, std::string> regions;
  read_source_book(root, sources, "life:", &regions);
  tables = {};
  for (Fields& f : root.objects("rows")) {
    LifeRow row;
    row.life_class = f.required_text("class");
    row.quality = f.text("quality");
    row.low = read_life(f, "months", {});
    row.high = read_life(f, "monthsHigh", row.low);
    row.note = f.text("note");
    const std::string source = f.required_text("source");
    const auto found = sources.find("life:" + source);
    if (found == sources.end()) f.fault("unknown-source", "source", "\"" + source + "\" is not a source of this file.");
    else row.source = &found->second;
    row.region = regions[source];
    f.done();
    if (row.source) tables.rows.push_back(std::move(row));
  }
  for (Fields& f : root.objects("defaults")) tables.defaults.push_back(read_default(f, sources));
  for (Fields& f : root.objects("qualityDefaults")) tables.defaults.push_back(read_default(f, sources));
  for (Fields& f : root.objects("methods")) tables.methods.push_back(read_method(f, sources));
  for (Fields& f : root.objects("parts")) tables.parts.push_back(read_part_rule(f, sources));
  for (Fields& f : root.objects("conditions")) {
    ConditionRule rule;
    rule.at_move_in = f.required_text("atMoveIn");
    rule.least = read_share(f, "least", Share::none());
    rule.likely = read_share(f, "likely", Share::whole());
    rule.most = read_share(f, "most", Share::whole());
    rule.sources = read_sources(f, "source", "life:", sources);
    f.ignore({"text", "note"});
    f.done();
    tables.conditions.push_back(std::move(rule));
  }
  for (Fields& f : root.objects("labourPolicy")) {
    LaborPolicy policy;
    policy.region = f.required_text("region");
    policy.depreciates = f.flag("installationLabourAges", true);
    policy.sources = read_sources(f, "source", "life:", sources);
    policy.settled = std::any_of(policy.sources.begin(), policy.sources.end(),
                                 [](const Reference* r) { return r->read != "practice"; });
    policy.text = f.localized("text");
    f.ignore({"note"});
    f.done();
    tables.labor_policies.push_back(std::move(policy));
  }
  for (Fields& f : root.objects("labourRates")) {
    LaborRate rate;
    rate.region = f.required_text("region");
    rate.cleaning = f.word<bool>("work", {{"cleaning", true}, {"repair", false}}, false);
    rate.most = f.money("most").value_or(Money());
    rate.sources = read_sources(f, "source", "life:", sources);
    f.ignore({"note"});
    f.done();
    tables.labor_rates.push_back(std::move(rate));
  }
  root.ignore({"about", "classes"});
  root.done();
  return faults;
}

} // namespace wearline
