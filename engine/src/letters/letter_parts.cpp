#include "law/counting.h"
#include "letters/letter_kinds.h"

#include <algorithm>

namespace wearline {

namespace {

/// The counting rule of a duty in this case: the first whose condition holds.
const CountingRule* counting_of(const Duty& duty, const Law& law) {
  for (const std::uint16_t at : duty.counting)
    if (holds(law.pack().counting[at].when, law.view()) != Tri(false)) return &law.pack().counting[at];
  return nullptr;
}

} // namespace

void add_letter_head(Draft& d, std::string_view from, std::string_view to) {
  d.must("from", ParagraphRole::address, d.say(from));
  d.must("date", ParagraphRole::date, d.speech.day(d.a.today));
  d.must("to", ParagraphRole::address, d.say(to));
}

Paragraph* add_list(Draft& d, std::string id, ParagraphRole role, std::string title,
                    const std::vector<std::string>& items) {
  if (items.empty()) return nullptr;
  Paragraph* p = d.may(std::move(id), role, std::move(title));
  if (p)
    for (const std::string& item : items) p->rows.push_back({item});
  return p;
}

void add_caution(Draft& d) {
  Sentences text;
  for (const std::string& code : d.rules.always_cautions) text.add(d.say("caution.", code));
  if (d.c.jurisdiction.empty()) text.add(d.say("caution.no-law"));
  else if (!d.law.there()) text.add(d.say("caution.no-pack"));
  d.must("caution", ParagraphRole::caution, text.take());
}

void warn_about_law(Draft& d) {
  if (d.law.weak()) d.warn("weak-law", d.say("letter.warn.weak-law", {{"place", d.a.law->pack().name}}));
  if (!d.law.there()) d.warn("no-law", d.say("letter.warn.no-law"));
}

Day reply_day(const Draft& d) { return d.a.today + days{d.rules.letters.reply_days}; }

const Remark* request_rule(const Draft& d) {
  if (!d.law.there()) return nullptr;
  for (const Remark& rule : d.a.law->pack().demand)
    if (rule.required == std::optional(true) && applies(rule, d.a.law->view()) != Tri(false)) return &rule;
  return nullptr;
}

const DutyResult* notice_of_suit(const Draft& d) {
  if (!d.law.there()) return nullptr;
  for (const DutyResult& duty : d.a.law->duties()) {
    const std::string_view name = d.law.name_of(*duty.duty);
    if (duty.duty->who == Who::tenant && duty.applies != Tri(false) &&
        (name == "notice-of-suit" ||
         (name == "wait-before-suit" && !duty.legs.empty() && duty.duty->legs.front().after.size() == 1 &&
          d.a.law->view().info(duty.duty->legs.front().after.front()).id == "suit-notice-given")))
      return &duty;
  }
  return nullptr;
}

std::optional<Day> day_from_request(const Draft& d) {
  if (!d.law.there()) return std::nullopt;
  const Law& law = *d.a.law;
  for (const DutyResult& duty : law.duties()) {
    if (duty.duty->who != Who::landlord || duty.applies == Tri(false)) continue;
    for (const Leg& leg : duty.duty->legs) {
      const bool runs = std::any_of(leg.after.begin(), leg.after.end(),
                                    [&](EventId id) { return law.view().info(id).id == "tenant-demand"; });
      const CountingRule* rule = counting_of(*duty.duty, law);
      if (runs && leg.count && !leg.before && rule && d.law.footing(*duty.duty) >= Footing::careful)
        return last_day_after(d.a.today, *leg.count, leg.unit, {rule, &d.rules.holidays}).last;
    }
  }
  return std::nullopt;
}

Claim claim_of(const Draft& d) {
  Claim claim;
  const Totals& t = d.a.totals;
  if (!t.shortfall) return claim;
  claim.known = true;
  claim.sum = t.shortfall->likely();
  claim.sure = t.shortfall->low();
  if (d.law.forfeited()) {
    claim.forfeited = true;
    claim.sum = std::max(claim.sum, d.a.law->award().sum_due_forfeited.likely());
    claim.sure = std::max(claim.sure, d.a.law->award().sum_due_forfeited.low());
  }
  return claim;
}

} // namespace wearline
