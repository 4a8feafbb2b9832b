#include "reading/statement_reader.h"

#include "reading/arithmetic.h"
#include "reading/closing.h"
#include "reading/list_rows.h"
#include "reading/paper.h"
#include "reading/paper_dates.h"
#include "reading/row_patterns.h"
#include "reading/second_look.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace wearline {

namespace {

bool is_line(SumRole r) { return r == SumRole::charge || r == SumRole::credit; }

/// The roles that were chosen, written out as a statement.
class Writer {
public:
  Writer(StatementPaper& paper, const Entries& entries, const WholeReading& reading)
      : paper_(paper), entries_(entries), reading_(reading) {
    out_.language = paper.language;
    out_.currency = paper.currency;
    out_.style = paper.style;
    out_.dates = entries.dates;
  }

  ReadStatement run() {
    std::vector<bool> open(entries_.list.size(), false);
    for (const WholeReading::Open& o : reading_.open) {
      open[o.entry] = true;
      const Entry& e = entries_.list[o.entry];
      out_.choices.push_back({charge_of(e, e.options[o.option]), o.reading});
    }
    bool deposit = false;
    for (std::size_t i = 0; i < entries_.list.size(); ++i)
      deposit = deposit || entries_.list[i].options[reading_.chosen[i]].role == SumRole::deposit;
    for (std::size_t i = 0; i < entries_.list.size(); ++i) {
      const Entry& e = entries_.list[i];
      const RoleOption& o = e.options[reading_.chosen[i]];
      if (open[i]) claim(e, "choice");
      else if (is_line(o.role)) {
        out_.charges.push_back(charge_of(e, o));
        claim(e, "charge");
      } else if (o.role == SumRole::passing) {
        if (e.passing_fate == "sum-without-words") out_.others.push_back(stated(e, o));
        claim(e, e.passing_fate);
      } else {
        put_sum(e, o, deposit);
      }
    }
    settle_rows();
    collect_tray();
    return std::move(out_);
  }

private:
  static ReadCharge charge_of(const Entry& e, const RoleOption& o) {
    ReadCharge c = e.charge;
    c.amount = o.role == SumRole::credit ? Money{} - o.value : o.value;
    if (o.role == SumRole::credit) c.role = ChargeRole::credit;
    c.amount_place = e.figures[o.figure].place;
    c.mended = e.figures[o.figure].mended;
    return c;
  }
  static StatedSum stated(const Entry& e, const RoleOption& o) { return {e.label, o.value, e.figures[o.figure].place}; }

  /// A balance that no sum settles goes to the tenant as long as the deposit covers the charges.
  SumRole direction_of(const Entry& e, SumRole role) const {
    if (e.kind != LabelKind::balance || (role != SumRole::refund && role != SumRole::due)) return role;
    const AccountSums& a = reading_.sums;
    if (a.refund_closes || a.due_closes || a.frame_closes) return role;
    return a.total.value_or(a.net()) <= a.base ? SumRole::refund : SumRole::due;
  }

  void put_sum(const Entry& e, const RoleOption& o, bool deposit) {
    const AccountSums& a = reading_.sums;
    const auto take = [&](std::optional<StatedSum>& slot, const std::optional<std::int64_t>& kept) {
      if (!slot && (!kept || *kept == o.value.in_cents())) slot = stated(e, o);
      else out_.others.push_back(stated(e, o));
    };
    switch (direction_of(e, o.role)) {
    case SumRole::total:
      claim(e, "total");
      if (a.column_foot) return out_.others.push_back(stated(e, o));
      return take(out_.total, a.total);
    case SumRole::refund:
      claim(e, "refund");
      return take(out_.refund, a.refund);
    case SumRole::due:
      claim(e, "balance-due");
      return take(out_.balance_due, a.due);
    case SumRole::payment:
      claim(e, "payment");
      return take(out_.payment, std::nullopt);
    case SumRole::interest:
      claim(e, "interest");
      if (!out_.interest) out_.interest = stated(e, o);
      return;
    case SumRole::deposit:
      claim(e, "deposit");
      if (all_deposits() || std::none_of(out_.deposits.begin(), out_.deposits.end(),
                                         [&](const StatedSum& d) { return d.amount == o.value; }))
        out_.deposits.push_back(stated(e, o));
      return;
    case SumRole::held: // where no deposit is named, what is "held" is it
      claim(e, "held");
      if (!deposit && out_.deposits.empty()) out_.deposits.push_back(stated(e, o));
      else out_.others.push_back(stated(e, o));
      return;
    default:
      claim(e, e.kind == LabelKind::carried ? "carried" : "subtotal");
      out_.others.push_back(stated(e, o));
    }
  }

  /// Deposits of one size are two, because they come to what is held.
  bool all_deposits() const {
    Money all;
    for (std::size_t i = 0; i < entries_.list.size(); ++i) {
      const RoleOption& o = entries_.list[i].options[reading_.chosen[i]];
      if (o.role == SumRole::deposit || o.role == SumRole::interest) all += o.value;
    }
    return all.in_cents() == reading_.sums.base;
  }

