// Every worked case under tests/reference/law, judged as the program judges it: dates, defects, forfeitures, remedies,
// interest, barred lines and caps, worked out by hand in each file with the statute named there.

#include "assess/assess.h"
#include "law/law.h"
#include "rulebook/rule_store.h"
#include "support/real_rules.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <memory>
#include <nlohmann/json.hpp>
#include <sstream>

using namespace wearline;
using namespace wearline::test;
using nlohmann::json;
namespace fs = std::filesystem;

namespace {

std::string state_name(DeadlineState state) {
  switch (state) {
  case DeadlineState::met:
    return "met";
  case DeadlineState::missed:
    return "missed";
  case DeadlineState::open:
    return "open";
  case DeadlineState::undetermined:
    return "cannot-tell";
  case DeadlineState::not_needed:
    return "not-needed";
  }
  return "?";
}

std::string loses_name(Loses loses) {
  switch (loses) {
  case Loses::all_deductions:
    return "all-deductions";
  case Loses::damage_deductions:
    return "damage-deductions";
  case Loses::documented_lines_only:
    return "papered-lines-only";
  case Loses::whole_deposit_claim:
    return "whole-deposit-claim";
  }
  return "?";
}

std::string said(const std::optional<DaySpan>& span) {
  if (!span) return "none";
  const auto end = [](Day day) { return day == min_day || day == max_day ? std::string("open") : iso(day); };
  return span->known() ? iso(span->earliest) : end(span->earliest) + ".." + end(span->latest);
}

std::string expected_day(const json& last) {
  if (last.is_null()) return "none";
  if (last.is_string()) return last.get<std::string>();
  const auto end = [&](const char* name) {
    return last.contains(name) && !last[name].is_null() ? last[name].get<std::string>() : std::string("open");
  };
  return end("earliest") + ".." + end("latest");
}

/// A case as the program judges it.
using Judged = std::unique_ptr<Assessment>;

Judged judge(const json& file) {
  const Rules& rules = real_rules().rules();
  auto read = read_case_for(file["case"].dump(), rules);
  if (const auto* faults = std::get_if<Faults>(&read)) {
    for (const Fault& fault : *faults) UNSCOPED_INFO(fault.at << ": " << fault.text);
    return nullptr;
  }
  const auto today = parse_day(file["today"].get<std::string>());
  if (!today) return nullptr;
  Judged out = assess_case(std::move(std::get<Case>(read)), rules, *today);
  return out->law ? std::move(out) : nullptr;
}

std::string asks(const Grounds& grounds, const Law& law) {
  std::string out;
  for (const Ask& ask : grounds.unknown)
    out +=
        (ask.kind == Ask::Kind::fact ? law.view().info(FactId{ask.which}).id : law.view().info(EventId{ask.which}).id) +
        " ";
  return out;
}

/// What the assessment says of a duty: as itself, or as one of those of which it is open which applies.
struct Shown {
  const DeadlineResult* of = nullptr;   ///< with the state that is shown
  const DeadlineResult* rule = nullptr; ///< the duty itself, with its own last day
};

Shown shown(const Law& law, const std::string& rule) {
  const auto& each = law.each_deadline();
  const auto own =
      std::find_if(each.begin(), each.end(), [&](const DeadlineResult& d) { return d.deadline->id == rule; });
  if (own == each.end()) return {};
  for (const DeadlineResult& d : law.deadlines()) {
    if (std::find(d.instead.begin(), d.instead.end(), own->position) != d.instead.end()) return {&d, &*own};
    if (d.position == own->position) return {&d, &d};
  }
  return {&*own, &*own};
}

/// Every member that a file may expect is one that is looked at here.
void check_names(const json& object, std::initializer_list<std::string_view> known) {
  for (const auto& item : object.items()) {
    INFO("an expectation that nothing checks: " << item.key());
    CHECK(std::find(known.begin(), known.end(), item.key()) != known.end());
  }
}

void check_dates(const json& expected, const Law& law) {
  for (const json& date : expected) {
    check_names(date, {"rule", "state", "last", "first"});
    const std::string rule = date["rule"];
    const Shown found = shown(law, rule);
    CHECK(found.of);
    if (!found.of) continue;
    INFO("duty " << rule << ", reason " << static_cast<int>(found.of->reason) << ", asks "
                 << asks(found.of->grounds, law));
    CHECK((date.contains("state") || date.contains("last") || date.contains("first")));
    if (date.contains("state")) CHECK(state_name(found.of->state) == date["state"].get<std::string>());
    if (date.contains("last") && found.of->state != DeadlineState::not_needed)
      CHECK(said(found.rule->last) == expected_day(date["last"]));
    if (date.contains("first") && found.of->state != DeadlineState::not_needed)
      CHECK(said(found.rule->first) == expected_day(date["first"]));
  }
}

/// Whether a paper rule or a cap of this name is broken; empty outer optional: there is none of this name.
std::optional<Tri> defect(const Law& law, const std::string& id) {
  for (const DocumentResult& p : law.documents())
    if (p.rule->id == id) return p.defect;
  for (const CapResult& r : law.caps())
    if (r.rule->id == id) return r.exceeded;
  for (const Cap& cap : law.pack().caps)
    if (cap.id == id) return Tri::no;
  return std::nullopt;
}

void check_defects(const json& names, Tri wanted, const Law& law) {
  for (const json& name : names) {
    INFO("paper rule " << name.get<std::string>());
    const auto found = defect(law, name);
    CHECK(found.has_value());
    if (found) CHECK(*found == wanted);
  }
}

/// What is lost for certain; "none", or "cannot-tell" where a court would have to find something or a fact is unknown.
void check_forfeits(const json& expected, const Law& law) {
  std::vector<std::string> certain;
  for (const ForfeitResult& f : law.forfeits())
    if (f.certain) certain.push_back(loses_name(f.rule->loses));
  if (certain.empty()) certain.push_back(law.forfeits().empty() ? "none" : "cannot-tell");
  std::string all;
  for (const auto& name : certain) all += name + " ";
  INFO("forfeits " << all << "| expected " << expected.dump());
  CHECK(std::find(certain.begin(), certain.end(), expected.get<std::string>()) != certain.end());
}

void check_remedies(const json& expected, const Law& law) {
  check_names(expected, {"least", "most"});
  CHECK(law.award().known);
  if (expected.contains("least") && !expected["least"].is_null())
    CHECK(law.award().least.plain() == expected["least"].get<std::string>());
  if (expected.contains("most") && !expected["most"].is_null())
    CHECK(law.award().most.plain() == expected["most"].get<std::string>());
}

void check_interest(const json& expected, const Law& law) {
  check_names(expected, {"low", "likely", "high"});
  const Range<Money>& owed = law.interest().owed;
  if (expected.contains("low")) CHECK(owed.low().plain() == expected["low"].get<std::string>());
  if (expected.contains("likely")) CHECK(owed.likely().plain() == expected["likely"].get<std::string>());
  if (expected.contains("high")) CHECK(owed.high().plain() == expected["high"].get<std::string>());
}

void check_barred(const json& ids, bool wanted, const Assessment& judged) {
  for (const json& id : ids) {
    INFO("line " << id.get<std::string>() << (wanted ? " is barred" : " is not barred"));
    bool found = false;
    for (std::size_t i = 0; i < judged.c.lines.size(); ++i)
      if (judged.c.lines[i].id == id.get<std::string>()) {
        found = true;
        const LineResult& line = judged.lines[i].result;
        CHECK(line.law.barred == Tri(wanted));
        CHECK(line.fair.high().is_zero() == wanted);
      }
    CHECK(found);
  }
}

/// The most of a line that may be kept.
void check_at_most(const json& sums, const Assessment& judged) {
  for (const auto& item : sums.items()) {
    INFO("line " << item.key());
    const auto line =
        std::find_if(judged.c.lines.begin(), judged.c.lines.end(), [&](const auto& l) { return l.id == item.key(); });
    REQUIRE(line != judged.c.lines.end());
    CHECK(judged.lines[line - judged.c.lines.begin()].result.fair.high().plain() == item.value().get<std::string>());
  }
}

/// The most by which the deposits certainly exceed a cap.
void check_over_cap(const json& expected, const Law& law) {
  Money over;
  for (const CapResult& r : law.caps())
    if (r.exceeded == Tri::yes) over = std::max(over, *r.taken - *r.limit);
  CHECK(over.plain() == expected.get<std::string>());
}

json read_json(const fs::path& path) {
  std::ifstream in(path);
  std::stringstream text;
  text << in.rdbuf();
  return json::parse(text.str(), nullptr, false);
}

std::vector<fs::path> json_files(const std::string& folder) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::recursive_directory_iterator(fs::path(WEARLINE_ROOT) / folder))
    if (entry.path().extension() == ".json") files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

