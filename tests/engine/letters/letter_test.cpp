// What each kind of letter says on worked cases. Days are counted by hand from a calendar; sections are those of the
// statutes named.

#include "letters/letter.h"
#include "support/letters.h"

#include <catch2/catch.hpp>

using namespace wearline;
using namespace wearline::test;
using Catch::Matchers::Contains;
using nlohmann::json;

namespace {

std::string replaced(std::string text, const std::string& what, const std::string& with) {
  const auto at = text.find(what);
  REQUIRE(at != std::string::npos);
  return text.replace(at, what.size(), with);
}

/// Washington: a stained carpet (fair in part), scuffs (wear), a lost key (fair). Sent in time: day 30 after July 31 is
/// Sunday, August 30, so Monday, August 31 is the last day (RCW 59.18.280(1)(a), RCW 1.12.040).
const std::string washington = R"({
  "wearline": 1, "jurisdiction": "US-WA", "side": "tenant",
  "tenancy": { "began": "2022-08-01", "ended": "2026-07-31", "possessionReturned": "2026-07-31", "monthlyRent": "1850.00",
    "forwardingAddressGiven": "2026-07-20" },
  "deposits": [ { "kind": "security", "amount": "1850.00", "paid": "2022-08-01" } ],
  "statement": { "dated": "2026-08-20", "sent": "2026-08-22", "received": "2026-08-25", "how": "first-class-mail", "statedTotal": "640.00",
    "refundPaid": "1210.00", "refundSent": "2026-08-22", "enclosed": ["written", "itemised", "reasons", "receipts", "labour-hours-and-rate"] },
  "records": { "moveInChecklist": { "made": true, "signedByBoth": true, "tenantHasCopy": true }, "photosAtMoveIn": true },
  "circumstances": { "written-lease": true },
  "lines": [
    { "id": "a", "text": "Carpet, pet stain", "amount": "400.00", "kind": "damage", "element": "carpet", "finding": "pet-damage", "cause": "pet",
      "remedy": "replace", "installed": "2021-07-31", "lifeYears": 10, "proof": ["receipts", "photos"] },
    { "id": "b", "text": "Scuffs in hallway", "amount": "175.00", "kind": "damage", "element": "interior-paint", "finding": "minor-scuffs", "proof": ["receipts", "photos"] },
    { "id": "c", "text": "Mailbox key", "amount": "65.00", "kind": "keys", "element": "lock-keys", "finding": "key-not-returned", "cause": "tenant", "proof": ["receipts"] } ] })";

/// The same sent on September 3, after the last day.
std::string washington_late() {
  return replaced(replaced(washington, R"("sent": "2026-08-22", "received": "2026-08-25")",
                           R"("sent": "2026-09-03", "received": "2026-09-05")"),
                  R"("refundSent": "2026-08-22")", R"("refundSent": "2026-09-03")");
}

/// Michigan: the list came on November 23; the tenant has 7 days to answer by mail, through November 30 (MCL 554.612).
const std::string michigan = R"({
  "wearline": 1, "jurisdiction": "US-MI", "side": "tenant",
  "tenancy": { "began": "2023-11-01", "ended": "2026-10-31", "possessionReturned": "2026-10-31", "forwardingAddressGiven": "2026-11-02" },
  "deposits": [ { "kind": "security", "amount": "1000.00", "paid": "2023-11-01" } ],
  "statement": { "sent": "2026-11-20", "received": "2026-11-23", "how": "first-class-mail", "refundPaid": "550.00",
    "enclosed": ["written", "itemised", "reasons", "tenant-rights-notice"] },
  "lines": [ { "id": "1", "text": "Floor finish, traffic wear", "amount": "450.00", "kind": "damage", "element": "hard-flooring", "finding": "finish-worn" } ] })";

