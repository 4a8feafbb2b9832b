#include "reading/closing.h"

#include "reading/slip.h"

#include <algorithm>
#include <array>
#include <numeric>
#include <unordered_map>

namespace wearline {

namespace {

/// A few sums of one role; more than it holds are left out.
class Few {
public:
  void add(std::int64_t value) {
    if (count_ < values_.size()) values_[count_++] = value;
  }
  void remove(std::int64_t value) {
    for (std::size_t i = count_; i-- > 0;)
      if (values_[i] == value) {
        for (; i + 1 < count_; ++i) values_[i] = values_[i + 1];
        --count_;
        return;
      }
  }
  const std::int64_t* begin() const { return values_.data(); }
  const std::int64_t* end() const { return values_.data() + count_; }
  bool empty() const { return count_ == 0; }
  std::int64_t last() const { return values_[count_ - 1]; }
  std::int64_t all() const { return std::accumulate(begin(), end(), std::int64_t{0}); }
  /// All different sums together: a deposit named twice is one.
  std::int64_t different() const {
    std::int64_t sum = 0;
    for (std::size_t i = 0; i < count_; ++i) {
      bool again = false;
      for (std::size_t k = 0; k < i; ++k) again = again || values_[k] == values_[i];
      if (!again) sum += values_[i];
    }
    return sum;
  }

private:
  std::array<std::int64_t, 10> values_{};
  std::size_t count_ = 0;
};

/// All roles of a reading put together.
struct Tally {
  std::int64_t charges = 0, credits = 0, payment = 0, interest = 0;
  int lines = 0, cost = 0;
  Few totals, deposits, held, refunds, dues;
  Few guessed_totals, guessed_rests; ///< of these and the dues, those whose words do not say so
  int guessed_bases = 0;

