#include "values/money.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

using namespace wearline;

TEST_CASE("Money reads decimal strings and nothing else") {
  CHECK(Money::parse("1240.00") == Money::cents(124000));
  CHECK(Money::parse("1240") == Money::cents(124000));
  CHECK(Money::parse("0.5") == Money::cents(50));
  CHECK(Money::parse("9999999999.99") == Money::cents(Money::max_cents));
  for (const char* bad : {"", "-1.00", "1,240.00", "1.234", "1.", ".50", "1.2x", "1.x2", "NaN", "1e3", "12345678901.00",
                          " 1.00", "1.00 ", "0x10", "$5"})
    CHECK_FALSE(Money::parse(bad).has_value());
}

TEST_CASE("A share is rounded half up to the cent") {
  // Ontario tribunal, SWL-20228-18, 2018 CanLII 141442: 30 % of 1,872.80 is 561.84.
  CHECK(Money::parse("1872.80")->part({3, 10}) == Money::cents(56184));
  CHECK(Money::cents(1).part({1, 2}) == Money::cents(1));
  CHECK(Money::cents(-1).part({1, 2}) == Money::cents(-1));
  CHECK(Money::cents(100).part({1, 3}) == Money::cents(33));
  CHECK(Money::cents(Money::max_cents).part({1'000'000, 1'000'000}) == Money::cents(Money::max_cents));
}

TEST_CASE("Money is written plainly for files and grouped for people") {
  CHECK(Money::cents(124000).plain() == "1240.00");
  CHECK(Money::cents(123456789).grouped() == "1,234,567.89");
  CHECK(Money::cents(-310).plain() == "-3.10");
  CHECK(Money::cents(99999).grouped() == "999.99");
}

TEST_CASE("A share is the nearest cent, the one away from zero where two are as near") {
  // The definition, in whole numbers: |2 (result · den - cents · num)| <= den, and a tie goes away from zero.
  std::mt19937_64 random(1);
  const auto below = [&](std::int64_t n) { return std::uniform_int_distribution<std::int64_t>(0, n - 1)(random); };
  int ties = 0, wide = 0;
  for (int i = 0; i < 20'000; ++i) {
    const bool large = i % 2 == 0;
    const std::int64_t den = 1 + below(large ? 40'000'000'000 : 40), num = below(den + 1);
    const std::int64_t cents = (i % 3 == 0 ? -1 : 1) * below(large ? Money::max_cents : 1000);
    const std::int64_t got = Money::cents(cents).part({num, den}).in_cents();
    const __int128 off = (static_cast<__int128>(got) * den - static_cast<__int128>(cents) * num) * 2;
    const __int128 size = off < 0 ? -off : off;
    if (size > den || (size == den && (off > 0) != (got > 0))) FAIL(cents << " * " << num << " / " << den);
    ties += size == den;
    wide += static_cast<__int128>(cents) * num != static_cast<std::int64_t>(static_cast<__int128>(cents) * num);
  }
  CHECK(ties > 50);
  CHECK(wide > 1000);
}

TEST_CASE("What is written is read back, and groups are of three digits") {
  std::mt19937_64 random(2);
  for (int i = 0; i < 5'000; ++i) {
    std::int64_t cents = static_cast<std::int64_t>(random() % 1'000'000'000'000ULL);
    for (int k = i % 12; k > 0; --k) cents /= 10;
    const Money money = Money::cents(cents);
    CHECK(Money::parse(money.plain()) == money);
    std::string grouped = money.grouped();
    for (std::size_t n = 1, at = grouped.size() - 3; at-- > 0; ++n)
      if ((grouped[at] == ',') != (n % 4 == 0)) FAIL(grouped);
    grouped.erase(std::remove(grouped.begin(), grouped.end(), ','), grouped.end());
    CHECK(grouped == money.plain());
    if (cents != 0) CHECK(Money::cents(-cents).plain() == "-" + money.plain());
  }
  CHECK(Money().plain() == "0.00");
}
