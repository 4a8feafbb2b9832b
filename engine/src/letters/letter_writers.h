#pragma once
// The letters and papers themselves: one writer for each, told apart in letter.cpp.

#include "letters/letter_draft.h"

namespace wearline {

/// A letter from the tenant that asks for money or answers charges.
void write_money_letter(Draft& d);
/// Notes from the tenant that ask for something else.
void write_papers_request(Draft& d);
void write_new_address(Draft& d);
void write_inspection_request(Draft& d);
/// The landlord's statement of charges, and the note that goes with it.
void write_itemized_statement(Draft& d);
void write_cover_note(Draft& d);
/// Sheets that stay with their reader.
void write_adviser_note(Draft& d);
void write_court_sheet(Draft& d);

} // namespace wearline
