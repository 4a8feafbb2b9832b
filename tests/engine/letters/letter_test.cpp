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
    { "id": "a", "text": "Carpet, pet stain", "amount": "400.00", "kind": "damage", "element": "carpet", "finding": "pet-damage", "cause": "pet", "atMoveIn": "good",
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

TEST_CASE("A letter asks first, then the charges by reason; what its sender entered as theirs is not disputed",
          "[letter]") {
  const json letter = letter_of_kind(washington, "question-charges");
  // 1,850.00 less 1,210.00 paid back, less 65.00 for the key and 200.00 for the carpet.
  CHECK(words(letter, "ask") == "Please send me $375.00 from my security deposit by September 24, 2026.");
  CHECK(words(letter, "undisputed") == "I do not dispute charge c, $65.00.");
  CHECK_THAT(words(letter, "group-wear"),
             Contains("Ordinary wear: charge b, $175.00.") && Contains("(RCW 59.18.280(1)(c)(i).)"));
  CHECK(words(letter, "charges") ==
        " | a. Carpet, pet stain | $400.00 | $200.00 | b. Scuffs in hallway | $175.00 | $175.00 | "
        "Together | $575.00 | $375.00");
  // A letter that is meant to settle shows every charge.
  CHECK_THAT(words(letter_of_kind(washington, "accept-and-claim-rest"), "charges"),
             Contains("c. Mailbox key | $65.00 | $0.00 | All charges | $640.00 | $375.00"));
}

TEST_CASE("A charge that is too high shows its arithmetic in whole dollars and years", "[letter]") {
  // Half of ten years is used: 400 x 5/10 = 200 (straight line, as in the California tenants' guide).
  CHECK(words(letter_of_kind(washington, "question-charges"), "line-a") ==
        "Too high: charge a, $400.00. It was 5 years old. Such a thing commonly lasts about 10 years, so about 50% of "
        "its "
        "worth was left. That makes about $200. At most about $200 of it could be fair. Please take $200.00 off.");
}

TEST_CASE("What is open is asked back whole, and what would show it is asked for", "[letter]") {
  const std::string open = replaced(washington, R"("installed": "2021-07-31", )", "");
  const json letter = letter_of_kind(open, "question-charges");
  CHECK_THAT(words(letter, "group-age"), Contains("Age not given: charge a, $400.00."));
  CHECK_THAT(words(letter, "show"), Contains("for charge a: when it was put in or last renewed, with the receipt"));
  CHECK_THAT(words(letter, "ask"), Contains("Please send me $575.00"));
}

TEST_CASE("What age leaves nothing of is worn out, though its words say little", "[letter]") {
  // Five years lived there; interior paint lasts three at most.
  const std::string paint =
      R"({"wearline":1,"jurisdiction":"US-FL","tenancy":{"began":"2021-11-01","ended":"2026-10-31","possessionReturned":"2026-10-31"},"deposits":[{"amount":"2400.00"}],
    "statement":{"received":"2026-11-18","refundPaid":"1200.00"},"lines":[{"id":"1","text":"Repaint whole unit","amount":"1200.00"}]})";
  const json letter = letter_of_kind(paint, "question-charges", "2026-11-22");
  CHECK_THAT(words(letter, "group-worn-out"),
             Contains("Such a thing commonly lasts about 3 years, and I lived there longer"));
  CHECK(paragraph(letter, "group-unnamed").is_null());
  // The list's own age, past the life that is likely, though another table gives the thing longer.
  const std::string fridge = replaced(paint, "Repaint whole unit", "Fridge replaced, 11 years old");
  CHECK_THAT(words(letter_of_kind(fridge, "question-charges", "2026-11-22"), "group-worn-out"),
             Contains("Your list says “11 years old”"));
}

TEST_CASE("A missed day is named with its count and its section, and all that was kept is asked for", "[letter]") {
  const json letter = letter_of_kind(washington_late(), "after-deadline");
  const std::string text = words(letter, "missed-statement");
  CHECK_THAT(text, Contains("By August 31, 2026,") && Contains("That is 30 days after July 31, 2026"));
  CHECK_THAT(text, Contains("The list was sent on September 3, 2026.") && Contains("RCW 59.18.280(1)(a)"));
  // RCW 59.18.280(2): the landlord is liable for the full deposit. 1,850.00 - 1,210.00 = 640.00.
  CHECK(words(letter, "ask") ==
        "Please send me $640.00 by September 24, 2026. That is everything kept from my security deposit.");
  CHECK_THAT(words(letter, "forfeit"), Contains("RCW 59.18.280(2)"));
  CHECK_THAT(words(letter, "charges-intro"), Contains("Even if the charges counted"));
  CHECK(paragraph(letter, "undisputed").is_null()); // what may not be kept at all is not granted
}

TEST_CASE("Every letter about the charges leads with the strongest ground", "[letter]") {
  CHECK_THAT(words(letter_of_kind(washington_late(), "question-charges"), "ask"), Contains("$640.00"));
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
  CHECK_THAT(words(letter, "next-step"), Contains("the Residential Tenancy Branch"));
}

TEST_CASE("No day is named as missed that was kept", "[letter]") {
  const json letter = letter_of_kind(washington, "after-deadline");
  for (const auto& p : letter["paragraphs"]) CHECK_THAT(p["id"].get<std::string>(), !Contains("missed-"));
  CHECK(warns(letter, "no-missed-day"));
}

TEST_CASE("A landlord who is silent gets the strongest letter, without any charge", "[letter]") {
  // Tex. Prop. Code 92.103, 92.104: 30 days after May 31 is June 30.
  const std::string silent =
      R"({"wearline":1,"jurisdiction":"US-TX","tenancy":{"ended":"2026-05-31","possessionReturned":"2026-05-31","forwardingAddressGiven":"2026-05-28"},
    "deposits":[{"amount":"1595.00"}],"statement":{"came":false,"refundPaid":"0.00"},"lines":[]})";
  const json letter = letter_of(silent, "{}", "2026-07-10");
  CHECK(letter["kind"] == "after-deadline");
  CHECK(words(letter, "ask") == "Please send me my whole security deposit, $1,595.00, by July 24, 2026.");
  const json early = letter_of(silent, "{}", "2026-06-10");
  CHECK(early["proposed"].empty());
  CHECK_THAT(early["noLetter"]["text"].get<std::string>(), Contains("June 30, 2026"));
  CHECK_THAT(words(letter_of_kind(silent, "demand", "2026-06-10"), "ask"), Contains("by June 30, 2026"));
}

TEST_CASE("Nothing is asked for before the earliest last day the landlord can have", "[letter]") {
  // Tex. Prop. Code 92.103, 92.107: 30 days after November 15 is December 15, or later by the day of the new address.
  // The letter of November 25 gives the address: 30 days after it is Christmas Day, a Friday, so December 28.
  const std::string open_end =
      R"({"wearline":1,"jurisdiction":"US-TX","tenancy":{"possessionReturned":"2026-11-15"},"deposits":[{"amount":"900.00"}],
    "lines":[{"id":"1","text":"Damages","amount":"900.00"}]})";
  const json letter = letter_of_kind(open_end, "question-charges", "2026-11-25");
  CHECK_THAT(words(letter, "ask"), Contains("by December 28, 2026"));
  CHECK(warns(letter, "not-due-yet"));
}

