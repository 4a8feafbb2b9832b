#pragma once
// Reading a case file, with every fault named and placed.

#include "case/case.h"
#include "values/names.h"
#include "wearline/fault.h"

#include <map>
#include <string>
#include <string_view>
#include <variant>

namespace wearline {

/// The names a case may use, from the rulebook. An empty catalogue set accepts any name (used before rules are loaded).
struct CaseNames {
  NameSet jurisdictions;                   ///< with a pack, loaded or not
  NameSet places_without_pack;             ///< known places judged without law
  std::map<std::string, NameSet> findings; ///< by element
  NameSet elements, at_move_in, causes, landlord_factors, documents, events, life_sources, methods;
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

/// The case file's name of a cost component.
std::string_view name_of(CostComponent component);

/// Reads one case file (RFC 8259, UTF-8; engine/rules/schema/case.schema.json), or one of version 1. Either the whole
/// case or every fault found, with the names of the file.
std::variant<Case, Faults> read_case(std::string_view json, const CaseNames& names);

/// The version that a case file says it is of; 0 where it says none.
int case_format(std::string_view json);

} // namespace wearline
