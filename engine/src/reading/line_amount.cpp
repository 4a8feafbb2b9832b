#include "reading/line_amount.h"

#include <algorithm>

namespace wearline {

namespace {

bool could_be_money(const Number& n) {
  return (n.kind == NumberKind::plain || n.kind == NumberKind::money) && n.money().has_value();
}
bool tells_money(const Number& n) {
  return n.kind == NumberKind::money || (n.kind == NumberKind::plain && n.decimals > 0);
}

class AmountFinder {
public:
  AmountFinder(const std::vector<Token>& t, const std::vector<Mention>& mentions, const std::vector<Number>& numbers,
               const RecognizerRules& rules)
      : t_(t), mentions_(mentions), numbers_(numbers), rules_(rules), lexicon_(rules.charges()) {}

  AmountFound run() const {
    AmountFound out;
    const std::size_t pick = choose();
    if (is_free(pick)) return {Money{}, false, no_number};
    if (pick == no_number) return out;
    out.number = pick;
    out.amount = numbers_[pick].money();
    std::size_t count = no_number;
    if (const auto product = times_count(pick, count); product.has_value())
      out.amount = *product + plus_product(count), out.computed = true;
    else if (const auto sum = plus_before(pick); sum.has_value()) out.amount = sum, out.computed = true;
    return out;
  }

private:
  bool mention_at(std::size_t token, Lexicon::Id id) const {
    return std::any_of(mentions_.begin(), mentions_.end(),
                       [&](const Mention& m) { return m.first <= token && token <= m.last && m.concept_id == id; });
  }
  std::string unit_at(std::size_t token) const { return unit_of(t_, mentions_, lexicon_, token); }
  bool minutes_at(std::size_t token) const { return token < t_.size() && rules_.word_of("minutes", t_[token].text); }
  bool words_after(const Number& n) const {
    for (std::size_t i = n.last + 1u; i < t_.size(); ++i)
      if (t_[i].word() || t_[i].number()) return true;
    return false;
  }
  /// "no charge", "waived", unless a sum follows.
  bool is_free(std::size_t pick) const {
    for (const Mention& m : mentions_)
      if (m.concept_id == rules_.charge_marks().free &&
          (pick == no_number || numbers_[pick].first < m.first || !tells_money(numbers_[pick])))
        return true;
    return false;
  }

  /// A whole number that a unit or a thing follows is a count.
  bool counts_something(const Number& n) const {
    if (tells_money(n) || n.after_equals) return false;
    const std::size_t after = n.last + 1u;
    if (after >= t_.size()) return false;
    if (!unit_at(after).empty() && unit_at(after) != "each") return true;
    if (t_[after].is('@') || t_[after].is('"') || t_[after].is('#')) return true;
    if (!t_[after].word()) return false;
    for (const Mention& m : mentions_) {
      if (m.first != after) continue;
      const Role role = lexicon_.at(m.concept_id).role;
      if (role == Role::thing || role == Role::part) return true;
    }
    return false;
  }

  /// Inside brackets with words: "(lease p.6)", "(6 days at 41.50)".
  bool aside(const Number& n) const {
    int depth = 0;
    for (std::size_t i = 0; i < n.first; ++i) depth += t_[i].is('(') ? 1 : t_[i].is(')') && depth > 0 ? -1 : 0;
    return depth > 0;
  }

  std::size_t choose() const {
    const bool outside = std::any_of(numbers_.begin(), numbers_.end(), [&](const Number& n) {
      return could_be_money(n) && !counts_something(n) && !aside(n);
    });
    std::size_t equals = no_number, last = no_number, strong = no_number;
    for (std::size_t i = 0; i < numbers_.size(); ++i) {
      const Number& n = numbers_[i];
      if (!could_be_money(n) || counts_something(n) || (aside(n) && outside)) continue;
      if (n.after_equals) equals = i;
      if (tells_money(n)) strong = i;
      last = i;
    }
    if (equals != no_number &&
        (last == equals || numbers_[last].first < numbers_[equals].first || !tells_money(numbers_[last])))
      return equals;
    if (last == no_number) return last;
    if (strong != no_number && strong != last && words_after(numbers_[last])) return strong;
    if (!tells_money(numbers_[last]) && !plausible_bare(numbers_[last])) return strong;
    return last;
  }

