#include "law/pack.h"

#include "json/fields.h"
#include <algorithm>
#include <date/date.h>
#include <variant>

namespace wearline {

namespace {

/// Reads one pack, with the names that its rules may use.
class Loader {
public:
  Loader(const Registry& registry, Pack& pack) : registry_(&registry), pack_(&pack) {}

  void read(Fields& f);
  /// Rules laid over a pack that was read before.
  void read_layer(Fields& f);

private:
  FactId fact(Fields& f, std::string_view member);
  EventId event(Fields& f, std::string_view member);
  std::vector<EventId> events(Fields& f, std::string_view member);
  std::vector<DocumentId> documents(Fields& f, std::string_view member);
  const FactInfo& info(FactId id) const;

  void sources(Fields& f);
  void names(Fields& f);
  void rule(Fields& f, Rule& r);
  Condition condition(Fields& f);
  Condition fact_condition(Fields& f);
  Condition event_condition(Fields& f);
  Condition list(Fields& f, std::string_view member, Condition::Op op);
  std::optional<Condition> condition_member(Fields& f, std::string_view member);
  void bounds(Fields& f, Condition& c, FactType type);
  LineMatcher matcher(Fields f);

  void counting(Fields& f);
  void period(Fields& f, Deadline& deadline);
  void deadline(Fields& f);
  void join_families();
  void choose_counting();
  void document(Fields& f);
  void allow(Fields& f);
  void bar(Fields& f);
  void cap(Fields& f);
  template <class Kinds> Kinds kinds_of_money(Fields& f);
  void not_deposit(Fields& f);
  void also_deposit(Fields& f);
  void interest(Fields& f);
  void forfeit(Fields& f);
  void remedy(Fields& f);
  void remarks(Fields& f, std::string_view member, std::vector<Remark>& out);
  void turned_off(Fields& f, const Remark& scope);
  void turn_off(Fields& f);
  void resolve_outcomes(Fields& f);
  void parts(Fields& f);
  void know_names();
  void place(Fields& f);
  void lay(Rule& rule);
  void step_aside(const std::string& id, const Condition& while_this, const std::string& at, Fields& f);
  void finish(Fields& f);

  /// A rule that a scope rule puts out of use, by its id, until all are read.
  struct TurnedOff {
    std::string id, at;
    Condition when;
  };

