// The tenant's letters about money. Order: what is asked, the ground that decides most, the charges by reason, what
// follows. They differ in their first lines and in what they close with.

#include "law/facts.h"
#include "letters/letter_groups.h"
#include "letters/letter_parts.h"
#include "letters/letter_walk.h"
#include "letters/letter_writers.h"
#include "wording/line_text.h"

#include <algorithm>

namespace wearline {

namespace {

class MoneyLetter {
public:
  explicit MoneyLetter(Draft& d) : d_(d), claim_(claim_of(d)), groups_(groups_of(d, claim_)), by_(by()) {}

  void write() {
    head();
    if (nothing_to_ask()) {
      settled();
      return;
    }
    d_.must("ask", ParagraphRole::ask, ask());
    request_form();
    d_.may("facts", ParagraphRole::opening, facts());
    // What came back may have been this money: then the person says so.
    if (Paragraph* p = d_.may("held-apart", ParagraphRole::opening, held_apart()))
      p->on = claim_.paid <= claim_.deposit.value_or(Money());
    if (d_.law.lease_goes_on()) d_.may("share", ParagraphRole::opening, d_.say("letter.roommate-stays.share"));
    promise();
    missed();
    defects();
    forfeit();
    penalty();
    charges();
    add_walk_through(d_);
    audit();
    interest();
    closing();
  }

private:
  bool is(LetterKind kind) const { return d_.letter.kind == kind; }
  bool answers_a_bill() const { return claim_.bill; }
  /// From a bill that may be owed in part nothing is asked back: the deposit is kept as a right. Where a refund is due
  /// however the open charges fall, it is asked for.
  bool keeps_its_right() const {
    if (!answers_a_bill() || claim_.forfeited || is(LetterKind::demand)) return false;
    // What the list does not make likely is the landlord's to show.
    const Money likely = claim_.deposit.value_or(Money()) + claim_.interest - claim_.paid - likely_charges();
    return (claim_.open() && likely < d_.rules.letters.smallest_sum) || !worth_a_letter(claim_, d_);
  }
  /// Not the landlord has the money, but an office that pays it out.
  bool office_holds() const {
    const Forum* own = own_forum(d_);
    return own && own->holds;
  }
  /// Nothing is disputed, and of the sum that the statement says comes back nobody said that it came.
  Money likely_charges() const {
    Money sum;
    for (const LineAssessment& line : d_.a.lines) sum += line.result.no_middle ? Money() : line.result.fair.likely();
    return sum;
  }
  bool promised() const { return claim_.paid_stated && claim_.paid >= d_.rules.letters.smallest_sum; }
  /// The whole deposit came back, and interest is what is missing.
  bool only_interest() const {
    return claim_.deposit && claim_.paid_known && claim_.kept() <= Money() && claim_.sum > Money();
  }
  bool silent() const { return d_.c.statement.statement_received == Tri::no && d_.a.lines.empty(); }

  /// All was paid, or what is missing is not worth a letter; an answer to a bill is always worth one, as is a missed
  /// day that costs more than the sum due.
  bool nothing_to_ask() const {
    const bool late = d_.c.statement.statement_received == Tri::no || d_.law.some_day_missed();
    if (!claim_.deposit) return !claim_.disputes() && !late;
    return !worth_a_letter(claim_, d_) && !promised() && !answers_a_bill() &&
           !(d_.law.penalty() && !d_.law.missed().empty());
  }

  /// The day to answer by: that of a rule where one starts with this letter, else the usual time.
  Day by() const {
    const LetterRules& rules = d_.rules.letters;
    if (!is(LetterKind::demand)) return reply_day(d_);
    if (const auto day = day_started_by(d_, "tenant-demand")) return *day;
    const Remark* rule = request_rule(d_);
    if (!rule || !rule->days) return reply_day(d_);
    const Day day = d_.a.today + days{static_cast<int>(*rule->days) + rules.mailing_days};
    return std::max(day, d_.law.landlords_day().value_or(day));
  }

  void head() {
    add_letter_head(d_, d_.several ? "letter.from.tenants" : "letter.from.tenant", "letter.to.landlord");
    const LetterKind kind = nothing_to_ask() || only_interest() ? LetterKind::question_charges : d_.letter.kind;
    d_.must("subject", ParagraphRole::opening, d_.say("letter.subject.", name_of(kind)));
    d_.must("greeting", ParagraphRole::opening, d_.say("letter.greeting.landlord"));
  }

  /// Three sentences for a person who wants to say that nothing is open.
  void settled() {
    Sentences text;
    if (d_.c.statement.statement_received != Tri::no && !d_.a.lines.empty()) text.add(d_.say("letter.settled.list"));
    if (claim_.paid_known && !claim_.paid.is_zero())
      text.add(d_.say("letter.settled.paid", {{"sum", d_.money(claim_.paid)}}));
    const auto fine = own_lines();
    if (!fine.empty()) text.add(d_.say("letter.settled.fine", {{"charges", d_.charges(fine)}}));
    // Interest that nobody has reckoned yet is not given up with a thank-you.
    const bool interest_open = interest_may_be_owed();
    text.add(d_.say(interest_open ? "letter.settled.but-interest" : "letter.settled.nothing"));
    d_.must("ask", ParagraphRole::ask, text.take());
    if (interest_open) interest();
    d_.warn("nothing-to-claim", d_.say("letter.warn.nothing-to-claim"));
    warn_about_law(d_);
    add_signature(d_);
    add_caution(d_);
  }

  // First lines.

