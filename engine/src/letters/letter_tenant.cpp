#include "letters/letter_kinds.h"
#include "letters/letter_lines.h"
#include "wording/law_words.h"

#include <algorithm>

namespace wearline {

namespace {

enum class Asks { pay, pay_first, papers, address, inspection };

/// Which parts a kind of letter has.
struct Recipe {
  Asks asks = Asks::pay;
  bool sums = true, charges = true, lines = true, bars = true, audit = true, defects = true, missed = false,
       forfeit = false, papers = true, records = true, interest = true;
};

Recipe recipe_of(LetterKind kind) {
  Recipe r;
  switch (kind) {
  case LetterKind::ask_for_papers:
    r = {Asks::papers, false, false, false, false, true, true, false, false, true, false, false};
    break;
  case LetterKind::after_deadline:
    r.missed = r.forfeit = true;
    break;
  case LetterKind::second_letter:
    r.missed = r.forfeit = true;
    r.lines = r.bars = r.audit = r.papers = r.records = false;
    break;
  case LetterKind::accept_and_claim_rest:
    r.papers = false;
    break;
  case LetterKind::demand:
    r.missed = true;
    r.papers = r.records = r.defects = false;
    break;
  case LetterKind::forwarding_address:
    r = {Asks::address, false, false, false, false, false, false, false, false, false, false, false};
    break;
  case LetterKind::inspection_request:
    r = {Asks::inspection, false, false, false, false, false, false, false, false, false, false, false};
    break;
  default:
    break;
  }
  return r;
}

class TenantLetter {
public:
  explicit TenantLetter(Draft& d) : d_(d), recipe_(recipe_of(d.letter.kind)), claim_(claim_of(d)), by_(by()) {}

  void write() {
    opening();
    law_of_kind();
    if (recipe_.missed) missed();
    if (recipe_.sums) add_sums_table(d_, "letter.sums.");
    if (recipe_.charges) add_charges_table(d_, "letter.charges.table.");
    if (recipe_.lines) {
      // Whoever says what is fair must not give away that nothing may be kept.
      if (is(LetterKind::after_deadline) && !d_.law.missed().empty() && !d_.a.lines.empty())
        d_.may("reserve", ParagraphRole::line, d_.say("letter.reserve"));
      lines();
    }
    if (recipe_.bars) bars();
    if (recipe_.audit) audit();
    if (recipe_.interest) interest();
    if (recipe_.defects) defects();
    if (recipe_.papers) papers();
    if (recipe_.records) records();
    ask();
    closing();
    warnings();
    add_caution(d_);
  }

private:
  bool is(LetterKind kind) const { return d_.letter.kind == kind; }
  std::string_view kind_name() const { return name_of(d_.letter.kind); }

  /// The day to answer by: that of a rule where one starts with this letter, else the usual time.
  Day by() const {
    if (!is(LetterKind::demand)) return reply_day(d_);
    if (const auto day = day_from_request(d_)) return *day;
    const Remark* rule = request_rule(d_);
    return rule && rule->days ? d_.a.today + days{static_cast<int>(*rule->days)} : reply_day(d_);
  }

  void opening() {
    add_letter_head(d_, "letter.from.tenant", "letter.to.landlord");
    d_.must("subject", ParagraphRole::opening, d_.say("letter.subject.", kind_name()));
    d_.must("greeting", ParagraphRole::opening, d_.say("letter.greeting.landlord"));
    d_.must("purpose", ParagraphRole::opening, purpose());
    d_.may("facts", ParagraphRole::opening, facts());
  }

  /// The day of the letter that this one follows: the last of the tenant's own.
  std::optional<DaySpan> earlier_letter() const {
    std::optional<DaySpan> last;
    for (const Event& event : d_.c.events)
      if ((event.what == "tenant-demand" || event.what == "tenant-objected" || event.what == "tenant-answered" ||
           event.what == "papers-requested") &&
          (!last || event.on.latest > last->latest))
        last = event.on;
    return last;
  }

