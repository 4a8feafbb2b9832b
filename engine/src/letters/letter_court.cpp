// The sheet for court, or for whoever decides: it stays with its reader. On one page: the last day to file, whom to
// name, what to ask for, the risk, the grounds, the charges, what to bring and what to say.

#include "law/applies.h"
#include "letters/letter_groups.h"
#include "letters/letter_parts.h"
#include "letters/letter_writers.h"

#include <algorithm>

namespace wearline {

namespace {

constexpr std::size_t most_grounds = 5; // more do not fit on a page

class CourtSheet {
public:
  explicit CourtSheet(Draft& d) : d_(d), claim_(claim_of(d)) {}

  void write() {
    d_.must("title", ParagraphRole::opening, d_.letter.title);
    d_.must("date", ParagraphRole::date, d_.speech.day(d_.a.today));
    d_.must("file-by", ParagraphRole::opening, file_by());
    d_.must("who", ParagraphRole::opening, d_.say("letter.court.who"));
    where();
    sums();
    d_.may("held-apart", ParagraphRole::opening, d_.say_apart("letter.court.held-apart"));
    risk();
    grounds();
    charges();
    exhibits();
    if (claims_something()) d_.must("say", ParagraphRole::line, statement());
    d_.must("help", ParagraphRole::closing,
            d_.say(court_decides(d_) ? "letter.court.help" : "letter.court.help.office"));
    warn_about_law(d_);
    add_caution(d_);
  }

private:
  std::string file_by() const {
    if (const auto lapsed = d_.law.lapsed())
      return d_.say("letter.court.lapsed", {{"day", d_.speech.day(*lapsed)}, {"forum", forum(d_)}});
    const DeadlineResult* sue = d_.law.tenant_deadline({"sue"}, DeadlineState::open);
    if (sue && sue->last && sue->last->latest != max_day)
      return d_.say("letter.court.file-by", {{"day", d_.speech.day(sue->last->earliest)}});
    return d_.say("letter.court.file-by.ask");
  }

  void where() {
    Sentences text;
    if (d_.law.there())
      for (const Remark& rule : d_.a.law->pack().small_claims)
        if (applies(rule, d_.a.law->view()) != Tri::no) text.add(d_.law.rule_says(rule, "letter.court.limit"));
    if (const DeadlineResult* wait = notice_of_suit(d_))
      text.add(d_.law.says(*wait->deadline, d_.say("letter.court.notice")));
    text.add(d_.say("letter.court.waiver"));
    d_.may("where", ParagraphRole::opening, text.take());
  }

  /// What to ask for, in parts.
  void sums() {
    if (!claim_.deposit) {
      d_.must("claim", ParagraphRole::opening, d_.say("letter.court.no-deposit"));
      return;
    }
    if (!claims_something()) {
      d_.must("claim", ParagraphRole::opening, d_.say("letter.court.nothing"));
      return;
    }
    Paragraph& p = d_.must("claim", ParagraphRole::table, d_.say("letter.court.claim"));
    p.head = {d_.say("letter.sums.what"), d_.say("letter.sums.sum")};
    const auto row = [&](std::string_view key, std::string sum) { p.rows.push_back({d_.say(key), std::move(sum)}); };
    row(claim_.forfeited || d_.a.lines.empty() ? "letter.court.kept" : "letter.court.disputed",
        d_.money(claim_.sum - claim_.interest));
    if (!claim_.interest.is_zero()) row("letter.sums.interest", d_.money(claim_.interest));
    if (const Money more = may_be_added(); more > Money())
      row("letter.court.more", d_.say("letter.court.up-to", {{"sum", d_.money(more)}}));
    Sentences less;
    less.add(d_.say("letter.court.less"));
    if (d_.law.there() && d_.a.law->award().open) less.add(d_.say("letter.court.open"));
    d_.must("less", ParagraphRole::opening, less.take());
  }

