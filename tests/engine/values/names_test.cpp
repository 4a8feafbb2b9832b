#include "values/names.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

using namespace wearline;

namespace {
/// The definition (Levenshtein 1966), by trying every first step.
int by_definition(std::string_view a, std::string_view b) {
  if (a.empty() || b.empty()) return static_cast<int>(a.size() + b.size());
  if (a[0] == b[0]) return by_definition(a.substr(1), b.substr(1));
  return 1 + std::min({by_definition(a.substr(1), b), by_definition(a, b.substr(1)),
                       by_definition(a.substr(1), b.substr(1))});
}
} // namespace

TEST_CASE("The distance of two words is the fewest letters to change, up to a limit") {
  std::mt19937 random(1);
  const auto word = [&] {
    std::string out(random() % 7, 'a');
    for (char& c : out) c = static_cast<char>('a' + random() % 3);
    return out;
  };
  for (int i = 0; i < 3000; ++i) {
    const std::string a = word(), b = word();
    const int limit = static_cast<int>(random() % 5), real = by_definition(a, b);
    INFO(a << ' ' << b << ' ' << limit);
    const int found = edits(a, b, limit);
    CHECK((real <= limit ? found == real : found > limit));
  }
}

TEST_CASE("The nearest name is close enough to be meant, the first of equals, and none where nothing is") {
  const NameSet names{"amount", "element", "finding", "id"};
  CHECK(names.has("amount"));
  CHECK_FALSE(names.has("amoun"));
  CHECK_FALSE(names.has("zebra"));
  CHECK(names.nearest("amuont") == "amount");
  CHECK(names.nearest("elemnt") == "element");
  CHECK(names.nearest("ie") == "id");
  CHECK(names.nearest("xyz").empty());
  CHECK(names.nearest("").empty());
  CHECK(names.nearest(std::string(65, 'a')).empty());
  CHECK(NameSet{"abcx", "abcy"}.nearest("abcz") == "abcx");
}
