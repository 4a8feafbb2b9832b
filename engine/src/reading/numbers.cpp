#include "reading/numbers.h"

#include "values/ascii.h"

#include <algorithm>
#include <array>
#include <date/date.h>
#include <string>

namespace wearline {

namespace {

/// "1,240.00" by its groups of digits and the signs between them.
struct Digits {
  std::vector<std::string_view> groups;
  std::string separators;
};

Digits split_digits(std::string_view text) {
  Digits out;
  std::size_t from = 0;
  for (std::size_t i = 0; i <= text.size(); ++i) {
    if (i < text.size() && is_digit(text[i])) continue;
    out.groups.push_back(text.substr(from, i - from));
    if (i < text.size()) out.separators += text[i];
    from = i + 1;
  }
  return out;
}

std::int64_t to_int(std::string_view digits) {
  std::int64_t value = 0;
  for (const char c : digits)
    if (value < 1'000'000'000'000) value = value * 10 + (c - '0');
  return value;
}

bool all_threes(const Digits& d, std::size_t from, std::size_t to) {
  for (std::size_t i = from; i < to; ++i)
    if (d.groups[i].size() != 3) return false;
  return !d.groups[0].empty() && d.groups[0].size() <= 3;
}

struct Value {
  bool good = false, grouped = false;
  std::int64_t thousandths = 0;
  std::uint8_t decimals = 0;
};

Value make_value(const Digits& d, std::size_t whole_groups, bool grouped) {
  Value v;
  std::string whole;
  for (std::size_t i = 0; i < whole_groups; ++i) whole += d.groups[i];
  if (whole.size() > 10) return v;
  std::int64_t fraction = 0;
  if (whole_groups < d.groups.size()) {
    const std::string_view tail = d.groups[whole_groups];
    if (tail.size() > 3) return v;
    fraction = to_int(tail);
    for (std::size_t i = tail.size(); i < 3; ++i) fraction *= 10;
    v.decimals = static_cast<std::uint8_t>(tail.size());
  }
  v.good = true;
  v.grouped = grouped;
  v.thousandths = to_int(whole) * 1000 + fraction;
  return v;
}

/// One separator kind, once: the three digits of "1,240" are a group in one style and decimals in the other.
Value read_single(const Digits& d, bool comma_decimals) {
  const char sign = d.separators[0];
  const bool decimal_sign = sign == (comma_decimals ? ',' : '.');
  const std::size_t tail = d.groups[1].size();
  if (tail == 3 && d.groups[0].size() <= 3 && (sign == ',' || sign == '\'' || comma_decimals) &&
      !(decimal_sign && sign == '.')) {
    if (decimal_sign) return make_value(d, 1, false);
    return d.groups[0] == "0" ? make_value(d, 1, false) : make_value(d, 2, true);
  }
  return make_value(d, 1, false);
}

Value read_value(std::string_view text, bool comma_decimals) {
  const Digits d = split_digits(text);
  if (d.separators.empty()) return make_value(d, 1, false);
  if (d.separators.size() == 1) return read_single(d, comma_decimals);
  const char last = d.separators.back();
  const char first = d.separators.front();
  const bool mixed = first != last;
  const std::size_t whole = mixed ? d.separators.size() : d.groups.size();
  for (std::size_t i = 0; i + 1 < d.separators.size(); ++i)
    if (d.separators[i] != first) return {};
  if (!all_threes(d, 1, whole)) return {};
  return make_value(d, whole, true);
}

bool is_year(std::int64_t n) { return n >= 1950 && n <= 2099; }
int full_year(std::int64_t n, std::size_t digits) {
  if (digits == 4) return static_cast<int>(n);
  return static_cast<int>(n < 70 ? 2000 + n : 1900 + n);
}

class Finder {
public:
  Finder(const std::vector<Token>& tokens, const std::vector<Mention>& mentions, const Lexicon& lexicon,
         const NumberMarks& marks, NumberStyle style)
      : t_(tokens), lexicon_(lexicon), marks_(marks), style_(style), ideas_(tokens.size()),
        covered_(tokens.size(), false), own_(tokens.size(), nullptr), own_known_(tokens.size(), false) {
    for (const Mention& m : mentions) {
      for (std::size_t i = m.first; i <= m.last; ++i) ideas_[i].push_back(m.concept_id);
      const Role role = lexicon.at(m.concept_id).role;
      if (m.first != m.last && role != Role::mark && role != Role::plain)
        for (std::size_t i = m.first; i <= m.last; ++i) covered_[i] = true;
    }
  }

