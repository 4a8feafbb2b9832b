#include "wearline/recogniser.h"

#include "wearline/label.h"

#include <algorithm>
#include <array>
#include <string>

namespace wearline {

namespace {

using Id = Lexicon::Id;
constexpr int whole = 100; ///< factors are in percent

/// Ideas that share a stretch of the line.
struct Group {
  std::uint16_t first = 0, last = 0;
  Match match = Match::exact;
  std::vector<Id> ids;
  bool thing = false, part = false, work = false, place = false, owner = false, money_goes_here = false;
  int factor = whole;
  std::uint16_t clause = 0;
};

/// What the line holds of one idea: how strongly, and where it is strongest.
struct Presence {
  int factor = 0;
  std::uint16_t group = 0;
};

struct LinkIds {
  Id behind, from, in, of, with, cause, and_word;
  explicit LinkIds(const Lexicon& l)
      : behind(l.find("behind")), from(l.find("from")), in(l.find("in")), of(l.find("of")), with(l.find("with")),
        cause(l.find("cause-link")), and_word(l.find("and-link")) {}
};

class Sense {
public:
  Sense(const std::vector<Token>& tokens, const std::vector<Mention>& mentions, const std::vector<Number>& numbers,
        const RecogniserRules& rules)
      : t_(tokens), mentions_(mentions), rules_(rules), lexicon_(rules.charges()) {
    (void)numbers;
    gather(mentions);
    number_clauses();
    weigh();
    fill();
  }

  const std::vector<Group>& groups() const { return groups_; }
  bool has(Id id) const { return id < presence_.size() && presence_[id].factor > 0; }
  bool has(std::string_view name) const { return has(lexicon_.find(name)); }
  std::uint16_t clause_at(std::size_t token) const { return clauses_[token]; }

  /// How far a term is met, in percent, and the groups it rests on.
  int met(const WeightedTerm& term, std::vector<std::uint16_t>* used) const {
    int factor = whole;
    int clause = -1;
    bool spread = false;
    std::array<std::uint16_t, 8> at{};
    std::size_t count = 0;
    for (const auto& any : term.all) {
      Presence best;
      for (const Id id : any) {
        const Presence p = presence(id);
        if (p.factor > best.factor) best = p;
      }
      if (best.factor == 0) return 0;
      factor = std::min(factor, best.factor);
      if (best.group == no_group) continue;
      if (count < at.size()) at[count++] = best.group;
      const int here = groups_[best.group].clause;
      spread = spread || (clause >= 0 && clause != here);
      clause = here;
    }
    for (const auto& any : term.none)
      for (const Id id : any)
        if (presence(id).factor > 40) return 0;
    if (used != nullptr) used->insert(used->end(), at.begin(), at.begin() + static_cast<std::ptrdiff_t>(count));
    return spread ? factor * 80 / 100 : factor;
  }

  static constexpr std::uint16_t no_group = 0xFFFF;

  /// The line up to the end of the clause that first names a thing or work, for what is said first weighs more.
  Sense opening() const {
    Sense out(*this);
    for (std::size_t i = 0; i < groups_.size(); ++i) {
      if (!groups_[i].thing && !groups_[i].work) continue;
      std::size_t end = i;
      while (end < groups_.size() && groups_[end].clause == groups_[i].clause && (end == i || !joins(groups_[end])))
        ++end;
      out.groups_.resize(end);
      break;
    }
    out.fill();
    return out;
  }

  void set_feature(std::size_t index) { features_[index] = true; }

private:
  Presence presence(Id id) const {
    if (id >= WeightedTerm::first_feature)
      return {features_[static_cast<std::size_t>(id - WeightedTerm::first_feature)] ? whole : 0, no_group};
    if ((id & WeightedTerm::anywhere) != 0) return raw_[id & static_cast<Id>(~WeightedTerm::anywhere)];
    return id < presence_.size() ? presence_[id] : Presence{};
  }

  void gather(const std::vector<Mention>& mentions) {
    for (const Mention& m : mentions) {
      const Role role = lexicon_.at(m.concept_id).role;
      if (role == Role::plain || measured(m)) continue;
      if (groups_.empty() || groups_.back().first != m.first) {
        Group g;
        g.first = m.first;
        g.last = m.last;
        g.match = m.match;
        groups_.push_back(std::move(g));
      }
      Group& g = groups_.back();
      g.ids.push_back(m.concept_id);
      g.thing |= role == Role::thing;
      g.part |= role == Role::part;
      g.work |= role == Role::work;
      g.place |= role == Role::place;
      g.owner |= rules_.owns_parts(m.concept_id);
    }
  }