  // ----------------------------------------------------------------------------------------------- fates of lines

  static int rank(std::string_view fate) {
    static constexpr std::array<std::string_view, 6> passing = {
        "in-passing", "information", "remark", "number-without-sign", "repeated", "sum-without-words"};
    if (fate == "charge") return 4;
    if (fate == "choice") return 3;
    return std::find(passing.begin(), passing.end(), fate) != passing.end() ? 1 : 2;
  }

  /// What the entries of a row make of it: a charge before a sum before what is only named.
  void claim(const Entry& e, std::string_view fate) {
    if (claims_.empty()) claims_.resize(paper_.rows.size());
    for (const std::size_t r : e.rows) {
      std::string& now = claims_[r];
      if (now.empty() || rank(fate) > rank(now)) now = fate;
      else if (rank(fate) == 2 && rank(now) == 2 && now != fate) now = "sums";
    }
  }
  void settle_rows() {
    for (std::size_t r = 0; r < claims_.size(); ++r)
      if (!claims_[r].empty()) paper_.rows[r].fate = claims_[r];
  }

  void collect_tray() {
    static constexpr std::array<std::string_view, 12> unread = {
        "no-amount",         "number-without-sign", "remark",     "letter",   "other-message", "information",
        "sum-without-words", "sum-unexplained",     "in-passing", "repeated", "choice",        "too-large"};
    for (PaperRow& l : paper_.rows) {
      if (l.fate.empty()) l.fate = "no-amount";
      const bool number = std::any_of(l.m.numbers.begin(), l.m.numbers.end(), can_be_sum);
      if (l.fate == "no-amount" && number) l.fate = "number-without-sign";
      if (l.fate == "number-without-sign" && std::any_of(l.m.numbers.begin(), l.m.numbers.end(), is_strong))
        l.fate = "sum-unexplained";
      for (std::size_t k = 0; k < l.row.lines; ++k) out_.fates.push_back(l.fate);
      if (std::find(unread.begin(), unread.end(), l.fate) != unread.end())
        out_.tray.push_back({l.row.line, l.row.text, l.fate});
    }
  }

  StatementPaper& paper_;
  const Entries& entries_;
  const WholeReading& reading_;
  ReadStatement out_;
  std::vector<std::string> claims_;
};

/// Sums that their own words name are the same in both readings.
bool keeps_named_sums(const Entries& entries, const WholeReading& first, const WholeReading& again) {
  for (std::size_t e = 0; e < entries.list.size(); ++e) {
    const RoleOption& was = entries.list[e].options[first.chosen[e]];
    const bool named = was.cost == 0 && !is_line(was.role) && was.role != SumRole::passing;
    const SumRole now = entries.list[e].options[again.chosen[e]].role;
    // "That gives 1,160" may be what is left.
    const bool rest = was.role == SumRole::total && entries.list[e].prose && now == SumRole::refund &&
                      again.sums.refund_closes && !again.sums.total;
    if (named && now != was.role && !rest) return false;
  }
  return true;
}

bool has_lines(const Entries& entries, const WholeReading& reading) {
  for (std::size_t e = 0; e < entries.list.size(); ++e)
    if (is_line(entries.list[e].options[reading.chosen[e]].role)) return true;
  return false;
}

/// Deposit and refund (or what is owed) are named: then these have to come out as well, not a total by itself.
bool confirms_balance(const WholeReading& first, const WholeReading& again) {
  const AccountSums& a = first.sums;
  const AccountSums& b = again.sums;
  return !(a.has_base && (a.refund || a.due)) || b.refund_closes || b.due_closes;
}

/// The reading with numbers that were passed over at first stands if its sums come out and its named sums stay.
void look_again(const StatementPaper& paper, const RecognizerRules& rules, Entries& entries, WholeReading& reading) {
  Entries wider = entries;
  if (!add_passed_over(paper, rules, wider)) return;
  WholeReading again = best_reading(wider, rules.weights());
  if (!again.closes || !has_lines(wider, again) || !keeps_named_sums(entries, reading, again) ||
      !confirms_balance(reading, again))
    return;
  entries = std::move(wider);
  reading = std::move(again);
}

} // namespace

ReadStatement read_statement(std::string_view text, const RecognizerRules& rules, std::string_view language) {
  StatementPaper paper = look_at_paper(text, rules, language);
  Entries entries;
  read_rows(paper, rules, entries);
  settle_patterns(entries, rules.weights());
  WholeReading reading = best_reading(entries, rules.weights());
  if (!reading.closes || !has_lines(entries, reading)) look_again(paper, rules, entries, reading);
  name_lacking(paper, rules, entries, reading);
  if (!reading.closes && reading.sums.has_base && !has_lines(entries, reading))
    ask_passed_over(paper, rules, entries, reading);
  ReadStatement out = Writer(paper, entries, reading).run();
  settle_dates(paper, rules, out.dates);
  check_arithmetic(out, entries, reading, rules);
  return out;
}

} // namespace wearline
