// Facts that a charge's own words state. The lines are invented; what each states is written beside it.

#include "case/case.h"
#include "output/reading.h"
#include "support/reading_rules.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using nlohmann::json;

namespace {

json read(const std::string& text) {
  return json::parse(wearline::recognize_text(text, reading_test::rules()), nullptr, false);
}
json facts(const std::string& text) { return read(text)["facts"]; }

} // namespace

TEST_CASE("A date or an age of the thing is read, a vague one as a range", "[facts]") {
  CHECK(facts("Carpet laid in June 2019, burned, $300")["installed"] == "2019-06");
  CHECK(facts("Outlet wired in the 1970s, replaced")["installed"] == "1970/1979");
  CHECK(facts("Vinyl put in between 2014 and 2016, torn")["installed"] == "2014/2016");
  CHECK(facts("Dishwasher about 7 years old, rack bent")["ageYears"] == "7~");
  CHECK(facts("Water heater 20+ years old, replaced")["ageYears"] == "20/..");
  CHECK(facts("Blinds two and a half years old, slats snapped")["ageYears"] == 2.5);
  CHECK(facts("Alfombra de 18 meses, quemada")["ageYears"] == 1.5);
  const json moved = facts("Carpet was 3 years old when you moved in, wine stain $90");
  CHECK(moved["ageYearsAtMoveIn"] == 3);
  CHECK_FALSE(moved.contains("ageYears"));
}

TEST_CASE("Parts of an hour in words are read to the quarter", "[facts]") {
  CHECK(facts("Scrubbed the oven, an hour and a half, $45")["hours"]["count"] == 1.5);
  CHECK(facts("Rehung the closet door, three quarters of an hour, $30")["hours"]["count"] == 0.75);
  CHECK(facts("Rehung the closet door, a quarter of an hour, $10")["hours"]["count"] == 0.25);
}

TEST_CASE("A number may be of several words, mixed or stand for tens, and a unit may follow as a mark", "[facts]") {
  CHECK(facts("Tub chipped, tub is twenty-two years of age, reglaze $325")["ageYears"] == 22);
  CHECK(facts("Range hood dented; hood 1 1/2 yrs old, $60")["ageYears"] == 1.5);
  CHECK(facts("Range hood dented; hood 1½ yrs old, $60")["ageYears"] == 1.5);
  CHECK(facts("Smoke alarm, a decade in service, swapped out 22.00")["ageYears"] == 10);
  CHECK(facts("10mo old vanity top, nail polish, 140.00")["ageYears"].get<double>() == Approx(0.83).margin(0.01));
  CHECK(facts("Closet door filled, two dozen pushpin holes, 30.00")["count"] == 24);
  CHECK(facts("caulk tub edge, 12' run, 20.00")["charged"] == json::parse(R"({"count":12,"unit":"foot"})"));
  CHECK(facts("Floor refinishing - area 210 ft² - $630")["charged"] == json::parse(R"({"count":210,"unit":"sq-ft"})"));
  CHECK(facts("Handyman bills thirty-five dollars per hour, two hours, $70")["hourlyRate"] == "35.00");
  CHECK_FALSE(facts("1/2 bath mirror cracked, 55.00").contains("charged"));
}

TEST_CASE("Months and spans are read as people shorten them", "[facts]") {
  CHECK(facts("Microwave purchased Feb. '23, door latch broken 54.00")["installed"] == "2023-02");
  CHECK(facts("fridge, 8-2018 install, shelf cracked, 42")["installed"] == "2018-08");
  CHECK_FALSE(facts("Stove, model FX2020, knob missing 14.00").contains("installed"));
  const auto span = [](const char* text, const char* from, const char* to) {
    INFO(text);
    CHECK(facts(text)["from"] == from);
    CHECK(facts(text)["to"] == to);
  };
  span("Unpaid rent July 1-20, 2025, 800.00", "2025-07-01", "2025-07-20");
  span("Rent ran from the 1st to the 12th of May 2024, 480.00", "2024-05-01", "2024-05-12");
  span("Holdover between December 28 and January 3, 2025, $330", "2024-12-28", "2025-01-03");
}