  std::vector<Number> run() {
    std::size_t i = 0;
    while (i < t_.size()) {
      Number n;
      const std::size_t next = covered_[i] ? i + 1 : read(i, n);
      if (next > i + 1 || (!covered_[i] && t_[i].number())) {
        n.first = static_cast<std::uint16_t>(i);
        n.last = static_cast<std::uint16_t>(next - 1);
        if (valid_) finish(n);
        if (valid_) keep(n);
      }
      i = valid_ && next > i ? std::max(next, n.last + std::size_t{1}) : next;
    }
    return std::move(out_);
  }

private:
  bool sign(std::size_t i, char c) const { return i < t_.size() && t_[i].is(c); }
  bool number(std::size_t i) const { return i < t_.size() && t_[i].number() && !covered_[i]; }
  bool integer(std::size_t i) const { return number(i) && t_[i].text.find_first_of(".,'") == std::string::npos; }
  bool glued(std::size_t i) const { return i < t_.size() && t_[i].glued; }
  bool has(std::size_t i, Lexicon::Id id) const {
    if (i >= t_.size() || id == Lexicon::none) return false;
    if (!own_known_[i]) own_[i] = &lexicon_.ideas_of(t_[i]), own_known_[i] = true;
    const auto& own = *own_[i];
    return std::find(own.begin(), own.end(), id) != own.end() ||
           std::find(ideas_[i].begin(), ideas_[i].end(), id) != ideas_[i].end();
  }
  std::int64_t value(std::size_t i) const { return to_int(t_[i].text); }
  int month(std::size_t i) const {
    if (i >= t_.size() || !t_[i].word()) return 0;
    for (std::size_t m = 0; m < marks_.months.size(); ++m)
      if (has(i, marks_.months[m])) return static_cast<int>(m) + 1;
    return 0;
  }
  /// "carpet laid 2019 $90.00": the sign belongs to the number it touches.
  bool of_next_number(std::size_t i) const { return !glued(i) && i + 1 < t_.size() && number(i + 1) && glued(i + 1); }

  bool currency(std::size_t i) const {
    if (sign(i, '$') || sign(i, '\x80') || sign(i, '\x81')) return true;
    return i < t_.size() && t_[i].word() &&
           std::any_of(marks_.currencies.begin(), marks_.currencies.end(), [&](Lexicon::Id id) { return has(i, id); });
  }

  /// Reads what begins at token i into n and returns where it ends; i + 1 with `valid_` false if it is no number.
  std::size_t read(std::size_t i, Number& n) {
    valid_ = true;
    if (const std::size_t end = named_date(i, n); end != 0) return end;
    if (t_[i].number()) {
      for (const auto reader : {&Finder::iso_date, &Finder::slash_date, &Finder::phone, &Finder::clock, &Finder::sizes,
                                &Finder::fraction, &Finder::ordinal})
        if (const std::size_t end = (this->*reader)(i, n); end != 0) return end;
      return single(i, n);
    }
    if (const std::size_t end = spelled(i, n); end != 0) return end;
    if (const std::size_t end = phone(i, n); end != 0) return end;
    if (const std::size_t end = code(i, n); end != 0) return end;
    valid_ = false;
    return i + 1;
  }

  /// A sum in words beside the same sum in figures is one sum: "ninety dollars ($90.00)".
  void keep(const Number& n) {
    if (!out_.empty() && (n.spelled != out_.back().spelled) && n.thousandths == out_.back().thousandths) {
      std::size_t between = out_.back().last + std::size_t{1};
      while (between < n.first && !t_[between].word()) ++between;
      if (between == n.first) {
        if (!n.spelled) out_.back() = n;
        return;
      }
    }
    out_.push_back(n);
  }

  /// What a word counts: "seven" 7, "forty" 40, "hundred" 100; 0 if it counts nothing.
  std::int64_t word_value(std::size_t i) const {
    if (i >= t_.size() || !t_[i].word()) return 0;
    for (const auto& [id, counts] : marks_.words)
      if (has(i, id)) return counts;
    for (std::size_t k = 0; k < marks_.counts.size(); ++k)
      if (has(i, marks_.counts[k])) return static_cast<std::int64_t>(k) + 1;
    return 0;
  }

  /// "one thousand two hundred and sixty-two": its value and where it ends; 0 and `i` if none begins here.
  std::pair<std::int64_t, std::size_t> count_in_words(std::size_t i) const {
    std::int64_t all = 0, group = 0;
    std::size_t at = i, end = i;
    while (const std::int64_t v = word_value(at)) {
      if (v == 1000 && all == 0) {
        all = std::max<std::int64_t>(group, 1) * 1000;
        group = 0;
      } else if (v == 100 && group > 0 && group < 100) group *= 100;
      else if (group == 0 || (v < 100 && group % 100 == 0) || (v < 10 && group % 10 == 0 && group % 100 >= 20))
        group += v;
      else break;
      end = ++at;
      if (sign(at, '-') || (has(at, marks_.joint) && t_[at].word())) ++at;
    }
    return {all + group, end};
  }