  void take(const RoleOption& o, bool in) {
    const std::int64_t value = o.value.in_cents();
    const std::int64_t signed_value = in ? value : -value;
    cost += in ? o.cost : -o.cost;
    const auto few = [&](Few& list) {
      if (in) list.add(value);
      else list.remove(value);
    };
    const bool guessed = o.cost > 1; // 1: a balance that goes the other way
    if (guessed && o.role == SumRole::total) few(guessed_totals);
    if (guessed && (o.role == SumRole::refund || o.role == SumRole::due)) few(guessed_rests);
    if (guessed && (o.role == SumRole::deposit || o.role == SumRole::held)) guessed_bases += in ? 1 : -1;
    switch (o.role) {
    case SumRole::charge:
      charges += signed_value;
      lines += in ? 1 : -1;
      break;
    case SumRole::credit:
      credits += signed_value;
      lines += in ? 1 : -1;
      break;
    case SumRole::total:
      return few(totals);
    case SumRole::deposit:
      return few(deposits);
    case SumRole::held:
      return few(held);
    case SumRole::refund:
      return few(refunds);
    case SumRole::due:
      return few(dues);
    case SumRole::interest:
      interest += signed_value;
      break;
    case SumRole::payment:
      payment += signed_value;
      break;
    default:
      break;
    }
  }
};

struct Scored {
  AccountSums sums;
  int gain = 0;
};

/// A number is taken for a sum against its words only because that sum then comes out: those that do not.
int idle_guesses(const Tally& t, const AccountSums& a) {
  int idle = 0;
  for (const std::int64_t total : t.guessed_totals)
    idle += !(a.total && *a.total == total && (a.total_closes || a.frame_closes));
  for (const std::int64_t rest : t.guessed_rests)
    idle += !((a.refund && *a.refund == rest && (a.refund_closes || a.frame_closes)) ||
              (a.due && *a.due == rest && (a.due_closes || a.frame_closes)));
  return a.refund_closes || a.due_closes || a.frame_closes ? idle : idle + t.guessed_bases;
}

Scored weigh(const Tally& t, const ReadingWeights& w) {
  Scored out;
  AccountSums& a = out.sums;
  a.charges = t.charges;
  a.credits = t.credits;
  a.payment = t.payment;
  a.has_base = !t.deposits.empty() || !t.held.empty();
  a.base = (!t.deposits.empty() ? t.deposits.different() + t.interest : t.held.empty() ? 0 : t.held.last());
  // Two deposits of one size look like one named twice; what is held in all tells them apart.
  if (!t.deposits.empty() && !t.held.empty() && t.deposits.all() + t.interest == t.held.last()) a.base = t.held.last();
  const std::int64_t net = a.net();
  for (const std::int64_t total : t.totals)
    if (total == net || (t.credits != 0 && total == t.charges)) a.total = total, a.total_closes = t.lines > 0;
  if (!a.total && !t.totals.empty()) a.total = t.totals.last();
  const auto comes_to = [&](std::int64_t back, std::int64_t charged) { return back == a.base - charged; };
  const auto agrees = [&](std::int64_t back, std::int64_t charged) {
    return comes_to(back, charged) ||
           (t.payment != 0 && (comes_to(back + t.payment, charged) || comes_to(back - t.payment, charged)));
  };
  const auto settle = [&](const Few& stated, int sign, std::optional<std::int64_t>& kept, bool& closes) {
    for (const std::int64_t s : stated) // what is left without a payment is the account's; with it, what is still to go
      if (a.has_base && comes_to(sign * s, net) && !closes) kept = s, closes = true;
    for (const std::int64_t s : stated)
      if (a.has_base && agrees(sign * s, net) && !closes) kept = s, closes = true;
    for (const std::int64_t s : stated)
      for (const std::int64_t total : t.totals)
        if (a.has_base && !closes && !a.frame_closes && agrees(sign * s, total)) {
          kept = s;
          a.frame_closes = true;
          if (!a.total_closes) a.total = total;
        }
    if (!kept && !stated.empty()) kept = *stated.begin();
  };
  // Two people's deposits of one size, without what is held in all: the rest tells that both count.
  const std::int64_t all_held = t.deposits.all() + t.interest;
  const auto leaves = [&](std::int64_t base) {
    const auto fits = [&](std::int64_t back) { return back == base - net; };
    return std::any_of(t.refunds.begin(), t.refunds.end(), fits) ||
           std::any_of(t.dues.begin(), t.dues.end(), [&](std::int64_t due) { return fits(-due); });
  };
  if (!t.deposits.empty() && t.held.empty() && all_held != a.base && !leaves(a.base) && leaves(all_held))
    a.base = all_held;
  settle(t.refunds, 1, a.refund, a.refund_closes);
  settle(t.dues, -1, a.due, a.due_closes);
  // "Owed on April 1", paid since, "still owed": what is owed now.
  if (a.due_closes && t.payment > 0)
    for (const std::int64_t s : t.dues)
      if (*a.due == s + t.payment) a.due = s;
  // The foot of a ledger's column holds the refund or the deposit too; it is no total of the charges.
  if (a.total && !a.total_closes && a.refund && a.refund_closes &&
      (*a.total == a.charges + *a.refund || *a.total == a.base + a.credits))
    a.total.reset(), a.column_foot = true;
  if (a.total_closes) out.gain += t.lines > 1 ? w.total_closes : w.one_line;
  if (a.refund_closes || a.due_closes) out.gain += t.lines > 1 ? w.refund_closes : w.refund_closes - w.one_line;
  else if (a.frame_closes && !a.total_closes)
    out.gain += t.lines != 1 ? w.frame_closes : w.refund_closes / 2; // one line: two totals contradict
  if ((a.total_closes || a.refund_closes || a.due_closes) && t.lines > 1 && net % 100 != 0) out.gain += w.cents_close;
  out.gain -= w.idle_guess * idle_guesses(t, a);
  // What the paper itself calls the refund, though another sum comes out as that.
  if (a.refund_closes)
    for (const std::int64_t s : t.refunds) out.gain -= agrees(s, net) ? 0 : w.spare_total;
  if (a.due_closes)
    for (const std::int64_t s : t.dues) out.gain -= agrees(-s, net) ? 0 : w.spare_total;
  return out;
}

/// One or more entries taken otherwise, together.
struct Move {
  int cost = 0;
  std::int64_t delta = 0;                                 ///< on the charges, where it changes nothing else
  bool only_lines = false;                                ///< changes charges and credits only
  std::vector<std::pair<std::size_t, std::size_t>> takes; ///< entry, option
};

bool is_line(SumRole r) { return r == SumRole::charge || r == SumRole::credit; }
std::int64_t on_charges(const RoleOption& o) {
  if (o.role == SumRole::charge) return o.value.in_cents();
  return o.role == SumRole::credit ? -o.value.in_cents() : 0;
}
bool counts(SumRole r) { return !is_line(r) && r != SumRole::passing && r != SumRole::subtotal; }

class Search {
public:
  Search(const Entries& entries, const ReadingWeights& w) : list_(entries.list), sections_(entries.sections), w_(w) {
    for (const Entry& e : list_) start_.take(e.options[0], true);
  }

