#include "format/older_names.h"
#include "support/reading_rules.h"

#include <catch2/catch.hpp>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

using namespace wearline;

namespace {

Recognition of(std::string_view text) { return recognize(text, reading_test::rules()); }

std::string sum_of(std::string_view text) {
  const Recognition r = of(text);
  return r.amount ? r.amount->plain() : "none";
}
std::string thing_of(std::string_view text) {
  const Recognition r = of(text);
  return r.not_a_charge ? "not a charge" : r.element + "/" + r.finding;
}
std::string count_of(std::string_view text) {
  const Recognition r = of(text);
  return r.quantity ? std::to_string(r.quantity->thousandths) + " " + r.quantity->unit : "none";
}

} // namespace

TEST_CASE("What was wrong is heard beside the work, and without a sum", "[reading]") {
  CHECK(thing_of("Paint living room, nail holes") == "wall-surface/small-nail-holes");
  CHECK(thing_of("Paint living room") == "interior-paint/work-only");
  CHECK(thing_of("Small nail holes") == "wall-surface/small-nail-holes");
  CHECK(thing_of("Scuffs in hall") != "not a charge");
  CHECK(thing_of("MASTER BATH") == "not a charge");
  CHECK(thing_of("CLEANING:") == "not a charge");
}

TEST_CASE("The recogniser names elements and findings of the wear guide, and every one of the corpus", "[reading]") {
  using Names = std::map<std::string, std::set<std::string>>;
  const auto names = [](const char* file, const char* element_id, const char* finding_id) {
    Names out;
    const auto document = nlohmann::json::parse(reading_test::file_text(file));
    for (const auto& element : document.at("elements"))
      for (const auto& finding : element.at("findings"))
        out[element.at(element_id).get<std::string>()].insert(finding.at(finding_id).get<std::string>());
    return out;
  };
  const Names guide = names("engine/rules/wear/catalogue.json", "id", "id");
  const Names corpus = names("tests/reference/corpus/catalogue.json", "element", "finding");
  Names own;
  for (const ElementRule& element : reading_test::rules().elements())
    for (const FindingRule& finding : element.findings) own[element.element].insert(finding.finding);
  // The corpus was written with the names of version 1.
  const auto now = [](std::string_view member, std::string_view word) {
    return std::string(older_document("case").below("lines")->below(member)->word_now(word));
  };
  for (const auto& [element, findings] : corpus)
    for (const std::string& finding : findings) {
      INFO(element << ' ' << finding);
      CHECK(own[now("element", element)].count(now("finding", finding)) == 1);
    }
  for (const auto& [element, findings] : own) {
    INFO(element);
    REQUIRE(guide.count(element) == 1);
    for (const std::string& finding : findings) CHECK(guide.at(element).count(finding) == 1);
  }
}

TEST_CASE("A charge is recognised by its thing, its work and its condition", "[reading]") {
  CHECK(thing_of("Replace carpet in bedroom, dog urine $540.00") == "carpet/pet-damage");
  CHECK(thing_of("Carpet cleaning between tenants $110.00") == "carpet-cleaning/routine");
  CHECK(thing_of("OVEN BAKED-ON GREASE 45.00") == "appliance-cleaning/oven-baked-on");
  CHECK(thing_of("Alfombra manchada en la sala 200.00") == "carpet/stains");
  CHECK(thing_of("Llaves no entregadas 30.00") == "lock-keys/key-not-returned");
}

TEST_CASE("A thing that only says where is not the thing charged", "[reading]") {
  CHECK(thing_of("Hole behind toilet 60.00") == "wall-surface/large-holes");
  CHECK(thing_of("Burn on vinyl floor next to stove 130.00") == "hard-flooring/stains-burns");
  CHECK(of("Burnt outlet behind refrigerator 40.00").element == "outlet-switch");
}