  std::string purpose() const {
    if (is(LetterKind::second_letter)) {
      const auto before = earlier_letter();
      return before ? d_.say("letter.purpose.second-letter", {{"when", d_.when(*before)}})
                    : d_.say("letter.purpose.second-letter.no-day");
    }
    if (is(LetterKind::inspection_request) && !leaving()) return d_.say("letter.purpose.inspection-request.after");
    if (is(LetterKind::demand) && notice_of_suit(d_))
      return d_.say("letter.purpose.demand.suit", {{"day", d_.speech.day(by_)}});
    if (is(LetterKind::question_charges) && !disputes()) return d_.say("letter.purpose.question-charges.fair");
    if (is(LetterKind::question_charges) && d_.a.totals.fair.high().is_zero())
      return d_.say("letter.purpose.question-charges.none");
    if (is(LetterKind::reply_to_demand) && d_.c.statement.stated_balance_due)
      return d_.say("letter.purpose.reply-to-demand.sum", {{"sum", d_.money(*d_.c.statement.stated_balance_due)}});
    return d_.say("letter.purpose.", kind_name());
  }

  bool disputes() const { return d_.a.totals.fair.low() < d_.a.totals.claimed; }
  /// Whether the tenant is still in the home, as far as dates say.
  bool leaving() const {
    const auto& out = d_.c.tenancy.possession_returned ? d_.c.tenancy.possession_returned : d_.c.tenancy.ended;
    return out && out->earliest >= d_.a.today;
  }

  /// What the person entered, in sentences; nothing else.
  std::string facts() const {
    Sentences text;
    const Tenancy& t = d_.c.tenancy;
    const bool past = t.ended && t.ended->earliest <= d_.a.today;
    const bool both = t.began && t.began->known() && t.ended && t.ended->known() && past;
    if (both)
      text.add(d_.say("letter.facts.ran",
                      {{"from", d_.speech.day(t.began->earliest)}, {"to", d_.speech.day(t.ended->earliest)}}));
    if (t.began && !both) text.add(d_.say("letter.facts.began", {{"when", d_.when(*t.began)}}));
    if (t.ended && !both)
      text.add(d_.say(past ? "letter.facts.ended" : "letter.facts.ends", {{"when", d_.when(*t.ended)}}));
    if (t.possession_returned && t.possession_returned->earliest <= d_.a.today)
      text.add(d_.say("letter.facts.keys", {{"when", d_.when(*t.possession_returned)}}));
    if (t.forwarding_address_given && (is(LetterKind::demand) || is(LetterKind::after_deadline)))
      text.add(d_.say("letter.facts.address", {{"when", d_.when(*t.forwarding_address_given)}}));
    if (d_.a.totals.deposit) text.add(d_.say("letter.facts.deposit", {{"sum", d_.money(*d_.a.totals.deposit)}}));
    if (is(LetterKind::inspection_request) || is(LetterKind::forwarding_address)) return text.take();
    statement_facts(text);
    return text.take();
  }

  void statement_facts(Sentences& text) const {
    const Statement& s = d_.c.statement;
    if (s.came == Tri(false)) text.add(d_.say("letter.facts.no-statement"));
    else if (s.dated) text.add(d_.say("letter.facts.dated", {{"when", d_.speech.span(*s.dated)}}));
    if (s.received && s.came != Tri(false))
      text.add(
          d_.say(s.dated ? "letter.facts.received" : "letter.facts.list-received", {{"when", d_.when(*s.received)}}));
    if (!d_.a.lines.empty()) text.add(d_.say("letter.facts.claimed", {{"sum", d_.money(d_.a.totals.claimed)}}));
    if (s.refund_paid)
      text.add(s.refund_paid->is_zero() ? d_.say("letter.facts.nothing-back")
                                        : d_.say("letter.facts.paid-back", {{"sum", d_.money(*s.refund_paid)}}));
    else if (s.stated_refund) text.add(d_.say("letter.facts.stated-back", {{"sum", d_.money(*s.stated_refund)}}));
    if (s.stated_balance_due) text.add(d_.say("letter.facts.balance", {{"sum", d_.money(*s.stated_balance_due)}}));
  }

  /// The rule that a notice of this kind rests on, cited.
  void law_of_kind() {
    if (!d_.law.there()) return;
    const auto cite = [&](const Rule& rule, std::string_view key) {
      d_.may("law-of-letter", ParagraphRole::opening, d_.law.says(rule, d_.say(key)));
    };
    if (is(LetterKind::objection)) {
      if (const DutyResult* duty = own_duty({"object", "respond"})) cite(*duty->duty, "letter.law.objection");
    } else if (is(LetterKind::forwarding_address)) {
      if (const DutyResult* duty = own_duty({"give-forwarding-address"})) cite(*duty->duty, "letter.law.address");
    } else if (is(LetterKind::inspection_request)) {
      if (const DutyResult* duty = own_duty({"request-inspection"})) return cite(*duty->duty, "letter.law.inspection");
      for (const Remark& rule : d_.a.law->pack().inspection)
        if (rule.right == std::optional(true) && applies(rule, d_.a.law->view()) == Tri(true))
          return cite(rule, "letter.law.inspection");
    } else if (is(LetterKind::ask_for_papers)) {
      if (const DutyResult* duty = own_duty({"ask-for-papers"})) cite(*duty->duty, "letter.law.papers");
    } else if (is(LetterKind::demand)) {
      if (const DutyResult* suit = notice_of_suit(d_)) cite(*suit->duty, "letter.law.suit");
      else if (const Remark* rule = request_rule(d_)) cite(*rule, "letter.law.demand");
      else if (const DutyResult* duty = own_duty({"demand"})) cite(*duty->duty, "letter.law.demand");
    }
  }

