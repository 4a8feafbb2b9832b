#include "reading/prose.h"

#include <algorithm>
#include <array>

namespace wearline {

namespace {

/// The lines as one text, and back from its bytes to the lines.
struct Joined {
  std::string text;
  std::vector<std::size_t> starts; ///< of each line in the text

  explicit Joined(const std::vector<ProseLine>& lines) {
    for (const ProseLine& l : lines) {
      if (!text.empty()) text += ' ';
      starts.push_back(text.size());
      text += l.text;
    }
  }
  std::size_t line_of(std::size_t byte) const {
    return static_cast<std::size_t>(std::upper_bound(starts.begin(), starts.end(), byte) - starts.begin()) - 1;
  }
};

bool is_upper(char c) { return c >= 'A' && c <= 'Z'; }

bool ends_sentence(const std::string& t, std::size_t i) {
  if (t[i] != '.' && t[i] != '!' && t[i] != '?') return false;
  if (i + 1 >= t.size()) return true;
  if (t[i + 1] != ' ') return false;
  std::size_t next = i + 1;
  while (next < t.size() && t[next] == ' ') ++next;
  if (next >= t.size()) return true;
  const auto c = static_cast<unsigned char>(t[next]);
  if (!is_upper(t[next]) && c < 0x80 && c != '"' && c != '(') return false;
  std::size_t word = i;
  while (word > 0 && t[word - 1] != ' ') --word;
  const std::string last = fold(std::string_view(t).substr(word, i - word));
  static constexpr std::array<std::string_view, 12> cuts = {"no", "st",  "apt",    "mr", "mrs", "ms",
                                                            "dr", "inv", "approx", "sr", "sra", "num"};
  return std::find(cuts.begin(), cuts.end(), last) == cuts.end();
}

bool can_be_sum(const Number& n) { return n.kind == NumberKind::money && n.money().has_value(); }

class ProseReader {
public:
  ProseReader(const std::vector<ProseLine>& lines, const RecogniserRules& rules, NumberStyle style)
      : lines_(lines), rules_(rules), joined_(lines), m_(mark(joined_.text, rules, style)) {
    out_.fates.assign(lines.size(), "");
  }

  ProseResult run() {
    std::size_t from = 0;
    for (std::size_t i = 0; i < joined_.text.size(); ++i)
      if (ends_sentence(joined_.text, i)) {
        sentence(from, i + 1);
        from = i + 1;
      }
    if (from < joined_.text.size()) sentence(from, joined_.text.size());
    for (std::string& fate : out_.fates)
      if (fate.empty()) fate = "remark";
    return std::move(out_);
  }

private:
  std::size_t token_at(std::size_t byte) const {
    std::size_t i = 0;
    while (i < m_.tokens.size() && m_.tokens[i].start < byte) ++i;
    return i;
  }
  TextPlace place(std::size_t start, std::size_t end) const {
    const std::size_t line = joined_.line_of(start);
    const std::size_t limit = std::min(end, joined_.starts[line] + lines_[line].text.size());
    return {lines_[line].line, static_cast<std::uint32_t>(lines_[line].offset + start - joined_.starts[line]),
            static_cast<std::uint32_t>(lines_[line].offset + limit - joined_.starts[line])};
  }
  std::vector<TextPlace> places(std::size_t start, std::size_t end) const {
    std::vector<TextPlace> all;
    while (start < end) {
      const std::size_t line = joined_.line_of(start);
      const std::size_t stop = line + 1 < joined_.starts.size() ? std::min(end, joined_.starts[line + 1] - 1) : end;
      all.push_back(place(start, stop));
      start = stop + 1;
    }
    return all;
  }
  void settle(std::size_t start, std::size_t end, const char* fate) {
    if (end <= start) return;
    for (std::size_t line = joined_.line_of(start); line <= joined_.line_of(end - 1); ++line)
      if (out_.fates[line].empty() || out_.fates[line] == "remark" || std::string_view(fate) == "charge")
        out_.fates[line] = fate;
  }
  Lexicon::Id word(std::string_view id) const { return rules_.statement().find(id); }

