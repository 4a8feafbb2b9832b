// wearline read [--json] FILE: the statement that came, as a case file to go on with.

#include "answers.h"
#include "output/reading.h"
#include "read_input.h"
#include "rules_folder.h"
#include "wearline/engine.h"

#include <algorithm>
#include <iostream>
#include <nlohmann/json.hpp>

namespace wearline::cli {

namespace {

using Json = nlohmann::ordered_json;

std::optional<Day> date_of(const ReadStatement& s, DateKind kind) {
  const auto found = std::find_if(s.dates.begin(), s.dates.end(), [&](const ReadDate& d) { return d.kind == kind; });
  return found == s.dates.end() ? std::nullopt : std::optional<Day>(found->day);
}

void put(Json& object, const char* name, const std::string& value) {
  if (!value.empty()) object[name] = value;
}
void put(Json& object, const char* name, std::optional<Day> day) {
  if (day) object[name] = iso(*day);
}
void put(Json& object, const char* name, const std::optional<StatedSum>& sum) {
  if (sum) object[name] = sum->amount.plain();
}

/// "Pet deposit" is a pet deposit; where nothing says otherwise it is the security deposit.
std::string deposit_kind(const std::string& text) {
  const std::string words = fold(text);
  for (const char* kind : {"pet", "key", "cleaning"})
    if (words.find(kind) != std::string::npos) return kind;
  return words.find("mascota") != std::string::npos ? "pet" : "security";
}

Json deposits_of(const ReadStatement& s) {
  Json list = Json::array();
  for (const StatedSum& d : s.deposits) {
    Json one = {{"kind", deposit_kind(d.text)}, {"amount", d.amount.plain()}};
    put(one, "paid", list.empty() ? date_of(s, DateKind::deposit_paid) : std::nullopt);
    if (list.empty() && s.interest) one["interestPaid"] = s.interest->amount.plain();
    list.push_back(std::move(one));
  }
  return list;
}

Json line_of(const ReadCharge& c, const Recognition& r, std::size_t number) {
  Json line = {{"id", std::to_string(number)}, {"text", c.text}};
  const bool credit = c.amount < Money{};
  line["amount"] = (credit ? Money{} - c.amount : c.amount).plain();
  if (credit) line["credit"] = true;
  put(line, "kind", std::string(name_of(r.kind)));
  put(line, "element", r.element);
  put(line, "finding", r.finding);
  put(line, "location", r.place);
  if (r.quantity)
    line["chargedQuantity"] = {{"count", Json::parse(plain_thousandths(r.quantity->thousandths))},
                               {"unit", r.quantity->unit}};
  return line;
}

Json case_of(const ReadStatement& s, const std::vector<Recognition>& known) {
  Json file = {{"wearline", newest_format}};
  put(file, "language", s.language);
  if (const auto out = date_of(s, DateKind::move_out)) file["tenancy"]["possessionReturned"] = iso(*out);
  if (const auto in = date_of(s, DateKind::move_in)) file["tenancy"]["began"] = iso(*in);
  if (!s.deposits.empty()) file["deposits"] = deposits_of(s);
  Json statement = Json::object();
  put(statement, "dated", date_of(s, DateKind::statement));
  put(statement, "sent", date_of(s, DateKind::sent));
  put(statement, "statedTotal", s.total);
  put(statement, "statedRefund", s.refund);
  put(statement, "statedBalanceDue", s.balance_due);
  if (!statement.empty()) file["statement"] = std::move(statement);
  file["lines"] = Json::array();
  for (std::size_t i = 0; i < s.charges.size(); ++i) file["lines"].push_back(line_of(s.charges[i], known[i], i + 1));
  return file;
}

/// What was not read, and sums that do not come out, for the person's eyes.
void print_rest(const ReadStatement& s, const std::vector<Recognition>& known, const Wording& words) {
  for (const TrayLine& t : s.tray)
    if (t.why != "choice")
      std::cerr << "line " << t.line << ": " << t.text << "\n    " << words.say("reading.tray." + t.why) << '\n';
  for (const OpenChoice& c : s.choices)
    std::cerr << "line " << c.charge.amount_place.line << ": " << c.charge.text << ": " << c.charge.amount.plain()
              << "\n    " << words.say("reading.tray.choice") << '\n';
  for (const StatementCheck& c : s.checks) {
    std::cerr << "line " << c.line << ": "
              << words.say("reading.check." + c.code,
                           {{"text", c.text}, {"stated", c.stated.grouped()}, {"computed", c.computed.grouped()}});
    if (c.slip != Slip::none) std::cerr << ' ' << words.say(slip_key(c.slip), {{"text", c.left_out}});
    std::cerr << '\n';
  }
  for (const ClosedSum& c : s.closed)
    std::cerr << "line " << c.line << ": " << words.say("reading.closed." + c.code, {{"stated", c.stated.grouped()}})
              << '\n';
  for (std::size_t i = 0; i < known.size(); ++i)
    if (known[i].confidence < 50) std::cerr << words.say("reading.unsure", {{"text", s.charges[i].text}}) << '\n';
}

} // namespace

int read(const ReadOptions& o) {
  const auto text = read_input(o.file);
  if (const auto* faults = std::get_if<Faults>(&text)) return refuse(*faults, false);
  if (const Faults faults = check_text(std::get<std::string>(text)); !faults.empty()) return refuse(faults, false);
  const auto folder = rules_folder(o.rules);
  const auto rules = load_recognizer(folder);
  if (const auto* faults = std::get_if<Faults>(&rules)) return refuse(*faults, false);
  const ReadStatement statement =
      read_statement(std::get<std::string>(text), std::get<RecognizerRules>(rules), o.language);
  const std::vector<Recognition> known = recognize_lines(statement, std::get<RecognizerRules>(rules));
  Json file = case_of(statement, known);
  if (!o.place.empty()) file["jurisdiction"] = o.place;
  const std::string made = file.dump(o.json ? -1 : 2);
  std::cout << (o.format == oldest_format ? in_older_names(made, older_document("case")) : made) << '\n';
  print_rest(statement, known, load_wording(folder, statement.language, "reading"));
  if (!statement.charges.empty() || !statement.deposits.empty() || statement.total || statement.refund)
    return status_ok;
  return refuse({{"no-charges", "", "This text holds no charge, no deposit and no total. Is it the statement?", ""}},
                false);
}

} // namespace wearline::cli
