// Conditions in three values, what they ask for, and packs that are refused.

#include "law/applies.h"
#include "support/small_law.h"

using namespace wearline;
using namespace wearline::test;

namespace {

/// "yes", "no" or "unknown", then what would settle it, then what was taken as usual.
std::string decide(const std::string& condition, const std::string& members, const std::string& today = "2026-11-25") {
  const Small small(pack_of(R"("others":[{"id":"o","source":["s"],"text":"A rule.","when":)" + condition + "}]"),
                    members, today);
  Grounds grounds;
  const Tri answer = holds(small.pack.others.front().when, small.law->view(), nullptr, &grounds);
  std::string out = answer.known_yes() ? "yes" : answer.known_no() ? "no" : "unknown";
  const auto list = [&](const char* mark, const Asks& asks) {
    for (const Ask& ask : asks)
      out += mark + (ask.kind == Ask::Kind::fact ? small.law->view().info(FactId{ask.which}).id
                                                 : small.law->view().info(EventId{ask.which}).id);
  };
  list(" ?", grounds.unknown);
  list(" ~", grounds.assumed);
  return out;
}

const std::string nothing = R"("tenancy":{})";

} // namespace

TEST_CASE("A fact that the case does not tell is unknown, and asked for", "[law]") {
  CHECK(decide(R"({"fact":"furnished"})", nothing) == "unknown ?furnished");
  CHECK(decide(R"({"fact":"furnished"})", R"("circumstances":{"furnished":true})") == "yes");
  CHECK(decide(R"({"fact":"furnished","is":false})", R"("circumstances":{"furnished":true})") == "no");
}

TEST_CASE("A rare fact is taken as usual, and that is told", "[law]") {
  CHECK(decide(R"({"fact":"abandoned"})", nothing) == "no ~abandoned");
  CHECK(decide(R"({"fact":"abandoned"})", R"("circumstances":{"abandoned":true})") == "yes");
}

TEST_CASE("Only the facts that the answer hangs on are asked for", "[law]") {
  CHECK(decide(R"({"all":[{"fact":"furnished"},{"fact":"sold"}]})", nothing) == "no ~sold");
  CHECK(decide(R"({"any":[{"fact":"furnished"},{"fact":"written-lease"}]})",
               R"("circumstances":{"written-lease":true})") == "yes");
  CHECK(decide(R"({"any":[{"fact":"furnished"},{"fact":"written-lease"}]})",
               R"("circumstances":{"written-lease":false})") == "unknown ?furnished");
  CHECK(decide(R"({"not":{"fact":"furnished"}})", nothing) == "unknown ?furnished");
}

TEST_CASE("Numbers are compared within limits, sums to the cent", "[law]") {
  CHECK(decide(R"({"fact":"landlord-units","atLeast":25})", R"("tenancy":{"landlordUnits":25})") == "yes");
  CHECK(decide(R"({"fact":"landlord-units","over":25})", R"("tenancy":{"landlordUnits":25})") == "no");
  CHECK(decide(R"({"fact":"landlord-units","under":25})", nothing) == "unknown ?landlord-units");
  CHECK(decide(R"({"fact":"monthly-rent","over":"1000.00"})", R"("tenancy":{"monthlyRent":"1000.01"})") == "yes");
  CHECK(decide(R"({"fact":"monthly-rent","over":"1000.00"})", R"("tenancy":{"monthlyRent":"1000.00"})") == "no");
  // The stay is known only within limits: from 11 to 23 months.
  const std::string stay = R"("tenancy":{"began":"2024","possessionReturned":"2025-12-15"})";
  CHECK(decide(R"({"fact":"stay-months","atLeast":6})", stay) == "yes");
  CHECK(decide(R"({"fact":"stay-months","atLeast":12})", stay) == "unknown ?stay-months");
  CHECK(decide(R"({"fact":"stay-months","atLeast":36})", stay) == "no");
}

TEST_CASE("A city is known by its name in any case of letters", "[law]") {
  CHECK(decide(R"({"fact":"locality","is":"Chicago"})", R"("locality":" chicago ")") == "yes");
  CHECK(decide(R"({"fact":"locality","in":["Portland","Salem"]})", R"("locality":"Chicago")") == "no");
  CHECK(decide(R"({"fact":"locality","is":"Chicago"})", nothing) == "unknown ?locality");
}