/// Arizona: the landlord's 14 business days start with the tenant's written request (A.R.S. 33-1321(D)).
const std::string arizona = R"({
  "wearline": 1, "jurisdiction": "US-AZ", "side": "tenant",
  "tenancy": { "began": "2024-03-01", "ended": "2026-08-31", "possessionReturned": "2026-08-31", "monthlyRent": "1200.00" },
  "deposits": [ { "kind": "security", "amount": "1200.00", "paid": "2024-03-01" } ],
  "statement": { "came": false, "refundPaid": "0.00" }, "circumstances": { "other-way-agreed": false, "evicted": false }, "lines": [] })";

/// Colorado: the tenant must announce a suit at least 7 days ahead to ask for three times the sum (C.R.S.
/// 38-12-103(3)).
const std::string colorado = R"({
  "wearline": 1, "jurisdiction": "US-CO", "side": "tenant",
  "tenancy": { "began": "2024-03-01", "ended": "2026-03-31", "possessionReturned": "2026-03-31", "monthlyRent": "1400.00" },
  "deposits": [ { "kind": "security", "amount": "1400.00", "paid": "2024-03-01" } ],
  "statement": { "sent": "2026-04-20", "refundPaid": "1225.00", "enclosed": ["written", "reasons"] },
  "events": [ { "what": "tenant-demand", "on": "2026-05-04" } ],
  "lines": [ { "id": "1", "text": "Scuffs", "amount": "175.00", "kind": "damage", "element": "interior-paint", "finding": "minor-scuffs" } ] })";

} // namespace

TEST_CASE("A letter that questions charges accepts the fair ones in the same breath", "[letter]") {
  const json letter = letter_of_kind(washington, "question-charges");
  CHECK(words(letter, "accepted") == "I accept this charge in full: | charge c (“Mailbox key”), $65.00");
  CHECK_THAT(words(letter, "line-b"), Contains("ordinary wear") && Contains("Please take the whole $175.00 off."));
  CHECK(paragraph(letter, "line-c").is_null());
}

TEST_CASE("A partly fair charge shows its arithmetic", "[letter]") {
  // Half of ten years is used: 400 x 5/10 = 200 (straight line, as in the California tenants' guide).
  const std::string text = words(letter_of_kind(washington, "question-charges"), "line-a");
  CHECK_THAT(text, Contains("5 years old") && Contains("about 10 years") && Contains("50% of its worth was left") &&
                       Contains("$200.00"));
  CHECK_THAT(text, Contains("I accept $200.00 of it. Please take the other $200.00 off."));
}

TEST_CASE("The sums of a letter add up", "[letter]") {
  CHECK(words(letter_of_kind(washington, "question-charges"), "sums") ==
        "The sums: | Deposit | $1,850.00 | Fair charges | -$265.00 | Fair refund | $1,585.00 | Paid back so far | "
        "-$1,210.00 | Still to be paid back | $375.00");
  CHECK_THAT(words(letter_of_kind(washington, "question-charges"), "ask"),
             Contains("Please send me $375.00 by September 24, 2026."));
}

TEST_CASE("The statute is cited word for word, once for the charges it is about", "[letter]") {
  const std::string law = words(letter_of_kind(washington, "question-charges"), "law-ordinary-wear");
  CHECK_THAT(law, Contains("About charge b:") && Contains("(Law: RCW 59.18.280(1)(c)(i); RCW 59.18.260(4).)"));
}

TEST_CASE("What is unknown becomes a question and is counted in the middle", "[letter]") {
  const std::string open = replaced(washington, R"("installed": "2021-07-31", )", "");
  const std::string text = words(letter_of_kind(open, "question-charges"), "line-a");
  CHECK_THAT(text, Contains("Please tell me when it was put in or last renewed, and send the receipt.") &&
                       Contains("Until I know more, I count"));
  CHECK_THAT(text, Contains("none of its price is left")); // the day before which the charge would be nothing
  CHECK_THAT(words(letter_of_kind(open, "question-charges"), "ask"), Contains("does not hang on any open fact"));
}