  std::string ask() const {
    Sentences text;
    if (is(LetterKind::second_letter)) {
      const Event* before = earlier_letter(d_.c);
      const std::string answer = d_.say(answered_by(before));
      text.add(before ? d_.say("letter.ask.second", {{"when", letter_sent(d_, *before)}, {"answer", answer}})
                      : d_.say("letter.ask.second.no-day", {{"answer", answer}}));
    }
    if (is(LetterKind::objection)) text.add(objection());
    if (is(LetterKind::demand)) text.add(request());
    if (const Event* before = is(LetterKind::demand) && notice_of_suit(d_) ? earlier_letter(d_.c) : nullptr)
      text.add(d_.say("letter.ask.wrote", {{"when", letter_sent(d_, *before)}}));
    // A bill is answered first where nothing is asked back.
    if (answers_a_bill() && keeps_its_right()) text.add(bill(false));
    text.add(sum());
    if (answers_a_bill() && !keeps_its_right()) text.add(bill(true));
    if (is(LetterKind::demand) && notice_of_suit(d_)) text.add(suit());
    return text.take();
  }

  /// A list or money that came after the first letter is an answer, though it did not settle the matter.
  std::string_view answered_by(const Event* letter) const {
    const Statement& s = d_.c.statement;
    const auto after = [&](const std::optional<DaySpan>& day) { return day && day->earliest >= letter->on.latest; };
    if (!letter) return "letter.ask.second.none";
    if (after(s.received ? s.received : s.sent)) return "letter.ask.second.list";
    return claim_.paid_known && !claim_.paid.is_zero() && after(s.refund_sent) ? "letter.ask.second.part"
                                                                               : "letter.ask.second.none";
  }

  /// A place for a notice whose form a law gives and that was not read.
  void request_form() {
    const Remark* rule = is(LetterKind::demand) ? request_rule(d_) : nullptr;
    const auto form = d_.rules.letters.request_forms.find(d_.c.jurisdiction);
    if (!rule || form == d_.rules.letters.request_forms.end()) return;
    d_.must("wants-request-form", ParagraphRole::opening,
            d_.say("letter.wants.request-form", {{"cite", form->second}}));
    d_.warn("fixed-words", d_.say("letter.warn.fixed.blank", {{"cite", form->second}}));
  }

  std::string objection() const {
    Sentences text;
    text.add(d_.say("letter.ask.objection"));
    if (const DeadlineResult* deadline = objection_deadline(d_))
      text.add(own_notice(d_, *deadline->deadline, "letter.ask.objection.law", "letter.ask.objection.law.under"));
    if (const auto& received = d_.c.statement.received)
      text.add(d_.say("letter.ask.objection.received", {{"when", d_.when(*received)}}));
    // Where the law wants a request too, one letter is both.
    if (const Remark* rule = request_rule(d_); rule && !asked_before())
      text.add(own_notice(d_, *rule, "letter.ask.request.too", "letter.ask.request.too.under"));
    return text.take();
  }

  bool asked_before() const {
    return std::any_of(d_.c.events.begin(), d_.c.events.end(),
                       [](const Event& event) { return event.what == "tenant-demand"; });
  }

  /// The written request that a law wants, with its section.
  std::string request() const {
    if (notice_of_suit(d_) || only_interest()) return {};
    if (const Remark* rule = request_rule(d_))
      return own_notice(d_, *rule, "letter.ask.request", "letter.ask.request.under");
    if (const DeadlineResult* deadline = own_deadline(d_, {"demand"}))
      return own_notice(d_, *deadline->deadline, "letter.ask.request", "letter.ask.request.under");
    // Days that start with the request.
    if (d_.law.there())
      for (const DeadlineResult& deadline : d_.a.law->deadlines())
        if (deadline.deadline->who == Who::landlord && deadline.applies == Tri::yes &&
            starts_with_request(*deadline.deadline))
          return own_notice(d_, *deadline.deadline, "letter.ask.request", "letter.ask.request.under");
    return d_.say("letter.ask.request");
  }

  bool starts_with_request(const Deadline& deadline) const {
    return std::any_of(deadline.periods.begin(), deadline.periods.end(), [&](const Period& period) {
      return std::any_of(period.after.begin(), period.after.end(),
                         [&](EventId id) { return d_.a.law->view().info(id).id == "tenant-demand"; });
    });
  }

  std::string suit() const {
    const DeadlineResult* deadline = notice_of_suit(d_);
    return Sentences()
        .add(d_.say("letter.ask.suit", {{"forum", forum(d_)}}))
        .add(own_notice(d_, *deadline->deadline, "letter.ask.suit.law", "letter.ask.suit.law.under"))
        .take();
  }

  /// `day_said`: the day to answer by was named just before.
  std::string bill(bool day_said) const {
    const auto& bill = d_.c.statement.stated_balance_due;
    Sentences text;
    text.add(!bill      ? d_.say("letter.ask.bill")
             : day_said ? d_.say("letter.ask.bill.too", {{"sum", d_.money(*bill)}})
                        : d_.say("letter.ask.bill.sum", {{"sum", d_.money(*bill)}}));
    return text.add(day_said ? d_.say("letter.ask.bill.back.too") : d_.say("letter.ask.bill.back", {{"day", day()}}))
        .take();
  }

  std::string day() const { return d_.speech.day(by_); }

  std::string sum() const {
    Sentences text;
    if (!claim_.deposit && !claim_.disputes()) return d_.say("letter.ask.deposit", {{"day", day()}});
    if (!claim_.deposit) {
      Money back;
      for (const LineStand& line : claim_.lines) back += line.back;
      return d_.say("letter.ask.take-off", {{"sum", d_.money(back)}, {"day", day()}});
    }
    if (keeps_its_right()) {
      // What is open is not asked back from a bill: the deposit is kept as a right.
      if (!claim_.deposit->is_zero()) text.add(d_.say("letter.ask.bill.deposit", {{"sum", d_.money(*claim_.deposit)}}));
      return text.take();
    }
    if (!worth_a_letter(claim_, d_))
      return promised() ? d_.say("letter.ask.promised", {{"sum", d_.money(claim_.paid)}, {"day", day()}})
                        : d_.say("letter.ask.missed", {{"day", day()}});
    const std::string asked = d_.money(claim_.sum);
    if (only_interest()) return d_.say("letter.ask.interest", {{"sum", asked}, {"day", day()}});
    if (office_holds()) return d_.say("letter.ask.office", {{"forum", forum(d_)}, {"sum", asked}, {"day", day()}});
    const bool whole = claim_.paid.is_zero() && claim_.sum == *claim_.deposit && (silent() || !claim_.keeps_nothing());
    const bool all_kept = claim_.paid_known && claim_.sum == claim_.kept() + claim_.interest;
    if (whole) text.add(d_.say("letter.ask.whole", {{"sum", asked}, {"day", day()}}));
    else if (claim_.keeps_nothing() || all_kept)
      text.add(d_.say(claim_.interest.is_zero() ? "letter.ask.all" : "letter.ask.all.interest",
                      {{"sum", asked}, {"day", day()}}));
    else text.add(d_.say("letter.ask.part", {{"sum", asked}, {"day", day()}}));
    if (claim_.paid_stated && !claim_.paid.is_zero())
      text.add(d_.say("letter.ask.stated", {{"sum", d_.money(claim_.paid)}}));
    return text.take();
  }

