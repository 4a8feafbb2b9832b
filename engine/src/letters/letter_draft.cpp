#include "letters/letter_draft.h"

namespace wearline {

std::string_view currency_of(std::string_view jurisdiction) {
  const std::string_view country = jurisdiction.substr(0, 3);
  return country == "US-" ? "USD" : country == "CA-" ? "CAD" : "";
}

std::string on_one_line(std::string_view text) {
  constexpr std::size_t most = 160;
  std::string out;
  std::size_t characters = 0;
  bool gap = false;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte <= ' ' || byte == 0x7F) {
      gap = !out.empty();
      continue;
    }
    const bool begins = (byte & 0xC0) != 0x80; // the first byte of a character
    if (begins && characters >= most) return out + "…";
    if (gap) out += ' ', ++characters;
    gap = false;
    out += c;
    if (begins) ++characters;
  }
  return out;
}

std::string listed(const std::vector<std::string>& items, const Speech& speech) {
  std::string out;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) out += i + 1 == items.size() ? ' ' + speech.say("letter.and") + ' ' : ", ";
    out += items[i];
  }
  return out;
}

Draft::Draft(const Assessment& assessment, const Rules& all, LetterKind kind, std::string_view language)
    : a(assessment), c(assessment.c), rules(all),
      speech(all.words(language), language, currency_of(assessment.c.jurisdiction)), law(assessment, all, speech) {
  letter.kind = kind;
  letter.language = language;
  letter.title = say("letter.title.", name_of(kind));
}

std::string Draft::say(std::string_view prefix, std::string_view name, Wording::Args args) const {
  std::string key(prefix);
  key += name;
  return speech.say(key, args);
}

bool Draft::has(std::string_view prefix, std::string_view name) const {
  std::string key(prefix);
  key += name;
  return speech.has(key);
}

std::string Draft::when(const DaySpan& day) const {
  return day.known() ? say("letter.on", {{"day", speech.day(day.earliest)}}) : speech.span(day);
}

std::string Draft::charge(std::size_t line) const {
  const Line& l = c.lines[line];
  const std::string text = on_one_line(l.text.empty() && a.lines[line].subject.element
                                           ? a.lines[line].subject.element->label.in(speech.language())
                                           : l.text);
  if (text.empty()) return say("letter.charge", {{"id", on_one_line(l.id)}});
  return say("letter.charge.named", {{"id", on_one_line(l.id)}, {"text", text}});
}

std::string Draft::charges(const std::vector<std::size_t>& lines) const {
  std::vector<std::string> ids;
  for (const std::size_t line : lines) ids.push_back(on_one_line(c.lines[line].id));
  return say(lines.size() == 1 ? "letter.charges.one" : "letter.charges.many", {{"ids", listed(ids, speech)}});
}

std::string Draft::label(std::size_t line) const {
  const Line& l = c.lines[line];
  const std::string text = on_one_line(l.text.empty() && a.lines[line].subject.element
                                           ? a.lines[line].subject.element->label.in(speech.language())
                                           : l.text);
  return on_one_line(l.id) + (text.empty() ? "" : ". " + text);
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

} // namespace wearline
