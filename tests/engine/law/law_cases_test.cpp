// Every worked case under tests/reference/law: dates, defects, forfeitures, remedies, interest and barred lines, worked
// out by hand in each file with the statute named there.

#include "judging/assessment.h"
#include "judging/line_judgement.h"
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

std::string state_name(DutyState state) {
  switch (state) {
  case DutyState::met:
    return "met";
  case DutyState::missed:
    return "missed";
  case DutyState::open:
    return "open";
  case DutyState::cannot_tell:
    return "cannot-tell";
  case DutyState::not_needed:
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
  case Loses::papered_lines_only:
    return "papered-lines-only";
  case Loses::whole_deposit_claim:
    return "whole-deposit-claim";
  }
  return "?";
}

std::string said(const std::optional<DaySpan>& span) {
  if (!span) return "none";
  const auto end = [](Day day) { return day == first_day || day == last_day ? std::string("open") : iso(day); };
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

/// A case with its law, its lines judged.
struct Judged {
  Case c;
  std::unique_ptr<Law> law;
  std::vector<LineResult> lines;
};

Subject subject(const Line& line, const Rules& rules) {
  Subject s;
  s.element = rules.wear.element(line.element);
  if (s.element) s.finding = s.element->finding(line.finding);
  return s;
}

Range<Money> paid_back(const Case& c) {
  if (c.statement.refund_paid) return *c.statement.refund_paid;
  return c.statement.stated_refund.value_or(Money());
}

std::unique_ptr<Judged> judge(const json& file) {
  const Rules& rules = real_rules().rules();
  auto read = read_case(file["case"].dump(), rules.names);
  if (const auto* faults = std::get_if<Faults>(&read)) {
    for (const Fault& fault : *faults) UNSCOPED_INFO(fault.at << ": " << fault.text);
    return nullptr;
  }
  auto out = std::make_unique<Judged>();
  out->c = std::move(std::get<Case>(read));
  const auto today = parse_day(file["today"].get<std::string>());
  const auto pack = rules.packs.find(out->c.jurisdiction);
  if (!today || pack == rules.packs.end()) return nullptr;
  out->law = std::make_unique<Law>(out->c, pack->second, rules.registry, rules.holidays, *today);
  const TenancyFacts tenancy = tenancy_facts(out->c, *today);
  LineContext context;
  context.tenancy = &tenancy;
  context.lives = &rules.lives;
  context.place = out->c.jurisdiction;
  context.law = out->law.get();
  context.weights = &rules.wear.weights;
  Reckoning reckoning;
  for (const Line& line : out->c.lines) {
    out->lines.push_back(judge_line(line, subject(line, rules), context));
    // These files are about law: a claim for money (rent, a fee) that the law does not bar is taken to be owed, up to
    // its limit.
    LineResult& result = out->lines.back();
    if (result.verdict == Verdict::not_about_condition && result.law.barred == Tri(false))
      result.fair = Range<Money>(result.fair.high());
    reckoning.fair.push_back(result.fair);
  }
  reckoning.deposit = add_up(out->c, {}, out->law->interest().owed, &pack->second).deposit; // as the program does
  reckoning.interest = out->law->interest().owed;
  reckoning.paid_back = paid_back(out->c);
  out->law->settle(reckoning);
  return out;
}

std::string asks(const Grounds& grounds, const Law& law) {
  std::string out;
  for (const Ask& ask : grounds.unknown)
    out +=
        (ask.kind == Ask::Kind::fact ? law.view().info(FactId{ask.which}).id : law.view().info(EventId{ask.which}).id) +
        " ";
  return out;
}

void check_dates(const json& expected, const Law& law) {
  for (const json& date : expected) {
    const std::string rule = date["rule"];
    const auto& duties = law.each_duty();
    const auto found =
        std::find_if(duties.begin(), duties.end(), [&](const DutyResult& d) { return d.duty->id == rule; });
    INFO("duty " << rule
                 << (found == duties.end() ? ""
                                           : ", reason " + std::to_string(static_cast<int>(found->reason)) + ", asks " +
                                                 asks(found->grounds, law)));
    CHECK(found != duties.end());
    if (found == duties.end()) continue;
    if (date.contains("state")) CHECK(state_name(found->state) == date["state"].get<std::string>());
    if (date.contains("last") && found->state != DutyState::not_needed)
      CHECK(said((found->first && !found->last ? found->first : found->last)) == expected_day(date["last"]));
  }
}

/// Whether a paper rule or a cap of this name is broken; empty outer optional: there is none of this name.
std::optional<Tri> defect(const Law& law, const std::string& id) {
  for (const PaperResult& p : law.papers())
    if (p.rule->id == id) return p.defect;
  for (const CapResult& r : law.caps())
    if (r.rule->id == id) return r.exceeded;
  for (const Cap& cap : law.pack().caps)
    if (cap.id == id) return Tri(false);
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
  CHECK(law.award().known);
  if (expected.contains("least") && !expected["least"].is_null())
    CHECK(law.award().least.plain() == expected["least"].get<std::string>());
  if (expected.contains("most") && !expected["most"].is_null())
    CHECK(law.award().most.plain() == expected["most"].get<std::string>());
}

void check_interest(const json& expected, const Law& law) {
  const Range<Money>& owed = law.interest().owed;
  if (expected.contains("low")) CHECK(owed.low().plain() == expected["low"].get<std::string>());
  if (expected.contains("likely")) CHECK(owed.likely().plain() == expected["likely"].get<std::string>());
  if (expected.contains("high")) CHECK(owed.high().plain() == expected["high"].get<std::string>());
}

void check_barred(const json& ids, const Judged& judged) {
  for (const json& id : ids) {
    INFO("line " << id.get<std::string>());
    bool found = false;
    for (std::size_t i = 0; i < judged.c.lines.size(); ++i)
      if (judged.c.lines[i].id == id.get<std::string>()) {
        found = true;
        CHECK(judged.lines[i].law.barred == Tri(true));
        CHECK(judged.lines[i].fair.high().is_zero());
      }
    CHECK(found);
  }
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

void check_all(const json& expected, const Judged& judged) {
  if (expected.contains("dates")) check_dates(expected["dates"], *judged.law);
  if (expected.contains("defects")) check_defects(expected["defects"], true, *judged.law);
  if (expected.contains("noDefects")) check_defects(expected["noDefects"], false, *judged.law);
  if (expected.contains("forfeits")) check_forfeits(expected["forfeits"], *judged.law);
  if (expected.contains("remedies")) check_remedies(expected["remedies"], *judged.law);
  if (expected.contains("interest")) check_interest(expected["interest"], *judged.law);
  if (expected.contains("barred")) check_barred(expected["barred"], judged);
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
    const auto& duties = judged->law->each_duty();
    const auto found = std::find_if(duties.begin(), duties.end(),
                                    [&](const DutyResult& d) { return d.duty->id == file["court"]["rule"]; });
    REQUIRE(found != duties.end());
    const bool agree = state_name(found->state) == file["court"]["state"].get<std::string>();
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
