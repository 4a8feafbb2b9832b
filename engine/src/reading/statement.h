#pragma once
// What a statement of deductions says: its charges, the sums it states, its dates, and how its own sums come out.

#include "reading/numbers.h"
#include "reading/slip.h"
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
  bool operator==(const TextPlace&) const = default;
};

enum class ChargeRole : std::uint8_t { charge, credit, tax };

struct ReadCharge {
  std::string text; ///< the description, wrapped lines joined, without the sum
  Money amount;     ///< negative: in the tenant's favor
  ChargeRole role = ChargeRole::charge;
  bool computed = false;         ///< the sum is count times price; only these are printed
  bool mended = false;           ///< read with letters taken for digits, because the paper's sums come out so
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

/// `lease_ended` stands for `move_out` where nothing tells that; `other`: of a bill, a photo, a check, the lease.
enum class DateKind : std::uint8_t {
  statement,
  sent,
  move_out,
  lease_ended,
  move_in,
  due,
  inspected,
  deposit_paid,
  other,
  unknown
};
struct ReadDate {
  DateKind kind = DateKind::unknown;
  Day day;
  TextPlace place;
};

/// A line that was not read as anything, or only as words.
struct TrayLine {
  std::size_t line = 0;
  std::string text;
  std::string why; ///< no-amount, number-without-sign, sum-unexplained, remark, letter, other-message, in-passing,
                   ///< information, repeated, too-large
};

/// Something in the paper's own arithmetic that does not come out.
struct StatementCheck {
  std::string code; ///< sum, refund, balance, subtotal, extension, tax, contradiction
  std::string text; ///< the line it is about, if one
  std::size_t line = 0;
  Money stated, computed;
  Slip slip = Slip::none;
  std::string left_out; ///< the charge that the stated sum leaves out
};

/// A sum of the paper that comes out by its own arithmetic.
struct ClosedSum {
  std::string code; ///< sum, refund, balance, subtotal, extension, running
  std::size_t line = 0;
  Money stated;
  std::vector<std::size_t> from; ///< the lines of the input it is made of
};

/// A sum that is a charge in one reading of the paper and none in another, both as likely, or that no sum of the paper
/// confirms. It is not among the charges.
struct OpenChoice {
  ReadCharge charge;
  std::optional<std::size_t> reading; ///< choices of the same reading are taken or left together; none: by itself
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
  std::vector<ClosedSum> closed;
  std::vector<OpenChoice> choices;
  std::vector<std::string>
      fates; ///< of each input line what became of it: charge, total, deposit, date, heading, blank, tray ...

  std::optional<Money> deposit() const; ///< all deposits together
  Money sum() const;                    ///< of the charges, credits taken off
};

} // namespace wearline
