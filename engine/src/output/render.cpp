#include "output/render.h"

#include "law/applies.h"
#include "output/fact_text.h"
#include "wearline/engine.h"
#include "wording/law_words.h"
#include "wording/line_text.h"

#include "json/json_out.h"
#include <algorithm>

namespace wearline {

namespace {

/// Writes the result front to back; remembers the references it named, to list them once at the end.
class Renderer {
public:
  Renderer(const Assessment& a, const Rules& rules)
      : a_(a), rules_(rules), speech_(rules.words(a.c.language), a.c.language, currency()),
        practice_(source_basis_text("practice", speech_)) {}

  std::string write() {
    out_.reserve(8192 + a_.lines.size() * 2304);
    out_.object().key("wearline").number(newest_format);
    out_.pair("engine", version()).pair("today", iso(a_.today));
    a_.c.jurisdiction.empty() ? out_.key("jurisdiction").null() : out_.pair("jurisdiction", a_.c.jurisdiction);
    out_.pair("language", a_.c.language).pair("side", a_.c.side).pair("currency", currency());
    find_shared_rules();
    out_.key("lines").array();
    for (std::size_t i = 0; i < a_.lines.size(); ++i) line(a_.c.lines[i], a_.lines[i]);
    out_.end_array();
    totals();
    if (a_.law) law();
    else no_law();
    audit();
    questions();
    cautions();
    sources();
    out_.key("errors").array().end_array();
    out_.end_object();
    return out_.take();
  }

private:
  std::string_view currency() const {
    if (a_.pack) return a_.pack->currency;
    return a_.c.jurisdiction.substr(0, 3) == "US-" ? "USD" : a_.c.jurisdiction.substr(0, 3) == "CA-" ? "CAD" : "";
  }

  /// `middle`: whether anything supports a likely sum; without it that is null.
  void range(std::string_view name, const Range<Money>& m, bool middle = true) {
    out_.key(name).object().own("low", m.low().plain()).key("likely");
    middle ? out_.own(m.likely().plain()) : out_.null();
    out_.own("high", m.high().plain()).end_object();
  }
  void optional_range(std::string_view name, const std::optional<Range<Money>>& m, bool middle) {
    if (m) range(name, *m, middle || m->exact());
    else out_.key(name).null();
  }
  void remember(const References& references) {
    for (const Reference* r : references)
      if (std::find(used_.begin(), used_.end(), r) == used_.end()) used_.push_back(r);
  }
  /// A work keeps its own title; that there is none, or that it is from another country, is said in the reader's
  /// language.
  std::string title(const Reference& r) const {
    if (r.read == "practice") return practice_;
    return nearness(r, a_.c.jurisdiction) == Nearness::abroad ? speech_.say("source.abroad", {{"title", r.text}})
                                                              : r.text;
  }
  /// "source": the first one, readable, with how many more there are; "sourceIds": keys of the list at the end.
  void cite(const References& given) {
    const References references = nearest_first(given, a_.c.jurisdiction);
    if (references.empty()) out_.pair("source", "");
    else if (references.size() == 1) out_.pair("source", title(*references.front()));
    else
      out_.pair("source", speech_.say("source.and-more", {{"first", title(*references.front())},
                                                          {"more", std::to_string(references.size() - 1)}}));
    out_.key("sourceIds").array();
    for (const Reference* r : references) out_.text(r->id);
    out_.end_array();
    remember(references);
  }

  void steps(const LineAssessment& l) {
    out_.key("steps").array();
    for (const Step& step : l.steps) {
      out_.object().own("code", step.code).pair("text", step_text(step, l, a_.c.jurisdiction, speech_));
      out_.own("from", step.from.plain())
          .own("to", step.to.plain())
          .own("low", step.low.plain())
          .own("high", step.high.plain());
      if (step.sources.empty()) out_.pair("source", practice_).key("sourceIds").array().end_array();
      else cite(step.sources);
      out_.end_object();
    }
    out_.end_array();
  }

  /// The line by each method of depreciation, where the case asks to see them.
  void methods(const LineAssessment& l) {
    if (!a_.c.show_methods) return;
    out_.key("methods").array();
    for (const MethodFair& m : l.methods) {
      out_.object()
          .pair("id", m.method->id)
          .pair("label", m.method->label.in(speech_.language()))
          .pair("text", m.method->text.in(speech_.language()));
      out_.key("inUse").boolean(m.method == l.result.method);
      range("fair", m.fair);
      cite(m.method->sources);
      out_.end_object();
    }
    out_.end_array();
  }

