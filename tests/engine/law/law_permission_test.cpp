// What may be taken for a line, what a statement had to carry, and how large a deposit may be.

#include "support/small_law.h"

using namespace wearline;
using namespace wearline::test;

namespace {

std::string tri(Tri t) { return t.known_yes() ? "yes" : t.known_no() ? "no" : "unknown"; }

/// Whether a line is barred under the given rules, for a case of that line.
std::string line_barred(const std::string& rules, const std::string& line, Verdict wear = Verdict::chargeable_damage,
                        const std::string& more = "") {
  const Small small(pack_of(rules), R"("tenancy":{"ended":"2026-07-31","possessionReturned":"2026-07-31"},)" + more +
                                        R"("lines":[{)" + line + "}]");
  const Line& l = small.c.lines.front();
  const std::string whole = tri(barred(small.law->permissions(l, {wear, std::nullopt})));
  CHECK(tri(small.law->of(l, {wear, std::nullopt, false}).barred) == whole); // the short form agrees with the long one
  return whole;
}
std::string bar(const std::string& members) {
  return R"("bars":[{"id":"b","source":["s"],"text":"x",)" + members + "}]";
}

} // namespace

TEST_CASE("A kind of charge that the law forbids is barred", "[law]") {
  const std::string late_fees = bar(R"("line":{"kind":["fee"],"element":["late-fee"]},"effect":"bar")");
  CHECK(line_barred(late_fees, R"("kind":"fee","element":"late-fee")") == "yes");
  CHECK(line_barred(late_fees, R"("kind":"fee","element":"admin-fee")") == "no");
  CHECK(line_barred(late_fees, R"("kind":"rent","element":"rent")") == "no");
  CHECK(line_barred(late_fees, R"("kind":"fee")") == "unknown");
  CHECK(line_barred(late_fees, R"("text":"something")") == "unknown");
}

TEST_CASE("A bar about wear waits for the verdict on wear", "[law]") {
  const std::string wear = bar(R"("line":{"verdict":["ordinary-wear"]},"effect":"bar")");
  CHECK(line_barred(wear, R"("kind":"damage")", Verdict::ordinary_wear) == "yes");
  CHECK(line_barred(wear, R"("kind":"damage")", Verdict::chargeable_damage) == "no");
  CHECK(line_barred(wear, R"("kind":"damage")", Verdict::undetermined) == "unknown");
}

TEST_CASE("A thing older than the law allows may not be charged", "[law]") {
  // Colo. Rev. Stat. § 38-12-103(11): carpet more than ten years old.
  const std::string ten_years = bar(R"("line":{"element":["carpet"],"itemOlderThanYears":"10"},"effect":"bar")");
  CHECK(line_barred(ten_years, R"("element":"carpet","installed":"2016-07-30")") == "yes");
  CHECK(line_barred(ten_years, R"("element":"carpet","installed":"2016-07-31")") == "no"); // ten years to the day
  CHECK(line_barred(ten_years, R"("element":"carpet","installed":"2016")") == "unknown");
  CHECK(line_barred(ten_years, R"("element":"carpet")") == "unknown");
  CHECK(line_barred(ten_years, R"("element":"interior-paint")") == "no");
  const Small small(pack_of(ten_years), R"("lines":[{"element":"carpet"}])");
  const Line& l = small.c.lines.front();
  CHECK(tri(small.law->of(l, {Verdict::undetermined, Range<Months>(Months(121), Months(121), Months(130)), false})
                .barred) == "yes");
  CHECK(
      tri(small.law->of(l, {Verdict::undetermined, Range<Months>(Months(0), Months(60), Months(119)), false}).barred) ==
      "no");
}

TEST_CASE("A condition, and a condition that lifts the bar", "[law]") {
  const std::string cleaning = bar(
      R"("line":{"kind":["cleaning"]},"effect":"bar","when":{"fact":"carpet-cleaned-before-move-in","is":false},"whenText":"x","unless":{"fact":"cleaning-in-lease"})");
  const auto with = [](const std::string& facts) { return R"("circumstances":{)" + facts + "},"; };
  const auto asked = [&](const std::string& facts) {
    return line_barred(cleaning, R"("kind":"cleaning")", Verdict::chargeable_damage, with(facts));
  };
  CHECK(asked(R"("carpet-cleaned-before-move-in":false,"cleaning-in-lease":false)") == "yes");
  CHECK(asked(R"("carpet-cleaned-before-move-in":false,"cleaning-in-lease":true)") == "no");
  CHECK(asked(R"("carpet-cleaned-before-move-in":true)") == "no");
  CHECK(asked(R"("carpet-cleaned-before-move-in":false)") == "unknown");
}

