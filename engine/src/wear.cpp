#include "wearline/wear.h"

#include <algorithm>

namespace wearline {

namespace {

bool among(const std::vector<std::string>& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

bool holds(const TurnTest& test, const Line& line, const Stay& stay) {
  if (!test.landlord_factors.empty() &&
      std::none_of(line.landlord_factors.begin(), line.landlord_factors.end(), [&](const std::string& f) { return among(test.landlord_factors, f); }))
    return false;
  if (!test.severities.empty() && !among(test.severities, line.severity)) return false;
  if (!test.causes.empty() && !among(test.causes, line.cause)) return false;
  if (!test.at_move_in.empty() && !among(test.at_move_in, line.at_move_in)) return false;
  if (test.count_at_least && (!line.count || *line.count < *test.count_at_least)) return false;
  if (test.stay_months_at_least && (!stay.months || *stay.months < *test.stay_months_at_least)) return false;
  if (test.occupants_at_least && (!stay.occupants || *stay.occupants < *test.occupants_at_least)) return false;
  if (test.past_life && stay.past_life != test.past_life) return false;
  return true;
}

WearOpinion settled(Verdict verdict, std::string_view reason) {
  const Share share = verdict == Verdict::chargeable_damage ? Share::whole() : Share::none();
  return {verdict, share, share, share, reason};
}

WearOpinion of_turn(const Turn& turn) {
  WearOpinion opinion = settled(turn.verdict, "reason.turn");
  if (turn.verdict == Verdict::cannot_tell) opinion = {};
  opinion.reason = "reason.turn";
  opinion.turn = &turn;
  return opinion;
}

WearOpinion leaning(Lean lean, std::string_view reason_wear, std::string_view reason_damage, std::string_view reason_even) {
  WearOpinion opinion;
  if (lean == Lean::wear) opinion = {Verdict::ordinary_wear, Share::none(), Share::none(), Share::whole(), reason_wear};
  else if (lean == Lean::damage) opinion = {Verdict::chargeable_damage, Share::none(), Share::whole(), Share::whole(), reason_damage};
  else opinion.reason = reason_even;
  opinion.finding_open = true;
  return opinion;
}

/// Rent, fees, bills: owed or not, never worn.
WearOpinion judge_debt(const Line& line, const Finding* finding) {
  WearOpinion opinion;
  if (line.kind == "fee" && line.in_lease == Tri(false)) opinion = settled(Verdict::not_about_condition, "reason.not-in-lease");
  else if (line.cause == "tenant") {
    opinion = settled(Verdict::chargeable_damage, "reason.owed");
  } else {
    opinion = leaning(finding ? finding->lean : Lean::even, "reason.debt-doubtful", "reason.debt-likely", "reason.debt-open");
  }
  opinion.verdict = Verdict::not_about_condition;
  return opinion;
}

std::optional<WearOpinion> by_move_in_record(const Line& line) {
  if (line.at_move_in == "same" || line.at_move_in == "damaged") return settled(Verdict::already_there, "reason.already-there");
  if (line.at_move_in == "dirty" && line.kind == "cleaning") return settled(Verdict::already_there, "reason.already-dirty");
  return std::nullopt;
}

std::optional<WearOpinion> by_cause(const Line& line, Usual usual) {
  if (line.cause == "age") return settled(Verdict::ordinary_wear, "reason.cause-age");
  if (line.cause == "landlord" || line.cause == "building" || line.cause == "neighbour" || line.cause == "nature" || line.cause == "third-party")
    return settled(Verdict::landlord_side, "reason.cause-not-tenant");
  if ((line.cause == "tenant" || line.cause == "guest" || line.cause == "pet") && usual == Usual::depends)
    return settled(Verdict::chargeable_damage, "reason.cause-tenant");
  return std::nullopt;
}

WearOpinion by_guide(const Finding& finding) {
  if (finding.usual == Usual::depends)
    return leaning(finding.lean, "reason.leans-wear", "reason.leans-damage", "reason.depends");
  WearOpinion opinion = settled(finding.usual == Usual::wear ? Verdict::ordinary_wear : Verdict::chargeable_damage,
                                finding.usual == Usual::wear ? "reason.guide-wear" : "reason.guide-damage");
  for (const Conflict& conflict : finding.conflicts) {
    if (conflict.verdict == Verdict::chargeable_damage && finding.usual == Usual::wear) opinion.most = Share::whole();
    if (conflict.verdict == Verdict::ordinary_wear && finding.usual == Usual::damage) opinion.least = Share::none();
  }
  opinion.finding_open = !opinion.certain();
  return opinion;
}

} // namespace

std::string_view name_of(Verdict verdict) {
  switch (verdict) {
  case Verdict::ordinary_wear: return "ordinary-wear";
  case Verdict::chargeable_damage: return "chargeable-damage";
  case Verdict::landlord_side: return "landlord-side";
  case Verdict::already_there: return "already-there";
  case Verdict::barred: return "barred";
  case Verdict::not_about_condition: return "not-about-condition";
  case Verdict::cannot_tell: break;
  }
  return "cannot-tell";
}

const Finding* Element::finding(std::string_view wanted) const {
  for (const Finding& f : findings)
    if (f.id == wanted) return &f;
  return nullptr;
}

WearOpinion judge_wear(const Line& line, const Element* element, const Finding* finding, const Stay& stay) {
  WearOpinion opinion;
  if (element && !element->about_condition) {
    opinion = judge_debt(line, finding);
    opinion.finding = finding;
    return opinion;
  }
  if (const auto recorded = by_move_in_record(line)) {
    opinion = *recorded;
    opinion.finding = finding;
    return opinion;
  }
  const Turn* turn = nullptr;
  if (finding)
    for (const Turn& t : finding->turns)
      if (holds(t.test, line, stay)) {
        turn = &t;
        break;
      }
  if (turn && turn->verdict == Verdict::landlord_side) {
    opinion = of_turn(*turn);
  } else if (!line.landlord_factors.empty()) {
    // The landlord's own upkeep is named but the guide knows no direct link: their side, yet not beyond doubt.
    opinion = {Verdict::landlord_side, Share::none(), Share::none(), Share::whole(), "reason.landlord-factor"};
  } else if (const auto caused = by_cause(line, finding ? finding->usual : Usual::depends);
             // A turn outweighs the tenant's own hand: a light mark is wear whoever made it.
             caused && !(turn && (turn->test.causes.size() || caused->verdict == Verdict::chargeable_damage))) {
    opinion = *caused;
  } else if (turn) {
    opinion = of_turn(*turn);
  } else if (finding) {
    opinion = by_guide(*finding);
  } else {
    opinion.reason = "reason.nothing-named";
    opinion.finding_open = true;
  }
  // Who must show what was there at move-in? The landlord. With neither list nor photos the damage may be older.
  if (stay.nothing_recorded && opinion.verdict == Verdict::chargeable_damage && line.at_move_in.empty() && line.kind != "keys")
    opinion.least = Share::none();
  opinion.finding = finding;
  return opinion;
}

} // namespace wearline
