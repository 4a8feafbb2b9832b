#include "built_from.h"

#include "wearline/engine.h"

#include <CLI/Version.hpp>
#include <nlohmann/json.hpp>

namespace wearline::cli {

namespace {

std::string dotted(int major, int minor, int patch) {
  return std::to_string(major) + '.' + std::to_string(minor) + '.' + std::to_string(patch);
}

} // namespace

std::string versions() {
#ifdef __clang__
  const std::string compiler = "Clang " + dotted(__clang_major__, __clang_minor__, __clang_patchlevel__);
#else
  const std::string compiler = "GCC " + dotted(__GNUC__, __GNUC_MINOR__, __GNUC_PATCHLEVEL__);
#endif
  return "wearline " + std::string(version()) + "\nnlohmann_json " +
         dotted(NLOHMANN_JSON_VERSION_MAJOR, NLOHMANN_JSON_VERSION_MINOR, NLOHMANN_JSON_VERSION_PATCH) +
         // The headers of date say no version; its package does.
         "\ndate " WEARLINE_DATE_VERSION "\nCLI11 " CLI11_VERSION "\n" + compiler;
}

} // namespace wearline::cli
