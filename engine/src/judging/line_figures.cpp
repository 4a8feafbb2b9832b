#include "judging/line_figures.h"

#include <algorithm>
#include <array>
#include <vector>

namespace wearline {

namespace {

bool digit(char c) { return c >= '0' && c <= '9'; }
char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; }

/// A word, number or sign of the text.
struct Token {
  enum class Kind { number, word, sign } kind = Kind::sign;
  std::string_view text;
  std::int64_t thousandths = 0;
  bool dollars = false, cents = false, percent = false; ///< "$" before it, exactly two decimals, "%" after it
};

/// Digits with thousands commas and at most three decimals; empty for anything else ("3.14.15", eleven digits).
std::optional<Token> number_at(std::string_view text, std::size_t& at) {
  Token token{Token::Kind::number, {}};
  const std::size_t from = at;
  std::int64_t whole = 0, part = 0;
  int places = 0, digits = 0;
  for (; at < text.size() && (digit(text[at]) || (text[at] == ',' && at + 1 < text.size() && digit(text[at + 1])));
       ++at) {
    if (text[at] == ',') continue;
    if (++digits > 7) return std::nullopt;
    whole = whole * 10 + (text[at] - '0');
  }
  if (at + 1 < text.size() && text[at] == '.' && digit(text[at + 1])) {
    for (++at; at < text.size() && digit(text[at]); ++at) {
      if (++places > 3) return std::nullopt;
      part = part * 10 + (text[at] - '0');
    }
  }
  token.cents = places == 2;
  for (; places < 3; ++places) part *= 10;
  token.thousandths = whole * 1000 + part;
  token.text = text.substr(from, at - from);
  return token;
}

/// The tokens of a text; empty if a number in it cannot be read.
std::vector<Token> tokens_of(std::string_view text) {
  std::vector<Token> out;
  for (std::size_t at = 0; at < text.size();) {
    const char c = text[at];
    if (c == ' ' || c == '\t' || c == '\n' || c == '\r') {
      ++at;
    } else if (digit(c)) {
      auto number = number_at(text, at);
      if (!number) return {};
      number->dollars = !out.empty() && out.back().text == "$";
      if (number->dollars) out.pop_back();
      if (at < text.size() && text[at] == '%') {
        number->percent = true;
        ++at;
      }
      out.push_back(*number);
    } else if (lower(c) >= 'a' && lower(c) <= 'z') {
      const std::size_t from = at;
      while (at < text.size() && lower(text[at]) >= 'a' && lower(text[at]) <= 'z') ++at;
      out.push_back({Token::Kind::word, text.substr(from, at - from)});
    } else {
      // The multiplication sign is two bytes; every other byte stands for itself.
      const std::size_t length = text.substr(at, 2) == "\xC3\x97" ? 2 : 1;
      out.push_back({Token::Kind::sign, text.substr(at, length)});
      at += length;
    }
  }
  return out;
}

bool is_word(const Token& token, std::string_view word) {
  return token.text.size() == word.size() &&
         std::equal(word.begin(), word.end(), token.text.begin(), [](char a, char b) { return a == lower(b); });
}
bool times(const Token& t) { return is_word(t, "x") || t.text == "*" || t.text == "\xC3\x97"; }
bool at_price(const Token& t) { return is_word(t, "at") || t.text == "@"; }
bool each(const Token& t) { return is_word(t, "each") || is_word(t, "ea") || is_word(t, "per") || t.text == "/"; }

Money money_of(const Token& t) { return Money::cents((t.thousandths + 5) / 10); }

/// The next number from `at` on, with at most `words` words before it and no sign but a slash or a bracket.
std::size_t next_number(const std::vector<Token>& tokens, std::size_t at, std::size_t words) {
  for (std::size_t seen = 0; at < tokens.size(); ++at) {
    if (tokens[at].kind == Token::Kind::number) return at;
    if (tokens[at].kind == Token::Kind::word
            ? ++seen > words
            : tokens[at].text != "(" && tokens[at].text != "/" && tokens[at].text != ".")
      break;
  }
  return tokens.size();
}

/// "= 75.00" close after a price.
std::optional<Money> total_after(const std::vector<Token>& tokens, std::size_t at) {
  for (std::size_t i = at; i < tokens.size() && i < at + 6; ++i)
    if (tokens[i].text == "=") {
      const std::size_t n = next_number(tokens, i + 1, 1);
      return n < tokens.size() && !tokens[n].percent ? std::optional<Money>(money_of(tokens[n])) : std::nullopt;
    }
  return std::nullopt;
}

} // namespace

std::optional<TextProduct> product_in(std::string_view text) {
  if (std::none_of(text.begin(), text.end(), digit)) return std::nullopt;
  const std::vector<Token> tokens = tokens_of(text);
  std::size_t sums = 0; // numbers that are sums of money for certain
  for (const Token& token : tokens) {
    if (token.text == "+" || is_word(token, "plus")) return std::nullopt;
    sums += token.kind == Token::Kind::number && (token.dollars || token.cents);
  }
  std::optional<TextProduct> found;
  std::size_t explained = 0;
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    const Token& first = tokens[i];
    if (first.kind != Token::Kind::number || first.percent) continue;
    // The sign between the two, after at most three words ("3 hours of work at").
    std::size_t sign = i + 1;
    while (sign < tokens.size() && sign < i + 4 && tokens[sign].kind == Token::Kind::word && !times(tokens[sign]) &&
           !at_price(tokens[sign]))
      ++sign;
    if (sign >= tokens.size() || !(times(tokens[sign]) || at_price(tokens[sign]))) continue;
    const std::size_t next = next_number(tokens, sign + 1, 1);
    if (next >= tokens.size() || tokens[next].percent) continue;
    const Token& second = tokens[next];
    const bool priced_after = next + 1 < tokens.size() && each(tokens[next + 1]);
    // "3 hours at 25" is a price; "Apartment 12 at 340 Quince Court" is an address.
    const bool at_a_price = tokens[sign].text == "@" || (at_price(tokens[sign]) && (second.cents || sign > i + 1));
    const bool second_is_price = second.dollars || at_a_price || priced_after || (second.cents && !first.dollars);
    const bool first_is_price = !second_is_price && (first.dollars || first.cents);
    if (!second_is_price && !first_is_price) continue;
    if (found) return std::nullopt;
    const Token& price = second_is_price ? second : first;
    const Token& count = second_is_price ? first : second;
    TextProduct product;
    product.count = {count.thousandths, 1000};
    product.price = money_of(price);
    product.product = product.price.part(product.count);
    product.total = total_after(tokens, next + 1);
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
  for (const Token& token : tokens_of(text)) {
    if (token.kind != Token::Kind::number || !token.percent) continue;
    if (found || token.thousandths >= 100'000) return std::nullopt;
    found = Share{token.thousandths, 100'000};
  }
  return found;
}

} // namespace wearline
