#include "reading/reading_weights.h"

#include <array>
#include <nlohmann/json.hpp>
#include <string>
#include <utility>

namespace wearline {

Faults read_weights(const nlohmann::json& object, ReadingWeights& out) {
  using Field = std::pair<const char*, int ReadingWeights::*>;
  static constexpr std::array<Field, 31> fields = {{{"totalCloses", &ReadingWeights::total_closes},
                                                    {"refundCloses", &ReadingWeights::refund_closes},
                                                    {"oneLine", &ReadingWeights::one_line},
                                                    {"centsClose", &ReadingWeights::cents_close},
                                                    {"leaveNamed", &ReadingWeights::leave_named},
                                                    {"leaveUnnamed", &ReadingWeights::leave_unnamed},
                                                    {"leaveInSentence", &ReadingWeights::leave_in_sentence},
                                                    {"leaveNamedInSentence", &ReadingWeights::leave_named_in_sentence},
                                                    {"leaveAfterAccount", &ReadingWeights::leave_after_account},
                                                    {"leavePriceInPassing", &ReadingWeights::leave_price_in_passing},
                                                    {"heardSum", &ReadingWeights::heard_sum},
                                                    {"unnamedIsSum", &ReadingWeights::unnamed_is_sum},
                                                    {"namedIsSum", &ReadingWeights::named_is_sum},
                                                    {"sentenceIsSum", &ReadingWeights::sentence_is_sum},
                                                    {"sumIsOther", &ReadingWeights::sum_is_other},
                                                    {"sumIsNone", &ReadingWeights::sum_is_none},
                                                    {"sumIsCharge", &ReadingWeights::sum_is_charge},
                                                    {"factIsCharge", &ReadingWeights::fact_is_charge},
                                                    {"otherFigure", &ReadingWeights::other_figure},
                                                    {"otherColumn", &ReadingWeights::other_column},
                                                    {"turnedSign", &ReadingWeights::turned_sign},
                                                    {"wholeSection", &ReadingWeights::whole_section},
                                                    {"spareTotal", &ReadingWeights::spare_total},
                                                    {"idleGuess", &ReadingWeights::idle_guess},
                                                    {"toldAccount", &ReadingWeights::told_account},
                                                    {"passedOver", &ReadingWeights::passed_over},
                                                    {"openWithin", &ReadingWeights::open_within},
                                                    {"askPassedOver", &ReadingWeights::ask_passed_over},
                                                    {"frameCloses", &ReadingWeights::frame_closes},
                                                    {"doubtful", &ReadingWeights::doubtful},
                                                    {"doubtfulIfOff", &ReadingWeights::doubtful_if_off}}};
  Faults faults;
  for (const auto& [name, member] : fields) {
    if (object.is_object() && object.contains(name) && object[name].is_number_integer())
      out.*member = object[name].get<int>();
    else faults.push_back({"missing-member", std::string("/weights/") + name, "A whole number is needed.", ""});
  }
  return faults;
}

} // namespace wearline
