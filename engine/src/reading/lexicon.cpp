#include "reading/lexicon.h"

#include "values/ascii.h"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <utility>

namespace wearline {

using nlohmann::json;

namespace {

constexpr std::array<std::pair<std::string_view, Role>, 10> roles = {{{"thing", Role::thing},
                                                                      {"part", Role::part},
                                                                      {"work", Role::work},
                                                                      {"state", Role::state},
                                                                      {"cause", Role::cause},
                                                                      {"money", Role::money},
                                                                      {"place", Role::place},
                                                                      {"link", Role::link},
                                                                      {"mark", Role::mark},
                                                                      {"plain", Role::plain}}};

bool all_letters(const std::string& w) { return std::all_of(w.begin(), w.end(), is_lower); }

bool is_vowel(char c) { return c == 'a' || c == 'e' || c == 'i' || c == 'o' || c == 'u'; }

/// First letter and the consonants after it, doubled ones once: what people keep when they shorten ("drvwy").
std::string skeleton_of(std::string_view w) {
  std::string out;
  for (std::size_t i = 0; i < w.size(); ++i) {
    if (i > 0 && (is_vowel(w[i]) || w[i] == out.back())) continue;
    out += w[i];
  }
  return out;
}

bool is_subsequence(std::string_view part, std::string_view whole) {
  std::size_t at = 0;
  for (const char c : whole)
    if (at < part.size() && part[at] == c) ++at;
  return at == part.size();
}

bool starts(std::string_view w, std::string_view head) { return w.substr(0, head.size()) == head; }

/// How well `cut` works as a shortening of the known word: 0 not at all, then better the higher.
int shortening(std::string_view cut, std::string_view cut_skeleton, std::string_view known,
               std::string_view known_skeleton, bool dotted) {
  if (known.size() <= cut.size() || known.size() < 5) return 0;
  if (starts(known, cut)) return cut.size() >= (dotted ? 3u : 4u) ? 3 : 0;
  if (cut.size() < 3 || !is_subsequence(cut, known)) return 0;
  if (cut_skeleton == known_skeleton && cut_skeleton.size() >= 3) return 3;
  const bool same_end = cut.back() == known.back() || cut.back() == known_skeleton.back();
  if (cut == cut_skeleton && is_subsequence(cut, known_skeleton)) {
    if (same_end && cut.size() * 2 > known_skeleton.size()) return 2;
    return starts(known_skeleton, cut) && cut.size() >= 4 ? 2 : 0;
  }
  return same_end && cut.size() >= 4 && cut.size() * 2 > known.size() ? 1 : 0;
}

/// Pieces a phrase is matched over: hyphens and underscores inside a word and the point of an abbreviation do not
/// count.
bool is_silent(const std::vector<Token>& tokens, std::size_t i) {
  const Token& t = tokens[i];
  if (i == 0 || !t.glued) return false;
  if (t.is('.')) return tokens[i - 1].word();
  return (t.is('-') || t.is('_')) && !tokens[i - 1].is('-') && !tokens[i - 1].is('_') && i + 1 < tokens.size() &&
         tokens[i + 1].glued && tokens[i + 1].word();
}

std::vector<std::size_t> spoken(const std::vector<Token>& tokens) {
  std::vector<std::size_t> out;
  out.reserve(tokens.size());
  for (std::size_t i = 0; i < tokens.size(); ++i)
    if (!is_silent(tokens, i)) out.push_back(i);
  return out;
}

} // namespace

Lexicon::Id Lexicon::find(std::string_view id) const {
  const auto it = ids_.find(std::string(id));
  return it == ids_.end() ? none : it->second;
}

std::vector<std::string> Lexicon::written_out(const std::string& word) const {
  if (const auto alias = aliases_.find(word); alias != aliases_.end()) return alias->second;
  const auto ends = [&](std::string_view tail) {
    return word.size() > tail.size() + 2 && word.compare(word.size() - tail.size(), tail.size(), tail) == 0;
  };
  for (const auto& [tail, full] : {std::pair("d", "ed"), std::pair("ed", "ed"), std::pair("g", "ing"),
                                   std::pair("ing", "ing"), std::pair("s", "s")}) {
    if (!ends(tail)) continue;
    const auto alias = aliases_.find(word.substr(0, word.size() - std::string_view(tail).size()));
    if (alias == aliases_.end()) continue;
    std::vector<std::string> out;
    for (std::string one : alias->second) {
      if (one.back() == 'e' && full[0] != 's') one.pop_back();
      out.push_back(one + full);
    }
    return out;
  }
  return {};
}

const std::vector<Lexicon::Id>& Lexicon::ideas_of(const Token& token) const {
  const Word word = known_word(token.text);
  const auto found = word == no_word ? nodes_[0].next.end() : nodes_[0].next.find(word);
  return nodes_[found == nodes_[0].next.end() ? 0 : found->second]
      .concepts; // no term is empty, so the root stands for nothing
}

Lexicon::Word Lexicon::known_word(const std::string& text) const {
  const auto it = words_.find(distinct_.count(text) != 0 ? "=" + text : all_letters(text) ? root(text) : text);
  return it == words_.end() ? no_word : it->second;
}

Lexicon::Word Lexicon::intern(const std::string& text) {
  const bool letters = all_letters(text);
  const std::string key = distinct_.count(text) != 0 ? "=" + text : letters ? root(text) : text;
  const auto [it, fresh] = words_.try_emplace(key, next_word_);
  if (fresh) ++next_word_;
  if (letters && text.size() >= 4 && surfaces_.try_emplace(text, true).second)
    by_letter_[static_cast<std::size_t>(text[0] - 'a')].push_back({text, skeleton_of(text), it->second});
  return it->second;
}

void Lexicon::add_term(std::string_view term, Id id) {
  const std::vector<Token> tokens = split_words(term);
  std::uint32_t node = 0;
  for (const std::size_t i : spoken(tokens)) {
    const Word word = intern(tokens[i].capitals ? "^" + tokens[i].text : tokens[i].text);
    const auto found = nodes_[node].next.find(word);
    if (found != nodes_[node].next.end()) {
      node = found->second;
      continue;
    }
    const auto fresh = static_cast<std::uint32_t>(nodes_.size());
    nodes_[node].next.emplace(word, fresh);
    nodes_.emplace_back();
    node = fresh;
  }
  auto& here = nodes_[node].concepts;
  if (node != 0 && std::find(here.begin(), here.end(), id) == here.end()) here.push_back(id);
}

Faults Lexicon::add(const json& document) {
  Faults faults;
  if (!document.is_object() || !document.contains("concepts") || !document["concepts"].is_array())
    return {{"wrong-type", "/concepts", "A list of concepts is needed.", ""}};
  if (document.contains("distinct"))
    for (const json& word : document["distinct"])
      if (word.is_string()) distinct_.emplace(fold(word.get_ref<const std::string&>()), true);
  if (document.contains("others"))
    for (const json& word : document["others"])
      if (word.is_string()) others_.emplace(root(fold(word.get_ref<const std::string&>())), true);
  if (document.contains("articles"))
    for (const json& word : document["articles"])
      if (word.is_string()) articles_.emplace(fold(word.get_ref<const std::string&>()), true);
  if (document.contains("aliases") && document["aliases"].is_object())
    for (const auto& [cut, full] : document["aliases"].items())
      for (const json& word : full)
        if (word.is_string()) aliases_[cut].push_back(word.get<std::string>());
  std::size_t index = 0;
  for (const json& entry : document["concepts"]) {
    const std::string at = "/concepts/" + std::to_string(index++);
    if (!entry.is_object() || !entry.contains("id") || !entry["id"].is_string()) {
      faults.push_back({"missing-member", at + "/id", "A concept needs an id.", ""});
      continue;
    }
    Concept made;
    made.id = entry["id"].get<std::string>();
    made.unit = starts(made.id, "unit:");
    made.aside = entry.contains("aside") && entry["aside"].is_boolean() && entry["aside"].get<bool>();
    const std::string role =
        entry.contains("role") && entry["role"].is_string() ? entry["role"].get<std::string>() : "";
    const auto known = std::find_if(roles.begin(), roles.end(), [&](const auto& r) { return r.first == role; });
    if (known == roles.end()) faults.push_back({"unknown-name", at + "/role", "This role is not known.", ""});
    else made.role = known->second;
    if (entry.contains("value") && entry["value"].is_string()) made.value = entry["value"].get<std::string>();
    if (ids_.count(made.id) != 0) {
      faults.push_back({"duplicate", at + "/id", "There is a concept \"" + made.id + "\" already.", ""});
      continue;
    }
    const Id id = static_cast<Id>(concepts_.size());
    ids_.emplace(made.id, id);
    concepts_.push_back(std::move(made));
    for (const auto& [name, terms] : entry.items()) {
      if (!terms.is_array()) continue;
      for (const json& term : terms)
        if (term.is_string() && !term.get_ref<const std::string&>().empty())
          add_term(term.get_ref<const std::string&>(), id);
        else faults.push_back({"wrong-type", at + "/" + name, "Terms are words in quotes.", ""});
    }
  }
  return faults;
}

bool Lexicon::same_ideas(Word a, Word b) const {
  if (a == b) return true;
  const auto first = nodes_[0].next.find(a), second = nodes_[0].next.find(b);
  if (first == nodes_[0].next.end() || second == nodes_[0].next.end()) return false;
  const auto& ideas = nodes_[first->second].concepts;
  return !ideas.empty() && ideas == nodes_[second->second].concepts;
}

Lexicon::Word Lexicon::shortened(const std::string& text, bool dotted) const {
  const std::string cut_skeleton = skeleton_of(text);
  int best = 0;
  std::size_t length = 0;
  Word word = no_word;
  bool tied = false;
  for (const Known& known : by_letter_[static_cast<std::size_t>(text[0] - 'a')]) {
    const int quality = shortening(text, cut_skeleton, known.text, known.skeleton, dotted);
    if (quality == 0 || quality < best || (quality == best && known.text.size() > length)) continue;
    tied = quality == best && known.text.size() == length && word != no_word && !same_ideas(known.word, word);
    best = quality;
    length = known.text.size();
    word = known.word;
  }
  return tied ? no_word : word;
}

Lexicon::Word Lexicon::misspelt(const std::string& text) const {
  const unsigned most = text.size() >= 9 ? 2 : 1;
  const std::string skeleton = skeleton_of(text);
  unsigned best = 2 * most + 2; // slips of vowels and doubled letters count half an edit less than others
  Word word = no_word;
  bool tied = false;
  for (const Known& known : by_letter_[static_cast<std::size_t>(text[0] - 'a')]) {
    if (text.size() <= 5 && known.text.size() != text.size()) continue; // "layer" is no "lawyer"
    const unsigned enough = std::min(most, best / 2);
    const unsigned edits = edit_distance(text, known.text, enough);
    if (edits > enough) continue;
    const unsigned cost = 2 * edits + (known.skeleton == skeleton ? 0 : 1);
    if (cost > best) continue;
    tied = cost == best && word != no_word && (tied || !same_ideas(known.word, word));
    best = cost;
    word = known.word;
  }
  return tied ? no_word : word;
}

Lexicon::Resolved Lexicon::resolve(const Token& token, bool dotted) const {
  Resolved out;
  out.words[0] = known_word(token.text);
  if (token.word() && token.capitals) out.words[1] = known_word("^" + token.text);
  if (!out.any() || aliases_.count(token.text) != 0) {
    const std::vector<std::string> full = written_out(token.text);
    for (std::size_t i = 0; i < full.size() && i < 2; ++i) out.words[2 + i] = known_word(full[i]);
  }
  if (!guesses_ || !token.word() || out.any() || token.text.size() < 3 || !all_letters(token.text)) return out;
  const std::string base = root(token.text);
  if (others_.count(base) != 0) return out;
  const bool long_enough = token.text.size() >= 5;
  out.match = Match::misspelt;
  if (long_enough)
    for (const std::string& form : {token.text, base})
      if (out.words[0] = form.size() >= 4 ? misspelt(form) : no_word; out.words[0] != no_word) return out;
  out.words[0] = shortened(token.text, dotted);
  out.match = Match::shortened;
  return out;
}

/// Follows the terms from `node` and keeps the longest that ends here or later.
void Lexicon::walk(const std::vector<Resolved>& words, std::size_t at, std::uint32_t node, Match match,
                   Walk& best) const {
  if (!nodes_[node].concepts.empty() && (best.node == 0 || at > best.last + 1)) best = {node, at - 1, match};
  if (at >= words.size()) return;
  if (node != 0 && words[at].far) return; // terms do not reach across columns
  for (const Word word : words[at].words) {
    if (word == no_word) continue;
    const auto found = nodes_[node].next.find(word);
    if (found != nodes_[node].next.end()) walk(words, at + 1, found->second, std::max(match, words[at].match), best);
  }
  if (node == 0 || !words[at].article || at + 1 >= words.size() || words[at + 1].far) return;
  for (const Word word : words[at + 1].words) {
    if (word == no_word) continue;
    const auto found = nodes_[node].next.find(word);
    if (found != nodes_[node].next.end())
      walk(words, at + 2, found->second, std::max(match, words[at + 1].match), best);
  }
}

void Lexicon::add_inner(std::vector<Mention>& out, const std::vector<Token>& tokens,
                        const std::vector<std::size_t>& stream, std::size_t from, std::size_t to) const {
  for (std::size_t k = from; k <= to; ++k) {
    if (tokens[stream[k]].text.size() < 3) continue;
    for (const Id id : ideas_of(tokens[stream[k]])) {
      const Role role = concepts_[id].role;
      if (role != Role::thing && role != Role::part) continue;
      const auto at = static_cast<std::uint16_t>(stream[k]);
      out.push_back({id, at, at, Match::exact, true});
    }
  }
}

std::vector<Mention> Lexicon::mentions(const std::vector<Token>& tokens) const {
  const std::vector<std::size_t> stream = spoken(tokens);
  std::vector<Resolved> words(stream.size());
  for (std::size_t i = 0; i < stream.size(); ++i) {
    const std::size_t next = stream[i] + 1;
    words[i] = resolve(tokens[stream[i]], next < tokens.size() && tokens[next].is('.') && tokens[next].glued);
    words[i].far = tokens[stream[i]].far;
    words[i].article = articles_.count(tokens[stream[i]].text) != 0;
  }
  std::vector<Mention> out;
  for (std::size_t i = 0; i < stream.size();) {
    Walk best;
    walk(words, i, 0, Match::exact, best);
    bool names_thing = false;
    for (const Id id : nodes_[best.node].concepts) {
      const Role role = concepts_[id].role;
      names_thing = names_thing || role == Role::thing || role == Role::part || role == Role::place ||
                    role == Role::mark || role == Role::plain;
      out.push_back(
          {id, static_cast<std::uint16_t>(stream[i]), static_cast<std::uint16_t>(stream[best.last]), best.match});
    }
    if (best.node != 0 && best.last > i && !names_thing) add_inner(out, tokens, stream, i, best.last);
    i = best.node == 0 ? i + 1 : best.last + 1;
  }
  return out;
}

} // namespace wearline
