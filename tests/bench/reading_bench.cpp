// Reading and recognizing a statement of forty lines.

#include "bench_files.h"
#include "output/reading.h"
#include "rules_folder.h"

#include <benchmark/benchmark.h>
#include <nlohmann/json.hpp>

namespace {

const wearline::RecognizerRules& rules() {
  static const auto loaded = wearline::cli::load_recognizer(WEARLINE_ROOT "/engine/rules");
  return std::get<wearline::RecognizerRules>(loaded);
}

/// Forty charges of the corpus, hard ones among them, as a statement with its sums.
std::string forty_lines() {
  std::string text = "Statement date: 07/19/2024      Move-out 06/30/2024\n\n";
  int count = 0;
  for (const auto& line : nlohmann::json::parse(bench::file("tests/reference/corpus/lines.json"))) {
    if (count == 40) break;
    if (line.contains("not_a_charge") || !line.at("amount").is_string()) continue;
    text += line.at("text").get<std::string>() + " ..... " + line.at("amount").get<std::string>() + "\n";
    ++count;
  }
  return text + "\nTotal 4,000.00\nDeposit 5,000.00\nRefund 1,000.00\n";
}

void read_forty_lines(benchmark::State& state) {
  const std::string text = forty_lines();
  const wearline::Wording words;
  if (wearline::read_statement(text, rules()).charges.size() != 40)
    return state.SkipWithError("the statement is not read whole");
  for (auto _ : state) benchmark::DoNotOptimize(wearline::read_statement(text, rules(), words));
}
BENCHMARK(read_forty_lines)->Unit(benchmark::kMicrosecond);

void recognize_one_line(benchmark::State& state) {
  for (auto _ : state)
    benchmark::DoNotOptimize(wearline::recognize("cpt & pad mstr - cat pee - 50% of 1,180.00 = $590.00", rules()));
}
BENCHMARK(recognize_one_line)->Unit(benchmark::kMicrosecond);

void load_recognizer_rules(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(wearline::cli::load_recognizer(WEARLINE_ROOT "/engine/rules"));
}
BENCHMARK(load_recognizer_rules)->Unit(benchmark::kMillisecond);

} // namespace
