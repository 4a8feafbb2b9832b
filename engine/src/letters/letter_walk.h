#pragma once
// What was seen in a walk through the home before its end, as the tenant's letters say it.

#include "letters/letter_draft.h"

namespace wearline {

/// What a walk-through before the end shows of the charges, as far as it speaks for the tenant; nothing without one.
void add_walk_through(Draft& d);
/// Whether add_walk_through has something to say.
bool walk_through_shows(const Draft& d);
/// Warns the sender of the dangers of what was seen or charged: a letter that offers repair must not lead into one.
void warn_about_hazards(Draft& d);

} // namespace wearline
