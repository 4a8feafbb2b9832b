#include "reading/fact_rules.h"

#include "reading/words.h"
#include "values/ascii.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

namespace wearline {

using nlohmann::json;

namespace {

/// First letter and the consonants after it, doubled ones once: what people keep when they shorten ("rplcd").
std::string consonants(std::string_view word) {
  std::string out;
  for (std::size_t i = 0; i < word.size(); ++i)
    if (i == 0 || (std::string_view("aeiou").find(word[i]) == std::string_view::npos && word[i] != out.back()))
      out += word[i];
  return out;
}

/// Only letters of the word, in its order: "rplcd" of "replaced", but not "gastos" of "gusts".
bool shortens(std::string_view text, std::string_view word) {
  std::size_t at = 0;
  for (const char c : word)
    if (at < text.size() && text[at] == c) ++at;
  return at == text.size();
}

/// The choices of a slot: split at "|" outside of "<...>".
std::vector<std::string_view> alternatives(std::string_view text) {
  std::vector<std::string_view> out;
  bool inside = false;
  std::size_t from = 0;
  for (std::size_t i = 0; i <= text.size(); ++i) {
    if (i < text.size() && (text[i] == '<' || text[i] == '>')) inside = text[i] == '<';
    if (i < text.size() && (inside || text[i] != '|')) continue;
    if (i > from) out.push_back(text.substr(from, i - from));
    from = i + 1;
  }
  return out;
}

constexpr std::array<std::pair<std::string_view, Role>, 6> role_names = {{{":thing", Role::thing},
                                                                          {":part", Role::part},
                                                                          {":work", Role::work},
                                                                          {":state", Role::state},
                                                                          {":cause", Role::cause},
                                                                          {":place", Role::place}}};

std::uint32_t bit(Role role) { return 1u << static_cast<unsigned>(role); }

constexpr std::array<std::string_view, 2> languages = {"en", "es"};

/// Whether a case can hold this word as the fact; of other facts than these the case's reader knows.
bool may_be(std::string_view fact, std::string_view word) {
  return fact == "cause"    ? value_in(charge_causes, word) != ChargeCause::unknown
         : fact == "remedy" ? value_in(charge_remedies, word) != ChargeRemedy::unknown
                            : true;
}

bool ends_sentence(const FactItem& item) {
  return item.is('.') || item.is(';') || item.is('(') || item.is(')') || item.is('|');
}

} // namespace

FactRules::Word FactRules::intern(const std::string& text) {
  const auto [it, fresh] = words_.try_emplace(text, next_word_);
  if (!fresh) return it->second;
  ++next_word_;
  const auto letter = [](char c) { return static_cast<std::size_t>(c - 'a'); };
  const bool word = std::all_of(text.begin(), text.end(), [](char c) { return is_lower(c) || c == '*'; });
  if (!word || text.size() < 2) return it->second;
  if (text.back() == '*') prefixes_[letter(text[0])].push_back({text.substr(0, text.size() - 1), it->second});
  else if (text[0] == '*') endings_[letter(text.back())].push_back({text.substr(1), it->second});
  else if (text.size() >= 5) {
    shortenings_[consonants(text)].push_back({text, it->second});
    if (text.size() >= 6) long_words_[letter(text[0])].push_back({text, it->second});
  }
  return it->second;
}

std::uint64_t FactRules::bit_of(const std::string& fact) {
  if (fact == "all") return ~std::uint64_t{0};
  const auto [it, fresh] = bits_.try_emplace(fact, std::uint64_t{1} << std::min<std::size_t>(bits_.size(), 62));
  return it->second;
}

/// The set of these words, sorted: the same one for the same words.
std::uint16_t FactRules::set_of(const std::vector<Word>& words) {
  const auto [it, fresh] = set_numbers_.try_emplace(words, static_cast<std::uint16_t>(set_numbers_.size()));
  if (fresh) {
    sets_of_.resize(next_word_);
    for (const Word w : words) sets_of_[w].push_back(it->second);
  }
  return it->second;
}

/// A word, a prefix ("install*"), a class ("[years]"), or several words joined by "_" ("put_in").
void FactRules::add_alternative(std::string_view text, Choice& choice, const std::string& at, Faults& faults) {
  if (text.size() > 2 && text.front() == '[' && text.find(']') == text.size() - 1) {
    const auto found = classes_.find(text.substr(1, text.size() - 2));
    if (found == classes_.end()) {
      faults.push_back({"unknown-name", at, "No class of words is called \"" + std::string(text) + "\".", ""});
      return;
    }
    const Choice& its = choices_[found->second];
    choice.words.insert(choice.words.end(), its.words.begin(), its.words.end());
    choice.phrases.insert(choice.phrases.end(), its.phrases.begin(), its.phrases.end());
    choice.first_words.insert(choice.first_words.end(), its.first_words.begin(), its.first_words.end());
    return;
  }
  std::vector<std::vector<Word>> phrase;
  for (const std::string_view piece : split(text, '_')) {
    if (piece.size() > 2 && piece.front() == '[' && piece.back() == ']') {
      const auto found = classes_.find(piece.substr(1, piece.size() - 2));
      if (found == classes_.end() || choices_[found->second].words.empty()) {
        faults.push_back(
            {"unknown-name", at, "No class of single words is called \"" + std::string(piece) + "\".", ""});
        continue;
      }
      phrase.push_back(choices_[found->second].words);
    } else if (piece.size() > 1 && piece.front() == '*') {
      phrase.push_back({intern("*" + fold(piece.substr(1)))});
    } else if (piece.size() > 1 && piece.back() == '*') {
      phrase.push_back({intern(fold(piece.substr(0, piece.size() - 1)) + "*")});
    } else {
      const std::vector<Token> tokens = split_words(piece);
      for (std::size_t i = 0; i < tokens.size();) {
        const auto [whole, end] = with_or_without(tokens, i);
        if (end != 0) phrase.push_back({intern(std::string(whole))});
        else if (const Token& t = tokens[i]; !((t.is('-') || t.is('.')) && t.glued)) phrase.push_back({intern(t.text)});
        i = end != 0 ? end : i + 1;
      }
    }
  }
  if (phrase.size() == 1) {
    choice.words.insert(choice.words.end(), phrase[0].begin(), phrase[0].end());
  } else if (!phrase.empty()) {
    Phrase sets;
    for (const auto& words : phrase) sets.push_back(set_of(words));
    choice.phrases.push_back(std::move(sets));
    choice.first_words.insert(choice.first_words.end(), phrase[0].begin(), phrase[0].end());
  }
}

void FactRules::add_idea(std::string_view name, Choice& choice, const Lexicon& charges, const std::string& at,
                         Faults& faults) {
  const auto role = std::find_if(role_names.begin(), role_names.end(), [&](const auto& r) { return r.first == name; });
  const Lexicon::Id id = role == role_names.end() ? charges.find(name) : Lexicon::none;
  if (role != role_names.end()) choice.roles |= bit(role->second);
  else if (id != Lexicon::none) choice.ideas.push_back(id);
  else faults.push_back({"unknown-name", at, "No concept is called \"" + std::string(name) + "\".", ""});
}

/// Takes a choice that is whole in, and gives its number.
std::uint16_t FactRules::number(Choice choice) {
  std::sort(choice.words.begin(), choice.words.end());
  choice.set = set_of(choice.words);
  std::vector<Word> begins = choice.words;
  begins.insert(begins.end(), choice.first_words.begin(), choice.first_words.end());
  std::sort(begins.begin(), begins.end());
  begins.erase(std::unique(begins.begin(), begins.end()), begins.end());
  choice.begins = set_of(begins);
  choices_.push_back(std::move(choice));
  return static_cast<std::uint16_t>(choices_.size() - 1);
}

/// What a text such as "[old]|<stain>" in a pattern stands for.
std::uint16_t FactRules::choice_of(std::string_view text, const Lexicon& charges, const std::string& at,
                                   Faults& faults) {
  if (const auto known = choice_numbers_.find(std::string(text)); known != choice_numbers_.end()) return known->second;
  const std::size_t before = faults.size();
  Choice choice;
  for (const std::string_view one : alternatives(text)) {
    if (one == "$") choice.end = true;
    else if (one.size() > 2 && one.front() == '<' && one.back() == '>')
      for (const std::string_view name : split(one.substr(1, one.size() - 2), '|'))
        add_idea(name, choice, charges, at, faults);
    else add_alternative(one, choice, at, faults);
  }
  const std::uint16_t its = number(std::move(choice));
  if (faults.size() == before) choice_numbers_.emplace(text, its);
  return its;
}

std::vector<FactRules::Slot> FactRules::compile(std::string_view text, const Lexicon& charges, const std::string& at,
                                                Faults& faults) {
  std::vector<Slot> out;
  for (std::string_view piece : split(text, ' ')) {
    Slot slot;
    if (piece.size() > 1 && piece.back() == '?') slot.optional = true, piece.remove_suffix(1);
    const auto most_of = [&](std::size_t skip) {
      slot.most = 0;
      for (const char c : piece.substr(skip))
        if (is_digit(c)) slot.most = static_cast<std::uint8_t>(slot.most * 10 + (c - '0'));
    };
    if (piece == "^") slot.kind = SlotKind::start;
    else if (piece == "^^") slot.kind = SlotKind::line_start;
    else if (piece == "$") slot.kind = SlotKind::end;
    else if (piece.substr(0, 2) == "..") slot.kind = SlotKind::gap, most_of(2);
    else if (piece.size() == 2 && piece[0] == '~' && is_digit(piece[1])) slot.kind = SlotKind::far, most_of(1);
    else if (piece.size() == 2 && piece[0] == '_' && is_digit(piece[1])) slot.kind = SlotKind::loose, most_of(1);
    else if (piece.front() == '{') {
      slot.kind = SlotKind::number;
      const std::string_view name = piece.substr(1, piece.size() - 2);
      if (name == "n") slot.want = NumberWant::count;
      else if (name == "when") slot.want = NumberWant::when;
      else if (name == "money") slot.want = NumberWant::money;
      else if (name == "share") slot.want = NumberWant::share;
      else if (name == "year") slot.want = NumberWant::year;
      else if (name == "date") slot.want = NumberWant::date;
      else if (name == "day") slot.want = NumberWant::day;
      else if (name == "size") slot.want = NumberWant::size;
      else if (name == "(n)") slot.want = NumberWant::bracketed;
      else if (name == "any") slot.want = NumberWant::any;
      else faults.push_back({"unknown-name", at, "No kind of number is called \"" + std::string(name) + "\".", ""});
    } else {
      if (piece.front() == '!' && piece.size() > 1) slot.kind = SlotKind::without, piece.remove_prefix(1);
      slot.choice = choice_of(piece, charges, at, faults);
    }
    out.push_back(std::move(slot));
  }
  return out;
}

void FactRules::index(std::uint16_t pattern) {
  for (const Slot& slot : patterns_[pattern].slots) {
    if (slot.kind == SlotKind::words) {
      const Choice& choice = choices_[slot.choice];
      by_set_[choice.begins].push_back(pattern);
      for (const Lexicon::Id id : choice.ideas) by_idea_[id].push_back(pattern);
      for (std::size_t r = 0; r < by_role_.size(); ++r)
        if ((choice.roles >> r & 1u) != 0) by_role_[r].push_back(pattern);
    } else if (slot.kind == SlotKind::number) {
      by_number_.push_back(pattern);
    } else if (slot.kind == SlotKind::start || slot.kind == SlotKind::without) {
      continue; // takes nothing: the slot after it begins
    } else {
      by_any_.push_back(pattern);
      return;
    }
    if (!slot.optional) return;
  }
}

Faults FactRules::add(const json& document, const Lexicon& charges) {
  Faults faults;
  if (!document.is_object() || !document.contains("rules") || !document["rules"].is_array() ||
      !document.contains("classes") || !document["classes"].is_object() || !document.contains("numbers"))
    return {{"wrong-type", "", "Facts need classes, numbers and rules.", ""}};
  for (const char* list : {"numbers", "decades"})
    if (document.contains(list) && document[list].is_object())
      for (const auto& [word, value] : document[list].items())
        if (value.is_number())
          number_words_.push_back({fold(word), static_cast<std::int64_t>(std::llround(value.get<double>() * 1000))});
  const auto texts = [&](const json& holder, const std::string& at, auto&& take) {
    for (const std::string_view language : languages) {
      const auto list = holder.find(std::string(language));
      if (list == holder.end()) continue;
      if (!list->is_array()) {
        faults.push_back({"wrong-type", at + '/' + std::string(language), "A list of words is needed.", ""});
        continue;
      }
      for (const json& text : *list)
        if (text.is_string()) take(text.get_ref<const std::string&>());
    }
  };
  for (const auto& [list, places] : {std::pair("rooms", &rooms_), std::pair("wide", &wide_)})
    if (document.contains(list) && document[list].is_array())
      for (const json& name : document[list]) {
        const Lexicon::Id id = name.is_string() ? charges.find(name.get<std::string>()) : Lexicon::none;
        if (id != Lexicon::none) places->push_back(id);
        else faults.push_back({"unknown-name", '/' + std::string(list), "No place is called " + name.dump() + '.', ""});
      }
  // Classes that name other classes come after those.
  std::vector<std::string> order;
  for (const bool composed : {false, true})
    for (const auto& [name, words] : document["classes"].items()) {
      bool names_others = false;
      texts(words, "/classes/" + name,
            [&](const std::string& text) { names_others = names_others || text.find('[') != std::string::npos; });
      if (names_others == composed) order.push_back(name);
    }
  for (const std::string& name : order) {
    const json& words = document["classes"][name];
    const std::string at = "/classes/" + name;
    Choice choice;
    texts(words, at, [&](const std::string& text) {
      std::string joined = text;
      std::replace(joined.begin(), joined.end(), ' ', '_');
      add_alternative(joined, choice, at, faults);
    });
    classes_.insert_or_assign(name, number(std::move(choice)));
  }
  std::size_t number = 0;
  for (const json& entry : document["rules"]) {
    const std::string at = "/rules/" + std::to_string(number++);
    if (!entry.is_object()) {
      faults.push_back({"wrong-type", at, "A rule is an object.", ""});
      continue;
    }
    Rule rule;
    if (entry.contains("set"))
      for (const auto& [fact, value] : entry["set"].items()) {
        rule.facts |= bit_of(fact);
        if (value.is_number_integer()) rule.sets.push_back({fact, value.get<int>()});
        else if (value.is_boolean()) rule.sets.push_back({fact, value.get<bool>()});
        else if (value.is_string()) {
          rule.sets.push_back({fact, value.get<std::string>()});
          if (!may_be(fact, value.get<std::string>()))
            faults.push_back({"unknown-name", at + "/set/" + fact, "A case cannot say this of a charge.", ""});
        } else
          faults.push_back(
              {"wrong-type", at + "/set/" + fact, "A fact is set to a number's place, a name or yes/no.", ""});
      }
    if (entry.contains("deny"))
      for (const auto& [fact, value] : entry["deny"].items())
        if (value.is_string()) rule.denies.push_back({fact, value.get<std::string>()});
    if (entry.contains("unit") && entry["unit"].is_string()) rule.unit = entry["unit"].get<std::string>();
    if (entry.contains("kinds"))
      for (const json& kind : entry["kinds"])
        if (kind.is_string()) {
          rule.kinds.push_back(value_in(charge_kinds, kind.get<std::string>()));
          if (rule.kinds.back() == ChargeKind::unknown)
            faults.push_back({"unknown-name", at + "/kinds", "This is not a kind of charge.", ""});
        }
    if (entry.contains("hide"))
      for (const json& fact : entry["hide"])
        if (fact.is_string()) rule.hides |= bit_of(fact.get<std::string>());
    const auto index_of_rule = static_cast<std::uint16_t>(rules_.size());
    rules_.push_back(std::move(rule));
    texts(entry, at, [&](const std::string& text) {
      Pattern pattern{index_of_rule, compile(text, charges, at, faults), {}, 0};
      if (pattern.slots.empty()) return;
      patterns_.push_back(std::move(pattern));
    });
  }
  by_set_.resize(set_numbers_.size());
  for (std::size_t i = 0; i < patterns_.size(); ++i) {
    index(static_cast<std::uint16_t>(i));
    find_needs(patterns_[i]);
  }
  sets_of_.resize(next_word_);
  return faults;
}

/// What must stand somewhere in a line for the pattern to be met: most are not even tried.
void FactRules::find_needs(Pattern& pattern) const {
  for (const Slot& slot : pattern.slots) {
    if (slot.kind == SlotKind::number && !slot.optional) ++pattern.numbers;
    if (slot.kind != SlotKind::words || slot.optional) continue;
    const Choice& choice = choices_[slot.choice];
    if (choice.roles == 0 && choice.ideas.empty() && !choice.end) pattern.needs.push_back(choice.begins);
  }
}

/// The rules' words that an item is. One that no list knows may be a shortening ("nrml") or a misspelling ("severly").
void FactRules::name_words(FactItem& item, bool known, const Lexicon& charges) const {
  const std::string& text = item.text;
  if (text.empty()) return;
  if (const auto found = words_.find(text); found != words_.end()) item.words.push_back(found->second);
  if (item.kind == FactItem::Kind::word && text.size() > 2)
    for (const std::string& word : charges.written_out(text))
      if (const auto found = words_.find(word); found != words_.end()) item.words.push_back(found->second);
  if (text[0] < 'a' || text[0] > 'z' || text.back() < 'a' || text.back() > 'z') return;
  for (const auto& [ending, word] : endings_[static_cast<std::size_t>(text.back() - 'a')])
    if (text.size() > ending.size() + 2 && text.compare(text.size() - ending.size(), ending.size(), ending) == 0)
      item.words.push_back(word);
  for (const auto& [prefix, word] : prefixes_[static_cast<std::size_t>(text[0] - 'a')])
    if (text.size() >= prefix.size() && text.compare(0, prefix.size(), prefix) == 0) item.words.push_back(word);
  if (known || !item.words.empty() || item.kind != FactItem::Kind::word || text.size() < 4) return;
  const std::string short_form = consonants(text);
  if (short_form.size() >= 4 || (short_form.size() == 3 && text.size() >= 5))
    if (const auto found = shortenings_.find(short_form); found != shortenings_.end())
      for (const auto& [word, id] : found->second)
        if (shortens(text, word)) item.words.push_back(id);
  if (!item.words.empty() || text.size() < 6) return;
  for (const auto& [word, id] : long_words_[static_cast<std::size_t>(text[0] - 'a')])
    if (edit_distance(text, word, 1) <= 1) item.words.push_back(id);
}

bool FactRules::in_class(const FactItem& item, std::string_view name) const {
  const auto found = classes_.find(name);
  if (found == classes_.end()) return false;
  const auto& words = choices_[found->second].words;
  return std::any_of(item.words.begin(), item.words.end(),
                     [&](Word w) { return std::binary_search(words.begin(), words.end(), w); });
}

/// One run of the patterns over one line.
struct FactRules::Matching {
  const FactRules& rules;
  const Lexicon& lexicon;
  const std::vector<FactItem>& items;
  struct Idea {
    Lexicon::Id id;
    std::uint32_t role;
    std::uint16_t last; ///< item
  };
  std::vector<std::vector<Idea>> ideas; ///< by the item they begin at
  std::vector<std::uint64_t> hidden;
  std::vector<bool> names_thing, links;
  std::vector<bool> in_set; ///< by item and set: the item is a word of it
  std::uint64_t facts = 0;

