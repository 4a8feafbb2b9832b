#include "reading/fact_items.h"

#include "values/ascii.h"

#include <algorithm>

namespace wearline {

namespace {

bool digits_only(const std::string& text) { return !text.empty() && std::all_of(text.begin(), text.end(), is_digit); }

std::int64_t plain_value(const std::string& digits) {
  std::int64_t value = 0;
  for (const char c : digits)
    if (is_digit(c) && value < 1'000'000'000) value = value * 10 + (c - '0');
  return value;
}

} // namespace

std::pair<std::string_view, std::size_t> with_or_without(const std::vector<Token>& t, std::size_t i) {
  if (t[i].text != "w" || i + 1 >= t.size() || !t[i + 1].is('/') || !t[i + 1].glued) return {{}, 0};
  const bool out = i + 2 < t.size() && t[i + 2].glued && (t[i + 2].text == "o" || t[i + 2].text == "out");
  if (out) return {"without", i + 3};
  return {"with", i + 2};
}

namespace {

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
    if (raised(n.first)) { // "ft2", as "ft²" is folded: part of the word
      push(FactItem::Kind::word, n.first, n.last).text = t_[n.first].text;
      return n.last + 1u;
    }
    if (const std::size_t end = mixed(n); end != 0) return end;
    if (n.kind == NumberKind::ordinal && t_[n.last].text == "mo") return bare_number(n.first); // "10mo old": months
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
    if (n.kind == NumberKind::year && t_[n.first].glued && n.first > 0 && t_[n.first - 1].word()) { // "FX2020"
      item.number = NumberKind::reference;
      return n.last + 1u;
    }
    if (n.first == n.last) item.text = t_[n.first].text;
    if (behind_reference(n)) {
      item.number = NumberKind::reference;
      out_[out_.size() - 3].number = NumberKind::reference;
      return n.last + 1u;
    }
    if (n.kind == NumberKind::year) item.day.year = static_cast<int>(n.thousandths / 1000);
    if (n.kind == NumberKind::fraction || n.kind == NumberKind::date || n.kind == NumberKind::size ||
        n.kind == NumberKind::ordinal)
      pieces(item);
    if (n.kind == NumberKind::size && item.under == 0 && t_[n.last].is('\'')) return feet(item, n);
    if (const std::size_t end = month_and_year(item, n); end != 0) return end;
    if (n.kind == NumberKind::plain && !n.currency) {
      if (const std::size_t end = short_decade(item, n.last + 1u); end != 0) return end;
      return n.last + 1u + with_half(item, n.last + 1u);
    }
    return decade(item, n.last + 1u, n.thousandths / 1000);
  }

  /// Whether a 2 is glued to a word of measure: "ft2", "m2".
  bool raised(std::size_t i) const {
    return i > 0 && t_[i].text == "2" && t_[i].glued && t_[i - 1].word() && t_[i - 1].text != "x" &&
           (i + 1 >= t_.size() || !t_[i + 1].glued || !t_[i + 1].number());
  }

  /// "Inv 2019-334", "4471-2": pieces of one number that nothing counts; "2021-22" is a span of years.
  bool behind_reference(const Number& n) const {
    if (n.first < 2 || out_.size() < 3 || n.first != n.last || n.currency || !t_[n.first].glued ||
        !t_[n.first - 1].is('-') || !t_[n.first - 1].glued || !digits_only(t_[n.first].text))
      return false;
    const FactItem& before = out_[out_.size() - 3];
    if (before.kind != FactItem::Kind::number || before.last + 2u != n.first || before.currency) return false;
    const bool years =
        before.number == NumberKind::year && (t_[n.first].text.size() == 4 || t_[n.first].text.size() == 2);
    return !years &&
           (before.number == NumberKind::reference || before.number == NumberKind::year ||
            (digits_only(t_[before.last].text) && t_[before.last].text.size() >= 4 && before.first == before.last));
  }

