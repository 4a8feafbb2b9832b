#pragma once
// What the law half found, in words.

#include "law/law.h"
#include "wording/speech.h"

#include <string>

namespace wearline {

class LawWords {
public:
  LawWords(const Law& law, const Registry& registry, const Holidays& holidays, const Speech& speech)
      : law_(&law), registry_(&registry), holidays_(&holidays), speech_(&speech) {}

  std::string label(const Deadline& deadline) const;
  /// "Was the building sold? Not told: taken as no."
  std::string assumed(const Ask& ask) const;
  /// "Met: done on ...", "Missed: ...", with why.
  std::string state(const DeadlineResult& result) const;
  /// The days that are not known and that the state hangs on: "the day the tenancy ended".
  std::string missing(const DeadlineResult& result) const;
  /// How the last day was reached: "30 days after July 31, 2026 (the day ...) is Sunday, August 30, 2026. ..."
  std::string arithmetic(const DeadlineResult& result) const;
  std::string defect(const DocumentResult& result) const;
  std::string cap(const CapResult& result) const;
  /// What a court may award, from the sum due to the most the law allows.
  std::string award(const Award& award) const;
  /// "the day the tenancy ended"; the event's id in plain letters where the wording has no phrase.
  std::string event(EventId id) const;
  std::string document(DocumentId id) const;

private:
  std::string period(const PeriodCount& period, const DeadlineResult& result) const;
  std::string events(const std::vector<EventId>& ids, std::string_view joiner) const;

  const Law* law_;
  const Registry* registry_;
  const Holidays* holidays_;
  const Speech* speech_;
};

} // namespace wearline