  Matching(const FactRules& r, const MarkedText& text, const Lexicon& l, const std::vector<FactItem>& i)
      : rules(r), lexicon(l), items(i), ideas(i.size()), hidden(i.size(), 0), names_thing(i.size(), false),
        links(i.size(), false) {
    std::vector<std::uint16_t> item_of(text.tokens.size(), 0);
    std::size_t at = 0;
    for (std::size_t t = 0; t < item_of.size(); ++t) {
      while (at + 1 < items.size() && items[at].last < t) ++at;
      item_of[t] = static_cast<std::uint16_t>(at);
    }
    for (const Mention& m : text.charge) {
      if (items.empty()) break;
      const Concept& c = lexicon.at(m.concept_id);
      const std::uint16_t first = item_of[m.first], last = item_of[m.last];
      if (items[first].first != m.first) continue;
      ideas[first].push_back({m.concept_id, bit(c.role), last});
      if (c.role == Role::thing || c.role == Role::part)
        for (std::size_t k = first; k <= last; ++k) names_thing[k] = true;
    }
    in_set.assign(items.size() * rules.set_numbers_.size(), false);
    for (std::size_t k = 0; k < items.size(); ++k)
      for (const Word w : items[k].words)
        for (const std::uint16_t set : rules.sets_of_[w]) in_set[k * rules.set_numbers_.size() + set] = true;
    for (std::size_t k = 0; k < items.size(); ++k) links[k] = rules.in_class(items[k], "links");
  }

