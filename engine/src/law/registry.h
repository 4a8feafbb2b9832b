#pragma once
// The names law packs are written in: facts and events of a case, deadlines, documents; each with the question that
// would settle it. Loaded once from rules/facts.json, duties.json and papers.json; a pack's own facts and events follow
// the shared ones.

#include "case/case.h"
#include "law/fact_state.h"
#include "values/reference.h"
#include "wearline/fault.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace wearline {

class Fields; // json/fields.h: its JSON library is of no concern to those who read the registry

/// Positions in a pack's facts, events, documents; `none` is no such thing.
enum class FactId : std::uint16_t { none = 0xffff };
enum class EventId : std::uint16_t { none = 0xffff };
enum class DocumentId : std::uint16_t { none = 0xffff };
template <class Id> constexpr std::size_t index(Id id) { return static_cast<std::size_t>(id); }

/// Facts that follow from others of a case, each worked out in facts.h.
enum class DerivedFact : std::uint8_t {
  deductions_made,
  damage_claimed,
  only_rent_claimed,
  carpet_cleaning_claimed,
  repair_and_cleaning_total,
  claimed_total,
  deposit_total,
  claims_over_deposit,
  balance_due,
  refund_short,
  interest_paid,
  statement_came,
  refund_came,
  address_given,
  address_given_by_end,
  stay_months,
  pet_deposit_held
};

struct FactInfo {
  std::string id;
  FactType type = FactType::yes_no;
  std::string at;                     ///< JSON Pointer of the answer in a case
  std::optional<DerivedFact> derived; ///< the engine works it out
  Tri usual;
  std::vector<std::string> choices;
  Localized question;
  FactState (*read)(const Case&) = nullptr; ///< of a fact held by a member of the case
};

struct EventInfo {
  std::string id;
  std::string at; ///< JSON Pointer of its date; empty: the case's list of events
  Localized question;
  Localized day;                      ///< a pack's own event: "the day ..."; those of facts.json stand in the wording
  Tri usual;                          ///< no: taken not to have happened when the case is silent
  EventId usual_as = EventId::none;   ///< taken to have happened on the day of this event when the case gives no date
  EventId not_before = EventId::none; ///< it cannot have happened before this event
  const std::optional<DaySpan>* (*read)(const Case&) = nullptr;
};

/// A deadline by name: the events that meet it, and the fact that says whether it was done where no date is known.
struct DeadlineInfo {
  std::string id;
  Localized label;
  EventId posted = EventId::none, arrived = EventId::none;
  EventId or_posted = EventId::none, or_arrived = EventId::none; ///< other events that meet it as well
  FactId fact = FactId::none;
  struct Names {
    std::string posted, arrived, or_posted, or_arrived, fact;
  } names; ///< as the file has them; the positions above are found once facts.json is loaded too
};

struct DocumentInfo {
  std::string id;
  Localized label;
  std::vector<std::string> aliases;
  bool seen_in_lines = false; ///< a statement whose charges are known has it, unless the case says that it is missing
};

/// Names to positions.
class NameIndex {
public:
  /// False if the name stands already.
  bool add(std::string name, std::size_t at) {
    return places_.emplace(std::move(name), static_cast<std::uint16_t>(at)).second;
  }
  /// 0xffff if there is none.
  std::uint16_t find(std::string_view name) const {
    const auto found = places_.find(name);
    return found == places_.end() ? std::uint16_t{0xffff} : found->second;
  }

private:
  struct Hash {
    using is_transparent = void;
    std::size_t operator()(std::string_view s) const { return std::hash<std::string_view>{}(s); }
  };
  std::unordered_map<std::string, std::uint16_t, Hash, std::equal_to<>> places_;
};

struct Registry {
  std::vector<FactInfo> facts;
  std::vector<EventInfo> events;
  std::vector<DeadlineInfo> deadlines;
  std::vector<DocumentInfo> documents;
  NameIndex fact_index, event_index, deadline_index, document_index;

  FactId fact(std::string_view id) const { return FactId{fact_index.find(id)}; }
  EventId event(std::string_view id) const { return EventId{event_index.find(id)}; }
  DocumentId document(std::string_view id) const { return DocumentId{document_index.find(id)}; }
};

/// Add rules/facts.json, rules/duties.json and rules/papers.json, in any order. A file that is given again must hold
/// the same names in the same order and brings only its texts, in more languages. Faults have JSON Pointers into the
/// file.
Faults load_facts(Registry& registry, std::string_view json);
Faults load_deadlines(Registry& registry, std::string_view json);
Faults load_documents(Registry& registry, std::string_view json);

/// The members that facts and events share in facts.json and in packs.
FactInfo read_fact(Fields& f);
EventInfo read_event(Fields& f);

} // namespace wearline
