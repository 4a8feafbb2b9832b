#pragma once
// The commands of `wearline`: what each is asked for, and the call that carries it out and gives the exit status.

#include <filesystem>
#include <string>
#include <vector>

namespace wearline::cli {

constexpr int status_ok = 0;
constexpr int status_errors = 2; ///< an input was refused or could not be read; what could be judged was

/// What every command that needs rules or a day takes. `rules`: as `rules_folder` says. `today`: "YYYY-MM-DD"; empty
/// for the date of this machine. `format`: the version of an answer that has no case in it; a case is answered in its
/// own.
struct Common {
  std::filesystem::path rules;
  std::string today;
  int format = 1;
  bool json = false;
};

struct CheckOptions : Common {
  std::vector<std::filesystem::path> cases; ///< files, folders of case files, or "-"
};
int check(const CheckOptions& options);

struct LetterOptions : Common {
  std::filesystem::path file;
  std::string kind, language;
};
int letter(const LetterOptions& options);

struct ReadOptions : Common {
  std::filesystem::path file;
  std::string language, place;
};
int read(const ReadOptions& options);

int recognize(const Common& options);

struct DatesOptions : Common {
  std::vector<std::filesystem::path> cases;
  bool calendar = false; ///< iCalendar (RFC 5545) in place of text
};
int dates(const DatesOptions& options);

struct LawOptions : Common {
  std::string place;
};
int law(const LawOptions& options);

struct BatchOptions : Common {
  std::filesystem::path file;
  unsigned threads = 0; ///< 0: one a core
};
int batch(const BatchOptions& options);

int validate(const Common& options);

} // namespace wearline::cli
