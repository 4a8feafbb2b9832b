#include "assess.h"

#include "wearline/engine.h"

namespace wearline {

namespace {

/// The thing and finding as given; a kind without a thing stands for its usual element.
Subject subject_of(const Line& line, const Rules& rules) {
  Subject subject;
  subject.element = rules.wear.element(line.element);
  if (!subject.element && line.element.empty() && !line.kind.empty()) {
    const auto usual = rules.wear.element_of_kind.find(line.kind);
    if (usual != rules.wear.element_of_kind.end()) subject.element = rules.wear.element(usual->second);
  }
  if (!subject.element) return subject;
  subject.finding = subject.element->finding(line.finding);
  if (!subject.finding && line.finding.empty()) subject.finding = subject.element->finding("work-only");
  if (!subject.finding && line.finding.empty()) subject.finding = subject.element->finding("unspecified");
  return subject;
}

void apply_audit(const AuditNote& note, std::vector<LineAssessment>& lines) {
  if (note.effect == AuditNote::Effect::none || note.lines.empty()) return;
  LineAssessment& line = lines[note.lines.front()];
  const Range<Money> before = line.result.fair;
  if (before.high().is_zero()) return;
  const bool drop = note.effect == AuditNote::Effect::drop;
  line.result.fair = Range<Money>(Money(), drop ? Money() : before.likely(), before.high());
  Step step;
  step.code = drop ? "audit-drop" : "audit-doubt";
  step.from = before.likely();
  step.to = line.result.fair.likely();
  step.high = line.result.fair.high();
  step.said = note.said;
  line.steps.push_back(std::move(step));
}

void ask_about_money(const Assessment& a, std::vector<Question>& out) {
  const Case& c = a.c;
  if (!a.totals.deposit)
    out.push_back({c.deposits.empty() ? "/deposits" : "/deposits/0/amount", "deposit", nullptr, {}, Question::no_line, a.totals.claimed});
  if (!c.statement.refund_paid && !c.statement.stated_refund && a.totals.fair_refund)
    out.push_back({"/statement/refundPaid", "paid-back", nullptr, {}, Question::no_line, a.totals.fair_refund->likely()});
}

} // namespace

Assessment assess_case(Case given, const Rules& rules, Day today) {
  Assessment a;
  a.c = std::move(given);
  a.today = today;
  const Case& c = a.c;
  a.tenancy = tenancy_facts(c, today);

  LineContext context;
  context.tenancy = &a.tenancy;
  context.lives = &rules.lives;
  context.place = c.jurisdiction;

  a.lines.resize(c.lines.size());
  std::vector<AuditLine> audited(c.lines.size());
  for (std::size_t i = 0; i < c.lines.size(); ++i) {
    LineAssessment& line = a.lines[i];
    line.subject = subject_of(c.lines[i], rules);
    find_life(line.subject, c.lines[i], context);
    line.result = judge_line(c.lines[i], line.subject, context, &line.steps);
    line.turning_point = turning_point(c.lines[i], line.subject, context, line.result);
    audited[i] = {&c.lines[i], &line.subject, line.result.ages};
  }
  a.audit = audit(c, audited, rules.clashes);
  for (const AuditNote& note : a.audit) apply_audit(note, a.lines);
  a.totals = add_up(c, a.lines, Range<Money>(Money()));

  for (std::size_t i = 0; i < a.lines.size(); ++i)
    ask_about_line(i, c.lines[i], a.lines[i].subject, context, a.lines[i].result, a.questions);
  ask_about_tenancy(c, a.lines, context, a.questions);
  ask_about_money(a, a.questions);
  rank(a.questions);
  return a;
}

std::string assess(std::string_view case_json, const Rulebook& rulebook, Day today) {
  const Rules& rules = rulebook.rules();
  auto read = read_case(case_json, rules.names);
  if (const auto* faults = std::get_if<Faults>(&read)) return render_faults(*faults, today);
  return render(assess_case(std::move(std::get<Case>(read)), rules, today), rules);
}

} // namespace wearline
