#include "reading/sense.h"

#include <algorithm>

namespace wearline {

namespace {

constexpr int inner_share = 60; ///< of a thing named inside a longer term

struct LinkIds {
  Lexicon::Id behind, from, in, of, with, cause, told;
  explicit LinkIds(const Lexicon& l)
      : behind(l.find("behind")), from(l.find("from")), in(l.find("in")), of(l.find("of")), with(l.find("with")),
        cause(l.find("cause-link")), told(l.find("told-link")) {}
};

/// "18 yd", "12 LF" are measures; "3 walls", "2 bags", "4 trips" count things that are meant as well.
bool only_measures(const std::string& unit) {
  static constexpr std::array<std::string_view, 8> things = {"room",   "wall", "bag",  "each",
                                                             "person", "trip", "load", "coat"};
  return std::find(things.begin(), things.end(), unit) == things.end();
}

} // namespace

bool Group::has(Lexicon::Id id) const { return std::find(ids.begin(), ids.end(), id) != ids.end(); }

Sense::Sense(const std::vector<Token>& tokens, const std::vector<Mention>& mentions, const RecognizerRules& rules)
    : t_(&tokens), mentions_(&mentions), rules_(&rules) {
  gather();
  number_clauses();
  weigh();
  fill();
}

Sense::Presence Sense::presence(Lexicon::Id id) const {
  if (id >= WeightedTerm::first_feature)
    return {features_[static_cast<std::size_t>(id - WeightedTerm::first_feature)] ? whole : 0, no_group};
  if ((id & WeightedTerm::anywhere) != 0) return raw_[id & static_cast<Lexicon::Id>(~WeightedTerm::anywhere)];
  return id < presence_.size() ? presence_[id] : Presence{};
}

int Sense::met(const WeightedTerm& term, std::vector<std::uint16_t>* used) const {
  int factor = whole;
  int clause = -1;
  bool spread = false;
  std::array<std::uint16_t, 8> at{};
  std::size_t count = 0;
  for (const auto& any : term.all) {
    Presence best;
    for (const Lexicon::Id id : any) {
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
    for (const Lexicon::Id id : any)
      if (presence(id).factor > 40) return 0;
  if (used != nullptr) used->insert(used->end(), at.begin(), at.begin() + static_cast<std::ptrdiff_t>(count));
  return spread ? factor * 80 / 100 : factor;
}

Sense Sense::opening() const {
  Sense out(*this);
  const Lexicon::Id and_link = rules_->charges().find("and-link");
  for (std::size_t i = 0; i < groups_.size(); ++i) {
    if (!groups_[i].thing && !groups_[i].work) continue;
    std::size_t end = i;
    while (end < groups_.size() && groups_[end].clause == groups_[i].clause &&
           (end == i || !groups_[end].has(and_link)))
      ++end;
    out.groups_.resize(end);
    break;
  }
  out.fill();
  return out;
}

void Sense::gather() {
  for (const Mention& m : *mentions_) {
    const Role role = rules_->charges().at(m.concept_id).role;
    if (role == Role::plain || measured(m) || bare_unit(m)) continue;
    if (groups_.empty() || groups_.back().first != m.first || groups_.back().inner != m.inner) {
      Group g;
      g.first = m.first;
      g.last = m.last;
      g.match = m.match;
      g.inner = m.inner;
      groups_.push_back(std::move(g));
    }
    Group& g = groups_.back();
    g.ids.push_back(m.concept_id);
    g.aside = rules_->charges().at(m.concept_id).aside && (g.ids.size() == 1 || g.aside);
    g.thing |= role == Role::thing;
    g.part |= role == Role::part;
    g.work |= role == Role::work;
    g.state |= role == Role::state || role == Role::cause;
    g.place |= role == Role::place;
    g.owner |= rules_->owns_parts(m.concept_id);
  }
}

/// After a number a measure is a measure, whatever else the word can mean.
bool Sense::measured(const Mention& m) const {
  const Lexicon& lexicon = rules_->charges();
  if (lexicon.at(m.concept_id).unit || m.first == 0 || !(*t_)[m.first - 1u].number()) return false;
  return std::any_of(mentions_->begin(), mentions_->end(), [&](const Mention& u) {
    return u.first == m.first && u.last == m.last && lexicon.at(u.concept_id).unit &&
           only_measures(lexicon.at(u.concept_id).value);
  });
}

/// "MI" for a move-in, "h": two letters are a measure only behind a number.
bool Sense::bare_unit(const Mention& m) const {
  if (!rules_->charges().at(m.concept_id).unit || m.first != m.last || (*t_)[m.first].text.size() > 2) return false;
  return m.first == 0 || !(*t_)[m.first - 1u].number();
}

void Sense::number_clauses() {
  clauses_.assign(t_->size() + 1, 0);
  std::uint16_t clause = 0;
  for (std::size_t i = 0; i < t_->size(); ++i) {
    const Token& t = (*t_)[i];
    const bool inside_word = t.glued && i + 1 < t_->size() && (*t_)[i + 1].glued;
    const bool with = t.glued && i > 0 && (*t_)[i - 1].text == "w"; // "walk-through w/ agent"
    const bool ends = t.is(',') || t.is(';') || t.is(':') || t.is('(') || t.is(')') || t.is('+') || t.is('=') ||
                      t.is('!') || t.is('?') ||
                      (t.is('.') && !(i > 0 && (*t_)[i - 1].word() && (*t_)[i - 1].text.size() < 5)) ||
                      (t.is('-') && !inside_word) || (t.is('/') && !inside_word && !with);
    if (ends) ++clause;
    clauses_[i] = clause;
  }
  clauses_[t_->size()] = clause;
  for (Group& g : groups_) g.clause = clauses_[g.first];
}

/// "no paint needed", "not replaced": the work was not done.
bool Sense::denied(const Group& g) const {
  if (!g.work || g.first == 0) return false;
  const bool without = g.first > 2 && (*t_)[g.first - 1].text == "o" && (*t_)[g.first - 2].is('/'); // "w/o cleaning"
  return without || rules_->word_of("denials", (*t_)[g.first - 1].text);
}

/// "knocked it w/ mop", "scratched with a vacuum": a tool, no work that is charged.
bool Sense::tool(const Group& g, Lexicon::Id with) const {
  if (!g.work || !rules_->word_of("tools", (*t_)[g.last].text)) return false;
  return std::any_of(groups_.begin(), groups_.end(), [&](const Group& link) {
    return link.has(with) && link.last < g.first && link.last + 2u >= g.first && clauses_[link.first] == g.clause;
  });
}

/// "scraped by your painter": who did it, no work that is charged.
bool Sense::by_worker(const Group& g) const {
  const std::string& last = (*t_)[g.last].text;
  if (last.size() < 6 || last.find("er", last.size() - 4) == std::string::npos || g.first < 2) return false;
  return rules_->word_of("doers", (*t_)[g.first - 1].text) || rules_->word_of("doers", (*t_)[g.first - 2].text);
}

bool Sense::next_to(const Group& a, const Group& b) const {
  if (b.first == a.last + 1) return a.clause == b.clause;
  return b.first == a.last + 2 && a.clause == b.clause && (*t_)[a.last + 1].is('.') && (*t_)[a.last + 1].glued;
}

/// Money goes to the first thing named; a thing that only says where ("behind the stove") or what it belongs to counts
/// less.
void Sense::weigh() {
  const LinkIds link(rules_->charges());
  int demoted = whole, beside = whole;
  int clause = -1;
  bool thing_before = false, part_before = false, named_before = false;
  std::size_t things = 0, asides = 0, bracket = 0;
  std::size_t token = 0;
  for (std::size_t i = 0; i < groups_.size(); ++i) {
    Group& g = groups_[i];
    for (; token < g.first; ++token) {
      if ((*t_)[token].is('(')) ++bracket;
      if ((*t_)[token].is(')') && bracket > 0) --bracket;
    }
    if (g.clause != clause) {
      thing_before = part_before = named_before = false;
      demoted = beside = complains(g.clause, link.told) ? 40 : whole;
    }
    clause = g.clause;
    if (g.has(link.behind)) demoted = 25;
    else if (g.has(link.from)) demoted = 40;
    else if (g.has(link.cause)) demoted = beside = 40;
    else if (g.has(link.of)) demoted = thing_before && !part_before ? 75 : whole;
    else if (g.has(link.in)) demoted = named_before ? 70 : whole; // "photo 12: hole in vinyl" names the vinyl first
    else if (g.has(link.with)) demoted = thing_before ? 75 : whole;
    g.factor = g.match == Match::exact ? whole : g.match == Match::shortened ? 85 : 90;
    if (denied(g)) g.factor = 20;
    if (g.work && (by_worker(g) || tool(g, link.with))) g.factor = 25;
    if (bracket > 0 && i > 0) g.factor = g.factor * 70 / whole;
    if (!(g.thing || g.part)) continue;
    g.factor = g.factor * demoted / whole;
    if (g.aside && demoted != whole) g.factor = g.factor * 40 / whole; // "hole, on the checkout form"
    g.demoted = beside;
    if (g.inner) {
      g.factor = g.factor * inner_share / whole;
      continue;
    }
    if (!g.thing) {
      part_before = true;
      continue;
    }
    if (demoted == whole && things > 0) g.factor = g.factor * (things == 1 ? 85 : things == 2 ? 75 : 70) / whole;
    if (demoted == whole) ++things, asides += g.aside;
    thing_before = true;
    named_before = named_before || !g.aside;
    part_before = g.part;
  }
  for (Group& g : groups_) {
    // "I charge you $40 because the toilet seat was cracked": nothing else is named.
    if (things == 0 && g.demoted != whole) g.factor = g.factor * whole / g.demoted;
    if (g.thing && g.aside && things > asides) g.factor = g.factor * 30 / whole;
  }
  harmed_by_another();
  harmed_by_water();
  compounds();
}

/// "the couch tore the shade": what did it is not what is charged.
void Sense::harmed_by_another() {
  const auto does_harm = [&](const Group& g) {
    const std::string& verb = (*t_)[g.last].text;
    if (!g.state || g.last + 1u >= t_->size()) return false;
    const bool past =
        (verb.size() > 4 && verb.compare(verb.size() - 2, 2, "ed") == 0) || rules_->word_of("harms", verb);
    return past && rules_->word_of("before-harmed", (*t_)[g.last + 1].text);
  };
  for (std::size_t i = 0; i + 2 < groups_.size(); ++i) { // "couch-burnt carpet"
    const Group& harm = groups_[i + 1];
    if (groups_[i].thing && harm.state && harm.first == groups_[i].last + 2u && (*t_)[groups_[i].last + 1u].is('-') &&
        (*t_)[harm.first].glued && groups_[i + 2].thing && groups_[i + 2].clause == groups_[i].clause)
      groups_[i].factor = groups_[i].factor * 40 / whole;
  }
  for (std::size_t i = 1; i + 1 < groups_.size(); ++i) {
    if (!does_harm(groups_[i])) continue;
    const auto is_thing = [](const Group& g) { return g.thing && !g.inner; };
    const auto after = std::find_if(groups_.begin() + static_cast<std::ptrdiff_t>(i) + 1, groups_.end(), is_thing);
    if (after == groups_.end() || after->clause != groups_[i].clause || after->first > groups_[i].last + 4u) continue;
    for (std::size_t k = i; k-- > 0;)
      if (is_thing(groups_[k])) {
        if (runs_on(groups_[k].last + 1u, groups_[i].first)) groups_[k].factor = groups_[k].factor * 40 / whole;
        break;
      }
  }
}

/// "Sink leak reported twice, floor swollen": what leaked is not what is charged where another thing is told to be
/// harmed by it.
void Sense::harmed_by_water() {
  const Lexicon& lexicon = rules_->charges();
  const Lexicon::Id leak = lexicon.find("leak");
  const std::array<Lexicon::Id, 6> harms = {lexicon.find("swollen"), lexicon.find("water"),  lexicon.find("damaged"),
                                            lexicon.find("rot"),     lexicon.find("bubble"), lexicon.find("stain")};
  const auto source = std::find_if(groups_.begin(), groups_.end(), [&](const Group& g) { return g.has(leak); });
  if (source == groups_.end()) return;
  const auto harmed = [&](const Group& thing) {
    return std::any_of(groups_.begin(), groups_.end(), [&](const Group& g) {
      return g.clause == thing.clause && !g.has(leak) &&
             std::any_of(harms.begin(), harms.end(), [&](Lexicon::Id id) { return g.has(id); });
    });
  };
  const bool another = std::any_of(groups_.begin(), groups_.end(), [&](const Group& g) {
    return g.thing && !g.inner && g.clause > source->clause && harmed(g);
  });
  if (!another) return;
  for (Group& g : groups_)
    if (g.clause <= source->clause) g.factor = g.factor * 40 / whole;
}

/// Nothing between two tokens but a word ("has") or a denial put in: "the couch, not the cat, tore".
bool Sense::runs_on(std::size_t from, std::size_t to) const {
  const bool denial = from + 1 < to && (*t_)[from].is(',') && (*t_)[from + 1].text == "not" && (*t_)[to - 1].is(',');
  if (denial) ++from, --to;
  return to - from <= (denial ? 4u : 1u) &&
         std::all_of(t_->begin() + static_cast<std::ptrdiff_t>(from), t_->begin() + static_cast<std::ptrdiff_t>(to),
                     [](const Token& t) { return t.word(); });
}

/// "I told the office twice the fan was dead": what is complained of is not what is charged.
bool Sense::complains(std::uint16_t clause, Lexicon::Id told) const {
  return std::any_of(groups_.begin(), groups_.end(), [&](const Group& g) { return g.clause == clause && g.has(told); });
}

/// "bathroom door lock": of things side by side the last is meant, unless it is a part of the one before ("refrigerator
/// shelf").
void Sense::compounds() {
  for (std::size_t i = 0; i + 1 < groups_.size(); ++i) {
    Group& a = groups_[i];
    Group& b = groups_[i + 1];
    if (!a.thing || !(b.thing || b.part) || !next_to(a, b) || a.inner || b.inner) continue;
    if (a.owner && b.part) b.factor = b.factor * 70 / whole;
    else if (b.thing) a.factor = a.factor * 60 / whole;
  }
}

/// "no screens": missing, said in another way.
void Sense::mark_absent() {
  const Lexicon::Id missing = rules_->charges().find("missing");
  for (std::size_t i = 0; i < groups_.size(); ++i) {
    const Group& g = groups_[i];
    if (!(g.thing || g.part) || g.work || g.first == 0 || missing >= presence_.size()) continue;
    if (rules_->word_of("absences", (*t_)[g.first - 1u].text) && presence_[missing].factor == 0)
      presence_[missing] = {whole, static_cast<std::uint16_t>(i)};
  }
}

void Sense::fill() {
  presence_.assign(rules_->charges().size(), {});
  raw_.assign(rules_->charges().size(), {});
  for (std::size_t i = 0; i < groups_.size(); ++i)
    for (const Lexicon::Id id : groups_[i].ids) {
      const auto at = static_cast<std::uint16_t>(i);
      if (groups_[i].factor > presence_[id].factor) presence_[id] = {groups_[i].factor, at};
      if (raw_[id].factor == 0) raw_[id] = {whole, at};
    }
  mark_absent();
}

bool describes_size(const std::vector<Token>& t, const Group& g) {
  return g.first > 0 && t[g.first].glued && t[g.first - 1u].number();
}

std::string unit_of(const std::vector<Token>& t, const std::vector<Mention>& mentions, const Lexicon& lexicon,
                    std::size_t token) {
  for (const Mention& m : mentions)
    if (m.first == token && lexicon.at(m.concept_id).unit) return lexicon.at(m.concept_id).value;
  if (token < t.size())
    for (const Lexicon::Id id : lexicon.ideas_of(t[token]))
      if (lexicon.at(id).unit) return lexicon.at(id).value;
  return {};
}

} // namespace wearline
