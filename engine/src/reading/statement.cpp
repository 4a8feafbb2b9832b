#include "reading/statement.h"

namespace wearline {

std::optional<Money> ReadStatement::deposit() const {
  if (deposits.empty()) return std::nullopt;
  Money sum_of;
  for (const StatedSum& d : deposits) sum_of += d.amount;
  return sum_of;
}

Money ReadStatement::sum() const {
  Money total_of;
  for (const ReadCharge& c : charges) total_of += c.amount;
  return total_of;
}

} // namespace wearline
