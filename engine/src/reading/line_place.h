#pragma once
// The rooms a line names.

#include "reading/sense.h"

#include <string>
#include <vector>

namespace wearline {

/// The rooms of the line, joined by "; ", as they matter for a charge to this element (null: none is known).
std::string place_of(const std::vector<Token>& tokens, const Sense& line, const std::vector<Mention>& mentions,
                     const RecognizerRules& rules, const ElementRule* element);

} // namespace wearline
