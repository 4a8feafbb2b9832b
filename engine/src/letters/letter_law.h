#pragma once
// What a letter may say about the law, and how firmly: rules read in the statute or an official guide are stated and
// cited word for word; doubtful ones and those of a weak pack are cited as the sender reads them; what was read
// elsewhere has no citation, and what is only from memory is left out.

#include "judging/assessment.h"
#include "rulebook/rule_store.h"
#include "wording/speech.h"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace wearline {

/// firm: stated, with its section; careful: as the sender reads the section; loose: as the sender understands the law,
/// no section; none: left out.
enum class Footing { none, loose, careful, firm };

/// A rule of the law that stands against some of the charges.
struct BarOnLines {
  const Rule* rule = nullptr;
  std::string_view effect; ///< wording key "letter.bar.<effect>", for languages the rules are not written in
  std::vector<std::size_t> lines;
};

/// Deadlines of the landlord with one last day that passed.
struct MissedDay {
  Day last;
  std::vector<const DeadlineResult*> deadlines; ///< what costs most first
  bool perhaps = false; ///< missed unless an exception applies, which hangs on something unknown
};

class LawTalk {
public:
  /// `several`: more than one sender speaks. `claims`: the paper is a tenant's letter, in which sentences of law that
  /// ease it for the other side are not said (rules/letters.json, easing).
  LawTalk(const Assessment& assessment, const Rules& rules, const Speech& speech, bool several, bool claims)
      : a_(&assessment), rules_(&rules), speech_(&speech), several_(several), claims_(claims) {}

  /// Whether something was said without a section: the letter then says once that this is how its sender understands
  /// the law.
  bool hedged() const { return hedged_; }
  /// Another tenant stays under the same lease: no letter says that a day was missed which an end of the lease starts.
  bool lease_goes_on() const;
  /// The law's days run, and what follows from them may be said: there is law, and the lease is over.
  bool days_run() const { return there() && !lease_goes_on(); }
  /// What was said without a section because it was read second-hand, and where it was read of.
  const std::vector<std::pair<std::string, std::string>>& second_hand() const { return second_hand_; }
  /// The rules that say what follows from a sale of the home.
  std::vector<const Rule*> sale_rules() const;
  /// The event that is taken to have started the time of a deadline, though the case does not tell of it; empty if
  /// none.
  std::string assumed_start(const DeadlineResult& deadline) const;
  /// The first of a rule's citations; empty where none may be named.
  std::string section(const Rule& rule) const;

  bool there() const { return a_->law != nullptr; }
  bool weak() const { return there() && a_->law->pack().weak; }

  Footing footing(const Rule& rule) const;
  /// The citation of a rule that may be given as law, word for word: the first that was read in the statute itself,
  /// else in an official guide. Empty where none may be named.
  std::string cites(const Rule& rule) const;
  /// A citation within a sentence: a law that is cited by its name has its article.
  std::string in_a_sentence(const std::string& cite) const;
  /// `text` as a statement of the law on the rule's footing; empty if it is to be left out or is empty.
  std::string says(const Rule& rule, std::string_view text) const;
  /// A rule's own sentence where the language has it, else a sentence of the wording.
  std::string rule_says(const Rule& rule, std::string_view key_elsewhere) const;
  /// What the sender of this paper says of a text of law: without the sentences that are the other side's to say.
  std::string spoken_by_sender(std::string_view text) const;
  /// Whether some sentence of a text of law is left out for that.
  bool eases(std::string_view text) const;
  /// A text of law as it stands in a letter to the other party: of a landlord and a tenant in general.
  std::string in_general(std::string_view text) const;
  /// Whether a deadline falls away without a new address in writing, and the case has none: the letter itself gives it.
  bool waits_for_address(const Deadline& deadline) const;
  /// The deadline to speak of where several stand in for one another: one that counts days, what costs most, the
  /// longest.
  const Deadline& spoken(const DeadlineResult& result) const;

  /// The registry's name of a deadline, "itemize".
  std::string_view name_of(const Deadline& deadline) const;
  /// First deadline of the tenant with one of these names that is in this state; null if there is none.
  const DeadlineResult* tenant_deadline(std::initializer_list<std::string_view> names, DeadlineState state) const;
  /// Deadlines of the landlord that are missed; those that cost money first, then in the pack's order.
  std::vector<const DeadlineResult*> missed() const;
  /// The same by their last day, what costs most first; after them those that are missed unless an exception applies.
  std::vector<MissedDay> missed_days() const;
  /// Neither list nor money came: the list of charges that was due on the missed day too if anything is charged, and
  /// without which nothing may be kept; null where there is none, or where it is among the missed.
  const Deadline* list_not_sent(const DeadlineResult& missed) const;
  /// Whether some day of paying back or accounting is missed, or missed unless an exception applies.
  bool some_day_missed() const { return !missed().empty() || !perhaps_missed().empty(); }
  /// Deadlines to pay back or to account whose day passed unmet, if they apply: which of several does, or whether one
  /// does, hangs on something unknown. Of several that of which most follows.
  std::vector<const DeadlineResult*> perhaps_missed() const;
  /// The last day on which the landlord can still pay or account in time; empty if there is none, or it is past.
  std::optional<Day> landlords_day() const;
  /// The landlord's last day to send a list, still ahead, where the one that came lacks what nothing may be kept
  /// without: whoever asks for it sooner helps to mend it. None where
  /// the tenant has an own day that runs.
  std::optional<Day> list_mendable_until() const;
  /// Days of paying back or accounting that passed and of which it is not known whether they were kept, where no list
  /// came: if no money came either they were missed. What costs most first.
  std::vector<MissedDay> days_if_unpaid() const;
  /// "30 days after July 31, 2026, the day the tenancy ended"; empty where it cannot be said in one sentence.
  std::string counted(const DeadlineResult& deadline) const;

