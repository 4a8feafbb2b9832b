#include "reading/fact_sums.h"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace wearline {

namespace {

constexpr std::size_t nowhere = static_cast<std::size_t>(-1);

struct Term {
  std::int64_t cents = 0;
  std::optional<CostComponent> component;
  bool printed = false;              ///< with a currency sign or decimals
  bool added = false;                ///< after "+", "plus"
  bool each = false;                 ///< a price for one
  std::uint16_t first = 0, last = 0; ///< items
};

constexpr std::array<std::pair<std::string_view, CostComponent>, 9> labels = {
    {{"tax-word", CostComponent::tax},
     {"labor-word", CostComponent::labor},
     {"disposal-word", CostComponent::disposal},
     {"delivery-word", CostComponent::delivery},
     {"call-word", CostComponent::call_out},
     {"markup-word", CostComponent::mark_up},
     {"treatment-word", CostComponent::treatment},
     {"cleaning-word", CostComponent::cleaning},
     {"material-word", CostComponent::materials}}};

/// What a count may be of, by the word after it; anything else is counted one by one.
constexpr std::array<std::pair<std::string_view, std::string_view>, 12> count_units = {{{"days", "day"},
                                                                                        {"weeks", "week"},
                                                                                        {"months", "month"},
                                                                                        {"trips", "trip"},
                                                                                        {"rooms", "room"},
                                                                                        {"walls", "wall"},
                                                                                        {"bags", "bag"},
                                                                                        {"loads", "load"},
                                                                                        {"feet", "foot"},
                                                                                        {"sq-ft", "sq-ft"},
                                                                                        {"sq-yd", "sq-yd"},
                                                                                        {"sq-m", "sq-m"}}};

class SumReader {
public:
  SumReader(const std::vector<FactItem>& items, const FactRules& rules, ChargeKind kind,
            const std::optional<Money>& amount)
      : items_(items), rules_(rules), kind_(kind), cleaning_(kind == ChargeKind::cleaning),
        disposal_(kind == ChargeKind::disposal) {
    end_ = items.size();
    for (std::size_t i = 0; i + 1 < items.size(); ++i)
      if (items[i].is('=') && is_sum(i + 1) && !priced(i + 1) && !sum_follows(i + 2, amount) && !labeled_from(i + 2))
        end_ = i, total_ = items[i + 1].thousandths / 10;
    if (!total_ && amount) total_ = std::abs(amount->in_cents());
  }

  SumFacts run() {
    SumFacts out;
    if (kind_ != ChargeKind::fee && kind_ != ChargeKind::rent && kind_ != ChargeKind::utility) price_new(out);
    gather();
    counted(out);
    split(out);
    return out;
  }

private:
  const FactItem& at(std::size_t i) const { return items_[i]; }
  bool is_sum(std::size_t i) const {
    if (i >= items_.size()) return false;
    const FactItem& n = items_[i];
    return n.kind == FactItem::Kind::number && !n.worded && (!n.no_count || n.currency) && n.thousandths % 10 == 0 &&
           n.thousandths > 0 && n.decimals <= 2 &&
           (n.number == NumberKind::money || n.number == NumberKind::plain || n.number == NumberKind::year ||
            // "part 40", "service call 65": a price, where nothing says that it is a number of it
            (n.number == NumberKind::reference && n.thousandths >= 1000 && i > 0 &&
             (in(i - 1, "material-word") || in(i - 1, "call-word") ||
              (i > 1 && items_[i - 1].is(':') && in(i - 2, "material-word")))));
  }
  bool in(std::size_t i, std::string_view name) const { return i < items_.size() && rules_.in_class(items_[i], name); }

