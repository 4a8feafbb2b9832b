#include "reading/slip.h"

#include <cstddef>
#include <string>
#include <vector>

namespace wearline {

Slip slip_between(Money stated, Money computed) {
  const std::int64_t a = stated.in_cents(), b = computed.in_cents();
  if (a <= 0 || b <= 0 || a == b) return Slip::none;
  if (a == b * 100 || b == a * 100 || a == b * 10 || b == a * 10) return Slip::lost_point;
  const std::string x = std::to_string(a), y = std::to_string(b);
  if (x.size() != y.size()) return Slip::none;
  std::vector<std::size_t> differ;
  for (std::size_t i = 0; i < x.size(); ++i)
    if (x[i] != y[i]) differ.push_back(i);
  const bool turned = differ.size() == 2 && x[differ[0]] == y[differ[1]] && x[differ[1]] == y[differ[0]];
  return turned ? Slip::turned_digits : Slip::none;
}

} // namespace wearline
