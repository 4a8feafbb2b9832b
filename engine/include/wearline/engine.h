#pragma once
// The whole engine as text in, text out: what the page, the command line and other programs call.
// Pure: the same arguments give the same bytes, natively and in WebAssembly. Nothing here throws, reads files or keeps
// state between calls; one Rulebook may serve any number of threads once it is filled.

#include "wearline/day.h"
#include "wearline/fault.h"

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace wearline {

struct Rules; // the rules as the engine holds them; of no use outside

/// The rules in force: shared files (lives, wear guide, holidays, wording, registries) and any number of law packs.
/// Built once, then only read.
class Rulebook {
public:
  Rulebook();
  ~Rulebook();
  Rulebook(Rulebook&&) noexcept;
  Rulebook& operator=(Rulebook&&) noexcept;

  /// Whether a file of the rules folder is for the engine: schemas and the sentences of views are not.
  static bool takes(std::string_view path);
  /// Adds one file of the rules folder: `path` is relative to that folder ("law/US-WA.json"). In any order: a file
  /// waits for those it builds on (packs for facts.json, duties.json, papers.json). Faults name the file and place.
  Faults add(std::string_view path, std::string_view json);
  /// Adds a bundle: one JSON object whose member names are such paths and whose values are the files' documents.
  Faults add_bundle(std::string_view json);
  bool has_pack(std::string_view jurisdiction) const;
  /// What is still waiting for a file that never came, one fault `waits-for-others` a file; empty when all is in use.
  Faults pending() const;

  const Rules& rules() const { return *rules_; }

private:
  std::unique_ptr<Rules> rules_;
  std::vector<std::pair<std::string, std::string>> waiting_; ///< files that wait for others
  int registries_ = 0;                                       ///< facts, deadlines, documents: how many are loaded
};

// Versions of the format: a case is answered in the version of its file, 1 or 2. What has no case in it is answered in
// version 1 unless 2 is asked for; so is a case that does not say its version. What changed: rules/schema/README.md.

/// The assessment of a case (its shape: rules/schema/assessment.schema.json). A case that cannot be read gives
/// {"wearline", ..., "errors":[{"code","at","text","near"}]}.
std::string assess(std::string_view case_json, const Rulebook& rulebook, Day today, int otherwise = 1);

/// A letter as structured paragraphs (letter.schema.json). `options`: {"kind": "...", "language": "en"}; kind absent:
/// the one the engine proposes.
std::string letter(std::string_view case_json, const Rulebook& rulebook, Day today, std::string_view options,
                   int otherwise = 1);

/// What a person can choose from, in "en" or "es": elements, findings, causes, places (catalogue.schema.json).
std::string catalogue(const Rulebook& rulebook, std::string_view language, int format = 1);

/// "0.1.0"
std::string_view version();

// For callers that hold nothing but text: every argument is checked first, the same refusals for all, word for word.

/// The longest text taken from outside, in bytes: 16 MiB.
constexpr std::size_t longest_text = std::size_t{16} << 20;

/// Faults of a text before anything reads it: `too-long` (over `longest_text`), `not-utf-8` (RFC 3629; names the byte).
Faults check_text(std::string_view text);

/// The day a caller calls today, "YYYY-MM-DD"; otherwise the fault `bad-today`.
std::variant<Day, Faults> read_today(std::string_view text);

/// {"wearline","engine":"...","errors":[{"code","at","text","near"}]}: an answer that holds nothing but faults.
std::string errors_json(const Faults& faults, int format = 1);

/// `assess` and `letter` with `today` as text.
std::string assess_text(std::string_view case_json, const Rulebook& rulebook, std::string_view today,
                        int otherwise = 1);
std::string letter_text(std::string_view case_json, const Rulebook& rulebook, std::string_view today,
                        std::string_view options, int otherwise = 1);

/// What a statement that came as text says: charges, sums, days, lines not read. `language` ("en", "es") is that of the
/// sentences in the answer; the statement's own is found from its words (reading.schema.json).
std::string read_statement_text(std::string_view text, const Rulebook& rulebook, std::string_view language,
                                int format = 1);

} // namespace wearline
