#pragma once
// A walk through the home, room by room: what was seen, thing by thing, when the tenant moved in and before moving out.

#include "case/charge.h"
#include "values/calendar.h"
#include "values/money.h"
#include "values/tri.h"

#include <optional>
#include <string>
#include <vector>

namespace wearline {

/// A thing seen in a room. States are fine, worn, damaged, dirty or missing; empty: not looked at.
struct SeenThing {
  std::string id, room; ///< `room`: the id of a room of the walk-through
  std::string element, finding;
  std::string move_in, move_out;
  ChargeCause cause = ChargeCause::unknown;
  std::string note;
  std::optional<DaySpan> installed;
  std::optional<Money> quote;       ///< what somebody asks for putting it right
  std::optional<DaySpan> seen;      ///< when it was looked at
  std::optional<DaySpan> put_right; ///< when it was repaired or cleaned
  Tri on_their_list;                ///< it stands on the landlord's own inspection list
  std::string line;                 ///< id of the charge that is about it; empty: none
};

struct SeenRoom {
  std::string id, kind, name;
};

struct WalkThrough {
  std::optional<DaySpan> on;         ///< the day of the walk-through
  std::optional<DaySpan> finished;   ///< set once the tenant has left
  Tri list_given;                    ///< whether the landlord gave a written list after an inspection
  std::optional<DaySpan> list_dated; ///< the day of that list
  Tri built_before_1978;
  std::vector<SeenRoom> rooms;
  std::vector<SeenThing> things;
  std::vector<std::string> leaving; ///< what of the leaving day is done
};

} // namespace wearline
