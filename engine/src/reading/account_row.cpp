#include "reading/account_row.h"

#include "reading/row_words.h"

namespace wearline {

namespace {

/// The last of the sums is all others together.
bool adds_up(const PaperRow& l, const std::vector<std::size_t>& sums) {
  Money parts;
  for (std::size_t k = 0; k + 1 < sums.size(); ++k) parts += *l.m.numbers[sums[k]].money();
  return sums.size() > 2 && parts == *l.m.numbers[sums.back()].money();
}

} // namespace

std::vector<AccountSum> account_sums(const PaperRow& l, const RecognizerRules& rules) {
  std::vector<std::size_t> strong;
  for (std::size_t k = 0; k < l.m.numbers.size(); ++k)
    if (can_be_sum(l.m.numbers[k]) && (is_strong(l.m.numbers[k]) || l.m.numbers[k].after_equals)) strong.push_back(k);
  if (strong.size() < 2) return {};
  std::vector<AccountSum> out;
  std::size_t from = token_at(l.m, l.row.body);
  bool deposit = false;
  const bool after = l.m.numbers[strong[0]].first <= from; // "$400.00 deposit - $115.00 = $285.00 refund"
  for (std::size_t s = 0; s < strong.size(); ++s) {
    const Number& n = l.m.numbers[strong[s]];
    const std::size_t next = s + 1 < strong.size() ? l.m.numbers[strong[s + 1]].first : l.m.tokens.size();
    LabelKind kind = after ? label_of(l.m, rules, n.last + 1u, next) : label_of(l.m, rules, from, n.first);
    const bool apart = l.m.tokens[n.first].far; // another column: a running balance
    const bool less = mentions_word(l, rules, "st:less", from, n.first) || (n.minus && deposit && !apart) ||
                      (n.first > 0 && l.m.tokens[n.first - 1u].is('-'));
    if (kind == LabelKind::none && deposit && less) kind = LabelKind::total;
    if (kind == LabelKind::none && deposit && n.after_equals) kind = LabelKind::balance;
    if (kind == LabelKind::none && s > 0 && s + 1 == strong.size() && adds_up(l, strong)) kind = LabelKind::held;
    if (kind == LabelKind::none && deposit && mentions_rent(l, rules) && adds_up(l, strong))
      kind = LabelKind::deposit; // "and last month's rent"
    if (kind == LabelKind::none || kind == LabelKind::fact || kind == LabelKind::letter || kind == LabelKind::heading)
      return {};
    deposit = deposit || kind == LabelKind::deposit || kind == LabelKind::held;
    out.push_back({strong[s], kind, from});
    from = n.last + 1u;
  }
  return out;
}

} // namespace wearline
