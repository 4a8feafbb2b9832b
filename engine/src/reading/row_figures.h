#pragma once
// Which number of a row is its sum, and which words are its description: by the heads of a table, by the shape of the
// row, or by its words.

#include "reading/columns.h"
#include "reading/paper.h"

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace wearline {

constexpr std::size_t nowhere = static_cast<std::size_t>(-1);

/// What one row says in its numbers.
struct RowFigures {
  std::size_t number = nowhere;                ///< the sum of the row
  std::size_t label_first = 0, label_last = 0; ///< tokens of its description (end exclusive)
  std::size_t tail_first = 0;      ///< tokens after the sum that belong to the description; = tokens.size() if none
  std::vector<std::size_t> others; ///< further numbers that stand in columns of sums, left to right with `number`
  bool minus = false, plus = false, credit_column = false, balance_only = false;
  bool headed = false;           ///< read by the heads of a table
  std::size_t balance = nowhere; ///< the number of a column headed as a running balance
  std::optional<std::int64_t> count;
  std::optional<Money> rate;
  std::string unit, room;
  std::vector<std::pair<std::uint32_t, std::uint32_t>> text; ///< byte ranges of the description
  bool found() const { return number != nowhere; }
};

/// `columns`: of the table the row stands in, if one was headed.
RowFigures figures_of(const PaperRow& row, const std::optional<Columns>& columns, SumStyle style,
                      const RecognizerRules& rules);

/// The number a cell holds, if it holds nothing else; `nowhere` otherwise.
std::size_t lone_number(const PaperRow& row, std::size_t cell, const RecognizerRules& rules);
/// A cell with a sign alone: "-", "+", "$".
bool is_sign_cell(const PaperRow& row, std::size_t cell);
/// Words that say something among the tokens from `first` to `last` (exclusive).
bool has_words(const PaperRow& row, std::size_t first, std::size_t last, const RecognizerRules& rules);
/// The description cut out of the row's text.
std::string description_of(const PaperRow& row, const RowFigures& figures);
/// Joins a piece of a description to what there is, without signs at its ends.
void append_piece(std::string& out, std::string_view piece);
/// The description covers these cells.
void describe_by_cells(const PaperRow& row, RowFigures& figures, const std::vector<std::size_t>& cells);

} // namespace wearline
