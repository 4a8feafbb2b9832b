#pragma once
// The letters and papers, one writer for each side's own.

#include "letters/letter_draft.h"

namespace wearline {

/// A letter from the tenant to the landlord.
void write_tenant_letter(Draft& d);
/// The landlord's statement of charges, and the note that goes with it.
void write_itemized_statement(Draft& d);
void write_cover_note(Draft& d);
/// Sheets that stay with their reader.
void write_adviser_note(Draft& d);
void write_small_claims_sheet(Draft& d);

/// Parts that several of them share.
void add_letter_head(Draft& d, std::string_view from, std::string_view to);
/// One list under a title; nothing if it is empty.
Paragraph* add_list(Draft& d, std::string id, ParagraphRole role, std::string title,
                    const std::vector<std::string>& items);
/// The caution that closes every letter, for the reader of the page.
void add_caution(Draft& d);
/// What the law may still change or end; what could not be said firmly.
void warn_about_law(Draft& d);

/// The day to answer by: today and the days of rules/letters.json.
Day reply_day(const Draft& d);
/// The day a letter sent today gives the landlord under a rule that runs from the tenant's written request; empty if
/// there is none.
std::optional<Day> day_from_request(const Draft& d);
/// The waiting period before court that starts with the tenant's notice, if the law has one.
const DutyResult* notice_of_suit(const Draft& d);
/// The rule that asks for a written request, if the law has one that applies.
const Remark* request_rule(const Draft& d);

/// What a letter asks to be paid: the likely shortfall, or all that was kept where a firm rule lets nothing be kept.
struct Claim {
  Money sum;
  Money sure;             ///< the part that hangs on no open fact
  bool forfeited = false; ///< nothing may be kept
  bool known = false;     ///< the deposit is known
};
Claim claim_of(const Draft& d);

} // namespace wearline