  bool usable(std::size_t at) const { return at < items.size() && (hidden[at] & facts) == 0; }

  bool has_word(std::size_t at, std::uint16_t set) const {
    return usable(at) && in_set[at * rules.set_numbers_.size() + set];
  }

  bool phrase(const Phrase& sets, std::size_t at) const {
    for (std::size_t i = 0; i < sets.size(); ++i)
      if (!has_word(at + i, sets[i])) return false;
    return true;
  }

  static bool wanted(const Choice& choice, const Idea& idea) {
    return (choice.roles & idea.role) != 0 ||
           std::find(choice.ideas.begin(), choice.ideas.end(), idea.id) != choice.ideas.end();
  }

  static bool plain_year(const FactItem& n) {
    return n.number == NumberKind::plain && !n.currency && !n.worded && n.decimals == 0 && n.thousandths >= 1'900'000 &&
           n.thousandths < 2'100'000;
  }

  /// A number that can count things: no sum of money, and no share but of one thing ("1/2").
  static bool counts(const FactItem& n) {
    if (n.number == NumberKind::fraction) return n.under > 0 && n.over < n.under && n.under < 13;
    return !n.currency && n.decimals < 2 && n.thousandths > 0 && n.thousandths < 10'000'000 &&
           (n.number == NumberKind::plain || n.number == NumberKind::money);
  }