  /// What the person entered, in sentences; nothing else.
  std::string facts() const {
    Sentences text;
    const Tenancy& t = d_.c.tenancy;
    if (t.possession_returned && t.possession_returned->earliest <= d_.a.today) {
      // Of a few days that are not told apart the last one is sure.
      if (told(*t.possession_returned))
        text.add(d_.say(tenant_died(d_) ? "letter.facts.keys.died" : "letter.facts.keys",
                        {{"when", d_.when(*t.possession_returned)}}));
      else if (t.possession_returned->latest <= std::min(d_.a.today, t.possession_returned->earliest + days{31}))
        text.add(d_.say("letter.facts.keys.by", {{"day", d_.speech.day(t.possession_returned->latest)}}));
    } else if (t.ended && told(*t.ended)) {
      text.add(d_.say(t.ended->earliest <= d_.a.today ? "letter.facts.ended" : "letter.facts.ends",
                      {{"when", d_.when(*t.ended)}}));
    }
    for (const std::string_view own : {"left-under-orders", "protected-early-leaving", "displaced"})
      if (entered(own)) text.add(ended_by(own));
    if (d_.law.lease_goes_on()) text.add(d_.say("letter.facts.roommate-stays"));
    if (!t.forwarding_address_given) text.add(d_.say("letter.facts.address-now")).add(address_notice(d_));
    else if (told(*t.forwarding_address_given))
      text.add(d_.say("letter.facts.address", {{"when", d_.when(*t.forwarding_address_given)}}));
    text.add(deposit_facts());
    const Statement& s = d_.c.statement;
    if (s.statement_received == Tri::no) text.add(d_.say("letter.facts.no-statement"));
    else if (s.received && !is(LetterKind::objection) && told(*s.received))
      text.add(d_.say("letter.facts.received", {{"when", d_.when(*s.received)}}));
    if (claim_.paid_known)
      text.add(
          claim_.paid.is_zero()
              ? d_.say("letter.facts.nothing-back")
              : d_.say(claim_.deposit && !only_interest() ? "letter.facts.paid-back" : "letter.facts.paid-back.only",
                       {{"paid", d_.money(claim_.paid)}, {"kept", d_.money(std::max(claim_.kept(), Money()))}}));
    else if (silent()) text.add(d_.say("letter.facts.paid-so-far"));
    else if (!claim_.paid_stated && claim_.deposit) text.add(d_.say("letter.facts.less-paid"));
    return text.take();
  }

  /// Why the sender could leave, with the day of the notice where it was entered.
  std::string ended_by(std::string_view own) const {
    const auto notice = std::find_if(d_.c.events.begin(), d_.c.events.end(), [&](const Event& event) {
      return event.what == "notice-given" && told(event.on);
    });
    const std::string with_day = std::string(own) + ".notice";
    if (notice != d_.c.events.end() && d_.has("letter.facts.own.", with_day))
      return d_.say("letter.facts.own.", with_day, {{"when", d_.when(notice->on)}});
    return d_.say("letter.facts.own.", own);
  }

  /// A day, a month or a year is told; a wider span is what the person does not know, and no sentence of theirs.
  bool told(const DaySpan& day) const { return d_.speech.span(day) != d_.when(day) || day.known(); }

  /// Known from the case not to be so.
  bool said_no(std::string_view fact) const { return wearline::told(d_.c, fact) == Tri::no; }
  /// Known from the case to be so.
  bool entered(std::string_view fact) const { return wearline::told(d_.c, fact) == Tri::yes; }

  /// The list promises more than was paid: the landlord's own figure is asked for first.
  void promise() {
    for (const AuditNote& note : d_.a.audit)
      if (note.code == std::string_view("refund-less-than-stated") && note.found > note.stated)
        d_.may("audit-refund-less-than-stated", ParagraphRole::opening,
               d_.say("letter.audit.refund-less-than-stated",
                      {{"stated", d_.money(note.stated)}, {"found", d_.money(note.found)}}));
  }

  /// Money that is no deposit: what it was paid for comes out of it first, and not out of the deposit.
  std::string held_apart() const {
    Sentences text;
    for (const Deposit* own : d_.held_apart()) {
      const std::vector<std::size_t> served = d_.served_by(*own);
      std::vector<std::size_t> granted, disputed;
      for (const std::size_t i : served)
        if (!claim_.lines[i].granted.is_zero()) granted.push_back(i);
        else if (claim_.lines[i].stand == Stand::open) disputed.push_back(i);
      const Money taken = std::min(*own->amount, granted_of(served, claim_));
      text.add(d_.say(granted.empty() ? "letter.held-apart" : "letter.held-apart.taken",
                      {{"sum", d_.money(*own->amount)},
                       {"kind", d_.say("letter.facts.of.", own->kind)},
                       {"charges", d_.charges(granted)},
                       {"taken", d_.money(taken)},
                       {"rest", d_.money(*own->amount - taken)}}));
      if (!disputed.empty()) text.add(d_.say("letter.held-apart.first", {{"charges", d_.charges(disputed)}}));
    }
    return text.take();
  }