  /// A duty of the tenant that this letter can still meet.
  const DutyResult* own_duty(std::initializer_list<std::string_view> names) const {
    if (const DutyResult* open = d_.law.tenant_duty(names, DutyState::open)) return open;
    return d_.law.tenant_duty(names, DutyState::cannot_tell);
  }

  /// Days the landlord missed, each once, and what the law says follows.
  void missed() {
    std::vector<std::string_view> said;
    for (const DutyResult* duty : d_.law.missed()) {
      Sentences text;
      text.add(d_.law.missed_day(*duty));
      const std::string& follows = duty->duty->if_missed_text;
      if (!follows.empty() && std::find(said.begin(), said.end(), follows) == said.end()) {
        said.push_back(follows);
        const std::string& said_here = duty->duty->if_missed_text_in(d_.speech.language());
        text.add(d_.speech.language() == "en" || said_here != follows
                     ? d_.say("letter.missed.follows", {{"says", said_here}})
                     : d_.say("letter.missed.follows.elsewhere"));
      }
      d_.may("missed-" + duty->duty->id, ParagraphRole::opening, d_.law.says(*duty->duty, text.take()));
    }
  }

  void lines() {
    accepted();
    for (std::size_t i = 0; i < d_.a.lines.size(); ++i) {
      const Stand stand = stand_of(d_.c.lines[i], d_.a.lines[i]);
      const std::string id = "line-" + d_.c.lines[i].id;
      if (stand == Stand::questioned || stand == Stand::open) d_.may(id, ParagraphRole::line, questioned(d_, i), {i});
      else if (stand == Stand::no_amount)
        d_.may(id, ParagraphRole::line, d_.say("letter.line.no-amount", {{"charge", d_.charge(i)}}), {i});
    }
  }

  /// Fair charges, in one breath.
  void accepted() {
    const auto fair = lines_that_are(Stand::accepted, d_.a);
    const auto credits = lines_that_are(Stand::credit, d_.a);
    std::vector<std::string> names;
    for (const std::size_t i : fair)
      names.push_back(
          d_.say("letter.accepted.one", {{"charge", d_.charge(i)}, {"sum", d_.money(d_.a.lines[i].result.claimed)}}));
    if (Paragraph* p = add_list(d_, "accepted", ParagraphRole::line,
                                d_.say(fair.size() == 1 ? "letter.accepted.this" : "letter.accepted.these"), names))
      for (const std::size_t i : fair) p->lines.push_back(d_.c.lines[i].id);
    names.clear();
    for (const std::size_t i : credits)
      names.push_back(d_.say("letter.accepted.one",
                             {{"charge", d_.charge(i)}, {"sum", d_.money(Money() - d_.a.lines[i].result.claimed)}}));
    if (Paragraph* p = add_list(d_, "credits", ParagraphRole::line, d_.say("letter.credits"), names))
      for (const std::size_t i : credits) p->lines.push_back(d_.c.lines[i].id);
  }

  void bars() {
    std::vector<bool> disputed(d_.a.lines.size());
    for (std::size_t i = 0; i < disputed.size(); ++i) {
      const LineResult& r = d_.a.lines[i].result;
      disputed[i] = r.fair.likely() < r.claimed;
    }
    for (const BarOnLines& bar : d_.law.bars(disputed)) {
      const std::string law =
          d_.law.rule_says(*bar.rule, bar.rule->text, std::string("letter.bar.") + std::string(bar.effect));
      if (law.empty()) continue;
      d_.may("law-" + bar.rule->id, ParagraphRole::line,
             d_.say("letter.about", {{"charges", d_.charges(bar.lines)}, {"says", law}}), bar.lines);
    }
  }

