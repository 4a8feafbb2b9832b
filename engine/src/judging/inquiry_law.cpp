#include "judging/inquiry.h"

#include <algorithm>

namespace wearline {

namespace {

/// Collects what the law would have to know, each thing once, with the largest sum that hangs on it.
class LawQuestions {
public:
  LawQuestions(const Assessment& a, std::vector<Question>& out) : view_(a.law->view()), out_(out) {}

  void add(const Grounds& grounds, Money effect, std::size_t line = Question::no_line, bool turns_day = false) {
    for (const Ask& ask : grounds.unknown) {
      if (ask.kind == Ask::Kind::fact) {
        const FactInfo& info = view_.info(FactId{ask.which});
        if (!info.derived) add(view_.place(FactId{ask.which}), info.id, info.question, effect, line, turns_day);
      } else {
        const EventInfo& info = view_.info(EventId{ask.which});
        add(view_.place(EventId{ask.which}), info.id, info.question, effect, line, turns_day);
      }
    }
  }
  void add(std::string asks, std::string_view id, const Localized& question, Money effect, std::size_t line,
           bool turns_day) {
    for (Question& q : out_)
      if (q.asks == asks && (q.id == id || q.id.empty())) {
        q.effect = std::max(q.effect, effect);
        q.turns_day = q.turns_day || turns_day;
        return;
      }
    Question q{std::move(asks), "law", &question, line, effect, id, turns_day};
    out_.push_back(std::move(q));
  }

private:
  const FactView& view_;
  std::vector<Question>& out_;
};

/// Something is lost or owed if the deadline was not done in time.
bool weighs(const Deadline& deadline) {
  return deadline.tenant_loses ||
         std::any_of(deadline.if_missed.begin(), deadline.if_missed.end(),
                     [](const std::string& what) { return what != "none" && what != "other"; });
}

} // namespace

void ask_about_law(const Assessment& a, std::vector<Question>& out) {
  LawQuestions questions(a, out);
  const Law& law = *a.law;
  for (std::size_t i = 0; i < a.lines.size(); ++i)
    for (const Permission& p : a.lines[i].permissions)
      if (!p.applies.known() && p.says != Permission::Says::caution && p.says != Permission::Says::allowed)
        questions.add(p.grounds, a.lines[i].result.fair.likely(), i);
  const Award& award = law.award();
  const Money at_stake = award.known && award.sum_due_forfeited.high() > award.sum_due.likely()
                             ? award.sum_due_forfeited.high() - award.sum_due.likely()
                             : Money();
  for (const ForfeitResult& f : law.forfeits())
    if (!f.applies.known()) questions.add(f.grounds, at_stake);
  for (const RemedyResult& r : law.remedies())
    if (!r.applies.known() && r.most > award.sum_due.likely())
      questions.add(r.grounds, r.most - award.sum_due.likely());
  for (const DeadlineResult& deadline : law.deadlines())
    if (deadline.state == DeadlineState::undetermined)
      questions.add(deadline.grounds, Money(), Question::no_line, weighs(*deadline.deadline));
  // Where some cities of the place have rules of their own, which city it is.
  if (!law.pack().places.empty() && a.c.locality.empty())
    for (const FactInfo& info : a.law->registry().facts)
      if (info.at == "/locality") questions.add(info.at, info.id, info.question, Money(), Question::no_line, false);
  const InterestResult& interest = law.interest();
  for (const InterestShare& share : interest.shares)
    questions.add(share.grounds, share.gross.high() - share.gross.low());
  // A rate that is open is asked for, one deposit at a time: nobody can tell before what it comes to.
  const auto open = std::find_if(interest.shares.begin(), interest.shares.end(), [](const InterestShare& share) {
    return share.applies == Tri::yes && share.rule->rate.bank && (share.at_least || !share.gross.exact());
  });
  if (open != interest.shares.end() && !interest.bank_rate_open.empty())
    out.push_back({"/deposits/" + std::to_string(interest.bank_rate_open.front()) + "/bankInterestRate",
                   "bank-rate",
                   nullptr,
                   Question::no_line,
                   open->gross.high() - open->gross.low(),
                   {},
                   false});
}

} // namespace wearline