  WholeReading run() {
    const Scored first = weigh(start_, w_);
    consider({}, first.gain, start_.cost);
    if (!settled(first.sums) || spare_total(first.sums)) {
      make_moves();
      search();
    }
    return finish();
  }

private:
  int most_gain() const { return w_.total_closes + w_.refund_closes + w_.cents_close; }

  /// Charges, total, deposit and refund agree: there is nothing left to find.
  bool settled(const AccountSums& a) const { return a.total_closes && (a.refund_closes || a.due_closes); }

  /// A stated total that is no sum of the charges: perhaps it is something else.
  bool spare_total(const AccountSums& a) const {
    return std::any_of(start_.totals.begin(), start_.totals.end(),
                       [&](std::int64_t t) { return t != a.net() && t != a.charges; });
  }

  void add_move(Move m) {
    m.only_lines = true;
    for (const auto& [e, o] : m.takes) {
      const RoleOption& was = list_[e].options[0];
      const RoleOption& is = list_[e].options[o];
      m.delta += on_charges(is) - on_charges(was);
      m.only_lines = m.only_lines && !counts(was.role) && !counts(is.role);
    }
    moves_.push_back(std::move(m));
  }

  void make_moves() {
    const int most = most_gain();
    for (std::size_t e = 0; e < list_.size(); ++e)
      for (std::size_t o = 1; o < list_[e].options.size(); ++o)
        if (const int cost = list_[e].options[o].cost - list_[e].options[0].cost; cost < most)
          add_move({cost, 0, false, {{e, o}}});
    section_moves();
    held_moves();
    column_moves();
    told_moves();
    std::stable_sort(moves_.begin(), moves_.end(), [](const Move& a, const Move& b) { return a.cost < b.cost; });
    if (moves_.size() > most_moves) moves_.resize(most_moves);
    frame_moves(most);
  }

  /// Three sums of which one is the other two together, as deposit, total and refund (or what is still owed).
  void frame_moves(int most) {
    struct Part {
      std::size_t entry, option;
      std::int64_t value;
      int cost;
    };
    std::array<std::vector<Part>, 4> parts; // total, deposit, refund, due
    static constexpr std::array<SumRole, 4> roles = {SumRole::total, SumRole::deposit, SumRole::refund, SumRole::due};
    for (std::size_t e = 0; e < list_.size(); ++e)
      for (std::size_t o = 0; o < list_[e].options.size(); ++o) {
        const RoleOption& option = list_[e].options[o];
        const auto at = std::find(roles.begin(), roles.end(), option.role);
        const int cost = option.cost - list_[e].options[0].cost;
        if (at == roles.end() || cost >= most / 2 || option.value.in_cents() == 0) continue;
        auto& list = parts[static_cast<std::size_t>(at - roles.begin())];
        if (list.size() < most_parts) list.push_back({e, o, option.value.in_cents(), cost});
      }
    std::vector<Move> frames;
    const auto frame = [&](const Part& a, const Part& b, const Part& whole) {
      if (a.entry == b.entry || a.entry == whole.entry || b.entry == whole.entry) return;
      Move m;
      for (const Part* part : {&a, &b, &whole})
        if (part->option != 0) m.takes.emplace_back(part->entry, part->option), m.cost += part->cost;
      if (m.takes.size() > 1 && m.cost < most) frames.push_back(std::move(m));
    };
    for (const Part& total : parts[0])
      for (const Part& deposit : parts[1]) {
        for (const Part& refund : parts[2])
          if (total.value + refund.value == deposit.value) frame(total, refund, deposit);
        for (const Part& due : parts[3])
          if (deposit.value + due.value == total.value) frame(deposit, due, total);
      }
    std::stable_sort(frames.begin(), frames.end(), [](const Move& a, const Move& b) { return a.cost < b.cost; });
    if (frames.size() > most_parts) frames.resize(most_parts);
    for (Move& m : frames) add_move(std::move(m));
  }

