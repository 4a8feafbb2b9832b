#include "reading/arithmetic.h"

#include "reading/label.h"
#include "reading/paper.h"
#include "reading/slip.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace wearline {

namespace {

class Arithmetic {
public:
  Arithmetic(ReadStatement& s, const Entries& entries, const WholeReading& reading, const RecognizerRules& rules)
      : s_(s), entries_(entries), reading_(reading), rules_(rules) {}

  void run() {
    contradiction();
    total();
    balances();
    subtotals();
    for (const ReadCharge& c : s_.charges) {
      const auto marked =
          c.computed || c.role == ChargeRole::credit ? std::nullopt : std::optional(mark(c.text, rules_, s_.style));
      if (marked) extension(c, *marked);
    }
    tax();
  }

private:
  Money base() const { return s_.deposit().value_or(Money{}) + (s_.interest ? s_.interest->amount : Money{}); }
  Money charged() const { return s_.total ? s_.total->amount : s_.sum(); }

  void fails(std::string code, const StatedSum& stated, Money computed) {
    StatementCheck check{std::move(code), stated.text, stated.place.line, stated.amount, computed, Slip::none, ""};
    check.slip = slip_between(stated.amount, computed);
    if (check.slip == Slip::none && check.code != "refund" && check.code != "balance")
      for (const ReadCharge& c : s_.charges)
        if (computed - stated.amount == c.amount && !c.amount.is_zero() && check.left_out.empty())
          check.slip = Slip::left_out, check.left_out = c.text;
    s_.checks.push_back(std::move(check));
  }
  void comes_out(std::string code, std::size_t line, Money stated, std::vector<std::size_t> from) {
    std::sort(from.begin(), from.end());
    from.erase(std::unique(from.begin(), from.end()), from.end());
    s_.closed.push_back({std::move(code), line, stated, std::move(from)});
  }
  std::vector<std::size_t> charge_lines() const {
    std::vector<std::size_t> lines;
    for (const ReadCharge& c : s_.charges) lines.push_back(c.amount_place.line);
    return lines;
  }

  /// A paper that says both "refund enclosed" and "you owe" is taken at its sums; the other claim is kept apart.
  void contradiction() {
    if (!s_.refund || !s_.balance_due) return;
    const auto drop = [&](std::optional<StatedSum>& claim) {
      s_.checks.push_back({"contradiction", claim->text, claim->place.line, claim->amount, Money{}, Slip::none, ""});
      s_.others.push_back(*claim);
      claim.reset();
    };
    if (charged() - base() == s_.balance_due->amount) drop(s_.refund);
    else if (base() - charged() == s_.refund->amount) drop(s_.balance_due);
  }

  void total() {
    if (!s_.total || s_.charges.empty()) return;
    const Money stated = s_.total->amount;
    Money gross;
    for (const ReadCharge& c : s_.charges)
      if (Money{} < c.amount) gross += c.amount;
    if (stated == s_.sum() || stated == gross) comes_out("sum", s_.total->place.line, stated, charge_lines());
    else fails("sum", *s_.total, s_.sum());
  }

  /// Deposit and interest less the charges is the refund; the charges less both what is still owed. A payment on the
  /// way counts either way, as the paper has it.
  void balances() {
    if (s_.deposits.empty()) return;
    const Money paid = s_.payment ? s_.payment->amount : Money{};
    const auto settle = [&](const char* code, const StatedSum& stated, int sign) {
      std::optional<Money> first;
      for (const Money of : {charged(), s_.sum()})
        for (const Money less : {paid, Money{}, Money{} - paid}) {
          const Money rest = sign > 0 ? base() - of - less : of - base() - less;
          if (!first || (paid != Money{} && less.is_zero() && sign > 0 && of == charged())) first = rest;
          if (stated.amount != rest) continue;
          std::vector<std::size_t> lines =
              s_.total && of == charged() ? std::vector<std::size_t>{s_.total->place.line} : charge_lines();
          for (const StatedSum& d : s_.deposits) lines.push_back(d.place.line);
          if (s_.interest) lines.push_back(s_.interest->place.line);
          if (s_.payment && !less.is_zero()) lines.push_back(s_.payment->place.line);
          return comes_out(code, stated.place.line, stated.amount, std::move(lines));
        }
      fails(code, stated, *first);
    };
    if (s_.refund) settle("refund", *s_.refund, 1);
    if (s_.balance_due) settle("balance", *s_.balance_due, -1);
  }

