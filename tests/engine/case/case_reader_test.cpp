#include "case/case_reader.h"

#include <catch2/catch.hpp>

using namespace wearline;

namespace {
CaseNames names() {
  CaseNames n;
  n.jurisdictions = {"US-WA", "US-CA"};
  n.elements = {"carpet", "interior-paint"};
  n.findings["carpet"] = {"stains", "worn-matted"};
  n.documents = {"receipts", "photos", "invoice"};
  n.document_aliases["invoice"] = "receipts";
  n.events = {"tenant-demand"};
  n.circumstances["condemned"] = FactType::yes_no;
  return n;
}

/// The first fault as "code at", or "ok".
std::string fault(std::string_view json) {
  const auto read = read_case(json, names());
  if (const auto* faults = std::get_if<Faults>(&read)) return faults->front().code + " " + faults->front().at;
  return "ok";
}
std::string line(std::string_view members) {
  return fault(std::string(R"({"wearline":1,"lines":[{)") + std::string(members) + "}]}");
}
std::string tenancy(std::string_view members) {
  return fault(std::string(R"({"wearline":1,"lines":[],"tenancy":{)") + std::string(members) + "}}");
}
} // namespace

TEST_CASE("The least case is a version and a list of lines") {
  CHECK(fault(R"({"wearline":1,"lines":[]})") == "ok");
  CHECK(fault("\xEF\xBB\xBF{\"wearline\":1,\"lines\":[]}") == "ok");
  CHECK(fault(R"({"lines":[]})") == "missing-member ");
  CHECK(fault(R"({"wearline":1})") == "missing-member ");
  CHECK(fault(R"({"wearline":2,"lines":[]})") == "ok");
  for (const char* version : {"0", "3", "\"2\"", "2.0", "-1", "99999999999"})
    CHECK(fault(std::string(R"({"wearline":)") + version + R"(,"lines":[]})") == "unknown-version /wearline");
}

TEST_CASE("Text that is not JSON is refused with its place") {
  const auto read = read_case("{\"wearline\":1,\n \"lines\":[,]}", names());
  REQUIRE(std::holds_alternative<Faults>(read));
  CHECK(std::get<Faults>(read)[0].text.find("line 2, column 11") != std::string::npos);
  CHECK(fault("") == "not-json ");
  CHECK(fault("\"\xff\"") == "not-json ");
  CHECK(fault("NaN") == "not-json ");
  CHECK(fault("[]") == "wrong-type ");
  CHECK(fault(std::string(300, '[')) == "too-deep ");
  CHECK(fault(R"({"wearline":1,"lines":[{"id":"1","id":"2"}]})") == "duplicate-member /lines/0/id");
}

TEST_CASE("A mistyped name is met with the nearest known one") {
  const auto read = read_case(R"({"wearline":1,"lines":[{"elemnt":"carpet"}]})", names());
  REQUIRE(std::holds_alternative<Faults>(read));
  const Fault& f = std::get<Faults>(read)[0];
  CHECK(f.code == "unknown-member");
  CHECK(f.at == "/lines/0/elemnt");
  CHECK(f.near == "element");
  CHECK(line(R"("element":"carpt")") == "unknown-name /lines/0/element");
  CHECK(line(R"("element":"carpet","finding":"stain")") == "unknown-name /lines/0/finding");
  CHECK(fault(R"({"wearline":1,"jurisdiction":"US-WX","lines":[]})") == "unknown-jurisdiction /jurisdiction");
  CHECK(fault(R"({"wearline":1,"circumstances":{"condemed":true},"lines":[]})") ==
        "unknown-member /circumstances/condemed");
}

TEST_CASE("Amounts are decimal text") {
  CHECK(line(R"("amount":"12.50")") == "ok");
  CHECK(line(R"("amount":12.5)") == "wrong-type /lines/0/amount");
  for (const char* bad : {"-5.00", "NaN", "Infinity", "1e9", "1,000.00", ""})
    CHECK(line("\"amount\":\"" + std::string(bad) + "\"") == "bad-amount /lines/0/amount");
  for (const char* large : {"12345678901234.00", "10000000000", "10000000000.5"})
    CHECK(line("\"amount\":\"" + std::string(large) + "\"") == "amount-too-large /lines/0/amount");
  CHECK(line(R"("amount":"12345678901.001")") == "bad-amount /lines/0/amount");
  CHECK(line(R"("amount":"10.00","parts":[{"nature":"labour","amount":"10.01"}])") ==
        "parts-exceed-amount /lines/0/parts");
}

