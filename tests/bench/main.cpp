// Runs the benchmarks and adds the one figure that compares two of them.

#include <benchmark/benchmark.h>
#include <cstdio>
#include <map>

namespace {

/// The console's table of medians.
class Table : public benchmark::ConsoleReporter {
public:
  Table() : ConsoleReporter(OO_None) {}
  void ReportRuns(const std::vector<Run>& runs) override {
    for (const Run& run : runs) {
      if (!run.error_occurred && run.aggregate_name != "median") continue;
      ConsoleReporter::ReportRuns({run});
      medians_[run.run_name.function_name] = run.GetAdjustedCPUTime();
    }
  }
  double median(const char* name) const {
    const auto found = medians_.find(name);
    return found == medians_.end() ? 0 : found->second;
  }

private:
  std::map<std::string, double> medians_;
};

} // namespace

int main(int count, char** words) {
  benchmark::Initialize(&count, words);
  if (benchmark::ReportUnrecognizedArguments(count, words)) return 1;
  Table table;
  benchmark::RunSpecifiedBenchmarks(&table);
  const double assess = table.median("assess_forty_lines"), reserialize = table.median("reserialise_forty_lines");
  if (assess > 0 && reserialize > 0)
    std::printf("assess takes %.2f times as long as parse and re-serialise (aim: 3 at most)\n", assess / reserialize);
  return 0;
}
