#pragma once
// What one charge is for: element, finding, kind, place and count, from its words. Explainable: every score is a sum of
// weighted terms of rules/recogniser, and the words the answer rests on come with it.

#include "case/case.h"
#include "reading/lexicon.h"
#include "reading/numbers.h"
#include "reading/word_facts.h"
#include "wearline/fault.h"

#include <cstdint>
#include <map>
#include <memory>
#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace wearline {

struct ReadingWeights;

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

struct FindingRule {
  std::string finding;
  std::string kind; ///< where it is not the element's; empty: as the element
  std::vector<WeightedTerm> terms;
};

/// How rooms matter to an element: named as they are; the whole unit counts too; a closet is the thing itself; none
/// (the room is part of the name).
enum class PlaceUse : std::uint8_t { named, wide, closets, none };

struct ElementRule {
  std::string element, kind;
  std::string kind_when_cleaned; ///< kind of a charge for cleaning it
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
  std::vector<std::vector<TermPlace>> terms_by_idea_;
  std::vector<std::vector<PendingTerm>> pending_terms_;                 ///< by element
  std::vector<std::vector<std::vector<PendingTerm>>> pending_findings_; ///< by element, by finding
};

/// Another reading of the line. `confidence`: 0 to 100.
struct Alternative {
  std::string element, finding;
  int confidence = 0;
};

/// A stretch of the text the answer rests on: byte offsets, end exclusive.
struct Basis {
  std::uint32_t start = 0, end = 0;
};

/// Empty strings: nothing was found. Names of elements and findings are those of the wear catalogue.
struct Recognition {
  std::string kind, element, finding, place;
  std::optional<Quantity> quantity; ///< what was counted, in thousandths of a unit
  std::optional<Money> amount;  ///< the sum charged (negative: in the tenant's favor); a printed sum, or count times
                                ///< price where only those are printed
  bool amount_computed = false; ///< the sum is not printed but follows from count and price, or from two sums
  bool not_a_charge = false;    ///< a total, heading, remark or other line that charges nothing
  int confidence = 0;           ///< 0 to 100, of the element; 70 and more: sure, below 50: ask
  WordFacts facts;              ///< what the words state of the case's fields
  std::vector<Basis> basis;
  std::vector<Alternative> alternatives; ///< best first, at most three, without the one chosen
};

/// What is known of a line besides its text.
struct TextContext {
  std::string_view heading;    ///< the heading it stands under ("Kitchen", "Cleaning")
  bool amount_known = false;   ///< the sum stands elsewhere: numbers of the text are counts, not sums
  std::optional<Money> amount; ///< that sum, where it is at hand
  NumberStyle style;
};

/// Reads one charge. Pure, and total: any text gives an answer. Of a text of more than 4,096 bytes the beginning is
/// read.
Recognition recognize(std::string_view text, const RecognizerRules& rules, const TextContext& context = {});

} // namespace wearline
