#pragma once
// The whole engine as text in, text out: what the page, the command line and the tests call.
// Pure: the same arguments give the same bytes, natively and in WebAssembly.

#include "wearline/calendar.h"
#include "wearline/fault.h"

#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace wearline {

struct Rules; // rulebook.h

/// The rules in force: shared files (lives, wear guide, holidays, wording, registries) and any number of law packs.
/// Built once, then only read.
class Rulebook {
public:
  Rulebook();
  ~Rulebook();
  Rulebook(Rulebook&&) noexcept;
  Rulebook& operator=(Rulebook&&) noexcept;

  /// Adds one file of engine/rules: `path` is relative to that folder ("law/US-WA.json"). In any order: a file waits
  /// for those it builds on (packs for facts.json, duties.json, papers.json). Faults name the file and place.
  Faults add(std::string_view path, std::string_view json);
  /// Adds a bundle: one JSON object whose member names are such paths and whose values are the files' documents.
  Faults add_bundle(std::string_view json);
  bool has_pack(std::string_view jurisdiction) const;

  const Rules& rules() const { return *rules_; }

private:
  std::unique_ptr<Rules> rules_;
  std::vector<std::pair<std::string, std::string>> waiting_; ///< files that wait for others
  int registries_ = 0;                                       ///< facts, duties, papers: how many are loaded
};

/// The assessment of a case (shape: DEVELOPERS.md, "The assessment"). A case that cannot be read gives
/// {"wearline":1, ..., "errors":[{"code","at","text","near"}]} and nothing else is dropped from it.
std::string assess(std::string_view case_json, const Rulebook& rulebook, Day today);

/// What a person can choose from, in "en" or "es": elements, findings, causes, facts, events, papers, jurisdictions
/// loaded.
std::string catalogue(const Rulebook& rulebook, std::string_view language);

/// A letter as structured paragraphs. `options`: {"kind": "...", "language": "en"}; kind absent: the one the engine
/// proposes.
std::string letter(std::string_view case_json, const Rulebook& rulebook, Day today, std::string_view options);

/// "0.1.0"
std::string_view version();

} // namespace wearline
