// Interest, forfeitures and remedies: sums worked out by hand from the words of the laws named.

#include "support/small_law.h"

using namespace wearline;
using namespace wearline::test;

namespace {

Money money(const std::string& text) { return *Money::parse(text); }

/// "low likely high", and "+" if it may be more.
std::string interest(const std::string& rule, const std::string& members, const std::string& today = "2026-11-25") {
  const Small small(pack_of(R"("interest":[{"id":"i","source":["s"],"text":"x","owed":true,)" + rule + "}]"), members,
                    today);
  const InterestResult& r = small.law->interest();
  std::string out = r.owed.low().plain();
  if (!r.owed.exact()) out += " " + r.owed.likely().plain() + " " + r.owed.high().plain();
  return out + (r.at_least ? " +" : "");
}
std::string held(const std::string& from, const std::string& to, const std::string& amount = "1000.00",
                 const std::string& more = R"(,"interestPaid":"0.00")") {
  return R"("tenancy":{"began":")" + from + R"("},"deposits":[{"amount":")" + amount + R"(","paid":")" + from + "\"" +
         more + R"(}],"statement":{"refundPaid":"1.00","refundSent":")" + to + "\"}";
}
const std::string to_refund = R"("starts":"deposit-paid","ends":"refund-sent")";

} // namespace

TEST_CASE("Five percent simple for four years is a fifth, leap year or not", "[law]") {
  // Ohio Rev. Code § 5321.16(A): five per cent a year.
  const std::string rule = R"("rate":{"fixed":"0.05"},"method":"simple","counts":"day",)" + to_refund;
  CHECK(interest(rule, held("2022-07-31", "2026-07-31")) == "200.00");
  CHECK(interest(rule, held("2025-07-31", "2025-12-31")) == "20.96"); // 153 of 365 days: 50 x 153 / 365
  CHECK(interest(rule, held("2023-08-01", "2024-01-31")) == "25.00"); // 183 of 366 days
  CHECK(interest(rule, held("2026-07-31", "2026-07-31")) == "0.00");
}

TEST_CASE("Interest only on the part above a month's rent or fifty dollars", "[law]") {
  // Ohio Rev. Code § 5321.16(A): on the part over fifty dollars or one month's rent, whichever is greater; six months
  // or more.
  const std::string rule =
      R"("rate":{"fixed":"0.05"},"method":"simple","counts":"day","minimumMonths":6,"onOver":{"months":"1","amount":"50.00"},)" +
      to_refund;
  const auto rent = [](const std::string& r, const std::string& to) {
    return R"("tenancy":{"began":"2024-07-31","monthlyRent":")" + r +
           R"("},"deposits":[{"amount":"1500.00","paid":"2024-07-31","interestPaid":"0.00"}],"statement":{"refundPaid":"1.00","refundSent":")" +
           to + "\"}";
  };
  CHECK(interest(rule, rent("1000.00", "2026-07-31")) == "50.00");
  CHECK(interest(rule, rent("1500.00", "2026-07-31")) == "0.00");
  CHECK(interest(rule, rent("1000.00", "2025-01-30")) == "0.00");
  CHECK(interest(rule, rent("1000.00", "2025-01-31")) == "12.60"); // 184 of 365 days of 25.00
}

TEST_CASE("Whole months, whole years, and Minnesota's calendar months", "[law]") {
  const auto rule = [](const std::string& counts) {
    return R"("rate":{"fixed":"0.01"},"method":"simple","counts":")" + counts + "\"," + to_refund;
  };
  CHECK(interest(rule("whole-month"), held("2024-07-15", "2026-08-14")) == "20.00"); // 24 months
  CHECK(interest(rule("whole-month"), held("2024-07-15", "2026-08-15")) == "20.83");
  CHECK(interest(rule("whole-year"), held("2024-07-15", "2026-07-14")) == "10.00");
  // Minn. Stat. § 504B.178, subd. 2: from the first day of the next month to the last day of the month of the refund.
  CHECK(interest(rule("calendar-month"), held("2024-07-15", "2026-07-02")) == "20.00");
  CHECK(interest(rule("calendar-month"), held("2024-07-15", "2026-08-02")) == "20.83");
}

