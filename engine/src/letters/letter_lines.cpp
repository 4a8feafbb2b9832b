#include "letters/letter_lines.h"

#include "wording/line_text.h"

#include <algorithm>

namespace wearline {

namespace {

bool among(std::string_view code, std::initializer_list<std::string_view> codes) {
  return std::find(codes.begin(), codes.end(), code) != codes.end();
}

/// The guide's word counts as published only if some source is more than practice (as on the page).
std::string_view reason_name(const WearOpinion& opinion) {
  std::string_view name = opinion.reason;
  if (name.substr(0, 7) == "reason.") name.remove_prefix(7);
  const bool practice = opinion.finding && std::all_of(opinion.finding->sources.begin(), opinion.finding->sources.end(),
                                                       [](const Reference* r) { return r->read == "practice"; });
  if (practice && name == "guide-wear") return "practice-wear";
  if (practice && name == "guide-damage") return "practice-damage";
  return name;
}

/// Steps a letter leaves out: the verdict is said as its reason, and what the law says has a paragraph of its own.
bool is_arithmetic(const Step& step) {
  return !among(step.code,
                {"law-barred", "law-perhaps-barred", "cleaning-not-aged", "repair-not-aged", "quality-untold"}) &&
         step.code.substr(0, 7) != "reason.";
}

/// "1" where both count the same thing ("1 of 3 rooms"), else "1 wall".
std::string part_of(const Step& step, const Speech& speech) {
  Quantity part = step.part;
  if (part.unit == step.whole.unit) part.unit.clear();
  return speech.quantity(part);
}

std::string step_sentence(const Draft& d, std::size_t line, const Step& step) {
  if (!d.has("letter.step.", step.code)) return step_text(step, d.a.lines[line], d.speech);
  const Speech& s = d.speech;
  return d.say("letter.step.", step.code,
               {{"from", s.money(step.from)},
                {"to", s.money(step.to)},
                {"share", s.percent(step.share)},
                {"age", s.length(step.age)},
                {"life", s.length(step.life)},
                {"part", part_of(step, s)},
                {"whole", s.quantity(step.whole)}});
}

std::string sum_with_mark(const Draft& d, const Range<Money>& m) {
  return m.exact() ? d.money(m.low()) : d.say("letter.table.open", {{"sum", d.money(m.likely())}});
}

void row(Paragraph& p, std::string name, std::string sum) { p.rows.push_back({std::move(name), std::move(sum)}); }

} // namespace

Stand stand_of(const Line& line, const LineAssessment& judged) {
  const LineResult& r = judged.result;
  if (line.credit == Tri(true)) return Stand::credit;
  if (!line.amount) return Stand::no_amount;
  if (r.fair.low() == r.claimed) return Stand::accepted;
  return r.fair.exact() ? Stand::questioned : Stand::open;
}

std::vector<std::size_t> lines_that_are(Stand stand, const Assessment& a) {
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < a.lines.size(); ++i)
    if (stand_of(a.c.lines[i], a.lines[i]) == stand) out.push_back(i);
  return out;
}

std::string reason(const Draft& d, std::size_t line, std::string_view voice) {
  const WearOpinion& opinion = d.a.lines[line].result.opinion;
  if (d.a.lines[line].result.verdict == Verdict::barred) return {}; // the law's own paragraph says it
  if (opinion.turn) return opinion.turn->text.in(d.speech.language());
  const std::string_view name = reason_name(opinion);
  return d.has(voice, name) ? d.say(voice, name) : why(d.a.lines[line], d.speech);
}

std::string arithmetic(const Draft& d, std::size_t line) {
  Sentences text;
  const Step* aged = nullptr; // its sum takes in the parts that do not age, which come after it
  Money unaged;
  const auto close = [&] {
    if (!unaged.is_zero()) text.add(d.say("letter.step.part-not-aged", {{"to", d.money(unaged)}}));
    if (aged) text.add(d.say("letter.step.makes", {{"to", d.money(aged->to)}}));
    aged = nullptr;
    unaged = Money();
  };
  for (const Step& step : d.a.lines[line].steps) {
    if (step.code == "part-not-aged") {
      unaged += step.to;
      continue;
    }
    if (among(step.code, {"labour-may-not-age", "mark-up"})) { // parts too, within the aged sum
      text.add(step_sentence(d, line, step));
      continue;
    }
    close();
    if (!is_arithmetic(step)) continue;
    if (step.code == "age-unknown" && step.high.is_zero()) {
      text.add(d.say("letter.step.past-life", {{"life", d.speech.length(step.life)}}));
      continue;
    }
    text.add(step_sentence(d, line, step));
    if (among(step.code, {"age-share", "age-from-move-in", "share-by-stay"})) aged = &step;
  }
  close();
  return text.take();
}

