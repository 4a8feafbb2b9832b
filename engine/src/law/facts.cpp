#include "law/facts.h"

#include <algorithm>

namespace wearline {

namespace {

// The derived facts.

/// Yes if some line is what is asked, no if no line can be, unknown if a line may be.
template <class Test> Tri some_line(const Case& c, Test test) {
  Tri answer = false;
  for (const Line& line : c.lines) {
    const Tri one = test(line);
    if (one == Tri::yes) return true;
    if (!one.known()) answer = Tri::unknown;
  }
  return answer;
}

/// Whether all of the deposit came, or is to come, back.
Tri paid_back_whole(const Case& c, const Pack* pack) {
  const auto total = deposit_total(c, pack);
  if (!total) return Tri::unknown;
  if (c.statement.refund_paid) return *c.statement.refund_paid >= *total;
  if (c.statement.stated_refund) return *c.statement.stated_refund >= *total;
  return Tri::unknown;
}

Tri deductions_made(const Case& c, const Pack* pack) {
  if (some_line(c, [](const Line& l) -> Tri { return !l.amount || !l.amount->is_zero(); }) == Tri::yes) return true;
  if (c.statement.stated_total && !c.statement.stated_total->is_zero()) return true;
  // Money that did not come back was kept, with a word or without; else a case that lists no charge has none.
  const Tri whole = paid_back_whole(c, pack);
  return whole.known_no();
}

/// A total of charges that the case does not list.
bool unlisted(const Case& c) {
  return c.lines.empty() && c.statement.stated_total && !c.statement.stated_total->is_zero();
}

/// Part of the deposit came back without a list: the rest was kept for something, nobody said for what.
bool kept_unsaid(const Case& c, const Pack* pack) {
  const Statement& s = c.statement;
  return c.lines.empty() && s.statement_received == Tri::no && s.refund_paid && !s.refund_paid->is_zero() &&
         paid_back_whole(c, pack) == Tri::no;
}

/// What `test` finds among the lines; unknown where charges are not listed.
template <class Test> Tri claimed(const Case& c, const Pack* pack, Test test) {
  return unlisted(c) || kept_unsaid(c, pack) ? Tri::unknown : some_line(c, test);
}

Tri carpet_cleaning(const Line& l) {
  if (l.element == "carpet-cleaning") return true;
  if (l.element == "carpet") return l.kind == ChargeKind::unknown ? Tri::unknown : Tri(l.kind == ChargeKind::cleaning);
  return l.element.empty() && (l.kind == ChargeKind::unknown || l.kind == ChargeKind::cleaning) ? Tri::unknown
                                                                                                : Tri::no;
}

Tri only_rent(const Case& c, const Pack* pack) {
  if (unlisted(c) || kept_unsaid(c, pack)) return Tri::unknown;
  if (c.lines.empty()) return false;
  const Tri other = some_line(c, [](const Line& l) -> Tri {
    return l.kind == ChargeKind::unknown ? Tri::unknown : Tri(l.kind != ChargeKind::rent);
  });
  return tri_not(other);
}

/// The sum of the lines that pass `test`, as a range where an amount or a kind is unknown.
template <class Test> FactState sum_of(const Case& c, Test test) {
  std::int64_t low = 0, high = 0;
  for (const Line& l : c.lines) {
    const Tri counts = test(l);
    if (counts == Tri::no) continue;
    if (!l.amount) {
      high = Money::max_cents;
      continue;
    }
    if (counts.known()) low += l.amount->in_cents();
    high += l.amount->in_cents();
  }
  return FactState::of_range(low, std::max(low, high));
}

FactState claimed_range(const Case& c) {
  if (!c.lines.empty()) return sum_of(c, [](const Line&) -> Tri { return true; });
  return FactState::of(std::optional<Money>(c.statement.stated_total.value_or(Money())));
}

Tri claims_over_deposit(const Case& c, const Pack* pack) {
  const auto total = deposit_total(c, pack);
  const FactState sum = claimed_range(c);
  if (!total) return Tri::unknown;
  if (sum.low > total->in_cents()) return true;
  return sum.high <= total->in_cents() ? Tri::no : Tri::unknown;
}

Tri balance_due(const Case& c, const Pack* pack) {
  if (c.statement.stated_balance_due && !c.statement.stated_balance_due->is_zero()) return false;
  if (c.statement.stated_refund) return !c.statement.stated_refund->is_zero();
  if (c.statement.refund_paid && !c.statement.refund_paid->is_zero()) return true;
  const auto total = deposit_total(c, pack);
  const FactState sum = claimed_range(c);
  if (!total) return Tri::unknown;
  if (sum.high < total->in_cents()) return true;
  return sum.low >= total->in_cents() ? Tri::no : Tri::unknown;
}

FactState stay_months(const Case& c) {
  const auto& end = c.tenancy.left();
  if (!c.tenancy.began || !end) return {};
  const Months least = std::max(Months(), whole_months(c.tenancy.began->latest, end->earliest));
  const Months most = std::max(Months(), whole_months(c.tenancy.began->earliest, end->latest));
  return FactState::of_range(least.count(), most.count());
}

Tri pet_deposit(const Case& c) {
  if (c.deposits.empty()) return Tri::unknown;
  return std::any_of(c.deposits.begin(), c.deposits.end(), [](const Deposit& d) { return d.kind == "pet"; });
}

/// Whether interest was paid on every deposit; no as soon as none was on one.
Tri interest_paid(const Case& c) {
  if (c.deposits.empty()) return Tri::unknown;
  Tri answer = true;
  for (const Deposit& d : c.deposits) {
    if (d.interest_paid && d.interest_paid->is_zero()) return false;
    if (!d.interest_paid) answer = Tri::unknown;
  }
  return answer;
}

Tri refund_came(const Case& c, const FactView& view) {
  if (c.statement.refund_paid) return !c.statement.refund_paid->is_zero();
  return view.event("refund-sent").happened;
}

/// The new address came no later than the day the tenancy ended.
Tri address_by_end(const FactView& view) {
  const EventState &given = view.event("forwarding-address-given"), &end = view.event("tenancy-ended");
  if (given.happened != Tri::yes) return given.happened;
  if (end.happened != Tri::yes) return Tri::unknown;
  if (given.on.latest <= end.on.earliest) return true;
  return given.on.earliest > end.on.latest ? Tri::no : Tri::unknown;
}

FactState worked_out(DerivedFact fact, const Case& c, const FactView& view) {
  switch (fact) {
  case DerivedFact::deductions_made:
    return FactState::of(deductions_made(c, view.pack()));
  case DerivedFact::damage_claimed:
    return FactState::of(claimed(c, view.pack(), [](const Line& l) { return about_condition(l.kind); }));
  case DerivedFact::only_rent_claimed:
    return FactState::of(only_rent(c, view.pack()));
  case DerivedFact::carpet_cleaning_claimed:
    return FactState::of(claimed(c, view.pack(), carpet_cleaning));
  case DerivedFact::repair_and_cleaning_total:
    return sum_of(c, [](const Line& l) -> Tri {
      return l.kind == ChargeKind::unknown ? Tri::unknown
                                           : Tri(l.kind == ChargeKind::damage || l.kind == ChargeKind::cleaning);
    });
  case DerivedFact::claimed_total:
    return claimed_range(c);
  case DerivedFact::deposit_total:
    return FactState::of(deposit_total(c, view.pack()));
  case DerivedFact::claims_over_deposit:
    return FactState::of(claims_over_deposit(c, view.pack()));
  case DerivedFact::balance_due:
    return FactState::of(balance_due(c, view.pack()));
  case DerivedFact::refund_short: // told by know_refund_short
    return {};
  case DerivedFact::interest_paid:
    return FactState::of(interest_paid(c));
  case DerivedFact::statement_came:
    return FactState::of(statement_came(c));
  case DerivedFact::refund_came:
    return FactState::of(refund_came(c, view));
  case DerivedFact::address_given:
    return FactState::of(view.event("forwarding-address-given").happened);
  case DerivedFact::address_given_by_end:
    return FactState::of(address_by_end(view));
  case DerivedFact::stay_months:
    return stay_months(c);
  case DerivedFact::pet_deposit_held:
    return FactState::of(pet_deposit(c));
  }
  return {};
}

Day earlier(Day a, Day b) { return std::min(a, b); }

/// Handed over or sent without a delay worth counting: it arrives on the day it is sent.
bool arrives_at_once(std::string_view how) {
  return how == "personal-delivery" || how == "email" || how == "text" || how == "portal";
}

} // namespace

bool is_deposit(const Deposit& held, const Pack* pack) {
  const std::string_view kind = held.kind.empty() ? std::string_view("security") : held.kind;
  if (pack && one_names_money(pack->not_deposit, kind)) return false;
  // Rent paid ahead is rent, unless the law calls it a deposit.
  return kind != "last-month" || (pack && one_names_money(pack->also_deposit, kind));
}

std::optional<Money> deposit_total(const Case& c, const Pack* pack) {
  std::optional<Money> total;
  for (const Deposit& d : c.deposits) {
    if (d.kind == "last-month" || !is_deposit(d, pack)) continue;
    if (!d.amount) return std::nullopt;
    total = total.value_or(Money{}) + *d.amount;
  }
  return total;
}

std::optional<Money> claimed_total(const Case& c) {
  const FactState sum = claimed_range(c);
  if (sum.kind != FactState::Kind::number || sum.low != sum.high) return std::nullopt;
  return Money::cents(sum.low);
}

Tri statement_came(const Case& c) {
  const Statement& s = c.statement;
  if (s.statement_received.known()) return s.statement_received;
  if (s.sent || s.received) return true;
  // A landlord who writes a statement has not sent it; a tenant who reads one has it.
  if (c.side == "landlord") return Tri::unknown;
  if (s.dated || !s.delivery_method.empty() || s.stated_total || s.stated_refund || s.stated_balance_due ||
      !s.enclosed.empty())
    return true;
  return Tri::unknown;
}

Tri about_condition(ChargeKind kind) {
  if (kind == ChargeKind::unknown || kind == ChargeKind::other) return Tri::unknown;
  return kind == ChargeKind::damage || kind == ChargeKind::cleaning || kind == ChargeKind::keys ||
         kind == ChargeKind::disposal;
}

FactView::FactView(const Case& c, const Registry& registry, const Pack* pack, Day today)
    : case_(&c), registry_(&registry), pack_(pack), today_(today) {
  // One place more in each, for names the registry does not have.
  events_.resize(registry.events.size() + (pack ? pack->events.size() : 0) + 1);
  facts_.resize(registry.facts.size() + (pack ? pack->facts.size() : 0) + 1);
  read_events();
  settle_statement();
  settle_refund();
  settle_usual();
  read_facts();
}

const FactInfo& FactView::info(FactId id) const {
  const std::size_t shared = registry_->facts.size();
  return index(id) < shared ? registry_->facts[index(id)] : pack_->facts[index(id) - shared];
}
const EventInfo& FactView::info(EventId id) const {
  const std::size_t shared = registry_->events.size();
  return index(id) < shared ? registry_->events[index(id)] : pack_->events[index(id) - shared];
}

std::string FactView::place(FactId id) const {
  const FactInfo& f = info(id);
  return f.at.empty() ? "/circumstances/" + f.id : f.at;
}
std::string FactView::place(EventId id) const {
  const EventInfo& e = info(id);
  return e.at.empty() ? "/events" : e.at;
}

const FactState& FactView::fact(std::string_view id) const {
  const FactId found = registry_->fact(id);
  return found == FactId::none ? facts_.back() : fact(found);
}
const EventState& FactView::event(std::string_view id) const {
  const EventId found = registry_->event(id);
  return found == EventId::none ? events_.back() : event(found);
}
EventState& FactView::at(std::string_view id) {
  const EventId found = registry_->event(id);
  return found == EventId::none ? events_.back() : events_[index(found)];
}

void FactView::read_events() {
  for (std::size_t i = 0; i + 1 < events_.size(); ++i) {
    const EventInfo& e = info(EventId(i));
    EventState& s = events_[i];
    const std::optional<DaySpan>* on = e.read ? e.read(*case_) : nullptr;
    if (on && *on) s = {true, **on, false};
    for (const Event& event : case_->events)
      if (event.what == e.id) s = {true, event.on, false};
    if (s.happened.known()) continue;
    s.happened = told(*case_, e.id);
    // A record may say that a thing was done without its date ("inspection held").
    if (const FactId done = registry_->fact(e.id);
        !s.happened.known() && done != FactId::none && registry_->facts[index(done)].read)
      if (const FactState fact = registry_->facts[index(done)].read(*case_); fact.kind == FactState::Kind::yes_no)
        s.happened = fact.yes;
  }
  if (EventState& address = at("forwarding-address-given"); !address.happened.known())
    address.happened = told(*case_, "address-given");
  // Every tenancy began, on some day before it ended.
  if (EventState& began = at("tenancy-began"); !began.happened.known()) {
    began.happened = true;
    began.on.latest = today_;
    if (case_->tenancy.ended) began.on.latest = earlier(began.on.latest, case_->tenancy.ended->latest);
    if (case_->tenancy.possession_returned)
      began.on.latest = earlier(began.on.latest, case_->tenancy.possession_returned->latest);
  }
}

void FactView::settle_statement() {
  const Statement& st = case_->statement;
  EventState &sent = at("statement-sent"), &received = at("statement-received");
  const Tri came = statement_came(*case_);
  if (came == Tri::no) {
    if (!sent.happened.known()) sent.happened = false;
    if (!received.happened.known()) received.happened = false;
    return;
  }
  if (!sent.happened.known() && case_->side == "landlord") sent = {false, {}, true};
  if (!sent.happened.known() && came.known()) {
    sent.happened = true;
    if (st.dated) sent.on.earliest = st.dated->earliest;
    sent.on.latest = std::max(sent.on.earliest, st.received ? st.received->latest : today_);
  }
  if (!received.happened.known() && sent.happened == Tri::yes) {
    received.on.earliest = sent.on.earliest;
    if (arrives_at_once(st.delivery_method)) received = {true, sent.on, true};
    else if (case_->side != "landlord") {
      received.happened = true;
      received.on.latest = std::max(sent.on.earliest, today_);
    }
  }
}

void FactView::settle_refund() {
  EventState &refund = at("refund-sent"), &deposit = at("deposit-paid");
  if (!refund.happened.known() && case_->statement.refund_paid)
    refund.happened = !case_->statement.refund_paid->is_zero();
  if (!deposit.happened.known() && !case_->deposits.empty()) deposit.happened = true;
}

/// What the case leaves open is taken as usual, and marked so.
void FactView::settle_usual() {
  constexpr DaySpan any_day;
  for (std::size_t i = 0; i + 1 < events_.size(); ++i) {
    const EventInfo& e = info(EventId(i));
    EventState& s = events_[i];
    if (!s.happened.known() && e.usual == Tri::no) s = {false, any_day, true};
    if (!s.happened.known() && e.not_before != EventId::none && events_[index(e.not_before)].happened == Tri::yes)
      s.on.earliest = events_[index(e.not_before)].on.earliest;
    if (e.usual_as == EventId::none) continue;
    const EventState& model = events_[index(e.usual_as)];
    if (!s.happened.known() && e.usual == Tri::yes) s.happened = model.happened;
    if (s.happened == Tri::yes && s.on == any_day && model.happened == Tri::yes) s = {true, model.on, true};
  }
  // Money that came back without a date came by today.
  if (EventState& refund = at("refund-sent"); refund.happened == Tri::yes && refund.on == any_day)
    refund.on.latest = today_;
}

void FactView::read_facts() {
  for (const bool derived : {false, true})
    for (std::size_t i = 0; i + 1 < facts_.size(); ++i) {
      const FactInfo& f = info(FactId(i));
      if (f.derived.has_value() != derived) continue;
      FactState& s = facts_[i];
      if (f.read) s = f.read(*case_);
      if (f.derived) s = worked_out(*f.derived, *case_, *this);
      if (s.kind != FactState::Kind::unknown) continue;
      if (const auto said = case_->circumstances.find(f.id);
          said != case_->circumstances.end() && f.id != "refund-short")
        s = FactState::said(said->second);
      if (s.kind == FactState::Kind::unknown && f.usual.known()) {
        s = FactState::of(f.usual);
        s.assumed = true;
      }
    }
}

void FactView::suppose(EventId id, const EventState& state) {
  events_[index(id)] = state;
  for (std::size_t i = 0; i + 1 < facts_.size(); ++i)
    if (const FactInfo& f = info(FactId(i)); f.derived && facts_[i].kind == FactState::Kind::unknown)
      facts_[i] = worked_out(*f.derived, *case_, *this);
}

void FactView::know_refund_short(Tri short_of_fair) {
  if (const FactId id = registry_->fact("refund-short"); id != FactId::none)
    facts_[index(id)] = FactState::of(short_of_fair);
}

} // namespace wearline