  /// What to ask for, without what came and what is known; nothing where nothing can be owed.
  void ask_for(const Line& line, const LineAssessment& l) {
    out_.key("documentsToRequest").array();
    if (l.subject.finding && !l.result.fair.high().is_zero())
      for (const Document* document : l.subject.finding->ask_for) {
        const auto has = [&](const std::vector<std::string>& documents) {
          return std::find(documents.begin(), documents.end(), document->id) != documents.end();
        };
        const bool dated = line.installed && line.installed->known() &&
                           (document->id == "installed" || document->id == "last-painted");
        if (!dated && !has(line.proof) && !has(a_.c.statement.enclosed))
          out_.text(document->text.in(speech_.language()));
      }
    out_.end_array();
  }

  /// What the picture of a line's worth over time needs.
  void value_over_time(const Line& line, const LineAssessment& l) {
    const LineResult& r = l.result;
    const Range<Life>& life = l.subject.life.life;
    out_.key("depreciation");
    if (!r.depreciates) {
      out_.null();
      return;
    }
    out_.object().key("usefulLifeMonths").object();
    out_.key("low")
        .number(life.low().months.count())
        .key("likely")
        .number(life.likely().months.count())
        .key("high")
        .number(life.high().months.count())
        .end_object();
    const std::optional<DaySpan> installed = line.installed       ? line.installed
                                             : r.age_from_move_in ? a_.tenancy.move_in
                                                                  : std::nullopt;
    span("installed", installed);
    span("moveIn", a_.tenancy.move_in);
    span("moveOut", a_.tenancy.move_out);
    out_.key("remainingShare")
        .object()
        .pair("low", speech_.percent(r.remaining.low))
        .pair("likely", speech_.percent(r.remaining.likely))
        .pair("high", speech_.percent(r.remaining.high))
        .end_object();
    if (r.method) out_.pair("method", r.method->id).pair("methodText", r.method->text.in(speech_.language()));
    out_.end_object();
  }
  void span(std::string_view name, const std::optional<DaySpan>& s) {
    if (!s || (s->earliest == min_day && s->latest == max_day)) {
      out_.key(name).null();
      return;
    }
    out_.key(name).object().key("earliest");
    s->earliest == min_day ? out_.null() : out_.own(iso(s->earliest));
    out_.key("latest");
    s->latest == max_day ? out_.null() : out_.own(iso(s->latest));
    out_.end_object();
  }

  References line_references(const LineAssessment& l) const {
    References all;
    const auto take = [&](const References& references) {
      for (const Reference* r : references)
        if (std::find(all.begin(), all.end(), r) == all.end()) all.push_back(r);
    };
    if (l.result.opinion.turn) take(l.result.opinion.turn->sources);
    else if (l.result.opinion.finding) take(l.result.opinion.finding->sources);
    for (const Step& step : l.steps) take(step.sources);
    return all;
  }

  /// Other disputes like it: how they went, and which (rules/precedents/cases.json says who decided them).
  void alike(const LineAssessment& l) {
    out_.key("comparableDecisions");
    if (l.alike.most_alike.empty()) {
      out_.null();
      return;
    }
    out_.object().own("similarity", name_of(l.alike.likeness));
    out_.key("noneAllowed").number(static_cast<std::int64_t>(l.alike.nothing));
    out_.key("partAllowed").number(static_cast<std::int64_t>(l.alike.part));
    out_.key("fullyAllowed").number(static_cast<std::int64_t>(l.alike.all));
    out_.pair("text", alike_text(l.alike, speech_)).key("decisions").array();
    for (const Precedent* p : l.alike.most_alike) out_.text(p->id);
    out_.end_array().end_object();
  }

