#pragma once
// Everything a rulebook holds once its files are read.

#include "case/case_names.h"
#include "judging/audit.h"
#include "judging/precedents.h"
#include "law/holidays.h"
#include "law/pack.h"
#include "law/registry.h"
#include "reading/recognizer_rules.h"
#include "wear/rules.h"
#include "wording/wording.h"

#include <map>
#include <string>
#include <vector>

namespace wearline {

/// A danger of a thing in the home (rules/hazards.json), shown where someone may do a repair.
struct Hazard {
  std::string code;
  std::vector<std::string> at;    ///< things, or faults as "element/finding", it is shown at
  std::vector<std::string> stop;  ///< those of them that are left to a licensed worker
  std::vector<std::string> words; ///< words of a charge that point to it, in small letters
  Localized text;
};

/// True if one of `places` is this thing, or this fault of it.
bool names_fault(const std::vector<std::string>& places, std::string_view element, std::string_view finding);
/// Whether a charge, or a thing seen in the home, is about this danger; `text` are the charge's own words.
bool concerns(const Hazard& hazard, std::string_view element, std::string_view finding, std::string_view text);

/// A published list of wear that a letter may name, in the places it was written for.
struct NamedGuide {
  std::string source; ///< "wear:hud-5c"
  std::string place;  ///< "US", "US-CA": the start of a jurisdiction's code
  Localized name;
};

/// Fixed words that a statute wants in a paper, for the places of `place` under the document rule `rule`.
struct FixedWords {
  std::string place, rule, cite;
  bool from_memory = false; ///< not read in the statute: to be compared with it
  bool opens = false;       ///< they say what is claimed and how to object: nothing else opens the paper
  Localized text;           ///< with the places {sum}, {reasons} and {landlordAddress}
};

/// Who decides about a deposit.
struct Forum {
  Localized name;
  bool court = false;
  bool holds = false; ///< the deposit lies there, and is paid out from there
};

/// How a rule of law speaks of a party in a letter to the other side: "the landlord", in general "a landlord".
struct PartyWords {
  std::string party, language, said, general;
};

/// What letters need and no law gives, and fixed words of statutes (rules/letters.json).
struct LetterRules {
  int reply_days = 0;      ///< days to answer a letter
  int mailing_days = 0;    ///< days a letter is on its way, added to a period that it starts
  int note_charges = 0;    ///< charges shown one by one in a case note
  int settled_percent = 0; ///< how wide, in percent of a charge, what is fair may be for a letter to name it
  Money smallest_sum;      ///< nothing is asked for below
  std::vector<NamedGuide> guides;
  std::vector<FixedWords> fixed_words;
  std::vector<PartyWords> parties;
  std::map<std::string, std::string, std::less<>>
      shows; ///< element or finding: what else to ask for ("letter.show.<...>")
  std::map<std::string, std::string, std::less<>> request_forms; ///< by jurisdiction: the section with a notice's form
  std::map<std::string, Forum, std::less<>> forums; ///< by jurisdiction, where it is not small claims court
  using Phrases = std::map<std::string, std::vector<std::string>, std::less<>>; ///< by language
  Phrases
      easing; ///< words by which a sentence of law eases it for the other side, or is a deadline of the sender's own
  Phrases multiples;  ///< words by which a sentence of law tells a multiple of a sum
  Phrases wear_words; ///< words by which a charge names ordinary wear itself
};

struct Rules {
  ReferenceBook references;
  WearGuide wear;
  LifeTables lives;
  AuditRules audit;
  Precedents precedents;
  std::vector<std::string> always_cautions;
  std::vector<Hazard> hazards;
  LetterRules letters;
  std::map<std::string, Localized, std::less<>> place_names;
  std::map<std::string, Wording, std::less<>> wording; ///< by language
  CaseNames names;
  Registry registry;
  RecognizerRules recognizer;
  Holidays holidays;
  /// Federal and local rules as they came, by id, with the place they belong to, and their sentences in Spanish.
  struct Layer {
    std::string of, json, words;
  };
  std::map<std::string, Layer, std::less<>> layers;
  std::map<std::string, Pack, std::less<>> packs; ///< by jurisdiction; their addresses stay valid

  /// The pack of a place; null if none is loaded.
  const Pack* pack(std::string_view jurisdiction) const;

  /// The wording of a language; English where the language is not loaded.
  const Wording& words(std::string_view language) const;
};

} // namespace wearline