TEST_CASE("How many of all are damaged is kept apart from how many are charged", "[facts]") {
  const auto both = [](const char* text, int damaged, int charged) {
    INFO(text);
    CHECK(facts(text)["damaged"]["count"] == damaged);
    CHECK(facts(text)["charged"]["count"] == charged);
  };
  both("2 of 6 blinds bent, all six replaced @ 22, 132.00", 2, 6);
  both("5/12 vanes broken on vertical, new set 60.00", 5, 12);
  both("Replaced 40 ft of fence when 8 ft were down, $800", 8, 40);
  both("2 of 7 operators stripped, $80", 2, 2); // no word says that more than the harmed ones are charged
  both("3 de 8 sillas rotas, $60", 3, 3);
}

TEST_CASE("Wordings near those of a fact that state none", "[facts]") {
  const auto none = [](const char* text, const char* field) {
    INFO(text << ": " << field);
    CHECK_FALSE(facts(text).contains(field));
  };
  none("Took 2 hours to reach the office, key lost $15", "hours");
  none("8 ft ceiling paint, $150", "charged");
  none("You put in a new faucet in 2023 without asking, $150", "installed");
  none("Dog age 3, scratched the door, $110", "ageYears");
  none("Contrato de 2 años, pintura $150", "ageYears");
  none("New tenant complained 6/1/24 about smell, $90", "reletOn");
  none("Refund denied for carpet cleaning, $120", "credit");
  none("Credit check for sublet, $35", "credit");
  none("Repair cost $90", "repairPrice");
  none("appl. 4 x 15 = 60 (range, hood, frig, DW)", "damaged");
  none("Vacation 7/1/24 to 7/10/24, plants died $40", "from");
  CHECK(facts("Repairing it runs 35.00 yet you billed 210.00 for new")["repairPrice"] == "35.00");
  CHECK(facts("Rent owed 2 months, $2,400")["charged"] == json::parse(R"({"count":2,"unit":"month"})"));
  CHECK(facts("They had new people in by May 5, 2025, yet charge all May, $1,300")["reletOn"] == "2025-05-05");
}

TEST_CASE("Numbers that are no facts are left alone", "[facts]") {
  for (const char* text : {"Carpet replacement, invoice 20194, apt 3", "Keys, unit 7", "Paint, 2 coats, 5 gallons",
                           "Dryer vent plugged, nobody cleaned it in 3 yrs", "Cleaning fee 2BR/1BA flat",
                           "Call 555-0142 about the blinds", "Mini blinds 36\" x 64\"", "Door replaced, check 2045"}) {
    const json found = facts(text);
    for (const char* field : {"installed", "ageYears", "count", "charged", "lifeYears", "hours", "damaged"}) {
      INFO(text << ": " << field);
      CHECK_FALSE(found.contains(field));
    }
  }
  CHECK_FALSE(facts("Subfloor squeaks, 1974 house, screwed down").contains("installed"));
  CHECK_FALSE(facts("Filter greasy, 4 year tenancy, new filter").contains("ageYears"));
}

TEST_CASE("Cause, landlord's side and state at move-in are read from what is said of them", "[facts]") {
  CHECK(facts("Drawer snapped by your son")["cause"] == "tenant");
  CHECK(facts("Screen torn by the cat")["cause"] == "pet");
  CHECK(facts("Puerta rayada por el perro")["cause"] == "pet");
  CHECK(facts("Toilet cracked by the movers you hired")["cause"] == "guest");
  CHECK(facts("Hole behind door from knob, no door stop")["landlordFactors"] == json::array({"no-door-stop"}));
  CHECK(facts("Cracks over door, house settling")["landlordFactors"] == json::array({"building-movement"}));
  const json earlier = facts("Previous tenant's dog had already stained this carpet");
  CHECK_FALSE(earlier.contains("cause"));
  CHECK(earlier["atMoveIn"] == "damaged");
  CHECK(facts("Wall damage already noted on move-in checklist")["atMoveIn"] == "damaged");
  CHECK(facts("cleaning of a stained carpet that was new when you came")["atMoveIn"] == "new");
  CHECK(facts("Blinds bent, no move-in checklist was ever done")["atMoveIn"] == "not-recorded");
}

