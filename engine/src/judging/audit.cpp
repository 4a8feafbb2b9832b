#include "judging/audit.h"

#include "judging/date_order.h"
#include "judging/line_figures.h"
#include "law/facts.h"
#include "values/ascii.h"

#include <algorithm>
#include <unordered_map>

namespace wearline {

namespace {

bool among(const std::vector<std::string>& names, std::string_view name) {
  return names.empty() || std::find(names.begin(), names.end(), name) != names.end();
}

bool matches(const ClashRule::Side& side, const AuditLine& l) {
  if (!l.subject->element || !among(side.elements, l.subject->element->id)) return false;
  if (!side.findings.empty() && (!l.subject->finding || !among(side.findings, l.subject->finding->id))) return false;
  return (!side.renewed || l.renewed) && (!side.mended || !l.renewed);
}

/// Letters and digits only, lower case: two texts that differ in spacing or case are the same text.
void add_folded(std::string& out, std::string_view text) {
  for (const char c : text) {
    if (is_upper(c)) out += to_lower(c);
    else if (is_lower(c) || is_digit(c) || static_cast<unsigned char>(c) >= 0x80) out += c;
  }
}
std::string folded(std::string_view text) {
  std::string out;
  add_folded(out, text);
  return out;
}

bool same_place(const Line& a, const Line& b) {
  return a.place.empty() || b.place.empty() || folded(a.place) == folded(b.place);
}
/// One line names its place and the other does not: perhaps the same.
bool perhaps_same_place(const Line& a, const Line& b) { return a.place.empty() != b.place.empty(); }

Money sum_of_lines(const Case& c) {
  Money sum;
  for (const Line& line : c.lines)
    if (line.amount) line.credit == Tri::yes ? sum -= * line.amount : sum += *line.amount;
  return sum;
}

bool every_amount_known(const Case& c) {
  return std::all_of(c.lines.begin(), c.lines.end(), [](const Line& l) { return l.amount.has_value(); });
}

/// The one deposit without which the statement's refund or balance is right; null where it is right anyway or never.
const Deposit* deposit_left_out(const Case& c, Money deposits, Money total) {
  const Statement& s = c.statement;
  if (!s.stated_refund && !s.stated_balance_due) return nullptr;
  const Money credited = s.stated_refund ? total + *s.stated_refund : total - *s.stated_balance_due;
  if (c.deposits.size() < 2 || credited >= deposits) return nullptr;
  for (const Deposit& d : c.deposits)
    if (d.kind != "last-month" && d.amount && !d.amount->is_zero() && credited == deposits - *d.amount) return &d;
  return nullptr;
}

/// The sums a statement says of itself, by its own arithmetic. Rent paid ahead is no deposit here (deposit_total).
void check_sums(const Case& c, std::vector<AuditNote>& notes) {
  const Statement& s = c.statement;
  const Money sum = sum_of_lines(c);
  if (s.stated_total && every_amount_known(c) && !c.lines.empty() && *s.stated_total != sum)
    notes.push_back({"sum-wrong", {}, *s.stated_total, sum});
  const auto known = deposit_total(c, nullptr);
  if (!known) return;
  const Money deposit = *known;
  const Money total = s.stated_total ? *s.stated_total : sum;
  if (const Deposit* left_out = deposit_left_out(c, deposit, total)) {
    notes.push_back({"deposit-left-out", {}, *left_out->amount, deposit});
    return;
  }
  const Money due = deposit > total ? deposit - total : Money();
  if (s.stated_refund && *s.stated_refund < due) notes.push_back({"refund-wrong", {}, *s.stated_refund, due});
  if (s.stated_balance_due && total > deposit && *s.stated_balance_due > total - deposit)
    notes.push_back({"balance-wrong", {}, *s.stated_balance_due, total - deposit});
  if (s.stated_refund && s.refund_paid && *s.refund_paid < *s.stated_refund)
    notes.push_back({"refund-less-than-stated", {}, *s.refund_paid, *s.stated_refund});
}

/// The same text, or the same thing, fault and place, more than once: paid once (common practice, no source). Grouped
/// by a key so that long statements stay quick.
void find_duplicates(const std::vector<AuditLine>& lines, std::vector<AuditNote>& notes) {
  std::unordered_map<std::string, std::size_t> first;
  std::string key;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const Line& line = *lines[i].line;
    if (!line.amount || line.amount->is_zero() || line.credit == Tri::yes) continue;
    std::size_t earlier = i;
    bool exact = false;
    const auto look_up = [&](bool by_text) {
      const auto [at, fresh] = first.emplace(key, i);
      if (fresh || earlier != i) return;
      earlier = at->second;
      exact = by_text;
    };
    key.assign(1, 't');
    add_folded(key, line.text);
    if (key.size() > 1) {
      key += '\n';
      add_folded(key, line.place);
      key += '\n';
      key += line.amount->plain();
      look_up(true);
    }
    const Element* element = lines[i].subject->element;
    const Finding* finding = lines[i].subject->finding;
    if (element && finding && !line.place.empty() && element->about_condition) {
      key.assign(1, 'e');
      ((key += element->id) += '\n') += finding->id;
      key += '\n';
      add_folded(key, line.place);
      look_up(false);
    }
    if (earlier != i)
      notes.push_back({exact ? "charged-twice" : "same-thing-twice",
                       {i, earlier},
                       *line.amount,
                       {},
                       nullptr,
                       exact ? AuditNote::Effect::doubt : AuditNote::Effect::none});
  }
}

/// A thing that is renewed as a whole room is renewed once (common practice, no source).
void find_renewed_twice(const std::vector<AuditLine>& lines, std::vector<AuditNote>& notes) {
  std::unordered_map<std::string, std::size_t> first;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const Line& line = *lines[i].line;
    const Element* element = lines[i].subject->element;
    if (!lines[i].renewed || !element || element->repairable_area_unit != "room" || line.place.empty() ||
        line.charged || !line.amount)
      continue;
    const auto [at, fresh] = first.emplace(element->id + '\n' + folded(line.place), i);
    if (fresh) continue;
    const Subject& earlier = *lines[at->second].subject;
    // The same fault twice is said already.
    if (lines[i].subject->finding && lines[i].subject->finding == earlier.finding) continue;
    notes.push_back({"renewed-twice", {i, at->second}, *line.amount, {}, nullptr, AuditNote::Effect::doubt});
  }
}

