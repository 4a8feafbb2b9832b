#include "reading/recognizer.h"

#include "reading/fact_scope.h"
#include "reading/label.h"
#include "reading/line_amount.h"
#include "reading/line_counts.h"
#include "reading/line_place.h"
#include "reading/sense.h"

#include <algorithm>
#include <array>
#include <string>

namespace wearline {

namespace {

struct Scored {
  std::size_t element = 0;
  int score = 0;
  std::vector<std::uint16_t> used;
};

int score_terms(const Sense& line, const std::vector<WeightedTerm>& terms, std::vector<std::uint16_t>* used) {
  int score = 0;
  for (const WeightedTerm& term : terms) {
    std::vector<std::uint16_t> here;
    const int met = line.met(term, used != nullptr && term.weight > 0 ? &here : nullptr);
    if (met == 0) continue;
    score += term.weight * met / whole;
    if (used != nullptr) used->insert(used->end(), here.begin(), here.end());
  }
  return score;
}

constexpr int opening_share = 25; ///< how much the opening counts again, in percent

/// The terms of all elements that the line can meet, scored: only those are looked at whose first piece is there.
std::vector<Scored> rank(const Sense& line, const RecognizerRules& rules) {
  const Sense first = line.opening();
  std::vector<Scored> scored(rules.elements().size());
  std::vector<std::vector<bool>> seen(rules.elements().size());
  const auto visit = [&](Lexicon::Id id) {
    for (const auto& place : rules.terms_of(id)) {
      const auto& terms = rules.elements()[place.element].terms;
      if (seen[place.element].empty()) seen[place.element].assign(terms.size(), false);
      if (seen[place.element][place.term]) continue;
      seen[place.element][place.term] = true;
      const WeightedTerm& term = terms[place.term];
      Scored& s = scored[place.element];
      s.score += term.weight * line.met(term, term.weight > 0 ? &s.used : nullptr) / whole;
      s.score += term.weight * first.met(term, nullptr) / whole * opening_share / whole;
    }
  };
  for (const Group& g : line.groups())
    for (const Lexicon::Id id : g.ids) visit(id);
  if (line.has("missing")) visit(rules.charges().find("missing"));
  for (std::size_t f = 0; f < feature_names.size(); ++f)
    visit(static_cast<Lexicon::Id>(WeightedTerm::first_feature + f));
  std::vector<Scored> out;
  for (std::size_t e = 0; e < scored.size(); ++e) {
    if (scored[e].score <= 0) continue;
    scored[e].element = e;
    out.push_back(std::move(scored[e]));
  }
  std::stable_sort(out.begin(), out.end(), [](const Scored& a, const Scored& b) { return a.score > b.score; });
  return out;
}

/// Findings speak louder in the clause that names the thing.
int score_finding(const Sense& line, const FindingRule& rule, std::uint16_t clause) {
  int score = 0;
  for (const WeightedTerm& term : rule.terms) {
    std::vector<std::uint16_t> used;
    int met = line.met(term, &used);
    if (met == 0) continue;
    const bool near = used.empty() || std::any_of(used.begin(), used.end(),
                                                  [&](std::uint16_t g) { return line.groups()[g].clause == clause; });
    if (!near) met = met * 85 / 100;
    score += term.weight * met / whole;
  }
  return score;
}

bool says_no_fault(std::string_view finding) { return finding == "work-only" || finding == "unspecified"; }

const FindingRule* pick_finding(const Sense& line, const ElementRule& element, std::uint16_t clause, bool bare) {
  const FindingRule* best = nullptr;
  const FindingRule* unnamed = nullptr;
  int best_score = 0;
  for (const FindingRule& rule : element.findings) {
    if (says_no_fault(rule.finding)) unnamed = &rule;
    const int score = score_finding(line, rule, clause);
    if (score > best_score) best = &rule, best_score = score;
  }
  if (best_score >= 250) return best;
  if (bare) return nullptr;
  return unnamed != nullptr ? unnamed : best;
}

bool names_fault(const FindingRule* f) { return f != nullptr && !says_no_fault(f->finding); }

/// "Paint the room, nail holes": a reading that names what was wrong stands before one that names only the work, where
/// it is nearly as likely.
void prefer_named_fault(const Sense& line, std::vector<Scored>& ranked, const RecognizerRules& rules) {
  constexpr int nearly = 80; // percent of the likeliest one's score
  const auto fault = [&](const Scored& s) {
    return names_fault(pick_finding(line, rules.elements()[s.element], 0, false));
  };
  if (ranked.empty() || fault(ranked[0])) return;
  for (std::size_t i = 1; i < ranked.size() && ranked[i].score * 100 >= ranked[0].score * nearly; ++i)
    if (fault(ranked[i])) {
      std::rotate(ranked.begin(), ranked.begin() + static_cast<std::ptrdiff_t>(i),
                  ranked.begin() + static_cast<std::ptrdiff_t>(i) + 1);
      return;
    }
}

bool other_work(const Sense& line, const Lexicon& lexicon) {
  for (const char* name : {"replace", "repair", "paint", "refinish", "reglaze", "rekey", "touch-up"})
    if (line.has(lexicon.find(name))) return true;
  return false;
}

/// What can be wrong with any thing, known of it in the guide or not.
bool names_harm(const Sense& line, const Lexicon& lexicon) {
  for (const char* name :
       {"broken", "damaged",    "cracked", "chipped",  "torn",   "hole",   "gouge",   "dent",      "scratch", "stain",
        "burn",   "missing",    "rust",    "dirty",    "grease", "chewed", "swollen", "leak",      "rot",     "clog",
        "bent",   "split-word", "mildew",  "pet-hair", "peel",   "bubble", "loose",   "pulled-out"})
    if (line.has(lexicon.find(name))) return true;
  return false;
}

/// Cleaning a thing is cleaning; repairing or replacing it is damage.
ChargeKind kind_of(const Sense& line, const ElementRule& element, const FindingRule* finding, const Lexicon& lexicon) {
  if (finding != nullptr && finding->kind != ChargeKind::unknown) return finding->kind;
  if (element.kind == ChargeKind::damage && (line.has(lexicon.find("clean")) || line.has(lexicon.find("scrape"))) &&
      !other_work(line, lexicon))
    return element.kind_when_cleaned;
  if (element.element == "other" && finding != nullptr && finding->finding == "unspecified" &&
      (line.has("damaged") || line.has("broken") || line.has("water")))
    return ChargeKind::damage;
  return element.kind;
}

/// Share of the words that say something which the answer rests on, in percent: "Damage to the rented home" rests on
/// one of its two as rent.
int explained(const std::vector<Token>& tokens, const std::vector<Mention>& mentions, const Sense& line,
              const std::vector<std::uint16_t>& used, const Lexicon& lexicon) {
  enum : std::uint8_t { unknown, says_nothing, says_something, rested_on };
  std::vector<std::uint8_t> words(tokens.size(), unknown);
  for (const Mention& m : mentions) {
    const Role role = lexicon.at(m.concept_id).role;
    const bool nothing = role == Role::plain || role == Role::mark || role == Role::link || role == Role::place;
    for (std::size_t i = m.first; i <= m.last; ++i)
      words[i] = std::max<std::uint8_t>(words[i], nothing ? says_nothing : says_something);
  }
  for (const std::uint16_t g : used)
    for (std::size_t i = line.groups()[g].first; i <= line.groups()[g].last; ++i) words[i] = rested_on;
  int all = 0, rested = 0;
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    if (!tokens[i].word() || tokens[i].text.size() < 3 || words[i] == says_nothing) continue;
    ++all;
    rested += words[i] == rested_on;
  }
  return all == 0 ? 0 : rested * 100 / all;
}

/// Odds fitted to lines the terms were not written for (tests/reference/facts.md says how well they hold): 50 stands
/// for about one in two right, 70 for 90 in 100, 80 for 97.
int confidence_of(int top, int second, int explained, bool names_no_fault, bool other) {
  if (top == 0) return 0;
  const int strength = 112 * std::min(top, 1800) / 1000;
  const int margin = 222 * std::min(std::max(top - second, 0), 1200) / 1000;
  const int tenths = 308 + strength + margin + 198 * explained / 100 - (names_no_fault ? 59 : 0) + (other ? 150 : 0);
  return std::clamp(tenths / 10, 1, 99);
}

/// Three or more things of different elements under one price, or works, or four of both: a thing, what was patched and
/// how it was cleaned are one charge.
bool is_lump(const Sense& line, const std::vector<Scored>& ranked, const RecognizerRules& rules) {
  std::vector<std::uint16_t> heads;
  std::size_t things = 0, works = 0;
  const int top = ranked.empty() ? 0 : ranked[0].score;
  for (const Scored& s : ranked) {
    if (s.score < 700 || s.score * 2 < top || rules.elements()[s.element].element == "other") continue;
    const auto is_head = [&](std::uint16_t g) {
      const Group& group = line.groups()[g];
      return (group.thing || group.work) && !group.inner && group.factor >= 72 && group.match == Match::exact &&
             std::find(heads.begin(), heads.end(), g) == heads.end();
    };
    const auto head = std::find_if(s.used.begin(), s.used.end(), is_head);
    if (head == s.used.end()) continue;
    ++(line.groups()[*head].work ? works : things);
    heads.push_back(*head);
    for (const std::uint16_t g : s.used) // other things of this element are no heads of their own
      if (line.groups()[g].thing) heads.push_back(g);
  }
  const std::size_t several = line.has("together") ? 3 : 4;
  return things >= 3 || works >= 3 || things + works >= several;
}

std::vector<Basis> basis_of(const Sense& line, const std::vector<std::uint16_t>& used,
                            const std::vector<Token>& tokens) {
  std::vector<Basis> out;
  std::vector<std::uint16_t> groups(used);
  std::sort(groups.begin(), groups.end());
  groups.erase(std::unique(groups.begin(), groups.end()), groups.end());
  out.reserve(groups.size());
  for (const std::uint16_t g : groups)
    out.push_back({tokens[line.groups()[g].first].start, tokens[line.groups()[g].last].end});
  return out;
}

bool sums_only(const std::vector<Token>& tokens) {
  return std::none_of(tokens.begin(), tokens.end(), [](const Token& t) { return t.word() && t.text != "x"; });
}

/// "NOT CHARGED: nail holes, light dust"
bool opens_free(const MarkedText& marked, const RecognizerRules& rules) {
  return std::any_of(marked.charge.begin(), marked.charge.end(), [&](const Mention& m) {
    return m.concept_id == rules.charge_marks().free && m.first == 0 && m.last + 1u < marked.tokens.size() &&
           marked.tokens[m.last + 1u].is(':');
  });
}

/// All capitals, one word, or points or a colon at the end.
bool looks_like_heading(const std::vector<Token>& tokens) {
  std::size_t words = 0, capitals = 0;
  for (const Token& t : tokens) words += t.word(), capitals += t.capitals;
  return words <= 1 || capitals == words || tokens.back().is('.') || tokens.back().is(':');
}

/// A line without a sum that names no thing ("CLEANING", "MASTER BATH"), or that states a fact. What is counted
/// ("Cleaning, 6 hrs") is no heading.
bool charges_nothing(const MarkedText& marked, const Sense& line, const RecognizerRules& rules,
                     const AmountFound& amount, const std::vector<Counted>& counts, LabelKind label) {
  if (marked.tokens.empty() || sums_only(marked.tokens) || opens_free(marked, rules)) return true;
  switch (label) {
  case LabelKind::none:
    break;
  case LabelKind::fact: {
    if (!amount.amount.has_value()) return true;
    if (amount.number == no_number) return true;
    const Number& n = marked.numbers[amount.number];
    return n.last + 2u < marked.tokens.size() || n.rate; // the sum is inside the remark, not at its end
  }
  case LabelKind::heading:
  case LabelKind::charges:
    if (!amount.amount.has_value() && std::any_of(counts.begin(), counts.end(), [](const Counted& c) {
          return c.unit == "hour" || c.unit == "day" || c.unit == "month";
        }))
      return false;
    return label == LabelKind::charges || !amount.amount.has_value();
  case LabelKind::letter: // "Full clean, reduced from $310 to $180": work with a sum is charged, however it is told
    return !amount.amount.has_value() ||
           std::none_of(line.groups().begin(), line.groups().end(), [](const Group& g) { return g.work || g.thing; });
  default:
    return true;
  }
  if (amount.amount.has_value()) return false;
  bool thing = false;
  std::size_t bracket = marked.tokens.size();
  for (std::size_t i = 0; i < marked.tokens.size() && bracket == marked.tokens.size(); ++i)
    if (marked.tokens[i].is('(')) bracket = i;
  bool work = false; // or what was wrong: "Small nail holes"
  for (const Group& g : line.groups()) {
    thing = thing || (g.thing && g.first < bracket);
    work = work || ((g.work || (g.state && !g.aside)) && g.first < bracket);
  }
  return !thing && !(work && !looks_like_heading(marked.tokens));
}

bool is_credit(const Sense& line, const Lexicon& lexicon) {
  const Lexicon::Id credit = lexicon.find("mark:credit");
  return std::any_of(line.groups().begin(), line.groups().end(), [&](const Group& g) { return g.has(credit); });
}

void set_features(Sense& line, const std::vector<Token>& tokens, const std::vector<Number>& numbers,
                  const std::vector<Counted>& counts) {
  bool place = false, thing = false;
  for (const Group& g : line.groups())
    place = place || (g.place && !describes_size(tokens, g)), thing = thing || (g.thing && g.factor >= 40);
  std::size_t dates = 0;
  bool percent = false;
  for (const Number& n : numbers)
    dates += n.kind == NumberKind::date ? 1u : 0u, percent = percent || n.kind == NumberKind::percent;
  if (place) line.set(Feature::place);
  if (percent) line.set(Feature::percent);
  if (dates > 0) line.set(Feature::date_any);
  if (dates > 1) line.set(Feature::date_range);
  if (thing) line.set(Feature::named_thing);
  for (const Counted& c : counts) {
    if (c.unit == "day") line.set(Feature::unit_day);
    if (c.unit == "month") line.set(Feature::unit_month);
  }
}

} // namespace

