#pragma once
// A statement of deductions as it came (pasted from an e-mail, a document or a PDF, or CSV) as charges, sums and dates.
// Every line of the text ends somewhere: as a charge, a known sum, a date, a heading, or in the tray of lines not read.
// No sum is ever made up: each is printed at the place given, or is the product of a count and a price printed side by
// side, and then says so.

#include "reading/recogniser.h"
#include "values/money.h"
#include "wearline/day.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wearline {

/// Where something stands in the input: a line (from 1) and byte offsets into it, end exclusive.
struct TextPlace {
  std::size_t line = 0;
  std::uint32_t start = 0, end = 0;
};

enum class ChargeRole : std::uint8_t { charge, credit, tax };

struct ReadCharge {
  std::string text; ///< the description, wrapped lines joined, without the sum
  Money amount;     ///< negative: in the tenant's favour
  ChargeRole role = ChargeRole::charge;
  bool computed = false;         ///< the sum is count times price; only these are printed
  std::string heading;           ///< the heading it stands under, or the room column
  std::vector<TextPlace> places; ///< of the description, line by line
  TextPlace amount_place;
  std::optional<std::int64_t> count; ///< thousandths, of a quantity column
  std::string unit;                  ///< as printed in a unit column
  std::optional<Money> rate;         ///< of a price column
};

/// A sum the paper states about itself.
struct StatedSum {
  std::string text;
  Money amount;
  TextPlace place;
};

enum class DateKind : std::uint8_t { statement, sent, move_out, move_in, due, inspected, deposit_paid, unknown };
struct ReadDate {
  DateKind kind = DateKind::unknown;
  Day day;
  TextPlace place;
};

/// A line that was not read as anything, or only as words.
struct TrayLine {
  std::size_t line = 0;
  std::string text;
  std::string why; ///< no-amount, number-without-sign, remark, letter, other-message, several-sums, information
};

/// Something in the paper's own arithmetic that does not come out.
struct StatementCheck {
  std::string code; ///< sum, refund, balance, subtotal, extension, tax, contradiction
  std::string text; ///< the line it is about, if one
  std::size_t line = 0;
  Money stated, computed;
};

struct ReadStatement {
  std::vector<ReadCharge> charges;
  std::vector<StatedSum> deposits;
  std::optional<StatedSum> interest, total, refund, balance_due, payment;
  std::vector<StatedSum> others; ///< subtotals, sums carried forward, further totals
  std::vector<ReadDate> dates;
  std::string currency; ///< ISO 4217; empty: none printed
  std::string language; ///< en or es
  NumberStyle style;
  std::vector<TrayLine> tray;
  std::vector<StatementCheck> checks;
  std::vector<std::string>
      fates; ///< of each input line what became of it: charge, total, deposit, date, heading, blank, tray ...

  std::optional<Money> deposit() const; ///< all deposits together
  Money sum() const;                    ///< of the charges, credits taken off
};

/// Reads a statement. `language`: "en", "es", or empty: found from the words. Pure and total.
ReadStatement read_text(std::string_view text, const RecogniserRules& rules, std::string_view language = {});

} // namespace wearline