  /// "My deposit was $1,740.00." or the deposits by kind.
  std::string deposit_facts() const {
    if (!claim_.deposit) return {};
    std::vector<std::string> kinds;
    for (const Deposit& deposit : d_.c.deposits)
      if (deposit.kind != "last-month" && deposit.amount && is_deposit(deposit, d_.a.pack))
        kinds.push_back(d_.say("letter.facts.deposit.one",
                               {{"kind", d_.say("letter.facts.of.", deposit.kind.empty() ? "security" : deposit.kind)},
                                {"sum", d_.money(*deposit.amount)}}));
    if (kinds.size() < 2) return d_.say("letter.facts.deposit", {{"sum", d_.money(*claim_.deposit)}});
    return d_.say("letter.facts.deposits", {{"sum", d_.money(*claim_.deposit)}, {"kinds", listed(kinds, d_.speech)}});
  }

  // What decides most.

  /// Interest has a paragraph of its own.
  bool about_interest(const MissedDay& day) const {
    return std::all_of(day.deadlines.begin(), day.deadlines.end(), [&](const DeadlineResult* deadline) {
      return d_.law.name_of(*deadline->deadline) == "pay-interest";
    });
  }

  /// Days the landlord missed, the two that cost most.
  void missed() {
    int said = 0;
    // What may have been paid and fell due on the same day is named with it.
    std::vector<MissedDay> if_unpaid;
    if (!claim_.paid_known) if_unpaid = d_.law.days_if_unpaid();
    for (MissedDay day : d_.law.missed_days()) {
      if (said == 2) return;
      if (about_interest(day)) continue;
      const auto same = std::find_if(if_unpaid.begin(), if_unpaid.end(),
                                     [&](const MissedDay& other) { return other.last == day.last; });
      if (same != if_unpaid.end()) {
        day.deadlines.insert(day.deadlines.end(), same->deadlines.begin(), same->deadlines.end());
        if_unpaid.erase(same);
      }
      const Deadline& first = d_.law.spoken(*day.deadlines.front());
      Sentences text;
      text.add(due_text(d_, day));
      text.add(done(day));
      const std::vector<std::string>& costs = first.if_missed;
      const bool penalty_only =
          std::all_of(costs.begin(), costs.end(), [](const std::string& cost) { return cost == "owes-penalty"; });
      // What only a penalty follows from is said with the penalty.
      const bool no_penalty = d_.law.penalty_waits_for_address();
      if (!claim_.forfeited && said == 0 && !(penalty_only && (penalty_apart() || no_penalty)))
        text.add(penalty_apart() ? keeps_nothing_by(first) : follows(first));
      std::string law = d_.law.says(first, text.take());
      // A penalty that is not said apart is asked for no less.
      const bool penalty = std::find(costs.begin(), costs.end(), "owes-penalty") != costs.end();
      if (penalty && !no_penalty && !claim_.forfeited && said == 0 && !penalty_apart() && !law.empty())
        law += ' ' + d_.say("letter.penalty");
      if (day.perhaps && !law.empty()) law = Sentences().add(law).add(unless()).take();
      if (const std::string start = d_.law.assumed_start(*day.deadlines.front());
          !law.empty() && d_.has("letter.due.assumed.", start))
        law = Sentences().add(law).add(d_.say("letter.due.assumed.", start)).take();
      if (d_.may("missed-" + day.deadlines.front()->deadline->id, ParagraphRole::opening, std::move(law))) ++said;
      if (const Deadline* list = d_.law.list_not_sent(*day.deadlines.front()))
        d_.may("no-list-" + list->id, ParagraphRole::opening,
               d_.law.says(*list, Sentences().add(d_.say("letter.due.no-list")).add(follows(*list)).take()));
    }
    if (said < 2 && !if_unpaid.empty()) due_if_unpaid(if_unpaid.front(), said > 0);
  }

  /// The day the money was due and what follows if it was not paid by then: the law's own words, and nothing about
  /// whether it was.
  void due_if_unpaid(const MissedDay& day, bool cost_said) {
    const Deadline& deadline = d_.law.spoken(*day.deadlines.front());
    Sentences text;
    text.add(due_text(d_, day));
    // What only a penalty follows from is said with the penalty.
    const std::vector<std::string>& costs = deadline.if_missed;
    if (!cost_said && std::any_of(costs.begin(), costs.end(), [](const auto& cost) { return cost != "owes-penalty"; }))
      text.add(penalty_apart() ? keeps_nothing_by(deadline) : follows(deadline));
    d_.may("due-" + deadline.id, ParagraphRole::opening, d_.law.says(deadline, text.take()));
  }

  /// A day of paying back or accounting was missed; interest has a paragraph of its own.
  bool late() const {
    const auto missed = d_.law.missed();
    return std::any_of(missed.begin(), missed.end(), [&](const DeadlineResult* deadline) {
      return d_.law.name_of(*deadline->deadline) != "pay-interest";
    });
  }

  /// What a court could add, as far as this letter may speak of it, and whether nothing but the payment is open.
  std::pair<const Remedy*, bool> what_is_added() const {
    const auto rule = [](const RemedyResult* remedy) { return remedy ? remedy->rule : nullptr; };
    if (!d_.law.days_if_unpaid().empty()) return d_.law.penalty_if_unpaid();
    // Before court, and after a letter without an answer, it is told what comes next.
    if ((is(LetterKind::demand) && notice_of_suit(d_)) || (is(LetterKind::second_letter) && !keeps_its_right()))
      return {rule(d_.law.possible_penalty()), true};
    if (late() || !d_.law.defects().empty() || claim_.forfeited)
      if (const RemedyResult* remedy = d_.law.penalty()) return {remedy->rule, true};
    if (is(LetterKind::demand) && request_rule(d_)) return d_.law.penalty_after_request();
    // What the law adds to any sum wrongly kept hangs on no missed day and on no intent.
    if (is(LetterKind::question_charges) && !answers_a_bill())
      if (const RemedyResult* remedy = d_.law.penalty(); remedy && remedy->certain) return {remedy->rule, true};
    return {nullptr, true};
  }
  bool penalty_apart() const { return what_is_added().first != nullptr; }

