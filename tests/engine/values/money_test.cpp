#include "values/money.h"

#include <catch2/catch.hpp>

using namespace wearline;

TEST_CASE("Money reads decimal strings and nothing else") {
  CHECK(Money::parse("1240.00") == Money::cents(124000));
  CHECK(Money::parse("1240") == Money::cents(124000));
  CHECK(Money::parse("0.5") == Money::cents(50));
  CHECK(Money::parse("9999999999.99") == Money::cents(Money::max_cents));
  for (const char* bad :
       {"", "-1.00", "1,240.00", "1.234", "1.", ".50", "NaN", "1e3", "12345678901.00", " 1.00", "1.00 ", "0x10", "$5"})
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