  /// "18 yd", "12 LF": after a number a measure is a measure, whatever else the word can mean.
  bool measured(const Mention& m) const {
    const std::string& id = lexicon_.at(m.concept_id).id;
    if (id.compare(0, 5, "unit:") == 0) return false;
    if (m.first == 0 || !t_[m.first - 1u].number()) return false;
    return std::any_of(mentions_.begin(), mentions_.end(), [&](const Mention& u) {
      if (u.first != m.first || u.last != m.last) return false;
      const std::string& unit = lexicon_.at(u.concept_id).id;
      return unit.compare(0, 5, "unit:") == 0 && unit != "unit:room" && unit != "unit:wall" && unit != "unit:bag" &&
             unit != "unit:each" && unit != "unit:person" && unit != "unit:trip" && unit != "unit:load" &&
             unit != "unit:coat" && unit != "unit:gallon";
    });
  }

  void number_clauses() {
    clauses_.assign(t_.size() + 1, 0);
    std::uint16_t clause = 0;
    for (std::size_t i = 0; i < t_.size(); ++i) {
      const Token& t = t_[i];
      const bool inside_word = t.glued && i + 1 < t_.size() && t_[i + 1].glued;
      const bool ends = t.is(',') || t.is(';') || t.is(':') || t.is('(') || t.is(')') || t.is('+') || t.is('=') ||
                        (t.is('.') && !(i > 0 && t_[i - 1].word() && t_[i - 1].text.size() < 5)) ||
                        (t.is('-') && !inside_word) || (t.is('/') && !inside_word);
      if (ends) ++clause;
      clauses_[i] = clause;
    }
    clauses_[t_.size()] = clause;
    for (Group& g : groups_) g.clause = clauses_[g.first];
  }

  bool is(const Group& g, Id id) const { return std::find(g.ids.begin(), g.ids.end(), id) != g.ids.end(); }
  bool joins(const Group& g) const { return is(g, lexicon_.find("and-link")); }
  bool head_like(const Group& g) const { return g.thing || g.part; }

  /// "no paint needed", "not replaced": the work was not done.
  bool denied(const Group& g) const {
    if (!g.work || g.first == 0) return false;
    const std::string& before = t_[g.first - 1].text;
    return before == "no" || before == "not" || before == "sin";
  }

  bool next_to(const Group& a, const Group& b) const {
    if (b.first == a.last + 1) return a.clause == b.clause;
    return b.first == a.last + 2 && a.clause == b.clause && t_[a.last + 1].is('.') && t_[a.last + 1].glued;
  }

  /// Money goes to the first thing named; a thing that only says where ("behind the stove") or what it belongs to
  /// counts less.
  void weigh() {
    const LinkIds link(lexicon_);
    int demoted = whole;
    int clause = -1;
    bool thing_before = false, part_before = false;
    std::size_t things = 0, bracket = 0;
    std::size_t token = 0;
    for (std::size_t i = 0; i < groups_.size(); ++i) {
      Group& g = groups_[i];
      for (; token < g.first; ++token) {
        if (t_[token].is('(')) ++bracket;
        if (t_[token].is(')') && bracket > 0) --bracket;
      }
      if (g.clause != clause) demoted = whole, thing_before = part_before = false;
      clause = g.clause;
      if (is(g, link.behind)) demoted = 25;
      else if (is(g, link.from)) demoted = 40;
      else if (is(g, link.cause)) demoted = 40;
      else if (is(g, link.of)) demoted = thing_before && !part_before ? 75 : whole;
      else if (is(g, link.in)) demoted = thing_before ? 70 : whole;
      else if (is(g, link.with)) demoted = thing_before ? 75 : whole;
      g.factor = g.match == Match::exact ? whole : g.match == Match::shortened ? 85 : 90;
      if (denied(g)) g.factor = 20;
      if (!head_like(g)) continue;
      g.factor = g.factor * demoted / whole;
      if (bracket > 0) g.factor = g.factor * 75 / whole;
      if (!g.thing) {
        part_before = true;
        continue;
      }
      if (demoted == whole && things > 0) g.factor = g.factor * (things == 1 ? 85 : things == 2 ? 75 : 70) / whole;
      if (demoted == whole) ++things;
      thing_before = true;
      part_before = g.part;
    }
    compounds();
  }

  /// "bathroom door lock": of things side by side the last is meant, unless it is a part of the one before
  /// ("refrigerator shelf").
  void compounds() {
    for (std::size_t i = 0; i + 1 < groups_.size(); ++i) {
      Group& a = groups_[i];
      Group& b = groups_[i + 1];
      if (!a.thing || !head_like(b) || !next_to(a, b)) continue;
      if (a.owner && b.part) b.factor = b.factor * 70 / whole;
      else if (b.thing) a.factor = a.factor * 60 / whole;
    }
  }

  /// "no screens": missing, said in another way.
  void mark_absent() {
    const Id missing = lexicon_.find("missing");
    for (std::size_t i = 0; i < groups_.size(); ++i) {
      const Group& g = groups_[i];
      if (!(g.thing || g.part) || g.work || g.first == 0 || missing >= presence_.size()) continue;
      const std::string& before = t_[g.first - 1u].text;
      if ((before == "no" || before == "sin") && presence_[missing].factor == 0)
        presence_[missing] = {whole, static_cast<std::uint16_t>(i)};
    }
  }