  static std::size_t option_of(const Entry& e, SumRole role) {
    for (std::size_t o = 0; o < e.options.size(); ++o)
      if (e.options[o].role == role) return o;
    return 0;
  }

  /// A section counted or left as a whole.
  void section_moves() {
    for (std::size_t s = 0; s < sections_.size(); ++s) {
      Move leave, count;
      for (std::size_t e = 0; e < list_.size(); ++e) {
        if (list_[e].section != s || list_[e].prose) continue;
        const SumRole now = list_[e].options[0].role;
        if (is_line(now)) {
          if (const std::size_t o = option_of(list_[e], SumRole::passing); o != 0) leave.takes.emplace_back(e, o);
        } else if (now == SumRole::passing && list_[e].passing_fate == "repeated") {
          if (const std::size_t o = option_of(list_[e], SumRole::charge); o != 0) count.takes.emplace_back(e, o);
        }
      }
      leave.cost = w_.whole_section;
      count.cost = 2 * w_.whole_section;
      if (leave.takes.size() > 1 && (sections_[s].follows || sections_[s].bill)) add_move(std::move(leave));
      if (count.takes.size() > 1) add_move(std::move(count));
    }
  }

  /// What stands under "Deposits held", all of it.
  void held_moves() {
    Move m;
    m.cost = w_.spare_total;
    for (std::size_t e = 0; e < list_.size(); ++e) {
      if (!is_line(list_[e].options[0].role)) continue;
      const std::size_t o = option_of(list_[e], SumRole::deposit);
      if (o != 0 && list_[e].options[o].cost <= w_.spare_total) m.takes.emplace_back(e, o);
    }
    if (m.takes.size() > 1) add_move(std::move(m));
  }

  /// The right edges of a table's columns, of figures that stand within one place of each other.
  std::vector<std::uint32_t> column_edges(std::size_t first, std::size_t last) const {
    std::vector<std::uint32_t> edges;
    for (std::size_t e = first; e <= last; ++e)
      for (const Figure& f : list_[e].figures)
        if (!list_[e].prose &&
            std::none_of(edges.begin(), edges.end(), [&](std::uint32_t x) { return near(x, f.right); }))
          edges.push_back(f.right);
    return edges;
  }
  static bool near(std::uint32_t a, std::uint32_t b) { return a <= b + 1 && b <= a + 1; }

  /// Another column of the same table, for all its rows and its foot. A row that has nothing there is no line of it.
  void column_moves() {
    std::size_t first = list_.size(), last = 0, rows = 0;
    for (std::size_t e = 0; e < list_.size(); ++e)
      if (!list_[e].prose && list_[e].figures.size() > 1) first = std::min(first, e), last = e, ++rows;
    if (rows < 2) return;
    for (const std::uint32_t edge : column_edges(first, last)) {
      Move m;
      m.cost = w_.other_column;
      std::size_t lines = 0;
      for (std::size_t e = first; e <= last; ++e) {
        const Entry& entry = list_[e];
        const RoleOption& now = entry.options[0];
        const bool foot = now.role == SumRole::total || now.role == SumRole::subtotal;
        if (entry.prose || (!is_line(now.role) && !foot) || near(entry.figures[now.figure].right, edge)) continue;
        const auto here = std::find_if(entry.options.begin() + 1, entry.options.end(), [&](const RoleOption& o) {
          return o.role == now.role && near(entry.figures[o.figure].right, edge);
        });
        if (here != entry.options.end()) {
          m.takes.emplace_back(e, static_cast<std::size_t>(here - entry.options.begin()));
          lines += !foot;
        } else if (const std::size_t leave = option_of(entry, SumRole::passing); !foot && leave != 0) {
          m.takes.emplace_back(e, leave);
        }
      }
      if (lines > 1) add_move(std::move(m));
    }
  }