TEST_CASE("A missed day is named with its count and its section", "[letter]") {
  const std::string text = words(letter_of_kind(washington_late(), "after-deadline"), "missed-statement");
  CHECK_THAT(text, Contains("The list of charges was due by August 31, 2026.") &&
                       Contains("That is 30 days after July 31, 2026"));
  CHECK_THAT(text, Contains("It was sent on September 3, 2026.") &&
                       Contains("(Law: RCW 59.18.280(1)(a); RCW 59.18.280(2).)"));
}

TEST_CASE("Where a firm rule lets nothing be kept, the letter asks for all that was kept", "[letter]") {
  // RCW 59.18.280(2): the landlord is liable for the full deposit. 1,850.00 - 1,210.00 = 640.00.
  const std::string ask = words(letter_of_kind(washington_late(), "after-deadline"), "ask");
  CHECK_THAT(ask,
             Contains("all that was kept: $640.00") && Contains("Even if the charges counted, $375.00 would be due"));
  CHECK_THAT(words(letter_of_kind(washington_late(), "question-charges"), "ask"),
             Contains("$375.00") && !Contains("640"));
}

TEST_CASE("Where such a rule needs care, what would be due is said as an if, and fair charges are not given away",
          "[letter]") {
  // 68 P.S. § 250.512(b): without a list in 30 days (August 31 is Monday after day 30, a Sunday) nothing may be kept.
  const std::string late =
      R"({"wearline":1,"jurisdiction":"US-PA","tenancy":{"began":"2024-08-01","ended":"2026-07-31","possessionReturned":"2026-07-31","forwardingAddressGiven":"2026-07-31"},
    "deposits":[{"amount":"1000.00","paid":"2024-08-01"}],"statement":{"sent":"2026-09-02","refundPaid":"935.00","refundSent":"2026-09-02"},
    "lines":[{"id":"1","text":"Key","amount":"65.00","kind":"keys","element":"lock-keys","finding":"key-not-returned","cause":"tenant","proof":["receipts"]}]})";
  const json letter = letter_of_kind(late, "after-deadline", "2026-09-20");
  CHECK_THAT(words(letter, "ask"), Contains("how you will put this right") && Contains("As I understand it:") &&
                                       Contains("If that holds here, all that was kept is due: $65.00."));
  CHECK_THAT(words(letter, "reserve"), Contains("If the charges count all the same"));
  CHECK_THAT(words(letter, "rights"), Contains("gives up no right"));
  CHECK(warns(letter_of_kind(late, "question-charges", "2026-09-20"), "missed-day"));
}

TEST_CASE("A late refund that was paid whole still asks how the miss is put right", "[letter]") {
  // Residential Tenancy Act (B.C.) s 38(6): double the deposit.
  const std::string paid =
      R"({"wearline":1,"jurisdiction":"CA-BC","tenancy":{"began":"2026-01-01","ended":"2026-06-30","possessionReturned":"2026-06-30","forwardingAddressGiven":"2026-06-25"},
    "deposits":[{"amount":"750.00","paid":"2026-01-01"}],"statement":{"refundPaid":"750.00","refundSent":"2026-07-16"},
    "circumstances":{"landlord-applied":false,"tenant-consented":false,"branch-ordered":false,"tenant-missed-both-times":false},"lines":[]})";
  const json letter = letter_of(paid, "{}", "2026-08-01");
  CHECK(letter["kind"] == "after-deadline");
  CHECK_THAT(words(letter, "ask"), Contains("how you will put this right") && !Contains("$"));
}

TEST_CASE("No day is named as missed that was kept", "[letter]") {
  const json letter = letter_of_kind(washington, "after-deadline");
  for (const auto& p : letter["paragraphs"]) CHECK_THAT(p["id"].get<std::string>(), !Contains("missed-"));
  CHECK(warns(letter, "no-missed-day"));
  CHECK_THAT(words(letter, "ask"), Contains("$375.00"));
}

TEST_CASE("A bill for more is answered with what is fair", "[letter]") {
  const std::string bill = replaced(washington, R"("statedTotal": "640.00")", R"("statedBalanceDue": "300.00")");
  const json letter = letter_of_kind(bill, "reply-to-demand");
  CHECK_THAT(words(letter, "purpose"), Contains("You ask me to pay $300.00 on top of my deposit."));
  CHECK_THAT(proposed(letter), Contains("reply-to-demand"));
}