TEST_CASE("Compound interest is credited in whole cents on each anniversary", "[law]") {
  const std::string rule = R"("rate":{"fixed":"0.05"},"method":"compound-yearly","counts":"day",)" + to_refund;
  CHECK(interest(rule, held("2023-07-31", "2026-07-31")) == "157.63");           // 50.00, 52.50, 55.13
  CHECK(interest(rule, held("2023-07-31", "2025-07-31", "999.99")) == "102.50"); // 50.00 on 999.99, then 52.50
}

TEST_CASE("A rate for each year is taken day by day; a year without one leaves the sum open", "[law]") {
  const std::string rule =
      R"("rate":{"years":{"2024":"0.02","2025":"0.01"},"by":"calendar-year"},"method":"simple","counts":"day",)" +
      to_refund;
  CHECK(interest(rule, held("2025-01-01", "2025-12-31")) == "9.97");  // 364 of 365 days
  CHECK(interest(rule, held("2024-07-01", "2025-07-01")) == "15.04"); // 184 of 365 at 2 %, 181 of 365 at 1 %
  // 2026 is not in the table: to today, November 25, nothing or up to its highest rate, 328 of 365 days at 2 %: 17.97.
  CHECK(interest(rule, held("2025-01-01", "2027-01-01")) == "10.00 10.00 27.97 +");
  const std::string start =
      R"("rate":{"years":{"2024":"0.02","2025":"0.01"},"by":"tenancy-start"},"method":"simple","counts":"day",)" +
      to_refund;
  CHECK(interest(start, held("2024-07-01", "2026-07-01")) == "40.00");
}

TEST_CASE("The bank's rate is asked for, and kept within the law's limits", "[law]") {
  const auto rule = [](const std::string& rate) {
    return R"("rate":)" + rate + R"(,"method":"simple","counts":"day",)" + to_refund;
  };
  const auto bank = [](const std::string& rate) {
    return held("2025-07-31", "2026-07-31", "1000.00", R"(,"interestPaid":"0.00","bankRate":")" + rate + "\"");
  };
  const std::string unknown = held("2025-07-31", "2026-07-31");
  CHECK(interest(rule(R"({"bank":true})"), bank("0.02")) == "20.00");
  CHECK(interest(rule(R"({"bank":true})"), unknown) == "0.00 +");
  CHECK(interest(rule(R"({"bank":true,"less":"0.01"})"), bank("0.025")) ==
        "15.00"); // N.Y. Gen. Oblig. Law § 7-103(2): one percent for the landlord
  CHECK(interest(rule(R"({"bank":true,"less":"0.01"})"), bank("0.005")) == "0.00");
  CHECK(interest(rule(R"({"bank":true,"atMost":"0.05"})"), unknown) ==
        "0.00 0.00 50.00"); // G.L. c. 186, § 15B(3)(b): five percent, or the lesser sum the bank paid
  CHECK(interest(rule(R"({"bank":true,"atMost":"0.05"})"), bank("0.06")) == "50.00");
  CHECK(interest(rule(R"({"bank":true,"atLeast":"0.015"})"), unknown) ==
        "15.00 +"); // Md. Code, Real Prop. § 8-203(e): at least 1.5 %
  CHECK(interest(rule(R"({"bank":true,"share":"0.75","orFixed":"0.05"})"), bank("0.04")) ==
        "30.00 30.00 50.00"); // Fla. Stat. § 83.49(1)(b)
}

TEST_CASE("Interest that was paid comes off; where that is not known, nothing may be owed", "[law]") {
  const std::string rule = R"("rate":{"fixed":"0.05"},"method":"simple","counts":"day",)" + to_refund;
  CHECK(interest(rule, held("2024-07-31", "2026-07-31", "1000.00", R"(,"interestPaid":"30.00")")) == "70.00");
  CHECK(interest(rule, held("2024-07-31", "2026-07-31", "1000.00", R"(,"interestPaid":"300.00")")) == "0.00");
  CHECK(interest(rule, held("2024-07-31", "2026-07-31", "1000.00", "")) == "0.00 100.00 100.00");
}

