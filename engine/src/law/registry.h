#pragma once
// The names law packs are written in: facts and events of a case, deadlines, documents; each with the question that
// would settle it. Loaded once from rules/facts.json, duties.json and papers.json; a pack's own facts and events follow
// the shared ones.

#include "case/case.h"
#include "values/reference.h"
#include "wearline/fault.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace wearline {

class FactView;
struct CaseNames;
struct Pack;

/// Positions in a pack's facts, events, documents; `none` is no such thing.
enum class FactId : std::uint16_t { none = 0xffff };
enum class EventId : std::uint16_t { none = 0xffff };
enum class DocumentId : std::uint16_t { none = 0xffff };
template <class Id> constexpr std::size_t index(Id id) { return static_cast<std::size_t>(id); }

/// What a case says about one fact. Sums are numbers of cents; a number known only within limits has low < high.
struct FactState {
  enum class Kind : std::uint8_t { unknown, yes_no, number, text };
  Kind kind = Kind::unknown;
  bool yes = false;
  bool assumed = false; ///< the case is silent and the usual value was taken
  std::int64_t low = 0, high = 0;
  std::string_view text; ///< points into the case
};

/// What a case says about one event. `on` is when it happened or, where that is not known, when it can have happened.
struct EventState {
  Tri happened;
  DaySpan on;
  bool assumed = false; ///< the case is silent and the usual was taken
};

struct FactInfo {
  std::string id;
  FactType type = FactType::yes_no;
  std::string at; ///< JSON Pointer of the answer in a case
  bool derived = false;
  Tri usual;
  std::vector<std::string> choices;
  Localized question;
  FactState (*read)(const Case&) = nullptr;                    ///< of a fact held by a member of the case
  FactState (*derive)(const Case&, const FactView&) = nullptr; ///< of a derived fact
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

/// Adds what the registry and a pack (may be null) let a case file say: events, documents, circumstances. The
/// circumstances hold every fact that has no other place, every derived fact, and every event (false: it is known not
/// to have happened).
void add_law_names(CaseNames& names, const Registry& registry, const Pack* pack);

} // namespace wearline
