#pragma once
// What a letter may say about the law, and how firmly: rules read in the statute or an official guide are stated and
// cited word for word; rules read elsewhere, doubtful ones and those of a weak pack are worded with more care, or left
// out.

#include "judging/assessment.h"
#include "wording/speech.h"

#include <string>
#include <string_view>
#include <vector>

namespace wearline {

/// firm: stated, with its section; careful: as the writer understands it, with its section; loose: as far as the writer
/// knows, no section; none: left out.
enum class Footing { none, loose, careful, firm };

/// A bar of the law that stands against some of the charges.
struct BarOnLines {
  const Rule* rule = nullptr;
  std::string_view effect; ///< wording key "letter.bar.<effect>", for languages the rules are not written in
  std::vector<std::size_t> lines;
};

class LawTalk {
public:
  LawTalk(const Assessment& assessment, const Rules& rules, const Speech& speech)
      : a_(&assessment), rules_(&rules), speech_(&speech) {}

  bool there() const { return a_->law != nullptr; }
  bool weak() const { return there() && a_->law->pack().weak; }

  Footing footing(const Rule& rule) const;
  /// The citations of a rule, word for word, joined by "; ". Empty where none may be named.
  std::string cites(const Rule& rule) const;
  /// `text` as a statement of the law on the rule's footing; empty if it is to be left out or is empty.
  std::string says(const Rule& rule, std::string_view text) const;
  /// A rule's own sentence where the language is the packs' (English), else a sentence of the wording.
  std::string rule_says(const Rule& rule, std::string_view english, std::string_view key_elsewhere) const;

  /// The registry's name of a duty, "itemise".
  std::string_view name_of(const Duty& duty) const;
  /// First duty of the tenant with one of these names that is in this state; null if there is none.
  const DutyResult* tenant_duty(std::initializer_list<std::string_view> names, DutyState state) const;
  /// Duties of the landlord that are missed; those that cost money first, then in the pack's order.
  std::vector<const DutyResult*> missed() const;
  /// "The statement was due by ... That is 30 days after ... It was sent on ..."; empty where no day is known.
  std::string missed_day(const DutyResult& duty) const;
  /// "30 days after July 31, 2026, the day the tenancy ended"; empty where it cannot be said in one sentence.
  std::string counted(const DutyResult& duty) const;

  /// Rules that bar, limit or want proof for charges, each once with the charges concerned. `only`: the charges to look
  /// at.
  std::vector<BarOnLines> bars(const std::vector<bool>& only) const;

  /// Rules of the statement's papers that are known not to be met.
  std::vector<const PaperResult*> defects() const;
  std::string paper(PaperId id) const; ///< "receipts, bills or invoices"

  /// The rule under which nothing may be kept, holding without any further finding and on this footing at least; null
  /// if none.
  const ForfeitResult* forfeited(Footing least = Footing::firm) const;

private:
  bool only_guides(const Rule& rule) const;

  const Assessment* a_;
  const Rules* rules_;
  const Speech* speech_;
};

} // namespace wearline
