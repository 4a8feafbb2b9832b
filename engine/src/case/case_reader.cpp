#include "case/case_reader.h"

#include "case/cursor.h"
#include "case/walk_through_reader.h"
#include "values/ascii.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <set>

namespace wearline {

namespace {

const NameSet& deposit_kinds() {
  static const NameSet names{"security", "pet", "last-month", "cleaning", "key", "utility", "furniture", "other"};
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
                             "text-message",
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
const NameSet& severities() {
  static const NameSet names{"light", "moderate", "heavy"};
  return names;
}
} // namespace

std::string_view name_of(CostComponent component) {
  for (const auto& [name, value] : cost_components)
    if (value == component) return name;
  return "other";
}

namespace {

const NameSet& component_names() {
  static const NameSet names = [] {
    NameSet set;
    for (const auto& [name, component] : cost_components) set.add(name);
    return set;
  }();
  return names;
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

void read_names(const Cursor& c, std::vector<std::string>& out, const NameSet& known, std::string_view what) {
  if (!c.array()) return;
  for (std::size_t i = 0; i < c.members().size(); ++i) {
    std::string name;
    read_name(c.item(i), name, known, what);
    if (!name.empty()) out.push_back(std::move(name));
  }
}

/// Papers by name or by another usual name ("invoice" is a receipt).
void read_documents(const Cursor& c, std::vector<std::string>& out, const CaseNames& names) {
  read_names(c, out, names.documents, "paper");
  for (std::string& document : out)
    if (const auto alias = names.document_aliases.find(document); alias != names.document_aliases.end())
      document = alias->second;
}

/// A decimal with at most three places as thousandths; text or JSON number without exponent.
std::optional<std::int64_t> thousandths(std::string_view text) {
  std::int64_t whole = 0, fraction = 0;
  std::size_t at = 0;
  int digits = 0, places = 0;
  for (; at < text.size() && is_digit(text[at]); ++at, ++digits) {
    if (digits == 7) return std::nullopt;
    whole = whole * 10 + (text[at] - '0');
  }
  if (digits == 0) return std::nullopt;
  if (at < text.size() && text[at] == '.') {
    for (++at; at < text.size() && is_digit(text[at]); ++at, ++places) {
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
    if (scaled >= 0 && scaled < 1e10 && scaled == std::round(scaled)) value = static_cast<std::int64_t>(scaled);
  }
  if (!value) c.fault("bad-number", "This must be a number from 0 to 9999999 with at most three decimals.");
  return value;
}

void read_quantity(const Cursor& c, std::optional<Quantity>& out) {
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
    good = is_digit((*s)[i]);
    num = num * 10 + ((*s)[i] - '0');
  }
  if (good) out = Share{num, den};
  else c.fault("bad-rate", "A yearly rate is text such as \"0.0125\" for 1.25 percent.");
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
  if (!c.object({"kind", "amount", "paid", "interestPaid", "bankInterestRate"})) return;
  take_name(c, "kind", d.kind, deposit_kinds(), "kind of deposit");
  take(c, "amount", d.amount);
  take(c, "paid", d.paid);
  take(c, "interestPaid", d.interest_paid);
  if (c.has("bankInterestRate")) read_rate(c.member("bankInterestRate"), d.bank_rate);
}

void read_statement(const Cursor& c, Statement& s, const CaseNames& names) {
  if (!c.object({"dated", "sent", "received", "deliveryMethod", "statedTotal", "statedRefund", "statedBalanceDue",
                 "refundPaid", "refundSent", "enclosedDocuments", "missingDocuments", "statementReceived"}))
    return;
  take(c, "dated", s.dated);
  take(c, "sent", s.sent);
  take(c, "received", s.received);
  take(c, "refundSent", s.refund_sent);
  take_name(c, "deliveryMethod", s.delivery_method, sending_ways(), "way of sending");
  take(c, "statedTotal", s.stated_total);
  take(c, "statedRefund", s.stated_refund);
  take(c, "statedBalanceDue", s.stated_balance_due);
  take(c, "refundPaid", s.refund_paid);
  take(c, "statementReceived", s.statement_received);
  if (c.has("enclosedDocuments")) read_documents(c.member("enclosedDocuments"), s.enclosed, names);
  if (c.has("missingDocuments")) read_documents(c.member("missingDocuments"), s.missing, names);
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
  if (!c.object({"kind", "amount", "depreciates"})) return;
  std::string component;
  take_name(c, "kind", component, component_names(), "nature of a part");
  std::optional<Money> amount;
  take(c, "amount", amount);
  if (!c.has("kind") || !c.has("amount"))
    return c.fault("missing-member", "A part needs a \"" + c.called("kind") + "\" and an \"amount\".");
  Tri depreciates;
  take(c, "depreciates", depreciates);
  if (!amount || component.empty()) return;
  Part part{CostComponent::other, *amount, depreciates};
  for (const auto& [name, value] : cost_components)
    if (name == component) part.component = value;
  out.push_back(part);
}

void read_life_years(const Cursor& c, std::optional<Months>& life) {
  const auto value = read_thousandths(c);
  if (!value) return;
  const Months rounded = months_of_years(*value);
  if (rounded < Months(1) || rounded > longest_age)
    return c.fault("out-of-range", "A useful life is from one month to 200 years.");
  life = rounded;
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
                 "location",
                 "quality",
                 "installed",
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
                 "usefulLifeSource",
                 "depreciationMethod",
                 "laborDepreciates",
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
                 "reletOn",
                 "ageYears",
                 "ageYearsAtMoveIn",
                 "dismissedFacts",
                 "note"}))
    return;
  take(c, "id", l.id);
  take(c, "text", l.text);
  take(c, "note", l.note);
  take(c, "location", l.place);
  take(c, "quality", l.quality);
  take(c, "amount", l.amount);
  take_word<charge_kinds>(c, "kind", l.kind, "kind of charge");
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
  take_name(c, "conditionAtMoveIn", l.at_move_in, names.at_move_in, "state at move-in");
  take_word<charge_causes>(c, "cause", l.cause, "cause");
  take_name(c, "severity", l.severity, severities(), "severity");
  if (c.has("count")) read_count(c.member("count"), l.count, 0, 1'000'000);
  if (c.has("landlordFactors"))
    read_names(c.member("landlordFactors"), l.landlord_factors, names.landlord_factors, "landlord's factor");
  if (c.has("costComponents")) {
    const Cursor parts = c.member("costComponents");
    if (parts.array())
      for (std::size_t i = 0; i < parts.members().size(); ++i) read_part(parts.item(i), l.parts);
  }
  if (c.has("chargedQuantity")) read_quantity(c.member("chargedQuantity"), l.charged);
  if (c.has("damagedQuantity")) read_quantity(c.member("damagedQuantity"), l.damaged);
  take_word<charge_remedies>(c, "remedy", l.remedy, "remedy");
  take(c, "betterment", l.betterment);
  take(c, "repairCost", l.repair_price);
  take(c, "replacementCost", l.price_new);
  if (c.has("usefulLifeYears")) read_life_years(c.member("usefulLifeYears"), l.life_months);
  take_name(c, "usefulLifeSource", l.life_source, names.life_sources, "source of useful lives");
  take_name(c, "depreciationMethod", l.method, names.methods, "method");
  take(c, "laborDepreciates", l.labor_depreciates);
  take(c, "credit", l.credit);
  if (c.has("supportingDocuments")) read_documents(c.member("supportingDocuments"), l.proof, names);
  if (c.has("missingDocuments")) read_documents(c.member("missingDocuments"), l.proof_missing, names);
  take(c, "onMoveOutRecord", l.on_move_out_record);
  take(c, "inLease", l.in_lease);
  take(c, "workDone", l.work_done);
  if (c.has("hours")) read_quantity(c.member("hours"), l.hours);
  take(c, "hourlyRate", l.hourly_rate);
  take(c, "periodStart", l.from);
  take(c, "periodEnd", l.to);
  take(c, "reletOn", l.relet_on);
  if (c.has("dismissedFacts"))
    read_names(c.member("dismissedFacts"), l.not_from_words, word_fact_names(), "fact that words can give");