  void sentence(std::size_t start, std::size_t end) {
    const std::size_t first = token_at(start), last = token_at(end);
    dates(first, last);
    std::size_t from = first;
    std::vector<std::size_t> charges;
    bool sums = false;
    for (std::size_t k = 0; k < m_.numbers.size(); ++k) {
      const Number& n = m_.numbers[k];
      if (n.first < first || n.last >= last || !can_be_sum(n) || measure_follows(n)) continue;
      if (n.rate || per_follows(n)) continue;
      const LabelKind kind = kind_of(from, n, last, first);
      sums = sums || kind != LabelKind::none;
      if (kind == LabelKind::fact) {
        settle(m_.tokens[from].start, m_.tokens[n.last].end, "information");
      } else if (kind != LabelKind::none) {
        out_.sums.emplace_back(kind, StatedSum{clause_text(from, n.first), *n.money(),
                                               place(m_.tokens[n.first].start, m_.tokens[n.last].end)});
        settle(m_.tokens[from].start, m_.tokens[n.last].end, "sums");
      } else charges.push_back(k);
      from = n.last + 1u;
    }
    if (!charges.empty()) charge_sentence(end, first, last, charges);
    else if (!sums) product_sentence(start, end, first, last);
  }

  bool measure_follows(const Number& n) const {
    if (n.currency) return false;
    for (const Mention& u : m_.charge)
      if (u.first == n.last + 1u && rules_.charges().at(u.concept_id).id.compare(0, 5, "unit:") == 0) return true;
    return false;
  }
  bool per_follows(const Number& n) const {
    const std::size_t t = n.last + 1u;
    if (t >= m_.tokens.size()) return false;
    const std::string& w = m_.tokens[t].text;
    if (w == "per" || w == "each" || w == "apiece" || (w == "/" && m_.tokens[t].glued) || w == "cada" || w == "por")
      return w != "por" || t + 1 >= m_.tokens.size() || m_.tokens[t + 1].text == "hora" ||
             m_.tokens[t + 1].text == "dia" || m_.tokens[t + 1].text == "mes";
    if ((w == "a" || w == "an") && t + 1 < m_.tokens.size())
      for (const Mention& u : m_.charge)
        if (u.first == t + 1 && rules_.charges().at(u.concept_id).id.compare(0, 5, "unit:") == 0) return true;
    return false;
  }

