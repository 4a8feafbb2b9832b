#include "letters/letter_groups.h"

#include <algorithm>
#include <array>

namespace wearline {

namespace {

constexpr std::size_t longest_quote = 60; // bytes: what still reads as a quotation within a sentence

/// Grounds in the order of their weight.
constexpr std::array<std::string_view, 20> grounds{
    "bar",  "rent-paid",   "relet",        "not-in-lease", "already-there", "not-mine",  "upkeep",
    "wear", "worn-out",    "nothing-left", "too-high",     "no-bill",       "not-shown", "unnamed",
    "debt", "likely-wear", "age",          "sum",          "unsure",        "no-amount"};

bool among(std::string_view code, std::initializer_list<std::string_view> codes) {
  return std::find(codes.begin(), codes.end(), code) != codes.end();
}

std::string_view reason_of(const WearOpinion& opinion) {
  std::string_view name = opinion.reason;
  if (name.substr(0, 7) == "reason.") name.remove_prefix(7);
  return name;
}

bool takes_age_off(const LineAssessment& line) {
  return std::any_of(line.steps.begin(), line.steps.end(), [](const Step& step) {
    return among(step.code, {"remaining-share", "age-from-move-in", "age-unknown", "share-by-stay"});
  });
}

/// Whether the tables of lives are near enough to one another for a letter to name the likely one: of a floor that may
/// be linoleum or oak the other side has a table of its own.
bool life_is_agreed(const Step& step) {
  return step.life_high.completed().count() <= 2 * step.life.completed().count();
}

/// By the life that is likely nothing of its worth is left.
bool outlived(const LineAssessment& line) {
  return std::any_of(line.steps.begin(), line.steps.end(), [](const Step& step) {
    return among(step.code, {"remaining-share", "age-from-move-in"}) && step.share.num == 0 && life_is_agreed(step);
  });
}

/// Whether its age is what speaks against it, by a life that may be named.
bool worn_by_age(const LineAssessment& line) {
  return std::any_of(line.steps.begin(), line.steps.end(), [](const Step& step) {
    return among(step.code, {"remaining-share", "age-from-move-in", "age-unknown", "share-by-stay"}) &&
           life_is_agreed(step);
  });
}

bool age_untold(const LineAssessment& line) {
  return std::any_of(line.steps.begin(), line.steps.end(), [](const Step& step) { return step.code == "age-unknown"; });
}

/// Keys have a price, and no age that anybody would ask for.
bool is_keys(const LineAssessment& line) {
  return line.subject.element && line.subject.element->kind == ChargeKind::keys;
}

/// Work that comes with every change of tenants.
bool routine(const LineAssessment& line) {
  const Finding* finding = line.subject.finding;
  return finding && finding->id.compare(0, 7, "routine") == 0;
}

/// "Carpet, dog": who did it, not what was wrong.
bool only_blames(const LineAssessment& line) {
  const Finding* finding = line.subject.finding;
  return finding && !finding->names_fault && !line.subject.harm_named;
}

std::string_view ground_when_refused(const LineAssessment& line, const Line& charge) {
  const LineResult& r = line.result;
  const std::string_view reason = reason_of(r.opinion);
  switch (r.verdict) {
  case Verdict::barred:
    return "bar";
  case Verdict::pre_existing:
    return "already-there";
  case Verdict::landlord_responsibility:
    return reason == "cause-not-tenant" ? "not-mine" : "upkeep";
  case Verdict::ordinary_wear:
    if (routine(line)) return "upkeep";
    // What outlived its life is not called wear: a crayon's mark is none, and "repaint" names none.
    if (reason == "worn-out" || (only_blames(line) && outlived(line))) return "worn-out";
    if (charge.cause != ChargeCause::pet || said_by_the_list(line, "cause")) return "wear";
    break; // what the sender's animal did is no wear of living there
  default:
    break;
  }
  // Rent after a new tenant came is not lost; nobody paid it twice.
  if (reason == "rent-paid" && charge.relet_on && charge.relet_on->known()) return "relet";
  if (among(reason, {"rent-paid", "not-in-lease"})) return reason;
  return worn_by_age(line) ? "worn-out" : "nothing-left";
}

std::string_view ground_when_open(const LineAssessment& line, const Line& charge) {
  const bool own_cause = charge.cause != ChargeCause::unknown;
  const LineResult& r = line.result;
  const std::string_view reason = reason_of(r.opinion);
  // Age leaves nothing of it, whatever else is open.
  if (worn_by_age(line) && r.depreciated_value.high() < small_change()) return "worn-out";
  const Verdict verdict = r.but_for_bars();
  const bool own_ground = verdict == Verdict::ordinary_wear || verdict == Verdict::landlord_responsibility;
  if (!own_ground && outlived(line) && (r.no_middle || r.fair.likely() < small_change())) return "worn-out";
  if (reason == "cost-not-shown") return "no-bill";
  if (among(reason, {"not-shown", "no-baseline", "not-on-record"})) return "not-shown";
  if (among(reason, {"nothing-named", "no-fault-named", "debt-unnamed"})) return "unnamed";
  if (verdict == Verdict::non_damage_charge) return charge.relet_on && charge.relet_on->known() ? "relet" : "debt";
  if (verdict == Verdict::landlord_responsibility) return "upkeep";
  // "Ordinary wear" is no answer to a cause that was named.
  const bool wear = reason == "guide-wear" && !own_cause && !said_by_the_list(line, "cause");
  // What the sender's animal did is no wear of living there.
  if (verdict == Verdict::ordinary_wear && charge.cause == ChargeCause::pet && !said_by_the_list(line, "cause"))
    return "no-bill";
  if (verdict == Verdict::ordinary_wear) return !wear ? "likely-wear" : routine(line) ? "upkeep" : "wear";
  if (r.opinion.cost_open) return "no-bill";
  // By its likely age nothing is left: the sender says so, whatever else is open. That nobody is likely to answer for
  // it is another reason.
  if (!r.no_middle && worn_by_age(line) && !age_untold(line) && r.depreciated_value.likely() < small_change())
    return "worn-out";
  if (verdict == Verdict::chargeable_damage && said_by_the_list(line, "cause") &&
      (!takes_age_off(line) || only_blames(line)))
    return "not-shown";
  if (r.depreciates && age_untold(line) && verdict == Verdict::chargeable_damage && !is_keys(line)) return "age";
  if (verdict == Verdict::chargeable_damage) return "sum";
  // Of a named harm that no list of findings knows nobody can say that it is wear.
  return line.subject.harm_named && line.subject.finding && !line.subject.finding->names_fault ? "not-shown" : "unsure";
}

const NamedGuide* guide_of(const Draft& d, std::size_t line) {
  const Finding* finding = d.a.lines[line].result.opinion.finding;
  const Element* element = d.a.lines[line].subject.element;
  // These lists tell the state of things; of cleaning they say nothing.
  if (!finding || finding->usual != Usual::wear || (element && element->group == "cleaning")) return nullptr;
  for (const NamedGuide& guide : d.rules.letters.guides) {
    if (d.c.jurisdiction.compare(0, guide.place.size(), guide.place) != 0) continue;
    if (std::any_of(finding->sources.begin(), finding->sources.end(),
                    [&](const Reference* r) { return r->id == guide.source; }))
      return &guide;
  }
  return nullptr;
}

/// The lists of wear that name the charges of a group.
std::string guides_text(const Draft& d, const DisputeGroup& group) {
  std::vector<std::pair<const NamedGuide*, std::vector<std::size_t>>> found;
  for (const std::size_t i : group.lines) {
    const NamedGuide* guide = guide_of(d, i);
    if (!guide) continue;
    auto at = std::find_if(found.begin(), found.end(), [&](const auto& f) { return f.first == guide; });
    if (at == found.end()) at = found.insert(found.end(), {guide, {}});
    at->second.push_back(i);
  }
  Sentences text;
  for (const auto& [guide, lines] : found)
    text.add(d.say(lines.size() < group.lines.size() ? "letter.guide.some"
                   : lines.size() == 1               ? "letter.guide.one"
                                                     : "letter.guide.all",
                   {{"guide", guide->name.in(d.speech.language())}, {"charges", d.charges(lines)}}));
  return text.take();
}

/// Nothing at all may be kept here without the tenant's consent.
bool needs_consent(const Draft& d) {
  if (!d.law.there()) return false;
  const auto& all = d.a.law->documents();
  return std::any_of(all.begin(), all.end(), [&](const DocumentResult& document) {
    const auto& wanted = document.rule->requires_all;
    return std::any_of(wanted.begin(), wanted.end(),
                       [&](DocumentId id) { return d.rules.registry.documents[index(id)].id == "tenant-consent"; });
  });
}

/// What the law says about the charges of a group, each rule once.
std::string law_text(const Draft& d, const DisputeGroup& group, std::vector<const Rule*>& said) {
  Sentences text;
  std::vector<BarOnLines> bars = d.law.bars(group.lines);
  std::stable_partition(bars.begin(), bars.end(), [](const BarOnLines& bar) { return bar.effect != "not-listed"; });
  // A rule about the very charge says more than that the charge is on no list.
  const auto barred = [&](std::size_t line) {
    return std::any_of(bars.begin(), bars.end(), [&](const BarOnLines& bar) {
      return bar.effect == "bar" && std::find(bar.lines.begin(), bar.lines.end(), line) != bar.lines.end();
    });
  };
  // What only a certain act of the landlord's allows: whoever says that it was done has to show it. Where nothing at
  // all may be kept without the tenant's consent, that was said of the whole list.
  if (!needs_consent(d))
    for (const BarOnLines& bar : d.law.bars_unless(group.lines)) {
      if (std::find(said.begin(), said.end(), bar.rule) != said.end()) continue;
      const std::string law = d.law.rule_says(*bar.rule, "letter.bar.bar");
      if (law.empty()) continue;
      said.push_back(bar.rule);
      text.add(bar.lines.size() == group.lines.size()
                   ? law
                   : d.say("letter.law.on", {{"charges", d.charges(bar.lines)}, {"says", law}}));
      text.add(d.law.because_not(*bar.rule)).add(d.say("letter.bar.unless"));
    }
  for (const BarOnLines& bar : bars) {
    const bool not_listed = bar.effect == "not-listed";
    std::vector<std::size_t> lines;
    for (const std::size_t i : bar.lines)
      if (!not_listed || !barred(i)) lines.push_back(i);
    if (lines.empty() || std::find(said.begin(), said.end(), bar.rule) != said.end()) continue;
    said.push_back(bar.rule);
    // A list of what may be kept is only named where its rest is the other side's to say.
    const std::string& list = bar.rule->text_in(d.speech.language());
    const bool named = not_listed && d.law.eases(list);
    const std::string law =
        named ? d.law.says(*bar.rule, d.say(lines.size() == 1 ? "letter.bar.not-listed" : "letter.bar.not-listed.many"))
              : d.law.rule_says(*bar.rule, std::string("letter.bar.") + std::string(bar.effect));
    if (law.empty()) continue;
    text.add(lines.size() == group.lines.size()
                 ? law
                 : d.say("letter.law.on", {{"charges", d.charges(lines)}, {"says", law}}));
    text.add(d.law.because_not(*bar.rule));
  }
  const auto add = [&](const Rule* rule, auto says) {
    if (!rule || std::find(said.begin(), said.end(), rule) != said.end()) return;
    said.push_back(rule);
    text.add(says());
  };
  // Whoever says that it looks like wear says what the law says of wear; of age, where nothing else was said yet and
  // nobody entered who did it.
  const bool by_somebody = std::any_of(group.lines.begin(), group.lines.end(), [&](std::size_t i) {
    return d.c.lines[i].cause != ChargeCause::unknown || said_by_the_list(d.a.lines[i], "cause");
  });
  if (const Rule* wear = d.law.wear_rule(); wear && (among(group.ground, {"likely-wear", "unsure"}) ||
                                                     (said.empty() && !by_somebody && !d.law.cites(*wear).empty() &&
                                                      among(group.ground, {"worn-out", "age"})))) {
    add(wear, [&] { return d.law.rule_says(*wear, "letter.bar.bar"); });
  }
  // Whoever says that the list tells too little says what it has to tell.
  if (among(group.ground, {"unnamed", "no-amount"})) {
    const DocumentRule* list = d.law.list_rule();
    const bool told = list && std::any_of(d.letter.paragraphs.begin(), d.letter.paragraphs.end(),
                                          [&](const Paragraph& p) { return p.id == "paper-" + list->id; });
    if (!told) add(list, [&] { return d.law.first_says(*list); });
  }
  return text.take();
}

Money sum_of(const Draft& d, const std::vector<std::size_t>& lines) {
  Money sum;
  for (const std::size_t i : lines) sum += d.a.lines[i].result.claimed;
  return sum;
}

/// Whole years, rounded: a rule of thumb bears no months.
std::string years(const Draft& d, Age life) {
  const std::int64_t months = life.completed().count();
  if (months < 18) return d.speech.length(Age::of(Months(months)));
  return d.speech.length(Age::of(Months((months + 6) / 12 * 12)));
}

/// "over 6 years", "5 years"; only as exact as the day it was put in is known.
std::string age_text(const Draft& d, std::size_t line, const Step& step) {
  const std::int64_t months = step.age.completed().count();
  const auto& installed = d.c.lines[line].installed;
  // A stay has its days; an age that was given in years has none.
  const bool loose = !among(step.code, {"age-from-move-in", "share-by-stay"}) &&
                     (!installed || installed->latest - installed->earliest > days{31});
  if (months < 12) return d.speech.length(Age::of(Months(months)));
  if (loose) return d.say("letter.age.about", {{"age", years(d, step.age)}});
  if (months % 12 == 0) return d.speech.length(Age::of(Months(months)));
  return d.say("letter.age.over", {{"age", d.speech.length(Age::of(Months(months / 12 * 12)))}});
}

std::string whole_percent(Share share) {
  const std::int64_t percent = share.den == 0 ? 0 : (share.num * 200 + share.den) / (share.den * 2);
  return std::to_string(percent) + '%';
}

/// Steps a letter leaves out: the verdict has its group, the law its own sentence, and the last sum its own.
bool is_arithmetic(const Step& step) {
  return !among(step.code, {"law-barred", "law-perhaps-barred", "law-bars-wear", "cleaning-not-depreciated",
                            "repair-not-depreciated", "disposal-not-depreciated", "quality-untold", "small-mark",
                            "labor-may-not-depreciate", "like-kind-unknown", "never-above-charge"}) &&
         step.code.substr(0, 7) != "reason.";
}

/// "1" where both count the same thing ("1 of 3 rooms"), else "1 wall".
std::string part_of(const Step& step, const Speech& speech) {
  Quantity part = step.part;
  if (part.unit == step.whole.unit) part.unit.clear();
  return speech.quantity(part);
}

/// Whether a share of the whole sum is exactly what the step came to: some parts may not be shared.
bool shares_all(const Step& step) {
  return step.whole.thousandths > 0 && step.from.part({step.part.thousandths, step.whole.thousandths}) == step.to;
}

/// The name of the list that a step rests on, where a letter may name it.
std::string table_of(const Draft& d, const Step& step) {
  for (const NamedGuide& guide : d.rules.letters.guides)
    if (std::any_of(step.sources.begin(), step.sources.end(),
                    [&](const Reference* r) { return r->id == guide.source; }))
      return guide.name.in(d.speech.language());
  return {};
}

std::string step_sentence(const Draft& d, std::size_t line, const Step& step) {
  const bool area = step.code.substr(0, 10) == "area-share";
  if (area && step.part.thousandths == step.whole.thousandths) return {};
  const std::string_view code = area ? (shares_all(step) ? "area-share" : "area-share-parts") : step.code;
  if (!d.has("letter.step.", code)) return {};
  const Speech& s = d.speech;
  const std::string table = table_of(d, step);
  return d.say("letter.step.", code == "share-by-stay" && !table.empty() ? "share-by-stay.named" : code,
               {{"table", table},
                {"from", d.about(step.from)},
                {"to", d.about(step.to)},
                {"share", whole_percent(step.share)},
                {"age", age_text(d, line, step)},
                {"life", years(d, step.life)},
                {"part", part_of(step, s)},
                {"whole", s.quantity(step.whole)}});
}

/// "For charge 3: your list says “carpet laid 2019”.": the list's own words that speak for the tenant, where the
/// reckoning goes by them. They are the landlord's to have said, not the sender's to know.
std::string list_says(const Draft& d, std::size_t line, std::string_view ground, bool alone) {
  constexpr std::string_view for_tenant[] = {"installed",        "ageYears",        "ageYearsAtMoveIn",
                                             "landlordFactors",  "damagedQuantity", "usefulLifeYears",
                                             "missingDocuments", "reletOn"};
  std::vector<std::string> said;
  for (const WordFact& fact : d.a.lines[line].words.used) {
    const bool speaks = std::find(std::begin(for_tenant), std::end(for_tenant), fact.field) != std::end(for_tenant) ||
                        (fact.field == "cause" && ground == "not-mine") ||
                        (fact.field == "conditionAtMoveIn" && among(ground, {"already-there", "too-high"}));
    if (!speaks) continue;
    std::string words = on_one_line(d.c.lines[line].text.substr(fact.start, fact.end - fact.start));
    // One word by itself says little: then all of a short charge is quoted.
    const std::string& whole = d.c.lines[line].text;
    if (words.find(' ') == std::string::npos && whole.size() <= longest_quote) words = on_one_line(whole);
    std::string quote = d.say("letter.words.quote", {{"words", words}});
    if (std::find(said.begin(), said.end(), quote) == said.end()) said.push_back(std::move(quote));
  }
  if (said.empty()) return {};
  return d.say(alone ? "letter.words.says.named" : "letter.words.says",
               {{"charge", d.charges({line})}, {"words", listed(said, d.speech)}});
}

bool age_by_the_list(const Draft& d, std::size_t line) {
  const LineAssessment& judged = d.a.lines[line];
  return said_by_the_list(judged, "installed") || said_by_the_list(judged, "ageYears") ||
         said_by_the_list(judged, "ageYearsAtMoveIn");
}

/// A table that may be named leaves nothing of the cost after the stay. A second letter leaves that to the first.
bool stay_leaves_nothing(const Draft& d, const Step& step) {
  return d.letter.kind != LetterKind::second_letter && step.code == "share-by-stay" && step.share.num == 0 &&
         !table_of(d, step).empty();
}

bool stay_leaves_nothing(const Draft& d, std::size_t line) {
  const auto& steps = d.a.lines[line].steps;
  return std::any_of(steps.begin(), steps.end(), [&](const Step& step) { return stay_leaves_nothing(d, step); });
}

/// "For charge 3: such a thing commonly lasts about 3 years, and this one was over 4 years old."
/// `named`: the charge was named just before, or is the only one of its group.
std::string life_and_age(const Draft& d, std::size_t line, bool told_only, bool named = false) {
  for (const Step& step : d.a.lines[line].steps) {
    if (stay_leaves_nothing(d, step))
      return d.say(named ? "letter.worn.table.named" : "letter.worn.table",
                   {{"charge", d.charges({line})}, {"table", table_of(d, step)}, {"age", age_text(d, line, step)}});
    const bool told = among(step.code, {"remaining-share", "age-from-move-in"});
    if (!told && (told_only || step.code != "age-unknown")) continue;
    if (!life_is_agreed(step)) {
      // Of the age alone nobody can say otherwise; the list's own words were quoted.
      if (!told || age_by_the_list(d, line)) continue;
      return d.say(named ? "letter.worn.age.only.named" : "letter.worn.age.only",
                   {{"charge", d.charges({line})}, {"age", age_text(d, line, step)}});
    }
    return d.say(told && age_by_the_list(d, line) ? "letter.worn.age.words"
                 : told && named                  ? "letter.worn.age.named"
                 : told                           ? "letter.worn.age"
                 : named                          ? "letter.worn.stay.named"
                                                  : "letter.worn.stay",
                 {{"charge", d.charges({line})}, {"life", years(d, step.life)}, {"age", age_text(d, line, step)}});
  }
  return {};
}

const Step* part_in_question(const LineAssessment& line) {
  for (const Step& step : line.steps)
    if (step.code.substr(0, 10) == "area-share" && step.part.thousandths < step.whole.thousandths) return &step;
  return nullptr;
}

/// Whether a charge stands alone in its group, and no other charge would be told of in the same words: then its
/// sentences need not name it again.
bool stands_alone(const Draft& d, const DisputeGroup& group) {
  if (group.lines.size() != 1) return false;
  const std::size_t line = group.lines.front();
  const std::string age = life_and_age(d, line, false, true);
  const Step* part = part_in_question(d.a.lines[line]);
  for (std::size_t i = 0; i < d.a.lines.size(); ++i) {
    if (i == line) continue;
    if (!age.empty() && life_and_age(d, i, false, true) == age) return false;
    const Step* other = part ? part_in_question(d.a.lines[i]) : nullptr;
    if (other && d.speech.quantity(other->part) == d.speech.quantity(part->part) &&
        d.speech.quantity(other->whole) == d.speech.quantity(part->whole))
      return false;
  }
  return true;
}

/// Charges that age left nothing of: the life and the age of each.
std::string worn_out(const Draft& d, const DisputeGroup& group) {
  Sentences text;
  const bool alone = stands_alone(d, group);
  for (const std::size_t i : group.lines)
    text.add(list_says(d, i, group.ground, alone)).add(life_and_age(d, i, false, alone));
  return text.take();
}

/// What speaks against the sum of an open charge by its own figures: how much of it is in question and its age. It
/// agrees to nothing, and names no other sum: whoever reads one pays that.
std::string against_the_sum(const Draft& d, std::size_t line, bool alone) {
  Sentences text;
  text.add(list_says(d, line, "sum", alone));
  if (const Step* step = part_in_question(d.a.lines[line]))
    text.add(d.say(text.empty() && !alone ? "letter.open.area" : "letter.open.area.named",
                   {{"charge", d.charges({line})},
                    {"part", d.speech.quantity(step->part)},
                    {"whole", d.speech.quantity(step->whole)}}));
  return text.add(life_and_age(d, line, true, alone || !text.empty())).take();
}

/// A rule lets the charge be made only if something was done, and the case says that it was not.
bool not_done_for(const Draft& d, std::size_t line) {
  if (needs_consent(d)) return false;
  const std::vector<BarOnLines> bars = d.law.bars_unless({line});
  return std::any_of(bars.begin(), bars.end(),
                     [&](const BarOnLines& bar) { return !d.law.because_not(*bar.rule).empty(); });
}

} // namespace

std::string_view ground_of(const Draft& d, std::size_t line, Stand stand) {
  switch (stand) {
  case Stand::no_amount:
    return "no-amount";
  case Stand::limited:
    return "too-high";
  case Stand::refused:
    return ground_when_refused(d.a.lines[line], d.c.lines[line]);
  case Stand::open:
    if (not_done_for(d, line)) return "bar";
    return ground_when_open(d.a.lines[line], d.c.lines[line]);
  default:
    return {};
  }
}

std::vector<const Rule*> said_of_all(const Draft& d, const Claim& claim) {
  std::vector<const Rule*> out;
  if (!claim.keeps_nothing() || !needs_consent(d)) return out;
  std::vector<std::size_t> all;
  for (std::size_t i = 0; i < claim.lines.size(); ++i) all.push_back(i);
  for (const BarOnLines& bar : d.law.bars(all))
    if (d.law.bars_every_charge(*bar.rule)) out.push_back(bar.rule);
  return out;
}

namespace {

/// That the whole list may not be kept was said before; "even if the charges counted" wants another reason.
std::string_view ground_in_dispute(const Draft& d, const Claim& claim, std::size_t line) {
  const std::string_view ground = ground_of(d, line, claim.lines[line].stand);
  if (ground != "bar") return ground;
  const auto said = said_of_all(d, claim);
  if (said.empty()) return ground;
  for (const BarOnLines& bar : d.law.bars({line}))
    if (bar.effect == "bar" && std::find(said.begin(), said.end(), bar.rule) == said.end()) return ground;
  return ground_when_open(d.a.lines[line], d.c.lines[line]);
}

} // namespace

std::vector<DisputeGroup> groups_of(const Draft& d, const Claim& claim) {
  std::vector<DisputeGroup> out;
  for (const std::string_view ground : grounds) {
    DisputeGroup group{ground, {}};
    for (std::size_t i = 0; i < claim.lines.size(); ++i) {
      if (ground_in_dispute(d, claim, i) != ground) continue;
      if (among(ground, {"too-high", "relet"})) out.push_back({ground, {i}});
      else group.lines.push_back(i);
    }
    if (!group.lines.empty()) out.push_back(std::move(group));
  }
  return out;
}

std::string arithmetic(const Draft& d, std::size_t line, bool sum_said) {
  Sentences text;
  const Step* aged = nullptr; // its sum takes in the parts that do not age, which come after it
  Money unaged;
  const auto close = [&] {
    if (aged && !unaged.is_zero()) text.add(d.say("letter.step.component-not-depreciated", {{"to", d.about(unaged)}}));
    if (aged && !sum_said) text.add(d.say("letter.step.makes", {{"to", d.about(aged->to)}}));
    aged = nullptr;
    unaged = Money();
  };
  for (const Step& step : d.a.lines[line].steps) {
    if (step.code == "component-not-depreciated") {
      unaged += step.to;
      continue;
    }
    if (step.code == "labor-may-not-depreciate" || step.code == "markup") continue; // parts too, within the aged sum
    close();
    if (!is_arithmetic(step)) continue;
    text.add(step_sentence(d, line, step));
    if (among(step.code, {"remaining-share", "age-from-move-in", "share-by-stay"})) aged = &step;
  }
  close();
  return text.take();
}

namespace {

/// What settles a charge disputed on this ground, where no question of the assessment says it.
std::string_view shown_by(const Draft& d, std::size_t line, std::string_view ground) {
  if (is_keys(d.a.lines[line])) return "bill";
  if (ground == "age") return "installed";
  if (ground == "no-bill") return "bill";
  if (ground == "sum") return bill_came(d, line) ? "" : "bill";
  return among(ground, {"unnamed", "unsure", "likely-wear", "not-shown"}) ? "finding" : "";
}

/// "what was wrong" is not asked of a charge that says it.
std::string_view in_its_place(const Draft& d, const LineAssessment& line, std::string_view code) {
  if (code.substr(0, 7) != "finding") return code;
  // Of fleas or a smell there is no photo.
  const auto own =
      line.subject.element ? d.rules.letters.shows.find(line.subject.element->id) : d.rules.letters.shows.end();
  if (names_harm(line) && own != d.rules.letters.shows.end()) return own->second;
  return names_harm(line) ? "photo" : is_removal(line) ? "left" : code;
}

/// What would settle a charge ("letter.show.<...>"), the two that weigh most. `ground`: why the charge is disputed;
/// `age`: its age is asked for too.
std::vector<std::string> wanted(const Draft& d, std::size_t i, std::string_view ground, bool age) {
  std::vector<std::string> items;
  const auto want = [&](std::string_view asked) {
    const std::string_view code = in_its_place(d, d.a.lines[i], asked);
    if (!d.has("letter.show.", code) || items.size() == 2) return;
    // Of what was not given back there is nothing to see.
    if (asked.substr(0, 7) == "finding" && not_given_back(d.a.lines[i])) return;
    const std::string text = d.say("letter.show.", code);
    if (std::any_of(items.begin(), items.end(),
                    [&](const std::string& item) { return d.say("letter.show.", item) == text; }))
      return;
    items.insert(code == "bill" ? items.begin() : items.end(), std::string(code)); // short before long
  };
  const LineResult& r = d.a.lines[i].result;
  const bool debt = r.verdict == Verdict::non_damage_charge;
  if (debt) {
    const Element* debt_for = d.a.lines[i].subject.element;
    want(debt_for && debt_for->id == "rent" ? std::string_view("rent-account") : "debt");
    const bool relet_known =
        std::any_of(d.c.lines.begin(), d.c.lines.end(), [](const Line& line) { return line.relet_on.has_value(); });
    const auto want_relet = [&](std::string_view code) {
      want(code == "relet" && relet_known ? std::string_view("relet.effort") : code);
    };
    if (days_after_leaving(d, i)) want_relet("relet");
    const auto& shows = d.rules.letters.shows;
    if (debt_for)
      if (const auto more = shows.find(debt_for->id); more != shows.end()) want_relet(more->second);
    if (const Finding* finding = d.a.lines[i].subject.finding)
      if (const auto more = shows.find(finding->id); more != shows.end()) want(more->second);
  }
  if (ground == "age" || age) want("installed");
  // Who says that the cost is not shown asks for what shows it.
  if ((ground == "no-bill" || (ground == "sum" && !r.depreciates && !age)) && !debt) want(shown_by(d, i, ground));
  for (const Question& q : d.a.questions) {
    if (q.line != i) continue;
    // What moves less than a twentieth of the charge is not worth a letter.
    if (d.c.lines[i].amount && q.effect < r.claimed.part({1, 20})) continue;
    const bool hours = q.asks.size() > 6 && q.asks.compare(q.asks.size() - 6, 6, "/hours") == 0;
    if (is_keys(d.a.lines[i])) continue;
    if (hours) want("hours");
    else if (!debt || among(q.code, {"rent-period", "amount", "bill"})) want(q.code);
  }
  if (items.empty() && !debt) want(shown_by(d, i, ground));
  return items;
}

/// "the bill; when it was put in", of one charge or of several.
std::string wanted_text(const Draft& d, const std::vector<std::string>& codes, bool many) {
  std::string out;
  for (const std::string& code : codes) {
    const bool has_many = many && d.has("letter.show.", code + ".many");
    out += (out.empty() ? "" : "; ") + d.say("letter.show.", has_many ? code + ".many" : code);
  }
  return out;
}

} // namespace

std::vector<std::size_t> bills_awaited(const Draft& d, const Claim& claim) {
  std::vector<std::size_t> own;
  for (std::size_t i = 0; i < claim.lines.size(); ++i) {
    const LineAssessment& judged = d.a.lines[i];
    if (claim.lines[i].own && claim.lines[i].stand == Stand::undisputed && !bill_came(d, i) &&
        !not_given_back(judged) && judged.result.verdict != Verdict::non_damage_charge &&
        judged.result.claimed >= d.rules.letters.smallest_sum)
      own.push_back(i);
  }
  return own;
}

std::vector<std::string> shows(const Draft& d, const Claim& claim, const std::vector<DisputeGroup>& groups,
                               const std::vector<std::size_t>& age_asked) {
  std::vector<std::pair<std::vector<std::string>, std::vector<std::size_t>>> asked;
  for (const DisputeGroup& group : groups) {
    const bool open = claim.lines[group.lines.front()].stand == Stand::open || group.ground == "no-amount";
    // Who says that nothing is left, or that it may not be charged, asks for no more.
    if (!open || among(group.ground, {"worn-out", "bar"})) continue;
    for (const std::size_t i : group.lines) {
      // A few dollars are disputed, but not worth a search for papers.
      if (d.c.lines[i].amount && d.a.lines[i].result.claimed < d.rules.letters.smallest_sum) continue;
      std::vector<std::string> what =
          wanted(d, i, group.ground, std::find(age_asked.begin(), age_asked.end(), i) != age_asked.end());
      if (what.empty()) continue;
      const auto at = std::find_if(asked.begin(), asked.end(), [&](const auto& a) { return a.first == what; });
      if (at == asked.end()) asked.emplace_back(std::move(what), std::vector<std::size_t>{i});
      else at->second.push_back(i);
    }
  }
  const std::vector<std::size_t> own = bills_awaited(d, claim);
  if (!own.empty()) {
    const auto at = std::find_if(asked.begin(), asked.end(),
                                 [](const auto& a) { return a.first == std::vector<std::string>{"bill"}; });
    if (at == asked.end()) asked.emplace_back(std::vector<std::string>{"bill"}, own);
    else at->second.insert(at->second.end(), own.begin(), own.end());
  }
  for (auto& request : asked) std::sort(request.second.begin(), request.second.end());
  std::stable_sort(asked.begin(), asked.end(),
                   [](const auto& x, const auto& y) { return x.second.front() < y.second.front(); });
  std::vector<std::string> out;
  for (const auto& [what, lines] : asked) {
    const std::string text = wanted_text(d, what, lines.size() > 1);
    out.push_back(d.say("letter.show.line", {{"charges", d.charges(lines)}, {"what", text}}));
  }
  return out;
}

namespace {

/// The sentence of a group: of one charge or of several, of things or of work alone.
std::string group_key(const Draft& d, const DisputeGroup& group, std::string_view says) {
  std::string key(says);
  const bool bills = says == "sum" && std::any_of(group.lines.begin(), group.lines.end(),
                                                  [&](std::size_t i) { return bill_came(d, i); });
  const bool work = std::none_of(group.lines.begin(), group.lines.end(),
                                 [&](std::size_t i) { return d.a.lines[i].result.depreciates; });
  const bool mixed = group.lines.size() > 1 && std::any_of(group.lines.begin(), group.lines.end(), [&](std::size_t i) {
                       return !d.a.lines[i].result.depreciates || is_keys(d.a.lines[i]);
                     });
  if (bills) key += ".bill";
  else if (says == "sum" && work) key += ".work";
  else if (says == "sum" && mixed) key += ".mixed";
  if (!d.has("letter.group.", key)) return {};
  if (group.lines.size() > 1 && d.has("letter.group.", key + ".many")) key += ".many";
  return key;
}

/// A fee as large as a deposit of a kind of its own is that deposit under another name: it was not paid as a fee. So is
/// cleaning that names nothing dirty and comes to just the cleaning deposit.
std::string deposit_kept(const Draft& d, std::size_t line) {
  const LineAssessment& judged = d.a.lines[line];
  const Element* element = judged.subject.element;
  const bool fee = judged.result.verdict == Verdict::non_damage_charge && element && element->kind == ChargeKind::fee;
  const bool cleaning = d.c.lines[line].kind == ChargeKind::cleaning && !judged.subject.harm_named;
  if (!fee && !cleaning) return {};
  const auto own = std::find_if(d.c.deposits.begin(), d.c.deposits.end(), [&](const Deposit& deposit) {
    return (fee ? !among(deposit.kind, {"", "security", "last-month"}) : deposit.kind == "cleaning") &&
           deposit.amount == judged.result.claimed;
  });
  if (own == d.c.deposits.end()) return {};
  Sentences text;
  text.add(d.say("letter.group.deposit-kept",
                 {{"charge", d.charges({line})}, {"kind", d.say("letter.facts.of.", own->kind)}}));
  for (const Permission& p : judged.permissions)
    if (p.says == Permission::Says::caution && p.applies == Tri::yes && p.rule)
      text.add(d.law.rule_says(*p.rule, "letter.bar.bar"));
  return text.take();
}

/// A debt for days on which the sender had the home no longer.
std::string after_leaving(const Draft& d, const DisputeGroup& group) {
  std::vector<std::size_t> after;
  const auto& keys = d.c.tenancy.possession_returned;
  const auto& out = d.c.tenancy.left();
  for (const std::size_t i : group.lines)
    if (const auto& from = d.c.lines[i].from;
        days_after_leaving(d, i) && out->known() && from && from->earliest > out->latest)
      after.push_back(i);
  if (after.empty()) return {};
  return d.say(keys ? "letter.group.after-leaving" : "letter.group.after-end",
               {{"charges", d.charges(after)}, {"day", d.speech.day(out->earliest)}});
}

} // namespace

std::string group_text(const Draft& d, const Claim& claim, const DisputeGroup& group, std::vector<const Rule*>& said) {
  Sentences text;
  text.add(d.say(group.ground == "no-amount" ? "letter.group.head.no-sum" : "letter.group.head",
                 {{"ground", d.say("letter.ground.", group.ground)},
                  {"charges", d.charges(group.lines)},
                  {"sum", d.money(sum_of(d, group.lines))}}));
  if (group.ground == "worn-out") text.add(worn_out(d, group));
  const std::size_t first = group.lines.front();
  // Who caused it and what was agreed is the sender's to say only where they entered it.
  const auto by_list = [&](std::string_view field) {
    return std::any_of(group.lines.begin(), group.lines.end(),
                       [&](std::size_t i) { return said_by_the_list(d.a.lines[i], field); });
  };
  const bool debts = std::all_of(group.lines.begin(), group.lines.end(), [&](std::size_t i) {
    return d.a.lines[i].result.verdict == Verdict::non_damage_charge;
  });
  const std::string_view says = group.ground == "unnamed" && debts                     ? "unnamed.debt"
                                : group.ground == "not-mine" && by_list("cause")       ? "not-mine.words"
                                : group.ground == "not-in-lease" && by_list("inLease") ? "debt"
                                                                                       : group.ground;
  if (among(group.ground, {"too-high", "relet"})) {
    if (const auto& relet = d.c.lines[first].relet_on; relet && relet->known())
      text.add(d.say("letter.relet", {{"day", d.speech.day(relet->earliest)}}));
    if (group.ground == "too-high") text.add(list_says(d, first, group.ground, true)).add(arithmetic(d, first));
  }
  // What a table that may be named says of a long stay is said in place of the general sentence, not after it.
  const bool by_stay = group.ground == "wear" && std::all_of(group.lines.begin(), group.lines.end(),
                                                             [&](std::size_t i) { return stay_leaves_nothing(d, i); });
  if (const std::string key = group_key(d, group, says); !key.empty() && !by_stay)
    text.add(d.say("letter.group.", key,
                   {{"most", d.about(claim.lines[first].granted)}, {"rest", d.money(claim.lines[first].back)}}));
  for (const std::size_t i : group.lines) text.add(deposit_kept(d, i));
  if (among(group.ground, {"debt", "unnamed"})) text.add(after_leaving(d, group));
  const bool alone = stands_alone(d, group);
  if (among(group.ground, {"sum", "unnamed", "unsure", "no-bill", "not-shown", "nothing-left"}))
    for (const std::size_t i : group.lines) text.add(against_the_sum(d, i, alone));
  if (among(group.ground, {"wear", "likely-wear"})) text.add(guides_text(d, group));
  if (among(group.ground, {"wear", "likely-wear", "upkeep", "already-there", "not-mine"}))
    for (const std::size_t i : group.lines) {
      const std::string words = list_says(d, i, group.ground, alone);
      text.add(words);
      // Worn, and past its life: both are said.
      if (group.ground == "wear" && (outlived(d.a.lines[i]) || stay_leaves_nothing(d, i)))
        text.add(life_and_age(d, i, true, alone || !words.empty()));
    }
  text.add(law_text(d, group, said));
  return text.take();
}

void add_charges_table(Draft& d, const Claim& claim, bool only_disputed, std::string_view last_column) {
  if (d.a.lines.empty()) return;
  Paragraph& p = d.must("charges", ParagraphRole::table, "");
  p.head = {d.say("letter.charges.charge"), d.say("letter.charges.charged"), d.say(last_column)};
  Money charged, back;
  bool some_without = false;
  for (std::size_t i = 0; i < d.a.lines.size(); ++i) {
    const LineResult& r = d.a.lines[i].result;
    if (only_disputed && ground_of(d, i, claim.lines[i].stand).empty()) continue;
    p.lines.push_back(d.c.lines[i].id);
    if (claim.lines[i].stand == Stand::no_amount) {
      some_without = true;
      p.rows.push_back({d.label(i), d.say("letter.charges.no-amount"), d.say("letter.charges.all")});
      continue;
    }
    charged += r.claimed;
    back += claim.lines[i].back;
    p.rows.push_back({d.label(i), d.money(r.claimed), d.money(claim.lines[i].back)});
  }
  if (!some_without && p.rows.size() > 1)
    p.rows.push_back({d.say(p.rows.size() == d.a.lines.size() ? "letter.charges.total" : "letter.charges.together"),
                      d.money(charged), d.money(back)});
}

} // namespace wearline
