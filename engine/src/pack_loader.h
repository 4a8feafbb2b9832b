#pragma once
// The members that facts and events share in facts.json and in packs.

#include "fields.h"
#include "wearline/registry.h"

namespace wearline {

FactInfo read_fact(Fields& f);
EventInfo read_event(Fields& f);

} // namespace wearline
