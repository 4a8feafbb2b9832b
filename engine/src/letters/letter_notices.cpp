// The tenant's notes that ask for something other than money: papers and dates, a new address, an inspection.

#include "law/applies.h"
#include "letters/letter_groups.h"
#include "letters/letter_parts.h"
#include "letters/letter_walk.h"
#include "letters/letter_writers.h"

#include <algorithm>

namespace wearline {

namespace {

void head(Draft& d) {
  add_letter_head(d, d.several ? "letter.from.tenants" : "letter.from.tenant", "letter.to.landlord");
  d.must("subject", ParagraphRole::opening, d.say("letter.subject.", name_of(d.letter.kind)));
  d.must("greeting", ParagraphRole::opening, d.say("letter.greeting.landlord"));
}

/// The tenant's own signature or consent is not the landlord's to send, and a warning that the landlord left out is the
/// landlord's loss.
bool can_be_asked(std::string_view document) {
  return document != "tenant-consent" && document != "signatures-or-dissent" && document != "certificate-of-mailing" &&
         document != "tenant-rights-notice" && document != "sworn" && document != "signed" &&
         document != "landlord-address" && document != "refund-enclosed";
}

/// Whether a rule about this paper costs the landlord the deductions: then it is not asked for.
bool loses_by(const DocumentResult& document) {
  const std::vector<std::string>& loses = document.rule->if_missing;
  return std::any_of(loses.begin(), loses.end(), [](const std::string& l) { return l.compare(0, 8, "forfeits") == 0; });
}

std::vector<std::string> documents_to_ask_for(const Draft& d) {
  std::vector<std::string> names;
  const auto want = [&](DocumentId id) {
    if (index(id) >= d.rules.registry.documents.size() || !can_be_asked(d.rules.registry.documents[index(id)].id))
      return;
    std::string name = d.law.document(id);
    if (!name.empty() && std::find(names.begin(), names.end(), name) == names.end()) names.push_back(std::move(name));
  };
  for (const std::string& document : d.c.statement.missing) want(d.rules.registry.document(document));
  // Bills and photos bear on the home's condition, not on rent or fees.
  const bool about_home = std::any_of(d.a.lines.begin(), d.a.lines.end(), [](const LineAssessment& line) {
    return line.result.verdict != Verdict::non_damage_charge;
  });
  const std::vector<std::string>& came = d.c.statement.enclosed;
  for (const std::string_view document : {"receipts", "photos"})
    if (about_home && std::find(came.begin(), came.end(), document) == came.end())
      want(d.rules.registry.document(document));
  if (!d.law.there()) return names;
  for (const DocumentResult& document : d.a.law->documents()) {
    if (document.defect == Tri::no || loses_by(document)) continue;
    for (const DocumentId id : document.lacking) want(id);
    for (const DocumentId id : document.open)
      if (std::find(document.rule->requires_all.begin(), document.rule->requires_all.end(), id) !=
          document.rule->requires_all.end())
        want(id);
  }
  return names;
}

/// Charges for things that depreciate, of which no age is known and none is asked for yet.
std::vector<std::size_t> without_age(const Draft& d) {
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < d.a.lines.size(); ++i) {
    const Line& line = d.c.lines[i];
    const Element* element = d.a.lines[i].subject.element;
    const bool asked = std::any_of(d.a.questions.begin(), d.a.questions.end(),
                                   [&](const Question& q) { return q.line == i && q.code == "installed"; });
    if (element && element->about_condition && !element->life_class.empty() && line.kind != ChargeKind::cleaning &&
        !line.installed && line.age_years.empty() && !asked && line.amount &&
        *line.amount >= d.rules.letters.smallest_sum)
      out.push_back(i);
  }
  return out;
}

/// Papers are not money: the landlord's own last day does not hold them up, and they help most before the tenant's own
/// answer is due.
Day documents_day(const Draft& d) {
  const Day usual = d.a.today + days{d.rules.letters.reply_days};
  const DeadlineResult* own = d.law.tenant_deadline({"object", "respond"}, DeadlineState::open);
  if (!own || !own->last || own->last->earliest > usual) return usual;
  const Day before = own->last->earliest - days{1};
  return before - d.a.today < days{d.rules.letters.mailing_days} ? usual : before;
}

} // namespace

void write_papers_request(Draft& d) {
  const Claim claim = claim_of(d);
  const std::string day = d.speech.day(documents_day(d));
  head(d);
  Sentences ask;
  ask.add(d.say("letter.ask.papers", {{"day", day}}));
  if (const DeadlineResult* deadline = d.law.tenant_deadline({"request-documents"}, DeadlineState::open))
    ask.add(own_notice(d, *deadline->deadline, "letter.ask.papers.law", "letter.ask.papers.law.under"));
  d.must("ask", ParagraphRole::ask, ask.take());
  Sentences facts;
  const auto& out = d.c.tenancy.left();
  if (out && out->latest <= d.a.today && out->known()) facts.add(d.say(moved_out(d), {{"when", d.when(*out)}}));
  if (const auto& received = d.c.statement.received; received && received->known())
    facts.add(d.say("letter.facts.received", {{"when", d.when(*received)}}));
  d.may("facts", ParagraphRole::opening, facts.take());
  std::vector<std::string> items = documents_to_ask_for(d);
  for (std::string& item : shows(d, claim, groups_of(d, claim), without_age(d))) items.push_back(std::move(item));
  if (items.empty()) items.push_back(d.say("letter.papers.any"));
  add_list(d, "papers", ParagraphRole::list, d.say("letter.papers.title"), items);
  d.may("not-agreed", ParagraphRole::closing, d.say("letter.papers.not-agreed"));
  d.may("keep", ParagraphRole::closing, d.say("letter.keep"));
  warn_about_law(d);
  if (d.a.lines.empty()) d.warn("no-charges", d.say("letter.warn.no-charges"));
  add_tenant_closing(d, "letter.rights");
  add_caution(d);
}