  /// Asks once what speaks against a rule.
  std::string unless() {
    if (unless_said_) return {};
    unless_said_ = true;
    return d_.say("letter.due.unless");
  }

  /// The facts say already that no list came, or what was paid.
  bool told_already(std::string_view deadline) const {
    if (deadline == "itemize" || deadline == "notice-of-claim") return d_.c.statement.statement_received == Tri::no;
    return (deadline == "return-deposit" || deadline == "refund-balance") && claim_.paid_known;
  }

  /// The sender entered that bills did not come.
  bool bills_missing() const {
    const auto lacks = [](const std::vector<std::string>& documents) {
      return std::find(documents.begin(), documents.end(), "receipts") != documents.end();
    };
    return lacks(d_.c.statement.missing) || std::any_of(d_.c.lines.begin(), d_.c.lines.end(),
                                                        [&](const Line& line) { return lacks(line.proof_missing); });
  }

  std::string done(const MissedDay& day) const {
    Sentences text;
    MissedDay left{day.last, {}}, unsure{day.last, {}};
    for (const DeadlineResult* deadline : day.deadlines) {
      const std::string_view name = d_.law.name_of(*deadline->deadline);
      if (deadline->reason != DeadlineReason::not_done || told_already(name)) continue;
      (name == "send-receipts" && !bills_missing() ? unsure : left).deadlines.push_back(deadline);
    }
    const std::vector<std::string> not_done = deadline_names(d_, left), perhaps = deadline_names(d_, unsure);
    text.add(done_late(d_, day));
    if (!not_done.empty()) text.add(d_.say("letter.done.not", {{"what", listed(not_done, d_.speech)}}));
    if (!perhaps.empty()) text.add(d_.say("letter.done.if-sent", {{"what", listed(perhaps, d_.speech)}}));
    return text.take();
  }

  /// "A landlord loses the right": it follows from the missed day, and is said of whoever missed it.
  std::string of_who_missed(std::string said) const {
    for (const PartyWords& party : d_.rules.letters.parties) {
      if (party.party != "landlord" || party.language != d_.speech.language()) continue;
      std::string general = party.general;
      general[0] = static_cast<char>(general[0] - 'a' + 'A');
      if (said.compare(0, general.size() + 1, general + ' ') != 0) continue;
      const std::string rest = said.substr(general.size() + 1);
      if (rest.compare(0, 4, "who ") == 0 || rest.compare(0, 4, "que ") == 0) return said;
      return d_.say("letter.due.misser") + ' ' + rest;
    }
    return said;
  }

  std::string follows(const Deadline& deadline) const {
    const std::string& said = deadline.if_missed_text_in(d_.speech.language());
    const bool said_here = d_.speech.language() == "en" || said != deadline.if_missed_text;
    return said_here ? of_who_missed(d_.law.spoken_by_sender(said)) : std::string();
  }

  /// What follows from a missed day where what a court adds is said apart: of both only that nothing may be kept.
  std::string keeps_nothing_by(const Deadline& deadline) const {
    const std::vector<std::string>& costs = deadline.if_missed;
    const auto costs_it = [&](std::string_view cost) {
      return std::find(costs.begin(), costs.end(), cost) != costs.end();
    };
    std::string said = follows(deadline);
    const auto multiples = d_.rules.letters.multiples.find(d_.speech.language());
    const bool twice = multiples != d_.rules.letters.multiples.end() &&
                       std::any_of(multiples->second.begin(), multiples->second.end(),
                                   [&](const std::string& words) { return said.find(words) != std::string::npos; });
    if (!costs_it("owes-penalty") || !twice) return said;
    return costs_it("forfeits-deductions")          ? d_.say("letter.due.keeps-nothing")
           : costs_it("forfeits-damage-deductions") ? d_.say("letter.due.keeps-nothing.damage")
                                                    : said;
  }

  /// Papers the law wants and that did not come: the two rules that weigh most. The law is said, and what did not come;
  /// the landlord is not asked to mend what the law holds against them.
  void defects() {
    int said = 0;
    std::vector<std::string> documents_said;
    consent();
    for (const DocumentResult* document : d_.law.defects()) {
      if (said == 2) return;
      const std::string text = defect(*document, documents_said);
      if (!text.empty() && d_.may("paper-" + document->rule->id, ParagraphRole::opening, text)) ++said;
    }
  }

  /// Where money may be kept only with the tenant's agreement: the law is said, and whoever holds that there is one
  /// has to show it. What the sender agreed to is theirs to enter.
  void consent() {
    if (!d_.law.there() || answers_a_bill()) return;
    for (const DocumentResult& document : d_.a.law->documents()) {
      const auto& open = document.open;
      const bool wanted = std::any_of(open.begin(), open.end(), [&](DocumentId id) {
        return d_.rules.registry.documents[index(id)].id == "tenant-consent";
      });
      const auto& costs = document.rule->if_missing;
      if (!wanted || document.defect.known() || d_.law.footing(*document.rule) == Footing::none ||
          std::find(costs.begin(), costs.end(), "forfeits-deductions") == costs.end())
        continue;
      const std::string law = d_.law.rule_says(*document.rule, "letter.defect.law");
      const bool none = said_no("tenant-consented") || said_no("tenant-agreed-in-writing");
      d_.may("paper-" + document.rule->id, ParagraphRole::opening,
             Sentences().add(law).add(d_.say(none ? "letter.defect.consent" : "letter.defect.consent.open")).take());
      return;
    }
  }