  using Frame = std::vector<std::pair<std::size_t, SumRole>>;
  /// The account told in sentences: of the sums that stand in prose one is two others together (deposit, total and
  /// refund, or what is still owed), and some of the rest, with the rows, are the total. Words say little there, and so
  /// much that comes out is no chance; how far the words are from it decides between several.
  void told_moves() {
    std::vector<std::size_t> told;
    std::int64_t rows = 0, largest = 0;
    int row_lines = 0;
    for (std::size_t e = 0; e < list_.size(); ++e) {
      const RoleOption& o = list_[e].options[0];
      if (list_[e].prose) told.push_back(e), largest = std::max(largest, sum_of(e));
      else if (is_line(o.role)) rows += on_charges(o), ++row_lines;
    }
    if (told.size() < 3 || told.size() > most_told) return;
    for (const std::size_t whole : told)
      for (const std::size_t a : told)
        for (const std::size_t b : told) {
          if (a == b || a == whole || b == whole || sum_of(whole) != largest ||
              sum_of(a) + sum_of(b) != sum_of(whole) || sum_of(a) == 0 || sum_of(b) == 0)
            continue;
          tell(told, Frame{{{whole, SumRole::deposit}, {a, SumRole::total}, {b, SumRole::refund}}}, sum_of(a) - rows,
               row_lines);
          tell(told, Frame{{{whole, SumRole::total}, {a, SumRole::deposit}, {b, SumRole::due}}}, sum_of(whole) - rows,
               row_lines);
        }
    tell_without_total(told, rows, row_lines);
  }
  std::int64_t sum_of(std::size_t e) const { return list_[e].figures[0].value.in_cents(); }

  /// No total is told: deposit and refund (or what is still owed) leave it, and of these one at least is called so.
  void tell_without_total(const std::vector<std::size_t>& told, std::int64_t rows, int row_lines) {
    const auto cost_as = [&](std::size_t e, SumRole role) {
      const auto o = std::find_if(list_[e].options.begin(), list_[e].options.end(),
                                  [&](const RoleOption& option) { return option.role == role; });
      return o == list_[e].options.end() ? w_.leave_named : o->cost;
    };
    for (const std::size_t base : told)
      for (const std::size_t rest : told)
        for (const SumRole role : {SumRole::refund, SumRole::due}) {
          const int base_cost = cost_as(base, SumRole::deposit), rest_cost = cost_as(rest, role);
          const std::int64_t target = sum_of(base) + (role == SumRole::due ? sum_of(rest) : -sum_of(rest));
          if (base == rest || target <= 0 || std::min(base_cost, rest_cost) > w_.spare_total ||
              std::max(base_cost, rest_cost) > w_.sentence_is_sum)
            continue;
          tell(told, Frame{{base, SumRole::deposit}, {rest, role}}, target - rows, row_lines);
        }
  }

  /// Named, and nothing speaks against charging it.
  bool surely_charged(const Entry& e) const {
    return e.named && std::any_of(e.options.begin(), e.options.end(), [&](const RoleOption& o) {
             return o.role == SumRole::charge && o.cost <= w_.leave_in_sentence;
           });
  }

  /// One such frame, with the cheapest of the other sums that come to `target`. Without a total these are just
  /// those that their words name and nothing speaks against.
  void tell(const std::vector<std::size_t>& told, const Frame& frame, std::int64_t target, int row_lines) {
    Move m;
    int words = 0; // what the single words speak against it
    const auto take = [&](std::size_t e, std::size_t o) {
      if (o != 0) m.takes.emplace_back(e, o), words += list_[e].options[o].cost - list_[e].options[0].cost;
    };
    for (const auto& [e, role] : frame) {
      const std::size_t o = option_of(list_[e], role);
      if (o == 0 && list_[e].options[0].role != role) return;
      take(e, o);
    }
    std::vector<std::size_t> rest;
    for (const std::size_t e : told) {
      const auto said_again = [&](const auto& part) {
        return part.first == e || (sum_of(part.first) == sum_of(e) && list_[e].options[0].role == part.second);
      };
      if (std::none_of(frame.begin(), frame.end(), said_again)) rest.push_back(e);
    }
    if (rest.size() > most_rest) return;
    std::size_t best = 0;
    int cheapest = -1;
    for (std::size_t set = 0; set < std::size_t{1} << rest.size(); ++set) {
      std::int64_t sum = 0;
      int cost = 0, lines = row_lines;
      for (std::size_t k = 0; k < rest.size() && cost >= 0; ++k) {
        const Entry& entry = list_[rest[k]];
        const SumRole role = (set >> k & 1u) != 0 ? SumRole::charge : SumRole::passing;
        if (frame.size() < 3 && surely_charged(entry) != (role == SumRole::charge)) cost = -1;
        if (cost < 0) break;
        const std::size_t o = option_of(entry, role);
        if (o == 0 && entry.options[0].role != role) cost = -1;
        else cost += entry.options[o].cost, sum += on_charges(entry.options[o]), lines += role == SumRole::charge;
      }
      if (cost < 0 || lines < 2 || sum != target || (cheapest >= 0 && cost >= cheapest)) continue;
      best = set;
      cheapest = cost;
    }
    if (cheapest < 0) return;
    for (std::size_t k = 0; k < rest.size(); ++k)
      take(rest[k], option_of(list_[rest[k]], (best >> k & 1u) != 0 ? SumRole::charge : SumRole::passing));
    m.cost = std::min(words, w_.told_account + words / 8);
    if (m.takes.size() > 1) add_move(std::move(m));
  }

