#include "reading/words.h"

#include "values/ascii.h"

#include <algorithm>
#include <array>

namespace wearline {

namespace {

/// One character of UTF-8 text folded to ASCII. `size` is how many bytes it took; `out` is empty for a character
/// dropped whole.
struct Folded {
  std::string_view out;
  std::uint32_t size = 1;
};

/// U+00C0..U+017F: the Latin letters with marks, by base letter. '?' where the base is two letters or none.
constexpr std::string_view latin_1 = "aaaaaaaceeeeiiiidnooooo*ouuuuytsaaaaaaaceeeeiiiidnooooo*ouuuuyty";
constexpr std::string_view latin_a = "aaaaaaccccccccddddeeeeeeeeeegggggggghhhhiiiiiiiiiijjjjkkklllllllllnnnnnnnnnoooooo"
                                     "oorrrrrrssssssssttttttuuuuuuuuuuuuwwyyyzzzzzzs";

std::uint32_t code_point(std::string_view text, std::size_t at, std::uint32_t& size) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned first = byte(at);
  const std::uint32_t length = first < 0x80                    ? 1
                               : first >= 0xC2 && first < 0xE0 ? 2
                               : first >= 0xE0 && first < 0xF0 ? 3
                               : first >= 0xF0 && first < 0xF5 ? 4
                                                               : 0;
  size = 1;
  if (length == 0 || at + length > text.size()) return 0xFFFD;
  std::uint32_t code = length == 1 ? first : first & (0xFFu >> (length + 1));
  for (std::uint32_t i = 1; i < length; ++i) {
    if ((byte(at + i) & 0xC0u) != 0x80u) return 0xFFFD;
    code = (code << 6) | (byte(at + i) & 0x3Fu);
  }
  size = length;
  return code;
}

Folded fold_wide(std::uint32_t code, std::uint32_t size) {
  switch (code) {
  case 0xA0:
  case 0x2002:
  case 0x2003:
  case 0x2007:
  case 0x2009:
  case 0x202F:
  case 0x3000:
    return {" ", size};
  case 0xAD:
  case 0x200B:
  case 0x200C:
  case 0x200D:
  case 0xFEFF:
    return {"", size}; // soft hyphen, zero width
  case 0x2018:
  case 0x2019:
  case 0x201B:
  case 0x2032:
  case 0xB4:
    return {"'", size};
  case 0x201C:
  case 0x201D:
  case 0x201E:
  case 0x2033:
  case 0xAB:
  case 0xBB:
    return {"\"", size};
  case 0x2010:
  case 0x2011:
  case 0x2012:
  case 0x2013:
  case 0x2014:
  case 0x2015:
  case 0x2212:
    return {"-", size};
  case 0x2022:
  case 0x25CF:
  case 0x25AA:
  case 0x25E6:
  case 0x2023:
  case 0x2219:
  case 0x25A0:
  case 0x2043:
    return {"*", size};
  case 0xB7:
  case 0x2024:
    return {".", size};
  case 0x2026:
    return {"...", size};
  case 0x2192:
  case 0x21D2:
    return {">", size};
  case 0xD7:
    return {"x", size};
  case 0xBD:
    return {" 1/2", size};
  case 0xBC:
    return {" 1/4", size};
  case 0xBE:
    return {" 3/4", size};
  case 0xB2:
    return {"2", size};
  case 0x20AC:
    return {"\x80", size}; // kept as one byte of its own: as pound and cent are
  case 0xA3:
    return {"\x81", size};
  case 0xA2:
    return {"\x82", size};
  case 0xBA:
  case 0xB0:
    return {"o", size};
  case 0xAA:
    return {"a", size};
  case 0x2500:
  case 0x2501:
    return {"-", size};
  case 0x2502:
  case 0x2503:
    return {"|", size};
  default:
    break;
  }
  if (code >= 0xC0 && code <= 0xFF) return {latin_1.substr(code - 0xC0, 1), size};
  if (code >= 0x100 && code < 0x100 + latin_a.size()) return {latin_a.substr(code - 0x100, 1), size};
  return {" ", size};
}

constexpr std::string_view ascii_lower =
    "         \t                       "
    "!\"#$%&'()*+,-./0123456789:;<=>?@abcdefghijklmnopqrstuvwxyz[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~ ";

Folded fold_at(std::string_view text, std::size_t at) {
  const auto byte = static_cast<unsigned char>(text[at]);
  if (byte < 0x80) return {ascii_lower.substr(byte, 1), 1};
  std::uint32_t size = 1;
  const std::uint32_t code = code_point(text, at, size);
  return fold_wide(code, size);
}

/// The line folded, with for each byte of the folded text the offset it came from (one more at the end).
struct FoldedLine {
  std::string text;
  std::vector<std::uint32_t> from;
};

FoldedLine fold_line(std::string_view line) {
  FoldedLine out;
  out.text.reserve(line.size() + 1);
  out.from.reserve(line.size() + 1);
  for (std::size_t at = 0; at < line.size();) {
    const Folded piece = fold_at(line, at);
    for (const char c : piece.out) {
      out.text += c;
      out.from.push_back(static_cast<std::uint32_t>(at));
    }
    at += piece.size;
  }
  out.from.push_back(static_cast<std::uint32_t>(line.size()));
  return out;
}

/// The letter O written for a zero: between a digit and the end of the number ("165.0O", "1O0.00").
bool is_zero_slip(const std::string& t, std::size_t at) {
  if (t[at] != 'o' || at == 0 || !is_digit(t[at - 1])) return false;
  if (at + 1 == t.size()) return at >= 2 && (t[at - 2] == '.' || is_digit(t[at - 2]) || t[at - 2] == '$');
  const char next = t[at + 1];
  if (is_digit(next) || ((next == '.' || next == ',') && at + 2 < t.size() && is_digit(t[at + 2]))) return true;
  return next == 'o' ? at + 2 == t.size() || !is_letter(t[at + 2]) : !is_letter(next) && at >= 2 && t[at - 2] == '.';
}

class Splitter {
public:
  Splitter(std::string_view source, FoldedLine line) : source_(source), line_(std::move(line)), t_(line_.text) {}

