#pragma once
// The sentences of a law pack in another language: rules/law-es/<J>.json (format: rules/law/README.md, "In Spanish").

#include "law/pack.h"
#include "wearline/fault.h"

#include <string_view>

namespace wearline {

/// Puts the Spanish sentences of a file beside the English ones of `pack`. A rule, fact or event that the pack does not
/// have is a fault, as is a sentence where English says nothing; a sentence that is missing is none: English stands in
/// for it.
Faults translate_pack(Pack& pack, std::string_view json);

/// The same for the rules of a layer (`layer`: its id) that lies over the pack. It may be done again.
Faults translate_layer(Pack& pack, std::string_view layer, std::string_view json);

} // namespace wearline