  /// "sixty-two dollars and fifty cents", "nine hundred and 00/100 dollars".
  std::size_t spelled(std::size_t i, Number& n) const {
    auto [dollars, end] = count_in_words(i);
    if (end == i) return 0;
    std::int64_t cents = 0;
    std::size_t at = end;
    if (has(at, marks_.joint)) ++at;
    if (integer(at) && t_[at].text.size() == 2 && sign(at + 1, '/') && integer(at + 2) && value(at + 2) == 100) {
      cents = value(at);
      end = at + 3;
    }
    if (!currency(end) || !t_[end].word()) return 0;
    ++end;
    at = end;
    if (has(at, marks_.joint)) ++at;
    if (const auto [more, stop] = count_in_words(at); stop > at && more < 100 && has(stop, marks_.cents)) {
      cents = more;
      end = stop + 1;
    }
    n.kind = NumberKind::money;
    n.thousandths = dollars * 1000 + cents * 10;
    n.decimals = cents == 0 ? 0 : 2;
    n.whole = cents == 0;
    n.currency = true;
    n.spelled = true;
    return end;
  }

  std::size_t skip_day_tail(std::size_t i) const { // "3rd", "3,"
    if (i < t_.size() && t_[i].glued &&
        (t_[i].text == "st" || t_[i].text == "nd" || t_[i].text == "rd" || t_[i].text == "th"))
      ++i;
    if (sign(i, '.') || sign(i, ',')) ++i;
    return i;
  }

  bool year_at(std::size_t i) const { return integer(i) && t_[i].text.size() == 4 && is_year(value(i)); }

  std::size_t set_date(Number& n, int year, int month_number, int day, std::size_t end) const {
    n.kind = NumberKind::date;
    n.day = {year, month_number, day, false};
    return end;
  }

  /// "March 3, 2024", "3 March 2024", "3 de marzo de 2024", "March 2024", "March 3".
  std::size_t named_date(std::size_t i, Number& n) const {
    if (const int m = month(i); m != 0) {
      std::size_t at = i + 1;
      if (sign(at, '.')) ++at;
      if (t_[i].text == "mar" && !number(at)) return 0;
      if (has(at, marks_.of) && year_at(at + 1)) return set_date(n, static_cast<int>(value(at + 1)), m, 0, at + 2);
      if (year_at(at)) return set_date(n, static_cast<int>(value(at)), m, 0, at + 1);
      if (sign(at, '\'') && integer(at + 1) && glued(at + 1) && t_[at + 1].text.size() == 2) // "Feb. '23"
        return set_date(n, full_year(value(at + 1), 2), m, 0, at + 2);
      if (!integer(at) || value(at) < 1 || value(at) > 31 || t_[at].text.size() > 2) return 0;
      const int day = static_cast<int>(value(at));
      const std::size_t tail = skip_day_tail(at + 1);
      if (year_at(tail) && !sign(tail + 1, '.')) return set_date(n, static_cast<int>(value(tail)), m, day, tail + 1);
      if (year_at(tail)) return set_date(n, static_cast<int>(value(tail)), m, day, tail + 1);
      if (sign(at + 1, '/') && glued(at + 1) && integer(at + 2) && glued(at + 2) &&
          (t_[at + 2].text.size() == 2 || year_at(at + 2))) // "Aug 31/24"
        return set_date(n, full_year(value(at + 2), t_[at + 2].text.size()), m, day, at + 3);
      if (sign(at + 1, '\'') && integer(at + 2) && glued(at + 2) && t_[at + 2].text.size() == 2) // "Aug 1 '24"
        return set_date(n, full_year(value(at + 2), 2), m, day, at + 3);
      if (sign(at + 1, '.') || sign(at + 1, ',')) return set_date(n, 0, m, day, at + 1);
      return set_date(n, 0, m, day, tail);
    }
    if (year_at(i) && month(i + 1) != 0) { // "2025 Feb 9"
      const std::size_t at = i + (sign(i + 2, '.') ? 3u : 2u);
      if (integer(at) && t_[at].text.size() <= 2 && value(at) >= 1 && value(at) <= 31 && !sign(at + 1, '.') &&
          !sign(at + 1, ','))
        return set_date(n, static_cast<int>(value(i)), month(i + 1), static_cast<int>(value(at)), at + 1);
    }
    if (!integer(i) || t_[i].text.size() > 2 || value(i) < 1 || value(i) > 31) return 0;
    std::size_t at = i + 1;
    if (at < t_.size() && t_[at].glued &&
        (t_[at].text == "st" || t_[at].text == "nd" || t_[at].text == "rd" || t_[at].text == "th"))
      ++at;
    if (sign(at, '-') && glued(at)) ++at;
    if (at > i + 1 && at < t_.size() && t_[at].text == "day") ++at; // "the 22nd day of August"
    if (has(at, marks_.of)) ++at;
    const int m = month(at);
    if (m == 0 || t_[at].far) return 0; // "Unit 9        May 20, 2025"
    const int day = static_cast<int>(value(i));
    ++at;
    if (sign(at, '.') && glued(at)) ++at;
    std::size_t year = at;
    if (sign(year, ',') || (sign(year, '-') && glued(year))) ++year;
    if (has(year, marks_.of)) ++year;
    if (year < t_.size() && t_[year].text == "del") ++year;
    if (year_at(year)) return set_date(n, static_cast<int>(value(year)), m, day, year + 1);
    return set_date(n, 0, m, day, at);
  }