  /// What a sum in a sentence is: by the nearest word of a statement before it, unless something charged stands
  /// between.
  LabelKind kind_of(std::size_t from, const Number& n, std::size_t last, std::size_t first) const {
    static constexpr std::array<std::pair<std::string_view, LabelKind>, 11> kinds = {
        {{"st:makes", LabelKind::total},
         {"st:held", LabelKind::held},
         {"st:deposit", LabelKind::deposit},
         {"st:interest", LabelKind::interest},
         {"st:refund", LabelKind::refund},
         {"st:leaves", LabelKind::refund},
         {"st:due", LabelKind::due},
         {"st:total", LabelKind::total},
         {"st:balance", LabelKind::balance},
         {"st:subtotal", LabelKind::subtotal},
         {"st:fact", LabelKind::fact}}};
    if (paid_by_you(n, last)) return LabelKind::deposit;
    LabelKind kind = LabelKind::none;
    std::size_t at = 0;
    for (const Mention& s : m_.statement) {
      if (s.first < from || s.last >= n.first || s.match == Match::shortened || n.first - s.last > 7) continue;
      const std::string& id = rules_.statement().at(s.concept_id).id;
      for (const auto& [name, k] : kinds)
        if (id == name && (s.last >= at || kind == LabelKind::none || k == LabelKind::refund)) {
          if (s.last == at && kind != LabelKind::none && precedence(kind) > precedence(k)) continue;
          kind = k;
          at = s.last;
        }
    }
    if (kind != LabelKind::none && charged_between(at + 1, n.first)) kind = LabelKind::none;
    if (kind == LabelKind::fact && !information(from, n, last)) kind = LabelKind::none;
    if (kind == LabelKind::none && less_than_deposit(from, n)) return LabelKind::total;
    if (kind == LabelKind::none && sent_after(n, last) && !charged_between(from, n.first)) return LabelKind::refund;
    if (kind == LabelKind::none && deposit_after(n, last)) return LabelKind::deposit;
    if (kind == LabelKind::total && spent_on(n, last)) return LabelKind::none;
    if (kind == LabelKind::total && charged_between(first, n.first) && !sums_up(from, n.first)) return LabelKind::none;
    return kind;
  }
  /// "deposit $500 minus $125": what is taken off is the total.
  bool less_than_deposit(std::size_t from, const Number& n) const {
    const Lexicon::Id less = word("st:less");
    const bool minus = std::any_of(m_.statement.begin(), m_.statement.end(), [&](const Mention& s) {
      return s.concept_id == less && s.first >= from && s.last < n.first && s.match == Match::exact;
    });
    if (!minus || charged_between(from, n.first)) return false;
    return std::any_of(out_.sums.begin(), out_.sums.end(), [](const auto& s) { return s.first == LabelKind::deposit; });
  }
  /// "I had $1,200.00 as a security deposit"
  bool deposit_after(const Number& n, std::size_t last) const {
    const Lexicon::Id deposit = word("st:deposit");
    return std::any_of(m_.statement.begin(), m_.statement.end(), [&](const Mention& s) {
      return s.concept_id == deposit && s.first > n.last && s.first <= n.last + 4u && s.last < last &&
             s.match == Match::exact && !charged_between(n.last + 1u, s.first);
    });
  }
  /// "I kept $75.00 for cleaning the oven"
  bool spent_on(const Number& n, std::size_t last) const {
    const std::size_t t = n.last + 1u;
    if (t >= last) return false;
    const std::string& w = m_.tokens[t].text;
    return (w == "for" || w == "to" || w == "por" || w == "para" || w == "on") &&
           charged_between(t + 1, std::min(last, t + 7));
  }
  static int precedence(LabelKind k) {
    switch (k) {
    case LabelKind::due:
      return 6;
    case LabelKind::refund:
      return 5;
    case LabelKind::held:
      return 4;
    case LabelKind::interest:
      return 3;
    case LabelKind::total:
      return 2;
    case LabelKind::deposit:
      return 1;
    default:
      return 0;
    }
  }
  /// "In all", "altogether", "the total": sums up even when things are named.
  bool sums_up(std::size_t from, std::size_t to) const {
    for (std::size_t t = from; t < to; ++t)
      for (const char* w : {"total", "altogether", "all", "sum", "together", "kept", "keeping", "withheld",
                            "withholding", "total", "suma", "suman", "deductions", "deducciones", "descuentos"})
        if (m_.tokens[t].text == w) return true;
    return false;
  }
  bool charged_between(std::size_t from, std::size_t to) const {
    return std::any_of(m_.charge.begin(), m_.charge.end(), [&](const Mention& c) {
      if (c.first < from || c.last >= to || c.match == Match::shortened) return false;
      const Concept& idea = rules_.charges().at(c.concept_id);
      return (idea.role == Role::thing || idea.role == Role::work) && idea.id != "postage" &&
             idea.id != "report-photos" && idea.id != "returned-check-x";
    });
  }
  bool information(std::size_t from, const Number& n, std::size_t last) const {
    for (std::size_t t = from; t < last && t < n.last + 6u; ++t)
      for (const char* w : {"new", "originally", "original", "receipt", "worth", "monthly", "estimate", "nueva",
                            "nuevo", "mensual", "paid"})
        if (m_.tokens[t].text == w) return true;
    return false;
  }
  /// "the $1,250.00 you paid"
  bool paid_by_you(const Number& n, std::size_t last) const {
    const std::size_t t = n.last + 1u;
    if (t + 1 >= last) return false;
    const std::string& a = m_.tokens[t].text;
    const std::string& b = m_.tokens[t + 1].text;
    if ((a == "you" && (b == "paid" || b == "gave" || b == "left" || b == "put")) || a == "deposit" || a == "security")
      return true;
    return (a == "que" && (b == "pago" || b == "dejo" || b == "dio" || b == "entrego")) ||
           (a == "de" && b == "deposito");
  }
  /// "$435.00 is enclosed", "so $271.40 comes back to you".
  bool sent_after(const Number& n, std::size_t last) const {
    const Lexicon::Id refund = word("st:refund");
    return std::any_of(m_.statement.begin(), m_.statement.end(), [&](const Mention& s) {
      return s.concept_id == refund && s.first > n.last && s.first <= n.last + 4u && s.last < last &&
             s.match == Match::exact;
    });
  }