  /// The facts that the charge's own words gave, and those a field overrules: with the words, and where they stand.
  void from_words(const Line& line, const FromWords& words) {
    const auto list = [&](std::string_view name, std::string_view key, const WordFacts& facts) {
      out_.key(name).array();
      for (const WordFact& fact : facts) {
        const std::string_view said = std::string_view(line.text).substr(fact.start, fact.end - fact.start);
        out_.object().own("field", fact.field).key("value");
        write_fact_value(out_, fact);
        out_.key("span").array().number(code_points(line.text, fact.start)).number(code_points(line.text, fact.end));
        const std::string what = speech_.say("words.field." + fact.field);
        out_.end_array().pair("quote", said).pair("label", what);
        out_.pair("text", speech_.say(key, {{"fact", what}, {"words", said}}));
        out_.end_object();
      }
      out_.end_array();
    };
    if (!words.used.empty()) list("factsFromText", "words.used", words.used);
    if (!words.against.empty()) list("overruledFacts", "words.against", words.against);
  }

  static bool is_about(const Hazard& hazard, const Line& line, const LineAssessment& l) {
    return concerns(hazard, l.subject.element ? std::string_view(l.subject.element->id) : std::string_view(),
                    l.subject.finding ? std::string_view(l.subject.finding->id) : std::string_view(), line.text);
  }
  /// The dangers of what a charge is about; their words stand among the cautions.
  void hazards(const Line& line, const LineAssessment& l) {
    out_.key("hazards").array();
    for (const Hazard& hazard : rules_.hazards)
      if (is_about(hazard, line, l)) out_.text(hazard.code);
    out_.end_array();
  }

  void line(const Line& line, const LineAssessment& l) {
    const LineResult& r = l.result;
    out_.object().pair("id", line.id).pair("text", line.text);
    out_.key("element");
    l.subject.element ? out_.text(l.subject.element->id) : out_.null();
    out_.key("finding");
    l.subject.finding ? out_.text(l.subject.finding->id) : out_.null();
    out_.pair("elementText", thing_of(line, l.subject, speech_));
    out_.key("findingText");
    l.subject.finding ? out_.text(l.subject.finding->label.in(speech_.language())) : out_.null();
    if (l.subject.confidence < 100)
      out_.key("recognition").object().key("confidence").number(l.subject.confidence).end_object();
    from_words(line, l.words);
    out_.own("claimed", r.claimed.plain()).own("verdict", name_of(r.verdict));
    out_.pair("verdictText", verdict_text(l, speech_)).key("certain").boolean(r.certain());
    out_.pair("reason", why(l, a_.c.jurisdiction, speech_));
    range("fair", r.fair, !r.no_middle);
    range("depreciatedValue", r.depreciated_value);
    steps(l);
    alike(l);
    out_.key("turningPoint");
    if (l.turning_point && !(r.opinion.most == Share::none())) {
      const auto& [day, floor] = *l.turning_point;
      out_.object().own("noChargeIfInstalledBefore", iso(day)).own("remainingCharge", floor.plain());
      out_.pair("text", speech_.say(floor.is_zero() ? "turning.nothing" : "turning.rest",
                                    {{"day", speech_.day(day)}, {"rest", speech_.money(floor)}}))
          .end_object();
    } else {
      out_.null();
    }
    value_over_time(line, l);
    methods(l);
    ask_for(line, l);
    hazards(line, l);
    bars(line, l);
    out_.key("conflicts").array();
    if (r.opinion.finding)
      for (const Conflict& conflict : r.opinion.finding->conflicts) {
        out_.object().own("verdict", name_of(conflict.verdict)).pair("text", conflict.text.in(speech_.language()));
        cite({conflict.source});
        out_.end_object();
      }
    out_.end_array();
    const References references = line_references(l);
    remember(references);
    out_.key("sources").array();
    for (const Reference* reference : references) out_.text(reference->id);
    out_.end_array().end_object();
  }

