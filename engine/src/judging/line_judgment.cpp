#include "judging/line_judgment.h"

#include "judging/charge_plan.h"

#include <algorithm>

namespace wearline {

namespace {

/// The class of lives of the thing, or of the part of it that the finding is about.
std::string_view life_class_of(const Subject& subject) {
  if (subject.finding && !subject.finding->life_class.empty()) return subject.finding->life_class;
  return subject.element ? std::string_view(subject.element->life_class) : std::string_view();
}

/// Cleaning, hauling away and mending undo what this tenancy left: whatever thing they name, they never age (common
/// practice, no source; rules/lives, `parts`).
bool undoes(const Line& line) {
  return line.kind == ChargeKind::cleaning || line.kind == ChargeKind::disposal ||
         line.remedy == ChargeRemedy::repair || line.remedy == ChargeRemedy::clean ||
         line.remedy == ChargeRemedy::dispose;
}

/// Whether the charge renews a thing whose age counts.
bool renews(const Line& line, const Subject& subject) {
  if (undoes(line)) return false;
  // A life given by the person makes any replacement age.
  if (life_class_of(subject).empty()) return line.life_months.has_value();
  // Keys, a remote, a battery: what is new is not the thing whose life the tables give (common practice, no source).
  if (subject.finding && !subject.finding->depreciates && subject.finding->remedy == ChargeRemedy::none) return false;
  if (line.remedy == ChargeRemedy::replace || !subject.finding) return true;
  return subject.finding->depreciates ||
         ((line.life_months || line.installed) && subject.finding->remedy == ChargeRemedy::replace);
}

ChargePlan plan_of(const Line& line, Money charged, bool depreciates, const Subject& subject, const LifeTables& lives) {
  ChargePlan plan;
  plan.parts_given = !line.parts.empty();
  Money rest = charged;
  for (const Part& part : line.parts) {
    const PartRule* rule = lives.part(part.component);
    Piece piece{part.amount, part.component, depreciates, true, false};
    if (rule) {
      piece.depreciates = depreciates && rule->depreciates == PartRule::Depreciates::yes;
      piece.by_area = rule->by_area;
      piece.with_the_whole = rule->depreciates == PartRule::Depreciates::with_the_whole;
      piece.doubtful = rule->doubtful;
    }
    if (part.component == CostComponent::labor) {
      piece.depreciates = depreciates && line.labor_depreciates.yes_or(subject.labor_depreciates);
      piece.may_not_depreciate = piece.depreciates && !line.labor_depreciates.known() && !subject.labor_settled;
    }
    if (part.depreciates.known()) {
      piece.depreciates = part.depreciates.known_yes();
      piece.with_the_whole = piece.may_not_depreciate = false;
    }
    plan.add(piece);
    rest -= part.amount;
  }
  if (rest > Money()) plan.add({rest, CostComponent::other, depreciates, true, false});
  return plan;
}

/// The damaged share of what was charged.
struct Area {
  Share low = Share::whole(), likely = Share::whole(), high = Share::whole();
  bool known = false, open = false, matching = false;
  bool matching_barred = false; ///< matching could be argued, were it not for the law
};

/// Only what was damaged is paid for, up to the natural edge of a repair (the guide's repairable area; the law where it
/// speaks of the damaged portion). A count of marks is no area: fifty-five nail holes are one wall.
Area area_of(const Line& line, const Subject& subject, Tri damaged_portion_only) {
  Area area;
  if (!line.charged || line.charged->thousandths == 0) return area;
  const std::int64_t charged = line.charged->thousandths;
  const std::string_view repairable_area =
      subject.element ? std::string_view(subject.element->repairable_area_unit) : std::string_view();
  if (line.damaged && line.damaged->unit == line.charged->unit) {
    area.known = true;
    area.low = area.likely = area.high = Share{line.damaged->thousandths, charged};
    // Matching the undamaged rest can be argued inside a repairable area, never across it.
    if (!repairable_area.empty() && repairable_area != line.charged->unit && area.likely < Share::whole()) {
      area.matching = damaged_portion_only != Tri::yes;
      area.matching_barred = !area.matching;
      if (area.matching) area.high = Share::whole();
    }
    return area;
  }
  const bool counts_places =
      line.charged->unit == repairable_area || line.charged->unit == "room" || line.charged->unit == "wall";
  if (!line.damaged && charged > 1000 && !repairable_area.empty() && counts_places) {
    area.open = true;
    area.low = Share{1000, charged};
  }
  return area;
}

Age months_of(Life life) { return Age::of(life.months); }

const ConditionRule* condition_of(const Line& line, const LifeTables& lives) {
  for (const ConditionRule& rule : lives.conditions)
    if (rule.at_move_in == line.at_move_in) return &rule;
  return nullptr;
}

AgeDates age_dates_of(const Line& line, const TenancyFacts& tenancy) {
  AgeDates age_dates;
  age_dates.move_in = tenancy.move_in;
  age_dates.move_out = tenancy.move_out;
  age_dates.installed = line.installed;
  if (!line.installed && line.at_move_in == "new" && tenancy.move_in) {
    age_dates.installed = tenancy.move_in;
    age_dates.from_move_in = true;
  }
  return age_dates;
}

std::optional<Range<Months>> age_months(const AgeDates& age_dates) {
  const auto months = [](Day from, Day to) { return std::max(Months(), whole_months(from, to)); };
  if (age_dates.installed) {
    const Months least = months(age_dates.installed->latest, age_dates.move_out.earliest),
                 most = months(age_dates.installed->earliest, age_dates.move_out.latest);
    return Range<Months>(
        least, least == most ? least : months(age_dates.installed->likely(), age_dates.move_out.likely()), most);
  }
  if (age_dates.move_in) {
    const Months least = months(age_dates.move_in->latest, age_dates.move_out.earliest);
    return Range<Months>(least, least, longest_age);
  }
  return std::nullopt;
}

MethodChoice methods_of(const Line& line, std::string_view life_class, std::string_view place, const LifeTables& lives,
                        bool life_given) {
  MethodChoice choice;
  if (!line.method.empty()) {
    choice.likely = lives.method(line.method);
    if (choice.likely) return choice;
  }
  for (const DepreciationMethod& m : lives.methods) {
    if (m.use == DepreciationMethod::Use::by_default && !choice.likely) choice.likely = &m;
    else if (m.use == DepreciationMethod::Use::in_region && !life_given && covers(m, life_class) &&
             LifeTables::inside(place, m.region) && choice.count < 4)
      choice.also[choice.count++] = &m;
  }
  // A region's official way comes first where it has one; the others widen the answer.
  if (choice.count > 0) std::swap(choice.likely, choice.also[0]);
  return choice;
}

/// The share of the value that remains by the likely method, widened by the others of the place.
ShareRange remaining_of(const MethodChoice& choice, std::string_view life_class, const Line& line,
                        const LifeChoice& life, const AgeDates& age_dates) {
  ShareRange remaining = remaining_share(*choice.likely, life_class, line.quality, life.life, age_dates);
  for (int i = 0; i < choice.count; ++i) {
    const ShareRange other = remaining_share(*choice.also[i], life_class, line.quality, life.life, age_dates);
    if (other.low < remaining.low) remaining.low = other.low;
    if (remaining.high < other.high) remaining.high = other.high;
  }
  return remaining;
}

/// A small mark on a thing that still works seldom pays for a new one: the least is a sum for the mark.
bool is_small_mark(const Line& line, const Subject& subject) {
  return subject.finding && subject.finding->small_mark && !line.repair_price && line.severity != "heavy" &&
         !undoes(line) && !line.charged;
}

/// A clause that asks for cleaning at the end decides only where the law of the place lets it (`clause` of an allow);
/// elsewhere only what was needed counts, as if nothing had been agreed.
void hold_to_law(WearOpinion& opinion, const Line& line, const LineLawBook& law, const Weights& weights) {
  if (opinion.reason != "reason.cleaning-clause" || law.lets_clause_decide(line) == Tri::yes) return;
  const Weight& unnamed = weights[Ground::unnamed];
  opinion.verdict = Verdict::undetermined;
  opinion.least = unnamed.least;
  opinion.likely = unnamed.likely;
  opinion.most = unnamed.most;
  opinion.reason = "reason.clause-not-enough";
}

/// The opinion on what is known for certain; where a longer stay or a thing perhaps past its life would turn the
/// finding, it spans both.
WearOpinion opinion_of(const Line& line, const Subject& subject, Stay stay, bool perhaps_worn, const Weights& weights) {
  WearOpinion opinion = judge_wear(line, subject.element, subject.finding, stay, weights);
  // "Cracked" says what was wrong with a thing that the guide knows no cracks of: the sum is as open, the reason is
  // not.
  if (subject.harm_named && (opinion.reason == "reason.no-fault-named" || opinion.reason == "reason.nothing-named"))
    opinion.reason = "reason.depends";
  if (!subject.finding) return opinion;
  const auto span = [&] { opinion.span(judge_wear(line, subject.element, subject.finding, stay, weights)); };
  const bool longer =
      subject.finding->turns_on_stay && stay.months_most && (!stay.months || *stay.months < *stay.months_most);
  const bool worn = (subject.finding->turns_on_life || subject.finding->gradual) && perhaps_worn;
  if (worn) {
    stay.past_life = true;
    span();
  }
  if (longer) {
    stay.months = stay.months_most;
    span();
    if (worn) {
      stay.past_life = Tri::unknown;
      span();
    }
  }
  return opinion;
}

/// A claim for money that the law lets be made whatever the state of the home.
WearOpinion granted_by_law() {
  WearOpinion opinion;
  opinion.verdict = Verdict::non_damage_charge;
  opinion.least = opinion.likely = opinion.most = Share::whole();
  opinion.reason = "reason.law-grants";
  return opinion;
}

/// A line on its way through the steps: what is known so far, and the sum as it stands.
struct Draft {
  const Line& line;
  const Subject& subject;
  const LineContext& context;
  LineResult result;
  AgeDates age_dates;
  Stay stay;
  Range<Money> sum;    ///< what the last step left
  Range<Money> worked; ///< what the work can have cost
  Money base;          ///< what worth is worked out from
  ChargePlan plan;
  Area area;
  bool like_kind_open = false; ///< better than what was there, and what the like of that costs is not known