  const Registry* registry_;
  Pack* pack_;
  std::vector<TurnedOff> off_;
  NameIndex sources_, facts_, events_, deadlines_, documents_, rules_;
  /// Deadlines and document rules named in conditions before they are all read: the condition's place, its kind, its
  /// name.
  struct Outcome {
    std::string at, name;
    bool deadline;
    std::uint16_t number;
  };
  std::vector<Outcome> outcomes_;
  // Of a layer alone.
  std::string layer_;
  Condition inside_; ///< the home is in the layer's place
  struct Replacement {
    std::string at, id; ///< of the rule that steps aside
    Condition while_this;
  };
  std::vector<Replacement> replacements_;
};

DaySet day_set(Fields& f, std::string_view member) {
  DaySet set;
  for (const std::string& name : f.texts(member)) {
    if (name == "saturday") set.saturday = true;
    else if (name == "sunday") set.sunday = true;
    else if (name == "legal-holiday") set.legal_holiday = true;
    else f.fault("unknown-name", member, "\"" + name + "\" must be saturday, sunday or legal-holiday.");
  }
  return set;
}

FactId Loader::fact(Fields& f, std::string_view member) {
  const std::string name = f.text(member);
  if (name.empty()) return FactId::none;
  FactId id = registry_->fact(name);
  if (id == FactId::none)
    if (const auto own = facts_.find(name); own != 0xffff) id = FactId(registry_->facts.size() + own);
  if (id == FactId::none)
    f.fault("unknown-fact", member, "\"" + name + "\" is not a fact of facts.json or of this pack.");
  return id;
}

const FactInfo& Loader::info(FactId id) const {
  const std::size_t shared = registry_->facts.size();
  return index(id) < shared ? registry_->facts[index(id)] : pack_->facts[index(id) - shared];
}

EventId Loader::event(Fields& f, std::string_view member) {
  const std::string name = f.text(member);
  if (name.empty()) return EventId::none;
  EventId id = registry_->event(name);
  if (id == EventId::none)
    if (const auto own = events_.find(name); own != 0xffff) id = EventId(registry_->events.size() + own);
  if (id == EventId::none)
    f.fault("unknown-event", member, "\"" + name + "\" is not an event of facts.json or of this pack.");
  return id;
}

std::vector<EventId> Loader::events(Fields& f, std::string_view member) {
  std::vector<EventId> out;
  for (const std::string& name : f.texts(member)) {
    EventId id = registry_->event(name);
    if (id == EventId::none)
      if (const auto own = events_.find(name); own != 0xffff) id = EventId(registry_->events.size() + own);
    if (id == EventId::none)
      f.fault("unknown-event", member, "\"" + name + "\" is not an event of facts.json or of this pack.");
    else out.push_back(id);
  }
  return out;
}

std::vector<DocumentId> Loader::documents(Fields& f, std::string_view member) {
  std::vector<DocumentId> out;
  for (const std::string& name : f.texts(member)) {
    const DocumentId id = registry_->document(name);
    if (id == DocumentId::none) f.fault("unknown-paper", member, "\"" + name + "\" is not a paper of papers.json.");
    else out.push_back(id);
  }
  return out;
}

void Loader::sources(Fields& f) {
  const Json* json = f.get("sources");
  if (!json || !json->is_object()) return f.fault("missing-member", "sources", "A pack needs its sources.");
  for (const auto& item : json->items()) {
    Fields s(item.value(), f.pointer("sources") + '/' + pointer_segment(item.key()), f.faults());
    Reference source;
    source.id = "law:" + (layer_.empty() ? "" : layer_ + '.') + item.key();
    source.text = s.required_text("cite");
    source.edition = s.text("edition");
    source.bill = s.yes_no("bill") == std::optional(true);
    source.url = s.text("url");
    source.read = s.required_text("read");
    s.ignore({"note"});
    s.done();
    sources_.add(source.id.substr(4), pack_->sources.size());
    pack_->sources.push_back(std::move(source));
  }
}

void Loader::names(Fields& f) {
  for (Fields& item : f.objects("facts")) {
    FactInfo info = read_fact(item);
    item.done();
    if (!layer_.empty() && facts_.find(info.id) != 0xffff) continue; // another layer asks the same
    if (registry_->fact(info.id) != FactId::none || !facts_.add(info.id, pack_->facts.size()))
      item.fault("duplicate-id", "id", "This fact stands already in facts.json or in this pack.");
    pack_->facts.push_back(std::move(info));
  }
  for (Fields& item : f.objects("events")) {
    EventInfo info = read_event(item);
    info.not_before = event(item, "notBefore");
    info.usual_as = event(item, "usualAs");
    item.done();
    if (!layer_.empty() && events_.find(info.id) != 0xffff) continue;
    if (registry_->event(info.id) != EventId::none || !events_.add(info.id, pack_->events.size()))
      item.fault("duplicate-id", "id", "This event stands already in facts.json or in this pack.");
    pack_->events.push_back(std::move(info));
  }
}

void Loader::rule(Fields& f, Rule& r) {
  r.id = f.required_text("id");
  if (!rules_.add(r.id, 0)) f.fault("duplicate-id", "id", "Two rules have this id.");
  for (const std::string& key : f.texts("source")) {
    auto found = layer_.empty() ? std::uint16_t{0xffff} : sources_.find(layer_ + '.' + key);
    if (found == 0xffff) found = sources_.find(key);
    if (found == 0xffff) f.fault("unknown-source", "source", "\"" + key + "\" is not a source of this pack.");
    else r.sources.push_back(found);
  }
  if (auto when = condition_member(f, "when")) r.when = std::move(*when);
  r.when_text = f.text("whenText");
  r.from = f.day("from");
  r.to = f.day("to");
  if (f.get("by") && f.text("by") != "today") r.by = event(f, "by");
  r.text = f.text("text");
  r.note = f.text("note");
  r.check = f.text("check");
  if (layer_.empty()) return;
  const std::vector<std::string> replaced = f.texts("replaces");
  lay(r);
  Condition force;
  if (r.from || r.to) {
    force.op = Condition::Op::event_on;
    force.which = static_cast<std::uint16_t>(r.by);
    force.span = {r.from.value_or(min_day), r.to.value_or(max_day)};
    if (r.by == EventId::none && !replaced.empty())
      f.fault("missing-member", "by", "A rule with dates that replaces another needs the event whose date counts.");
  }
  Condition while_this;
  while_this.parts.push_back(r.when);
  if (r.from || r.to) while_this.parts.push_back(std::move(force));
  for (const std::string& id : replaced) replacements_.push_back({f.pointer("replaces"), id, while_this});
}

/// A rule of a layer holds in the layer's place only.
void Loader::lay(Rule& r) {
  if (inside_.always()) return;
  Condition both;
  both.parts.push_back(inside_);
  if (!r.when.always()) both.parts.push_back(std::move(r.when));
  r.when = std::move(both);
}

std::optional<Condition> Loader::condition_member(Fields& f, std::string_view member) {
  auto object = f.object(member);
  if (!object) return std::nullopt;
  return condition(*object);
}

Condition Loader::condition(Fields& f) {
  Condition c;
  if (f.get("fact")) c = fact_condition(f);
  else if (f.get("event")) c = event_condition(f);
  else if (f.get("all")) c = list(f, "all", Condition::Op::all);
  else if (f.get("any")) c = list(f, "any", Condition::Op::any);
  else if (auto part = f.object("not")) {
    c.op = Condition::Op::none_of;
    c.parts.push_back(condition(*part));
  } else if (f.get("duty")) {
    c.op = Condition::Op::deadline_is;
    c.state = f.word<DeadlineState>(
        "is", {{"met", DeadlineState::met}, {"missed", DeadlineState::missed}, {"open", DeadlineState::open}},
        DeadlineState::missed);
    c.which = static_cast<std::uint16_t>(outcomes_.size());
    outcomes_.push_back({f.pointer("duty"), f.text("duty"), true, 0xffff});
  } else if (f.get("defect")) {
    c.op = Condition::Op::defect;
    c.which = static_cast<std::uint16_t>(outcomes_.size());
    outcomes_.push_back({f.pointer("defect"), f.text("defect"), false, 0xffff});
  } else {
    f.fault("missing-member", "", "A condition speaks of a fact, an event, a duty or a defect, or is all, any or not.");
  }
  f.done();
  return c;
}

Condition Loader::list(Fields& f, std::string_view member, Condition::Op op) {
  Condition c;
  c.op = op;
  for (Fields& part : f.objects(member)) c.parts.push_back(condition(part));
  return c;
}

Condition Loader::fact_condition(Fields& f) {
  Condition c;
  c.op = Condition::Op::yes_no;
  const FactId id = fact(f, "fact");
  if (id == FactId::none) {
    f.ignore({"is", "in", "atLeast", "atMost", "over", "under"});
    return c;
  }
  c.which = static_cast<std::uint16_t>(id);
  const FactType type = info(id).type;
  if (type == FactType::yes_no) {
    c.wanted = f.flag("is", true);
  } else if (type == FactType::text) {
    c.op = Condition::Op::text_in;
    c.names = f.texts("in");
    if (const std::string name = f.text("is"); !name.empty()) c.names.push_back(name);
    if (c.names.empty()) f.fault("missing-member", "is", "A text fact is compared with a text.");
    for (const std::string& name : c.names)
      if (const auto& choices = info(id).choices;
          !choices.empty() && std::find(choices.begin(), choices.end(), name) == choices.end())
        f.fault("unknown-name", "is", "\"" + name + "\" is not one of the fact's choices.");
  } else {
    c.op = Condition::Op::number_in;
    bounds(f, c, type);
  }
  return c;
}

/// Limits of a count or, in cents, of a sum.
void Loader::bounds(Fields& f, Condition& c, FactType type) {
  const auto bound = [&](std::string_view member) -> std::optional<std::int64_t> {
    if (!f.get(member)) return std::nullopt;
    if (type == FactType::count) return f.whole(member);
    const auto sum = f.money(member);
    return sum ? std::optional(sum->in_cents()) : std::nullopt;
  };
  if (const auto v = bound("atLeast")) c.low = *v;
  if (const auto v = bound("over")) c.low = std::max(c.low, *v + 1);
  if (const auto v = bound("atMost")) c.high = *v;
  if (const auto v = bound("under")) c.high = std::min(c.high, *v - 1);
  if (c.low > c.high) f.fault("never-holds", "fact", "No number can lie within these limits.");
}

Condition Loader::event_condition(Fields& f) {
  Condition on, happened;
  on.op = Condition::Op::event_on;
  happened.op = Condition::Op::event_happened;
  on.which = happened.which = static_cast<std::uint16_t>(event(f, "event"));
  const auto from = f.day("from"), to = f.day("to");
  const auto known = f.yes_no("known");
  if (from) on.span.earliest = *from;
  if (to) on.span.latest = *to;
  happened.wanted = known.yes_or(happened.wanted);
  if (!from && !to) {
    if (!known.known()) f.fault("missing-member", "known", "An event needs known, from or to.");
    return happened;
  }
  if (!known.known()) return on;
  Condition both;
  both.parts.push_back(std::move(happened));
  both.parts.push_back(std::move(on));
  return both;
}

LineMatcher Loader::matcher(Fields f) {
  LineMatcher m;
  m.kind = f.words("kind", charge_kinds);
  m.element = f.texts("element");
  m.finding = f.texts("finding");
  m.at_move_in = f.texts("atMoveIn");
  m.verdict = f.texts("verdict");
  m.remedy = f.words("remedy", charge_remedies);
  if (const auto years = f.decimal("itemOlderThanYears")) m.older_than = Months(years->num * 12 / years->den);
  m.proof_missing = documents(f, "proofMissing");
  f.done();
  return m;
}

void Loader::counting(Fields& f) {
  CountingRule r;
  rule(f, r);
  r.exclude_first = f.flag("excludeFirst", true);
  r.roll = day_set(f, "roll");
  r.business_skip = day_set(f, "businessDaySkips");
  r.holidays = f.text("holidays");
  r.deadlines = f.texts("duties");
  if (auto shorter = f.object("shortPeriods")) {
    r.short_under = shorter->whole("under").value_or(0);
    r.short_skip = day_set(*shorter, "skip");
    shorter->done();
  }
  f.done();
  pack_->counting.push_back(std::move(r));
}

void Loader::period(Fields& f, Deadline& deadline) {
  Period l;
  if (const auto count = f.whole("count")) {
    if (*count > 36500) f.fault("out-of-range", "count", "No period is longer than a hundred years.");
    else l.count = static_cast<int>(*count);
  }
  l.unit = f.word<Unit>("unit",
                        {{"calendar-day", Unit::calendar_day},
                         {"business-day", Unit::business_day},
                         {"week", Unit::week},
                         {"month", Unit::month},
                         {"year", Unit::year},
                         {"hour", Unit::hour}},
                        Unit::calendar_day);
  l.after = events(f, "after");
  if (l.after.empty()) f.fault("missing-member", "after", "A period runs from at least one event.");
  l.governing =
      f.word<Governing>("take", {{"later", Governing::latest}, {"earlier", Governing::earliest}}, Governing::latest);
  l.before = f.word<bool>("direction", {{"after", false}, {"before", true}}, false);
  l.earliest = f.word<bool>("bound", {{"latest", false}, {"earliest", true}}, false);
  l.count_from = fact(f, "countFrom");
  f.done();
  deadline.periods.push_back(std::move(l));
}

void Loader::deadline(Fields& f) {
  Deadline d;
  rule(f, d);
  d.who = f.word<Who>("who", {{"landlord", Who::landlord}, {"tenant", Who::tenant}}, Who::landlord);
  d.name = registry_->deadline_index.find(f.required_text("duty"));
  if (d.name == 0xffff) f.fault("unknown-duty", "duty", "This is not a name of duties.json.");
  d.met = event(f, "met");
  for (Fields& item : f.objects("legs")) period(item, d);
  if (d.periods.empty()) f.fault("missing-member", "legs", "A duty needs at least one period.");
  d.governing =
      f.word<Governing>("take", {{"later", Governing::latest}, {"earlier", Governing::earliest}}, Governing::latest);
  // "direction" and "bound" may stand on the deadline where all its periods share them.
  const bool before = f.word<bool>("direction", {{"after", false}, {"before", true}}, false);
  const bool earliest = f.word<bool>("bound", {{"latest", false}, {"earliest", true}}, false);
  for (Period& l : d.periods) {
    l.before = l.before || before;
    l.earliest = l.earliest || earliest;
  }
  d.needs_all = f.flag("needsAll", false);
  d.met_by = f.word<MetBy>("metBy",
                           {{"posting", MetBy::posting},
                            {"delivery", MetBy::delivery},
                            {"receipt", MetBy::receipt},
                            {"unknown", MetBy::unknown}},
                           MetBy::unknown);
  d.if_missed = f.texts("ifMissed");
  d.if_missed_text = f.text("ifMissedText");
  d.tenant_loses = f.flag("tenantLoses", false);
  d.beside = f.texts("beside");
  f.done();
  if (!deadlines_.add(d.id, pack_->deadlines.size())) return;
  pack_->deadlines.push_back(std::move(d));
}

/// Deadlines of one name of one side stand in for one another, but for those that run beside each other and for those
/// of no common name.
void Loader::join_families() {
  const auto names = [](const std::vector<std::string>& ids, const std::string& id) {
    return std::find(ids.begin(), ids.end(), id) != ids.end();
  };
  const auto waits = [](const Deadline& d) { return d.periods.empty() ? false : d.periods.front().earliest; };
  const std::uint16_t nameless = registry_->deadline_index.find("other");
  std::vector<std::vector<const Deadline*>> families;
  for (Deadline& d : pack_->deadlines) {
    const auto joins = [&](const std::vector<const Deadline*>& family) {
      return std::all_of(family.begin(), family.end(), [&](const Deadline* o) {
        return o->name == d.name && d.name != nameless && o->who == d.who && waits(*o) == waits(d) &&
               !names(o->beside, d.id) && !names(d.beside, o->id);
      });
    };
    auto family = std::find_if(families.begin(), families.end(), joins);
    if (family == families.end()) family = families.insert(families.end(), std::vector<const Deadline*>());
    d.family = static_cast<std::uint16_t>(family - families.begin());
    family->push_back(&d);
  }
}

/// The counting rules of each deadline: those made for it, then those for all; conditions decide among them case by
/// case.
void Loader::choose_counting() {
  for (Deadline& d : pack_->deadlines) {
    for (const bool special : {true, false})
      for (std::size_t i = 0; i < pack_->counting.size(); ++i) {
        const CountingRule& rule = pack_->counting[i];
        const bool named = std::find(rule.deadlines.begin(), rule.deadlines.end(), d.id) != rule.deadlines.end();
        if (special ? named : rule.deadlines.empty()) d.counting.push_back(static_cast<std::uint16_t>(i));
      }
    // Among rules for all, those with a condition go before the one without.
    std::stable_partition(d.counting.begin(), d.counting.end(), [&](std::uint16_t i) {
      const CountingRule& rule = pack_->counting[i];
      return !rule.deadlines.empty() || !rule.when.always() || rule.from || rule.to;
    });
  }
}

void Loader::document(Fields& f) {
  DocumentRule r;
  rule(f, r);
  r.requires_all = documents(f, "requires");
  r.or_else = documents(f, "orElse");
  r.delivery_methods = f.texts("how");
  r.if_missing = f.texts("ifMissing");
  r.if_missing_text = f.text("ifMissingText");
  f.done();
  if (!documents_.add(r.id, pack_->documents.size())) return;
  pack_->documents.push_back(std::move(r));
}

void Loader::allow(Fields& f) {
  Allow r;
  rule(f, r);
  r.closed = f.flag("closed", false);
  r.grants = f.flag("grants", false);
  r.clause = f.flag("clause", false);
  for (Fields& item : f.objects("lines")) r.lines.push_back(matcher(item));
  f.done();
  pack_->allows.push_back(std::move(r));
}

constexpr std::pair<std::string_view, Base> base_names[] = {{"none", Base::none},
                                                            {"wrongfully-withheld", Base::wrongfully_withheld},
                                                            {"withheld", Base::withheld},
                                                            {"whole-deposit", Base::whole_deposit},
                                                            {"monthly-rent", Base::monthly_rent},
                                                            {"interest", Base::interest},
                                                            {"over-cap", Base::over_cap},
                                                            {"line-amount", Base::line_amount},
                                                            {"actual-cost", Base::actual_cost}};

/// `{ "amount": "20.00" }`, or a multiple under the name `times`.
Limit limit(Fields f, std::string_view times) {
  Limit l;
  l.amount = f.money("amount");
  if (const auto share = f.decimal(times)) l.times = *share;
  l.of = f.word<Base>("of", base_names, Base::none);
  l.at_least = f.money("atLeast");
  if (!l.amount && l.of == Base::none)
    f.fault("missing-member", "amount", "A limit is an amount or a multiple of something.");
  f.done();
  return l;
}

void Loader::bar(Fields& f) {
  Bar r;
  rule(f, r);
  if (auto line = f.object("line")) r.line = matcher(*line);
  else f.fault("missing-member", "line", "A bar says which lines it is about.");
  r.effect = f.word<Effect>("effect",
                            {{"bar", Effect::bar},
                             {"needs-proof", Effect::needs_proof},
                             {"damaged-portion-only", Effect::damaged_portion_only},
                             {"limit", Effect::limit},
                             {"caution", Effect::caution}},
                            Effect::caution);
  r.unless = condition_member(f, "unless");
  r.proof = documents(f, "proof");
  if (auto most = f.object("limit")) r.limit = limit(*most, "share");
  else if (r.effect == Effect::limit) f.fault("missing-member", "limit", "This bar needs its limit.");
  r.deposits = f.texts("deposits");
  f.done();
  pack_->bars.push_back(std::move(r));
}

void Loader::cap(Fields& f) {
  Cap r;
  rule(f, r);
  r.deposits = f.texts("deposits");
  r.months = f.decimal("months");
  r.weeks = f.decimal("weeks");
  r.amount = f.money("amount");
  r.at_least = f.money("atLeast");
  if (f.get("rent")) r.rent = fact(f, "rent");
  r.none = f.flag("none", false);
  if (r.months.has_value() + r.weeks.has_value() + r.amount.has_value() + r.none != 1)
    f.fault("missing-member", "months", "A cap is one of months, weeks, amount or none.");
  f.done();
  pack_->caps.push_back(std::move(r));
}

template <class Kinds> Kinds Loader::kinds_of_money(Fields& f) {
  Kinds r;
  rule(f, r);
  r.deposits = f.texts("deposits");
  if (r.deposits.empty()) f.fault("missing-member", "deposits", "This says which kinds of money are meant.");
  f.done();
  return r;
}
void Loader::not_deposit(Fields& f) { pack_->not_deposit.push_back(kinds_of_money<NotDeposit>(f)); }
void Loader::also_deposit(Fields& f) { pack_->also_deposit.push_back(kinds_of_money<AlsoDeposit>(f)); }

Rate rate(Fields f) {
  Rate r;
  r.fixed = f.decimal("fixed");
  if (auto years = f.object("years")) {
    const Json& json = *f.get("years");
    if (json.is_object())
      for (const auto& item : json.items()) {
        const auto year = parse_decimal(item.key());
        const auto value = years->decimal(item.key());
        if (!year || year->den != 1 || year->num < 1900 || year->num > 2198) {
          years->fault("bad-date", item.key(), "This is not a year.");
        } else if (value) {
          const int y = static_cast<int>(year->num);
          const Day begin = date::sys_days(date::year{y} / 1 / 1), end = date::sys_days(date::year{y + 1} / 1 / 1);
          if (!r.periods.empty() && r.periods.back().first == begin) r.periods.back().second = value;
          else r.periods.emplace_back(begin, value);
          r.periods.emplace_back(end, std::nullopt);
        }
      }
  }
  for (Fields& period : f.objects("periods")) {
    const auto from = period.day("from");
    if (!from || (!r.periods.empty() && *from <= r.periods.back().first))
      period.fault("bad-date", "from", "Periods begin on days that follow one another.");
    else r.periods.emplace_back(*from, period.decimal("rate"));
    period.ignore({"source"});
    period.done();
  }
  r.by = f.word<RateBy>("by",
                        {{"calendar-year", RateBy::day},
                         {"day", RateBy::day},
                         {"tenancy-start", RateBy::tenancy_start},
                         {"renewal", RateBy::renewal},
                         {"due-day", RateBy::due_day}},
                        RateBy::day);
  r.bank = f.flag("bank", false);
  r.at_least = f.decimal("atLeast");
  r.at_most = f.decimal("atMost");
  r.share = f.decimal("share");
  r.less = f.decimal("less");
  r.or_fixed = f.decimal("orFixed");
  if (!r.fixed && !f.get("years") && !f.get("periods") && !r.bank)
    f.fault("missing-member", "fixed", "A rate is fixed, by years or periods, or the bank's.");
  f.done();
  return r;
}

void Loader::interest(Fields& f) {
  InterestRule r;
  rule(f, r);
  r.owed = f.flag("owed", false);
  r.deposits = f.texts("deposits");
  if (auto object = f.object("rate")) r.rate = rate(*object);
  else if (r.owed) f.fault("missing-member", "rate", "Interest that is owed needs a rate.");
  r.method = f.word<Method>("method", {{"simple", Method::simple}, {"compound-yearly", Method::compound_yearly}},
                            Method::simple);
  r.counts = f.word<Counts>("counts",
                            {{"day", Counts::day},
                             {"whole-month", Counts::whole_month},
                             {"whole-year", Counts::whole_year},
                             {"calendar-month", Counts::calendar_month}},
                            Counts::day);
  const auto months = [&](std::string_view name) {
    return std::min(Months(f.whole(name).value_or(0)), Years(100).in_months());
  };
  r.minimum = months("minimumMonths");
  r.starts_after = months("startsAfterMonths");
  r.alongside = f.flag("alongside", false);
  r.starts = event(f, "starts");
  r.ends = event(f, "ends");
  if (auto over = f.object("onOver")) {
    r.over_months = over->decimal("months");
    r.over_amount = over->money("amount");
    over->done();
  }
  f.done();
  pack_->interest.push_back(std::move(r));
}

constexpr std::pair<std::string_view, Needs> needs_names[] = {{"none", Needs::none},
                                                              {"bad-faith", Needs::bad_faith},
                                                              {"wilful", Needs::willful},
                                                              {"after-demand", Needs::after_demand},
                                                              {"other", Needs::other}};

void Loader::forfeit(Fields& f) {
  Forfeit r;
  rule(f, r);
  r.loses = f.word<Loses>("loses",
                          {{"all-deductions", Loses::all_deductions},
                           {"damage-deductions", Loses::damage_deductions},
                           {"papered-lines-only", Loses::documented_lines_only},
                           {"whole-deposit-claim", Loses::whole_deposit_claim}},
                          Loses::all_deductions);
  r.needs = f.word<Needs>("needs", needs_names, Needs::none);
  f.done();
  pack_->forfeits.push_back(std::move(r));
}

void Loader::remedy(Fields& f) {
  Remedy r;
  rule(f, r);
  r.multiplier = f.decimal("multiplier");
  r.base = f.word<Base>("base", base_names, Base::none);
  r.charges_off = f.word<ChargesOff>(
      "chargesOff", {{"before", ChargesOff::before}, {"after", ChargesOff::after}, {"either", ChargesOff::either}},
      ChargesOff::not_at_all);
  r.includes_sum_due = f.yes_no("includesSumDue");
  r.up_to = f.flag("upTo", false);
  r.fixed = f.money("fixed");
  r.least = f.money("least");
  if (auto most = f.object("cap")) r.cap = limit(*most, "times");
  r.needs = f.word<Needs>("needs", needs_names, Needs::none);
  r.fees = f.word<Fees>("fees",
                        {{"none", Fees::none},
                         {"tenant", Fees::tenant},
                         {"prevailing", Fees::prevailing},
                         {"court-may", Fees::court_may}},
                        Fees::none);
  r.costs = f.flag("costs", false);
  f.done();
  pack_->remedies.push_back(std::move(r));
}

void Loader::remarks(Fields& f, std::string_view member, std::vector<Remark>& out) {
  for (Fields& item : f.objects(member)) {
    Remark r;
    rule(item, r);
    r.required = item.yes_no("required");
    r.right = item.yes_no("right");
    r.when_left = item.yes_no("whenLeft");
    r.who = item.text("who");
    r.if_missing = item.text("ifMissing");
    r.method = item.text("method");
    r.days = item.whole("days");
    r.amount = item.money("amount");
    r.exempt = item.texts("exempt");
    turned_off(item, r);
    r.topics = item.texts("topics");
    r.limit_to_damaged_portion = item.flag("limitToDamagedPortion", false);
    if (auto lives = item.object("lives")) {
      const Json& json = *item.get("lives");
      if (json.is_object())
        for (const auto& life : json.items())
          if (const auto years = lives->decimal(life.key())) r.lives.emplace_back(life.key(), *years);
    }
    item.done();
    out.push_back(std::move(r));
  }
}

/// The rules that a scope rule puts out of use where it holds: each gets the condition that it does not.
void Loader::turned_off(Fields& f, const Remark& scope) {
  for (const std::string& id : f.texts("turnsOff")) off_.push_back({id, f.pointer("turnsOff"), scope.when});
}

void Loader::turn_off(Fields& f) {
  for (const TurnedOff& off : off_) step_aside(off.id, off.when, off.at, f);
}

/// Puts the positions of deadlines and document rules into the conditions that name them, now that all are read.
void Loader::resolve_outcomes(Fields& f) {
  for (Outcome& o : outcomes_) {
    o.number = o.deadline ? deadlines_.find(o.name) : documents_.find(o.name);
    // Caps are numbered apart from the document rules.
    for (std::size_t i = 0; !o.deadline && o.number == 0xffff && i < pack_->caps.size(); ++i)
      if (pack_->caps[i].id == o.name) o.number = static_cast<std::uint16_t>(first_cap + i);
    if (o.number == 0xffff)
      f.faults().push_back({o.deadline ? "unknown-duty" : "unknown-paper", o.at,
                            "\"" + o.name + "\" is not a " + (o.deadline ? "duty" : "paper rule") + " of this pack.",
                            ""});
  }
  const auto resolve = [&](auto&& self, Condition& c) -> bool {
    const bool outcome = c.op == Condition::Op::deadline_is || c.op == Condition::Op::defect;
    if (outcome && !c.resolved) c.which = outcomes_[c.which].number;
    if (outcome) c.resolved = true;
    bool any = outcome;
    for (Condition& part : c.parts) any = self(self, part) || any;
    return any;
  };
  const auto each = [&](auto& rules, std::string_view member, bool may_depend) {
    for (auto& rule : rules)
      if (resolve(resolve, rule.when) && !may_depend)
        f.fault("too-early", member, "The rule \"" + rule.id + "\" cannot depend on duties or defects.");
  };
  each(pack_->counting, "counting", false);
  each(pack_->deadlines, "duties", false);
  each(pack_->documents, "papers", false);
  each(pack_->allows, "allows", false);
  each(pack_->bars, "bars", true);
  each(pack_->caps, "caps", false);
  each(pack_->interest, "interest", false);
  each(pack_->forfeits, "forfeits", true);
  each(pack_->remedies, "remedies", true);
  for (Bar& b : pack_->bars)
    if (b.unless) resolve(resolve, *b.unless);
  for (Replacement& r : replacements_) resolve(resolve, r.while_this);
  for (auto* rules :
       {&pack_->records, &pack_->inspection, &pack_->demand, &pack_->address, &pack_->wear, &pack_->depreciation,
        &pack_->holder, &pack_->scope, &pack_->small_claims, &pack_->others, &pack_->not_found})
    each(*rules, "others", false);
}

void Loader::parts(Fields& f) {
  const auto each = [&](std::string_view member, void (Loader::*read_one)(Fields&)) {
    for (Fields& item : f.objects(member)) (this->*read_one)(item);
  };
  each("counting", &Loader::counting);
  each("duties", &Loader::deadline);
  each("papers", &Loader::document);
  each("allows", &Loader::allow);
  each("bars", &Loader::bar);
  each("caps", &Loader::cap);
  each("notDeposit", &Loader::not_deposit);
  each("alsoDeposit", &Loader::also_deposit);
  each("interest", &Loader::interest);
  each("forfeits", &Loader::forfeit);
  each("remedies", &Loader::remedy);
  remarks(f, "records", pack_->records);
  remarks(f, "inspection", pack_->inspection);
  remarks(f, "demand", pack_->demand);
  remarks(f, "address", pack_->address);
  remarks(f, "wear", pack_->wear);
  remarks(f, "worth", pack_->depreciation);
  remarks(f, "holder", pack_->holder);
  remarks(f, "scope", pack_->scope);
  remarks(f, "smallClaims", pack_->small_claims);
  remarks(f, "others", pack_->others);
  remarks(f, "notFound", pack_->not_found);
}

/// What stands only once all rules are read.
void Loader::finish(Fields& f) {
  join_families();
  choose_counting();
  turn_off(f);
  resolve_outcomes(f);
  for (const Deadline& d : pack_->deadlines) {
    if (d.counting.empty())
      f.fault("missing-member", "counting", "No counting rule is left for the duty \"" + d.id + "\".");
    for (const Period& l : d.periods)
      for (const auto i : d.counting)
        if (l.unit == Unit::business_day && pack_->counting[i].business_skip.empty())
          f.fault("missing-member", "counting",
                  "The duty \"" + d.id + "\" counts business days; its counting rule must say which days are none.");
  }
}

void Loader::read(Fields& f) {
  pack_->jurisdiction = f.required_text("jurisdiction");
  pack_->name = f.required_text("name");
  pack_->currency = f.required_text("currency");
  pack_->reviewed = f.day("reviewed");
  pack_->weak = f.flag("weak", false);
  if (auto guide = f.object("guide")) {
    pack_->guide = Guide{guide->text("title"), guide->text("publisher"), guide->text("url")};
    guide->done();
  }
  for (Fields& item : f.objects("help")) {
    pack_->help.push_back({item.required_text("kind"), item.required_text("title"), item.text("publisher"),
                           item.text("url"), item.required_text("read")});
    item.done();
  }
  sources(f);
  names(f);
  parts(f);
  for (Fields& item : f.objects("checkThis")) {
    pack_->check_this.push_back({item.required_localized("text"), item.texts("rules")});
    item.done();
  }
  finish(f);
  f.done();
}

/// Calls `use` with every list of rules of a pack.
template <class Use> void each_list(Pack& p, Use use) {
  use(p.counting);
  use(p.deadlines);
  use(p.documents);
  use(p.allows);
  use(p.bars);
  use(p.caps);
  use(p.not_deposit);
  use(p.also_deposit);
  use(p.interest);
  use(p.forfeits);
  use(p.remedies);
  for (auto* remarks : {&p.records, &p.inspection, &p.demand, &p.address, &p.wear, &p.depreciation, &p.holder, &p.scope,
                        &p.small_claims, &p.others, &p.not_found})
    use(*remarks);
}

/// The names that the pack below has given already.
void Loader::know_names() {
  for (std::size_t i = 0; i < pack_->sources.size(); ++i) sources_.add(pack_->sources[i].id.substr(4), i);
  for (std::size_t i = 0; i < pack_->facts.size(); ++i) facts_.add(pack_->facts[i].id, i);
  for (std::size_t i = 0; i < pack_->events.size(); ++i) events_.add(pack_->events[i].id, i);
  for (std::size_t i = 0; i < pack_->deadlines.size(); ++i) deadlines_.add(pack_->deadlines[i].id, i);
  for (std::size_t i = 0; i < pack_->documents.size(); ++i) documents_.add(pack_->documents[i].id, i);
  each_list(*pack_, [&](auto& rules) {
    for (const auto& rule : rules) rules_.add(rule.id, 0);
  });
  for (Deadline& d : pack_->deadlines) d.counting.clear();
}

void Loader::place(Fields& f) {
  auto object = f.object("place");
  if (!object) return;
  Place place;
  place.id = layer_;
  place.name = object->required_localized("name");
  place.localities = object->texts("localities");
  place.inside = object->required_localized("inside");
  place.ask = object->localized("ask");
  if (place.localities.empty())
    object->fault("missing-member", "localities", "A place has a name that a case gives it.");
  object->done();
  inside_.op = Condition::Op::text_in;
  inside_.which = static_cast<std::uint16_t>(registry_->fact("locality"));
  inside_.names = place.localities;
  inside_.unless_said = true;
  place.here = inside_;
  place.reviewed = f.day("reviewed");
  pack_->places.push_back(std::move(place));
}

/// The rule of this name does not hold where the other does.
void Loader::step_aside(const std::string& id, const Condition& while_this, const std::string& at, Fields& f) {
  bool found = false;
  each_list(*pack_, [&](auto& rules) {
    for (auto& rule : rules)
      if (rule.id == id) {
        found = true;
        Condition unless, both;
        unless.op = Condition::Op::none_of;
        unless.parts.push_back(while_this);
        both.parts.push_back(std::move(unless));
        if (!rule.when.always()) both.parts.push_back(std::move(rule.when));
        rule.when = std::move(both);
      }
  });
  if (!found) f.faults().push_back({"unknown-rule", at, "There is no rule \"" + id + "\" to put out of use.", ""});
}

void Loader::read_layer(Fields& f) {
  layer_ = f.required_text("id");
  f.ignore({"jurisdiction", "reviewed", "guide"});
  pack_->layers.push_back(layer_);
  know_names();
  place(f);
  sources(f);
  names(f);
  parts(f);
  finish(f);
  for (const Replacement& r : replacements_) step_aside(r.id, r.while_this, r.at, f);
  for (const std::string& id : f.texts("drops")) step_aside(id, inside_, f.pointer("drops"), f);
  f.done();
}

} // namespace

std::variant<Pack, Faults> load_pack(std::string_view text, const Registry& registry) {
  auto parsed = parse_json(text);
  if (auto* fault = std::get_if<Fault>(&parsed)) return Faults{std::move(*fault)};
  Faults faults;
  if (registry.facts.empty() || registry.events.empty() || registry.deadlines.empty() || registry.documents.empty())
    return Faults{{"too-early", "", "The facts, duties and papers must be loaded before a pack.", ""}};
  Pack pack;
  Fields document(std::get<Json>(parsed), "", faults);
  Loader(registry, pack).read(document);
  if (!faults.empty()) return faults;
  return pack;
}

bool layer_fits(std::string_view of_layer, std::string_view jurisdiction) {
  return jurisdiction.substr(0, of_layer.size()) == of_layer &&
         (jurisdiction.size() == of_layer.size() || jurisdiction[of_layer.size()] == '-');
}

Faults lay_over(Pack& pack, std::string_view text, const Registry& registry) {
  auto parsed = parse_json(text);
  if (auto* fault = std::get_if<Fault>(&parsed)) return {std::move(*fault)};
  Faults faults;
  Fields document(std::get<Json>(parsed), "", faults);
  if (const std::string id = document.text("id");
      std::find(pack.layers.begin(), pack.layers.end(), id) != pack.layers.end())
    return {};
  Pack with = pack;
  Loader(registry, with).read_layer(document);
  if (!faults.empty()) return faults;
  pack = std::move(with);
  return {};
}

} // namespace wearline
