#include "law/counting.h"
#include "letters/letter_kinds.h"
#include "letters/letter_lines.h"

#include <algorithm>

namespace wearline {

namespace {

bool among(const std::vector<std::string>& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

/// What the statement charges for a line: the likely fair sum.
Money charged(const LineAssessment& line) { return line.result.fair.likely(); }

void add_facts(Draft& d) {
  Sentences text;
  const Tenancy& t = d.c.tenancy;
  if (t.ended)
    text.add(d.say(t.ended->earliest <= d.a.today ? "letter.landlord.ended" : "letter.landlord.ends",
                   {{"when", d.when(*t.ended)}}));
  if (t.possession_returned && t.possession_returned->earliest <= d.a.today)
    text.add(d.say("letter.landlord.keys", {{"when", d.when(*t.possession_returned)}}));
  d.may("facts", ParagraphRole::opening, text.take());
}

void add_deposits(Draft& d) {
  if (d.c.deposits.empty()) return;
  Paragraph& p = d.must("deposits", ParagraphRole::table, d.say("letter.deposits.title"));
  p.head = {d.say("letter.deposits.kind"), d.say("letter.deposits.paid"), d.say("letter.deposits.sum")};
  for (const Deposit& deposit : d.c.deposits) {
    const std::string kind = deposit.kind.empty() ? "security" : deposit.kind;
    p.rows.push_back({d.has("letter.deposit.", kind) ? d.say("letter.deposit.", kind) : on_one_line(kind),
                      deposit.paid ? d.speech.span(*deposit.paid) : d.say("letter.placeholder.date"),
                      deposit.amount ? d.money(*deposit.amount) : d.say("letter.placeholder.amount")});
  }
}

void add_charges(Draft& d) {
  Paragraph& p = d.must("charges", ParagraphRole::table, d.say("letter.statement.title"));
  for (const std::string_view column : {"charge", "cost", "kept"}) p.head.push_back(d.say("letter.statement.", column));
  for (std::size_t i = 0; i < d.a.lines.size(); ++i) {
    if (charged(d.a.lines[i]).is_zero()) continue;
    p.lines.push_back(d.c.lines[i].id);
    p.rows.push_back({d.label(i), d.money(d.a.lines[i].result.claimed), d.money(charged(d.a.lines[i]))});
  }
  p.rows.push_back({d.say("letter.table.total"), "", d.money(d.a.totals.fair.likely())});
}

/// One paragraph a charge: what was wrong, how old it was, how the sum came about, what is enclosed for it.
void add_reasons(Draft& d) {
  for (std::size_t i = 0; i < d.a.lines.size(); ++i) {
    const LineAssessment& line = d.a.lines[i];
    if (charged(line).is_zero() || d.c.lines[i].credit == Tri(true)) continue;
    Sentences text;
    text.add(d.say("letter.line.head", {{"charge", d.charge(i)}, {"sum", d.money(line.result.claimed)}}));
    if (line.subject.finding && line.subject.element && line.subject.element->about_condition)
      text.add(d.say("letter.landlord.finding", {{"thing", line.subject.element->label.in(d.speech.language())},
                                                 {"finding", line.subject.finding->label.in(d.speech.language())}}));
    text.add(reason(d, i, "letter.landlord.reason."));
    text.add(arithmetic(d, i));
    text.add(d.say("letter.landlord.kept", {{"sum", d.money(charged(line))}}));
    std::vector<std::string> proof;
    for (const std::string& paper : d.c.lines[i].proof) proof.push_back(d.law.paper(d.rules.registry.paper(paper)));
    if (!proof.empty()) text.add(d.say("letter.landlord.proof", {{"papers", listed(proof, d.speech)}}));
    d.must("line-" + d.c.lines[i].id, ParagraphRole::line, text.take()).lines.push_back(d.c.lines[i].id);
  }
}

void add_refund(Draft& d) {
  const Totals& t = d.a.totals;
  if (!t.fair_refund) {
    d.must("refund", ParagraphRole::ask, d.say("letter.landlord.refund.unknown"));
    return;
  }
  if (!t.owed_by_tenant->likely().is_zero()) {
    d.must("refund", ParagraphRole::ask,
           d.say("letter.landlord.balance", {{"sum", d.money(t.owed_by_tenant->likely())}}));
    return;
  }
  const Money due = t.shortfall->likely();
  if (due.is_zero() && t.paid_back.is_zero()) d.must("refund", ParagraphRole::ask, d.say("letter.landlord.nothing"));
  else if (due.is_zero())
    d.must("refund", ParagraphRole::ask, d.say("letter.landlord.refunded", {{"sum", d.money(t.paid_back)}}));
  else d.must("refund", ParagraphRole::ask, d.say("letter.landlord.refund", {{"sum", d.money(due)}}));
}

/// A rule of the papers that a statement in this case has to meet, or may have to.
bool has_to_meet(const PaperRule& rule, const Draft& d) {
  if (applies(rule, d.a.law->view()) == Tri(false)) return false;
  return d.law.footing(rule) != Footing::none;
}

/// Papers to enclose: what the law lists, what came with single charges, the refund.
std::vector<std::string> enclosures(const Draft& d) {
  std::vector<std::string> names;
  const auto add = [&](const std::string& name) {
    if (!name.empty() && std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  };
  // Members of the statement itself are no enclosures.
  const std::vector<std::string> inside{"written",
                                        "itemised",
                                        "reasons",
                                        "estimated-cost-per-item",
                                        "deposit-shown",
                                        "interest-shown",
                                        "labour-hours-and-rate",
                                        "contractor-contact",
                                        "signed",
                                        "sworn",
                                        "landlord-address",
                                        "tenant-rights-notice",
                                        "prepaid-rent-apart",
                                        "refund-enclosed"};
  const auto add_paper = [&](const std::string& id) {
    if (!among(inside, id)) add(d.law.paper(d.rules.registry.paper(id)));
  };
  if (d.law.there())
    for (const PaperResult& paper : d.a.law->papers())
      if (has_to_meet(*paper.rule, d))
        for (const PaperId id : paper.rule->requires_all) add_paper(d.rules.registry.papers[index(id)].id);
  for (const std::string& paper : d.c.statement.enclosed) add_paper(paper);
  for (std::size_t i = 0; i < d.c.lines.size(); ++i)
    if (!charged(d.a.lines[i]).is_zero())
      for (const std::string& paper : d.c.lines[i].proof) add_paper(paper);
  if (d.a.totals.shortfall && !d.a.totals.shortfall->likely().is_zero())
    add(d.say("letter.enclosure.refund", {{"sum", d.money(d.a.totals.shortfall->likely())}}));
  return names;
}

/// What the law of the place wants in the statement and the case does not hold: a place for it, in brackets.
void add_blanks(Draft& d) {
  if (!d.law.there()) return;
  std::vector<std::string_view> done;
  for (const PaperResult& paper : d.a.law->papers()) {
    if (!has_to_meet(*paper.rule, d)) continue;
    for (const PaperId id : paper.rule->requires_all) {
      const std::string& name = d.rules.registry.papers[index(id)].id;
      if (!d.has("letter.blank.", name) || std::find(done.begin(), done.end(), name) != done.end()) continue;
      done.push_back(name);
      d.must("blank-" + name, ParagraphRole::closing, d.say("letter.blank.", name));
    }
  }
}

/// The rules a statement has to meet, for the landlord to check against before sending.
void warn_about_papers(Draft& d) {
  if (!d.law.there()) return;
  for (const PaperResult& paper : d.a.law->papers())
    if (has_to_meet(*paper.rule, d))
      d.warn("paper-" + paper.rule->id, d.law.rule_says(*paper.rule, paper.rule->text, "letter.paper-rule.elsewhere"));
  for (const DutyResult& duty : d.a.law->duties()) {
    const std::string_view name = d.law.name_of(*duty.duty);
    if (duty.duty->who != Who::landlord || !duty.last || duty.last->latest == last_day) continue;
    if (name != "itemise" && name != "notice-of-claim" && name != "return-deposit" && name != "refund-balance")
      continue;
    if (duty.state == DutyState::open)
      d.warn("send-by", d.say("letter.warn.landlord.send-by", {{"day", d.speech.day(duty.last->earliest)}}));
    if (duty.state == DutyState::missed)
      d.warn("late", d.say("letter.warn.landlord.late", {{"day", d.speech.day(duty.last->latest)}}));
  }
}

void warn_about_charges(Draft& d) {
  for (std::size_t i = 0; i < d.a.lines.size(); ++i) {
    const LineResult& r = d.a.lines[i].result;
    if (!d.c.lines[i].amount) d.warn("no-amount", d.say("letter.warn.landlord.no-amount", {{"charge", d.charge(i)}}));
    else if (r.fair.likely().is_zero() && !r.claimed.is_zero())
      d.warn("left-out",
             d.say("letter.warn.landlord.left-out", {{"charge", d.charge(i)}, {"sum", d.money(r.claimed)}}));
    else if (!r.certain())
      d.warn("open",
             d.say("letter.warn.landlord.open",
                   {{"charge", d.charge(i)}, {"range", d.speech.money(r.fair)}, {"sum", d.money(r.fair.likely())}}));
  }
}

} // namespace

void write_itemized_statement(Draft& d) {
  add_letter_head(d, "letter.from.landlord",
                  d.c.tenancy.forwarding_address_given ? "letter.to.tenant" : "letter.to.tenant.last");
  d.must("subject", ParagraphRole::opening, d.say("letter.subject.itemized-statement"));
  d.must("greeting", ParagraphRole::opening, d.say("letter.greeting.tenant"));
  const bool any = !d.a.totals.fair.likely().is_zero();
  d.must("purpose", ParagraphRole::opening,
         d.say(any ? "letter.purpose.itemized-statement" : "letter.purpose.itemized-statement.none"));
  add_facts(d);
  add_deposits(d);
  if (any) {
    add_charges(d);
    add_reasons(d);
  }
  add_sums_table(d, "letter.statement.");
  add_refund(d);
  add_blanks(d);
  d.may("reply", ParagraphRole::closing, d.say("letter.landlord.reply"));
  d.must("sign", ParagraphRole::closing, d.say("letter.sign.landlord"));
  add_list(d, "enclosures", ParagraphRole::enclosures, d.say("letter.enclosures"), enclosures(d));
  d.warn("placeholders", d.say("letter.warn.placeholders"));
  warn_about_charges(d);
  warn_about_papers(d);
  warn_about_law(d);
  add_caution(d);
}

void write_cover_note(Draft& d) {
  add_letter_head(d, "letter.from.landlord",
                  d.c.tenancy.forwarding_address_given ? "letter.to.tenant" : "letter.to.tenant.last");
  d.must("subject", ParagraphRole::opening, d.say("letter.subject.cover-note"));
  d.must("greeting", ParagraphRole::opening, d.say("letter.greeting.tenant"));
  d.must("purpose", ParagraphRole::opening, d.say("letter.purpose.cover-note"));
  add_facts(d);
  const std::string& how = d.c.statement.how;
  d.must("sent", ParagraphRole::opening,
         d.say("letter.cover.sent",
               {{"day", d.speech.day(d.a.today)},
                {"how", d.has("letter.how.", how) ? d.say("letter.how.", how) : d.say("letter.placeholder.how")}}));
  add_refund(d);
  std::vector<std::string> items{d.say("letter.enclosure.statement")};
  for (std::string& item : enclosures(d)) items.push_back(std::move(item));
  add_list(d, "enclosures", ParagraphRole::enclosures, d.say("letter.enclosures"), items);
  d.may("reply", ParagraphRole::closing, d.say("letter.landlord.reply"));
  d.must("sign", ParagraphRole::closing, d.say("letter.sign.landlord"));
  d.warn("placeholders", d.say("letter.warn.placeholders"));
  warn_about_papers(d);
  warn_about_law(d);
  add_caution(d);
}

} // namespace wearline
