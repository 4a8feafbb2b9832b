// The adviser's note: one page for the file or for a colleague. It may show what a letter never does: ranges, what is
// likely, what a court may award.

#include "law/applies.h"
#include "letters/letter_groups.h"
#include "letters/letter_parts.h"
#include "letters/letter_proposals.h"
#include "letters/letter_writers.h"
#include "wording/law_words.h"
#include "wording/line_text.h"

#include <algorithm>

namespace wearline {

namespace {

constexpr std::size_t most_days = 8, most_steps = 3, most_questions = 4, most_sources = 6, most_exposure = 2,
                      most_answers = 5, most_bars = 3;

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
  const Tenancy& t = d.c.tenancy;
  const bool same_day = t.ended && t.possession_returned && t.ended->known() &&
                        t.ended->earliest == t.possession_returned->earliest && t.possession_returned->known();
  if (t.began && t.ended) {
    fact("letter.note.tenancy", d.say(same_day ? "letter.note.from-to.keys" : "letter.note.from-to",
                                      {{"from", d.speech.span(*t.began)}, {"to", d.speech.span(*t.ended)}}));
  } else {
    day("letter.note.began", t.began);
    day("letter.note.ended", t.ended);
  }
  if (!t.began || !same_day) day("letter.note.keys", t.possession_returned);
  day("letter.note.address", d.c.tenancy.forwarding_address_given);
  if (!d.c.tenancy.forwarding_address_given && !p.rows.empty() && d.c.side != "landlord")
    fact("letter.note.address", d.say("letter.note.not-entered"));
  if (d.c.statement.statement_received == Tri::no) fact("letter.note.statement", d.say("letter.note.none-came"));
  std::string list; // in one row: the note has one page
  const auto part = [&](std::string_view key, const std::optional<DaySpan>& on) {
    if (on) list += (list.empty() ? "" : "; ") + d.say(key, {{"day", d.speech.span(*on)}});
  };
  part("letter.note.dated", d.c.statement.dated);
  part("letter.note.sent", d.c.statement.sent);
  part("letter.note.received", d.c.statement.received);
  if (!list.empty()) fact("letter.note.statement", list);
  for (const Event& event : d.c.events)
    if (d.has("letter.note.event.", event.what)) fact("letter.note.event." + event.what, d.speech.span(event.on));
  // What was answered of the law's own questions.
  std::size_t told = 0;
  for (const auto& [id, value] : d.c.circumstances) {
    const bool* yes = std::get_if<bool>(&value);
    const std::string question = yes && d.law.there() ? d.law.question(id) : std::string();
    if (!question.empty() && told++ < most_answers)
      p.rows.push_back({question, d.say(*yes ? "letter.note.yes" : "letter.note.no")});
  }
  if (p.rows.empty()) fact("letter.note.nothing", "");
}

/// Charges with range and ground; what does not fit on a page is summed in one row.
void add_charges(Draft& d, const Claim& claim) {
  if (d.a.lines.empty()) return;
  Paragraph& p = d.must("charges", ParagraphRole::table, d.say("letter.note.charges"));
  for (const std::string_view column :
       {"letter.charges.charge", "letter.charges.charged", "letter.note.fair", "letter.charges.why"})
    p.head.push_back(d.say(column));
  const std::size_t all = d.a.lines.size(), most = static_cast<std::size_t>(d.rules.letters.note_charges);
  Money rest;
  Range<Money> rest_fair;
  for (std::size_t i = 0; i < all; ++i) {
    const LineResult& r = d.a.lines[i].result;
    p.lines.push_back(d.c.lines[i].id);
    if (i >= most) {
      rest += r.claimed;
      rest_fair += r.fair;
      continue;
    }
    const std::string_view ground = ground_of(d, i, claim.lines[i].stand);
    p.rows.push_back({d.label(i), d.c.lines[i].amount ? d.money(r.claimed) : d.say("letter.charges.no-amount"),
                      d.speech.money(r.fair),
                      ground.empty() ? d.say("letter.ground.undisputed") : d.say("letter.ground.", ground)});
  }
  if (all > most)
    p.rows.push_back(
        {d.say("letter.note.more", {{"n", std::to_string(all - most)}}), d.money(rest), d.speech.money(rest_fair), ""});
  p.rows.push_back({d.say("letter.charges.total"), d.money(d.a.totals.claimed), d.speech.money(d.a.totals.fair), ""});
}

void add_sums(Draft& d, const Claim& claim) {
  const Totals& t = d.a.totals;
  Paragraph& p = d.must("sums", ParagraphRole::table, d.say("letter.note.sums"));
  p.head = {d.say("letter.sums.what"), d.say("letter.sums.sum")};
  const auto row = [&](std::string_view key, const Range<Money>& m) {
    p.rows.push_back({d.say(key), d.speech.money(m)});
  };
  if (claim.deposit) row("letter.sums.deposit", *claim.deposit);
  Money ahead; // no deposit in a letter, but what a court may award can hang on it
  for (const Deposit& deposit : d.c.deposits)
    if (deposit.kind == "last-month") ahead += deposit.amount.value_or(Money());
  if (!ahead.is_zero()) row("letter.deposit.last-month", ahead);
  if (!t.interest.high().is_zero()) row("letter.sums.interest", t.interest);
  row("letter.note.fair-charges", t.fair);
  if (!t.paid_apart.high().is_zero()) row("letter.note.paid-apart", t.paid_apart);
  if (claim.paid_known || claim.paid_stated)
    row(claim.paid_known ? "letter.sums.paid-back" : "letter.sums.stated-back", claim.paid);
  if (claim.deposit && d.c.side != "landlord") row("letter.note.asked", claim.sum);
  if (const auto due = still_due(d, claim)) row("letter.sums.due", *due);
  if (const auto owed = owed_beyond(d, claim); owed && !owed->high().is_zero()) row("letter.note.owed", *owed);
  if (d.law.there() && d.a.law->award().known)
    row("letter.note.award", Range<Money>(d.a.law->award().least, d.a.law->award().least, d.a.law->award().most));
}

/// What the law adds and what that hangs on, as the law has it; without an address, what follows from that.
void add_exposure(Draft& d) {
  if (!d.law.there()) return;
  std::vector<std::string> items;
  const auto add = [&](const Rule& rule, std::string_view elsewhere, std::size_t most = most_exposure) {
    std::string said = d.law.rule_says(rule, elsewhere);
    if (!said.empty() && items.size() < most && std::find(items.begin(), items.end(), said) == items.end())
      items.push_back(std::move(said));
  };
  // What takes away the right to keep anything weighs more than what comes on top.
  if (!d.law.lease_goes_on())
    for (const ForfeitResult& forfeit : d.a.law->forfeits())
      if (forfeit.applies == Tri::yes) add(*forfeit.rule, "letter.forfeit.law", 1);
  const std::size_t most = items.size() + most_exposure;
  for (const RemedyResult& remedy : d.a.law->remedies())
    if (remedy.applies != Tri::no) add(*remedy.rule, "letter.penalty.law", most);
  if (!d.c.tenancy.forwarding_address_given)
    for (const Remark& rule : d.a.law->pack().address)
      if (rule.if_missing != "none" && rule.if_missing != "last-known-address" &&
          applies(rule, d.a.law->view()) != Tri::no)
        add(rule, "letter.note.address.law", most + 1);
  add_list(d, "exposure", ParagraphRole::list, d.say("letter.note.exposure"), items);
}

/// Rules that stand against charges.
void add_bars(Draft& d) {
  std::vector<std::size_t> all;
  for (std::size_t i = 0; i < d.a.lines.size(); ++i) all.push_back(i);
  std::vector<std::string> items;
  for (const BarOnLines& bar : d.law.bars(all)) {
    if (bar.effect != "bar" || items.size() == most_bars) continue;
    const std::string law = d.law.rule_says(*bar.rule, "letter.bar.bar");
    if (!law.empty()) items.push_back(d.say("letter.law.on", {{"charges", d.charges(bar.lines)}, {"says", law}}));
  }
  add_list(d, "bars", ParagraphRole::list, d.say("letter.note.bars"), items);
}

std::string_view state_name(DeadlineState state) {
  return state == DeadlineState::missed ? "missed" : state == DeadlineState::open ? "open" : "undetermined";
}

/// Days that passed unmet or are still to come.
void add_days(Draft& d) {
  if (!d.law.there()) return;
  const LawWords words(*d.a.law, d.rules.registry, d.rules.holidays, d.speech);
  Paragraph p;
  p.id = "dates";
  p.role = ParagraphRole::table;
  p.text = d.say("letter.note.dates");
  p.optional = true;
  for (const std::string_view column : {"duty", "last", "state"}) p.head.push_back(d.say("letter.note.", column));
  for (const DeadlineResult& deadline : d.a.law->deadlines()) {
    // Whether the landlord kept a day for the money or the list is what is asked of an adviser, told or not.
    const bool in_doubt = deadline.state == DeadlineState::undetermined && deadline.deadline->who == Who::landlord &&
                          is_about_money_or_list(d.law.name_of(*deadline.deadline));
    if ((deadline.state != DeadlineState::missed && deadline.state != DeadlineState::open && !in_doubt) ||
        !deadline.last)
      continue;
    if (deadline.last->latest == max_day || d.law.name_of(*deadline.deadline) == "other") continue;
    // A day of the tenant's that passed and cost nothing is no news.
    if (deadline.deadline->who == Who::tenant && deadline.state == DeadlineState::missed &&
        !deadline.deadline->tenant_loses)
      continue;
    const std::string label = words.label(*deadline.deadline);
    std::vector<std::string> row{
        d.say(deadline.deadline->who == Who::tenant ? "letter.note.tenant-duty" : "letter.note.landlord-duty",
              {{"duty", label}}),
        d.speech.span(*deadline.last), d.say("letter.state.", state_name(deadline.state))};
    const auto same = std::find_if(p.rows.begin(), p.rows.end(), [&](const auto& other) {
      return other[1] == row[1] && other[2] == row[2] &&
             other[0].substr(0, other[0].find(':')) == row[0].substr(0, row[0].find(':'));
    });
    if (same == p.rows.end() && p.rows.size() < most_days) p.rows.push_back(std::move(row));
    else if (same != p.rows.end() && (*same)[0].find(label) == std::string::npos) (*same)[0] += "; " + label;
  }
  if (!p.rows.empty()) d.letter.paragraphs.push_back(std::move(p));
}

void add_next_steps(Draft& d) {
  const LetterChoice choice = propose_letters(d.a, d.rules);
  const auto day = [&](const std::optional<Day>& on) { return on ? d.speech.day(*on) : std::string(); };
  std::vector<std::string> steps;
  if (!choice.none_because.empty())
    steps.push_back(d.say("letter.none.", choice.none_because, {{"day", day(choice.day)}}));
  for (const LetterProposal& fit : choice.kinds) {
    if (fit.kind == d.letter.kind || steps.size() == most_steps) continue;
    steps.push_back(d.say("letter.note.step", {{"kind", d.say("letter.kind.", name_of(fit.kind))},
                                               {"why", d.say("letter.fits.", fit.reason, {{"day", day(fit.day)}})}}));
  }
  add_list(d, "steps", ParagraphRole::list, d.say("letter.note.steps"), steps);
}

void add_questions(Draft& d) {
  std::vector<std::string> questions;
  const auto used = d.c.circumstances.find("deposit-used-as-rent");
  if (used == d.c.circumstances.end() &&
      std::any_of(d.c.deposits.begin(), d.c.deposits.end(),
                  [](const Deposit& deposit) { return deposit.kind == "last-month"; }))
    questions.push_back(d.say("letter.warn.last-month"));
  for (const Question& q : d.a.questions) {
    if (questions.size() == most_questions) break;
    const std::string text = question_text(q, d.c, d.a.lines, d.speech);
    questions.push_back(
        q.effect.is_zero() ? text : d.say("letter.note.question", {{"text", text}, {"sum", d.money(q.effect)}}));
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
          d.say("letter.note.source", {{"cite", source.text}, {"read", source_basis_text(source.read, d.speech)}});
      if (items.size() < most_sources && std::find(items.begin(), items.end(), item) == items.end())
        items.push_back(std::move(item));
    }
  };
  for (const DeadlineResult* deadline : d.law.missed()) add(*deadline->deadline);
  for (const ForfeitResult& forfeit : d.a.law->forfeits()) add(*forfeit.rule);
  for (const DocumentResult* document : d.law.defects()) add(*document->rule);
  for (const RemedyResult& remedy : d.a.law->remedies()) add(*remedy.rule);
  std::string all;
  for (const std::string& item : items) all += (all.empty() ? "" : "; ") + item;
  d.may("sources", ParagraphRole::line, all.empty() ? all : d.say("letter.note.sources") + ' ' + all + '.');
}

} // namespace

void write_adviser_note(Draft& d) {
  const Claim claim = claim_of(d);
  d.must("title", ParagraphRole::opening, d.letter.title);
  d.must("date", ParagraphRole::date, d.speech.day(d.a.today));
  if (const auto lapsed = d.law.lapsed())
    d.must("lapsed", ParagraphRole::opening,
           d.say("letter.court.lapsed", {{"day", d.speech.day(*lapsed)}, {"forum", forum(d)}}));
  add_next_steps(d);
  add_facts(d);
  add_charges(d, claim);
  add_sums(d, claim);
  d.may("held-apart", ParagraphRole::line, d.say_apart("letter.court.held-apart"));
  add_bars(d);
  add_exposure(d);
  add_days(d);
  add_questions(d);
  add_sources(d);
  warn_about_law(d);
  add_caution(d);
}

} // namespace wearline
