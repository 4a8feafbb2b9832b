#include "reading/line_fields.h"

#include <algorithm>

namespace wearline {

namespace {

const std::string* text_of(const WordFact& fact) { return std::get_if<std::string>(&fact.value); }

const WordFact* find(const WordFacts& facts, std::string_view field) {
  const auto it = std::find_if(facts.begin(), facts.end(), [&](const WordFact& f) { return f.field == field; });
  return it == facts.end() ? nullptr : &*it;
}

std::string Line::*name_field(std::string_view field) {
  return field == "conditionAtMoveIn"  ? &Line::at_move_in
         : field == "severity"         ? &Line::severity
         : field == "ageYears"         ? &Line::age_years
         : field == "ageYearsAtMoveIn" ? &Line::age_years_at_move_in
                                       : nullptr;
}
std::optional<DaySpan> Line::*day_field(std::string_view field) {
  return field == "installed"     ? &Line::installed
         : field == "periodStart" ? &Line::from
         : field == "periodEnd"   ? &Line::to
         : field == "reletOn"     ? &Line::relet_on
                                  : nullptr;
}
std::optional<Money> Line::*money_field(std::string_view field) {
  return field == "repairCost"        ? &Line::repair_price
         : field == "replacementCost" ? &Line::price_new
         : field == "hourlyRate"      ? &Line::hourly_rate
                                      : nullptr;
}
std::optional<Quantity> Line::*quantity_field(std::string_view field) {
  return field == "chargedQuantity"   ? &Line::charged
         : field == "damagedQuantity" ? &Line::damaged
         : field == "hours"           ? &Line::hours
                                      : nullptr;
}
std::vector<std::string> Line::*list_field(std::string_view field) {
  return field == "landlordFactors"       ? &Line::landlord_factors
         : field == "supportingDocuments" ? &Line::proof
         : field == "missingDocuments"    ? &Line::proof_missing
                                          : nullptr;
}
Tri Line::*yes_no_field(std::string_view field) {
  return field == "onMoveOutRecord" ? &Line::on_move_out_record
         : field == "inLease"       ? &Line::in_lease
         : field == "workDone"      ? &Line::work_done
         : field == "betterment"    ? &Line::betterment
                                    : nullptr;
}

bool age_known(const Line& line) {
  return line.installed || !line.age_years.empty() || !line.age_years_at_move_in.empty();
}

bool same_state(const std::string& a, const std::string& b) {
  const auto there = [](const std::string& s) { return s == "damaged" || s == "same"; };
  return a == b || (there(a) && there(b));
}

bool disjoint(const DaySpan& a, const DaySpan& b) { return a.latest < b.earliest || b.latest < a.earliest; }

/// The counts of a charge judge its damaged part: both are needed, of one unit. Rooms and walls say what was charged by
/// themselves; two screens that are torn are both damaged.
bool counts_enough(const Line& line, const WordFact& fact, const WordFacts& all) {
  const auto* q = std::get_if<Quantity>(&fact.value);
  const bool charged = fact.field == "chargedQuantity";
  if (charged && (q->unit == "room" || q->unit == "wall")) return !line.damaged || line.damaged->unit == q->unit;
  const WordFact* other = find(all, charged ? "damagedQuantity" : "chargedQuantity");
  const Quantity* there =
      charged ? (line.damaged ? &*line.damaged : nullptr) : (line.charged ? &*line.charged : nullptr);
  if (!there && other) there = std::get_if<Quantity>(&other->value);
  if (!there || there->unit != q->unit) return false;
  return charged ? there->thousandths <= q->thousandths : q->thousandths <= there->thousandths;
}

bool parts_fit(const Line& line, const std::vector<Part>& parts) {
  Money sum;
  for (const Part& part : parts) sum += part.amount;
  return line.amount && sum <= *line.amount;
}

template <class T> Filled fill(T& field, const T& value) {
  if (field != T()) return Filled::no;
  field = value;
  return Filled::yes;
}

Filled fill_age(Line& line, const WordFact& fact) {
  if (fact.field == "installed") {
    const auto span = parse_day_span(*text_of(fact));
    if (!span) return Filled::no;
    if (line.installed) return disjoint(*line.installed, *span) ? Filled::otherwise : Filled::no;
  } else if (!age_span(*text_of(fact))) {
    return Filled::no;
  }
  if (age_known(line)) return Filled::no;
  set_field(line, fact);
  return Filled::yes;
}

} // namespace

void set_field(Line& line, const WordFact& fact) {
  if (const auto name = name_field(fact.field)) line.*name = *text_of(fact);
  else if (fact.field == "cause") line.cause = value_in(charge_causes, *text_of(fact));
  else if (fact.field == "remedy") line.remedy = value_in(charge_remedies, *text_of(fact));
  else if (const auto day = day_field(fact.field)) line.*day = parse_day_span(*text_of(fact));
  else if (const auto money = money_field(fact.field)) line.*money = std::get<Money>(fact.value);
  else if (const auto quantity = quantity_field(fact.field)) line.*quantity = std::get<Quantity>(fact.value);
  else if (const auto list = list_field(fact.field)) line.*list = std::get<std::vector<std::string>>(fact.value);
  else if (const auto yes_no = yes_no_field(fact.field)) line.*yes_no = std::get<bool>(fact.value);
  else if (fact.field == "count") line.count = static_cast<long>(std::get<std::int64_t>(fact.value));
  else if (fact.field == "usefulLifeYears") line.life_months = months_of_years(std::get<std::int64_t>(fact.value));
  else if (fact.field == "costComponents") line.parts = std::get<std::vector<Part>>(fact.value);
}

Filled fill_field(Line& line, const WordFact& fact, const WordFacts& all) {
  const std::string& field = fact.field;
  if (field == "installed" || field == "ageYears" || field == "ageYearsAtMoveIn") return fill_age(line, fact);
  if (const auto name = name_field(field)) {
    const std::string& there = line.*name;
    if (there.empty()) return fill(line.*name, *text_of(fact));
    return field == "conditionAtMoveIn" && !same_state(there, *text_of(fact)) ? Filled::otherwise : Filled::no;
  }
  if (field == "cause") return fill(line.cause, value_in(charge_causes, *text_of(fact)));
  if (field == "remedy") return fill(line.remedy, value_in(charge_remedies, *text_of(fact)));
  if (const auto yes_no = yes_no_field(field)) {
    const Tri said = std::get<bool>(fact.value);
    if (!(line.*yes_no).known()) return fill(line.*yes_no, said);
    return line.*yes_no == said ? Filled::no : Filled::otherwise;
  }
  if (field == "count") {
    const auto said = static_cast<long>(std::get<std::int64_t>(fact.value));
    if (!line.count) return line.count = said, Filled::yes;
    return *line.count == said ? Filled::no : Filled::otherwise;
  }
  const auto quantity = quantity_field(field);
  if (quantity && ((line.*quantity) || (field != "hours" && !counts_enough(line, fact, all)))) return Filled::no;
  const auto day = day_field(field);
  if (day && (line.*day || !parse_day_span(*text_of(fact)))) return Filled::no;
  const auto money = money_field(field);
  if (money && line.*money) return Filled::no;
  const auto list = list_field(field);
  if (list && !(line.*list).empty()) return Filled::no;
  if (field == "usefulLifeYears" && line.life_months) return Filled::no;
  if (field == "costComponents" && (!line.parts.empty() || !parts_fit(line, std::get<std::vector<Part>>(fact.value))))
    return Filled::no;
  if (field == "credit") return Filled::no; // its sum says so
  set_field(line, fact);
  return Filled::yes;
}

} // namespace wearline