  void audit() {
    for (const AuditNote& note : d_.a.audit) {
      const std::string_view code = note.said ? std::string_view("clash") : note.code;
      if (!d_.has("letter.audit.", code)) continue; // said with the charge itself
      std::string id = "audit-" + std::string(note.code);
      std::vector<std::size_t> lines = note.lines;
      std::sort(lines.begin(), lines.end());
      for (const std::size_t line : lines) id += '-' + d_.c.lines[line].id;
      d_.may(std::move(id), ParagraphRole::line,
             d_.say("letter.audit.", code,
                    {{"charges", lines.empty() ? std::string() : d_.charges(lines)},
                     {"stated", d_.money(note.stated)},
                     {"found", d_.money(note.found)},
                     {"said", note.said ? note.said->in(d_.speech.language()) : std::string()}}),
             lines);
    }
  }

  void interest() {
    const Money owed = d_.a.totals.interest.likely();
    if (!d_.law.there() || owed.is_zero()) return;
    for (const InterestShare& share : d_.a.law->interest().shares)
      if (share.applies == Tri(true) && share.rule->owed) {
        d_.may("interest", ParagraphRole::line,
               d_.law.says(*share.rule, d_.say("letter.interest", {{"sum", d_.money(owed)}})));
        return;
      }
  }

  /// Papers the law wants and that did not come.
  void defects() {
    std::vector<std::string_view> said;
    for (const PaperResult* paper : d_.law.defects()) {
      const bool wrong_way = paper->lacking.empty() && paper->wrong_way && !d_.c.statement.how.empty();
      if (paper->lacking.empty() && !wrong_way) continue;
      Sentences text;
      text.add(d_.law.rule_says(*paper->rule, paper->rule->text, "letter.defect.law"));
      const std::string& follows = paper->rule->if_missing_text;
      const std::string& said_here = paper->rule->if_missing_text_in(d_.speech.language());
      if ((d_.speech.language() == "en" || said_here != follows) && !follows.empty() &&
          std::find(said.begin(), said.end(), follows) == said.end()) {
        said.push_back(follows);
        text.add(d_.say("letter.missed.follows", {{"says", said_here}}));
      }
      std::vector<PaperId> papers;
      for (const PaperId id : paper->lacking)
        if (can_be_asked(d_.rules.registry.papers[index(id)].id)) papers.push_back(id);
      if (wrong_way) text.add(d_.say("letter.defect.way"));
      else if (papers.empty()) text.add(d_.say("letter.defect.consent"));
      else text.add(d_.say("letter.defect.lacking"));
      Paragraph* p = d_.may("paper-" + paper->rule->id, ParagraphRole::list, text.take());
      if (p)
        for (const PaperId id : papers) p->rows.push_back({d_.law.paper(id)});
    }
  }

  /// What to send, as a list: papers first, then facts of single charges.
  void papers() {
    std::vector<std::string> items = wanted_papers();
    if (is(LetterKind::ask_for_papers))
      for (std::size_t i = 0; i < d_.a.lines.size(); ++i) {
        const std::string wish = requests(d_, i);
        if (!wish.empty() && !(d_.a.lines[i].result.certain() && d_.c.lines[i].amount))
          items.push_back(d_.say("letter.papers.line", {{"charge", d_.charge(i)}, {"wish", wish}}));
      }
    if (items.empty() && is(LetterKind::ask_for_papers)) items.push_back(d_.say("letter.papers.any"));
    add_list(d_, "papers", ParagraphRole::list, d_.say("letter.papers.title"), items);
  }

  bool came(std::string_view paper) const {
    const auto has = [&](const std::vector<std::string>& names) {
      return std::find(names.begin(), names.end(), paper) != names.end();
    };
    return has(d_.c.statement.enclosed) ||
           std::any_of(d_.c.lines.begin(), d_.c.lines.end(), [&](const Line& l) { return has(l.proof); });
  }