TEST_CASE("Interest that came with the refund is counted with it, and not once more", "[law]") {
  const std::string rule = R"("rate":{"fixed":"0.05"},"method":"simple","counts":"day",)" + to_refund;
  const auto paid = [&](const std::string& refund, const std::string& rest = "") {
    std::string c = held("2024-07-31", "2026-07-31", "1000.00", R"(,"interestPaid":"30.00")");
    const std::string was = R"("refundPaid":"1.00")";
    return c.replace(c.find(was), was.size(), R"("refundPaid":")" + refund + "\"" + rest);
  };
  // 1,030.00 is the deposit and the 30.00 on top; so is 930.00 where 100.00 was kept.
  CHECK(interest(rule, paid("1030.00")) == "100.00");
  CHECK(interest(rule, paid("930.00", R"(,"statedTotal":"100.00")")) == "100.00");
  CHECK(interest(rule, paid("1000.00")) == "70.00");
}

TEST_CASE("Interest runs to today while nothing has come back, and widens with the dates", "[law]") {
  const std::string rule = R"("rate":{"fixed":"0.05"},"method":"simple","counts":"day",)" + to_refund;
  const std::string nothing_back =
      R"("tenancy":{"began":"2024-07-31"},"deposits":[{"amount":"1000.00","interestPaid":"0.00"}],"statement":{"refundPaid":"0.00"})";
  CHECK(interest(rule, nothing_back, "2026-07-31") ==
        "100.00"); // paid when the tenancy began, as nothing else is known
  CHECK(interest(rule, held("2022", "2026-12-31", "1000.00"), "2026-12-31") ==
        "200.00 224.93 249.86"); // likely from 2 July 2022, the middle of the year
  CHECK(interest(R"("when":{"fact":"furnished"},"whenText":"x",)" + rule, held("2024-07-31", "2026-07-31")) ==
        "0.00 0.00 100.00");
  CHECK(interest(R"("startsAfterMonths":24,"minimumMonths":24,)" + rule, held("2023-07-31", "2026-07-31")) ==
        "50.00"); // 68 P.S. § 250.511b: from the third year
}

namespace {

/// "least most" for a case with a deposit of 1,000.00, one damage line of 400.00 of which `fair` is fair, and what was
/// paid back.
std::string award(const std::string& rules, const std::string& fair, const std::string& paid_back,
                  const std::string& members = "", const std::string& most_fair = "") {
  Small small(
      pack_of(rules),
      R"("tenancy":{"ended":"2026-07-31","possessionReturned":"2026-07-31","monthlyRent":"900.00"},"deposits":[{"amount":"1000.00"}],)" +
          members + R"("lines":[{"kind":"damage","amount":"400.00"}])");
  Reckoning r;
  r.deposit = money("1000.00");
  r.paid_back = money(paid_back);
  r.fair = {Range<Money>(money(fair), money(fair), money(most_fair.empty() ? fair : most_fair))};
  small.law->settle(r);
  return small.law->award().least.plain() + " " + small.law->award().most.plain();
}
std::string remedy(const std::string& members, const std::string& when = R"({"fact":"refund-short"})") {
  return R"("remedies":[{"id":"r","source":["s"],"text":"x","when":)" + when +
         R"(,"whenText":"x","fees":"none","costs":false,)" + members + "}]";
}

} // namespace

