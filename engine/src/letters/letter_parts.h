#pragma once
// The parts that several letters and papers share.

#include "letters/letter_draft.h"

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wearline {

/// The only tenant died: an heir or representative writes, who moved out of nothing.
bool tenant_died(const Draft& d);
/// The sentence that tells when the home was given back.
std::string_view moved_out(const Draft& d);

/// From whom, date, how it is sent, to whom.
void add_letter_head(Draft& d, std::string_view from, std::string_view to);
/// The caution that closes every letter, for the reader of the page.
void add_caution(Draft& d);
/// What the person should know of the law before sending: a weak pack, no pack, a right that lapsed, own last days.
void warn_about_law(Draft& d);
/// The closing of a tenant's letter: that nothing is admitted (the wording key `rights`, or none), signature, how it
/// was sent.
void add_tenant_closing(Draft& d, std::string_view rights);
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
/// Whether a letter to the landlord is what meets a deadline of the tenant: an application to an office does not.
bool answered_by_letter(const Draft& d, const DeadlineResult& deadline);
/// The deadline to object to a list or to answer it by letter; null if there is none.
const DeadlineResult* objection_deadline(const Draft& d);
/// A deadline of the tenant that a letter can meet: one that is open, else one that may be called for.
const DeadlineResult* own_deadline(const Draft& d, std::initializer_list<std::string_view> names);
/// "This letter is my objection in writing under A.R.S. § 33-1321(D)." A sender's own notice names its section plainly:
/// the sentence `under` with its {cite}, or `plain` where none may be named.
std::string own_notice(const Draft& d, const Rule& rule, std::string_view plain, std::string_view under);
/// "By October 21, 2026, the deposit and the list of charges were due. That is 21 days after ..."
std::string due_text(const Draft& d, const MissedDay& day);
/// What was done after a missed day, and when: "The list was sent on September 30, 2026."; empty where nothing was.
std::string done_late(const Draft& d, const MissedDay& day);
/// The names of the deadlines of one day, each once. A refund of the rest is no second thing beside the deposit.
std::vector<std::string> deadline_names(const Draft& d, const MissedDay& day);
/// Whether one of these charges is for cleaning.
bool has_cleaning(const Draft& d, const std::vector<std::size_t>& lines);
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

} // namespace wearline
