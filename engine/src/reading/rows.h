#pragma once
// The text of a statement as rows and cells: quoted e-mail, bullets, columns of blanks, tabs, bars, leaders, and CSV
// (RFC 4180).

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace wearline {

/// A piece of a row. `start` and `end` are byte offsets into the row's text; `column` is where it begins on screen
/// (code points).
struct Cell {
  std::uint32_t start = 0, end = 0;
  std::uint32_t column = 0, column_end = 0;
};

/// One line of the text (of CSV: one record, which may run over several lines; its text is then the fields joined by "
/// | ").
struct Row {
  std::string text;     ///< without quote marks; tabs kept
  std::size_t line = 0; ///< 1-based number in the input, of a record its first
  std::size_t lines = 1;
  std::uint32_t offset = 0; ///< bytes of the line before `text` (quote marks)
  int depth = 0;            ///< how often it is quoted
  std::uint32_t indent = 0; ///< blanks before the first sign, on screen
  std::uint32_t body = 0;   ///< where the text begins after bullet or number
  bool bulleted = false;    ///< begins with a bullet, a dash, "3." or a box to tick
  std::string speaker;      ///< of a chat: who wrote the message
  int tick = 0;             ///< of a box: 1 ticked ("[x]"), -1 not ("[ ]")
  bool blank = false;
  bool rule = false;    ///< drawn line: nothing but dashes, bars, dots
  bool tabular = false; ///< cells lie at fixed places (tab, bar, CSV), so their index tells the column
  std::vector<Cell> cells;

  std::string_view cell(std::size_t i) const {
    return std::string_view(text).substr(cells[i].start, cells[i].end - cells[i].start);
  }
};

/// The rows of a text, in order; every line of the input belongs to exactly one.
std::vector<Row> split_rows(std::string_view text);

/// How many code points the first `bytes` bytes of the text hold; tabs run to the next multiple of eight.
std::uint32_t screen_column(std::string_view text, std::size_t bytes);

} // namespace wearline