  Money may_be_added() const {
    if (!d_.law.days_run() || !d_.a.law->award().known) return {};
    return std::max(d_.a.law->award().most - claim_.sum, Money());
  }

  /// What the landlord can ask for in turn.
  void risk() {
    const auto owed = owed_beyond(d_, claim_);
    const Money charges = d_.a.totals.against_deposit().high();
    Sentences text;
    // What was kept and is left undisputed is no risk any more.
    if (claim_.deposit && !claims_something() && (!owed || owed->high().is_zero())) return;
    if (owed && !owed->high().is_zero()) text.add(d_.say("letter.court.owes", {{"sum", d_.money(owed->high())}}));
    else if (!charges.is_zero()) text.add(d_.say("letter.court.counterclaim", {{"sum", d_.money(charges)}}));
    d_.may("risk", ParagraphRole::opening, text.take());
  }

  bool about_interest(const MissedDay& day) const {
    return std::all_of(day.deadlines.begin(), day.deadlines.end(), [&](const DeadlineResult* deadline) {
      return d_.law.name_of(*deadline->deadline) == "pay-interest";
    });
  }

  /// What the claim rests on, strongest first: a missed day, missing papers, the rule that forfeits, rules that bar
  /// charges, what the law may add; interest last.
  void grounds() {
    if (!claims_something()) return;
    std::vector<std::string> items;
    const auto add = [&](std::string text) {
      if (!text.empty() && items.size() < most_grounds && std::find(items.begin(), items.end(), text) == items.end())
        items.push_back(std::move(text));
    };
    const auto days = d_.law.missed_days();
    const auto add_days = [&](bool interest) {
      for (const MissedDay& day : days)
        if (about_interest(day) == interest)
          add(d_.law.says(d_.law.spoken(*day.deadlines.front()),
                          Sentences().add(due_text(d_, day)).add(done_late(d_, day)).take()) +
              (day.perhaps ? ' ' + d_.say("letter.court.unless") : std::string()));
    };
    add_days(false);
    for (const MissedDay& day : d_.law.days_if_unpaid())
      add(d_.law.says(d_.law.spoken(*day.deadlines.front()), due_text(d_, day)));
    for (const DocumentResult* document : d_.law.defects()) {
      const std::string& deadline = document->rule->text_in(d_.speech.language());
      const bool said_here = d_.speech.language() == "en" || !document->rule->es.text.empty();
      add(said_here ? d_.law.says(*document->rule, opening(deadline, document->rule->text))
                    : d_.law.rule_says(*document->rule, "letter.defect.law"));
    }
    if (claim_.forfeited) add(d_.law.rule_says(*claim_.forfeited->rule, "letter.forfeit.law"));
    std::vector<std::size_t> disputed;
    for (std::size_t i = 0; i < claim_.lines.size(); ++i)
      if (claim_.lines[i].back > Money()) disputed.push_back(i);
    const auto said = said_of_all(d_, claim_); // the rule on the papers says it
    for (const BarOnLines& bar : d_.law.bars(disputed))
      if (bar.effect == "bar" && std::find(said.begin(), said.end(), bar.rule) == said.end())
        add(d_.say("letter.law.on",
                   {{"charges", d_.charges(bar.lines)}, {"says", d_.law.rule_says(*bar.rule, "letter.bar.bar")}}));
    // What makes up the sum on top, each rule of it.
    if (may_be_added() > Money())
      for (const RemedyResult& remedy : d_.a.law->remedies())
        if (remedy.applies == Tri::yes && remedy.certain && remedy.most > claim_.sum)
          add(d_.law.rule_says(*remedy.rule, "letter.penalty.law"));
    if (const RemedyResult* remedy = d_.law.possible_penalty())
      add(d_.law.rule_says(*remedy->rule, "letter.penalty.law"));
    add_days(true);
    if (Paragraph* p = add_list(d_, "grounds", ParagraphRole::list, d_.say("letter.court.grounds"), items))
      p->optional = false;
  }