  /// Share and price whose product is the sum charged, to the cent or to a dollar where the sum is whole.
  void price_new(SumFacts& out) const {
    if (!total_) return;
    for (std::size_t s = 0; s < items_.size(); ++s) {
      std::int64_t over = 0, under = 0;
      const FactItem& share = items_[s];
      if (share.kind != FactItem::Kind::number || measures(s)) continue;
      if (share.number == NumberKind::percent) over = share.thousandths, under = 100'000;
      else if (share.under > 1 && share.over > 0 && share.over < share.under &&
               (share.number == NumberKind::fraction || (share.number == NumberKind::date && share.day.year == 0)))
        over = share.over, under = share.under;
      else continue;
      for (std::size_t m = 0; m < items_.size(); ++m) {
        if (m == s || !is_sum(m) || (items_[m].rate && share.number != NumberKind::percent)) continue;
        const std::int64_t cents = items_[m].thousandths / 10;
        if (cents <= *total_) continue;
        const std::int64_t product = (cents * over + under / 2) / under;
        const std::int64_t slack = *total_ % 100 == 0 ? 50 : 1;
        if (std::abs(product - *total_) > slack) continue;
        out.price_new = Money::cents(cents);
        out.price_first = out.price_last = static_cast<std::uint16_t>(m);
        return;
      }
    }
  }

  /// "= 2 mos. rent x $1,140": what follows is no sum yet.
  bool priced(std::size_t i) const {
    for (std::size_t k = i + 1; k < items_.size() && k < i + 4; ++k)
      if (items_[k].is('@') || (items_[k].text == "x" && is_sum(k + 1))) return true;
    return false;
  }

  /// "½ hr": a number of a unit, no share.
  bool measures(std::size_t i) const {
    return in(i + 1, "hours") || in(i + 1, "days") || in(i + 1, "months") || in(i + 1, "years");
  }

