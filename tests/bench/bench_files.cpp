#include "bench_files.h"

#include "read_input.h"
#include "rules_folder.h"

#include <cstdlib>

namespace bench {

namespace {

template <class T> T taken(std::variant<T, wearline::Faults> value) {
  if (const auto* faults = std::get_if<wearline::Faults>(&value)) {
    wearline::cli::print_faults(*faults);
    std::exit(1);
  }
  return std::get<T>(std::move(value));
}

} // namespace

std::string file(const char* path) { return taken(wearline::cli::read_input(std::string(WEARLINE_ROOT "/") + path)); }

wearline::Rulebook load_rules_again() { return taken(wearline::cli::load_rules(WEARLINE_ROOT "/engine/rules")); }

const wearline::Rulebook& rulebook() {
  static const wearline::Rulebook loaded = load_rules_again();
  return loaded;
}

} // namespace bench