  bool clash(const Move& a, const Move& b) const {
    for (const auto& x : a.takes)
      for (const auto& y : b.takes)
        if (x.first == y.first) return true;
    return false;
  }
  void apply(Tally& t, const Move& m) const {
    for (const auto& [e, o] : m.takes) {
      t.take(list_[e].options[0], false);
      t.take(list_[e].options[o], true);
    }
    int single = 0;
    for (const auto& [e, o] : m.takes) single += list_[e].options[o].cost - list_[e].options[0].cost;
    t.cost += m.cost - single;
  }

  struct Candidate {
    int score = 0, gain = 0;
    std::vector<std::size_t> moves;
  };
  void consider(std::vector<std::size_t> moves, int gain, int cost) {
    const int score = gain - cost;
    if (full_ && score <= worst_) return;
    best_ = kept_.empty() ? score : std::max(best_, score);
    kept_.push_back({score, gain, std::move(moves)});
    if (kept_.size() >= 4 * most_kept) prune();
  }
  void prune() {
    std::stable_sort(kept_.begin(), kept_.end(), [](const Candidate& a, const Candidate& b) {
      return a.score > b.score || (a.score == b.score && a.moves.size() < b.moves.size());
    });
    if (kept_.size() <= most_kept) return;
    kept_.resize(most_kept);
    full_ = true;
    worst_ = kept_.back().score;
  }

  void search() {
    const int most = most_gain();
    std::vector<Tally> after;
    for (std::size_t i = 0; i < moves_.size(); ++i) {
      Tally t = start_;
      apply(t, moves_[i]);
      consider({i}, weigh(t, w_).gain, t.cost);
      after.push_back(t);
    }
    for (std::size_t i = 0; i < moves_.size(); ++i)
      for (std::size_t k = i + 1; k < moves_.size(); ++k) {
        if (moves_[i].cost + moves_[k].cost >= most || clash(moves_[i], moves_[k])) continue;
        Tally t = after[i];
        apply(t, moves_[k]);
        consider({i, k}, weigh(t, w_).gain, t.cost);
      }
    grow(most);
    aim(most);
  }

  /// The best pairs with a third and a fourth move.
  void grow(int most) {
    for (int depth = 0; depth < 2; ++depth) {
      prune();
      const std::vector<Candidate> seeds(
          kept_.begin(), kept_.begin() + static_cast<std::ptrdiff_t>(std::min(kept_.size(), most_seeds)));
      for (const Candidate& seed : seeds) {
        if (seed.moves.size() < 2) continue;
        Tally t = start_;
        for (const std::size_t m : seed.moves) apply(t, moves_[m]);
        for (std::size_t k = 0; k < moves_.size(); ++k) try_with(seed.moves, t, k, most);
      }
    }
  }
  void try_with(const std::vector<std::size_t>& base, const Tally& t, std::size_t k, int most) {
    if (t.cost - start_.cost + moves_[k].cost >= most) return;
    for (const std::size_t m : base)
      if (m == k || clash(moves_[m], moves_[k])) return;
    Tally next = t;
    apply(next, moves_[k]);
    std::vector<std::size_t> all = base;
    all.push_back(k);
    std::sort(all.begin(), all.end());
    consider(std::move(all), weigh(next, w_).gain, next.cost);
  }

  int cost_of(const std::pair<std::size_t, std::size_t>& p) const {
    return p.first == p.second ? moves_[p.first].cost : moves_[p.first].cost + moves_[p.second].cost;
  }