  /// "2 gallons 58", "3 knobs $12": a bare number of things before what they cost.
  bool counts(std::size_t i) const {
    const FactItem& n = items_[i];
    if (!n.currency && n.decimals == 0 && (in(i + 1, "rooms") || in(i + 1, "walls"))) return true;
    if (n.currency || n.decimals > 0 || n.thousandths > 50'000 || (i > 0 && label_at(i - 1))) return false;
    if (i + 2 < items_.size() && items_[i + 1].thing && (items_[i + 2].is('+') || items_[i + 2].is(','))) return true;
    const bool measured = in(i + 1, "measure-word") || in(i + 1, "thing-word") || in(i + 1, "pcs") ||
                          (i + 1 < items_.size() && items_[i + 1].thing && n.thousandths <= 12'000);
    return measured && i + 2 < items_.size() && is_sum(i + 2);
  }

  /// "2 gal @ 32 = 64, 5 h @ 30 = 150, total 214.00": the sum of all stands behind those of its parts.
  bool sum_follows(std::size_t i, const std::optional<Money>& amount) const {
    for (; amount && i < items_.size(); ++i)
      if (is_sum(i) && items_[i].thousandths / 10 == std::abs(amount->in_cents())) return true;
    return false;
  }

  /// "8 h x 40 = 320, mat 118": what a part comes to, where another part follows with its name.
  bool labeled_from(std::size_t i) const {
    for (; i < items_.size(); ++i)
      if (is_sum(i) && label_at(i - 1)) return true;
    return false;
  }

  std::string_view count_unit(std::size_t i) const {
    for (const auto& [name, unit] : count_units)
      if (in(i + 1, name)) return unit;
    return {};
  }

  /// "4 ... $12 each = $48.00", "11 days of May at $38": a whole count before the price of one, both marked as such by
  /// their product.
  void counted(SumFacts& out) const {
    if (!total_) return;
    for (std::size_t p = 0; p < items_.size(); ++p) {
      if (!is_sum(p) || !(items_[p].rate || (p > 0 && in(p - 1, "by-price")) || in(p + 1, "each-word"))) continue;
      const std::int64_t cents = items_[p].thousandths / 10;
      for (std::size_t step = 0; step < items_.size(); ++step) {
        // Before the price the nearest first; after it only with a unit: "41.94 a day, 9 days".
        const std::size_t c = step < p ? p - 1 - step : step;
        const FactItem& n = items_[c];
        if (c == p || (c > p && count_unit(c).empty())) continue;
        if (n.kind != FactItem::Kind::number || n.currency || n.decimals > 0 || n.thousandths < 2000 ||
            n.thousandths % 1000 != 0 || !(n.worded || n.number == NumberKind::plain) ||
            n.thousandths / 1000 * cents != *total_ || in(c + 1, "hours") || in(c + 1, "years"))
          continue;
        const std::string_view unit = count_unit(c);
        out.counted = Quantity{n.thousandths, unit.empty() ? "each" : std::string(unit)};
        out.counted_first = static_cast<std::uint16_t>(std::min(c, p));
        out.counted_last = static_cast<std::uint16_t>(std::max(c, p));
        return;
      }
    }
  }

  bool separates(std::size_t i) const {
    const FactItem& item = items_[i];
    return item.is('+') || item.is(',') || item.is(';') || item.is('.') || item.is(':') || item.is('&') ||
           item.is('(') || item.is(')') || item.is('/') || rules_.in_class(item, "plus-word");
  }

  std::optional<CostComponent> label_at(std::size_t i) const {
    for (const auto& [name, component] : labels)
      if (in(i, name)) return component;
    return std::nullopt;
  }

  bool sum_at(std::size_t i) const { return i < end_ && items_[i].kind == FactItem::Kind::number && is_sum(i); }

  /// The words of the stretch name what the sum was for: those after it first ("41 mat."), else those before.
  std::optional<CostComponent> label_of(std::size_t first, std::size_t last) const {
    for (std::size_t i = last + 1;
         i < end_ && !separates(i) && items_[i].kind != FactItem::Kind::number && i < last + 5; ++i)
      if (const auto component = label_at(i)) {
        // "labor 60 mat 22", "door 85 hang it 40": each kind of cost before its sum
        const bool next =
            sum_at(i + 1) || (i + 1 < end_ && items_[i + 1].kind == FactItem::Kind::word && sum_at(i + 2));
        const bool apart = i > last + 1; // "labor $30 towel bar"
        if ((next || apart) && first > 0 && label_at(first - 1)) break;
        return component;
      }
    for (std::size_t i = first, steps = 0; i-- > 0 && steps < 4; ++steps) {
      if (separates(i) && !(items_[i].is(':') && steps == 0)) break;
      if (items_[i].kind == FactItem::Kind::number && is_sum(i)) break;
      if (const auto component = label_at(i)) return component;
    }
    return std::nullopt;
  }

  void gather() {
    for (std::size_t i = 0; i < end_;) {
      const std::size_t next = product(i);
      if (next > i) {
        i = next;
        continue;
      }
      if (is_sum(i) && items_[i].number != NumberKind::year) i = lone(i);
      else ++i;
    }
  }

  /// "3 hrs @ 25", "2 @ 38", "6 hr at 25/hr", "3 hr 25/h": returns the item after it.
  std::size_t product(std::size_t i) {
    const FactItem& n = items_[i];
    std::size_t j = i + 1;
    const bool minutes = in(j, "minutes");
    const bool part = n.part_of_one() && in(j, "hours"); // "3/4 hr"
    const std::int64_t times = part ? 1000 * n.over / n.under : minutes ? n.thousandths / 60 : n.thousandths;
    if (n.kind != FactItem::Kind::number || n.currency || times == 0 || times > 10'000'000 ||
        !(part || (n.number == NumberKind::reference && in(j, "hours")) || n.number == NumberKind::plain ||
          n.number == NumberKind::money || n.worded))
      return i;
    bool hours = minutes || in(j, "hours");
    bool unit = hours;
    if (!unit && j < end_ && items_[j].kind == FactItem::Kind::word && !in(j, "by-price")) {
      // "9 bags at $5", "20 sq yd at 24"
      std::size_t k = j;
      while (k < end_ && k < j + 3 && items_[k].kind == FactItem::Kind::word && !in(k, "by-price")) ++k;
      if (k < end_ && (in(k, "by-price") || (items_[k].kind == FactItem::Kind::number && items_[k].rate)))
        unit = true, j = k;
      else return i;
    } else if (unit) {
      ++j;
      if (j + 1 < end_ && items_[j].kind == FactItem::Kind::word && !in(j, "by-price") && !in(j, "people") &&
          in(j + 1, "by-price"))
        ++j; // "1.5 hr hang @ 60"
    } else if (i > 0 && in(i - 1, "labor-hours")) {
      hours = true; // "labor 2.5 @ 40"
    }
    std::int64_t people = 1000;
    if (hours && in(j, "by-price") && in(j + 2, "people") && items_[j + 1].kind == FactItem::Kind::number)
      people = items_[j + 1].thousandths, j += 3;                                      // "8 hr x 2 men x 40"
    const bool marked = in(j, "by-price") || (hours && j < end_ && items_[j].is('/')); // "3.0h/55"
    if (marked) ++j;
    if (j >= end_ || !is_sum(j) || in(j + 1, "people") || (marked && !hours && in(j + 1, "hours"))) return i;
    if (!marked && !items_[j].rate && !(hours && in(j + 1, "per-hour"))) return i;
    const std::int64_t cents = (times * people / 1000 * (items_[j].thousandths / 10) + 500) / 1000;
    Term term;
    term.cents = cents;
    term.first = static_cast<std::uint16_t>(i);
    std::size_t last = j;
    while (last + 1 < end_ && (in(last + 1, "per-hour") || items_[last + 1].is('/'))) ++last;
    term.last = static_cast<std::uint16_t>(last);
    const auto label = label_of(i, last);
    term.component = hours ? cleaning_ ? CostComponent::cleaning : CostComponent::labor
                     : label && *label != CostComponent::tax && *label != CostComponent::labor ? *label
                     : disposal_                                                               ? CostComponent::disposal
                                 : CostComponent::materials;
    term.printed = true;
    terms_.push_back(term);
    // "2.5 @ 40 = 100": what it comes to is no sum of its own
    if (last + 2 < end_ && items_[last + 1].is('=') && is_sum(last + 2) && items_[last + 2].thousandths / 10 == cents)
      last += 2;
    return last + 1;
  }

  bool plus(std::size_t i) const { return items_[i].is('+') || items_[i].is('&') || in(i, "plus-word"); }

  /// "31.00 x 2": how often a price is taken that stands before its count; 1 where none follows.
  std::int64_t times_after(std::size_t i) const {
    if (i + 2 >= end_ || !(items_[i].currency || items_[i].decimals == 2)) return 1;
    const FactItem& count = items_[i + 2];
    if (!(items_[i + 1].text == "x" || items_[i + 1].is('*')) || count.kind != FactItem::Kind::number ||
        count.number != NumberKind::plain || count.currency || count.decimals > 0 || measures(i + 2))
      return 1;
    return count.thousandths % 1000 == 0 && count.thousandths <= 50'000 ? count.thousandths / 1000 : 1;
  }

  /// One sum as it stands, and what its words say it is for. Gives the item after it.
  std::size_t lone(std::size_t i) {
    const FactItem& n = items_[i];
    if (n.bracketed && !n.currency && n.decimals == 0) return i + 1; // "set (1) towel bar"
    if (n.hyphened || measures(i) || counts(i) || (i + 1 < end_ && items_[i + 1].is('+') && measures(i + 1)))
      return i + 1;
    const std::int64_t times = times_after(i);
    Term term;
    term.cents = n.thousandths / 10 * times;
    term.first = static_cast<std::uint16_t>(i);
    term.last = static_cast<std::uint16_t>(times > 1 ? i + 2 : i);
    term.printed = n.currency || n.decimals == 2;
    term.added = i > 0 && plus(i - 1);
    if (i + 1 < end_ && plus(i + 1)) term.added = true;
    for (std::size_t k = i, steps = 0; !term.added && k-- > 0 && steps < 3; ++steps) {
      if (plus(k) && (!items_[k].is('&') || k + 1u == i)) term.added = true; // "R&R 3 sheets" adds nothing
      if (items_[k].kind != FactItem::Kind::word) break;
    }
    for (std::size_t k = i + 1; !term.added && k < end_ && k < i + 5; ++k) { // "68 at the store + 20 to hang it"
      if (items_[k].is('+')) term.added = true;
      if (items_[k].kind != FactItem::Kind::word) break;
    }
    term.each = n.rate || (i > 0 && items_[i - 1].is('@'));
    term.component = label_of(i, i);
    for (std::size_t k = i; !term.component && k-- > 0 && i - k < 6 && !separates(k);) // "1 hr of our man $30"
      if (k > 0 && in(k, "hours") && items_[k - 1].kind == FactItem::Kind::number && !items_[k - 1].currency)
        term.component = CostComponent::labor;
    if (term.component == CostComponent::labor && cleaning_) term.component = CostComponent::cleaning;
    if (times > 1) term.each = false;
    terms_.push_back(term);
    return term.last + 1u;
  }

  static std::int64_t sum(const std::vector<Term>& terms) {
    std::int64_t cents = 0;
    for (const Term& t : terms) cents += t.cents;
    return cents;
  }

  /// The terms that stand as sums of money close the sum charged; or, with a price for one taken times a count that the
  /// line names, or with bare numbers that a kind of cost is named beside.
  std::vector<Term> closing() const {
    std::vector<Term> strong;
    for (const Term& t : terms_)
      if (t.printed || t.added) strong.push_back(t);
    std::vector<Term> printed = strong;
    if (strong.size() > 1 && total_ && end_ == items_.size() && strong.back().cents == *total_ && !strong.back().added)
      strong.pop_back(); // the sum itself, printed at the end
    const bool named_beside =
        std::any_of(terms_.begin(), terms_.end(), [&](const Term& t) { // "8 h x 40 = 320, mat 118"
          return !t.printed && !t.added && t.component && t.first > 0 && label_at(t.first - 1u) == t.component;
        });
    if (total_ && sum(strong) == *total_ && (strong.size() > 1 || !named_beside)) return strong;
    if (total_)
      for (Term& t : strong) {
        if (!t.each) continue;
        for (std::size_t i = 0; i < t.first; ++i) {
          const std::int64_t times = items_[i].kind == FactItem::Kind::number ? items_[i].thousandths : 0;
          if (times < 2000 || times > 200'000 || times % 1000 != 0) continue;
          if (sum(strong) - t.cents + t.cents * times / 1000 != *total_) continue;
          t.cents = t.cents * times / 1000;
          if (!t.component) t.component = CostComponent::materials;
          return strong;
        }
      }
    std::vector<Term> likely;
    for (const Term& t : terms_)
      if (t.printed || t.added || t.component) likely.push_back(t);
    if (total_ && end_ == items_.size() && likely.size() > 2 && likely.back().cents == *total_ &&
        sum(likely) == 2 * *total_ &&
        std::all_of(likely.begin(), likely.end() - 1, [](const Term& t) { return t.component.has_value(); }))
      likely.pop_back(); // the sum itself, printed at the end
    if (total_ && sum(likely) == *total_) return likely;
    // Every bare number that can be a sum: only where all together come out.
    std::vector<Term> all;
    for (const Term& t : terms_)
      if (!t.each) all.push_back(t);
    if (total_ && all.size() > 1 && sum(all) == *total_) return all;
    std::vector<Term> named;
    for (const Term& t : terms_)
      if (t.component) named.push_back(t);
    // "part 19, labor 45" without a sum: what was taken for the sum is one of the parts.
    const auto is_total = [&](const Term& t) { return t.cents == *total_; };
    const auto counts_things = [&](const Term& t) { return !t.printed && !t.added && in(t.last + 1u, "thing-word"); };
    if (total_ && std::none_of(named.begin(), named.end(), counts_things) && end_ == items_.size() &&
        named.size() == 2 && likely.size() == 2 && std::any_of(named.begin(), named.end(), is_total) &&
        named[0].cents >= 300 && *named[0].component != *named[1].component)
      return named;
    if (total_ && end_ == items_.size() && printed.size() == 2 &&
        std::any_of(printed.begin(), printed.end(), is_total) && printed[0].component && printed[1].component &&
        *printed[0].component != *printed[1].component)
      return printed;
    if (std::vector<Term> parts = without_total(strong); !parts.empty()) return parts;
    if (!total_ || sum(named) != *total_) std::erase_if(named, [](const Term& t) { return !t.printed && !t.added; });
    if (total_ && sum(named) != *total_) return {};
    return named;
  }

  /// "2 hr @ 95 + breaker 48", "7 plates .89 ea, 1/2 hr @ 70": hours at a rate and what else it took, where no sum of
  /// all is printed and one of these was taken for it.
  std::vector<Term> without_total(std::vector<Term> terms) const {
    const auto worked = [](const Term& t) { return t.component == CostComponent::labor && t.last > t.first; };
    if (!total_ || end_ != items_.size() || terms.size() != 2 || worked(terms[0]) == worked(terms[1])) return {};
    if (std::none_of(terms.begin(), terms.end(), [&](const Term& t) { return t.cents == *total_; })) return {};
    Term& other = worked(terms[0]) ? terms[1] : terms[0];
    if (other.component == CostComponent::labor || (!other.component && !other.added && !other.each)) return {};
    if (other.each) {
      std::int64_t times = 0;
      for (std::size_t i = other.first; i-- > 0 && times == 0;)
        if (const FactItem& n = items_[i]; n.kind == FactItem::Kind::number && n.number == NumberKind::plain &&
                                           !n.currency && n.decimals == 0 && n.thousandths >= 2000 &&
                                           n.thousandths <= 50'000 && n.thousandths % 1000 == 0 && !measures(i))
          times = n.thousandths / 1000;
      if (times == 0) return {};
      other.cents *= times;
      if (!other.component) other.component = CostComponent::materials;
    }
    return terms;
  }

  /// "Parts only, $71.40", "$71.40, no labor": the whole sum is of one kind.
  bool only_kind(SumFacts& out) const {
    if (!total_) return false;
    for (const FactItem& item : items_)
      if (item.rate) return false; // of one, not of all
    for (std::size_t i = 0; i < end_; ++i) {
      auto component = label_at(i);
      const bool no_labor = in(i, "bare-labor") && i > 0 && in(i - 1, "no-word");
      if (no_labor) component = CostComponent::materials;
      else if (!component || !in(i + 1, "only-word") || (i + 2 < end_ && items_[i + 2].kind == FactItem::Kind::word))
        continue;
      out.parts.push_back({*component, Money::cents(*total_), {}});
      out.parts_first = static_cast<std::uint16_t>(no_labor ? i - 1 : i);
      out.parts_last = static_cast<std::uint16_t>(out.parts_first + 1);
      return true;
    }
    return false;
  }

  void split(SumFacts& out) {
    if (only_kind(out)) return;
    terms_ = closing();
    if (terms_.size() < 2) return;
    const auto open = std::count_if(terms_.begin(), terms_.end(), [](const Term& t) { return !t.component; });
    if (open > 1) return;
    if (open == 1) { // of two kinds of cost, the one that is not named is the other
      const auto has = [&](CostComponent component) {
        return std::any_of(terms_.begin(), terms_.end(), [&](const Term& t) { return t.component == component; });
      };
      const bool worked = has(CostComponent::labor) || has(CostComponent::cleaning) || has(CostComponent::call_out);
      if ((worked && has(CostComponent::materials)) || (cleaning_ && !worked)) return;
      for (const Term& t : terms_) // "two doors $80, one window $40": things, no work
        if (!t.component && ((t.first > 0 && in(t.first - 1u, "thing-word")) || in(t.last + 1u, "thing-word"))) return;
      for (Term& t : terms_)
        if (!t.component)
          t.component = worked ? CostComponent::materials : cleaning_ ? CostComponent::cleaning : CostComponent::labor;
    }
    if (std::all_of(terms_.begin(), terms_.end(),
                    [&](const Term& t) { return t.component == terms_.front().component; }))
      return; // no split into kinds of cost
    for (const Term& t : terms_) out.parts.push_back({*t.component, Money::cents(t.cents), {}});
    out.parts_first = terms_.front().first;
    out.parts_last = terms_.back().last;
  }

  const std::vector<FactItem>& items_;
  const FactRules& rules_;
  ChargeKind kind_;
  bool cleaning_ = false, disposal_ = false;
  std::size_t end_ = nowhere;
  std::optional<std::int64_t> total_; ///< cents
  std::vector<Term> terms_;
};

} // namespace

SumFacts sum_facts(const std::vector<FactItem>& items, const FactRules& rules, ChargeKind kind,
                   const std::optional<Money>& amount) {
  return SumReader(items, rules, kind, amount).run();
}

} // namespace wearline
