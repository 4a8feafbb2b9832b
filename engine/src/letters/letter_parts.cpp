#include "letters/letter_parts.h"

#include "law/applies.h"
#include "law/counting.h"
#include "letters/letter_walk.h"
#include "wording/law_words.h"

#include <algorithm>

namespace wearline {

namespace {

/// The counting rule of a deadline in this case: the first whose condition holds.
const CountingRule* counting_of(const Deadline& deadline, const Law& law) {
  for (const std::uint16_t at : deadline.counting)
    if (holds(law.pack().counting[at].when, law.view()) != Tri::no) return &law.pack().counting[at];
  return nullptr;
}

/// The day a period starts if `event` happens today and the others when they did; empty where one is not known, or the
/// event is none of its own.
std::optional<Day> start_of(const Period& period, std::string_view event, const Draft& d) {
  std::optional<Day> start;
  bool own = false;
  for (const EventId id : period.after) {
    const FactView& view = d.a.law->view();
    Day day = d.a.today;
    if (view.info(id).id == event) own = true;
    else if (view.event(id).happened == Tri::yes && view.event(id).on.known()) day = view.event(id).on.earliest;
    else return std::nullopt;
    if (!start || (period.governing == Governing::latest ? day > *start : day < *start)) start = day;
  }
  return own ? start : std::nullopt;
}

/// The tenant's own deadlines: the last days of those that are open, and a right that may be lost already.
void warn_about_own_days(Draft& d) {
  const LawWords words(*d.a.law, d.rules.registry, d.rules.holidays, d.speech);
  for (const DeadlineResult& deadline : d.a.law->deadlines()) {
    if (deadline.deadline->who != Who::tenant || !deadline.last || deadline.last->latest == max_day) continue;
    const std::string_view name = d.law.name_of(*deadline.deadline);
    const bool answer = name == "object" || name == "respond";
    if (answer && deadline.state == DeadlineState::missed && deadline.deadline->tenant_loses)
      d.warn("own-day-past", d.say("letter.warn.own-day-past", {{"duty", words.label(*deadline.deadline)},
                                                                {"day", d.speech.day(deadline.last->latest)}}));
    if (deadline.state != DeadlineState::open) continue;
    const bool sue = name == "sue";
    if (sue && leaving(d)) continue;
    // What no letter of this kind answers is told in the words of its rule.
    const bool elsewhere = answer && !answered_by_letter(d, deadline);
    const std::string label = sue         ? d.say("letter.warn.sue", {{"forum", forum(d)}})
                              : elsewhere ? deadline.deadline->text_in(d.speech.language())
                                          : words.label(*deadline.deadline);
    d.warn("send-by", d.say(elsewhere                         ? "letter.warn.apply-by"
                            : deadline.deadline->tenant_loses ? "letter.warn.send-by.loses"
                                                              : "letter.warn.send-by",
                            {{"duty", label}, {"day", d.speech.day(deadline.last->earliest)}}));
  }
}

/// Who is owed by whom after a sale is for the reader to look into; the letter goes to both.
void warn_about_sale(Draft& d) {
  if (told(d.c, "sold") != Tri::yes) return;
  Sentences text;
  text.add(d.say("letter.warn.sold"));
  for (const Rule* rule : d.law.sale_rules()) text.add(d.law.rule_says(*rule, "letter.sale.law"));
  d.warn("sold", text.take());
}

} // namespace

bool tenant_died(const Draft& d) { return told(d.c, "sole-tenant-died") == Tri::yes; }

std::string_view moved_out(const Draft& d) { return tenant_died(d) ? "letter.facts.keys.died" : "letter.facts.moved"; }

void add_letter_head(Draft& d, std::string_view from, std::string_view to) {
  d.must("from", ParagraphRole::address, d.say(from));
  d.must("date", ParagraphRole::date, d.speech.day(d.a.today));
  d.must("to", ParagraphRole::address, d.say(to));
}

void add_caution(Draft& d) {
  Sentences text;
  for (const std::string& code : d.rules.always_cautions) text.add(d.say("caution.", code));
  if (d.c.jurisdiction.empty()) text.add(d.say("caution.no-law"));
  else if (!d.law.there()) text.add(d.say("caution.no-pack"));
  d.must("caution", ParagraphRole::caution, text.take());
}

void warn_about_law(Draft& d) {
  if (const auto lapsed = d.law.lapsed())
    d.warn("lapsed", d.say("letter.warn.lapsed", {{"day", d.speech.day(*lapsed)}, {"forum", forum(d)}}));
  if (d.law.weak()) d.warn("weak-law", d.say("letter.warn.weak-law", {{"place", d.a.law->pack().name}}));
  if (!d.law.there()) d.warn("no-law", d.say("letter.warn.no-law"));
  else if (d.c.side != "landlord") warn_about_own_days(d);
  if (d.c.side != "landlord") warn_about_sale(d);
  if (d.c.side != "landlord" && tenant_died(d)) d.warn("estate", d.say("letter.warn.estate"));
  if (const auto day = d.c.side != "landlord" && is_sent(d.letter.kind) ? d.law.list_mendable_until() : std::nullopt)
    d.warn("list-mendable", d.say("letter.warn.list-mendable", {{"day", d.speech.day(*day)}}));
  if (d.law.lease_goes_on()) d.warn("roommate-stays", d.say("letter.warn.roommate-stays"));
}

void add_enclosures(Draft& d, bool about_charges) {
  std::vector<std::string> held;
  const Records& r = d.c.records;
  if (about_charges && d.c.statement.statement_received != Tri::no && !d.c.lines.empty())
    held.push_back(d.say("letter.enclosure.list"));
  if (about_charges && r.move_in.made == Tri::yes && r.move_in.tenant_has_copy == Tri::yes)
    held.push_back(d.say("letter.enclosure.checklist"));
  if (about_charges && r.move_out.made == Tri::yes && r.move_out.tenant_has_copy == Tri::yes)
    held.push_back(d.say("letter.enclosure.checklist-out"));
  if (about_charges && r.photos_at_move_in == Tri::yes) held.push_back(d.say("letter.enclosure.photos-in"));
  if (about_charges && r.photos_at_move_out == Tri::yes) held.push_back(d.say("letter.enclosure.photos-out"));
  if (about_charges && walk_through_shows(d)) held.push_back(d.say("letter.enclosure.walk"));
  const bool follows = d.letter.kind == LetterKind::demand && notice_of_suit(d) && earlier_letter(d.c);
  if (d.letter.kind == LetterKind::second_letter || follows) held.push_back(d.say("letter.enclosure.first-letter"));
  if (held.empty()) return;
  std::string all; // in one line: a letter has one page
  for (const std::string& document : held) all += (all.empty() ? "" : "; ") + document;
  d.may("enclosures", ParagraphRole::enclosures, d.say("letter.enclosed", {{"papers", all}}));
}

void add_signature(Draft& d) {
  d.must("sign", ParagraphRole::closing, d.say(d.several ? "letter.sign.tenants" : "letter.sign.tenant"));
}

void add_tenant_closing(Draft& d, std::string_view rights) {
  if (d.law.hedged()) d.may("law-understood", ParagraphRole::closing, d.say("letter.law.understood"));
  if (!rights.empty()) d.may("rights", ParagraphRole::closing, d.say(rights));
  add_signature(d);
  // Canada's post has no certified mail.
  d.may("sent-by", ParagraphRole::closing,
        d.say(d.c.jurisdiction.compare(0, 3, "CA-") == 0 ? "letter.sent-by.registered" : "letter.sent-by"));
}

Day reply_day(const Draft& d) {
  Day day = d.a.today + days{d.rules.letters.reply_days};
  day = std::max(day, d.law.landlords_day().value_or(day));
  // Where they start with the new address, the letter that gives it starts them.
  if (!d.c.tenancy.forwarding_address_given)
    day = std::max(day, day_started_by(d, "forwarding-address-given").value_or(day));
  // Where the landlord's days start with a written request, the first one starts them.
  const bool asked = std::any_of(d.c.events.begin(), d.c.events.end(),
                                 [](const Event& event) { return event.what == "tenant-demand"; });
  return asked ? day : std::max(day, day_started_by(d, "tenant-demand").value_or(day));
}

const Remark* request_rule(const Draft& d) {
  if (!d.law.there()) return nullptr;
  for (const Remark& rule : d.a.law->pack().demand)
    if (rule.required == std::optional(true) && applies(rule, d.a.law->view()) != Tri::no) return &rule;
  return nullptr;
}

const DeadlineResult* notice_of_suit(const Draft& d) {
  if (!d.law.there()) return nullptr;
  for (const DeadlineResult& deadline : d.a.law->deadlines()) {
    const std::string_view name = d.law.name_of(*deadline.deadline);
    if (deadline.deadline->who == Who::tenant && deadline.applies != Tri::no &&
        (name == "notice-of-suit" ||
         (name == "wait-before-suit" && !deadline.periods.empty() &&
          deadline.deadline->periods.front().after.size() == 1 &&
          d.a.law->view().info(deadline.deadline->periods.front().after.front()).id == "suit-notice-given")))
      return &deadline;
  }
  return nullptr;
}

bool answered_by_letter(const Draft& d, const DeadlineResult& deadline) {
  if (deadline.deadline->met == EventId::none) return true;
  const std::string& event = d.a.law->view().info(deadline.deadline->met).id;
  return event == "tenant-objected" || event == "tenant-answered" || event == "tenant-demand";
}

const DeadlineResult* objection_deadline(const Draft& d) {
  const DeadlineResult* deadline = own_deadline(d, {"object", "respond"});
  return deadline && answered_by_letter(d, *deadline) ? deadline : nullptr;
}

const DeadlineResult* own_deadline(const Draft& d, std::initializer_list<std::string_view> names) {
  if (const DeadlineResult* open = d.law.tenant_deadline(names, DeadlineState::open)) return open;
  if (const DeadlineResult* perhaps = d.law.tenant_deadline(names, DeadlineState::undetermined)) return perhaps;
  const DeadlineResult* late = d.law.tenant_deadline(names, DeadlineState::missed);
  return late ? late : d.law.tenant_deadline(names, DeadlineState::met);
}

std::string own_notice(const Draft& d, const Rule& rule, std::string_view plain, std::string_view under) {
  const std::string cite = d.law.section(rule);
  return cite.empty() ? d.say(plain) : d.say(under, {{"cite", d.law.in_a_sentence(cite)}});
}

namespace {

/// The first deadline of the landlord whose days start with this event, if it happens today, with its last day.
std::pair<const DeadlineResult*, Day> started_by(const Draft& d, std::string_view event) {
  if (!d.law.there()) return {nullptr, {}};
  const Law& law = *d.a.law;
  for (const DeadlineResult& deadline : law.deadlines()) {
    if (deadline.deadline->who != Who::landlord || deadline.applies == Tri::no) continue;
    if (d.law.footing(*deadline.deadline) < Footing::careful) continue;
    const CountingRule* rule = counting_of(*deadline.deadline, law);
    for (const Period& period : deadline.deadline->periods)
      if (const auto start = start_of(period, event, d);
          start && period.count && *period.count > 0 && !period.before && rule)
        return {&deadline, last_day_after(*start, *period.count, period.unit, {rule, &d.rules.holidays}).last};
  }
  return {nullptr, {}};
}

} // namespace

std::optional<Day> day_started_by(const Draft& d, std::string_view event) {
  const auto [deadline, last] = started_by(d, event);
  return deadline ? std::optional(last) : std::nullopt;
}

bool court_decides(const Draft& d) {
  const Forum* own = own_forum(d);
  return !own || own->court;
}

std::string address_notice(const Draft& d) {
  if (const DeadlineResult* deadline = own_deadline(d, {"give-forwarding-address"}))
    return own_notice(d, *deadline->deadline, "letter.ask.address.law", "letter.ask.address.law.under");
  if (d.law.there())
    for (const Remark& rule : d.a.law->pack().address)
      if (rule.required == std::optional(true) && applies(rule, d.a.law->view()) != Tri::no)
        return own_notice(d, rule, "letter.ask.address.law", "letter.ask.address.law.under");
  // Where the landlord's days start with the address, the letter that gives it is what starts them.
  if (const DeadlineResult* deadline = started_by(d, "forwarding-address-given").first)
    return own_notice(d, *deadline->deadline, "letter.ask.address.law", "letter.ask.address.law.under");
  return {};
}

std::vector<std::string> deadline_names(const Draft& d, const MissedDay& day) {
  const bool whole = std::any_of(day.deadlines.begin(), day.deadlines.end(), [&](const DeadlineResult* deadline) {
    return d.law.name_of(*deadline->deadline) == "return-deposit";
  });
  std::vector<std::string> names;
  for (const DeadlineResult* deadline : day.deadlines) {
    const std::string_view name = d.law.name_of(*deadline->deadline);
    if (!d.has("letter.duty.", name) || (whole && name == "refund-balance")) continue;
    std::string said = d.say("letter.duty.", name);
    if (std::find(names.begin(), names.end(), said) == names.end()) names.push_back(std::move(said));
  }
  return names;
}

std::string due_text(const Draft& d, const MissedDay& day) {
  const std::vector<std::string> names = deadline_names(d, day);
  const std::string on = d.speech.day(day.last);
  Sentences text;
  if (names.empty())
    text.add(d.law.spoken_by_sender(d.law.spoken(*day.deadlines.front()).text_in(d.speech.language())))
        .add(d.say("letter.due.other", {{"day", on}}));
  else
    text.add(d.say(names.size() == 1 ? "letter.due.one" : "letter.due.many",
                   {{"what", listed(names, d.speech)}, {"day", on}}));
  return text.add(d.law.counted(*day.deadlines.front())).take();
}

std::string done_late(const Draft& d, const MissedDay& day) {
  for (const DeadlineResult* deadline : day.deadlines) {
    if (deadline->done_assumed || !deadline->done_on || !deadline->done_on->known() ||
        deadline->done_on->earliest <= day.last)
      continue;
    const std::string event = d.a.law->view().info(deadline->done).id;
    if (d.has("letter.done.", event))
      return d.say("letter.done.", event, {{"day", d.speech.day(deadline->done_on->earliest)}});
  }
  return {};
}

bool has_cleaning(const Draft& d, const std::vector<std::size_t>& lines) {
  return std::any_of(lines.begin(), lines.end(), [&](std::size_t i) {
    const Element* element = d.a.lines[i].subject.element;
    return element && element->group == "cleaning";
  });
}

const Event* earlier_letter(const Case& c) {
  const Event* last = nullptr;
  for (const Event& event : c.events)
    if ((event.what == "tenant-demand" || event.what == "tenant-objected" || event.what == "tenant-answered" ||
         event.what == "documents-requested" || event.what == "suit-notice-given") &&
        (!last || event.on.latest > last->on.latest))
      last = &event;
  return last;
}

std::string letter_sent(const Draft& d, const Event& letter) {
  if (!d.has("letter.how.", letter.delivery_method)) return d.when(letter.on);
  if (d.has("letter.wrote.", letter.delivery_method))
    return d.say("letter.wrote.", letter.delivery_method) + ' ' + d.when(letter.on);
  return d.say("letter.how.", letter.delivery_method) + ' ' + d.when(letter.on);
}

bool leaving(const Draft& d) {
  const auto& out = d.c.tenancy.left();
  return out && out->earliest > d.a.today;
}

} // namespace wearline
