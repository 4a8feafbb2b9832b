// The landlord's papers: the statement of charges and the note that goes with it. A paper never argues against its
// sender and lists no proof that was not marked; what weakens it stands in the warnings, to be read before it goes out.

#include "law/applies.h"
#include "law/facts.h"
#include "letters/letter_groups.h"
#include "letters/letter_late.h"
#include "letters/letter_parts.h"
#include "letters/letter_writers.h"
#include "values/ascii.h"

#include <algorithm>

namespace wearline {

namespace {

bool among(const std::vector<std::string>& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

bool names_wear(const std::string& words, const LetterRules& rules) {
  std::string lower(words);
  std::transform(lower.begin(), lower.end(), lower.begin(), to_lower);
  for (const auto& [language, phrases] : rules.wear_words)
    for (const std::string& phrase : phrases)
      if (lower.find(phrase) != std::string::npos) return true;
  return false;
}

/// What may fairly be charged for a line: the likely fair sum; where nothing supports one, the most that may be fair,
/// which the warnings call at risk. Nothing where the charge calls itself ordinary wear.
Money fair_charge(const Draft& d, std::size_t i) {
  const LineAssessment& line = d.a.lines[i];
  if (names_wear(d.c.lines[i].text, d.rules.letters)) return {};
  const Money fair = line.result.no_middle ? line.result.fair.high() : line.result.fair.likely();
  return fair > Money() && fair < small_change() ? Money() : fair; // small change is no charge
}

/// A rule of the papers that a statement in this case has to meet, or may have to.
bool has_to_meet(const DocumentRule& rule, const Draft& d) {
  return applies(rule, d.a.law->view()) != Tri::no && d.law.footing(rule) != Footing::none;
}

/// The rules a statement here has to meet.
std::vector<const DocumentRule*> rules_to_meet(const Draft& d) {
  std::vector<const DocumentRule*> out;
  if (d.law.there())
    for (const DocumentResult& document : d.a.law->documents())
      if (has_to_meet(*document.rule, d)) out.push_back(document.rule);
  return out;
}

bool wants(const Draft& d, std::string_view document) {
  const auto all = rules_to_meet(d);
  return std::any_of(all.begin(), all.end(), [&](const DocumentRule* rule) {
    return std::any_of(rule->requires_all.begin(), rule->requires_all.end(),
                       [&](DocumentId id) { return d.rules.registry.documents[index(id)].id == document; });
  });
}

Quantity in_hours(Quantity hours) {
  if (hours.unit.empty()) hours.unit = "hour";
  return hours;
}

/// Nothing may be kept here but with the tenant's agreement, and none was entered: the statement asks for it.
bool needs_agreement(const Draft& d) {
  return wants(d, "tenant-consent") && !among(d.c.statement.enclosed, "tenant-consent") &&
         told(d.c, "tenant-consented") != Tri::yes && told(d.c, "tenant-agreed-in-writing") != Tri::yes;
}

class LandlordPaper {
public:
  explicit LandlordPaper(Draft& d)
      : d_(d), right_(landlords_right(d)), any_(all_charges() > Money()), asks_(any_ && needs_agreement(d)) {}

  void write() {
    warn_before();
    const bool claims = any_ && gives_notice_of_claim();
    head(claims  ? "letter.subject.claim-notice"
         : asks_ ? "letter.subject.agreement"
         : any_  ? "letter.subject.itemized-statement"
                 : "letter.subject.cover-note");
    if (any_) fixed_words(true);
    if (any_) blank_words("tenant-rights-notice");
    // Fixed words may say what is claimed and how to object: then nothing else opens the paper.
    const bool opened = any_ && fixed_words_open();
    if (!opened)
      d_.must("purpose", ParagraphRole::opening,
              claims ? d_.say("letter.purpose.claim-notice", {{"sum", d_.money(kept())}})
                     : d_.say(asks_  ? "letter.purpose.agreement"
                              : any_ ? "letter.purpose.statement"
                                     : "letter.purpose.nothing",
                              {{"sum", d_.money(all_charges())}}));
    // What comes back is what the reader looks for first.
    d_.must("refund", ParagraphRole::ask, refund());
    answer_ = any_ ? answer_by() : std::string();
    if (!opened) d_.may("answer", ParagraphRole::opening, answer_);
    d_.may("facts", ParagraphRole::opening, facts());
    deposits();
    if (any_) {
      charges();
      reasons();
    }
    sums();
    if (const std::string apart = d_.say_apart("letter.landlord.held-apart"); !apart.empty()) {
      d_.must("held-apart", ParagraphRole::ask, apart);
      d_.warn("held-apart", d_.say("letter.warn.landlord.held-apart"));
    }
    if (interest_owed()) d_.may("interest", ParagraphRole::ask, d_.say("letter.landlord.interest"));
    wanted_by_law();
    if (any_) fixed_words(false);
    if (asks_) ask_for_agreement();
    else if (answer_.empty()) reply();
    reserve();
    d_.must("sign", ParagraphRole::closing, d_.say("letter.sign.landlord"));
    if (goes_certified()) d_.may("sent-by", ParagraphRole::closing, d_.say("letter.sent-by.certified"));
    add_list(d_, "enclosures", ParagraphRole::enclosures, d_.say("letter.enclosures"), enclosures());
    warn_about_law(d_);
    add_caution(d_);
  }

  void write_cover() {
    warn_before();
    head("letter.subject.cover-note");
    d_.must("purpose", ParagraphRole::opening, d_.say("letter.purpose.cover-note"));
    d_.may("facts", ParagraphRole::opening, facts());
    const std::string& how = d_.c.statement.delivery_method;
    d_.must("sent", ParagraphRole::opening,
            d_.say("letter.cover.sent", {{"day", d_.speech.day(d_.a.today)},
                                         {"how", d_.has("letter.how.", how) ? d_.say("letter.how.", how)
                                                                            : d_.say("letter.placeholder.how")}}));
    // What comes back is the statement's to say where it hangs on the landlord's choice.
    d_.must("refund", ParagraphRole::ask, takes_away() == MayKeep::all ? refund() : d_.say("letter.cover.refund"));
    std::vector<std::string> items{d_.say("letter.enclosure.statement")};
    for (std::string& item : enclosures()) items.push_back(std::move(item));
    add_list(d_, "enclosures", ParagraphRole::enclosures, d_.say("letter.enclosures"), items);
    reply();
    d_.must("sign", ParagraphRole::closing, d_.say("letter.sign.landlord"));
    warn_about_law(d_);
    add_caution(d_);
  }

private:
  void head(std::string_view subject) {
    add_letter_head(d_, "letter.from.landlord",
                    d_.c.tenancy.forwarding_address_given ? "letter.to.tenant" : "letter.to.tenant.last");
    d_.must("subject", ParagraphRole::opening, d_.say(subject));
    d_.must("greeting", ParagraphRole::opening, d_.say("letter.greeting.tenant"));
  }

  // What of the charges this paper takes.

  /// What the law takes from the landlord; the paper for whoever wants to keep money all the same takes it.
  MayKeep takes_away() const { return d_.letter.kind == LetterKind::late_statement ? MayKeep::all : right_.may_keep; }

  /// Left alone because the law lets nothing be kept for it now, whatever is fair.
  bool lost(std::size_t i) const {
    if (d_.c.lines[i].credit == Tri::yes) return false;
    return takes_away() == MayKeep::nothing ||
           (takes_away() == MayKeep::no_damage && d_.a.lines[i].result.verdict != Verdict::non_damage_charge);
  }

  Money charged(std::size_t i) const { return lost(i) ? Money() : fair_charge(d_, i); }

  bool loses_charges() const {
    for (std::size_t i = 0; i < d_.a.lines.size(); ++i)
      if (lost(i)) return true;
    return false;
  }

  // Sums: charges and what of them the deposit covers.

  /// Interest is reckoned only where nothing about it is open; else it has a marked blank.
  Money interest() const { return d_.a.totals.interest.exact() ? d_.a.totals.interest.likely() : Money(); }
  bool interest_open() const {
    return !d_.a.totals.interest.exact() || (d_.law.there() && d_.a.law->interest().at_least);
  }
  /// Some of it is certainly owed, or the law wants it shown: only then the paper has a place for it.
  bool interest_owed() const {
    return interest_open() && (!d_.a.totals.interest.low().is_zero() || rate_unknown() || wants(d_, "interest-shown"));
  }
  /// The law gives interest for sure, at a rate that is not known: the bank's own, or one of a year to come.
  bool rate_unknown() const {
    if (!d_.law.there() || !d_.a.law->interest().at_least) return false;
    const auto& shares = d_.a.law->interest().shares;
    return std::any_of(shares.begin(), shares.end(), [](const InterestShare& share) {
      // For a few days it comes to cents.
      return share.applies == Tri::yes && share.rule->owed && share.at_least && share.longest >= days{31};
    });
  }
  Money held() const { return deposit_total(d_.c, d_.a.pack).value_or(Money()) + interest(); }
  Money all_charges() const {
    Money sum;
    for (std::size_t i = 0; i < d_.a.lines.size(); ++i) sum += charged(i);
    return sum;
  }
  Money kept() const { return deposit_total(d_.c, d_.a.pack) ? std::min(all_charges(), held()) : all_charges(); }
  Money beyond() const { return deposit_total(d_.c, d_.a.pack) ? std::max(all_charges() - held(), Money()) : Money(); }
  /// Still to be sent with the statement.
  Money due() const { return std::max(held() - all_charges() - d_.a.totals.paid_back, Money()); }

  std::string facts() const {
    Sentences text;
    const Tenancy& t = d_.c.tenancy;
    if (t.ended)
      text.add(d_.say(t.ended->earliest <= d_.a.today ? "letter.landlord.ended" : "letter.landlord.ends",
                      {{"when", d_.when(*t.ended)}}));
    if (t.possession_returned && t.possession_returned->earliest <= d_.a.today)
      text.add(d_.say("letter.landlord.keys", {{"when", d_.when(*t.possession_returned)}}));
    return text.take();
  }

  void deposits() {
    if (d_.c.deposits.empty()) return;
    Paragraph& p = d_.must("deposits", ParagraphRole::table, d_.say("letter.deposits.title"));
    p.head = {d_.say("letter.deposits.kind"), d_.say("letter.deposits.paid"), d_.say("letter.deposits.sum")};
    for (const Deposit& deposit : d_.c.deposits) {
      const std::string kind = deposit.kind.empty() ? "security" : deposit.kind;
      p.rows.push_back({d_.has("letter.deposit.", kind) ? d_.say("letter.deposit.", kind) : on_one_line(kind),
                        deposit.paid ? d_.speech.span(*deposit.paid) : d_.say("letter.placeholder.date"),
                        deposit.amount ? d_.money(*deposit.amount) : d_.say("letter.placeholder.amount")});
    }
  }

  std::vector<std::size_t> charged_lines() const {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < d_.a.lines.size(); ++i)
      if (!charged(i).is_zero()) out.push_back(i);
    return out;
  }

  /// A charge under its number in this paper, which has no gaps.
  std::string numbered(std::size_t n, std::size_t line) const { return std::to_string(n + 1) + ". " + words_of(line); }
  std::string words_of(std::size_t line) const {
    const std::string label = d_.label(line), id = on_one_line(d_.c.lines[line].id) + ". ";
    return label.compare(0, id.size(), id) == 0 ? label.substr(id.size()) : label;
  }

  void charges() {
    Paragraph& p = d_.must("charges", ParagraphRole::table, d_.say("letter.statement.title"));
    for (const std::string_view column : {"charge", "cost", "charged"})
      p.head.push_back(d_.say("letter.statement.", column));
    const auto lines = charged_lines();
    for (std::size_t n = 0; n < lines.size(); ++n) {
      p.lines.push_back(d_.c.lines[lines[n]].id);
      p.rows.push_back(
          {numbered(n, lines[n]), d_.money(d_.a.lines[lines[n]].result.claimed), d_.money(charged(lines[n]))});
    }
    p.rows.push_back({d_.say("letter.charges.total"), "", d_.money(all_charges())});
  }

  /// One paragraph a charge: what was found, the hours, how old it was, how the sum came about, what is enclosed.
  void reasons() {
    const auto lines = charged_lines();
    for (std::size_t n = 0; n < lines.size(); ++n) {
      const std::size_t i = lines[n];
      const LineAssessment& line = d_.a.lines[i];
      if (d_.c.lines[i].credit == Tri::yes) continue;
      const Money kept = charged(i);
      const bool part = kept < line.result.claimed;
      Sentences text;
      text.add(d_.say(part ? "letter.landlord.line.part" : "letter.landlord.line",
                      {{"charge", numbered(n, i)}, {"kept", d_.money(kept)}, {"sum", d_.money(line.result.claimed)}}));
      if (tells_days(i))
        text.add(d_.say("letter.landlord.days", {{"from", d_.speech.day(d_.c.lines[i].from->earliest)},
                                                 {"to", d_.speech.day(d_.c.lines[i].to->earliest)}}));
      // Only what the sender entered: what the words of a charge seem to say is no finding of theirs.
      if (line.subject.finding && line.subject.confidence == 100 && line.subject.finding->names_fault &&
          line.subject.element && line.subject.element->about_condition)
        text.add(d_.say("letter.landlord.found", {{"finding", line.subject.finding->label.in(d_.speech.language())}}));
      else if (line.subject.finding && line.subject.confidence < 100) {
        // What is missing was not given back, whatever the words for it; words that name only work have a blank.
        if (not_given_back(line) || line.subject.finding->id == "device-not-returned")
          text.add(d_.say("letter.landlord.not-given-back"));
        else if (line.subject.finding->id == "work-only" && !line.subject.harm_named &&
                 !line.subject.finding->names_fault)
          text.add(d_.say("letter.wants.found"));
      }
      if (d_.has("letter.landlord.move-in.", d_.c.lines[i].at_move_in))
        text.add(d_.say("letter.landlord.move-in.", d_.c.lines[i].at_move_in));
      if (d_.c.lines[i].on_move_out_record == Tri::yes && d_.c.records.move_out.made == Tri::yes &&
          !said_by_the_list(line, "onMoveOutRecord"))
        text.add(d_.say(d_.c.records.move_out.signed_by_both == Tri::yes ? "letter.landlord.on-record.signed"
                                                                         : "letter.landlord.on-record"));
      if (d_.c.lines[i].hours && d_.c.lines[i].hourly_rate)
        text.add(d_.say("letter.landlord.hours", {{"hours", d_.speech.quantity(in_hours(*d_.c.lines[i].hours))},
                                                  {"rate", d_.money(*d_.c.lines[i].hourly_rate)}}));
      const std::string reckoned = part ? arithmetic(d_, i, true) : std::string();
      text.add(part && reckoned.empty() ? d_.say("letter.landlord.part-left") : reckoned);
      if (const std::string proof = proof_of(i); !proof.empty())
        text.add(
            d_.say("letter.landlord.proof",
                   {{"charge", d_.say("letter.charges.one", {{"ids", std::to_string(n + 1)}})}, {"papers", proof}}));
      d_.must("line-" + d_.c.lines[i].id, ParagraphRole::line, text.take()).lines.push_back(d_.c.lines[i].id);
    }
  }

  /// The days of a charge were entered, or its words name a month and it is charged whole.
  bool tells_days(std::size_t i) const {
    const Line& line = d_.c.lines[i];
    if (!line.from || !line.to || !line.from->known() || !line.to->known()) return false;
    const auto& rent = d_.c.tenancy.monthly_rent;
    return !said_by_the_list(d_.a.lines[i], "periodStart") || (rent && line.amount == rent);
  }

  std::string proof_of(std::size_t i) const {
    std::vector<std::string> proof;
    if (said_by_the_list(d_.a.lines[i], "supportingDocuments")) return {}; // no mark of the sender's
    for (const std::string& document : d_.c.lines[i].proof)
      // One paper is not called by the name of all such papers.
      if (std::string name = document == "receipts" ? d_.say("letter.landlord.bill")
                                                    : d_.law.document(d_.rules.registry.document(document));
          !name.empty())
        proof.push_back(std::move(name));
    return listed(proof, d_.speech);
  }

  void sums() {
    const Totals& t = d_.a.totals;
    if (!deposit_total(d_.c, d_.a.pack)) return;
    Paragraph& p = d_.must("sums", ParagraphRole::table, d_.say("letter.sums.title"));
    p.head = {d_.say("letter.sums.what"), d_.say("letter.sums.sum")};
    const auto row = [&](std::string_view key, Money sum) { p.rows.push_back({d_.say(key), d_.money(sum)}); };
    row("letter.sums.deposit", *deposit_total(d_.c, d_.a.pack));
    if (!interest().is_zero()) row("letter.sums.interest", interest());
    if (any_) row(asks_ ? "letter.statement.asked" : "letter.statement.taken", Money() - kept());
    row(asks_ ? "letter.statement.left.asked" : "letter.statement.left", held() - kept());
    if (!beyond().is_zero()) row("letter.statement.beyond", beyond());
    if (!t.paid_back.is_zero() && held() > kept()) row("letter.sums.paid-back", Money() - t.paid_back);
    if (!t.paid_back.is_zero() && held() > kept()) row("letter.sums.due", due());
  }

  std::string refund() const {
    if (!deposit_total(d_.c, d_.a.pack)) return d_.say("letter.landlord.refund.unknown");
    if (!beyond().is_zero())
      return d_.say("letter.landlord.balance", {{"held", d_.money(held())}, {"sum", d_.money(beyond())}});
    if (!due().is_zero()) return d_.say("letter.landlord.refund", {{"sum", d_.money(due())}});
    const Money paid = d_.a.totals.paid_back;
    return paid.is_zero() ? d_.say("letter.landlord.nothing")
                          : d_.say("letter.landlord.refunded", {{"sum", d_.money(paid)}});
  }

  void reply() {
    d_.may("reply", ParagraphRole::closing, d_.say(any_ ? "letter.landlord.reply" : "letter.landlord.reply.none"));
  }

  /// What the deposit may no longer pay is not given up.
  void reserve() {
    if (loses_charges()) d_.may("reserve", ParagraphRole::closing, d_.say("letter.landlord.reserve"));
  }

  /// The landlord's last day to ask for a decision, if it is still ahead.
  std::optional<Day> day_to_apply() const {
    if (!d_.law.there()) return std::nullopt;
    for (const DeadlineResult& deadline : d_.a.law->deadlines())
      if (deadline.deadline->who == Who::landlord && d_.law.name_of(*deadline.deadline) == "apply-for-decision" &&
          deadline.applies != Tri::no && deadline.last && deadline.last->earliest >= d_.a.today &&
          deadline.last->latest != max_day)
        return deadline.last->earliest;
    return std::nullopt;
  }

  /// The sum is kept with the tenant's signature or an order, and not before; the answer is due while there is still
  /// time to pay back or to apply.
  void ask_for_agreement() {
    Sentences text;
    text.add(d_.say("letter.landlord.agreement.until", {{"sum", d_.money(kept())}, {"forum", forum(d_)}}));
    if (const auto last = day_to_apply()) {
      const Day usual = d_.a.today + days{d_.rules.letters.reply_days};
      const Day answer = std::max(d_.a.today + days{1}, std::min(usual, *last - days{d_.rules.letters.mailing_days}));
      text.add(d_.say("letter.landlord.agreement.by", {{"day", d_.speech.day(answer)}}));
    }
    d_.must("agreement-ask", ParagraphRole::closing, text.take());
    d_.must("agreement", ParagraphRole::closing, d_.say("letter.landlord.agreement", {{"sum", d_.money(kept())}}));
  }

  // What the law of the place wants in the paper.

  /// Certified mail is how the law here wants it, or one of the ways, and no other was entered.
  bool goes_certified() const {
    const std::string& how = d_.c.statement.delivery_method;
    if (!how.empty()) return how == "certified-mail";
    const auto rules = rules_to_meet(d_);
    return std::any_of(rules.begin(), rules.end(), [](const DocumentRule* rule) {
      return among(rule->delivery_methods, "certified-mail") && !among(rule->delivery_methods, "mail") &&
             !among(rule->delivery_methods, "first-class-mail");
    });
  }

  /// Whether the place has fixed words that open the paper.
  bool fixed_words_open() const {
    for (const DocumentRule* rule : rules_to_meet(d_))
      for (const FixedWords& fixed : d_.rules.letters.fixed_words)
        if (fixed.opens && d_.c.jurisdiction == fixed.place && rule->id == fixed.rule) return true;
    return false;
  }

  /// Fixed words of a statute: those that make it a notice stand first, a signature's form at the end.
  void fixed_words(bool first) {
    for (const DocumentRule* rule : rules_to_meet(d_))
      for (const FixedWords& fixed : d_.rules.letters.fixed_words) {
        if (d_.c.jurisdiction != fixed.place || rule->id != fixed.rule) continue;
        const bool signature = fixed.text.en.find("______") != std::string::npos;
        if (signature == first) continue;
        d_.must("fixed-" + rule->id, ParagraphRole::opening, filled(fixed.text.en));
        // Whoever writes sees it where the words stand, and strikes it once they are compared.
        if (fixed.from_memory)
          d_.may("check-" + rule->id, ParagraphRole::opening, d_.say("letter.fixed.check", {{"cite", fixed.cite}}));
        d_.warn("fixed-words",
                d_.say(fixed.from_memory ? "letter.warn.fixed.memory" : "letter.warn.fixed", {{"cite", fixed.cite}}));
      }
  }

  /// The statute's words stay English; its places are filled.
  std::string filled(std::string text) const {
    std::string reasons; // no "and": the words around them stay English in every copy
    for (const std::size_t i : charged_lines())
      reasons += (reasons.empty() ? "" : "; ") + on_one_line(d_.c.lines[i].text);
    const auto put = [&](std::string_view place, const std::string& value) {
      if (const auto at = text.find(place); at != std::string::npos) text.replace(at, place.size(), value);
    };
    put("{sum}", d_.money(all_charges()));
    put("{reasons}", reasons);
    put("{landlordAddress}", d_.say("letter.landlord.own-address"));
    put("{landlord}", d_.say("letter.landlord.own-name"));
    return text;
  }

  /// The law here wants a notice that money is claimed, not only an account of it.
  bool gives_notice_of_claim() const {
    if (!d_.law.there()) return false;
    const auto& deadlines = d_.a.law->deadlines();
    return std::any_of(deadlines.begin(), deadlines.end(), [&](const DeadlineResult& deadline) {
      return deadline.deadline->who == Who::landlord && deadline.applies != Tri::no &&
             d_.law.name_of(*deadline.deadline) == "notice-of-claim";
    });
  }

  /// How long the tenant has to object, where the law gives days for it.
  std::string answer_by() const {
    if (!d_.law.there()) return {};
    for (const DeadlineResult& result : d_.a.law->deadlines()) {
      const Deadline& deadline = *result.deadline;
      const std::string_view name = d_.law.name_of(deadline);
      if (deadline.who != Who::tenant || (name != "object" && name != "respond") || result.applies == Tri::no) continue;
      if (d_.law.footing(deadline) < Footing::careful || deadline.periods.size() != 1 ||
          !deadline.periods.front().count)
        continue;
      const int count = *deadline.periods.front().count;
      const std::string unit = std::string("law.unit.") + std::string(name_of(deadline.periods.front().unit)) +
                               (count == 1 ? ".one" : ".many");
      return d_.say("letter.landlord.object", {{"length", d_.say(unit, {{"n", std::to_string(count)}})}});
    }
    return {};
  }

  /// A marked blank for words that a section fixes and that were not read.
  void blank_words(std::string_view document) {
    const DocumentRule* rule = rule_that_wants(document);
    if (!rule || has_fixed_words(document)) return;
    const std::string cite = d_.law.cites(*rule);
    d_.must("wants-" + std::string(document), ParagraphRole::opening,
            d_.say("letter.wants.", document, {{"cite", cite.empty() ? d_.say("letter.wants.section") : cite}}));
    d_.warn("fixed-words", d_.say("letter.warn.fixed.blank", {{"cite", cite}}));
  }

  bool has_fixed_words(std::string_view document) const {
    for (const DocumentRule* rule : rules_to_meet(d_))
      for (const DocumentId id : rule->requires_all)
        if (d_.rules.registry.documents[index(id)].id == document)
          for (const FixedWords& fixed : d_.rules.letters.fixed_words)
            if (d_.c.jurisdiction == fixed.place && rule->id == fixed.rule) return true;
    return false;
  }

  const DocumentRule* rule_that_wants(std::string_view document) const {
    for (const DocumentRule* rule : rules_to_meet(d_))
      for (const DocumentId id : rule->requires_all)
        if (d_.rules.registry.documents[index(id)].id == document) return rule;
    return nullptr;
  }

  /// What the law wants in the statement and the case does not hold: a place for it, in brackets.
  void wanted_by_law() {
    if (!any_) return;
    const bool hours =
        std::any_of(d_.c.lines.begin(), d_.c.lines.end(), [](const Line& l) { return l.hours.has_value(); });
    if (wants(d_, "labor-hours-and-rate") && !hours)
      d_.must("wants-hours", ParagraphRole::closing, d_.say("letter.wants.hours"));
    if (wants(d_, "contractor-contact") && others_worked())
      d_.must("wants-contractor", ParagraphRole::closing, d_.say("letter.wants.contractor"));
    // The way to object gives it already.
    if (wants(d_, "landlord-address") && answer_.empty())
      d_.must("wants-address", ParagraphRole::closing, d_.say("letter.wants.address"));
    blank_words("sworn");
    const auto lines = charged_lines();
    const bool estimate = std::any_of(lines.begin(), lines.end(), [&](std::size_t i) {
      const auto& proof = d_.c.lines[i].proof;
      return among(proof, "estimate") && !among(proof, "receipts");
    });
    if (estimate) d_.must("estimates", ParagraphRole::closing, d_.say("letter.landlord.estimates"));
  }

  /// Some charged work has no hours of the landlord's own.
  bool others_worked() const {
    const auto lines = charged_lines();
    return std::any_of(lines.begin(), lines.end(), [&](std::size_t i) {
      return d_.a.lines[i].result.verdict != Verdict::non_damage_charge && !not_given_back(d_.a.lines[i]) &&
             !d_.c.lines[i].hours;
    });
  }

  /// Papers that were marked as enclosed, with the statement or with a charge, and the payment.
  std::vector<std::string> enclosures() const {
    std::vector<std::string> names;
    const auto add = [&](const std::string& name) {
      if (!name.empty() && std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    };
    const std::vector<std::string> documents{"receipts", "estimate",          "price-list",
                                             "photos",   "inspection-report", "move-in-list"};
    const auto add_document = [&](const std::string& id) {
      const DocumentId document = d_.rules.registry.document(id);
      if (index(document) < d_.rules.registry.documents.size() &&
          among(documents, d_.rules.registry.documents[index(document)].id))
        add(d_.law.document(document));
    };
    for (const std::string& document : d_.c.statement.enclosed) add_document(document);
    for (const std::size_t i : charged_lines())
      if (!said_by_the_list(d_.a.lines[i], "supportingDocuments"))
        for (const std::string& document : d_.c.lines[i].proof) add_document(document);
    // A note that goes with whichever statement was chosen names no sum of it.
    const bool names_sum = d_.letter.kind != LetterKind::cover_note || right_.may_keep == MayKeep::all;
    if (names_sum && !due().is_zero()) add(d_.say("letter.enclosure.refund", {{"sum", d_.money(due())}}));
    return names;
  }

  // Before it goes out.

  void warn_before() {
    if (d_.law.there()) {
      warn_about_past_days();
      for (const DeadlineResult& deadline : d_.a.law->deadlines()) warn_about_day(deadline);
      if (any_)
        for (const DocumentRule* rule : rules_to_meet(d_)) warn_about_rule(*rule);
    }
    if (d_.c.records.inspection_held == Tri::yes && any_)
      d_.warn("inspection", d_.say("letter.warn.landlord.inspection"));
    warn_about_charges();
  }

  static bool about_money(std::string_view name) { return name == "return-deposit" || name == "refund-balance"; }

  bool is_past(const DeadlineResult& deadline) const {
    return std::find(right_.past.begin(), right_.past.end(), &deadline) != right_.past.end();
  }

  /// What can no longer be mended stands before all else: the day, what the law then says, and what this paper does.
  void warn_about_past_days() {
    std::optional<Day> said;
    for (const DeadlineResult* deadline : right_.past) {
      if (said == deadline->last->latest) continue;
      said = deadline->last->latest;
      const std::string& follows = deadline->deadline->if_missed_text_in(d_.speech.language());
      Sentences text;
      text.add(d_.say("letter.warn.landlord.late", {{"day", d_.speech.day(*said)}}))
          .add(d_.law.says(*deadline->deadline, follows));
      if (right_.may_keep == MayKeep::all) text.add(d_.say("letter.warn.landlord.late.advice"));
      d_.warn("late", text.take());
    }
    if (right_.may_keep == MayKeep::all) return;
    Sentences text;
    text.add(d_.law.rule_says(*right_.by, "letter.forfeit.law"));
    if (d_.letter.kind == LetterKind::late_statement)
      text.add(d_.say("letter.warn.landlord.keeps-late", {{"sum", d_.money(kept())}}));
    else
      text.add(d_.say(right_.may_keep == MayKeep::nothing ? "letter.warn.landlord.keeps-nothing"
                                                          : "letter.warn.landlord.keeps-no-damage",
                      {{"kind", d_.say("letter.kind.", name_of(LetterKind::late_statement))}}));
    d_.warn("late", text.take());
  }

  void warn_about_day(const DeadlineResult& deadline) {
    const std::string_view name = d_.law.name_of(*deadline.deadline);
    if (deadline.deadline->who != Who::landlord || !deadline.last || deadline.last->latest == max_day) return;
    if (name == "apply-for-decision" && deadline.state == DeadlineState::open)
      d_.warn("apply", d_.say("letter.warn.landlord.apply", {{"day", d_.speech.day(deadline.last->earliest)}}));
    if (name != "itemize" && name != "notice-of-claim" && name != "return-deposit" && name != "refund-balance") return;
    if (is_past(deadline)) return;
    if (deadline.state == DeadlineState::open)
      d_.warn("send-by", d_.say(about_money(name) ? "letter.warn.landlord.pay-by" : "letter.warn.landlord.send-by",
                                {{"day", d_.speech.day(deadline.last->earliest)}}));
  }

  /// A rule of the papers, and whether the way it is sent fits.
  void warn_about_rule(const DocumentRule& rule) {
    const std::string law = d_.law.rule_says(rule, "letter.paper-rule.elsewhere");
    d_.warn("paper-" + rule.id, law);
    const std::string& how = d_.c.statement.delivery_method;
    if (!rule.delivery_methods.empty() && !how.empty() && !among(rule.delivery_methods, how) &&
        d_.has("letter.how.", how))
      d_.warn("way", d_.say("letter.warn.landlord.way", {{"how", d_.say("letter.how.", how)}}));
  }

  void warn_about_charges() {
    const auto in_paper = charged_lines();
    for (std::size_t i = 0; i < d_.a.lines.size(); ++i) {
      if (lost(i)) continue;
      const LineResult& r = d_.a.lines[i].result;
      // By its number in the paper; what the paper leaves out has none there.
      const auto place = std::find(in_paper.begin(), in_paper.end(), i);
      const std::string charge =
          place == in_paper.end() ? words_of(i) : numbered(static_cast<std::size_t>(place - in_paper.begin()), i);
      if (!d_.c.lines[i].amount) d_.warn("no-amount", d_.say("letter.warn.landlord.no-amount", {{"charge", charge}}));
      else if (charged(i).is_zero() && !r.claimed.is_zero())
        d_.warn("left-out",
                d_.say(r.fair.high() < small_change() || names_wear(d_.c.lines[i].text, d_.rules.letters)
                           ? "letter.warn.landlord.left-out"
                       : r.verdict == Verdict::non_damage_charge ? "letter.warn.landlord.left-out.owed"
                                                                 : "letter.warn.landlord.left-out.open",
                       {{"charge", charge}, {"sum", d_.money(r.claimed)}, {"most", d_.money(r.fair.high())}}));
      else if (r.fair.high() - r.fair.low() > r.claimed.part({1, 20}))
        d_.warn("open",
                d_.say("letter.warn.landlord.open",
                       {{"charge", charge}, {"range", d_.speech.money(r.fair)}, {"sum", d_.money(charged(i))}}));
      if (charged(i).is_zero()) continue;
      if (d_.c.lines[i].proof.empty() && d_.c.statement.enclosed.empty())
        d_.warn("no-proof", d_.say("letter.warn.landlord.no-proof", {{"charge", charge}}));
      const Element* element = d_.a.lines[i].subject.element;
      if (element && element->id == "rent" && !tells_days(i))
        d_.warn("say-days", d_.say("letter.warn.landlord.say-days", {{"charge", charge}}));
      const auto& paid = d_.c.tenancy.rent_paid_through;
      const auto& out = d_.c.tenancy.left();
      if (element && element->id == "rent" && paid && out && paid->earliest >= out->latest && !d_.c.lines[i].to)
        d_.warn("rent-paid",
                d_.say("letter.warn.landlord.rent-paid", {{"charge", charge}, {"day", d_.speech.span(*paid)}}));
      if ((d_.c.lines[i].finding.empty() || d_.a.lines[i].subject.confidence < 100) &&
          (!element || element->about_condition) && !names_harm(d_.a.lines[i]))
        d_.warn("say-more", d_.say("letter.warn.landlord.say-more", {{"charge", charge}}));
    }
    if (!beyond().is_zero()) d_.warn("beyond", d_.say("letter.warn.landlord.beyond"));
    if (interest_open())
      d_.warn("interest",
              d_.say(interest_owed() ? "letter.warn.landlord.interest" : "letter.warn.landlord.interest.perhaps"));
  }

  Draft& d_;
  LandlordsRight right_;
  bool any_;           ///< something is charged
  bool asks_;          ///< and only the tenant's agreement lets it be kept
  std::string answer_; ///< how the tenant can object, where the law gives days for it
};

} // namespace

void write_itemized_statement(Draft& d) { LandlordPaper(d).write(); }

void write_cover_note(Draft& d) { LandlordPaper(d).write_cover(); }

} // namespace wearline