TEST_CASE("An event is known, known not to be, or open", "[law]") {
  CHECK(decide(R"({"event":"tenancy-ended","from":"2026-01-01"})", R"("tenancy":{"ended":"2026-01-01"})") == "yes");
  CHECK(decide(R"({"event":"tenancy-ended","from":"2026-01-01"})", R"("tenancy":{"ended":"2025-12-31"})") == "no");
  CHECK(decide(R"({"event":"tenancy-ended","from":"2026-01-01"})", R"("tenancy":{"ended":"2025-12/2026-02"})") ==
        "unknown ?tenancy-ended");
  CHECK(decide(R"({"event":"tenancy-ended","to":"2025-12-31"})", nothing) == "unknown ?tenancy-ended");
  CHECK(decide(R"({"event":"tenant-demand","known":true})",
               R"("events":[{"what":"tenant-demand","on":"2026-09-01"}])") == "yes");
  CHECK(decide(R"({"event":"tenant-demand","known":true})", nothing) == "no ~tenant-demand");
  CHECK(decide(R"({"event":"repairs-done","known":true})", R"("circumstances":{"repairs-done":false})") == "no");
  CHECK(decide(R"({"event":"repairs-done","known":true})", nothing) == "unknown ?repairs-done");
}

TEST_CASE("What was kept follows from charges, from sums, or from money that did not come", "[law]") {
  const std::string deposit = R"("deposits":[{"kind":"security","amount":"1000.00"}],)";
  const std::string kept = R"({"fact":"deductions-made"})";
  CHECK(decide(kept, deposit + R"("lines":[{"amount":"10.00"}])") == "yes");
  CHECK(decide(kept, deposit + R"("lines":[{"text":"no sum given"}])") == "yes");
  CHECK(decide(kept, deposit + R"("statement":{"refundPaid":"1000.00"})") == "no");
  CHECK(decide(kept, deposit + R"("statement":{"refundPaid":"900.00"})") == "yes");
  CHECK(decide(kept, deposit + R"("statement":{"statedTotal":"0.00"})") == "no");
  CHECK(decide(R"({"fact":"damage-claimed"})", R"("lines":[{"kind":"rent"},{"kind":"cleaning"}])") == "yes");
  CHECK(decide(R"({"fact":"damage-claimed"})", R"("lines":[{"kind":"rent"}])") == "no");
  CHECK(decide(R"({"fact":"damage-claimed"})", R"("lines":[{"text":"something"}])") == "unknown ?damage-claimed");
  // Part came back without a list: the rest was kept for something that nobody named.
  const std::string unsaid = R"("statement":{"came":false,"refundPaid":"900.00"})";
  CHECK(decide(R"({"fact":"damage-claimed"})", deposit + unsaid) == "unknown ?damage-claimed");
  CHECK(decide(R"({"fact":"only-rent-claimed"})", deposit + unsaid) == "unknown ?only-rent-claimed");
  CHECK(decide(R"({"fact":"damage-claimed"})", deposit + R"("statement":{"came":false,"refundPaid":"1000.00"})") ==
        "no");
  CHECK(decide(R"({"fact":"only-rent-claimed"})", R"("lines":[{"kind":"rent"},{"kind":"rent"}])") == "yes");
  CHECK(decide(R"({"fact":"only-rent-claimed"})", R"("lines":[{"kind":"rent"},{"kind":"fee"}])") == "no");
  CHECK(
      decide(
          R"({"fact":"repair-and-cleaning-total","over":"125.00"})",
          R"("lines":[{"kind":"damage","amount":"100.00"},{"kind":"cleaning","amount":"25.01"},{"kind":"rent","amount":"900.00"}])") ==
      "yes");
  CHECK(decide(R"({"fact":"repair-and-cleaning-total","over":"125.00"})", R"("lines":[{"kind":"damage"}])") ==
        "unknown ?repair-and-cleaning-total");
  CHECK(decide(R"({"fact":"claims-over-deposit"})", deposit + R"("lines":[{"amount":"1000.01"}])") == "yes");
  CHECK(decide(R"({"fact":"balance-due"})", deposit + R"("lines":[{"amount":"999.99"}])") == "yes");
  CHECK(decide(R"({"fact":"balance-due"})", deposit + R"("lines":[{"amount":"1000.00"}])") == "no");
  CHECK(decide(R"({"fact":"balance-due"})",
               deposit + R"("lines":[{"amount":"10.00"}],"statement":{"statedBalanceDue":"5.00"})") == "no");
}

