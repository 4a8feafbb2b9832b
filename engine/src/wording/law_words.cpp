#include "wording/law_words.h"

namespace wearline {

namespace {

std::string_view reason_word(DeadlineReason reason) {
  switch (reason) {
  case DeadlineReason::not_in_force:
    return "not-in-force";
  case DeadlineReason::not_called_for:
    return "not-called-for";
  case DeadlineReason::nothing_owed:
    return "nothing-owed";
  case DeadlineReason::done_in_time:
    return "done-in-time";
  case DeadlineReason::done_late:
    return "done-late";
  case DeadlineReason::done_early:
    return "done-early";
  case DeadlineReason::window_shut:
    return "window-shut";
  case DeadlineReason::window_open:
    return "window-open";
  case DeadlineReason::window_past:
    return "window-past";
  case DeadlineReason::not_done:
    return "not-done";
  case DeadlineReason::time_left:
    return "time-left";
  case DeadlineReason::not_started:
    return "not-started";
  case DeadlineReason::condition_open:
    return "condition-open";
  case DeadlineReason::date_open:
    return "date-open";
  case DeadlineReason::owed_open:
    return "owed-open";
  case DeadlineReason::arrival_open:
    return "arrival-open";
  case DeadlineReason::no_number:
    break;
  }
  return "no-number";
}

std::string plain(std::string_view id) {
  std::string out(id);
  for (char& c : out)
    if (c == '-') c = ' ';
  return out;
}

std::string keyed(std::string_view stem, std::string_view id) {
  std::string key(stem);
  key += id;
  return key;
}

} // namespace

std::string LawWords::label(const Deadline& deadline) const {
  return registry_->deadlines[deadline.name].label.in(speech_->language());
}

std::string LawWords::document(DocumentId id) const {
  return registry_->documents[index(id)].label.in(speech_->language());
}

std::string LawWords::event(EventId id) const {
  const EventInfo& info = law_->view().info(id);
  if (const std::string& day = info.day.in(speech_->language()); !day.empty()) return day;
  const std::string key = keyed("event.", info.id);
  return speech_->has(key) ? speech_->say(key) : speech_->say("event.other", {{"name", plain(info.id)}});
}

std::string LawWords::events(const std::vector<EventId>& ids, std::string_view joiner) const {
  std::string out;
  for (const EventId id : ids) {
    if (!out.empty()) out += ' ' + speech_->say(joiner) + ' ';
    out += event(id);
  }
  return out;
}

std::string LawWords::assumed(const Ask& ask) const {
  const FactView& view = law_->view();
  if (ask.kind == Ask::Kind::fact) {
    const FactId id{ask.which};
    if (view.info(id).at == "/locality") return speech_->say("law.assumed.place");
    return speech_->say(view.fact(id).yes ? "law.assumed.yes" : "law.assumed.no",
                        {{"question", view.info(id).question.in(speech_->language())}});
  }
  const EventId id{ask.which};
  const EventState& s = view.event(id);
  if (s.happened != Tri::yes)
    return speech_->say("law.assumed.not-done", {{"question", view.info(id).question.in(speech_->language())}});
  return speech_->say("law.assumed.day",
                      {{"question", view.info(id).question.in(speech_->language())}, {"day", speech_->span(s.on)}});
}

std::string LawWords::missing(const DeadlineResult& result) const {
  std::string out;
  for (const Ask& ask : result.grounds.unknown) {
    if (ask.kind != Ask::Kind::event) continue;
    if (!out.empty()) out += "; ";
    out += event(EventId{ask.which});
  }
  return out;
}

std::string LawWords::state(const DeadlineResult& result) const {
  const bool only_taken = result.reason == DeadlineReason::not_done && result.done_assumed;
  std::string key = only_taken ? "law.state.not-done-assumed" : keyed("law.state.", reason_word(result.reason));
  const bool any_day = result.last && !result.last->known() && !result.last->open();
  if (result.reason == DeadlineReason::not_done && !result.last) key = "law.state.not-done-no-day";
  else if (result.reason == DeadlineReason::not_done && any_day && !only_taken) key = "law.state.not-done-latest";
  const std::string dates = missing(result);
  if (result.reason == DeadlineReason::date_open && !dates.empty()) key = "law.state.date-open-named";
  if (result.reason == DeadlineReason::condition_open && !result.instead.empty()) key = "law.state.which-open";
  const std::string done = result.done_on ? speech_->span(*result.done_on) : std::string();
  const std::optional<DaySpan>& day = result.first ? result.first : result.last;
  const std::string last = result.last ? speech_->span(*result.last) : std::string();
  return speech_->say(key, {{"done", done},
                            {"last", last},
                            {"earliest", day ? speech_->day(day->earliest) : std::string()},
                            {"latest", day ? speech_->day(day->latest) : std::string()},
                            {"dates", dates},
                            {"n", std::to_string(result.instead.size())},
                            {"when", result.deadline->when_text_in(speech_->language())}});
}

std::string LawWords::period(const PeriodCount& count, const DeadlineResult& result) const {
  const Period& period = *count.period;
  if (!period.count) return speech_->say("law.count.none");
  const std::string after =
      events(period.after, period.governing == Governing::latest ? "law.join.later" : "law.join.earlier");
  const int said = count.never ? count.high_count : std::max(count.low_count, count.high_count);
  const std::string number = std::to_string(said);
  const std::string unit =
      speech_->say(keyed("law.unit.", name_of(period.unit)) + (said == 1 ? ".one" : ".many"), {{"n", number}});
  const std::string direction = period.before ? "before" : "after";
  if (count.never)
    return speech_->say(period.count == 0 ? "law.count.same-never" : "law.count.never",
                        {{"unit", unit}, {"events", after}});
  if (count.low_count != count.high_count)
    return speech_->say(period.before ? "law.count.at-most-before" : "law.count.at-most-after",
                        {{"unit", unit}, {"events", after}});
  if (!count.start.known())
    return speech_->say(period.count == 0 ? "law.count.same-open" : "law.count.open-" + direction,
                        {{"unit", unit}, {"events", after}});
  const Day from = count.start.earliest;
  const std::string because = count.from.empty() ? after : events(count.from, "law.join.same");
  const Counting counting{count.rule, holidays_};
  const LastDay day = period.before ? last_day_before(from, count.low_count, period.unit, counting)
                                    : last_day_after(from, count.low_count, period.unit, counting);
  const std::string reached =
      speech_->say("law.day", {{"weekday", speech_->weekday(day.reached)}, {"day", speech_->day(day.reached)}});
  const std::string last =
      speech_->say("law.day", {{"weekday", speech_->weekday(day.last)}, {"day", speech_->day(day.last)}});
  std::string key = "law.count.";
  key += period.count == 0 ? "same" : direction;
  std::string text =
      speech_->say(key, {{"unit", unit}, {"from", speech_->day(from)}, {"because", because}, {"reached", reached}});
  if (day.skipped) text += ' ' + speech_->say("law.count.skipped");
  if (day.last != day.reached) {
    const Holiday* holiday = counting.holiday_on(day.reached);
    text += ' ' + (holiday ? speech_->say("law.count.rolled-holiday", {{"holiday", holiday->name}, {"last", last}})
                           : speech_->say("law.count.rolled", {{"last", last}}));
  }
  if (result.first) text += ' ' + speech_->say("law.count.not-before");
  return text;
}

std::string LawWords::arithmetic(const DeadlineResult& result) const {
  std::string text;
  const auto add = [&](const std::string& part) {
    if (part.empty()) return;
    if (!text.empty()) text += ' ';
    text += part;
  };
  const bool which_open = !result.instead.empty() && result.state == DeadlineState::undetermined;
  if (!which_open)
    for (const PeriodCount& count : result.periods) add(period(count, result));
  if (result.periods.size() > 1 && result.last && result.last->known())
    add(speech_->say(result.deadline->governing == Governing::latest ? "law.count.later-leg" : "law.count.earlier-leg",
                     {{"last", speech_->day(result.last->earliest)}}));
  else if (result.last && !result.last->known() && !result.last->open())
    add(speech_->say("law.count.between", {{"span", speech_->span(*result.last)}}));
  return text;
}

std::string LawWords::defect(const DocumentResult& result) const {
  const auto list = [&](const std::vector<DocumentId>& ids) {
    std::string out;
    for (const DocumentId id : ids) {
      if (!out.empty()) out += ", ";
      out += document(id);
    }
    return out;
  };
  std::string text;
  const auto add = [&](const std::string& part) {
    if (!text.empty()) text += ' ';
    text += part;
  };
  if (!result.lacking.empty()) add(speech_->say("law.defect.lacking", {{"papers", list(result.lacking)}}));
  if (result.wrong_way) add(speech_->say("law.defect.wrong-way"));
  if (result.defect != Tri::yes) {
    if (!result.open.empty()) add(speech_->say("law.defect.open", {{"papers", list(result.open)}}));
    if (result.way_open) add(speech_->say("law.defect.way-open"));
  }
  if (text.empty()) text = result.rule->text_in(speech_->language());
  return text;
}

std::string LawWords::cap(const CapResult& result) const {
  return speech_->say("law.cap", {{"limit", speech_->money(*result.limit)}, {"taken", speech_->money(*result.taken)}});
}

std::string LawWords::award(const Award& award) const {
  if (!award.known) return speech_->say("law.award.unknown");
  if (award.most.is_zero() && !award.open)
    return speech_->say("law.award.nothing") + ' ' + speech_->say("law.award.courts-decide");
  std::string text = award.least == award.most
                         ? speech_->say("law.award.one", {{"most", speech_->money(award.most)}})
                         : speech_->say("law.award.range",
                                        {{"least", speech_->money(award.least)}, {"most", speech_->money(award.most)}});
  if ((award.forfeited || award.may_be_forfeited) && award.sum_due_forfeited != award.sum_due)
    text += ' ' + speech_->say(award.forfeited ? "law.award.forfeited" : "law.award.may-be-forfeited",
                               {{"merits", speech_->money(award.sum_due)},
                                {"forfeited", speech_->money(award.sum_due_forfeited)}});
  if (award.open) text += ' ' + speech_->say("law.award.open");
  return text + ' ' + speech_->say("law.award.less");
}

} // namespace wearline