bool is_rent(const AuditLine& l) {
  return l.subject->finding ? l.subject->finding->by_days : l.line->kind == ChargeKind::rent;
}

/// Rent for the same days in two lines: a day is paid once (common practice, no source).
void find_days_twice(const std::vector<AuditLine>& lines, std::vector<AuditNote>& notes) {
  std::vector<std::size_t> rents;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const Line& line = *lines[i].line;
    if (!is_rent(lines[i]) || line.credit == Tri::yes || !line.amount || !line.from || !line.to ||
        !line.from->known() || !line.to->known())
      continue;
    // Many periods of rent in one statement are rare; the first that shares a day is enough.
    for (const std::size_t other : rents) {
      const Line& earlier = *lines[other].line;
      if (line.from->earliest <= earlier.to->earliest && earlier.from->earliest <= line.to->earliest) {
        notes.push_back({"same-days-twice", {i, other}, *line.amount, {}, nullptr, AuditNote::Effect::doubt});
        break;
      }
    }
    if (rents.size() < 32) rents.push_back(i);
  }
}

/// Charges of one place that cannot both stand (rules/audit.json).
void find_clashes(const std::vector<AuditLine>& lines, const std::vector<ClashRule>& clashes,
                  std::vector<AuditNote>& notes) {
  for (const ClashRule& rule : clashes) {
    std::vector<std::size_t> stronger;
    for (std::size_t i = 0; i < lines.size(); ++i)
      if (!lines[i].barred && matches(rule.stronger, lines[i])) stronger.push_back(i);
    if (stronger.empty()) continue;
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (!matches(rule.weaker, lines[i])) continue;
      const auto other = std::find_if(stronger.begin(), stronger.end(), [&](std::size_t j) {
        return j != i && same_place(*lines[i].line, *lines[j].line);
      });
      if (other != stronger.end())
        notes.push_back({rule.id,
                         {i, *other},
                         lines[i].line->amount.value_or(Money()),
                         {},
                         &rule.text,
                         rule.doubt_only || perhaps_same_place(*lines[i].line, *lines[*other].line)
                             ? AuditNote::Effect::doubt
                             : AuditNote::Effect::drop});
    }
  }
}

