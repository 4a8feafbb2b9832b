#include "letters/letter_text.h"

#include <algorithm>
#include <initializer_list>

namespace wearline {

namespace {

/// "Deposit: $1,850.00"; "1. Repaint: charged $175.00; fair $0.00; in question $175.00".
std::string row_text(const Paragraph& p, const std::vector<std::string>& row) {
  if (row.size() == 1) return "- " + row.front();
  std::string out;
  for (std::size_t i = 0; i < row.size(); ++i) {
    if (row[i].empty()) continue;
    if (i > 0 && !out.empty()) out += i == 1 || out.back() == ':' ? " " : "; ";
    if (i > 0 && row.size() > 2 && i < p.head.size()) out += p.head[i] + ' ';
    out += row[i];
    if (i == 0 && out.back() != '?') out += ':';
  }
  if (!out.empty() && out.back() == ':') out.pop_back();
  return out;
}

std::string paragraph_text(const Paragraph& p) {
  std::string out = p.text;
  for (const auto& row : p.rows) {
    if (!out.empty()) out += '\n';
    out += row_text(p, row);
  }
  return out;
}

} // namespace

std::string_view name_of(ParagraphRole role) {
  switch (role) {
  case ParagraphRole::address:
    return "address";
  case ParagraphRole::date:
    return "date";
  case ParagraphRole::opening:
    return "opening";
  case ParagraphRole::table:
    return "table";
  case ParagraphRole::line:
    return "line";
  case ParagraphRole::list:
    return "list";
  case ParagraphRole::ask:
    return "ask";
  case ParagraphRole::closing:
    return "closing";
  case ParagraphRole::enclosures:
    return "enclosures";
  case ParagraphRole::caution:
    break;
  }
  return "caution";
}

std::string_view about(const LetterWarning& warning) {
  const auto is = [&](std::initializer_list<std::string_view> codes) {
    return std::find(codes.begin(), codes.end(), warning.code) != codes.end();
  };
  if (is({"late", "send-by", "apply"})) return "day";
  if (is({"open", "left-out", "no-amount", "beyond", "inspection", "rent-paid"})) return "charge";
  if (is({"no-proof", "say-more", "say-days"})) return "proof";
  return warning.code.compare(0, 6, "paper-") == 0 || is({"way", "fixed-words", "interest"}) ? "form" : "";
}

std::string plain_text(const Letter& letter) {
  std::string out;
  for (const Paragraph& p : letter.paragraphs) {
    if (!p.on || p.role == ParagraphRole::caution) continue;
    if (!out.empty()) out += "\n\n";
    out += paragraph_text(p);
  }
  out += '\n';
  return out;
}

} // namespace wearline