  void fill() {
    presence_.assign(lexicon_.size(), {});
    raw_.assign(lexicon_.size(), {});
    for (std::size_t i = 0; i < groups_.size(); ++i)
      for (const Id id : groups_[i].ids) {
        const auto at = static_cast<std::uint16_t>(i);
        if (groups_[i].factor > presence_[id].factor) presence_[id] = {groups_[i].factor, at};
        if (raw_[id].factor == 0) raw_[id] = {whole, at};
      }
    mark_absent();
  }

  const std::vector<Token>& t_;
  const std::vector<Mention>& mentions_;
  const RecogniserRules& rules_;
  const Lexicon& lexicon_;
  std::vector<Group> groups_;
  std::vector<std::uint16_t> clauses_;
  std::vector<Presence> presence_, raw_;
  std::array<bool, 8> features_{};
};

// ----------------------------------------------------------------------------------------------------------------
// places

/// Rooms named inside a longer term ("laundry room key" has none of its own; "kitchen sink drain" has).
bool is_plain_room(const std::string& name) { return name == "kitchen" || name == "bathroom" || name == "bedroom"; }

std::string with_number(const std::vector<Token>& t, const Group& g, const std::string& name, const Lexicon& lexicon,
                        const NumberMarks& marks, const std::vector<Mention>& mentions) {
  if (name != "bedroom" && name != "bathroom") return name;
  std::size_t next = g.last + 1u;
  if (next < t.size() && t[next].is('.') && t[next].glued) ++next;
  if (next < t.size() && t[next].is('#')) ++next;
  if (next < t.size() && t[next].number() && t[next].text.size() == 1 && t[next].text != "0") {
    const std::size_t after = next + 1;
    const bool counted =
        after < t.size() && (t[after].is('@') || t[after].text == "x" || (t[after].is('"') && t[after].glued));
    const bool unit = std::any_of(mentions.begin(), mentions.end(), [&](const Mention& m) {
      return m.first == after && lexicon.at(m.concept_id).id.compare(0, 5, "unit:") == 0;
    });
    if (!counted && !unit) return name + " " + t[next].text;
  }
  if (g.first >= 2 && t[g.first - 1u].glued && t[g.first - 2u].number() && t[g.first - 2u].text.size() == 1 &&
      (t[g.first - 1u].text == "nd" || t[g.first - 1u].text == "rd" || t[g.first - 1u].text == "st"))
    return name + " " + t[g.first - 2u].text;
  for (std::size_t k = 0; k < 4 && next < t.size(); ++k)
    for (const Mention& m : mentions)
      if (m.first == next && m.concept_id == marks.counts[k] && t[next].text.size() > 2 && t[next].text != "una" &&
          t[next].text != "both")
        return name + " " + std::to_string(k + 1);
  return name;
}

struct PlaceFound {
  std::string name;
  bool whole_unit = false, closet = false;
};

/// "2BR/1BA" says how large the unit is, not where something was done.
bool describes_size(const std::vector<Token>& t, const Group& g) {
  return g.first > 0 && t[g.first].glued && t[g.first - 1u].number();
}

std::vector<PlaceFound> find_places(const std::vector<Token>& t, const std::vector<Group>& groups,
                                    const std::vector<Mention>& mentions, const RecogniserRules& rules,
                                    bool bath_thing) {
  const Lexicon& lexicon = rules.charges();
  std::vector<PlaceFound> out;
  const auto add = [&](const std::string& name) {
    if (std::none_of(out.begin(), out.end(), [&](const PlaceFound& p) { return p.name == name; }))
      out.push_back({name, name == "whole unit", name == "closet"});
  };
  for (const Group& g : groups) {
    for (const Id id : g.ids) {
      const Concept& c = lexicon.at(id);
      if (c.role != Role::place || describes_size(t, g)) continue;
      std::string name = c.value;
      if (name == "master bedroom" && bath_thing && g.first == g.last &&
          (t[g.first].text == "mstr" || t[g.first].text == "master" || t[g.first].text == "primary"))
        name = "master bathroom";
      add(with_number(t, g, name, lexicon, rules.charge_marks(), mentions));
    }
    if (g.first == g.last || g.place) continue;
    for (std::size_t i = g.first; i <= g.last; ++i)
      for (const Mention& m : lexicon.mentions({t[i]}))
        if (lexicon.at(m.concept_id).role == Role::place &&
            (is_plain_room(lexicon.at(m.concept_id).value) ||
             std::find(g.ids.begin(), g.ids.end(), lexicon.find("deck")) != g.ids.end()) &&
            t[i].text != "bath" && t[i].text != "ba" && m.match == Match::exact)
          add(lexicon.at(m.concept_id).value);
  }
  return out;
}

// --------------------------------------------------------------------------------------------------------------
// quantity

struct Counted {
  std::int64_t thousandths = 0;
  std::string unit;
  std::size_t token = 0;
  std::size_t number = no_number; ///< index of the number, if it was written in digits
  bool excluded = false;          ///< a measure that counts nothing ("12 feet", "2 coats")
  static constexpr std::size_t no_number = static_cast<std::size_t>(-1);
};

constexpr std::array<std::string_view, 9> counting_units = {"hour", "day", "week",  "month", "room",
                                                            "wall", "bag", "sq-ft", "sq-yd"};
bool is_counting_unit(std::string_view unit) {
  return std::find(counting_units.begin(), counting_units.end(), unit) != counting_units.end() || unit == "sq-m";
}

class Counter {
public:
  Counter(const std::vector<Token>& t, const std::vector<Group>& groups, const std::vector<Mention>& mentions,
          const std::vector<Number>& numbers, const RecogniserRules& rules)
      : t_(t), groups_(groups), mentions_(mentions), numbers_(numbers), rules_(rules), lexicon_(rules.charges()) {}