void check_all(const json& expected, const Assessment& judged) {
  check_names(expected, {"dates", "defects", "noDefects", "forfeits", "remedies", "interest", "barred", "notBarred",
                         "atMost", "overCap", "notes"});
  INFO("a file that expects nothing");
  CHECK(expected.size() > (expected.contains("notes") ? 1U : 0U));
  const Law& law = *judged.law;
  if (expected.contains("dates")) check_dates(expected["dates"], law);
  if (expected.contains("defects")) check_defects(expected["defects"], true, law);
  if (expected.contains("noDefects")) check_defects(expected["noDefects"], false, law);
  if (expected.contains("forfeits")) check_forfeits(expected["forfeits"], law);
  if (expected.contains("remedies")) check_remedies(expected["remedies"], law);
  if (expected.contains("interest")) check_interest(expected["interest"], law);
  if (expected.contains("barred")) check_barred(expected["barred"], true, judged);
  if (expected.contains("notBarred")) check_barred(expected["notBarred"], false, judged);
  if (expected.contains("atMost")) check_at_most(expected["atMost"], judged);
  if (expected.contains("overCap")) check_over_cap(expected["overCap"], law);
}

} // namespace

TEST_CASE("Worked cases of law come out as worked by hand", "[law]") {
  const auto files = json_files("tests/reference/law");
  REQUIRE(files.size() > 400);
  for (const fs::path& path : files) {
    INFO(path.parent_path().filename().string() + "/" + path.filename().string());
    const json file = read_json(path);
    REQUIRE_FALSE(file.is_discarded());
    const auto judged = judge(file);
    CHECK(judged);
    if (judged) check_all(file["expect"], *judged);
  }
}

