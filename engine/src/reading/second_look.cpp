#include "reading/second_look.h"

#include "reading/row_dates.h"

#include <algorithm>

namespace wearline {

namespace {

bool holds(const Entries& entries, const TextPlace& place) {
  return std::any_of(entries.list.begin(), entries.list.end(), [&](const Entry& e) {
    return std::any_of(e.figures.begin(), e.figures.end(), [&](const Figure& f) {
      return f.place.line == place.line && f.place.start < place.end && place.start < f.place.end;
    });
  });
}

/// "25 keys": as likely a count.
bool may_count(const PaperRow& row, const Number& n, const RecognizerRules& rules) {
  return !n.currency && n.decimals != 2 && std::any_of(row.m.charge.begin(), row.m.charge.end(), [&](const Mention& u) {
    return u.first == n.last + 1u && rules.charges().at(u.concept_id).id.compare(0, 5, "unit:") == 0;
  });
}

/// The row's words beside this number: of its sentence, as far as the numbers before and after it.
std::string words_about(const PaperRow& row, const Number& n, const RecognizerRules& rules) {
  const std::vector<Token>& tokens = row.m.tokens;
  const auto stop = [&](std::size_t t) { return tokens[t].is('.') || tokens[t].is(';'); };
  const auto idle = [&](std::size_t t) { return !tokens[t].word() || is_word_of(tokens[t], "w:joint", rules); };
  std::size_t from = 0, to = tokens.size();
  for (const Number& other : row.m.numbers) {
    if (other.last < n.first) from = other.last + std::size_t{1};
    if (other.first > n.last) to = std::min<std::size_t>(to, other.first);
  }
  for (std::size_t t = from; t < n.first; ++t)
    if (stop(t)) from = t + 1;
  for (std::size_t t = to; t-- > n.last + std::size_t{1};)
    if (stop(t)) to = t;
  const auto piece = [&](std::size_t first, std::size_t last) {
    while (first < last && idle(first)) ++first;
    while (last > first && idle(last - 1)) --last;
    return first < last ? row.row.text.substr(tokens[first].start, tokens[last - 1].end - tokens[first].start) : "";
  };
  const std::string before = piece(from, n.first), after = piece(n.last + std::size_t{1}, to);
  return before.empty() ? after : after.empty() ? before : before + " " + after;
}

/// A sum that the account lacks and that its other sums give, with the role it then has.
struct Lacking {
  SumRole role;
  std::int64_t cents;
};

std::vector<Lacking> lacking_sums(const WholeReading& reading, std::size_t lines) {
  const AccountSums& a = reading.sums;
  std::vector<Lacking> out;
  const bool rest = a.refund_closes || a.due_closes;
  if (a.has_base && a.total_closes && !a.refund && !a.due && a.net() != a.base)
    out.push_back(a.net() < a.base ? Lacking{SumRole::refund, a.base - a.net()}
                                   : Lacking{SumRole::due, a.net() - a.base});
  if (a.has_base && rest && !a.total && !a.column_foot && lines > 1) out.push_back({SumRole::total, a.net()});
  if (!a.has_base && a.total && a.refund && *a.total != 0 && *a.refund != 0)
    out.push_back({SumRole::deposit, *a.total + *a.refund});
  return out;
}

/// A number that no pass took for a sum.
bool passed_over(const PaperRow& row, const Number& n, const Entries& entries) {
  static constexpr std::int64_t smallest = 5000; // below, a bare number is a count
  return row.m.tokens[n.first].start >= row.row.body && can_be_sum(n) && !n.rate && n.thousandths >= smallest &&
         !numbers_house(row.m, row.row.text, n) && !holds(entries, place_in(row, n));
}

} // namespace

void name_lacking(const StatementPaper& paper, const RecognizerRules& rules, Entries& entries, WholeReading& reading) {
  std::size_t lines = 0;
  for (std::size_t e = 0; e < entries.list.size(); ++e) {
    const SumRole role = entries.list[e].options[reading.chosen[e]].role;
    lines += role == SumRole::charge || role == SumRole::credit;
  }
  for (const Lacking& lack : lacking_sums(reading, lines)) {
    const auto close = [&] {
      AccountSums& a = reading.sums;
      if (lack.role == SumRole::refund) a.refund = lack.cents, a.refund_closes = true;
      else if (lack.role == SumRole::due) a.due = lack.cents, a.due_closes = true;
      else if (lack.role == SumRole::total) a.total = lack.cents, a.total_closes = true;
      else a.base = lack.cents, a.has_base = true, a.refund_closes = a.total_closes;
    };
    bool found = false;
    for (std::size_t e = entries.list.size(); e-- > 0 && !found;) {
      Entry& entry = entries.list[e];
      const RoleOption now = entry.options[reading.chosen[e]];
      if (now.role != SumRole::passing || now.value.in_cents() != lack.cents) continue;
      entry.options.push_back({lack.role, now.value, 0, now.figure});
      reading.chosen[e] = entry.options.size() - 1;
      found = true;
    }
    for (std::size_t r = paper.rows.size(); r-- > 0 && !found;) {
      const PaperRow& row = paper.rows[r];
      if (row.fate == "page" || (row.fate == "other-message" && lack.role != SumRole::deposit)) continue;
      for (const Number& n : row.m.numbers) {
        if (found || !passed_over(row, n, entries) || n.money()->in_cents() != lack.cents || may_count(row, n, rules))
          continue;
        Entry e;
        e.figures.push_back({*n.money(), place_in(row, n), n.slip, 0});
        e.label = e.charge.text = words_about(row, n, rules);
        e.charge.places.push_back(place_in(row));
        e.rows.push_back(r);
        e.section = entries.sections.size() - 1;
        e.prose = true;
        e.may_be(lack.role, *n.money(), 0);
        entries.list.push_back(std::move(e));
        reading.chosen.push_back(0);
        found = true;
      }
    }
    if (found) close();
  }
}

void ask_passed_over(const StatementPaper& paper, const RecognizerRules& rules, Entries& entries,
                     WholeReading& reading) {
  Entries wider = entries;
  if (!add_passed_over(paper, rules, wider)) return;
  for (std::size_t k = entries.list.size(), seen = k; k < wider.list.size(); ++k) {
    Entry& e = wider.list[k];
    const PaperRow& row = paper.rows[e.rows[0]];
    const bool known = std::any_of(entries.list.begin(), entries.list.begin() + static_cast<std::ptrdiff_t>(seen),
                                   [&](const Entry& other) { return other.figures[0].value == e.figures[0].value; });
    if (known || row.other_party || !e.named) continue;
    entries.list.push_back(std::move(e));
    reading.chosen.push_back(0);
    reading.open.push_back({entries.list.size() - 1, 1, std::nullopt});
  }
}

bool add_passed_over(const StatementPaper& paper, const RecognizerRules& rules, Entries& out) {
  static constexpr std::size_t most = 24;
  const ReadingWeights& w = rules.weights();
  std::vector<SumRole> lacking; // what the account names already is not looked for among them
  for (const SumRole sum : {SumRole::total, SumRole::refund, SumRole::deposit, SumRole::due})
    if (std::none_of(out.list.begin(), out.list.end(), [&](const Entry& e) {
          return e.options[0].role == sum || (sum == SumRole::deposit && e.options[0].role == SumRole::held);
        }))
      lacking.push_back(sum);
  std::size_t added = 0;
  for (std::size_t r = 0; r < paper.rows.size(); ++r) {
    const PaperRow& row = paper.rows[r];
    if (row.fate == "other-message" || row.fate == "page") continue;
    for (const Number& n : row.m.numbers) {
      if (!passed_over(row, n, out)) continue;
      const TextPlace place = place_in(row, n);
      if (++added > most) return true;
      Entry e;
      e.figures.push_back({*n.money(), place, n.slip, 0});
      e.charge.text = words_about(row, n, rules);
      e.charge.places.push_back(place_in(row));
      e.named = names_charge(row.m, rules, 0, row.m.tokens.size());
      e.rows.push_back(r);
      e.section = out.sections.size() - 1;
      e.prose = true;
      e.passing_fate = row.fate.empty() ? "number-without-sign" : row.fate;
      e.may_be(SumRole::passing, *n.money(), 0);
      // Just behind those that nothing speaks against.
      const int against = std::count(out.spoken_against.begin(), out.spoken_against.end(), place) > 0;
      e.may_be(SumRole::charge, *n.money(), may_count(row, n, rules) ? w.sum_is_charge : w.passed_over + against);
      for (const SumRole sum : lacking) e.may_be(sum, *n.money(), w.sentence_is_sum);
      out.list.push_back(std::move(e));
    }
  }
  return added > 0;
}

} // namespace wearline
