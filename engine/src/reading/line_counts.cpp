#include "reading/line_counts.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace wearline {

namespace {

constexpr std::array<std::string_view, 10> counting_units = {"hour", "day", "week",  "month", "room",
                                                             "wall", "bag", "sq-ft", "sq-yd", "sq-m"};
bool is_counting_unit(std::string_view unit) {
  return std::find(counting_units.begin(), counting_units.end(), unit) != counting_units.end();
}

class Counter {
public:
  Counter(const std::vector<Token>& t, const std::vector<Group>& groups, const std::vector<Mention>& mentions,
          const std::vector<Number>& numbers, const RecognizerRules& rules)
      : t_(t), groups_(groups), mentions_(mentions), numbers_(numbers), rules_(rules), lexicon_(rules.charges()) {}

  /// Every count of the line, left to right.
  std::vector<Counted> run(bool amount_known, std::size_t amount_number) {
    std::vector<Counted> out;
    for (std::size_t i = 0; i < numbers_.size(); ++i) {
      const Number& n = numbers_[i];
      if (i == amount_number || n.thousandths == 0 || n.currency) continue;
      if (n.kind != NumberKind::plain && !(n.kind == NumberKind::money && is_counting_unit(unit_at(n.last + 1u))))
        continue;
      if (in_place(n) || in_remark(n)) continue;
      Counted c;
      c.thousandths = n.thousandths;
      c.token = n.first;
      c.number = i;
      if (classify(n, i, amount_known, c)) out.push_back(std::move(c));
    }
    for (const Mention& m : mentions_) word_count(m, out);
    std::stable_sort(out.begin(), out.end(), [](const Counted& a, const Counted& b) { return a.token < b.token; });
    return out;
  }

private:
  std::string unit_at(std::size_t token) const { return unit_of(t_, mentions_, lexicon_, token); }
  const Group* group_at(std::size_t token) const {
    for (const Group& g : groups_)
      if (g.first == token) return &g;
    return nullptr;
  }
  /// "bedroom 2", "br1": the number is a name.
  bool in_place(const Number& n) const {
    for (const Group& g : groups_)
      if (g.place &&
          (g.last + 1u == n.first ||
           (g.last + 2u == n.first && (t_[g.last + 1u].is('.') || t_[g.last + 1u].is('#')))) &&
          n.thousandths < 10'000 && !t_[g.last + 1u].is(',')) {
        const std::string unit = unit_at(n.last + 1u);
        const std::size_t after = n.last + 1u;
        const bool counted = after < t_.size() && (t_[after].is('@') || t_[after].text == "x" || t_[after].is('"'));
        if ((unit.empty() || unit == "room") && !counted) return true;
      }
    return false;
  }
  /// "(tenancy over 12 months)": brackets with several words explain, they do not count.
  bool in_remark(const Number& n) const {
    int depth = 0;
    std::size_t words = 0;
    for (std::size_t i = 0; i < t_.size(); ++i) {
      if (t_[i].is('(')) ++depth, words = 0;
      else if (t_[i].is(')')) {
        if (depth > 0 && i > n.last && words >= 3) return true;
        --depth;
      } else if (depth > 0 && t_[i].word()) ++words;
      if (i == n.first && depth <= 0) return false;
      if (i > n.last && depth <= 0) return false;
    }
    return false;
  }
  std::size_t skip(std::size_t i) const {
    while (i < t_.size() && ((t_[i].is('.') && i > 0 && t_[i - 1].word()) || (t_[i].is('-') && t_[i].glued))) ++i;
    return i;
  }

  bool set_unit(const std::string& unit, Counted& c) const {
    if (unit.empty()) return false;
    if (is_counting_unit(unit)) c.unit = unit;
    else if (unit == "each" || unit == "load" || unit == "trip") c.unit = "each";
    else if (unit == "person") c.unit = "person";
    else c.excluded = true;
    return true;
  }