  /// "1 1/2", "1-1/2": a whole and a fraction of one number. Gives the token after it, 0 where there is none.
  std::size_t mixed(const Number& n) {
    if (n.kind != NumberKind::plain || n.currency || n.thousandths % 1000 != 0 || n.thousandths >= 100'000) return 0;
    std::size_t at = n.last + 1u;
    if (at < t_.size() && t_[at].is('-') && t_[at].glued) ++at;
    if (at + 2 >= t_.size() || !t_[at + 1].is('/') || !t_[at + 1].glued || !t_[at + 2].glued) return 0;
    if (!digits_only(t_[at].text) || !digits_only(t_[at + 2].text)) return 0;
    const std::int64_t over = plain_value(t_[at].text), under = plain_value(t_[at + 2].text);
    if (over == 0 || over >= under || !(under == 2 || under == 3 || under == 4 || under == 8)) return 0;
    if (at + 3 < t_.size() && t_[at + 3].is('/')) return 0; // a date
    FactItem& item = push(FactItem::Kind::number, n.first, at + 2);
    item.thousandths = n.thousandths + 1000 * over / under;
    item.hyphened = joined_to_word(at + 2);
    return at + 3;
  }

  /// "12'": twelve feet, told as if the unit were written.
  std::size_t feet(FactItem& item, const Number& n) {
    item.number = NumberKind::plain;
    item.thousandths = item.over * 1000;
    item.over = 0;
    item.decimals = 0;
    item.last = static_cast<std::uint16_t>(n.last - 1);
    push(FactItem::Kind::word, n.last, n.last).text = "ft";
    return n.last + 1u;
  }

  /// "8-2018": a month and a year. Gives the token after it, 0 where there is none.
  std::size_t month_and_year(FactItem& item, const Number& n) const {
    const std::size_t sign = n.last + 1u;
    if (n.kind != NumberKind::plain || n.currency || n.first != n.last || n.thousandths < 1000 ||
        n.thousandths > 12'000)
      return 0;
    if (sign + 1 >= t_.size() || !t_[sign].is('-') || !t_[sign].glued || !t_[sign + 1].glued) return 0;
    const std::int64_t year =
        digits_only(t_[sign + 1].text) && t_[sign + 1].text.size() == 4 ? plain_value(t_[sign + 1].text) : 0;
    if (year < 1950 || year > 2099 || (sign + 2 < t_.size() && t_[sign + 2].is('-') && t_[sign + 2].glued)) return 0;
    item.number = NumberKind::date;
    item.day = {static_cast<int>(year), static_cast<int>(n.thousandths / 1000), 0, false};
    item.last = static_cast<std::uint16_t>(sign + 1);
    return sign + 2;
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
    make_decade(item, year);
    item.last = static_cast<std::uint16_t>(end);
    return end + 1;
  }

  /// "the 70s", "años 70": gives the token after the item, 0 where it is no decade.
  std::size_t short_decade(FactItem& item, std::size_t end) const {
    const std::int64_t tens = item.thousandths / 1000;
    if (item.thousandths % 10'000 != 0 || tens < 40 || tens > 90) return 0;
    const bool written = end < t_.size() && t_[end].glued && t_[end].text == "s";
    if (!written && (item.first == 0 || t_[item.first - 1u].text != "anos")) return 0;
    make_decade(item, 1900 + tens);
    if (written) item.last = static_cast<std::uint16_t>(end);
    return written ? end + 1 : end;
  }

  static void make_decade(FactItem& item, std::int64_t year) {
    item.decade = true;
    item.worded = false;
    item.number = NumberKind::year;
    item.thousandths = year * 1000;
    item.day.year = static_cast<int>(year);
  }

  /// A number inside a term of the lexicon, which the finder leaves out.
  std::size_t bare_number(std::size_t i) {
    FactItem& item = push(FactItem::Kind::number, i, i);
    item.text = t_[i].text;
    if (!digits_only(t_[i].text)) {
      item.number = NumberKind::reference;
      return i + 1;
    }
    item.thousandths = plain_value(t_[i].text) * 1000;
    item.hyphened = joined_to_word(i);
    if (i + 2 < t_.size() && t_[i + 1].is('/') && t_[i + 1].glued && t_[i + 2].glued && digits_only(t_[i + 2].text)) {
      item.number = NumberKind::fraction; // "1/2 bath"
      item.last = static_cast<std::uint16_t>(i + 2);
      pieces(item);
      return i + 3;
    }
    return decade(item, i + 1, item.thousandths / 1000);
  }

  /// The number that a word is, in thousandths; 0 for none.
  std::int64_t number_word(std::size_t i) const {
    if (i >= t_.size() || !t_[i].word()) return 0;
    for (const NumberWord& w : words_)
      if (w.word == t_[i].text) return w.thousandths;
    return 0;
  }
  bool text_at(std::size_t i, std::string_view text) const { return i < t_.size() && t_[i].text == text; }

  std::size_t word(std::size_t i) {
    FactItem& item = push(FactItem::Kind::word, i, i);
    if (const auto [text, end] = with_or_without(t_, i); end != 0) {
      item.text = text;
      item.last = static_cast<std::uint16_t>(end - 1);
      return end;
    }
    item.text = t_[i].text;
    const bool alone = i + 1 >= t_.size() || !t_[i + 1].glued || !t_[i + 1].is('/');
    if (item.text == "y" && alone && i > 0 && t_[i].glued && t_[i - 1].number())
      item.text = "yr"; // "9y", no Spanish "and"
    const std::int64_t value = number_word(i);
    const bool of_pairs = value == 2000 && t_[i].text[0] == 'p'; // "1 pair of 3": no number after a number
    if (value == 0 || (of_pairs && i > 0 && (t_[i - 1].number() || number_word(i - 1) != 0))) return i + 1;
    item.kind = FactItem::Kind::number;
    if (value >= 1'900'000) { // "the fifties"
      make_decade(item, value / 1000);
      return i + 1;
    }
    item.worded = true;
    item.thousandths = value;
    if (named_decade(i, value)) {
      make_decade(item, 1900 + value / 1000);
      return i + 1;
    }
    std::size_t end = compound(item, i + 1);
    end += with_half(item, end);
    item.last = static_cast<std::uint16_t>(end - 1);
    item.hyphened = joined_to_word(end - 1);
    return end;
  }

  /// "años noventa", "de los noventa": the word of a ten behind a word for years, or with nothing behind it to count.
  bool named_decade(std::size_t i, std::int64_t value) const {
    if (i == 0 || value < 40'000 || value > 90'000 || value % 10'000 != 0) return false;
    const std::string& before = t_[i - 1].text;
    const bool open = i + 1 < t_.size() && (t_[i + 1].word() || t_[i + 1].number());
    return before == "anos" || (before == "los" && !open);
  }

  /// The words after a number word that belong to it: "twenty-two", "treinta y cinco", "two hundred and ten", "two
  /// dozen", "half a dozen". Gives the token after them.
  std::size_t compound(FactItem& item, std::size_t at) const {
    for (;;) {
      std::size_t next = at;
      if (next < t_.size() && t_[next].is('-') && t_[next].glued && next + 1 < t_.size() && t_[next + 1].glued) ++next;
      else if (next + 1 < t_.size() && (text_at(next, "y") || text_at(next, "and")) &&
               next_smaller(item, next + 1, t_[next].text == "y"))
        ++next;
      else if (item.thousandths == 500 && (text_at(next, "a") || text_at(next, "una"))) ++next;
      const std::int64_t more = number_word(next);
      if (more == 12'000 && item.thousandths < 12'000 && t_[next].text.substr(0, 2) == "do" &&
          t_[next].text != "doce") {
        item.thousandths = item.thousandths * 12;
      } else if (more == 100'000 && item.thousandths >= 1000 && item.thousandths < 10'000) {
        item.thousandths *= 100;
      } else if (next_smaller(item, next, true)) {
        item.thousandths += more;
      } else {
        return at;
      }
      at = next + 1;
    }
  }
  /// Whether the word is a number that adds to the one before: a unit after a ten, anything less than a hundred after a
  /// hundred.
  bool next_smaller(const FactItem& item, std::size_t at, bool tens) const {
    const std::int64_t more = number_word(at), have = item.thousandths;
    if (more < 1000 || more % 1000 != 0) return false;
    if (have >= 100'000 && have % 100'000 == 0) return more < 100'000;
    return tens && have >= 20'000 && have < 100'000 && have % 10'000 == 0 && more < 10'000;
  }

  /// "two and a half", "2 y medio": adds the half and gives how many tokens it takes.
  std::size_t with_half(FactItem& item, std::size_t at) const {
    if (item.thousandths % 1000 != 0 || item.thousandths == 0) return 0;
    const auto joined = [&](std::size_t i) { return i < t_.size() && t_[i].is('-') && t_[i].glued ? i + 1 : i; };
    std::size_t end = joined(at);
    if (text_at(end, "and") || text_at(end, "&")) {
      end = joined(end + 1);
      if (text_at(end, "a") || text_at(end, "one")) end = joined(end + 1);
    } else if (text_at(end, "y")) {
      ++end;
    } else {
      return 0;
    }
    if (number_word(end) != 500 || text_at(end + 1, "of") || text_at(end + 1, "the") || text_at(end + 1, "de"))
      return 0; // "2 and half of the price"
    item.thousandths += 500;
    item.last = static_cast<std::uint16_t>(end);
    return end + 1 - at;
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
      if (year % 10 == 0 && text_at(i + 2, "s") && t_[i + 2].glued) { // "'90s"
        make_decade(item, year < 40 ? 2000 + year : 1900 + year);
        item.last = static_cast<std::uint16_t>(i + 2);
        return i + 3;
      }
      return i + 2;
    }
    if (quotes(i)) return i + 1;
    push(FactItem::Kind::sign, i, i).text = t_[i].text;
    return i + 1;
  }

  bool joined_to_word(std::size_t i) const {
    return i + 2 < t_.size() && t_[i + 1].is('-') && t_[i + 1].glued && t_[i + 2].glued && t_[i + 2].word();
  }

  /// A quotation mark or the apostrophe of "months' use", not the sign of feet or inches behind a number.
  bool quotes(std::size_t i) const {
    return (t_[i].is('"') || t_[i].is('\'')) && (i == 0 || !t_[i].glued || !t_[i - 1].number());
  }

  bool inside_word(std::size_t i) const {
    if (i == 0 || i + 1 >= t_.size() || !t_[i].glued || !t_[i + 1].glued) return false;
    return t_[i - 1].word() || t_[i + 1].word();
  }

  bool abbreviation(std::size_t i) const {
    if (i == 0 || !t_[i].glued || !t_[i - 1].word()) return false;
    if (i + 1 >= t_.size() || t_[i + 1].glued) return true;
    const char next = source_[t_[i + 1].start];
    if (is_digit(next)) // "approx. 2012", not "7 years. 45.00"
      return t_[i - 1].text.size() <= 6 && t_[i + 1].text.find('.') == std::string::npos;
    return t_[i - 1].text.size() <= 5 && !is_upper(next);
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
