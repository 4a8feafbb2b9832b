#include "format/older_names.h"

#include "format/version_1_table.h"

#include "json/json_text.h"
#include <algorithm>

namespace wearline {

/// The table as places, made once.
class OlderTable {
public:
  OlderTable() {
    auto parsed = parse_json(version_1_table);
    if (const auto* table = std::get_if<Json>(&parsed)) {
      table_ = *table;
      for (const auto& document : table_.at("documents").items())
        fill(documents_.emplace_back(document.key(), OlderPlace()).second, document.value());
    }
  }
  const OlderPlace& document(std::string_view name) const {
    static const OlderPlace nothing;
    for (const auto& [known, place] : documents_)
      if (known == name) return place;
    return nothing;
  }

private:
  static const Json* find(const Json& object, const char* name) {
    const auto found = object.find(name);
    return found == object.end() ? nullptr : &*found;
  }
  static std::string text(const Json& json) {
    const auto* text = json.get_ptr<const std::string*>();
    return text ? *text : std::string();
  }

  void fill(OlderPlace& place, const Json& node) {
    if (const Json* shape = find(node, "shape")) fill_members(place, table_["shapes"][text(*shape)]);
    if (const Json* members = find(node, "members")) fill_members(place, *members);
    if (const Json* lists = find(node, "words"))
      for (const Json& list : *lists)
        for (const auto& word : table_["words"][text(list)].items())
          place.words_.emplace_back(word.key(), text(word.value()));
    if (const Json* shape = find(node, "members-of"))
      for (const auto& member : table_["shapes"][text(*shape)].items())
        if (const Json* was = find(member.value(), "was")) place.words_.emplace_back(member.key(), text(*was));
    place.pointers_ = find(node, "pointer") != nullptr;
  }

  void fill_members(OlderPlace& place, const Json& members) {
    for (const auto& item : members.items()) {
      auto below = std::make_unique<OlderPlace>();
      fill(*below, item.value());
      if (item.key() == "*") {
        place.any_ = std::move(below);
        continue;
      }
      OlderPlace::Member member;
      member.now = member.was = item.key();
      if (const Json* was = find(item.value(), "was")) {
        member.added = was->is_null();
        member.was = text(*was);
      }
      const bool empty = below->members_.empty() && !below->any_ && below->words_.empty() && !below->pointers_;
      if (!empty) member.place = std::move(below);
      place.members_.push_back(std::move(member));
    }
    std::sort(place.members_.begin(), place.members_.end(),
              [](const OlderPlace::Member& a, const OlderPlace::Member& b) { return a.now < b.now; });
  }

  Json table_;
  std::vector<std::pair<std::string, OlderPlace>> documents_;
};

const OlderPlace::Member* OlderPlace::member(std::string_view now) const {
  const auto found = std::lower_bound(members_.begin(), members_.end(), now,
                                      [](const Member& m, std::string_view name) { return m.now < name; });
  return found == members_.end() || found->now != now ? nullptr : &*found;
}

std::string_view OlderPlace::was(std::string_view name) const {
  const Member* found = member(name);
  return found && !found->added ? std::string_view(found->was) : name;
}

std::string_view OlderPlace::now(std::string_view was) const {
  for (const Member& m : members_)
    if (m.was == was && !m.added) return m.now;
  return member(was) ? std::string_view() : was;
}

bool OlderPlace::added(std::string_view name) const {
  const Member* found = member(name);
  return found && found->added;
}

const OlderPlace* OlderPlace::below(std::string_view name) const {
  if (const Member* found = member(name)) return found->place.get();
  return any_.get();
}

std::string_view OlderPlace::word_was(std::string_view word) const {
  for (const auto& [now, was] : words_)
    if (now == word) return was;
  return word;
}

std::string_view OlderPlace::word_now(std::string_view was) const {
  for (const auto& [now, old] : words_)
    if (old == was) return now;
  for (const auto& [now, old] : words_)
    if (now == was) return {};
  return was;
}

const OlderPlace& older_document(std::string_view name) {
  static const OlderTable table;
  return table.document(name);
}

std::string older_pointer(std::string_view pointer) {
  std::string out;
  const OlderPlace* place = &older_document("case");
  while (!pointer.empty() && pointer.front() == '/') {
    const std::string_view segment = pointer.substr(1, pointer.substr(1).find('/'));
    pointer.remove_prefix(segment.size() + 1);
    const bool position = !segment.empty() && segment.find_first_not_of("0123456789") == std::string_view::npos;
    out += '/';
    out += place && !position ? place->was(segment) : segment;
    if (place && !position) place = place->below(segment);
  }
  return out;
}

namespace {

/// Copies a JSON text from front to back, looking up what each name and text was called where it stands.
class Translator {
public:
  explicit Translator(std::string_view json) : json_(json) { out_.reserve(json.size()); }