  bool classify(const Number& n, std::size_t index, bool amount_known, Counted& c) const {
    const std::size_t after = n.last + 1u;
    if (set_unit(unit_at(after), c)) {
      if (c.unit == "each" && !n.whole) return false;
      return true;
    }
    if (after < t_.size() && (t_[after].is('"') || (t_[after].is('\'') && t_[after].glued))) return c.excluded = true;
    const bool priced = after < t_.size() &&
                        (t_[after].is('@') || t_[after].text == "x" || t_[after].text == "at" || t_[after].is('*'));
    if (priced && index + 1 < numbers_.size()) {
      c.unit = n.whole ? "each" : "hour"; // only hours are counted in parts without a unit
      return true;
    }
    if (!n.whole || n.thousandths > 200'000) return false;
    if (n.first > 0 &&
        (t_[n.first - 1u].text == "x" || t_[n.first - 1u].text == "qty" || t_[n.first - 1u].text == "cant")) {
      if (n.first > 1 && count_before(n.first - 1u)) return false;
      c.unit = "each";
      return true;
    }
    if (thing_follows(after)) {
      c.unit = "each";
      return true;
    }
    const bool alone = n.first > 0 && t_[n.first - 1u].is('(') && after < t_.size() && t_[after].is(')');
    if ((alone || n.bracketed) && n.thousandths < 100'000) {
      c.unit = "each";
      return true;
    }
    const bool last = after >= t_.size() || t_[after].is(',') || t_[after].is('.');
    if (amount_known && last && n.thousandths < 100'000 && n.first > 0) {
      c.unit = "each";
      return true;
    }
    return false;
  }
  /// "2 x 40", "1.25 hr x 30": what follows the x is then a price; after "$22 x" it is a count.
  bool count_before(std::size_t token) const {
    return std::any_of(numbers_.begin(), numbers_.end(), [&](const Number& n) {
      return !n.currency && (n.last + 1u == token || (n.last + 2u == token && !unit_at(n.last + 1u).empty()));
    });
  }

  /// Whether a thing stands within two words: "3 brkn planks". Codes ("36 LH") and animals ("two cats") do not count.
  bool thing_follows(std::size_t at) const {
    for (std::size_t step = 0; step < 3 && at < t_.size(); ++step) {
      at = skip(at);
      if (at >= t_.size() || !t_[at].word()) return false;
      if (t_[at].text == "lh" || t_[at].text == "rh" || t_[at].text == "in" || t_[at].text == "and" ||
          t_[at].text == "of" || t_[at].text == "to")
        return step == 0 && t_[at].text == "of" && step_of(at + 1);
      if (const Group* g = group_at(at); g != nullptr) {
        if (is_animal(*g)) return false;
        if (g->thing || g->part) return !g->work || g->thing;
        if (counts_itself(*g)) return true;
        if (g->place && step == 0) return false;
        at = g->last + 1u;
      } else {
        if (t_[at].text.size() < 3) return false;
        ++at;
      }
    }
    return false;
  }
  bool step_of(std::size_t at) const { // "1 of 2 clickers", "one of the two remotes"
    while (at < t_.size() &&
           (t_[at].number() || t_[at].text == "the" || t_[at].text == "los" || t_[at].text == "las" || count_word(at)))
      ++at;
    return thing_follows(at);
  }
  bool count_word(std::size_t at) const {
    for (const Mention& m : mentions_)
      if (m.first == at && std::find(rules_.charge_marks().counts.begin(), rules_.charge_marks().counts.end(),
                                     m.concept_id) != rules_.charge_marks().counts.end())
        return true;
    return false;
  }
  bool is_animal(const Group& g) const { return g.has(lexicon_.find("pet")); }
  /// Marks that are counted like things: holes, burns, bags.
  bool counts_itself(const Group& g) const {
    return std::any_of(g.ids.begin(), g.ids.end(), [&](Lexicon::Id id) { return rules_.counted(id); });
  }

  void word_count(const Mention& m, std::vector<Counted>& out) const {
    const auto& counts = rules_.charge_marks().counts;
    const auto found = std::find(counts.begin(), counts.end(), m.concept_id);
    if (found == counts.end() || m.match != Match::exact || !t_[m.first].word()) return;
    if (t_[m.first].text == "una" || t_[m.first].text == "un" || t_[m.first].text == "a") return;
    Counted c;
    c.thousandths = (found - counts.begin() + 1) * 1000;
    c.token = m.first;
    const std::size_t after = m.last + 1u;
    if (!set_unit(unit_at(after), c)) {
      if (!thing_follows(after)) return;
      c.unit = "each";
    }
    out.push_back(std::move(c));
  }

  const std::vector<Token>& t_;
  const std::vector<Group>& groups_;
  const std::vector<Mention>& mentions_;
  const std::vector<Number>& numbers_;
  const RecognizerRules& rules_;
  const Lexicon& lexicon_;
};

} // namespace

std::vector<Counted> find_counts(const std::vector<Token>& tokens, const Sense& line,
                                 const std::vector<Mention>& mentions, const std::vector<Number>& numbers,
                                 const RecognizerRules& rules, bool amount_known, std::size_t amount_number) {
  return Counter(tokens, line.groups(), mentions, numbers, rules).run(amount_known, amount_number);
}

std::optional<Quantity> choose_count(std::vector<Counted> counts, const Sense& line, const RecognizerRules& rules,
                                     const std::vector<Number>& numbers, const std::optional<Money>& amount) {
  std::erase_if(counts, [](const Counted& c) { return c.excluded; });
  std::int64_t people = 0;
  for (const Counted& c : counts)
    if (c.unit == "person") people = c.thousandths / 1000;
  std::erase_if(counts, [](const Counted& c) { return c.unit == "person"; });
  if (counts.empty()) return std::nullopt;
  if (std::any_of(counts.begin(), counts.end(),
                  [](const Counted& c) { return c.unit != "hour"; })) // things before the hours spent on them
    std::erase_if(counts, [](const Counted& c) { return c.unit == "hour"; });
  std::size_t pick = 0;
  if (amount.has_value()) // the count whose price makes the sum
    for (std::size_t i = counts.size(); i-- > 0;)
      if (counts[i].number != no_number && counts[i].number + 1 < numbers.size()) {
        const Number& price = numbers[counts[i].number + 1];
        const bool makes = static_cast<__int128>(counts[i].thousandths) * price.thousandths ==
                               static_cast<__int128>(amount->in_cents()) * 10'000 &&
                           counts[i].thousandths > 1000;
        if (makes) pick = i;
      }
  Quantity q{counts[pick].thousandths, counts[pick].unit};
  if (q.unit == "hour" && people > 1) q.thousandths *= people;
  const Lexicon::Id less = rules.charges().find("mark:less");
  for (const Group& g : line.groups())
    if (g.has(less))
      for (const Counted& c : counts)
        if (c.token == g.last + 1u && c.thousandths < q.thousandths && c.token > counts[pick].token)
          q.thousandths -= c.thousandths;
  return q;
}

} // namespace wearline