  /// Rules that bar one of these charges unless something was done that the case is silent on.
  std::vector<BarOnLines> bars_unless(const std::vector<std::size_t>& lines) const;
  /// Whether a rule bars charges of every kind alike: it speaks of the whole list and not of what was charged.
  bool bars_every_charge(const Rule& rule) const;
  /// Rules that bar, limit or want proof for these charges.
  std::vector<BarOnLines> bars(const std::vector<std::size_t>& lines) const;

  /// Rules of the statement's papers that are not met, or where a paper is known not to have come and only the rest is
  /// open.
  std::vector<const DocumentResult*> defects() const;
  /// What the law asks under this name of a circumstance; empty where nothing does.
  std::string question(std::string_view fact) const;
  std::string document(DocumentId id) const; ///< "receipts, bills or invoices"

  /// The rule under which nothing may be kept (or nothing for damage, where no rule goes further), holding without any
  /// further finding; null if none.
  const ForfeitResult* forfeited() const;
  /// A rule of that kind that applies, where more is for a court to find than that something was on purpose, and the
  /// case has facts that speak for it; null if none.
  const ForfeitResult* perhaps_forfeited() const;
  /// The facts of the case that make a rule hold and have a sentence of their own ("letter.because.<fact>.<yes or
  /// no>"): whoever says what follows says from what.
  std::string because(const Rule& rule) const;
  /// The same of a rule that bars a charge unless something was done or agreed, for what the case says was not
  /// ("letter.unless.<fact>").
  std::string because_not(const Rule& rule) const;
  /// The rule that wear is no damage; null where none holds for sure.
  const Rule* wear_rule() const;
  /// The rule that a list of charges gives the reasons, or each item; null where none holds for sure.
  const DocumentRule* list_rule() const;
  /// The first sentence of a rule about papers, on its footing: what follows it is for the other side.
  std::string first_says(const DocumentRule& rule) const;
  /// The rule that gives the tenant more than the sum due, if one applies; `sure` first.
  const RemedyResult* penalty() const;
  /// The same, or one that may come to apply.
  const RemedyResult* possible_penalty() const;
  /// One that comes to apply where the deposit was asked for in writing and is not paid.
  std::pair<const Remedy*, bool> penalty_after_request() const;
  /// One that applies if no money came: the second tells whether nothing else is open.
  std::pair<const Remedy*, bool> penalty_if_unpaid() const;
  /// Whether what the law adds is only given to a tenant who gave an address, and none was given.
  bool penalty_waits_for_address() const;

  /// The last day to go to court that is past; empty if none is known to be.
  std::optional<Day> lapsed() const;

private:
  /// The first rule that gives more than the sum due and holds in this view of the facts, or may hold.
  const Remedy* remedy_in(const FactView& view, bool surely) const;
  /// One that surely holds, else one that may; and whether it surely does.
  std::pair<const Remedy*, bool> sure_before_possible(const FactView& view) const;
  /// Whether another rule that sets no days may stand in its place: for homes outside the law.
  bool may_fall_away(const DeadlineResult& result) const;
  /// Whether a list went out by this day that keeps the whole deposit.
  bool list_in_time_keeps_all(Day last) const;
  bool kept_if_it_applies(const DeadlineResult& result) const;
  bool missed_if_it_applies(const DeadlineResult& result) const;

  /// A sentence of the sender's, "I" or "we"; nothing where there is none.
  std::string in_one_voice(const std::string& key) const;

  const Assessment* a_;
  const Rules* rules_;
  const Speech* speech_;
  bool several_, claims_;
  mutable bool hedged_ = false;
  mutable std::vector<std::pair<std::string, std::string>> second_hand_;
};

/// Whether a duty of the landlord's is to pay back or to send the list.
bool is_about_money_or_list(std::string_view deadline);

/// What a missed deadline costs: 0 the deductions, 1 a penalty, 2 something, 3 nothing that the pack names.
int weight(const Deadline& deadline);

} // namespace wearline