TEST_CASE("What is said beside a charge is not the thing charged, unless nothing else is named", "[reading]") {
  CHECK(of("Unpaid water 02/01/25-03/12/25, see copy of bill, 61.07").element == "utility-bill");
  CHECK(of("No receipts or bids given, but they want $330 for 'door & trim'").element != "inspection-fee");
  CHECK(of("Photos $25").element == "inspection-fee");
  CHECK(of("I am charging you $40 because the toilet seat was cracked").element == "toilet");
  CHECK(of("The bathroom ceiling has mildew again -- I told the office twice the fan was dead").element ==
        "mold-treatment");
}

TEST_CASE("A part belongs to the thing before it, another thing is meant itself", "[reading]") {
  CHECK(of("Refrigerator shelf broken 40.00").element == "refrigerator");
  CHECK(of("Bathroom door lock 40.00").element == "lock-keys");
  CHECK(of("Microwave door handle 45.00").element == "microwave");
}

TEST_CASE("Shortened and misspelt words are understood", "[reading]") {
  CHECK(of("brkn wndw kit 85.00").element == "window-glass");
  CHECK(of("carpit stain lr 85.00").element == "carpet");
  CHECK(of("drvway oil 85.00").element == "yard-landscape");
  CHECK(of("window screns torn 85.00").element == "window-screen"); // nearer to "screens" than to "screws"
}

TEST_CASE("An article may stand inside a term, and the sign for and is the word", "[reading]") {
  CHECK(of("Fan over the stove, filter missing 20.00").element == "range-hood");
  CHECK(of("Washer and dryer 85.00").element == "washer-dryer");
  CHECK(of("Screen & recoat 310.00").element == "hard-flooring");
  CHECK(of("Screen and recoat 310.00").element == "hard-flooring");
}

TEST_CASE("A line whose words the answer does not rest on is not sure", "[reading]") {
  CHECK(of("Damage to the rented home, list and photos 450.00").element != "rent");
  CHECK(of("Restoring the flat to an almost new state 450.00").element != "utility-bill");
  const int bare = of("Chandelier broken 60.00").confidence;
  CHECK(bare >= 80);
  CHECK(of("Chandelier broken by the gymnasts whose rehearsal nobody announced 60.00").confidence < bare);
}

TEST_CASE("Several things under one price are a lump sum", "[reading]") {
  const Recognition r = of("Paint, blinds and smoke alarm, together 640.00");
  CHECK(r.element == "other");
  CHECK(r.finding == "lump-sum");
}

TEST_CASE("The sum of a line is the one charged", "[reading]") {
  CHECK(sum_of("3 screens @ 24.00 72.00") == "72.00");
  CHECK(sum_of("Lt. blbs - deduct 12 for the ones you left = net 16.00") == "16.00");
  CHECK(sum_of("Called 555-0119 on 4/02/24 for the wall $150.00") == "150.00");
  CHECK(sum_of("lock change 45 (lease p.6)") == "45.00");
  CHECK(sum_of("mgmt 10% of 1,118.00 ==> 111.8") == "111.80");
  CHECK(sum_of("Clean -150.00") == "150.00");
  CHECK(sum_of("Paint as needed - no charge") == "0.00");
  CHECK(sum_of("hole repaired, see photo 11") == "none");
  CHECK(sum_of("Carpet laid 2019") == "none");
}

TEST_CASE("A sum that is not printed is count times price, or two sums together, and says so", "[reading]") {
  const Recognition product = of("Burner grates 2 x 18.00");
  CHECK(product.amount == Money::cents(3600));
  CHECK(product.amount_computed);
  CHECK(sum_of("clean 95+410") == "505.00");
  CHECK_FALSE(of("Screens 72.00").amount_computed);
}

TEST_CASE("A credit is negative", "[reading]") {
  CHECK(sum_of("Credit, overpaid June rent 60.00") == "-60.00");
  CHECK(sum_of("allowance $25 CR") == "-25.00");
}

