#pragma once
// What a case leaves open may turn out in several ways. A law that says the same in every way has said it for certain.

#include "law/conditions.h"
#include "law/facts.h"
#include "law/pack.h"

#include <vector>

namespace wearline {

/// One answer to what is open: that of a fact, or that of an event.
struct Answer {
  Ask ask;
  FactState fact;
  EventState event;
};

/// The answers that a set of rules can tell apart: yes and no; each name that a rule or the fact's own choices mention,
/// and one that none does; each stretch of numbers or of days between their limits; not happened.
class Answers {
public:
  explicit Answers(const FactView& view) : view_(&view) {}
  /// Counts in what the condition and the dates of a rule can tell apart.
  void heed(const Rule& rule);
  std::vector<Answer> to(Ask ask) const;

private:
  void heed(const Condition& condition);
  std::vector<Answer> to_fact(Ask ask) const;
  std::vector<Answer> to_event(Ask ask) const;

  const FactView* view_;
  struct Edge {
    Ask ask;
    std::int64_t at; ///< a new stretch begins here: a number, or a day as its count
  };
  std::vector<Edge> edges_;
  struct Name {
    Ask ask;
    const std::string* name;
  };
  std::vector<Name> names_;
};

/// A case as it would stand with some of what is open answered.
struct Way {
  FactView view;
  std::vector<Answer> answers;
};

/// Every combination of answers to `open`; empty if nothing is open or there are more than `most_ways`.
constexpr std::size_t most_ways = 96;
std::vector<Way> ways_of(const Asks& open, const Answers& answers, const FactView& view);

} // namespace wearline