TEST_CASE("Dates exist and follow each other") {
  CHECK(tenancy(R"("ended":"2026-02-30")") == "bad-date /tenancy/ended");
  CHECK(tenancy(R"("began":"2026-02-01","ended":"2026-01-01")") == "ends-before-it-begins /tenancy/ended");
  CHECK(tenancy(R"("began":"2026","ended":"2026-01-01")") == "ok");
  CHECK(line(R"("installed":"2019~")") == "ok");
  CHECK(line(R"("installed":20190101)") == "wrong-type /lines/0/installed");
}

TEST_CASE("All faults are reported, not only the first") {
  const auto read = read_case(R"({"wearline":1,"lines":[{"amount":1},{"amount":"x"},{"id":"1"}]})", names());
  REQUIRE(std::holds_alternative<Faults>(read));
  CHECK(std::get<Faults>(read).size() == 3);
}

TEST_CASE("Control characters and markup in text are kept as they are") {
  const auto read = read_case(R"({"wearline":1,"lines":[{"text":"<b>\u0000\u0007</b>"}]})", names());
  REQUIRE(std::holds_alternative<Case>(read));
  CHECK(std::get<Case>(read).lines[0].text == std::string("<b>\0\a</b>", 9));
}

TEST_CASE("Papers go by their usual other names") {
  const auto read = read_case(R"({"wearline":1,"lines":[{"proof":["invoice"]}]})", names());
  REQUIRE(std::holds_alternative<Case>(read));
  CHECK(std::get<Case>(read).lines[0].proof == std::vector<std::string>{"receipts"});
}

TEST_CASE("Five thousand lines are read, one more is refused") {
  std::string json = R"({"wearline":1,"lines":[)";
  for (int i = 0; i < 5000; ++i) json += i ? R"(,{"amount":"1.00"})" : R"({"amount":"1.00"})";
  CHECK(fault(json + "]}") == "ok");
  CHECK(fault(json + ",{}]}") == "too-many-lines /lines");
}

TEST_CASE("A walk through the home is read thing by thing, and what does not fit is named with its place") {
  const auto walk = [](std::string_view members) {
    return fault(R"({"wearline":1,"lines":[],"walkThrough":{)" + std::string(members) + "}}");
  };
  CHECK(walk("") == "ok");
  CHECK(
      walk(
          R"("on":"2026-11-20","builtBefore1978":false,"rooms":[{"id":"r1","kind":"bedroom","name":"Bedroom"}],)"
          R"("things":[{"id":"t1","room":"r1","element":"carpet","finding":"stains","moveIn":"fine","moveOut":"damaged",)"
          R"("installed":"2019","quote":"240.00","putRight":"2026-11-25","onTheirList":false,"line":"1"}],"leaving":["keys"])") ==
      "ok");
  CHECK(walk(R"("things":[{"element":"carpet","moveOut":"bad"}])") == "unknown-name /walkThrough/things/0/moveOut");
  CHECK(walk(R"("things":[{"moveOut":"fine"}])") == "missing-member /walkThrough/things/0");
  CHECK(walk(R"("things":[{"element":"carpet","finding":"burnt"}])") == "unknown-name /walkThrough/things/0/finding");
  CHECK(walk(R"("things":[{"element":"carpet","quote":-4}])") == "wrong-type /walkThrough/things/0/quote");
  CHECK(walk(R"("things":[{"id":"a","element":"carpet"},{"id":"a","element":"carpet"}])") ==
        "duplicate-id /walkThrough/things/1");
  CHECK(walk(R"("room":[])") == "unknown-member /walkThrough/room");

  const auto read = read_case(
      R"({"wearline":1,"lines":[],"walkThrough":{"listGiven":true,"things":[{"id":"t1","element":"carpet","moveOut":"worn","line":"2"}]}})",
      names());
  REQUIRE(std::holds_alternative<Case>(read));
  const auto& seen = std::get<Case>(read).walk_through;
  REQUIRE(seen);
  CHECK(seen->list_given == Tri::yes);
  REQUIRE(seen->things.size() == 1);
  CHECK(seen->things[0].move_out == "worn");
  CHECK(seen->things[0].line == "2");
}
