// wearline batch: newline-delimited cases in, newline-delimited assessments out, in the same order. Memory does not
// grow with the number of cases.

#include "answers.h"
#include "ordered_map.h"
#include "read_input.h"
#include "rules_folder.h"

#include <chrono>
#include <fstream>
#include <iostream>

namespace wearline::cli {

namespace {

/// How far the work has come, on a terminal's standard error, a few times a second.
class Progress {
public:
  explicit Progress(bool shown) : shown_(shown) {}
  ~Progress() {
    if (shown_) std::cerr << '\n';
  }
  void step() {
    ++done_;
    const auto now = std::chrono::steady_clock::now();
    if (!shown_ || now - last_ < std::chrono::milliseconds(200)) return;
    last_ = now;
    const double seconds = std::chrono::duration<double>(now - began_).count();
    std::cerr << '\r' << done_ << " cases, " << static_cast<long>(static_cast<double>(done_) / seconds)
              << " a second   " << std::flush;
  }

private:
  bool shown_;
  std::size_t done_ = 0;
  std::chrono::steady_clock::time_point began_ = std::chrono::steady_clock::now(), last_ = began_;
};

bool is_blank(const std::string& line) { return line.find_first_not_of(" \t\r") == std::string::npos; }

/// The errors are the last member of an answer.
bool judged(std::string_view answer) {
  constexpr std::string_view none = "\"errors\":[]}";
  return answer.size() >= none.size() && answer.substr(answer.size() - none.size()) == none;
}

int run(std::istream& in, const Rulebook& rules, const BatchOptions& o) {
  const std::string today = day_of(o);
  int status = status_ok;
  Progress progress(on_terminal(true));
  const auto next = [&in](std::string& line) {
    while (std::getline(in, line))
      if (!is_blank(line)) return true;
    return false;
  };
  const auto judge = [&](const std::string& line) { return assess_text(line, rules, today, o.format); };
  const auto write = [&](const std::string& answer) {
    std::cout << answer << '\n';
    if (!judged(answer)) status = status_errors;
    progress.step();
    return std::cout.good();
  };
  ordered_map(next, judge, write, o.threads);
  std::cout.flush();
  return status;
}

} // namespace

int batch(const BatchOptions& o) {
  const auto rules = load_rules(rules_folder(o.rules));
  if (const auto* faults = std::get_if<Faults>(&rules)) return refuse(*faults, true, {}, o.format);
  std::ios::sync_with_stdio(false);
  if (o.file == "-") return run(std::cin, std::get<Rulebook>(rules), o);
  std::ifstream file(o.file, std::ios::binary);
  if (!file) return refuse(std::get<Faults>(read_input(o.file)), true, {}, o.format);
  return run(file, std::get<Rulebook>(rules), o);
}

} // namespace wearline::cli
