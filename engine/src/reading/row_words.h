#pragma once
// What the words of one row say, looked at by themselves: whose sum it is, whether it is a credit, a tax, free of
// charge, the name of a room.

#include "reading/entries.h"
#include "reading/row_figures.h"

#include <string_view>
#include <vector>

namespace wearline {

/// A word of the statement's idea `id` ("st:less") among the tokens from `first` to `last` (exclusive).
bool mentions_word(const PaperRow& row, const RecognizerRules& rules, std::string_view id, std::size_t first,
                   std::size_t last);
bool mentions_word(const PaperRow& row, const RecognizerRules& rules, std::string_view id);
/// Says who gets or owes the sum.
bool says_who(const PaperRow& row, const RecognizerRules& rules, std::size_t first, std::size_t last);
bool mentions_rent(const PaperRow& row, const RecognizerRules& rules);
bool is_tax(const PaperRow& row, const RowFigures& figures, const RecognizerRules& rules);
/// "Credit for paint", "35.00 CR". A credit check and a credit card are no credit.
bool is_credit(const PaperRow& row, const RowFigures& figures, const RecognizerRules& rules);
/// "NO CHARGE" after the number.
bool is_free(const PaperRow& row, const Number& number, const RecognizerRules& rules);
/// "bought May 2021 for", "usually": words soon before the sum that make it a price.
bool in_passing(const PaperRow& row, const Number& number, const RecognizerRules& rules);
/// "35, but that was old, not charged": taken back in the same row.
bool is_denied(const PaperRow& row, const Number& number, const RecognizerRules& rules);
/// Names a thing, work or state with words that are not the account's own ("check", "hold").
bool names_own_charge(const PaperRow& row, const RecognizerRules& rules);
/// "had 900 from you": right behind the number, nothing else named.
bool came_from_you(const MarkedText& text, const RecognizerRules& rules, const Number& number);
/// "so from the 700 deposit you get 563": the deposit and what comes back or off, in one breath, and nothing else.
bool tells_account(const PaperRow& row, const RecognizerRules& rules);
/// "the 450 deposit": a bare number beside a word of the account.
bool names_account_number(const PaperRow& row, const RecognizerRules& rules);
/// Roles that single words of the row speak for, though the row as a whole is not called so.
std::vector<SumRole> heard_roles(const PaperRow& row, const RecognizerRules& rules);
/// "LIVING ROOM   Room total": the name of a room and a word for its sum.
bool is_room_sum(const PaperRow& row, const RowFigures& figures, const RecognizerRules& rules);
/// Nothing but the name of a room.
bool names_only_room(const PaperRow& row, const RecognizerRules& rules, std::size_t first, std::size_t last);
bool is_room(const PaperRow& row, const RecognizerRules& rules);
/// "each bears", "per person": a share of what stands beside or above.
bool tells_share(const PaperRow& row, const RowFigures& figures, const RecognizerRules& rules);
/// "qty: 2", "hours: 1.5", "unit_price: 40.00": the whole label is what heads a column of facts.
bool is_item_fact(const PaperRow& row, const RowFigures& figures, bool record, const RecognizerRules& rules);
bool only_capitals(const PaperRow& row);
bool in_brackets(const PaperRow& row);

} // namespace wearline
