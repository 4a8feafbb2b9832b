#include "values/names.h"

#include <algorithm>

namespace wearline {

NameSet::NameSet(std::initializer_list<std::string_view> names) {
  for (const auto name : names) add(name);
}

void NameSet::add(std::string_view name) {
  const auto at = std::lower_bound(names_.begin(), names_.end(), name);
  if (at == names_.end() || *at != name) names_.insert(at, std::string(name));
}

bool NameSet::has(std::string_view name) const {
  const auto at = std::lower_bound(names_.begin(), names_.end(), name);
  return at != names_.end() && *at == name;
}

int edits(std::string_view a, std::string_view b, int limit) {
  if (a.size() < b.size()) std::swap(a, b);
  if (static_cast<int>(a.size() - b.size()) > limit) return limit + 1;
  std::vector<int> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = static_cast<int>(j);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    int diagonal = row[0];
    row[0] = static_cast<int>(i);
    int least = row[0];
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const int above = row[j];
      const int replace = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({above + 1, row[j - 1] + 1, replace});
      diagonal = above;
      least = std::min(least, row[j]);
    }
    if (least > limit) return limit + 1;
  }
  return row[b.size()];
}

std::string NameSet::nearest(std::string_view name) const {
  if (name.empty() || name.size() > 64) return {};
  std::string best;
  int fewest = 1 + std::max<int>(1, static_cast<int>(name.size()) / 3);
  for (const auto& known : names_) {
    const int distance = edits(name, known, fewest - 1);
    if (distance < fewest) {
      fewest = distance;
      best = known;
    }
  }
  return best;
}

} // namespace wearline