  /// "6-panel door", "4-burner stove": a number that says what the thing is like; "2-year" is a measure.
  bool describes(std::size_t at) const {
    return items[at].hyphened && at + 1 < items.size() && !rules.in_class(items[at + 1], "measure-word");
  }
  /// "2.25 hr", "labor 2.25 @ 40": two decimals, and yet no sum; "3/4 hr": no day of March; "invoice 6 h": no number of
  /// the invoice.
  bool measures_time(std::size_t at) const {
    const FactItem& n = items[at];
    if (n.currency || n.rate || at + 1 >= items.size()) return false;
    const bool named = rules.in_class(items[at + 1], "hours");
    const bool labor =
        at > 0 && rules.in_class(items[at - 1], "labor-hours") && rules.in_class(items[at + 1], "by-price");
    if (n.decimals == 2 && n.thousandths > 0) return named || labor;
    return named && (n.part_of_one() || (n.number == NumberKind::reference && n.thousandths > 0));
  }

  bool is_number(std::size_t at, NumberWant want) const {
    if (!usable(at)) return false;
    const FactItem& n = items[at];
    if (n.kind != FactItem::Kind::number) return false;
    switch (want) {
    case NumberWant::count:
      return (n.worded || counts(n) || measures_time(at)) && !describes(at);
    case NumberWant::bracketed:
      return n.bracketed && counts(n);
    case NumberWant::size:
      return n.number == NumberKind::size && n.over > 0 && n.under > 0;
    case NumberWant::year:
      return n.number == NumberKind::year || (n.number == NumberKind::date && n.day.year != 0 && n.day.day == 0) ||
             plain_year(n);
    case NumberWant::when:
      return n.number == NumberKind::year || (n.number == NumberKind::date && n.day.year != 0) ||
             ((n.number == NumberKind::date || n.number == NumberKind::fraction) && n.over >= 1 && n.over <= 12 &&
              n.decimals == 2) || // "8/19": month and year
             plain_year(n);
    case NumberWant::date:
      return n.number == NumberKind::date && n.day.month != 0 && n.day.day != 0;
    case NumberWant::day: // a bare number only where a day can be meant
      return is_number(at, NumberWant::date) || (n.number == NumberKind::ordinal && n.over >= 1 && n.over <= 31) ||
             (n.number == NumberKind::plain && !n.currency && !n.worded && n.thousandths % 1000 == 0 &&
              n.thousandths >= 1000 && n.thousandths <= 31'000);
    case NumberWant::money:
      if (n.worded) // "thirty dollars", "thirty an hour"
        return at + 1 < items.size() && (rules.in_class(items[at + 1], "dollars") ||
                                         (n.thousandths >= 5000 && rules.in_class(items[at + 1], "per-hour") &&
                                          at + 2 < items.size() && rules.in_class(items[at + 2], "hours")));
      return (n.number == NumberKind::money || n.number == NumberKind::plain || n.number == NumberKind::year);
    case NumberWant::share:
      return n.number == NumberKind::percent ||
             (n.under > 0 && n.over < n.under && (n.number == NumberKind::fraction || n.number == NumberKind::date));
    case NumberWant::any:
      return true;
    }
    return false;
  }

  /// Signs end a stretch of words, but not the "@" that is only a short "at" ("new @ m/i").
  bool stops_gap(std::size_t at) const {
    if (items[at].kind != FactItem::Kind::sign) return false;
    return !items[at].is('@') || at + 1 >= items.size() || items[at + 1].kind != FactItem::Kind::word;
  }

  /// The end of a part of the line: a sign, the end, or the sum that stands there.
  bool ends_part(std::size_t at) const {
    if (at >= items.size() || items[at].kind == FactItem::Kind::sign) return true;
    const FactItem& last = items[at];
    return at + 1 == items.size() && last.kind == FactItem::Kind::number && !last.worded &&
           (last.currency || last.decimals == 2);
  }

  bool run(const std::vector<Slot>& slots, std::size_t s, std::size_t at, FactMatch& m) const {
    if (s == slots.size()) {
      m.last = static_cast<std::uint16_t>(at == 0 ? 0 : at - 1);
      return at > m.first;
    }
    const Slot& slot = slots[s];
    const std::uint8_t count = m.count;
    switch (slot.kind) {
    case SlotKind::words: {
      const Choice& choice = rules.choices_[slot.choice];
      if (has_word(at, choice.set) && run(slots, s + 1, at + 1, m)) return true;
      for (const Phrase& p : choice.phrases)
        if (phrase(p, at) && run(slots, s + 1, at + p.size(), m)) return true;
      if (usable(at))
        for (const Idea& idea : ideas[at])
          if (wanted(choice, idea) && usable(idea.last) && run(slots, s + 1, idea.last + 1u, m)) return true;
      if (choice.end && ends_part(at) && run(slots, s + 1, at, m)) return true;
      break;
    }
    case SlotKind::number:
      if (is_number(at, slot.want) && m.count < FactMatch::most_numbers) {
        m.numbers[m.count++] = static_cast<std::uint16_t>(at);
        if (run(slots, s + 1, at + 1, m)) return true;
        m.count = count;
      }
      break;
    case SlotKind::gap:
    case SlotKind::loose:
    case SlotKind::far:
      for (std::size_t k = 0; k <= slot.most && at + k <= items.size(); ++k) {
        if (k > 0) {
          const std::size_t over = at + k - 1;
          const FactItem& item = items[over];
          if (slot.kind == SlotKind::far ? ends_sentence(item) : stops_gap(over)) break;
          if (slot.kind == SlotKind::loose &&
              (item.kind != FactItem::Kind::word || names_thing[over] || links[over] || !usable(over)))
            break;
        }
        if (run(slots, s + 1, at + k, m)) return true;
        m.count = count;
      }
      break;
    case SlotKind::without: {
      const Choice& choice = rules.choices_[slot.choice];
      bool there = has_word(at, choice.set);
      for (const Phrase& p : choice.phrases) there = there || phrase(p, at);
      if (usable(at))
        for (const Idea& idea : ideas[at]) there = there || wanted(choice, idea);
      there = there || (choice.end && ends_part(at));
      if (!there && run(slots, s + 1, at, m)) return true;
      break;
    }
    case SlotKind::start:
      if ((at == 0 || items[at - 1].kind == FactItem::Kind::sign) && run(slots, s + 1, at, m)) return true;
      break;
    case SlotKind::line_start:
      if (at == 0 && run(slots, s + 1, at, m)) return true;
      break;
    case SlotKind::end:
      if (ends_part(at) && run(slots, s + 1, at, m)) return true;
      break;
    }
    m.count = count;
    return slot.optional && run(slots, s + 1, at, m);
  }
};

std::vector<FactMatch> FactRules::matches(const MarkedText& text, std::vector<FactItem>& items, const Lexicon& charges,
                                          ChargeKind kind) const {
  std::vector<FactMatch> out;
  for (FactItem& item : items)
    name_words(item, item.kind == FactItem::Kind::word && !charges.ideas_of(text.tokens[item.first]).empty(), charges);
  Matching line(*this, text, charges, items);
  for (std::size_t k = 0; k < items.size(); ++k) items[k].thing = line.names_thing[k];
  std::vector<bool> held(set_numbers_.size(), false); // the sets that the line holds a word of
  std::size_t numbers = 0;
  for (const FactItem& item : items) {
    numbers += item.kind == FactItem::Kind::number;
    for (const Word w : item.words)
      for (const std::uint16_t set : sets_of_[w]) held[set] = true;
  }
  const auto possible = [&](const Pattern& pattern) {
    return pattern.numbers <= numbers &&
           std::all_of(pattern.needs.begin(), pattern.needs.end(), [&](std::uint16_t set) { return held[set]; });
  };
  std::vector<std::uint8_t> wanted(patterns_.size(), 0); // 0 not looked at yet, 1 yes, 2 no
  std::vector<std::uint64_t> tries;                      // rule, item, pattern: in the order they are tried
  for (std::size_t at = 0; at < items.size(); ++at) {
    const auto add = [&](const std::vector<std::uint16_t>& list) {
      for (const std::uint16_t p : list) {
        const Pattern& pattern = patterns_[p];
        if (wanted[p] == 0) wanted[p] = possible(pattern) ? 1 : 2;
        if (wanted[p] == 1) tries.push_back(std::uint64_t{pattern.rule} << 32 | std::uint64_t{at} << 16 | p);
      }
    };
    for (const Word w : items[at].words)
      for (const std::uint16_t set : sets_of_[w]) add(by_set_[set]);
    for (const Matching::Idea& idea : line.ideas[at]) {
      if (const auto found = by_idea_.find(idea.id); found != by_idea_.end()) add(found->second);
      for (std::size_t r = 0; r < by_role_.size(); ++r)
        if ((idea.role >> r & 1u) != 0) add(by_role_[r]);
    }
    if (items[at].kind == FactItem::Kind::number) add(by_number_);
    add(by_any_);
  }
  std::sort(tries.begin(), tries.end());
  tries.erase(std::unique(tries.begin(), tries.end()), tries.end());
  std::vector<std::pair<std::string, std::string>> denied;
  const auto is_denied = [&](const std::pair<std::string, FactSetting>& set) {
    const auto* name = std::get_if<std::string>(&set.second);
    return name && std::find(denied.begin(), denied.end(), std::pair(set.first, *name)) != denied.end();
  };
  for (const std::uint64_t one : tries) {
    const Pattern& pattern = patterns_[one & 0xFFFF];
    const auto first = static_cast<std::uint16_t>(one >> 16 & 0xFFFF);
    const Rule& rule = rules_[pattern.rule];
    if (!rule.kinds.empty() && std::find(rule.kinds.begin(), rule.kinds.end(), kind) == rule.kinds.end()) continue;
    if (!denied.empty() && std::any_of(rule.sets.begin(), rule.sets.end(), is_denied)) continue;
    line.facts = rule.facts != 0 ? rule.facts : rule.hides;
    FactMatch m;
    m.rule = pattern.rule;
    m.first = first;
    if (!line.run(pattern.slots, 0, first, m)) continue;
    denied.insert(denied.end(), rule.denies.begin(), rule.denies.end());
    for (std::size_t i = m.first; i <= m.last; ++i) line.hidden[i] |= rule.hides;
    if (rule.facts != 0) // a number says one thing
      for (std::size_t i = 0; i < m.count; ++i) line.hidden[m.numbers[i]] = ~std::uint64_t{0};
    else if (rule.unit == "none") // "section 9", "2 coats"
      for (std::size_t i = m.first; i <= m.last; ++i) items[i].no_count = true;
    out.push_back(m);
  }
  return out;
}

} // namespace wearline
