#include "wording/line_text.h"

namespace wearline {

namespace {

bool reason_is_said(std::string_view code) { return code.substr(0, 7) == "reason."; }

/// Guides that say the same are named up to this many.
constexpr std::size_t named_guides = 2;

/// Who says so: the guides of the place's country by name, without one those of another country, without any guide
/// decided disputes, without them practice.
std::string by_guide(const Finding& finding, bool wear, std::string_view place, const Speech& speech) {
  std::string names;
  std::size_t count = 0;
  bool published = false, abroad = false;
  for (const Reference* r : nearest_first(finding.sources, place)) {
    const bool far = nearness(*r, place) == Nearness::abroad;
    if (r->read == "practice" || (published && far && !abroad)) continue;
    if (!published) abroad = far;
    published = true;
    if (r->name.empty() || count == named_guides) continue;
    if (count > 0) names += ' ' + speech.say("audit.several-lines") + ' ';
    names += r->name.in(speech.language());
    ++count;
  }
  if (published && count > 0) {
    // That they are from elsewhere is said first: who sees only the beginning must not take them for guides of the
    // place.
    const std::string_view key = abroad ? wear ? "reason.guide-wear-abroad" : "reason.guide-damage-abroad"
                                 : wear ? "reason.guide-wear"
                                        : "reason.guide-damage";
    return speech.say(key, {{"guides", names}});
  }
  std::string text = speech.say(published ? wear ? "reason.decided-wear" : "reason.decided-damage"
                                : wear    ? "reason.practice-wear"
                                          : "reason.practice-damage");
  if (abroad) text += ' ' + speech.say("reason.from-abroad");
  return text;
}

} // namespace

std::string thing_of(const Line& line, const Subject& subject, const Speech& speech) {
  if (subject.element) return subject.element->label.in(speech.language());
  return line.text;
}

std::string verdict_text(const LineAssessment& line, const Speech& speech) {
  const LineResult& r = line.result;
  const bool worn_out = r.verdict == Verdict::chargeable_damage && r.depreciates && r.fair.high().is_zero() &&
                        r.remaining.high == Share::none() && !r.claimed.is_zero();
  if (worn_out) return speech.say("verdict.damage-worn-out");
  std::string key = "verdict.";
  key += name_of(r.verdict);
  return speech.say(key);
}

std::string alike_text(const Alike& alike, const Speech& speech) {
  std::string how;
  const auto add = [&](std::size_t count, std::string_view key) {
    if (count == 0) return;
    if (!how.empty()) how += ", ";
    how += speech.say(key, {{"count", std::to_string(count)}});
  };
  add(alike.nothing, "alike.nothing");
  add(alike.part, "alike.part");
  add(alike.all, "alike.all");
  std::string key = "alike.";
  key += name_of(alike.likeness);
  return speech.say(key, {{"count", std::to_string(alike.most_alike.size())}, {"how", how}});
}

std::string why(const LineAssessment& line, std::string_view place, const Speech& speech) {
  const WearOpinion& opinion = line.result.opinion;
  if (opinion.turn) return opinion.turn->text.in(speech.language());
  const bool wear = opinion.reason == "reason.guide-wear";
  if (opinion.finding && (wear || opinion.reason == "reason.guide-damage"))
    return by_guide(*opinion.finding, wear, place, speech);
  return speech.say(opinion.reason, {{"share", speech.percent(opinion.likely)}});
}

/// What these steps say where they leave the sum as it was.
constexpr std::string_view unmoved[] = {
    "step.age-from-move-in.same", "step.age-unknown.same",     "step.area-share.same",           "step.audit-drop.same",
    "step.audit-limit.same",      "step.clean-as-before.same", "step.condition-at-move-in.same", "step.law-barred.same",
    "step.law-limit.same",        "step.remaining-share.same", "step.share-by-stay.same"};

std::string step_text(const Step& step, const LineAssessment& line, std::string_view place, const Speech& speech) {
  if (reason_is_said(step.code)) return why(line, place, speech);
  std::string key = "step.";
  key += step.code;
  if (step.code == "rent-by-day" && step.low == step.high) key = "step.rent-by-day.same";
  if (step.from == step.to)
    for (const std::string_view same : unmoved)
      if (same.substr(0, same.rfind('.')) == key) {
        key = same;
        break;
      }
  if (step.code == "age-unknown" && step.high.is_zero()) key = "step.age-unknown.past-life";
  std::string text = speech.fill(key, [&](std::string_view name, std::string& out) {
    if (name == "from") out += speech.money(step.from);
    else if (name == "to") out += speech.money(step.to);
    else if (name == "low") out += speech.money(step.low);
    else if (name == "high") out += speech.money(step.high);
    else if (name == "share") out += speech.percent(step.share);
    else if (name == "age") out += speech.length(step.age);
    else if (name == "life") out += speech.about(step.life);
    else if (name == "thing") out += line.subject.element ? line.subject.element->label.in(speech.language()) : "";
    else if (name == "part") out += speech.quantity(step.part);
    else if (name == "whole") out += speech.quantity(step.whole);
    else return false;
    return true;
  });
  if (step.said && !step.said->empty() && step.code.substr(0, 4) != "area") {
    text += ' ';
    text += step.said->in(speech.language());
  }
  return text;
}

std::string source_basis_text(std::string_view read, const Speech& speech) {
  std::string key = "read.";
  key += read;
  return speech.say(key);
}

std::string question_text(const Question& question, const Case& c, const std::vector<LineAssessment>& lines,
                          const Speech& speech) {
  std::string key = "question.";
  key += question.code;
  std::string thing, whole, id;
  if (question.line != Question::no_line) {
    const Line& line = c.lines[question.line];
    id = line.id;
    thing = thing_of(line, lines[question.line].subject, speech);
    if (line.charged) whole = speech.quantity(*line.charged);
  }
  std::string fact;
  if (question.code == "words") fact = speech.say("words.field." + question.asks.substr(question.asks.rfind('/') + 1));
  const std::string_view said =
      question.said ? std::string_view(question.said->in(speech.language())) : std::string_view();
  // Who charges has the papers that the other side has to ask for.
  if (c.side == "landlord" && speech.has(key + "-landlord")) key += "-landlord";
  return speech.say(key, {{"line", id}, {"thing", thing}, {"whole", whole}, {"said", said}, {"fact", fact}});
}

std::string audit_text(const AuditNote& note, const Case& c, const Speech& speech) {
  std::string ids;
  for (auto at = note.lines.rbegin(); at != note.lines.rend(); ++at) {
    if (!ids.empty()) ids += ' ' + speech.say("audit.several-lines") + ' ';
    ids += c.lines[*at].id;
  }
  if (note.said) return speech.say("audit.clash", {{"lines", ids}, {"said", note.said->in(speech.language())}});
  std::string key = "audit.";
  key += note.code;
  return speech.say(key, {{"lines", ids}, {"stated", speech.money(note.stated)}, {"found", speech.money(note.found)}});
}

} // namespace wearline