void write_new_address(Draft& d) {
  head(d);
  Sentences text;
  const Tenancy& t = d.c.tenancy;
  const auto& out = t.left();
  if (out) text.add(d.say(out->earliest <= d.a.today ? moved_out(d) : "letter.facts.moving", {{"when", d.when(*out)}}));
  text.add(d.say("letter.ask.address"));
  text.add(address_notice(d));
  d.must("ask", ParagraphRole::ask, text.take());
  d.must("address", ParagraphRole::address, d.say("letter.address"));
  const Claim claim = claim_of(d);
  // The day that this note starts, or the landlord's own last day where it runs without it.
  auto by = d.law.lease_goes_on() ? std::nullopt : day_started_by(d, "forwarding-address-given");
  if (!by && !leaving(d)) by = d.law.landlords_day();
  // The law's own day has passed or is not known, or comes before this letter can.
  if (by && *by < d.a.today + days{d.rules.letters.mailing_days}) by.reset();
  if (!by && !leaving(d) && d.c.tenancy.possession_returned && !d.law.lease_goes_on()) by = reply_day(d);
  const std::string sum = claim.deposit ? d.money(*claim.deposit) : std::string();
  Sentences send;
  if (claim.deposit && by) send.add(d.say("letter.address.send.by", {{"sum", sum}, {"day", d.speech.day(*by)}}));
  else send.add(d.say(claim.deposit ? "letter.address.send.sum" : "letter.address.send", {{"sum", sum}}));
  send.add(d.say_apart("letter.held-apart.too"));
  if (d.law.lease_goes_on()) send.add(d.say("letter.roommate-stays.share"));
  d.may("send", ParagraphRole::closing,
        send.add(d.say("letter.address.pay")).add(d.say("letter.address.confirm")).take());
  warn_about_law(d);
  add_tenant_closing(d, {});
  add_caution(d);
}

namespace {

/// The tenant's right to an inspection that no day of the tenant's own belongs to.
const Remark* inspection_right(const Draft& d) {
  if (!d.law.there() || own_deadline(d, {"request-inspection"})) return nullptr;
  for (const Remark& rule : d.a.law->pack().inspection)
    if (rule.right == std::optional(true) && applies(rule, d.a.law->view()) == Tri::yes) return &rule;
  return nullptr;
}

} // namespace

void write_inspection_request(Draft& d) {
  head(d);
  Sentences text;
  const Remark* right = inspection_right(d);
  const bool be_there = leaving(d) && right && right->when_left.known_yes();
  text.add(d.say(be_there     ? "letter.ask.inspection.be-there"
                 : leaving(d) ? "letter.ask.inspection"
                              : "letter.ask.inspection.after"));
  if (const DeadlineResult* deadline = own_deadline(d, {"request-inspection"})) {
    const Deadline& rule = *deadline->deadline;
    // A right whose days run only after the end is asked for besides.
    const bool later =
        leaving(d) && std::any_of(rule.periods.begin(), rule.periods.end(), [&](const Period& period) {
          return !period.before && std::any_of(period.after.begin(), period.after.end(), [&](EventId id) {
            const std::string& event = d.a.law->view().info(id).id;
            return event == "tenancy-ended" || event == "possession-returned";
          });
        });
    text.add(own_notice(d, rule, "letter.inspection.written",
                        later ? "letter.ask.inspection.after-too" : "letter.inspection.under"));
    const bool said_here = d.speech.language() == "en" || !rule.es.text.empty();
    if (said_here && d.law.footing(rule) != Footing::none)
      text.add(d.law.spoken_by_sender(rule.text_in(d.speech.language())));
    if (deadline->first && deadline->first->known() && deadline->last && deadline->last->known() &&
        deadline->last->earliest >= d.a.today)
      text.add(d.say("letter.ask.inspection.window", {{"from", d.speech.day(deadline->first->earliest)},
                                                      {"to", d.speech.day(deadline->last->earliest)}}));
    else if (deadline->last && deadline->last->latest != max_day && deadline->last->earliest >= d.a.today)
      text.add(d.say("letter.ask.inspection.by", {{"day", d.speech.day(deadline->last->earliest)}}));
  } else if (right) {
    text.add(d.law.rule_says(*right, "letter.inspection.law"));
  }
  d.must("ask", ParagraphRole::ask, text.take());
  const auto& out = d.c.tenancy.left();
  Sentences days_text;
  if (out && leaving(d)) days_text.add(d.say("letter.facts.moving", {{"when", d.when(*out)}}));
  if (!d.c.tenancy.forwarding_address_given) days_text.add(d.say("letter.inspection.address"));
  d.must("days", ParagraphRole::closing, days_text.add(d.say("letter.inspection.days")).take());
  if (!be_there) d.may("reply", ParagraphRole::closing, d.say("letter.inspection.reply"));
  warn_about_law(d);
  warn_about_hazards(d);
  add_tenant_closing(d, {});
  add_caution(d);
}

} // namespace wearline
