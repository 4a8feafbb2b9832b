#pragma once
// What the words of one line stand for, how strongly each counts, and where it stands: the ground every judgment of a
// line rests on.

#include "reading/recognizer_rules.h"

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace wearline {

constexpr int whole = 100; ///< factors are in percent

/// Ideas that share a stretch of the line.
struct Group {
  std::uint16_t first = 0, last = 0; ///< tokens, inclusive
  Match match = Match::exact;
  std::vector<Lexicon::Id> ids;
  bool thing = false, part = false, work = false, state = false, place = false, owner = false;
  bool inner = false;  ///< inside a longer term
  bool aside = false;  ///< all it stands for is mostly said beside a charge
  int factor = whole;  ///< how much it counts
  int demoted = whole; ///< of that, for standing in the words of a cause or of a complaint
  std::uint16_t clause = 0;

  bool has(Lexicon::Id id) const;
};

class Sense {
public:
  static constexpr std::uint16_t no_group = 0xFFFF;

  /// What the line holds of one idea: how strongly, and where it is strongest.
  struct Presence {
    int factor = 0;
    std::uint16_t group = no_group;
  };

  /// Keeps references to its arguments.
  Sense(const std::vector<Token>& tokens, const std::vector<Mention>& mentions, const RecognizerRules& rules);

  const std::vector<Group>& groups() const { return groups_; }
  bool has(Lexicon::Id id) const { return id < presence_.size() && presence_[id].factor > 0; }
  bool has(std::string_view name) const { return has(rules_->charges().find(name)); }
  Presence presence(Lexicon::Id id) const;

  /// How far a term is met, in percent; the groups it rests on are added to `used`.
  int met(const WeightedTerm& term, std::vector<std::uint16_t>* used) const;

  /// The line up to the end of the clause that first names a thing or work: what is said first weighs more.
  Sense opening() const;

  void set(Feature feature) { features_[static_cast<std::size_t>(feature)] = true; }

private:
  void gather();
  bool measured(const Mention& m) const;
  bool bare_unit(const Mention& m) const;
  void number_clauses();
  bool complains(std::uint16_t clause, Lexicon::Id told) const;
  bool denied(const Group& g) const;
  bool by_worker(const Group& g) const;
  bool tool(const Group& g, Lexicon::Id with) const;
  void harmed_by_another();
  void harmed_by_water();
  bool runs_on(std::size_t from, std::size_t to) const;
  bool next_to(const Group& a, const Group& b) const;
  void weigh();
  void compounds();
  void mark_absent();
  void fill();

  const std::vector<Token>* t_;
  const std::vector<Mention>* mentions_;
  const RecognizerRules* rules_;
  std::vector<Group> groups_;
  std::vector<std::uint16_t> clauses_;
  std::vector<Presence> presence_, raw_;
  std::array<bool, feature_names.size()> features_{};
};

/// "2BR/1BA" says how large the unit is, not where something was done.
bool describes_size(const std::vector<Token>& tokens, const Group& group);

/// The unit a word names, be it part of a longer term or not ("2 days @ 39"); empty if it names none.
std::string unit_of(const std::vector<Token>& tokens, const std::vector<Mention>& mentions, const Lexicon& lexicon,
                    std::size_t token);

} // namespace wearline
