#include "output/reading.h"

#include "format/older_names.h"
#include "output/fact_text.h"
#include "reading/rows.h"

#include "json/json_out.h"
#include <algorithm>
#include <array>
#include <optional>
#include <vector>

namespace wearline {

namespace {

/// Code units of UTF-16 that the first `bytes` bytes of a line take.
std::uint32_t utf16_units(std::string_view line, std::uint32_t bytes) {
  std::uint32_t units = 0;
  for (std::size_t i = 0; i < bytes && i < line.size(); ++i) {
    const auto c = static_cast<unsigned char>(line[i]);
    if ((c & 0xC0u) == 0x80u) continue;
    units += c >= 0xF0 ? 2 : 1;
  }
  return units;
}

/// The lines of the input, for offsets into them.
std::vector<std::string_view> input_lines(std::string_view text) {
  std::vector<std::string_view> lines;
  std::size_t from = 0;
  while (from <= text.size()) {
    std::size_t end = text.find_first_of("\n\r", from);
    if (end == std::string_view::npos) end = text.size();
    lines.push_back(text.substr(from, end - from));
    if (end < text.size() && text[end] == '\r' && end + 1 < text.size() && text[end + 1] == '\n') ++end;
    if (end >= text.size()) break;
    from = end + 1;
  }
  return lines;
}

class Writer {
public:
  Writer(std::string_view text, const Wording& wording) : lines_(input_lines(text)), wording_(wording) {}

  std::string statement(const ReadStatement& s, const std::vector<Recognition>& known) {
    out_.object().key("wearline").number(newest_format).key("lines").array();
    for (std::size_t i = 0; i < s.charges.size(); ++i) line(s.charges[i], known[i]);
    out_.end_array();
    sum("deposit", s.deposit());
    sum("interest", s.interest);
    sum("statedTotal", s.total);
    sum("statedRefund", s.refund);
    sum("statedBalanceDue", s.balance_due);
    sum("payment", s.payment);
    sums("deposits", s.deposits);
    sums("otherAmounts", s.others);
    out_.pair("linesTotal", s.sum().plain());
    dates(s.dates);
    places(s);
    text_or_null("currency", s.currency);
    out_.pair("language", s.language);
    tray(s.tray);
    out_.key("inputLines").array();
    for (const std::string& fate : s.fates) out_.text(fate);
    out_.end_array();
    checks(s.checks);
    closed(s.closed);
    choices(s.choices);
    out_.end_object();
    return out_.take();
  }

private:
  void text_or_null(std::string_view name, const std::string& value) {
    out_.key(name);
    if (value.empty()) out_.null();
    else out_.text(value);
  }
  void sum(std::string_view name, const std::optional<Money>& amount) {
    out_.key(name);
    if (amount) out_.text(amount->plain());
    else out_.null();
  }
  void sum(std::string_view name, const std::optional<StatedSum>& stated) {
    sum(name, stated ? std::optional<Money>(stated->amount) : std::nullopt);
  }

  void place(const TextPlace& p) {
    const std::string_view line = p.line >= 1 && p.line <= lines_.size() ? lines_[p.line - 1] : std::string_view();
    out_.object()
        .key("line")
        .number(static_cast<std::int64_t>(p.line))
        .key("start")
        .number(utf16_units(line, p.start))
        .key("end")
        .number(utf16_units(line, p.end))
        .end_object();
  }

  void line(const ReadCharge& c, const Recognition& r) {
    static constexpr std::array<std::string_view, 3> roles = {"charge", "credit", "tax"};
    out_.object()
        .pair("text", c.text)
        .pair("amount", c.amount.plain())
        .pair("role", roles[static_cast<std::size_t>(c.role)]);
    out_.key("computed").boolean(c.computed);
    out_.key("corrected").boolean(c.mended);
    write_recognition(out_, r, c.text);
    out_.key("spans").array();
    for (const TextPlace& p : c.places) place(p);
    out_.end_array().key("amountSpan");
    place(c.amount_place);
    out_.end_object();
  }

