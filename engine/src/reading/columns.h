#pragma once
// The columns of a table in a statement: what each head means, and which column a number stands in.

#include "reading/label.h"
#include "reading/rows.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace wearline {

enum class ColumnKind : std::uint8_t {
  unknown,
  text,
  room,
  number,
  date,
  quantity,
  unit,
  rate,
  amount,
  share,
  balance,
  credit,
  other_money,
  fact
};

struct Column {
  ColumnKind kind = ColumnKind::unknown;
  std::uint32_t start = 0, end = 0; ///< on screen
};

struct Columns {
  std::vector<Column> columns;
  bool tabular = false;              ///< by index, not by place on screen
  std::optional<std::size_t> charge; ///< the column of the sums charged
  std::optional<std::size_t> credit;
};

/// The columns a row heads, if it is a row of heads.
std::optional<Columns> read_heads(const Row& row, const MarkedText& marked, const RecognizerRules& rules);

/// The column of a cell: by index in tables with bars, tabs or CSV, else by where it lies on screen.
std::optional<std::size_t> column_of(const Columns& columns, const Row& row, std::size_t cell);

} // namespace wearline