  /// Of the stretch above it, of all above it, or of what stands below it up to the next ("LIVING ROOM  171.25").
  void subtotals() {
    Money part, all;
    std::vector<std::size_t> lines, since;
    for (std::size_t e = 0; e < entries_.list.size(); ++e) {
      const Entry& entry = entries_.list[e];
      const RoleOption& o = entry.options[reading_.chosen[e]];
      if (is_line(o)) {
        part += on_charges(o);
        all += on_charges(o);
        lines.push_back(entry.figures[o.figure].place.line);
        since.push_back(lines.back());
      }
      if (o.role != SumRole::subtotal || entry.kind != LabelKind::subtotal) continue;
      const TextPlace& place = entry.figures[o.figure].place;
      const auto [below, under] = until_next_sum(e);
      if (part == o.value) comes_out("subtotal", place.line, o.value, since);
      else if (below == o.value) comes_out("subtotal", place.line, o.value, under);
      else if (all == o.value) comes_out("subtotal", place.line, o.value, lines);
      else fails("subtotal", {entry.label, o.value, place}, stands_above_ ? below : part);
      if (part != o.value && below == o.value) stands_above_ = true;
      part = Money{};
      since.clear();
    }
  }
  static bool is_line(const RoleOption& o) { return o.role == SumRole::charge || o.role == SumRole::credit; }
  static Money on_charges(const RoleOption& o) { return o.role == SumRole::charge ? o.value : Money{} - o.value; }
  /// The charges after an entry, up to the next sum of charges.
  std::pair<Money, std::vector<std::size_t>> until_next_sum(std::size_t e) const {
    std::pair<Money, std::vector<std::size_t>> found;
    for (++e; e < entries_.list.size(); ++e) {
      const RoleOption& o = entries_.list[e].options[reading_.chosen[e]];
      if (o.role == SumRole::subtotal || o.role == SumRole::total) break;
      if (!is_line(o)) continue;
      found.first += on_charges(o);
      found.second.push_back(entries_.list[e].figures[o.figure].place.line);
    }
    return found;
  }

  /// Count times price, from columns or from "6 hours at 35.00" in the words.
  void extension(const ReadCharge& c, const MarkedText& m) {
    std::optional<std::int64_t> count = c.count;
    std::optional<Money> rate = c.rate;
    if (!count || !rate) {
      if (std::count_if(m.numbers.begin(), m.numbers.end(), is_strong) != 1) return;
      for (std::size_t k = 0; k + 1 < m.numbers.size(); ++k) {
        const Number& a = m.numbers[k];
        const Number& b = m.numbers[k + 1];
        if (a.kind == NumberKind::plain && !a.currency && is_strong(b) && b.first > a.last && b.first - a.last <= 4 &&
            priced(m, a.last, b.first))
          count = a.thousandths, rate = b.money();
      }
    }
    if (!count || !rate || *count == 0) return;
    const __int128 exact = static_cast<__int128>(*count) * rate->in_cents();
    const Money product = Money::cents(static_cast<std::int64_t>((exact + 500) / 1000));
    if (product == c.amount) comes_out("extension", c.amount_place.line, c.amount, {c.amount_place.line});
    else if (exact % 1000 == 0) fails("extension", {c.text, c.amount, c.amount_place}, product);
  }
  bool priced(const MarkedText& m, std::size_t from, std::size_t to) const {
    for (std::size_t t = from + 1; t < to; ++t)
      if (m.tokens[t].is('@') || is_word_of(m.tokens[t], "w:product", rules_)) return true;
    return false;
  }

  /// A tax line with its rate, against the subtotal before it or all charges before it.
  void tax() {
    for (std::size_t k = 0; k < s_.charges.size(); ++k) {
      const ReadCharge& c = s_.charges[k];
      if (c.role != ChargeRole::tax) continue;
      const MarkedText m = mark(c.text, rules_, s_.style);
      const auto rate = std::find_if(m.numbers.begin(), m.numbers.end(),
                                     [](const Number& n) { return n.kind == NumberKind::percent; });
      if (rate == m.numbers.end()) continue;
      Money before;
      for (std::size_t i = 0; i < k; ++i) before += s_.charges[i].amount;
      std::optional<Money> base;
      for (const StatedSum& other : s_.others)
        if (other.place.line < c.amount_place.line &&
            (k == 0 || other.place.line > s_.charges[k - 1].amount_place.line))
          base = other.amount;
      const auto taxed = [&](Money of) { return of.part({rate->thousandths, 100'000}); };
      if (taxed(before) == c.amount || (base && taxed(*base) == c.amount)) continue;
      if (!base && m.tokens.size() > 5) continue; // what it is on is not said
      fails("tax", {c.text, c.amount, c.amount_place}, taxed(base.value_or(before)));
    }
  }

  ReadStatement& s_;
  const Entries& entries_;
  const WholeReading& reading_;
  const RecognizerRules& rules_;
  bool stands_above_ = false; ///< the sums of rooms stand above their lines
};

} // namespace

void check_arithmetic(ReadStatement& statement, const Entries& entries, const WholeReading& reading,
                      const RecognizerRules& rules) {
  Arithmetic(statement, entries, reading, rules).run();
}

} // namespace wearline