  void totals() {
    const Totals& t = a_.totals;
    const bool every_middle = t.without_middle == 0;
    out_.key("totals").object().own("claimed", t.claimed.plain());
    range("fair", t.fair, t.has_middle());
    out_.key("counted");
    if (every_middle) {
      out_.null();
    } else {
      const auto lines = static_cast<std::int64_t>(t.lines), without = static_cast<std::int64_t>(t.without_middle);
      out_.object().key("lines").number(lines - without).key("of").number(lines);
      out_.own("restLow", t.fair_without_middle.low().plain()).own("restHigh", t.fair_without_middle.high().plain());
      out_.pair("text", speech_.say(t.has_middle() ? "totals.counted" : "totals.none-counted",
                                    {{"counted", std::to_string(lines - without)},
                                     {"lines", std::to_string(lines)},
                                     {"rest", speech_.money(t.fair_without_middle.high())}}));
      out_.end_object();
    }
    out_.key("deposit");
    t.deposit ? out_.own(t.deposit->plain()) : out_.null();
    range("interest", t.interest);
    range("keptApart", t.kept_apart);
    range("paidApart", t.paid_apart);
    optional_range("fairRefund", t.fair_refund, every_middle);
    out_.own("paidBack", t.paid_back.plain()).key("paidBackAssumed").boolean(t.paid_back_assumed);
    optional_range("shortfall", t.shortfall, every_middle);
    optional_range("owedByTenant", t.owed_by_tenant, every_middle);
    const bool may_owe = t.owed_by_tenant && !t.owed_by_tenant->high().is_zero();
    out_.key("counterclaim");
    may_owe ? out_.text(speech_.say("totals.counterclaim", {{"sum", speech_.money(t.owed_by_tenant->high())}}))
            : out_.null();
    out_.own("ordinaryWear", t.ordinary_wear.plain()).end_object();
  }

  static std::string_view word(Tri value) { return value.known() ? value.known_yes() ? "true" : "false" : "null"; }

  /// Left out: what could only matter if something were owed, or if only a part was damaged.
  static bool told(const Permission& p, const Line& line, const LineAssessment& l) {
    if (p.says == Permission::Says::allowed || p.applies == Tri::no) return false;
    if (!p.applies.known() && l.result.opinion.most == Share::none()) return false;
    return p.says != Permission::Says::damaged_portion_only || line.charged;
  }
  /// A rule that asks nothing of the thing charged and settles nothing about it by itself concerns the whole statement:
  /// where several charges meet it, it is told once.
  static bool of_any_charge(const Permission& p) {
    using Says = Permission::Says;
    if (p.says == Says::allowed || p.most || (p.applies.known() && p.says != Says::caution)) return false;
    if (p.says == Says::not_listed) return true;
    // All others are rules that bar or limit.
    const LineMatcher& m = static_cast<const Bar*>(p.rule)->line;
    return m.element.empty() && m.finding.empty() && m.remedy.empty() && m.at_move_in.empty() && !m.older_than &&
           m.proof_missing.empty();
  }
  void find_shared_rules() {
    for (std::size_t i = 0; i < a_.lines.size(); ++i)
      for (const Permission& p : a_.lines[i].permissions) {
        if (!told(p, a_.c.lines[i], a_.lines[i]) || !of_any_charge(p)) continue;
        const auto known = std::find_if(shared_rules_.begin(), shared_rules_.end(),
                                        [&](const SharedRule& shared) { return shared.first->rule == p.rule; });
        known == shared_rules_.end() ? shared_rules_.push_back({&p, {i}}) : known->lines.push_back(i);
      }
    shared_rules_.erase(std::remove_if(shared_rules_.begin(), shared_rules_.end(),
                                       [](const SharedRule& shared) { return shared.lines.size() < 2; }),
                        shared_rules_.end());
  }
  void name_rule(const Permission& p, Tri applies) {
    out_.pair("rule", p.rule->id).pair("effect", name_of(p.says)).key("applies").raw(word(applies));
    if (std::find(line_rules_.begin(), line_rules_.end(), p.rule) == line_rules_.end()) line_rules_.push_back(p.rule);
  }

  /// What the law says of a line; the rules themselves stand once, under law.rules.
  void bars(const Line& line, const LineAssessment& l) {
    out_.key("bars").array();
    for (const Permission& p : l.permissions) {
      if (!told(p, line, l)) continue;
      out_.object();
      name_rule(p, p.applies);
      out_.key("most");
      p.most ? out_.own(p.most->plain()) : out_.null();
      out_.end_object();
    }
    out_.end_array();
  }
  /// What the law says of several charges alike, for views to tell once.
  void shared_rules() {
    out_.key("sharedRules").array();
    for (const SharedRule& shared : shared_rules_) {
      out_.object();
      name_rule(*shared.first, shared.first->applies);
      out_.key("lines").array();
      for (const std::size_t i : shared.lines) out_.text(a_.c.lines[i].id);
      out_.end_array().end_object();
    }
    out_.end_array();
  }
  /// A doubt about the rule itself.
  void check_this(const Rule& rule) {
    out_.key("caveat");
    rule.check.empty() ? out_.null() : out_.text(rule.check_in(speech_.language()));
  }