TEST_CASE("An answer to a bill admits nothing and offers nothing", "[letter]") {
  const std::string bill =
      replaced(replaced(washington, R"("statedTotal": "640.00")", R"("statedBalanceDue": "300.00")"),
               R"("installed": "2021-07-31", )", "");
  const json letter = letter_of_kind(bill, "reply-to-demand");
  CHECK_THAT(words(letter, "ask"), Contains("I do not agree that I owe $300.00 on top.") &&
                                       Contains("Please send me $575.00")); // a refund is due however the rest falls
  CHECK(paragraph(letter, "undisputed").is_null());
  CHECK_THAT(words(letter, "charges"), !Contains("Mailbox key"));
  CHECK_THAT(words(letter, "rights"), Contains("Nothing in this letter admits that anything is owed"));
  CHECK_THAT(proposed(letter), Contains("reply-to-demand"));
}

TEST_CASE("Rent for days after the tenant left is not granted by silence", "[letter]") {
  // What of it is owed hangs on how the home was let again.
  const std::string rent =
      R"({"wearline":1,"jurisdiction":"US-CO","tenancy":{"began":"2025-03-01","ended":"2026-06-30","possessionReturned":"2026-06-30","monthlyRent":"2000.00",
    "rentPaidThrough":"2026-06-30","forwardingAddressGiven":"2026-06-30"},"deposits":[{"amount":"2000.00"}],"circumstances":{"left-early":true},
    "statement":{"received":"2026-07-23","statedBalanceDue":"2000.00","refundPaid":"0.00"},
    "lines":[{"id":"1","text":"Rent July and August","amount":"4000.00","kind":"rent","from":"2026-07-01","to":"2026-08-31"}]})";
  const json letter = letter_of_kind(rent, "reply-to-demand", "2026-08-01");
  CHECK_THAT(words(letter, "charges"), Contains("Rent July and August | $4,000.00 | $4,000.00"));
  CHECK_THAT(words(letter, "show"), Contains("how you looked for a new tenant, and when the new lease began"));
  CHECK_FALSE(warns(letter, "not-disputed"));
  // A written notice before a suit asks for the deposit, whatever is billed.
  CHECK_THAT(words(letter_of_kind(rent, "demand", "2026-08-01"), "ask"),
             Contains("Please send me my whole security deposit, $2,000.00,"));
}

TEST_CASE("What a tenant could come to owe stands in the private notes alone", "[letter]") {
  const std::string owing =
      replaced(replaced(washington, R"("amount": "1850.00", "paid")", R"("amount": "100.00", "paid")"),
               R"("refundPaid": "1210.00")", R"("refundPaid": "0.00", "statedBalanceDue": "540.00")");
  const json letter = letter_of_kind(owing, "reply-to-demand");
  CHECK(warns(letter, "may-owe"));
  CHECK_THAT(letter["text"].get<std::string>(), !Contains("$165") && !Contains("left for me to pay"));
}

TEST_CASE("Where little is open the letter grants what is fair and asks for the rest", "[letter]") {
  CHECK(letter_of(washington, "{}")["kind"] == "accept-and-claim-rest");
}

TEST_CASE("Several deposits are spoken of as several", "[letter]") {
  const std::string two = replaced(washington_late(), R"("deposits": [ )",
                                   R"("deposits": [ { "kind": "pet", "amount": "300.00", "paid": "2022-08-01" }, )");
  const json letter = letter_of_kind(two, "after-deadline");
  CHECK_THAT(words(letter, "ask"), Contains("That is everything kept from my deposits."));
  CHECK_THAT(words(letter, "forfeit"), Contains("So the charges cannot be kept from my deposits."));
  CHECK_THAT(words(letter_of_kind(two, "small-claims-sheet"), "say"), Contains("My deposits came to $2,150.00."));
}

TEST_CASE("Who objects where nothing may be kept objects to every charge", "[letter]") {
  // RCW 59.18.280(2): a late landlord owes the full deposit, the key's charge included.
  const json letter = letter_of_kind(washington_late(), "objection");
  CHECK_THAT(words(letter, "charges-intro"), Contains("I object to charges a, b and c"));
  CHECK_THAT(words(letter, "charges"), Contains("c. Mailbox key | $65.00 | $65.00"));
}

TEST_CASE("A list of wear is named for the state of things, not for cleaning", "[letter]") {
  const std::string cleaning = replaced(washington, R"("element": "interior-paint", "finding": "minor-scuffs")",
                                        R"("element": "whole-unit-cleaning", "finding": "routine-turnover")");
  CHECK_THAT(words(letter_of_kind(cleaning, "question-charges"), "group-upkeep"),
             Contains("Upkeep of the home: charge b") && !Contains("list of ordinary wear"));
}

TEST_CASE("Of a closed list a letter says that the charge is not on it, not what is", "[letter]") {
  // N.C. Gen. Stat. 42-51(a)
  const std::string fee =
      R"({"wearline":1,"jurisdiction":"US-NC","tenancy":{"ended":"2026-04-30","possessionReturned":"2026-04-30"},"deposits":[{"amount":"900.00"}],
    "statement":{"refundPaid":"600.00"},"lines":[{"id":"1","text":"Pet fee","amount":"300.00","element":"other","finding":"unlisted-item"}]})";
  const std::string said = words(letter_of_kind(fee, "question-charges", "2026-05-20"), "group-bar");
  CHECK_THAT(said, Contains("This is not on the law's list of what may be kept. (N.C. Gen. Stat. § 42-51(a).)") &&
                       !Contains("court costs"));
  // MCL 554.607: a list that says nothing more is told.
  const std::string michigan_fee = replaced(fee, "US-NC", "US-MI");
  CHECK_THAT(words(letter_of_kind(michigan_fee, "question-charges", "2026-05-20"), "group-bar"),
             Contains("The deposit may be used only for real damage"));
}

TEST_CASE("A second letter names the first and comes only when time to answer has passed", "[letter]") {
  const std::string asked =
      replaced(washington, R"("circumstances")",
               R"("events": [ { "what": "tenant-demand", "on": "2026-09-01" } ], "circumstances")");
  const json second = letter_of_kind(asked, "second-letter", "2026-09-15");
  CHECK_THAT(words(second, "ask"), Contains("I wrote to you on September 1, 2026") && Contains("$375.00"));
  CHECK_THAT(words(second, "enclosures"), Contains("the first letter"));
  CHECK_THAT(words(second, "next-step"), Contains("small claims court"));
  CHECK_THAT(proposed(letter_of(asked, "{}", "2026-09-15")), Contains("second-letter"));
  CHECK_THAT(proposed(letter_of(asked, "{}", "2026-09-14")),
             !Contains("second-letter")); // 14 days: common practice, no source
  CHECK(warns(letter_of_kind(washington, "second-letter"), "no-first-letter"));
}

TEST_CASE("An objection that the law wants names each charge, its section and the day, before any other letter",
          "[letter]") {
  const json letter = letter_of(michigan, "{}", "2026-11-25");
  CHECK(letter["kind"] == "objection");
  CHECK_THAT(letter["proposed"][0]["why"].get<std::string>(), Contains("November 30, 2026"));
  CHECK_THAT(words(letter, "ask"), Contains("I object to your claim on my security deposit.") &&
                                       Contains("my objection in writing under MCL 554.612.") &&
                                       Contains("Your list reached me on November 23, 2026."));
  CHECK_THAT(words(letter, "charges-intro"), Contains("I object to charge 1"));
  CHECK(warns(letter, "send-by"));
  CHECK_THAT(proposed(letter_of(michigan, "{}", "2026-12-01")), !Contains("objection"));
}

