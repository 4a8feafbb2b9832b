// The whole judgment of a case of forty lines, in both versions of the format, beside only parsing and re-serializing
// that case.

#include "bench_files.h"

#include <benchmark/benchmark.h>
#include <nlohmann/json.hpp>
#include <sys/resource.h>

namespace {

const wearline::Day today = *wearline::parse_day("2026-09-01");

double resident_megabytes() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024;
}

void assess_forty_lines(benchmark::State& state, const char* file) {
  const std::string text = bench::file(file);
  const wearline::Rulebook& rules = bench::rulebook();
  const std::string answer = wearline::assess(text, rules, today);
  if (answer.find("\"errors\":[]") == std::string::npos) return state.SkipWithError("the case is refused");
  for (auto _ : state) benchmark::DoNotOptimize(wearline::assess(text, rules, today));
  state.counters["answer KB"] = static_cast<double>(answer.size()) / 1024;
}
BENCHMARK_CAPTURE(assess_forty_lines, version_2, "tests/bench/forty-lines-version-2.json")
    ->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(assess_forty_lines, version_1, "tests/bench/forty-lines.json")->Unit(benchmark::kMicrosecond);

void reserialize_forty_lines(benchmark::State& state) {
  const std::string text = bench::file("tests/bench/forty-lines.json");
  for (auto _ : state) benchmark::DoNotOptimize(nlohmann::json::parse(text, nullptr, false).dump());
}
BENCHMARK(reserialize_forty_lines)->Unit(benchmark::kMicrosecond);

/// Memory: the most the program ever held, before and after two thousand assessments.
void memory_stays_flat(benchmark::State& state) {
  const std::string text = bench::file("tests/bench/forty-lines.json");
  const wearline::Rulebook& rules = bench::rulebook();
  benchmark::DoNotOptimize(wearline::assess(text, rules, today));
  const double before = resident_megabytes();
  for (auto _ : state)
    for (int i = 0; i < 2'000; ++i) benchmark::DoNotOptimize(wearline::assess(text, rules, today));
  state.counters["MB held"] = before;
  state.counters["MB more after 2,000"] = resident_megabytes() - before;
}
BENCHMARK(memory_stays_flat)->Iterations(1)->Unit(benchmark::kMillisecond);

void load_all_rules(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(bench::load_rules_again());
}
BENCHMARK(load_all_rules)->Unit(benchmark::kMillisecond);

} // namespace