TEST_CASE("A tenant who owes more than the deposit is told so, fair charges included", "[letter]") {
  const std::string owing =
      replaced(replaced(washington, R"("amount": "1850.00", "paid")", R"("amount": "100.00", "paid")"),
               R"("refundPaid": "1210.00")", R"("refundPaid": "0.00")");
  const json letter = letter_of_kind(owing, "reply-to-demand");
  CHECK_THAT(words(letter, "sums"), Contains("Fair charges beyond the deposit | $165.00"));
  CHECK_THAT(words(letter, "ask"), Contains("By my count $165.00 is left for me to pay."));
  CHECK(warns(letter, "nothing-to-claim"));
}

TEST_CASE("Where little is open the letter accepts what is fair and asks for the rest", "[letter]") {
  const json letter = letter_of(washington, "{}");
  CHECK(letter["kind"] == "accept-and-claim-rest");
  CHECK(paragraph(letter, "papers").is_null());
}

TEST_CASE("A second letter names the first and comes only when time to answer has passed", "[letter]") {
  const std::string asked =
      replaced(washington, R"("circumstances")",
               R"("events": [ { "what": "tenant-demand", "on": "2026-09-01" } ], "circumstances")");
  CHECK_THAT(words(letter_of_kind(asked, "second-letter", "2026-09-15"), "purpose"),
             Contains("I wrote to you on September 1, 2026"));
  CHECK_THAT(proposed(letter_of(asked, "{}", "2026-09-15")), Contains("second-letter"));
  CHECK_THAT(proposed(letter_of(asked, "{}", "2026-09-14")),
             !Contains("second-letter")); // 14 days: common practice, no source
  CHECK(warns(letter_of_kind(washington, "second-letter"), "no-first-letter"));
}

TEST_CASE("A word on what comes next is off until the person wants it", "[letter]") {
  const json letter = letter_of_kind(washington, "second-letter");
  CHECK(paragraph(letter, "next-step")["on"] == false);
  CHECK_THAT(letter["text"].get<std::string>(), !Contains("court"));
  const json on = letter_of(washington, R"({"kind":"second-letter","on":["next-step"]})");
  CHECK_THAT(on["text"].get<std::string>(), Contains("a small claims court can decide"));
}

TEST_CASE("An objection that the law wants goes item by item, in time, before any other letter", "[letter]") {
  const json letter = letter_of(michigan, "{}", "2026-11-25");
  CHECK(letter["kind"] == "objection");
  CHECK_THAT(letter["proposed"][0]["why"].get<std::string>(), Contains("November 30, 2026"));
  CHECK_THAT(words(letter, "law-of-letter"), Contains("MCL 554.612"));
  CHECK_THAT(words(letter, "line-1"), Contains("I do not agree with this charge."));
  CHECK(warns(letter, "send-by"));
  CHECK_THAT(proposed(letter_of(michigan, "{}", "2026-12-01")), !Contains("objection"));
}

TEST_CASE("A new address is given where the law wants one in writing", "[letter]") {
  // MCL 554.611: within 4 days after leaving, through November 4.
  const std::string no_address = replaced(michigan, R"(, "forwardingAddressGiven": "2026-11-02")", "");
  const json letter = letter_of(no_address, "{}", "2026-11-03");
  CHECK_THAT(proposed(letter), Contains("forwarding-address"));
  const json note = letter_of_kind(no_address, "forwarding-address", "2026-11-03");
  CHECK_THAT(words(note, "purpose"), Contains("[Your new address]"));
  CHECK_THAT(words(note, "law-of-letter"), Contains("MCL 554.611.)"));
  CHECK(paragraph(note, "sums").is_null());
}