  std::size_t iso_date(std::size_t i, Number& n) const {
    if (integer(i) && t_[i].text.size() == 8 && (t_[i].text.starts_with("19") || t_[i].text.starts_with("20")) &&
        !glued(i) && !glued(i + 1)) {
      const NamedDay day{static_cast<int>(value(i) / 10000), static_cast<int>(value(i) / 100 % 100),
                         static_cast<int>(value(i) % 100), false}; // "20240630"
      if (civil_day(day)) return set_date(n, day.year, day.month, day.day, i + 1);
    }
    if (!year_at(i) || !sign(i + 1, '-') || !glued(i + 1) || !integer(i + 2) || !glued(i + 2)) return 0;
    const std::int64_t m = value(i + 2);
    if (m < 1 || m > 12 || t_[i + 2].text.size() != 2) return 0;
    if (sign(i + 3, '-') && glued(i + 3) && integer(i + 4) && value(i + 4) >= 1 && value(i + 4) <= 31)
      return set_date(n, static_cast<int>(value(i)), static_cast<int>(m), static_cast<int>(value(i + 4)), i + 5);
    return set_date(n, static_cast<int>(value(i)), static_cast<int>(m), 0, i + 3);
  }

  std::size_t set_digits_date(Number& n, std::int64_t a, std::int64_t b, int year, std::size_t end) const {
    n.kind = NumberKind::date;
    const bool first_is_day = a > 12 || (b <= 12 && style_.day_first);
    n.day = {year, static_cast<int>(first_is_day ? b : a), static_cast<int>(first_is_day ? a : b), a <= 12 && b <= 12};
    return end;
  }

  /// "6/30/24", "30-06-2024", "30.06.2024", "6/30", "8/2019".
  std::size_t slash_date(std::size_t i, Number& n) const {
    if (const Digits d = split_digits(t_[i].text); d.separators == ".." && d.groups[2].size() != 3) {
      const std::int64_t a = to_int(d.groups[0]), b = to_int(d.groups[1]);
      if (a < 1 || b < 1 || a > 31 || b > 31 || (a > 12 && b > 12)) return 0;
      return set_digits_date(n, a, b, full_year(to_int(d.groups[2]), d.groups[2].size()), i + 1);
    }
    if (!integer(i) || t_[i].text.size() > 4 || !integer(i + 2) || !glued(i + 1) || !glued(i + 2)) return 0;
    const bool slash = sign(i + 1, '/');
    if (!slash && !sign(i + 1, '-')) return 0;
    const std::int64_t a = value(i), b = value(i + 2);
    const bool third = (slash ? sign(i + 3, '/') : sign(i + 3, '-')) && glued(i + 3) && integer(i + 4) && glued(i + 4);
    if (third) {
      if (year_at(i) && b >= 1 && b <= 12 && value(i + 4) >= 1 && value(i + 4) <= 31)
        return set_date(n, static_cast<int>(a), static_cast<int>(b), static_cast<int>(value(i + 4)), i + 5);
      const std::size_t digits = t_[i + 4].text.size();
      if (a < 1 || b < 1 || a > 31 || b > 31 || (a > 12 && b > 12) || (digits != 2 && digits != 4)) return 0;
      return set_digits_date(n, a, b, full_year(value(i + 4), digits), i + 5);
    }
    if (!slash) return 0;
    if (a >= 1 && a <= 12 && year_at(i + 2)) return set_date(n, static_cast<int>(b), static_cast<int>(a), 0, i + 3);
    if (a < 1 || b < 1 || a > 31 || b > 31 || (a > 12 && b > 12)) return 0;
    if (is_share(i, a, b)) return 0;
    return set_digits_date(n, a, b, 0, i + 3);
  }

