#include "letters/letter_kinds.h"
#include "letters/letter_lines.h"
#include "wording/law_words.h"
#include "wording/line_text.h"

#include <algorithm>

namespace wearline {

namespace {

void add_title(Draft& d) {
  d.must("title", ParagraphRole::opening, d.letter.title);
  d.must("date", ParagraphRole::date, d.speech.day(d.a.today));
}

std::string place_name(const Draft& d) {
  const auto found = d.rules.place_names.find(d.c.jurisdiction);
  return found == d.rules.place_names.end() ? d.c.jurisdiction : found->second.in(d.speech.language());
}

/// What is known, as a table of two columns.
void add_facts(Draft& d) {
  Paragraph& p = d.must("facts", ParagraphRole::table, d.say("letter.note.facts"));
  p.head = {d.say("letter.note.fact"), d.say("letter.note.value")};
  const auto fact = [&](std::string_view key, std::string value) { p.rows.push_back({d.say(key), std::move(value)}); };
  const auto day = [&](std::string_view key, const std::optional<DaySpan>& on) {
    if (on) fact(key, d.speech.span(*on));
  };
  if (!d.c.jurisdiction.empty()) {
    const std::string place = place_name(d);
    fact("letter.note.place", d.c.locality.empty() ? place : on_one_line(d.c.locality) + ", " + place);
  }
  day("letter.note.began", d.c.tenancy.began);
  day("letter.note.ended", d.c.tenancy.ended);
  day("letter.note.keys", d.c.tenancy.possession_returned);
  day("letter.note.address", d.c.tenancy.forwarding_address_given);
  if (d.c.statement.came == Tri(false)) fact("letter.note.statement", d.say("letter.note.none-came"));
  day("letter.note.dated", d.c.statement.dated);
  day("letter.note.sent", d.c.statement.sent);
  day("letter.note.received", d.c.statement.received);
  if (p.rows.empty()) fact("letter.note.nothing", "");
}

/// Charges with verdict and range; what does not fit on a page is summed in one row.
void add_verdicts(Draft& d) {
  if (d.a.lines.empty()) return;
  Paragraph& p = d.must("charges", ParagraphRole::table, d.say("letter.note.charges"));
  for (const std::string_view column : {"charge", "charged", "fair", "verdict"})
    p.head.push_back(d.say("letter.note.", column));
  const std::size_t all = d.a.lines.size(), most = static_cast<std::size_t>(d.rules.letters.note_charges);
  const std::size_t shown = all <= most ? all : most;
  Money rest;
  Range<Money> rest_fair;
  for (std::size_t i = 0; i < all; ++i) {
    const LineResult& r = d.a.lines[i].result;
    p.lines.push_back(d.c.lines[i].id);
    if (i >= shown) {
      rest += r.claimed;
      rest_fair += r.fair;
    } else {
      p.rows.push_back({d.label(i), d.c.lines[i].amount ? d.money(r.claimed) : d.say("letter.table.no-amount"),
                        d.speech.money(r.fair), d.say("verdict.", name_of(r.verdict))});
    }
  }
  if (shown < all)
    p.rows.push_back({d.say("letter.note.more", {{"n", std::to_string(all - shown)}}), d.money(rest),
                      d.speech.money(rest_fair), ""});
  p.rows.push_back({d.say("letter.table.total"), d.money(d.a.totals.claimed), d.speech.money(d.a.totals.fair), ""});
}

void add_ranges(Draft& d) {
  const Totals& t = d.a.totals;
  Paragraph& p = d.must("sums", ParagraphRole::table, d.say("letter.note.sums"));
  p.head = {d.say("letter.sums.what"), d.say("letter.note.range"), d.say("letter.note.likely")};
  const auto row = [&](std::string_view key, const Range<Money>& m) {
    p.rows.push_back({d.say(key), d.speech.money(m), m.exact() ? std::string() : d.money(m.likely())});
  };
  if (t.deposit) row("letter.sums.deposit", *t.deposit);
  if (!t.interest.high().is_zero()) row("letter.sums.interest", t.interest);
  row("letter.note.fair-charges", t.fair);
  if (t.fair_refund) row("letter.sums.refund", *t.fair_refund);
  if (d.c.statement.refund_paid) row("letter.sums.paid-back", *d.c.statement.refund_paid);
  else if (d.c.statement.stated_refund) row("letter.sums.stated-back", *d.c.statement.stated_refund);
  if (t.shortfall) row("letter.sums.due", *t.shortfall);
  if (t.owed_by_tenant && !t.owed_by_tenant->high().is_zero()) row("letter.note.owed", *t.owed_by_tenant);
}

std::string_view state_name(DutyState state) {
  switch (state) {
  case DutyState::met:
    return "met";
  case DutyState::missed:
    return "missed";
  case DutyState::open:
    return "open";
  case DutyState::not_needed:
    return "not-needed";
  case DutyState::cannot_tell:
    break;
  }
  return "cannot-tell";
}

void add_dates(Draft& d) {
  if (!d.law.there()) return;
  const LawWords words(*d.a.law, d.rules.registry, d.rules.holidays, d.speech);
  Paragraph p;
  p.id = "dates";
  p.role = ParagraphRole::table;
  p.text = d.say("letter.note.dates");
  p.optional = true;
  for (const std::string_view column : {"duty", "last", "state", "law"})
    p.head.push_back(d.say("letter.note.", column));
  for (const DutyResult& duty : d.a.law->duties()) {
    if (duty.state == DutyState::not_needed || !duty.last) continue;
    const std::string_view who =
        duty.duty->who == Who::tenant ? "letter.note.tenant-duty" : "letter.note.landlord-duty";
    p.rows.push_back({d.say(who, {{"duty", words.label(*duty.duty)}}), d.speech.span(*duty.last),
                      d.say("letter.state.", state_name(duty.state)), d.law.cites(*duty.duty)});
  }
  if (!p.rows.empty()) d.letter.paragraphs.push_back(std::move(p));
}

void add_next_steps(Draft& d) {
  std::vector<std::string> steps;
  for (const LetterProposal& fit : propose_letters(d.a, d.rules)) {
    if (fit.kind == d.letter.kind) continue;
    steps.push_back(d.say(
        "letter.note.step",
        {{"kind", d.say("letter.kind.", name_of(fit.kind))},
         {"why", d.say("letter.fits.", fit.reason, {{"day", fit.day ? d.speech.day(*fit.day) : std::string()}})}}));
    if (steps.size() == 3) break;
  }
  add_list(d, "steps", ParagraphRole::list, d.say("letter.note.steps"), steps);
}

void add_questions(Draft& d, std::size_t most) {
  std::vector<std::string> questions;
  for (const Question& q : d.a.questions) {
    if (questions.size() == most) break;
    const std::string text = question_text(q, d.c, d.a.lines, d.speech);
    questions.push_back(q.swing.is_zero() ? text
                                          : d.say("letter.note.question", {{"text", text}, {"sum", d.money(q.swing)}}));
  }
  add_list(d, "questions", ParagraphRole::list, d.say("letter.note.questions"), questions);
}

/// Sources of law by name and how each was read.
void add_sources(Draft& d) {
  if (!d.law.there()) return;
  std::vector<std::string> items;
  const auto add = [&](const Rule& rule) {
    for (const std::uint16_t at : rule.sources) {
      const Reference& source = d.a.law->pack().sources[at];
      std::string item =
          d.say("letter.note.source", {{"cite", source.text}, {"read", read_text(source.read, d.speech)}});
      if (std::find(items.begin(), items.end(), item) == items.end()) items.push_back(std::move(item));
    }
  };
  for (const DutyResult& duty : d.a.law->duties())
    if (duty.state != DutyState::not_needed && duty.last) add(*duty.duty);
  for (const PaperResult* paper : d.law.defects()) add(*paper->rule);
  for (const ForfeitResult& forfeit : d.a.law->forfeits()) add(*forfeit.rule);
  add_list(d, "sources", ParagraphRole::list, d.say("letter.note.sources"), items);
}

/// A rule that applies, or may apply.
void add_rule(Draft& d, std::string id, const Rule& rule, bool sure, std::string_view key_elsewhere) {
  const std::string law = d.law.rule_says(rule, rule.text, key_elsewhere);
  if (!law.empty())
    d.may(std::move(id), ParagraphRole::line,
          d.say(sure ? "letter.court.rule" : "letter.court.rule.maybe", {{"says", law}}));
}

/// What a court may add to the sum due; never part of the fair refund.
void add_award(Draft& d) {
  if (!d.law.there() || !d.a.law->award().known) return;
  const Award& award = d.a.law->award();
  d.may("award", ParagraphRole::line,
        d.say(award.open ? "letter.court.award.open" : "letter.court.award",
              {{"least", d.money(award.least)}, {"most", d.money(award.most)}}));
  for (const RemedyResult& remedy : d.a.law->remedies())
    add_rule(d, "remedy-" + remedy.rule->id, *remedy.rule, remedy.applies == Tri(true), "letter.court.remedy");
}

void add_forfeits(Draft& d) {
  if (!d.law.there()) return;
  for (const ForfeitResult& forfeit : d.a.law->forfeits())
    add_rule(d, "forfeit-" + forfeit.rule->id, *forfeit.rule, forfeit.certain, "letter.forfeit.law");
}

void add_limit(Draft& d) {
  if (!d.law.there()) return;
  for (const Remark& rule : d.a.law->pack().small_claims) {
    if (applies(rule, d.a.law->view()) == Tri(false)) continue;
    const std::string text =
        rule.amount ? d.say("letter.court.limit", {{"sum", d.money(*rule.amount)}}) : std::string();
    d.may("limit-" + rule.id, ParagraphRole::line,
          d.speech.language() == "en" ? d.law.says(rule, rule.text) : d.law.says(rule, text));
  }
}

void add_evidence(Draft& d) {
  std::vector<std::string> items;
  const Case& c = d.c;
  const auto add = [&](std::string_view key) { items.push_back(d.say(key)); };
  add("letter.evidence.lease");
  add("letter.evidence.deposit");
  if (c.statement.came != Tri(false)) add("letter.evidence.statement");
  add(c.records.move_in.made == Tri(true) ? "letter.evidence.checklist" : "letter.evidence.checklist.if");
  add(c.records.photos_at_move_in == Tri(true) || c.records.photos_at_move_out == Tri(true)
          ? "letter.evidence.photos"
          : "letter.evidence.photos.if");
  if (c.tenancy.forwarding_address_given) add("letter.evidence.address");
  add("letter.evidence.letters");
  add("letter.evidence.witness");
  add_list(d, "evidence", ParagraphRole::list, d.say("letter.evidence.title"), items);
}

void add_what_court_decides(Draft& d) {
  std::vector<std::string> items{d.say("letter.court.decides.wear"), d.say("letter.court.decides.sum")};
  if (!d.law.missed().empty()) items.push_back(d.say("letter.court.decides.late"));
  if (!d.law.defects().empty()) items.push_back(d.say("letter.court.decides.papers"));
  if (d.law.there() && std::any_of(d.a.law->remedies().begin(), d.a.law->remedies().end(),
                                   [](const RemedyResult& r) { return !r.certain; }))
    items.push_back(d.say("letter.court.decides.more"));
  add_list(d, "decides", ParagraphRole::list, d.say("letter.court.decides"), items);
}

void add_missed(Draft& d) {
  for (const DutyResult* duty : d.law.missed())
    d.may("missed-" + duty->duty->id, ParagraphRole::line, d.law.says(*duty->duty, d.law.missed_day(*duty)));
}

} // namespace

void write_adviser_note(Draft& d) {
  add_title(d);
  add_facts(d);
  add_verdicts(d);
  add_ranges(d);
  add_dates(d);
  add_next_steps(d);
  add_questions(d, 5);
  add_sources(d);
  warn_about_law(d);
  add_caution(d);
}

void write_small_claims_sheet(Draft& d) {
  add_title(d);
  d.must("forms", ParagraphRole::opening, d.say("letter.court.forms"));
  add_facts(d);
  add_ranges(d);
  add_missed(d);
  add_forfeits(d);
  add_award(d);
  add_limit(d);
  add_verdicts(d);
  add_dates(d);
  add_evidence(d);
  add_what_court_decides(d);
  add_questions(d, 5);
  d.must("help", ParagraphRole::closing, d.say("letter.court.help"));
  warn_about_law(d);
  add_caution(d);
}

} // namespace wearline
