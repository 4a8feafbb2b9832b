#include "law/papers.h"

#include <algorithm>

namespace wearline {

namespace {

bool has(const std::vector<std::string>& names, const std::string& name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

/// What the statement as a whole tells of a paper.
Tri said_of_statement(const std::string& paper, const Case& c) {
  if (has(c.statement.missing, paper)) return false;
  return has(c.statement.enclosed, paper) ? Tri(true) : std::nullopt;
}

Tri said_of_line(const std::string& paper, const Line& line) {
  if (has(line.proof_missing, paper)) return false;
  return has(line.proof, paper) ? Tri(true) : std::nullopt;
}

/// All of the papers, or one of those that will do instead.
Tri met(const PaperRule& rule, const Registry& registry, const Case& c, PaperResult& r) {
  Tri all = true;
  for (const PaperId paper : rule.requires_all) {
    const Tri came = paper_came(paper, registry, c);
    all = tri_and(all, came);
    if (came == Tri(false)) r.lacking.push_back(paper);
    else if (!came) r.open.push_back(paper);
  }
  Tri instead = false;
  for (const PaperId paper : rule.or_else) {
    const Tri came = paper_came(paper, registry, c);
    instead = tri_or(instead, came);
    if (!came) r.open.push_back(paper);
  }
  return tri_or(all, instead);
}

/// "mail" in a rule is any mail; a case that says only "mail" leaves open which.
Tri right_way(const std::vector<std::string>& ways, const std::string& how) {
  if (ways.empty()) return true;
  if (how.empty()) return std::nullopt;
  if (has(ways, how)) return true;
  const auto is_mail = [](std::string_view way) {
    return way == "mail" || (way.size() > 5 && way.substr(way.size() - 5) == "-mail");
  };
  if (is_mail(how) && has(ways, "mail")) return true;
  if (how == "mail" && std::any_of(ways.begin(), ways.end(), is_mail)) return std::nullopt;
  return false;
}

PaperResult judge_paper(std::size_t position, const Pack& pack, const Registry& registry, const FactView& view) {
  PaperResult r;
  r.position = position;
  r.rule = &pack.papers[position];
  const Case& c = view.of();
  const Tri called_for = applies(*r.rule, view, nullptr, &r.grounds);
  if (called_for == Tri(false) || statement_came(c) == Tri(false)) {
    r.defect = false;
    r.grounds = {};
    return r;
  }
  const Tri papers = met(*r.rule, registry, c, r);
  const Tri way = right_way(r.rule->how, c.statement.how);
  r.wrong_way = way == Tri(false);
  r.way_open = !way;
  r.defect = tri_and(called_for, tri_not(tri_and(papers, way)));
  if (papers == Tri(true)) {
    r.lacking.clear();
    r.open.clear();
  }
  if (!r.lacking.empty())
    for (std::size_t i = 0; i < c.lines.size(); ++i)
      for (const PaperId paper : r.lacking)
        if (has(c.lines[i].proof_missing, registry.papers[index(paper)].id) && (r.lines.empty() || r.lines.back() != i))
          r.lines.push_back(i);
  if (r.defect) {
    r.open.clear();
    r.way_open = false;
    r.grounds.unknown.clear();
  }
  return r;
}

} // namespace

Tri paper_came(PaperId paper, const Registry& registry, const Case& c, const Line& line) {
  const std::string& name = registry.papers[index(paper)].id;
  const Tri of_line = said_of_line(name, line);
  return of_line ? of_line : said_of_statement(name, c);
}

Tri paper_came(PaperId paper, const Registry& registry, const Case& c) {
  const PaperInfo& info = registry.papers[index(paper)];
  if (const Tri said = said_of_statement(info.id, c)) return said;
  Tri with_lines = std::nullopt;
  bool every_line = true;
  for (const Line& line : c.lines) {
    if (about_condition(line.kind) == Tri(false)) continue;
    const Tri said = said_of_line(info.id, line);
    if (said == Tri(false)) return false;
    if (said) with_lines = true;
    else every_line = false;
  }
  if (with_lines && every_line) return true;
  if (info.seen_in_lines && !c.lines.empty()) return true;
  return std::nullopt;
}

std::vector<PaperResult> judge_papers(const Pack& pack, const Registry& registry, const FactView& view) {
  std::vector<PaperResult> out;
  out.reserve(pack.papers.size());
  for (std::size_t i = 0; i < pack.papers.size(); ++i) out.push_back(judge_paper(i, pack, registry, view));
  return out;
}

} // namespace wearline