  static std::string_view state_word(DeadlineState state) {
    switch (state) {
    case DeadlineState::met:
      return "met";
    case DeadlineState::missed:
      return "missed";
    case DeadlineState::open:
      return "open";
    case DeadlineState::undetermined:
      return "undetermined";
    case DeadlineState::not_needed:
      break;
    }
    return "not-needed";
  }

  std::string_view place_name(const Pack& pack) const {
    const auto found = rules_.place_names.find(pack.jurisdiction);
    return found == rules_.place_names.end() ? std::string_view(pack.name) : found->second.in(speech_.language());
  }

  void help(const Pack& pack) {
    out_.key("help").array();
    for (const Help& help : pack.help) {
      out_.object().pair("kind", help.kind).pair("label", speech_.say("help." + help.kind)).pair("title", help.title);
      out_.pair("publisher", help.publisher).key("url");
      help.url.empty() ? out_.null() : out_.text(help.url);
      out_.pair("basis", help.read).end_object();
    }
    out_.end_array();
  }
  /// Money of this case that the law does not call a deposit, and so is not in the sums.
  void not_deposit(const Pack& pack) {
    out_.key("notDeposit").array();
    for (const NotDeposit& rule : pack.not_deposit) {
      const bool held = std::any_of(a_.c.deposits.begin(), a_.c.deposits.end(),
                                    [&](const Deposit& d) { return names_money(rule, d.kind); });
      if (!held) continue;
      out_.object().pair("text", rule.text_in(speech_.language()));
      cite(references_of(pack, rule));
      check_this(rule);
      out_.end_object();
    }
    out_.end_array();
  }

  void law() {
    const Law& law = *a_.law;
    const Pack& pack = *a_.pack;
    out_.key("law").object().pair("jurisdiction", pack.jurisdiction).pair("name", place_name(pack)).key("reviewed");
    pack.reviewed ? out_.own(iso(*pack.reviewed)) : out_.null();
    out_.key("limitedSources").boolean(pack.weak).key("guide");
    if (pack.guide) {
      out_.object().pair("title", pack.guide->title).pair("publisher", pack.guide->publisher).key("url");
      pack.guide->url.empty() ? out_.null() : out_.text(pack.guide->url);
      out_.end_object();
    } else {
      out_.null();
    }
    help(pack);
    not_deposit(pack);
    shared_rules();
    out_.key("caveats").array();
    for (const Doubt& doubt : pack.check_this)
      out_.object().pair("text", doubt.text.in(speech_.language())).end_object();
    out_.end_array().key("rules").object();
    for (const Rule* rule : line_rules_) {
      out_.any_key(rule->id).object().pair("text", rule->text_in(speech_.language()));
      cite(references_of(pack, *rule));
      check_this(*rule);
      out_.end_object();
    }
    out_.end_object().end_object();

    out_.key("dates").array();
    std::vector<const DeadlineResult*> deadlines;
    for (const DeadlineResult& deadline : law.deadlines())
      if (deadline.applies != Tri::no) deadlines.push_back(&deadline);
    std::stable_sort(deadlines.begin(), deadlines.end(),
                     [](const DeadlineResult* a, const DeadlineResult* b) { return urgency(*a) < urgency(*b); });
    for (const DeadlineResult* deadline : deadlines) date(*deadline);
    out_.end_array();
    defects(law);
    remedies(law);
    assumptions(law);
  }
  void no_law() {
    out_.key("law")
        .null()
        .key("dates")
        .array()
        .end_array()
        .key("defects")
        .array()
        .end_array()
        .key("remedies")
        .null()
        .key("assumptions")
        .array()
        .end_array();
  }

  /// The order people need: a right the tenant can still lose, what was missed, what is still open, what was done, what
  /// is unclear.
  static int urgency(const DeadlineResult& deadline) {
    switch (deadline.state) {
    case DeadlineState::open:
      return deadline.deadline->tenant_loses ? 0 : 2;
    case DeadlineState::missed:
      return 1;
    case DeadlineState::met:
      return 3;
    case DeadlineState::undetermined:
      return deadline.last ? 4 : 5;
    case DeadlineState::not_needed:
      break;
    }
    return 6;
  }

