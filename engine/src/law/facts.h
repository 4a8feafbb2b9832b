#pragma once
// What one case says about every fact and event a law pack may ask for.

#include "case/case.h"
#include "law/pack.h"
#include "law/registry.h"

#include <vector>

namespace wearline {

/// Facts and events of one case, worked out once. Points into the case, the registry and the pack, which must outlive
/// it.
class FactView {
public:
  /// `pack` may be null: only the shared facts and events then. `today` settles what has not happened yet.
  FactView(const Case& c, const Registry& registry, const Pack* pack, Day today);

  const FactState& fact(FactId id) const { return facts_[index(id)]; }
  const EventState& event(EventId id) const { return events_[index(id)]; }
  const FactState& fact(std::string_view id) const;
  const EventState& event(std::string_view id) const;
  const Pack* pack() const { return pack_; }
  Day today() const { return today_; }
  const Case& of() const { return *case_; }

  const FactInfo& info(FactId id) const;
  const EventInfo& info(EventId id) const;
  /// Where a case holds the answer, as a JSON Pointer: "/tenancy/ended", "/events" with the event's name as `what`,
  /// "/circumstances/sold".
  std::string place(FactId id) const;
  std::string place(EventId id) const;

  /// Whether less was paid back than is fair: known only once the lines are judged (fact refund-short).
  void know_refund_short(Tri short_of_fair);

  /// Takes an open fact or event as answered, and works out anew what hangs on it.
  void suppose(FactId id, const FactState& state) { facts_[index(id)] = state; }
  void suppose(EventId id, const EventState& state);

private:
  void read_events();
  void read_facts();
  void settle_statement();
  void settle_refund();
  void settle_usual();
  EventState& at(std::string_view id);

  const Case* case_;
  const Registry* registry_;
  const Pack* pack_;
  Day today_;
  std::vector<FactState> facts_;
  std::vector<EventState> events_;
};

/// Whether the law of this pack calls the money a deposit. Rent paid ahead (kind last-month) is one only where it says
/// so; without a pack all other money that is held is one.
bool is_deposit(const Deposit& held, const Pack* pack);
/// All that the law calls a deposit, but no rent paid ahead, which may have paid the last month; empty if one amount is
/// unknown or there is none.
std::optional<Money> deposit_total(const Case& c, const Pack* pack);
/// All charges; empty if there are none or one amount is unknown.
std::optional<Money> claimed_total(const Case& c);
/// Whether a written statement came; unknown if the case tells nothing of one.
Tri statement_came(const Case& c);
/// Whether a charge of this kind is about the state of the home (damage, cleaning, keys, disposal); unknown for an
/// unknown kind.
Tri about_condition(ChargeKind kind);

} // namespace wearline
