#pragma once
// What the law says about taking one charge: which rules allow it, bar it, limit it, or want proof.

#include "law/facts.h"
#include "law/line_law.h"
#include "law/pack.h"

#include <vector>

namespace wearline {

struct Permission {
  enum class Says : std::uint8_t { allowed, not_listed, bar, needs_proof, damaged_portion_only, limit, caution };
  Says says = Says::caution;
  const Rule* rule = nullptr;
  Tri applies;                 ///< unknown: may apply
  std::optional<Money> most;   ///< limit: the sum, where it can be worked out
  bool installed_open = false; ///< the day the thing was put in (/lines/n/installed) would settle it
  bool proof_open = false;     ///< whether the documents came would settle it
  Grounds grounds;
};
/// As the assessment and wording keys write it: "needs-proof".
std::string_view name_of(Permission::Says says);

/// What of a line is not in the line itself.
struct LineView {
  Verdict verdict = Verdict::undetermined; ///< of the wear guide; cannot_tell leaves rules about wear open
  std::optional<Range<Months>> age_months; ///< completed months the thing is old, where the line has no day for it
};

/// Every rule, with its statute in the pack, that says or may say something about the line, in the pack's order:
/// `allows` first, then `bars`. A line on no closed list is `not_listed`: it may not be taken. needs-proof is reported
/// only where the proof is missing or may be.
std::vector<Permission> permissions(const Line& line, const LineView& of_line, const Pack& pack,
                                    const Registry& registry, const FactView& view, const Outcomes* outcomes);

/// The same without its grounds, fast enough to be asked for every variation of a line: which rules hold in this case
/// is worked out once.
class LineRules {
public:
  LineRules(const Pack& pack, const Registry& registry, const FactView& view)
      : pack_(&pack), registry_(&registry), view_(&view) {}
  /// Works out what holds, with the states of deadlines and documents as they are known now.
  void refresh(const Outcomes* outcomes);
  LineLaw of(const Line& line, const LineView& of_line) const;
  Tri grants(const Line& line) const;
  Tri lets_clause_decide(const Line& line) const;

private:
  const Pack* pack_;
  const Registry* registry_;
  const FactView* view_;
  Tri allowed_by(const Line& line, bool Allow::*sort) const;

  std::vector<Tri> allows_, bars_; ///< whether each holds in this case
};

/// Whether nothing may be taken for the line: a bar, a closed list without it, or proof that did not come.
Tri barred(const std::vector<Permission>& permissions);

} // namespace wearline