TEST_CASE("Who asks for what a list lacks is told of the day until which it can be mended, but for a day of their own",
          "[letter]") {
  // Ind. Code 32-31-3-12, -14: 45 days after August 31 is October 15.
  const std::string indiana =
      R"({"wearline":2,"jurisdiction":"US-IN","tenancy":{"ended":"2026-08-31","possessionReturned":"2026-08-31",
    "forwardingAddressGiven":"2026-08-31"},"deposits":[{"amount":"825.00"}],"statement":{"sent":"2026-09-25",
    "received":"2026-09-29","statedTotal":"825.00","refundPaid":"0.00","missingDocuments":["reasons"]},
    "lines":[{"text":"Repairs","amount":"825.00"}]})";
  CHECK(warns(letter_of_kind(indiana, "request-documents", "2026-10-06"), "list-mendable"));
  CHECK(warns(letter_of_kind(indiana, "request-documents", "2026-10-15"), "list-mendable"));
  CHECK_FALSE(warns(letter_of_kind(indiana, "request-documents", "2026-10-16"), "list-mendable"));
  // MCL 554.609: through November 30; the objection is due by then too.
  const std::string lacking =
      replaced(michigan, R"(, "tenant-rights-notice"])", R"(], "missing": ["tenant-rights-notice"])");
  CHECK_FALSE(warns(letter_of_kind(lacking, "objection", "2026-11-25"), "list-mendable"));
}

TEST_CASE("A new address is given with its section, and starts the landlord's days", "[letter]") {
  // MCL 554.611: within 4 days after leaving, through November 4.
  const std::string no_address =
      replaced(replaced(michigan, R"(, "forwardingAddressGiven": "2026-11-02")", ""), R"("refundPaid": "550.00",)", "");
  CHECK_THAT(proposed(letter_of(no_address, "{}", "2026-11-03")), Contains("forwarding-address"));
  const json note = letter_of_kind(no_address, "forwarding-address", "2026-11-03");
  CHECK_THAT(words(note, "ask"), Contains("the written notice of my address under MCL 554.6"));
  CHECK_THAT(words(note, "address"), Contains("[your mailing address]"));
  // Tex. Prop. Code 92.107: no payment is due until an address is given; 30 days after July 10 is Sunday, August 9.
  const std::string texas =
      R"({"wearline":1,"jurisdiction":"US-TX","tenancy":{"ended":"2026-05-31","possessionReturned":"2026-05-31"},
    "deposits":[{"amount":"1595.00"}],"statement":{"came":false},"lines":[]})";
  CHECK_THAT(words(letter_of_kind(texas, "forwarding-address", "2026-07-10"), "send"), Contains("by August"));
}

TEST_CASE("Where the landlord's days start with the address, the letter that gives it says under which section",
          "[letter]") {
  // Conn. Gen. Stat. 47a-21(d)(2): 15 days after the written address, through August 25.
  const std::string connecticut =
      R"({"wearline":1,"jurisdiction":"US-CT","tenancy":{"began":"2023-07-01","ended":"2026-06-30","possessionReturned":"2026-06-30"},"deposits":[{"amount":"1450.00"}],
    "statement":{"came":false,"refundPaid":"0.00"},"lines":[]})";
  const std::string notice = "This is the written notice of my address under Conn. Gen. Stat. § 47a-21(d)(2).";
  const json letter = letter_of_kind(connecticut, "forwarding-address", "2026-08-10");
  CHECK_THAT(words(letter, "ask"), Contains(notice));
  CHECK_THAT(words(letter, "send"), Contains("by August 25, 2026"));
  CHECK_THAT(words(letter_of_kind(connecticut, "demand", "2026-08-10"), "facts"), Contains(notice));
}

TEST_CASE("Before the tenant left, a new address starts no days", "[letter]") {
  // Va. Code 55.1-1226(A): 45 days after the end or the move, whichever is later.
  const std::string virginia =
      R"({"wearline":1,"jurisdiction":"US-VA","tenancy":{"began":"2024-12-01","ended":"2026-12-20","possessionReturned":"2026-12-20"},"deposits":[{"amount":"1700.00"}],"lines":[]})";
  CHECK_THAT(words(letter_of_kind(virginia, "forwarding-address", "2026-12-01"), "send"), !Contains("2026"));
}

TEST_CASE("A law that is cited by its name has its article within a sentence", "[letter]") {
  const std::string columbia =
      R"({"wearline":1,"jurisdiction":"CA-BC","tenancy":{"ended":"2026-04-30","possessionReturned":"2026-04-30","forwardingAddressGiven":"2026-05-03"},"deposits":[{"amount":"1100.00"}],
    "circumstances":{"landlord-applied":false,"tenant-consented":false},"statement":{"came":false,"refundPaid":"0.00"},"lines":[]})";
  const std::string text = letter_of_kind(columbia, "after-deadline", "2026-06-10")["text"];
  CHECK_THAT(text, Contains("(As I read the Residential Tenancy Act, SBC 2002, c 78, s 38(1).)"));
  CHECK_THAT(text, !Contains("read Residential"));
}

TEST_CASE("A written request starts the landlord's days and gives their last day", "[letter]") {
  // Monday, September 14: business days 1 to 4 are 15-18, 5 to 9 are 21-25, 10 to 14 are September 28 to October 2.
  const json letter = letter_of(arizona, "{}", "2026-09-14");
  CHECK(letter["kind"] == "demand");
  CHECK(words(letter, "ask") ==
        "This is my written request under A.R.S. § 33-1321(D) for the return of my security deposit. Please send me my "
        "whole security deposit, $1,200.00, by October 2, 2026.");
  CHECK_THAT(words(letter, "facts"), Contains("I have had no list of charges.") &&
                                         Contains("My forwarding address is [your mailing address]."));
}

TEST_CASE("The notice before a suit carries intent, section and the law's days with the mail's", "[letter]") {
  const json letter = letter_of(colorado, "{}", "2026-06-01");
  CHECK(letter["kind"] == "demand");
  // Seven days, and five for the mail (common practice, no source).
  CHECK_THAT(words(letter, "ask"),
             Contains("by June 13, 2026.") &&
                 Contains("If the money has not come by then, I intend to take the matter to small claims court.") &&
                 Contains("my notice of that under Colo. Rev. Stat. § 38-12-103"));
}

TEST_CASE("An inspection is asked for while the tenant is still there", "[letter]") {
  // Cal. Civ. Code 1950.5(f): an initial inspection in the last two weeks.
  const std::string leaving =
      R"({"wearline":1,"jurisdiction":"US-CA","tenancy":{"began":"2024-10-01","ended":"2026-09-30"},
    "deposits":[{"amount":"2000.00","paid":"2024-10-01"}],"lines":[]})";
  const json letter = letter_of(leaving, "{}", "2026-09-10");
  CHECK(letter["kind"] == "inspection-request");
  CHECK_THAT(words(letter, "ask"), Contains("Cal. Civ. Code § 1950.5(f)"));
  CHECK_THAT(words(letter, "days"),
             Contains("I will move out on September 30, 2026.") && Contains("[days and times that suit you]"));
}

