#pragma once
// What one charge is for: element, finding, kind, place and count, from its words. Explainable: every score is a sum of
// weighted terms of rules/recogniser, and the words the answer rests on come with it.

#include "case/case.h"
#include "reading/numbers.h"
#include "reading/recognizer_rules.h"
#include "reading/word_facts.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wearline {

/// Another reading of the line. `confidence`: 0 to 100.
struct Alternative {
  std::string element, finding;
  int confidence = 0;
};

/// A stretch of the text the answer rests on: byte offsets, end exclusive.
struct Basis {
  std::uint32_t start = 0, end = 0;
};

/// Empty strings: nothing was found. Names of elements and findings are those of the wear catalogue.
struct Recognition {
  ChargeKind kind = ChargeKind::unknown;
  std::string element, finding, place;
  std::optional<Quantity> quantity; ///< what was counted, in thousandths of a unit
  std::optional<Money> amount;  ///< the sum charged (negative: in the tenant's favor); a printed sum, or count times
                                ///< price where only those are printed
  bool amount_computed = false; ///< the sum is not printed but follows from count and price, or from two sums
  bool harm_named = false;   ///< some word says what was wrong ("cracked"), whether or not a finding of the thing does
  bool not_a_charge = false; ///< a total, heading, remark or other line that charges nothing
  int confidence = 0;        ///< 0 to 100, of the element; 70 and more: sure, below 50: ask
  WordFacts facts;           ///< what the words state of the case's fields
  std::vector<Basis> basis;
  std::vector<Alternative> alternatives; ///< best first, at most three, without the one chosen
};

/// What is known of a line besides its text.
struct TextContext {
  std::string_view heading;    ///< the heading it stands under ("Kitchen", "Cleaning")
  bool amount_known = false;   ///< the sum stands elsewhere: numbers of the text are counts, not sums
  std::optional<Money> amount; ///< that sum, where it is at hand
  NumberStyle style;
};

/// Reads one charge. Pure, and total: any text gives an answer. Of a text of more than 4,096 bytes the beginning is
/// read.
Recognition recognize(std::string_view text, const RecognizerRules& rules, const TextContext& context = {});

} // namespace wearline
