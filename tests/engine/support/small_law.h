#pragma once
// A law pack of a few rules, and a case under it, for tests of one rule at a time.

#include "case/case_reader.h"
#include "law/law.h"
#include "rulebook/rule_store.h"
#include "support/real_rules.h"

#include <catch2/catch.hpp>
#include <memory>
#include <string>

namespace wearline::test {

/// A pack with the given parts ("\"duties\":[...],\"bars\":[...]"), whose only source is "s" and whose counting
/// excludes the first day and, unless given otherwise, rolls past Saturdays, Sundays and the legal holidays of
/// Washington.
inline Pack
pack_of(const std::string& parts,
        const std::string& counting =
            R"({"id":"counting","source":["s"],"excludeFirst":true,"roll":["saturday","sunday","legal-holiday"],
                      "businessDaySkips":["saturday","sunday","legal-holiday"],"holidays":"US-WA"})") {
  const std::string json =
      R"({"jurisdiction":"US-WA","name":"A place","currency":"USD","sources":{"s":{"cite":"Law § 1","read":"memory"}},"counting":[)" +
      counting + "]" + (parts.empty() ? "" : "," + parts) + "}";
  auto loaded = load_pack(json, real_rules().rules().registry);
  if (const auto* faults = std::get_if<Faults>(&loaded)) FAIL(faults->front().at << ": " << faults->front().text);
  return std::move(std::get<Pack>(loaded));
}

/// The faults of such a pack, as "code at".
inline std::string pack_fault(const std::string& json) {
  const auto loaded = load_pack(json, real_rules().rules().registry);
  const auto* faults = std::get_if<Faults>(&loaded);
  return faults ? faults->front().code + " " + faults->front().at : "ok";
}

inline Case case_of(const std::string& members) {
  auto read = read_case(R"({"wearline":1,)" + members +
                            (members.find("\"lines\"") == std::string::npos ? R"(,"lines":[]})" : "}"),
                        real_rules().rules().names);
  if (const auto* faults = std::get_if<Faults>(&read)) FAIL(faults->front().at << ": " << faults->front().text);
  return std::move(std::get<Case>(read));
}

/// A pack and a case that live as long as the law between them.
struct Small {
  Pack pack;
  Case c;
  std::unique_ptr<Law> law;

  Small(Pack p, const std::string& members, const std::string& today = "2026-11-25")
      : pack(std::move(p)), c(case_of(members)) {
    const Rules& rules = real_rules().rules();
    law = std::make_unique<Law>(c, pack, rules.registry, rules.holidays, *parse_day(today));
  }
};

inline std::string said(const std::optional<DaySpan>& span) {
  if (!span) return "none";
  const auto end = [](Day day) { return day == min_day || day == max_day ? std::string("open") : iso(day); };
  return span->known() ? iso(span->earliest) : end(span->earliest) + ".." + end(span->latest);
}

inline std::string state_name(DeadlineState state) {
  constexpr const char* names[] = {"met", "missed", "open", "cannot-tell", "not-needed"};
  return names[static_cast<int>(state)];
}

} // namespace wearline::test