  void sums(std::string_view name, const std::vector<StatedSum>& list) {
    out_.key(name).array();
    for (const StatedSum& s : list) {
      out_.object().pair("text", s.text).pair("amount", s.amount.plain()).key("span");
      place(s.place);
      out_.end_object();
    }
    out_.end_array();
  }

  static constexpr std::array<std::pair<std::string_view, DateKind>, 7> date_names = {
      {{"statement", DateKind::statement},
       {"sent", DateKind::sent},
       {"moveOut", DateKind::move_out},
       {"moveIn", DateKind::move_in},
       {"due", DateKind::due},
       {"inspected", DateKind::inspected},
       {"depositPaid", DateKind::deposit_paid}}};

  static const ReadDate* first_of(const std::vector<ReadDate>& list, DateKind kind) {
    const auto found = std::find_if(list.begin(), list.end(), [&](const ReadDate& d) { return d.kind == kind; });
    return found == list.end() ? nullptr : &*found;
  }

  void dates(const std::vector<ReadDate>& list) {
    out_.key("dates").object();
    for (const auto& [name, kind] : date_names) {
      const ReadDate* found = first_of(list, kind);
      text_or_null(name, found == nullptr ? std::string() : iso(found->day));
    }
    out_.end_object();
  }

  /// Where the sums and dates stand. Several deposits put together have no one place.
  void places(const ReadStatement& s) {
    const std::array<std::pair<std::string_view, const std::optional<StatedSum>*>, 5> sums = {
        {{"interest", &s.interest},
         {"statedTotal", &s.total},
         {"statedRefund", &s.refund},
         {"statedBalanceDue", &s.balance_due},
         {"payment", &s.payment}}};
    const auto put = [&](std::string_view name, const TextPlace& at) {
      out_.key(name);
      place(at);
    };
    out_.key("spans").object();
    if (s.deposits.size() == 1) put("deposit", s.deposits[0].place);
    for (const auto& [name, sum] : sums)
      if (*sum) put(name, (*sum)->place);
    for (const auto& [name, kind] : date_names)
      if (const ReadDate* found = first_of(s.dates, kind)) put(name, found->place);
    out_.end_object();
  }

  void tray(const std::vector<TrayLine>& list) {
    out_.key("unread").array();
    for (const TrayLine& t : list)
      out_.object()
          .key("line")
          .number(static_cast<std::int64_t>(t.line))
          .pair("text", t.text)
          .pair("code", t.why)
          .pair("reason", wording_.say("reading.tray." + t.why))
          .end_object();
    out_.end_array();
  }

  void closed(const std::vector<ClosedSum>& list) {
    out_.key("arithmeticConfirmed").array();
    for (const ClosedSum& c : list) {
      out_.object()
          .pair("code", c.code)
          .pair("text", wording_.say("reading.closed." + c.code, {{"stated", c.stated.grouped()}}))
          .key("line")
          .number(static_cast<std::int64_t>(c.line))
          .pair("stated", c.stated.plain());
      out_.key("lines").array();
      for (const std::size_t line : c.from) out_.number(static_cast<std::int64_t>(line));
      out_.end_array().end_object();
    }
    out_.end_array();
  }

  void choices(const std::vector<OpenChoice>& list) {
    out_.key("uncertainCharges").array();
    for (const OpenChoice& c : list) {
      out_.object().pair("text", c.charge.text).pair("amount", c.charge.amount.plain()).key("reading");
      if (c.reading) out_.number(static_cast<std::int64_t>(*c.reading));
      else out_.null();
      out_.key("spans").array();
      for (const TextPlace& p : c.charge.places) place(p);
      out_.end_array().key("amountSpan");
      place(c.charge.amount_place);
      out_.end_object();
    }
    out_.end_array();
  }