bool near_cent(Money a, Money b) { return a - b <= Money::cents(1) && b - a <= Money::cents(1); }

/// "3 hours at $25.00" that is charged as something else: the charge's own arithmetic.
void check_figures(std::size_t i, const Line& line, std::vector<AuditNote>& notes) {
  const auto product = product_in(line.text);
  if (!product || !line.parts.empty()) return;
  if (product->total && !near_cent(*product->total, product->product))
    notes.push_back({"product-wrong", {i}, *product->total, product->product, nullptr, AuditNote::Effect::limit});
  else if (!near_cent(*line.amount, product->product))
    notes.push_back({"product-wrong", {i}, *line.amount, product->product, nullptr, AuditNote::Effect::limit});
}

/// Tax against the rate in the text, or against the highest there is (rules/audit.json). A tax line of its own is on
/// the other lines together.
void check_tax(std::size_t i, const std::vector<AuditLine>& lines, const AuditRules& rules, Money all,
               std::vector<AuditNote>& notes) {
  const Line& line = *lines[i].line;
  const bool own_line =
      lines[i].subject->finding && lines[i].subject->element->id == "other" && lines[i].subject->finding->id == "tax";
  Money tax, base;
  if (own_line) {
    tax = *line.amount;
    base = all - tax;
  } else {
    for (const Part& part : line.parts) part.component == CostComponent::tax ? tax += part.amount : base += part.amount;
  }
  if (tax.is_zero() || base <= Money()) return;
  const auto rate = percentage_in(line.text);
  const Money most = base.part(rate.value_or(rules.most_tax));
  if (tax > most + Money::cents(1))
    notes.push_back({rate ? "tax-wrong" : "tax-high",
                     {i},
                     tax,
                     most,
                     nullptr,
                     own_line ? AuditNote::Effect::limit : AuditNote::Effect::none});
  else if (rate && !own_line && tax + Money::cents(1) < most) notes.push_back({"tax-wrong", {i}, tax, most});
}

bool is_flat(const Subject& s, const AuditRules& rules) {
  if (!s.element || !s.finding) return false;
  const std::string place = s.element->id + '/' + s.finding->id;
  return std::find(rules.flat_fees.begin(), rules.flat_fees.end(), place) != rules.flat_fees.end();
}

/// Line by line: what its own figures say, flat sums (rules/audit.json), and what the person entered of it.
void check_lines(const std::vector<AuditLine>& lines, const AuditRules& rules, Money all,
                 std::vector<AuditNote>& notes) {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const Line& line = *lines[i].line;
    const Subject& s = *lines[i].subject;
    if (line.amount && line.credit != Tri::yes) {
      check_figures(i, line, notes);
      check_tax(i, lines, rules, all, notes);
    }
    if (!line.amount) notes.push_back({"amount-missing", {i}});
    else if (line.price_new && *line.amount > *line.price_new)
      notes.push_back({"above-replacement-cost", {i}, *line.amount, *line.price_new});
    else if (s.element && s.element->about_condition && s.finding && s.finding->id == "work-only" &&
             line.cause == ChargeCause::unknown)
      notes.push_back({"names-no-damage", {i}, *line.amount});
    if (line.amount && is_flat(s, rules)) notes.push_back({"flat-fee", {i}, *line.amount});
    if (line.on_move_out_record == Tri::no) notes.push_back({"not-on-record", {i}});
  }
}

} // namespace

std::vector<AuditNote> audit(const Case& c, const std::vector<AuditLine>& lines, const AuditRules& rules) {
  std::vector<AuditNote> notes;
  for (const DateClash& clash : impossible_dates(c))
    notes.push_back(
        {clash.code, clash.line == DateClash::no_line ? std::vector<std::size_t>{} : std::vector{clash.line}});
  check_sums(c, notes);
  find_duplicates(lines, notes);
  find_renewed_twice(lines, notes);
  find_days_twice(lines, notes);
  find_clashes(lines, rules.clashes, notes);
  check_lines(lines, rules, sum_of_lines(c), notes);
  return notes;
}

} // namespace wearline
