#include "case/cursor.h"

#include "values/money_size.h"

#include <algorithm>

namespace wearline {

std::string Cursor::at() const {
  if (!parent_) return {};
  if (is_item()) return parent_->at() + '/' + std::to_string(index_);
  return parent_->at() + '/' + pointer_segment(json_->name);
}

void Cursor::fault(std::string code, std::string text, std::string near) const {
  faults_->push_back({std::move(code), at(), std::move(text), std::move(near)});
}

const OlderPlace* Cursor::place() const {
  if (older_) return older_;
  if (!parent_) return &older_document("case");
  const OlderPlace* above = parent_->place();
  return above && !is_item() ? above->below(name_) : above;
}

std::string Cursor::name_here(std::string_view given, const NameSet& known) const {
  const OlderPlace* table = place();
  const std::string_view other = !table ? given : older_ ? table->was(given) : table->now(given);
  if (other != given && known.has(other)) return std::string(other);
  return known.nearest(given);
}

std::string Cursor::word_here(std::string_view given, const NameSet& known) const {
  const OlderPlace* table = place();
  const std::string_view other = !table ? given : older_ ? table->word_was(given) : table->word_now(given);
  if (other != given && known.has(other)) return std::string(other);
  return known.nearest(given);
}

bool Cursor::object(std::initializer_list<std::string_view> known) const {
  if (!json_->is_object()) {
    fault("wrong-type", "This must be an object, { ... }.");
    return false;
  }
  for (const JsonValue& member : members()) {
    const std::string_view name = older_ ? older_->now(member.name) : member.name;
    if (std::find(known.begin(), known.end(), name) != known.end()) continue;
    NameSet names;
    for (const std::string_view one : known) names.add(called(one));
    const std::string near = name_here(member.name, names);
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
  const std::string_view word = c.word_now(*s);
  const bool any = known.sorted().empty() && (!more || more->sorted().empty());
  if (any || known.has(word) || (more && more->has(word))) {
    out = any && word.empty() ? *s : word;
    return;
  }
  NameSet all;
  for (const NameSet* names : {&known, more})
    if (names)
      for (const std::string& name : names->sorted()) all.add(c.word_called(name));
  const std::string near = c.word_here(*s, all);
  c.fault("unknown-name",
          "\"" + std::string(*s) + "\" is not a known " + std::string(what) + "." +
              (near.empty() ? "" : " Did you mean \"" + near + "\"?"),
          near);
}

} // namespace wearline