  void date(const DeadlineResult& result) {
    const Deadline& deadline = *result.deadline;
    const LawWords words(*a_.law, rules_.registry, rules_.holidays, speech_);
    out_.object()
        .pair("id", deadline.id)
        .pair("duty", rules_.registry.deadlines[deadline.name].id)
        .pair("label", words.label(deadline))
        .pair("who", deadline.who == Who::landlord ? "landlord" : "tenant");
    span("last", result.last);
    span("first", result.first);
    out_.key("notBefore")
        .boolean(result.first && !result.last)
        .pair("state", state_word(result.state))
        .pair("stateText", words.state(result));
    out_.pair("rule", deadline.text_in(speech_.language()))
        .pair("text", words.arithmetic(result))
        .pair("ifMissed", deadline.if_missed_text_in(speech_.language()));
    out_.key("losesRightIfMissed").boolean(deadline.tenant_loses);
    out_.key("condition");
    const bool own_condition = !deadline.when_text.empty() && result.instead.empty();
    own_condition ? out_.text(deadline.when_text_in(speech_.language())) : out_.null();
    needs(result);
    alternatives(result);
    cite(references_of(*a_.pack, deadline));
    check_this(deadline);
    out_.end_object();
  }

  /// Where the case holds what the state hangs on and does not know, and the law's name of each.
  void needs(const DeadlineResult& result) {
    const FactView& view = a_.law->view();
    std::vector<std::pair<std::string, std::string_view>> places;
    for (const Ask& ask : result.grounds.unknown) {
      const bool fact = ask.kind == Ask::Kind::fact;
      std::string at = fact ? view.place(FactId{ask.which}) : view.place(EventId{ask.which});
      const std::string_view id = fact ? view.info(FactId{ask.which}).id : view.info(EventId{ask.which}).id;
      if (fact && view.info(FactId{ask.which}).derived && view.info(FactId{ask.which}).at.empty()) continue;
      places.emplace_back(std::move(at), id);
    }
    out_.key("dependsOn").array();
    for (const auto& place : places) out_.text(place.first);
    out_.end_array().key("dependsOnIds").array();
    for (const auto& place : places) out_.text(place.second);
    out_.end_array();
  }

  /// The rules of which one applies, where the case leaves open which.
  void alternatives(const DeadlineResult& result) {
    const LawWords words(*a_.law, rules_.registry, rules_.holidays, speech_);
    out_.key("alternatives").array();
    for (const std::size_t position : result.instead) {
      const DeadlineResult& one = a_.law->each_deadline()[position];
      out_.object().pair("id", one.deadline->id).key("condition");
      one.deadline->when_text.empty() ? out_.null() : out_.text(one.deadline->when_text_in(speech_.language()));
      span("last", one.last);
      out_.pair("rule", one.deadline->text_in(speech_.language())).pair("text", words.arithmetic(one));
      cite(references_of(*a_.pack, *one.deadline));
      out_.end_object();
    }
    out_.end_array();
  }

  void defects(const Law& law) {
    const LawWords words(law, rules_.registry, rules_.holidays, speech_);
    out_.key("defects").array();
    std::vector<std::pair<std::string, std::string>> said;
    for (const DocumentResult& result : law.documents()) {
      if (result.defect == Tri::no) continue;
      // Two rules that want the same of the same lines say it once.
      std::pair<std::string, std::string> says{words.defect(result),
                                               result.rule->if_missing_text_in(speech_.language())};
      for (const std::size_t line : result.lines) says.second += ' ' + a_.c.lines[line].id;
      if (std::find(said.begin(), said.end(), says) != said.end()) continue;
      out_.object()
          .pair("code", result.rule->id)
          .pair("text", says.first)
          .key("certain")
          .boolean(result.defect == Tri::yes)
          .key("line");
      result.lines.size() == 1 ? out_.text(a_.c.lines[result.lines.front()].id) : out_.null();
      out_.key("lines").array();
      for (const std::size_t line : result.lines) out_.text(a_.c.lines[line].id);
      out_.end_array().pair("ifMissing", result.rule->if_missing_text_in(speech_.language()));
      cite(references_of(*a_.pack, *result.rule));
      check_this(*result.rule);
      out_.end_object();
      said.push_back(std::move(says));
    }
    for (const CapResult& cap : law.caps()) {
      if (cap.exceeded != Tri::yes || !cap.limit || !cap.taken) continue;
      out_.object()
          .pair("code", cap.rule->id)
          .pair("text", words.cap(cap))
          .key("certain")
          .boolean(true)
          .key("line")
          .null()
          .key("lines")
          .array()
          .end_array()
          .pair("ifMissing", "");
      cite(references_of(*a_.pack, *cap.rule));
      check_this(*cap.rule);
      out_.end_object();
    }
    out_.end_array();
  }

