#include "read_input.h"

#include "wearline/engine.h"

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <iostream>
#include <nlohmann/json.hpp>
#include <unistd.h>

namespace wearline::cli {

namespace {

std::string read_all(std::istream& in) {
  std::string text;
  char block[1 << 16];
  while (text.size() <= longest_text && (in.read(block, sizeof block), in.gcount() > 0))
    text.append(block, static_cast<std::size_t>(in.gcount()));
  return text;
}

/// A file name may be any bytes; what is printed is UTF-8.
std::string shown(const std::filesystem::path& name) {
  return check_text(name.string()).empty() ? name.string() : "The file";
}

Faults cannot_read(const std::filesystem::path& name, const char* why) {
  return {{"cannot-read", "", shown(name) + " cannot be read: " + why + ".", ""}};
}

} // namespace

std::variant<std::string, Faults> read_input(const std::filesystem::path& name) {
  if (name == "-") return read_all(std::cin);
  if (std::filesystem::is_directory(name)) return cannot_read(name, "it is a folder");
  errno = 0;
  std::ifstream file(name, std::ios::binary);
  if (!file) return cannot_read(name, std::strerror(errno));
  std::string text = read_all(file);
  if (file.bad()) return cannot_read(name, std::strerror(errno));
  return text;
}

void print_faults(const Faults& faults, const std::filesystem::path& file) {
  const std::string about = file.empty() ? "" : shown(file) + ": ";
  for (const Fault& f : faults)
    std::cerr << about << (f.at.empty() ? "" : f.at + ": ") << f.text << " [" << f.code << "]\n";
}

std::string with_file(const std::string& object, const std::filesystem::path& file) {
  if (file.empty()) return object;
  return "{\"file\":" + nlohmann::json(shown(file)).dump() + "," + object.substr(1);
}

bool on_terminal(bool error_stream) {
  return std::getenv("NO_COLOR") == nullptr && isatty(error_stream ? STDERR_FILENO : STDOUT_FILENO) == 1;
}

} // namespace wearline::cli