  /// "1/3 of", "1/2": a share rather than a day of a month.
  bool is_share(std::size_t i, std::int64_t a, std::int64_t b) const {
    if (a >= b) return false;
    if (has(i + 3, marks_.of)) return true;
    return a == 1 && (b == 2 || b == 3 || b == 4 || b == 8) && i + 3 < t_.size() && !sign(i + 3, ',') &&
           !sign(i + 3, '-');
  }

  std::size_t phone(std::size_t i, Number& n) const {
    std::size_t at = i;
    int digits = 0, groups = 0;
    if (sign(at, '(')) {
      if (!integer(at + 1) || t_[at + 1].text.size() != 3 || !sign(at + 2, ')')) return 0;
      digits = 3;
      groups = 1;
      at += 3;
      if (sign(at, '-')) ++at;
    }
    while (number(at) && t_[at].text.size() >= 3 && t_[at].text.size() <= 12) {
      const Digits d = split_digits(t_[at].text);
      for (const auto g : d.groups) digits += static_cast<int>(g.size()), ++groups;
      if (d.groups[0].size() != 3 && groups == 1) return 0;
      ++at;
      if (sign(at, '-') && glued(at) && number(at + 1) && glued(at + 1)) ++at;
      else break;
    }
    const bool shaped = (groups == 2 && digits == 7) || (groups == 3 && (digits == 10 || digits == 11));
    if (!shaped || t_[at - 1].text.size() < 4) return 0;
    if (at == i + 1 && t_[i].text.find(',') != std::string::npos) return 0;
    if (at == i + 1 && groups < 3) return 0;
    n.kind = NumberKind::phone;
    return at;
  }

  std::size_t clock(std::size_t i, Number& n) const {
    if (!integer(i) || !sign(i + 1, ':') || !glued(i + 1) || !integer(i + 2) || !glued(i + 2)) return 0;
    if (value(i) > 24 || value(i + 2) > 59 || t_[i + 2].text.size() != 2) return 0;
    n.kind = NumberKind::clock;
    return i + 3;
  }

  bool times(std::size_t i) const { return i < t_.size() && (t_[i].text == "x" || t_[i].is('*')); }
  bool is_inch(std::size_t i) const {
    return i < t_.size() && t_[i].glued && (t_[i].is('"') || (t_[i].is('\'') && t_[i].glued));
  }

  /// "16x25x1", "3x2 ft", 30". Not "6x4.25", which is a count and a price.
  std::size_t sizes(std::size_t i, Number& n) const {
    std::size_t at = i + 1;
    std::size_t count = 1;
    if (is_inch(at)) ++at;
    while (times(at) && number(at + 1)) {
      const bool tight = glued(at) && glued(at + 1);
      if (!tight && count == 1 && !is_inch(at - 1) && !size_unit(at + 2)) break; // "2 x 3 ft"
      at += 2;
      if (is_inch(at)) ++at;
      ++count;
    }
    n.kind = NumberKind::size;
    if (count >= 3) return at;
    if (count == 1) return at > i + 1 ? at : 0;
    const bool priced = t_[at - 1].text.find('.') != std::string::npos || has(at, marks_.rate) || is_inch(at - 1);
    if (is_inch(at - 1) || size_unit(at)) return at;
    if (!priced && i > 0 && sign(i - 1, '(') && sign(at, ')')) return at; // "(12x15)"
    return priced || !looks_like_size(i, i + 2) ? 0 : at;
  }
  bool size_unit(std::size_t i) const {
    return i < t_.size() && t_[i].word() &&
           (t_[i].text == "ft" || t_[i].text == "in" || t_[i].text == "feet" || t_[i].text == "inch" ||
            t_[i].text == "cm");
  }
  /// Without a unit: a size is followed by something, a count and price by nothing, "=" or a sum.
  bool looks_like_size(std::size_t, std::size_t second) const {
    std::size_t after = second + 1;
    while (sign(after, '.')) ++after;
    if (after >= t_.size() || sign(after, '=') || number(after) || currency(after)) return false;
    return t_[after].word();
  }

  std::size_t fraction(std::size_t i, Number& n) const {
    if (!integer(i) || !sign(i + 1, '/') || !glued(i + 1) || !integer(i + 2) || !glued(i + 2)) return 0;
    n.kind = NumberKind::fraction;
    return i + 3;
  }