  /// What the case is silent on and was taken as usual.
  void assumptions(const Law& law) {
    const LawWords words(law, rules_.registry, rules_.holidays, speech_);
    out_.key("assumptions").array();
    for (const Ask& ask : law.assumed()) {
      const bool fact = ask.kind == Ask::Kind::fact;
      const std::string asks = fact ? law.view().place(FactId{ask.which}) : law.view().place(EventId{ask.which});
      const std::string& id = fact ? law.view().info(FactId{ask.which}).id : law.view().info(EventId{ask.which}).id;
      out_.object().pair("asks", asks).pair("id", id).pair("text", words.assumed(ask)).end_object();
    }
    out_.end_array();
  }

  void remedies(const Law& law) {
    const Award& award = law.award();
    const LawWords words(law, rules_.registry, rules_.holidays, speech_);
    out_.key("remedies").object().key("known").boolean(award.known);
    out_.own("least", award.least.plain()).own("most", award.most.plain()).key("openEnded").boolean(award.open);
    out_.pair("text", words.award(award));
    range("amountDue", award.sum_due);
    range("amountDueIfForfeited", award.sum_due_forfeited);
    out_.pair("forfeiture", award.forfeited ? "yes" : award.may_be_forfeited ? "possible" : "no");
    References all;
    out_.key("items").array();
    for (const ForfeitResult& f : law.forfeits()) {
      if (f.applies == Tri::no) continue;
      const References references = references_of(*a_.pack, *f.rule);
      all.insert(all.end(), references.begin(), references.end());
      out_.object()
          .pair("rule", f.rule->id)
          .pair("kind", "forfeit")
          .key("certain")
          .boolean(f.certain)
          .pair("text", f.rule->text_in(speech_.language()));
      cite(references);
      check_this(*f.rule);
      out_.end_object();
    }
    for (const RemedyResult& r : law.remedies()) {
      if (r.applies == Tri::no) continue;
      const References references = references_of(*a_.pack, *r.rule);
      all.insert(all.end(), references.begin(), references.end());
      out_.object()
          .pair("rule", r.rule->id)
          .pair("kind", "award")
          .key("certain")
          .boolean(r.certain)
          .pair("text", r.rule->text_in(speech_.language()));
      out_.own("least", r.least.plain()).own("most", r.most.plain());
      cite(references);
      check_this(*r.rule);
      out_.end_object();
    }
    out_.end_array();
    cite(all);
    out_.end_object();
  }

  void audit() {
    out_.key("audit").array();
    for (const AuditNote& note : a_.audit) {
      out_.object().pair("code", note.code).pair("text", audit_text(note, a_.c, speech_)).key("lines").array();
      for (const std::size_t i : note.lines) out_.text(a_.c.lines[i].id);
      out_.end_array().end_object();
    }
    out_.end_array();
  }

  void questions() {
    out_.key("questions").array();
    for (const Question& q : a_.questions) {
      out_.object()
          .pair("asks", q.asks)
          .pair("code", q.code)
          .pair("text", question_text(q, a_.c, a_.lines, speech_))
          .own("effect", q.effect.plain())
          .key("affectsDeadline")
          .boolean(q.turns_day)
          .key("id");
      q.id.empty() ? out_.null() : out_.text(q.id);
      out_.key("line");
      q.line == Question::no_line ? out_.null() : out_.text(a_.c.lines[q.line].id);
      out_.end_object();
    }
    out_.end_array();
  }

