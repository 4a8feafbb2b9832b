#include "reading/row_shapes.h"

#include "reading/row_figures.h"

#include <algorithm>

namespace wearline {

namespace {

/// "total $160 so u get $540": the first of two sums is called something.
bool account_word_first(const PaperRow& l, const RecognizerRules& rules) {
  const auto first = std::find_if(l.m.numbers.begin(), l.m.numbers.end(), is_strong);
  const LabelKind kind = label_of(l.m, rules, token_at(l.m, l.row.body), first->first);
  return kind == LabelKind::total || kind == LabelKind::deposit || kind == LabelKind::refund;
}

/// "stove 40.00, floor 30.00": a comma after a sum, and words before the next.
bool strung(const PaperRow& l, const RecognizerRules& rules) {
  for (std::size_t k = 0; k + 1 < l.m.numbers.size(); ++k) {
    const Number& n = l.m.numbers[k];
    const std::size_t t = n.last + 1u;
    if (!is_strong(n) || n.rate || t >= l.m.tokens.size() || !(l.m.tokens[t].is(',') || l.m.tokens[t].is(';')))
      continue;
    if (has_words(l, token_at(l.m, l.row.body), n.first, rules) && names_thing(l.m, rules, t, l.m.numbers[k + 1].first))
      return true;
  }
  return false;
}

/// Of a chat: several sums without a sign, each with words of its own ("75 the shade, new key 30", "225 off your
/// 1000").
bool tells_several(const PaperRow& l, const RecognizerRules& rules) {
  if (l.row.speaker.empty()) return false;
  std::size_t sums = 0, from = token_at(l.m, l.row.body);
  for (const Number& n : l.m.numbers) {
    if (n.first < from || !can_be_sum(n) || n.rate || n.thousandths < 5000) continue;
    if (sums > 0 && !has_words(l, from, n.first, rules)) return false;
    ++sums;
    from = n.last + std::size_t{1};
  }
  return sums > 1;
}

bool ends_with_each(const PaperRow& l, const Number& n, const RecognizerRules& rules) {
  for (std::size_t t = n.last + 1u; t < l.m.tokens.size(); ++t)
    if (l.m.tokens[t].word() && !is_word_of(l.m.tokens[t], "w:each", rules)) return false;
  return true;
}

bool sign_between(const PaperRow& l, std::size_t from, std::size_t to) {
  if (to - from > 3) return false;
  for (std::size_t t = from + 1; t < to; ++t)
    if (l.m.tokens[t].is('@') || l.m.tokens[t].text == "x" || l.m.tokens[t].text == "at") return true;
  return false;
}

} // namespace

bool reads_as_prose(const std::vector<PaperRow>& rows, std::size_t first, std::size_t last,
                    const RecognizerRules& rules) {
  std::size_t count = 0, wide = 0, items = 0, length = 0, sums = 0, ends = 0;
  bool inner_stop = false;
  for (std::size_t i = first; i < last; ++i) {
    const PaperRow& l = rows[i];
    if (!l.fate.empty()) continue;
    ++count;
    length += l.row.text.size() - l.row.body;
    wide += l.row.cells.size() > 1;
    if (l.row.bulleted || l.row.tabular) return false;
    for (const Number& n : l.m.numbers) sums += is_strong(n);
    if (!l.m.numbers.empty() && can_be_sum(l.m.numbers.back()) && ends_row(l, l.m.numbers.back(), rules) &&
        l.row.text.back() != '.')
      ++items;
    inner_stop = inner_stop || has_inner_stop(l.row.text);
    ends += l.row.text.back() == '.';
  }
  if (count == 0 || wide * 3 > count) return false;
  if (count == 1) {
    const PaperRow& l = rows[first];
    const bool flows = inner_stop || (l.row.text.back() == '.' && l.m.tokens.size() > 9) || l.m.tokens.size() > 40;
    return flows && (items == 0 || sums > 1);
  }
  if (items * 2 > count) return false;
  return length / count >= 38 || inner_stop || ends * 2 > count;
}

bool one_cell_rows(const std::vector<PaperRow>& rows, std::size_t first, std::size_t last) {
  return std::all_of(rows.begin() + static_cast<std::ptrdiff_t>(first),
                     rows.begin() + static_cast<std::ptrdiff_t>(last),
                     [](const PaperRow& l) { return l.row.cells.size() == 1 && !l.row.tabular; });
}

bool is_sentence(const PaperRow& l, const RecognizerRules& rules) {
  if (l.row.bulleted || l.row.cells.size() > 1) return false;
  if (tells_several(l, rules)) return true;
  std::size_t sums = 0;
  for (const Number& n : l.m.numbers) sums += is_strong(n) && !n.rate && !n.after_equals;
  if (sums == 0) return false;
  const Number& last = l.m.numbers.back();
  if (l.row.text.back() == '.' && l.m.tokens.size() > 8 && !ends_row(l, last, rules)) return true;
  if (sums == 2 && is_strong(last) && ends_row(l, last, rules) && account_word_first(l, rules)) return true;
  const bool announces = l.row.text.back() == ':' && is_strong(l.m.numbers.back());
  const bool ends = l.row.text.back() == '.' && l.m.tokens.size() > 8 && sums >= 2;
  return has_inner_stop(l.row.text) || announces || ends || sums >= 3 || (sums == 2 && strung(l, rules));
}

std::size_t paragraph_end(const std::vector<PaperRow>& rows, std::size_t row, std::size_t last,
                          const RecognizerRules& rules) {
  const PaperRow& head = rows[row];
  if (!head.row.bulleted || head.row.cells.size() > 1) return row + 1;
  if (!head.m.numbers.empty() && ends_row(head, head.m.numbers.back(), rules)) {
    const bool goes_on = row + 1 < last && !rows[row + 1].row.blank && head.row.text.back() != '.' &&
                         rows[row + 1].row.text[rows[row + 1].row.body] >= 'a' &&
                         rows[row + 1].row.text[rows[row + 1].row.body] <= 'z';
    if (!goes_on) return row + 1;
  }
  std::size_t end = row + 1, tokens = head.m.tokens.size();
  bool stop = has_inner_stop(head.row.text);
  for (; end < last; ++end) {
    const PaperRow& l = rows[end];
    if (!l.fate.empty() || l.row.rule || l.row.bulleted || l.row.cells.size() > 1 || l.row.indent <= head.row.indent)
      break;
    tokens += l.m.tokens.size();
    stop = stop || has_inner_stop(l.row.text);
  }
  stop = stop || rows[end - 1].row.text.back() == '.';
  return stop && tokens > 14 ? end : row + 1;
}

std::optional<Product> price_times_count(const PaperRow& l) {
  std::size_t price = l.m.numbers.size();
  for (std::size_t k = 0; k < l.m.numbers.size(); ++k)
    if (is_strong(l.m.numbers[k])) {
      if (price != l.m.numbers.size()) return std::nullopt;
      price = k;
    }
  if (price + 1 >= l.m.numbers.size()) return std::nullopt;
  const Number& n = l.m.numbers[price];
  const Number& count = l.m.numbers[price + 1];
  const std::size_t sign = n.last + 1u;
  if (price + 2 < l.m.numbers.size() || count.kind != NumberKind::plain || !count.whole || count.thousandths < 2000 ||
      count.thousandths > 100'000 || count.first != sign + 1u ||
      !(l.m.tokens[sign].text == "x" || l.m.tokens[sign].is('*')))
    return std::nullopt;
  return Product{Money::cents(n.thousandths / 10 * (count.thousandths / 1000)), price};
}

std::optional<Product> product_of(const PaperRow& l, const RecognizerRules& rules) {
  for (std::size_t k = 0; k + 1 < l.m.numbers.size(); ++k) {
    const Number& count = l.m.numbers[k];
    const Number& price = l.m.numbers[k + 1];
    if (count.kind != NumberKind::plain || count.currency || count.thousandths == 0 || !is_strong(price) ||
        !ends_with_each(l, price, rules) || !sign_between(l, count.last, price.first))
      continue;
    const std::int64_t cents = count.thousandths * (price.thousandths / 10);
    if (cents % 1000 != 0) continue;
    return Product{Money::cents(cents / 1000), k + 1};
  }
  return std::nullopt;
}

} // namespace wearline
