#include "reading/row_patterns.h"

#include "reading/sum_roles.h"

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

namespace wearline {

namespace {

bool is_line_role(SumRole r) { return r == SumRole::charge || r == SumRole::credit; }
bool is_line(const Entry& e) { return is_line_role(e.options[0].role); }
/// Of a line, what it adds to the charges.
Money on_charges(const Entry& e) {
  const RoleOption& o = e.options[0];
  return o.role == SumRole::credit ? Money{} - o.value : o.value;
}

/// Makes a figure the sum of the entry; the other stays possible.
void prefer_figure(Entry& e, std::size_t figure, const ReadingWeights& w) {
  const std::size_t was = e.options[0].figure;
  if (was == figure) return;
  const std::vector<RoleOption> before = std::exchange(e.options, {});
  for (RoleOption o : before) {
    if (o.figure != was) continue;
    o.figure = figure;
    o.value = size_of(e.figures[figure].value);
    e.options.push_back(o);
  }
  const SumRole role = e.options[0].role;
  if (!is_line(e) && role != SumRole::total && role != SumRole::subtotal) return;
  for (std::size_t k = 0; k < e.figures.size(); ++k)
    if (k != figure && !e.figures[k].value.is_zero()) e.may_be(role, size_of(e.figures[k].value), w.other_figure, k);
}

void prefer_role(Entry& e, SumRole role) {
  const SumRole was = e.options[0].role;
  if (was == role) return;
  for (RoleOption& o : e.options) {
    if (o.figure != e.options[0].figure) continue;
    if (&o != &e.options[0] && o.role == role) o.role = was;
  }
  e.options[0].role = role;
}

/// The last row of a running balance, if it takes all that is left and says that it was paid out, is the refund.
void last_to_zero(Entries& entries, const ReadingWeights& w) {
  Entry* last = nullptr;
  Money before, at;
  for (Entry& e : entries.list) {
    if (e.prose || e.figures.empty()) continue;
    before = at;
    at = e.figures.back().value;
    last = &e;
  }
  if (last == nullptr || last->figures.size() < 2 || !at.is_zero() || before.is_zero()) return;
  const bool paid_out = std::find(last->heard.begin(), last->heard.end(), SumRole::refund) != last->heard.end();
  if (!is_line(*last) || !paid_out || last->options[0].value != size_of(before)) return;
  for (RoleOption& o : last->options)
    o.cost = o.role == SumRole::refund ? 0 : is_line_role(o.role) ? o.cost + w.sum_is_charge : o.cost;
  likeliest_first(*last);
}

/// What was paid in among the charges, with more of them below, lessens them.
void payments_between(Entries& entries) {
  auto& list = entries.list;
  const auto line_from = [&](std::size_t first, std::size_t last) {
    return std::any_of(list.begin() + static_cast<std::ptrdiff_t>(first),
                       list.begin() + static_cast<std::ptrdiff_t>(last),
                       [](const Entry& e) { return !e.prose && e.options[0].role == SumRole::charge; });
  };
  for (std::size_t i = 0; i < list.size(); ++i) {
    Entry& e = list[i];
    const bool paid = e.kind == LabelKind::payment ||
                      (e.minus && std::find(e.heard.begin(), e.heard.end(), SumRole::payment) != e.heard.end());
    if (e.prose || !paid || !line_from(0, i) || !line_from(i + 1, list.size())) continue;
    for (RoleOption& o : e.options)
      if (o.role == SumRole::credit) o.cost = 0;
      else if (o.role == SumRole::payment || o.role == SumRole::charge) o.cost += 6;
    likeliest_first(e);
  }
}

/// A last column that falls (or rises) by the number before it is a running balance; the charge is then the number
/// before, and what goes the other way is a credit.
bool running_balances(Entries& entries, const ReadingWeights& w) {
  std::size_t rows = 0, down = 0, up = 0;
  bool have = false;
  Money before;
  const auto walk = [&](auto&& visit) {
    have = false;
    for (Entry& e : entries.list) {
      if (e.prose || e.figures.empty()) continue;
      const Money last = e.figures.back().value;
      if (e.figures.size() == 1 && e.options[0].role != SumRole::deposit && e.options[0].role != SumRole::held)
        continue;
      if (have && e.figures.size() >= 2) visit(e, last);
      before = last;
      have = true;
    }
  };
  const auto change_of = [](const Entry& e) { return e.figures[e.figures.size() - 2].value; };
  walk([&](Entry& e, Money last) {
    ++rows;
    if (before - change_of(e) == last) ++down;
    else if (before + change_of(e) == last) ++up;
  });
  if (rows < 2 || (down + up) * 3 < rows * 2) return false;
  const auto settle = [&](Entry& e) {
    if (!e.headed && e.figures.size() >= 2) prefer_figure(e, e.figures.size() - 2, w);
  };
  walk([&](Entry& e, Money last) {
    const bool falls = before - change_of(e) == last, rises = before + change_of(e) == last;
    if (e.two_sided || falls == rises) return;
    const bool credit = falls != (down >= up);
    if (is_line(e) && credit) prefer_role(e, SumRole::credit);
    if (e.kind == LabelKind::fact) { // the balance says that it counts
      e.may_be(credit ? SumRole::credit : SumRole::charge, size_of(change_of(e)), 0, e.figures.size() - 2);
      for (RoleOption& o : e.options) o.cost = o.role == SumRole::passing ? w.sum_is_other : o.cost;
      likeliest_first(e);
    }
  });
  for (Entry& e : entries.list)
    if (!e.prose) settle(e);
  last_to_zero(entries, w);
  return true;
}

/// A lone sum right before a running balance, from which it goes on: what was held.
void balance_begins(Entries& entries, const ReadingWeights& w) {
  auto& list = entries.list;
  const auto first =
      std::find_if(list.begin(), list.end(), [](const Entry& e) { return !e.prose && e.figures.size() > 1; });
  if (first == list.begin() || first == list.end()) return;
  Entry& held = *(first - 1);
  const std::vector<Figure>& next = first->figures;
  if (held.prose || held.figures.size() != 1 || held.options[0].role == SumRole::deposit ||
      held.options[0].role == SumRole::held || held.figures[0].value - next[next.size() - 2].value != next.back().value)
    return;
  held.may_be(SumRole::deposit, held.figures[0].value, 0);
  for (RoleOption& o : held.options) o.cost = o.role == SumRole::deposit ? 0 : o.cost + w.sum_is_other;
  likeliest_first(held);
}

/// A sum whose words say nothing stands for what its place says: before all charges it is hardly their total, after
/// them hardly the deposit.
void loose_ends(Entries& entries, const ReadingWeights& w) {
  auto& list = entries.list;
  const auto charged = [](const Entry& e) { return !e.prose && e.named && e.options[0].role == SumRole::charge; };
  const auto first = std::find_if(list.begin(), list.end(), charged);
  const auto last = std::find_if(list.rbegin(), list.rend(), charged).base();
  const auto against = [&](Entry& e, SumRole role) {
    if (e.prose || e.named || !is_line(e)) return;
    for (RoleOption& o : e.options) o.cost += o.role == role ? w.spare_total : 0;
  };
  for (auto e = list.begin(); e < first; ++e) against(*e, SumRole::total);
  for (auto e = last; e < list.end(); ++e) against(*e, SumRole::deposit);
}

/// The first of several columns that is all others together is the whole; the others split it.
void whole_columns(Entries& entries, const ReadingWeights& w) {
  std::size_t rows = 0, fits = 0;
  const auto splits = [](const Entry& e) {
    Money rest;
    for (std::size_t k = 1; k < e.figures.size(); ++k) rest += e.figures[k].value;
    return rest == e.figures[0].value;
  };
  for (const Entry& e : entries.list)
    if (!e.headed && !e.prose && e.figures.size() >= 3) ++rows, fits += splits(e);
  if (rows < 2 || fits != rows) return;
  for (Entry& e : entries.list)
    if (!e.headed && !e.prose && e.figures.size() >= 3) prefer_figure(e, 0, w);
}

/// A minus or brackets on every charge only marks a deduction; where others stand without, or with a plus, it marks
/// the other direction.
void signs(Entries& entries) {
  std::size_t minus = 0, plain = 0, plus = 0;
  for (const Entry& e : entries.list) {
    if (e.prose || e.options[0].role != SumRole::charge) continue;
    if (e.minus) ++minus;
    else if (e.plus) ++plus;
    else ++plain;
  }
  for (Entry& e : entries.list) {
    if (e.prose || e.options[0].role != SumRole::charge) continue;
    const bool opposed = minus > 0 && plus > 0 && plain == 0;
    const bool turned = opposed ? (minus >= plus ? e.plus : e.minus)
                                : (e.minus && plain + plus > minus) || (e.plus && minus > 0 && plain == 0);
    if (turned) prefer_role(e, SumRole::credit);
  }
}

/// A row whose words name nothing and whose sum is all charges since the start or since the last such row, to the cent,
/// is a subtotal or the total. Two round charges may come to a third by chance: three, or cents, have to agree. Where
/// its words do name something ("Tenant portion"), it is all charges there are: four, or three with cents.
void sums_so_far(Entries& entries, const ReadingWeights& w) {
  Money since, all;
  std::size_t lines = 0, all_lines = 0;
  for (Entry& e : entries.list) {
    if (e.prose) continue;
    const RoleOption& o = e.options[0];
    const bool telling = o.value.in_cents() % 100 != 0;
    const auto is_sum_of = [&](Money sum, std::size_t count) {
      return o.value == sum && (count > 2 || (count == 2 && telling));
    };
    const bool sure = all_lines > 3 || (all_lines == 3 && telling);
    const bool comes_out =
        e.named ? sure && is_sum_of(all, all_lines) : is_sum_of(since, lines) || is_sum_of(all, all_lines);
    if (e.kind == LabelKind::none && is_line(e) && comes_out) {
      const std::size_t figure = o.figure;
      e.may_be(SumRole::subtotal, o.value, 0, figure);
      for (RoleOption& option : e.options)
        option.cost = option.role == SumRole::subtotal ? 0
                      : option.role == SumRole::total  ? w.spare_total / 2
                      : is_line_role(option.role)      ? option.cost + w.sum_is_charge
                                                       : option.cost;
      likeliest_first(e);
      since = Money{};
      lines = 0;
      continue;
    }
    if (o.role == SumRole::subtotal || o.role == SumRole::total) since = Money{}, lines = 0;
    if (!is_line(e)) continue;
    const Money value = on_charges(e);
    since += value;
    all += value;
    ++lines;
    ++all_lines;
  }
}

/// A row after the charges whose sum is the deposit less the refund (or with what is still owed) is their total, though
/// its words do not say so and the charges come to something else.
void framed_total(Entries& entries, const ReadingWeights& w) {
  Money held, rest;
  bool stated = false;
  for (const Entry& e : entries.list) {
    const RoleOption& o = e.options[0];
    if (e.prose) continue;
    if (o.role == SumRole::total) return;
    if (o.role == SumRole::deposit || o.role == SumRole::held || o.role == SumRole::interest) held += o.value;
    if (o.role == SumRole::due) held += o.value, stated = true;
    if (o.role == SumRole::refund && e.kind == LabelKind::refund) rest = o.value, stated = true;
  }
  if (!stated || held.is_zero()) return;
  std::size_t lines = 0;
  for (Entry& e : entries.list) {
    if (e.prose || !is_line(e)) continue;
    if (++lines < 3 || e.options[0].value != held - rest) continue;
    for (RoleOption& o : e.options)
      o.cost = o.role == SumRole::total ? 0 : is_line_role(o.role) ? o.cost + w.sum_is_charge : o.cost;
    return likeliest_first(e);
  }
}

/// Rows right after the refund, or what is still owed, that come to it share it out ("Priya, one half", "May
/// 5  95.00"): they are no charges.
void shares_of_rest(Entries& entries, const ReadingWeights& w) {
  auto& list = entries.list;
  for (std::size_t i = 0; i < list.size(); ++i) {
    if (list[i].options[0].role != SumRole::refund && list[i].options[0].role != SumRole::due) continue;
    Money shared;
    std::size_t end = i + 1;
    while (end < list.size() && !list[end].prose && is_line(list[end]) && shared < list[i].options[0].value)
      shared += list[end++].options[0].value;
    if (end < i + 3 || shared != list[i].options[0].value) continue;
    for (std::size_t k = i + 1; k < end; ++k) leave_out(list[k], "repeated", w.leave_named);
  }
}

/// What follows a total that is all charges before it, the deposit and the refund is seldom a charge: notes, prices.
/// Where all three agree it is none.
void notes_after(Entries& entries, const ReadingWeights& w) {
  Money all, held, total;
  std::size_t lines = 0, end = entries.list.size();
  bool foot = false, deposit = false, agrees = false;
  for (std::size_t i = 0; i < entries.list.size() && end == entries.list.size(); ++i) {
    const Entry& e = entries.list[i];
    const RoleOption& o = e.options[0];
    if (o.role == SumRole::deposit || o.role == SumRole::held || o.role == SumRole::interest) held += o.value;
    if (o.role == SumRole::deposit || o.role == SumRole::held) deposit = true;
    else if (is_line(e) && !foot) all += on_charges(e), ++lines;
    else if ((o.role == SumRole::total || o.role == SumRole::subtotal) && lines > 2 && o.value == all)
      foot = true, total = o.value;
    else if (foot && deposit && (o.role == SumRole::refund || o.role == SumRole::due || is_line(e))) {
      end = i + 1;
      agrees =
          (o.role == SumRole::refund && o.value == held - total) || (o.role == SumRole::due && o.value == total - held);
    }
  }
  for (std::size_t i = end; i < entries.list.size(); ++i) {
    Entry& e = entries.list[i];
    for (RoleOption& o : e.options)
      if (o.role == SumRole::passing && o.figure == e.options[0].figure)
        o.cost = std::min(o.cost, w.leave_after_account);
    if (agrees && is_line(e)) leave_out(e, "in-passing", w.leave_after_account);
  }
}

/// A total of the charges since the last one, with more charges below, is a subtotal.
void section_totals(Entries& entries, const ReadingWeights& w) {
  std::vector<std::pair<Entry*, bool>> totals; // with whether it sums up its own stretch only
  Money since, all;
  std::size_t lines = 0, before = 0;
  for (Entry& e : entries.list) {
    if (is_line(e)) {
      const Money value = on_charges(e);
      since += value;
      all += value;
      ++lines;
      continue;
    }
    if (e.options[0].role != SumRole::total) continue;
    totals.emplace_back(&e, lines > before && e.options[0].value == since);
    since = Money{};
    before = lines;
  }
  if (totals.size() < 2) return;
  for (auto& [e, own] : totals)
    if (own && e->options[0].value != all)
      for (RoleOption& o : e->options)
        o.cost = o.role == SumRole::subtotal ? 0 : o.role == SumRole::total ? w.spare_total : o.cost;
  for (auto& [e, own] : totals)
    std::stable_sort(e->options.begin(), e->options.end(),
                     [](const RoleOption& a, const RoleOption& b) { return a.cost < b.cost; });
}

/// A list whose lines come again below, with a total of their own that leaves the paper's refund, was corrected by the
/// later one.
void replaced_lists(Entries& entries, const ReadingWeights& w) {
  auto& list = entries.list;
  std::vector<std::size_t> totals;
  for (std::size_t i = 0; i < list.size(); ++i)
    if (!list[i].prose && (list[i].options[0].role == SumRole::total || list[i].options[0].role == SumRole::subtotal))
      totals.push_back(i);
  if (totals.size() < 2) return;
  const std::size_t first = totals[totals.size() - 2], last = totals.back();
  std::size_t again = 0, above = 0, below = 0;
  Money sum;
  for (std::size_t i = 0; i < first; ++i) above += !list[i].prose && is_line(list[i]);
  for (std::size_t i = first + 1; i < last; ++i) {
    if (list[i].prose || !is_line(list[i])) continue;
    sum += on_charges(list[i]);
    ++below;
    again += std::any_of(list.begin(), list.begin() + static_cast<std::ptrdiff_t>(first), [&](const Entry& e) {
      return !e.prose && is_line(e) && e.charge.text == list[i].charge.text;
    });
  }
  if (again < 2 || again * 3 < below * 2 || again * 2 < above || sum != list[last].options[0].value) return;
  if (list[first].options[0].value == sum) return; // said twice
  const auto states = [&](SumRole role, auto&& fits) {
    return std::any_of(list.begin(), list.end(), [&](const Entry& e) {
      return std::any_of(e.options.begin(), e.options.end(),
                         [&](const RoleOption& o) { return o.role == role && fits(o.value); });
    });
  };
  const bool leaves_refund = states(SumRole::deposit, [&](Money held) {
    return states(SumRole::refund, [&](Money back) { return back == held - sum; });
  });
  if (!leaves_refund) return;
  for (std::size_t i = 0; i <= first; ++i)
    if (!list[i].prose && (is_line(list[i]) || i == first)) leave_out(list[i], "repeated", w.whole_section);
  for (RoleOption& o : list[last].options)
    if (o.role == SumRole::total) o.cost = 0;
}

/// Several deposits, each with its own charges, their sum and what is left: those sums and rests are no deposits.
void accounts_apart(Entries& entries, const ReadingWeights& w) {
  struct Rest {
    Entry* sum = nullptr;
    Entry* rest = nullptr;
  };
  std::vector<Rest> accounts;
  Money held, since;
  std::size_t lines = 0;
  for (Entry& e : entries.list) {
    const RoleOption& o = e.options[0];
    const bool loose = o.role == SumRole::deposit || o.role == SumRole::total || o.role == SumRole::subtotal ||
                       (o.role == SumRole::charge && !e.named);
    if (loose && lines > 1 && o.value == since && (accounts.empty() || accounts.back().rest != nullptr)) {
      accounts.push_back({&e, nullptr});
    } else if (!accounts.empty() && accounts.back().rest == nullptr && o.value == held - since) {
      accounts.back().rest = &e;
      since = Money{};
      lines = 0;
    } else if (o.role == SumRole::deposit) {
      held = o.value;
      since = Money{};
      lines = 0;
    } else if (is_line(e)) {
      since += on_charges(e);
      ++lines;
    }
  }
  const auto is_part = [&](Entry& e) {
    e.may_be(SumRole::subtotal, e.options[0].value, 0, e.options[0].figure);
    for (RoleOption& o : e.options) o.cost = o.role == SumRole::subtotal ? 0 : o.cost + w.spare_total;
    likeliest_first(e);
  };
  // One such sum called a deposit ("charged against deposit") is the total.
  if (accounts.size() == 1 && accounts[0].sum->options[0].role == SumRole::deposit)
    return prefer_role(*accounts[0].sum, SumRole::total);
  if (accounts.size() < 2) return;
  for (const Rest& a : accounts) {
    is_part(*a.sum);
    if (a.rest != nullptr) is_part(*a.rest);
  }
}

/// On a form with boxes, what is not ticked is not charged.
void ticks(Entries& entries, const ReadingWeights& w) {
  if (std::none_of(entries.list.begin(), entries.list.end(), [](const Entry& e) { return e.tick > 0; })) return;
  for (Entry& e : entries.list)
    if (e.tick < 0) leave_out(e, "information", w.leave_named);
}

/// A sum at the foot of a deposit, its interest and rows between that comes to all of them: what was held. The rows are
/// deposits too ("Added when you took the garage").
void held_foot(Entries& entries, const ReadingWeights& w) {
  auto& list = entries.list;
  for (std::size_t i = 0; i < list.size(); ++i) {
    Entry& foot = list[i];
    const auto held = std::find_if(foot.options.begin(), foot.options.end(),
                                   [](const RoleOption& o) { return o.role == SumRole::held; });
    if (foot.prose || held == foot.options.end()) continue;
    Money sum;
    std::size_t lines = 0, first = i;
    bool deposit = false;
    while (first > 0 && !deposit) {
      const Entry& e = list[first - 1];
      const SumRole role = e.options[0].role;
      if (e.prose || (role != SumRole::deposit && role != SumRole::interest && role != SumRole::charge)) break;
      deposit = role == SumRole::deposit;
      lines += role == SumRole::charge;
      sum += e.options[0].value;
      --first;
    }
    if (!deposit || lines == 0 || sum != held->value) continue;
    for (std::size_t k = first; k < i; ++k) {
      if (list[k].options[0].role != SumRole::charge) continue;
      const bool interest = std::any_of(list[k].options.begin(), list[k].options.end(),
                                        [](const RoleOption& o) { return o.role == SumRole::interest; });
      // "Last month's rent paid ahead" is held as well, and is the tenant's.
      const SumRole kept = interest ? SumRole::interest : list[k].rent ? SumRole::credit : SumRole::deposit;
      list[k].kind = LabelKind::held;
      for (RoleOption& o : list[k].options)
        o.cost = o.role == kept ? 0 : o.role == SumRole::charge ? o.cost + w.sum_is_charge : o.cost;
      likeliest_first(list[k]);
    }
    for (RoleOption& o : foot.options) o.cost = o.role == SumRole::held ? 0 : o.cost + w.spare_total;
    likeliest_first(foot);
  }
}

/// Below the account, lines that come to one of its charges split that one up again, as the bill for it does; a total
/// under them is that bill's.
void bills_again(Entries& entries, const ReadingWeights& w) {
  auto& list = entries.list;
  std::size_t end = list.size();
  bool total = false;
  for (std::size_t i = 0; i < list.size() && end == list.size(); ++i) {
    const SumRole role = list[i].options[0].role;
    total = total || role == SumRole::total;
    if (total && (role == SumRole::refund || role == SumRole::due)) end = i + 1;
  }
  const auto charged = [&](Money value) {
    return std::any_of(list.begin(), list.begin() + static_cast<std::ptrdiff_t>(end),
                       [&](const Entry& e) { return is_line(e) && e.options[0].value == value; });
  };
  for (std::size_t i = end; i < list.size(); ++i) {
    if (list[i].prose || !is_line(list[i])) continue;
    Money sum;
    std::size_t k = i;
    while (k < list.size() && !list[k].prose && is_line(list[k])) {
      sum += on_charges(list[k++]);
      const bool foot = k < list.size() && !list[k].prose && list[k].options[0].value == sum &&
                        (list[k].options[0].role == SumRole::total || list[k].options[0].role == SumRole::subtotal);
      if (!(charged(sum) && (foot || k > i + 1))) continue;
      for (std::size_t e = i; e < k + foot; ++e) leave_out(list[e], "repeated", w.leave_named);
      i = k - 1 + foot;
      break;
    }
  }
}

/// Sums without words at the foot of a block of charges or credits are not the total where there are both.
void block_feet(Entries& entries) {
  const bool credits = std::any_of(entries.list.begin(), entries.list.end(), [](const Entry& e) {
    return e.options[0].role == SumRole::credit && e.kind != LabelKind::held;
  });
  if (!credits) return;
  for (Entry& e : entries.list)
    if (e.passing_fate == "sum-without-words")
      e.options.erase(std::remove_if(e.options.begin(), e.options.end(),
                                     [](const RoleOption& o) { return o.role == SumRole::total; }),
                      e.options.end());
}

/// What an attached invoice says again is counted once: in the account.
void attachments(Entries& entries, const ReadingWeights& w) {
  const auto attached = [&](const Entry& e) { return entries.sections[e.section].attached; };
  if (std::none_of(entries.list.begin(), entries.list.end(),
                   [&](const Entry& e) { return is_line(e) && !attached(e); }))
    return;
  for (Entry& e : entries.list)
    if (attached(e) && e.options[0].role != SumRole::passing) leave_out(e, "repeated", w.whole_section);
}

} // namespace

bool settle_patterns(Entries& entries, const ReadingWeights& weights) {
  balance_begins(entries, weights);
  const bool running = running_balances(entries, weights);
  if (!running) whole_columns(entries, weights);
  signs(entries);
  payments_between(entries);
  ticks(entries, weights);
  replaced_lists(entries, weights);
  held_foot(entries, weights);
  bills_again(entries, weights);
  accounts_apart(entries, weights);
  shares_of_rest(entries, weights);
  sums_so_far(entries, weights);
  framed_total(entries, weights);
  section_totals(entries, weights);
  notes_after(entries, weights);
  block_feet(entries);
  attachments(entries, weights);
  loose_ends(entries, weights);
  return running;
}

} // namespace wearline
