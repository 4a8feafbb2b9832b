#include "law/conditions.h"

#include <algorithm>

namespace wearline {

void add_ask(Asks& asks, Ask ask) {
  if (std::find(asks.begin(), asks.end(), ask) == asks.end()) asks.push_back(ask);
}

void Grounds::add(const Grounds& other) {
  for (const Ask& ask : other.unknown) add_ask(unknown, ask);
  for (const Ask& ask : other.assumed) add_ask(assumed, ask);
}

} // namespace wearline