  std::vector<Token> run() {
    out_.reserve(t_.size() / 4 + 4);
    while (at_ < t_.size()) {
      if (t_[at_] == ' ' || t_[at_] == '\t') ++at_;
      else if (starts_number()) number();
      else if (is_letter(t_[at_])) word();
      else sign();
    }
    return std::move(out_);
  }

private:
  bool digit_at(std::size_t i) const { return i < t_.size() && is_digit(t_[i]); }

  /// ".5" begins a number, "....5" and "7.5" (already inside one) do not.
  bool starts_number() const {
    if (is_digit(t_[at_])) return true;
    return t_[at_] == '.' && digit_at(at_ + 1) &&
           (at_ == 0 || t_[at_ - 1] == ' ' || t_[at_ - 1] == '$' || t_[at_ - 1] == '(');
  }

  void push(TokenKind kind, std::size_t from, std::string text, bool slip = false) {
    Token token;
    token.kind = kind;
    token.slip = slip;
    token.glued = !out_.empty() && from > 0 && t_[from - 1] != ' ' && t_[from - 1] != '\t';
    token.far = from > 0 && (t_[from - 1] == '\t' ||
                             (from > 1 && t_[from - 1] == ' ' && (t_[from - 2] == ' ' || t_[from - 2] == '\t')));
    token.start = line_.from[from];
    token.end = line_.from[at_];
    token.text = std::move(text);
    out_.push_back(std::move(token));
  }

  void number() {
    const std::size_t from = at_;
    std::string text;
    bool slip = false;
    while (at_ < t_.size()) {
      const char c = t_[at_];
      const bool joint = (c == '.' || c == ',' || c == '\'') && digit_at(at_ + 1);
      if (is_digit(c)) text += c;
      else if (joint && at_ == from) text += "0.", ++at_, text += t_[at_];
      else if (joint) text += c;
      else if (is_zero_slip(t_, at_)) text += '0', slip = true;
      else break;
      ++at_;
    }
    push(TokenKind::number, from, std::move(text), slip);
  }