TEST_CASE("Decided cases that turn on a date: the engine beside the court", "[law]") {
  // Each file holds what the court said and, where the engine says otherwise, why.
  json decided_here = json::object();
  for (const fs::path& path : json_files("tests/reference/decided-dates")) {
    const json file = read_json(path);
    REQUIRE_FALSE(file.is_discarded());
    if (path.filename() == "left-out.json") {
      decided_here.update(file);
      continue;
    }
    INFO(path.filename().string());
    decided_here[file["decision"].get<std::string>()] = true;
    const auto judged = judge(file);
    CHECK(judged);
    if (!judged) continue;
    check_all(file["expect"], *judged);
    const Shown found = shown(*judged->law, file["court"]["rule"]);
    REQUIRE(found.of);
    const bool agree = state_name(found.of->state) == file["court"]["state"].get<std::string>();
    CHECK(agree == file["difference"].is_null());
  }
  // No decision of this kind is forgotten.
  for (const json& decision : read_json(fs::path(WEARLINE_ROOT) / "tests/reference/data/decided.json")) {
    const std::string id = decision["id"], place = decision["jurisdiction"];
    const auto& uses = decision["usable_for"];
    if (!real_rules().has_pack(place) || std::find(uses.begin(), uses.end(), "deadline") == uses.end()) continue;
    INFO(id);
    CHECK(decided_here.contains(id));
  }
}