  std::vector<std::string> wanted_papers() const {
    std::vector<std::string> names;
    const auto want = [&](std::string name) {
      if (!name.empty() && std::find(names.begin(), names.end(), name) == names.end()) names.push_back(std::move(name));
    };
    const bool asks = is(LetterKind::ask_for_papers);
    const auto open = lines_that_are(Stand::open, d_.a);
    // Bills and photos bear on the home's condition, not on rent or fees.
    bool about_home = false, what_was_wrong = false;
    for (const std::size_t i : open) {
      const LineResult& r = d_.a.lines[i].result;
      about_home = about_home || r.verdict != Verdict::not_about_condition;
      what_was_wrong = what_was_wrong || (r.verdict != Verdict::not_about_condition && r.opinion.finding_open);
    }
    if (!came("receipts") && (asks || about_home)) want(paper_name("receipts"));
    if (!came("photos") && (asks || what_was_wrong)) want(paper_name("photos"));
    for (const std::string& paper : d_.c.statement.missing)
      if (can_be_asked(paper)) want(paper_name(paper));
    if (d_.law.there())
      for (const PaperResult& paper : d_.a.law->papers()) {
        for (const PaperId id : paper.lacking)
          if (can_be_asked(d_.rules.registry.papers[index(id)].id)) want(d_.law.paper(id));
        if (asks && paper.defect != Tri(false))
          for (const PaperId id : paper.open)
            if (can_be_asked(d_.rules.registry.papers[index(id)].id) &&
                std::find(paper.rule->requires_all.begin(), paper.rule->requires_all.end(), id) !=
                    paper.rule->requires_all.end())
              want(d_.law.paper(id));
      }
    return names;
  }

  /// The tenant's own signature or consent is not the landlord's to send.
  static bool can_be_asked(std::string_view paper) {
    return paper != "tenant-consent" && paper != "signatures-or-dissent" && paper != "certificate-of-mailing";
  }

  std::string paper_name(const std::string& id) const { return d_.law.paper(d_.rules.registry.paper(id)); }

  /// Records the person holds, offered as proof.
  void records() {
    std::vector<std::string> held;
    const Records& r = d_.c.records;
    if (r.move_in.made == Tri(true) && r.move_in.tenant_has_copy == Tri(true))
      held.push_back(d_.say("letter.record.checklist"));
    if (r.photos_at_move_in == Tri(true)) held.push_back(d_.say("letter.record.photos-in"));
    if (r.photos_at_move_out == Tri(true)) held.push_back(d_.say("letter.record.photos-out"));
    if (!held.empty() && disputes())
      d_.may("records", ParagraphRole::line, d_.say("letter.records", {{"records", listed(held, d_.speech)}}));
  }

  void ask() {
    const std::string day = d_.speech.day(by_);
    switch (recipe_.asks) {
    case Asks::papers:
      d_.must("ask", ParagraphRole::ask, d_.say("letter.ask.papers", {{"day", day}}));
      return;
    case Asks::address:
      d_.must("ask", ParagraphRole::ask, d_.say("letter.ask.address"));
      return;
    case Asks::inspection:
      d_.must("ask", ParagraphRole::ask, d_.say(leaving() ? "letter.ask.inspection" : "letter.ask.inspection.after"));
      return;
    default:
      d_.must("ask", ParagraphRole::ask, ask_to_pay(day));
      return;
    }
  }

  std::string ask_to_pay(const std::string& day) const {
    const Totals& t = d_.a.totals;
    Sentences text;
    if (!claim_.known) {
      const Money off = t.claimed - t.fair.likely();
      if (off > Money()) text.add(d_.say("letter.ask.take-off", {{"sum", d_.money(off)}, {"day", day}}));
      else text.add(d_.say(disputes() ? "letter.ask.explain" : "letter.ask.nothing", {{"day", day}}));
      return text.take();
    }
    if (claim_.forfeited && recipe_.forfeit) return forfeited_ask(day);
    ask_on_merits(text, day);
    if (recipe_.forfeit) perhaps_forfeited(text);
    return text.take();
  }

  /// Where a rule that needs care would let nothing be kept: what would then be due, as an if.
  void perhaps_forfeited(Sentences& text) const {
    const ForfeitResult* forfeit = d_.law.forfeited(Footing::loose);
    if (!forfeit) return;
    const Money all = d_.a.law->award().sum_due_forfeited.likely();
    if (all <= d_.a.totals.shortfall->likely()) return;
    text.add(d_.law.rule_says(*forfeit->rule, forfeit->rule->text, "letter.forfeit.law"));
    text.add(d_.say("letter.ask.if-forfeited", {{"sum", d_.money(all)}}));
  }