  bool claims_something() const { return !claim_.deposit || worth_a_letter(claim_, d_) || d_.law.penalty() != nullptr; }

  void charges() {
    if (d_.a.lines.empty()) return;
    Paragraph& p = d_.must("charges", ParagraphRole::table, "");
    for (const std::string_view column :
         {"letter.charges.charge", "letter.charges.charged", "letter.charges.disputed", "letter.charges.why"})
      p.head.push_back(d_.say(column));
    const std::size_t most = static_cast<std::size_t>(d_.rules.letters.note_charges);
    for (std::size_t i = 0; i < d_.a.lines.size(); ++i) {
      p.lines.push_back(d_.c.lines[i].id);
      if (i >= most) continue;
      const LineStand& line = claim_.lines[i];
      const std::string_view ground = ground_of(d_, i, line.stand);
      p.rows.push_back(
          {d_.label(i),
           line.stand == Stand::no_amount ? d_.say("letter.charges.no-amount") : d_.money(d_.a.lines[i].result.claimed),
           d_.money(line.back), ground.empty() ? std::string() : d_.say("letter.ground.", ground)});
    }
    if (d_.a.lines.size() > most)
      p.rows.push_back({d_.say("letter.note.more", {{"n", std::to_string(d_.a.lines.size() - most)}}), "", "", ""});
  }

  /// Papers in order, with a letter each; those about single charges name them.
  void exhibits() {
    std::vector<std::string> documents;
    const Case& c = d_.c;
    const auto add = [&](std::string_view key, Wording::Args args = {}) {
      documents.push_back(std::string(1, static_cast<char>('A' + documents.size())) + ": " + d_.say(key, args) + '.');
    };
    std::vector<std::size_t> disputed;
    for (std::size_t i = 0; i < claim_.lines.size(); ++i)
      if (claim_.lines[i].back > Money() && about_condition(i)) disputed.push_back(i);
    add("letter.evidence.lease");
    add("letter.evidence.deposit");
    if (c.statement.statement_received != Tri::no && !c.lines.empty()) add("letter.evidence.statement");
    if (!d_.law.missed().empty() || !d_.law.days_if_unpaid().empty()) add("letter.evidence.days");
    if (c.tenancy.forwarding_address_given) add("letter.evidence.address");
    if (c.records.move_in.made == Tri::yes) add("letter.evidence.checklist");
    if (c.records.move_out.made == Tri::yes) add("letter.evidence.checklist-out");
    if (!disputed.empty()) add("letter.evidence.photos", {{"charges", d_.charges(disputed)}});
    if (has_cleaning(d_, disputed)) add("letter.evidence.cleaning");
    add("letter.evidence.letters");
    Sentences all; // in one paragraph: the sheet has one page
    all.add(d_.say("letter.evidence.title"));
    for (const std::string& document : documents) all.add(document);
    d_.must("evidence", ParagraphRole::line, all.take());
    d_.may("people", ParagraphRole::line, d_.say("letter.evidence.people"));
  }

  /// Photos show the home, not a fee or rent.
  bool about_condition(std::size_t line) const {
    const Element* element = d_.a.lines[line].subject.element;
    return d_.a.lines[line].result.verdict != Verdict::non_damage_charge && (!element || element->about_condition);
  }

  bool is_consent(DocumentId document) const {
    const std::string& name = d_.rules.registry.documents[index(document)].id;
    return name == "tenant-consent" || name == "signatures-or-dissent";
  }

