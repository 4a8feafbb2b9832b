#pragma once
// What a case file may say and how much: names from the rulebook, bounds.

#include "case/case.h"
#include "values/names.h"

#include <cstddef>
#include <map>
#include <string>

namespace wearline {

/// The names a case may use, from the rulebook. An empty catalogue set accepts any name (used before rules are loaded).
struct CaseNames {
  NameSet jurisdictions;                   ///< with a pack, loaded or not
  NameSet places_without_pack;             ///< known places judged without law
  std::map<std::string, NameSet> findings; ///< by element
  NameSet elements, at_move_in, landlord_factors, documents, events, life_sources, methods;
  std::map<std::string, std::string> document_aliases; ///< other usual names of documents, also in `documents`
  std::map<std::string, FactType> circumstances;
  /// What only one place's law knows, by jurisdiction.
  struct OfPlace {
    NameSet events;
    std::map<std::string, FactType> circumstances;
  };
  std::map<std::string, OfPlace> places;
};

/// The most lines a case may hold, and the most bytes a case file may have.
constexpr std::size_t max_lines = 5000;
constexpr std::size_t max_case_bytes = 16u << 20;

} // namespace wearline