  void caution(std::string_view code, std::string_view text) {
    out_.object().pair("code", code).pair("text", text).end_object();
  }
  /// Where no law file is there but it is known that no deposit may be held, or that no statute was found, that is
  /// said.
  std::string no_pack_key() const {
    const std::string key = "caution.place." + a_.c.jurisdiction;
    return speech_.has(key) ? key : "caution.no-pack";
  }
  /// Rent paid ahead that the law does not call a deposit, and of which no rule of the place speaks.
  bool rent_ahead_left_out() const {
    const bool spoken_of = a_.pack && one_names_money(a_.pack->not_deposit, "last-month");
    return !spoken_of && std::any_of(a_.c.deposits.begin(), a_.c.deposits.end(), [&](const Deposit& d) {
      return d.kind == "last-month" && !is_deposit(d, a_.pack);
    });
  }
  /// Law that was read against its sources a year ago or more, by the day of use.
  void old_law(const std::optional<Day>& reviewed, std::string_view place) {
    const Months age = reviewed ? whole_months(*reviewed, a_.today) : Months();
    if (age >= Months(12))
      caution("old-law", speech_.say("caution.old-law", {{"place", place}, {"months", std::to_string(age.count())}}));
  }
  bool interest_open() const {
    if (!a_.law) return false;
    const auto& shares = a_.law->interest().shares;
    return std::any_of(shares.begin(), shares.end(),
                       [](const InterestShare& share) { return share.applies == Tri::yes && share.at_least; });
  }
  void cautions() {
    out_.key("cautions").array();
    for (const std::string& code : rules_.always_cautions) caution(code, speech_.say("caution." + code));
    if (a_.c.jurisdiction.empty()) caution("no-law", speech_.say("caution.no-law"));
    else if (!a_.pack) caution("no-pack", speech_.say(no_pack_key()));
    else if (a_.pack->weak) caution("weak-pack", speech_.say("caution.weak-pack", {{"place", place_name(*a_.pack)}}));
    if (a_.pack) old_law(a_.pack->reviewed, place_name(*a_.pack));
    if (interest_open()) caution("interest-open", speech_.say("caution.interest-open"));
    if (a_.recognized) caution("recognized", speech_.say("caution.recognized"));
    if (rent_ahead_left_out()) caution("rent-ahead", speech_.say("caution.rent-ahead"));
    if (a_.c.tenancy.occupants.value_or(1) > 1) caution("several-tenants", speech_.say("caution.several-tenants"));
    if (a_.law)
      for (const Place& place : a_.pack->places) {
        if (holds(place.here, a_.law->view()) != Tri::yes) continue;
        if (const std::string& ask = place.ask.in(speech_.language()); !ask.empty())
          caution("local-rules-not-read", ask);
        old_law(place.reviewed, place.name.in(speech_.language()));
      }
    for (const Hazard& hazard : rules_.hazards) {
      bool concerned = false;
      for (std::size_t i = 0; i < a_.lines.size() && !concerned; ++i)
        concerned = is_about(hazard, a_.c.lines[i], a_.lines[i]);
      if (concerned) caution(hazard.code, hazard.text.in(speech_.language()));
    }
    out_.end_array();
  }

  void sources() {
    out_.key("sources").object();
    for (const Reference* r : used_) {
      out_.any_key(r->id)
          .object()
          .pair("text", title(*r))
          .pair("basis", r->read)
          .pair("basisText", source_basis_text(r->read, speech_))
          .key("url");
      r->url.empty() ? out_.null() : out_.text(r->url);
      out_.end_object();
    }
    out_.end_object();
  }

  const Assessment& a_;
  const Rules& rules_;
  Speech speech_;
  std::string practice_; ///< what stands for the title of common practice
  JsonOut out_;
  References used_;
  std::vector<const Rule*> line_rules_;
  /// A rule and the lines it may concern, by its permission on the first.
  struct SharedRule {
    const Permission* first = nullptr;
    std::vector<std::size_t> lines;
  };
  std::vector<SharedRule> shared_rules_;
};

} // namespace

std::string render(const Assessment& assessment, const Rules& rules) { return Renderer(assessment, rules).write(); }

std::string render_faults(const Faults& faults, Day today, int format) {
  JsonOut out;
  out.object().key("wearline").number(format).pair("engine", version()).own("today", iso(today)).key("errors").array();
  for (const Fault& fault : faults) {
    out.object().pair("code", fault.code).pair("at", fault.at).pair("text", fault.text).key("near");
    fault.near.empty() ? out.null() : out.text(fault.near);
    out.end_object();
  }
  out.end_array().end_object();
  return out.take();
}

} // namespace wearline