  /// A bare whole number is taken for the sum only at the end of the line, or before a closing word or two.
  bool plausible_bare(const Number& n) const {
    if (n.thousandths < 2000 || whole_of(n)) return false;
    if (n.bracketed && n.thousandths < 100'000) return false;
    std::size_t words = 0;
    int depth = 0;
    for (std::size_t i = n.last + 1u; i < t_.size(); ++i) {
      depth += t_[i].is('(') ? 1 : t_[i].is(')') ? -1 : 0;
      words += t_[i].word() && depth <= 0 ? 1u : 0u;
    }
    if (words <= 1) return !in_place(n);
    return mention_at(n.first > 0 ? n.first - 1u : 0, rules_.charge_marks().net) || n.after_equals;
  }
  /// "12 planks of 140"
  bool whole_of(const Number& n) const {
    if (n.first == 0 || !mention_at(n.first - 1u, rules_.charge_marks().of)) return false;
    return std::any_of(numbers_.begin(), numbers_.end(), [&](const Number& part) {
      return part.last < n.first && part.last + 6u > n.first && part.kind == NumberKind::plain &&
             part.thousandths > 0 && part.thousandths < n.thousandths;
    });
  }
  bool in_place(const Number& n) const {
    if (n.first == 0 || n.thousandths >= 10'000) return false;
    for (const Mention& m : mentions_)
      if (m.last + 1u == n.first && lexicon_.at(m.concept_id).role == Role::place) return true;
    return false;
  }

  /// The count a lone price is for: "2 x 18.00", "3 screens @ 24.00", "2 trips my truck $40 ea".
  std::optional<Money> times_count(std::size_t pick, std::size_t& count) const {
    const Number& price = numbers_[pick];
    if (price.after_equals) return std::nullopt;
    const bool each_after = price.rate && price.last + 1u < t_.size();
    const std::size_t before = price.first;
    const bool sign_before =
        before > 0 && (t_[before - 1u].is('@') || t_[before - 1u].text == "x" || t_[before - 1u].text == "at" ||
                       t_[before - 1u].is('*') || unit_at(before - 1u) == "each" ||
                       (t_[before - 1u].text == "a" && before > 1 && !unit_at(before - 2u).empty()));
    if (!each_after && !sign_before) return std::nullopt;
    if (!each_after && t_[before - 1u].text == "x" && before < 2) return std::nullopt;
    for (std::size_t i = pick; i-- > 0;) {
      const Number& n = numbers_[i];
      const bool measured = n.kind == NumberKind::money && !unit_at(n.last + 1u).empty(); // "1.75 hrs at 30.00"
      if ((n.kind != NumberKind::plain && !measured) || n.thousandths == 0 || n.thousandths > 2'000'000 || n.currency ||
          in_place(n) || of_many(i))
        continue;
      if (!each_after && unit_at(before - 1u) == "each" && n.last + 2u != before) return std::nullopt;
      __int128 cents = static_cast<__int128>(n.thousandths) * price.thousandths / 10;
      if (minutes_at(n.last + 1u)) cents /= 60; // the price is that of an hour
      if (cents % 1000 != 0 || cents / 1000 > Money::max_cents) return std::nullopt;
      count = i;
      return Money::cents(static_cast<std::int64_t>(cents / 1000));
    }
    if (price.rate) // "Two pans, $9 apiece"
      for (std::size_t k = 1; k < rules_.charge_marks().counts.size(); ++k)
        for (const Mention& m : mentions_)
          if (m.concept_id == rules_.charge_marks().counts[k] && m.match == Match::exact && m.last < before)
            return Money::cents(price.thousandths / 10 * static_cast<std::int64_t>(k + 1));
    return std::nullopt;
  }

  /// "lid $139 + 1.5 h @ 50": a sum that is added to the product whose count is given.
  Money plus_product(std::size_t count) const {
    if (count == no_number || count == 0) return {};
    const Number& before = numbers_[count - 1];
    const std::size_t at = numbers_[count].first;
    const bool plus = at > 0 && (t_[at - 1u].is('+') || t_[at - 1u].text == "plus" || numbers_[count].plus);
    return plus && could_be_money(before) && tells_money(before) && !before.rate ? *before.money() : Money{};
  }

  /// "2 of 3 remotes": the three were not charged.
  bool of_many(std::size_t i) const {
    const std::size_t first = numbers_[i].first;
    return i > 0 && first > 0 && mention_at(first - 1u, rules_.charge_marks().of) &&
           numbers_[i - 1].last + 2u >= first && numbers_[i - 1].kind == NumberKind::plain &&
           numbers_[i - 1].thousandths <= numbers_[i].thousandths;
  }

  bool words_before(const Number& n) const {
    for (std::size_t i = 0; i < n.first; ++i)
      if (t_[i].word()) return true;
    return false;
  }

  /// "95+410": two sums in one line are their sum. A sum already printed at the end is left alone.
  std::optional<Money> plus_before(std::size_t pick) const {
    const Number& n = numbers_[pick];
    if (n.after_equals || pick == 0) return std::nullopt;
    const Number& before = numbers_[pick - 1];
    if (!could_be_money(before) || before.rate || n.rate || counts_something(before)) return std::nullopt;
    const bool both_currency = before.currency && n.currency && words_before(before);
    bool plus = n.plus;
    std::size_t words = 0;
    for (std::size_t i = before.last + 1u; i < n.first; ++i) {
      plus = plus || t_[i].is('+') || (t_[i].is(';') && both_currency) ||
             (both_currency && (t_[i].is('&') || t_[i].text == "and" || t_[i].text == "y")) || t_[i].text == "plus" ||
             t_[i].text == "mas";
      words += t_[i].word() ? 1u : 0u;
    }
    if (!plus || words > (both_currency ? 8u : 4u) || n.first < before.last) return std::nullopt;
    const bool sign = t_[n.first - words - 1u].is('+') && words <= 2 && words_before(before) && !tells_money(n) &&
                      !tells_money(before) && before.thousandths >= 2000; // "glass 62 + set 40"
    if (words > 0 && !(tells_money(n) && tells_money(before)) && !(sign && !in_place(before))) return std::nullopt;
    std::int64_t sum = 0;
    for (std::size_t i = 0; i < pick; ++i)
      if (could_be_money(numbers_[i]) && tells_money(numbers_[i])) sum += numbers_[i].money()->in_cents();
    if (sum == n.money()->in_cents()) return std::nullopt;
    return *before.money() + *n.money();
  }

  const std::vector<Token>& t_;
  const std::vector<Mention>& mentions_;
  const std::vector<Number>& numbers_;
  const RecognizerRules& rules_;
  const Lexicon& lexicon_;
};

} // namespace

AmountFound find_amount(const std::vector<Token>& tokens, const std::vector<Mention>& mentions,
                        const std::vector<Number>& numbers, const RecognizerRules& rules) {
  return AmountFinder(tokens, mentions, numbers, rules).run();
}

} // namespace wearline
