#pragma once
// The members that facts and events share in facts.json and in packs.

#include "law/registry.h"

#include "json/fields.h"

namespace wearline {

FactInfo read_fact(Fields& f);
EventInfo read_event(Fields& f);

} // namespace wearline
