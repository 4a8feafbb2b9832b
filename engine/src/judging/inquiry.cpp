#include "judging/inquiry.h"

#include <algorithm>

namespace wearline {

namespace {

Money distance(Money a, Money b) { return a < b ? b - a : a - b; }

std::string pointer(std::size_t line, std::string_view member) {
  std::string out = "/lines/" + std::to_string(line) + '/';
  out += member;
  return out;
}

/// Varies one fact of a line at a time and puts it back. Copies the line once, and only if something is varied.
class Variation {
public:
  Variation(const Line& line, const Subject& subject, const LineContext& context)
      : line_(line), subject_(subject), context_(context) {}
  /// The likely sum with `member` set to `value`.
  template <class T, class V> Money likely(T Line::*member, V&& value) {
    if (!varied_) varied_ = line_;
    (*varied_).*member = std::forward<V>(value);
    const Money sum = likely_fair(*varied_, subject_, context_);
    (*varied_).*member = line_.*member;
    return sum;
  }

private:
  const Line& line_;
  const Subject& subject_;
  const LineContext& context_;
  std::optional<Line> varied_;
};

} // namespace

std::optional<TurningPoint> turning_point(const Line& line, const Subject& subject, const LineContext& context,
                                          const LineResult& result) {
  if (!result.depreciates || !result.method || result.method->kind == DepreciationMethod::Kind::stay_bands ||
      result.claimed.is_zero())
    return std::nullopt;
  // What the law allows of a charge does not move the day its worth ends.
  LineContext lawless = context;
  lawless.law = nullptr;
  Line varied = line;
  const auto charge_if_laid = [&](Day day) {
    varied.installed = DaySpan{day, day};
    return likely_depreciated_value(varied, subject, lawless);
  };
  const Day last = context.tenancy->move_out.likely();
  const Months life = std::min(subject.life.life.likely().months, Years(100).in_months()),
               beyond = Years(50).in_months();
  const Money floor = charge_if_laid(std::max(min_day, add_months(last, -life - beyond)));
  if (charge_if_laid(last) <= floor) return std::nullopt;
  // Most methods turn just after the end of the life: look there in growing steps, then halve what is left.
  Day worn = std::max(min_day, add_months(last, -life));
  if (charge_if_laid(worn) > floor) worn = std::max(min_day, add_months(last, -life - beyond));
  Day charged = last;
  for (days step{1}; worn + step < last; step *= 2) {
    if (charge_if_laid(worn + step) > floor) {
      charged = worn + step;
      break;
    }
    worn += step;
  }
  while (charged - worn > days{1}) {
    const Day middle = worn + (charged - worn) / 2;
    (charge_if_laid(middle) <= floor ? worn : charged) = middle;
  }
  return TurningPoint{charged, floor};
}

void ask_about_line(std::size_t index, const Line& line, const Subject& subject, const LineContext& context,
                    const LineResult& result, std::vector<Question>& out) {
  if (!line.amount) {
    out.push_back({pointer(index, "amount"), "amount", nullptr, index, {}});
    return;
  }
  const auto ask = [&](std::string_view member, std::string_view code, Money effect, const Localized* said = nullptr) {
    if (effect > Money()) out.push_back({pointer(index, member), code, said, index, effect});
  };
  Variation vary(line, subject, context);
  if (!subject.element) {
    ask("element", "element", result.fair.high() - result.fair.low());
    return;
  }
  if (!subject.finding && !subject.element->findings.empty()) {
    ask("finding", "finding-missing", result.fair.high() - result.fair.low());
  } else if (result.opinion.finding_open && result.law.barred != Tri::yes) {
    const Money owed = vary.likely(&Line::cause, ChargeCause::tenant);
    const bool debt = result.verdict == Verdict::non_damage_charge;
    const Money not_owed = debt ? Money() : vary.likely(&Line::cause, ChargeCause::age);
    const bool has_own = subject.finding && !subject.finding->ask.empty();
    const bool lease_tells = debt && !line.in_lease.known() && subject.finding && subject.finding->lean_in_lease;
    const bool bare = subject.finding && !subject.finding->names_fault;
    ask(subject.finding && subject.finding->by_hours ? "hours"
        : lease_tells                                ? "inLease"
        : bare                                       ? "finding"
        : line.cause == ChargeCause::unknown         ? "cause"
                                                     : "severity",
        has_own ? "finding" : "cause", distance(owed, not_owed), has_own ? &subject.finding->ask : nullptr);
  }
  if (result.age_open) {
    const auto& t = *context.tenancy;
    const Day newest = line.installed ? std::min(line.installed->latest, t.move_out.latest)
                       : t.move_in    ? t.move_in->latest
                                      : t.move_out.earliest;
    const Day oldest = line.installed && line.installed->earliest > min_day
                           ? line.installed->earliest
                           : std::max(min_day, add_months(newest, -Years(50).in_months()));
    const Money effect = distance(vary.likely(&Line::installed, DaySpan{newest, newest}),
                                  vary.likely(&Line::installed, DaySpan{oldest, oldest}));
    ask("installed", line.installed ? "installed-exactly" : "installed", effect);
  }
  if (result.like_kind_open) ask("replacementCost", "like-kind", result.fair.high() - result.fair.low());
  if (result.repair_open) {
    const Money repair = result.claimed.part((*context.weights)[Ground::small_mark].least);
    ask("repairCost", "repair-cost", distance(vary.likely(&Line::repair_price, repair), result.fair.likely()));
  }
  if (result.opinion.cost_open) {
    const Money missing = vary.likely(&Line::proof_missing, std::vector<std::string>{"receipts"});
    ask("supportingDocuments", "bill", distance(missing, result.fair.likely()));
  }
  if (result.area_open)
    ask("damagedQuantity", "damaged",
        distance(vary.likely(&Line::damaged, Quantity{1000, line.charged->unit}), result.fair.likely()));
  // A cleaning finding's own question asks for the state at move-in already.
  const bool asked = line.kind == ChargeKind::cleaning && result.opinion.finding_open && subject.finding &&
                     !subject.finding->ask.empty();
  if (!asked && line.at_move_in.empty() && line.cause == ChargeCause::unknown && subject.element->about_condition &&
      line.kind != ChargeKind::keys && line.kind != ChargeKind::disposal && !result.fair.likely().is_zero())
    ask("conditionAtMoveIn", line.kind == ChargeKind::cleaning ? "clean-at-move-in" : "condition-at-move-in",
        result.fair.likely());
  if (result.verdict == Verdict::non_damage_charge && line.kind == ChargeKind::rent &&
      !rent_for_period(line, *context.tenancy))
    ask("periodStart", "rent-period", result.fair.high() - result.fair.low());
}

void ask_about_tenancy(const Case& c, const std::vector<LineAssessment>& lines, const LineContext& context,
                       std::vector<Question>& out) {
  const auto total = [&](const TenancyFacts& tenancy) {
    LineContext varied = context;
    varied.tenancy = &tenancy;
    Money sum;
    for (std::size_t i = 0; i < c.lines.size(); ++i)
      if (lines[i].result.depreciates) sum += likely_fair(c.lines[i], lines[i].subject, varied);
    return sum;
  };
  if (!std::any_of(lines.begin(), lines.end(), [](const LineAssessment& l) { return l.result.depreciates; })) return;
  if (!c.tenancy.began) {
    TenancyFacts lately = *context.tenancy, long_ago = *context.tenancy;
    const Day out_day = context.tenancy->move_out.likely();
    const Months one_year = Years(1).in_months(), ten_years = Years(10).in_months();
    lately.move_in = DaySpan{add_months(out_day, -one_year), add_months(out_day, -one_year)};
    lately.stay.months = one_year;
    long_ago.move_in = DaySpan{add_months(out_day, -ten_years), add_months(out_day, -ten_years)};
    long_ago.stay.months = ten_years;
    out.push_back({"/tenancy/began", "began", nullptr, Question::no_line, distance(total(lately), total(long_ago))});
  }
  if (context.tenancy->move_out_assumed) {
    TenancyFacts early = *context.tenancy;
    early.move_out = {early.move_out.earliest - days{365}, early.move_out.earliest - days{365}};
    out.push_back({"/tenancy/possessionReturned", "possession", nullptr, Question::no_line,
                   distance(total(early), total(*context.tenancy))});
  }
}

void rank(std::vector<Question>& questions) {
  questions.erase(std::remove_if(questions.begin(), questions.end(),
                                 [](const Question& q) {
                                   return q.effect.is_zero() && q.code != "amount" && q.code != "law" &&
                                          q.code != "bank-rate" && q.code != "date-order";
                                 }),
                  questions.end());
  std::stable_sort(questions.begin(), questions.end(), [](const Question& a, const Question& b) {
    return a.turns_day != b.turns_day ? a.turns_day : a.effect > b.effect;
  });
}

} // namespace wearline