  std::string defect(const DocumentResult& document, std::vector<std::string>& said) const {
    const bool wrong_way = document.lacking.empty() && document.wrong_way && !d_.c.statement.delivery_method.empty();
    const bool sure = document.defect == Tri::yes;
    std::vector<std::string> lacking;
    bool consent = false;
    for (const DocumentId id : document.lacking) {
      const std::string& name = d_.rules.registry.documents[index(id)].id;
      if (name == "tenant-consent" || name == "signatures-or-dissent") consent = true;
      else lacking.push_back(d_.law.document(id));
    }
    if (lacking.empty() && !wrong_way && !consent) return {};
    Sentences text;
    // Its first sentence is the deadline.
    const std::string& deadline = document.rule->text_in(d_.speech.language());
    const bool said_here = d_.speech.language() == "en" || deadline != document.rule->text;
    text.add(said_here ? d_.law.says(*document.rule, d_.law.in_general(opening(deadline, document.rule->text)))
                       : d_.law.rule_says(*document.rule, "letter.defect.law"));
    if (text.empty()) return {};
    if (wrong_way) text.add(d_.say("letter.defect.way"));
    else if (consent) text.add(d_.say("letter.defect.consent"));
    else {
      const std::string documents = listed(lacking, d_.speech);
      if (std::find(said.begin(), said.end(), documents) != said.end()) return {};
      said.push_back(documents);
      text.add(d_.say("letter.defect.lacking", {{"papers", documents}}));
    }
    const std::string& follows = document.rule->if_missing_text_in(d_.speech.language());
    // What only a penalty follows from is said with the penalty.
    const std::vector<std::string>& costs = document.rule->if_missing;
    const bool forfeits = std::any_of(costs.begin(), costs.end(),
                                      [](const std::string& cost) { return cost.compare(0, 8, "forfeits") == 0; });
    if (claim_.forfeited || !(forfeits || (sure && !d_.law.penalty())) ||
        (d_.speech.language() != "en" && follows == document.rule->if_missing_text))
      return text.take();
    const std::string costs_said = d_.law.spoken_by_sender(follows);
    // Something else may have come in place of what is missing: whoever says so has to show it.
    text.add(costs_said);
    if (!sure && !costs_said.empty()) text.add(d_.say("letter.defect.unless"));
    return text.take();
  }

  void forfeit() {
    if (!claim_.forfeited) {
      perhaps_forfeit();
      return;
    }
    Sentences text;
    text.add(d_.law.rule_says(*claim_.forfeited->rule, "letter.forfeit.law"));
    if (!text.empty()) text.add(d_.law.because(*claim_.forfeited->rule));
    if (claim_.kept() > Money() && !d_.a.lines.empty())
      text.add(d_.say(claim_.forfeited->rule->loses == Loses::damage_deductions ? "letter.forfeit.so.damage"
                                                                                : "letter.forfeit.so"));
    d_.may("forfeit", ParagraphRole::opening, text.take());
  }

  /// A rule under which a court may find that nothing may be kept, and the facts of the case that speak for it.
  void perhaps_forfeit() {
    const ForfeitResult* forfeit = d_.law.perhaps_forfeited();
    if (!forfeit || answers_a_bill() || is(LetterKind::accept_and_claim_rest)) return;
    const std::string law = d_.law.rule_says(*forfeit->rule, "letter.forfeit.law");
    if (!law.empty())
      d_.may("forfeit", ParagraphRole::opening, Sentences().add(law).add(d_.law.because(*forfeit->rule)).take());
  }

  /// What a court could add; the right to it is kept. A notice before court says what it opens.
  void penalty() {
    const auto [remedy, sure] = what_is_added();
    if (!remedy) return;
    Sentences text;
    text.add(d_.law.rule_says(*remedy, "letter.penalty.law"));
    if (text.empty()) return;
    text.add(d_.say("letter.penalty"));
    if (!sure) text.add(unless());
    d_.may("penalty", ParagraphRole::opening, text.take());
  }

  // The charges.

  void charges() {
    if (d_.a.lines.empty()) return;
    const bool objection = is(LetterKind::objection);
    const bool disputed = claim_.keeps_nothing() || answers_a_bill() || !claim_.deposit;
    if (!groups_.empty())
      d_.may("charges-intro", ParagraphRole::line,
             objection                ? d_.say("letter.charges.objection", {{"charges", d_.charges(disputed_lines())}})
             : claim_.keeps_nothing() ? d_.say("letter.charges.even")
             : disputed               ? d_.say("letter.charges.not-agreed")
                        : d_.say(disputed_lines().size() == 1 ? "letter.charges.intro.one" : "letter.charges.intro"));
    // Only a letter that has to name each charge, or is meant to settle, shows what it leaves undisputed.
    const bool names_all = objection || is(LetterKind::accept_and_claim_rest);
    add_charges_table(d_, claim_, !names_all || answers_a_bill(),
                      objection  ? "letter.charges.objected"
                      : disputed ? "letter.charges.disputed"
                                 : "letter.charges.back");
    const auto unrecorded = not_on_record(d_, disputed_lines());
    if (!unrecorded.empty())
      d_.may("not-on-record", ParagraphRole::line,
             d_.say(d_.c.records.move_out.signed_by_both == Tri::yes ? "letter.record.not.signed" : "letter.record.not",
                    {{"charges", d_.charges(unrecorded)}}),
             unrecorded);
    std::vector<const Rule*> said = said_of_all(d_, claim_);
    for (const DisputeGroup& group : groups_) {
      std::string id = "group-" + std::string(group.ground);
      if (group.ground == "too-high" || group.ground == "relet") id = "line-" + d_.c.lines[group.lines.front()].id;
      d_.may(std::move(id), ParagraphRole::line, group_text(d_, claim_, group, said), group.lines);
    }
    // Where nothing may be kept, nothing is left to show.
    if (!claim_.keeps_nothing()) {
      const auto items = shows(d_, claim_, groups_);
      if (items.size() == 1) d_.may("show", ParagraphRole::list, d_.say("letter.show.only", {{"what", items.front()}}));
      else add_list(d_, "show", ParagraphRole::list, d_.say("letter.show"), items);
      const auto awaited = bills_awaited(d_, claim_);
      if (!names_all && !awaited.empty())
        d_.may("awaited", ParagraphRole::line,
               d_.say(awaited.size() == 1 ? "letter.show.open" : "letter.show.open.many",
                      {{"charges", d_.charges(awaited)}}),
               awaited);
    }
    // Whoever says what is fair must not give away that nothing may be kept, nor own to a part of a bill.
    if (claim_.keeps_nothing() || answers_a_bill()) return;
    const auto fine = own_lines();
    grants_ = (names_all && !fine.empty()) || !lines_that_are(Stand::limited, claim_).empty();
    Money sum;
    for (const std::size_t i : fine) sum += d_.a.lines[i].result.claimed;
    if (!fine.empty())
      if (Paragraph* p =
              d_.may("undisputed", ParagraphRole::line,
                     d_.say("letter.undisputed", {{"charges", d_.charges(fine)}, {"sum", d_.money(sum)}}), fine))
        p->on = names_all;
    const auto credits = lines_that_are(Stand::credit, claim_);
    if (!credits.empty())
      d_.may("credits", ParagraphRole::line, d_.say("letter.credits", {{"charges", d_.charges(credits)}}), credits);
  }

