// Letters as text in, text out.

#include "assess/assess.h"
#include "letters/letter.h"
#include "letters/letter_draft.h"
#include "letters/letter_proposals.h"
#include "output/answers.h"
#include "output/render.h"
#include "wearline/engine.h"

#include "json/fields.h"
#include "json/json_out.h"
#include <algorithm>

namespace wearline {

namespace {

struct LetterOptions {
  std::optional<LetterKind> kind;
  std::string language = "en";
  std::vector<std::string> off, on;
  Names names;
};

/// What fills the blanks: text by the blanks' ids.
Names read_names(Fields& f) {
  Names out;
  NameSet known;
  for (const std::string_view id : blank_names()) known.add(id);
  const Json* given = f.get("names");
  if (!given) return out;
  if (!given->is_object()) {
    f.fault("wrong-type", "names", "Names are an object of texts.");
    return out;
  }
  for (const auto& item : given->items()) {
    const auto* text = item.value().get_ptr<const std::string*>();
    const std::string at = "/names/" + pointer_segment(item.key());
    if (!known.has(item.key()))
      f.faults().push_back(
          {"unknown-name", at, "No letter has a place for \"" + item.key() + "\".", known.nearest(item.key())});
    else if (!text) f.faults().push_back({"wrong-type", at, "Give it as text.", ""});
    else out[item.key()] = *text;
  }
  return out;
}

/// `format`: of the case, whose words they are in.
std::variant<LetterOptions, Faults> read_options(std::string_view json, int format) {
  LetterOptions options;
  if (json.empty()) return options;
  auto parsed = parse_json(json);
  if (auto* fault = std::get_if<Fault>(&parsed)) return Faults{std::move(*fault)};
  Faults faults;
  Fields f(std::get<Json>(parsed), "", faults);
  const std::string kind = f.text("kind");
  if (const std::string language = f.text("language"); !language.empty()) options.language = language;
  options.off = f.texts("off");
  options.on = f.texts("on");
  options.names = read_names(f);
  f.done();
  if (!kind.empty()) {
    const OlderPlace* older = older_document("letter options").below("kind");
    const bool is_older = format == oldest_format && older;
    options.kind = letter_kind(is_older ? older->word_now(kind) : kind);
    NameSet names;
    for (const LetterKind known : letter_kinds())
      names.add(is_older ? older->word_was(name_of(known)) : name_of(known));
    if (!options.kind)
      faults.push_back(
          {"unknown-kind", "/kind", "There is no letter of the kind \"" + kind + "\".", names.nearest(kind)});
  }
  if (options.language != "en" && options.language != "es")
    faults.push_back(
        {"unknown-language", "/language", "Letters are written in English (\"en\") or Spanish (\"es\").", ""});
  if (!faults.empty()) return faults;
  return options;
}

bool names(const std::vector<std::string>& ids, const std::string& id) {
  return std::find(ids.begin(), ids.end(), id) != ids.end();
}

/// Only optional paragraphs can be off; a name that is not in this letter may be in it again when facts change.
void apply_switches(Letter& letter, const LetterOptions& options) {
  for (Paragraph& p : letter.paragraphs) {
    if (!p.optional) continue;
    if (names(options.on, p.id)) p.on = true;
    if (names(options.off, p.id)) p.on = false;
  }
}

void write_texts(JsonOut& out, std::string_view name, const std::vector<std::string>& texts) {
  out.key(name).array();
  for (const std::string& text : texts) out.text(text);
  out.end_array();
}

void write_paragraphs(JsonOut& out, const Letter& letter) {
  out.key("paragraphs").array();
  for (const Paragraph& p : letter.paragraphs) {
    out.object().pair("id", p.id).pair("role", name_of(p.role)).pair("text", p.text);
    write_texts(out, "lines", p.lines);
    write_texts(out, "citations", p.cites);
    write_texts(out, "header", p.head);
    out.key("rows").array();
    for (const auto& row : p.rows) {
      out.array();
      for (const std::string& cell : row) out.text(cell);
      out.end_array();
    }
    out.end_array().key("optional").boolean(p.optional).key("included").boolean(p.on).end_object();
  }
  out.end_array().pair("text", plain_text(letter));
}

std::string label(LetterKind kind, const Speech& speech) {
  return speech.say(std::string("letter.kind.") + std::string(name_of(kind)));
}

/// The kinds that fit with the reason of each, or why none does; and all kinds of the side.
void write_choice(JsonOut& out, const LetterChoice& choice, std::string_view side, const Speech& speech) {
  const auto say = [&](std::string_view stem, std::string_view reason, const std::optional<Day>& day) {
    return speech.say(std::string(stem) + std::string(reason), {{"day", day ? speech.day(*day) : std::string()}});
  };
  out.key("proposed").array();
  for (const LetterProposal& fit : choice.kinds) {
    out.object().pair("kind", name_of(fit.kind)).pair("label", label(fit.kind, speech));
    out.pair("reason", say("letter.fits.", fit.reason, fit.day)).end_object();
  }
  out.end_array().key("noLetter");
  if (choice.none_because.empty()) out.null();
  else
    out.object()
        .pair("code", choice.none_because)
        .pair("text", say("letter.none.", choice.none_because, choice.day))
        .end_object();
  out.key("kinds").array();
  // A paper that goes against a rule is offered only where the rule stands in the way.
  const bool late = std::any_of(choice.kinds.begin(), choice.kinds.end(),
                                [](const LetterProposal& fit) { return fit.kind == LetterKind::late_statement; });
  for (const LetterKind kind : letter_kinds_of(side))
    if (late || kind != LetterKind::late_statement)
      out.object().pair("kind", name_of(kind)).pair("label", label(kind, speech)).end_object();
  out.end_array();
}

void write_blanks(JsonOut& out, const Letter& letter) {
  out.key("placeholders").array();
  for (const Blank& blank : letter.blanks)
    out.object().pair("id", blank.id).pair("label", blank.label).pair("value", blank.value).end_object();
  out.end_array();
}

std::string write_result(const Assessment& a, const Rules& rules, const LetterChoice& choice, const Letter& letter,
                         const Letter* copy, const Letter& for_reader) {
  JsonOut out;
  const Speech speech(rules.words(for_reader.language), for_reader.language, currency_of(a.c.jurisdiction));
  out.object().key("wearline").number(newest_format).pair("today", iso(a.today));
  const bool none = letter.paragraphs.empty();
  out.pair("kind", none ? std::string_view() : name_of(letter.kind));
  out.pair("title", none ? std::string() : for_reader.title);
  write_choice(out, choice, a.c.side, speech);
  out.pair("sentEvent", letter.sent_as).pair("language", letter.language);
  write_paragraphs(out, letter);
  out.key("readingCopy");
  if (copy && !none) {
    out.object().pair("language", copy->language).pair("title", copy->title);
    write_paragraphs(out, *copy);
    out.end_object();
  } else {
    out.null();
  }
  write_blanks(out, for_reader);
  out.key("warnings").array();
  for (const LetterWarning& w : for_reader.warnings)
    out.object().pair("code", w.code).pair("about", about(w)).pair("text", w.text).end_object();
  out.end_array().key("errors").array().end_array().end_object();
  std::string answer = out.take();
  return a.c.format == oldest_format ? in_older_names(answer, older_document("letter")) : answer;
}

/// A copy that is only to be read says so on its first line, so that nobody sends it.
void mark_as_copy(Letter& copy, const Rules& rules) {
  const Speech speech(rules.words(copy.language), copy.language, "");
  Paragraph mark;
  mark.id = "reading-copy";
  mark.text = speech.say("letter.reading-copy");
  copy.paragraphs.insert(copy.paragraphs.begin(), std::move(mark));
}

} // namespace

std::string letter(std::string_view case_json, const Rulebook& rulebook, Day today, std::string_view options_json,
                   int otherwise) {
  const Rules& rules = rulebook.rules();
  auto read = read_case_for(case_json, rules);
  if (const auto* faults = std::get_if<Faults>(&read))
    return render_faults(*faults, today, answer_format(case_json, otherwise));
  const auto read_opts = read_options(options_json, std::get<Case>(read).format);
  if (const auto* faults = std::get_if<Faults>(&read_opts))
    return render_faults(*faults, today, std::get<Case>(read).format);
  const auto& options = std::get<LetterOptions>(read_opts);

  const auto assessment = assess_case(std::move(std::get<Case>(read)), rules, today);
  const LetterChoice choice = propose_letters(*assessment, rules);
  if (!options.kind && choice.kinds.empty()) {
    Letter none;
    none.language = options.language;
    return write_result(*assessment, rules, choice, none, nullptr, none);
  }
  const LetterKind kind = options.kind ? *options.kind : choice.kinds.front().kind;
  // A letter that is sent is in English, with a copy for a reader of another language; a sheet that stays is in the
  // reader's own.
  const bool foreign = options.language != "en";
  Letter first = write_letter(*assessment, rules, kind, is_sent(kind) ? "en" : options.language, options.names);
  apply_switches(first, options);
  if (!foreign) return write_result(*assessment, rules, choice, first, nullptr, first);
  Letter copy =
      write_letter(*assessment, rules, kind, is_sent(kind) ? std::string_view(options.language) : "en", options.names);
  apply_switches(copy, options);
  if (is_sent(kind)) mark_as_copy(copy, rules);
  Letter& for_reader = is_sent(kind) ? copy : first;
  Letter& other = is_sent(kind) ? first : copy;
  other.paragraphs.back().text = for_reader.paragraphs.back().text; // the caution is for the reader
  if (is_sent(kind)) {
    const Speech speech(rules.words(options.language), options.language, "");
    for_reader.warnings.push_back({"reading-copy", speech.say("letter.warn.reading-copy")});
  }
  return write_result(*assessment, rules, choice, first, &copy, for_reader);
}

} // namespace wearline
