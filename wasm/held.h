#pragma once
// What both modules of the page share: the rules a module holds (held.cpp binds the calls that both have).

#include "wearline/engine.h"

namespace wearline {

/// The rules this module holds; the page adds the shared ones and the packs it needs.
Rulebook& held_rules();

} // namespace wearline
