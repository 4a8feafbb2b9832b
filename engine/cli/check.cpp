// wearline check: cases judged, as a report for people or as JSON, one line a case.

#include "answers.h"
#include "read_input.h"
#include "report.h"
#include "rules_folder.h"

#include <iostream>
#include <nlohmann/json.hpp>

namespace wearline::cli {

namespace {

class Reports {
public:
  Reports(const CheckOptions& options, bool many)
      : json_(options.json), many_(many), format_(options.format), rules_(rules_folder(options.rules)) {}

  void take(const Judged& judged) {
    const std::filesystem::path file = many_ ? judged.file : std::filesystem::path();
    if (const auto* faults = std::get_if<Faults>(&judged.assessment)) {
      status_ = refuse(*faults, json_, file, format_);
      return;
    }
    const std::string& text = std::get<std::string>(judged.assessment);
    const auto result = nlohmann::json::parse(text, nullptr, false);
    const Faults faults = faults_of(result);
    if (!faults.empty()) status_ = status_errors;
    if (json_) std::cout << with_file(text, file) << '\n';
    else if (!faults.empty()) print_faults(faults, file);
    else print(report(result, load_wording(rules_, language_of(result)), on_terminal()), file);
  }

  int status() const { return status_; }

private:
  void print(const std::string& text, const std::filesystem::path& file) {
    if (!file.empty()) std::cout << (first_ ? "" : "\n\n") << "=== " << file.string() << "\n\n";
    std::cout << text;
    first_ = false;
  }

  bool json_, many_, first_ = true;
  int format_;
  std::filesystem::path rules_;
  int status_ = status_ok;
};

} // namespace

int check(const CheckOptions& options) {
  const auto cases = case_files(options.cases);
  if (const auto* faults = std::get_if<Faults>(&cases)) return refuse(*faults, options.json, {}, options.format);
  const auto& files = std::get<std::vector<std::filesystem::path>>(cases);
  Reports reports(options, files.size() > 1);
  const Faults faults = judge_each(files, options, options.json ? Answers::own : Answers::newest,
                                   [&](const Judged& judged) { reports.take(judged); });
  return faults.empty() ? reports.status() : refuse(faults, options.json, {}, options.format);
}

} // namespace wearline::cli