namespace {

Recognition recognize_alone(std::string_view text, const RecognizerRules& rules, const TextContext& context) {
  Recognition out;
  const MarkedText marked = mark(text, rules, context.style, !context.amount_known);
  const Lexicon& lexicon = rules.charges();
  Sense line(marked.tokens, marked.charge, rules);

  AmountFound amount;
  if (!context.amount_known) amount = find_amount(marked.tokens, marked.charge, marked.numbers, rules);
  out.amount = amount.amount;
  out.amount_computed = amount.computed;
  const std::vector<Counted> counts =
      find_counts(marked.tokens, line, marked.charge, marked.numbers, rules, context.amount_known, amount.number);
  set_features(line, marked.tokens, marked.numbers, counts);

  const bool returned = line.has("returned-payment"); // "NSF ck #12 fee" is no payment by check
  const LabelKind label =
      context.amount_known || returned ? LabelKind::none : label_of(marked, rules, 0, marked.tokens.size());
  if (!context.amount_known && charges_nothing(marked, line, rules, amount, counts, label)) {
    out.not_a_charge = true;
    out.kind = ChargeKind::other;
    out.confidence = label == LabelKind::none ? 60 : 90;
    if (label == LabelKind::fact || opens_free(marked, rules)) out.amount.reset();
    out.place = place_of(marked.tokens, line, marked.charge, rules, nullptr);
    if (label == LabelKind::none ||
        label == LabelKind::fact) // words without a sum still tell of the thing: "The fridge was 6 years old"
      out.facts = word_facts(marked, text, rules.facts(), lexicon, out.kind, context.amount);
    return out;
  }

  std::vector<Scored> ranked = rank(line, rules);
  prefer_named_fault(line, ranked, rules);
  const auto is_other = [](const ElementRule& r) { return r.element == "other"; };
  const ElementRule& other = *std::find_if(rules.elements().begin(), rules.elements().end(), is_other);
  const bool lump = is_lump(line, ranked, rules);
  const ElementRule& element = ranked.empty() || lump ? other : rules.elements()[ranked[0].element];
  std::uint16_t clause = 0;
  if (!ranked.empty())
    for (const std::uint16_t g : ranked[0].used)
      if (line.groups()[g].thing) {
        clause = line.groups()[g].clause;
        break;
      }
  bool works = false;
  for (const Group& g : line.groups()) works = works || g.work;
  const bool bare = !works && !out.amount.has_value() && !context.amount_known;
  const FindingRule* finding = pick_finding(line, element, clause, bare);
  out.element = element.element;
  out.finding = lump ? "lump-sum" : finding != nullptr ? finding->finding : "";
  out.kind = lump ? ChargeKind::other : kind_of(line, element, finding, lexicon);
  std::vector<std::uint16_t> finding_used;
  if (finding != nullptr) score_terms(line, finding->terms, &finding_used);
  const bool default_finding = out.finding.empty() || says_no_fault(out.finding) || out.finding == "unlisted-item";
  std::vector<std::uint16_t> rests_on;
  if (!ranked.empty()) rests_on = ranked[0].used;
  rests_on.insert(rests_on.end(), finding_used.begin(), finding_used.end());
  const int top = ranked.empty() ? 0 : ranked[0].score, second = ranked.size() > 1 ? ranked[1].score : 0;
  const int share = explained(marked.tokens, marked.charge, line, rests_on, lexicon);
  out.confidence = lump ? 70 : confidence_of(top, second, share, default_finding, is_other(element));
  out.harm_named = names_harm(line, lexicon);
  out.place = place_of(marked.tokens, line, marked.charge, rules, &element);
  out.quantity = choose_count(counts, line, rules, marked.numbers, out.amount);
  // A guess this weak does not tell a fee from damage, and so shuts out no fact.
  constexpr int tells_a_fee = 30;
  const bool no_fee = out.kind == ChargeKind::damage || out.kind == ChargeKind::cleaning ||
                      out.kind == ChargeKind::disposal || out.kind == ChargeKind::keys;
  const ChargeKind kind = no_fee || out.confidence >= tells_a_fee ? out.kind : ChargeKind::other;
  out.facts = word_facts(marked, text, rules.facts(), lexicon, kind, out.amount ? out.amount : context.amount);
  constexpr int names_the_thing = 60;
  if (!lump && element.element != "other" && out.confidence >= names_the_thing)
    drop_others_ages(out.facts, line, marked.tokens, element, rules);
  if (!ranked.empty()) out.basis = basis_of(line, ranked[0].used, marked.tokens);
  for (std::size_t i = lump ? 0 : 1; i < ranked.size() && out.alternatives.size() < 3; ++i) {
    if (ranked[i].score < 300) break;
    const ElementRule& rule = rules.elements()[ranked[i].element];
    const FindingRule* f = pick_finding(line, rule, clause, bare);
    out.alternatives.push_back({rule.element, f != nullptr ? f->finding : "",
                                std::min(out.confidence, ranked[i].score * 50 / std::max(ranked[0].score, 1))});
  }
  if (out.amount.has_value() && (is_credit(line, lexicon) || (out.element == "other" && out.finding == "credit")))
    out.amount = Money{} - *out.amount;
  return out;
}

/// The words of a heading help where the line alone says little ("Cleaning" above "bathroom"); its room is the line's
/// where it names none.
void take_heading(Recognition& r, std::string_view text, const RecognizerRules& rules, const TextContext& context) {
  if (context.heading.empty() || context.heading.size() > 80) return;
  const std::string joined = std::string(context.heading) + ": " + std::string(text);
  const Recognition both = recognize_alone(joined, rules, context);
  if (r.place.empty() && !r.element.empty() && both.element == r.element) r.place = both.place;
  if (r.confidence >= 50 || both.confidence <= r.confidence || both.element.empty()) return;
  const auto shift = static_cast<std::uint32_t>(context.heading.size() + 2);
  const auto quantity = r.quantity;
  WordFacts facts = std::move(r.facts); // a heading says nothing of the thing's age
  r = both;
  r.facts = std::move(facts);
  r.quantity = quantity ? quantity : both.quantity;
  std::erase_if(r.basis, [&](const Basis& b) { return b.start < shift; });
  for (Basis& b : r.basis) b.start -= shift, b.end -= shift;
}

} // namespace

namespace {

/// No charge says more; the time and memory of reading grow with the words.
constexpr std::size_t most_bytes = 4096;

/// The beginning of a text, cut between two characters.
std::string_view beginning(std::string_view text) {
  if (text.size() <= most_bytes) return text;
  std::size_t end = most_bytes;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
  return text.substr(0, end);
}

} // namespace

Recognition recognize(std::string_view given, const RecognizerRules& rules, const TextContext& context) {
  const std::string_view text = beginning(given);
  Recognition out = recognize_alone(text, rules, context);
  take_heading(out, text, rules, context);
  return out;
}

} // namespace wearline