TEST_CASE("A rule in force is chosen by the date the law itself uses", "[law]") {
  const auto force = [](const std::string& members) {
    const Small small(
        pack_of(
            R"("others":[{"id":"o","source":["s"],"text":"A rule.","from":"2026-01-01","to":"2026-12-31","by":"statement-sent"}])"),
        members, "2027-03-01");
    const Tri answer = in_force(small.pack.others.front(), small.law->view());
    return answer.known_yes() ? "yes" : answer.known_no() ? "no" : "unknown";
  };
  CHECK(std::string(force(R"("statement":{"sent":"2026-12-31"})")) == "yes");
  CHECK(std::string(force(R"("statement":{"sent":"2027-01-01"})")) == "no");
  CHECK(std::string(force(R"("statement":{"sent":"2026-12/2027-01"})")) == "unknown");
  CHECK(std::string(force(R"("statement":{"came":false})")) ==
        "no"); // nothing was sent: the day of the assessment counts
  CHECK(std::string(force(R"("statement":{"received":"2027-01-02","dated":"2026-12-30"})")) == "unknown");
}

TEST_CASE("A pack with a mistake is refused with the place of it", "[law]") {
  const auto with = [](const std::string& parts) {
    return pack_fault(
        R"({"jurisdiction":"US-WA","name":"A","currency":"USD","sources":{"s":{"cite":"Law","read":"memory"}},)"
        R"("counting":[{"id":"c","source":["s"],"excludeFirst":true,"roll":[],"holidays":null}],)" +
        parts + "}");
  };
  CHECK(with(R"("others":[])") == "ok");
  CHECK(with(R"("othres":[])") == "unknown-member /othres");
  CHECK(with(R"("others":[{"id":"o","source":["t"],"text":"x"}])") == "unknown-source /others/0/source");
  CHECK(with(R"("others":[{"id":"o","source":["s"],"text":"x","when":{"fact":"no-such"}}])") ==
        "unknown-fact /others/0/when/fact");
  CHECK(with(R"("others":[{"id":"o","source":["s"],"text":"x","when":{"event":"no-such","known":true}}])") ==
        "unknown-event /others/0/when/event");
  CHECK(
      with(
          R"("others":[{"id":"o","source":["s"],"text":"x","when":{"fact":"landlord-units","atLeast":5,"under":5}}])") ==
      "never-holds /others/0/when/fact");
  CHECK(with(R"("others":[{"id":"o","source":["s"],"text":"x","when":{"fact":"tenancy-kind","is":"yearly"}}])") ==
        "unknown-name /others/0/when/is");
  CHECK(with(R"("others":[{"id":"o","source":["s"],"text":"x"},{"id":"o","source":["s"],"text":"x"}])") ==
        "duplicate-id /others/1/id");
  CHECK(with(R"("papers":[{"id":"p","source":["s"],"text":"x","requires":["no-such"],"ifMissing":["none"]}])") ==
        "unknown-paper /papers/0/requires");
  CHECK(
      with(
          R"("remedies":[{"id":"r","source":["s"],"text":"x","when":{"duty":"no-such","is":"missed"},"multiplier":"2","base":"withheld"}])") ==
      "unknown-duty /remedies/0/when/duty");
  CHECK(
      with(
          R"("duties":[{"id":"d","source":["s"],"text":"x","who":"landlord","duty":"no-such","legs":[{"count":1,"unit":"week","after":["tenancy-ended"]}],"metBy":"posting","ifMissed":["none"]}])") ==
      "unknown-duty /duties/0/duty");
  CHECK(
      with(
          R"("duties":[{"id":"d","source":["s"],"text":"x","who":"landlord","duty":"itemize","legs":[{"count":1,"unit":"business-day","after":["tenancy-ended"]}],"metBy":"posting","ifMissed":["none"]}])") ==
      "missing-member /counting");
  CHECK(with(R"("caps":[{"id":"c1","source":["s"],"text":"x","deposits":["security"]}])") ==
        "missing-member /caps/0/months");
  CHECK(with(R"("interest":[{"id":"i","source":["s"],"text":"x","owed":true}])") == "missing-member /interest/0/rate");
  CHECK(pack_fault("{").rfind("not-json", 0) == 0);
}

TEST_CASE("A duty cannot hang on another duty", "[law]") {
  const std::string deadline =
      R"({"id":"ID","source":["s"],"text":"x","who":"landlord","duty":"itemize","legs":[{"count":1,"unit":"week","after":["tenancy-ended"]}],"metBy":"posting","ifMissed":["none"],"when":{"duty":"ID","is":"missed"},"whenText":"x"})";
  CHECK(
      pack_fault(
          R"({"jurisdiction":"US-WA","name":"A","currency":"USD","sources":{"s":{"cite":"Law","read":"memory"}},"counting":[{"id":"c","source":["s"],"excludeFirst":true,"roll":[],"holidays":null}],"duties":[)" +
          deadline + "]}") == "too-early /duties");
}