  void checks(const std::vector<StatementCheck>& list) {
    out_.key("arithmeticErrors").array();
    for (const StatementCheck& c : list) {
      const std::string stated = c.stated.grouped(), computed = c.computed.grouped();
      out_.object()
          .pair("code", c.code)
          .pair("text", wording_.say("reading.check." + c.code,
                                     {{"text", c.text}, {"stated", stated}, {"computed", computed}}));
      text_or_null("explanation", c.slip == Slip::none ? "" : wording_.say(slip_key(c.slip), {{"text", c.left_out}}));
      out_.key("line")
          .number(static_cast<std::int64_t>(c.line))
          .pair("stated", c.stated.plain())
          .pair("computed", c.computed.plain())
          .end_object();
    }
    out_.end_array();
  }

public:
  /// The members that say what a text is for.
  static void write_recognition(JsonOut& out, const Recognition& r, std::string_view text) {
    const auto member = [&](std::string_view name, const std::string& value) {
      out.key(name);
      if (value.empty()) out.null();
      else out.text(value);
    };
    member("kind", std::string(name_of(r.kind)));
    member("element", r.element);
    member("finding", r.finding);
    member("location", r.place);
    out.key("quantity");
    if (r.quantity)
      out.object()
          .key("count")
          .raw(plain_thousandths(r.quantity->thousandths))
          .pair("unit", r.quantity->unit)
          .end_object();
    else out.null();
    write_facts(out, r.facts, text);
    out.key("confidence").number(r.confidence);
    out.key("notACharge").boolean(r.not_a_charge);
    out.key("basis").array();
    for (const Basis& b : r.basis) out.text(text.substr(b.start, b.end - b.start));
    out.end_array().key("alternatives").array();
    for (const Alternative& a : r.alternatives) {
      out.object();
      member("element", a.element);
      member("finding", a.finding);
      out.key("confidence").number(a.confidence).end_object();
    }
    out.end_array();
  }

private:
  JsonOut out_;
  std::vector<std::string_view> lines_;
  const Wording& wording_;
};

} // namespace

std::vector<Recognition> recognize_lines(const ReadStatement& statement, const RecognizerRules& rules) {
  std::vector<Recognition> out;
  out.reserve(statement.charges.size());
  for (const ReadCharge& c : statement.charges) {
    TextContext context;
    context.heading = c.heading;
    context.amount_known = true;
    context.style = statement.style;
    context.amount = c.amount;
    out.push_back(recognize(c.text, rules, context));
    if (!out.back().quantity && c.count && *c.count > 0)
      out.back().quantity = Quantity{*c.count, c.unit.empty() ? "each" : c.unit};
  }
  return out;
}

std::string read_statement(std::string_view text, const RecognizerRules& rules, const Wording& wording,
                           std::string_view language, int format) {
  const ReadStatement statement = read_statement(text, rules, language);
  std::string answer = Writer(text, wording).statement(statement, recognize_lines(statement, rules));
  return format == oldest_format ? in_older_names(answer, older_document("reading")) : answer;
}

std::string slip_key(Slip slip) {
  switch (slip) {
  case Slip::turned_digits:
    return "reading.slip.turned-digits";
  case Slip::lost_point:
    return "reading.slip.lost-point";
  case Slip::left_out:
    return "reading.slip.left-out";
  default:
    return {};
  }
}

std::string recognize_text(std::string_view text, const RecognizerRules& rules, int format) {
  const Recognition r = recognize(text, rules);
  JsonOut out;
  out.object().key("wearline").number(newest_format).pair("text", text).key("amount");
  if (r.amount) out.text(r.amount->plain());
  else out.null();
  Writer::write_recognition(out, r, text);
  out.end_object();
  std::string answer = out.take();
  return format == oldest_format ? in_older_names(answer, older_document("recognition")) : answer;
}

} // namespace wearline