TEST_CASE("A sign of money belongs to the number it touches, not to the one before", "[facts]") {
  CHECK(facts("Carpet laid 2019 $90.00")["installed"] == "2019");
  CHECK(facts("Blinds x 3 $66.00")["charged"] == json::parse(R"({"count":3,"unit":"each"})"));
  CHECK_FALSE(facts("Carpet cleaned 6/2021 $90.00").contains("installed"));
}

TEST_CASE("The number of a bill and a bill not paid say nothing of papers", "[facts]") {
  CHECK_FALSE(facts("2 fobs not turned in, inv 20418 $150.00").contains("proofMissing"));
  CHECK_FALSE(facts("Water bill outstanding to June $142.55").contains("proofMissing"));
  CHECK(facts("Never sent us a receipt for the paint $90.00").contains("proofMissing"));
}

TEST_CASE("A split of the sum is read where it comes to the sum", "[facts]") {
  const json split = facts("Drywall 6 hrs @ $45 plus materials 38.50 = 308.50");
  CHECK(split["parts"] ==
        json::parse(R"([{"nature":"labour","amount":"270.00"},{"nature":"materials","amount":"38.50"}])"));
  CHECK(split["hours"] == json::parse(R"({"count":6,"unit":"hour"})"));
  CHECK(split["hourlyRate"] == "45.00");
  CHECK(facts("lbr 60 mat 22 blinds 82")["parts"] ==
        json::parse(R"([{"nature":"labour","amount":"60.00"},{"nature":"materials","amount":"22.00"}])"));
  CHECK_FALSE(facts("Labor 40.00 plus materials 38.50 = 308.50").contains("parts"));
  CHECK(facts("Burn in top, 8 yrs old, 15 yr life, charged 7/15 of 420 = 196.00")["priceNew"] == "420.00");
}

TEST_CASE("A count and the price of one that come to the sum are read, wherever the count stands", "[facts]") {
  CHECK(facts("Renta: 11 días de mayo a $38 = $418.00")["charged"] == json::parse(R"({"count":11,"unit":"day"})"));
  CHECK(facts("Rent at 41.94 a day, 9 days, 377.46")["charged"] == json::parse(R"({"count":9,"unit":"day"})"));
  CHECK(facts("Keys: 4 given, 2 returned, $7.50 each")["charged"] == json::parse(R"({"count":2,"unit":"each"})"));
  CHECK(facts("2 of 7 operators stripped, $80")["charged"] == json::parse(R"({"count":2,"unit":"each"})"));
  CHECK(facts("Holes, 3 large 11 small, 3 @ 35 + 11 @ 4 = 149.00")["count"] == 14);
  CHECK(read("2 people x 3 hrs x $25 150.00")["facts"]["hourlyRate"] == "25.00");
  CHECK(read("12 planks of 140")["amount"].is_null());
  CHECK(read("Lid $139 + 1.5 h @ 50")["amount"] == "214.00");
  CHECK(read("2 of 3 remotes gone, $30 c/u")["amount"] == "60.00");
}

TEST_CASE("Numbers that count are no parts of the sum", "[facts]") {
  CHECK_FALSE(facts("Tile chipped, 1 tile of 36, labor 55").contains("parts"));
  CHECK_FALSE(facts("4 tiles, labor 55").contains("parts"));
  CHECK(facts("Cartridge shot, part 19, labor 45")["parts"].size() == 2);
  CHECK_FALSE(facts("Cigarette smell, no-smoking clause 4.2 of lease $120").contains("landlordFactors"));
  CHECK(facts("Crew 2 people 4 hours, $28/hr each")["hours"] == json::parse(R"({"count":8,"unit":"hour"})"));
}

TEST_CASE("Hours may be written with two decimals or with minutes", "[facts]") {
  CHECK(facts("Labor 2.25 hr @ $36 = $81.00")["hours"] == json::parse(R"({"count":2.25,"unit":"hour"})"));
  CHECK(facts("Degreased oven, 3h15 @ $28/hr 91.00")["hours"] == json::parse(R"({"count":3.25,"unit":"hour"})"));
}