  std::size_t ordinal(std::size_t i, Number& n) const {
    if (!integer(i) || !glued(i + 1) || !t_[i + 1].word()) return 0;
    static constexpr std::array<std::string_view, 16> tails = {"st", "nd", "rd", "th", "er", "ro", "ra", "do",
                                                               "da", "to", "ta", "mo", "ma", "vo", "va", "no"};
    if (std::find(tails.begin(), tails.end(), t_[i + 1].text) == tails.end()) return 0;
    n.kind = NumberKind::ordinal;
    return i + 2;
  }

  /// "WB-1190", "A-113": letters and digits in one piece.
  std::size_t code(std::size_t i, Number& n) const {
    if (!t_[i].word() || t_[i].text.size() > 4 || !sign(i + 1, '-') || !glued(i + 1) || !integer(i + 2) ||
        !glued(i + 2))
      return 0;
    if (t_[i + 2].text.size() < 3 || currency(i)) return 0;
    if (i > 0 && t_[i].glued && t_[i - 1].word()) return 0;
    n.kind = NumberKind::reference;
    return i + 3;
  }

  std::size_t single(std::size_t i, Number& n) {
    Value v = read_value(t_[i].text, style_.comma_decimals);
    if (const std::size_t end = torn(i, n); end != 0) return end;
    const bool apart = spaced_thousands(i);
    if (apart) v = read_value(t_[i].text + (style_.comma_decimals ? "." : ",") + t_[i + 1].text, style_.comma_decimals);
    n.thousandths = v.thousandths;
    n.decimals = v.decimals;
    n.whole = v.decimals == 0;
    n.slip = t_[i].slip;
    n.kind = NumberKind::plain;
    if (i > 0 && sign(i - 1, '\'') && glued(i) && integer(i) && t_[i].text.size() == 2 &&
        (i < 2 || !t_[i - 2].number() || !glued(i - 1))) { // "'18"
      n.kind = NumberKind::year;
      n.thousandths = std::int64_t{1000} * full_year(value(i), 2);
      return i + 1;
    }
    if (!v.good) n.kind = NumberKind::reference;
    else if (v.decimals == 2 || v.grouped) n.kind = NumberKind::money;
    if (sign(i + 1, '%') || has(i + 1, marks_.percent)) {
      n.kind = NumberKind::percent;
      return sign(i + 1, '%') ? i + 2 : i + 1;
    }
    return apart ? i + 2 : i + 1;
  }

  /// "$ 185. 00", "$1, 150.00": a blank that a scan put after the point or comma of a sum.
  std::size_t torn(std::size_t i, Number& n) const {
    const char mark = style_.comma_decimals ? ',' : '.', group = style_.comma_decimals ? '.' : ',';
    if (i == 0 || !currency(i - 1) || i + 2 >= t_.size() || !glued(i + 1) || !number(i + 2) || glued(i + 2) ||
        t_[i + 2].far || t_[i].text.find(mark) != std::string::npos)
      return 0;
    const std::string& next = t_[i + 2].text;
    const bool cents = sign(i + 1, mark) && next.size() == 2 && integer(i + 2);
    const bool rest = sign(i + 1, group) && next.size() == 6 && next[3] == mark;
    if (!cents && !rest) return 0;
    const Value v = read_value(t_[i].text + (cents ? mark : group) + next, style_.comma_decimals);
    if (!v.good || v.decimals != 2) return 0;
    n.thousandths = v.thousandths;
    n.decimals = v.decimals;
    n.whole = false;
    n.slip = true;
    n.kind = NumberKind::money;
    return i + 3;
  }

  /// "$1 145.00", "1 145,00 $": a blank between the groups, with a currency sign before or, as in French, behind.
  /// "$45 145.00" is a price and a sum: no charge is so large.
  bool spaced_thousands(std::size_t i) const {
    const bool french = style_.comma_decimals && integer(i) && number(i + 1) && !glued(i + 1) && i + 2 < t_.size() &&
                        !t_[i + 1].far && t_[i].text.size() <= 3 && t_[i].text[0] != '0' &&
                        t_[i + 1].text.size() == 6 && t_[i + 1].text[3] == ',' && currency(i + 2) &&
                        (i == 0 || (!number(i - 1) && !times(i - 1)));
    if (french) return true;
    if (!integer(i) || t_[i].text.size() > 1 || i == 0 || !currency(i - 1) || !number(i + 1) || glued(i + 1) ||
        t_[i + 1].far || (i > 1 && (times(i - 2) || sign(i - 2, '@') || has(i - 2, marks_.rate)))) // "3 x $25 150.00"
      return false;
    const std::string& next = t_[i + 1].text;
    return next.size() == 6 && (next[3] == '.' || next[3] == ',');
  }

