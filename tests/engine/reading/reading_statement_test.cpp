#include "output/reading.h"
#include "reading/mending.h"
#include "reading/slip.h"
#include "reading/statement_reader.h"
#include "support/reading_rules.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace wearline;

namespace {

ReadStatement read(std::string_view text) { return read_statement(text, reading_test::rules()); }

std::string sums(const ReadStatement& s) {
  std::string out;
  for (const ReadCharge& c : s.charges) out += (out.empty() ? "" : " ") + c.amount.plain();
  return out;
}
std::string refund(const ReadStatement& s) { return s.refund ? s.refund->amount.plain() : std::string(); }
/// The sums asked about one by one; one that is a choice between readings is marked.
std::string asked(const ReadStatement& s) {
  std::string out;
  for (const OpenChoice& c : s.choices)
    out += (out.empty() ? "" : " ") + c.charge.amount.plain() + (c.reading ? "!" : "");
  return out;
}
std::optional<Day> day_of(const ReadStatement& s, DateKind kind) {
  for (const ReadDate& d : s.dates)
    if (d.kind == kind) return d.day;
  return std::nullopt;
}

} // namespace

TEST_CASE("A sum too large to be one is said to be that, a long number of something else is not", "[reading]") {
  const auto why = [](std::string_view text) {
    const ReadStatement s = read(text);
    return s.tray.empty() ? std::string() : s.tray.front().why;
  };
  CHECK(why("Paint hall $12345678901.00\nTwo keys $14.00") == "too-large");
  CHECK(why("Paint hall 12,345,678,901.00\nTwo keys $14.00") == "too-large");
  CHECK(why("Paint hall $" + std::string(50'000, '1') + "\nTwo keys $14.00") == "too-large");
  CHECK(why("Account 12345678901234\nTwo keys $14.00") != "too-large");
  CHECK(sums(read("Paint hall $9,999,999,999.99")) == "9999999999.99");
}

TEST_CASE("A year that a scan spelled with letters is a year, a word is not", "[reading]") {
  CHECK(mend_letters("June 30, 2O24") == "June 30, 2024");
  CHECK(mend_letters("Model 2X24") == "Model 2X24");
}

TEST_CASE("A tax is reckoned again where its rate is printed, and only there", "[reading]") {
  const auto doubts = [](std::string_view tax) {
    std::string out;
    for (const StatementCheck& check : read("Repaint hall $100.00\n" + std::string(tax)).checks)
      if (check.code == "tax") out += check.computed.plain();
    return out;
  };
  CHECK(doubts("Sales tax 8% $8.00").empty());
  CHECK(doubts("Sales tax 8% $9.00") == "8.00");
  CHECK(doubts("Sales tax $9.00").empty());
}

TEST_CASE("Charges, deposit, total and refund are told apart", "[reading]") {
  const ReadStatement s =
      read("Statement date: 03/18/2023   Vacated: 02/28/2023\n\nRepaint bedroom ...... 180.00\nTwo keys ...... "
           "14.00\n\nTOTAL ...... 194.00\nDEPOSIT ...... 950.00\nBALANCE RETURNED TO YOU ...... 756.00\n");
  CHECK(sums(s) == "180.00 14.00");
  CHECK(s.deposit() == Money::cents(95000));
  REQUIRE(s.total.has_value());
  CHECK(s.total->amount == Money::cents(19400));
  CHECK(refund(s) == "756.00");
  CHECK(day_of(s, DateKind::statement) == parse_day("2023-03-18"));
  CHECK(day_of(s, DateKind::move_out) == parse_day("2023-02-28"));
  CHECK(s.checks.empty());
}

TEST_CASE("The day a statement was sent is told from the day on it, and from a sum that was sent", "[reading]") {
  const ReadStatement both = read("Statement date: 03/18/2023\nMailed: 03/20/2023\n\nTwo keys ...... 14.00\n");
  CHECK(day_of(both, DateKind::statement) == parse_day("2023-03-18"));
  CHECK(day_of(both, DateKind::sent) == parse_day("2023-03-20"));

  const ReadStatement mail =
      read("From: The office\nSent: Tuesday, October 20, 2026 4:12 PM\nTo: Dana\nSubject: Deposit, 418 Laurel Ave\n\n"
           "Your deposit of $400.00 was held.\nTwo keys   $14.00\nOven      $60.00\n");
  CHECK(day_of(mail, DateKind::sent) == parse_day("2026-10-20"));
  CHECK(day_of(mail, DateKind::statement) == std::nullopt);

  const ReadStatement foot = read("October 28, 2026\n\nTwo keys ...... 14.00\nOven ...... 60.00\n\n"
                                  "Mailed October 29, 2026. Questions: call 512-555-0141.\n");
  CHECK(day_of(foot, DateKind::sent) == parse_day("2026-10-29"));

  const ReadStatement paid = read("Statement date: 03/18/2023\n\nTwo keys ...... 14.00\nDeposit ...... 400.00\n"
                                  "Check mailed 03/21/2023 ...... 386.00\n");
  CHECK(day_of(paid, DateKind::sent) == std::nullopt);
}

TEST_CASE("Every line of the text ends somewhere", "[reading]") {
  const std::string text = "Dear tenant,\n\nCleaning 50.00\nsome words\n???\n------\nPlease call.\n";
  const ReadStatement s = read(text);
  CHECK(s.fates.size() == 8); // seven lines and the empty one after the last break
  for (const std::string& fate : s.fates) CHECK_FALSE(fate.empty());
  std::size_t tray = 0;
  for (const TrayLine& t : s.tray) {
    CHECK_FALSE(t.why.empty());
    ++tray;
  }
  CHECK(tray >= 3);
}

TEST_CASE("Wrapped descriptions are joined, before the sum and after it", "[reading]") {
  const ReadStatement s = read("1. Carpet in the small bedroom has bleach spots\n   that would not come out          "
                               "$286.00\n2. Sprayer hose                     $41.50\n   (broken off)\n");
  REQUIRE(s.charges.size() == 2);
  CHECK(s.charges[0].text == "Carpet in the small bedroom has bleach spots that would not come out");
  CHECK(s.charges[0].places.size() == 2);
  CHECK(s.charges[1].text == "Sprayer hose (broken off)");
}

TEST_CASE("Places point into the line as it stands", "[reading]") {
  const std::string text = "> Cleaning of oven      $45.00\n> Deposit  $90.00\n";
  const ReadStatement s = read(text);
  REQUIRE(s.charges.size() == 1);
  const TextPlace at = s.charges[0].amount_place;
  CHECK(at.line == 1);
  CHECK(text.substr(at.start, at.end - at.start) == "$45.00");
  const TextPlace words = s.charges[0].places[0];
  CHECK(text.substr(words.start, words.end - words.start) == "Cleaning of oven");
}

TEST_CASE("A running balance is not a charge", "[reading]") {
  const ReadStatement s = read(
      "Deposit            1,000.00\nPaint    120.00    880.00\nLate fee  35.00    845.00\nClean     60.00    785.00\n");
  CHECK(sums(s) == "120.00 35.00 60.00");
}

TEST_CASE("The column of the tenant's share is charged", "[reading]") {
  const ReadStatement s = read("Item       Full cost   Owner pays   Tenant pays\nBlinds        120.00        60.00     "
                               "    60.00\nCarpet        450.00       300.00        150.00\n");
  CHECK(sums(s) == "60.00 150.00");
}

TEST_CASE("Rows set in under a charge that come to its sum only split it up", "[reading]") {
  const ReadStatement s = read("Cleaning                 $180.00\n   of which kitchen 60.00, bath 120.00\nCarpentry    "
                               "            $235.00\n   bedroom door 140.00\n   two drawers 95.00\n");
  CHECK(sums(s) == "180.00 235.00");
}

TEST_CASE("Sums inside sentences are charges, sums of the account, or facts", "[reading]") {
  const ReadStatement s =
      read("The carpet was new in 2019 and cost $840.00. Three years were left, so your share is $252.00 for the "
           "carpet.\nI kept $75.00 for cleaning the oven. From your deposit of $900.00 I return $573.00.\n");
  CHECK(sums(s) == "252.00 75.00");
  CHECK(s.deposit() == Money::cents(90000));
  CHECK(refund(s) == "573.00");
}

TEST_CASE("Credits are taken off, whatever marks them", "[reading]") {
  CHECK(sums(read("Rent balance  $400.00\nCredit for paint  $35.00\n")) == "400.00 -35.00");
  CHECK(sums(read("Item      Debit   Credit\nCurtains  62.00\nAllowance         30.00\n")) == "62.00 -30.00");
  CHECK(sums(read("Deposit + 500.00\nShelf broken    -  48.00\nYou paid the plumber  +  85.00\nPatch  -  20.00\n")) ==
        "48.00 -85.00 20.00");
  CHECK(sums(read("Deposit  500.00\nShelf (48.00)\nKey (5.00)\nRefund 447.00\n")) ==
        "48.00 5.00"); // brackets on all only mark deductions
}

TEST_CASE("Quoted text is another message than the one it stands in", "[reading]") {
  const ReadStatement s = read(
      "I do not agree with the $120.00 for paint.\n\n> Cleaning   $45.00\n> Paint     $120.00\n> Total     $165.00\n");
  CHECK(sums(s) == "45.00 120.00");
  REQUIRE_FALSE(s.tray.empty());
  CHECK(s.tray[0].why == "other-message");
}

TEST_CASE("No sum is made up", "[reading]") {
  for (const char* text :
       {"Unit 12, phone 555-0142, zip 99201, 3 keys returned, lease 2024-118", "Photos 1-14 attached, see page 2",
        "Carpet 12 x 14 ft, 10 years old, 2019", "", "30 days", "1/2 bath, 3BR"}) {
    INFO(text);
    CHECK(sums(read(text)).empty());
  }
  const ReadStatement product = read("Screens 3 @ 22.00\n");
  REQUIRE(product.charges.size() == 1);
  CHECK(product.charges[0].amount == Money::cents(6600));
  CHECK(product.charges[0].computed);
}

TEST_CASE("The paper's own arithmetic is checked", "[reading]") {
  const auto codes = [](const ReadStatement& s) {
    std::string out;
    for (const StatementCheck& c : s.checks) out += c.code + " ";
    return out;
  };
  CHECK(codes(read("Paint 100.00\nKey 5.00\nTotal 115.00\n")) == "sum ");
  CHECK(codes(read("Paint 100.00\nDeposit 500.00\nRefund to you 450.00\n")) == "refund ");
  CHECK(codes(read("Clean, 6 hours at 35.00   225.00\n")) == "extension ");
  CHECK(codes(read("Stove  40.00\nFloor  30.00\nsubtotal  80.00\n")) == "subtotal ");
  CHECK(codes(read("Paint 200.00\nSales tax 8%  17.60\n")) == "tax ");
  CHECK(codes(read("Paint 200.00\nSales tax 8%  16.00\n")).empty());
}

TEST_CASE("The reading whose sums close decides what no word tells", "[reading]") {
  const ReadStatement odd =
      read("Stove burner cap  25.00\nHall paint  180.00\nWe had to spend  205.00\nYou gave us  900.00\n"
           "Which means you see again  695.00\n");
  CHECK(sums(odd) == "25.00 180.00");
  CHECK(odd.deposit() == Money::cents(90000));
  REQUIRE(odd.total.has_value());
  CHECK(odd.total->amount == Money::cents(20500));
  CHECK(refund(odd) == "695.00");
  CHECK(odd.closed.size() == 2);

  const ReadStatement passing =
      read("Deposit 700.00\nFridge shelf  40.00\nDoor stop  15.00\nTotal  55.00\nRefund  645.00\n\n"
           "A new shelf sells for $58.00, but I found a used one.\n");
  CHECK(sums(passing) == "40.00 15.00");

  const ReadStatement ledger = read("Deposit held                  1,000.00\nPaint          120.00      880.00\n"
                                    "Cleaning        60.00      820.00\nCheck 311 to tenant   820.00   0.00\n");
  CHECK(sums(ledger) == "120.00 60.00");
  CHECK(refund(ledger) == "820.00");
}

TEST_CASE("An invoice attached to an account is not counted again", "[reading]") {
  const ReadStatement s = read("Painting, bill 1   250.00\nDrain, bill 2   60.00\nTotal   310.00\nDeposit   900.00\n"
                               "Refund   590.00\n\nAttachment, bill 1\nPainter   200.00\nPaint   50.00\n");
  CHECK(sums(s) == "250.00 60.00");
  CHECK(std::any_of(s.tray.begin(), s.tray.end(), [](const TrayLine& t) { return t.why == "repeated"; }));
}

TEST_CASE("What is named after the refund is seldom a charge", "[reading]") {
  const ReadStatement s =
      read("Stair carpet cleaned  260.00\nDishwasher rack  180.00\nTotal  440.00\nDeposit  1,800.00\n"
           "Refund  1,360.00\n\nOne half of the carpet money 680.00, the other half 680.00.\n");
  CHECK(sums(s) == "260.00 180.00");
}

TEST_CASE("Several deposits in one line that come to what is held", "[reading]") {
  const ReadStatement s = read("Held: security deposit 1,100.00 and last month's rent 1,100.00, together 2,200.00\n\n"
                               "Bathroom floor  300.00\nTotal charged  300.00\nRefund to you  1,900.00\n");
  CHECK(s.deposit() == Money::cents(220000));
  CHECK(s.checks.empty());
}

TEST_CASE("A sum so far is told by its arithmetic, not by its words", "[reading]") {
  const ReadStatement s =
      read("Old balance 18.00\nLate fee 30.00\nOven 118.00\nSo on to p. 2    166.00\nPage 2    166.00\n"
           "Blinds 55.50\nTotal 221.50\nDeposit 850.00\nRefund, ck 7719 628.50\n");
  CHECK(sums(s) == "18.00 30.00 118.00 55.50");
  CHECK(s.total->amount == Money::cents(22150));
  CHECK(refund(s) == "628.50");
}

TEST_CASE("Of several columns the one that comes out in the account is charged", "[reading]") {
  const ReadStatement s = read("                         house    front    back\n"
                               "Shrubs                   84.00    28.00   56.00\n"
                               "Clean, whole house      270.00    90.00  180.00\n"
                               "Hole in front door      115.00   115.00     -\n"
                               "Iron mark, back carpet  140.00      -    140.00\n"
                               "Column sums             609.00   233.00  376.00\n\n"
                               "Deposit 800.00\nLess front column 233.00\nYours 567.00\n");
  CHECK(sums(s) == "28.00 90.00 115.00");
  CHECK(s.total->amount == Money::cents(23300));
}

TEST_CASE("In sentences a price that is set aside is not charged", "[reading]") {
  const ReadStatement s = read(
      "I was holding $875 for the cottage. The man wanted $119 to come out, so I fixed it and am asking $20 for the "
      "gasket.\n"
      "Then there is $72.50 for cleaning the rug and $31 toward the broken pole (it cost $62, I split it with you).\n"
      "Painting the stairs cost me $240, but you owe nothing for that. So that's $123.50 that I keep, and the other\n"
      "$751.50 went to your account.\n");
  CHECK(sums(s) == "20.00 72.50 31.00");
  CHECK(s.deposit() == Money::cents(87500));
  CHECK(refund(s) == "751.50");
  const ReadStatement equation =
      read("I replaced the fan cover, $12.40.\n\nDeposit $1,075.00 - $12.40 = $1,062.60, check enclosed.\n");
  CHECK(sums(equation) == "12.40");
  CHECK(refund(equation) == "1062.60");
}

TEST_CASE("An account told in sentences is found by what comes out, where no word tells it", "[reading]") {
  const ReadStatement s = read(
      "Good evening, I finally have the numbers. The glass for the shower was $212.00; the shop first wanted $340.00.\n"
      "My cousin and I spent four hours on the garage, $80.00. You still owed $36.40 on the electric. That put "
      "$328.40\n"
      "against the $1,400.00 and $1,071.60 toward you on Friday.\n");
  CHECK(sums(s) == "212.00 80.00 36.40");
  CHECK(s.deposit() == Money::cents(140000));
  CHECK(refund(s) == "1071.60");
}

TEST_CASE("Deposits, interest and their sum in one sentence", "[reading]") {
  const ReadStatement s = read("You paid $1,000.00 at move-in plus $250.00 for the dog, $1,250.00 together.\n\n"
                               "Carpet 320.00\nScreen door 88.00\nTotal 408.00\n\nWe return $842.00 by mail.\n");
  CHECK(s.deposit() == Money::cents(125000));
  CHECK(sums(s) == "320.00 88.00");
  CHECK(refund(s) == "842.00");
  const ReadStatement all =
      read("We are returning your whole deposit of $1,125.00 plus $4.60 interest, in all $1,129.60.\n");
  CHECK(all.charges.empty());
  CHECK(all.interest->amount == Money::cents(460));
}

TEST_CASE("On a form with boxes only what is ticked is charged", "[reading]") {
  const ReadStatement s = read("[x] Stove cleaning .... $45\n[ ] Refrigerator cleaning .... $35\n[X] Blinds .... $42\n"
                               "[ ] Carpet cleaning .... $90\nDeposit: $600\nRefund: $513\n");
  CHECK(sums(s) == "45.00 42.00");
}

TEST_CASE("An invoice before the account is not counted again", "[reading]") {
  const ReadStatement s =
      read("Invoice 5512, copy attached:\n   Deep clean 180.00\n   Oven add-on 30.00\n   Total invoice 210.00\n\n"
           "Deposit 800.00\nCleaning (see invoice) 210.00\nToilet seat 24.00\nTotal deductions 234.00\n"
           "Refund 566.00\n");
  CHECK(sums(s) == "210.00 24.00");
}

TEST_CASE("A charge is never left out to make a sum fit", "[reading]") {
  const ReadStatement s = read("Stove cleaning  60.00\nCloset door  70.00\nSmoke alarm battery  25.00\nTotal "
                               "130.00\nDeposit 700.00\nRefund 570.00\n");
  CHECK(sums(s) == "60.00 70.00 25.00");
  REQUIRE(s.checks.size() == 1);
  CHECK(s.checks[0].code == "sum");
  CHECK(s.checks[0].slip == Slip::left_out);
  CHECK(s.checks[0].left_out == "Smoke alarm battery");
}

TEST_CASE("What fits both ways is a choice, and is not charged", "[reading]") {
  const ReadStatement s = read("Oven cleaning  60.00\nVarley  40.00\nQuimby  40.00\nTotal  100.00\n");
  CHECK(sums(s) == "60.00");
  CHECK(s.choices.size() == 2);
}

TEST_CASE("Where the paper states another sum, charges that little speaks for are asked about one by one",
          "[reading]") {
  const ReadStatement s = read("The nephew cleaned all day and I gave him $90.00. The lock had to be drilled and the "
                               "locksmith's bill was $74.00. I had a deposit of $800.00 and send you $606.00.\n");
  CHECK(s.charges.empty());
  CHECK(asked(s) == "90.00 74.00");
  // Rows that name what they are for stay: it is the paper that adds wrongly.
  const ReadStatement rows = read("Stove cleaning  60.00\nCloset door  70.00\nTotal  150.00\n");
  CHECK(sums(rows) == "60.00 70.00");
  CHECK(rows.choices.empty());
}

TEST_CASE("Words unknown to it, with the sum that deposit and refund leave, are the total", "[reading]") {
  const ReadStatement s = read("Held  1,325.00\nCleaning fridge  48.00\nRepair gouge in floor  165.00\n"
                               "Window screen  70.00\nCut  249.00\nRefund  1,076.00\n");
  CHECK(sums(s) == "48.00 165.00 70.00");
  REQUIRE(s.total);
  CHECK(s.total->amount == Money::cents(24900));
  REQUIRE(s.checks.size() == 1);
  CHECK(s.checks[0].code == "sum");
}

TEST_CASE("What stands under a heading of deposits is held where the sums then come out", "[reading]") {
  const ReadStatement s = read("Deposits held\n   Security  1,100.00\n   Dog  300.00\n   Garage opener  50.00\n"
                               "             1,450.00\nOven cleaning  60.00\nCloset door guide  14.25\n"
                               "Deductions  74.25\nRefund  1,375.75\n");
  CHECK(sums(s) == "60.00 14.25");
  REQUIRE(s.deposit());
  CHECK(*s.deposit() == Money::cents(145000));
}

TEST_CASE("The sum of a room may stand beside its name, above its lines", "[reading]") {
  const ReadStatement s = read("Kitchen  Room total  85.00\n  Oven cleaning  60.00\n  Drip pans  25.00\n"
                               "Bedroom  Room total  40.00\n  Blind slats  40.00\nTotal  125.00\n");
  CHECK(sums(s) == "60.00 25.00 40.00");
  CHECK(s.checks.empty());
  CHECK(s.closed.size() == 3);
}

TEST_CASE("A charge taken back in a chat is none where the sums then come out", "[reading]") {
  const std::string chat = "[3/4/25, 6:02 PM] Dina (9 Elm Ct): deposit was 750\n"
                           "[3/4/25, 6:03 PM] Dina (9 Elm Ct): blinds bent 55\n"
                           "[3/4/25, 6:04 PM] Dina (9 Elm Ct): bathroom fan cover cracked 22\n"
                           "[3/4/25, 6:09 PM] Dina (9 Elm Ct): you're right, forget the fan\n"
                           "[3/4/25, 6:10 PM] Dina (9 Elm Ct): cleaning 95\n";
  CHECK(sums(read(chat + "[3/4/25, 6:14 PM] Dina (9 Elm Ct): so 150 total\n")) == "55.00 95.00");
  CHECK(sums(read(chat + "[3/4/25, 6:14 PM] Dina (9 Elm Ct): so 172 total\n")) == "55.00 22.00 95.00");
}

TEST_CASE("What an earlier statement said is not charged", "[reading]") {
  const ReadStatement told = read("This replaces our statement of January 10, which showed deductions of $505.00 and a "
                                  "refund of $345.00. The charge for cleaning was lowered from $150.00 to $105.00.\n\n"
                                  "Cleaning  $105.00\nPatch and paint  $95.00\nShower rod  $24.00\n"
                                  "Total  $224.00\nDeposit  $850.00\nRefund  $626.00\n");
  CHECK(sums(told) == "105.00 95.00 24.00");
  CHECK(refund(told) == "626.00");
  const ReadStatement listed =
      read("Carpet, stairs  210.00\nCleaning  125.00\nFence picket  12.00\nSum  347.00\n\n"
           "Carpet, stairs  120.00\nCleaning  125.00\nFence picket  12.00\nCorrect sum  257.00\n"
           "Deposit  1,150.00\nRefund  893.00\n");
  CHECK(sums(listed) == "120.00 125.00 12.00");
  CHECK(listed.total->amount == Money::cents(25700));
}

TEST_CASE("Notes under an account that comes out are no charges", "[reading]") {
  const ReadStatement s = read("Flooring (1)  268.80\nCleaning (2)  90.00\nRefrigerator gasket (3)  57.00\n"
                               "Total  415.80\nDeposit  1,525.00\nRefund  1,109.20\n\n"
                               "(1) 84 sq ft at $8.00 = $672.00; 40% charged.\n(2) The crew billed $150.00.\n"
                               "(3) Part $32.00, fitting $25.00.\n");
  CHECK(sums(s) == "268.80 90.00 57.00");
  CHECK(s.choices.empty());
}

TEST_CASE("A question before a sum says what it is", "[reading]") {
  const ReadStatement s = read("How much was your deposit?\n$1,050.00\n\nWhat did we take out of it?\n"
                               "Carpet deodorizing: $90.00\nMini blinds: $32.00\n");
  CHECK(sums(s) == "90.00 32.00");
  CHECK(*s.deposit() == Money::cents(105000));
}

TEST_CASE("Where a deposit is named and nothing found that is left of it, sums in sentences are asked about",
          "[reading]") {
  const ReadStatement s = read("Le devuelvo su depósito de $850.00 menos lo siguiente. La limpieza costó $75.00.\n\n"
                               "Le entrego entonces $607.00 en efectivo.\n");
  CHECK(s.charges.empty());
  CHECK(asked(s) == "75.00 607.00");
  // What says nothing of a deposit is a list of charges.
  CHECK(sums(read("The cleaning cost $75.00. The mirror cost $40.00.\n")) == "75.00 40.00");
}

TEST_CASE("A price said of the next sum is not said of this one", "[reading]") {
  CHECK(sums(read(
            "The bedroom window came to $130.00; a new one would be $210.00. The cleaning took $48.00 and so you get "
            "$622.00 of your deposit of $800.00.\n")) == "130.00 48.00");
}

TEST_CASE("A sum in all, after a comma, is the total", "[reading]") {
  const ReadStatement s = read("From your deposit of $1,150.00 I took $60.00 for the window cleaner, $85.00 for a new "
                               "shelf and $44.00 for the plumber, $189.00 in all. Enclosed you find $961.00.\n");
  CHECK(sums(s) == "60.00 85.00 44.00");
  REQUIRE(s.total);
  CHECK(s.total->amount == Money::cents(18900));
}

TEST_CASE("Letters taken for digits are marked", "[reading]") {
  const ReadStatement s = read("Clean carpet  $11S.00\nMend latch  $1O5.OO\nTotal  $22O.00\n");
  CHECK(sums(s) == "115.00 105.00");
  REQUIRE(s.charges.size() == 2);
  CHECK(s.charges[0].mended);
  CHECK_FALSE(read("Clean carpet  $115.00\n").charges[0].mended);
}

TEST_CASE("What would explain a sum that does not come out", "[reading]") {
  CHECK(slip_between(Money::cents(77500), Money::cents(75700)) == Slip::turned_digits);
  CHECK(slip_between(Money::cents(2555000), Money::cents(25550)) == Slip::lost_point);
  CHECK(slip_between(Money::cents(11500), Money::cents(10500)) == Slip::none);
}

TEST_CASE("Sums in words: dollars and cents", "[reading]") {
  CHECK(sums(read("I took\n  40 dollars for the fridge shelf\n  7 dollars 50 cents for two switch plates\n")) ==
        "40.00 7.50");
}

TEST_CASE("Sums written out in words", "[reading]") {
  CHECK(sums(read("We kept ninety-five dollars for the chimney sweep and sixty-two dollars and fifty cents for the "
                  "gate lock.\n")) == "95.00 62.50");
  CHECK(sums(read("Clean oven    one hundred and twenty dollars\nMend latch    two hundred five dollars\n")) ==
        "120.00 205.00");
  CHECK(sums(read("Limpieza del horno    ciento veinte dólares\nPintura    mil doscientos dólares\n")) ==
        "120.00 1200.00");
  // In words and in figures it is one sum, as on a check.
  const ReadStatement s = read("Clean carpet  $110.00\nMend latch  $40.00\nTotal  $150.00\n"
                               "Your deposit was nine hundred and 00/100 dollars ($900.00).\n");
  CHECK(sums(s) == "110.00 40.00");
  CHECK(s.deposit() == Money::cents(90000));
  // Counts are no sums.
  CHECK(sums(read("Clean two hundred tiles in seven rooms\nMend latch  $40.00\n")) == "40.00");
}

TEST_CASE("Numbers passed over at first are charges where the sums then come out", "[reading]") {
  const char* told = "Hi, your deposit was 450. I took 40 out for the couch you left and 25 keys.\n"
                     "Thats 65 so you get 385.\n";
  const ReadStatement s = read(told);
  CHECK(sums(s) == "40.00 25.00");
  CHECK(refund(s) == "385.00");
  // A total that its words name stays what it is, though a wrong sum would come out with it turned.
  const ReadStatement off = read("Screens 3 @ 24.00 .... 72.00\nPaint .... 180.00\nCarpet .... 206.00\n"
                                 "TOTAL .... 468.00\nDEPOSIT .... 950.00\nBALANCE RETURNED TO YOU .... 482.00\n");
  REQUIRE(off.total.has_value());
  CHECK(off.total->amount == Money::cents(46800));
  CHECK(refund(off) == "482.00");
}

TEST_CASE("A sum of the account that its other sums give is found among the numbers", "[reading]") {
  const ReadStatement s =
      read("Deposit 750.00\nBlinds bent 55.00\nCleaning 95.00\nTotal 150.00\nhe wires 600 on Monday\n");
  CHECK(refund(s) == "600.00");
  const ReadStatement two =
      read("Deposit from Jess: $480.00\nDeposit from Marta: $480.00\n* hall shade $26.00\n* towel hooks "
           "$14.00\nThat leaves $920.00.\n");
  CHECK(two.deposit() == Money::cents(96000));
}

TEST_CASE("A chat: what the tenant says charges nothing, and the next message may correct a sum", "[reading]") {
  const ReadStatement s =
      read("[8/2/24, 7:15 PM] Gus: deposit was 900\n[8/2/24, 7:16 PM] Gus: oven cleaning 70\n"
           "[8/2/24, 7:16 PM] Gus: make that 80\n[8/2/24, 7:17 PM] Nina: the door lock was $30 new\n"
           "[8/2/24, 7:25 PM] Gus: mailbox key 15\n[8/2/24, 7:26 PM] Gus: so 95 total, you get 805\n");
  CHECK(sums(s) == "80.00 15.00");
  CHECK(refund(s) == "805.00");
}

TEST_CASE("A running balance tells credits, and what takes it to nothing is the refund", "[reading]") {
  const ReadStatement s =
      read("Date | Memo | Amount | Balance\n11/30/2024 | Deposit | 960.00 | 960.00\n"
           "12/02/2024 | Late fee | -35.00 | 925.00\n12/06/2024 | Final clean | -105.00 | 820.00\n"
           "12/10/2024 | Late fee reversed | 35.00 | 855.00\n12/13/2024 | Ck 7719 to tenant | -855.00 | 0.00\n");
  CHECK(sums(s) == "35.00 105.00 -35.00");
  CHECK(refund(s) == "855.00");
}

TEST_CASE("A room headed by its sum is no charge, nor is a share of what stands beside it", "[reading]") {
  CHECK(
      sums(read("Laundry (72.00)\n    Lint trap missing   22.00\n    Floor drain cleared   50.00\nTotal   72.00\n")) ==
      "22.00 50.00");
  CHECK(sums(read("Oven cleaned   40.00\nRug cleaned   60.00\nTotal   100.00\neach bears   50.00\n")) == "40.00 60.00");
}

TEST_CASE("The facts of a record are no charges, its items' sums are no totals", "[reading]") {
  const ReadStatement s =
      read("deposit_held: 500.00\nrent_monthly: 900.00\nitem 1\n  what: Fob\n  qty: 2\n  unit_price: 40.00\n"
           "  charge: 80.00\nitem 2\n  what: Hood fan, grease\n  hours: 1.5\n  charge: 54.00\nrefund: 366.00\n");
  CHECK(sums(s) == "80.00 54.00");
  CHECK(refund(s) == "366.00");
}

TEST_CASE("A bill below the account that comes to one of its charges is not charged again", "[reading]") {
  CHECK(
      sums(read(
          "Deposit 1,100.00\nCarpet repair 186.00\nCleaning 95.00\nTotal 281.00\nRefund 819.00\n\nStretch carpet, hall "
          "140.00\nTransition strip 24.00\nTrip 22.00\nTotal 186.00\n")) == "186.00 95.00");
}

TEST_CASE("Digits turned in a total that deposit and refund confirm put no charge in doubt", "[reading]") {
  const ReadStatement s =
      read("Your deposit was $1,100.00. The tub repair was $85.00. Our cleaner spent a day, $120.00. The "
           "hedge cost $84.00. Together $298.00. We return $802.00.\n");
  CHECK(sums(s) == "85.00 120.00 84.00");
  CHECK(asked(s).empty());
}

TEST_CASE("Where no charge was found, bare numbers beside things are asked about", "[reading]") {
  const ReadStatement s =
      read("Hey Sam this is Walt. Your deposit was 640 okay so I had the screen door done it was\n56 and "
           "the closet track was 30 and somebody had to do the stove too bye");
  CHECK(s.charges.empty());
  CHECK(asked(s) == "56.00 30.00");
}

TEST_CASE("A sum written with a blank for the thousands, and a price times a count", "[reading]") {
  const ReadStatement s = read("Held: 1 250,00 $\nCleaning   150,00 $\nWall repair   85,50 $\nTotal   235,50 $\n");
  CHECK(s.deposit() == Money::cents(125000));
  CHECK(sums(read("- $65.00 for the oven\n- $18 x 2 for the lost keys\n")) == "65.00 36.00");
}

TEST_CASE("Spanish and European figures", "[reading]") {
  const ReadStatement s = read("Fecha: 14/03/2025   Desocupó: 28/02/2025\nPintura de la casa .... 1.240,50\nDepósito "
                               ".... 1.500,00\nA devolver .... 259,50\n");
  CHECK(s.language == "es");
  CHECK(sums(s) == "1240.50");
  CHECK(day_of(s, DateKind::move_out) == parse_day("2025-02-28"));
  CHECK(refund(s) == "259.50");
}

TEST_CASE("The facade gives JSON with places in UTF-16 units", "[reading]") {
  Wording none;
  const auto json = nlohmann::json::parse(read_statement(
      "Persiana dañada \xF0\x9F\x98\x80 recámara 2 ..... 40.00\nnada\n", reading_test::rules(), none, "es"));
  REQUIRE(json.at("lines").size() == 1);
  const auto& line = json.at("lines")[0];
  CHECK(line.at("amount").get<std::string>() == "40.00");
  CHECK(line.at("element").get<std::string>() == "window-covering");
  CHECK(line.at("amountFrom").at("start").get<int>() == 36);
  CHECK(line.at("amountFrom").at("end").get<int>() == 41);
  CHECK(json.at("deposit").is_null());
  CHECK(json.at("tray").size() == 1);
  CHECK(json.at("inputLines").size() == 3);
}

// Forms of dates in letters, common practice, no source.
TEST_CASE("A date without a year takes it from the paper's own", "[reading]") {
  const auto out_of = [](std::string_view text) { return day_of(read(text), DateKind::move_out); };
  CHECK(out_of("January 9, 2025\nYou handed me the keys on December 20.\nCleaning 60.00\n") == parse_day("2024-12-20"));
  CHECK(out_of("[7/8/24, 6:42 PM] Ann: so you were out 6/30 and deposit was 875\n") == parse_day("2024-06-30"));
  // Nothing tells the year.
  CHECK_FALSE(out_of("You handed me the keys on December 20.\nCleaning 60.00\n").has_value());
}

TEST_CASE("The day the home was left is told beside, above or behind its date, and is not the lease's or a bill's",
          "[reading]") {
  const auto out_of = [](std::string_view text) { return day_of(read(text), DateKind::move_out); };
  CHECK(out_of("March 4, 2025\nAs you know I had your keys on\nFebruary 28. The oven was $60.00\n") ==
        parse_day("2025-02-28"));
  CHECK(out_of("Photos taken August 31, 2025, the day you left\nOven 60.00\n") == parse_day("2025-08-31"));
  CHECK(out_of("Lease end 05/31/2021   Vacated 04/30/2021\nOven 60.00\n") == parse_day("2021-04-30"));
  CHECK(out_of("Your lease ended April 30, 2025.\nOven 60.00\n") == parse_day("2025-04-30"));
  CHECK_FALSE(out_of("Invoice 06/14/2023 for the oven\nOven 60.00\n").has_value());
}

TEST_CASE("The day of a paper: in an office's figures, with letters for digits, not that of a check", "[reading]") {
  const auto made = [](std::string_view text) { return day_of(read(text), DateKind::statement); };
  CHECK(made("MOVE-OUT CHARGES   RUN DT 20240711\nKEY 12.00\n") == parse_day("2024-07-11"));
  CHECK(made("Unit D     Date :  O9/l2/2O25\nOven 60.00\n") == parse_day("2025-09-12"));
  CHECK(made("Unit #9        May 20, 2025\nOven 60.00\n") == parse_day("2025-05-20"));
  CHECK_FALSE(made("What I keep\nOven 60.00\nCheck 2207 dated 6/20/2023  760.00\n").has_value());
}

TEST_CASE("Hostile text gives an answer", "[reading]") {
  std::string deep(5000, '>');
  std::string bars(3000, '|');
  std::string digits(4000, '9');
  std::string words;
  for (int i = 0; i < 3000; ++i) words += "carpet 5 ";
  for (const std::string& text :
       {deep, bars, digits, words, std::string("\0\xFF\xFE\r\r\n\t", 7), std::string("\"a,b\n\"\"\n,")})
    CHECK(read(text).fates.size() >= 1);
}