  if (l.amount && !l.parts.empty()) {
    Money sum;
    for (const Part& part : l.parts) sum += part.amount;
    if (sum > *l.amount)
      c.member("costComponents")
          .fault("parts-exceed-amount",
                 "The parts come to " + sum.plain() + ", more than the charge of " + l.amount->plain() + ".");
  }
  if (l.charged && l.damaged && l.charged->unit == l.damaged->unit && l.damaged->thousandths > l.charged->thousandths)
    c.member("damagedQuantity")
        .fault("more-damaged-than-charged", "More is marked damaged than was charged. Check both counts.");
  if (l.charged && l.charged->thousandths == 0)
    c.member("chargedQuantity").fault("out-of-range", "The charged count must be more than zero.");
  if (l.from && l.to && l.to->latest < l.from->earliest)
    c.member("periodEnd").fault("ends-before-it-begins", "The period ends before it begins. Check both dates.");
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
    const std::string name = c.now(item.name);
    const auto shared = names.circumstances.find(name);
    const auto own = place.circumstances.find(name);
    if (shared == names.circumstances.end() && own == place.circumstances.end()) {
      NameSet all;
      for (const auto& [known, type] : names.circumstances) all.add(c.called(known));
      for (const auto& [known, type] : place.circumstances) all.add(c.called(known));
      const std::string near = c.name_here(item.name, all);
      at.fault("unknown-member",
               "\"" + std::string(item.name) + "\" is not a known circumstance." +
                   (near.empty() ? "" : " Did you mean \"" + near + "\"?"),
               near);
      continue;
    }
    if (item.is_null()) continue;
    const FactType type = shared != names.circumstances.end() ? shared->second : own->second;
    if (type == FactType::yes_no) {
      Tri value;
      read(at, value);
      if (value.known()) out.emplace(name, value.known_yes());
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
    if (!e.object({"kind", "date", "deliveryMethod"})) continue;
    if (!e.has("kind") || !e.has("date")) {
      e.fault("missing-member", "An event needs \"" + e.called("kind") + "\" and \"" + e.called("date") + "\".");
      continue;
    }
    Event event;
    read_name(e.member("kind"), event.what, names.events, "event", &place.events);
    take_name(e, "deliveryMethod", event.delivery_method, sending_ways(), "way of sending");
    std::optional<DaySpan> on;
    read(e.member("date"), on);
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

/// The version a case file says it is of; 0 where it says none that can be.
int format_in(const JsonTree& tree) {
  const JsonValue* version = tree.find(tree.root(), "wearline");
  const std::uint64_t* number = version ? version->if_whole() : nullptr;
  return number && *number <= 1'000'000 ? static_cast<int>(*number) : 0;
}

} // namespace

int case_format(std::string_view text) {
  const auto parsed = parse_tree(text);
  const auto* tree = std::get_if<JsonTree>(&parsed);
  return tree ? format_in(*tree) : 0;
}

std::variant<Case, Faults> read_case(std::string_view text, const CaseNames& names) {
  if (text.size() > max_case_bytes)
    return Faults{{"too-long", "", "This file is longer than a case can be (16 MiB).", ""}};
  auto parsed = parse_tree(text);
  if (auto* fault = std::get_if<Fault>(&parsed)) return Faults{std::move(*fault)};

  Faults faults;
  Case out;
  out.format = format_in(std::get<JsonTree>(parsed));
  if (out.format > newest_format)
    return Faults{{"unknown-version", "/wearline",
                   "This file was made by a newer Wearline (version " + std::to_string(out.format) +
                       " of the case file; this one reads up to version " + std::to_string(newest_format) +
                       "). Nothing in it was changed: open it with the newer one.",
                   ""}};
  // A file that does not say its version is read as one of version 1, as it is answered.
  const Cursor c(std::get<JsonTree>(parsed), faults, out.format == newest_format ? nullptr : &older_document("case"));
  if (!c.object({"wearline", "jurisdiction", "locality", "side", "language", "title", "showMethods", "tenancy",
                 "deposits", "statement", "records", "events", "circumstances", "lines", "walkThrough", "page"}))
    return faults;
  if (!c.find("wearline"))
    c.fault("missing-member", "A case file begins with \"wearline\": 2 (or 1, of an older one).");
  else if (out.format == 0)
    c.member("wearline").fault("unknown-version", "This version of the case file is not known. It must be 1 or 2.");

  if (c.has("jurisdiction")) read_jurisdiction(c.member("jurisdiction"), out.jurisdiction, names);
  take(c, "locality", out.locality);
  take_name(c, "side", out.side, sides(), "side");
  take_name(c, "language", out.language, languages(), "language");
  std::string title;
  take(c, "title", title);
  Tri show_methods;
  take(c, "showMethods", show_methods);
  out.show_methods = show_methods.yes_or(false);
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