  /// Looks around a single number for its currency, sign, brackets and the words that say what it is.
  void finish(Number& n) {
    if (n.kind != NumberKind::plain && n.kind != NumberKind::money) return;
    std::size_t from = n.first, to = n.last;
    if (from > 0 && currency(from - 1)) --from, n.currency = true;
    if (n.currency && from > 0 && t_[from].is('$') && t_[from].glued && t_[from - 1].word() &&
        t_[from - 1].text.size() <= 3)
      --from; // "US$", "C$"
    if (!n.currency && to + 1 < t_.size() && currency(to + 1) && !of_next_number(to + 1)) ++to, n.currency = true;
    else if (n.currency && to + 1 < t_.size() && t_[to + 1].word() && currency(to + 1)) ++to;
    if (!n.currency && n.whole && n.thousandths < 1'000'000 && sign(to + 1, '\x82')) { // 79 and the sign of a cent
      n.thousandths /= 100;
      n.decimals = 2;
      n.whole = false;
      n.currency = true;
      ++to;
    }
    if (n.currency && n.whole && !n.slip) take_cents(n, to);
    if (n.first > from + 0 && from > 0 && (sign(from - 1, '-') || sign(from - 1, '+')) && attached_sign(from - 1))
      take_sign(n, --from);
    else if (n.first == from && from > 0 && (sign(from - 1, '-') || sign(from - 1, '+')) && attached_sign(from - 1))
      take_sign(n, --from);
    if (n.currency && from + 1 < n.first && sign(from + 1, '-')) n.minus = true;
    if (n.currency && n.first >= 2 && sign(n.first - 1, '-') && sign(n.first - 2, '$'))
      n.minus = true, from = n.first - 2u;
    if (from > 0 && sign(from - 1, '(') && sign(to + 1, ')')) --from, ++to, n.bracketed = true;
    if (sign(to + 1, '-') && glued(to + 1) && !(glued(to + 2) && to + 2 < t_.size())) ++to, n.minus = true;
    n.first = static_cast<std::uint16_t>(from);
    n.last = static_cast<std::uint16_t>(to);
    if (n.currency && n.kind == NumberKind::plain && n.decimals <= 2) n.kind = NumberKind::money;
    n.after_equals = from > 0 && (sign(from - 1, '=') ||
                                  (from > 1 && sign(from - 1, '>') && (sign(from - 2, '=') || sign(from - 2, '-'))));
    n.rate = is_rate(from, to);
    if (n.kind == NumberKind::plain) classify_plain(n, from);
  }

  /// "7 dollars 50 cents", "7 dollars and 50 cents".
  void take_cents(Number& n, std::size_t& to) const {
    std::size_t at = to + 1;
    if (has(at, marks_.joint)) ++at;
    if (!integer(at) || t_[at].text.size() > 2 || !has(at + 1, marks_.cents)) return;
    n.thousandths += value(at) * 10;
    n.decimals = 2;
    n.whole = false;
    n.kind = NumberKind::money;
    to = at + 1;
  }

  /// A minus belongs to the number when a blank or the line's start stands before it and the number follows at once or
  /// after blanks of a column.
  bool attached_sign(std::size_t at) const {
    if (at == 0) return true;
    if (t_[at - 1].is('(')) return true;
    return !t_[at].glued && glued(at + 1);
  }
  void take_sign(Number& n, std::size_t at) const {
    if (t_[at].is('-')) n.minus = true;
    else n.plus = true;
  }

  bool is_rate(std::size_t from, std::size_t to) const {
    if (from > 0 && (sign(from - 1, '@') || (has(from - 1, marks_.rate) && t_[from - 1].text != "a" &&
                                             !is_each(from - 1) && t_[from - 1].text != "por")))
      return true;
    std::size_t after = to + 1;
    if (sign(after, '/')) return glued(after) && after + 1 < t_.size() && t_[after + 1].word();
    return is_each(after) ||
           (after < t_.size() && t_[after].word() && (t_[after].text == "per" || t_[after].text == "apiece"));
  }
  bool is_each(std::size_t i) const {
    if (i >= t_.size() || !t_[i].word()) return false;
    if (t_[i].text == "c") return sign(i + 1, '/') && i + 2 < t_.size() && t_[i + 2].text == "u"; // "c/u"
    return t_[i].text == "ea" || t_[i].text == "each" || t_[i].text == "cada";
  }