TEST_CASE("Papers are asked for where most of the sum is open", "[letter]") {
  const std::string unknown =
      R"({"wearline":1,"jurisdiction":"US-TX","tenancy":{"ended":"2026-08-31","possessionReturned":"2026-08-31"},"deposits":[{"amount":"1300.00"}],
    "statement":{"refundPaid":"0.00"},"lines":[{"id":"1","text":"Carpet replacement","amount":"780.00","kind":"damage","element":"carpet","finding":"stains"},
    {"id":"2","text":"Cleaning","amount":"520.00","kind":"cleaning","element":"whole-unit-cleaning","finding":"work-only"}]})";
  CHECK_THAT(proposed(letter_of(unknown, "{}")), Contains("ask-for-papers"));
  const json letter = letter_of_kind(unknown, "ask-for-papers");
  CHECK_THAT(words(letter, "papers"), Contains("receipts") && Contains("when it was put in"));
  CHECK_THAT(words(letter, "not-agreed"), Contains("I do not agree to the charges"));
}

TEST_CASE("Papers are asked for before the tenant's own answer is due, and the refund is none of them", "[letter]") {
  // MCL 554.612: 7 days, through December 1.
  const std::string early = replaced(michigan, R"("received": "2026-11-23")", R"("received": "2026-11-24")");
  const json letter = letter_of_kind(early, "ask-for-papers", "2026-11-24");
  CHECK_THAT(words(letter, "ask"), Contains("by November 30, 2026"));
  CHECK_THAT(words(letter, "papers"), !Contains("refund"));
}

TEST_CASE("Rent is asked about by its days, not by photos or bills", "[letter]") {
  const std::string rent =
      R"({"wearline":1,"tenancy":{"ended":"2026-08-31","possessionReturned":"2026-08-31"},"deposits":[{"amount":"1300.00"}],
    "statement":{"refundPaid":"0.00","received":"2026-09-02"},"lines":[{"id":"1","text":"Unpaid rent","amount":"780.00","kind":"rent","element":"rent","finding":"unpaid-month"}]})";
  const json letter = letter_of_kind(rent, "question-charges");
  CHECK_THAT(words(letter, "show"), Contains("which days it covers") && !Contains("photo"));
  CHECK_THAT(words(letter, "facts"), Contains("Your list of charges reached me on September 2, 2026."));
}

TEST_CASE("Where nothing is due, no letter is proposed, and one that is asked for is three sentences", "[letter]") {
  const std::string fair =
      R"({"wearline":1,"jurisdiction":"US-WA","tenancy":{"ended":"2026-07-31","possessionReturned":"2026-07-31"},"deposits":[{"amount":"500.00"}],
    "statement":{"sent":"2026-08-10","refundPaid":"435.00"},"lines":[{"id":"1","text":"Key","amount":"65.00","kind":"keys","element":"lock-keys","finding":"key-not-returned","cause":"tenant","proof":["receipts"]}]})";
  CHECK(letter_of(fair, "{}")["noLetter"]["code"] == "nothing-due");
  const json letter = letter_of_kind(fair, "question-charges");
  CHECK(words(letter, "ask") == "I have your list of charges. I have the $435.00 that you paid back. I do not dispute "
                                "charge 1. I ask for nothing more. Thank you.");
  CHECK(warns(letter, "nothing-to-claim"));
}

TEST_CASE("A refund that the list promises is asked for until somebody says that it came", "[letter]") {
  const std::string promised =
      R"({"wearline":1,"jurisdiction":"US-WA","tenancy":{"ended":"2026-07-31","possessionReturned":"2026-07-31"},"deposits":[{"amount":"500.00"}],
    "statement":{"sent":"2026-08-10","statedRefund":"435.00"},"lines":[{"id":"1","text":"Key","amount":"65.00","kind":"keys","element":"lock-keys","finding":"key-not-returned","cause":"tenant","proof":["receipts"]}]})";
  CHECK_THAT(words(letter_of_kind(promised, "question-charges"), "ask"),
             Contains("the $435.00 that your list says will come back"));
}

TEST_CASE("A silent landlord is asked for the deposit though its sum is not known", "[letter]") {
  const std::string silent =
      R"({"wearline":1,"jurisdiction":"US-TX","tenancy":{"ended":"2026-05-31","possessionReturned":"2026-05-31","forwardingAddressGiven":"2026-05-28"},
    "statement":{"came":false},"lines":[]})";
  const json letter = letter_of_kind(silent, "after-deadline", "2026-07-10");
  CHECK(words(letter, "ask") == "Please send me my security deposit by July 24, 2026.");
  CHECK(warns(letter, "no-deposit"));
}

TEST_CASE("Rent paid ahead for the last month is no deposit", "[letter]") {
  const std::string two = replaced(washington, R"("paid": "2022-08-01" } ])",
                                   R"("paid": "2022-08-01" }, { "kind": "last-month", "amount": "1850.00" } ])");
  const json letter = letter_of_kind(two, "question-charges");
  CHECK_THAT(words(letter, "ask"), Contains("$375.00"));
  CHECK(warns(letter, "last-month"));
}

TEST_CASE("Several tenants speak as we, sign together, and names fill what is open", "[letter]") {
  const json letter = letter_of(
      washington,
      R"({"kind":"question-charges","names":{"sender":"Ada Quill","coTenants":"Ben Moor","payee":"Ada Quill"}})");
  CHECK_THAT(words(letter, "ask"), Contains("Please send us $375.00 from our security deposit"));
  CHECK_THAT(words(letter, "from"), Contains("Ada Quill and Ben Moor"));
  CHECK_THAT(words(letter, "sign"), Contains("Ada Quill") && Contains("Ben Moor"));
  CHECK_THAT(words(letter, "pay"), Contains("out to Ada Quill"));
  // One of them may still live there.
  CHECK_THAT(words(letter, "facts"), Contains("The keys were given back") && !Contains("moved out"));
}

TEST_CASE("A landlord's statement charges what is fair, with reasons, and pays back the rest", "[letter]") {
  const std::string landlord = replaced(replaced(washington, R"("side": "tenant")", R"("side": "landlord")"),
                                        R"("refundPaid": "1210.00")", R"("refundPaid": "0.00")");
  const json letter = letter_of(landlord, "{}", "2026-08-10");
  CHECK(letter["kind"] == "itemized-statement");
  CHECK(words(letter, "charges") == "The charges: | 1. Carpet, pet stain | $400.00 | $200.00 | 2. Mailbox key | "
                                    "$65.00 | $65.00 | All charges |  | $265.00");
  CHECK_THAT(words(letter, "line-a"), Contains("5 years old") && Contains("$200.00 charged, of a cost of $400.00") &&
                                          Contains("Enclosed for charge 1: the bill or receipt"));
  CHECK(words(letter, "refund") == "You get back $1,585.00.");
  CHECK_THAT(words(letter, "enclosures"), Contains("receipts") && Contains("payment of $1,585.00"));
  CHECK(warns(letter, "left-out"));       // the scuffs
  CHECK(warns(letter, "paper-receipts")); // RCW 59.18.280(1)(b): copies of bills or estimates
}

