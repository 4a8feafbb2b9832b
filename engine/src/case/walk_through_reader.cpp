#include "case/walk_through_reader.h"

#include <set>

namespace wearline {

namespace {

const NameSet& states_seen() {
  static const NameSet names{"fine", "worn", "damaged", "dirty", "missing"};
  return names;
}

void read_seen_thing(const Cursor& c, SeenThing& thing, const CaseNames& names) {
  if (!c.object({"id", "room", "element", "finding", "conditionAtMoveIn", "conditionAtMoveOut", "cause", "note",
                 "installed", "quote", "inspected", "remedied", "onLandlordList", "line"}))
    return;
  take(c, "id", thing.id);
  take(c, "room", thing.room);
  take_name(c, "element", thing.element, names.elements, "thing");
  if (thing.element.empty()) c.fault("missing-member", "A thing that was seen needs \"element\".");
  if (c.has("finding")) {
    static const NameSet any;
    const auto of_element = names.findings.find(thing.element);
    read_name(c.member("finding"), thing.finding, of_element == names.findings.end() ? any : of_element->second,
              "finding of this thing");
  }
  take_name(c, "conditionAtMoveIn", thing.move_in, states_seen(), "state");
  take_name(c, "conditionAtMoveOut", thing.move_out, states_seen(), "state");
  take_word<charge_causes>(c, "cause", thing.cause, "cause");
  take(c, "note", thing.note);
  take(c, "installed", thing.installed);
  take(c, "quote", thing.quote);
  take(c, "inspected", thing.seen);
  take(c, "remedied", thing.put_right);
  take(c, "onLandlordList", thing.on_their_list);
  take(c, "line", thing.line);
}

/// The ids of a list are each used once; an empty one is left to the reader of the file.
template <class Item> void each_once(const Cursor& c, const std::vector<Item>& items) {
  std::set<std::string_view> ids;
  for (std::size_t i = 0; i < items.size(); ++i)
    if (!items[i].id.empty() && !ids.insert(items[i].id).second)
      c.item(i).fault("duplicate-id", "Two of these have the id \"" + items[i].id + "\". Give each its own.");
}

/// The items of a list, at most `most`.
template <class Item, class Read>
void read_list(const Cursor& c, std::vector<Item>& out, std::size_t most, Read&& read_item) {
  if (!c.array()) return;
  if (c.members().size() > most)
    return c.fault("too-many-lines", "A walk-through holds at most " + std::to_string(most) + " of these.");
  for (std::size_t i = 0; i < c.members().size(); ++i) read_item(c.item(i), out.emplace_back());
}

} // namespace

void read_walk_through(const Cursor& c, WalkThrough& out, const CaseNames& names) {
  if (!c.object({"date", "completed", "inspectionListGiven", "inspectionListDated", "builtBefore1978", "rooms", "items",
                 "moveOutTasks"}))
    return;
  take(c, "date", out.on);
  take(c, "completed", out.finished);
  take(c, "inspectionListGiven", out.list_given);
  take(c, "inspectionListDated", out.list_dated);
  take(c, "builtBefore1978", out.built_before_1978);
  if (c.has("rooms")) {
    read_list(c.member("rooms"), out.rooms, max_lines, [](const Cursor& room, SeenRoom& seen) {
      if (!room.object({"id", "kind", "name"})) return;
      take(room, "id", seen.id);
      take(room, "kind", seen.kind);
      take(room, "name", seen.name);
    });
    each_once(c.member("rooms"), out.rooms);
  }
  if (c.has("items")) {
    read_list(c.member("items"), out.things, max_lines,
              [&](const Cursor& thing, SeenThing& seen) { read_seen_thing(thing, seen, names); });
    each_once(c.member("items"), out.things);
  }
  if (c.has("moveOutTasks"))
    read_list(c.member("moveOutTasks"), out.leaving, 100,
              [](const Cursor& done, std::string& name) { read(done, name); });
}

} // namespace wearline
