// Duties with dates: whether each was done in time, and what is asked where that is not known.

#include "support/real_rules.h"
#include "support/small_law.h"

using namespace wearline;
using namespace wearline::test;

namespace {

/// A duty of the landlord to send a statement, with members of its own ("\"metBy\":...,\"legs\":...").
std::string statement_deadline(const std::string& members) {
  return R"({"id":"d","source":["s"],"text":"x","who":"landlord","duty":"itemize","ifMissed":["none"],)" + members +
         "}";
}
const std::string thirty_days =
    R"("legs":[{"count":30,"unit":"calendar-day","after":["tenancy-ended","possession-returned"],"take":"later"}])";

/// "state last", then the names asked for.
std::string judged(const std::string& deadline, const std::string& members, const std::string& today = "2026-11-25") {
  const Small small(pack_of("\"duties\":[" + deadline + "]"), members, today);
  const DeadlineResult& r = small.law->deadlines().front();
  std::string out = state_name(r.state) + " " + said(r.last) + (r.first ? " from " + said(r.first) : "");
  for (const Ask& ask : r.grounds.unknown)
    out += " ?" + (ask.kind == Ask::Kind::fact ? small.law->view().info(FactId{ask.which}).id
                                               : small.law->view().info(EventId{ask.which}).id);
  return out;
}
std::string tenancy(const std::string& more = "") {
  return R"("tenancy":{"ended":"2026-07-31","possessionReturned":"2026-07-31"})" + more;
}

} // namespace

TEST_CASE("A statement is in time on the last day and late on the next", "[law]") {
  const std::string deadline = statement_deadline(R"("metBy":"posting",)" + thirty_days);
  CHECK(judged(deadline, tenancy(R"(,"statement":{"sent":"2026-08-31"})")) == "met 2026-08-31");
  CHECK(judged(deadline, tenancy(R"(,"statement":{"sent":"2026-09-01"})")) == "missed 2026-08-31");
}

TEST_CASE("The later of two events starts the clock", "[law]") {
  const std::string deadline = statement_deadline(R"("metBy":"posting",)" + thirty_days);
  CHECK(
      judged(
          deadline,
          R"("tenancy":{"ended":"2026-07-31","possessionReturned":"2026-08-04"},"statement":{"sent":"2026-09-03"})") ==
      "met 2026-09-03");
}

TEST_CASE("A statement that did not come is missed once the last day is past", "[law]") {
  const std::string deadline = statement_deadline(R"("metBy":"posting",)" + thirty_days);
  CHECK(judged(deadline, tenancy(R"(,"statement":{"came":false})"), "2026-09-01") == "missed 2026-08-31");
  CHECK(judged(deadline, tenancy(R"(,"statement":{"came":false})"), "2026-08-31") == "open 2026-08-31");
  CHECK(judged(deadline, tenancy(), "2026-09-01") == "cannot-tell 2026-08-31 ?statement-sent");
  CHECK(judged(deadline, tenancy(), "2026-08-31") == "open 2026-08-31");
}

TEST_CASE("A landlord who has not sent a statement yet has not sent it", "[law]") {
  const std::string deadline = statement_deadline(R"("metBy":"posting",)" + thirty_days);
  CHECK(judged(deadline, tenancy(R"(,"side":"landlord","statement":{"dated":"2026-08-20"})"), "2026-09-01") ==
        "missed 2026-08-31");
  CHECK(judged(deadline, tenancy(R"(,"side":"landlord")"), "2026-08-20") == "open 2026-08-31");
}

TEST_CASE("A missing date leaves open only what hangs on it", "[law]") {
  const std::string deadline = statement_deadline(R"("metBy":"posting",)" + thirty_days);
  const std::string unsure = R"("tenancy":{"ended":"2026-07-31"},)";
  CHECK(judged(deadline, unsure + R"("statement":{"sent":"2026-08-20"})") == "met 2026-08-31..open");
  CHECK(judged(deadline, unsure + R"("statement":{"sent":"2026-09-05"})") ==
        "cannot-tell 2026-08-31..open ?possession-returned");
  const std::string month = R"("tenancy":{"ended":"2026-07","possessionReturned":"2026-07"},)";
  CHECK(judged(deadline, month + R"("statement":{"sent":"2026-07-20"})") == "met 2026-07-31..2026-08-31");
  CHECK(judged(deadline, month + R"("statement":{"sent":"2026-09-01"})") == "missed 2026-07-31..2026-08-31");
  CHECK(judged(deadline, month + R"("statement":{"sent":"2026-08-15"})") ==
        "cannot-tell 2026-07-31..2026-08-31 ?tenancy-ended ?possession-returned");
}

