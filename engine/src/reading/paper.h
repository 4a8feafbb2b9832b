#pragma once
// The paper as rows of one message, each looked up in the word lists: its language, currency and style of figures,
// which of several messages is the statement, and which lines are only the head or foot of a page.

#include "reading/label.h"
#include "reading/rows.h"

#include <string>
#include <string_view>
#include <vector>

namespace wearline {

/// A row with its words and numbers. `fate`: what became of it; empty as long as that is not settled.
struct PaperRow {
  Row row;
  MarkedText m;
  std::string fate;
  bool other_party = false; ///< of a chat: not written by the one whose account it is
};

/// How the sums of a paper's rows are written.
struct SumStyle {
  bool bare = false;  ///< bare whole numbers at the ends of lines
  bool first = false; ///< before the words: "- 40   oven"
};

struct StatementPaper {
  std::vector<PaperRow> rows;
  std::string language; ///< en or es
  std::string currency; ///< ISO 4217; empty: none printed
  NumberStyle style;
  SumStyle sums;
};

StatementPaper look_at_paper(std::string_view text, const RecognizerRules& rules, std::string_view language);

/// A number that may be a sum at all; one that has the look of a sum (sign of a currency, two decimals).
bool can_be_sum(const Number& number);
bool is_strong(const Number& number);
/// "8 Orrin Lane": a bare number with a name right behind it in the text that was marked; "56 I'm looking" is none.
bool numbers_house(const MarkedText& marked, std::string_view text, const Number& number);
/// The row's token that begins at or after a byte.
std::size_t token_at(const MarkedText& text, std::uint32_t byte);
/// Nothing but signs, a currency or "CR" after the number.
bool ends_row(const PaperRow& row, const Number& number, const RecognizerRules& rules);
/// A full stop inside the text, after a word and before a capital.
bool has_inner_stop(std::string_view text);

} // namespace wearline