TEST_CASE("What only looks like a fact is none, in words too", "[facts]") {
  CHECK_FALSE(facts("6-panel door scratched").contains("charged"));
  CHECK_FALSE(facts("Carpet (12x15), living area").contains("charged"));
  CHECK_FALSE(facts("Cleaned 2 bdrm house on 5 acres").contains("charged"));
  CHECK_FALSE(facts("2da recámara: alfombra manchada").contains("charged"));
  CHECK_FALSE(facts("Gastos varios $40").contains("cause"));
  CHECK_FALSE(facts("Knobs gone (checklist you initialed) $12").contains("cause"));
  CHECK_FALSE(facts("HVAC filter never changed in 26 months, coil cleaning $170").contains("workDone"));
  CHECK_FALSE(facts("Renta pendiente de mayo $418").contains("workDone"));
  CHECK_FALSE(facts("Bath ceiling paint flaking since the roof leaked in 2021").contains("installed"));
  CHECK_FALSE(facts("Paint, life 36 months, charged $400")["lifeYears"] == 36);
}

TEST_CASE("Each fact names the code points it was read from", "[facts]") {
  const std::string text = "Baño: persiana de 5 años, rota por su hijo";
  const json line = read(text);
  CHECK(line["facts"]["ageYears"] == 5);
  const json from = line["readFrom"]["ageYears"];
  CHECK(from == json::parse("[15, 24]")); // "de 5 años", counting ñ as one
  CHECK(line["facts"].size() == line["readFrom"].size());
}

TEST_CASE("An uncertain age is a span of months", "[facts]") {
  using wearline::age_span, wearline::Months;
  CHECK(age_span("5")->least == Months(54));
  CHECK(age_span("5")->likely == Months(60));
  CHECK(*age_span("5")->most == Months(66));
  CHECK(*age_span("5~")->most == Months(72));
  CHECK(age_span("7/..")->least == Months(84));
  CHECK_FALSE(age_span("7/..")->most);
  CHECK(*age_span("../3")->most == Months(36));
  CHECK(age_span("5/6")->likely == Months(66));
  for (const char* text : {"", "x", "6/5", "5/", "../..", "5.", "201", "-3", "5~~"}) CHECK_FALSE(age_span(text));
}

TEST_CASE("Quotation marks and a short at stand in no fact's way", "[facts]") {
  CHECK(facts("Walls \"fair\" at check-in, scuffed now $80")["atMoveIn"] == "fair");
  CHECK(facts("Blinds new @ m/i, slats bent $45")["atMoveIn"] == "new");
  CHECK(facts("Sink cracked already on day 1, $90")["atMoveIn"] == "damaged");
  CHECK(facts("Previous tenants' dog had scratched the door $75")["landlordFactors"] ==
        json::parse(R"(["previous-pets"])"));
  CHECK_FALSE(facts("36\" blind bent at move-out $20").contains("charged"));
}

TEST_CASE("A door stop that is itself charged excuses nothing", "[facts]") {
  CHECK(facts("Hole behind door, no stop on the door $60")["landlordFactors"] == json::parse(R"(["no-door-stop"])"));
  CHECK_FALSE(facts("Door stop missing, replaced 8.00").contains("landlordFactors"));
  CHECK_FALSE(facts("2 door stops missing, 12.00").contains("landlordFactors"));
}

TEST_CASE("What happened after, or on the other side, is not read as found at move-in", "[facts]") {
  for (const char* text :
       {"Unit received back dirty, cleaning 150.00", "Hole made while you were moving in, 40.00",
        "Blinds damaged since you moved in, 40.00", "Professional cleaning after you moved out, 180.00",
        "Painted before the lease ended, 200.00", "Photos provided of dirty stove, cleaning 80.00"})
    CHECK_FALSE(facts(text).contains("atMoveIn"));
  CHECK(facts("The burner never worked from the day we got here, 50.00")["atMoveIn"] == "damaged");
  CHECK(facts("Nothing wrong with the door at move in, hole now, 50.00")["atMoveIn"] == "good");
}

TEST_CASE("Who did not do it, saw it or mended it is no cause", "[facts]") {
  for (const char* text : {"Stain was not made by our dog, $120", "The neighbor saw the broken door, $95",
                           "Guest bath mirror cracked, $55", "Hole in wall, landlord repaired, 90.00",
                           "Contractor hired by us to fix wall, 250.00", "Tub is 22 years of age, reglaze 325.00"})
    CHECK_FALSE(facts(text).contains("cause"));
  CHECK(facts("We broke the closet shelf, our fault, $60")["cause"] == "tenant");
}