  /// One or two charges taken otherwise beside up to two other moves, where that brings a stated sum out to the cent.
  void aim(int most) {
    std::vector<std::size_t> lines, others;
    for (std::size_t i = 0; i < moves_.size(); ++i)
      (moves_[i].only_lines && moves_[i].delta != 0 ? lines : others).push_back(i);
    std::unordered_map<std::int64_t, std::pair<std::size_t, std::size_t>> pairs; // one twice: that one alone
    for (const std::size_t i : lines)
      if (const auto found = pairs.find(moves_[i].delta); found == pairs.end()) pairs[moves_[i].delta] = {i, i};
    for (std::size_t i = 0; i < lines.size(); ++i)
      for (std::size_t k = i + 1; k < lines.size(); ++k) {
        const Move& a = moves_[lines[i]];
        const Move& b = moves_[lines[k]];
        if (a.cost + b.cost >= most || clash(a, b)) continue;
        const auto found = pairs.find(a.delta + b.delta);
        if (found == pairs.end() || cost_of(found->second) > a.cost + b.cost)
          pairs[a.delta + b.delta] = {lines[i], lines[k]};
      }
    const auto reach = [&](const std::vector<std::size_t>& base, const Tally& t) {
      std::vector<std::int64_t> targets;
      const Scored s = weigh(t, w_);
      for (const std::int64_t total : t.totals) targets.push_back(total);
      for (const std::int64_t back : t.refunds) targets.push_back(s.sums.base - back);
      for (const std::int64_t due : t.dues) targets.push_back(s.sums.base + due + t.payment);
      for (const std::int64_t target : targets) {
        const auto found = pairs.find(target - s.sums.net());
        if (found == pairs.end()) continue;
        // Named apart: C++20 lets a lambda hold no structured binding in Clang 14.
        const std::size_t a = found->second.first, b = found->second.second;
        if (std::any_of(base.begin(), base.end(),
                        [&](std::size_t m) { return clash(moves_[m], moves_[a]) || clash(moves_[m], moves_[b]); }))
          continue;
        if (a == b) {
          try_with(base, t, a, most);
          continue;
        }
        Tally next = t;
        apply(next, moves_[a]);
        std::vector<std::size_t> all = base;
        all.push_back(a);
        try_with(all, next, b, most);
      }
    };
    reach({}, start_);
    for (std::size_t i = 0; i < moves_.size(); ++i) {
      Tally t = start_;
      apply(t, moves_[i]);
      reach({i}, t);
      if (moves_[i].only_lines) continue;
      for (const std::size_t k : others) {
        if (k <= i || clash(moves_[i], moves_[k]) || moves_[i].cost + moves_[k].cost >= most) continue;
        Tally u = t;
        apply(u, moves_[k]);
        reach({i, k}, u);
      }
    }
  }

  std::vector<std::size_t> choices_of(const Candidate& c) const {
    std::vector<std::size_t> chosen(list_.size(), 0);
    for (const std::size_t m : c.moves)
      for (const auto& [e, o] : moves_[m].takes) chosen[e] = o;
    return chosen;
  }

  WholeReading finish() {
    prune();
    WholeReading out;
    out.chosen = choices_of(kept_[0]);
    Tally t;
    for (std::size_t e = 0; e < list_.size(); ++e) t.take(list_[e].options[out.chosen[e]], true);
    out.sums = weigh(t, w_).sums;
    out.closes = out.sums.total_closes || out.sums.refund_closes || out.sums.due_closes;
    find_open(out);
    return out;
  }

  /// What the charges come to by the paper's own words, where it says so and they do not.
  std::optional<std::int64_t> stated_otherwise(const WholeReading& r) const {
    const AccountSums& a = r.sums;
    if (!a.total && !(a.has_base && (a.refund || a.due))) return std::nullopt;
    return a.total ? *a.total : a.refund ? a.base - *a.refund : a.base + *a.due;
  }

  /// Charges without which the stated sum comes out: it may leave one out by mistake, or that one is none.
  std::vector<std::size_t> left_out(const WholeReading& r, std::int64_t stated) const {
    std::vector<std::size_t> found;
    for (std::size_t e = 0; e < list_.size(); ++e)
      if (const std::int64_t line = on_charges(list_[e].options[r.chosen[e]]);
          line != 0 && line == r.sums.net() - stated)
        found.push_back(e);
    return found;
  }