  /// Charges that are fair and that the sender entered as theirs.
  std::vector<std::size_t> own_lines() const {
    std::vector<std::size_t> out;
    for (const std::size_t i : lines_that_are(Stand::undisputed, claim_))
      if (claim_.lines[i].own) out.push_back(i);
    return out;
  }

  std::vector<std::size_t> disputed_lines() const {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < claim_.lines.size(); ++i)
      if (claim_.lines[i].back > Money() || claim_.lines[i].stand == Stand::no_amount) out.push_back(i);
    return out;
  }

  /// Charges clash only where the work that makes them clash was entered; two debts for one loss always do.
  bool clashes(const AuditNote& note) const {
    const auto all = [&](auto test) { return std::all_of(note.lines.begin(), note.lines.end(), test); };
    if (note.effect == AuditNote::Effect::doubt)
      return all([&](std::size_t i) { return d_.a.lines[i].result.verdict == Verdict::non_damage_charge; });
    return note.effect == AuditNote::Effect::drop &&
           !all([&](std::size_t i) { return d_.c.lines[i].remedy != ChargeRemedy::replace; });
  }

  /// A fee for ending early and rent for days after the end are one loss.
  void fee_and_rent() {
    std::vector<std::size_t> lines;
    bool fee = false, rent = false;
    for (std::size_t i = 0; i < d_.a.lines.size(); ++i) {
      const Element* element = d_.a.lines[i].subject.element;
      const bool ends = element && element->id == "early-termination", after = days_after_leaving(d_, i) && !ends;
      if (!ends && !after) continue;
      fee = fee || ends, rent = rent || after;
      lines.push_back(i);
    }
    if (fee && rent)
      d_.may("audit-fee-and-rent", ParagraphRole::line,
             d_.say("letter.audit.fee-and-rent", {{"charges", d_.charges(lines)}}), lines);
  }

  void audit() {
    fee_and_rent();
    for (const AuditNote& note : d_.a.audit) {
      const std::string_view code = note.said ? std::string_view("clash") : note.code;
      if (!d_.has("letter.audit.", code)) continue;    // said with the charge itself, or not worth a sentence
      if (code == "refund-less-than-stated") continue; // said first
      const Money apart = std::max(note.stated, note.found) - std::min(note.stated, note.found);
      if (!note.said && apart < small_change()) continue; // a matter of rounding
      if (note.said && !clashes(note)) continue;
      std::string id = "audit-" + std::string(note.code);
      std::vector<std::size_t> lines = note.lines;
      std::sort(lines.begin(), lines.end());
      for (const std::size_t line : lines) id += '-' + d_.c.lines[line].id;
      d_.may(std::move(id), ParagraphRole::line,
             d_.say("letter.audit.", code,
                    {{"charges", lines.empty() ? std::string() : d_.charges(lines)},
                     {"stated", d_.money(note.stated)},
                     {"found", d_.money(note.found)},
                     {"said", note.said ? note.said->in(d_.speech.language()) : std::string()}}),
             lines);
    }
  }

  bool interest_may_be_owed() const {
    if (!d_.law.there()) return false;
    const InterestResult& interest = d_.a.law->interest();
    return std::any_of(interest.shares.begin(), interest.shares.end(),
                       [](const InterestShare& share) { return share.applies == Tri::yes && share.rule->owed; }) &&
           (interest.at_least || d_.a.totals.interest.high() >= small_change());
  }

  void interest() {
    if (!d_.law.there()) return;
    const Range<Money>& owed = d_.a.totals.interest;
    const bool rate_open = d_.a.law->interest().at_least;
    if (owed.high().is_zero() && !rate_open) return;
    for (const InterestShare& share : d_.a.law->interest().shares)
      if (share.applies == Tri::yes && share.rule->owed) {
        if (owed.exact() && !rate_open && owed.high() < small_change()) return; // small change needs no sentence
        const auto missed = d_.law.missed();
        Sentences text;
        const bool certainly = std::any_of(missed.begin(), missed.end(), [&](const DeadlineResult* deadline) {
          return d_.law.name_of(*deadline->deadline) == "pay-interest";
        });
        text.add(only_interest()         ? d_.say("letter.interest.still")
                 : owed.high().is_zero() ? d_.say("letter.interest.account")
                 : keeps_its_right() && !owed.low().is_zero() // nothing is asked for that it could be a part of
                     ? d_.say("letter.interest.besides", {{"sum", d_.money(owed.low())}})
                     : owed.exact()            ? d_.say("letter.interest", {{"sum", d_.money(owed.low())}})
                       : !owed.low().is_zero() ? d_.say("letter.interest.more", {{"sum", d_.money(owed.low())}})
                       : certainly             ? d_.say("letter.interest.account")
                                               : d_.say("letter.interest.perhaps"));
        for (const DeadlineResult* deadline : d_.law.missed())
          if (d_.law.name_of(*deadline->deadline) == "pay-interest") {
            text.add(d_.say("letter.interest.due", {{"day", d_.speech.day(deadline->last->latest)}}));
            break;
          }
        d_.may("interest", ParagraphRole::line, d_.law.says(*share.rule, text.take()));
        return;
      }
    // Where it is open whether the rule holds, whoever got none asks for what is due.
    const auto got_none = [](const Deposit& deposit) {
      return deposit.interest_paid && deposit.interest_paid->is_zero();
    };
    if (std::any_of(d_.c.deposits.begin(), d_.c.deposits.end(), got_none) &&
        (rate_open || owed.high() >= small_change()))
      d_.may("interest", ParagraphRole::line, d_.say("letter.interest.perhaps"));
  }

