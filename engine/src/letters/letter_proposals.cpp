#include "letters/letter_proposals.h"

#include "law/applies.h"
#include "letters/letter_groups.h"
#include "letters/letter_late.h"
#include "letters/letter_parts.h"

#include <algorithm>

namespace wearline {

namespace {

/// Which kinds fit, asked one by one in the order of their weight.
class Fitting {
public:
  explicit Fitting(const Draft& d) : d_(d), claim_(claim_of(d)) {}

  LetterChoice tenant() {
    if (leaving(d_)) {
      before_leaving();
      return std::move(out_);
    }
    objection();
    inspection();
    request();
    // A letter after a missed day gives the address as well.
    const bool late_first = !address_bears_on_days() && (d_.law.some_day_missed() || !d_.law.days_if_unpaid().empty());
    if (!late_first) address();
    second();
    late();
    if (late_first) address();
    silent();
    interest();
    reply();
    charges();
    court();
    if (d_.c.side == "adviser") add(LetterKind::adviser_note, "adviser-note");
    if (out_.kinds.empty()) why_none();
    return std::move(out_);
  }

  LetterChoice landlord() {
    const DeadlineResult* deadline = statement_deadline();
    const LandlordsRight right = landlords_right(d_);
    if (right.may_keep != MayKeep::all) {
      add(LetterKind::itemized_statement,
          right.may_keep == MayKeep::nothing ? "itemized-statement.whole" : "itemized-statement.no-damage");
      add(LetterKind::late_statement, "late-statement");
    } else if (!right.past.empty())
      add(LetterKind::itemized_statement, "itemized-statement.late", right.past.front()->last->latest);
    else if (deadline) add(LetterKind::itemized_statement, "itemized-statement.by", deadline->last->earliest);
    else add(LetterKind::itemized_statement, "itemized-statement");
    add(LetterKind::cover_note, "cover-note");
    add(LetterKind::adviser_note, "adviser-note");
    return std::move(out_);
  }

private:
  void add(LetterKind kind, std::string_view reason, std::optional<Day> day = std::nullopt) {
    out_.kinds.push_back({kind, reason, day});
  }

  /// A letter that asks for everything: they differ in their first lines, so one of them is enough.
  void ask_for_all(LetterKind kind, std::string_view reason, std::optional<Day> day = std::nullopt) {
    if (!asks_for_all()) add(kind, reason, day);
  }
  bool asks_for_all() const {
    return std::any_of(out_.kinds.begin(), out_.kinds.end(), [](const LetterProposal& p) {
      return p.kind == LetterKind::objection || p.kind == LetterKind::demand || p.kind == LetterKind::after_deadline ||
             p.kind == LetterKind::second_letter || p.kind == LetterKind::reply_to_demand;
    });
  }

  /// What the sender did, with a bill for it: what age could take off such charges may be too little for a letter.
  bool own_and_shown() const {
    if (claim_.keeps_nothing() || d_.law.some_day_missed() || !claim_.disputes()) return false;
    Money off;
    for (std::size_t i = 0; i < claim_.lines.size(); ++i) {
      const LineStand& line = claim_.lines[i];
      if (line.back.is_zero() && line.stand != Stand::no_amount) continue;
      const LineResult& r = d_.a.lines[i].result;
      if (!line.own || line.stand == Stand::no_amount || r.no_middle || !bill_came(d_, i)) return false;
      off += r.claimed - r.fair.likely();
    }
    return off < d_.rules.letters.smallest_sum;
  }

  /// What the sender agreed to in writing is not asked back.
  bool agreed() const {
    return (yes("tenant-consented") || yes("tenant-agreed-in-writing") || yes("agreed-in-writing")) &&
           !d_.law.some_day_missed() && !claim_.keeps_nothing();
  }
  bool yes(std::string_view fact) const { return told(d_.c, fact) == Tri::yes; }

  bool owed() const {
    if (agreed() || own_and_shown()) return false;
    if (claim_.deposit) return worth_a_letter(claim_, d_);
    return claim_.disputes() || d_.c.statement.statement_received == Tri::no;
  }
  /// A statement came, or is known not to have; else nobody has heard of one.
  bool heard() const {
    const Statement& s = d_.c.statement;
    return !d_.c.lines.empty() || s.statement_received.known() || s.received || s.sent || s.dated || s.refund_paid;
  }
  /// The landlord still has time, and has sent nothing.
  std::optional<Day> still_time() const {
    const Statement& s = d_.c.statement;
    if (!d_.c.lines.empty() || s.received || claim_.paid > Money()) return std::nullopt;
    return d_.law.landlords_day();
  }

