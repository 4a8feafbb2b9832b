#pragma once
// The rules a charge is read by: ideas of the word lists, what they add to each element and finding, and what makes a
// number. Files of rules/recogniser.

#include "case/charge.h"
#include "reading/fact_rules.h"
#include "reading/lexicon.h"
#include "reading/numbers.h"
#include "reading/reading_weights.h"
#include "wearline/fault.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <map>
#include <memory>
#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wearline {

/// Ideas that must be there together, with the weight they then add. Built from "clean range|fridge -replace": 13.
struct WeightedTerm {
  static constexpr Lexicon::Id first_feature =
      0xFF00; ///< ids from here on are features of the line, not ideas of the lexicon
  static constexpr Lexicon::Id anywhere =
      0x4000; ///< set in an id: the idea counts in full even where it only says where ("behind the stove")
  std::vector<std::vector<Lexicon::Id>> all;  ///< of each list one must be there
  std::vector<std::vector<Lexicon::Id>> none; ///< of each list none may be there
  int weight = 0;                             ///< hundredths
};

/// Features of a line beside its ideas; terms name them (WeightedTerm::first_feature). Their order is that of
/// `feature_names`.
enum class Feature : std::uint8_t { place, percent, date_any, date_range, unit_day, unit_month, named_thing };
constexpr std::array<std::string_view, 7> feature_names = {"place",    "percent",    "date-any",   "date-range",
                                                           "unit-day", "unit-month", "named-thing"};

struct FindingRule {
  std::string finding;
  ChargeKind kind = ChargeKind::unknown; ///< where it is not the element's
  std::vector<WeightedTerm> terms;
};

/// How rooms matter to an element: named as they are; the whole unit counts too; a closet is the thing itself; none
/// (the room is part of the name).
enum class PlaceUse : std::uint8_t { named, wide, closets, none };

struct ElementRule {
  std::string element;
  ChargeKind kind = ChargeKind::unknown;
  ChargeKind kind_when_cleaned = ChargeKind::unknown; ///< of a charge for cleaning it
  PlaceUse places = PlaceUse::named;
  std::vector<WeightedTerm> terms;
  std::vector<FindingRule> findings;
};

/// The files of rules/recogniser, ready for use once all are there.
class RecognizerRules {
public:
  /// `name`: the file's name within rules/recogniser ("concepts.json"); in any order. The last file builds the whole.
  /// Faults: a file that is no JSON or not of the right shape, names that no file defines; each has the file's name
  /// before its JSON Pointer where it is not this one.
  Faults add(std::string_view name, std::string_view json);
  /// All files are there and without a fault: `recognize` may be called.
  bool complete() const { return complete_; }
  /// The files it takes.
  static const std::vector<std::string>& files();

  const Lexicon& charges() const { return charges_; }
  const Lexicon& statement() const { return statement_; }
  const NumberMarks& charge_marks() const { return *charge_marks_; }
  const NumberMarks& statement_marks() const { return *statement_marks_; }
  /// What speaks for and against the readings of a paper (reading_weights.h).
  const ReadingWeights& weights() const { return *weights_; }
  const FactRules& facts() const { return *facts_; }
  const std::vector<ElementRule>& elements() const { return elements_; }
  /// Things whose parts are named after them: a refrigerator's shelf is the refrigerator's, a wall's outlet is no part
  /// of the wall.
  bool owns_parts(Lexicon::Id id) const { return owners_.has(id); }
  /// Things of a bathroom.
  bool in_bathroom(Lexicon::Id id) const { return bathroom_.has(id); }
  /// States that are counted like things: holes, burns.
  bool counted(Lexicon::Id id) const { return counted_.has(id); }
  /// Things that others are made of: laminate, tile.
  bool material(Lexicon::Id id) const { return materials_.has(id); }

  /// Whether the word is in a list of `words` in elements.json ("harms": tore, hit).
  bool word_of(std::string_view list, std::string_view word) const {
    const auto found = words_.find(list);
    return found != words_.end() && std::find(found->second.begin(), found->second.end(), word) != found->second.end();
  }

  /// A term of an element, by its place.
  struct TermPlace {
    std::uint16_t element = 0, term = 0;
  };
  /// The elements' terms whose first piece this idea (or feature) meets.
  const std::vector<TermPlace>& terms_of(Lexicon::Id id) const;

private:
  struct PendingTerm {
    std::string text, at;
    int weight;
  };
  Faults build();
  Faults add_words(std::string_view name, const nlohmann::json& document);
  Faults add_facts(const nlohmann::json& document);
  Faults add_elements(const nlohmann::json& document);
  Faults tie();
  void index_terms();
  WeightedTerm compile(const PendingTerm& term, Faults& faults) const;

  std::map<std::string, std::string, std::less<>> waiting_; ///< texts of the files until all are there
  bool complete_ = false;
  Lexicon charges_, statement_{false};
  std::shared_ptr<const ReadingWeights> weights_;
  std::shared_ptr<FactRules> facts_; ///< the patterns of facts.json
  std::optional<NumberMarks> charge_marks_, statement_marks_;
  std::vector<ElementRule> elements_;
  /// Ideas named in a list of elements.json.
  struct IdeaSet {
    std::vector<std::string> names;
    std::vector<bool> in;
    bool has(Lexicon::Id id) const { return id < in.size() && in[id]; }
  };
  void fill(IdeaSet& set, const char* at, Faults& faults) const;
  IdeaSet owners_, bathroom_, counted_, materials_;
  std::map<std::string, std::vector<std::string>, std::less<>> words_;
  std::vector<std::vector<TermPlace>> terms_by_idea_;
  std::vector<std::vector<PendingTerm>> pending_terms_;                 ///< by element
  std::vector<std::vector<std::vector<PendingTerm>>> pending_findings_; ///< by element, by finding
};

} // namespace wearline