TEST_CASE("What is forbidden or refused is not allowed", "[facts]") {
  for (const char* text : {"Smoking was not allowed under the lease, odor 250.00", "Dog not approved, damage 200.00",
                           "Wall painted without consent, 300.00", "Patch wall, painted, no primer needed, 80.00",
                           "Lock broken by tenant, 75.00", "Settled on 200 for carpet"})
    CHECK_FALSE(facts(text).contains("landlordFactors"));
  CHECK(facts("Invoice no 8842 enclosed, carpet 90.00")["proof"] == json::parse(R"(["receipts"])"));
  CHECK_FALSE(facts("Invoice no 8842 enclosed, carpet 90.00").contains("proofMissing"));
}

TEST_CASE("An age belongs to the thing it is said of", "[facts]") {
  CHECK(facts("Faucet handle loose, faucet is 9 years old, $30")["ageYears"] == 9);
  CHECK(facts("Carpet stained by the window. It is 4 years old. $200")["ageYears"] == 4);
  CHECK_FALSE(facts("Outlet cover; the fridge beside it is 9 years old, $3").contains("ageYears"));
  CHECK_FALSE(facts("Mirror cracked. The dishwasher dates from 2014. $55").contains("installed"));
  CHECK(facts("Vanes gone, put in with the new slider 11/2020, 26.00")["installed"] == "2020-11");
  CHECK(facts("Countertop burn, laminate 8 yrs old, $196")["ageYears"] == 8);
}

TEST_CASE("Years may be told by seasons, decades by name, a life by what is used of it", "[facts]") {
  CHECK(facts("We hung new screens three summers ago, one torn, $19")["ageYears"] == "3~");
  CHECK_FALSE(facts("You stayed three winters and never mowed, $60").contains("ageYears"));
  CHECK(facts("Bath tile there since the seventies, one cracked, $25")["installed"] == "1970/1979");
  CHECK(facts("'90s linoleum in the pantry, torn, $110")["installed"] == "1990/1999");
  CHECK(facts("Lavabo de los años 70, cuarteado $140")["installed"] == "1970/1979");
  const json paint = facts("Paint 3 of 7 years gone, crayon on walls, 240.00");
  CHECK(paint["ageYears"] == 3);
  CHECK(paint["lifeYears"] == 7);
  CHECK_FALSE(facts("2 of 3 lease years were left, reletting fee $300").contains("ageYears"));
}

TEST_CASE("Who is said not to have done it is no cause anywhere in the line", "[facts]") {
  CHECK(facts("Cat urine in the den, 90.00")["cause"] == "pet");
  CHECK_FALSE(facts("Cat urine? We never had a cat. $90").contains("cause"));
  CHECK(facts("Gate bent by your son, $45")["cause"] == "tenant");
  CHECK(facts("Not my son. Gate bent in the storm, $45")["cause"] == "nature");
}

TEST_CASE("A sum in words of work for the only price is the work charged", "[facts]") {
  const json hone = facts("Granite etched, $380 to hone");
  CHECK(hone["remedy"] == "repair");
  CHECK_FALSE(hone.contains("repairPrice"));
  CHECK(facts("Granite replaced for $900, would have been $200 to hone")["repairPrice"] == "200.00");
}

TEST_CASE("Labor may name its hours without saying so, or in parts of one", "[facts]") {
  const json lines = facts("lbr 4.75 @ 36 = 171 / mtl 58.20 / tax 4.80 = 234.00 drywall");
  CHECK(lines["hours"]["count"] == 4.75);
  CHECK(lines["hourlyRate"] == "36.00");
  CHECK(lines["parts"].size() == 3);
  CHECK(lines["parts"][0]["nature"] == "labour");
  const json valve = facts("Replace fill valve. Part 13.40. Our time 3/4 hr @ 36. 40.40");
  CHECK(valve["hours"]["count"] == 0.75);
  CHECK(valve["parts"].size() == 2);
  CHECK_FALSE(facts("Two doors $80, one window $40, total $120").contains("parts"));
}