  bool event(std::string_view what) const {
    return std::any_of(d_.c.events.begin(), d_.c.events.end(), [&](const Event& e) { return e.what == what; });
  }

  void why_none() {
    if (const auto day = still_time()) out_.none_because = "still-time", out_.day = day;
    else if (agreed() && claim_.disputes()) out_.none_because = "agreed";
    else if (!heard() || owed()) out_.none_because = "little-known";
    else if (claim_.paid_stated && claim_.paid > Money()) out_.none_because = "paid-untold";
    else out_.none_because = "nothing-due";
  }

  void before_leaving() {
    const DeadlineResult* deadline = d_.law.tenant_deadline({"request-inspection"}, DeadlineState::open);
    if (deadline && deadline->last && deadline->last->earliest >= d_.a.today)
      add(LetterKind::inspection_request, "inspection-request.by", deadline->last->earliest);
    else add(LetterKind::inspection_request, "inspection-request");
    if (!d_.c.tenancy.forwarding_address_given) add(LetterKind::forwarding_address, "forwarding-address");
  }

  /// The last letter of the tenant's own, if the time to answer it has passed and nothing was paid since.
  std::optional<Day> unanswered() const {
    const Event* letter = earlier_letter(d_.c);
    if (!letter || letter->on.latest + days{d_.rules.letters.reply_days} > d_.a.today) return std::nullopt;
    const auto& paid = d_.c.statement.refund_sent;
    return paid && paid->latest > letter->on.latest ? std::nullopt : std::optional(letter->on.latest);
  }

  /// A right is lost without an objection if a rule applies, which hangs on something unknown, or by a rule that names
  /// no day for it: the list is here.
  const DeadlineResult* perhaps_to_object() const {
    const DeadlineResult* deadline = d_.law.tenant_deadline({"object", "respond"}, DeadlineState::undetermined);
    if (!deadline || deadline->applies == Tri::no || !deadline->deadline->tenant_loses) return nullptr;
    // Of a rule that surely applies only one without a day of its own is left open here.
    if (deadline->applies == Tri::yes && deadline->last) return nullptr;
    const auto& periods = deadline->deadline->periods;
    // It answers the list that came, and no notice of an office.
    const bool started = std::all_of(periods.begin(), periods.end(), [&](const Period& period) {
      return std::all_of(period.after.begin(), period.after.end(), [&](EventId id) {
        const FactView& view = d_.a.law->view();
        return view.info(id).id == "statement-received" && view.event(id).happened == Tri::yes;
      });
    });
    return started && !periods.empty() ? deadline : nullptr;
  }

  void objection() {
    const DeadlineResult* deadline = d_.law.tenant_deadline({"object", "respond"}, DeadlineState::open);
    if (!deadline) deadline = perhaps_to_object();
    if (!deadline || !claim_.disputes() || !answered_by_letter(d_, *deadline)) return;
    if (deadline->last && deadline->last->earliest >= d_.a.today)
      add(LetterKind::objection, "objection.by", deadline->last->earliest);
    else if (!deadline->last) add(LetterKind::objection, "objection");
  }

  void inspection() {
    const DeadlineResult* deadline = d_.law.tenant_deadline({"request-inspection"}, DeadlineState::open);
    if (deadline && deadline->last && deadline->last->earliest >= d_.a.today)
      add(LetterKind::inspection_request, "inspection-request.by", deadline->last->earliest);
  }

  /// A written request that the law wants.
  void request() {
    // An objection is a request as well.
    if (event("tenant-demand") || !owed() || asks_for_all()) return;
    const DeadlineResult* deadline = d_.law.tenant_deadline({"demand"}, DeadlineState::open);
    const auto& out = d_.c.tenancy.left();
    if (!out || out->latest >= d_.a.today) return;
    if (deadline && deadline->last && deadline->last->earliest >= d_.a.today)
      add(LetterKind::demand, "demand.by", deadline->last->earliest);
    else if (deadline || (request_rule(d_) && !notice_of_suit(d_))) add(LetterKind::demand, "demand");
  }

  /// Without an address neither a list nor money may have been due.
  void address() {
    if (d_.c.tenancy.forwarding_address_given || claim_.paid > Money()) return;
    const DeadlineResult* deadline = d_.law.tenant_deadline({"give-forwarding-address"}, DeadlineState::open);
    const auto& out = d_.c.tenancy.left();
    if (deadline && deadline->last && deadline->last->earliest >= d_.a.today)
      add(LetterKind::forwarding_address, "forwarding-address.by", deadline->last->earliest);
    else if (deadline || (out && d_.c.lines.empty())) add(LetterKind::forwarding_address, "forwarding-address");
  }