  /// Charges that another reading, as likely, does not have; and those that little speaks for and no sum confirms.
  void find_open(WholeReading& out) const {
    std::vector<bool> open(list_.size(), false);
    const auto line_value = [&](std::size_t e, std::size_t o) { return on_charges(list_[e].options[o]); };
    for (const Candidate& c : kept_) {
      if (c.score < best_ - w_.open_within || &c == &kept_[0]) continue;
      const std::vector<std::size_t> other = choices_of(c);
      bool differs = false;
      for (std::size_t e = 0; e < list_.size(); ++e) {
        const std::int64_t mine = line_value(e, out.chosen[e]), theirs = line_value(e, other[e]);
        if (mine == theirs || open[e]) continue;
        // A sum of the account that comes out is no charge because another reading, in which less does, has it so.
        if (out.closes && c.gain < kept_[0].gain && counts(list_[e].options[out.chosen[e]].role)) continue;
        differs = true;
        open[e] = true;
        if (mine != 0) out.open.push_back({e, out.chosen[e], 0});
        if (theirs != 0) out.open.push_back({e, other[e], 1});
      }
      if (differs) break;
    }
    if (!out.closes) ask_about(out, open);
  }

  /// No sum of the paper confirms the charges: those that little speaks for are asked about, and where it states
  /// another sum also those whose words name nothing, those in sentences, and sums passed over in one.
  void ask_about(WholeReading& out, const std::vector<bool>& open) const {
    const std::optional<std::int64_t> stated = stated_otherwise(out);
    const std::vector<std::size_t> spare = stated ? left_out(out, *stated) : std::vector<std::size_t>{};
    // A deposit is named and nothing that is left of it: most papers say so, and then it was not found.
    // Digits turned in a total that deposit and refund confirm: a slip of the pen, no charge in doubt.
    const bool turned = stated && out.sums.frame_closes &&
                        slip_between(Money::cents(*stated), Money::cents(out.sums.net())) == Slip::turned_digits;
    const bool off = stated ? spare.empty() && !turned : out.sums.has_base;
    const bool many = off && stated && std::any_of(list_.begin(), list_.end(), [&](const Entry& entry) {
                        const RoleOption& o =
                            entry.options[out.chosen[static_cast<std::size_t>(&entry - list_.data())]];
                        return o.role == SumRole::total && o.value.in_cents() != *stated;
                      });
    for (std::size_t e = 0; e < list_.size(); ++e) {
      const Entry& entry = list_[e];
      const RoleOption& now = entry.options[out.chosen[e]];
      if (open[e]) continue;
      if (now.role == SumRole::passing) {
        const std::size_t take = option_of(entry, SumRole::charge);
        if (off && entry.named && take != 0 && entry.options[take].cost - now.cost <= w_.ask_passed_over)
          out.open.push_back({e, take, std::nullopt});
        continue;
      }
      if (now.role == SumRole::total && many && entry.prose)
        if (const std::size_t take = option_of(entry, SumRole::charge); take != 0)
          out.open.push_back({e, take, std::nullopt});
      if (!is_line(now.role)) continue;
      const bool mended = entry.figures[now.figure].mended;
      const bool spared = std::find(spare.begin(), spare.end(), e) != spare.end();
      const int enough = off || spared ? w_.doubtful_if_off : w_.doubtful;
      const bool doubtful = std::any_of(entry.options.begin(), entry.options.end(), [&](const RoleOption& o) {
        const bool account = counts(o.role) && o.role != SumRole::interest && o.role != SumRole::payment;
        return (account && o.cost - now.cost <= w_.doubtful) ||
               (o.role == SumRole::passing && o.cost - now.cost <= enough);
      });
      if (mended || doubtful || (off && !entry.named)) out.open.push_back({e, out.chosen[e], std::nullopt});
    }
  }

  static constexpr std::size_t most_told = 16, most_rest = 11;
  static constexpr std::size_t most_moves = 90, most_parts = 24, most_kept = 64, most_seeds = 24;
  const std::vector<Entry>& list_;
  const std::vector<Section>& sections_;
  const ReadingWeights& w_;
  Tally start_;
  std::vector<Move> moves_;
  std::vector<Candidate> kept_;
  int best_ = 0, worst_ = 0;
  bool full_ = false;
};

} // namespace

WholeReading best_reading(const Entries& entries, const ReadingWeights& weights) {
  return Search(entries, weights).run();
}

} // namespace wearline