TEST_CASE("Where arrival counts, sending in time is not enough", "[law]") {
  const std::string deadline = statement_deadline(R"("metBy":"delivery",)" + thirty_days);
  CHECK(judged(deadline, tenancy(R"(,"statement":{"sent":"2026-08-28","received":"2026-08-31"})")) == "met 2026-08-31");
  CHECK(judged(deadline, tenancy(R"(,"statement":{"sent":"2026-08-28","received":"2026-09-01"})")) ==
        "missed 2026-08-31");
  CHECK(judged(deadline, tenancy(R"(,"statement":{"sent":"2026-08-28"})")) ==
        "cannot-tell 2026-08-31 ?statement-received");
  CHECK(judged(deadline, tenancy(R"(,"statement":{"sent":"2026-09-01"})")) == "missed 2026-08-31");
  CHECK(judged(deadline, tenancy(R"(,"statement":{"sent":"2026-08-31","how":"personal-delivery"})")) ==
        "met 2026-08-31");
}

TEST_CASE("Where the law is silent, sending in time is taken to be enough, and a late arrival is noted", "[law]") {
  const std::string deadline = statement_deadline(R"("metBy":"unknown",)" + thirty_days);
  const Small small(pack_of("\"duties\":[" + deadline + "]"),
                    tenancy(R"(,"statement":{"sent":"2026-08-31","received":"2026-09-03"})"));
  CHECK(small.law->deadlines().front().state == DeadlineState::met);
  CHECK(small.law->deadlines().front().reason == DeadlineReason::arrival_open);
}

TEST_CASE("A second clock may end the time later, if its event happens", "[law]") {
  // Wyo. Stat. § 1-21-1208(a): within 30 days after the end or 15 days after the new address, whichever is later.
  const std::string deadline = statement_deadline(
      R"("metBy":"posting","take":"later","legs":[{"count":30,"unit":"calendar-day","after":["tenancy-ended"]},)"
      R"({"count":15,"unit":"calendar-day","after":["forwarding-address-given"]}])");
  const auto given = [](const std::string& when) {
    return R"("tenancy":{"ended":"2026-07-31",)" + when + R"(},"statement":{"sent":"2026-09-02"})";
  };
  CHECK(judged(deadline, given(R"("forwardingAddressGiven":"2026-08-20")")) == "met 2026-09-04");
  CHECK(judged(deadline, given(R"("forwardingAddressGiven":"2026-07-20")")) == "missed 2026-08-31");
  CHECK(
      judged(
          deadline,
          R"("tenancy":{"ended":"2026-07-31"},"circumstances":{"address-given":false},"statement":{"sent":"2026-09-02"})") ==
      "missed 2026-08-31");
  CHECK(judged(deadline, R"("tenancy":{"ended":"2026-07-31"},"statement":{"sent":"2026-09-02"})") ==
        "cannot-tell 2026-08-31..open ?forwarding-address-given");
}

TEST_CASE("The earlier of two clocks ends the time, even if one may not run", "[law]") {
  // W. Va. Code § 37-6A-1: 60 days after the end, or 45 after a new tenant moves in, if that is sooner.
  const std::string deadline = statement_deadline(
      R"("metBy":"posting","take":"earlier","legs":[{"count":60,"unit":"calendar-day","after":["tenancy-ended"]},)"
      R"({"count":45,"unit":"calendar-day","after":["new-tenant-in"]}])");
  CHECK(
      judged(deadline,
             tenancy(R"(,"events":[{"what":"new-tenant-in","on":"2026-08-03"}],"statement":{"sent":"2026-09-18"})")) ==
      "missed 2026-09-17");
  CHECK(judged(deadline, tenancy(R"(,"circumstances":{"new-tenant-in":false},"statement":{"sent":"2026-09-18"})")) ==
        "met 2026-09-29");
  CHECK(judged(deadline, tenancy(R"(,"statement":{"sent":"2026-09-18"})")) ==
        "cannot-tell 2026-09-14..2026-09-29 ?new-tenant-in");
  CHECK(judged(deadline, tenancy(R"(,"statement":{"sent":"2026-09-30"})")) == "missed 2026-09-14..2026-09-29");
}

TEST_CASE("An event that may have come before the known one can only start the earlier clock sooner", "[law]") {
  const std::string deadline = statement_deadline(
      R"("metBy":"posting","legs":[{"count":30,"unit":"calendar-day","after":["forwarding-address-given","new-tenant-in"],"take":"earlier"}])");
  // The new tenant came on 10 August, a Monday: 30 days later is 9 September, and never later than that.
  const std::string known =
      R"(,"events":[{"what":"new-tenant-in","on":"2026-08-10"}],"statement":{"sent":"2026-09-10"})";
  CHECK(judged(deadline, tenancy(known)).find("..2026-09-09") != std::string::npos);
}

