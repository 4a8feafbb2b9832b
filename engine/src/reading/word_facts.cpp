#include "reading/word_facts.h"

#include "reading/fact_dates.h"
#include "reading/fact_row.h"
#include "reading/fact_rules.h"
#include "reading/fact_sums.h"
#include "values/ascii.h"

#include <algorithm>
#include <array>

namespace wearline {

namespace {

/// The fields of a line that words can fill, in the order they are given.
constexpr std::array<std::string_view, 27> fields = {"installed",
                                                     "ageYears",
                                                     "ageYearsAtMoveIn",
                                                     "conditionAtMoveIn",
                                                     "cause",
                                                     "severity",
                                                     "count",
                                                     "landlordFactors",
                                                     "costComponents",
                                                     "chargedQuantity",
                                                     "damagedQuantity",
                                                     "remedy",
                                                     "betterment",
                                                     "repairCost",
                                                     "replacementCost",
                                                     "usefulLifeYears",
                                                     "credit",
                                                     "supportingDocuments",
                                                     "missingDocuments",
                                                     "onMoveOutRecord",
                                                     "inLease",
                                                     "workDone",
                                                     "hours",
                                                     "hourlyRate",
                                                     "periodStart",
                                                     "periodEnd",
                                                     "reletOn"};

bool is_list(std::string_view field) {
  return field == "landlordFactors" || field == "supportingDocuments" || field == "missingDocuments";
}
bool is_quantity(std::string_view field) {
  return field == "chargedQuantity" || field == "damagedQuantity" || field == "hours";
}
bool is_money(std::string_view field) {
  return field == "hourlyRate" || field == "replacementCost" || field == "repairCost";
}
bool is_date(std::string_view field) {
  return field == "installed" || field == "periodStart" || field == "periodEnd" || field == "reletOn";
}

std::int64_t amount_of(const FactItem& n) {
  return n.under > 0 && n.number != NumberKind::money ? 1000 * n.over / n.under : n.thousandths;
}

/// "1.5" of a rule's setting, in thousandths.
std::int64_t decimal(std::string_view text) {
  std::int64_t value = 0, unit = 1000;
  bool point = false;
  for (const char c : text)
    if (c == '.') point = true;
    else if (is_digit(c)) value = point ? value + (unit /= 10) * (c - '0') : value * 10 + (c - '0') * 1000;
  return value;
}

class FactReader {
public:
  FactReader(const MarkedText& text, std::string_view source, const FactRules& rules, const Lexicon& charges,
             ChargeKind kind, const std::optional<Money>& amount)
      : text_(text), rules_(rules), amount_(amount), items_(fact_items(text, source, rules.number_words())) {
    if (items_.empty()) return;
    const std::vector<FactMatch> found = rules.matches(text, items_, charges, kind);
    for (const FactMatch& m : found) take(m);
    take_sums(sum_facts(items_, rules, kind, amount));
    if (whole_ && !find("costComponents") && !find("hourlyRate")) out_.push_back(*whole_);
    if (kind == ChargeKind::damage || kind == ChargeKind::cleaning || kind == ChargeKind::keys) {
      const NamedRows rows = named_rows(text, items_, rules, charges);
      take_row(rows.rooms);
      take_row(rows.things);
    }
    settle(amount, kind);
  }

  WordFacts run() {
    std::stable_sort(out_.begin(), out_.end(), [](const WordFact& a, const WordFact& b) {
      return std::find(fields.begin(), fields.end(), a.field) < std::find(fields.begin(), fields.end(), b.field);
    });
    return std::move(out_);
  }

private:
  WordFact* find(std::string_view field) {
    const auto it = std::find_if(out_.begin(), out_.end(), [&](const WordFact& f) { return f.field == field; });
    return it == out_.end() ? nullptr : &*it;
  }
  template <class T> T* value(std::string_view field) {
    WordFact* fact = find(field);
    return fact ? std::get_if<T>(&fact->value) : nullptr;
  }

  void put(std::string_view field, WordFact::Value value, std::size_t first, std::size_t last) {
    const std::uint32_t start = text_.tokens[items_[first].first].start, end = text_.tokens[items_[last].last].end;
    if (WordFact* there = find(field)) {
      auto* list = std::get_if<std::vector<std::string>>(&there->value);
      const auto* more = std::get_if<std::vector<std::string>>(&value);
      if (!list || !more) return; // what was read first stands
      for (const std::string& name : *more)
        if (std::find(list->begin(), list->end(), name) == list->end()) list->push_back(name);
      return;
    }
    out_.push_back({std::string(field), std::move(value), start, end});
  }

