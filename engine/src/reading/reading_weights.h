#pragma once
// What each deviation from the likeliest role of a number costs, and what a sum that closes is worth: "weights" of
// rules/recogniser/statement.json, in points.

#include "wearline/fault.h"

#include <nlohmann/json_fwd.hpp>

namespace wearline {

struct ReadingWeights {
  int total_closes = 0, refund_closes = 0, frame_closes = 0, one_line = 0, cents_close = 0;
  int leave_named = 0, leave_unnamed = 0, leave_in_sentence = 0, leave_named_in_sentence = 0, leave_after_account = 0,
      leave_price_in_passing = 0;
  int heard_sum = 0, unnamed_is_sum = 0, named_is_sum = 0, sentence_is_sum = 0;
  int sum_is_other = 0, sum_is_none = 0, sum_is_charge = 0, fact_is_charge = 0;
  int other_figure = 0, other_column = 0, turned_sign = 0, whole_section = 0, spare_total = 0;
  int idle_guess = 0;      ///< a sum its words do not call one, that does not come out
  int told_account = 0;    ///< a whole account that comes out in sentences whose words do not say so
  int passed_over = 0;     ///< a number that was passed over, taken for a charge at a second look
  int open_within = 0;     ///< readings that differ by less are both shown
  int doubtful_if_off = 0; ///< the same where sums are stated and none comes out
  int ask_passed_over = 0; ///< a number passed over that costs no more to charge is asked about there too
  int doubtful = 0;        ///< a charge that costs no more to leave, and that no sum confirms, is asked about
};

/// Faults: a weight that is missing or no number; the pointer is into the object.
Faults read_weights(const nlohmann::json& object, ReadingWeights& out);

} // namespace wearline