TEST_CASE("A clock that needs every event does not start without one", "[law]") {
  // A.R.S. § 33-1321(D): the end, possession, and a demand by the tenant.
  const std::string deadline = statement_deadline(
      R"("metBy":"posting","needsAll":true,"legs":[{"count":14,"unit":"business-day","after":["tenancy-ended","possession-returned","tenant-demand"]}])");
  CHECK(judged(deadline, tenancy(R"(,"statement":{"came":false})")) == "not-needed none");
  CHECK(judged(deadline,
               tenancy(R"(,"statement":{"came":false},"events":[{"what":"tenant-demand","on":"2026-08-03"}])")) ==
        "missed 2026-08-21");
}

TEST_CASE("A clock that has not started still says how long it runs", "[law]") {
  // Miss. Code Ann. § 89-8-21(3): 45 days after the end, possession and a demand.
  const auto result = assessed(R"({"wearline":1,"jurisdiction":"US-MS",
      "tenancy":{"began":"2024-07-01","ended":"2026-06-30","possessionReturned":"2026-06-30"},
      "deposits":[{"amount":"900.00"}],"lines":[{"text":"Cleaning","amount":"90.00"}],"events":[]})");
  const auto& dates = result.at("dates");
  const auto refund = std::find_if(dates.begin(), dates.end(), [](const auto& d) { return d.at("id") == "refund"; });
  REQUIRE(refund != dates.end());
  CHECK(refund->at("state") == "not-needed");
  CHECK(refund->at("text").template get<std::string>().substr(0, 8) == "45 days ");
}

TEST_CASE("The lease's own days count, up to what the law allows", "[law]") {
  // Colo. Rev. Stat. § 38-12-103(1): as the lease says, at most sixty days.
  const std::string deadline = statement_deadline(
      R"("metBy":"posting","legs":[{"count":60,"countFrom":"lease-return-days","unit":"calendar-day","after":["tenancy-ended"]}])");
  CHECK(judged(deadline, tenancy(R"(,"circumstances":{"lease-return-days":45},"statement":{"sent":"2026-09-14"})")) ==
        "met 2026-09-14");
  CHECK(judged(deadline, tenancy(R"(,"circumstances":{"lease-return-days":90},"statement":{"sent":"2026-09-30"})")) ==
        "missed 2026-09-29");
  CHECK(judged(deadline, tenancy(R"(,"statement":{"sent":"2026-09-14"})")) ==
        "cannot-tell 2026-07-31..2026-09-29 ?lease-return-days");
}

TEST_CASE("A tenant's own time limit is open until it ends", "[law]") {
  const std::string deadline =
      R"({"id":"d","source":["s"],"text":"x","who":"tenant","duty":"object","ifMissed":["tenant-loses-right"],"tenantLoses":true,"metBy":"posting",)"
      R"("legs":[{"count":15,"unit":"calendar-day","after":["statement-received"]}]})";
  const std::string came = R"("statement":{"received":"2026-09-01"})";
  CHECK(judged(deadline, came, "2026-09-10") == "open 2026-09-16");
  CHECK(judged(deadline, came, "2026-09-17") == "missed 2026-09-16");
  CHECK(judged(deadline, came + R"(,"events":[{"what":"tenant-objected","on":"2026-09-16"}])", "2026-10-01") ==
        "met 2026-09-16");
}

TEST_CASE("Not before a day: doing it too early breaks the rule, waiting does not", "[law]") {
  const std::string deadline =
      R"({"id":"d","source":["s"],"text":"x","who":"landlord","duty":"hold-inspection","ifMissed":["none"],"metBy":"unknown",)"
      R"("legs":[{"count":2,"unit":"week","after":["tenancy-ended"],"direction":"before","bound":"earliest"}]})";
  CHECK(judged(deadline, tenancy(R"(,"events":[{"what":"inspection-held","on":"2026-07-17"}])")) ==
        "met none from 2026-07-17");
  CHECK(judged(deadline, tenancy(R"(,"events":[{"what":"inspection-held","on":"2026-07-16"}])")) ==
        "missed none from 2026-07-17");
  const std::string none = tenancy(R"(,"records":{"preMoveOutInspection":{"held":false}})");
  CHECK(judged(deadline, none, "2026-07-01") == "open none from 2026-07-17");
  CHECK(judged(deadline, none, "2026-07-20") == "open none from 2026-07-17");
  // Once the day it had to come before is past, nothing is to be done.
  CHECK(judged(deadline, none, "2026-08-01") == "not-needed none from 2026-07-17");
}

