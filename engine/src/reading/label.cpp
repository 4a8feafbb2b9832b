#include "reading/label.h"

#include <algorithm>
#include <array>
#include <string>

namespace wearline {

namespace {

struct Words {
  std::array<bool, 32> has{};
  std::size_t all = 0;          ///< words in the stretch
  std::size_t words = 0;        ///< of them, those that say something
  std::size_t covered = 0;      ///< of them, words of a statement
  std::size_t headed = 0;       ///< words of a heading, of a statement, or saying nothing
  bool month = false;           ///< names a month without a day
  bool on_a_sum = false;        ///< "12 % on 800": interest on arrears, not on the deposit
  std::size_t foreign = 0;      ///< ideas of a charge outside them
  std::size_t foreign_work = 0; ///< of those, work, states and causes
  bool told = false;            ///< says what was wrong, beside the words of a heading: "August rent short"
};

constexpr std::array<std::string_view, 21> names = {
    "st:total", "st:subtotal", "st:carried",     "st:held",    "st:deposit", "st:interest", "st:refund",
    "st:due",   "st:payment",  "st:balance",     "st:heading", "st:fact",    "st:letter",   "st:page",
    "st:you",   "st:owner",    "st:charge-word", "st:less",    "st:plus",    "st:tax-word", "st:heading-work"};
enum Name : std::size_t {
  total,
  subtotal,
  carried,
  held,
  deposit,
  interest,
  refund,
  due,
  payment,
  balance,
  heading,
  fact,
  letter,
  page,
  you,
  owner,
  charge_word,
  less,
  plus_word,
  tax,
  heading_work
};

bool weighs(Role role) {
  return role == Role::thing || role == Role::work || role == Role::state || role == Role::cause;
}

/// Words that are known to say nothing by themselves: "at", "a", "months", "%".
std::vector<bool> says_nothing(const MarkedText& text, const RecognizerRules& rules) {
  std::vector<bool> out(text.tokens.size(), false);
  for (const Mention& m : text.charge) {
    const Role role = rules.charges().at(m.concept_id).role;
    if (role == Role::plain || role == Role::mark || role == Role::link || role == Role::place)
      for (std::size_t i = m.first; i <= m.last; ++i) out[i] = true;
  }
  return out;
}

Words look(const MarkedText& text, const RecognizerRules& rules, std::size_t first, std::size_t last) {
  Words w;
  std::vector<bool> covered(text.tokens.size(), false), headed(text.tokens.size(), false);
  const Lexicon& lexicon = rules.statement();
  for (const Mention& m : text.statement) {
    if (m.first < first || m.last >= last || m.match == Match::shortened) continue;
    const std::string& id = lexicon.at(m.concept_id).id;
    const auto found = std::find(names.begin(), names.end(), id);
    if (found == names.end()) continue;
    const auto name = static_cast<std::size_t>(found - names.begin());
    w.has[name] = true;
    for (std::size_t i = m.first; i <= m.last; ++i) (name == heading ? headed : covered)[i] = true;
  }
  for (const Number& n : text.numbers) {
    if (n.first > first && n.first < last && text.tokens[n.first - 1u].text == "on") w.on_a_sum = true;
    if (n.kind == NumberKind::date)
      for (std::size_t i = n.first; i <= n.last; ++i) covered[i] = true;
  }
  const std::vector<bool> neutral = says_nothing(text, rules);
  for (std::size_t i = first; i < last; ++i)
    if (text.tokens[i].word())
      ++w.all, w.words += covered[i] || !neutral[i], w.covered += covered[i],
          w.headed += headed[i] || covered[i] || neutral[i];
  std::size_t seen_to = first;
  for (const Mention& m : text.charge) {
    if (m.first < seen_to || m.first < first || m.last >= last || !weighs(rules.charges().at(m.concept_id).role))
      continue;
    if (numbers_something(text, m, rules)) continue; // "ck 7719"
    bool inside = true;
    for (std::size_t i = m.first; i <= m.last; ++i) inside = inside && (covered[i] || !text.tokens[i].word());
    if (inside && rules.charges().at(m.concept_id).id != "returned-payment") continue;
    const std::string& id = rules.charges().at(m.concept_id).id;
    if (id == "month-word") w.month = true;
    if (id == "by-tenant" || id == "month-word" || id == "credit" || id == "vague" || id == "together" ||
        id == "final-word" || id == "move-word")
      continue;
    const bool in_heading =
        std::any_of(headed.begin() + m.first, headed.begin() + m.last + 1, [](bool h) { return h; });
    w.told = w.told || (rules.charges().at(m.concept_id).role == Role::state && !in_heading);
    ++w.foreign;
    w.foreign_work += rules.charges().at(m.concept_id).role != Role::thing;
    seen_to = m.last + 1u;
  }
  return w;
}

/// Precedence settles lines that use several of the words: "refund of deposit" is a refund, "deposit interest"
/// interest.
LabelKind by_words(const Words& w) {
  if (w.has[carried]) return LabelKind::carried;
  if (w.has[subtotal]) return LabelKind::subtotal;
  if (w.has[due]) return LabelKind::due;
  if (w.has[held] && !w.has[charge_word] && !w.has[refund]) return LabelKind::held;
  if (w.has[refund] && !(w.has[total] && w.has[charge_word] && !w.has[you])) return LabelKind::refund;
  if (w.has[balance] && w.has[you] && !w.has[owner]) return LabelKind::refund;
  if (w.has[interest] && !w.has[total] && !w.on_a_sum) return LabelKind::interest;
  if (w.has[total] && w.has[deposit] && !w.has[charge_word] && !w.has[less])
    return w.has[interest] ? LabelKind::held : LabelKind::total;
  if (w.has[total]) return LabelKind::total;
  if (w.has[deposit] && w.has[less] && w.has[charge_word]) return LabelKind::refund;
  if (w.has[deposit]) return LabelKind::deposit;
  if (w.has[payment]) return LabelKind::payment;
  if (w.has[balance])
    return w.month && !w.has[refund] && !w.has[you] ? LabelKind::none : LabelKind::balance; // "bal Oct" is rent
  if (w.has[charge_word] && w.covered == w.all && !w.has[heading_work]) return LabelKind::charges;
  return LabelKind::none;
}

} // namespace

LabelKind label_of(const MarkedText& text, const RecognizerRules& rules, std::size_t first, std::size_t last) {
  const Words w = look(text, rules, first, last);
  if (w.all == 0) return LabelKind::none;
  if (w.foreign == 0) {
    if (const LabelKind kind = by_words(w); kind != LabelKind::none && w.covered * 3 >= w.words) return kind;
    if (w.has[page] && w.covered * 2 >= w.words) return LabelKind::page;
  }
  if (w.has[fact] && w.foreign_work == 0) return LabelKind::fact;
  if (w.has[heading] && w.headed == w.all && !w.told) return LabelKind::heading;
  if (w.foreign == 0 && w.has[letter]) return LabelKind::letter;
  return LabelKind::none;
}

} // namespace wearline
