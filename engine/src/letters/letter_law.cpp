#include "letters/letter_law.h"

#include "letters/letter_draft.h"

#include <algorithm>

namespace wearline {

namespace {

/// May stand in a letter by its section: read where the law speaks itself, or in an official guide to it.
bool quotable(const Reference& source) { return source.read == "statute-text" || source.read == "official-guide"; }

Footing one_down(Footing footing) {
  return footing == Footing::firm ? Footing::careful : footing == Footing::careful ? Footing::loose : Footing::none;
}

std::string_view footing_key(Footing footing) {
  switch (footing) {
  case Footing::firm:
    return "letter.law.firm";
  case Footing::careful:
    return "letter.law.careful";
  case Footing::loose:
    return "letter.law.loose";
  case Footing::none:
    break;
  }
  return "";
}

bool has(const std::vector<std::string>& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

/// How much hangs on a duty: what costs the landlord the deductions comes first.
int weight(const Duty& duty) {
  if (has(duty.if_missed, "forfeits-deductions") || has(duty.if_missed, "forfeits-damage-deductions")) return 0;
  if (has(duty.if_missed, "owes-penalty")) return 1;
  return duty.if_missed_text.empty() ? 3 : 2;
}

/// Whether how much of it was damaged is part of the reckoning.
bool says_area(const LineAssessment& line) {
  return std::any_of(line.steps.begin(), line.steps.end(),
                     [](const Step& step) { return step.code.substr(0, 5) == "area-"; });
}

} // namespace

Footing LawTalk::footing(const Rule& rule) const {
  Footing footing = rule.check.empty() ? Footing::firm : Footing::careful;
  if (rule.sources.empty()) footing = Footing::loose;
  for (const std::uint16_t at : rule.sources) {
    const Reference& source = a_->law->pack().sources[at];
    if (quotable(source)) continue;
    footing = std::min(footing, source.read == "secondary" ? Footing::careful : Footing::loose);
  }
  return weak() ? one_down(footing) : footing;
}

std::string LawTalk::cites(const Rule& rule) const {
  if (footing(rule) < Footing::careful) return {};
  std::string out;
  const auto take = [&](bool secondary) {
    for (const std::uint16_t at : rule.sources) {
      const Reference& source = a_->law->pack().sources[at];
      if (!(quotable(source) || (secondary && source.read == "secondary"))) continue;
      if (!out.empty()) out += "; ";
      out += source.text;
    }
  };
  take(false);
  if (out.empty()) take(true);
  return out;
}

bool LawTalk::only_guides(const Rule& rule) const {
  return std::all_of(rule.sources.begin(), rule.sources.end(),
                     [&](std::uint16_t at) { return a_->law->pack().sources[at].read == "official-guide"; });
}

std::string LawTalk::says(const Rule& rule, std::string_view text) const {
  const Footing f = footing(rule);
  if (f == Footing::none || text.empty()) return {};
  const std::string cite = cites(rule);
  if (cite.empty()) return speech_->say("letter.law.loose", {{"says", text}});
  const std::string label = speech_->say(only_guides(rule) ? "letter.law.guide" : "letter.law.law");
  return speech_->say(footing_key(f), {{"says", text}, {"label", label}, {"cite", cite}});
}

std::string LawTalk::rule_says(const Rule& rule, std::string_view english, std::string_view key_elsewhere) const {
  if (speech_->language() == "en") return says(rule, english);
  if (english == rule.text && !rule.es.text.empty()) return says(rule, rule.text_in(speech_->language()));
  return speech_->has(key_elsewhere) && !english.empty() ? says(rule, speech_->say(key_elsewhere)) : std::string();
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

std::string LawTalk::missed_day(const DutyResult& duty) const {
  if (duty.state != DutyState::missed || !duty.last || duty.last->latest == last_day) return {};
  const std::string name(name_of(*duty.duty));
  std::string due = "letter.due.";
  due += speech_->has("letter.due." + name) ? name : "other";
  Sentences text;
  // A step without a name of its own is said in the rule's words.
  if (due == "letter.due.other" && speech_->language() == "en") text.add(duty.duty->text);
  text.add(speech_->say(due, {{"day", speech_->day(duty.last->latest)}}));
  text.add(counted(duty));
  if (duty.reason == DutyReason::done_late && duty.done_on && duty.done_on->known()) {
    const std::string event = "letter.done." + a_->law->view().info(duty.done).id;
    text.add(speech_->say(speech_->has(event) ? event : "letter.done.other",
                          {{"day", speech_->day(duty.done_on->earliest)}}));
  } else if (duty.reason == DutyReason::not_done) {
    text.add(speech_->say("letter.done.not"));
  }
  return text.take();
}

std::vector<BarOnLines> LawTalk::bars(const std::vector<bool>& only) const {
  std::vector<BarOnLines> out;
  if (!there()) return out;
  for (std::size_t i = 0; i < a_->lines.size(); ++i) {
    if (!only[i]) continue;
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
    if (paper.defect == Tri(true) && footing(*paper.rule) != Footing::none) out.push_back(&paper);
  return out;
}

std::string LawTalk::paper(PaperId id) const {
  if (index(id) >= rules_->registry.papers.size()) return {};
  return rules_->registry.papers[index(id)].label.in(speech_->language());
}

const ForfeitResult* LawTalk::forfeited(Footing least) const {
  if (!there() || !a_->law->award().known || !a_->law->award().forfeited) return nullptr;
  for (const ForfeitResult& forfeit : a_->law->forfeits())
    if (forfeit.certain &&
        (forfeit.rule->loses == Loses::all_deductions || forfeit.rule->loses == Loses::whole_deposit_claim) &&
        footing(*forfeit.rule) >= least)
      return &forfeit;
  return nullptr;
}

} // namespace wearline