namespace {
/// Two duties that stand in for each other: by `first_leg` where the home is furnished, by `second_leg` where it is
/// not.
std::string two_ways(const std::string& first_days, const std::string& second_days) {
  const auto one = [](const std::string& id, const std::string& is, const std::string& days) {
    return R"({"id":")" + id +
           R"(","source":["s"],"text":"x","who":"landlord","duty":"itemize","ifMissed":["owes-penalty"],)"
           R"("metBy":"posting","when":{"fact":"furnished","is":)" +
           is + R"(},"whenText":"y","legs":[{"count":)" + days +
           R"(,"unit":"calendar-day","after":["possession-returned"]}]})";
  };
  return one("a", "true", first_days) + "," + one("b", "false", second_days);
}
} // namespace

TEST_CASE("When every alternative of a duty is past it is missed, whichever applies", "[law]") {
  const std::string silent = tenancy(R"(,"statement":{"came":false})");
  CHECK(judged(two_ways("14", "14"), silent, "2026-08-15") == "missed 2026-08-14");
  CHECK(judged(two_ways("14", "30"), silent, "2026-09-01") == "missed 2026-08-14..2026-08-31");
  // Between the two last days only the open fact can tell.
  CHECK(judged(two_ways("14", "30"), silent, "2026-08-20") == "cannot-tell 2026-08-14..2026-08-31 ?furnished");
  CHECK(judged(two_ways("14", "30"), tenancy(R"(,"statement":{"sent":"2026-08-10"})")) == "met 2026-08-14..2026-08-31");
}

TEST_CASE("Duties that stand in for one another are one, and say which there are", "[law]") {
  const Small open(pack_of("\"duties\":[" + two_ways("14", "30") + "]"), tenancy(), "2026-08-20");
  REQUIRE(open.law->deadlines().size() == 1);
  CHECK(open.law->deadlines().front().instead == std::vector<std::size_t>{0, 1});
  CHECK(open.law->each_deadline().size() == 2);
  const Small known(pack_of("\"duties\":[" + two_ways("14", "30") + "]"),
                    tenancy(R"(,"circumstances":{"furnished":true})"), "2026-08-20");
  CHECK(known.law->deadlines().front().instead.empty());
}

TEST_CASE("What a missed day costs follows whichever alternative was missed", "[law]") {
  const std::string rules =
      "\"duties\":[" + two_ways("14", "30") +
      R"(],"forfeits":[{"id":"f","source":["s"],"text":"x","loses":"all-deductions","needs":"none","when":{"any":[{"duty":"a","is":"missed"},{"duty":"b","is":"missed"}]},"whenText":"y"}],)"
      R"("remedies":[{"id":"double","source":["s"],"text":"x","multiplier":"2","base":"whole-deposit","includesSumDue":true,"needs":"none","when":{"duty":"a","is":"missed"},"whenText":"y"},)"
      R"({"id":"triple","source":["s"],"text":"x","multiplier":"3","base":"whole-deposit","includesSumDue":true,"needs":"none","when":{"duty":"b","is":"missed"},"whenText":"y"}])";
  Small small(pack_of(rules),
              tenancy(R"(,"statement":{"came":false,"refundPaid":"0.00"},"deposits":[{"amount":"100.00"}])"),
              "2026-09-01");
  Reckoning reckoning;
  reckoning.deposit = Money::cents(10000);
  small.law->settle(reckoning);
  REQUIRE(small.law->forfeits().size() == 1);
  CHECK(small.law->forfeits().front().certain);
  // Double for one, triple for the other: neither for certain, but double at the least.
  REQUIRE(small.law->remedies().size() == 2);
  CHECK_FALSE(small.law->remedies().front().certain);
  CHECK(small.law->award().least.plain() == "200.00");
  CHECK(small.law->award().most.plain() == "300.00");
}

TEST_CASE("A duty without a number of days is met or not by what was done", "[law]") {
  const std::string deadline =
      R"({"id":"d","source":["s"],"text":"x","who":"landlord","duty":"offer-inspection","ifMissed":["none"],"metBy":"unknown",)"
      R"("legs":[{"count":null,"unit":"calendar-day","after":["notice-given"]}]})";
  CHECK(judged(deadline, tenancy(R"(,"records":{"preMoveOutInspection":{"offered":true}})")) == "met none");
  CHECK(judged(deadline, tenancy(R"(,"records":{"preMoveOutInspection":{"offered":false}})")) == "missed none");
  CHECK(judged(deadline, tenancy(R"(,"records":{"preMoveOutInspection":{"offered":false}})"), "2026-07-01") ==
        "open none");
  CHECK(judged(deadline, tenancy()) == "cannot-tell none ?notice-given ?inspection-offered");
}