TEST_CASE("Counts are of what is priced", "[reading]") {
  CHECK(count_of("Drywall repair 4 hours @ 35.00 140.00") == "4000 hour");
  CHECK(count_of("2 torn screens 50.00") == "2000 each");
  CHECK(count_of("Carpet 42 SY @ 18.50 777.00") == "42000 sq-yd");
  CHECK(count_of("Tenant had two cats, flea treatment 145.00") == "none");
  CHECK(count_of("Primer and 3 coats, bedroom 1 310.00") == "none");
  CHECK(count_of("cleaning 2 people 4 h @ 18 144.00") == "8000 hour");
}

TEST_CASE("Rooms are named in full", "[reading]") {
  CHECK(of("carpet lr & br 2 100.00").place == "living room; bedroom 2");
  CHECK(of("towel bar hall ba 40.00").place == "hall bathroom");
  CHECK(of("Pintar recámara principal 200.00").place == "master bedroom");
  CHECK(of("Toilet seat 20.00").place.empty());
}

TEST_CASE("Totals, headings and remarks charge nothing", "[reading]") {
  for (const char* text :
       {"ITEMIZED DEDUCTIONS", "Total deductions $468.00", "Security deposit held: $1,200.00",
        "Amount due from tenant $218.00", "CLEANING ........", "Carpet was new 8/2019 (receipt $2,115.00 attached)",
        "85.00 + 120.00 = 205.00", "Saldo a favor del inquilino 494.50", ""}) {
    INFO(text);
    CHECK(of(text).not_a_charge);
  }
  CHECK(of("Security deposit held: $1,200.00").amount == Money::cents(120000));
  CHECK_FALSE(of("Balance of February rent $150.00").not_a_charge);
}

TEST_CASE("An answer shows the words it rests on and what else it could be", "[reading]") {
  const std::string text = "Torn carpet at bedroom doorway 150.00";
  const Recognition r = of(text);
  REQUIRE_FALSE(r.basis.empty());
  CHECK(text.substr(r.basis[0].start, r.basis[0].end - r.basis[0].start) == "Torn");
  const Recognition vague = of("floor and tile thing by the tub 90.00");
  CHECK(vague.confidence < 90);
  REQUIRE_FALSE(vague.alternatives.empty());
  CHECK(vague.alternatives[0].element != vague.element);
}

TEST_CASE("A text without a known word is not guessed at", "[reading]") {
  const Recognition r = of("qwzx 85.00");
  CHECK(r.confidence < 50);
  CHECK(r.element == "other");
}

TEST_CASE("A heading gives the room, and the thing where the line has none", "[reading]") {
  TextContext under;
  under.heading = "Kitchen";
  under.amount_known = true;
  CHECK(recognize("scrub stove and hood", reading_test::rules(), under).place == "kitchen");
  under.heading = "Carpet cleaning";
  CHECK(recognize("two rooms", reading_test::rules(), under).element == "carpet-cleaning");
}

TEST_CASE("A common word is no misspelling of a thing", "[reading]") {
  CHECK(of("Paver sunk by the steps, reset 20.00").element == "yard-landscape"); // "stunk"
  CHECK(of("Two holes, $48 to blend").element == "wall-surface");                // "blind"
  CHECK(of("Stve knob gone 20.00").element == "range-oven");
}

TEST_CASE("What did the harm is not what is charged", "[reading]") {
  CHECK(of("The couch, not the cat, tore the bamboo shade 42.00").element == "window-covering");
  CHECK(of("Dresser scratched the hardwood floor 90.00").element == "hard-flooring");
  CHECK(of("Back door was scraped by your painter, $90").element == "exterior-door");
  CHECK(of("Couch torn, carpet fine 90.00").element != "carpet");
}

TEST_CASE("The fee for a returned check is a charge though it names the check", "[reading]") {
  CHECK_FALSE(of("NSF ck #1187 fee 30.00").not_a_charge);
  CHECK(of("NSF ck #1187 fee 30.00").element == "late-fee");
  CHECK(of("Paid by check #1187 30.00").not_a_charge);
}
