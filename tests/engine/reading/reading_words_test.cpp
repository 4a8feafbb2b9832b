#include "reading/lexicon.h"
#include "reading/numbers.h"
#include "reading/rows.h"
#include "reading/words.h"
#include "support/reading_rules.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace wearline;

namespace {

std::vector<std::string> texts(std::string_view line) {
  std::vector<std::string> out;
  for (const Token& t : split_words(line)) out.push_back(t.text);
  return out;
}

struct Seen {
  std::vector<Token> tokens;
  std::vector<Number> numbers;
};
Seen numbers_of(std::string_view line, NumberStyle style = {}) {
  const RecognizerRules& rules = reading_test::rules();
  Seen seen;
  seen.tokens = split_words(line);
  seen.numbers =
      find_numbers(seen.tokens, rules.charges().mentions(seen.tokens), rules.charges(), rules.charge_marks(), style);
  return seen;
}
Number only(std::string_view line, NumberStyle style = {}) {
  const Seen seen = numbers_of(line, style);
  INFO(line);
  REQUIRE(seen.numbers.size() == 1);
  return seen.numbers[0];
}

} // namespace

TEST_CASE("Text is folded: capitals, accents, typographic marks", "[reading]") {
  CHECK(fold("Recámara PRINCIPAL") == "recamara principal");
  CHECK(fold("D\xC3\xA9p\xC3\xB4t \xE2\x80\x93 5") == "depot - 5");
  CHECK(fold("\xFF\xFE bad") == "   bad"); // bytes that are no UTF-8 become blanks
  CHECK(fold("") == "");
}

TEST_CASE("Words break where letters meet digits, and keep their places", "[reading]") {
  CHECK(texts("br1 2BR/1BA 1.5h") == std::vector<std::string>{"br", "1", "2", "br", "/", "1", "ba", "1.5", "h"});
  CHECK(texts("repl'd $85-") == std::vector<std::string>{"repld", "$", "85", "-"});
  CHECK(texts("....41.5 .5 x") == std::vector<std::string>{".", ".", ".", ".", "41.5", "0.5", "x"});
  const auto tokens = split_words("\xC3\xB1 paint");
  REQUIRE(tokens.size() == 2);
  CHECK(tokens[1].start == 3);
  CHECK(tokens[1].end == 8);
}

TEST_CASE("A letter O among digits is read as zero, and said to be a slip", "[reading]") {
  const auto tokens = split_words("165.0O");
  REQUIRE(tokens.size() == 1);
  CHECK(tokens[0].text == "165.00");
  CHECK(tokens[0].slip);
  CHECK(texts("3 OZ") == std::vector<std::string>{"3", "oz"});
}

TEST_CASE("Forms of a word share a root", "[reading]") {
  CHECK(root("replaced") == root("replace"));
  CHECK(root("replacing") == root("replaces"));
  CHECK(root("batteries") == root("battery"));
  CHECK(root("scrubbed") == root("scrub"));
  CHECK(root("puertas") == root("puerta"));
  CHECK(root("bed") == "bed");
  CHECK(root("grass") == "grass");
}

TEST_CASE("Edits between words are counted up to a limit", "[reading]") {
  CHECK(edit_distance("ktichen", "kitchen", 2) == 1); // neighbors swapped
  CHECK(edit_distance("fauset", "faucet", 2) == 1);
  CHECK(edit_distance("carpet", "blinds", 2) == 3);
  CHECK(edit_distance("", "abc", 5) == 3);
}

TEST_CASE("Amounts are read as people write them", "[reading]") {
  CHECK(only("1,240").money() == Money::cents(124000));
  CHECK(only("1,240.00").money() == Money::cents(124000));
  CHECK(only("(85.00)").bracketed);
  CHECK(only("USD 85").kind == NumberKind::money);
  CHECK(only("USD 85").money() == Money::cents(8500));
  CHECK(only("$85-").minus);
  CHECK(only("-$85.00").minus);
  CHECK(only("C$ 925.00").currency);
  CHECK(only("37.5").money() == Money::cents(3750));
  CHECK(only("12.345").money() == std::nullopt);
  CHECK(only("1.240,00", {true, false}).money() == Money::cents(124000));
  CHECK(only("85,50", {true, false}).money() == Money::cents(8550));
}

TEST_CASE("Numbers that are not money are told apart", "[reading]") {
  CHECK(only("7%").kind == NumberKind::percent);
  CHECK(only("6/30/24").kind == NumberKind::date);
  CHECK(only("2024-06-30").kind == NumberKind::date);
  CHECK(only("June 30, 2024").kind == NumberKind::date);
  CHECK(only("30 de junio de 2024").kind == NumberKind::date);
  CHECK(only("555-0142").kind == NumberKind::phone);
  CHECK(only("(555) 555-0142").kind == NumberKind::phone);
  CHECK(only("16x25x1").kind == NumberKind::size);
  CHECK(only("30\"").kind == NumberKind::size);
  CHECK(only("2nd").kind == NumberKind::ordinal);
  CHECK(only("photo 11").kind == NumberKind::reference);
  CHECK(only("check no. 1042").kind == NumberKind::reference);
  CHECK(only("#2207").kind == NumberKind::reference);
  CHECK(only("WB-1190").kind == NumberKind::reference);
  CHECK(only("in 1998").kind == NumberKind::year);
  CHECK(only("1/3 of").kind == NumberKind::fraction);
  CHECK(only("10:30").kind == NumberKind::clock);
  CHECK(only("@ 24.00").rate);
}