  /// Whether something hangs on the tenant's new address by the law of the place, or may.
  bool address_bears_on_days() const {
    if (!d_.law.there()) return true;
    const auto& rules = d_.a.law->pack().address;
    return rules.empty() || std::any_of(rules.begin(), rules.end(), [&](const Remark& rule) {
             return applies(rule, d_.a.law->view()) != Tri::no && rule.if_missing != "none" &&
                    rule.if_missing != "last-known-address";
           });
  }

  void second() {
    const auto letter = unanswered();
    if (!letter || !owed()) return;
    if (notice_of_suit(d_) && !event("suit-notice-given")) add(LetterKind::demand, "demand.suit");
    add(LetterKind::second_letter, "second-letter", *letter);
  }

  void late() {
    // Interest has its sentence in each letter: a day missed with it alone makes no letter of its own.
    auto missed = d_.law.missed();
    missed.erase(
        std::remove_if(missed.begin(), missed.end(),
                       [&](const DeadlineResult* one) { return d_.law.name_of(*one->deadline) == "pay-interest"; }),
        missed.end());
    if (!missed.empty() && (owed() || d_.law.penalty()))
      ask_for_all(LetterKind::after_deadline, "after-deadline", missed.front()->last->latest);
    else if (const auto perhaps = d_.law.perhaps_missed(); !perhaps.empty() && owed())
      ask_for_all(LetterKind::after_deadline, "after-deadline.perhaps", perhaps.front()->last->latest);
    else if (const auto due = d_.law.days_if_unpaid(); !due.empty() && owed())
      ask_for_all(LetterKind::after_deadline, "after-deadline.unpaid", due.front().last);
  }

  /// Nothing came, and no day is known to be missed: the deposit is asked for all the same.
  void silent() {
    if (d_.c.statement.statement_received == Tri::no && d_.a.lines.empty() && owed() && !still_time())
      ask_for_all(LetterKind::demand, "silent");
  }

  /// The deposit came back whole, but not the interest on it.
  void interest() {
    if (claim_.deposit && claim_.paid_known && claim_.kept() <= Money() && d_.a.lines.empty() && owed())
      ask_for_all(LetterKind::demand, "interest");
  }

  void reply() {
    const auto& balance = d_.c.statement.stated_balance_due;
    if (balance && !balance->is_zero()) ask_for_all(LetterKind::reply_to_demand, "reply-to-demand");
  }

  /// Which letter about the charges comes first hangs on whether anything has to be found out.
  void charges() {
    if (d_.a.lines.empty() || !claim_.disputes() || !owed()) return;
    bool open = false;
    for (std::size_t i = 0; i < claim_.lines.size(); ++i)
      open = open || claim_.lines[i].stand == Stand::open || claim_.lines[i].stand == Stand::no_amount;
    const bool some_granted = claim_.granted > Money();
    if (!open && some_granted) add(LetterKind::accept_and_claim_rest, "accept-and-claim-rest");
    ask_for_all(LetterKind::question_charges, "question-charges");
    if (open || !d_.law.defects().empty()) add(LetterKind::ask_for_documents, "request-documents");
  }

  void court() {
    if (owed() && (unanswered() || d_.law.some_day_missed() || !d_.law.days_if_unpaid().empty()))
      add(LetterKind::small_claims_sheet, "small-claims-sheet");
  }

  const DeadlineResult* statement_deadline() const {
    if (!d_.law.there()) return nullptr;
    for (const DeadlineResult& deadline : d_.a.law->deadlines()) {
      const std::string_view name = d_.law.name_of(*deadline.deadline);
      if (deadline.deadline->who == Who::landlord && deadline.last && deadline.state == DeadlineState::open &&
          deadline.last->latest != max_day && (name == "itemize" || name == "notice-of-claim"))
        return &deadline;
    }
    return nullptr;
  }

  const Draft& d_;
  Claim claim_;
  LetterChoice out_;
};

} // namespace

LetterChoice propose_letters(const Assessment& assessment, const Rules& rules) {
  const Draft d(assessment, rules, LetterKind::question_charges, "en");
  Fitting fitting(d);
  return assessment.c.side == "landlord" ? fitting.landlord() : fitting.tenant();
}

} // namespace wearline
