#include "letters/letter_claim.h"

#include "law/facts.h"

#include <algorithm>

namespace wearline {

namespace {

/// No more than small change is left open beside the charge.
bool narrow(const LineResult& r, const LetterRules& rules) {
  return r.fair.high() - r.fair.low() <= r.claimed.part({rules.settled_percent, 100});
}

Money whole_dollars(Money m) { return Money::cents(m.in_cents() / 100 * 100); }

bool about_condition(const LineAssessment& line) { return line.result.verdict != Verdict::non_damage_charge; }

/// Who has to object or loses the right leaves undisputed only what a bill shows, and what was not given back; so does
/// who is asked for more than the deposit.
bool objects_for_want_of_a_bill(const Draft& d, std::size_t i, bool bill) {
  const LineAssessment& judged = d.a.lines[i];
  return (bill || d.letter.kind == LetterKind::objection) && !not_given_back(judged) && about_condition(judged) &&
         !bill_came(d, i) && judged.result.claimed >= d.rules.letters.smallest_sum;
}

LineStand stand_with_sum(const Draft& d, std::size_t i, bool bill) {
  LineStand out;
  const Line& line = d.c.lines[i];
  const LineAssessment& judged = d.a.lines[i];
  const LineResult& r = judged.result;
  out.stand = stand_of(line, judged, d.rules.letters);
  out.own = is_tenants(line.cause) && !said_by_the_list(judged, "cause");
  if (out.stand == Stand::undisputed && !out.own && days_after_leaving(d, i) && !line.relet_on) out.stand = Stand::open;
  if (out.stand == Stand::undisputed && objects_for_want_of_a_bill(d, i, bill)) out.stand = Stand::open;
  if (out.stand == Stand::undisputed || out.stand == Stand::credit) out.granted = r.claimed;
  // Of damage a part is granted where the sender entered that it is theirs, or wants to settle: else what is likely is
  // told to nobody. From a bill nothing is granted.
  const bool grants = out.own || !about_condition(judged) || d.letter.kind == LetterKind::accept_and_claim_rest;
  if (out.stand == Stand::limited && (bill || !grants)) out.stand = Stand::open;
  // A rule of thumb bears no cents, and what is rounded is rounded for the sender.
  if (out.stand == Stand::limited)
    out.granted = r.depreciates || !r.fair.exact() ? whole_dollars(r.fair.likely()) : r.fair.likely();
  if (out.stand != Stand::credit) out.back = r.claimed - out.granted;
  return out;
}

} // namespace

bool said_by_the_list(const LineAssessment& judged, std::string_view field) {
  const WordFacts& used = judged.words.used;
  return std::any_of(used.begin(), used.end(), [&](const WordFact& fact) { return fact.field == field; });
}

namespace {

/// The list's own words say what only its writer claims to know: who did it, how bad it is, what was agreed.
bool leans_on_the_list(const LineAssessment& judged) {
  constexpr std::string_view claims[] = {"cause",   "severity",        "conditionAtMoveIn",
                                         "count",   "remedy",          "workDone",
                                         "inLease", "onMoveOutRecord", "supportingDocuments"};
  return std::any_of(std::begin(claims), std::end(claims),
                     [&](std::string_view field) { return said_by_the_list(judged, field); });
}

bool forfeits(const std::vector<std::string>& costs, bool damage_too) {
  return std::any_of(costs.begin(), costs.end(), [&](const std::string& cost) {
    return cost == "forfeits-deductions" || (damage_too && cost == "forfeits-damage-deductions");
  });
}

/// Whether nothing may be kept under a rule that may apply: papers that did not come, a day that passed, what a court
/// may find.
bool may_be_forfeited(const Draft& d, bool damage_too) {
  if (const ForfeitResult* forfeit = d.law.perhaps_forfeited();
      forfeit && (damage_too || forfeit->rule->loses != Loses::damage_deductions))
    return true;
  for (const DocumentResult* document : d.law.defects())
    if (!document->lacking.empty() && forfeits(document->rule->if_missing, damage_too)) return true;
  for (const DeadlineResult* deadline : d.law.perhaps_missed())
    if (forfeits(d.law.spoken(*deadline).if_missed, damage_too)) return true;
  // A day was missed and nothing may be kept if a court finds bad faith: what is then owed is asked for first.
  const bool by_rule = d.law.there() && std::any_of(d.a.law->forfeits().begin(), d.a.law->forfeits().end(),
                                                    [](const ForfeitResult& f) { return f.applies == Tri::yes; });
  for (const DeadlineResult* deadline : d.law.missed())
    if (by_rule && forfeits(d.law.spoken(*deadline).if_missed, damage_too)) return true;
  return false;
}

} // namespace

bool not_given_back(const LineAssessment& judged) {
  const Finding* finding = judged.subject.finding;
  return finding && (finding->id.find("missing") != std::string::npos || finding->id == "key-not-returned");
}

bool names_harm(const LineAssessment& judged) {
  const Finding* finding = judged.subject.finding;
  const Element* element = judged.subject.element;
  if (judged.subject.harm_named) return true;
  return finding && element && element->about_condition && finding->names_fault && finding->usual != Usual::wear &&
         finding->id != "work-only" && finding->id.compare(0, 7, "routine") != 0;
}

bool is_removal(const LineAssessment& judged) {
  return judged.subject.element && judged.subject.element->kind == ChargeKind::disposal;
}

bool bill_came(const Draft& d, std::size_t line) {
  const auto& proof = d.c.lines[line].proof;
  const auto& enclosed = d.c.statement.enclosed;
  const auto is_bill = [](const std::string& document) {
    return document == "receipts" || document == "receipt" || document == "invoice" || document == "bill";
  };
  return std::any_of(proof.begin(), proof.end(), is_bill) || std::any_of(enclosed.begin(), enclosed.end(), is_bill);
}

std::vector<std::size_t> not_on_record(const Draft& d, const std::vector<std::size_t>& lines) {
  std::vector<std::size_t> out;
  if (d.c.records.move_out.made == Tri::no) return out;
  for (const std::size_t i : lines)
    if (d.c.lines[i].on_move_out_record == Tri::no && !said_by_the_list(d.a.lines[i], "onMoveOutRecord"))
      out.push_back(i);
  return out;
}

bool days_after_leaving(const Draft& d, std::size_t line) {
  const auto& out = d.c.tenancy.left();
  const auto& to = d.c.lines[line].to;
  return d.a.lines[line].result.but_for_bars() == Verdict::non_damage_charge && out && to && to->earliest > out->latest;
}

Stand stand_of(const Line& line, const LineAssessment& judged, const LetterRules& rules) {
  const LineResult& r = judged.result;
  if (line.credit == Tri::yes) return Stand::credit;
  if (!line.amount) return Stand::no_amount;
  if (r.claimed < small_change()) return Stand::undisputed;
  const bool leans = leans_on_the_list(judged);
  if (r.fair.low() == r.claimed && !leans) return Stand::undisputed;
  const bool settled = r.fair.high().is_zero() || (!leans && !r.no_middle && r.opinion.certain() && narrow(r, rules));
  if (!settled) return Stand::open;
  if (whole_dollars(r.fair.likely()).is_zero()) return Stand::refused;
  // What is too high by next to nothing is no dispute.
  return r.claimed - r.fair.likely() < r.claimed.part({1, 50}) ? Stand::undisputed : Stand::limited;
}

bool Claim::disputes() const {
  return std::any_of(lines.begin(), lines.end(), [](const LineStand& line) {
    return line.stand != Stand::undisputed && line.stand != Stand::credit;
  });
}

bool Claim::open() const {
  return std::any_of(lines.begin(), lines.end(),
                     [](const LineStand& line) { return line.stand == Stand::open || line.stand == Stand::no_amount; });
}

namespace {

/// What money that is no deposit covers of the charges that are granted: it was paid for just these.
Money covered_apart(const Draft& d, const Claim& claim) {
  Money covered;
  for (const Deposit* own : d.held_apart()) covered += std::min(*own->amount, granted_of(d.served_by(*own), claim));
  return covered;
}

} // namespace

Claim claim_of(const Draft& d) {
  Claim claim;
  claim.forfeited = d.law.forfeited();
  const auto& balance = d.c.statement.stated_balance_due;
  claim.bill = d.letter.kind == LetterKind::reply_to_demand || (balance && !balance->is_zero() && !claim.forfeited);
  for (std::size_t i = 0; i < d.a.lines.size(); ++i) claim.lines.push_back(stand_with_sum(d, i, claim.bill));
  // A letter that is meant to settle asks for no more than it can show.
  const bool all = d.letter.kind != LetterKind::accept_and_claim_rest && !claim.forfeited && !claim.bill;
  claim.perhaps_forfeited = all && may_be_forfeited(d, true);
  const bool damage_only = claim.forfeited ? claim.forfeited->rule->loses == Loses::damage_deductions
                                           : claim.perhaps_forfeited && !may_be_forfeited(d, false);
  Money still; // granted where nothing may be kept for damage
  for (std::size_t i = 0; i < claim.lines.size(); ++i) {
    claim.granted += claim.lines[i].granted;
    if (claim.lines[i].stand == Stand::credit || (damage_only && !about_condition(d.a.lines[i])))
      still += claim.lines[i].granted;
  }
  // Who objects to a claim under which nothing may be kept objects to all of it.
  if (d.letter.kind == LetterKind::objection && claim.keeps_nothing())
    for (std::size_t i = 0; i < claim.lines.size(); ++i)
      if (claim.lines[i].stand != Stand::credit && !(damage_only && !about_condition(d.a.lines[i])))
        claim.lines[i].back = d.a.lines[i].result.claimed;
  const Statement& s = d.c.statement;
  claim.deposit = deposit_total(d.c, d.a.pack);
  claim.interest = d.law.there() ? d.a.totals.interest.low() : Money();
  claim.paid_known = s.refund_paid.has_value();
  claim.paid_stated = !claim.paid_known && s.stated_refund.has_value();
  if (claim.paid_known) claim.paid = *s.refund_paid;
  else if (claim.paid_stated) claim.paid = *s.stated_refund;
  if (!claim.deposit) return claim;
  const Money held = *claim.deposit + claim.interest - claim.paid;
  claim.on_merits = positive(held - (claim.granted - covered_apart(d, claim)));
  claim.sum = claim.keeps_nothing() ? std::max(positive(held - still), claim.on_merits) : claim.on_merits;
  return claim;
}

std::optional<Range<Money>> still_due(const Draft& d, const Claim& claim) {
  if (!claim.deposit) return std::nullopt;
  const Range<Money> held = Range<Money>(*claim.deposit) + d.a.totals.interest;
  return excess(excess(held, d.a.totals.against_deposit()), Range<Money>(d.a.totals.paid_back));
}

std::optional<Range<Money>> owed_beyond(const Draft& d, const Claim& claim) {
  if (!claim.deposit) return std::nullopt;
  return excess(d.a.totals.against_deposit(), Range<Money>(*claim.deposit) + d.a.totals.interest);
}

Money granted_of(const std::vector<std::size_t>& lines, const Claim& claim) {
  Money sum;
  for (const std::size_t i : lines) sum += claim.lines[i].granted;
  return sum;
}

bool worth_a_letter(const Claim& claim, const Draft& d) { return claim.sum >= d.rules.letters.smallest_sum; }

std::vector<std::size_t> lines_that_are(Stand stand, const Claim& claim) {
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < claim.lines.size(); ++i)
    if (claim.lines[i].stand == stand) out.push_back(i);
  return out;
}

} // namespace wearline