TEST_CASE("A duty that may not apply is not said to be missed", "[law]") {
  const std::string deadline = statement_deadline(
      R"("metBy":"posting","when":{"fact":"furnished"},"whenText":"it is furnished",)" + thirty_days);
  CHECK(judged(deadline, tenancy(R"(,"statement":{"sent":"2026-09-01"})")) == "cannot-tell 2026-08-31 ?furnished");
  CHECK(judged(deadline, tenancy(R"(,"statement":{"sent":"2026-08-31"})")) == "met 2026-08-31");
  CHECK(judged(deadline, tenancy(R"(,"circumstances":{"furnished":false},"statement":{"sent":"2026-09-01"})")) ==
        "not-needed none");
}

TEST_CASE("A refund is missed only if money is owed", "[law]") {
  const Pack pack = pack_of(
      R"("duties":[{"id":"d","source":["s"],"text":"x","who":"landlord","duty":"return-deposit","ifMissed":["none"],"metBy":"posting",)" +
      thirty_days + "}]");
  const auto state = [&](const std::string& refund, const std::string& fair) {
    Small small(pack, tenancy(R"(,"deposits":[{"amount":"1000.00"}],"statement":{)" + refund +
                              R"(},"lines":[{"amount":"1000.00","kind":"rent"}])"));
    Reckoning r;
    r.deposit = Money::parse("1000.00");
    r.fair = {Range<Money>(*Money::parse(fair))};
    small.law->settle(r);
    return state_name(small.law->deadlines().front().state);
  };
  CHECK(state(R"("refundPaid":"0.00")", "1000.00") == "not-needed");
  CHECK(state(R"("refundPaid":"0.00")", "999.99") == "missed");
  CHECK(state(R"("refundPaid":"10.00","refundSent":"2026-09-01")", "990.00") == "missed");
  CHECK(state(R"("refundPaid":"10.00","refundSent":"2026-08-31")", "0.00") == "met");
}

TEST_CASE("A refund without a date of its own is taken to have come with the statement", "[law]") {
  const Small small(
      pack_of(
          R"("duties":[{"id":"d","source":["s"],"text":"x","who":"landlord","duty":"return-deposit","ifMissed":["none"],"metBy":"posting",)" +
          thirty_days + "}]"),
      tenancy(R"(,"statement":{"sent":"2026-08-20","refundPaid":"10.00"})"));
  const DeadlineResult& r = small.law->deadlines().front();
  CHECK(r.state == DeadlineState::met);
  CHECK(r.done_assumed);
  CHECK(said(r.done_on) == "2026-08-20");
}

TEST_CASE("A counting rule of its own applies to its duties only", "[law]") {
  const Pack pack =
      pack_of("\"duties\":[" + statement_deadline(R"("metBy":"posting",)" + thirty_days) + "]",
              R"({"id":"c","source":["s"],"excludeFirst":true,"roll":["sunday"],"holidays":null},)"
              R"({"id":"own","source":["s"],"excludeFirst":true,"roll":[],"holidays":null,"duties":["d"]})");
  const Small small(pack, tenancy(R"(,"statement":{"sent":"2026-08-31"})"));
  CHECK(said(small.law->deadlines().front().last) == "2026-08-30");
  CHECK(small.law->deadlines().front().state == DeadlineState::missed);
}

TEST_CASE("What was taken as usual is told, and nothing else", "[law]") {
  const std::string deadline =
      statement_deadline(R"("metBy":"posting","when":{"fact":"abandoned","is":false},"whenText":"x",)" + thirty_days);
  const auto told = [&](const std::string& members) {
    const Small small(pack_of("\"duties\":[" + deadline + "]"), members);
    std::string out;
    for (const Ask& ask : small.law->assumed())
      out += (ask.kind == Ask::Kind::fact ? small.law->view().info(FactId{ask.which}).id
                                          : small.law->view().info(EventId{ask.which}).id) +
             " ";
    return out;
  };
  CHECK(told(tenancy(R"(,"statement":{"sent":"2026-08-20"})")) == "abandoned ");
  CHECK(told(tenancy(R"(,"statement":{"sent":"2026-08-20"},"circumstances":{"abandoned":true})")).empty());
  CHECK(told(tenancy(R"(,"side":"landlord")")) == "abandoned statement-sent ");
}
