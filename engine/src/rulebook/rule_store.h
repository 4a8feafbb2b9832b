#pragma once
// Everything a rulebook holds once its files are read.

#include "case/case_reader.h"
#include "judging/audit.h"
#include "law/holidays.h"
#include "law/pack.h"
#include "law/registry.h"
#include "reading/recogniser.h"
#include "wear/rules.h"
#include "wording/wording.h"

#include <map>
#include <string>
#include <vector>

namespace wearline {

/// A safety note shown when a line is about one of its elements.
struct SafetyNote {
  std::string code, source;
  std::vector<std::string> elements;
  Localised text;
};

/// Numbers that letters need and no law gives (rules/letters.json).
struct LetterRules {
  int reply_days = 0;   ///< days to answer a letter
  int note_charges = 0; ///< charges shown one by one in a case note
};

struct Rules {
  ReferenceBook references;
  WearGuide wear;
  LifeTables lives;
  AuditRules audit;
  std::vector<std::string> always_cautions;
  std::vector<SafetyNote> safety;
  LetterRules letters;
  std::map<std::string, Localised, std::less<>> place_names;
  std::map<std::string, Wording, std::less<>> wording; ///< by language
  CaseNames names;
  Registry registry;
  RecogniserRules recogniser;
  Holidays holidays;
  std::map<std::string, Pack, std::less<>> packs; ///< by jurisdiction; their addresses stay valid

  /// The pack of a place; null if none is loaded.
  const Pack* pack(std::string_view jurisdiction) const;

  /// The wording of a language; English where the language is not loaded.
  const Wording& words(std::string_view language) const;
};

} // namespace wearline
