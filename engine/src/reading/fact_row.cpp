#include "reading/fact_row.h"

#include <algorithm>
#include <string>

namespace wearline {

namespace {

/// One of a row, up to the item before `end`. `count` 0: of unknown number ("all bedrooms").
struct Member {
  std::size_t end = 0;
  std::int64_t count = 0;
  std::int64_t numbered = 0;      ///< rooms by their numbers: "bedrooms 1 and 2"
  bool sure = true;               ///< "DR" is a room only beside another
  std::string head;               ///< the last word of a thing's name, without its s
  std::vector<Lexicon::Id> ideas; ///< of a thing; of one whose name comes later none ("1 large and 2 small blinds")
};

class RowReader {
public:
  RowReader(const MarkedText& text, const std::vector<FactItem>& items, const FactRules& rules, const Lexicon& charges)
      : text_(text), items_(items), rules_(rules), lexicon_(charges), named_(items.size()) {
    std::size_t at = 0;
    std::vector<std::size_t> item_of(text.tokens.size(), 0);
    for (std::size_t t = 0; t < item_of.size(); ++t) {
      while (at + 1 < items.size() && items[at].last < t) ++at;
      item_of[t] = at;
    }
    for (const Mention& m : text.charge)
      if (!items.empty() && items[item_of[m.first]].first == m.first)
        named_[item_of[m.first]].push_back({m.concept_id, lexicon_.at(m.concept_id).role, item_of[m.last]});
  }

  std::optional<NamedRow> rooms() const {
    std::optional<NamedRow> row;
    bool by_room = false, by_piece = false;
    for (std::size_t k = 0; k < items_.size();) {
      std::vector<Member> members;
      const std::size_t end = row_from(
          k, [&](std::size_t at) { return room(at); }, members);
      const bool sure = std::any_of(members.begin(), members.end(), [](const Member& m) { return m.sure; });
      if (sure && (members.size() > 1 || members[0].numbered > 1)) {
        if (row) return std::nullopt;
        row = NamedRow{{1000 * sum(members), "room"}, std::uint16_t(k), std::uint16_t(end - 1), false};
        k = end;
        continue;
      }
      by_room = by_room || rules_.in_class(items_[k], "by-the-room");
      for (const Named& n : named_[k]) {
        if (n.role == Role::place && !rules_.wide_place(n.id)) return std::nullopt; // another place: what is where?
        by_piece = by_piece || (n.role == Role::thing && !of_rooms(k, n.last));
      }
      ++k;
    }
    if (row) row->only_where = by_piece || !by_room;
    if (row && row->all.thousandths == 0) return std::nullopt;
    return row;
  }

  std::optional<NamedRow> things() const {
    std::optional<NamedRow> row;
    for (std::size_t k = 0; k < items_.size();) {
      std::vector<Member> members;
      const std::size_t end = row_from(
          k, [&](std::size_t at) { return thing(at); }, members);
      if (members.size() > 1 && alike(members)) {
        if (row) return std::nullopt;
        row = NamedRow{{1000 * sum(members), "each"}, std::uint16_t(k), std::uint16_t(end - 1), false};
      }
      k = std::max(end, k + 1);
    }
    return row;
  }

private:
  struct Named {
    Lexicon::Id id;
    Role role;
    std::size_t last; ///< item
  };

  static std::int64_t sum(const std::vector<Member>& members) {
    std::int64_t all = 0;
    for (const Member& m : members) {
      if (m.count == 0) return 0;
      all += m.count;
    }
    return all;
  }

  /// All have a name in common, or its last word ("2 door keys, 1 mailbox key"); the last one has one.
  static bool alike(const std::vector<Member>& members) {
    const Member& last = members.back();
    const auto same = [&](auto&& shares) {
      return std::all_of(members.begin(), members.end(), [&](const Member& m) { return m.ideas.empty() || shares(m); });
    };
    return (!last.head.empty() && same([&](const Member& m) { return m.head == last.head; })) ||
           std::any_of(last.ideas.begin(), last.ideas.end(), [&](Lexicon::Id id) {
             return same(
                 [&](const Member& m) { return std::find(m.ideas.begin(), m.ideas.end(), id) != m.ideas.end(); });
           });
  }

  /// Members from here on with what joins them; gives the item after the last.
  template <class Read> std::size_t row_from(std::size_t at, Read&& read, std::vector<Member>& members) const {
    std::size_t end = at;
    for (;;) {
      const std::optional<Member> one = read(at);
      if (!one) return end;
      members.push_back(*one);
      end = one->end;
      at = joined(end);
      if (at == end) return end;
    }
  }

  /// The item after what joins two of a row; the same where nothing does. A "/" inside a word is a name
  /// ("living/dining").
  std::size_t joined(std::size_t at) const {
    std::size_t k = at;
    const auto sign = [&](char c) { return k < items_.size() && items_[k].is(c); };
    const auto word = [&] { return k < items_.size() && rules_.in_class(items_[k], "row-word"); };
    if (sign('/')) return text_.tokens[items_[k].first].glued ? at : k + 1;
    if (sign('+') || sign('&') || word()) return k + 1;
    if (!sign(',')) return at;
    ++k;
    return sign('&') || sign('+') || word() ? k + 1 : k;
  }