  bool names_charge(std::size_t first, std::size_t last) const {
    return std::any_of(m_.charge.begin(), m_.charge.end(), [&](const Mention& c) {
      if (c.first < first || c.last >= last || c.match == Match::shortened) return false;
      const Concept& idea = rules_.charges().at(c.concept_id);
      return idea.role == Role::thing || idea.role == Role::work ||
             (idea.role == Role::state && idea.id != "left-behind" && idea.id != "unpaid" && idea.id != "balance");
    });
  }

  void charge_sentence(std::size_t end, std::size_t first, std::size_t last, const std::vector<std::size_t>& charges) {
    std::size_t from = first;
    for (std::size_t i = 0; i < charges.size(); ++i) {
      const Number& n = m_.numbers[charges[i]];
      const std::size_t to = i + 1 == charges.size() ? last : n.last + 1u;
      if (!names_charge(from, to) && !names_charge(first, last)) {
        settle(m_.tokens[from].start, m_.tokens[n.last].end, "number-without-sign");
        from = n.last + 1u;
        continue;
      }
      ReadCharge c;
      c.text = clause_text(from, to, n);
      c.amount = *n.money();
      c.amount_place = place(m_.tokens[n.first].start, m_.tokens[n.last].end);
      c.places = places(m_.tokens[from].start, to < m_.tokens.size() ? m_.tokens[to - 1].end : end);
      if (credits(from, to)) c.role = ChargeRole::credit, c.amount = Money{} - c.amount;
      out_.charges.push_back(std::move(c));
      settle(m_.tokens[from].start, m_.tokens[to - 1].end, "charge");
      from = n.last + 1u;
    }
  }