  std::string run(const OlderPlace& document) {
    value(&document);
    out_.append(json_.substr(at_));
    return std::move(out_);
  }

private:
  bool ends() const { return at_ >= json_.size(); }
  void spaces() {
    while (!ends() && (json_[at_] == ' ' || json_[at_] == '\n')) out_ += json_[at_++];
  }
  void copy_one() { out_ += json_[at_++]; }

  /// The text that begins here, without its quotation marks and as it is escaped; stands behind it then.
  std::string_view text() {
    const std::size_t from = at_ + 1;
    std::size_t end = json_.find('"', from);
    while (end != std::string_view::npos && escaped(from, end)) end = json_.find('"', end + 1);
    if (end == std::string_view::npos) end = json_.size();
    at_ = std::min(end + 1, json_.size());
    return json_.substr(from, end - from);
  }
  bool escaped(std::size_t from, std::size_t mark) const {
    std::size_t strokes = 0;
    while (mark - strokes > from && json_[mark - strokes - 1] == '\\') ++strokes;
    return strokes % 2 == 1;
  }
  void put_text(std::string_view text) {
    out_ += '"';
    out_.append(text);
    out_ += '"';
  }

  void value(const OlderPlace* place) {
    spaces();
    if (ends()) return;
    if (!place) return untouched();
    switch (json_[at_]) {
    case '{':
      return object(*place);
    case '[':
      return list(*place);
    case '"': {
      const std::string_view said = text();
      if (place->holds_pointers()) return put_text(older_pointer(said));
      return put_text(place->word_was(said));
    }
    default:
      out_.append(place->word_was(scalar()));
    }
  }

  std::string_view scalar() {
    const std::size_t from = at_;
    at_ = std::min(json_.find_first_of(",]} \n", from), json_.size());
    return json_.substr(from, at_ - from);
  }

  /// A value in which nothing was called otherwise.
  void untouched() {
    const std::size_t from = at_;
    skip();
    out_.append(json_.substr(from, at_ - from));
  }
  void skip() {
    std::size_t depth = 0;
    do {
      const std::size_t mark = json_.find_first_of("{}[]\",", at_);
      if (mark == std::string_view::npos) {
        at_ = json_.size();
        return;
      }
      if (depth == 0 && (json_[mark] == ',' || json_[mark] == '}' || json_[mark] == ']')) {
        at_ = mark; // a number or a word ended
        return;
      }
      at_ = mark;
      if (json_[mark] == '"') text();
      else {
        ++at_;
        if (json_[mark] == '{' || json_[mark] == '[') ++depth;
        else if (json_[mark] != ',') --depth;
      }
    } while (depth > 0 && !ends());
  }

  void list(const OlderPlace& place) {
    copy_one();
    for (;;) {
      spaces();
      if (ends()) return;
      if (json_[at_] == ']') return copy_one();
      if (json_[at_] == ',') copy_one();
      else value(&place);
    }
  }

  void object(const OlderPlace& place) {
    copy_one();
    for (;;) {
      spaces();
      if (ends()) return;
      if (json_[at_] == '}') return copy_one();
      if (json_[at_] != '"') {
        copy_one();
        continue;
      }
      const std::string_view name = text();
      if (place.added(name)) {
        leave_out();
        continue;
      }
      put_text(place.was(name));
      spaces();
      if (!ends()) copy_one(); // the colon
      value(place.below(name));
    }
  }
  /// A member that version 1 does not have: its value, and the comma behind it or, of the last one, before it.
  void leave_out() {
    ++at_;
    skip();
    const bool more = !ends() && json_[at_] == ',';
    if (more) ++at_;
    else if (const std::size_t end = out_.find_last_not_of(" \n"); end != std::string::npos && out_[end] == ',')
      out_.resize(end);
    while (more && !ends() && (json_[at_] == ' ' || json_[at_] == '\n')) ++at_;
  }

  std::string_view json_;
  std::size_t at_ = 0;
  std::string out_;
};

} // namespace

std::string in_older_names(std::string_view json, const OlderPlace& document) { return Translator(json).run(document); }

} // namespace wearline