  bool about_condition() const { return result.verdict != Verdict::non_damage_charge; }
  /// Where the tenant answers for nothing, the worth of the thing is nobody's concern.
  bool answers_for_nothing() const { return result.opinion.most == Share::none(); }
};

/// The record of a step: it moved the sum from `from` to the draft's.
Step moved(std::string_view code, Money from, const Range<Money>& to) {
  Step step;
  step.code = code;
  step.from = from;
  step.to = to.likely();
  step.low = to.low();
  step.high = to.high();
  return step;
}

using Record = std::optional<Step>;

/// Wear, damage, the landlord's responsibility or there before: by rules/wear (judge_wear, weigh_proof). What the law
/// lets be claimed whatever the state of the home, the pack names the statute of.
Record weigh_wear(Draft& d) {
  d.age_dates = age_dates_of(d.line, *d.context.tenancy);
  LineResult& r = d.result;
  const auto months = age_months(d.age_dates);
  r.age_months = months;
  r.depreciates = renews(d.line, d.subject) && d.subject.life.from != LifeChoice::From::none;
  d.stay = d.context.tenancy->stay;
  if (r.depreciates && months) {
    if (months->low() >= d.subject.life.life.high().months) d.stay.past_life = true;
    else if (months->high() < d.subject.life.life.low().months) d.stay.past_life = false;
  }
  const bool perhaps_worn =
      !d.stay.past_life.known() && r.depreciates && months && months->high() >= d.subject.life.life.high().months;
  r.opinion = opinion_of(d.line, d.subject, d.stay, perhaps_worn, *d.context.weights);
  // A fault that was only read from the words may be more than wear.
  if (d.subject.confidence < 100 && r.opinion.verdict == Verdict::ordinary_wear && d.line.cause != ChargeCause::age) {
    r.opinion.most = Share::whole();
    r.opinion.finding_open = true;
  }
  if (d.context.law) hold_to_law(r.opinion, d.line, *d.context.law, *d.context.weights);
  weigh_proof(r.opinion, d.line, d.stay, *d.context.weights);
  if (d.context.law && d.context.law->grants(d.line) == Tri::yes) r.opinion = granted_by_law();
  r.verdict = r.opinion.verdict;
  return std::nullopt;
}

/// What the law of the place says of the line, each rule with its statute in the pack; asked once, its answer is the
/// one shown. What only leans to wear does not yet meet a rule about wear.
Record ask_law(Draft& d) {
  const WearOpinion& opinion = d.result.opinion;
  const bool by_guide = d.subject.finding && d.subject.finding->usual == Usual::wear && !opinion.turn;
  const bool leans = opinion.verdict == Verdict::ordinary_wear && !opinion.certain() && !by_guide;
  d.result.asked = {leans ? Verdict::undetermined : d.result.verdict, d.result.age_months, d.result.depreciates};
  if (d.context.law) d.result.law = d.context.law->of(d.line, d.result.asked);
  return std::nullopt;
}

/// Where facts leave it open, what adjudicators most often allowed in such lines (rules/precedents; README there). A
/// line that nothing names has no middle.
Record usual_outcome(Draft& d) {
  WearOpinion& opinion = d.result.opinion;
  const bool open = opinion.verdict == Verdict::undetermined || opinion.reason == "reason.debt-open";
  if (!open || opinion.certain() || opinion.rests_on_nothing || !d.context.precedents) return std::nullopt;
  if (d.context.precedents->empty()) return std::nullopt;
  if (const auto share = d.context.precedents->likely(d.line, d.subject, d.context.without_decision))
    opinion.likely = std::clamp(*share, opinion.least, opinion.most);
  else opinion.rests_on_nothing = true;
  return std::nullopt;
}

/// What the hours come to at a rate, with the parts that are no work.
Money hours_at(Money rate, const Line& line) {
  Money sum = rate.part({line.hours->thousandths, 1000});
  for (const Part& part : line.parts)
    if (part.component != CostComponent::labor && part.component != CostComponent::repair_labor &&
        part.component != CostComponent::cleaning)
      sum += part.amount;
  return sum;
}

/// Work the landlord did: hours times rate is the most it can come to (common practice, no source).
Record own_hours(Draft& d) {
  const Money charged = d.result.claimed;
  d.worked = d.sum = charged;
  if (!d.line.hours || !d.line.hourly_rate) return std::nullopt;
  d.worked = d.sum = std::min(hours_at(*d.line.hourly_rate, d.line), charged);
  if (d.sum.high() == charged) return std::nullopt;
  Step step = moved("own-labor", charged, d.sum);
  step.part = *d.line.hours;
  return step;
}

/// An hour above what practice pays is likely cut to that (rules/lives, `labourRates`).
Record own_rate(Draft& d) {
  if (!d.line.hours || !d.line.hourly_rate) return std::nullopt;
  const LaborRate* usual = d.context.lives->labor_rate(d.context.place, d.line.kind == ChargeKind::cleaning);
  if (!usual || *d.line.hourly_rate <= usual->most) return std::nullopt;
  const Money most = d.worked.high(), likely = std::min(hours_at(usual->most, d.line), most);
  d.worked = d.sum = Range<Money>(likely, likely, most);
  if (likely == most) return std::nullopt;
  Step step = moved("own-rate-high", most, d.sum);
  step.part = *d.line.hours;
  step.sources = usual->sources;
  return step;
}

/// Rent is no more than that of the days it is charged for (rent_for_period). Days that nobody paid are owed; rent for
/// another reason (notice not given, a home not let again) is owed only if that reason holds. Common practice, no
/// source.
Record rent_by_days(Draft& d) {
  const bool by_days = d.subject.finding ? d.subject.finding->by_days : d.line.kind == ChargeKind::rent;
  const auto owed = by_days ? rent_for_period(d.line, *d.context.tenancy) : std::nullopt;
  if (!owed) return std::nullopt;
  const Money before = d.sum.likely();
  d.sum = owed->capped(d.result.claimed);
  const bool unpaid_days =
      d.context.tenancy->rent_paid_through && (!d.subject.finding || d.subject.finding->lean == Lean::damage);
  if (unpaid_days || d.sum.high().is_zero()) {
    d.result.rent_settled = true;
    d.result.opinion.least = d.result.opinion.likely = d.result.opinion.most = Share::whole();
    d.result.opinion.reason = d.sum.high().is_zero() ? "reason.rent-paid" : "reason.rent-by-day";
  }
  return moved("rent-by-day", before, d.sum);
}

/// What the sum is worked out from. A price that is lower than the charge bounds it; a higher one is what age is taken
/// off: a landlord who charges less than the price has already taken something off, and it must not be taken off twice
/// (Ontario Landlord and Tenant Board, 2018 CanLII 141442).
Record price_of_new(Draft& d) {
  const Money charged = d.worked.high();
  d.base = charged;
  const auto& price_new = d.line.price_new;
  const bool better = d.line.betterment == Tri::yes && !undoes(d.line);
  d.like_kind_open = better && !price_new && !charged.is_zero();
  if (better && price_new && *price_new < charged && !d.result.depreciates) {
    d.base = *price_new;
    d.plan = plan_of(d.line, d.result.claimed, false, d.subject, *d.context.lives);
    d.plan.scale(d.result.claimed, d.base);
    return moved("like-kind", charged, d.base);
  }
  const bool counts =
      price_new && d.result.depreciates && *price_new != charged && !(*price_new > charged && !d.line.parts.empty());
  if (counts) d.base = *price_new;
  d.plan = plan_of(d.line, d.result.claimed, d.result.depreciates, d.subject, *d.context.lives);
  d.plan.scale(d.result.claimed, d.base);
  if (d.like_kind_open) return moved("like-kind-unknown", charged, Range<Money>(Money(), charged, charged));
  if (!counts) return std::nullopt;
  return moved(*price_new > charged ? "replacement-cost-above-charge"
               : better             ? "like-kind"
                                    : "replacement-cost",
               charged, d.base);
}

Range<Money> priced(const ChargePlan& plan, const Area& area, const ShareRange& remaining) {
  return {price(plan, area.low, remaining.low, End::least), price(plan, area.likely, remaining.likely, End::likely),
          price(plan, area.high, remaining.high, End::most)};
}

/// Only the damaged part: up to the repairable area of the guide (rules/wear; area_of), or as far as the law speaks of
/// the damaged portion, with its statute in the pack.
Record damaged_part(Draft& d) {
  const Tri portion_only = d.result.law.damaged_portion_only;
  d.area = area_of(d.line, d.subject, portion_only);
  d.result.area_open = d.area.open;
  d.sum = priced(d.plan, d.area, {Share::whole(), Share::whole(), Share::whole()});
  if (!d.line.charged || !(d.area.known || d.area.open)) return std::nullopt;
  if (d.area.known && d.area.likely == Share::whole()) return std::nullopt;
  Step step = moved(d.area.open                                          ? "area-unknown"
                    : d.area.matching                                    ? "area-share-matching"
                    : d.area.matching_barred && portion_only == Tri::yes ? "area-share-no-matching"
                                                                         : "area-share",
                    d.base, d.sum);
  step.share = d.area.likely;
  step.whole = *d.line.charged;
  if (d.line.damaged) step.part = *d.line.damaged;
  if (d.subject.element) step.said = &d.subject.element->repairable_area_text;
  return step;
}

/// What age left of the worth: the published lives and methods of rules/lives, each with its source in the record.
Record by_remaining_share(Draft& d) {
  LineResult& r = d.result;
  if (!r.depreciates || !d.subject.methods.likely) return std::nullopt;
  const DepreciationMethod& method = *d.subject.methods.likely;
  const LifeChoice& life = d.subject.life;
  const Money before = d.sum.likely();
  const bool banded = method.kind == DepreciationMethod::Kind::stay_bands;
  r.method = &method;
  r.remaining = remaining_of(d.subject.methods, life_class_of(d.subject), d.line, life, d.age_dates);
  r.age_from_move_in = d.age_dates.from_move_in;
  r.age_open = !banded && (!d.age_dates.installed || !d.age_dates.installed->known());
  d.sum = priced(d.plan, d.area, r.remaining);
  Step step = moved(banded                     ? "share-by-stay"
                    : !d.age_dates.installed   ? "age-unknown"
                    : d.age_dates.from_move_in ? "age-from-move-in"
                                               : "remaining-share",
                    before, d.sum);
  step.share = r.remaining.likely;
  step.life_low = months_of(life.life.low());
  step.life = months_of(life.life.likely());
  step.life_high = months_of(life.life.high());
  if (banded && d.age_dates.move_in)
    step.age = age_between(d.age_dates.move_in->likely(), d.age_dates.move_out.likely());
  else if (d.age_dates.installed)
    step.age = age_between(d.age_dates.installed->likely(), method.age_at_move_in && d.age_dates.move_in
                                                                ? d.age_dates.move_in->likely()
                                                                : d.age_dates.move_out.likely());
  step.said = banded ? &method.text : life.why;
  step.sources = life.sources;
  for (const Reference* s : method.sources)
    if (banded || !method.region.empty()) step.sources.push_back(s);
  return step;
}

/// A quality that no table of rules/lives tells apart is said, not dropped.
Record quality_untold(Draft& d) {
  if (!d.result.method || !d.subject.life.quality_untold) return std::nullopt;
  return moved("quality-untold", d.sum.likely(), d.sum);
}

/// The state at move-in lowers what was lost (rules/lives, `conditions`). A home is cleaned back to what it was, not
/// beyond: by the same shares (common practice, no source).
Record state_at_move_in(Draft& d) {
  const bool cleaning = d.line.kind == ChargeKind::cleaning;
  if (!d.result.depreciates && !cleaning) return std::nullopt;
  const ConditionRule* rule = condition_of(d.line, *d.context.lives);
  if (!rule) return std::nullopt;
  const Money before = d.sum.likely();
  d.sum = Range<Money>(d.sum.low().part(rule->least), d.sum.likely().part(rule->likely), d.sum.high().part(rule->most));
  Step step = moved(d.result.depreciates ? "condition-at-move-in" : "clean-as-before", before, d.sum);
  if (d.result.depreciates) step.sources = rule->sources;
  return step;
}

/// A small mark on a thing that still works: the least is a sum for the mark (rules/wear/weights.json, small-mark).
Record mark_only(Draft& d) {
  if (!d.result.depreciates || !is_small_mark(d.line, d.subject)) return std::nullopt;
  const Weight& mark = (*d.context.weights)[Ground::small_mark];
  const Money before = d.sum.likely();
  d.sum = Range<Money>(d.sum.low().part(mark.least), d.sum.likely(), d.sum.high());
  d.result.repair_open = true;
  if (d.sum.high().is_zero()) return std::nullopt;
  Step step = moved("small-mark", before, d.sum);
  step.sources = mark.sources;
  return step;
}

/// Why nothing was taken off for age: cleaning and mending never age (rules/lives, `parts`).
Record not_depreciated(Draft& d) {
  const bool told = !d.result.depreciates && d.subject.element && d.subject.element->about_condition &&
                    d.line.kind != ChargeKind::keys && d.line.kind != ChargeKind::disposal &&
                    !(d.line.kind == ChargeKind::cleaning && condition_of(d.line, *d.context.lives));
  if (!told) return std::nullopt;
  return moved(d.line.kind == ChargeKind::cleaning      ? "cleaning-not-depreciated"
               : d.line.remedy == ChargeRemedy::dispose ? "disposal-not-depreciated"
                                                        : "repair-not-depreciated",
               d.sum.likely(), d.sum);
}

/// The cheaper sound remedy (common practice, no source).
Record cheaper_repair(Draft& d) {
  if (!d.line.repair_price || *d.line.repair_price >= d.sum.high()) return std::nullopt;
  const Money before = d.sum.likely();
  d.sum = d.sum.capped(*d.line.repair_price);
  return moved("repair-cheaper", before, d.sum);
}

/// Never more than was charged, nor than the hours come to (common practice, no source).
Record never_above_charge(Draft& d) {
  const Money before = d.sum.likely();
  d.sum = d.sum.capped(d.result.claimed);
  const bool told = d.base > d.result.claimed && before > d.result.claimed;
  d.sum = {std::min(d.sum.low(), d.worked.low()), std::min(d.sum.likely(), d.worked.likely()), d.sum.high()};
  if (!told) return std::nullopt;
  return moved("never-above-charge", before, d.sum.capped(d.result.claimed));
}

void say_reason(Step& step, const WearOpinion& opinion) {
  if (opinion.turn) {
    step.said = &opinion.turn->text;
    step.sources = opinion.turn->sources;
  } else if (opinion.finding) {
    step.sources = opinion.finding->sources;
  }
}

/// How far the tenant answers for the worth: the opinion of weigh_wear, by rules/wear, perhaps with the middle of
/// rules/precedents.
Record liability(Draft& d) {
  const WearOpinion& opinion = d.result.opinion;
  const Money before = d.answers_for_nothing() ? d.result.claimed : d.sum.likely();
  d.result.depreciated_value = d.sum;
  d.sum = {d.sum.low().part(opinion.least), d.sum.likely().part(opinion.likely), d.sum.high().part(opinion.most)};
  // Nothing says how much of the price is for what is better.
  if (d.like_kind_open) d.sum = {Money(), d.sum.likely(), d.sum.high()};
  d.result.fair = d.sum;
  d.result.no_middle =
      ((opinion.rests_on_nothing && !opinion.certain()) || (d.like_kind_open && !d.sum.likely().is_zero())) &&
      !d.sum.exact();
  d.result.like_kind_open = d.like_kind_open && !d.sum.high().is_zero();
  if (d.result.rent_settled) return std::nullopt;
  Step step = moved(opinion.reason, before, d.sum);
  if (d.about_condition()) say_reason(step, opinion);
  return step;
}

/// The limit of such a charge by law, with its statute in the pack.
Record law_limit(Draft& d) {
  const auto& limit = d.result.law.limit;
  if (!limit || *limit >= d.sum.high()) return std::nullopt;
  const Money before = d.sum.likely();
  d.sum = d.result.fair = d.sum.capped(*limit);
  return moved("law-limit", before, d.sum);
}

/// Whether the law lets it be taken at all, with its statute in the pack.
Record law_bar(Draft& d) {
  LineResult& r = d.result;
  const Range<Money> before = d.sum;
  if (r.law.barred == Tri::no) return std::nullopt;
  if (!r.law.barred.known() || (r.law.barred.known_yes() && r.law.barred_as_wear && !r.opinion.certain())) {
    // Wear may not be charged; if it is more than wear, it may.
    d.sum = r.fair = Range<Money>(Money(), before.likely(), before.high());
    // Which rule it is stands beside the line, or once for all lines.
    if (!r.law.barred.known() && before.low().is_zero()) return std::nullopt;
    return moved(r.law.barred.known() ? "law-bars-wear" : "law-perhaps-barred", before.likely(), d.sum);
  }
  d.sum = r.fair = Money();
  r.no_middle = false;
  const bool speaks_already = r.verdict == Verdict::ordinary_wear || r.verdict == Verdict::pre_existing ||
                              r.verdict == Verdict::landlord_responsibility;
  if (!speaks_already) r.verdict = Verdict::barred;
  if (before.high().is_zero()) return std::nullopt;
  return moved("law-barred", before.likely(), d.sum);
}

/// Parts that keep their price, parts that some would keep, and what deciders mostly leave out (rules/lives, `parts`
/// and `labourPolicy`): remarks on the sum, which they do not move.
void say_parts(const Draft& d, std::vector<Step>& out) {
  const LineResult& r = d.result;
  for (std::size_t i = 0; d.plan.parts_given && i < d.plan.count; ++i) {
    const Piece& p = d.plan.pieces[i];
    const PartRule* rule = d.context.lives->part(p.component);
    const Money share = p.by_area ? p.amount.part(d.area.likely) : p.amount;
    const auto say = [&](std::string_view code, const Range<Money>& to) {
      out.push_back(moved(code, p.amount, to));
      if (!rule) return;
      out.back().said = &rule->text;
      out.back().sources = rule->sources;
    };
    if (p.doubtful) say("markup", Range<Money>(Money(), Money(), share));
    else if (r.depreciates && p.may_not_depreciate) {
      const Money aged = share.part(r.remaining.likely);
      if (aged == share) continue;
      out.push_back(moved("labor-may-not-depreciate", share, Range<Money>(aged, aged, share)));
      if (const LaborPolicy* policy = d.context.lives->labor_policy(d.context.place)) {
        out.back().said = &policy->text;
        out.back().sources = policy->sources;
      }
    } else if (r.depreciates && !p.depreciates && !p.with_the_whole)
      say("component-not-depreciated", Range<Money>(share));
  }
}

/// Which lines a step is for, and what of it is told.
enum class For { every, condition, debt };
enum class Stage { opinion, depreciated_value, answer };
struct JudgmentStep {
  Record (*take)(Draft&);
  For lines;
  Stage stage;
};

/// The judgment of a line, in order. Each step reads the draft, moves it, and returns its record.
constexpr JudgmentStep steps_in_order[] = {
    {weigh_wear, For::every, Stage::opinion},
    {usual_outcome, For::every, Stage::opinion},
    {ask_law, For::every, Stage::opinion},
    {own_hours, For::every, Stage::depreciated_value},
    {own_rate, For::every, Stage::depreciated_value},
    {rent_by_days, For::debt, Stage::depreciated_value},
    {price_of_new, For::condition, Stage::depreciated_value},
    {damaged_part, For::condition, Stage::depreciated_value},
    {by_remaining_share, For::condition, Stage::depreciated_value},
    {quality_untold, For::condition, Stage::depreciated_value},
    {state_at_move_in, For::condition, Stage::depreciated_value},
    {mark_only, For::condition, Stage::depreciated_value},
    {not_depreciated, For::condition, Stage::depreciated_value},
    {cheaper_repair, For::condition, Stage::depreciated_value},
    {never_above_charge, For::condition, Stage::depreciated_value},
    {liability, For::every, Stage::answer},
    {law_limit, For::every, Stage::answer},
    {law_bar, For::every, Stage::answer},
};

/// What is wanted of a judgment: all of it; only the fair sum, which is nothing where the tenant answers for nothing;
/// or only the worth of the damage.
enum class Wanted { all, fair, depreciated_value };

LineResult judge(const Line& line, const Subject& subject, const LineContext& context, Wanted wanted,
                 std::vector<Step>* records) {
  Draft d{line, subject, context, {}, {}, {}, {}, {}, {}, {}, {}};
  d.result.claimed = line.amount.value_or(Money());
  d.result.remaining = {Share::whole(), Share::whole(), Share::whole()};
  if (line.credit == Tri::yes) {
    d.result.verdict = Verdict::non_damage_charge;
    d.result.claimed = Money() - d.result.claimed;
    d.result.fair = d.result.depreciated_value = d.result.claimed;
    d.result.opinion = {Verdict::non_damage_charge, Share::whole(), Share::whole(), Share::whole(), "reason.credit"};
    return std::move(d.result);
  }
  for (const JudgmentStep& step : steps_in_order) {
    if (step.lines != For::every && d.about_condition() != (step.lines == For::condition)) continue;
    if (step.stage == Stage::depreciated_value && wanted == Wanted::fair && d.about_condition() &&
        d.answers_for_nothing())
      continue;
    if (step.stage == Stage::answer && wanted == Wanted::depreciated_value) {
      d.result.depreciated_value = d.sum;
      break;
    }
    Record record = step.take(d);
    const bool told =
        records && !(step.stage == Stage::depreciated_value && d.about_condition() && d.answers_for_nothing());
    if (told && record) records->push_back(std::move(*record));
    if (told && step.take == quality_untold) say_parts(d, *records);
  }
  return std::move(d.result);
}

} // namespace

void find_life(Subject& subject, const Line& line, const LineContext& context) {
  const std::string_view life_class = life_class_of(subject);
  std::optional<Life> own_life;
  const Reference* own_source = nullptr;
  if (context.own_lives)
    for (const OwnLife& own : *context.own_lives)
      if (own.life_class == life_class) {
        own_life = own.life;
        own_source = own.source;
      }
  subject.life = choose_life(line, life_class, context.place, *context.lives, own_life, own_source);
  if (subject.life.from != LifeChoice::From::none)
    subject.methods =
        methods_of(line, life_class, context.place, *context.lives, subject.life.from == LifeChoice::From::person);
  if (const LaborPolicy* policy = context.lives->labor_policy(context.place)) {
    subject.labor_depreciates = policy->depreciates;
    subject.labor_settled = policy->settled;
  }
}

LineResult judge_line(const Line& line, const Subject& subject, const LineContext& context, std::vector<Step>* steps) {
  return judge(line, subject, context, Wanted::all, steps);
}

Money likely_fair(const Line& line, const Subject& subject, const LineContext& context) {
  return judge(line, subject, context, Wanted::fair, nullptr).fair.likely();
}

Money likely_depreciated_value(const Line& line, const Subject& subject, const LineContext& context) {
  return judge(line, subject, context, Wanted::depreciated_value, nullptr).depreciated_value.likely();
}

std::vector<MethodFair> by_methods(const Line& line, const Subject& subject, const LineContext& context,
                                   const LineResult& result) {
  std::vector<MethodFair> out;
  if (!result.depreciates || !result.method) return out;
  const std::string_view life_class = life_class_of(subject);
  for (const DepreciationMethod& method : context.lives->methods) {
    if (!covers(method, life_class)) continue;
    if ((method.kind == DepreciationMethod::Kind::stay_bands || method.age_at_move_in) && !context.tenancy->move_in)
      continue;
    Subject by_this = subject;
    by_this.methods = {};
    by_this.methods.likely = &method;
    out.push_back({&method, judge_line(line, by_this, context).fair});
  }
  std::stable_partition(out.begin(), out.end(), [&](const MethodFair& m) { return m.method == result.method; });
  return out;
}

} // namespace wearline
