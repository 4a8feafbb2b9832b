#pragma once
// The rules the judgment of lines reads: the wear guide and the tables of useful lives, loaded into typed values.

#include "values/names.h"
#include "values/reference.h"
#include "wear/valuation.h"
#include "wear/wear.h"
#include "wearline/fault.h"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace wearline {

/// Sources by full id; addresses stay valid while it lives.
using ReferenceBook = std::map<std::string, Reference, std::less<>>;

/// Something a person chooses from a list.
struct Choice {
  std::string id;
  Localized label;
  References sources;
};

/// Papers to ask for, for findings ("element/finding", "element/*", "*/finding"), or for what a remedy usually needs.
struct AskRule {
  std::vector<std::string> places;
  ChargeRemedy remedy = ChargeRemedy::unknown; ///< known: for every finding with this remedy that no other rule names
  std::vector<std::size_t> documents;          ///< positions
};

struct WearGuide {
  std::vector<Choice> groups, landlord_factors, at_move_in, causes;
  std::vector<Element> elements;
  std::map<ChargeKind, std::string> element_of_kind; ///< what a line without element is taken for
  Weights weights;
  std::vector<std::string> small_marks, gradual, nothing_named, something_named, by_days,
      by_hours;                                            ///< "element/finding", or "*/finding"
  std::map<std::string, Lean, std::less<>> leans_in_lease; ///< the same, or "element/*"

  std::vector<Document> documents; ///< what findings ask for; loaded once and not moved while findings point to it
  std::vector<AskRule> ask_rules;

  const Element* element(std::string_view id) const;
};

/// Loads rules/wear/catalogue.json. Faults have JSON Pointers into the file.
Faults load_wear_guide(WearGuide& guide, ReferenceBook& sources, std::string_view json);
/// Loads rules/wear/weights.json: before or after the catalogue.
Faults load_weights(WearGuide& guide, ReferenceBook& sources, std::string_view json);
/// Loads rules/wear/ask-for.json: before or after the catalogue.
Faults load_ask_for(WearGuide& guide, std::string_view json);
/// Loads rules/lives/lives.json.
Faults load_lives(LifeTables& tables, ReferenceBook& sources, std::string_view json);

} // namespace wearline