TEST_CASE("What is on no closed list may not be taken", "[law]") {
  const std::string lists =
      R"("allows":[{"id":"a","source":["s"],"text":"x","closed":true,"lines":[{"kind":["rent"]},{"kind":["damage"]}]},)"
      R"({"id":"more","source":["s"],"text":"x","closed":false,"lines":[{"kind":["utility"]}]}])";
  CHECK(line_barred(lists, R"("kind":"rent")") == "no");
  CHECK(line_barred(lists, R"("kind":"fee")") == "yes");
  CHECK(line_barred(lists, R"("kind":"utility")") == "no");
  CHECK(line_barred(lists, R"("text":"?")") == "unknown");
  const std::string open_list =
      R"("allows":[{"id":"a","source":["s"],"text":"x","closed":false,"lines":[{"kind":["rent"]}]}])";
  CHECK(line_barred(open_list, R"("kind":"fee")") == "no");
}

TEST_CASE("A charge that needs proof falls without one of the papers", "[law]") {
  const std::string proof =
      bar(R"("line":{"kind":["cleaning"]},"effect":"needs-proof","proof":["receipts","estimate"])");
  CHECK(line_barred(proof, R"("kind":"cleaning","proof":["receipts"])") == "no");
  CHECK(line_barred(proof, R"("kind":"cleaning","proofMissing":["receipts","estimate"])") == "yes");
  CHECK(line_barred(proof, R"("kind":"cleaning","proofMissing":["receipts"])") == "unknown");
  CHECK(line_barred(proof, R"("kind":"cleaning")", Verdict::undetermined,
                    R"("statement":{"enclosed":["estimate"]},)") == "no");
  const std::string missing = bar(R"("line":{"kind":["cleaning"],"proofMissing":["photos"]},"effect":"bar")");
  CHECK(line_barred(missing, R"("kind":"cleaning","proofMissing":["photos"])") == "yes");
  CHECK(line_barred(missing, R"("kind":"cleaning","proof":["photos"])") == "no");
  CHECK(line_barred(missing, R"("kind":"cleaning")") == "unknown");
}

TEST_CASE("A limit is a sum, a share, or the greater of both", "[law]") {
  const auto limit = [](const std::string& members, const std::string& rent) {
    const Small small(pack_of(bar(R"("line":{"kind":["fee"]},"effect":"limit","limit":)" + members)),
                      R"("tenancy":{)" + rent + R"(},"lines":[{"kind":"fee","amount":"90.00"}])");
    const LineLaw law = small.law->of(small.c.lines.front(), {Verdict::non_damage_charge, std::nullopt, false});
    return law.limit ? law.limit->plain() : std::string("none");
  };
  CHECK(limit(R"({"amount":"20.00"})", "") == "20.00");
  CHECK(limit(R"({"share":"0.08","of":"monthly-rent"})", R"("monthlyRent":"1000.00")") == "80.00");
  CHECK(limit(R"({"share":"0.08","of":"monthly-rent","atLeast":"100.00"})", R"("monthlyRent":"1000.00")") == "100.00");
  CHECK(limit(R"({"share":"0.5","of":"line-amount"})", "") == "45.00");
  CHECK(limit(R"({"share":"0.08","of":"monthly-rent"})", "") == "none");
}

namespace {
std::string document(const std::string& rule, const std::string& members) {
  const Small small(pack_of(R"("papers":[{"id":"p","source":["s"],"text":"x","ifMissing":["none"],)" + rule + "}]"),
                    members);
  const DocumentResult& r = small.law->documents().front();
  std::string out = tri(r.defect);
  for (const DocumentId id : r.lacking) out += " -" + real_rules().rules().registry.documents[index(id)].id;
  for (const DocumentId id : r.open) out += " ?" + real_rules().rules().registry.documents[index(id)].id;
  if (r.wrong_way) out += " wrong-way";
  if (r.way_open) out += " ?way";
  return out;
}
} // namespace

