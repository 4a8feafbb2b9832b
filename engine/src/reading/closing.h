#pragma once
// The reading of the whole paper: of each entry one role, so that what speaks for it is most. Roles cost what their
// words and places say against them; a sum of the paper that comes out (charges to the total; deposit, charges and
// refund) is a gain. Exact search on cents, bounded: all readings that differ from the likeliest in up to two entries
// or groups of entries, and those in which three charges differ and a stated sum comes out.

#include "reading/entries.h"
#include "reading/reading_weights.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace wearline {

/// How the sums of a reading come out.
struct AccountSums {
  std::int64_t charges = 0, credits = 0, payment = 0; ///< cents; credits positive
  std::int64_t base = 0;                              ///< deposits and interest
  bool has_base = false;
  std::optional<std::int64_t> total, refund, due;
  bool total_closes = false, refund_closes = false, due_closes = false;
  bool frame_closes = false; ///< deposit, stated total and refund agree, though the charges do not come to the total
  bool column_foot = false;  ///< what is called a total is the foot of a ledger's column: no total is stated
  std::int64_t net() const { return charges - credits; }
};

struct WholeReading {
  std::vector<std::size_t> chosen; ///< of each entry the option
  AccountSums sums;
  bool closes = false; ///< a stated sum comes out
  struct Open {
    std::size_t entry = 0, option = 0;
    std::optional<std::size_t> reading; ///< none: asked about by itself
  };
  std::vector<Open> open; ///< entries that are a charge in one reading and none in another that is as likely, and those
                          ///< that no sum of the paper confirms and little speaks for
};

WholeReading best_reading(const Entries& entries, const ReadingWeights& weights);

} // namespace wearline
