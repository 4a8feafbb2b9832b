#pragma once
// Things and rooms named in a row add up: "2 bedrooms + living room" is three rooms, "2 door keys, 1 mailbox key" three
// keys.

#include "case/case.h"
#include "reading/fact_rules.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace wearline {

/// What a row comes to, with the items it stands on.
struct NamedRow {
  Quantity all;
  std::uint16_t first = 0, last = 0;
  /// Rooms that only say where something was that is not counted by the room ("blinds in LR, 2 bdrms").
  bool only_where = false;
};

/// The rows of a line; nothing where it has none, has several, or where one of its members has no known number.
struct NamedRows {
  std::optional<NamedRow> rooms, things;
};
NamedRows named_rows(const MarkedText& text, const std::vector<FactItem>& items, const FactRules& rules,
                     const Lexicon& charges);

} // namespace wearline
