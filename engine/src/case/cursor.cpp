#include "case/cursor.h"

#include "values/money_size.h"

#include <algorithm>

namespace wearline {

std::string Cursor::at() const {
  if (!parent_) return {};
  return parent_->at() + '/' + (name_.data() ? pointer_segment(name_) : std::to_string(index_));
}

void Cursor::fault(std::string code, std::string text, std::string near) const {
  faults_->push_back({std::move(code), at(), std::move(text), std::move(near)});
}

bool Cursor::object(std::initializer_list<std::string_view> known) const {
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

void read(const Cursor& c, std::string& out) {
  if (const auto* s = c.text_ptr()) out = *s;
  else c.fault("wrong-type", "This must be text in quotation marks.");
}

void read(const Cursor& c, Tri& out) {
  if (const bool* yes = c.json().if_yes_no()) out = *yes;
  else c.fault("wrong-type", "This must be true, false or null.");
}

void read(const Cursor& c, std::optional<Money>& out) {
  const auto* s = c.text_ptr();
  if (!s) return c.fault("wrong-type", "Amounts are text, such as \"1240.00\", so that no cent is lost.");
  out = Money::parse(*s);
  if (out) return;
  if (!s->empty() && s->front() == '-')
    c.fault("bad-amount", "An amount cannot be negative here. A line that lowers the charges has no minus sign and "
                          "\"credit\": true.");
  else if (too_large_for_money(*s))
    c.fault("amount-too-large", "This amount is too large: at most ten digits may stand before the point.");
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

void read_name(const Cursor& c, std::string& out, const NameSet& known, std::string_view what, const NameSet* more) {
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

} // namespace wearline