std::string requests(const Draft& d, std::size_t line) {
  const Line& l = d.c.lines[line];
  const LineResult& r = d.a.lines[line].result;
  const bool debt = r.verdict == Verdict::not_about_condition;
  Sentences text;
  for (const Question& q : d.a.questions) {
    if (q.line != line || !d.has("letter.request.", q.code)) continue;
    // What moves less than a twentieth of the charge is not worth a letter.
    if (l.amount && q.swing < r.claimed.part({1, 20})) continue;
    if (debt && l.kind == "rent" && q.code != "rent-period") continue;
    const bool hours = q.asks.size() > 6 && q.asks.compare(q.asks.size() - 6, 6, "/hours") == 0;
    const std::string_view code = hours ? std::string_view("own-hours")
                                  : debt && among(q.code, {"finding", "finding-missing", "cause"})
                                      ? std::string_view("debt")
                                      : q.code;
    text.add(d.say("letter.request.", code, {{"whole", l.charged ? d.speech.quantity(*l.charged) : std::string()}}));
  }
  return text.take();
}

std::string questioned(const Draft& d, std::size_t line) {
  const LineAssessment& judged = d.a.lines[line];
  const LineResult& r = judged.result;
  const Stand stand = stand_of(d.c.lines[line], judged);
  const std::string_view voice = d.letter.kind == LetterKind::objection ? "letter.objection." : "letter.line.";
  const Money likely = r.fair.likely();
  const std::string fair = d.money(likely), rest = d.money(r.claimed - likely), all = d.money(r.claimed);
  Sentences text;
  text.add(d.say("letter.line.head", {{"charge", d.charge(line)}, {"sum", all}}));
  // An open reason says nothing about a sum that is certain all the same (the thing was worn out, say).
  if (stand == Stand::open || r.opinion.certain()) text.add(reason(d, line, "letter.reason."));
  const bool nothing = r.opinion.most == Share::none();
  if (!nothing) text.add(arithmetic(d, line)); // wear has no price to work out
  const std::string_view sum = likely.is_zero() ? "nothing" : likely == r.claimed ? "whole" : "part";
  const std::string wish = stand == Stand::open ? requests(d, line) : std::string();
  if (wish.empty()) return text.add(d.say(voice, sum, {{"fair", fair}, {"rest", rest}, {"sum", all}})).take();
  if (r.ages && r.age_open && !d.c.lines[line].installed && judged.turning_point &&
      judged.turning_point->floor.is_zero() && !nothing)
    text.add(d.say("letter.line.turning", {{"day", d.speech.day(judged.turning_point->day)}}));
  if (d.letter.kind == LetterKind::objection) text.add(d.say("letter.objection.open"));
  text.add(wish);
  return text.add(d.say("letter.until.", sum, {{"fair", fair}})).take();
}

void add_charges_table(Draft& d, std::string_view head_prefix) {
  if (d.a.lines.empty()) return;
  Paragraph& p = d.must("charges", ParagraphRole::table, d.say(head_prefix, "title"));
  for (const std::string_view column : {"charge", "charged", "fair", "rest"})
    p.head.push_back(d.say(head_prefix, column));
  for (std::size_t i = 0; i < d.a.lines.size(); ++i) {
    const LineResult& r = d.a.lines[i].result;
    p.lines.push_back(d.c.lines[i].id);
    if (!d.c.lines[i].amount) {
      p.rows.push_back({d.label(i), d.say("letter.table.no-amount"), "", ""});
      continue;
    }
    p.rows.push_back({d.label(i), d.money(r.claimed), sum_with_mark(d, r.fair), d.money(r.claimed - r.fair.likely())});
  }
  const Totals& t = d.a.totals;
  p.rows.push_back({d.say("letter.table.total"), d.money(t.claimed), sum_with_mark(d, t.fair),
                    d.money(t.claimed - t.fair.likely())});
}

void add_sums_table(Draft& d, std::string_view voice) {
  const Totals& t = d.a.totals;
  if (!t.deposit) return;
  Paragraph& p = d.must("sums", ParagraphRole::table, d.say("letter.sums.title"));
  p.head = {d.say("letter.sums.what"), d.say("letter.sums.sum")};
  row(p, d.say("letter.sums.deposit"), d.money(*t.deposit));
  const Money interest = t.interest.likely();
  if (!interest.is_zero()) row(p, d.say("letter.sums.interest"), d.money(interest));
  row(p, d.say(voice, "fair"), d.money(Money() - t.fair.likely()));
  const Money left = *t.deposit + interest - t.fair.likely();
  if (left < Money()) {
    row(p, d.say(voice, "beyond"), d.money(Money() - left));
    if (!t.paid_back.is_zero()) row(p, d.say("letter.sums.paid-back"), d.money(t.paid_back));
    return;
  }
  row(p, d.say(voice, "refund"), d.money(left));
  const bool known = d.c.statement.refund_paid.has_value();
  const bool stated = !known && d.c.statement.stated_refund.has_value();
  if (!known && !stated) return;
  if (t.paid_back > left) {
    row(p, d.say(known ? "letter.sums.paid-back" : "letter.sums.stated-back"), d.money(t.paid_back));
    return;
  }
  row(p, d.say(known ? "letter.sums.paid-back" : "letter.sums.stated-back"), d.money(Money() - t.paid_back));
  row(p, d.say("letter.sums.due"), d.money(left - t.paid_back));
}

} // namespace wearline