TEST_CASE("A landlord's paper charges no small change", "[letter]") {
  const std::string screens =
      R"({"wearline":1,"jurisdiction":"US-MI","side":"landlord","tenancy":{"began":"2023-09-01","ended":"2026-08-31","possessionReturned":"2026-08-31"},"deposits":[{"amount":"1350.00"}],
    "lines":[{"id":"1","text":"Missing screens","amount":"110.00","cause":"tenant"}]
})";
  const json letter = letter_of_kind(screens, "itemized-statement", "2026-09-15");
  CHECK_THAT(words(letter, "purpose"), Contains("Nothing is charged"));
  CHECK(words(letter, "refund") == "You get back $1,350.00.");
  CHECK(warns(letter, "left-out"));
}

TEST_CASE("A landlord whose charges pass the deposit says what it does not cover", "[letter]") {
  const std::string over =
      R"({"wearline":1,"jurisdiction":"US-TX","side":"landlord","tenancy":{"ended":"2026-06-30","possessionReturned":"2026-06-30","monthlyRent":"1200.00","rentPaidThrough":"2026-05-31"},
    "deposits":[{"amount":"900.00"}],"lines":[{"id":"1","text":"June rent","amount":"1200.00","kind":"rent","element":"rent","finding":"unpaid-month","from":"2026-06-01","to":"2026-06-30"}]})";
  const json letter = letter_of(over, "{}", "2026-07-10");
  CHECK_THAT(words(letter, "sums"), Contains("Charges taken from it | -$900.00") &&
                                        Contains("Charges that the deposit does not cover | $300.00"));
}

TEST_CASE("Words that a statute fixes open the notice, and those from memory are to be compared with it", "[letter]") {
  // Fla. Stat. 83.49(3)(a): the notice has fixed words for sum, reason, days and address.
  const std::string florida =
      R"({"wearline":1,"jurisdiction":"US-FL","side":"landlord","tenancy":{"ended":"2026-11-30","possessionReturned":"2026-11-30"},"deposits":[{"amount":"1450.00"}],
    "lines":[{"id":"1","text":"Door kicked in","amount":"180.00","kind":"damage","element":"exterior-door","finding":"screen-storm","cause":"tenant"}]})";
  const json letter = letter_of(florida, R"({"names":{"senderAddress":"1 Bay St, Ocala"}})", "2026-12-08");
  CHECK_THAT(words(letter, "fixed-claim-words"), Contains("impose a claim for damages in the amount of $") &&
                                                     Contains("due to Door kicked in.") && Contains("within 15 days") &&
                                                     Contains("sent to 1 Bay St, Ocala."));
  CHECK(paragraph(letter, "purpose").is_null());
  CHECK(paragraph(letter, "answer").is_null());
  CHECK_THAT(letter["warnings"].dump(), Contains("stand in the paper from memory. Compare each word"));
}

TEST_CASE("A second letter says how and when the first one went", "[letter]") {
  const std::string texas =
      R"({"wearline":1,"jurisdiction":"US-TX","tenancy":{"ended":"2026-05-31","possessionReturned":"2026-05-31","forwardingAddressGiven":"2026-05-28"},"deposits":[{"amount":"900.00"}],
    "statement":{"came":false,"refundPaid":"0.00"},"events":[{"what":"tenant-demand","on":"2026-07-02","how":"certified-mail"}],"lines":[]})";
  CHECK_THAT(words(letter_of_kind(texas, "second-letter", "2026-07-25"), "ask"),
             Contains("I wrote to you by certified mail on July 2, 2026 about my security deposit."));
  const std::string by_hand = replaced(texas, "certified-mail", "personal-delivery");
  CHECK_THAT(words(letter_of_kind(by_hand, "second-letter", "2026-07-25"), "ask"),
             Contains("I wrote to you by hand on July 2, 2026"));
}

TEST_CASE("A letter names the event that its day of sending is", "[letter]") {
  CHECK(letter_of_kind(washington, "question-charges")["sentAs"] == "tenant-demand");
  CHECK(letter_of_kind(michigan, "objection", "2026-11-25")["sentAs"] == "tenant-objected");
  // C.R.S. 38-12-103(3): the request before a suit is its notice.
  CHECK(letter_of(colorado, "{}", "2026-06-01")["sentAs"] == "suit-notice-given");
  CHECK(letter_of_kind(washington, "small-claims-sheet")["sentAs"] == "");
}

TEST_CASE("What the words of a charge say is told as the list's own", "[letter]") {
  const std::string carpet =
      R"({"wearline":1,"jurisdiction":"US-TX","tenancy":{"began":"2022-06-01","ended":"2026-05-31","possessionReturned":"2026-05-31"},"deposits":[{"amount":"900.00"}],
    "statement":{"refundPaid":"0.00"},"lines":[{"id":"1","text":"Carpet 9 years old, replaced after dog","amount":"500.00"}]})";
  const json letter = letter_of_kind(carpet, "question-charges", "2026-07-25");
  CHECK_THAT(words(letter, "group-worn-out"), Contains("Your list says “9 years old”") &&
                                                  Contains("by that this one was about 9 years old") &&
                                                  !Contains("“dog”"));
}

TEST_CASE("A landlord's charge that calls itself ordinary wear is left out of the statement", "[letter]") {
  const std::string wear =
      R"({"wearline":1,"jurisdiction":"US-GA","side":"landlord","tenancy":{"ended":"2026-09-30","possessionReturned":"2026-09-30"},"deposits":[{"amount":"900.00"}],
    "lines":[{"id":"1","text":"General wear and tear touch up","amount":"200.00"},{"id":"2","text":"Key","amount":"65.00","kind":"keys","element":"lock-keys","finding":"key-not-returned","cause":"tenant"}]})";
  const json letter = letter_of(wear, "{}", "2026-10-10");
  CHECK_THAT(words(letter, "charges"), Contains("Key") && !Contains("wear and tear"));
  CHECK(warns(letter, "left-out"));
}

TEST_CASE("A day that hangs on an exception is named with the question who claims it", "[letter]") {
  // N.J.S.A. 46:8-21.1: 30 days, but not in a small building where the owner lives (46:8-26).
  const std::string late =
      R"({"wearline":1,"jurisdiction":"US-NJ","tenancy":{"ended":"2026-10-31","possessionReturned":"2026-10-31","forwardingAddressGiven":"2026-10-20"},"deposits":[{"amount":"900.00"}],
    "statement":{"sent":"2026-12-05","refundPaid":"0.00"},"lines":[{"id":"1","text":"Paint","amount":"300.00"}]})";
  const json letter = letter_of_kind(late, "after-deadline", "2026-12-15");
  CHECK_THAT(letter["text"].get<std::string>(), Contains("By November 30, 2026") && Contains("please tell me why"));
  CHECK(warns(letter, "perhaps-missed"));
}

TEST_CASE("A penalty that hangs on an exception is reserved too", "[letter]") {
  // N.J.S.A. 46:8-21.1: 30 days after April 30; twice the sum.
  const std::string jersey =
      R"({"wearline":1,"jurisdiction":"US-NJ","tenancy":{"began":"2024-05-01","ended":"2026-04-30","possessionReturned":"2026-04-30"},"deposits":[{"amount":"2475.00"}],
    "statement":{"sent":"2026-06-15","received":"2026-06-18","how":"certified-mail","refundPaid":"1860.00","refundSent":"2026-06-15"},
    "lines":[{"id":"1","text":"Apartment left unclean","amount":"615.00","kind":"cleaning"}]})";
  const json letter = letter_of_kind(jersey, "after-deadline", "2026-06-25");
  std::string all;
  for (const auto& p : letter["paragraphs"])
    if (p["id"].get<std::string>().rfind("missed-", 0) == 0) all += p["text"].get<std::string>();
  CHECK_THAT(all, Contains("twice the sum due") && Contains("I keep the right to ask for that") &&
                      Contains("If you hold that this rule does not cover"));
  CHECK_THAT(words(letter, "charges-intro"), Contains("the sum in the last column and ask for it back"));
}

