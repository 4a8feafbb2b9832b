#pragma once
// A number of the paper that may be a sum, with everything it may be. The passes that read rows and sentences make
// entries; the reading of the whole paper then takes one role of each.

#include "reading/label.h"
#include "reading/statement.h"

#include <cstdint>
#include <string>
#include <vector>

namespace wearline {

/// What a sum may be to the account.
enum class SumRole : std::uint8_t {
  charge,
  credit,
  total,
  subtotal, ///< and sums carried forward
  held,     ///< deposit and interest together
  deposit,
  interest,
  payment,
  refund,
  due,
  passing ///< named, but no part of the account: a price new, a check, a bill for comparison
};

/// One role with the sum it then has. `cost` is what speaks against it, 0 for the likeliest: rules/recogniser,
/// "weights".
struct RoleOption {
  SumRole role = SumRole::passing;
  Money value;
  int cost = 0;
  std::size_t figure = 0; ///< which of the entry's figures
};

/// A number of an entry as printed.
struct Figure {
  Money value;
  TextPlace place;
  bool mended = false;     ///< letters taken for digits
  std::uint32_t right = 0; ///< of a row: where it ends on screen; in a table with bars, tabs or CSV which cell it is
};

struct Entry {
  std::vector<Figure> figures;     ///< of a row all numbers of its sum columns, left to right
  std::vector<RoleOption> options; ///< the likeliest first
  ReadCharge charge;               ///< what it is as a charge: words, places, heading, count
  std::string label;               ///< its words as a stated sum
  LabelKind kind = LabelKind::none;
  bool directed = false; ///< says who gets it
  bool minus = false, plus = false;
  int tick = 0;               ///< of a box before it: 1 ticked, -1 not
  bool headed = false;        ///< its sum stands in the column that the table's heads name for it
  bool two_sided = false;     ///< the table has a column of its own for credits
  bool prose = false;         ///< stands in a sentence
  bool named = false;         ///< names a thing, work or state
  bool rent = false;          ///< speaks of rent
  std::vector<SumRole> heard; ///< roles that single words of it speak for
  std::size_t section = 0;    ///< stretch of the paper between headings
  std::vector<std::size_t> rows;
  std::string passing_fate = "in-passing"; ///< of its lines if it is no part of the account

  /// Adds a role; the first of a role and figure stands.
  void may_be(SumRole role, Money value, int cost, std::size_t figure = 0) {
    for (const RoleOption& o : options)
      if (o.role == role && o.value == value) return;
    options.push_back({role, value, cost, figure});
  }
};

/// A stretch of the paper under one heading.
struct Section {
  std::string heading;
  bool follows = false;  ///< stands after the account's refund or balance
  bool attached = false; ///< an invoice or list that follows the account and may repeat it
  bool bill = false;     ///< its heading names a bill or invoice
};

struct Entries {
  std::vector<Entry> list;
  std::vector<TextPlace> spoken_against; ///< bare numbers of sentences that say they are not charged
  std::vector<ReadDate> dates;
  std::vector<Section> sections = std::vector<Section>(1);
};

} // namespace wearline
