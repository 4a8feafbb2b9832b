#include "judging/precedents.h"

#include "json/fields.h"
#include <algorithm>
#include <array>

namespace wearline {

namespace {

PrecedentState state_of(const Line& line) {
  if (!line.proof_missing.empty() || line.on_move_out_record == Tri::no || line.at_move_in == "not-recorded")
    return PrecedentState::proof_missing;
  if (is_tenants(line.cause)) return PrecedentState::tenants_hand;
  if (!line.landlord_factors.empty() || line.cause != ChargeCause::unknown) return PrecedentState::landlords_part;
  if (line.at_move_in == "worn" || line.at_move_in == "fair" || line.at_move_in == "same" ||
      line.at_move_in == "damaged" || line.at_move_in == "dirty")
    return PrecedentState::there_before;
  if (line.in_lease.known()) return line.in_lease.known_yes() ? PrecedentState::agreed : PrecedentState::not_agreed;
  return PrecedentState::plain;
}

/// What classes a line belongs to.
struct Key {
  ChargeKind kind;
  std::string_view element, finding;
  PrecedentState state;
  Usual usual;
  bool names_fault;
};
Key key_of(const Line& line, const Subject& subject) {
  return {line.kind == ChargeKind::unknown && subject.element ? subject.element->kind : line.kind,
          subject.element ? std::string_view(subject.element->id) : std::string_view(),
          subject.finding ? std::string_view(subject.finding->id) : std::string_view(),
          state_of(line),
          subject.finding ? subject.finding->usual : Usual::depends,
          subject.finding && subject.finding->names_fault};
}

/// How many of the ever narrower classes a precedent shares with a line: all, kind, whether a fault is named, state,
/// thing, fault.
constexpr int like_kind = 2, narrowest = 5;
int shared(const Precedent& p, const Key& key) {
  if (p.kind != key.kind) return 0;
  if (p.names_fault != key.names_fault) return 1;
  if (p.state != key.state) return 2;
  if (p.element != key.element) return 3;
  return p.finding != key.finding ? 4 : narrowest;
}

/// One is wear by the guide and the other damage: how holes in a wall were decided says nothing of a faded one.
bool of_another_sort(const Precedent& p, const Key& key) {
  return p.usual != key.usual && p.usual != Usual::depends && key.usual != Usual::depends;
}

bool counts(const Precedent& p, std::string_view without) { return without.empty() || p.decision != without; }

} // namespace

std::string_view name_of(Likeness likeness) {
  return likeness == Likeness::same_fault   ? "same-finding"
         : likeness == Likeness::same_thing ? "same-element"
                                            : "same-kind";
}

Faults Precedents::load(std::string_view json) {
  auto parsed = parse_json(json);
  if (auto* fault = std::get_if<Fault>(&parsed)) return {std::move(*fault)};
  Faults faults;
  Fields root(std::get<Json>(parsed), "", faults);
  rows_.clear();
  const auto count = [&](std::string_view name, std::int64_t least) {
    const std::int64_t given = root.whole(name).value_or(least);
    if (given < least || given > 100) root.fault("out-of-range", name, "Give a whole number from 1 to 100.");
    return std::clamp<std::int64_t>(given, least, 100);
  };
  shrinkage_ = count("shrinkage", 1);
  shown_ = static_cast<std::size_t>(count("shown", 1));
  fewest_ = static_cast<std::size_t>(count("fewest", 1));
  for (Fields& f : root.objects("lines")) {
    Precedent p;
    p.id = f.required_text("id");
    p.decision = p.id.substr(0, p.id.find('#'));
    p.kind = f.word("kind", charge_kinds, ChargeKind::unknown);
    if (f.required_text("kind").empty()) continue;
    p.element = f.required_text("element");
    p.finding = f.text("finding");
    p.names_fault = f.flag("namesFault", true);
    p.usual = f.word<Usual>("usual", {{"wear", Usual::wear}, {"damage", Usual::damage}}, Usual::depends);
    p.state = f.word<PrecedentState>("state",
                                     {{"plain", PrecedentState::plain},
                                      {"proof-missing", PrecedentState::proof_missing},
                                      {"there-before", PrecedentState::there_before},
                                      {"tenants-hand", PrecedentState::tenants_hand},
                                      {"landlords-part", PrecedentState::landlords_part},
                                      {"agreed", PrecedentState::agreed},
                                      {"not-agreed", PrecedentState::not_agreed}},
                                     PrecedentState::plain);
    const auto percent = f.whole("percent");
    p.share_known = percent.has_value();
    p.percent = percent.value_or(100);
    if (p.percent < 0 || p.percent > 100) f.fault("out-of-range", "percent", "A share is from 0 to 100.");
    f.done();
    rows_.push_back(std::move(p));
  }
  root.ignore({"about"});
  root.done();
  return faults;
}

std::optional<Share> Precedents::likely(const Line& line, const Subject& subject, std::string_view without) const {
  if (!subject.element || rows_.empty()) return std::nullopt;
  const Key key = key_of(line, subject);
  // How many lie in each class, narrow ones within the wider.
  std::array<double, narrowest + 1> in_class{};
  std::vector<int> level(rows_.size(), -1);
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    if (!counts(rows_[i], without)) continue;
    level[i] = shared(rows_[i], key);
    for (int l = 0; l <= level[i]; ++l) in_class[static_cast<std::size_t>(l)] += 1;
  }
  // A kind of charge of which too few were decided has no usual outcome: that of all others says nothing of it.
  if (in_class[like_kind] < static_cast<double>(fewest_)) return std::nullopt;
  // The weight of one line of class l in the mixture: narrow classes count with their own lines, the wider class that
  // they stand in with `shrinkage_` lines.
  const double pull = static_cast<double>(shrinkage_);
  std::array<double, narrowest + 1> weight{};
  double rest = 1;
  for (int l = narrowest; l > 0; --l) {
    const double n = in_class[static_cast<std::size_t>(l)];
    const double own = n / (n + pull);
    if (n > 0) weight[static_cast<std::size_t>(l)] = rest * own / n;
    rest *= 1 - own;
  }
  weight[0] = rest / in_class[0];
  std::array<double, 101> mass{};
  for (std::size_t i = 0; i < rows_.size(); ++i)
    for (int l = 0; l <= level[i]; ++l)
      mass[static_cast<std::size_t>(rows_[i].percent)] += weight[static_cast<std::size_t>(l)];
  double below = 0;
  for (std::int64_t percent = 0; percent <= 100; ++percent) {
    below += mass[static_cast<std::size_t>(percent)];
    if (below >= 0.5 - 1e-9) return Share{percent, 100};
  }
  return Share::whole();
}