  /// A short statement to read out; only what was entered.
  std::string statement() const {
    Sentences text;
    text.add(d_.say("letter.court.say"));
    const auto& out = d_.c.tenancy.left();
    if (out && out->earliest <= d_.a.today) text.add(d_.say(moved_out(d_), {{"when", d_.when(*out)}}));
    if (claim_.deposit)
      text.add(d_.say(d_.deposits ? "letter.facts.deposits.sum" : "letter.facts.deposit",
                      {{"sum", d_.money(*claim_.deposit)}}));
    if (claim_.paid_known)
      text.add(claim_.paid.is_zero() ? d_.say("letter.court.say.nothing-back")
                                     : d_.say("letter.court.say.paid-back", {{"sum", d_.money(claim_.paid)}}));
    const Event* asked = earlier_letter(d_.c);
    if (asked && asked->what == "tenant-demand" && asked->on.known())
      text.add(d_.say("letter.court.say.asked", {{"when", d_.when(asked->on)}}));
    std::string ground;
    for (const MissedDay& day : d_.law.missed_days())
      if (const auto names = deadline_names(d_, day); ground.empty() && !names.empty() && !about_interest(day))
        ground = Sentences()
                     .add(d_.say(names.size() == 1 ? "letter.due.one" : "letter.due.many",
                                 {{"what", listed(names, d_.speech)}, {"day", d_.speech.day(day.last)}}))
                     .add(done_late(d_, day))
                     .take();
    for (const MissedDay& day : d_.law.days_if_unpaid())
      if (const auto names = deadline_names(d_, day); ground.empty() && !names.empty())
        ground = d_.say("letter.due.one", {{"what", names.front()}, {"day", d_.speech.day(day.last)}});
    if (ground.empty())
      for (const DocumentResult* document : d_.law.defects())
        if (ground.empty() && !document->lacking.empty() && !d_.law.document(document->lacking.front()).empty())
          ground = is_consent(document->lacking.front())
                       ? d_.say("letter.defect.consent")
                       : d_.say("letter.court.say.lacking", {{"papers", d_.law.document(document->lacking.front())}});
    text.add(ground);
    if (claim_.forfeited) text.add(d_.law.because(*claim_.forfeited->rule));
    const auto disputed = grounds_said();
    for (std::size_t at = 0; at < disputed.size(); at += 2) { // two to a sentence that is read out
      const auto first = disputed.begin() + static_cast<std::ptrdiff_t>(at);
      const std::vector<std::string> pair(
          first, first + static_cast<std::ptrdiff_t>(std::min<std::size_t>(2, disputed.size() - at)));
      text.add(d_.say(at == 0 ? "letter.court.say.ground" : "letter.court.say.grounds.also",
                      {{"grounds", listed(pair, d_.speech)}}));
    }
    if (claim_.deposit && claim_.sum > Money()) {
      const bool adds = d_.law.possible_penalty() || may_be_added() > Money();
      text.add(d_.say(adds ? "letter.court.say.ask" : "letter.court.say.ask.only", {{"sum", d_.money(claim_.sum)}}));
    }
    return text.take();
  }

  /// Why each charge is disputed, no charge left out; what has no ground of its own is not shown.
  std::vector<std::string> grounds_said() const {
    std::vector<std::pair<std::string_view, std::vector<std::size_t>>> all;
    const auto put = [&](std::string_view ground, std::size_t line) {
      const auto at = std::find_if(all.begin(), all.end(), [&](const auto& known) { return known.first == ground; });
      if (at == all.end()) all.push_back({ground, {line}});
      else at->second.push_back(line);
    };
    std::vector<std::size_t> rest;
    for (std::size_t i = 0; i < claim_.lines.size(); ++i) {
      const std::string_view ground = ground_of(d_, i, claim_.lines[i].stand);
      if (ground.empty()) continue;
      if (d_.has("letter.court.say.ground.", ground)) put(ground, i);
      else rest.push_back(i);
    }
    std::vector<std::string> out;
    out.reserve(all.size() + 1);
    for (const auto& entry : all)
      out.push_back(d_.say("letter.court.say.ground.", entry.first, {{"charges", d_.charges(entry.second)}}));
    if (!rest.empty()) out.push_back(d_.say("letter.court.say.ground.rest", {{"charges", d_.charges(rest)}}));
    return out;
  }

  Draft& d_;
  Claim claim_;
};

} // namespace

void write_court_sheet(Draft& d) { CourtSheet(d).write(); }

} // namespace wearline
