#include "assess/assess.h"

#include "case/case_reader.h"
#include "judging/date_order.h"
#include "judging/inquiry.h"
#include "law/applies.h"
#include "reading/line_fields.h"
#include "reading/line_names.h"
#include "reading/month_named.h"

#include <algorithm>

namespace wearline {

namespace {

/// The thing and finding as given; a kind without a thing stands for its usual element.
Subject subject_of(const Line& line, const Rules& rules) {
  Subject subject;
  subject.element = rules.wear.element(line.element);
  if (!subject.element && line.element.empty() && line.kind != ChargeKind::unknown) {
    const auto usual = rules.wear.element_of_kind.find(line.kind);
    if (usual != rules.wear.element_of_kind.end()) subject.element = rules.wear.element(usual->second);
  }
  if (!subject.element) return subject;
  subject.finding = subject.element->finding(line.finding);
  if (!subject.finding && line.finding.empty()) subject.finding = subject.element->finding("work-only");
  if (!subject.finding && line.finding.empty()) subject.finding = subject.element->finding("unspecified");
  return subject;
}

DaySpan days_of(int year, unsigned month) {
  const auto named = date::year{year} / date::month{month};
  return {Day{named / 1}, Day{named / date::last}};
}

/// The month of this number that lies nearest to a day.
DaySpan nearest_month(unsigned month, Day day) {
  const int year = static_cast<int>(date::year_month_day{day}.year());
  DaySpan best{};
  std::optional<int> least;
  for (const int y : {year - 1, year, year + 1}) {
    const DaySpan days = days_of(y, month);
    const int apart =
        std::max({static_cast<int>((days.earliest - day).count()), static_cast<int>((day - days.latest).count()), 0});
    if (!least || apart < *least) least = apart, best = days;
  }
  return best;
}

/// "August rent" is for the days of that August which lies nearest to the end of the tenancy. Where the tenancy ended
/// within that month, or a stay is charged for a part of it, the words leave the days open.
void rent_of_month_named(Line& line, const Subject& subject, FromWords& words, const Tenancy& tenancy,
                         const RecognizerRules& recognizer) {
  if (!subject.element || subject.element->id != "rent" || line.from || line.to || line.text.empty()) return;
  const auto& struck = line.not_from_words;
  if (std::find(struck.begin(), struck.end(), "periodStart") != struck.end()) return;
  const auto& out = tenancy.ended ? tenancy.ended : tenancy.possession_returned;
  if (!out || !out->known() || !recognizer.complete()) return;
  const auto named = month_named(line.text, recognizer);
  if (!named) return;
  const DaySpan days =
      named->year != 0 ? days_of(named->year, named->month) : nearest_month(named->month, out->earliest);
  const bool after = days.earliest > out->latest;
  const auto& rent = tenancy.monthly_rent;
  const bool whole = !rent || !line.amount || *line.amount >= rent->part({19, 20});
  if (!after && (days.latest > out->latest || !whole)) return;
  line.from = DaySpan{days.earliest, days.earliest};
  line.to = DaySpan{days.latest, days.latest};
  words.used.push_back({"periodStart", iso(days.earliest), named->start, named->end});
  words.used.push_back({"periodEnd", iso(days.latest), named->start, named->end});
}

/// Rent for days after the tenancy ended is none that a stay left unpaid: it is asked for a notice, or for a loss.
void rent_after_the_end(Line& line, Subject& subject, const Tenancy& tenancy) {
  if (subject.confidence == 100 || !subject.element || subject.element->id != "rent" || !subject.finding) return;
  if (subject.finding->id != "unpaid-month" && subject.finding->id != "balance-short") return;
  const auto& out = tenancy.ended ? tenancy.ended : tenancy.possession_returned;
  if (!out || !line.from || line.from->earliest <= out->latest) return;
  subject.finding = subject.element->finding("notice-shortfall");
  if (subject.finding) line.finding = subject.finding->id;
}

/// The place's own useful lives, by class of things.
OwnLives own_lives(const Assessment& a, const WearGuide& guide) {
  OwnLives out;
  if (!a.law) return out;
  for (const Remark& rule : a.law->pack().depreciation) {
    if (rule.lives.empty() || applies(rule, a.law->view()) != Tri::yes) continue;
    const References references = references_of(*a.pack, rule);
    for (const auto& [name, years] : rule.lives) {
      const Element* element = guide.element(name);
      const Months months(years.num * 12 / years.den);
      if (months > Months())
        out.push_back({element && !element->life_class.empty() ? element->life_class : name, Life{months},
                       references.empty() ? nullptr : references.front()});
    }
  }
  return out;
}

void apply_audit(const AuditNote& note, std::vector<LineAssessment>& lines) {
  if (note.effect == AuditNote::Effect::none || note.lines.empty()) return;
  LineAssessment& line = lines[note.lines.front()];
  const Range<Money> before = line.result.fair;
  if (before.high().is_zero()) return;
  if (note.effect == AuditNote::Effect::limit && before.high() <= note.found) return;
  Step step;
  switch (note.effect) {
  case AuditNote::Effect::drop:
    line.result.fair = Range<Money>(Money(), Money(), before.high());
    step.code = "audit-drop";
    break;
  case AuditNote::Effect::limit:
    line.result.fair = before.capped(note.found);
    step.code = "audit-limit";
    break;
  default:
    line.result.fair = Range<Money>(Money(), before.likely(), before.high());
    step.code = "audit-doubt";
  }
  step.from = before.likely();
  step.to = line.result.fair.likely();
  step.low = line.result.fair.low();
  step.high = line.result.fair.high();
  step.said = note.said;
  line.steps.push_back(std::move(step));
}

Reckoning reckoning_of(const Assessment& a) {
  Reckoning r;
  r.fair = against_deposit(a.c, a.lines, a.pack);
  r.deposit = a.totals.deposit;
  r.interest = a.totals.interest;
  r.apart = a.totals.kept_apart;
  r.paid_back = a.totals.paid_back;
  return r;
}

void ask_about_money(const Assessment& a, std::vector<Question>& out) {
  const Case& c = a.c;
  if (!a.totals.deposit)
    out.push_back({c.deposits.empty() ? "/deposits" : "/deposits/0/amount", "deposit", nullptr, Question::no_line,
                   a.totals.claimed});
  if (!c.statement.refund_paid && !c.statement.stated_refund && a.totals.fair_refund)
    out.push_back({"/statement/refundPaid", "refund-paid", nullptr, Question::no_line, a.totals.fair_refund->likely()});
}

/// The day a thing was laid, where its age is known instead: before the move-out, or before the move-in.
void date_from_age(Line& line, const TenancyFacts& tenancy) {
  if (line.installed) return;
  const bool now = !line.age_years.empty();
  const auto age = age_span(now ? line.age_years : line.age_years_at_move_in);
  if (!age || (!now && !tenancy.move_in)) return;
  const DaySpan until = now ? tenancy.move_out : *tenancy.move_in;
  const auto back = [](Day day, Months months) { return std::max(min_day, add_months(day, -months)); };
  line.installed = DaySpan{age->most ? back(until.earliest, *age->most) : min_day, back(until.latest, age->least)};
}

/// A thing that is unsure: the range spans what its other readings would come to, and where they lead to another answer
/// the line stays open and has no middle.
void span_other_readings(const Case& c, std::size_t i, const Rules& rules, const LineContext& context,
                         LineAssessment& line) {
  LineResult& r = line.result;
  const Range<Money> before = r.fair;
  bool agree = true;
  for (const Alternative& other : line.words.also) {
    Line as_other = c.lines[i];
    as_other.element = other.element;
    as_other.finding = other.finding;
    Subject subject = subject_of(as_other, rules);
    if (!subject.element) continue;
    as_other.kind = subject.element->kind;
    find_life(subject, as_other, context);
    const LineResult there = judge_line(as_other, subject, context);
    r.fair = r.fair.widened(there.fair);
    agree = agree && there.verdict == r.verdict;
  }
  if (!agree) {
    r.verdict = Verdict::undetermined;
    r.no_middle = true;
    r.fair = Range<Money>(r.fair.low(), r.fair.low(), r.fair.high());
  }
  if (r.fair == before) return;
  Step step;
  step.code = "other-readings";
  step.from = before.likely();
  step.to = r.fair.likely();
  step.low = r.fair.low();
  step.high = r.fair.high();
  line.steps.push_back(std::move(step));
}

/// An unsure thing is asked after; its answer moves the sum at most as far as the range goes.
void ask_about_thing(const Assessment& a, std::size_t i, std::vector<Question>& out) {
  const LineAssessment& line = a.lines[i];
  if (!line.words.unsure()) return;
  const Range<Money>& fair = line.result.fair;
  out.push_back({"/lines/" + std::to_string(i) + "/element", "is-it", nullptr, i, fair.high() - fair.low()});
}

/// Where words and a field say different things and it moves the sum: which is right?
void ask_about_words(const Assessment& a, std::size_t i, const LineContext& context, std::vector<Question>& out) {
  for (const WordFact& fact : a.lines[i].words.against) {
    Line as_said = a.c.lines[i];
    set_field(as_said, fact);
    const Range<Money> here = a.lines[i].result.fair, there = judge_line(as_said, a.lines[i].subject, context).fair;
    const auto apart = [](Money x, Money y) { return x < y ? y - x : x - y; };
    const Money effect = std::max(
        {apart(here.low(), there.low()), apart(here.likely(), there.likely()), apart(here.high(), there.high())});
    out.push_back({"/lines/" + std::to_string(i) + "/" + fact.field, "words", nullptr, i, effect});
  }
}

/// A step of the law rests on the rules that bar or limit the line, with their statutes in the pack.
void cite_law(LineAssessment& line, const Pack& pack) {
  using Says = Permission::Says;
  for (Step& step : line.steps) {
    const bool limits = step.code == "law-limit";
    if (!limits && step.code != "law-barred" && step.code != "law-bars-wear") continue;
    for (const Permission& p : line.permissions) {
      const bool bars = p.says == Says::bar || p.says == Says::not_listed || p.says == Says::needs_proof;
      if (p.applies != Tri::yes || (limits ? p.says != Says::limit : !bars)) continue;
      for (const Reference* r : references_of(pack, *p.rule))
        if (std::find(step.sources.begin(), step.sources.end(), r) == step.sources.end()) step.sources.push_back(r);
    }
  }
}

/// Room for the steps of most lines.
constexpr std::size_t usual_steps = 6;

} // namespace

std::unique_ptr<Assessment> assess_case(Case given, const Rules& rules, Day today, std::string_view without_decision) {
  auto made = std::make_unique<Assessment>();
  Assessment& a = *made;
  a.c = std::move(given);
  a.today = today;
  const Case& c = a.c;
  a.lines.resize(c.lines.size());
  for (std::size_t i = 0; i < c.lines.size(); ++i) {
    FromWords& words = a.lines[i].words = fill_from_text(a.c.lines[i], rules.recognizer);
    const int confidence = words.confidence;
    Subject& subject = a.lines[i].subject;
    subject = subject_of(c.lines[i], rules);
    subject.confidence = confidence;
    subject.harm_named = words.harm_named;
    rent_of_month_named(a.c.lines[i], subject, words, c.tenancy, rules.recognizer);
    rent_after_the_end(a.c.lines[i], subject, c.tenancy);
    a.recognized = a.recognized || confidence < 100;
    if (subject.element && c.lines[i].kind == ChargeKind::unknown) a.c.lines[i].kind = subject.element->kind;
  }
  a.tenancy = tenancy_facts(c, today);
  for (Line& line : a.c.lines) date_from_age(line, a.tenancy);
  a.pack = rules.pack(c.jurisdiction);
  if (a.pack) a.law = std::make_unique<Law>(c, *a.pack, rules.registry, rules.holidays, today);

  const OwnLives lives = own_lives(a, rules.wear);
  LineContext context;
  context.tenancy = &a.tenancy;
  context.lives = &rules.lives;
  context.weights = &rules.wear.weights;
  context.place = c.jurisdiction;
  context.law = a.law.get();
  context.own_lives = &lives;
  context.precedents = &rules.precedents;
  context.without_decision = without_decision;

  std::vector<AuditLine> audited(c.lines.size());
  for (std::size_t i = 0; i < c.lines.size(); ++i) {
    LineAssessment& line = a.lines[i];
    line.steps.reserve(usual_steps);
    find_life(line.subject, c.lines[i], context);
    line.result = judge_line(c.lines[i], line.subject, context, &line.steps);
    span_other_readings(c, i, rules, context, line);
    line.turning_point = turning_point(c.lines[i], line.subject, context, line.result);
    if (a.law) {
      line.permissions = a.law->permissions(c.lines[i], {line.result.asked.wear, line.result.asked.age_months});
      cite_law(line, *a.pack);
    }
    line.alike = rules.precedents.alike(c.lines[i], line.subject, without_decision);
    if (c.show_methods) line.methods = by_methods(c.lines[i], line.subject, context, line.result);
    audited[i] = {&c.lines[i], &line.subject, line.result.depreciates, line.result.verdict == Verdict::barred};
  }
  a.audit = audit(c, audited, rules.audit);
  for (const AuditNote& note : a.audit) apply_audit(note, a.lines);
  a.totals = add_up(c, a.lines, a.law ? a.law->interest().owed : Range<Money>(Money()), a.pack);
  if (a.law) a.law->settle(reckoning_of(a));

  for (std::size_t i = 0; i < a.lines.size(); ++i) ask_about_words(a, i, context, a.questions);
  for (std::size_t i = 0; i < a.lines.size(); ++i) ask_about_thing(a, i, a.questions);
  for (std::size_t i = 0; i < a.lines.size(); ++i)
    ask_about_line(i, c.lines[i], a.lines[i].subject, context, a.lines[i].result, a.questions);
  ask_about_tenancy(c, a.lines, context, a.questions);
  ask_about_money(a, a.questions);
  if (a.law) ask_about_law(a, a.questions);
  for (const DateClash& clash : impossible_dates(c)) {
    a.questions.push_back({clash.asks, "date-order", nullptr, clash.line, {}});
    a.questions.back().turns_day = true;
  }
  rank(a.questions);
  return made;
}

std::variant<Case, Faults> read_case_for(std::string_view case_json, const Rules& rules) {
  auto read = read_case(case_json, rules.names);
  const Case* c = std::get_if<Case>(&read);
  if (!c || c->jurisdiction.empty() || !rules.names.jurisdictions.has(c->jurisdiction) || rules.pack(c->jurisdiction))
    return read;
  return Faults{{"pack-not-loaded", "/jurisdiction", "The law file of this place is not loaded.", ""}};
}

} // namespace wearline
