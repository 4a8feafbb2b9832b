#include "judging/line_figures.h"

#include "values/ascii.h"

#include <algorithm>
#include <array>
#include <vector>

namespace wearline {

namespace {

/// A word, number or sign of the text.
struct Atom {
  enum class Kind { number, word, sign } kind = Kind::sign;
  std::string_view text;
  std::int64_t thousandths = 0;
  bool dollars = false, cents = false, percent = false; ///< "$" before it, exactly two decimals, "%" after it
};

/// Digits with thousands commas and at most three decimals; empty for anything else ("3.14.15", eleven digits).
std::optional<Atom> number_at(std::string_view text, std::size_t& at) {
  Atom atom{Atom::Kind::number, {}};
  const std::size_t from = at;
  std::int64_t whole = 0, part = 0;
  int places = 0, digits = 0;
  for (;
       at < text.size() && (is_digit(text[at]) || (text[at] == ',' && at + 1 < text.size() && is_digit(text[at + 1])));
       ++at) {
    if (text[at] == ',') continue;
    if (++digits > 7) return std::nullopt;
    whole = whole * 10 + (text[at] - '0');
  }
  if (at + 1 < text.size() && text[at] == '.' && is_digit(text[at + 1])) {
    for (++at; at < text.size() && is_digit(text[at]); ++at) {
      if (++places > 3) return std::nullopt;
      part = part * 10 + (text[at] - '0');
    }
  }
  atom.cents = places == 2;
  for (; places < 3; ++places) part *= 10;
  atom.thousandths = whole * 1000 + part;
  atom.text = text.substr(from, at - from);
  return atom;
}

/// The atoms of a text; empty if a number in it cannot be read.
std::vector<Atom> atoms_of(std::string_view text) {
  std::vector<Atom> out;
  for (std::size_t at = 0; at < text.size();) {
    const char c = text[at];
    if (c == ' ' || c == '\t' || c == '\n' || c == '\r') {
      ++at;
    } else if (is_digit(c)) {
      auto number = number_at(text, at);
      if (!number) return {};
      number->dollars = !out.empty() && out.back().text == "$";
      if (number->dollars) out.pop_back();
      if (at < text.size() && text[at] == '%') {
        number->percent = true;
        ++at;
      }
      out.push_back(*number);
    } else if (is_letter(c)) {
      const std::size_t from = at;
      while (at < text.size() && is_letter(text[at])) ++at;
      out.push_back({Atom::Kind::word, text.substr(from, at - from)});
    } else {
      // The multiplication sign is two bytes; every other byte stands for itself.
      const std::size_t length = text.substr(at, 2) == "\xC3\x97" ? 2 : 1;
      out.push_back({Atom::Kind::sign, text.substr(at, length)});
      at += length;
    }
  }
  return out;
}

bool spells(const Atom& atom, std::string_view word) {
  return atom.text.size() == word.size() &&
         std::equal(word.begin(), word.end(), atom.text.begin(), [](char a, char b) { return a == to_lower(b); });
}
bool times(const Atom& t) { return spells(t, "x") || t.text == "*" || t.text == "\xC3\x97"; }
bool at_price(const Atom& t) { return spells(t, "at") || t.text == "@"; }
bool each(const Atom& t) { return spells(t, "each") || spells(t, "ea") || spells(t, "per") || t.text == "/"; }

Money money_of(const Atom& t) { return Money::cents((t.thousandths + 5) / 10); }

/// The next number from `at` on, with at most `words` words before it and no sign but a slash or a bracket.
std::size_t next_number(const std::vector<Atom>& atoms, std::size_t at, std::size_t words) {
  for (std::size_t seen = 0; at < atoms.size(); ++at) {
    if (atoms[at].kind == Atom::Kind::number) return at;
    if (atoms[at].kind == Atom::Kind::word ? ++seen > words
                                           : atoms[at].text != "(" && atoms[at].text != "/" && atoms[at].text != ".")
      break;
  }
  return atoms.size();
}

/// "= 75.00" close after a price.
std::optional<Money> total_after(const std::vector<Atom>& atoms, std::size_t at) {
  for (std::size_t i = at; i < atoms.size() && i < at + 6; ++i)
    if (atoms[i].text == "=") {
      const std::size_t n = next_number(atoms, i + 1, 1);
      return n < atoms.size() && !atoms[n].percent ? std::optional<Money>(money_of(atoms[n])) : std::nullopt;
    }
  return std::nullopt;
}

} // namespace

std::optional<TextProduct> product_in(std::string_view text) {
  if (std::none_of(text.begin(), text.end(), is_digit)) return std::nullopt;
  const std::vector<Atom> atoms = atoms_of(text);
  std::size_t sums = 0; // numbers that are sums of money for certain
  for (const Atom& atom : atoms) {
    if (atom.text == "+" || spells(atom, "plus")) return std::nullopt;
    sums += atom.kind == Atom::Kind::number && (atom.dollars || atom.cents);
  }
  std::optional<TextProduct> found;
  std::size_t explained = 0;
  for (std::size_t i = 0; i < atoms.size(); ++i) {
    const Atom& first = atoms[i];
    if (first.kind != Atom::Kind::number || first.percent) continue;
    // The sign between the two, after at most three words ("3 hours of work at").
    std::size_t sign = i + 1;
    while (sign < atoms.size() && sign < i + 4 && atoms[sign].kind == Atom::Kind::word && !times(atoms[sign]) &&
           !at_price(atoms[sign]))
      ++sign;
    if (sign >= atoms.size() || !(times(atoms[sign]) || at_price(atoms[sign]))) continue;
    const std::size_t next = next_number(atoms, sign + 1, 1);
    if (next >= atoms.size() || atoms[next].percent) continue;
    const Atom& second = atoms[next];
    const bool priced_after = next + 1 < atoms.size() && each(atoms[next + 1]);
    // "3 hours at 25" is a price; "Apartment 12 at 340 Quince Court" is an address.
    const bool at_a_price = atoms[sign].text == "@" || (at_price(atoms[sign]) && (second.cents || sign > i + 1));
    const bool second_is_price = second.dollars || at_a_price || priced_after || (second.cents && !first.dollars);
    const bool first_is_price = !second_is_price && (first.dollars || first.cents);
    if (!second_is_price && !first_is_price) continue;
    if (found) return std::nullopt;
    const Atom& price = second_is_price ? second : first;
    const Atom& count = second_is_price ? first : second;
    TextProduct product;
    product.count = {count.thousandths, 1000};
    product.price = money_of(price);
    product.product = product.price.part(product.count);
    product.total = total_after(atoms, next + 1);
    found = product;
    i = next;
    explained = (price.dollars || price.cents) + (product.total ? 1 : 0);
  }
  // Another sum in the text belongs to the charge too: then the product is not all of it.
  if (found && sums > explained) return std::nullopt;
  return found;
}

std::optional<Share> percentage_in(std::string_view text) {
  if (text.find('%') == std::string_view::npos) return std::nullopt;
  std::optional<Share> found;
  for (const Atom& atom : atoms_of(text)) {
    if (atom.kind != Atom::Kind::number || !atom.percent) continue;
    if (found || atom.thousandths >= 100'000) return std::nullopt;
    found = Share{atom.thousandths, 100'000};
  }
  return found;
}

} // namespace wearline
