#include "letters/letter_law.h"

#include "letters/letter_words.h"
#include "rulebook/rule_store.h"

#include <algorithm>

namespace wearline {

namespace {

constexpr int most_cites = 2; // more are not read

/// May stand in a letter by its section: read where the law speaks itself, or in an official guide to it.
bool quotable(const Reference& source) { return source.read == "statute-text" || source.read == "official-guide"; }

bool has(const std::vector<std::string>& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

/// Whether how much of it was damaged is part of the reckoning.
bool says_area(const LineAssessment& line) {
  return std::any_of(line.steps.begin(), line.steps.end(),
                     [](const Step& step) { return step.code.substr(0, 5) == "area-"; });
}

bool lets_nothing_be_kept(const Forfeit& rule) {
  return rule.loses == Loses::all_deductions || rule.loses == Loses::whole_deposit_claim;
}

} // namespace

int weight(const Duty& duty) {
  if (has(duty.if_missed, "forfeits-deductions") || has(duty.if_missed, "forfeits-damage-deductions")) return 0;
  if (has(duty.if_missed, "owes-penalty")) return 1;
  return duty.if_missed_text.empty() ? 3 : 2;
}

Footing LawTalk::footing(const Rule& rule) const {
  bool some = false, all = !rule.sources.empty(), second_hand = false;
  for (const std::uint16_t at : rule.sources) {
    const Reference& source = a_->law->pack().sources[at];
    some = some || quotable(source);
    all = all && quotable(source);
    second_hand = second_hand || source.read == "secondary";
  }
  if (some) return all && rule.check.empty() && !weak() ? Footing::firm : Footing::careful;
  return second_hand ? Footing::loose : Footing::none;
}

std::string LawTalk::cites(const Rule& rule) const {
  if (footing(rule) < Footing::careful) return {};
  std::string out;
  int count = 0;
  const auto take = [&](std::string_view read) {
    for (const std::uint16_t at : rule.sources) {
      const Reference& source = a_->law->pack().sources[at];
      if (source.read != read || count == most_cites) continue;
      if (!out.empty()) out += "; ";
      out += source.text;
      ++count;
    }
  };
  take("statute-text");
  if (out.empty()) take("official-guide");
  return out;
}

std::string LawTalk::section(const Rule& rule) const {
  const std::string cite = cites(rule);
  return cite.substr(0, cite.find("; "));
}

std::string LawTalk::says(const Rule& rule, std::string_view text) const {
  const Footing f = footing(rule);
  if (f == Footing::none || text.empty()) return {};
  const std::string cite = cites(rule);
  hedged_ = hedged_ || cite.empty();
  const std::string_view key = cite.empty()         ? "letter.law.loose"
                               : f == Footing::firm ? "letter.law.firm"
                                                    : "letter.law.careful";
  return speech_->fill(key, [&](std::string_view name, std::string& out) {
    if (name == "says") out += text;
    else if (name == "cite") out += cite;
    else if (const auto bar = name.find('|'); bar != std::string_view::npos)
      out += several_ ? name.substr(bar + 1) : name.substr(0, bar);
    else return false;
    return true;
  });
}

std::string LawTalk::rule_says(const Rule& rule, std::string_view key_elsewhere) const {
  if (rule.text.empty()) return {};
  if (speech_->language() == "en" || !rule.es.text.empty()) return says(rule, rule.text_in(speech_->language()));
  return speech_->has(key_elsewhere) ? says(rule, speech_->say(key_elsewhere)) : std::string();
}

std::string_view LawTalk::name_of(const Duty& duty) const {
  return duty.name < rules_->registry.duties.size() ? std::string_view(rules_->registry.duties[duty.name].id)
                                                    : std::string_view();
}

const DutyResult* LawTalk::tenant_duty(std::initializer_list<std::string_view> names, DutyState state) const {
  if (!there()) return nullptr;
  for (const DutyResult& duty : a_->law->duties()) {
    if (duty.duty->who != Who::tenant || duty.state != state) continue;
    if (std::find(names.begin(), names.end(), name_of(*duty.duty)) != names.end()) return &duty;
  }
  return nullptr;
}

std::vector<const DutyResult*> LawTalk::missed() const {
  std::vector<const DutyResult*> out;
  if (!there()) return out;
  for (const DutyResult& duty : a_->law->duties())
    if (duty.duty->who == Who::landlord && duty.state == DutyState::missed && duty.last &&
        duty.last->latest < a_->today && footing(*duty.duty) != Footing::none &&
        (name_of(*duty.duty) != "other" || weight(*duty.duty) < 2)) // a rule of another kind may name no act at all
      out.push_back(&duty);
  std::stable_sort(out.begin(), out.end(),
                   [](const DutyResult* x, const DutyResult* y) { return weight(*x->duty) < weight(*y->duty); });
  return out;
}

std::vector<MissedDay> LawTalk::missed_days() const {
  std::vector<MissedDay> out;
  for (const DutyResult* duty : missed()) {
    const auto at =
        std::find_if(out.begin(), out.end(), [&](const MissedDay& day) { return day.last == duty->last->latest; });
    if (at == out.end()) out.push_back({duty->last->latest, {duty}});
    else at->duties.push_back(duty);
  }
  return out;
}

std::optional<Day> LawTalk::landlords_day() const {
  std::optional<Day> latest;
  if (!there()) return latest;
  for (const DutyResult& duty : a_->law->duties()) {
    const std::string_view name = name_of(*duty.duty);
    if (duty.duty->who != Who::landlord || !duty.last) continue;
    if (name != "return-deposit" && name != "refund-balance" && name != "itemise" && name != "notice-of-claim")
      continue;
    // Where its end is open the landlord has at least through the earliest day it can be.
    const Day last = duty.last->latest == last_day ? duty.last->earliest : duty.last->latest;
    if ((duty.state == DutyState::open || duty.state == DutyState::cannot_tell) && last >= a_->today)
      latest = std::max(latest.value_or(last), last);
  }
  return latest;
}

std::string LawTalk::counted(const DutyResult& duty) const {
  if (duty.governing.size() != 1) return {};
  const LegCount& leg = duty.legs[duty.governing.front()];
  if (!leg.leg || leg.leg->before || !leg.start.known() || leg.low_count != leg.high_count || leg.low_count < 1)
    return {};
  std::vector<std::string> events;
  for (const EventId id : leg.from) {
    const std::string key = "letter.event." + a_->law->view().info(id).id;
    if (!speech_->has(key)) return {};
    events.push_back(speech_->say(key));
  }
  if (events.empty()) return {};
  const std::string unit = std::string("law.unit.") + std::string(wearline::name_of(leg.leg->unit)) +
                           (leg.low_count == 1 ? ".one" : ".many");
  const std::string length = speech_->say(unit, {{"n", std::to_string(leg.low_count)}});
  return speech_->say(
      "letter.counted",
      {{"length", length}, {"day", speech_->day(leg.start.earliest)}, {"event", listed(events, *speech_)}});
}

std::vector<BarOnLines> LawTalk::bars(const std::vector<std::size_t>& lines) const {
  std::vector<BarOnLines> out;
  if (!there()) return out;
  for (const std::size_t i : lines) {
    for (const Permission& p : a_->lines[i].permissions) {
      // A caution or a leave is no reason against a charge.
      if (p.says == Permission::Says::allowed || p.says == Permission::Says::caution) continue;
      if (p.says == Permission::Says::damaged_portion_only && !says_area(a_->lines[i])) continue;
      if (p.applies != Tri(true) || !p.rule || footing(*p.rule) == Footing::none) continue;
      auto at = std::find_if(out.begin(), out.end(), [&](const BarOnLines& bar) { return bar.rule == p.rule; });
      if (at == out.end()) at = out.insert(out.end(), {p.rule, wearline::name_of(p.says), {}});
      if (at->lines.empty() || at->lines.back() != i) at->lines.push_back(i);
    }
  }
  return out;
}

std::vector<const PaperResult*> LawTalk::defects() const {
  std::vector<const PaperResult*> out;
  if (!there()) return out;
  for (const PaperResult& paper : a_->law->papers())
    if (footing(*paper.rule) != Footing::none &&
        (paper.defect == Tri(true) || (!paper.defect && !paper.lacking.empty())))
      out.push_back(&paper);
  std::stable_sort(out.begin(), out.end(), [](const PaperResult* x, const PaperResult* y) {
    const auto rank = [](const PaperResult* p) {
      const bool sure = p->defect == Tri(true);
      return (sure ? 0 : 2) + (p->rule->if_missing_text.empty() ? 1 : 0);
    };
    return rank(x) < rank(y);
  });
  return out;
}

std::string LawTalk::paper(PaperId id) const {
  if (index(id) >= rules_->registry.papers.size()) return {};
  return rules_->registry.papers[index(id)].label.in(speech_->language());
}

const ForfeitResult* LawTalk::forfeited() const {
  if (!there()) return nullptr;
  const ForfeitResult* damage = nullptr;
  for (const ForfeitResult& forfeit : a_->law->forfeits()) {
    if (!forfeit.certain || footing(*forfeit.rule) == Footing::none) continue;
    if (lets_nothing_be_kept(*forfeit.rule)) return &forfeit;
    if (!damage && forfeit.rule->loses == Loses::damage_deductions) damage = &forfeit;
  }
  return damage;
}

const RemedyResult* LawTalk::penalty() const {
  if (!there()) return nullptr;
  const RemedyResult* found = nullptr;
  for (const RemedyResult& remedy : a_->law->remedies()) {
    const Remedy& rule = *remedy.rule;
    const bool more = (rule.multiplier && Share::whole() < *rule.multiplier) || rule.fixed || rule.least ||
                      rule.includes_sum_due == std::optional(false);
    if (remedy.applies != Tri(true) || !more || footing(rule) == Footing::none) continue;
    if (!found || (remedy.certain && !found->certain)) found = &remedy;
  }
  return found;
}

std::optional<Day> LawTalk::lapsed() const {
  if (!there()) return std::nullopt;
  for (const DutyResult& duty : a_->law->duties())
    if (duty.duty->who == Who::tenant && name_of(*duty.duty) == "sue" && duty.last && duty.last->latest != last_day &&
        duty.last->latest < a_->today && duty.state != DutyState::met && duty.state != DutyState::not_needed)
      return duty.last->latest;
  return std::nullopt;
}

} // namespace wearline
