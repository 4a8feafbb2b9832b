#include "letters/letter_kinds.h"
#include "letters/letter_lines.h"

#include <algorithm>

namespace wearline {

namespace {

bool happened_before_today(const Draft& d, const std::optional<DaySpan>& day) { return day && day->latest < d.a.today; }

/// Which kinds fit, asked one by one in the order of their weight.
class Fitting {
public:
  explicit Fitting(const Draft& d) : d_(d), t_(d.a.totals) {}

  std::vector<LetterProposal> tenant() {
    objection();
    inspection();
    request();
    address();
    second();
    late();
    address_after_silence();
    reply();
    charges();
    court();
    if (d_.c.side == "adviser") add(LetterKind::adviser_note, "adviser-note");
    if (out_.empty()) add(LetterKind::ask_for_papers, "little-known");
    return std::move(out_);
  }

  std::vector<LetterProposal> landlord() {
    const DutyResult* duty = statement_duty();
    if (duty) add(LetterKind::itemized_statement, "itemized-statement.by", duty->last->earliest);
    else add(LetterKind::itemized_statement, "itemized-statement");
    add(LetterKind::cover_note, "cover-note");
    add(LetterKind::adviser_note, "adviser-note");
    return std::move(out_);
  }

private:
  void add(LetterKind kind, std::string_view reason, std::optional<Day> day = std::nullopt) {
    out_.push_back({kind, reason, day});
  }

  bool owed() const { return t_.shortfall ? !t_.shortfall->likely().is_zero() : disputed(); }
  bool disputed() const { return t_.fair.low() < t_.claimed; }

  bool event(std::string_view what) const {
    return std::any_of(d_.c.events.begin(), d_.c.events.end(), [&](const Event& e) { return e.what == what; });
  }

  /// The last letter of the tenant's own, if the time to answer it has passed and nothing was paid since.
  std::optional<Day> unanswered() const {
    std::optional<Day> last;
    for (const Event& e : d_.c.events)
      if ((e.what == "tenant-demand" || e.what == "tenant-objected" || e.what == "tenant-answered" ||
           e.what == "papers-requested") &&
          (!last || e.on.latest > *last))
        last = e.on.latest;
    if (!last || *last + days{d_.rules.letters.reply_days} > d_.a.today) return std::nullopt;
    const auto& paid = d_.c.statement.refund_sent;
    return paid && paid->latest > *last ? std::nullopt : last;
  }

  void objection() {
    const DutyResult* duty = d_.law.tenant_duty({"object", "respond"}, DutyState::open);
    if (!duty || !disputed()) return;
    if (duty->last && duty->last->earliest >= d_.a.today)
      add(LetterKind::objection, "objection.by", duty->last->earliest);
    else if (!duty->last) add(LetterKind::objection, "objection");
  }

  void inspection() {
    const auto& out = d_.c.tenancy.possession_returned ? d_.c.tenancy.possession_returned : d_.c.tenancy.ended;
    const DutyResult* duty = d_.law.tenant_duty({"request-inspection"}, DutyState::open);
    if (duty && duty->last && duty->last->earliest >= d_.a.today)
      add(LetterKind::inspection_request, "inspection-request.by", duty->last->earliest);
    else if (out && out->earliest > d_.a.today && d_.a.lines.empty())
      add(LetterKind::inspection_request, "inspection-request");
  }

  /// A written request that the law wants.
  void request() {
    if (event("tenant-demand")) return;
    const DutyResult* duty = d_.law.tenant_duty({"demand"}, DutyState::open);
    const bool out =
        happened_before_today(d_, d_.c.tenancy.possession_returned) || happened_before_today(d_, d_.c.tenancy.ended);
    if (!out || !owed()) return;
    if (duty && duty->last && duty->last->earliest >= d_.a.today)
      add(LetterKind::demand, "demand.by", duty->last->earliest);
    else if (duty || (request_rule(d_) && !notice_of_suit(d_))) add(LetterKind::demand, "demand");
  }

  void address() {
    if (d_.c.tenancy.forwarding_address_given) return;
    const DutyResult* duty = d_.law.tenant_duty({"give-forwarding-address"}, DutyState::open);
    if (duty && duty->last && duty->last->earliest >= d_.a.today)
      add(LetterKind::forwarding_address, "forwarding-address.by", duty->last->earliest);
    else if (duty) add(LetterKind::forwarding_address, "forwarding-address");
  }

  /// No list came and no address was given: without an address none may have been due.
  void address_after_silence() {
    if (d_.c.tenancy.forwarding_address_given || d_.c.statement.came != Tri(false)) return;
    if (!d_.law.tenant_duty({"give-forwarding-address"}, DutyState::open))
      add(LetterKind::forwarding_address, "forwarding-address");
  }

  void second() {
    const auto letter = unanswered();
    if (!letter || !owed()) return;
    if (notice_of_suit(d_) && !event("suit-notice-given")) add(LetterKind::demand, "demand.suit");
    add(LetterKind::second_letter, "second-letter", *letter);
  }

  void late() {
    const auto missed = d_.law.missed();
    if (!missed.empty() && (owed() || d_.law.forfeited() || penalty()))
      add(LetterKind::after_deadline, "after-deadline", missed.front()->last->latest);
  }

  /// Whether the law gives more than the sum due without any further finding (double the deposit, say).
  bool penalty() const {
    const Award& award = d_.a.law->award();
    return award.known && award.least > award.sum_due.high();
  }

  void reply() {
    const auto& balance = d_.c.statement.stated_balance_due;
    if (balance && !balance->is_zero()) add(LetterKind::reply_to_demand, "reply-to-demand");
  }

  /// Which letter about the charges themselves comes first hangs on how much of them is open.
  void charges() {
    if (d_.a.lines.empty()) return;
    const Money open = t_.fair.high() - t_.fair.low();
    const bool mostly_open = open + open > t_.claimed;
    bool open_facts = false;
    for (std::size_t i = 0; i < d_.a.lines.size(); ++i) open_facts = open_facts || !requests(d_, i).empty();
    const bool certain = !open_facts && owed() && !t_.fair.high().is_zero();
    if (certain) add(LetterKind::accept_and_claim_rest, "accept-and-claim-rest");
    if (mostly_open) add(LetterKind::ask_for_papers, "ask-for-papers.open");
    if (disputed()) add(LetterKind::question_charges, "question-charges");
    else add(LetterKind::question_charges, "question-charges.fair");
    if (!mostly_open && (open_facts || !d_.law.defects().empty())) add(LetterKind::ask_for_papers, "ask-for-papers");
  }

  void court() {
    if (owed() && (unanswered() || !d_.law.missed().empty())) add(LetterKind::small_claims_sheet, "small-claims-sheet");
  }

  const DutyResult* statement_duty() const {
    if (!d_.law.there()) return nullptr;
    for (const DutyResult& duty : d_.a.law->duties()) {
      const std::string_view name = d_.law.name_of(*duty.duty);
      if (duty.duty->who == Who::landlord && duty.state == DutyState::open && duty.last &&
          duty.last->latest != last_day && (name == "itemise" || name == "notice-of-claim"))
        return &duty;
    }
    return nullptr;
  }

  const Draft& d_;
  const Totals& t_;
  std::vector<LetterProposal> out_;
};

} // namespace

std::vector<LetterProposal> propose_letters(const Assessment& assessment, const Rules& rules) {
  const Draft d(assessment, rules, LetterKind::question_charges, "en");
  Fitting fitting(d);
  return assessment.c.side == "landlord" ? fitting.landlord() : fitting.tenant();
}

} // namespace wearline
