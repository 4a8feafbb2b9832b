#pragma once
// The numbers of a line and what each one is: a sum of money, or a date, percentage, telephone number, size and so on.

#include "reading/lexicon.h"
#include "reading/words.h"
#include "values/money.h"
#include "wearline/day.h"

#include <cstdint>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

namespace wearline {

enum class NumberKind : std::uint8_t {
  plain, ///< nothing says what it is; may be a count or a sum
  money, ///< currency sign, or grouped or two decimals
  percent,
  date,
  phone,
  fraction,  ///< "1/3"
  size,      ///< "16x25x1", 30"
  ordinal,   ///< "2nd"
  reference, ///< "photo 11", "#2207", "WB-1190"
  year,
  clock, ///< "10:30"
};

/// A day named in a text. Month and day without a year are kept as they are; `year` 0 is unknown, `day` 0 is a month
/// alone.
struct NamedDay {
  int year = 0, month = 0, day = 0;
  bool swappable = false; ///< written in digits as two numbers up to 12: which is the month is a matter of custom
};

struct Number {
  NumberKind kind = NumberKind::plain;
  std::uint16_t first = 0, last = 0; ///< tokens, inclusive; a currency sign, brackets and the sign belong to it
  std::int64_t thousandths = 0;
  std::uint8_t decimals = 0;
  bool whole = true;      ///< no decimals written
  bool currency = false;  ///< a currency sign or code stands at it
  bool bracketed = false; ///< "(85.00)"
  bool minus = false;     ///< "-85", "85-"
  bool plus = false;
  bool slip = false;    ///< read with a letter O for zero
  bool spelled = false; ///< "ninety-five dollars"
  bool rate = false;    ///< a price for one: after "@", before "each", "per hour"
  bool after_equals = false;
  NamedDay day; ///< of a date

  /// Whole cents; empty where it has more than two decimals or is out of range.
  std::optional<Money> money() const;
};

/// How digits are grouped in the text at hand: `comma_decimals` for "1.240,00"; `day_first` for "31/07/2026".
struct NumberStyle {
  bool comma_decimals = false;
  bool day_first = false;
};

/// What a text's numbers tell of its style; `spanish` tips the order of day and month where nothing else does.
NumberStyle number_style(std::string_view text, bool spanish);

/// Ids of the marks in a lexicon, looked up once.
struct NumberMarks {
  explicit NumberMarks(const Lexicon& lexicon);
  Lexicon::Id rate, times, percent, number, of, net, free, cents, joint;
  std::vector<Lexicon::Id> months; ///< twelve
  std::vector<Lexicon::Id> counts; ///< one..twelve
  std::vector<Lexicon::Id> currencies;
  std::vector<std::pair<Lexicon::Id, std::int64_t>> words; ///< number words above twelve: "thirty", "hundred", "mil"
};

/// The numbers of a line, left to right. `mentions` are the lexicon's for the same tokens; a number inside a known term
/// is left out.
std::vector<Number> find_numbers(const std::vector<Token>& tokens, const std::vector<Mention>& mentions,
                                 const Lexicon& lexicon, const NumberMarks& marks, NumberStyle style);

/// The civil day, if it is one. Empty without a year or a day, or for a day that does not exist.
std::optional<Day> civil_day(const NamedDay& named);

} // namespace wearline
