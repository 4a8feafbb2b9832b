// Another language beside English: files in any order, English where a sentence is missing, faults where one belongs
// nowhere.

#include "law/pack_words.h"
#include "rulebook/rule_store.h"
#include "support/real_rules.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>

using namespace wearline;
using namespace wearline::test;

namespace {

std::string rules_file(const std::string& path) {
  std::ifstream in(std::string(WEARLINE_ROOT) + "/engine/rules/" + path);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

const char* const washington = R"({"jurisdiction":"US-WA","rules":{"statement":{"text":"Dentro de 30 días."}},
  "facts":{"own-work":{"question":"¿Lo hizo él mismo?"}}})";

/// A pack's faults when these words are put beside it.
std::vector<std::string> faults_of(std::string_view words) {
  Pack pack = *real_rules().rules().pack("US-WA");
  std::vector<std::string> out;
  for (const Fault& fault : translate_pack(pack, words)) out.push_back(fault.code + " " + fault.at);
  return out;
}

using List = std::vector<std::string>;

} // namespace

TEST_CASE("A pack's translation may come before the pack and the registries") {
  std::vector<std::string> files = {"law-es/US-WA.json", "law/US-WA.json", "papers.json", "duties.json", "facts.json"};
  std::sort(files.begin(), files.end());
  do {
    Rulebook book;
    for (const std::string& file : files) {
      const Faults faults = book.add(file, file == "law-es/US-WA.json" ? std::string(washington) : rules_file(file));
      REQUIRE(faults.empty());
    }
    const Pack* pack = book.rules().pack("US-WA");
    REQUIRE(pack);
    const auto deadline = std::find_if(pack->deadlines.begin(), pack->deadlines.end(),
                                       [](const Deadline& d) { return d.id == "statement"; });
    REQUIRE(deadline != pack->deadlines.end());
    CHECK(deadline->text_in("es") == "Dentro de 30 días.");
    CHECK(deadline->text_in("en") == deadline->text);
    CHECK(deadline->text != deadline->text_in("es"));
    // What is not translated is said in English.
    REQUIRE_FALSE(deadline->if_missed_text.empty());
    CHECK(deadline->if_missed_text_in("es") == deadline->if_missed_text);
  } while (std::next_permutation(files.begin(), files.end()));
}

TEST_CASE("A translation belongs to the rules of its pack") {
  CHECK(faults_of(R"({"jurisdiction":"US-OR"})") == List{"wrong-name /jurisdiction"});
  CHECK(faults_of(R"({"jurisdiction":"US-WA","rules":{"nothing-of-it":{"text":"x"}}})") ==
        List{"unknown-rule /rules/nothing-of-it/"});
  CHECK(faults_of(R"({"jurisdiction":"US-WA","rules":{"statement":{"texto":"x"}}})") ==
        List{"unknown-member /rules/statement/texto"});
  CHECK(faults_of(R"({"jurisdiction":"US-WA","facts":{"ghost":{"question":"x"}}})") ==
        List{"unknown-fact /facts/ghost/"});
  CHECK(faults_of(R"({"jurisdiction":"US-WA","events":{"ghost":{"question":"x"}}})") ==
        List{"unknown-event /events/ghost/"});
  CHECK(faults_of(R"({"jurisdiction":"US-WA","rules":{"statement":{"ifMissingText":"x"}}})") ==
        List{"unknown-member /rules/statement/ifMissingText"});
  CHECK(faults_of(R"({"jurisdiction":"US-WA","rules":{"ordinary-wear":{"check":"x"}}})") ==
        List{"nothing-to-translate /rules/ordinary-wear/check"});
  CHECK(faults_of("[]") == List{"wrong-type ", "missing-member /jurisdiction", "wrong-name /jurisdiction"});
}

TEST_CASE("A registry given again brings its texts in more languages and nothing else") {
  Rulebook book;
  REQUIRE(book.add("papers.json", R"({"papers":[{"id":"photos","label":{"en":"photos"}}]})").empty());
  REQUIRE(book.add("duties.json", R"({"duties":[{"id":"itemize","label":{"en":"List"},"posted":"statement-sent"}]})")
              .empty());
  REQUIRE(
      book.add("facts.json", R"({"facts":[{"id":"locality","type":"text","at":"/locality","question":{"en":"Where?"}}],
    "events":[{"id":"statement-sent","at":"/statement/sent","question":{"en":"When?"}}]})")
          .empty());
  const Registry& registry = book.rules().registry;
  REQUIRE(registry.documents.size() == 1);
  CHECK(registry.documents[0].label.in("es") == "photos");
  CHECK(book.add("papers.json", R"({"papers":[{"id":"photos","label":{"en":"photos","es":"fotos"}}]})").empty());
  CHECK(
      book.add("facts.json",
               R"({"facts":[{"id":"locality","type":"text","at":"/locality","question":{"en":"Where?","es":"¿Dónde?"}}],
    "events":[{"id":"statement-sent","at":"/statement/sent","question":{"en":"When?","es":"¿Cuándo?"}}]})")
          .empty());
  CHECK(registry.documents.size() == 1);
  CHECK(registry.documents[0].label.in("es") == "fotos");
  CHECK(registry.facts[0].question.in("es") == "¿Dónde?");
  CHECK(registry.events[0].question.in("es") == "¿Cuándo?");
  CHECK(registry.deadlines[0].posted == registry.event("statement-sent"));
  const Faults moved =
      book.add("papers.json", R"({"papers":[{"id":"receipts","label":{"en":"receipts","es":"recibos"}}]})");
  REQUIRE(moved.size() == 1);
  CHECK(moved[0].code == "other-names");
  CHECK(registry.documents[0].label.in("es") == "fotos");
}
