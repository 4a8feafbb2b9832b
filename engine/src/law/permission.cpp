#include "law/permission.h"

#include "law/applies.h"
#include "law/documents.h"

#include <algorithm>

namespace wearline {

namespace {

/// One member of a matcher: what matches, against what the line has (T(): unknown).
template <class T> Tri among(const std::vector<T>& matching, const T& value) {
  if (matching.empty()) return true;
  if (value == T()) return Tri::unknown;
  return std::find(matching.begin(), matching.end(), value) != matching.end();
}

Tri of_verdict(const std::vector<std::string>& names, Verdict verdict) {
  if (names.empty()) return true;
  if (std::find(names.begin(), names.end(), name_of(verdict)) != names.end()) return true;
  return verdict == Verdict::undetermined ? Tri::unknown : Tri::no;
}

/// Older than so many months when the tenant left. Whole calendar months: ten years to the day is not older.
Tri older_than(Months months, const Line& line, const LineView& of_line, const FactView& view) {
  if (!line.installed) {
    if (!of_line.age_months) return Tri::unknown;
    if (of_line.age_months->low() > months) return true;
    return of_line.age_months->high() < months ? Tri::no : Tri::unknown;
  }
  const EventState& keys = view.event("possession-returned");
  const EventState& end = keys.happened == Tri::yes && !(keys.on == DaySpan{}) ? keys : view.event("tenancy-ended");
  if (end.happened != Tri::yes) return Tri::unknown;
  if (add_months(line.installed->latest, months) < end.on.earliest) return true;
  return add_months(line.installed->earliest, months) >= end.on.latest ? Tri::no : Tri::unknown;
}

struct Match {
  Tri matches;
  bool installed_open = false, proof_open = false;
};

Match match(const LineMatcher& m, const Line& line, const LineView& of_line, const Registry& registry,
            const FactView& view) {
  Match out;
  out.matches = among(m.kind, line.kind);
  const auto also = [&](Tri one) { out.matches = tri_and(out.matches, one); };
  if (out.matches != Tri::no) also(of_verdict(m.verdict, of_line.verdict));
  if (out.matches != Tri::no) also(among(m.element, line.element));
  if (out.matches != Tri::no) also(among(m.finding, line.finding));
  if (out.matches != Tri::no) also(among(m.remedy, line.remedy));
  if (out.matches != Tri::no) also(among(m.at_move_in, line.at_move_in));
  if (out.matches == Tri::no) return out;
  if (m.older_than) {
    const Tri older = older_than(*m.older_than, line, of_line, view);
    out.installed_open = !older.known();
    also(older);
  }
  for (const DocumentId document : m.proof_missing) {
    const Tri came = document_came(document, registry, view.of(), line);
    out.proof_open = out.proof_open || !came.known();
    also(tri_not(came));
  }
  return out;
}

Permission::Says says(Effect effect) {
  switch (effect) {
  case Effect::bar:
    return Permission::Says::bar;
  case Effect::needs_proof:
    return Permission::Says::needs_proof;
  case Effect::damaged_portion_only:
    return Permission::Says::damaged_portion_only;
  case Effect::limit:
    return Permission::Says::limit;
  case Effect::caution:
    break;
  }
  return Permission::Says::caution;
}

std::optional<Money> limit_of(const Limit& limit, const Line& line, const FactView& view) {
  if (limit.amount) return limit.amount;
  std::optional<Money> base;
  if (limit.of == Base::monthly_rent) base = view.of().tenancy.monthly_rent;
  else if (limit.of == Base::whole_deposit) base = deposit_total(view.of(), view.pack());
  else if (limit.of == Base::line_amount) base = line.amount;
  if (!base) return limit.at_least;
  return std::max(base->part(limit.times), limit.at_least.value_or(Money()));
}

/// One of the documents that prove a charge came for the line.
Tri proof_came(const std::vector<DocumentId>& documents, const Line& line, const Registry& registry, const Case& c) {
  Tri any = false;
  for (const DocumentId document : documents) any = tri_or(any, document_came(document, registry, c, line));
  return any;
}

void list_allows(const Line& line, const LineView& of_line, const Pack& pack, const Registry& registry,
                 const FactView& view, std::vector<Permission>& out) {
  Tri on_a_list = false, closed = false;
  const Allow* closed_list = nullptr;
  Grounds grounds;
  for (const Allow& allow : pack.allows) {
    Grounds mine;
    const Tri in_use = applies(allow, view, nullptr, &mine);
    if (in_use == Tri::no) continue;
    Tri listed = false;
    for (const LineMatcher& m : allow.lines) listed = tri_or(listed, match(m, line, of_line, registry, view).matches);
    listed = tri_and(listed, in_use);
    if (allow.closed) {
      closed = tri_or(closed, in_use);
      if (!closed_list) closed_list = &allow;
    }
    on_a_list = tri_or(on_a_list, listed);
    grounds.add(mine);
    if (listed != Tri::no)
      out.push_back({Permission::Says::allowed, &allow, listed, {}, false, false, std::move(mine)});
  }
  if (!closed_list) return;
  const Tri missing = tri_and(closed, tri_not(on_a_list));
  if (missing != Tri::no)
    out.push_back({Permission::Says::not_listed, closed_list, missing, {}, false, false, std::move(grounds)});
}

} // namespace

std::string_view name_of(Permission::Says says) {
  switch (says) {
  case Permission::Says::allowed:
    return "allowed";
  case Permission::Says::not_listed:
    return "not-listed";
  case Permission::Says::bar:
    return "bar";
  case Permission::Says::needs_proof:
    return "needs-proof";
  case Permission::Says::damaged_portion_only:
    return "damaged-portion-only";
  case Permission::Says::limit:
    return "limit";
  case Permission::Says::caution:
    break;
  }
  return "caution";
}

std::vector<Permission> permissions(const Line& line, const LineView& of_line, const Pack& pack,
                                    const Registry& registry, const FactView& view, const Outcomes* outcomes) {
  std::vector<Permission> out;
  list_allows(line, of_line, pack, registry, view, out);
  for (const Bar& bar : pack.bars) {
    const Match m = match(bar.line, line, of_line, registry, view);
    if (m.matches == Tri::no) continue;
    Permission p;
    p.applies = tri_and(m.matches, applies(bar, view, outcomes, &p.grounds));
    if (p.applies == Tri::no) continue;
    if (bar.unless) p.applies = tri_and(p.applies, tri_not(holds(*bar.unless, view, outcomes, &p.grounds)));
    p.proof_open = m.proof_open;
    p.installed_open = m.installed_open;
    if (bar.effect == Effect::needs_proof) {
      const Tri came = proof_came(bar.proof, line, registry, view.of());
      p.proof_open = p.proof_open || !came.known();
      p.applies = tri_and(p.applies, tri_not(came));
    }
    if (p.applies == Tri::no) continue;
    if (p.applies.known()) p.grounds.unknown.clear();
    p.says = says(bar.effect);
    p.rule = &bar;
    if (bar.effect == Effect::limit) p.most = limit_of(bar.limit, line, view);
    out.push_back(std::move(p));
  }
  return out;
}

Tri barred(const std::vector<Permission>& permissions) {
  Tri out = false;
  for (const Permission& p : permissions)
    if (p.says == Permission::Says::bar || p.says == Permission::Says::not_listed ||
        p.says == Permission::Says::needs_proof)
      out = tri_or(out, p.applies);
  return out;
}

void LineRules::refresh(const Outcomes* outcomes) {
  allows_.clear();
  for (const Allow& allow : pack_->allows) allows_.push_back(applies(allow, *view_));
  bars_.clear();
  for (const Bar& bar : pack_->bars) {
    const Tri lifted = bar.unless ? holds(*bar.unless, *view_, outcomes) : Tri::no;
    bars_.push_back(tri_and(applies(bar, *view_, outcomes), tri_not(lifted)));
  }
}

Tri LineRules::grants(const Line& line) const { return allowed_by(line, &Allow::grants); }
Tri LineRules::lets_clause_decide(const Line& line) const { return allowed_by(line, &Allow::clause); }

/// Whether one of the allows of a sort lists the line.
Tri LineRules::allowed_by(const Line& line, bool Allow::*sort) const {
  Tri out = false;
  for (std::size_t i = 0; i < allows_.size(); ++i) {
    if (!(pack_->allows[i].*sort)) continue;
    for (const LineMatcher& m : pack_->allows[i].lines)
      out = tri_or(out, tri_and(allows_[i], match(m, line, {}, *registry_, *view_).matches));
  }
  return out;
}

LineLaw LineRules::of(const Line& line, const LineView& of_line) const {
  LineLaw law;
  Tri listed = false, closed = false;
  for (std::size_t i = 0; i < allows_.size(); ++i) {
    const Allow& allow = pack_->allows[i];
    if (allows_[i] == Tri::no) continue;
    if (allow.closed) closed = tri_or(closed, allows_[i]);
    for (std::size_t m = 0; m < allow.lines.size() && listed != Tri::yes; ++m)
      listed = tri_or(listed, tri_and(allows_[i], match(allow.lines[m], line, of_line, *registry_, *view_).matches));
  }
  law.barred = tri_and(closed, tri_not(listed));
  Tri barred_anyway = law.barred;
  for (std::size_t i = 0; i < bars_.size(); ++i) {
    const Bar& bar = pack_->bars[i];
    if (bars_[i] == Tri::no || bar.effect == Effect::caution) continue;
    Tri applies_here = match(bar.line, line, of_line, *registry_, *view_).matches;
    if (applies_here == Tri::no) continue;
    applies_here = tri_and(applies_here, bars_[i]);
    if (bar.effect == Effect::needs_proof)
      applies_here = tri_and(applies_here, tri_not(proof_came(bar.proof, line, *registry_, view_->of())));
    if (bar.effect == Effect::damaged_portion_only) {
      law.damaged_portion_only = tri_or(law.damaged_portion_only, applies_here);
    } else if (bar.effect == Effect::limit) {
      const auto most = limit_of(bar.limit, line, *view_);
      if (applies_here.known_yes() && most && (!law.limit || *most < *law.limit)) law.limit = most;
    } else {
      law.barred = tri_or(law.barred, applies_here);
      if (bar.line.verdict.empty()) barred_anyway = tri_or(barred_anyway, applies_here);
    }
  }
  law.barred_as_wear = law.barred == Tri::yes && barred_anyway != Tri::yes;
  return law;
}

} // namespace wearline
