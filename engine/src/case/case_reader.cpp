#include "case/case_reader.h"

#include "json/json_text.h"
#include "json/json_tree.h"
#include <algorithm>
#include <initializer_list>
#include <set>

namespace wearline {

namespace {

const NameSet& deposit_kinds() {
  static const NameSet names{"security", "pet", "last-month", "cleaning", "key", "utility", "furniture", "other"};
  return names;
}
const NameSet& line_kinds() {
  static const NameSet names{"damage", "cleaning", "rent", "fee", "utility", "keys", "disposal", "other"};
  return names;
}
const NameSet& tenancy_kinds() {
  static const NameSet names{"fixed-term", "periodic", "at-will", "seasonal"};
  return names;
}
const NameSet& sending_ways() {
  static const NameSet names{"mail",
                             "first-class-mail",
                             "certified-mail",
                             "registered-mail",
                             "personal-delivery",
                             "email",
                             "text",
                             "left-at-door",
                             "mail-slot",
                             "fax",
                             "portal",
                             "other"};
  return names;
}
const NameSet& sides() {
  static const NameSet names{"tenant", "adviser", "landlord"};
  return names;
}
const NameSet& languages() {
  static const NameSet names{"en", "es"};
  return names;
}
const NameSet& remedies() {
  static const NameSet names{"replace", "repair", "clean"};
  return names;
}
const NameSet& severities() {
  static const NameSet names{"light", "moderate", "heavy"};
  return names;
}
constexpr std::pair<std::string_view, Nature> natures[] = {
    {"materials", Nature::materials}, {"labour", Nature::labour},     {"repair-labour", Nature::repair_labour},
    {"treatment", Nature::treatment}, {"cleaning", Nature::cleaning}, {"disposal", Nature::disposal},
    {"delivery", Nature::delivery},   {"tax", Nature::tax},           {"call-out", Nature::call_out},
    {"mark-up", Nature::mark_up},     {"other", Nature::other}};
} // namespace

std::string_view name_of(Nature nature) {
  for (const auto& [name, value] : natures)
    if (value == nature) return name;
  return "other";
}

namespace {

const NameSet& nature_names() {
  static const NameSet names = [] {
    NameSet set;
    for (const auto& [name, nature] : natures) set.add(name);
    return set;
  }();
  return names;
}

/// One JSON value of the case, the way to it (written out only for a fault), and the list faults go to. A cursor must
/// not outlive the one it was made from.
class Cursor {
public:
  Cursor(const JsonTree& tree, Faults& faults) : json_(&tree.root()), tree_(&tree), faults_(&faults) {}

  const JsonValue& json() const { return *json_; }
  std::span<const JsonValue> members() const { return tree_->members(*json_); }
  std::string at() const {
    if (!parent_) return {};
    return parent_->at() + '/' + (name_.data() ? pointer_segment(name_) : std::to_string(index_));
  }
  const JsonValue* find(std::string_view name) const { return tree_->find(*json_, name); }
  Cursor member(std::string_view name) const { return {*find(name), this, name, 0}; }
  Cursor member(const JsonValue& value) const { return {value, this, value.name, 0}; }
  Cursor item(std::size_t index) const { return {members()[index], this, {}, index}; }
  /// The member, where it is there and not null.
  std::optional<Cursor> get(std::string_view name) const {
    const JsonValue* found = find(name);
    if (!found || found->is_null()) return std::nullopt;
    return Cursor(*found, this, name, 0);
  }
  bool has(std::string_view name) const {
    const JsonValue* found = find(name);
    return found && !found->is_null();
  }
  void fault(std::string code, std::string text, std::string near = {}) const {
    faults_->push_back({std::move(code), at(), std::move(text), std::move(near)});
  }