  void take(const FactMatch& m) {
    const FactRules::Rule& rule = rules_.rule(m.rule);
    for (const auto& [field, setting] : rule.sets) {
      if (std::find(fields.begin(), fields.end(), field) == fields.end()) continue;
      if (const auto* yes = std::get_if<bool>(&setting)) put(field, *yes, m.first, m.last);
      else if (const auto* name = std::get_if<std::string>(&setting)) {
        if (field == "costComponents") take_whole(value_in(cost_components, *name), m);
        else if (is_list(field)) put(field, std::vector<std::string>{*name}, m.first, m.last);
        else if (is_quantity(field)) put(field, Quantity{decimal(*name), rule.unit}, m.first, m.last); // "a full hour"
        else put(field, *name, m.first, m.last);
      } else if (const int place = std::get<int>(setting); place >= 1 && place <= m.count) {
        number(field, rule, m, m.numbers[static_cast<std::size_t>(place) - 1]);
      }
    }
  }

  void number(const std::string& field, const FactRules::Rule& rule, const FactMatch& m, std::size_t at) {
    const FactItem& n = items_[at];
    // The sum at the end counts nothing: "ring on the ceiling, small, 35".
    if (at + 1 == items_.size() && at > 0 && items_[at - 1].is(',') && n.thousandths >= 10'000 && amount_ &&
        !n.currency && n.thousandths / 10 == amount_->in_cents() &&
        (field == "count" || field == "chargedQuantity" || field == "damagedQuantity"))
      return;
    if ((field == "periodStart" || field == "periodEnd") && m.count > 1 &&
        (rule.unit == "span" || rule.unit == "span-back")) {
      const bool begins = field == "periodStart", back = rule.unit == "span-back"; // "to May 31 from May 1"
      const int year = m.count > 2 ? items_[m.numbers[2]].day.year : 0;
      const FactItem &one = items_[m.numbers[back ? 1 : 0]], &two = items_[m.numbers[back ? 0 : 1]];
      std::string day = begins ? fact_span_end(one, two, year, true) : fact_span_end(two, one, year, false);
      if (!day.empty()) put(field, std::move(day), m.first, m.last);
    } else if (is_date(field)) {
      std::string date; // "in by May 5": of the day itself, not of a time before it
      if (field == "reletOn") date = fact_span_end(n, n, 0, false);
      const bool whole = field != "reletOn" || n.number != NumberKind::date || n.day.day == 0 || n.day.year != 0;
      if (date.empty() && whole) date = fact_date(items_, at, rules_);
      if (!date.empty()) put(field, std::move(date), m.first, m.last);
    } else if (field == "ageYears" || field == "ageYearsAtMoveIn") {
      const std::int64_t second = m.count > 1 ? items_[m.numbers[1]].thousandths : 0;
      if (rule.unit == "rest" && m.count > 1) { // "3 years left of 8"
        const auto [left, life] = std::minmax(items_[m.numbers[0]].thousandths, second);
        const std::size_t longer = second == life ? m.numbers[1] : m.numbers[0];
        if (left < life) put(field, fact_age(items_, longer, rules_, -left, rule.unit), m.first, m.last);
        return;
      }
      const std::int64_t more = rule.unit == "years-months" ? (second + 6) / 12 : second == 500 ? 500 : 0;
      put(field, fact_age(items_, at, rules_, more, rule.unit), m.first, m.last);
    } else if (is_money(field)) {
      const bool bare = !n.currency && n.decimals == 0;
      if (field == "replacementCost" && bare && n.thousandths < 10'000) return; // "4 new blinds"
      if (field == "replacementCost" && !n.currency && n.number == NumberKind::year) return;
      if (rule.unit == "other-sum" && !n.currency && m.last > m.first + 3) return; // "bought 8/2021, top 310"
      if (rule.unit == "other-sum" && amount_ && n.thousandths / 10 == std::abs(amount_->in_cents())) return;
      if (n.thousandths % 10 == 0 && n.decimals <= 2) put(field, Money::cents(n.thousandths / 10), m.first, m.last);
    } else if (is_quantity(field)) {
      Quantity q{amount_of(n), rule.unit.empty() ? "each" : rule.unit};
      if (rule.unit == "size") { // "4x4 ft"
        if (n.over == 0 || n.under == 0) return;
        q = {n.over * n.under * 1000, "sq-ft"};
      } else if (rule.unit == "people-hours" && m.count > 1) { // "2 people 3 hours each"
        q = {amount_of(items_[m.numbers[0]]) * amount_of(items_[m.numbers[1]]) / 1000, "hour"};
      } else if (rule.unit == "rest" && m.count > 1) { // "issued 3, returned 2"
        q = {amount_of(items_[m.numbers[0]]) - amount_of(items_[m.numbers[1]]), "each"};
      } else if (rule.unit == "hours-minutes" && m.count > 1) { // "3h15"
        q = {amount_of(items_[m.numbers[0]]) + amount_of(items_[m.numbers[1]]) / 60, "hour"};
      } else if ((rule.unit == "wall" || rule.unit == "room") && n.under > 2 && n.over > 0 && n.over < n.under) {
        q.thousandths = n.over * 1000;         // "3/8 walls"
      } else if (rule.unit == "part-of-all") { // "5/12 vanes"
        q = {(field == "damagedQuantity" ? n.over : n.under) * 1000, "each"};
      } else if (rule.unit == "sum") { // "2 ea 6 inch, 2 ea 8 inch"
        q = {0, "each"};
        for (std::size_t k = 0; k < m.count; ++k) q.thousandths += items_[m.numbers[k]].thousandths;
      } else if (rule.unit == "minute") {
        q = {n.thousandths / 60, "hour"};
      }
      if (q.unit == "each" && (q.thousandths % 1000 != 0 || q.thousandths >= 1'000'000)) return; // "3068 door"
      if (q.thousandths > 0) put(field, q, m.first, m.last);
    } else if (field == "usefulLifeYears") {
      if (n.number == NumberKind::percent) return;
      const std::int64_t all = n.under > 0 ? n.under * 1000 : n.thousandths; // "2/7 of its life"
      const std::int64_t years = rule.unit == "months" ? (all + 6) / 12 : all;
      if (years >= 1000 && years <= 100'000) put(field, years, m.first, m.last);
    } else if (field == "count" && rule.unit == "sum" && m.count > 1) { // "3 large 11 small"
      std::int64_t all = 0;
      for (std::size_t k = 0; k < m.count; ++k) all += items_[m.numbers[k]].thousandths;
      if (all % 1000 == 0 && all < 1'000'000) put(field, all / 1000, m.first, m.last);
    } else if (field == "count") {
      if (n.thousandths % 1000 == 0 && n.thousandths < 1'000'000) put(field, n.thousandths / 1000, m.first, m.last);
    }
  }

  void take_sums(const SumFacts& sums) {
    if (!sums.parts.empty()) put("costComponents", sums.parts, sums.parts_first, sums.parts_last);
    const auto* count = value<std::int64_t>("count"); // holes and stains are counted, not charged by the piece
    const bool hourly = find("hourlyRate") != nullptr && sums.counted && sums.counted->unit == "each";
    if (sums.counted && !hourly && !(count && *count * 1000 == sums.counted->thousandths)) {
      // "of the six four died, four at $22 = $88": what comes to the sum is what was charged
      if (const auto* read = value<Quantity>("chargedQuantity");
          read && read->unit == "each" && sums.counted->unit == "each")
        drop("chargedQuantity");
      put("chargedQuantity", *sums.counted, sums.counted_first, sums.counted_last);
    }
    if (sums.price_new) put("replacementCost", *sums.price_new, sums.price_first, sums.price_last);
  }

  /// The sum charged; where none is known, the one number that can be it.
  Money sum_of_all() const {
    if (amount_ && amount_->in_cents() != 0) return Money::cents(std::abs(amount_->in_cents()));
    std::int64_t cents = 0;
    for (std::size_t i = 0; i < items_.size(); ++i) {
      const FactItem& n = items_[i];
      if (n.kind != FactItem::Kind::number || n.worded || n.no_count || n.thousandths < 5000 ||
          n.thousandths % 10 != 0 || !(n.number == NumberKind::money || n.number == NumberKind::plain))
        continue;
      if (i + 1 < items_.size() && (rules_.in_class(items_[i + 1], "measure-word") || items_[i + 1].thing)) continue;
      if (cents != 0) return {};
      cents = n.thousandths / 10;
    }
    return Money::cents(cents);
  }

  /// "Pane 41.30, my own time is free": all of the sum is of one kind; a number named with it has to be that sum.
  void take_whole(CostComponent component, const FactMatch& m) {
    const Money sum = sum_of_all();
    if (sum.in_cents() == 0) return;
    if (m.count > 0 && items_[m.numbers[0]].thousandths / 10 != sum.in_cents()) return;
    whole_ = WordFact{"costComponents", std::vector<Part>{{component, sum, {}}}, 0, 0};
    whole_->start = text_.tokens[items_[m.first].first].start;
    whole_->end = text_.tokens[items_[m.last].last].end;
  }

  /// All of a row are charged where at most some of it was read.
  void take_row(const std::optional<NamedRow>& row) {
    if (!row || find("count") || find("damagedQuantity")) return;
    if (const WordFact* there = find("chargedQuantity")) {
      const auto& read = std::get<Quantity>(there->value);
      const std::uint32_t start = text_.tokens[items_[row->first].first].start;
      const std::uint32_t end = text_.tokens[items_[row->last].last].end;
      if (read.unit != row->all.unit || read.thousandths >= row->all.thousandths || there->start >= end ||
          there->end <= start)
        return;
      drop("chargedQuantity");
    }
    if (!row->only_where) put("chargedQuantity", row->all, row->first, row->last);
  }

  void drop(std::string_view field) {
    std::erase_if(out_, [&](const WordFact& f) { return f.field == field; });
  }

  /// What the words of one line may not say together.
  void settle(const std::optional<Money>& amount, ChargeKind kind) {
    // A fee has no age, though its month is named.
    if (kind == ChargeKind::fee || kind == ChargeKind::rent || kind == ChargeKind::utility)
      for (const std::string_view field : {"installed", "ageYears", "ageYearsAtMoveIn"}) drop(field);
    // What was reported and left is told better by the fault itself.
    if (auto* factors = value<std::vector<std::string>>("landlordFactors"); factors && factors->size() > 1)
      std::erase(*factors, "landlord-duty");
    const auto* charged = value<Quantity>("chargedQuantity");
    const auto* damaged = value<Quantity>("damagedQuantity");
    // "painted all 4 walls, only one had marks"
    if (auto* part = value<Quantity>("damagedQuantity"); charged && part && part->unit == "each" &&
                                                         (charged->unit == "wall" || charged->unit == "room") &&
                                                         part->thousandths < charged->thousandths)
      part->unit = charged->unit;
    if (charged && damaged && charged->unit == damaged->unit && damaged->thousandths > charged->thousandths)
      drop("damagedQuantity");
    const auto sums = std::count_if(items_.begin(), items_.end(), [](const FactItem& n) {
      const bool small = !n.currency && n.decimals == 0 && n.thousandths < 10'000; // a number of holes or years
      return n.kind == FactItem::Kind::number && !n.worded && !small &&
             (n.number == NumberKind::money || n.number == NumberKind::plain);
    });
    if (const WordFact* price = find("repairCost");
        price && amount && std::get<Money>(price->value) == *amount && sums < 2) {
      const std::uint32_t start = price->start, end = price->end;
      drop("repairCost"); // "Repair cost $90" is the charge itself, and so is "$90 to mend"
      if (!find("remedy")) out_.push_back({"remedy", std::string("repair"), start, end});
    }
    if (const WordFact* parts = find("costComponents")) // "50 labor 12 stain" is no count
      for (const std::string_view field : {std::string_view("count"), std::string_view("chargedQuantity")})
        if (const WordFact* count = find(field); count && count->end > parts->start && count->start < parts->end) {
          const auto* quantity = std::get_if<Quantity>(&count->value);
          if (!quantity || quantity->unit == "each") drop(field);
        }
    if (const auto* parts = value<std::vector<Part>>("costComponents"); parts && amount) {
      Money sum;
      for (const Part& p : *parts) sum += p.amount;
      const bool more = sum.in_cents() > std::abs(amount->in_cents());
      const bool of_parts =
          std::any_of(parts->begin(), parts->end(), [&](const Part& p) { return p.amount == *amount; });
      if (more && !of_parts) drop("costComponents"); // else one of the parts was taken for the sum
    }
  }

  const MarkedText& text_;
  const FactRules& rules_;
  const std::optional<Money>& amount_;
  std::vector<FactItem> items_;
  std::optional<WordFact> whole_; ///< what all of the sum is for, by the words
  WordFacts out_;
};

} // namespace

WordFacts word_facts(const MarkedText& text, std::string_view source, const FactRules& rules, const Lexicon& charges,
                     ChargeKind kind, const std::optional<Money>& amount) {
  return FactReader(text, source, rules, charges, kind, amount).run();
}

} // namespace wearline
