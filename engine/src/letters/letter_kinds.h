#pragma once
// The letters and papers: one table of their kinds, one writer for each, and the parts that several of them share.

#include "letters/letter_claim.h"

namespace wearline {

/// What a kind is: whose letter, whether it leaves the house, and what writes it.
struct KindTraits {
  LetterKind kind = LetterKind::question_charges;
  std::string_view name;
  bool tenant = false, landlord = false;
  bool sent = true;
  std::string_view event = {}; ///< the event of the case that its day of sending is; empty: none of its own
  void (*write)(Draft&) = nullptr;
};
const KindTraits& traits_of(LetterKind kind);

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

/// From whom, date, how it is sent, to whom.
void add_letter_head(Draft& d, std::string_view from, std::string_view to);
/// One list under a title; nothing if it is empty.
Paragraph* add_list(Draft& d, std::string id, ParagraphRole role, std::string title,
                    const std::vector<std::string>& items);
/// The caution that closes every letter, for the reader of the page.
void add_caution(Draft& d);
/// What the person should know of the law before sending: a weak pack, no pack, a right that lapsed, own last days.
void warn_about_law(Draft& d);
/// The closing of a tenant's letter: that nothing is admitted (the wording key `rights`, or none), signature, how it
/// was sent.
void add_tenant_closing(Draft& d, std::string_view rights);
/// What a walk-through before the end shows of the charges, as far as it speaks for the tenant; nothing without one.
void add_walk_through(Draft& d);
/// Whether add_walk_through has something to say.
bool walk_through_shows(const Draft& d);
/// Warns the sender of the dangers of what was seen or charged: a letter that offers repair must not lead into one.
void warn_about_hazards(Draft& d);
/// The signature alone.
void add_signature(Draft& d);
/// What was enclosed: the records that the sender holds.
void add_enclosures(Draft& d, bool about_charges);

/// The day to answer by: today and the days of rules/letters.json, never before the landlord's own last day.
Day reply_day(const Draft& d);
/// The last day of the landlord under a rule that starts with this event, if it happens today; empty if there is none.
std::optional<Day> day_started_by(const Draft& d, std::string_view event);
/// The waiting period before court that starts with the tenant's notice, if the law has one.
const DeadlineResult* notice_of_suit(const Draft& d);
/// The rule that asks for a written request, if the law has one that applies.
const Remark* request_rule(const Draft& d);
/// A deadline of the tenant that a letter can meet: one that is open, else one that may be called for.
const DeadlineResult* own_deadline(const Draft& d, std::initializer_list<std::string_view> names);
/// "This letter is my objection in writing under A.R.S. § 33-1321(D)." A sender's own notice names its section plainly:
/// the sentence `under` with its {cite}, or `plain` where none may be named.
std::string own_notice(const Draft& d, const Rule& rule, std::string_view plain, std::string_view under);
/// "small claims court", or the place's own body.
std::string forum(const Draft& d);
/// "By October 21, 2026, the deposit and the list of charges were due. That is 21 days after ..."
std::string due_text(const Draft& d, const MissedDay& day);
/// The names of the deadlines of one day, each once. A refund of the rest is no second thing beside the deposit.
std::vector<std::string> deadline_names(const Draft& d, const MissedDay& day);
/// The tenant's last letter, if one is on file; null if there is none.
const Event* earlier_letter(const Case& c);
/// "on September 5, 2026", "by certified mail on September 5, 2026".
std::string letter_sent(const Draft& d, const Event& letter);
/// That the letter is the written notice of the new address, with its section; empty where no law asks for one.
std::string address_notice(const Draft& d);
/// Whether a court decides here, and no office.
bool court_decides(const Draft& d);
/// Whether the tenant is still in the home, as far as dates say.
bool leaving(const Draft& d);
/// Every blank that a letter may have, by its id.
std::vector<std::string_view> blank_names();

} // namespace wearline