  /// A whole number of things, no sum.
  std::int64_t whole_at(std::size_t at, bool counts = true) const {
    if (at >= items_.size() || (counts && items_[at].no_count) || items_[at].kind != FactItem::Kind::number) return 0;
    const FactItem& n = items_[at];
    if ((n.number != NumberKind::plain && n.number != NumberKind::reference) || n.currency || n.rate || n.hyphened ||
        n.decimals > 0)
      return 0;
    return n.thousandths % 1000 == 0 && n.thousandths < 100'000 ? n.thousandths / 1000 : 0;
  }

  /// The item after the longest name here of the role that is wanted; `at` where there is none.
  template <class Want> std::size_t name_at(std::size_t at, Want&& want) const {
    std::size_t end = at;
    if (at < items_.size())
      for (const Named& n : named_[at])
        if (want(n)) end = std::max(end, n.last + 1);
    return end;
  }

  /// "the living room", "2 bedrooms", "bedrooms 1 and 2"
  std::optional<Member> room(std::size_t at) const {
    if (at < items_.size() && rules_.in_class(items_[at], "the-word")) ++at;
    Member m;
    m.count = whole_at(at);
    const bool counted = m.count > 0;
    if (counted) ++at;
    m.end = name_at(at, [&](const Named& n) { return n.role == Role::place && rules_.is_room(n.id); });
    const std::size_t longest = name_at(at, [](const Named& n) { return n.role == Role::place; });
    if (longest > m.end) return std::nullopt; // "hall closet"
    if (m.end == at && at < items_.size() &&
        (rules_.in_class(items_[at], "rooms") || (!counted && rules_.in_class(items_[at], "room-letters")))) {
      m.sure = counted || rules_.in_class(items_[at], "rooms");
      m.end = at + 1;
    }
    if (m.end == at) return std::nullopt;
    if (counted) return m;
    while (const std::int64_t name = whole_at(m.end, false)) { // "bedrooms 1, 2 and 3"
      if (name > 9 || items_[m.end].worded || next_to_name(m.end + 1)) break;
      m.count = ++m.numbered;
      ++m.end;
      const std::size_t next = joined(m.end);
      if (next == m.end || whole_at(next, false) == 0 || next_to_name(next + 1)) return m;
      m.end = next;
    }
    const std::string& word = items_[m.end - 1].text;
    if (m.count == 0 && !(word.size() > 2 && word.back() == 's')) m.count = 1; // "bedrooms": who knows how many
    return m;
  }
  /// Whether the number before this item counts what follows.
  bool next_to_name(std::size_t at) const {
    const auto counts = [](const Named& n) {
      return n.role == Role::thing || n.role == Role::part || n.role == Role::place;
    };
    return at < items_.size() && (std::any_of(named_[at].begin(), named_[at].end(), counts) ||
                                  rules_.in_class(items_[at], "rooms") || rules_.in_class(items_[at], "measure-word"));
  }

  /// "2 door keys", "1 large"
  std::optional<Member> thing(std::size_t at) const {
    Member m;
    m.count = whole_at(at);
    if (m.count == 0) return std::nullopt;
    const auto is_thing = [](const Named& n) { return n.role == Role::thing || n.role == Role::part; };
    constexpr std::size_t most_words = 4;
    std::size_t k = at + 1;
    for (; k < items_.size() && k <= at + most_words && items_[k].kind == FactItem::Kind::word; ++k) {
      if (rules_.in_class(items_[k], "links") || rules_.in_class(items_[k], "measure-word")) break;
      const std::size_t end = name_at(k, is_thing);
      if (end > k) {
        m.ideas.clear();
        for (std::size_t inner = k; inner < end; ++inner) // "mailbox key" is a key
          for (const Named& n : named_[inner])
            if (is_thing(n)) m.ideas.push_back(n.id);
        m.end = end;
        k = end - 1;
      } else if (!m.ideas.empty()) {
        break;
      }
    }
    if (!m.ideas.empty()) {
      m.head = items_[m.end - 1].text;
      if (m.head.size() > 3 && m.head.back() == 's') m.head.pop_back();
      return m;
    }
    const bool sized = at + 1 < items_.size() &&
                       (rules_.in_class(items_[at + 1], "big-word") || rules_.in_class(items_[at + 1], "light-word"));
    if (!sized) return std::nullopt;
    m.end = at + 2;
    return m;
  }

  /// Whether all its words name what is counted by the room, or a part of a room: carpet, walls.
  bool of_rooms(std::size_t first, std::size_t last) const {
    for (std::size_t k = first; k <= last; ++k)
      if (!rules_.in_class(items_[k], "by-the-room") && !rules_.in_class(items_[k], "of-the-room")) return false;
    return true;
  }

  const MarkedText& text_;
  const std::vector<FactItem>& items_;
  const FactRules& rules_;
  const Lexicon& lexicon_;
  std::vector<std::vector<Named>> named_; ///< by the item they begin at
};

} // namespace

NamedRows named_rows(const MarkedText& text, const std::vector<FactItem>& items, const FactRules& rules,
                     const Lexicon& charges) {
  const RowReader reader(text, items, rules, charges);
  return {reader.rooms(), reader.things()};
}

} // namespace wearline