TEST_CASE("Rooms and things named in a row add up", "[facts]") {
  const json three = {{"count", 3}, {"unit", "room"}}, keys = {{"count", 3}, {"unit", "each"}};
  CHECK(facts("Repaint 2 bedrooms + living room, $400")["charged"] == three);
  CHECK(facts("Carpet LR, DR and hall, $210")["charged"] == three);
  CHECK(facts("Paint bedrooms 1, 2 and 3, $600")["charged"] == three);
  CHECK(facts("Pintura de dos recámaras y la sala, $420")["charged"] == three);
  CHECK(facts("2 door keys + 1 mailbox key not returned, $15")["charged"] == keys);
  CHECK_FALSE(facts("Paint all bedrooms and den, $600").contains("charged"));
  CHECK_FALSE(facts("Paint bedrooms, den and kitchen, $600").contains("charged"));
  CHECK_FALSE(facts("Blinds in LR, 2 bdrms, $135").contains("charged"));
  CHECK_FALSE(facts("Paint LR and den, carpet in hall, $500").contains("charged"));
}

TEST_CASE("A life and what is left or used of it tell both", "[facts]") {
  const auto both = [](const char* text, double age, int life) {
    INFO(text);
    const json read = facts(text);
    CHECK(read["ageYears"] == age);
    CHECK(read["lifeYears"] == life);
  };
  both("Carpet burned, about 3 yrs left of its 8, $200", 5, 8);
  both("Vinyl torn, yr 3 of 10, $90", 3, 10);
  both("Blind, 12 yr life used 9, slats bent, $12", 9, 12);
  both("Alfombra quemada, le faltaban 2 años de vida de 8, $250", 6, 8);
  CHECK(facts("Paint scuffed, depr 24/36 mo, $100")["lifeYears"] == 3);
  CHECK_FALSE(facts("60% of useful life remaining on blinds, 72.00").contains("lifeYears"));
}

TEST_CASE("Numbers of papers and sizes count nothing", "[facts]") {
  CHECK_FALSE(facts("PO 2023-118 replaced blinds 65.00").contains("charged"));
  CHECK_FALSE(facts("New 3068 steel door, old one kicked in, $300").contains("charged"));
  CHECK(facts("Lease sec 9 says tenant replaces filters, 4 filters 32.00")["charged"]["count"] == 4);
  CHECK_FALSE(facts("Late fee Mar 2024, 5%, $60").contains("installed"));
  CHECK(facts("Stove bought for $649 649.00")["priceNew"] == "649.00");
}

TEST_CASE("Parts without a sum are read where each is named", "[facts]") {
  const json parts = facts("New door, old one kicked in, mat 289 lab 176")["parts"];
  REQUIRE(parts.size() == 2);
  CHECK(parts[0]["amount"] == "289.00");
  CHECK(parts[1]["nature"] == "labour");
  CHECK(facts("Paint 2 bdrms, 8 hr x 2 men x 40 = 640, mat 118")["parts"][0]["amount"] == "640.00");
  CHECK(facts("Thermostat cover, mat. 74.95 no labor")["parts"][0]["nature"] == "materials");
  CHECK_FALSE(facts("Suite door re-key x1, kept 1 key of 3, no photo").contains("parts"));
}

TEST_CASE("With and without may be shortened, and so may words that patterns know", "[facts]") {
  CHECK(facts("Screen mesh rotted w/ age, 24")["cause"] == "age");
  CHECK(facts("Carpet, 3 pet stns, 120")["count"] == 3);
  CHECK(facts("Vinyl gouged, moved in w/ floor 2 yrs old, $84")["ageYearsAtMoveIn"] == 2);
}

TEST_CASE("What leaked is not what is charged where another thing was harmed by it", "[facts]") {
  CHECK(read("Fuga bajo el lavabo, piso hinchado 160")["element"] == "hard-flooring");
  CHECK(read("Kitchen sink leak, reported twice")["element"] == "sink-faucet");
}

TEST_CASE("What is counted in hours is no heading", "[facts]") {
  CHECK(read("Cleaning, 6 hrs")["element"] == "whole-unit-cleaning");
  CHECK(read("Cleaning")["notACharge"] == true);
}