TEST_CASE("A written request starts the landlord's days and gives their last day", "[letter]") {
  // Monday, September 14: business days 1 to 4 are 15-18, 5 to 9 are 21-25, 10 to 14 are September 28 to October 2.
  const json letter = letter_of(arizona, "{}", "2026-09-14");
  CHECK(letter["kind"] == "demand");
  CHECK_THAT(words(letter, "law-of-letter"), Contains("written request") && Contains("33-1321"));
  CHECK_THAT(words(letter, "facts"), Contains("I have not received a list of charges."));
  CHECK_THAT(words(letter, "ask"), Contains("Please send me $1,200.00 by October 2, 2026."));
}

TEST_CASE("The notice before a suit gives the days the law gives", "[letter]") {
  const json letter = letter_of(colorado, "{}", "2026-06-01");
  CHECK(letter["kind"] == "demand");
  CHECK_THAT(words(letter, "purpose"), Contains("If we have not settled this by June 8, 2026, I plan to go to court."));
  CHECK_THAT(words(letter, "law-of-letter"), Contains("the notice that the law asks for before a court case"));
}

TEST_CASE("An inspection is asked for while the tenant is still there", "[letter]") {
  // Cal. Civ. Code 1950.5(f): an initial inspection in the last two weeks.
  const std::string leaving =
      R"({"wearline":1,"jurisdiction":"US-CA","tenancy":{"began":"2024-10-01","ended":"2026-09-30"},
    "deposits":[{"amount":"2000.00","paid":"2024-10-01"}],"lines":[]})";
  const json letter = letter_of(leaving, "{}", "2026-09-10");
  CHECK(letter["kind"] == "inspection-request");
  CHECK_THAT(words(letter, "facts"), Contains("My tenancy ends on September 30, 2026."));
  CHECK_THAT(words(letter, "law-of-letter"), Contains("Cal. Civ. Code § 1950.5(f)"));
  CHECK_THAT(words(letter, "ask"), Contains("[days and times that suit you]"));
}

TEST_CASE("Papers are asked for first where most of the sum is open", "[letter]") {
  const std::string unknown =
      R"({"wearline":1,"jurisdiction":"US-TX","tenancy":{"ended":"2026-08-31","possessionReturned":"2026-08-31"},"deposits":[{"amount":"1300.00"}],
    "statement":{"refundPaid":"0.00"},"lines":[{"id":"1","text":"Carpet replacement","amount":"780.00","kind":"damage","element":"carpet","finding":"stains"},
    {"id":"2","text":"Cleaning","amount":"520.00","kind":"cleaning","element":"whole-unit-cleaning","finding":"work-only"}]})";
  const json letter = letter_of(unknown, "{}");
  CHECK(letter["kind"] == "ask-for-papers");
  CHECK_THAT(words(letter, "papers"),
             Contains("receipts") &&
                 Contains("For charge 1 (“Carpet replacement”): Please tell me when it was put in"));
  CHECK(paragraph(letter, "sums").is_null());
}

TEST_CASE("Rent is asked about by its days, not by photos or bills", "[letter]") {
  const std::string rent =
      R"({"wearline":1,"tenancy":{"ended":"2026-08-31","possessionReturned":"2026-08-31"},"deposits":[{"amount":"1300.00"}],
    "statement":{"refundPaid":"0.00","received":"2026-09-02"},"lines":[{"id":"1","text":"Unpaid rent","amount":"780.00","kind":"rent","element":"rent","finding":"unpaid-month"}]})";
  const json letter = letter_of_kind(rent, "question-charges");
  CHECK_THAT(words(letter, "line-1"), Contains("which days this charge covers") && !Contains("photo"));
  CHECK(paragraph(letter, "papers").is_null());
  CHECK_THAT(words(letter, "facts"), Contains("Your list of charges reached me on September 2, 2026."));
}

TEST_CASE("A rule read in an official guide is cited as a guide", "[letter]") {
  const std::string florida =
      R"({"wearline":1,"jurisdiction":"US-FL","tenancy":{"ended":"2026-06-30","possessionReturned":"2026-06-30"},"deposits":[{"amount":"500.00"}],
    "statement":{"refundPaid":"200.00"},"lines":[{"id":"1","text":"Scuffs","amount":"300.00","kind":"damage","element":"interior-paint","finding":"minor-scuffs"}]})";
  CHECK_THAT(words(letter_of_kind(florida, "question-charges"), "law-ordinary-wear"), Contains("(Official guide: "));
}

