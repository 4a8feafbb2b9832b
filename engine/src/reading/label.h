#pragma once
// What a line of a statement says it is: a total, the deposit, a refund, a heading, a remark, or none of these.

#include "reading/marked_words.h"

#include <cstdint>

namespace wearline {

enum class LabelKind : std::uint8_t {
  none,
  total,
  subtotal,
  carried,
  held,
  deposit,
  interest,
  refund,
  due,
  payment,
  balance,
  charges, ///< "Charges", "Deductions": with a sum their total, alone a heading
  heading,
  fact,
  letter,
  page
};

/// A sum of the account, as none, headings, facts, letters and pages are not.
constexpr bool is_account(LabelKind kind) {
  return kind != LabelKind::none && kind != LabelKind::heading && kind != LabelKind::fact &&
         kind != LabelKind::letter && kind != LabelKind::page;
}

/// The kind of the tokens from `first` to `last` (exclusive). A text that names a thing, work or state which is not
/// part of the statement's own words ("balance of February rent") is none of these.
LabelKind label_of(const MarkedText& text, const RecognizerRules& rules, std::size_t first, std::size_t last);

} // namespace wearline
