// A bundle of rules files: one JSON object (RFC 8259) of paths and documents. Its frame is read apart from what lies in
// it.
#include "wearline/engine.h"

#include "json/json_text.h"
#include <catch2/catch.hpp>

using namespace wearline;

TEST_CASE("an object is split into the texts of its members, whatever lies in them") {
  const auto members =
      split_object(" { \"a\" : {\"x\":[1,{\"y\":\"},\\\"]\"}]} ,\n\"b\\u0063\":\"\\\\\" , \"d\":[]\t}\n");
  REQUIRE(members);
  REQUIRE(members->size() == 3);
  CHECK((*members)[0] == std::pair<std::string, std::string_view>("a", "{\"x\":[1,{\"y\":\"},\\\"]\"}]} "));
  CHECK((*members)[1] == std::pair<std::string, std::string_view>("bc", "\"\\\\\" "));
  CHECK((*members)[2].second == "[]\t");
  CHECK(split_object("\xEF\xBB\xBF{}")->empty());
}

TEST_CASE("what is no object, or names a member twice, is not split") {
  for (const char* text : {"", " ", "[]", "1", "{", "{\"a\"}", "{\"a\":1", "{\"a\":1,}", "{\"a\":1}x", "{a:1}",
                           "{\"a\":1,\"\\u0061\":2}", "{\"a", "{\"\\", "{\"a\":\"\\"})
    CHECK_FALSE(split_object(text));
}

TEST_CASE("a bundle's faults name the file and the place in it") {
  Rulebook rulebook;
  const auto first = [&](const char* bundle) {
    const Faults faults = rulebook.add_bundle(bundle);
    return faults.empty() ? std::string("none") : faults[0].code + ' ' + faults[0].at;
  };
  CHECK(first("[]") == "wrong-type ");
  CHECK(first("{\"a\":{},\"a\":{}}") == "duplicate-member /a");
  CHECK(first("{\"cautions.json\":[]}") == "wrong-type cautions.json#");
  CHECK(first("{\"cautions.json\":{\"always\":[\"a\" \"b\"]}}") == "not-json cautions.json#/always/1");
  CHECK(first("{\"cautions.json\":{\"always\":[\"a\"]}}") == "none");
  CHECK(first("{\"nowhere/x.json\":{}}") == "unknown-file nowhere/x.json#");
}