TEST_CASE("Charges that are fair are called fair", "[letter]") {
  const std::string fair =
      R"({"wearline":1,"jurisdiction":"US-WA","tenancy":{"ended":"2026-07-31","possessionReturned":"2026-07-31"},"deposits":[{"amount":"500.00"}],
    "statement":{"sent":"2026-08-10","refundPaid":"435.00"},"lines":[{"id":"1","text":"Key","amount":"65.00","kind":"keys","element":"lock-keys","finding":"key-not-returned","cause":"tenant","proof":["receipts"]}]})";
  const json letter = letter_of_kind(fair, "question-charges");
  CHECK_THAT(words(letter, "purpose"), Contains("I think they are fair."));
  CHECK_THAT(words(letter, "ask"), Contains("I ask for no change."));
  CHECK(warns(letter, "nothing-to-claim"));
}

TEST_CASE("A landlord's statement keeps what is fair, with reasons, and pays back the rest", "[letter]") {
  const std::string landlord = replaced(replaced(washington, R"("side": "tenant")", R"("side": "landlord")"),
                                        R"("refundPaid": "1210.00")", R"("refundPaid": "0.00")");
  const json letter = letter_of(landlord, "{}", "2026-08-10");
  CHECK(letter["kind"] == "itemized-statement");
  CHECK(words(letter, "charges") == "What is kept: | a. Carpet, pet stain | $400.00 | $200.00 | c. Mailbox key | "
                                    "$65.00 | $65.00 | All charges |  | $265.00");
  CHECK_THAT(words(letter, "line-a"),
             Contains("5 years old") && Contains("Kept for this: $200.00.") && Contains("Proof enclosed: receipts"));
  CHECK(words(letter, "refund") == "You get back $1,585.00.");
  CHECK_THAT(words(letter, "enclosures"), Contains("receipts") && Contains("payment of $1,585.00"));
  CHECK(warns(letter, "left-out"));       // the scuffs
  CHECK(warns(letter, "paper-receipts")); // RCW 59.18.280(1)(b): copies of bills or estimates
}

TEST_CASE("A landlord is told the last day to send the statement, and when it is past", "[letter]") {
  const std::string unsent =
      R"({"wearline":1,"jurisdiction":"US-WA","side":"landlord","tenancy":{"ended":"2026-07-31","possessionReturned":"2026-07-31"},"deposits":[{"amount":"500.00"}],
    "statement":{"came":false},"lines":[{"id":"1","text":"Key","amount":"65.00","kind":"keys","element":"lock-keys","finding":"key-not-returned","cause":"tenant"}]})";
  const json in_time = letter_of(unsent, "{}", "2026-08-20");
  CHECK_THAT(in_time["proposed"][0]["why"].get<std::string>(), Contains("August 31, 2026"));
  CHECK(warns(in_time, "send-by"));
  CHECK(warns(letter_of(unsent, "{}", "2026-09-02"), "late"));
}

TEST_CASE("A cover note says what was sent, when and how", "[letter]") {
  const json letter = letter_of_kind(washington, "cover-note", "2026-08-22");
  CHECK(words(letter, "sent") == "Sent on August 22, 2026, by first-class mail.");
  CHECK_THAT(words(letter, "enclosures"), Contains("statement of charges"));
}

TEST_CASE("A case note has facts, verdicts, ranges, days, steps, questions and sources", "[letter]") {
  const json note = letter_of_kind(washington, "adviser-note");
  CHECK_THAT(words(note, "charges"), Contains("Ordinary wear") && Contains("$200.00"));
  CHECK_THAT(words(note, "dates"), Contains("August 31, 2026 | met | RCW 59.18.280(1)(a)"));
  CHECK_THAT(words(note, "steps"), Contains("Accept what is fair, ask for the rest"));
  CHECK_THAT(words(note, "sources"), Contains("RCW 59.18.280(1)(a): read in the law's own text"));
}