  void word() {
    const std::size_t from = at_;
    std::string text;
    while (at_ < t_.size()) {
      const char c = t_[at_];
      const bool apostrophe = (c == '\'' || c == '`') && at_ + 1 < t_.size() && is_letter(t_[at_ + 1]);
      if (!is_letter(c) && !apostrophe) break;
      if (!apostrophe) text += c;
      ++at_;
    }
    push(TokenKind::word, from, std::move(text));
    Token& made = out_.back();
    const std::string_view written = source_.substr(made.start, made.end - made.start);
    made.capitals = written.size() >= 2 && std::none_of(written.begin(), written.end(), is_lower);
  }

  void sign() {
    const std::size_t from = at_++;
    push(TokenKind::sign, from, std::string(1, t_[from]));
  }

  std::string_view source_;
  FoldedLine line_;
  const std::string& t_;
  std::size_t at_ = 0;
  std::vector<Token> out_;
};

bool ends(std::string_view w, std::string_view tail) {
  return w.size() >= tail.size() && w.substr(w.size() - tail.size()) == tail;
}
bool has_vowel(std::string_view w) { return w.find_first_of("aeiouy") != std::string_view::npos; }

std::string_view without_plural(std::string_view w) {
  if (w.size() < 4 || !ends(w, "s") || ends(w, "ss") || ends(w, "us") || ends(w, "is")) return w;
  for (const std::string_view tail : {"sses", "xes", "zes", "ches", "shes"})
    if (ends(w, tail) && w.size() > tail.size() + 1) return w.substr(0, w.size() - 2);
  return w.substr(0, w.size() - 1);
}

std::string_view without_verb_ending(std::string_view w) {
  if (ends(w, "ing") && w.size() >= 6 && has_vowel(w.substr(0, w.size() - 3))) return w.substr(0, w.size() - 3);
  if (ends(w, "ed") && !ends(w, "eed") && w.size() >= 5 && has_vowel(w.substr(0, w.size() - 2)))
    return w.substr(0, w.size() - 2);
  return w;
}

} // namespace

std::string fold(std::string_view text) { return fold_line(text).text; }

std::vector<Token> split_words(std::string_view line) { return Splitter(line, fold_line(line)).run(); }

std::vector<std::string_view> split(std::string_view text, char at) {
  std::vector<std::string_view> out;
  std::size_t from = 0;
  while (from <= text.size()) {
    const std::size_t to = std::min(text.find(at, from), text.size());
    if (to > from) out.push_back(text.substr(from, to - from));
    from = to + 1;
  }
  return out;
}

std::string root(std::string_view word) {
  const std::string_view single = without_plural(word);
  std::string out(single);
  if (ends(single, "ies") && single.size() > 4) out = std::string(single.substr(0, single.size() - 3)) + "y";
  else if (ends(word, "ies") && word.size() > 4) out = std::string(word.substr(0, word.size() - 3)) + "y";
  else out = std::string(without_verb_ending(single));
  const std::size_t n = out.size();
  if (n > 3 && out[n - 1] == out[n - 2] && std::string_view("bdgmnprt").find(out[n - 1]) != std::string_view::npos)
    out.pop_back();
  if (out.size() > 4 && (out.back() == 'e' || out.back() == 'o' || out.back() == 'a')) out.pop_back();
  return out;
}

unsigned edit_distance(std::string_view a, std::string_view b, unsigned most) {
  constexpr std::size_t limit = 24;
  if (a.size() > limit || b.size() > limit) return a == b ? 0 : most + 1;
  const std::size_t gap = a.size() > b.size() ? a.size() - b.size() : b.size() - a.size();
  if (gap > most) return most + 1;
  std::array<unsigned, limit + 1> before, last, now; // filled as far as they are read
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = static_cast<unsigned>(j);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    now[0] = static_cast<unsigned>(i);
    unsigned least = now[0];
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const unsigned change = last[j - 1] + (a[i - 1] == b[j - 1] ? 0u : 1u);
      now[j] = std::min({change, last[j] + 1, now[j - 1] + 1});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) now[j] = std::min(now[j], before[j - 2] + 1);
      least = std::min(least, now[j]);
    }
    if (least > most) return most + 1;
    std::copy_n(last.begin(), b.size() + 1, before.begin());
    std::copy_n(now.begin(), b.size() + 1, last.begin());
  }
  return std::min(last[b.size()], most + 1);
}

} // namespace wearline