  void ask_on_merits(Sentences& text, const std::string& day) const {
    const Totals& t = d_.a.totals;
    const Money due = t.shortfall->likely();
    if (due.is_zero()) {
      const Money owed = t.owed_by_tenant->likely();
      if (recipe_.missed && !d_.law.missed().empty()) text.add(d_.say("letter.ask.missed", {{"day", day}}));
      else if (!owed.is_zero()) text.add(d_.say("letter.ask.i-owe", {{"sum", d_.money(owed)}, {"day", day}}));
      else if (d_.a.totals.shortfall->exact()) text.add(d_.say("letter.ask.nothing", {{"day", day}}));
      else text.add(d_.say("letter.ask.explain", {{"day", day}}));
      return;
    }
    text.add(d_.say("letter.ask.pay", {{"sum", d_.money(due)}, {"day", day}}));
    if (!t.shortfall->exact()) {
      if (const Money sure = t.shortfall->low(); !sure.is_zero() && sure < due)
        text.add(d_.say("letter.ask.sure", {{"sum", d_.money(t.shortfall->low())}}));
      text.add(d_.say("letter.ask.correct"));
    }
    if (!d_.c.statement.refund_paid && !d_.c.statement.stated_refund) text.add(d_.say("letter.ask.less-paid"));
  }

  /// Where a day or paper that was missed means that nothing may be kept.
  std::string forfeited_ask(const std::string& day) const {
    Sentences text;
    const ForfeitResult* forfeit = d_.law.forfeited();
    text.add(d_.law.rule_says(*forfeit->rule, forfeit->rule->text, "letter.forfeit.law"));
    if (claim_.sum.is_zero()) return text.add(d_.say("letter.ask.nothing", {{"day", day}})).take();
    text.add(d_.say("letter.ask.forfeited", {{"sum", d_.money(claim_.sum)}, {"day", day}}));
    const Money merits = d_.a.totals.shortfall->likely();
    if (!merits.is_zero() && merits < claim_.sum) text.add(d_.say("letter.ask.merits", {{"sum", d_.money(merits)}}));
    return text.take();
  }

  void closing() {
    const std::string day = d_.speech.day(by_);
    if (recipe_.asks == Asks::inspection) d_.may("reply", ParagraphRole::closing, d_.say("letter.reply.soon"));
    else if (recipe_.asks != Asks::address)
      d_.may("reply", ParagraphRole::closing, d_.say("letter.reply", {{"day", day}}));
    if (is(LetterKind::second_letter)) {
      Paragraph* next = d_.may("next-step", ParagraphRole::closing, d_.say("letter.next-step"));
      if (next) next->on = false; // a neutral word on what comes next; the person decides
    }
    if (recipe_.asks == Asks::pay) {
      d_.may("settle", ParagraphRole::closing, d_.say("letter.settle"));
      d_.may("rights", ParagraphRole::closing, d_.say("letter.rights"));
    }
    d_.must("sign", ParagraphRole::closing, d_.say("letter.sign.tenant"));
  }

  void warnings() {
    d_.warn("placeholders", d_.say("letter.warn.placeholders"));
    warn_about_law(d_);
    if (is(LetterKind::after_deadline) && d_.law.missed().empty())
      d_.warn("no-missed-day", d_.say("letter.warn.no-missed-day"));
    if (recipe_.asks == Asks::pay && claim_.known && claim_.sum.is_zero())
      d_.warn("nothing-to-claim", d_.say("letter.warn.nothing-to-claim"));
    if (recipe_.lines && d_.a.lines.empty() && !is(LetterKind::after_deadline) && !is(LetterKind::demand))
      d_.warn("no-charges", d_.say("letter.warn.no-charges"));
    if (is(LetterKind::second_letter) && !earlier_letter())
      d_.warn("no-first-letter", d_.say("letter.warn.no-first-letter"));
    if (recipe_.asks == Asks::pay && !recipe_.missed && !d_.law.missed().empty())
      d_.warn("missed-day", d_.say("letter.warn.missed-day"));
    send_by();
  }

  /// The tenant's own duties that are still open: their last days.
  void send_by() {
    if (!d_.law.there()) return;
    const LawWords words(*d_.a.law, d_.rules.registry, d_.rules.holidays, d_.speech);
    for (const DutyResult& duty : d_.a.law->duties()) {
      if (duty.duty->who != Who::tenant || duty.state != DutyState::open || !duty.last || duty.last->latest == last_day)
        continue;
      d_.warn("send-by", d_.say(duty.duty->tenant_loses ? "letter.warn.send-by.loses" : "letter.warn.send-by",
                                {{"duty", words.label(*duty.duty)}, {"day", d_.speech.day(duty.last->earliest)}}));
    }
  }

  Draft& d_;
  Recipe recipe_;
  Claim claim_;
  Day by_;
};

} // namespace

void write_tenant_letter(Draft& d) { TenantLetter(d).write(); }

} // namespace wearline