TEST_CASE("A sheet for court has the sums, the limit, the papers and what is decided", "[letter]") {
  const json sheet = letter_of_kind(washington_late(), "small-claims-sheet");
  CHECK_THAT(words(sheet, "forms"), Contains("It is not a court form."));
  CHECK_THAT(words(sheet, "sums"), Contains("Still to be paid back | $375.00"));
  CHECK_THAT(words(sheet, "award"), Contains("$640.00")); // the full deposit less what was paid: RCW 59.18.280(2)
  CHECK_THAT(words(sheet, "limit-small-claims"), Contains("$10,000") && Contains("RCW 12.40.010"));
  CHECK_THAT(words(sheet, "missed-statement"), Contains("August 31, 2026"));
  CHECK_THAT(words(sheet, "evidence"), Contains("the move-in checklist") && Contains("your photos"));
  CHECK_THAT(words(sheet, "decides"), Contains("Was a day missed"));
  CHECK_THAT(words(sheet, "help"), Contains("Get advice before you file."));
}

TEST_CASE("The law of a weak pack is worded with care", "[letter]") {
  std::string utah = colorado;
  utah.replace(utah.find("US-CO"), 5, "US-UT");
  const json letter = letter_of_kind(utah, "question-charges", "2026-06-01");
  CHECK(warns(letter, "weak-law"));
  for (const auto& p : letter["paragraphs"])
    if (p["text"].get<std::string>().find("(Law:") != std::string::npos)
      CHECK_THAT(p["text"].get<std::string>(), Contains("As I understand it:"));
}

TEST_CASE("A paragraph that is switched off leaves the text, the others stay", "[letter]") {
  const json letter = letter_of(washington, R"({"kind":"question-charges","off":["records","line-b","purpose"]})");
  CHECK(paragraph(letter, "records")["on"] == false);
  CHECK(paragraph(letter, "purpose")["on"] == true); // it has to stand
  CHECK_THAT(letter["text"].get<std::string>(), !Contains("I can send you copies") &&
                                                    !Contains("Please take the whole $175.00 off") &&
                                                    Contains("I accept this charge"));
}

TEST_CASE("Paragraphs keep their ids and untouched ones their words when a fact changes", "[letter]") {
  const json before = letter_of_kind(washington, "question-charges");
  const json after = letter_of_kind(
      replaced(washington, R"("installed": "2021-07-31")", R"("installed": "2019-07-31")"), "question-charges");
  CHECK(words(before, "line-a") != words(after, "line-a"));
  CHECK(words(before, "line-b") == words(after, "line-b"));
  CHECK(words(before, "accepted") == words(after, "accepted"));
}

TEST_CASE("The caution is always there for the reader and never sent", "[letter]") {
  const json letter = letter_of_kind(washington, "question-charges");
  const json& last = letter["paragraphs"].back();
  CHECK(last["role"] == "caution");
  CHECK_THAT(last["text"].get<std::string>(), Contains("not legal advice") && Contains("legal aid"));
  CHECK_THAT(letter["text"].get<std::string>(), !Contains("not legal advice"));
}

TEST_CASE("A Spanish reader gets the English letter to send and a copy to read", "[letter]") {
  const json letter = letter_of(washington, R"({"kind":"question-charges","language":"es"})");
  CHECK(letter["language"] == "en");
  CHECK(letter["copy"]["language"] == "es");
  CHECK(letter["paragraphs"].size() == letter["copy"]["paragraphs"].size());
  CHECK_THAT(letter["copy"]["text"].get<std::string>(), Contains("Acepto este cargo por completo") &&
                                                            Contains("desgaste normal") &&
                                                            Contains("10 de septiembre de 2026"));
  CHECK_THAT(letter["paragraphs"].back()["text"].get<std::string>(), Contains("abogado"));
  CHECK(warns(letter, "reading-copy"));
  CHECK(letter["proposed"][0]["label"] == "Aceptar lo justo y pedir el resto");
}

