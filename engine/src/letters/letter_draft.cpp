#include "letters/letter_draft.h"

#include "judging/purpose.h"
#include "law/facts.h"

#include <algorithm>
#include <array>

namespace wearline {

namespace {

/// The blanks of all letters, in the order of a form. The wording holds the label of each.
constexpr std::array<std::string_view, 16> blank_ids{
    "sender",         "coTenants",     "senderAddress", "reach",     "landlord",   "landlordAddress",
    "tenant",         "tenantAddress", "home",          "payee",     "mailNumber", "visitDays",
    "firstLetterDay", "paidSoFar",     "workDone",      "contractor"};

bool is_blank(std::string_view name) { return std::find(blank_ids.begin(), blank_ids.end(), name) != blank_ids.end(); }

/// Several tenants sign where the case says so, or where a name of another is given.
bool several_sign(const Case& c, const Names& names) {
  if (c.side == "landlord") return false;
  if (const auto given = names.find("coTenants"); given != names.end() && !given->second.empty()) return true;
  // Whoever leaves while another stays writes alone, for their own share.
  return told(c, "several-adult-tenants") == Tri::yes && told(c, "roommate-stays") != Tri::yes;
}

bool several_deposits(const Case& c, const Pack* pack) {
  return std::count_if(c.deposits.begin(), c.deposits.end(),
                       [&](const Deposit& d) { return d.kind != "last-month" && is_deposit(d, pack) && d.amount; }) > 1;
}

} // namespace

std::vector<std::string_view> blank_names() { return {blank_ids.begin(), blank_ids.end()}; }

const Forum* own_forum(const Draft& d) {
  const auto& all = d.rules.letters.forums;
  for (const std::string& place : {d.c.jurisdiction, d.c.jurisdiction.substr(0, d.c.jurisdiction.find('-'))})
    if (const auto own = all.find(place); own != all.end()) return &own->second;
  return nullptr;
}

std::string forum(const Draft& d) {
  const Forum* own = own_forum(d);
  return own ? own->name.in(d.speech.language()) : d.say("letter.forum");
}

Paragraph* add_list(Draft& d, std::string id, ParagraphRole role, std::string title,
                    const std::vector<std::string>& items) {
  if (items.empty()) return nullptr;
  Paragraph* p = d.may(std::move(id), role, std::move(title));
  if (p)
    for (const std::string& item : items) p->rows.push_back({item});
  return p;
}

Draft::Draft(const Assessment& assessment, const Rules& all, LetterKind kind, std::string_view language,
             const Names& names)
    : a(assessment), c(assessment.c), rules(all),
      speech(all.words(language), language, currency_of(assessment.c.jurisdiction)),
      several(several_sign(assessment.c, names)), deposits(several_deposits(assessment.c, assessment.pack)),
      law(assessment, all, speech, several, is_sent(kind) && traits_of(kind).tenant), names_(names) {
  letter.kind = kind;
  letter.language = language;
  letter.title = say("letter.title.", name_of(kind), {{"forum", forum(*this)}});
}

bool Draft::fill(std::string_view name, Wording::Args args, std::string& out) const {
  for (const auto& [known, value] : args)
    if (known == name) {
      out += value;
      return true;
    }
  if (const auto bars = name.find("||"); bars != std::string_view::npos) {
    out += deposits ? name.substr(bars + 2) : name.substr(0, bars);
    return true;
  }
  if (const auto bar = name.find('|'); bar != std::string_view::npos) {
    out += several ? name.substr(bar + 1) : name.substr(0, bar);
    return true;
  }
  if (!is_blank(name)) return false;
  const auto given = names_.find(name);
  if (given != names_.end() && !given->second.empty()) out += given->second;
  else out += '[' + say("letter.blank.", name) + ']';
  return true;
}

std::string Draft::say(std::string_view key, Wording::Args args) const {
  return speech.fill(key, [&](std::string_view name, std::string& out) { return fill(name, args, out); });
}

std::string Draft::say(std::string_view prefix, std::string_view name, Wording::Args args) const {
  std::string key(prefix);
  key += name;
  return say(key, args);
}

bool Draft::has(std::string_view prefix, std::string_view name) const {
  std::string key(prefix);
  key += name;
  return speech.has(key);
}

std::string Draft::about(Money m) const {
  const std::string text = money(Money::cents(m.in_cents() / 100 * 100));
  return text.size() > 3 && text.compare(text.size() - 3, 3, ".00") == 0 ? text.substr(0, text.size() - 3) : text;
}

std::string Draft::when(const DaySpan& day) const {
  if (day.known()) return say("letter.on", {{"day", speech.day(day.earliest)}});
  if (day.earliest == min_day || day.latest == max_day) return speech.span(day);
  const date::year_month_day from{day.earliest}, to{day.latest};
  const bool from_first = from.day() == date::day{1};
  const bool to_last = to == date::year_month_day{to.year() / to.month() / date::last};
  const std::string year = std::to_string(static_cast<int>(to.year()));
  if (from.year() == to.year() && from_first && to_last) {
    if (from.month() == to.month())
      return say("letter.in-month",
                 {{"month", say("month.", std::to_string(static_cast<unsigned>(to.month())))}, {"year", year}});
    if (from.month() == date::January && to.month() == date::December) return say("letter.in-year", {{"year", year}});
  }
  return speech.span(day);
}

std::string Draft::charges(const std::vector<std::size_t>& lines) const {
  constexpr std::size_t shortest_run = 5; // "1 to 5", but "1, 2, 3 and 4"
  std::vector<std::string> ids;
  for (std::size_t at = 0; at < lines.size();) {
    std::size_t end = at + 1;
    while (end < lines.size() && lines[end] == lines[end - 1] + 1) ++end;
    const auto id = [&](std::size_t i) { return on_one_line(c.lines[lines[i]].id); };
    if (end - at >= shortest_run) ids.push_back(say("letter.charges.run", {{"first", id(at)}, {"last", id(end - 1)}}));
    else
      for (std::size_t i = at; i < end; ++i) ids.push_back(id(i));
    at = end;
  }
  return say(lines.size() == 1 ? "letter.charges.one" : "letter.charges.many", {{"ids", listed(ids, speech)}});
}

std::string Draft::label(std::size_t line) const {
  const Line& l = c.lines[line];
  const std::string text = on_one_line(l.text.empty() && a.lines[line].subject.element
                                           ? a.lines[line].subject.element->label.in(speech.language())
                                           : l.text);
  return on_one_line(l.id) + (text.empty() ? "" : ". " + text);
}

std::vector<const Deposit*> Draft::held_apart() const {
  std::vector<const Deposit*> out;
  for (const Deposit& deposit : c.deposits)
    if (deposit.kind != "last-month" && deposit.amount && !is_deposit(deposit, a.pack)) out.push_back(&deposit);
  return out;
}

std::vector<std::size_t> Draft::served_by(const Deposit& own) const {
  std::vector<std::size_t> out;
  const auto first = std::find_if(c.deposits.begin(), c.deposits.end(),
                                  [&](const Deposit& d) { return d.kind == own.kind && d.amount; });
  if (&*first != &own || !has_purpose(own.kind)) return out;
  for (std::size_t i = 0; i < c.lines.size(); ++i)
    if (serves(own.kind, c.lines[i], a.lines[i].subject) == Tri::yes) out.push_back(i);
  return out;
}

std::string Draft::say_apart(std::string_view key) const {
  Sentences text;
  for (const Deposit* deposit : held_apart())
    text.add(say(key, {{"sum", money(*deposit->amount)}, {"kind", say("letter.facts.of.", deposit->kind)}}));
  return text.take();
}

Paragraph& Draft::must(std::string id, ParagraphRole role, std::string text) {
  Paragraph& p = letter.paragraphs.emplace_back();
  p.id = std::move(id);
  p.role = role;
  p.text = std::move(text);
  return p;
}

void Draft::warn(std::string code, std::string text) {
  for (const LetterWarning& w : letter.warnings)
    if (w.text == text) return;
  if (!text.empty()) letter.warnings.push_back({std::move(code), std::move(text)});
}

Paragraph* Draft::may(std::string id, ParagraphRole role, std::string text, const std::vector<std::size_t>& lines) {
  if (text.empty()) return nullptr;
  Paragraph& p = must(std::move(id), role, std::move(text));
  p.optional = true;
  for (const std::size_t line : lines) p.lines.push_back(c.lines[line].id);
  return &p;
}

namespace {

bool stands_in(const Letter& letter, const std::string& text) {
  return std::any_of(letter.paragraphs.begin(), letter.paragraphs.end(), [&](const Paragraph& p) {
    if (p.text.find(text) != std::string::npos) return true;
    return std::any_of(p.rows.begin(), p.rows.end(), [&](const auto& row) {
      return std::any_of(row.begin(), row.end(),
                         [&](const std::string& s) { return s.find(text) != std::string::npos; });
    });
  });
}

/// Whether a citation stands in a text, and not as the beginning of a longer one.
bool cited(const std::string& text, const std::string& cite) {
  for (auto at = text.find(cite); at != std::string::npos; at = text.find(cite, at + 1)) {
    const char next = at + cite.size() < text.size() ? text[at + cite.size()] : '.';
    if (next == '.' || next == ';' || next == ')' || next == ' ') return true;
  }
  return false;
}

} // namespace

void Draft::close() {
  for (const std::string_view id : blank_ids) {
    const auto given = names_.find(id);
    Blank blank{std::string(id), say("letter.blank.", id), given == names_.end() ? std::string() : given->second};
    if (stands_in(letter, blank.value.empty() ? '[' + blank.label + ']' : blank.value))
      letter.blanks.push_back(std::move(blank));
  }
  if (!law.there()) return;
  std::vector<std::string> read_of;
  for (const auto& [said, cite] : law.second_hand())
    if (stands_in(letter, said) && std::find(read_of.begin(), read_of.end(), cite) == read_of.end())
      read_of.push_back(cite);
  if (!read_of.empty()) warn("second-hand", say("letter.warn.second-hand", {{"cites", listed(read_of, speech)}}));
  for (Paragraph& p : letter.paragraphs)
    for (const Reference& source : a.law->pack().sources)
      if (cited(p.text, source.text)) p.cites.push_back(source.text);
}

} // namespace wearline
