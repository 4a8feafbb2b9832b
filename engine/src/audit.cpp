#include "wearline/audit.h"

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
  return !side.renewed || l.renewed;
}

/// Letters and digits only, lower case: two texts that differ in spacing or case are the same text.
std::string folded(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c >= 'A' && c <= 'Z') out += static_cast<char>(c + 32);
    else if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80) out += c;
  }
  return out;
}

bool same_place(const Line& a, const Line& b) { return a.place.empty() || b.place.empty() || folded(a.place) == folded(b.place); }

Money sum_of_lines(const Case& c) {
  Money sum;
  for (const Line& line : c.lines)
    if (line.amount) line.credit == Tri(true) ? sum -= *line.amount : sum += *line.amount;
  return sum;
}

bool every_amount_known(const Case& c) {
  return std::all_of(c.lines.begin(), c.lines.end(), [](const Line& l) { return l.amount.has_value(); });
}

void check_sums(const Case& c, std::vector<AuditNote>& notes) {
  const Statement& s = c.statement;
  const Money sum = sum_of_lines(c);
  if (s.stated_total && every_amount_known(c) && !c.lines.empty() && *s.stated_total != sum)
    notes.push_back({"sum-wrong", {}, *s.stated_total, sum});
  Money deposit;
  bool deposit_known = !c.deposits.empty();
  for (const Deposit& d : c.deposits) {
    if (d.amount) deposit += *d.amount;
    else deposit_known = false;
  }
  if (!deposit_known) return;
  const Money total = s.stated_total ? *s.stated_total : sum;
  const Money due = deposit > total ? deposit - total : Money();
  if (s.stated_refund && *s.stated_refund < due) notes.push_back({"refund-wrong", {}, *s.stated_refund, due});
  if (s.stated_balance_due && total > deposit && *s.stated_balance_due > total - deposit)
    notes.push_back({"balance-wrong", {}, *s.stated_balance_due, total - deposit});
  if (s.stated_refund && s.refund_paid && *s.refund_paid < *s.stated_refund)
    notes.push_back({"refund-less-than-stated", {}, *s.refund_paid, *s.stated_refund});
}

/// The same text, or the same thing, fault and place, more than once. Grouped by a key so that long statements stay quick.
void find_duplicates(const std::vector<AuditLine>& lines, std::vector<AuditNote>& notes) {
  std::unordered_map<std::string, std::size_t> first;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const Line& line = *lines[i].line;
    if (!line.amount || line.amount->is_zero() || line.credit == Tri(true)) continue;
    const std::string text = folded(line.text);
    std::string by_text = text.empty() ? std::string() : "t" + text + '\n' + folded(line.place) + '\n' + line.amount->plain();
    std::string by_thing;
    if (lines[i].subject->element && lines[i].subject->finding && !line.place.empty() && lines[i].subject->element->about_condition)
      by_thing = "e" + lines[i].subject->element->id + '\n' + lines[i].subject->finding->id + '\n' + folded(line.place);
    std::size_t earlier = i;
    bool exact = false;
    for (const std::string& key : {by_text, by_thing}) {
      if (key.empty()) continue;
      const auto [at, fresh] = first.emplace(key, i);
      if (!fresh && earlier == i) {
        earlier = at->second;
        exact = key[0] == 't';
      }
    }
    if (earlier != i) notes.push_back({exact ? "charged-twice" : "same-thing-twice", {i, earlier}, *line.amount, {}, nullptr, exact ? AuditNote::Effect::doubt : AuditNote::Effect::none});
  }
}

void find_clashes(const std::vector<AuditLine>& lines, const std::vector<ClashRule>& clashes, std::vector<AuditNote>& notes) {
  for (const ClashRule& rule : clashes) {
    std::vector<std::size_t> stronger;
    for (std::size_t i = 0; i < lines.size(); ++i)
      if (matches(rule.stronger, lines[i])) stronger.push_back(i);
    if (stronger.empty()) continue;
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (!matches(rule.weaker, lines[i])) continue;
      const auto other = std::find_if(stronger.begin(), stronger.end(), [&](std::size_t j) { return j != i && same_place(*lines[i].line, *lines[j].line); });
      if (other != stronger.end()) notes.push_back({rule.id, {i, *other}, lines[i].line->amount.value_or(Money()), {}, &rule.text, AuditNote::Effect::drop});
    }
  }
}

void find_bare_lines(const std::vector<AuditLine>& lines, std::vector<AuditNote>& notes) {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const Line& line = *lines[i].line;
    const Subject& s = *lines[i].subject;
    if (!line.amount) notes.push_back({"amount-missing", {i}});
    else if (line.price_new && *line.amount > *line.price_new) notes.push_back({"above-price-new", {i}, *line.amount, *line.price_new});
    else if (s.element && s.element->about_condition && s.finding && s.finding->id == "work-only" && line.cause.empty())
      notes.push_back({"names-no-damage", {i}, *line.amount});
    if (line.on_move_out_record == Tri(false)) notes.push_back({"not-on-record", {i}});
  }
}

} // namespace

std::vector<AuditNote> audit(const Case& c, const std::vector<AuditLine>& lines, const std::vector<ClashRule>& clashes) {
  std::vector<AuditNote> notes;
  check_sums(c, notes);
  find_duplicates(lines, notes);
  find_clashes(lines, clashes, notes);
  find_bare_lines(lines, notes);
  return notes;
}

} // namespace wearline