TEST_CASE("Dates name a civil day, in the order the text shows", "[reading]") {
  CHECK(civil_day(only("03/18/2023").day) == parse_day("2023-03-18"));
  CHECK(civil_day(only("30/06/2025", {false, true}).day) == parse_day("2025-06-30"));
  CHECK(civil_day(only("9/30/23").day) == parse_day("2023-09-30"));
  CHECK(civil_day(only("15 March 2024").day) == parse_day("2024-03-15"));
  CHECK(civil_day(only("5/31").day) == std::nullopt); // no year
  CHECK_FALSE(civil_day({2023, 2, 30, false}).has_value());
  CHECK(number_style("31/12/2025 y 05/01/2026", false).day_first);
  CHECK_FALSE(number_style("12/31/2025 and 01/05/2026", true).day_first);
  CHECK(number_style("Total 1.385,50", true).comma_decimals);
  CHECK_FALSE(number_style("Total 1,385.50", true).comma_decimals);
}

TEST_CASE("Known words are found shortened, misspelt and in capitals", "[reading]") {
  Lexicon lexicon;
  const auto document = nlohmann::json::parse(R"({"concepts": [
    {"id": "drive", "role": "thing", "en": ["driveway"]}, {"id": "tap", "role": "thing", "en": ["faucet", "kitchen tap"]},
    {"id": "alarm", "role": "thing", "en": ["SD"]}, {"id": "fungus", "role": "state", "en": ["mold"]}, {"id": "trim", "role": "thing", "en": ["molding"]}],
    "aliases": {"fct": ["faucet"]}, "distinct": ["molding"]})");
  REQUIRE(lexicon.add(document).empty());
  const auto found = [&](std::string_view text) {
    std::string out;
    const auto tokens = split_words(text);
    for (const Mention& m : lexicon.mentions(tokens)) out += (out.empty() ? "" : " ") + lexicon.at(m.concept_id).id;
    return out;
  };
  CHECK(found("driveway") == "drive");
  CHECK(found("drvway") == "drive");
  CHECK(found("fauset") == "tap");
  CHECK(found("fct") == "tap");
  CHECK(found("Kitchen  tap").empty()); // a term does not reach across columns
  CHECK(found("kitchen tap") == "tap");
  CHECK(found("SD") == "alarm");
  CHECK(found("sd").empty());
  CHECK(found("mold molding") == "fungus trim");
  CHECK(found("xyzzy").empty());
}

TEST_CASE("Faults of the word lists are told with their place", "[reading]") {
  Lexicon lexicon;
  const Faults faults = lexicon.add(nlohmann::json::parse(
      R"({"concepts": [{"id": "a", "role": "nothing", "en": ["x"]}, {"role": "thing"}, {"id": "a", "role": "thing", "en": [1]}]})"));
  REQUIRE(faults.size() == 3);
  CHECK(faults[0].at == "/concepts/0/role");
  CHECK(faults[1].at == "/concepts/1/id");
  CHECK(faults[2].code == "duplicate");
  RecognizerRules rules;
  CHECK(rules.add("other.json", "{}")[0].code == "unknown-file");
  CHECK_FALSE(rules.add("plain.json", "{").empty());
  CHECK_FALSE(rules.complete());
}

TEST_CASE("Rows keep their cells, bullets and quote marks", "[reading]") {
  const auto rows = split_rows("> > - Oven cleaned ..... $40.00\r\n\tItem\tAmount\n| Key | 5.00 |\n------\n\n3. Blind");
  REQUIRE(rows.size() == 6);
  CHECK(rows[0].depth == 2);
  CHECK(rows[0].bulleted);
  REQUIRE(rows[0].cells.size() == 2);
  CHECK(rows[0].cell(0) == "Oven cleaned");
  CHECK(rows[0].cell(1) == "$40.00");
  CHECK(rows[1].tabular);
  REQUIRE(rows[2].cells.size() == 2);
  CHECK(rows[2].cell(1) == "5.00");
  CHECK(rows[3].rule);
  CHECK(rows[4].blank);
  CHECK(rows[5].bulleted);
}

TEST_CASE("CSV follows RFC 4180: quotes, doubled quotes, line breaks inside fields", "[reading]") {
  // RFC 4180 section 2, rules 5 to 7.
  const auto rows =
      split_rows("Item,Amount\r\n\"Clean \"\"deep\"\", oven\",\"1,040.00\"\r\n\"Haul\naway\",60.00\r\nKey,5.00\r\n");
  REQUIRE(rows.size() == 4);
  CHECK(rows[1].cell(0) == "Clean \"deep\", oven");
  CHECK(rows[1].cell(1) == "1,040.00");
  CHECK(rows[2].cell(0) == "Haul away");
  CHECK(rows[2].lines == 2);
  CHECK(rows[3].line == 5);
}