  /// True if this is an object holding only known names; reports each unknown one.
  bool object(std::initializer_list<std::string_view> known) const {
    if (!json_->is_object()) {
      fault("wrong-type", "This must be an object, { ... }.");
      return false;
    }
    for (const JsonValue& member : members()) {
      if (std::find(known.begin(), known.end(), member.name) != known.end()) continue;
      const std::string near = NameSet(known).nearest(member.name);
      faults_->push_back({"unknown-member", at() + '/' + pointer_segment(member.name),
                          "\"" + std::string(member.name) + "\" is not a name that belongs here." +
                              (near.empty() ? "" : " Did you mean \"" + near + "\"?"),
                          near});
    }
    return true;
  }
  bool array() const {
    if (json_->is_list()) return true;
    fault("wrong-type", "This must be a list, [ ... ].");
    return false;
  }

  const std::string_view* text_ptr() const { return json_->if_text(); }

private:
  Cursor(const JsonValue& json, const Cursor* parent, std::string_view name, std::size_t index)
      : json_(&json), tree_(parent->tree_), parent_(parent), name_(name), index_(index), faults_(parent->faults_) {}

  const JsonValue* json_;
  const JsonTree* tree_;
  const Cursor* parent_ = nullptr;
  std::string_view name_;
  std::size_t index_ = 0;
  Faults* faults_;
};

void read(const Cursor& c, std::string& out) {
  if (const auto* s = c.text_ptr()) out = *s;
  else c.fault("wrong-type", "This must be text in quotation marks.");
}

void read(const Cursor& c, Tri& out) {
  if (const bool* yes = c.json().if_yes_no()) out = *yes;
  else c.fault("wrong-type", "This must be true, false or null.");
}

/// A whole number from `least` to `most`.
void read_count(const Cursor& c, std::optional<long>& out, long least, long most) {
  std::int64_t value = 0;
  if (const auto* u = c.json().if_whole()) value = *u > 1'000'000'000 ? 1'000'000'000 : static_cast<std::int64_t>(*u);
  else if (const auto* i = c.json().if_below_zero()) value = *i;
  else return c.fault("wrong-type", "This must be a whole number without quotation marks.");
  if (value < least || value > most)
    return c.fault("out-of-range", "This must be from " + std::to_string(least) + " to " + std::to_string(most) + ".");
  out = static_cast<long>(value);
}

void read(const Cursor& c, std::optional<Money>& out) {
  const auto* s = c.text_ptr();
  if (!s) return c.fault("wrong-type", "Amounts are text, such as \"1240.00\", so that no cent is lost.");
  out = Money::parse(*s);
  if (out) return;
  if (!s->empty() && s->front() == '-')
    c.fault("bad-amount", "An amount cannot be negative here. A line that lowers the charges has no minus sign and "
                          "\"credit\": true.");
  else
    c.fault("bad-amount", "This is not an amount. Write it like \"1240.00\": digits, a point, two decimals, at most "
                          "ten digits before the point.");
}

void read(const Cursor& c, std::optional<DaySpan>& out) {
  const auto* s = c.text_ptr();
  if (!s) return c.fault("wrong-type", "Dates are text, such as \"2026-07-31\".");
  out = parse_day_span(*s);
  if (!out)
    c.fault("bad-date", "This is not a date that exists. Write it like \"2026-07-31\", or \"2019-06\", \"2019\", "
                        "\"2019~\", \"../2020\" where it is not certain.");
}

/// A name of `known` or, where it is given, of `more`; any name where both are empty.
void read_name(const Cursor& c, std::string& out, const NameSet& known, std::string_view what,
               const NameSet* more = nullptr) {
  const auto* s = c.text_ptr();
  if (!s) return c.fault("wrong-type", "This must be text in quotation marks.");
  const bool any = known.sorted().empty() && (!more || more->sorted().empty());
  if (any || known.has(*s) || (more && more->has(*s))) {
    out = *s;
    return;
  }
  NameSet all = known;
  if (more)
    for (const std::string& name : more->sorted()) all.add(name);
  const std::string near = all.nearest(*s);
  c.fault("unknown-name",
          "\"" + std::string(*s) + "\" is not a known " + std::string(what) + "." +
              (near.empty() ? "" : " Did you mean \"" + near + "\"?"),
          near);
}

void read_names(const Cursor& c, std::vector<std::string>& out, const NameSet& known, std::string_view what) {
  if (!c.array()) return;
  for (std::size_t i = 0; i < c.members().size(); ++i) {
    std::string name;
    read_name(c.item(i), name, known, what);
    if (!name.empty()) out.push_back(std::move(name));
  }
}

/// Papers by name or by another usual name ("invoice" is a receipt).
void read_papers(const Cursor& c, std::vector<std::string>& out, const CaseNames& names) {
  read_names(c, out, names.papers, "paper");
  for (std::string& paper : out)
    if (const auto alias = names.paper_aliases.find(paper); alias != names.paper_aliases.end()) paper = alias->second;
}

/// A decimal with at most three places as thousandths; text or JSON number without exponent.
std::optional<std::int64_t> thousandths(std::string_view text) {
  std::int64_t whole = 0, fraction = 0;
  std::size_t at = 0;
  int digits = 0, places = 0;
  for (; at < text.size() && text[at] >= '0' && text[at] <= '9'; ++at, ++digits) {
    if (digits == 7) return std::nullopt;
    whole = whole * 10 + (text[at] - '0');
  }
  if (digits == 0) return std::nullopt;
  if (at < text.size() && text[at] == '.') {
    for (++at; at < text.size() && text[at] >= '0' && text[at] <= '9'; ++at, ++places) {
      if (places == 3) return std::nullopt;
      fraction = fraction * 10 + (text[at] - '0');
    }
    if (places == 0) return std::nullopt;
  }
  if (at != text.size()) return std::nullopt;
  for (; places < 3; ++places) fraction *= 10;
  return whole * 1000 + fraction;
}

std::optional<std::int64_t> read_thousandths(const Cursor& c) {
  std::optional<std::int64_t> value;
  if (const auto* u = c.json().if_whole()) {
    if (*u < 10'000'000) value = static_cast<std::int64_t>(*u) * 1000;
  } else if (const auto* s = c.text_ptr()) {
    value = thousandths(*s);
  } else if (const auto* f = c.json().if_real()) {
    const double scaled = *f * 1000;
    if (scaled >= 0 && scaled < 1e10 && scaled == static_cast<double>(static_cast<std::int64_t>(scaled + 0.5)))
      value = static_cast<std::int64_t>(scaled + 0.5);
  }
  if (!value) c.fault("bad-number", "This must be a number from 0 to 9999999 with at most three decimals.");
  return value;
}

void read(const Cursor& c, std::optional<Quantity>& out) {
  if (!c.object({"count", "unit"})) return;
  Quantity q;
  if (!c.has("count")) return c.fault("missing-member", "A quantity needs a \"count\".");
  const auto value = read_thousandths(c.member("count"));
  if (!value) return;
  q.thousandths = *value;
  if (c.has("unit")) read(c.member("unit"), q.unit);
  out = q;
}

/// A yearly rate "0.0125" (at most six decimals, below 1) as an exact share.
void read_rate(const Cursor& c, std::optional<Share>& out) {
  const auto* s = c.text_ptr();
  std::int64_t num = 0, den = 1;
  bool good = s && s->size() >= 3 && s->size() <= 8 && (*s)[0] == '0' && (*s)[1] == '.';
  for (std::size_t i = 2; good && i < s->size(); ++i, den *= 10) {
    good = (*s)[i] >= '0' && (*s)[i] <= '9';
    num = num * 10 + ((*s)[i] - '0');
  }
  if (good) out = Share{num, den};
  else c.fault("bad-rate", "A yearly rate is text such as \"0.0125\" for 1.25 percent.");
}

template <class T> void take(const Cursor& c, std::string_view name, T& out) {
  if (const auto member = c.get(name)) read(*member, out);
}
void take_name(const Cursor& c, std::string_view name, std::string& out, const NameSet& known, std::string_view what) {
  if (const auto member = c.get(name)) read_name(*member, out, known, what);
}

void read_tenancy(const Cursor& c, Tenancy& t) {
  if (!c.object({"began", "ended", "possessionReturned", "kind", "monthlyRent", "rentPaidThrough",
                 "forwardingAddressGiven", "landlordUnits", "buildingUnits", "ownerOccupied", "occupants"}))
    return;
  take(c, "began", t.began);
  take(c, "ended", t.ended);
  take(c, "possessionReturned", t.possession_returned);
  take_name(c, "kind", t.kind, tenancy_kinds(), "kind of tenancy");
  take(c, "monthlyRent", t.monthly_rent);
  take(c, "rentPaidThrough", t.rent_paid_through);
  take(c, "forwardingAddressGiven", t.forwarding_address_given);
  if (c.has("landlordUnits")) read_count(c.member("landlordUnits"), t.landlord_units, 0, 1'000'000);
  if (c.has("buildingUnits")) read_count(c.member("buildingUnits"), t.building_units, 0, 1'000'000);
  if (c.has("occupants")) read_count(c.member("occupants"), t.occupants, 1, 1000);
  take(c, "ownerOccupied", t.owner_occupied);
  if (t.began && t.ended && t.ended->latest < t.began->earliest)
    c.member("ended").fault("ends-before-it-begins", "The tenancy ends before it begins. Check both dates.");
  if (t.began && t.possession_returned && t.possession_returned->latest < t.began->earliest)
    c.member("possessionReturned")
        .fault("ends-before-it-begins", "The keys came back before the tenancy began. Check both dates.");
}

void read_deposit(const Cursor& c, Deposit& d) {
  if (!c.object({"kind", "amount", "paid", "interestPaid", "bankRate"})) return;
  take_name(c, "kind", d.kind, deposit_kinds(), "kind of deposit");
  take(c, "amount", d.amount);
  take(c, "paid", d.paid);
  take(c, "interestPaid", d.interest_paid);
  if (c.has("bankRate")) read_rate(c.member("bankRate"), d.bank_rate);
}

void read_statement(const Cursor& c, Statement& s, const CaseNames& names) {
  if (!c.object({"dated", "sent", "received", "how", "statedTotal", "statedRefund", "statedBalanceDue", "refundPaid",
                 "refundSent", "enclosed", "missing", "came"}))
    return;
  take(c, "dated", s.dated);
  take(c, "sent", s.sent);
  take(c, "received", s.received);
  take(c, "refundSent", s.refund_sent);
  take_name(c, "how", s.how, sending_ways(), "way of sending");
  take(c, "statedTotal", s.stated_total);
  take(c, "statedRefund", s.stated_refund);
  take(c, "statedBalanceDue", s.stated_balance_due);
  take(c, "refundPaid", s.refund_paid);
  take(c, "came", s.came);
  if (c.has("enclosed")) read_papers(c.member("enclosed"), s.enclosed, names);
  if (c.has("missing")) read_papers(c.member("missing"), s.missing, names);
  if (s.sent && s.received && s.received->latest < s.sent->earliest)
    c.member("received").fault("received-before-sent", "The statement arrived before it was sent. Check both dates.");
}

void read_checklist(const Cursor& c, Checklist& list) {
  if (!c.object({"made", "signedByBoth", "tenantHasCopy"})) return;
  take(c, "made", list.made);
  take(c, "signedByBoth", list.signed_by_both);
  take(c, "tenantHasCopy", list.tenant_has_copy);
}

void read_records(const Cursor& c, Records& r) {
  if (!c.object({"moveInChecklist", "moveOutChecklist", "preMoveOutInspection", "photosAtMoveIn", "photosAtMoveOut"}))
    return;
  if (c.has("moveInChecklist")) read_checklist(c.member("moveInChecklist"), r.move_in);
  if (c.has("moveOutChecklist")) read_checklist(c.member("moveOutChecklist"), r.move_out);
  if (c.has("preMoveOutInspection")) {
    const Cursor i = c.member("preMoveOutInspection");
    if (i.object({"offered", "requested", "held"})) {
      take(i, "offered", r.inspection_offered);
      take(i, "requested", r.inspection_requested);
      take(i, "held", r.inspection_held);
    }
  }
  take(c, "photosAtMoveIn", r.photos_at_move_in);
  take(c, "photosAtMoveOut", r.photos_at_move_out);
}

void read_part(const Cursor& c, std::vector<Part>& out) {
  if (!c.object({"nature", "amount", "ages"})) return;
  std::string nature;
  take_name(c, "nature", nature, nature_names(), "nature of a part");
  std::optional<Money> amount;
  take(c, "amount", amount);
  if (!c.has("nature") || !c.has("amount"))
    return c.fault("missing-member", "A part needs a \"nature\" and an \"amount\".");
  Tri ages;
  take(c, "ages", ages);
  if (!amount || nature.empty()) return;
  Part part{Nature::other, *amount, ages};
  for (const auto& [name, value] : natures)
    if (name == nature) part.nature = value;
  out.push_back(part);
}

void read_life_years(const Cursor& c, std::optional<long>& months) {
  const auto value = read_thousandths(c);
  if (!value) return;
  const std::int64_t rounded = (*value * 12 + 500) / 1000;
  if (rounded < 1 || rounded > 2400) return c.fault("out-of-range", "A useful life is from one month to 200 years.");
  months = static_cast<long>(rounded);
}

/// An age in years: a number, or text for one that is not certain ("5~", "7/..", "../3", "5/6").
void read_age(const Cursor& c, std::string& out) {
  std::string text;
  if (const auto* s = c.text_ptr()) text = *s;
  else if (const auto value = read_thousandths(c)) text = plain_thousandths(*value);
  else return;
  if (!age_span(text))
    return c.fault("bad-age", "This is not an age in years. Write a number such as 5 or 1.5, or \"5~\" (about), "
                              "\"7/..\" (at least), \"../3\" (at most), \"5/6\" (between).");
  out = text;
}

void read_line(const Cursor& c, Line& l, const CaseNames& names) {
  if (!c.object({"id",
                 "text",
                 "amount",
                 "kind",
                 "element",
                 "finding",
                 "place",
                 "quality",
                 "installed",
                 "atMoveIn",
                 "cause",
                 "severity",
                 "count",
                 "landlordFactors",
                 "parts",
                 "charged",
                 "damaged",
                 "remedy",
                 "repairPrice",
                 "priceNew",
                 "lifeYears",
                 "lifeSource",
                 "method",
                 "labourAges",
                 "credit",
                 "proof",
                 "proofMissing",
                 "onMoveOutRecord",
                 "inLease",
                 "workDone",
                 "hours",
                 "hourlyRate",
                 "from",
                 "to",
                 "reletOn",
                 "ageYears",
                 "ageYearsAtMoveIn",
                 "notFromWords",
                 "note"}))
    return;
  take(c, "id", l.id);
  take(c, "text", l.text);
  take(c, "note", l.note);
  take(c, "place", l.place);
  take(c, "quality", l.quality);
  take(c, "amount", l.amount);
  take_name(c, "kind", l.kind, line_kinds(), "kind of charge");
  take_name(c, "element", l.element, names.elements, "thing");
  if (c.has("finding")) {
    static const NameSet any;
    const auto of_element = names.findings.find(l.element);
    read_name(c.member("finding"), l.finding, of_element == names.findings.end() ? any : of_element->second,
              "finding of this thing");
  }
  take(c, "installed", l.installed);
  if (c.has("ageYears")) read_age(c.member("ageYears"), l.age_years);
  if (c.has("ageYearsAtMoveIn")) read_age(c.member("ageYearsAtMoveIn"), l.age_years_at_move_in);
  take_name(c, "atMoveIn", l.at_move_in, names.at_move_in, "state at move-in");
  take_name(c, "cause", l.cause, names.causes, "cause");
  take_name(c, "severity", l.severity, severities(), "severity");
  if (c.has("count")) read_count(c.member("count"), l.count, 0, 1'000'000);
  if (c.has("landlordFactors"))
    read_names(c.member("landlordFactors"), l.landlord_factors, names.landlord_factors, "landlord's factor");
  if (c.has("parts")) {
    const Cursor parts = c.member("parts");
    if (parts.array())
      for (std::size_t i = 0; i < parts.members().size(); ++i) read_part(parts.item(i), l.parts);
  }
  take(c, "charged", l.charged);
  take(c, "damaged", l.damaged);
  take_name(c, "remedy", l.remedy, remedies(), "remedy");
  take(c, "repairPrice", l.repair_price);
  take(c, "priceNew", l.price_new);
  if (c.has("lifeYears")) read_life_years(c.member("lifeYears"), l.life_months);
  take_name(c, "lifeSource", l.life_source, names.life_sources, "source of useful lives");
  take_name(c, "method", l.method, names.methods, "method");
  take(c, "labourAges", l.labour_ages);
  take(c, "credit", l.credit);
  if (c.has("proof")) read_papers(c.member("proof"), l.proof, names);
  if (c.has("proofMissing")) read_papers(c.member("proofMissing"), l.proof_missing, names);
  take(c, "onMoveOutRecord", l.on_move_out_record);
  take(c, "inLease", l.in_lease);
  take(c, "workDone", l.work_done);
  take(c, "hours", l.hours);
  take(c, "hourlyRate", l.hourly_rate);
  take(c, "from", l.from);
  take(c, "to", l.to);
  take(c, "reletOn", l.relet_on);
  if (c.has("notFromWords"))
    read_names(c.member("notFromWords"), l.not_from_words, word_fact_names(), "fact that words can give");

  if (l.amount && !l.parts.empty()) {
    Money sum;
    for (const Part& part : l.parts) sum += part.amount;
    if (sum > *l.amount)
      c.member("parts").fault("parts-exceed-amount", "The parts come to " + sum.plain() + ", more than the charge of " +
                                                         l.amount->plain() + ".");
  }
  if (l.charged && l.damaged && l.charged->unit == l.damaged->unit && l.damaged->thousandths > l.charged->thousandths)
    c.member("damaged").fault("more-damaged-than-charged",
                              "More is marked damaged than was charged. Check both counts.");
  if (l.charged && l.charged->thousandths == 0)
    c.member("charged").fault("out-of-range", "The charged count must be more than zero.");
  if (l.from && l.to && l.to->latest < l.from->earliest)
    c.member("to").fault("ends-before-it-begins", "The period ends before it begins. Check both dates.");
}

const CaseNames::OfPlace& of_place(const CaseNames& names, const std::string& jurisdiction) {
  static const CaseNames::OfPlace none;
  const auto found = names.places.find(jurisdiction);
  return found == names.places.end() ? none : found->second;
}

void read_circumstances(const Cursor& c, std::map<std::string, FactValue>& out, const CaseNames& names,
                        const CaseNames::OfPlace& place) {
  if (!c.json().is_object()) return c.fault("wrong-type", "This must be an object, { ... }.");
  for (const JsonValue& item : c.members()) {
    const Cursor at = c.member(item);
    const std::string name(item.name);
    const auto shared = names.circumstances.find(name);
    const auto own = place.circumstances.find(name);
    if (shared == names.circumstances.end() && own == place.circumstances.end()) {
      NameSet all;
      for (const auto& [known, type] : names.circumstances) all.add(known);
      for (const auto& [known, type] : place.circumstances) all.add(known);
      const std::string near = all.nearest(name);
      at.fault("unknown-member",
               "\"" + name + "\" is not a known circumstance." +
                   (near.empty() ? "" : " Did you mean \"" + near + "\"?"),
               near);
      continue;
    }
    if (item.is_null()) continue;
    const FactType type = shared != names.circumstances.end() ? shared->second : own->second;
    if (type == FactType::yes_no) {
      Tri value;
      read(at, value);
      if (value) out.emplace(name, *value);
    } else if (type == FactType::count) {
      std::optional<long> value;
      read_count(at, value, 0, 1'000'000);
      if (value) out.emplace(name, *value);
    } else if (type == FactType::money) {
      std::optional<Money> value;
      read(at, value);
      if (value) out.emplace(name, *value);
    } else {
      std::string value;
      read(at, value);
      if (!value.empty()) out.emplace(name, std::move(value));
    }
  }
}

void read_events(const Cursor& c, std::vector<Event>& out, const CaseNames& names, const CaseNames::OfPlace& place) {
  if (!c.array()) return;
  for (std::size_t i = 0; i < c.members().size(); ++i) {
    const Cursor e = c.item(i);
    if (!e.object({"what", "on"})) continue;
    if (!e.has("what") || !e.has("on")) {
      e.fault("missing-member", "An event needs \"what\" and \"on\".");
      continue;
    }
    Event event;
    read_name(e.member("what"), event.what, names.events, "event", &place.events);
    std::optional<DaySpan> on;
    read(e.member("on"), on);
    if (on && !event.what.empty()) {
      event.on = *on;
      out.push_back(std::move(event));
    }
  }
}

void read_jurisdiction(const Cursor& c, std::string& out, const CaseNames& names) {
  const auto* s = c.text_ptr();
  if (!s) return c.fault("wrong-type", "This must be text such as \"US-WA\".");
  if (names.jurisdictions.sorted().empty() || names.jurisdictions.has(*s) || names.places_without_pack.has(*s)) {
    out = *s;
    return;
  }
  const std::string near = names.jurisdictions.nearest(*s);
  c.fault("unknown-jurisdiction",
          "\"" + std::string(*s) + "\" is not a place we know. Use a code such as \"US-WA\" or \"CA-BC\"." +
              (near.empty() ? "" : " Did you mean \"" + near + "\"?"),
          near);
}

void read_lines(const Cursor& c, std::vector<Line>& out, const CaseNames& names) {
  if (!c.array()) return;
  if (c.members().size() > max_lines)
    return c.fault("too-many-lines", "A case holds at most " + std::to_string(max_lines) + " lines; this one has " +
                                         std::to_string(c.members().size()) + ".");
  std::set<std::string_view> ids;
  out.reserve(c.members().size());
  for (std::size_t i = 0; i < c.members().size(); ++i) {
    Line& line = out.emplace_back();
    read_line(c.item(i), line, names);
    if (line.id.empty()) line.id = std::to_string(i + 1);
    if (!ids.insert(line.id).second)
      c.item(i).fault("duplicate-id", "Two lines have the id \"" + line.id + "\". Give each its own.");
  }
}

const NameSet& states_seen() {
  static const NameSet names{"fine", "worn", "damaged", "dirty", "missing"};
  return names;
}

void read_seen_thing(const Cursor& c, SeenThing& thing, const CaseNames& names) {
  if (!c.object({"id", "room", "element", "finding", "moveIn", "moveOut", "cause", "note", "installed", "quote", "seen",
                 "putRight", "onTheirList", "line"}))
    return;
  take(c, "id", thing.id);
  take(c, "room", thing.room);
  take_name(c, "element", thing.element, names.elements, "thing");
  if (thing.element.empty()) c.fault("missing-member", "A thing that was seen needs \"element\".");
  if (c.has("finding")) {
    static const NameSet any;
    const auto of_element = names.findings.find(thing.element);
    read_name(c.member("finding"), thing.finding, of_element == names.findings.end() ? any : of_element->second,
              "finding of this thing");
  }
  take_name(c, "moveIn", thing.move_in, states_seen(), "state");
  take_name(c, "moveOut", thing.move_out, states_seen(), "state");
  take_name(c, "cause", thing.cause, names.causes, "cause");
  take(c, "note", thing.note);
  take(c, "installed", thing.installed);
  take(c, "quote", thing.quote);
  take(c, "seen", thing.seen);
  take(c, "putRight", thing.put_right);
  take(c, "onTheirList", thing.on_their_list);
  take(c, "line", thing.line);
}

/// The ids of a list are each used once; an empty one is left to the reader of the file.
template <class Item> void each_once(const Cursor& c, const std::vector<Item>& items) {
  std::set<std::string_view> ids;
  for (std::size_t i = 0; i < items.size(); ++i)
    if (!items[i].id.empty() && !ids.insert(items[i].id).second)
      c.item(i).fault("duplicate-id", "Two of these have the id \"" + items[i].id + "\". Give each its own.");
}

/// The items of a list, at most `most`.
template <class Item, class Read>
void read_list(const Cursor& c, std::vector<Item>& out, std::size_t most, Read&& read_item) {
  if (!c.array()) return;
  if (c.members().size() > most)
    return c.fault("too-many-lines", "A walk-through holds at most " + std::to_string(most) + " of these.");
  for (std::size_t i = 0; i < c.members().size(); ++i) read_item(c.item(i), out.emplace_back());
}

void read_walk_through(const Cursor& c, WalkThrough& out, const CaseNames& names) {
  if (!c.object({"on", "finished", "listGiven", "listDated", "builtBefore1978", "rooms", "things", "leaving"})) return;
  take(c, "on", out.on);
  take(c, "finished", out.finished);
  take(c, "listGiven", out.list_given);
  take(c, "listDated", out.list_dated);
  take(c, "builtBefore1978", out.built_before_1978);
  if (c.has("rooms")) {
    read_list(c.member("rooms"), out.rooms, max_lines, [](const Cursor& room, SeenRoom& seen) {
      if (!room.object({"id", "kind", "name"})) return;
      take(room, "id", seen.id);
      take(room, "kind", seen.kind);
      take(room, "name", seen.name);
    });
    each_once(c.member("rooms"), out.rooms);
  }
  if (c.has("things")) {
    read_list(c.member("things"), out.things, max_lines,
              [&](const Cursor& thing, SeenThing& seen) { read_seen_thing(thing, seen, names); });
    each_once(c.member("things"), out.things);
  }
  if (c.has("leaving"))
    read_list(c.member("leaving"), out.leaving, 100, [](const Cursor& done, std::string& name) { read(done, name); });
}

} // namespace

std::variant<Case, Faults> read_case(std::string_view text, const CaseNames& names) {
  if (text.size() > max_case_bytes)
    return Faults{{"too-long", "", "This file is longer than a case can be (16 MiB).", ""}};
  auto parsed = parse_tree(text);
  if (auto* fault = std::get_if<Fault>(&parsed)) return Faults{std::move(*fault)};

  Faults faults;
  Case out;
  const Cursor c(std::get<JsonTree>(parsed), faults);
  if (!c.object({"wearline", "jurisdiction", "locality", "side", "language", "title", "showMethods", "tenancy",
                 "deposits", "statement", "records", "events", "circumstances", "lines", "walkThrough", "page"}))
    return faults;
  const JsonValue* version = c.find("wearline");
  if (!version) c.fault("missing-member", "A case file begins with \"wearline\": 1.");
  else if (const std::uint64_t* number = version->if_whole(); !number || *number != 1)
    c.member("wearline").fault("unknown-version", "This version of the case file is not known. It must be 1.");

  if (c.has("jurisdiction")) read_jurisdiction(c.member("jurisdiction"), out.jurisdiction, names);
  take(c, "locality", out.locality);
  take_name(c, "side", out.side, sides(), "side");
  take_name(c, "language", out.language, languages(), "language");
  std::string title;
  take(c, "title", title);
  Tri show_methods;
  take(c, "showMethods", show_methods);
  out.show_methods = show_methods.value_or(false);
  if (c.has("tenancy")) read_tenancy(c.member("tenancy"), out.tenancy);
  if (c.has("deposits")) {
    const Cursor deposits = c.member("deposits");
    if (deposits.array()) {
      if (deposits.members().size() > 100) deposits.fault("too-many-lines", "A case holds at most 100 deposits.");
      for (std::size_t i = 0; i < deposits.members().size() && i < 100; ++i) {
        out.deposits.emplace_back();
        read_deposit(deposits.item(i), out.deposits.back());
      }
    }
  }
  if (c.has("statement")) read_statement(c.member("statement"), out.statement, names);
  if (c.has("records")) read_records(c.member("records"), out.records);
  if (c.has("events")) read_events(c.member("events"), out.events, names, of_place(names, out.jurisdiction));
  if (c.has("circumstances"))
    read_circumstances(c.member("circumstances"), out.circumstances, names, of_place(names, out.jurisdiction));
  if (c.has("walkThrough")) read_walk_through(c.member("walkThrough"), out.walk_through.emplace(), names);
  // What the page keeps with a case: its id, own words in letters, photos. Nothing of it is judged.
  if (c.has("page") && !c.member("page").json().is_object())
    c.member("page").fault("wrong-type", "This must be an object, { ... }.");
  if (c.has("lines")) read_lines(c.member("lines"), out.lines, names);
  else c.fault("missing-member", "A case file needs \"lines\", a list of the charges (it may be empty).");

  if (!faults.empty()) return faults;
  return out;
}

} // namespace wearline