TEST_CASE("A landlord is told the last day to send the statement, and when it is past", "[letter]") {
  const std::string unsent =
      R"({"wearline":1,"jurisdiction":"US-WA","side":"landlord","tenancy":{"ended":"2026-07-31","possessionReturned":"2026-07-31"},"deposits":[{"amount":"500.00"}],
    "statement":{"came":false},"lines":[{"id":"1","text":"Key","amount":"65.00","kind":"keys","element":"lock-keys","finding":"key-not-returned","cause":"tenant"}]})";
  const json in_time = letter_of(unsent, "{}", "2026-08-20");
  CHECK_THAT(in_time["proposed"][0]["why"].get<std::string>(), Contains("August 31, 2026"));
  CHECK(warns(in_time, "send-by"));
  // A day late: before all else, with what follows (RCW 59.18.280(2)).
  const json late = letter_of(unsent, "{}", "2026-09-02");
  CHECK(late["warnings"][0]["code"] == "late");
  CHECK_THAT(late["warnings"][0]["text"].get<std::string>(),
             Contains("owes the full deposit") && Contains("59.18.280"));
  CHECK_THAT(late["proposed"][0]["why"].get<std::string>(), Contains("gives the whole deposit back"));
  CHECK(!warns(late, "send-by"));
  // The paper keeps nothing unless the landlord chooses the one that does.
  CHECK_THAT(late["text"].get<std::string>(), Contains("You get back $500.00") && !Contains("$65.00"));
  CHECK(late["proposed"][1]["kind"] == "late-statement");
  const json chosen = letter_of_kind(unsent, "late-statement", "2026-09-02");
  CHECK_THAT(chosen["text"].get<std::string>(), Contains("You get back $435.00"));
  CHECK_THAT(chosen["warnings"].dump(), Contains("This paper keeps $65.00 all the same"));
}

TEST_CASE("What was read second-hand and the words that stand from memory are told to whoever writes", "[letter]") {
  // Chicago's rule that nothing may be kept without a proper list was read second-hand: no section, and a note.
  const std::string chicago =
      R"({"wearline":1,"jurisdiction":"US-IL","locality":"Chicago","side":"tenant","tenancy":{"began":"2023-07-01","ended":"2026-06-30","possessionReturned":"2026-06-30",
    "forwardingAddressGiven":"2026-06-30","ownerOccupied":false},"deposits":[{"amount":"1000.00","paid":"2023-07-01"}],
    "statement":{"sent":"2026-08-20","received":"2026-08-22","refundPaid":"700.00"},"lines":[{"id":"1","text":"Paint","amount":"300.00"}]})";
  const json letter = letter_of_kind(chicago, "after-deadline", "2026-09-01");
  CHECK(warns(letter, "second-hand"));
  CHECK_THAT(letter["warnings"].dump(), Contains("5-12-080(d)(1)-(2)"));
  CHECK(!warns(letter_of_kind(washington, "question-charges", "2026-09-10"), "second-hand"));
  // Florida's notice of a claim: its words stand from memory, and the paper says so beside them.
  const std::string florida =
      R"({"wearline":1,"jurisdiction":"US-FL","side":"landlord","tenancy":{"ended":"2026-11-30","possessionReturned":"2026-11-30"},"deposits":[{"amount":"1450.00"}],
    "lines":[{"id":"1","text":"Door kicked in","amount":"180.00","element":"exterior-door","finding":"screen-storm","cause":"tenant"}]})";
  CHECK_THAT(letter_of_kind(florida, "itemized-statement", "2026-12-08")["text"].get<std::string>(),
             Contains("[Before you send this: compare each word above with Fla. Stat."));
}

TEST_CASE("A letter about a home that was sold names both owners to its writer", "[letter]") {
  const std::string sold = replaced(washington, R"("written-lease": true)", R"("written-lease": true, "sold": true)");
  CHECK(warns(letter_of_kind(sold, "question-charges", "2026-09-10"), "sold"));
  CHECK(!warns(letter_of_kind(washington, "question-charges", "2026-09-10"), "sold"));
}

TEST_CASE("A landlord is told what of the left-out charges could still be shown", "[letter]") {
  const std::string bare =
      R"({"wearline":1,"jurisdiction":"US-FL","side":"landlord","tenancy":{"ended":"2026-11-30","possessionReturned":"2026-11-30"},"deposits":[{"amount":"1450.00"}],
    "lines":[{"id":"1","text":"Utilities","amount":"140.00","kind":"utility"},{"id":"2","text":"Faded paint","amount":"200.00","element":"interior-paint","finding":"faded"},
    {"id":"3","text":"Door kicked in","amount":"180.00","element":"exterior-door","finding":"screen-storm","cause":"tenant"}]})";
  const json letter = letter_of_kind(bare, "itemized-statement", "2026-12-08");
  const std::string all = letter["warnings"].dump();
  CHECK_THAT(all, Contains("Left out: Utilities, $140.00. Nothing entered shows that it is owed"));
  CHECK_THAT(all, Contains("Left out: Faded paint, $200.00. By the facts entered, nothing may fairly be kept"));
  CHECK_THAT(letter_of_kind(replaced(bare, R"("text":"Utilities","amount":"140.00","kind":"utility")",
                                     R"("text":"September rent short","amount":"350.00","kind":"rent")"),
                            "itemized-statement", "2026-12-08")["warnings"]
                 .dump(),
             Contains("Say for which days: 1. September rent short."));
  // Fla. Stat. 83.49(3)(a): where to object stands once.
  CHECK_THAT(words(letter, "fixed-claim-words"), Contains("sent to [your mailing address]"));
  CHECK(paragraph(letter, "wants-landlord-address").is_null());
  CHECK(paragraph(letter, "wants-address").is_null());
  CHECK(paragraph(letter, "reply").is_null());
}

TEST_CASE("A cover note says what was sent, when and how", "[letter]") {
  const json letter = letter_of_kind(washington, "cover-note", "2026-08-22");
  CHECK(words(letter, "sent") == "Sent on August 22, 2026, by first-class mail.");
  CHECK_THAT(words(letter, "enclosures"), Contains("statement of charges"));
}

TEST_CASE("A case note has steps, facts, grounds, ranges, exposure and sources", "[letter]") {
  const json note = letter_of_kind(washington_late(), "adviser-note");
  CHECK_THAT(words(note, "charges"), Contains("Ordinary wear") && Contains("$200.00"));
  CHECK_THAT(words(note, "dates"), Contains("August 31, 2026 | missed"));
  CHECK_THAT(words(note, "sums"), Contains("What a court may award in all"));
  CHECK_THAT(words(note, "steps"), Contains("After a missed day"));
  CHECK_THAT(words(note, "sources"), Contains("RCW 59.18.280(1)(a): read in the law's own text"));
  CHECK_THAT(words(note, "exposure"), Contains("up to twice the deposit") && Contains("RCW 59.18.280(2)"));
  // Conn. Gen. Stat. 47a-21(d)(2): the 15 days start with the address; rent paid ahead is told beside the deposit.
  const std::string connecticut =
      R"({"wearline":1,"jurisdiction":"US-CT","side":"adviser","tenancy":{"ended":"2026-04-30","possessionReturned":"2026-04-30"},
    "deposits":[{"amount":"1350.00"},{"kind":"last-month","amount":"1350.00"}],"statement":{"came":false,"refundPaid":"0.00"},"lines":[]})";
  const json other = letter_of_kind(connecticut, "adviser-note", "2026-07-10");
  CHECK_THAT(words(other, "facts"), Contains("New address given | not entered"));
  CHECK_THAT(words(other, "sums"), Contains("Last month's rent, paid ahead | $1,350.00"));
  CHECK_THAT(words(other, "exposure"), Contains("the 15 days start only then") && Contains("twice the deposit"));
}

