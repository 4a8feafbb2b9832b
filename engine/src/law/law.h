#pragma once
// The law of one place applied to one case, in two stages: before the charges are judged (deadlines, documents, what
// may be taken, caps, interest), and after (what lateness costs, what a court may award). Nothing here makes sentences;
// law_words.h does.

#include "law/alternatives.h"
#include "law/caps.h"
#include "law/deadlines.h"
#include "law/documents.h"
#include "law/facts.h"
#include "law/interest.h"
#include "law/permission.h"
#include "law/remedies.h"

#include <functional>
#include <vector>

namespace wearline {

/// Everything that a pack says about a case. Points into the case, the pack and the registry, which must outlive it.
class Law final : public Outcomes, public LineLawBook {
public:
  /// First stage. Whether money is owed is still open: deadlines to pay back may be "cannot tell".
  Law(const Case& c, const Pack& pack, const Registry& registry, const Holidays& holidays, Day today);

  const Pack& pack() const { return *pack_; }
  const Registry& registry() const { return *registry_; }
  const FactView& view() const { return view_; }
  /// Each thing to be done once: of deadlines that stand in for one another the one that applies or, where that is
  /// open, what is the same whichever does.
  const std::vector<DeadlineResult>& deadlines() const { return deadlines_; }
  /// Every deadline of the pack, in its order.
  const std::vector<DeadlineResult>& each_deadline() const { return each_; }
  const std::vector<DocumentResult>& documents() const { return documents_; }
  const std::vector<CapResult>& caps() const { return caps_; }
  const InterestResult& interest() const { return interest_; }
  /// What the law says of one line, rule by rule.
  std::vector<Permission> permissions(const Line& line, const LineView& of_line) const;
  /// The same in short, for the judgment of lines.
  LineLaw of(const Line& line, const LineFacts& facts) const override {
    return line_rules_.of(line, {facts.wear, facts.age_months});
  }

  Tri grants(const Line& line) const override { return line_rules_.grants(line); }
  Tri lets_clause_decide(const Line& line) const override { return line_rules_.lets_clause_decide(line); }

  /// Facts and events that the case is silent on and that were taken as usual, wherever something hangs on them.
  Asks assumed() const;

  /// Second stage: settles what hangs on the fair sums. May be called again with other sums.
  void settle(const Reckoning& reckoning);
  const std::vector<ForfeitResult>& forfeits() const { return consequences_.forfeits; }
  const std::vector<RemedyResult>& remedies() const { return consequences_.remedies; }
  const Award& award() const { return consequences_.award; }

  Tri deadline_is(std::size_t deadline, DeadlineState state, Grounds* grounds) const override;
  Tri defect(std::size_t rule, Grounds* grounds) const override;

private:
  /// What follows from the states of deadlines and documents, once the fair sums are known.
  struct Consequences {
    std::vector<ForfeitResult> forfeits;
    std::vector<RemedyResult> remedies;
    Award award;
  };
  static void follow(Consequences& out, const Pack& pack, FactView& view, const Outcomes& outcomes,
                     const Reckoning& reckoning, const std::function<void(Tri)>& settle_deadlines);
  /// What follows whichever way open facts turn out, where they choose among deadlines.
  void follow_every_way(const Reckoning& reckoning);

  Law(const Law&) = delete; // its parts point at one another
  Law& operator=(const Law&) = delete;

  const Pack* pack_;
  const Registry* registry_;
  FactView view_;
  std::vector<DeadlineResult> each_, deadlines_;
  Alternatives alternatives_;
  std::vector<DocumentResult> documents_;
  std::vector<CapResult> caps_;
  InterestResult interest_;
  LineRules line_rules_;
  Consequences consequences_;
};

} // namespace wearline
