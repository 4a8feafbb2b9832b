#include "letters/letter.h"

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
    if (i == 0) out += ':';
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