TEST_CASE("Three times what was wrongly kept contains the sum itself; twice on top does not", "[law]") {
  // S.C. Code § 27-40-410(b): an amount equal to three times the sum wrongfully withheld. 400 kept, 100 fair: 300 due.
  CHECK(award(remedy(R"("multiplier":"3","base":"wrongfully-withheld","includesSumDue":true,"needs":"none")"), "100.00",
              "600.00") == "900.00 900.00");
  // A.R.S. § 33-1321(E): the money due together with damages of twice the amount wrongfully withheld.
  CHECK(award(remedy(R"("multiplier":"2","base":"wrongfully-withheld","includesSumDue":false,"needs":"none")"),
              "100.00", "600.00") == "900.00 900.00");
  // La. R.S. 9:3252(A): on top, the greater of 300 dollars or twice the sum.
  CHECK(
      award(
          remedy(
              R"("multiplier":"2","base":"wrongfully-withheld","includesSumDue":false,"least":"300.00","needs":"none")"),
          "300.00", "600.00") == "400.00 400.00");
  // Tex. Prop. Code § 92.109(a): 100 dollars and three times the sum, if the landlord acted in bad faith.
  CHECK(
      award(
          remedy(
              R"("multiplier":"3","base":"wrongfully-withheld","includesSumDue":true,"fixed":"100.00","needs":"bad-faith")"),
          "100.00", "600.00") == "300.00 1000.00");
  // Nothing wrongly kept: nothing to multiply.
  CHECK(award(remedy(R"("multiplier":"3","base":"wrongfully-withheld","includesSumDue":true,"needs":"none")"), "400.00",
              "600.00") == "0.00 0.00");
}

TEST_CASE("A multiple of the whole deposit counts what was paid back", "[law]") {
  // Residential Tenancy Act (BC) s 38(6), Policy Guideline 17: twice the deposit, less what was returned.
  CHECK(award(remedy(R"("multiplier":"2","base":"whole-deposit","includesSumDue":true,"needs":"none")"), "0.00",
              "600.00") == "1400.00 1400.00");
  // Cal. Civ. Code § 1950.5(m): up to twice the security on top of actual damages.
  CHECK(
      award(remedy(R"("multiplier":"2","base":"whole-deposit","includesSumDue":false,"upTo":true,"needs":"bad-faith")"),
            "100.00", "600.00") == "300.00 2300.00");
  // RCW 59.18.280(2): up to two times; whether that contains the sum due is not said.
  CHECK(award(remedy(R"("multiplier":"2","base":"whole-deposit","includesSumDue":null,"upTo":true,"needs":"wilful")"),
              "0.00", "600.00") == "400.00 2400.00");
  // N.J.S.A. 46:8-21.1 and N.H. RSA 540-A:8: lawful charges come off before, or before or after, the doubling.
  CHECK(
      award(
          remedy(
              R"("multiplier":"2","base":"whole-deposit","chargesOff":"before","includesSumDue":true,"needs":"none")"),
          "100.00", "600.00") == "1200.00 1200.00");
  CHECK(
      award(
          remedy(
              R"("multiplier":"2","base":"whole-deposit","chargesOff":"either","includesSumDue":true,"needs":"none")"),
          "100.00", "600.00") == "1200.00 1300.00");
}

TEST_CASE("Rent, what was kept in all, and a cap", "[law]") {
  // Iowa Code § 562A.12(7): up to twice the monthly rent on top.
  CHECK(
      award(remedy(R"("multiplier":"2","base":"monthly-rent","includesSumDue":false,"upTo":true,"needs":"bad-faith")"),
            "100.00", "600.00") == "300.00 2100.00");
  // MCL 554.613(2): double the amount of the deposit retained, fair or not.
  CHECK(award(remedy(R"("multiplier":"2","base":"withheld","includesSumDue":true,"needs":"none")"), "100.00",
              "600.00") == "800.00 800.00");
  // Neb. Rev. Stat. § 76-1416(3): a month's rent, or twice the deposit if that is less, on top.
  CHECK(
      award(
          remedy(
              R"("multiplier":"1","base":"monthly-rent","includesSumDue":false,"cap":{"times":"0.5","of":"whole-deposit"},"needs":"wilful")"),
          "100.00", "600.00") == "300.00 800.00");
}