TEST_CASE("A sheet for court has the day, whom, the parts of the sum, the risk, exhibits and what to say", "[letter]") {
  const json sheet = letter_of_kind(washington_late(), "small-claims-sheet");
  CHECK(sheet["paragraphs"][2]["id"] == "file-by");
  CHECK_THAT(words(sheet, "who"), Contains("[landlord's name]"));
  CHECK_THAT(words(sheet, "claim"), Contains("Kept from the deposit | $640.00")); // RCW 59.18.280(2)
  CHECK_THAT(words(sheet, "less"), Contains("You may be given less, or nothing."));
  CHECK_THAT(words(sheet, "risk"), Contains("$265.00"));
  CHECK_THAT(words(sheet, "where"), Contains("$10,000") && Contains("RCW 12.40.010"));
  CHECK_THAT(words(sheet, "evidence"), Contains("A: the lease.") && Contains("for charges a and b"));
  CHECK_THAT(words(sheet, "say"), Contains("I ask for $640.00"));
  // Haw. Rev. Stat. 521-44(c): one year after the end.
  const std::string late =
      R"({"wearline":1,"jurisdiction":"US-HI","tenancy":{"ended":"2025-07-31","possessionReturned":"2025-07-31"},"deposits":[{"amount":"1200.00"}],
    "statement":{"came":false,"refundPaid":"0.00"},"lines":[]})";
  CHECK_THAT(words(letter_of_kind(late, "small-claims-sheet", "2026-11-05"), "file-by"),
             Contains("July 31, 2026") && Contains("too late"));
  CHECK(warns(letter_of_kind(late, "after-deadline", "2026-11-05"), "lapsed"));
}

TEST_CASE("The law of a weak pack is given as its sender reads it", "[letter]") {
  std::string utah = colorado;
  utah.replace(utah.find("US-CO"), 5, "US-UT");
  const json letter = letter_of_kind(utah, "question-charges", "2026-06-01");
  CHECK(warns(letter, "weak-law"));
  for (const auto& p : letter["paragraphs"])
    if (!p["cites"].empty()) CHECK_THAT(p["text"].get<std::string>(), Contains("As I read ") || Contains("under "));
}

TEST_CASE("A paragraph that is switched off leaves the text, the others stay", "[letter]") {
  const json letter = letter_of(washington, R"({"kind":"question-charges","off":["group-wear","ask"]})");
  CHECK(paragraph(letter, "group-wear")["on"] == false);
  CHECK(paragraph(letter, "ask")["on"] == true); // it has to stand
  CHECK_THAT(letter["text"].get<std::string>(), !Contains("Ordinary wear") && Contains("asked back $200.00"));
}

TEST_CASE("Paragraphs keep their ids and untouched ones their words when a fact changes", "[letter]") {
  const json before = letter_of_kind(washington, "question-charges");
  const json after = letter_of_kind(
      replaced(washington, R"("installed": "2021-07-31")", R"("installed": "2020-01-31")"), "question-charges");
  CHECK(words(before, "line-a") != words(after, "line-a"));
  CHECK(words(before, "group-wear") == words(after, "group-wear"));
  CHECK(words(before, "undisputed") == words(after, "undisputed"));
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
  CHECK(letter["paragraphs"].size() + 1 == letter["copy"]["paragraphs"].size()); // its first line says what it is
  CHECK_THAT(letter["copy"]["text"].get<std::string>(), Contains("Copia para leer, no la envíe") &&
                                                            Contains("Desgaste normal") &&
                                                            Contains("10 de septiembre de 2026"));
  CHECK_THAT(letter["paragraphs"].back()["text"].get<std::string>(), Contains("abogado"));
  CHECK(warns(letter, "reading-copy"));
  CHECK(letter["proposed"][0]["label"] == "Reconocer lo justo y pedir el resto");
}

TEST_CASE("A sheet that stays with its reader is in the reader's language", "[letter]") {
  const json sheet = letter_of(washington, R"({"kind":"small-claims-sheet","language":"es"})");
  CHECK(sheet["language"] == "es");
  CHECK(sheet["copy"]["language"] == "en");
}

TEST_CASE("Text of the case is quoted as it is, on one line", "[letter]") {
  const std::string marked = replaced(washington, "Scuffs in hallway", R"(<b>Scuffs</b>\n in \u0007 {sum} hallway)");
  CHECK_THAT(words(letter_of_kind(marked, "question-charges"), "charges"),
             Contains("b. <b>Scuffs</b> in {sum} hallway"));
  const std::string longer = replaced(washington, "Scuffs in hallway", std::string(400, 'x'));
  CHECK_THAT(words(letter_of_kind(longer, "question-charges"), "charges"), Contains(std::string(160, 'x') + "…"));
}

TEST_CASE("Without law a letter cites none and says so", "[letter]") {
  const json letter = letter_of_kind(replaced(washington, R"("jurisdiction": "US-WA", )", ""), "question-charges");
  for (const auto& p : letter["paragraphs"]) CHECK(p["cites"].empty());
  CHECK(warns(letter, "no-law"));
}

TEST_CASE("Without a deposit the letter asks for the charges to be taken off", "[letter]") {
  const std::string unknown =
      replaced(washington, R"("deposits": [ { "kind": "security", "amount": "1850.00", "paid": "2022-08-01" } ],)", "");
  const json letter = letter_of_kind(unknown, "question-charges");
  CHECK_THAT(words(letter, "ask"), Contains("Please take $375.00 off the charges"));
}

TEST_CASE("A charge without an amount is asked about", "[letter]") {
  const std::string no_amount = replaced(washington, R"("amount": "175.00", )", "");
  CHECK_THAT(words(letter_of_kind(no_amount, "question-charges"), "group-no-amount"),
             Contains("No amount given: charge b."));
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
  CHECK(refused(R"({"names":{"sendr":"x"}})")[0]["near"] == "sender");
  CHECK(refused(R"({"names":{"sender":1}})")[0]["code"] == "wrong-type");
  CHECK(refused("[").size() == 1);
  CHECK(refused("").empty());
}

TEST_CASE("Every kind has a name, and each side its own", "[letter]") {
  for (const LetterKind kind : letter_kinds()) CHECK(letter_kind(name_of(kind)) == kind);
  CHECK_FALSE(letter_kind("no-such-letter"));
  const json letter = letter_of(replaced(washington, R"("side": "tenant")", R"("side": "landlord")"), "{}");
  CHECK(letter["kinds"].size() == letter_kinds_of("landlord").size() - 1); // late-statement only where a day is past
  CHECK(letter_kinds_of("adviser") == letter_kinds_of("tenant"));
}