  void classify_plain(Number& n, std::size_t from) {
    if (from > 0 && (sign(from - 1, '#') || (has(from - 1, marks_.number) && !t_[from - 1].is('%'))))
      n.kind = NumberKind::reference;
    else if (from > 1 && sign(from - 1, '.') && glued(from - 1) && t_[from - 2].word() &&
             (glued(from) || has(from - 2, marks_.number)))
      n.kind = NumberKind::reference;
    else if (from > 1 && sign(from - 1, '#')) n.kind = NumberKind::reference;
    else if (n.whole && t_[n.first].number() && t_[n.first].text.size() == 4 && is_year(n.thousandths / 1000))
      n.kind = NumberKind::year;
    else if (n.whole && t_[n.first].number() && t_[n.first].text.size() > 6) n.kind = NumberKind::reference;
    else if (n.whole && t_[n.first].text.size() > 1 && t_[n.first].text[0] == '0') n.kind = NumberKind::reference;
  }

  const std::vector<Token>& t_;
  const Lexicon& lexicon_;
  const NumberMarks& marks_;
  NumberStyle style_;
  std::vector<std::vector<Lexicon::Id>> ideas_;
  std::vector<bool> covered_;
  mutable std::vector<const std::vector<Lexicon::Id>*> own_; ///< what each word stands for on its own, once asked
  mutable std::vector<bool> own_known_;
  std::vector<Number> out_;
  bool valid_ = true;
};

} // namespace

std::optional<Money> Number::money() const {
  if (thousandths % 10 != 0 || thousandths / 10 > Money::max_cents || decimals > 2) return std::nullopt;
  return Money::cents(thousandths / 10);
}

NumberMarks::NumberMarks(const Lexicon& lexicon)
    : rate(lexicon.find("mark:rate")), times(lexicon.find("mark:times")), percent(lexicon.find("mark:percent")),
      number(lexicon.find("mark:number")), of(lexicon.find("mark:of")), net(lexicon.find("mark:net")),
      free(lexicon.find("mark:free")), cents(lexicon.find("mark:cents")), joint(lexicon.find("and-link")) {
  for (int m = 1; m <= 12; ++m) months.push_back(lexicon.find("mark:month:" + std::to_string(m)));
  for (const char* name :
       {"one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"})
    counts.push_back(lexicon.find(std::string("mark:") + name));
  for (const int word : {13, 14, 15, 16, 17, 18, 19, 20,  21,  22,  23,  24,  25,  26,  27,  28,  29,
                         30, 40, 50, 60, 70, 80, 90, 100, 200, 300, 400, 500, 600, 700, 800, 900, 1000})
    words.emplace_back(lexicon.find("mark:number:" + std::to_string(word)), word);
  for (const char* name : {"USD", "CAD", "EUR", "GBP", "MXN"})
    currencies.push_back(lexicon.find(std::string("mark:currency:") + name));
}

NumberStyle number_style(std::string_view text, bool spanish) {
  NumberStyle style;
  int comma = 0, point = 0, day_first = 0, month_first = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (!is_digit(text[i]) ||
        (i > 0 && (is_digit(text[i - 1]) || text[i - 1] == '.' || text[i - 1] == ',' || text[i - 1] == '/')))
      continue;
    std::size_t end = i;
    while (end < text.size() && (is_digit(text[end]) || ((text[end] == '.' || text[end] == ',' || text[end] == '/') &&
                                                         end + 1 < text.size() && is_digit(text[end + 1]))))
      ++end;
    const std::string_view piece = text.substr(i, end - i);
    if (piece.size() >= 4 && piece[piece.size() - 3] == ',' && piece.find('/') == std::string_view::npos) ++comma;
    if (piece.size() >= 4 && piece[piece.size() - 3] == '.' && piece.find('/') == std::string_view::npos) ++point;
    const std::size_t slash = piece.find('/');
    if (slash != std::string_view::npos && piece.find('/', slash + 1) != std::string_view::npos) {
      const std::int64_t a = to_int(piece.substr(0, slash)),
                         b = to_int(piece.substr(slash + 1, piece.find('/', slash + 1) - slash - 1));
      day_first += a > 12 && a <= 31;
      month_first += b > 12 && b <= 31;
    }
    i = end;
  }
  style.comma_decimals = comma > 0 && comma > point;
  style.day_first = day_first > 0 ? month_first == 0 || day_first > month_first : month_first == 0 && spanish;
  return style;
}

std::vector<Number> find_numbers(const std::vector<Token>& tokens, const std::vector<Mention>& mentions,
                                 const Lexicon& lexicon, const NumberMarks& marks, NumberStyle style) {
  return Finder(tokens, mentions, lexicon, marks, style).run();
}

std::optional<Day> civil_day(const NamedDay& named) {
  if (named.year < 1900 || named.year > 2199 || named.day == 0) return std::nullopt;
  const date::year_month_day ymd = date::year{named.year} / named.month / named.day;
  if (!ymd.ok()) return std::nullopt;
  return Day(ymd);
}

} // namespace wearline