TEST_CASE("Sums on top add up, others are alternatives", "[law]") {
  const std::string two =
      R"("remedies":[{"id":"a","source":["s"],"text":"x","multiplier":"1","base":"wrongfully-withheld","includesSumDue":false,"upTo":false,"needs":"none","fees":"none","costs":false},)"
      R"({"id":"b","source":["s"],"text":"x","multiplier":null,"base":"none","fixed":"500.00","includesSumDue":false,"upTo":true,"needs":"bad-faith","fees":"none","costs":false},)"
      R"({"id":"c","source":["s"],"text":"x","multiplier":"2","base":"wrongfully-withheld","includesSumDue":true,"upTo":false,"needs":"none","fees":"none","costs":false}])";
  // 300 due; twice is 600 in all; on top 300 for certain, and up to 500 more (Minn. Stat. § 504B.178, subds. 4 and 7,
  // have two on top).
  CHECK(award(two, "100.00", "600.00") == "900.00 1400.00");
}

TEST_CASE("A late statement forfeits the deductions; what is due is shown both ways", "[law]") {
  const std::string rules =
      R"("duties":[{"id":"d","source":["s"],"text":"x","who":"landlord","duty":"itemize","legs":[{"count":30,"unit":"calendar-day","after":["tenancy-ended"]}],"metBy":"posting","ifMissed":["forfeits-deductions"]}],)"
      R"("forfeits":[{"id":"f","source":["s"],"text":"x","when":{"duty":"d","is":"missed"},"whenText":"x","loses":"all-deductions","needs":"none"}])";
  const std::string late = R"("statement":{"sent":"2026-09-01"},)", timely = R"("statement":{"sent":"2026-08-31"},)";
  CHECK(award(rules, "400.00", "600.00", late) == "400.00 400.00");
  CHECK(award(rules, "400.00", "600.00", timely) == "0.00 0.00");
  CHECK(award(rules, "400.00", "600.00", "") == "0.00 400.00"); // when it was sent is not known
  const std::string in_bad_faith =
      R"("forfeits":[{"id":"f","source":["s"],"text":"x","when":{"fact":"refund-came","is":false},"whenText":"x","loses":"all-deductions","needs":"bad-faith"}])";
  CHECK(award(in_bad_faith, "400.00", "0.00", R"("statement":{"refundPaid":"0.00"},)") == "600.00 1000.00");
}

TEST_CASE("Losing the right to keep money for damage leaves rent and fees", "[law]") {
  Small small(
      pack_of(
          R"("forfeits":[{"id":"f","source":["s"],"text":"x","when":{"event":"tenancy-ended","known":true},"whenText":"x","loses":"damage-deductions","needs":"none"}])"),
      R"("tenancy":{"ended":"2026-07-31"},"deposits":[{"amount":"1000.00"}],"lines":[{"kind":"damage","amount":"300.00"},{"kind":"rent","amount":"200.00"}])");
  Reckoning r;
  r.deposit = money("1000.00");
  r.paid_back = money("500.00");
  r.fair = {Range<Money>(money("300.00")), Range<Money>(money("200.00"))};
  small.law->settle(r);
  CHECK(small.law->award().sum_due.likely() == Money());
  CHECK(small.law->award().sum_due_forfeited.likely() == money("300.00"));
  CHECK(small.law->award().forfeited);
}

TEST_CASE("An uncertain fair sum gives a range from the least due to the most", "[law]") {
  CHECK(award(remedy(R"("multiplier":"2","base":"wrongfully-withheld","includesSumDue":true,"needs":"none")"), "100.00",
              "600.00", "", "400.00") == "0.00 600.00");
}

TEST_CASE("Without the deposit nothing is reckoned", "[law]") {
  Small small(pack_of(remedy(R"("multiplier":"2","base":"wrongfully-withheld","includesSumDue":true,"needs":"none")")),
              R"("lines":[{"kind":"damage","amount":"400.00"}])");
  Reckoning r;
  r.fair = {Range<Money>(money("400.00"))};
  small.law->settle(r);
  CHECK_FALSE(small.law->award().known);
}