  /// "three blinds at $20.00 each": only count and price are printed.
  void product_sentence(std::size_t start, std::size_t end, std::size_t first, std::size_t last) {
    for (std::size_t k = 0; k < m_.numbers.size(); ++k) {
      const Number& price = m_.numbers[k];
      if (price.first < first || price.last >= last || !can_be_sum(price) || !(price.rate || per_follows(price)))
        continue;
      const auto count = count_before(price, first);
      if (!count || !names_charge(first, last)) continue;
      const std::int64_t cents = *count * (price.thousandths / 10);
      if (cents % 1000 != 0) continue;
      ReadCharge c;
      c.text = clause_text(first, last);
      c.amount = Money::cents(cents / 1000);
      c.computed = true;
      c.amount_place = place(m_.tokens[price.first].start, m_.tokens[price.last].end);
      c.places = places(start, end);
      out_.charges.push_back(std::move(c));
      settle(start, end, "charge");
      return;
    }
  }
  /// The count that the price is for: the nearest whole number or number word before it, no more than five words away.
  std::optional<std::int64_t> count_before(const Number& price, std::size_t first) const {
    std::optional<std::int64_t> count;
    for (const Number& n : m_.numbers)
      if (n.kind == NumberKind::plain && n.first >= first && n.last < price.first && price.first - n.last <= 6 &&
          n.thousandths > 0 && n.thousandths <= 100'000)
        count = n.thousandths;
    if (count) return count;
    const auto& words = rules_.charge_marks().counts;
    for (const Mention& w : m_.charge)
      for (std::size_t k = 1; k < words.size(); ++k)
        if (w.concept_id == words[k] && w.first >= first && w.last < price.first && price.first - w.last <= 6 &&
            m_.tokens[w.first].text != "both")
          count = static_cast<std::int64_t>(k + 1) * 1000;
    return count;
  }

  bool credits(std::size_t from, std::size_t to) const {
    const Lexicon::Id credit = rules_.charges().find("mark:credit");
    return std::any_of(m_.charge.begin(), m_.charge.end(), [&](const Mention& c) {
      return c.concept_id == credit && c.first >= from && c.last < to && c.match == Match::exact;
    });
  }

  /// The clause without its sum and without the joints at its ends.
  std::string clause_text(std::size_t from, std::size_t to) const { return trimmed(piece(from, to)); }
  std::string clause_text(std::size_t from, std::size_t to, const Number& n) const {
    std::string before = trimmed(piece(from, n.first)), after = trimmed(piece(n.last + 1u, to));
    if (before.empty()) return after;
    return after.empty() ? before : before + " " + after;
  }
  std::string_view piece(std::size_t from, std::size_t to) const {
    to = std::min(to, m_.tokens.size());
    if (to <= from) return {};
    return std::string_view(joined_.text).substr(m_.tokens[from].start, m_.tokens[to - 1].end - m_.tokens[from].start);
  }
  static std::string trimmed(std::string_view t) {
    for (bool more = true; more;) {
      more = false;
      while (!t.empty() && std::string_view(" ,;:.-").find(t.front()) != std::string_view::npos) t.remove_prefix(1);
      while (!t.empty() && std::string_view(" ,;:.-").find(t.back()) != std::string_view::npos) t.remove_suffix(1);
      for (const std::string_view joint : {"and ", "y ", "And ", "Y "})
        if (t.substr(0, joint.size()) == joint) t.remove_prefix(joint.size()), more = true;
    }
    return std::string(t);
  }

  void dates(std::size_t first, std::size_t last) {
    std::size_t from = first;
    for (const Number& n : m_.numbers) {
      if (n.kind != NumberKind::date || n.first < first || n.last >= last) continue;
      const auto day = civil_day(n.day);
      if (!day) continue;
      DateKind kind = DateKind::unknown;
      for (const Mention& s : m_.statement) {
        if (s.first < from || s.last >= n.first || n.first - s.last > 8 || s.match != Match::exact) continue;
        const std::string& id = rules_.statement().at(s.concept_id).id;
        if (id == "date:move-out") kind = DateKind::move_out;
        else if (id == "date:move-in") kind = DateKind::move_in;
        else if (id == "date:due") kind = DateKind::due;
        else if (id == "date:inspected") kind = DateKind::inspected;
        else if (id == "date:statement" && kind == DateKind::unknown && n.first - s.last <= 5)
          kind = DateKind::statement;
      }
      if (kind == DateKind::unknown && last - first <= static_cast<std::size_t>(n.last - n.first) + 4)
        kind = DateKind::statement;
      out_.dates.push_back({kind, *day, place(m_.tokens[n.first].start, m_.tokens[n.last].end)});
      settle(m_.tokens[n.first].start, m_.tokens[n.last].end, "date");
      from = n.last + 1u;
    }
  }

  const std::vector<ProseLine>& lines_;
  const RecogniserRules& rules_;
  Joined joined_;
  MarkedText m_;
  ProseResult out_;
};

} // namespace

ProseResult read_prose(const std::vector<ProseLine>& lines, const RecogniserRules& rules, NumberStyle style) {
  return ProseReader(lines, rules, style).run();
}

} // namespace wearline
