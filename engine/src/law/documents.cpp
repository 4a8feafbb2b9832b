#include "law/documents.h"

#include "law/applies.h"

#include <algorithm>

namespace wearline {

namespace {

bool has(const std::vector<std::string>& names, const std::string& name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

/// What the statement as a whole tells of a document.
Tri said_of_statement(const std::string& document, const Case& c) {
  if (has(c.statement.missing, document)) return false;
  return has(c.statement.enclosed, document) ? Tri::yes : Tri::unknown;
}

Tri said_of_line(const std::string& document, const Line& line) {
  if (has(line.proof_missing, document)) return false;
  return has(line.proof, document) ? Tri::yes : Tri::unknown;
}

/// All of the documents, or one of those that will do instead.
Tri met(const DocumentRule& rule, const Registry& registry, const Case& c, DocumentResult& r) {
  Tri all = true;
  for (const DocumentId document : rule.requires_all) {
    const Tri came = document_came(document, registry, c);
    all = tri_and(all, came);
    if (came == Tri::no) r.lacking.push_back(document);
    else if (!came.known()) r.open.push_back(document);
  }
  Tri instead = false;
  for (const DocumentId document : rule.or_else) {
    const Tri came = document_came(document, registry, c);
    instead = tri_or(instead, came);
    if (!came.known()) r.open.push_back(document);
  }
  return tri_or(all, instead);
}

/// "mail" in a rule is any mail; a case that says only "mail" leaves open which.
Tri right_way(const std::vector<std::string>& ways, const std::string& how) {
  if (ways.empty()) return true;
  if (how.empty()) return Tri::unknown;
  if (has(ways, how)) return true;
  const auto is_mail = [](std::string_view way) {
    return way == "mail" || (way.size() > 5 && way.substr(way.size() - 5) == "-mail");
  };
  if (is_mail(how) && has(ways, "mail")) return true;
  if (how == "mail" && std::any_of(ways.begin(), ways.end(), is_mail)) return Tri::unknown;
  return false;
}

DocumentResult judge_document(std::size_t position, const Pack& pack, const Registry& registry, const FactView& view) {
  DocumentResult r;
  r.position = position;
  r.rule = &pack.documents[position];
  const Case& c = view.of();
  const Tri called_for = applies(*r.rule, view, nullptr, &r.grounds);
  if (called_for == Tri::no || statement_came(c) == Tri::no) {
    r.defect = false;
    r.grounds = {};
    return r;
  }
  const Tri documents = met(*r.rule, registry, c, r);
  const Tri way = right_way(r.rule->delivery_methods, c.statement.delivery_method);
  r.wrong_way = way == Tri::no;
  r.way_open = !way.known();
  r.defect = tri_and(called_for, tri_not(tri_and(documents, way)));
  if (documents == Tri::yes) {
    r.lacking.clear();
    r.open.clear();
  }
  if (!r.lacking.empty())
    for (std::size_t i = 0; i < c.lines.size(); ++i)
      for (const DocumentId document : r.lacking)
        if (has(c.lines[i].proof_missing, registry.documents[index(document)].id) &&
            (r.lines.empty() || r.lines.back() != i))
          r.lines.push_back(i);
  if (r.defect.known()) {
    r.open.clear();
    r.way_open = false;
    r.grounds.unknown.clear();
  }
  return r;
}

} // namespace

Tri document_came(DocumentId document, const Registry& registry, const Case& c, const Line& line) {
  const std::string& name = registry.documents[index(document)].id;
  const Tri of_line = said_of_line(name, line);
  return of_line.known() ? of_line : said_of_statement(name, c);
}

Tri document_came(DocumentId document, const Registry& registry, const Case& c) {
  const DocumentInfo& info = registry.documents[index(document)];
  if (const Tri said = said_of_statement(info.id, c); said.known()) return said;
  Tri with_lines = Tri::unknown;
  bool every_line = true;
  for (const Line& line : c.lines) {
    if (about_condition(line.kind) == Tri::no) continue;
    const Tri said = said_of_line(info.id, line);
    if (said == Tri::no) return false;
    if (said.known()) with_lines = true;
    else every_line = false;
  }
  if (with_lines.known() && every_line) return true;
  if (info.seen_in_lines && !c.lines.empty()) return true;
  return Tri::unknown;
}

std::vector<DocumentResult> judge_documents(const Pack& pack, const Registry& registry, const FactView& view) {
  std::vector<DocumentResult> out;
  out.reserve(pack.documents.size());
  for (std::size_t i = 0; i < pack.documents.size(); ++i) out.push_back(judge_document(i, pack, registry, view));
  return out;
}

} // namespace wearline
