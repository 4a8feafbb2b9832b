#include "letters/letter_law.h"

#include "law/applies.h"
#include "letters/letter_words.h"
#include "values/ascii.h"

#include <algorithm>
#include <tuple>

namespace wearline {

namespace {

/// May stand in a letter by its section: read where the law speaks itself, or in an official guide to it.
bool quotable(const Reference& source) {
  return !source.bill && (source.read == "statute-text" || source.read == "official-guide");
}

bool has(const std::vector<std::string>& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

/// Whether how much of it was damaged is part of the reckoning.
bool says_area(const LineAssessment& line) {
  return std::any_of(line.steps.begin(), line.steps.end(),
                     [](const Step& step) { return step.code.substr(0, 5) == "area-"; });
}

/// Whether a limit of the law took something off.
bool limited(const LineAssessment& line) {
  return std::any_of(line.steps.begin(), line.steps.end(),
                     [](const Step& step) { return step.code == "law-limit" && step.to < step.from; });
}

bool lets_nothing_be_kept(const Forfeit& rule) {
  return rule.loses == Loses::all_deductions || rule.loses == Loses::whole_deposit_claim;
}

} // namespace

int weight(const Deadline& deadline) {
  if (has(deadline.if_missed, "forfeits-deductions") || has(deadline.if_missed, "forfeits-damage-deductions")) return 0;
  if (has(deadline.if_missed, "owes-penalty")) return 1;
  return deadline.if_missed_text.empty() ? 3 : 2;
}

Footing LawTalk::footing(const Rule& rule) const {
  bool some = false, all = !rule.sources.empty(), second_hand = false;
  for (const std::uint16_t at : rule.sources) {
    const Reference& source = a_->law->pack().sources[at];
    some = some || quotable(source);
    all = all && quotable(source);
    second_hand = second_hand || source.read == "secondary" || source.bill;
  }
  if (some) return all && rule.check.empty() && !weak() ? Footing::firm : Footing::careful;
  return second_hand ? Footing::loose : Footing::none;
}

std::string LawTalk::cites(const Rule& rule) const {
  if (footing(rule) < Footing::careful) return {};
  for (const std::string_view read : {"statute-text", "official-guide"})
    for (const std::uint16_t at : rule.sources)
      if (const Reference& source = a_->law->pack().sources[at]; quotable(source) && source.read == read)
        return source.text;
  return {};
}

std::string LawTalk::section(const Rule& rule) const {
  const std::string cite = cites(rule);
  return cite.substr(0, cite.find("; "));
}

std::string LawTalk::in_a_sentence(const std::string& cite) const {
  const std::string_view name = std::string_view(cite).substr(0, cite.find(','));
  const auto ends = [&](std::string_view end) {
    return name.size() > end.size() && name.substr(name.size() - end.size()) == end && name.size() < cite.size();
  };
  return ends(" Act") || ends(" Regulation") ? speech_->say("letter.law.the", {{"cite", cite}}) : cite;
}

namespace {

bool letter_at(std::string_view text, std::size_t at) {
  if (at >= text.size()) return false;
  const auto c = static_cast<unsigned char>(text[at]);
  return c >= 0x80 || is_letter(static_cast<char>(c));
}

/// Where `words` stand first as words, in small letters or with a capital at the start of a sentence.
std::size_t find_words(std::string_view text, std::string words) {
  std::size_t found = std::string_view::npos;
  for (int capital = 0; capital < 2; ++capital) {
    for (auto at = text.find(words); at != std::string_view::npos; at = text.find(words, at + 1))
      if (!letter_at(text, at + words.size()) && (at == 0 || !letter_at(text, at - 1))) {
        found = std::min(found, at);
        break;
      }
    if (is_lower(words[0])) words[0] = static_cast<char>(words[0] - 'a' + 'A');
  }
  return found;
}

} // namespace

std::string LawTalk::in_general(std::string_view text) const {
  std::string out(text);
  if (!claims_) return out;
  for (const std::string_view party : {"landlord", "tenant"}) {
    // Only the first of them: after it the sentence speaks of the same one.
    const PartyWords* words = nullptr;
    std::size_t first = std::string::npos;
    for (const PartyWords& p : rules_->letters.parties) {
      if (p.party != party || p.language != speech_->language()) continue;
      if (const auto at = find_words(out, p.said); at < first) first = at, words = &p;
    }
    if (!words) continue;
    const bool introduced =
        std::any_of(rules_->letters.parties.begin(), rules_->letters.parties.end(), [&](const PartyWords& p) {
          return p.party == party && p.language == speech_->language() && find_words(out, p.general) < first;
        });
    if (introduced) continue;
    const bool capital = out[first] != words->said[0];
    out.replace(first, words->said.size(), words->general);
    if (capital) out[first] = static_cast<char>(out[first] - 'a' + 'A');
  }
  return out;
}

bool LawTalk::eases(std::string_view text) const {
  const auto phrases = rules_->letters.easing.find(speech_->language());
  return claims_ && phrases != rules_->letters.easing.end() &&
         std::any_of(phrases->second.begin(), phrases->second.end(),
                     [&](const std::string& phrase) { return text.find(phrase) != std::string_view::npos; });
}

std::string LawTalk::spoken_by_sender(std::string_view text) const {
  Sentences kept;
  for (const std::string_view sentence : sentences(text))
    if (!eases(sentence)) kept.add(sentence);
  return in_general(kept.take());
}

std::string LawTalk::says(const Rule& rule, std::string_view text) const {
  const Footing f = footing(rule);
  if (f == Footing::none || text.empty()) return {};
  const std::string cite = cites(rule);
  hedged_ = hedged_ || cite.empty();
  if (cite.empty())
    for (const std::uint16_t at : rule.sources)
      if (const Reference& source = a_->law->pack().sources[at]; source.read == "secondary" || source.bill) {
        second_hand_.emplace_back(text, source.text);
        break;
      }
  const std::string_view key = cite.empty()         ? "letter.law.loose"
                               : f == Footing::firm ? "letter.law.firm"
                                                    : "letter.law.careful";
  return speech_->fill(key, [&](std::string_view name, std::string& out) {
    if (name == "says") out += text;
    else if (name == "cite") out += key == "letter.law.careful" ? in_a_sentence(cite) : cite;
    else if (const auto bar = name.find('|'); bar != std::string_view::npos)
      out += several_ ? name.substr(bar + 1) : name.substr(0, bar);
    else return false;
    return true;
  });
}

std::string LawTalk::rule_says(const Rule& rule, std::string_view key_elsewhere) const {
  if (rule.text.empty()) return {};
  if (speech_->language() == "en" || !rule.es.text.empty())
    return says(rule, spoken_by_sender(rule.text_in(speech_->language())));
  return speech_->has(key_elsewhere) ? says(rule, speech_->say(key_elsewhere)) : std::string();
}

std::string_view LawTalk::name_of(const Deadline& deadline) const {
  return deadline.name < rules_->registry.deadlines.size()
             ? std::string_view(rules_->registry.deadlines[deadline.name].id)
             : std::string_view();
}

const DeadlineResult* LawTalk::tenant_deadline(std::initializer_list<std::string_view> names,
                                               DeadlineState state) const {
  if (!there()) return nullptr;
  for (const DeadlineResult& deadline : a_->law->deadlines()) {
    if (deadline.deadline->who != Who::tenant || deadline.state != state) continue;
    if (std::find(names.begin(), names.end(), name_of(*deadline.deadline)) != names.end()) return &deadline;
  }
  return nullptr;
}

namespace {

bool counts_days(const Deadline& deadline) {
  return std::any_of(deadline.periods.begin(), deadline.periods.end(),
                     [](const Period& period) { return period.count && *period.count > 0; });
}

std::uint32_t longest(const Deadline& deadline) {
  std::uint32_t most = 0;
  for (const Period& period : deadline.periods)
    most = std::max(most, static_cast<std::uint32_t>(period.count.value_or(0)));
  return most;
}

} // namespace

bool is_about_money_or_list(std::string_view deadline) {
  return deadline == "return-deposit" || deadline == "refund-balance" || deadline == "itemize" ||
         deadline == "notice-of-claim";
}

const Deadline& LawTalk::spoken(const DeadlineResult& result) const {
  const Deadline* best = result.deadline;
  const auto rank = [](const Deadline& deadline) {
    return std::tuple(counts_days(deadline), -weight(deadline), longest(deadline));
  };
  for (const std::size_t at : result.instead)
    if (const Deadline& other = a_->law->pack().deadlines[at]; rank(other) > rank(*best)) best = &other;
  return *best;
}

bool LawTalk::waits_for_address(const Deadline& deadline) const {
  if (a_->c.tenancy.forwarding_address_given) return false;
  const FactId id = rules_->registry.fact("address-given");
  if (id == FactId::none) return false;
  FactView without = a_->law->view();
  FactState no;
  no.kind = FactState::Kind::yes_no;
  no.yes = false;
  without.suppose(id, no);
  return applies(deadline, without) == Tri::no;
}

bool LawTalk::lease_goes_on() const { return told(a_->c, "roommate-stays") == Tri::yes; }

std::vector<const DeadlineResult*> LawTalk::missed() const {
  std::vector<const DeadlineResult*> out;
  if (!days_run()) return out;
  for (const DeadlineResult& result : a_->law->deadlines()) {
    const Deadline& deadline = spoken(result);
    if (deadline.who != Who::landlord || result.state != DeadlineState::missed || !result.last ||
        result.last->latest >= a_->today || !counts_days(deadline) || footing(deadline) == Footing::none ||
        waits_for_address(deadline) ||
        (name_of(deadline) == "other" && weight(deadline) >= 2)) // a rule of another kind may name no act at all
      continue;
    // The one that is spoken of, with its own days, where it was missed by them.
    const auto at = static_cast<std::size_t>(&deadline - a_->law->pack().deadlines.data());
    const DeadlineResult& own = result.instead.empty() ? result : a_->law->each_deadline()[at];
    out.push_back(own.last && own.last->latest < a_->today ? &own : &result);
  }
  std::stable_sort(out.begin(), out.end(), [this](const DeadlineResult* x, const DeadlineResult* y) {
    return weight(spoken(*x)) < weight(spoken(*y));
  });
  return out;
}

bool LawTalk::may_fall_away(const DeadlineResult& result) const {
  const auto& each = a_->law->each_deadline();
  return std::any_of(each.begin(), each.end(), [&](const DeadlineResult& other) {
    return other.deadline->family == result.deadline->family && other.applies != Tri::no &&
           !counts_days(*other.deadline);
  });
}

bool LawTalk::missed_if_it_applies(const DeadlineResult& result) const {
  const Deadline& deadline = *result.deadline;
  if (!result.last || result.last->latest >= a_->today || result.state != DeadlineState::undetermined ||
      result.reason != DeadlineReason::condition_open || !counts_days(deadline) || footing(deadline) == Footing::none ||
      waits_for_address(deadline))
    return false;
  if (result.done_on) return result.done_on->earliest > result.last->latest;
  return result.done != EventId::none && a_->law->view().event(result.done).happened == Tri::no;
}

bool LawTalk::kept_if_it_applies(const DeadlineResult& result) const {
  if (result.applies == Tri(false) || !result.last || !counts_days(*result.deadline)) return false;
  if (result.done_on) return result.done_on->latest <= result.last->latest;
  return result.last->latest >= a_->today;
}

bool LawTalk::list_in_time_keeps_all(Day last) const {
  const Statement& s = a_->c.statement;
  const auto& came = s.sent ? s.sent : s.received;
  const auto deposit = deposit_total(a_->c, a_->pack);
  return came && came->latest <= last && deposit && s.stated_total && *s.stated_total >= *deposit;
}

std::vector<const DeadlineResult*> LawTalk::perhaps_missed() const {
  std::vector<const DeadlineResult*> out;
  if (!days_run()) return out;
  for (const DeadlineResult& result : a_->law->deadlines()) {
    if (result.deadline->who != Who::landlord || !is_about_money_or_list(name_of(*result.deadline)) ||
        result.state != DeadlineState::undetermined)
      continue;
    const DeadlineResult* found = nullptr; // of those that stand in for one another, that of which most follows
    const auto weigh = [&](const DeadlineResult& one) {
      if (!missed_if_it_applies(one)) return;
      // Of equals the later day, which none can say was not past.
      const auto rank = [](const DeadlineResult& r) { return std::tuple(-weight(*r.deadline), r.last->latest); };
      if (!found || rank(one) > rank(*found)) found = &one;
    };
    if (result.instead.empty()) weigh(result);
    for (const std::size_t at : result.instead) weigh(a_->law->each_deadline()[at]);
    // A list in time that keeps all of it leaves nothing that was due by that day.
    if (found && (name_of(*result.deadline) == "return-deposit" || name_of(*result.deadline) == "refund-balance") &&
        list_in_time_keeps_all(found->last->latest))
      continue;
    // By another period that may be the one that holds it was kept: no day is called missed.
    const bool kept = std::any_of(result.instead.begin(), result.instead.end(),
                                  [&](std::size_t at) { return kept_if_it_applies(a_->law->each_deadline()[at]); });
    if (found && !kept) out.push_back(found);
  }
  return out;
}

std::vector<MissedDay> LawTalk::days_if_unpaid() const {
  std::vector<MissedDay> out;
  if (!days_run() || a_->c.statement.statement_received != Tri(false) || a_->c.statement.refund_paid ||
      a_->c.statement.refund_sent)
    return out;
  for (const DeadlineResult& result : a_->law->deadlines()) {
    const Deadline& deadline = *result.deadline;
    const std::string_view name = name_of(deadline);
    if (deadline.who != Who::landlord || (name != "return-deposit" && name != "refund-balance") || !result.last ||
        result.last->latest >= a_->today || result.state != DeadlineState::undetermined ||
        result.reason == DeadlineReason::condition_open || result.applies != Tri(true) || !counts_days(deadline) ||
        footing(deadline) == Footing::none || waits_for_address(deadline))
      continue;
    out.push_back({result.last->latest, {&result}});
  }
  std::stable_sort(out.begin(), out.end(), [](const MissedDay& x, const MissedDay& y) {
    return weight(*x.deadlines.front()->deadline) < weight(*y.deadlines.front()->deadline);
  });
  return out;
}

std::vector<MissedDay> LawTalk::missed_days() const {
  std::vector<MissedDay> out;
  const auto add = [&](const DeadlineResult* deadline, bool perhaps) {
    const auto at =
        std::find_if(out.begin(), out.end(), [&](const MissedDay& day) { return day.last == deadline->last->latest; });
    if (at == out.end()) out.push_back({deadline->last->latest, {deadline}, perhaps});
    else at->deadlines.push_back(deadline);
  };
  for (const DeadlineResult* deadline : missed()) add(deadline, may_fall_away(*deadline));
  for (const DeadlineResult* deadline : perhaps_missed()) add(deadline, true);
  return out;
}

std::optional<Day> LawTalk::landlords_day() const {
  std::optional<Day> latest;
  if (!days_run()) return latest;
  for (const DeadlineResult& deadline : a_->law->deadlines()) {
    const std::string_view name = name_of(*deadline.deadline);
    if (deadline.deadline->who != Who::landlord || !deadline.last) continue;
    if (name != "return-deposit" && name != "refund-balance" && name != "itemize" && name != "notice-of-claim")
      continue;
    // Where its end is open the landlord has at least through the earliest day it can be.
    const Day last = deadline.last->latest == max_day ? deadline.last->earliest : deadline.last->latest;
    if ((deadline.state == DeadlineState::open || deadline.state == DeadlineState::undetermined) && last >= a_->today)
      latest = std::max(latest.value_or(last), last);
  }
  return latest;
}

std::optional<Day> LawTalk::list_mendable_until() const {
  if (!days_run()) return std::nullopt;
  const auto costs_charges = [](const DocumentResult* document) {
    const std::vector<std::string>& costs = document->rule->if_missing;
    return !document->lacking.empty() && std::any_of(costs.begin(), costs.end(), [](const std::string& cost) {
      return cost.compare(0, 8, "forfeits") == 0;
    });
  };
  const auto lacking = defects();
  if (std::none_of(lacking.begin(), lacking.end(), costs_charges)) return std::nullopt;
  const auto& all = a_->law->deadlines();
  // Who has a day of their own to answer or ask by does not wait.
  if (std::any_of(all.begin(), all.end(), [&](const DeadlineResult& deadline) {
        return deadline.deadline->who == Who::tenant && deadline.state == DeadlineState::open &&
               name_of(*deadline.deadline) != "sue" && deadline.last;
      }))
    return std::nullopt;
  std::optional<Day> latest;
  for (const DeadlineResult& deadline : all)
    if (deadline.deadline->who == Who::landlord && name_of(*deadline.deadline) == "itemize" && deadline.last &&
        deadline.last->latest != max_day && deadline.last->latest >= a_->today && deadline.applies != Tri::no)
      latest = std::max(latest.value_or(deadline.last->latest), deadline.last->latest);
  return latest;
}

std::string LawTalk::counted(const DeadlineResult& deadline) const {
  if (deadline.governing.size() != 1 || &spoken(deadline) != deadline.deadline) return {};
  const PeriodCount& period = deadline.periods[deadline.governing.front()];
  if (!period.period || period.period->before || !period.start.known() || period.low_count != period.high_count ||
      period.low_count < 1)
    return {};
  std::vector<std::string> events;
  for (const EventId id : period.from) {
    const std::string key = "letter.event." + a_->law->view().info(id).id;
    if (!speech_->has(key)) return {};
    events.push_back(speech_->say(key));
  }
  if (events.empty()) return {};
  const std::string unit = std::string("law.unit.") + std::string(wearline::name_of(period.period->unit)) +
                           (period.low_count == 1 ? ".one" : ".many");
  const std::string length = speech_->say(unit, {{"n", std::to_string(period.low_count)}});
  // A last day on a weekend or holiday moves on: whoever counts the days finds another one.
  const int per = period.period->unit == Unit::week ? 7 : period.period->unit == Unit::calendar_day ? 1 : 0;
  const bool moved =
      per > 0 && deadline.last && deadline.last->latest > period.start.earliest + days{period.low_count * per};
  return speech_->say(
      moved ? "letter.counted.moved" : "letter.counted",
      {{"length", length}, {"day", speech_->day(period.start.earliest)}, {"event", listed(events, *speech_)}});
}

std::string LawTalk::assumed_start(const DeadlineResult& deadline) const {
  if (deadline.governing.size() != 1) return {};
  for (const EventId id : deadline.periods[deadline.governing.front()].from)
    if (a_->law->view().event(id).assumed) return a_->law->view().info(id).id;
  return {};
}

namespace {

bool asks(const Condition& condition, FactId fact) {
  return (condition.op == Condition::Op::yes_no && FactId(condition.which) == fact && condition.wanted) ||
         std::any_of(condition.parts.begin(), condition.parts.end(),
                     [&](const Condition& part) { return asks(part, fact); });
}

} // namespace

std::vector<const Rule*> LawTalk::sale_rules() const {
  std::vector<const Rule*> out;
  const FactId sold = rules_->registry.fact("sold");
  if (!there() || sold == FactId::none) return out;
  for (const std::vector<Remark>* rules : {&a_->law->pack().holder, &a_->law->pack().others})
    for (const Remark& rule : *rules)
      if (asks(rule.when, sold) && applies(rule, a_->law->view()) == Tri::yes) out.push_back(&rule);
  return out;
}

std::vector<BarOnLines> LawTalk::bars_unless(const std::vector<std::size_t>& lines) const {
  std::vector<BarOnLines> out;
  if (!there()) return out;
  // Only what the charge surely is: else the rule speaks of something else.
  const auto is_of = [&](const LineMatcher& wanted, std::size_t i) {
    const Subject& is = a_->lines[i].subject;
    if (!is.element) return false;
    const ChargeKind kind = a_->c.lines[i].kind != ChargeKind::unknown ? a_->c.lines[i].kind : is.element->kind;
    return (wanted.kind.empty() || std::find(wanted.kind.begin(), wanted.kind.end(), kind) != wanted.kind.end()) &&
           (wanted.element.empty() || has(wanted.element, is.element->id)) &&
           (wanted.finding.empty() || (is.finding && has(wanted.finding, is.finding->id)));
  };
  for (const Bar& bar : a_->law->pack().bars) {
    if (bar.effect != Effect::bar || !bar.unless || footing(bar) == Footing::none ||
        holds(*bar.unless, a_->law->view()).known() || applies(bar, a_->law->view()) != Tri::yes)
      continue;
    BarOnLines found{&bar, "bar", {}};
    for (const std::size_t i : lines)
      for (const Permission& p : a_->lines[i].permissions)
        if (p.rule == &bar && !p.applies.known() && is_of(bar.line, i)) found.lines.push_back(i);
    if (!found.lines.empty()) out.push_back(std::move(found));
  }
  return out;
}

std::vector<BarOnLines> LawTalk::bars(const std::vector<std::size_t>& lines) const {
  std::vector<BarOnLines> out;
  if (!there()) return out;
  for (const std::size_t i : lines) {
    for (const Permission& p : a_->lines[i].permissions) {
      // A caution or a leave is no reason against a charge.
      if (p.says == Permission::Says::allowed || p.says == Permission::Says::caution) continue;
      if (p.says == Permission::Says::damaged_portion_only && !says_area(a_->lines[i])) continue;
      if (p.says == Permission::Says::limit && !limited(a_->lines[i])) continue; // a limit that is kept is no reason
      if (p.applies != Tri::yes || !p.rule || footing(*p.rule) == Footing::none) continue;
      auto at = std::find_if(out.begin(), out.end(), [&](const BarOnLines& bar) { return bar.rule == p.rule; });
      if (at == out.end()) at = out.insert(out.end(), {p.rule, wearline::name_of(p.says), {}});
      if (at->lines.empty() || at->lines.back() != i) at->lines.push_back(i);
    }
  }
  return out;
}

bool LawTalk::bars_every_charge(const Rule& rule) const {
  if (!there()) return false;
  const auto& all = a_->law->pack().bars;
  return std::any_of(all.begin(), all.end(), [&](const Bar& bar) {
    const LineMatcher& line = bar.line;
    return &bar == &rule && bar.effect == Effect::bar && line.kind.size() == std::size(charge_kinds) &&
           line.element.empty() && line.finding.empty() && line.verdict.empty() && line.remedy.empty() &&
           line.at_move_in.empty() && !line.older_than && line.proof_missing.empty();
  });
}

std::vector<const DocumentResult*> LawTalk::defects() const {
  std::vector<const DocumentResult*> out;
  if (!there()) return out;
  for (const DocumentResult& document : a_->law->documents())
    if (footing(*document.rule) != Footing::none &&
        (document.defect == Tri::yes || (!document.defect.known() && !document.lacking.empty())))
      out.push_back(&document);
  std::stable_sort(out.begin(), out.end(), [](const DocumentResult* x, const DocumentResult* y) {
    const auto rank = [](const DocumentResult* p) {
      const bool sure = p->defect == Tri::yes;
      return (sure ? 0 : 2) + (p->rule->if_missing_text.empty() ? 1 : 0);
    };
    return rank(x) < rank(y);
  });
  return out;
}

std::string LawTalk::document(DocumentId id) const {
  if (index(id) >= rules_->registry.documents.size()) return {};
  return rules_->registry.documents[index(id)].label.in(speech_->language());
}

std::string LawTalk::question(std::string_view fact) const {
  FactId id = rules_->registry.fact(fact);
  const auto& own = a_->law->pack().facts; // they follow those of the registry
  for (std::size_t i = 0; i < own.size() && id == FactId::none; ++i)
    if (own[i].id == fact) id = FactId(rules_->registry.facts.size() + i);
  return id == FactId::none ? std::string() : a_->law->view().info(id).question.in(speech_->language());
}

const ForfeitResult* LawTalk::forfeited() const {
  if (!days_run()) return nullptr;
  const ForfeitResult* damage = nullptr;
  for (const ForfeitResult& forfeit : a_->law->forfeits()) {
    if (!forfeit.certain || footing(*forfeit.rule) == Footing::none) continue;
    if (lets_nothing_be_kept(*forfeit.rule)) return &forfeit;
    if (!damage && forfeit.rule->loses == Loses::damage_deductions) damage = &forfeit;
  }
  return damage;
}

const ForfeitResult* LawTalk::perhaps_forfeited() const {
  if (!days_run()) return nullptr;
  for (const ForfeitResult& forfeit : a_->law->forfeits())
    if (forfeit.applies == Tri::yes && !forfeit.certain && forfeit.rule->needs == Needs::other &&
        footing(*forfeit.rule) != Footing::none && !because(*forfeit.rule).empty() &&
        (lets_nothing_be_kept(*forfeit.rule) || forfeit.rule->loses == Loses::damage_deductions))
      return &forfeit;
  return nullptr;
}

namespace {

/// Yes-or-no facts that speak for a condition as the case has them, or against it.
void collect_facts(const Condition& condition, const FactView& view, bool speaks_for,
                   std::vector<std::pair<FactId, bool>>& out) {
  if (condition.op == Condition::Op::yes_no) {
    const FactState& state = view.fact(FactId(condition.which));
    if (state.kind == FactState::Kind::yes_no && !state.assumed && (state.yes == condition.wanted) == speaks_for)
      out.push_back({FactId(condition.which), state.yes});
  } else if (condition.op == Condition::Op::all || condition.op == Condition::Op::any) {
    for (const Condition& part : condition.parts) collect_facts(part, view, speaks_for, out);
  }
}

} // namespace

std::string LawTalk::in_one_voice(const std::string& key) const {
  if (!speech_->has(key)) return {};
  return speech_->fill(key, [&](std::string_view name, std::string& out) {
    const auto bar = name.find('|');
    if (bar == std::string_view::npos) return false;
    out += several_ ? name.substr(bar + 1) : name.substr(0, bar);
    return true;
  });
}

std::string LawTalk::because(const Rule& rule) const {
  std::vector<std::pair<FactId, bool>> facts;
  if (there()) collect_facts(rule.when, a_->law->view(), true, facts);
  Sentences text;
  for (const auto& [fact, yes] : facts)
    text.add(in_one_voice("letter.because." + a_->law->view().info(fact).id + (yes ? ".yes" : ".no")));
  return text.take();
}

std::string LawTalk::because_not(const Rule& rule) const {
  if (!there()) return {};
  std::vector<std::pair<FactId, bool>> facts;
  for (const Bar& bar : a_->law->pack().bars)
    if (&bar == &rule && bar.unless) collect_facts(*bar.unless, a_->law->view(), false, facts);
  Sentences text;
  for (const auto& [fact, yes] : facts)
    if (!yes) text.add(in_one_voice("letter.unless." + a_->law->view().info(fact).id));
  return text.take();
}

const Rule* LawTalk::wear_rule() const {
  if (!there()) return nullptr;
  for (const Bar& bar : a_->law->pack().bars) {
    const bool about_wear = bar.effect == Effect::bar && bar.line.element.empty() && bar.line.finding.empty() &&
                            has(bar.line.verdict, "ordinary-wear");
    if (about_wear && applies(bar, a_->law->view()) == Tri::yes && footing(bar) != Footing::none) return &bar;
  }
  return nullptr;
}

const DocumentRule* LawTalk::list_rule() const {
  if (!there()) return nullptr;
  for (const std::string_view wanted : {"reasons", "itemized"})
    for (const DocumentRule& rule : a_->law->pack().documents) {
      const bool wants = std::any_of(rule.requires_all.begin(), rule.requires_all.end(),
                                     [&](DocumentId id) { return rules_->registry.documents[index(id)].id == wanted; });
      if (wants && applies(rule, a_->law->view()) == Tri::yes && footing(rule) != Footing::none && !rule.text.empty())
        return &rule;
    }
  return nullptr;
}

std::string LawTalk::first_says(const DocumentRule& rule) const {
  const std::string& text = rule.text_in(speech_->language());
  if (speech_->language() != "en" && rule.es.text.empty()) return rule_says(rule, "letter.defect.law");
  return says(rule, spoken_by_sender(opening(text, rule.text)));
}

const RemedyResult* LawTalk::penalty() const {
  if (!days_run()) return nullptr;
  const RemedyResult* found = nullptr;
  for (const RemedyResult& remedy : a_->law->remedies()) {
    const Remedy& rule = *remedy.rule;
    const bool more = (rule.multiplier && Share::whole() < *rule.multiplier) || rule.fixed || rule.least ||
                      rule.includes_sum_due == std::optional(false);
    if (remedy.applies != Tri::yes || !more || footing(rule) == Footing::none) continue;
    if (!found || (remedy.certain && !found->certain)) found = &remedy;
  }
  return found;
}

const RemedyResult* LawTalk::possible_penalty() const {
  if (const RemedyResult* sure = penalty()) return sure;
  if (!days_run()) return nullptr;
  for (const RemedyResult& remedy : a_->law->remedies()) {
    const Remedy& rule = *remedy.rule;
    const bool more = (rule.multiplier && Share::whole() < *rule.multiplier) || rule.fixed || rule.least;
    if (!remedy.applies.known() && more && footing(rule) != Footing::none) return &remedy;
  }
  return nullptr;
}

namespace {

bool gives_more(const Remedy& rule) {
  return (rule.multiplier && Share::whole() < *rule.multiplier) || rule.fixed || rule.least;
}

FactState yes_or_no(bool yes) {
  FactState out;
  out.kind = FactState::Kind::yes_no;
  out.yes = yes;
  return out;
}

} // namespace

const Remedy* LawTalk::remedy_in(const FactView& view, bool surely) const {
  for (const Remedy& rule : a_->law->pack().remedies) {
    if (!gives_more(rule) || footing(rule) == Footing::none) continue;
    const Tri holds = wearline::applies(rule, view);
    if (holds == Tri(true) || (!surely && holds != Tri(false))) return &rule;
  }
  return nullptr;
}

std::pair<const Remedy*, bool> LawTalk::sure_before_possible(const FactView& view) const {
  if (const Remedy* sure = remedy_in(view, true)) return {sure, true};
  return {remedy_in(view, false), false};
}

const Deadline* LawTalk::list_not_sent(const DeadlineResult& missed) const {
  const FactId charged = rules_->registry.fact("damage-claimed");
  if (!days_run() || a_->c.statement.statement_received != Tri::no || !a_->c.lines.empty() || charged == FactId::none)
    return nullptr;
  FactView then = a_->law->view();
  then.suppose(charged, yes_or_no(true));
  const auto same = [](const Period& x, const Period& y) {
    return x.count == y.count && x.unit == y.unit && x.after == y.after && x.governing == y.governing &&
           x.before == y.before && x.count_from == y.count_from;
  };
  for (const Deadline& list : a_->law->pack().deadlines) {
    const auto& costs = list.if_missed;
    if (list.who == Who::landlord && name_of(list) == "itemize" && footing(list) != Footing::none &&
        std::find(costs.begin(), costs.end(), "forfeits-deductions") != costs.end() &&
        std::equal(list.periods.begin(), list.periods.end(), missed.deadline->periods.begin(),
                   missed.deadline->periods.end(), same) &&
        wearline::applies(list, a_->law->view()) == Tri::no && wearline::applies(list, then) == Tri::yes)
      return &list;
  }
  return nullptr;
}

std::pair<const Remedy*, bool> LawTalk::penalty_after_request() const {
  if (!days_run()) return {nullptr, false};
  FactView asked = a_->law->view();
  if (const EventId demand = rules_->registry.event("tenant-demand"); demand != EventId::none)
    asked.suppose(demand, {true, {a_->today, a_->today}, false});
  const auto& own = a_->law->pack().facts; // they follow those of the registry
  for (std::size_t i = 0; i < own.size(); ++i)
    if (own[i].id == "unpaid-after-demand") asked.suppose(FactId(rules_->registry.facts.size() + i), yes_or_no(true));
  return sure_before_possible(asked);
}

std::pair<const Remedy*, bool> LawTalk::penalty_if_unpaid() const {
  if (!days_run()) return {nullptr, false};
  FactView unpaid = a_->law->view();
  if (const EventId refund = rules_->registry.event("refund-sent"); refund != EventId::none)
    unpaid.suppose(refund, {false, {}, false});
  for (const std::string_view fact : {"refund-came", "refund-short"})
    if (const FactId id = rules_->registry.fact(fact); id != FactId::none)
      unpaid.suppose(id, yes_or_no(fact == "refund-short"));
  return sure_before_possible(unpaid);
}

bool LawTalk::penalty_waits_for_address() const {
  const FactId id = rules_->registry.fact("address-given");
  if (!there() || a_->c.tenancy.forwarding_address_given || id == FactId::none) return false;
  FactView with = a_->law->view(), without = with;
  with.suppose(id, yes_or_no(true));
  without.suppose(id, yes_or_no(false));
  return remedy_in(with, false) && !remedy_in(without, false);
}

std::optional<Day> LawTalk::lapsed() const {
  if (!days_run()) return std::nullopt;
  for (const DeadlineResult& deadline : a_->law->deadlines())
    if (deadline.deadline->who == Who::tenant && name_of(*deadline.deadline) == "sue" && deadline.last &&
        deadline.last->latest != max_day && deadline.last->latest < a_->today && deadline.state != DeadlineState::met &&
        deadline.state != DeadlineState::not_needed)
      return deadline.last->latest;
  return std::nullopt;
}

} // namespace wearline