  // The end.

  void closing() {
    if ((claim_.sum > Money() || promised()) && !keeps_its_right() && !office_holds())
      d_.may("pay", ParagraphRole::closing, d_.say("letter.ask.pay"));
    if (!groups_.empty()) d_.may("keep", ParagraphRole::closing, d_.say("letter.keep"));
    if (!(is(LetterKind::demand) && notice_of_suit(d_)))
      d_.may("next-step", ParagraphRole::closing,
             is(LetterKind::second_letter) && !keeps_its_right()
                 ? d_.say("letter.next-step.second", {{"forum", forum(d_)}, {"day", day()}})
                 : d_.say("letter.next-step", {{"forum", forum(d_)}}));
    add_tenant_closing(d_, grants_ ? "letter.rights.but" : "letter.rights");
    add_enclosures(d_, !groups_.empty());
    warnings();
    add_caution(d_);
  }

  void warnings() {
    warn_about_law(d_);
    if (office_holds()) d_.warn("office-holds", d_.say("letter.warn.office-holds", {{"forum", forum(d_)}}));
    if (!claim_.deposit) d_.warn("no-deposit", d_.say("letter.warn.no-deposit"));
    if (is(LetterKind::after_deadline) && !d_.law.some_day_missed() && d_.law.days_if_unpaid().empty())
      d_.warn("no-missed-day", d_.say("letter.warn.no-missed-day"));
    for (const MissedDay& day : d_.law.missed_days())
      if (day.perhaps)
        d_.warn("perhaps-missed", d_.say("letter.warn.perhaps-missed", {{"day", d_.speech.day(day.last)}}));
    if (has_cleaning(d_, disputed_lines())) d_.warn("own-cleaning", d_.say("letter.warn.own-cleaning"));
    const std::vector<std::string>& came = d_.c.statement.enclosed;
    if (std::find(came.begin(), came.end(), "tenant-consent") != came.end())
      d_.warn("consent", d_.say("letter.warn.consent"));
    if (const Question* q = deciding_question())
      d_.warn("decides", d_.say("letter.warn.decides", {{"question", question_text(*q, d_.c, d_.a.lines, d_.speech)},
                                                        {"sum", d_.money(q->effect)}}));
    if (const Remark* rule = is(LetterKind::demand) ? request_rule(d_) : nullptr)
      d_.warn("request", rule->text_in(d_.speech.language()));
    if (!claim_.paid_known && !claim_.paid_stated && claim_.deposit) d_.warn("no-paid", d_.say("letter.warn.no-paid"));
    const Tenancy& t = d_.c.tenancy;
    for (const auto& day : {t.possession_returned, t.forwarding_address_given, d_.c.statement.received})
      if (day && !told(*day)) d_.warn("wide-day", d_.say("letter.warn.wide-day"));
    if (is(LetterKind::second_letter) && !earlier_letter(d_.c))
      d_.warn("no-first-letter", d_.say("letter.warn.no-first-letter"));
    if (d_.a.lines.empty() && !silent() && !d_.law.some_day_missed())
      d_.warn("no-charges", d_.say("letter.warn.no-charges"));
    if (!entered("deposit-used-as-rent") &&
        std::any_of(d_.c.deposits.begin(), d_.c.deposits.end(),
                    [](const Deposit& deposit) { return deposit.kind == "last-month"; }))
      d_.warn("last-month", d_.say("letter.warn.last-month"));
    std::vector<std::size_t> let_be;
    for (const std::size_t i : lines_that_are(Stand::undisputed, claim_))
      if (!claim_.lines[i].own) let_be.push_back(i);
    if (!let_be.empty()) d_.warn("not-disputed", d_.say("letter.warn.not-disputed", {{"charges", d_.charges(let_be)}}));
    const auto owed = owed_beyond(d_, claim_);
    if (owed && !owed->high().is_zero())
      d_.warn("may-owe", d_.say("letter.warn.may-owe", {{"sum", d_.money(owed->high())}}));
    if (const auto day = d_.law.landlords_day(); day && claim_.sum > Money())
      d_.warn("not-due-yet", d_.say("letter.warn.not-due-yet", {{"day", d_.speech.day(*day)}}));
  }

  /// A fact about the law that is not known and weighs more than what the charges leave open.
  const Question* deciding_question() const {
    if (d_.a.questions.empty() || !d_.law.there()) return nullptr;
    const Question& first = d_.a.questions.front();
    // What was paid back has a warning of its own.
    const bool about_refund = first.asks.compare(0, 17, "/statement/refund") == 0;
    return first.line == Question::no_line && !about_refund && first.effect >= d_.rules.letters.smallest_sum ? &first
                                                                                                             : nullptr;
  }

  Draft& d_;
  Claim claim_;
  std::vector<DisputeGroup> groups_;
  Day by_;
  bool unless_said_ = false;
  bool grants_ = false; ///< some charge is said to be undisputed, or fair in part
};

} // namespace

void write_money_letter(Draft& d) { MoneyLetter(d).write(); }

} // namespace wearline
