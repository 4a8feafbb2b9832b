#include "reading/fact_items.h"

#include <algorithm>

namespace wearline {

namespace {

bool digits_only(const std::string& text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

std::int64_t plain_value(const std::string& digits) {
  std::int64_t value = 0;
  for (const char c : digits)
    if (c >= '0' && c <= '9' && value < 1'000'000'000) value = value * 10 + (c - '0');
  return value;
}

class ItemMaker {
public:
  ItemMaker(const MarkedText& text, std::string_view source, const std::vector<NumberWord>& words)
      : t_(text.tokens), numbers_(text.numbers), source_(source), words_(words) {}

  std::vector<FactItem> run() {
    out_.reserve(t_.size());
    std::size_t next = 0;
    for (std::size_t i = 0; i < t_.size();) {
      while (next < numbers_.size() && numbers_[next].first < i) ++next;
      if (next < numbers_.size() && numbers_[next].first == i) i = number(numbers_[next]);
      else if (t_[i].number()) i = bare_number(i);
      else if (t_[i].word()) i = word(i);
      else i = sign(i);
    }
    return std::move(out_);
  }

private:
  FactItem& push(FactItem::Kind kind, std::size_t first, std::size_t last) {
    FactItem item;
    item.kind = kind;
    item.first = static_cast<std::uint16_t>(first);
    item.last = static_cast<std::uint16_t>(last);
    out_.push_back(std::move(item));
    return out_.back();
  }

  std::size_t number(const Number& n) {
    // "40-45": a hyphen glued between two numbers is no minus.
    FactItem& item = push(FactItem::Kind::number, n.first, n.last);
    item.number = n.kind;
    item.thousandths = n.thousandths;
    item.decimals = n.decimals;
    item.currency = n.currency;
    item.rate = n.rate;
    item.bracketed = n.bracketed;
    item.day = n.day;
    item.hyphened = joined_to_word(n.last);
    if (n.kind == NumberKind::year) item.day.year = static_cast<int>(n.thousandths / 1000);
    if ((n.kind == NumberKind::fraction || n.kind == NumberKind::date || n.kind == NumberKind::size)) pieces(item);
    return decade(item, n.last + 1u, n.thousandths / 1000);
  }

  /// The first and last number of a fraction, date or size: "8/19", "4x4".
  void pieces(FactItem& item) const {
    bool first = true;
    for (std::size_t i = item.first; i <= item.last; ++i) {
      if (!t_[i].number() || !digits_only(t_[i].text)) continue;
      (first ? item.over : item.under) = plain_value(t_[i].text);
      if (!first) item.decimals = static_cast<std::uint8_t>(t_[i].text.size()); // how many digits the second has
      first = false;
    }
  }

  /// "1970s": takes the s, and gives the token after the item.
  std::size_t decade(FactItem& item, std::size_t end, std::int64_t year) const {
    if (year < 1900 || year >= 2100 || end >= t_.size() || !t_[end].glued || t_[end].text != "s") return end;
    item.decade = true;
    item.number = NumberKind::year;
    item.day.year = static_cast<int>(year);
    item.last = static_cast<std::uint16_t>(end);
    return end + 1;
  }

  /// A number inside a term of the lexicon, which the finder leaves out.
  std::size_t bare_number(std::size_t i) {
    FactItem& item = push(FactItem::Kind::number, i, i);
    if (!digits_only(t_[i].text)) {
      item.number = NumberKind::reference;
      return i + 1;
    }
    item.thousandths = plain_value(t_[i].text) * 1000;
    item.hyphened = joined_to_word(i);
    return decade(item, i + 1, item.thousandths / 1000);
  }

  std::size_t word(std::size_t i) {
    FactItem& item = push(FactItem::Kind::word, i, i);
    item.text = t_[i].text;
    for (const NumberWord& w : words_)
      if (w.word == item.text) {
        item.kind = FactItem::Kind::number;
        item.thousandths = w.thousandths;
        item.worded = true;
        item.hyphened = joined_to_word(i);
        break;
      }
    return i + 1;
  }

  std::size_t sign(std::size_t i) {
    if (t_[i].is('-') && inside_word(i)) return i + 1;
    if (t_[i].is('#')) return i + 1; // the number after it is known to be a reference
    if (t_[i].is('.') && abbreviation(i)) return i + 1;
    if (t_[i].is('\'') && i + 1 < t_.size() && t_[i + 1].glued && t_[i + 1].number() && t_[i + 1].text.size() == 2) {
      FactItem& item = push(FactItem::Kind::number, i, i + 1); // "'18"
      const std::int64_t year = plain_value(t_[i + 1].text);
      item.number = NumberKind::year;
      item.day.year = static_cast<int>(year < 70 ? 2000 + year : 1900 + year);
      return i + 2;
    }
    push(FactItem::Kind::sign, i, i).text = t_[i].text;
    return i + 1;
  }

  bool joined_to_word(std::size_t i) const {
    return i + 2 < t_.size() && t_[i + 1].is('-') && t_[i + 1].glued && t_[i + 2].glued && t_[i + 2].word();
  }

  bool inside_word(std::size_t i) const {
    if (i == 0 || i + 1 >= t_.size() || !t_[i].glued || !t_[i + 1].glued) return false;
    return t_[i - 1].word() || t_[i + 1].word();
  }

  bool abbreviation(std::size_t i) const {
    if (i == 0 || !t_[i].glued || !t_[i - 1].word()) return false;
    if (i + 1 >= t_.size() || t_[i + 1].glued) return true;
    const char next = source_[t_[i + 1].start];
    if (next >= '0' && next <= '9') return t_[i - 1].text.size() <= 6; // "approx. 2012"
    return t_[i - 1].text.size() <= 5 && !(next >= 'A' && next <= 'Z');
  }

  const std::vector<Token>& t_;
  const std::vector<Number>& numbers_;
  std::string_view source_;
  const std::vector<NumberWord>& words_;
  std::vector<FactItem> out_;
};

} // namespace

std::vector<FactItem> fact_items(const MarkedText& text, std::string_view source,
                                 const std::vector<NumberWord>& words) {
  return ItemMaker(text, source, words).run();
}

} // namespace wearline
