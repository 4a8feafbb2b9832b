#include "judging/line_judgement.h"

#include <algorithm>
#include <array>
#include <date/date.h>

namespace wearline {

namespace {

/// Writes steps, or nothing at all when the judgement is only run for its number.
class Recorder {
public:
  explicit Recorder(std::vector<Step>* steps) : steps_(steps) {}
  bool on() const { return steps_ != nullptr; }
  Step& add(std::string_view code, Money from, const Range<Money>& to) {
    steps_->push_back({});
    Step& step = steps_->back();
    step.code = code;
    step.from = from;
    step.to = to.likely();
    step.low = to.low();
    step.high = to.high();
    return step;
  }

private:
  std::vector<Step>* steps_;
};

/// A sum of the line, and what it is subject to.
struct Piece {
  Money amount;
  Nature nature = Nature::other;
  bool ages = false;
  bool by_area = true;
  bool with_the_whole = false;
  bool may_not_age = false; ///< ages, but some do not take age off it: the most leaves it whole
  bool doubtful = false;    ///< counts only in the most (a mark-up)

  bool treated_like(const Piece& p) const {
    return ages == p.ages && by_area == p.by_area && with_the_whole == p.with_the_whole &&
           may_not_age == p.may_not_age && doubtful == p.doubtful;
  }
};

/// Which end of the answer is worked out.
enum class End { least, likely, most };
/// More than the 18 ways to treat a piece (four free flags; labor that may not age, by area or not), so that two alike
/// can always be joined.
constexpr std::size_t most_pieces = 19;

struct Plan {
  std::array<Piece, most_pieces> pieces; ///< those before `count`
  std::size_t count = 0;
  bool parts_given = false;
  bool any_whole = false; ///< some part takes the share of the others
  void add(Piece piece) {
    any_whole = any_whole || piece.with_the_whole;
    if (count == most_pieces) join_two_alike();
    pieces[count++] = piece;
  }

private:
  void join_two_alike() {
    for (std::size_t i = 0; i < count; ++i)
      for (std::size_t j = i + 1; j < count; ++j)
        if (pieces[i].treated_like(pieces[j])) {
          pieces[i].amount += pieces[j].amount;
          pieces[j] = pieces[--count];
          return;
        }
  }
};

/// The class of lives of the thing, or of the part of it that the finding is about.
std::string_view life_class_of(const Subject& subject) {
  if (subject.finding && !subject.finding->life_class.empty()) return subject.finding->life_class;
  return subject.element ? std::string_view(subject.element->life_class) : std::string_view();
}

/// Whether the charge renews a thing whose age counts.
bool renews(const Line& line, const Subject& subject) {
  if (line.kind == "cleaning" || life_class_of(subject).empty()) {
    // A life given by the person makes any replacement age.
    return line.life_months && line.remedy != "repair" && line.remedy != "clean" && line.kind != "cleaning";
  }
  if (line.remedy == "replace") return true;
  if (line.remedy == "repair" || line.remedy == "clean") return false;
  if (line.life_months || line.installed)
    return subject.finding ? subject.finding->ages || subject.finding->remedy == "replace" : true;
  return subject.finding ? subject.finding->ages : true;
}

Plan plan_of(const Line& line, Money charged, bool ages, const Subject& subject, const LifeTables& lives) {
  Plan plan;
  plan.parts_given = !line.parts.empty();
  Money rest = charged;
  for (const Part& part : line.parts) {
    const PartRule* rule = lives.part(part.nature);
    Piece piece{part.amount, part.nature, ages, true, false};
    if (rule) {
      piece.ages = ages && rule->ages == PartRule::Ages::yes;
      piece.by_area = rule->by_area;
      piece.with_the_whole = rule->ages == PartRule::Ages::with_the_whole;
      piece.doubtful = rule->doubtful;
    }
    if (part.nature == Nature::labour) {
      piece.ages = ages && line.labour_ages.value_or(subject.labour_ages);
      piece.may_not_age = piece.ages && !line.labour_ages && !subject.labour_settled;
    }
    if (part.ages) {
      piece.ages = *part.ages;
      piece.with_the_whole = piece.may_not_age = false;
    }
    plan.add(piece);
    rest -= part.amount;
  }
  if (rest > Money()) plan.add({rest, Nature::other, ages, true, false});
  return plan;
}

/// The worth of a plan for one damaged share and one share left. Parts that go with the whole take the exact share of
/// the others (in millionths of a cent), so that a tax on a few cents is not thrown about by their rounding.
Money price(const Plan& plan, Share area, Share left, End end) {
  constexpr std::int64_t fine = 1'000'000;
  Money after;
  std::int64_t before_fine = 0, after_fine = 0;
  const bool any_whole = plan.any_whole;
  for (std::size_t i = 0; i < plan.count; ++i) {
    const Piece& p = plan.pieces[i];
    if (p.doubtful && end != End::most) continue;
    if (p.with_the_whole) continue;
    const auto worth = [&](Money m) {
      if (p.by_area) m = m.part(area);
      return p.ages && !(p.may_not_age && end == End::most) ? m.part(left) : m;
    };
    after += worth(p.amount);
    if (!any_whole) continue;
    before_fine += p.amount.in_cents() * fine;
    after_fine += worth(Money::cents(p.amount.in_cents() * fine)).in_cents();
  }
  if (!any_whole) return after;
  for (std::size_t i = 0; i < plan.count; ++i) {
    const Piece& p = plan.pieces[i];
    if (p.doubtful && end != End::most) continue;
    if (p.with_the_whole)
      after += before_fine == 0 ? p.amount.part(area).part(left) : p.amount.part({after_fine, before_fine});
  }
  return after;
}

/// The damaged share of what was charged.
struct Area {
  Share low = Share::whole(), likely = Share::whole(), high = Share::whole();
  bool known = false, open = false, matching = false;
  bool matching_barred = false; ///< matching could be argued, were it not for the law
};
Area area_of(const Line& line, const Subject& subject, Tri damaged_portion_only) {
  Area area;
  if (!line.charged || line.charged->thousandths == 0) return area;
  const std::int64_t charged = line.charged->thousandths;
  if (line.damaged && line.damaged->unit == line.charged->unit) {
    area.known = true;
    area.low = area.likely = area.high = Share{line.damaged->thousandths, charged};
    // Matching the undamaged rest can be argued inside a natural seam, never across it.
    const bool inside_seam =
        subject.element && !subject.element->seam_unit.empty() && subject.element->seam_unit != line.charged->unit;
    if (inside_seam && area.likely < Share::whole()) {
      area.matching = damaged_portion_only != Tri(true);
      area.matching_barred = !area.matching;
      if (area.matching) area.high = Share::whole();
    }
    return area;
  }
  if (!line.damaged && charged > 1000 && subject.element && !subject.element->seam_unit.empty()) {
    area.open = true;
    area.low = Share{1000, charged};
  }
  return area;
}

Age months_of(Life life) { return Age::months(life.months); }

const ConditionRule* condition_of(const Line& line, const LifeTables& lives) {
  for (const ConditionRule& rule : lives.conditions)
    if (rule.at_move_in == line.at_move_in) return &rule;
  return nullptr;
}

Ages ages_of(const Line& line, const TenancyFacts& tenancy) {
  Ages ages;
  ages.move_in = tenancy.move_in;
  ages.move_out = tenancy.move_out;
  ages.installed = line.installed;
  if (!line.installed && line.at_move_in == "new" && tenancy.move_in) {
    ages.installed = tenancy.move_in;
    ages.from_move_in = true;
  }
  return ages;
}

std::optional<Range<long>> age_months(const Ages& ages) {
  const auto months = [](Day from, Day to) { return static_cast<long>(std::max(0, whole_months(from, to))); };
  if (ages.installed) {
    const long least = months(ages.installed->latest, ages.move_out.earliest),
               most = months(ages.installed->earliest, ages.move_out.latest);
    return Range<long>(least, least == most ? least : months(ages.installed->likely(), ages.move_out.likely()), most);
  }
  if (ages.move_in) {
    const long least = months(ages.move_in->latest, ages.move_out.earliest);
    return Range<long>(least, least, 2400);
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
  for (const WorthMethod& m : lives.methods) {
    if (m.use == WorthMethod::Use::by_default && !choice.likely) choice.likely = &m;
    else if (m.use == WorthMethod::Use::in_region && !life_given && covers(m, life_class) &&
             LifeTables::inside(place, m.region) && choice.count < 4)
      choice.also[choice.count++] = &m;
  }
  // A region's official way comes first where it has one; the others widen the answer.
  if (choice.count > 0) std::swap(choice.likely, choice.also[0]);
  return choice;
}

/// What the tenant answers for of the worth.
Range<Money> scaled(const Range<Money>& worth, const WearOpinion& opinion) {
  return {worth.low().part(opinion.least), worth.likely().part(opinion.likely), worth.high().part(opinion.most)};
}

/// Work the landlord did: hours times rate is the most it can come to, and an hour above what practice pays is likely
/// cut to that.
Range<Money> own_labour(const Line& line, Money charged, const LineContext& context, Recorder& record) {
  if (!line.hours || !line.hourly_rate) return charged;
  const auto at = [&](Money rate) { return rate.part({line.hours->thousandths, 1000}); };
  Money other;
  for (const Part& part : line.parts)
    if (part.nature != Nature::labour && part.nature != Nature::repair_labour && part.nature != Nature::cleaning)
      other += part.amount;
  const Money most = std::min(at(*line.hourly_rate) + other, charged);
  if (record.on() && most < charged) record.add("own-labour", charged, most).part = *line.hours;
  const LabourRate* usual = context.lives->labour_rate(context.place, line.kind == "cleaning");
  if (!usual || *line.hourly_rate <= usual->most) return most;
  const Money likely = std::min(at(usual->most) + other, most);
  const Range<Money> worked(likely, likely, most);
  if (record.on() && likely < most) {
    Step& step = record.add("own-rate-high", most, worked);
    step.part = *line.hours;
    step.sources = usual->sources;
  }
  return worked;
}

/// Rent is no more than that of the days it is charged for. Days that nobody paid are owed; rent for another reason
/// (notice not given, a home not let again) is owed only if that reason holds.
LineResult judge_debt_line(const Line& line, const Subject& subject, LineResult result, const LineContext& context,
                           Recorder& record) {
  const bool by_days = subject.finding ? subject.finding->by_days : line.kind == "rent";
  const auto owed = by_days ? rent_for_period(line, *context.tenancy) : std::nullopt;
  const bool unpaid_days =
      context.tenancy->rent_paid_through && (!subject.finding || subject.finding->lean == Lean::damage);
  bool settled = false;
  if (owed) {
    const Money before = result.worth.likely();
    result.worth = owed->capped(result.claimed);
    settled = unpaid_days || result.worth.high().is_zero();
    if (settled) {
      result.opinion.least = Share::whole();
      result.opinion.likely = Share::whole();
      result.opinion.most = Share::whole();
      result.opinion.reason = result.worth.high().is_zero() ? "reason.rent-paid" : "reason.rent-by-day";
    }
    if (record.on()) record.add("rent-by-day", before, result.worth);
  }
  result.fair = scaled(result.worth, result.opinion);
  if (record.on() && !settled) record.add(result.opinion.reason, result.worth.likely(), result.fair);
  return result;
}

void say_reason(Step& step, const WearOpinion& opinion) {
  if (opinion.turn) {
    step.said = &opinion.turn->text;
    step.sources = opinion.turn->sources;
  } else if (opinion.finding) {
    step.sources = opinion.finding->sources;
  }
}

void apply_law(LineResult& result, Recorder& record) {
  const Range<Money> before = result.fair;
  if (result.law.limit && *result.law.limit < result.fair.high()) {
    result.fair = result.fair.capped(*result.law.limit);
    if (record.on()) record.add("law-limit", before.likely(), result.fair);
  }
  if (result.law.barred == Tri(true)) {
    result.fair = Money();
    const bool speaks_already = result.verdict == Verdict::ordinary_wear || result.verdict == Verdict::already_there ||
                                result.verdict == Verdict::landlord_side;
    if (!speaks_already) result.verdict = Verdict::barred;
    if (record.on() && !before.high().is_zero()) record.add("law-barred", before.likely(), result.fair);
  } else if (!result.law.barred) {
    result.fair = Range<Money>(Money(), result.fair.likely(), result.fair.high());
    if (record.on()) record.add("law-perhaps-barred", before.likely(), result.fair);
  }
}

} // namespace

TenancyFacts tenancy_facts(const Case& c, Day today) {
  TenancyFacts t;
  t.move_in = c.tenancy.began;
  if (c.tenancy.possession_returned) t.move_out = *c.tenancy.possession_returned;
  else if (c.tenancy.ended) t.move_out = *c.tenancy.ended;
  else if (c.statement.dated) t.move_out = *c.statement.dated;
  else if (c.statement.sent) t.move_out = *c.statement.sent;
  else t.move_out = {today, today};
  t.move_out_assumed = !c.tenancy.possession_returned && !c.tenancy.ended;
  if (t.move_in) {
    t.stay.months = std::max(0, whole_months(t.move_in->latest, t.move_out.earliest));
    t.stay.months_most = std::max(0, whole_months(t.move_in->earliest, t.move_out.latest));
  }
  t.stay.occupants = c.tenancy.occupants;
  t.stay.nothing_recorded = c.records.move_in.made == Tri(false) && c.records.photos_at_move_in == Tri(false);
  t.stay.nothing_shown = c.records.move_out.made == Tri(false) && c.records.photos_at_move_out == Tri(false);
  t.monthly_rent = c.tenancy.monthly_rent;
  t.rent_paid_through = c.tenancy.rent_paid_through;
  return t;
}

std::optional<Range<Money>> rent_for_period(const Line& line, const TenancyFacts& tenancy) {
  if (!tenancy.monthly_rent || !line.from || !line.to || !line.from->known() || !line.to->known()) return std::nullopt;
  Day from = line.from->earliest, to = line.to->earliest;
  if (tenancy.rent_paid_through && tenancy.rent_paid_through->known())
    from = std::max(from, tenancy.rent_paid_through->earliest + days{1});
  if (line.relet_on && line.relet_on->known()) to = std::min(to, line.relet_on->earliest - days{1});
  if (to < from) return Range<Money>(Money());
  const Money rent = *tenancy.monthly_rent;
  Money actual;
  std::int64_t thirtieths = 0;
  for (Day at = from; at <= to;) {
    const date::year_month_day ymd{at};
    const Day month_end = date::sys_days(ymd.year() / ymd.month() / date::last);
    const Day until = std::min(month_end, to);
    const std::int64_t in_month = static_cast<unsigned>(date::year_month_day{month_end}.day()),
                       count = (until - at).count() + 1;
    actual += rent.part({count, in_month});
    thirtieths += count == in_month ? 30 : std::min<std::int64_t>(count, 30);
    at = until + days{1};
  }
  const std::int64_t count = (to - from).count() + 1;
  const Money by_thirty = rent.part({thirtieths, 30}), by_year = rent.part({count * 12, 365});
  return Range<Money>(std::min({actual, by_thirty, by_year}), actual, std::max({actual, by_thirty, by_year}));
}

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
  if (const LabourPolicy* policy = context.lives->labour_policy(context.place)) {
    subject.labour_ages = policy->ages;
    subject.labour_settled = policy->settled;
  }
}

namespace {

LineResult credit_line(LineResult result) {
  result.verdict = Verdict::not_about_condition;
  result.claimed = Money() - result.claimed;
  result.fair = result.worth = result.claimed;
  result.opinion = {Verdict::not_about_condition, Share::whole(), Share::whole(), Share::whole(), "reason.credit"};
  return result;
}

/// What the sum is worked out from. A price that is lower than the charge bounds it; a higher one is what age is taken
/// off: a landlord who charges less than the price has already taken something off, and it must not be taken off twice.
Money base_of(const Line& line, bool ages, Money charged, Recorder& record) {
  if (!line.price_new || !ages || *line.price_new == charged) return charged;
  if (*line.price_new > charged && !line.parts.empty()) return charged;
  if (record.on()) record.add(*line.price_new < charged ? "price-new" : "price-above-charge", charged, *line.price_new);
  return *line.price_new;
}

void scale(Plan& plan, Money from, Money to) {
  if (from == to || from.is_zero()) return;
  for (std::size_t i = 0; i < plan.count; ++i)
    plan.pieces[i].amount = plan.pieces[i].amount.part({to.in_cents(), from.in_cents()});
}

Range<Money> priced(const Plan& plan, const Area& area, const ShareRange& left) {
  return {price(plan, area.low, left.low, End::least), price(plan, area.likely, left.likely, End::likely),
          price(plan, area.high, left.high, End::most)};
}

void say_area(const Line& line, const Subject& subject, const Area& area, Tri portion_only, Money base,
              const Range<Money>& worth, Recorder& record) {
  if (!record.on() || !line.charged || !(area.known || area.open)) return;
  const std::string_view code = area.open                                           ? "area-unknown"
                                : area.matching                                     ? "area-share-matching"
                                : area.matching_barred && portion_only == Tri(true) ? "area-share-no-matching"
                                                                                    : "area-share";
  Step& step = record.add(code, base, worth);
  step.share = area.likely;
  step.whole = *line.charged;
  if (line.damaged) step.part = *line.damaged;
  if (subject.element) step.said = &subject.element->seam_text;
}

/// Parts that keep their price, parts that some would keep, and what deciders mostly leave out.
void say_parts(const Plan& plan, const Area& area, const LineResult& result, const Subject& subject,
               const LineContext& context, Recorder& record) {
  for (std::size_t i = 0; i < plan.count; ++i) {
    const Piece& p = plan.pieces[i];
    const PartRule* rule = context.lives->part(p.nature);
    const Money share = p.by_area ? p.amount.part(area.likely) : p.amount;
    const auto say = [&](std::string_view code, const Range<Money>& to) {
      Step& step = record.add(code, p.amount, to);
      if (!rule) return;
      step.said = &rule->text;
      step.sources = rule->sources;
    };
    if (p.doubtful) say("mark-up", Range<Money>(Money(), Money(), share));
    else if (result.ages && p.may_not_age) {
      const Money aged = share.part(result.left.likely);
      if (aged == share) continue;
      Step& step = record.add("labour-may-not-age", share, Range<Money>(aged, aged, share));
      if (const LabourPolicy* policy = context.lives->labour_policy(context.place)) {
        step.said = &policy->text;
        step.sources = policy->sources;
      }
    } else if (result.ages && !p.ages && !p.with_the_whole) say("part-not-aged", Range<Money>(share));
  }
  (void)subject;
}

void say_age(const Ages& ages, const Subject& subject, const WorthMethod& method, const LineResult& result,
             Money before, const Range<Money>& worth, Recorder& record) {
  const LifeChoice& life = subject.life;
  const bool banded = method.kind == WorthMethod::Kind::stay_bands;
  Step& step = record.add(banded              ? "share-by-stay"
                          : !ages.installed   ? "age-unknown"
                          : ages.from_move_in ? "age-from-move-in"
                                              : "age-share",
                          before, worth);
  step.share = result.left.likely;
  step.life_low = months_of(life.life.low());
  step.life = months_of(life.life.likely());
  step.life_high = months_of(life.life.high());
  if (banded && ages.move_in) step.age = age_between(ages.move_in->likely(), ages.move_out.likely());
  else if (ages.installed)
    step.age = age_between(ages.installed->likely(),
                           method.age_at_move_in && ages.move_in ? ages.move_in->likely() : ages.move_out.likely());
  step.said = banded ? &method.text : life.why;
  step.sources = life.sources;
  for (const Reference* s : method.sources)
    if (banded || !method.region.empty()) step.sources.push_back(s);
  if (life.quality_untold) record.add("quality-untold", worth.likely(), worth);
}

/// The share of worth left by the likely method, widened by the others of the place.
ShareRange left_of(const MethodChoice& choice, std::string_view life_class, const Line& line, const LifeChoice& life,
                   const Ages& ages) {
  ShareRange left = share_left(*choice.likely, life_class, line.quality, life.life, ages);
  for (int i = 0; i < choice.count; ++i) {
    const ShareRange other = share_left(*choice.also[i], life_class, line.quality, life.life, ages);
    if (other.low < left.low) left.low = other.low;
    if (left.high < other.high) left.high = other.high;
  }
  return left;
}

/// A small mark on a thing that still works seldom pays for a new one: the least is a sum for the mark.
bool is_small_mark(const Line& line, const Subject& subject) {
  return subject.finding && subject.finding->small_mark && !line.repair_price && line.severity != "heavy" &&
         line.remedy != "repair" && line.remedy != "clean" && !line.charged;
}

/// The worth of the damage if the tenant answers for it, step by step.
Range<Money> worth_of(const Line& line, const Subject& subject, const LineContext& context, const Ages& ages,
                      Money base, Tri portion_only, LineResult& result, Recorder& record) {
  Plan plan = plan_of(line, result.claimed, result.ages, subject, *context.lives);
  scale(plan, result.claimed, base);
  const Area area = area_of(line, subject, portion_only);
  result.area_open = area.open;
  const ShareRange whole{Share::whole(), Share::whole(), Share::whole()};
  // What area alone leaves is only of interest where steps are told, or where nothing else follows.
  const bool ages_follow = result.ages && subject.methods.likely;
  Range<Money> worth = record.on() || !ages_follow ? priced(plan, area, whole) : Range<Money>();
  say_area(line, subject, area, portion_only, base, worth, record);

  if (ages_follow) {
    const WorthMethod& method = *subject.methods.likely;
    const Money before = worth.likely();
    result.method = &method;
    result.left = left_of(subject.methods, life_class_of(subject), line, subject.life, ages);
    result.age_from_move_in = ages.from_move_in;
    result.age_open = method.kind != WorthMethod::Kind::stay_bands && (!ages.installed || !ages.installed->known());
    worth = priced(plan, area, result.left);
    if (record.on()) say_age(ages, subject, method, result, before, worth, record);
  }
  if (record.on() && plan.parts_given) say_parts(plan, area, result, subject, context, record);
  if (result.ages) {
    if (const ConditionRule* condition = condition_of(line, *context.lives)) {
      const Money before = worth.likely();
      worth = Range<Money>(worth.low().part(condition->least), worth.likely().part(condition->likely),
                           worth.high().part(condition->most));
      if (record.on()) record.add("condition-at-move-in", before, worth).sources = condition->sources;
    }
    if (is_small_mark(line, subject)) {
      const Weight& mark = (*context.weights)[Ground::small_mark];
      const Money before = worth.likely();
      worth = Range<Money>(worth.low().part(mark.least), worth.likely(), worth.high());
      result.repair_open = true;
      if (record.on() && !worth.high().is_zero()) record.add("small-mark", before, worth).sources = mark.sources;
    }
  } else if (const ConditionRule* before_move =
                 line.kind == "cleaning" ? condition_of(line, *context.lives) : nullptr) {
    // A home is cleaned back to what it was, not beyond.
    const Money before = worth.likely();
    worth = Range<Money>(worth.low().part(before_move->least), worth.likely().part(before_move->likely),
                         worth.high().part(before_move->most));
    if (record.on()) record.add("clean-as-before", before, worth);
  } else if (record.on() && subject.element && subject.element->about_condition && line.kind != "keys" &&
             line.kind != "disposal") {
    record.add(line.kind == "cleaning" ? "cleaning-not-aged" : "repair-not-aged", worth.likely(), worth);
  }

  if (line.repair_price && *line.repair_price < worth.high()) {
    const Money before = worth.likely();
    worth = worth.capped(*line.repair_price);
    if (record.on()) record.add("repair-cheaper", before, worth);
  }
  if (base > result.claimed && worth.high() > result.claimed) {
    const Money before = worth.likely();
    worth = worth.capped(result.claimed);
    if (record.on() && before > result.claimed) record.add("never-above-charge", before, worth);
  }
  return worth.capped(result.claimed);
}

/// The opinion on what is known for certain; where a longer stay or a thing perhaps past its life would turn the
/// finding, it spans both.
WearOpinion opinion_of(const Line& line, const Subject& subject, Stay stay, bool perhaps_worn, const Weights& weights) {
  WearOpinion opinion = judge_wear(line, subject.element, subject.finding, stay, weights);
  if (!subject.finding) return opinion;
  const auto span = [&] { opinion.span(judge_wear(line, subject.element, subject.finding, stay, weights)); };
  const bool longer =
      subject.finding->turns_on_stay && stay.months_most && (!stay.months || *stay.months < *stay.months_most);
  const bool worn = subject.finding->turns_on_life && perhaps_worn;
  if (worn) {
    stay.past_life = true;
    span();
  }
  if (longer) {
    stay.months = stay.months_most;
    span();
    if (worn) {
      stay.past_life.reset();
      span();
    }
  }
  return opinion;
}

/// A claim for money that the law lets be made whatever the state of the home.
WearOpinion granted_by_law() {
  WearOpinion opinion;
  opinion.verdict = Verdict::not_about_condition;
  opinion.least = opinion.likely = opinion.most = Share::whole();
  opinion.reason = "reason.law-grants";
  return opinion;
}

/// `only_fair`: nothing but the fair sum is asked for, which is nothing where the tenant answers for nothing.
LineResult judge(const Line& line, const Subject& subject, const LineContext& context, std::vector<Step>* steps,
                 bool only_fair) {
  Recorder record(steps);
  LineResult result;
  result.claimed = line.amount.value_or(Money());
  result.left = {Share::whole(), Share::whole(), Share::whole()};
  if (line.credit == Tri(true)) return credit_line(std::move(result));

  const Ages ages = ages_of(line, *context.tenancy);
  const auto months = age_months(ages);
  result.age_months = months;
  result.ages = renews(line, subject) && subject.life.from != LifeChoice::From::none;

  Stay stay = context.tenancy->stay;
  if (result.ages && months) {
    if (months->low() >= subject.life.life.high().months) stay.past_life = true;
    else if (months->high() < subject.life.life.low().months) stay.past_life = false;
  }
  const bool perhaps_worn =
      !stay.past_life && result.ages && months && months->high() >= subject.life.life.high().months;
  result.opinion = opinion_of(line, subject, stay, perhaps_worn, *context.weights);
  weigh_proof(result.opinion, line, stay, *context.weights);
  if (context.law && context.law->grants(line) == Tri(true)) result.opinion = granted_by_law();
  result.verdict = result.opinion.verdict;

  if (only_fair && result.opinion.most == Share::none() && result.verdict != Verdict::not_about_condition)
    return result;
  // Where the tenant answers for nothing, the worth of the thing is nobody's concern: one step says so.
  if (result.opinion.most == Share::none()) {
    if (record.on())
      say_reason(record.add(result.opinion.reason, result.claimed, Range<Money>(Money())), result.opinion);
    record = Recorder(nullptr);
  }

  const Range<Money> worked = own_labour(line, result.claimed, context, record);
  // What only leans to wear does not yet meet a rule about wear.
  const bool leans = result.verdict == Verdict::ordinary_wear && !result.opinion.certain();
  if (context.law)
    result.law = context.law->of(line, {leans ? Verdict::cannot_tell : result.verdict, months, result.ages});
  if (result.verdict == Verdict::not_about_condition) {
    result.worth = worked;
    result = judge_debt_line(line, subject, std::move(result), context, record);
    apply_law(result, record);
    return result;
  }

  const Tri portion_only = result.law.damaged_portion_only;
  const Money base = base_of(line, result.ages, worked.high(), record);
  const Range<Money> worth = worth_of(line, subject, context, ages, base, portion_only, result, record);
  result.worth = {std::min(worth.low(), worked.low()), std::min(worth.likely(), worked.likely()), worth.high()};
  result.fair = scaled(result.worth, result.opinion);
  if (record.on()) say_reason(record.add(result.opinion.reason, result.worth.likely(), result.fair), result.opinion);
  Recorder for_law(steps);
  apply_law(result, for_law);
  return result;
}

} // namespace

LineResult judge_line(const Line& line, const Subject& subject, const LineContext& context, std::vector<Step>* steps) {
  return judge(line, subject, context, steps, false);
}

Money likely_fair(const Line& line, const Subject& subject, const LineContext& context) {
  return judge(line, subject, context, nullptr, true).fair.likely();
}

std::function<Money(Day)> likely_worth_by_day(const Line& line, const Subject& subject, const LineContext& context) {
  Recorder silent(nullptr);
  const Money claimed = line.amount.value_or(Money());
  const Range<Money> worked = own_labour(line, claimed, context, silent);
  Plan plan = plan_of(line, claimed, true, subject, *context.lives);
  scale(plan, claimed, base_of(line, true, worked.high(), silent));
  const Share area = area_of(line, subject, false).likely;
  const ConditionRule* const rule = condition_of(line, *context.lives);
  const Share condition = rule ? rule->likely : Share::whole();
  const Money most = std::min(worked.likely(), line.repair_price.value_or(claimed));
  const WorthMethod& method = *subject.methods.likely;
  const TenancyFacts& tenancy = *context.tenancy;
  const Day until = (method.age_at_move_in && tenancy.move_in ? *tenancy.move_in : tenancy.move_out).likely();
  return [=, &method, &line, &subject](Day laid) {
    const Share left = share_left_at(method, life_class_of(subject), line.quality, subject.life.life.likely(),
                                     age_between(laid, until));
    return std::min(price(plan, area, left, End::likely).part(condition), most);
  };
}

std::vector<MethodFair> by_methods(const Line& line, const Subject& subject, const LineContext& context,
                                   const LineResult& result) {
  std::vector<MethodFair> out;
  if (!result.ages || !result.method) return out;
  const std::string_view life_class = life_class_of(subject);
  for (const WorthMethod& method : context.lives->methods) {
    if (!covers(method, life_class)) continue;
    if ((method.kind == WorthMethod::Kind::stay_bands || method.age_at_move_in) && !context.tenancy->move_in) continue;
    Subject by_this = subject;
    by_this.methods = {};
    by_this.methods.likely = &method;
    out.push_back({&method, judge_line(line, by_this, context).fair});
  }
  std::stable_partition(out.begin(), out.end(), [&](const MethodFair& m) { return m.method == result.method; });
  return out;
}

} // namespace wearline
