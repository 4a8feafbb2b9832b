#pragma once
// What a statement of deductions had to carry, compared with what came.

#include "law/pack.h"

#include <vector>

namespace wearline {

struct PaperResult {
  std::size_t position = 0; ///< in Pack::papers
  const PaperRule* rule = nullptr;
  Tri defect;                     ///< yes: the rule applies and is not met; unknown: cannot tell
  std::vector<PaperId> lacking;   ///< known not to have come
  std::vector<PaperId> open;      ///< not known: the case's /statement/enclosed or /missing would tell
  std::vector<std::size_t> lines; ///< positions of the lines without them, where only some lack them
  bool wrong_way = false;         ///< sent in a way that does not count
  bool way_open = false;          ///< the way of sending is not known (/statement/how)
  Grounds grounds;
};

/// Every paper rule of a pack, in its order. Where no statement came there is no defect of it: the duty to send one is
/// missed.
std::vector<PaperResult> judge_papers(const Pack& pack, const Registry& registry, const FactView& view);

/// Whether a paper came with the statement as a whole, or with each line that is about the state of the home.
Tri paper_came(PaperId paper, const Registry& registry, const Case& c);
/// Whether it came for this line: with the line or with the statement.
Tri paper_came(PaperId paper, const Registry& registry, const Case& c, const Line& line);

} // namespace wearline
