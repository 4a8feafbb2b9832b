#pragma once
// The roles that a sum may have in the account, each with what speaks against it: by what its words call it, or as a
// charge.

#include "reading/entries.h"
#include "reading/reading_weights.h"

#include <string>

namespace wearline {

/// Without its sign.
Money size_of(Money sum);

/// The roles of a sum with the words of a statement ("Total", "Refund"), the likeliest by its words first.
void add_sum_roles(Entry& entry, LabelKind kind, Money value, const ReadingWeights& weights);

/// What else is known of a row that has the look of a charge.
struct ChargeSigns {
  bool credit = false;        ///< in the tenant's favor
  bool free = false;          ///< "no charge": its sum is nothing
  bool in_passing = false;    ///< its words make the sum a price
  bool denied = false;        ///< its words take the charge back
  bool after_account = false; ///< the refund or what is owed was stated before it
};
/// The roles of a row that nothing calls a sum of the account. `main`: the figure that is its sum.
void add_charge_roles(Entry& entry, std::size_t main, const ChargeSigns& signs, const ReadingWeights& weights);

/// Its roles in the order of what speaks against them.
void likeliest_first(Entry& entry);
/// No part of the account unless `against` its other roles, and more, speaks for them. `fate`: of its lines.
void leave_out(Entry& entry, std::string fate, int against);

} // namespace wearline
