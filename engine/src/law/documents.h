#pragma once
// What a statement of deductions had to carry, compared with what came.

#include "law/facts.h"
#include "law/pack.h"

#include <vector>

namespace wearline {

struct DocumentResult {
  std::size_t position = 0; ///< in Pack::documents
  const DocumentRule* rule = nullptr;
  Tri defect;                      ///< yes: the rule applies and is not met; unknown: cannot tell
  std::vector<DocumentId> lacking; ///< known not to have come
  std::vector<DocumentId> open;    ///< not known: the case's /statement/enclosed or /missing would tell
  std::vector<std::size_t> lines;  ///< positions of the lines without them, where only some lack them
  bool wrong_way = false;          ///< sent in a way that does not count
  bool way_open = false;           ///< the way of sending is not known (/statement/how)
  Grounds grounds;
};

/// Every document rule of a pack, each with its statute there, in its order. Where no statement came there is no defect
/// of it: the deadline to send one is missed.
std::vector<DocumentResult> judge_documents(const Pack& pack, const Registry& registry, const FactView& view);

/// Whether a document came with the statement as a whole, or with each line that is about the state of the home.
Tri document_came(DocumentId document, const Registry& registry, const Case& c);
/// Whether it came for this line: with the line or with the statement.
Tri document_came(DocumentId document, const Registry& registry, const Case& c, const Line& line);

} // namespace wearline
