#include "read_input.h"

#include "wearline/guard.h"

#include <cerrno>
#include <cstring>
#include <fstream>
#include <iostream>

namespace wearline::cli {

namespace {

std::string read_all(std::istream& in) {
  std::string text;
  char block[1 << 16];
  while (text.size() <= longest_text && (in.read(block, sizeof block), in.gcount() > 0))
    text.append(block, static_cast<std::size_t>(in.gcount()));
  return text;
}

Faults cannot_read(const std::filesystem::path& name, const char* why) {
  // A file name may be any bytes; a fault is UTF-8.
  const std::string shown = check_text(name.string()).empty() ? name.string() : "The file";
  return {{"cannot-read", "", shown + " cannot be read: " + why + ".", ""}};
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

void print_faults(const Faults& faults) {
  for (const Fault& f : faults) std::cerr << (f.at.empty() ? "" : f.at + ": ") << f.text << " [" << f.code << "]\n";
}

} // namespace wearline::cli