TEST_CASE("A sheet that stays with its reader is in the reader's language", "[letter]") {
  const json sheet = letter_of(washington, R"({"kind":"small-claims-sheet","language":"es"})");
  CHECK(sheet["language"] == "es");
  CHECK(sheet["copy"]["language"] == "en");
}

TEST_CASE("Text of the case is quoted as it is, on one line", "[letter]") {
  const std::string marked = replaced(washington, "Scuffs in hallway", R"(<b>Scuffs</b>\n in \u0007 {sum} hallway)");
  CHECK_THAT(words(letter_of_kind(marked, "question-charges"), "line-b"), Contains("“<b>Scuffs</b> in {sum} hallway”"));
  const std::string longer = replaced(washington, "Scuffs in hallway", std::string(400, 'x'));
  CHECK_THAT(words(letter_of_kind(longer, "question-charges"), "line-b"), Contains(std::string(160, 'x') + "…”"));
}

TEST_CASE("Without law a letter cites none and says so", "[letter]") {
  const json letter = letter_of_kind(replaced(washington, R"("jurisdiction": "US-WA", )", ""), "question-charges");
  CHECK_THAT(letter["text"].get<std::string>(), !Contains("Law:"));
  CHECK(warns(letter, "no-law"));
}

TEST_CASE("Without a deposit the letter asks for the charges to be taken off", "[letter]") {
  const std::string unknown =
      replaced(washington, R"("deposits": [ { "kind": "security", "amount": "1850.00", "paid": "2022-08-01" } ],)", "");
  const json letter = letter_of_kind(unknown, "question-charges");
  CHECK(paragraph(letter, "sums").is_null());
  CHECK_THAT(words(letter, "ask"), Contains("Please take $375.00 off the charges"));
}

TEST_CASE("A charge without an amount is asked about", "[letter]") {
  const std::string no_amount = replaced(washington, R"("amount": "175.00", )", "");
  CHECK_THAT(words(letter_of_kind(no_amount, "question-charges"), "line-b"), Contains("I see no amount for this."));
  CHECK_THAT(words(letter_of_kind(no_amount, "question-charges"), "charges"), Contains("no amount given"));
}

TEST_CASE("What cannot be read is refused as the assessment refuses it", "[letter]") {
  const Day today = *parse_day("2026-09-10");
  for (const std::string_view bad : {"", "{", R"({"wearline":1})", R"({"wearline":1,"lines":[{"amount":12}]})",
                                     R"({"wearline":1,"lines":[],"jurisdiction":"US-XX"})"})
    CHECK(letter(bad, real_rules(), today, "{}") == assess(bad, real_rules(), today));
}

TEST_CASE("Wrong options are named with what is near", "[letter]") {
  const auto refused = [](std::string_view options) {
    return json::parse(letter(washington, real_rules(), *parse_day("2026-09-10"), options))["errors"];
  };
  CHECK(refused(R"({"kind":"question-charge"})")[0]["near"] == "question-charges");
  CHECK(refused(R"({"kind":"question-charge"})")[0]["code"] == "unknown-kind");
  CHECK(refused(R"({"language":"fr"})")[0]["code"] == "unknown-language");
  CHECK(refused(R"({"kinds":"demand"})").size() == 1);
  CHECK(refused(R"({"off":"line-1"})").size() == 1);
  CHECK(refused("[").size() == 1);
  CHECK(refused("").empty());
}

TEST_CASE("Every kind has a name, and each side its own", "[letter]") {
  for (const LetterKind kind : letter_kinds()) CHECK(letter_kind(name_of(kind)) == kind);
  CHECK_FALSE(letter_kind("no-such-letter"));
  const json letter = letter_of(replaced(washington, R"("side": "tenant")", R"("side": "landlord")"), "{}");
  CHECK(letter["kinds"].size() == letter_kinds_of("landlord").size());
  CHECK(letter_kinds_of("adviser") == letter_kinds_of("tenant"));
}