TEST_CASE("What was seen in the walk-through stands in the letter as far as it speaks for the tenant", "[letter]") {
  const auto with = [](std::string_view thing, std::string_view walk = R"("on":"2026-07-28",)") {
    return replaced(washington, R"("circumstances")",
                    R"("walkThrough": {)" + std::string(walk) + R"("things":[{"id":"t1",)" + std::string(thing) +
                        R"(}]}, "circumstances")");
  };
  const auto said = [](const std::string& c) { return words(letter_of_kind(c, "question-charges"), "walk-through"); };
  CHECK(said(with(R"("element":"interior-paint","moveOut":"fine","line":"b")")) ==
        "I walked through the home on July 28, 2026 and wrote down its state: | b. Scuffs in hallway: in good order.");
  CHECK_THAT(said(with(R"("element":"carpet","moveOut":"damaged","putRight":"2026-07-30","line":"a")")),
             Contains("a. Carpet, pet stain: put right on July 30, 2026."));
  CHECK_THAT(
      said(with(R"("element":"carpet","moveOut":"damaged","onTheirList":false,"line":"a")", R"("listGiven":true,)")),
      Contains(
          "Before I left, I walked through the home and wrote down its state: | a. Carpet, pet stain: not on your"));
  // Damage that was seen is the landlord's to show, and a list nobody gave proves nothing.
  CHECK(said(with(R"("element":"carpet","moveOut":"damaged","line":"a")")).empty());
  CHECK(said(with(R"("element":"carpet","moveOut":"damaged","onTheirList":false,"line":"a")")).empty());
  CHECK(said(with(R"("element":"carpet","moveOut":"fine")")).empty());
}

TEST_CASE("A thing that tables give lives far apart is not called worn out", "[letter]") {
  // Ten years is practice for a hard floor; of wood the tables go to a hundred.
  const std::string floor =
      R"({"wearline":2,"jurisdiction":"US-FL","tenancy":{"began":"2021-11-01","ended":"2026-10-31","possessionReturned":"2026-10-31"},"deposits":[{"amount":"2400.00"}],
    "statement":{"received":"2026-11-18","refundPaid":"1200.00"},"lines":[{"id":"1","text":"Oak floor scratched, sand","amount":"1200.00","element":"hard-flooring","finding":"deep-gouges","installed":"2014"}]})";
  const json letter = letter_of_kind(floor, "question-charges", "2026-11-22");
  CHECK(paragraph(letter, "group-worn-out").is_null());
  CHECK_THAT(letter["text"].get<std::string>(), !Contains("commonly lasts"));
  CHECK_THAT(words(letter, "ask"), Contains("Please send me $1,200.00"));
}

TEST_CASE("Who says that nothing may be kept says from what it follows", "[letter]") {
  // RCW 59.18.260(3): no deposit without a written checklist at the start.
  const std::string unlisted =
      replaced(washington, R"({ "made": true, "signedByBoth": true, "tenantHasCopy": true })", R"({ "made": false })");
  CHECK_THAT(words(letter_of_kind(unlisted, "question-charges"), "forfeit"),
             Contains("No checklist of the home was made when I moved in. So the charges cannot be kept"));
}

TEST_CASE("The notice before a suit names the letter that went before", "[letter]") {
  const std::string silent = R"({
    "wearline": 2, "jurisdiction": "US-CO", "side": "tenant",
    "tenancy": { "began": "2024-03-01", "ended": "2026-03-31", "possessionReturned": "2026-03-31", "forwardingAddressGiven": "2026-03-31" },
    "deposits": [ { "kind": "security", "amount": "1400.00", "paid": "2024-03-01" } ],
    "statement": { "statementReceived": false, "refundPaid": "0.00" },
    "events": [ { "kind": "tenant-demand", "date": "2026-06-08", "deliveryMethod": "certified-mail" } ], "lines": [] })";
  const json letter = letter_of_kind(silent, "demand", "2026-07-06");
  CHECK_THAT(words(letter, "ask"),
             Contains("I wrote to you about my security deposit by certified mail on June 8, 2026."));
  CHECK_THAT(words(letter, "enclosures"), Contains("the first letter"));
}

TEST_CASE("An application to a board is no objection by letter", "[letter]") {
  // Burlington: the board hears who asks within 30 days of the statement; the stay of six years is no season.
  const std::string burlington = R"({
    "wearline": 2, "jurisdiction": "US-VT", "locality": "Burlington", "side": "tenant",
    "tenancy": { "began": "2020-09-01", "ended": "2026-08-31", "possessionReturned": "2026-08-31", "forwardingAddressGiven": "2026-08-28" },
    "deposits": [ { "kind": "security", "amount": "1650.00" } ],
    "statement": { "sent": "2026-09-22", "received": "2026-09-25", "statedTotal": "400.00", "refundPaid": "1250.00" },
    "lines": [ { "id": "1", "text": "Counter top knife cuts", "amount": "400.00" } ] })";
  const json letter = letter_of(burlington, "{}", "2026-10-05");
  CHECK(letter["kind"] == "after-deadline");
  CHECK_THAT(letter["text"].get<std::string>(), Contains("By September 14, 2026") && !Contains("OBJECTION"));
  CHECK_THAT(letter["warnings"].dump(), Contains("Housing Board of Review") && Contains("October 25, 2026"));
}

TEST_CASE("What was agreed in writing is not asked back", "[letter]") {
  const std::string agreed = R"({
    "wearline": 2, "jurisdiction": "CA-BC", "side": "tenant",
    "tenancy": { "began": "2024-09-01", "ended": "2026-08-31", "possessionReturned": "2026-08-31", "forwardingAddressGiven": "2026-08-31" },
    "deposits": [ { "kind": "security", "amount": "875.00" } ],
    "statement": { "sent": "2026-09-05", "received": "2026-09-05", "statedTotal": "200.00", "refundPaid": "675.00", "refundSent": "2026-09-05" },
    "circumstances": { "tenant-consented": true },
    "lines": [ { "id": "1", "text": "Carpet stain", "amount": "200.00", "cause": "tenant" } ] })";
  const json none = letter_of(agreed, "{}", "2026-09-20");
  CHECK(none["proposed"].empty());
  CHECK(none["noLetter"]["code"] == "agreed");
}

TEST_CASE("Rent for days after the end is barred where military orders ended the lease", "[letter]") {
  // 50 U.S.C. 3955(e)(1).
  const std::string orders = R"({
    "wearline": 2, "jurisdiction": "US-NC", "side": "tenant",
    "tenancy": { "began": "2025-10-01", "ended": "2026-09-30", "possessionReturned": "2026-09-30", "forwardingAddressGiven": "2026-09-25" },
    "deposits": [ { "kind": "security", "amount": "1300.00" } ],
    "statement": { "received": "2026-10-24", "statedTotal": "2500.00", "statedBalanceDue": "1200.00", "refundPaid": "0.00" },
    "circumstances": { "left-under-orders": true },
    "lines": [ { "id": "1", "text": "Rent Oct - Nov", "amount": "2500.00", "periodStart": "2026-10-01", "periodEnd": "2026-11-30" } ] })";
  CHECK_THAT(words(letter_of_kind(orders, "reply-to-demand", "2026-11-12"), "group-bar"),
             Contains("50 U.S.C. § 3955(e)(1)"));
  CHECK_THAT(words(letter_of_kind(orders, "adviser-note", "2026-11-12"), "facts"), Contains("military orders? | yes"));
}