TEST_CASE("A paper that is known to be missing is a defect, one nobody spoke of is a question", "[law]") {
  const std::string rule = R"("requires":["receipts","photos"])";
  CHECK(document(rule, R"("statement":{"enclosed":["receipts","photos"]})") == "no");
  CHECK(document(rule, R"("statement":{"enclosed":["photos"],"missing":["receipts"]})") == "yes -receipts");
  CHECK(document(rule, R"("statement":{"enclosed":["photos"]})") == "unknown ?receipts");
  CHECK(document(R"("requires":["receipts"],"orElse":["estimate"])",
                 R"("statement":{"enclosed":["estimate"],"missing":["receipts"]})") == "no");
  CHECK(document(R"("requires":["receipts"],"orElse":["estimate"])",
                 R"("statement":{"missing":["receipts","estimate"]})") == "yes -receipts");
  CHECK(document(R"("requires":["receipts"],"orElse":["estimate"])", R"("statement":{"missing":["receipts"]})") ==
        "unknown -receipts ?estimate");
}

TEST_CASE("Where no statement came there is nothing it could lack", "[law]") {
  CHECK(document(R"("requires":["receipts"])", R"("statement":{"came":false,"missing":["receipts"]})") == "no");
}

TEST_CASE("Papers that came with every charge came with the statement", "[law]") {
  const std::string rule = R"("requires":["receipts"])";
  CHECK(
      document(rule, R"("statement":{"came":true},"lines":[{"kind":"damage","proof":["receipts"]},{"kind":"rent"}])") ==
      "no");
  CHECK(document(rule,
                 R"("statement":{"came":true},"lines":[{"kind":"damage","proof":["receipts"]},{"kind":"damage"}])") ==
        "unknown ?receipts");
  CHECK(document(rule, R"("statement":{"came":true},"lines":[{"kind":"damage","proofMissing":["receipts"]}])") ==
        "yes -receipts");
  CHECK(document(R"("requires":["itemized"])", R"("statement":{"came":true},"lines":[{"kind":"damage"}])") ==
        "no"); // its charges are known, so it lists them
}

TEST_CASE("Only some ways of sending count", "[law]") {
  const std::string rule = R"("requires":[],"how":["certified-mail","personal-delivery"])";
  CHECK(document(rule, R"("statement":{"how":"certified-mail"})") == "no");
  CHECK(document(rule, R"("statement":{"how":"email"})") == "yes wrong-way");
  CHECK(document(rule, R"("statement":{"how":"mail"})") == "unknown ?way"); // which mail?
  CHECK(document(rule, R"("statement":{"came":true})") == "unknown ?way");
  CHECK(document(R"("requires":[],"how":["mail"])", R"("statement":{"how":"first-class-mail"})") == "no");
}

TEST_CASE("A deposit above the cap is found, and may be the defect a remedy asks for", "[law]") {
  // Md. Code, Real Prop. § 8-203(b): one month's rent; up to three times the excess.
  const std::string rules =
      R"("caps":[{"id":"cap","source":["s"],"text":"x","months":"1","deposits":["security","pet"]}],)"
      R"("remedies":[{"id":"r","source":["s"],"text":"x","when":{"defect":"cap"},"whenText":"x","multiplier":"3","base":"over-cap","includesSumDue":true,"upTo":true,"needs":"none","fees":"none","costs":false}])";
  const auto most = [&](const std::string& deposits) {
    Small small(pack_of(rules), R"("tenancy":{"monthlyRent":"1000.00"},"deposits":[)" + deposits + "]");
    Reckoning r;
    r.deposit = Money::parse("1500.00");
    r.paid_back = *Money::parse("1500.00");
    small.law->settle(r);
    return small.law->award().most.plain();
  };
  CHECK(most(R"({"kind":"security","amount":"1000.00"},{"kind":"pet","amount":"200.00"})") == "600.00");
  CHECK(most(R"({"kind":"security","amount":"1000.00"},{"kind":"last-month","amount":"1000.00"})") == "0.00");
  // Half a month, and never less than a sum.
  const auto limit = [](const std::string& cap) {
    const Small small(pack_of(R"("caps":[{"id":"cap","source":["s"],"text":"x","deposits":["security"],)" + cap + "}]"),
                      R"("tenancy":{"monthlyRent":"1000.00"},"deposits":[{"amount":"100.00"}])");
    const auto& l = small.law->caps().front().limit;
    return l ? l->plain() : std::string("none");
  };
  CHECK(limit(R"("months":"0.5")") == "500.00");
  CHECK(limit(R"("months":"2","atLeast":"2500.00")") == "2500.00");
  CHECK(limit(R"("weeks":"2")") == "460.27"); // 1000 x 12 / 365 x 14
  CHECK(limit(R"("amount":"300.00")") == "300.00");
  CHECK(limit(R"("none":true)") == "none");
}