Alike Precedents::alike(const Line& line, const Subject& subject, std::string_view without) const {
  Alike out;
  if (!subject.element) return out;
  const Key key = key_of(line, subject);
  const auto take = [&](Likeness likeness, auto&& fits) {
    for (const Precedent& p : rows_) {
      if (out.most_alike.size() == shown_) return;
      if (!counts(p, without) || !fits(p) ||
          std::find(out.most_alike.begin(), out.most_alike.end(), &p) != out.most_alike.end())
        continue;
      out.most_alike.push_back(&p);
      out.likeness = likeness;
    }
  };
  const auto same_thing = [&](const Precedent& p) {
    return p.element == key.element && p.names_fault == key.names_fault && !of_another_sort(p, key);
  };
  take(Likeness::same_fault, [&](const Precedent& p) {
    return p.element == key.element && p.finding == key.finding && p.state == key.state;
  });
  take(Likeness::same_fault, [&](const Precedent& p) { return p.element == key.element && p.finding == key.finding; });
  take(Likeness::same_thing, [&](const Precedent& p) { return same_thing(p) && p.state == key.state; });
  take(Likeness::same_thing, same_thing);
  if (out.most_alike.size() < fewest_)
    take(Likeness::same_kind,
         [&](const Precedent& p) { return p.kind == key.kind && p.finding == key.finding && p.names_fault; });
  if (out.most_alike.size() < fewest_) return {};
  for (const Precedent* p : out.most_alike) {
    if (p->percent == 0) ++out.nothing;
    else if (p->share_known && p->percent < 100) ++out.part;
    else ++out.all;
  }
  return out;
}

} // namespace wearline
