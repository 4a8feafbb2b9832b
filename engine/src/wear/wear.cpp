#include "wear/wear.h"

#include <algorithm>

namespace wearline {

namespace {

template <class T, class V> bool among(const std::vector<T>& list, const V& value) {
  return std::find(list.begin(), list.end(), value) != list.end();
}

bool holds(const TurnTest& test, const Line& line, const Stay& stay) {
  if (!test.landlord_factors.empty() &&
      std::none_of(line.landlord_factors.begin(), line.landlord_factors.end(),
                   [&](const std::string& f) { return among(test.landlord_factors, f); }))
    return false;
  if (!test.severities.empty() && !among(test.severities, line.severity)) return false;
  if (!test.causes.empty() && !among(test.causes, line.cause)) return false;
  if (!test.at_move_in.empty() && !among(test.at_move_in, line.at_move_in)) return false;
  if (test.count_at_least && (!line.count || *line.count < *test.count_at_least)) return false;
  if (test.stay_at_least && (!stay.months || *stay.months < *test.stay_at_least)) return false;
  if (test.occupants_at_least && (!stay.occupants || *stay.occupants < *test.occupants_at_least)) return false;
  if (test.past_life.known() && stay.past_life != test.past_life) return false;
  return true;
}

WearOpinion settled(Verdict verdict, std::string_view reason) {
  const Share share = verdict == Verdict::chargeable_damage ? Share::whole() : Share::none();
  return {verdict, share, share, share, reason};
}

bool by_the_tenant(const Line& line) { return is_tenants(line.cause); }

/// What facts that nobody gave could still make of it: nothing, if someone else may have caused it. A tenant's own hand
/// is no open fact (common practice, no source).
void open_to_facts(WearOpinion& opinion, const Line& line) {
  if (!by_the_tenant(line)) opinion.least = Share::none();
}

WearOpinion of_turn(const Turn& turn) {
  WearOpinion opinion = settled(turn.verdict, "reason.turn");
  if (turn.verdict == Verdict::undetermined) opinion = {};
  opinion.reason = "reason.turn";
  opinion.turn = &turn;
  return opinion;
}

WearOpinion weighed(Verdict verdict, const Weight& weight, std::string_view reason) {
  return {verdict, weight.least, weight.likely, weight.most, reason};
}

/// A finding that a fact could turn, by its lean in rules/wear/catalogue.json and the weights. A charge that names no
/// fault is no verdict of wear: it has to say what was wrong.
WearOpinion leaning(const Finding& finding, const Weights& weights) {
  WearOpinion opinion;
  if (!finding.names_fault) {
    opinion = weighed(Verdict::undetermined, weights[Ground::unnamed], "reason.no-fault-named");
  } else {
    switch (finding.lean) {
    case Lean::wear:
      opinion = weighed(Verdict::ordinary_wear, weights[Ground::leans_wear], "reason.leans-wear");
      break;
    case Lean::damage:
      opinion = weighed(Verdict::chargeable_damage, weights[Ground::leans_damage], "reason.leans-damage");
      break;
    case Lean::even:
      opinion = weighed(Verdict::undetermined, weights[Ground::even], "reason.depends");
    }
  }
  opinion.finding_open = true;
  return opinion;
}

/// The same of a debt: rules/wear/weights.json.
WearOpinion leaning_debt(Lean lean, bool names_fault, const Weights& weights) {
  WearOpinion opinion;
  if (lean == Lean::wear)
    opinion = weighed(Verdict::undetermined, weights[Ground::debt_doubtful], "reason.debt-doubtful");
  else if (lean == Lean::damage)
    opinion = weighed(Verdict::undetermined, weights[Ground::debt_likely], "reason.debt-likely");
  else if (!names_fault) opinion = weighed(Verdict::undetermined, weights[Ground::unnamed], "reason.debt-unnamed");
  else opinion = weighed(Verdict::undetermined, weights[Ground::debt_open], "reason.debt-open");
  opinion.finding_open = true;
  return opinion;
}

/// Rent, fees, bills: owed or not, never worn. What the lease provides for is owed more often than what it does not
/// (common practice, no source; its weights are rules/wear/weights.json).
WearOpinion judge_debt(const Line& line, const Element& element, const Finding* finding, const Weights& weights) {
  WearOpinion opinion;
  if (line.in_lease == Tri::no && line.kind != ChargeKind::rent) {
    opinion = settled(Verdict::non_damage_charge, "reason.not-in-lease");
  } else if (line.cause == ChargeCause::tenant) {
    opinion = settled(Verdict::chargeable_damage, "reason.owed");
  } else if (!finding) {
    opinion = leaning_debt(Lean::even, false, weights);
  } else if (finding->by_hours && line.hours && line.hourly_rate) {
    opinion = leaning_debt(Lean::damage, true, weights);
  } else {
    const bool agreed = line.in_lease == Tri::yes && finding->lean_in_lease;
    opinion = leaning_debt(agreed ? *finding->lean_in_lease : finding->lean, agreed || finding->names_fault, weights);
    if (agreed) opinion.reason = *finding->lean_in_lease == Lean::damage ? "reason.debt-in-lease" : opinion.reason;
  }
  opinion.verdict = Verdict::non_damage_charge;
  // A sum that names nothing is not even known to be a debt.
  if (element.kind == ChargeKind::other && finding && !finding->names_fault && !opinion.certain()) {
    opinion = weighed(Verdict::undetermined, weights[Ground::unnamed], "reason.nothing-named");
    opinion.finding_open = opinion.rests_on_nothing = true;
  }
  return opinion;
}

/// Work without a fault: the lease may provide for cleaning at the end, and then it is owed where the law lets it; work
/// that the lease does not ask for and that names no fault is upkeep. Common practice, held against decided lines
/// (rules/wear/weights.json).
std::optional<WearOpinion> by_clause(const Line& line, const Finding& finding, const Weights& weights) {
  if (finding.names_fault || !line.in_lease.known()) return std::nullopt;
  if (!line.in_lease.known_yes())
    return weighed(Verdict::ordinary_wear, weights[Ground::leans_wear], "reason.no-clause");
  if (line.kind != ChargeKind::cleaning) return std::nullopt;
  return weighed(Verdict::chargeable_damage, weights[Ground::leans_damage], "reason.cleaning-clause");
}

/// What was there when the tenant came is not the tenant's (common practice, no source).
std::optional<WearOpinion> by_move_in_record(const Line& line) {
  if (line.at_move_in == "same" || line.at_move_in == "damaged")
    return settled(Verdict::pre_existing, "reason.pre-existing");
  if (line.at_move_in == "dirty" && line.kind == ChargeKind::cleaning)
    return settled(Verdict::pre_existing, "reason.already-dirty");
  return std::nullopt;
}

/// Who did it, where the case says so: age is wear, another's hand is the landlord's to settle, and the tenant's own
/// hand makes damage of what could be either (common practice, no source).
std::optional<WearOpinion> by_cause(const Line& line, Usual usual) {
  if (line.cause == ChargeCause::age) return settled(Verdict::ordinary_wear, "reason.cause-age");
  if (line.cause != ChargeCause::unknown && !by_the_tenant(line))
    return settled(Verdict::landlord_responsibility, "reason.cause-not-tenant");
  if (by_the_tenant(line) && usual == Usual::depends) return settled(Verdict::chargeable_damage, "reason.cause-tenant");
  return std::nullopt;
}

/// Marks that come little by little, on a thing that was worn at the start or is past its life: nothing tells the new
/// from the old, and a new surface was due. Not where the tenant's own hand is known. Common practice, held against
/// decided lines (rules/wear/weights.json, worn-before).
std::optional<WearOpinion> by_state(const Line& line, const Finding& finding, const Stay& stay,
                                    const Weights& weights) {
  if (!finding.gradual || finding.usual == Usual::wear || by_the_tenant(line)) return std::nullopt;
  if (line.at_move_in == "worn")
    return weighed(Verdict::ordinary_wear, weights[Ground::worn_before], "reason.worn-before");
  if (stay.past_life == Tri::yes)
    return weighed(Verdict::ordinary_wear, weights[Ground::worn_before], "reason.worn-out");
  return std::nullopt;
}

/// The usual verdict of the finding, which a source that says otherwise leaves open (rules/wear/catalogue.json).
WearOpinion by_guide(const Finding& finding, const Weights& weights) {
  if (finding.usual == Usual::depends) return leaning(finding, weights);
  const bool wear = finding.usual == Usual::wear;
  WearOpinion opinion = settled(wear ? Verdict::ordinary_wear : Verdict::chargeable_damage,
                                wear ? "reason.guide-wear" : "reason.guide-damage");
  for (const Conflict& conflict : finding.conflicts) {
    if (conflict.verdict == Verdict::chargeable_damage && wear) opinion.most = Share::whole();
    if (conflict.verdict == Verdict::ordinary_wear && !wear) opinion.least = Share::none();
  }
  return opinion;
}

} // namespace

std::string_view name_of(Verdict verdict) {
  switch (verdict) {
  case Verdict::ordinary_wear:
    return "ordinary-wear";
  case Verdict::chargeable_damage:
    return "chargeable-damage";
  case Verdict::landlord_responsibility:
    return "landlord-responsibility";
  case Verdict::pre_existing:
    return "pre-existing";
  case Verdict::barred:
    return "barred";
  case Verdict::non_damage_charge:
    return "non-damage-charge";
  case Verdict::undetermined:
    break;
  }
  return "undetermined";
}

const Finding* Element::finding(std::string_view wanted) const {
  for (const Finding& f : findings)
    if (f.id == wanted) return &f;
  return nullptr;
}

WearOpinion judge_wear(const Line& line, const Element* element, const Finding* finding, const Stay& stay,
                       const Weights& weights) {
  WearOpinion opinion;
  if (element && !element->about_condition) {
    opinion = judge_debt(line, *element, finding, weights);
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
  // Both had a hand in it: they share (mold: airing and the building).
  const bool shared = !line.landlord_factors.empty() && by_the_tenant(line);
  const bool landlord_turn = turn && turn->verdict == Verdict::landlord_responsibility;
  if (shared && !(landlord_turn && turn->test.causes.empty() && turn->test.landlord_factors.empty())) {
    opinion = weighed(Verdict::chargeable_damage, weights[Ground::shared_causes], "reason.shared-causes");
    opinion.finding_open = true;
  } else if (landlord_turn) {
    opinion = of_turn(*turn);
  } else if (!line.landlord_factors.empty()) {
    // The landlord's own upkeep is named but the guide knows no direct link: their side, yet not beyond doubt.
    opinion = weighed(Verdict::landlord_responsibility, weights[Ground::landlord_factor], "reason.landlord-factor");
  } else if (!element) {
    // What cannot be named cannot be priced, whoever did it.
    opinion = weighed(Verdict::undetermined, weights[Ground::unnamed], "reason.nothing-named");
    opinion.finding_open = opinion.rests_on_nothing = true;
  } else if (const auto caused = by_cause(line, finding ? finding->usual : Usual::depends);
             // A turn outweighs the tenant's own hand: a light mark is wear whoever made it.
             caused && !(turn && (!turn->test.causes.empty() || caused->verdict == Verdict::chargeable_damage))) {
    opinion = *caused;
  } else if (turn && turn->verdict == Verdict::ordinary_wear) {
    opinion = of_turn(*turn);
  } else if (const auto worn = finding ? by_state(line, *finding, stay, weights) : std::nullopt) {
    opinion = *worn;
  } else if (turn) {
    opinion = of_turn(*turn);
    // What shows that it is damage does not show whose it is.
    if (turn->verdict == Verdict::chargeable_damage && !by_the_tenant(line)) opinion.least = Share::none();
    opinion.finding_open = !opinion.certain();
  } else if (const auto agreed = finding ? by_clause(line, *finding, weights) : std::nullopt) {
    opinion = *agreed;
    opinion.finding_open = true;
  } else if (finding) {
    opinion = by_guide(*finding, weights);
    open_to_facts(opinion, line);
    opinion.finding_open = !opinion.certain();
  } else {
    opinion = weighed(Verdict::undetermined, weights[Ground::unnamed], "reason.nothing-named");
    opinion.finding_open = true;
  }
  opinion.finding = finding;
  return opinion;
}

void WearOpinion::cap(const Weight& weight) {
  least = std::min(least, weight.least);
  likely = std::min(likely, weight.likely);
  most = std::min(most, weight.most);
}

void WearOpinion::span(const WearOpinion& other) {
  least = std::min(least, other.least);
  most = std::max(most, other.most);
}

namespace {

bool any_of(const std::vector<std::string>& documents, const std::vector<std::string>& among_these) {
  return std::any_of(documents.begin(), documents.end(), [&](const std::string& p) { return among(among_these, p); });
}

/// One of the weight's documents is known to be missing, and none of them came.
bool documents_missing(const Weight& weight, const Line& line) {
  return any_of(line.proof_missing, weight.documents) && !any_of(line.proof, weight.documents);
}

bool touches(const Weight& weight, const Line& line) { return !among(weight.not_for, line.kind); }

void not_shown(WearOpinion& opinion, const Weight& weight, std::string_view reason) {
  opinion.cap(weight);
  if (opinion.verdict == Verdict::chargeable_damage) opinion.verdict = Verdict::undetermined;
  if (opinion.verdict == Verdict::undetermined || opinion.verdict == Verdict::non_damage_charge)
    opinion.reason = reason;
}

} // namespace

void weigh_proof(WearOpinion& opinion, const Line& line, const Stay& stay, const Weights& weights) {
  if (opinion.most == Share::none()) return;
  const bool about_condition = opinion.verdict != Verdict::non_damage_charge;
  const bool undisputed = by_the_tenant(line);
  // Cost first, so that the graver lack names the reason.
  const bool own_hours = line.hours && line.hourly_rate;
  const Weight& cost = weights[Ground::cost_not_shown];
  const bool agreed = !about_condition && undisputed; // a debt the tenant does not dispute needs no bill
  if (documents_missing(cost, line) && touches(cost, line) && !own_hours && !agreed)
    not_shown(opinion, cost, "reason.cost-not-shown");
  if (!about_condition) return;
  // What cleaning and hauling may cost is open until a bill or the hours show it: deciders often allow a reasonable
  // sum.
  const Weight& open = weights[Ground::cost_open];
  if ((line.kind == ChargeKind::cleaning || line.kind == ChargeKind::disposal) &&
      opinion.verdict == Verdict::chargeable_damage && !own_hours && !any_of(line.proof, open.documents)) {
    opinion.cap(open);
    opinion.cost_open = true;
  }
  const bool estimated = !any_of(line.proof_missing, cost.documents) && any_of(line.proof, cost.documents);
  if (line.work_done == Tri::no && !estimated) opinion.cap(weights[Ground::work_not_done]);
  if (undisputed) return;
  const Weight& baseline = weights[Ground::no_baseline];
  const bool nothing_to_compare = (stay.nothing_recorded && line.at_move_in.empty()) ||
                                  line.at_move_in == "not-recorded" || documents_missing(baseline, line);
  if (nothing_to_compare && touches(baseline, line)) not_shown(opinion, baseline, "reason.no-baseline");
  if (line.on_move_out_record == Tri::no) not_shown(opinion, weights[Ground::not_on_record], "reason.not-on-record");
  const Weight& shown = weights[Ground::not_shown];
  if (documents_missing(shown, line) || (stay.nothing_shown && !any_of(line.proof, shown.documents)))
    not_shown(opinion, shown, "reason.not-shown");
}

} // namespace wearline
