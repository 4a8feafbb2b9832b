#pragma once
// What every command that reads a case does alike: the day to judge from, the files to read, what to do with faults.

#include "commands.h"
#include "wearline/engine.h"

#include <functional>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace wearline::cli {

/// The date on the calendar of this machine, in its time zone, "YYYY-MM-DD": the one clock that Wearline reads.
std::string local_date();

/// The day asked for, or `local_date()`.
std::string day_of(const Common& options);

/// Prints faults, as JSON on standard output or as lines on standard error, each after the `file` it is about; the exit
/// status for them.
int refuse(const Faults& faults, bool json, const std::filesystem::path& file = {}, int format = 1);

/// The faults an answer of the engine carries in its `errors`.
Faults faults_of(const nlohmann::json& answer);

/// The case files meant by `asked`: a folder stands for the *.json files in it and below that have a member "wearline",
/// in the order of their names. Faults: `no-cases` for a folder without any.
std::variant<std::vector<std::filesystem::path>, Faults> case_files(const std::vector<std::filesystem::path>& asked);

/// The place a case names, read without judging it; empty where it names none or is no case.
std::string place_of(std::string_view case_json);

/// One case judged: its file, its text as it came, and the answer or the faults.
struct Judged {
  std::filesystem::path file;
  std::variant<std::string, Faults> assessment;
};

/// In which version of the format cases are answered: each in its own, or all in the newest, for a view of them.
enum class Answers { own, newest };

/// Judges case after case with the rules their places need, and hands each to `take`. Faults: rules that cannot be
/// used.
Faults judge_each(const std::vector<std::filesystem::path>& cases, const Common& options, Answers answers,
                  const std::function<void(Judged)>& take);

} // namespace wearline::cli