  /// Every count of the line, left to right.
  std::vector<Counted> run(bool amount_known, std::size_t amount_number) {
    std::vector<Counted> out;
    for (std::size_t i = 0; i < numbers_.size(); ++i) {
      const Number& n = numbers_[i];
      if (i == amount_number || n.thousandths == 0 || n.currency) continue;
      if (n.kind != NumberKind::plain && !(n.kind == NumberKind::money && is_counting_unit(unit_at(n.last + 1u))))
        continue;
      if (in_place(n)) continue;
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
  std::string unit_at(std::size_t token) const {
    for (const Mention& m : mentions_)
      if (m.first == token && lexicon_.at(m.concept_id).id.compare(0, 5, "unit:") == 0)
        return lexicon_.at(m.concept_id).value;
    return {};
  }
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
    if (priced && index + 1 < numbers_.size() && n.whole) {
      c.unit = unit_before(n.first);
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
  std::string unit_before(std::size_t token) const {
    (void)token;
    return "each";
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
  bool is_animal(const Group& g) const {
    const Id pet = lexicon_.find("pet");
    return std::find(g.ids.begin(), g.ids.end(), pet) != g.ids.end();
  }
  /// Marks that are counted like things: holes, burns, bags.
  bool counts_itself(const Group& g) const {
    for (const char* name :
         {"hole", "nail-hole", "anchor", "burn", "bags", "gouge", "slat", "battery", "hook", "large-hole"})
      if (std::find(g.ids.begin(), g.ids.end(), lexicon_.find(name)) != g.ids.end()) return true;
    return false;
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
  const RecogniserRules& rules_;
  const Lexicon& lexicon_;
};

// ----------------------------------------------------------------------------------------------------------------
// amount

struct AmountFound {
  std::optional<Money> amount;
  bool computed = false;
  std::size_t number = Counted::no_number;
};

bool could_be_money(const Number& n) {
  return (n.kind == NumberKind::plain || n.kind == NumberKind::money) && n.money().has_value();
}
bool is_strong(const Number& n) {
  return n.kind == NumberKind::money || (n.kind == NumberKind::plain && n.decimals > 0);
}

class AmountFinder {
public:
  AmountFinder(const std::vector<Token>& t, const std::vector<Mention>& mentions, const std::vector<Number>& numbers,
               const RecogniserRules& rules)
      : t_(t), mentions_(mentions), numbers_(numbers), rules_(rules), lexicon_(rules.charges()) {}

  AmountFound run() const {
    AmountFound out;
    const std::size_t pick = choose();
    if (is_free(pick)) return {Money{}, false, Counted::no_number};
    if (pick == Counted::no_number) return out;
    out.number = pick;
    out.amount = numbers_[pick].money();
    if (const auto product = times_count(pick); product.has_value()) out.amount = product, out.computed = true;
    else if (const auto sum = plus_before(pick); sum.has_value()) out.amount = sum, out.computed = true;
    return out;
  }

private:
  bool mention_at(std::size_t token, Id id) const {
    return std::any_of(mentions_.begin(), mentions_.end(),
                       [&](const Mention& m) { return m.first <= token && token <= m.last && m.concept_id == id; });
  }
  std::string unit_at(std::size_t token) const {
    for (const Mention& m : mentions_)
      if (m.first == token && lexicon_.at(m.concept_id).id.compare(0, 5, "unit:") == 0)
        return lexicon_.at(m.concept_id).value;
    return {};
  }
  bool words_after(const Number& n) const {
    for (std::size_t i = n.last + 1u; i < t_.size(); ++i)
      if (t_[i].word() || t_[i].number()) return true;
    return false;
  }
  /// "no charge", "waived", unless a sum follows.
  bool is_free(std::size_t pick) const {
    for (const Mention& m : mentions_)
      if (m.concept_id == rules_.charge_marks().free &&
          (pick == Counted::no_number || numbers_[pick].first < m.first || !is_strong(numbers_[pick])))
        return true;
    return false;
  }

  /// A whole number that a unit or a thing follows is a count.
  bool counts_something(const Number& n) const {
    if (is_strong(n) || n.after_equals) return false;
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
    const bool outside_ = std::any_of(numbers_.begin(), numbers_.end(), [&](const Number& n) {
      return could_be_money(n) && !counts_something(n) && !aside(n);
    });
    std::size_t equals = Counted::no_number, last = Counted::no_number, strong = Counted::no_number;
    for (std::size_t i = 0; i < numbers_.size(); ++i) {
      const Number& n = numbers_[i];
      if (!could_be_money(n) || counts_something(n) || (aside(n) && outside_)) continue;
      if (n.after_equals) equals = i;
      if (is_strong(n)) strong = i;
      last = i;
    }
    if (equals != Counted::no_number &&
        (last == equals || numbers_[last].first < numbers_[equals].first || !is_strong(numbers_[last])))
      return equals;
    if (last == Counted::no_number) return last;
    if (strong != Counted::no_number && strong != last && words_after(numbers_[last])) return strong;
    if (!is_strong(numbers_[last]) && !plausible_bare(numbers_[last])) return strong;
    return last;
  }

  /// A bare whole number is taken for the sum only at the end of the line, or before a closing word or two.
  bool plausible_bare(const Number& n) const {
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
  bool in_place(const Number& n) const {
    if (n.first == 0 || n.thousandths >= 10'000) return false;
    for (const Mention& m : mentions_)
      if (m.last + 1u == n.first && lexicon_.at(m.concept_id).role == Role::place) return true;
    return false;
  }

  /// The count a lone price is for: "2 x 18.00", "3 screens @ 24.00", "2 trips my truck $40 ea".
  std::optional<Money> times_count(std::size_t pick) const {
    const Number& price = numbers_[pick];
    if (price.after_equals) return std::nullopt;
    const bool each_after = price.rate && price.last + 1u < t_.size();
    const std::size_t before = price.first;
    const bool sign_before =
        before > 0 && (t_[before - 1u].is('@') || t_[before - 1u].text == "x" || t_[before - 1u].text == "at" ||
                       t_[before - 1u].is('*') || unit_at(before - 1u) == "each");
    if (!each_after && !sign_before) return std::nullopt;
    if (!each_after && t_[before - 1u].text == "x" && before < 2) return std::nullopt;
    for (std::size_t i = pick; i-- > 0;) {
      const Number& n = numbers_[i];
      if (n.kind != NumberKind::plain || n.thousandths == 0 || n.thousandths > 2'000'000 || n.currency || in_place(n))
        continue;
      if (!each_after && unit_at(before - 1u) == "each" && n.last + 2u != before) return std::nullopt;
      const __int128 cents = static_cast<__int128>(n.thousandths) * price.thousandths / 10;
      if (cents % 1000 != 0 || cents / 1000 > Money::max_cents) return std::nullopt;
      return Money::cents(static_cast<std::int64_t>(cents / 1000));
    }
    return std::nullopt;
  }

  /// "95+410": two sums in one line are their sum. A sum already printed at the end is left alone.
  std::optional<Money> plus_before(std::size_t pick) const {
    const Number& n = numbers_[pick];
    if (n.after_equals || pick == 0) return std::nullopt;
    const Number& before = numbers_[pick - 1];
    if (!could_be_money(before) || before.rate || n.rate || counts_something(before)) return std::nullopt;
    bool plus = n.plus;
    std::size_t words = 0;
    for (std::size_t i = before.last + 1u; i < n.first; ++i) {
      plus = plus || t_[i].is('+') || t_[i].text == "plus" || t_[i].text == "mas";
      words += t_[i].word() ? 1u : 0u;
    }
    if (!plus || words > 4 || n.first < before.last) return std::nullopt;
    if (words > 0 && !(is_strong(n) && is_strong(before))) return std::nullopt;
    std::int64_t sum = 0;
    for (std::size_t i = 0; i < pick; ++i)
      if (could_be_money(numbers_[i]) && is_strong(numbers_[i])) sum += numbers_[i].money()->in_cents();
    if (sum == n.money()->in_cents()) return std::nullopt;
    return *before.money() + *n.money();
  }

  const std::vector<Token>& t_;
  const std::vector<Mention>& mentions_;
  const std::vector<Number>& numbers_;
  const RecogniserRules& rules_;
  const Lexicon& lexicon_;
};

// ---------------------------------------------------------------------------------------------------------------
// element

struct Scored {
  std::size_t element = 0;
  int score = 0;
  std::vector<std::uint16_t> used;
};

int score_terms(const Sense& line, const std::vector<WeightedTerm>& terms, std::vector<std::uint16_t>* used) {
  int score = 0;
  for (const WeightedTerm& term : terms) {
    std::vector<std::uint16_t> here;
    const int met = line.met(term, used != nullptr && term.weight > 0 ? &here : nullptr);
    if (met == 0) continue;
    score += term.weight * met / whole;
    if (used != nullptr) used->insert(used->end(), here.begin(), here.end());
  }
  return score;
}

constexpr int opening_share = 25; ///< how much the opening counts again, in percent

std::vector<Scored> rank(const Sense& line, const RecogniserRules& rules) {
  std::vector<Scored> out;
  const Sense first = line.opening();
  for (std::size_t e = 0; e < rules.elements().size(); ++e) {
    Scored s;
    s.element = e;
    s.score = score_terms(line, rules.elements()[e].terms, &s.used);
    s.score += score_terms(first, rules.elements()[e].terms, nullptr) * opening_share / whole;
    if (s.score > 0) out.push_back(std::move(s));
  }
  std::stable_sort(out.begin(), out.end(), [](const Scored& a, const Scored& b) { return a.score > b.score; });
  return out;
}

/// Findings speak louder in the clause that names the thing.
int score_finding(const Sense& line, const FindingRule& rule, std::uint16_t clause) {
  int score = 0;
  for (const WeightedTerm& term : rule.terms) {
    std::vector<std::uint16_t> used;
    int met = line.met(term, &used);
    if (met == 0) continue;
    const bool near = used.empty() || std::any_of(used.begin(), used.end(),
                                                  [&](std::uint16_t g) { return line.groups()[g].clause == clause; });
    if (!near) met = met * 85 / 100;
    score += term.weight * met / whole;
  }
  return score;
}

const FindingRule* pick_finding(const Sense& line, const ElementRule& element, std::uint16_t clause, bool bare) {
  const FindingRule* best = nullptr;
  const FindingRule* unnamed = nullptr;
  int best_score = 0;
  for (const FindingRule& rule : element.findings) {
    if (rule.finding == "work-only" || rule.finding == "unspecified") unnamed = &rule;
    const int score = score_finding(line, rule, clause);
    if (score > best_score) best = &rule, best_score = score;
  }
  if (best_score >= 250) return best;
  if (bare) return nullptr;
  return unnamed != nullptr ? unnamed : best;
}

bool other_work(const Sense& line, const Lexicon& lexicon) {
  for (const char* name : {"replace", "repair", "paint", "refinish", "reglaze", "rekey", "touch-up"})
    if (line.has(lexicon.find(name))) return true;
  return false;
}

/// Cleaning a thing is cleaning; repairing or replacing it is damage.
std::string kind_of(const Sense& line, const ElementRule& element, const FindingRule* finding, const Lexicon& lexicon) {
  if (finding != nullptr && !finding->kind.empty()) return finding->kind;
  if (element.kind == "damage" && line.has(lexicon.find("clean")) && !other_work(line, lexicon))
    return element.kind_when_cleaned;
  if (element.element == "other" && finding != nullptr && finding->finding == "unspecified" &&
      (line.has("damaged") || line.has("repair") || line.has("broken") || line.has("water")))
    return "damage";
  return element.kind;
}

int confidence_of(const std::vector<Scored>& ranked, int understood) {
  if (ranked.empty()) return 0;
  const int top = ranked[0].score;
  const int second = ranked.size() > 1 ? ranked[1].score : 0;
  const int strength = std::min(top, 1400) * 45 / 1400;
  const int margin = std::min(std::max(top - second, 0), 900) * 45 / 900;
  return std::clamp(strength + margin + understood / 10, 1, 99);
}

/// Share of the words the lexicon knows, in percent.
int understood(const std::vector<Token>& tokens, const std::vector<Mention>& mentions) {
  std::vector<bool> known(tokens.size(), false);
  for (const Mention& m : mentions)
    for (std::size_t i = m.first; i <= m.last; ++i) known[i] = true;
  int words = 0, sum = 0;
  for (std::size_t i = 0; i < tokens.size(); ++i)
    if (tokens[i].word()) ++words, sum += known[i];
  return words == 0 ? 0 : sum * 100 / words;
}

/// Three or more things of different elements under one price.
bool is_lump(const Sense& line, const std::vector<Scored>& ranked, const RecogniserRules& rules) {
  std::vector<std::uint16_t> heads;
  std::size_t elements = 0;
  const int top = ranked.empty() ? 0 : ranked[0].score;
  for (const Scored& s : ranked) {
    if (s.score < 700 || s.score * 2 < top || rules.elements()[s.element].element == "other") continue;
    for (const std::uint16_t g : s.used) {
      const Group& group = line.groups()[g];
      if (!(group.thing || group.work) || group.factor < 60 || std::find(heads.begin(), heads.end(), g) != heads.end())
        continue;
      heads.push_back(g);
      ++elements;
      break;
    }
  }
  return elements >= 3;
}

std::vector<Basis> basis_of(const Sense& line, const std::vector<std::uint16_t>& used,
                            const std::vector<Token>& tokens) {
  std::vector<Basis> out;
  std::vector<std::uint16_t> groups(used);
  std::sort(groups.begin(), groups.end());
  groups.erase(std::unique(groups.begin(), groups.end()), groups.end());
  for (const std::uint16_t g : groups)
    out.push_back({tokens[line.groups()[g].first].start, tokens[line.groups()[g].last].end});
  return out;
}

bool bath_thing(const std::vector<Group>& groups, const Lexicon& lexicon) {
  for (const Group& g : groups)
    for (const char* name : {"tub", "shower", "toilet", "sink", "faucet", "towel-bar", "grout", "caulk", "mirror",
                             "shower-door", "shower-head", "outlet", "ceiling-fan", "mould"})
      if (std::find(g.ids.begin(), g.ids.end(), lexicon.find(name)) != g.ids.end()) return true;
  return false;
}

constexpr std::array<std::string_view, 9> unit_wide = {"whole-unit-cleaning", "odour-treatment", "pest-treatment",
                                                       "interior-paint",      "carpet-cleaning", "carpet",
                                                       "trash-removal",       "mould-treatment", "hard-flooring"};
constexpr std::array<std::string_view, 4> placeless = {"garage-opener", "fence", "rent", "early-termination"};

std::string place_text(const std::vector<PlaceFound>& places, const std::string& element) {
  const bool wide = std::find(unit_wide.begin(), unit_wide.end(), element) != unit_wide.end();
  if (std::find(placeless.begin(), placeless.end(), element) != placeless.end()) return {};
  std::string out;
  const auto real = static_cast<std::size_t>(
      std::count_if(places.begin(), places.end(), [](const PlaceFound& p) { return !p.whole_unit && !p.closet; }));
  for (const PlaceFound& p : places) {
    if (p.whole_unit && (!wide || real > 0)) continue;
    if (p.closet && (real > 0 || element == "closet-shelving" || element == "interior-door")) continue;
    if (!out.empty()) out += "; ";
    out += p.name;
  }
  return out;
}

std::optional<Quantity> quantity_of(std::vector<Counted> counts, const Sense& line, const Lexicon& lexicon,
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
      if (counts[i].number != Counted::no_number && counts[i].number + 1 < numbers.size()) {
        const Number& price = numbers[counts[i].number + 1];
        const bool makes = static_cast<__int128>(counts[i].thousandths) * price.thousandths ==
                               static_cast<__int128>(amount->in_cents()) * 10'000 &&
                           counts[i].thousandths > 1000;
        if (makes) pick = i;
      }
  Quantity q{counts[pick].thousandths, counts[pick].unit};
  if (q.unit == "hour" && people > 1) q.thousandths *= people;
  const Id less = lexicon.find("mark:less");
  for (const Group& g : line.groups())
    if (std::find(g.ids.begin(), g.ids.end(), less) != g.ids.end())
      for (const Counted& c : counts)
        if (c.token == g.last + 1u && c.thousandths < q.thousandths && c.token > counts[pick].token)
          q.thousandths -= c.thousandths;
  return q;
}

bool sums_only(const std::vector<Token>& tokens) {
  return std::none_of(tokens.begin(), tokens.end(), [](const Token& t) { return t.word() && t.text != "x"; });
}

/// All capitals, one word, or points or a colon at the end.
bool looks_like_heading(const std::vector<Token>& tokens) {
  std::size_t words = 0, capitals = 0;
  for (const Token& t : tokens) words += t.word(), capitals += t.capitals;
  return words <= 1 || capitals == words || tokens.back().is('.') || tokens.back().is(':');
}

/// A line without a sum that names no thing ("CLEANING", "MASTER BATH"), or that states a fact.
bool charges_nothing(const MarkedText& marked, const Sense& line, const AmountFound& amount, LabelKind label) {
  if (marked.tokens.empty() || sums_only(marked.tokens)) return true;
  switch (label) {
  case LabelKind::none:
    break;
  case LabelKind::fact: {
    if (!amount.amount.has_value()) return true;
    if (amount.number == Counted::no_number) return true;
    const Number& n = marked.numbers[amount.number];
    return n.last + 2u < marked.tokens.size() || n.rate; // the sum is inside the remark, not at its end
  }
  case LabelKind::heading:
  case LabelKind::charges:
    return label == LabelKind::charges || !amount.amount.has_value();
  default:
    return true;
  }
  if (amount.amount.has_value()) return false;
  bool thing = false;
  std::size_t bracket = marked.tokens.size();
  for (std::size_t i = 0; i < marked.tokens.size() && bracket == marked.tokens.size(); ++i)
    if (marked.tokens[i].is('(')) bracket = i;
  bool work = false;
  for (const Group& g : line.groups()) {
    thing = thing || (g.thing && g.first < bracket);
    work = work || (g.work && g.first < bracket);
  }
  return !thing && !(work && !looks_like_heading(marked.tokens));
}

bool is_credit(const Sense& line, const Lexicon& lexicon) {
  const Id credit = lexicon.find("mark:credit");
  return std::any_of(line.groups().begin(), line.groups().end(),
                     [&](const Group& g) { return std::find(g.ids.begin(), g.ids.end(), credit) != g.ids.end(); });
}

void set_features(Sense& line, const std::vector<Token>& tokens, const std::vector<Number>& numbers,
                  const std::vector<Counted>& counts) {
  bool place = false, thing = false;
  for (const Group& g : line.groups())
    place = place || (g.place && !describes_size(tokens, g)), thing = thing || (g.thing && g.factor >= 40);
  std::size_t dates = 0;
  bool percent = false;
  for (const Number& n : numbers)
    dates += n.kind == NumberKind::date ? 1u : 0u, percent = percent || n.kind == NumberKind::percent;
  if (place) line.set_feature(0);
  if (percent) line.set_feature(1);
  if (dates > 0) line.set_feature(2);
  if (dates > 1) line.set_feature(3);
  if (thing) line.set_feature(6);
  for (const Counted& c : counts) {
    if (c.unit == "day") line.set_feature(4);
    if (c.unit == "month") line.set_feature(5);
  }
}

} // namespace

namespace {

Recognition recognise_alone(std::string_view text, const RecogniserRules& rules, const TextContext& context) {
  Recognition out;
  const MarkedText marked = mark(text, rules, context.style);
  const Lexicon& lexicon = rules.charges();
  Sense line(marked.tokens, marked.charge, marked.numbers, rules);

  AmountFound amount;
  if (!context.amount_known) amount = AmountFinder(marked.tokens, marked.charge, marked.numbers, rules).run();
  out.amount = amount.amount;
  out.amount_computed = amount.computed;
  const std::vector<Counted> counts = Counter(marked.tokens, line.groups(), marked.charge, marked.numbers, rules)
                                          .run(context.amount_known, amount.number);
  set_features(line, marked.tokens, marked.numbers, counts);

  const LabelKind label = label_of(marked, rules, 0, marked.tokens.size());
  if (charges_nothing(marked, line, amount, label) && !context.amount_known) {
    out.not_a_charge = true;
    out.kind = "other";
    out.confidence = label == LabelKind::none ? 60 : 90;
    if (label == LabelKind::fact) out.amount.reset();
    out.place = place_text(find_places(marked.tokens, line.groups(), marked.charge, rules, false), "");
    return out;
  }

  const std::vector<Scored> ranked = rank(line, rules);
  const auto is_other = [](const ElementRule& r) { return r.element == "other"; };
  const ElementRule& other = *std::find_if(rules.elements().begin(), rules.elements().end(), is_other);
  const bool lump = is_lump(line, ranked, rules);
  const ElementRule& element = ranked.empty() || lump ? other : rules.elements()[ranked[0].element];
  std::uint16_t clause = 0;
  if (!ranked.empty())
    for (const std::uint16_t g : ranked[0].used)
      if (line.groups()[g].thing) {
        clause = line.groups()[g].clause;
        break;
      }
  bool works = false;
  for (const Group& g : line.groups()) works = works || g.work;
  const bool bare = !works && !out.amount.has_value() && !context.amount_known;
  const FindingRule* finding = pick_finding(line, element, clause, bare);
  out.element = element.element;
  out.finding = lump ? "lump-sum" : finding != nullptr ? finding->finding : "";
  out.kind = lump ? "other" : kind_of(line, element, finding, lexicon);
  out.confidence = lump ? 70 : confidence_of(ranked, understood(marked.tokens, marked.charge));
  out.place = place_text(
      find_places(marked.tokens, line.groups(), marked.charge, rules, bath_thing(line.groups(), lexicon)), out.element);
  out.quantity = quantity_of(counts, line, lexicon, marked.numbers, out.amount);
  if (!ranked.empty()) out.basis = basis_of(line, ranked[0].used, marked.tokens);
  for (std::size_t i = lump ? 0 : 1; i < ranked.size() && out.alternatives.size() < 3; ++i) {
    if (ranked[i].score < 300) break;
    const ElementRule& rule = rules.elements()[ranked[i].element];
    const FindingRule* f = pick_finding(line, rule, clause, bare);
    out.alternatives.push_back({rule.element, f != nullptr ? f->finding : "",
                                std::min(out.confidence, ranked[i].score * 50 / std::max(ranked[0].score, 1))});
  }
  if (out.amount.has_value() && (is_credit(line, lexicon) || (out.element == "other" && out.finding == "credit")))
    out.amount = Money{} - *out.amount;
  return out;
}

/// The words of a heading help where the line alone says little ("Cleaning" above "bathroom"); its room is the line's
/// where it names none.
void take_heading(Recognition& r, std::string_view text, const RecogniserRules& rules, const TextContext& context) {
  if (context.heading.empty() || context.heading.size() > 80) return;
  const std::string joined = std::string(context.heading) + ": " + std::string(text);
  const Recognition both = recognise_alone(joined, rules, context);
  if (r.place.empty() && !r.element.empty() && both.element == r.element) r.place = both.place;
  if (r.confidence >= 50 || both.confidence <= r.confidence || both.element.empty()) return;
  const auto shift = static_cast<std::uint32_t>(context.heading.size() + 2);
  const auto quantity = r.quantity;
  r = both;
  r.quantity = quantity ? quantity : both.quantity;
  std::erase_if(r.basis, [&](const Basis& b) { return b.start < shift; });
  for (Basis& b : r.basis) b.start -= shift, b.end -= shift;
}

} // namespace

Recognition recognise(std::string_view text, const RecogniserRules& rules, const TextContext& context) {
  Recognition out = recognise_alone(text, rules, context);
  take_heading(out, text, rules, context);
  return out;
}

} // namespace wearline
