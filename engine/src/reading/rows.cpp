#include "reading/rows.h"

#include "values/ascii.h"

#include <algorithm>
#include <array>
#include <optional>

namespace wearline {

namespace {

bool starts_with(std::string_view text, std::string_view head) { return text.substr(0, head.size()) == head; }

/// Bytes of a blank at `at`: space, no-break space (U+00A0), narrow ones (U+2007, U+202F). 0 if there is none.
std::size_t blank_at(std::string_view text, std::size_t at) {
  if (text[at] == ' ') return 1;
  if (starts_with(text.substr(at), "\xC2\xA0")) return 2;
  if (starts_with(text.substr(at), "\xE2\x80\x87") || starts_with(text.substr(at), "\xE2\x80\xAF") ||
      starts_with(text.substr(at), "\xE2\x80\x83"))
    return 3;
  return 0;
}
std::size_t bar_at(std::string_view text, std::size_t at) {
  if (text[at] == '|') return 1;
  if (starts_with(text.substr(at), "\xE2\x94\x82") || starts_with(text.substr(at), "\xE2\x94\x83") ||
      starts_with(text.substr(at), "\xC2\xA6"))
    return text[at] == '\xC2' ? 2 : 3;
  return 0;
}

std::size_t skip_blanks(std::string_view text, std::size_t at) {
  while (at < text.size()) {
    const std::size_t n = text[at] == '\t' ? 1 : blank_at(text, at);
    if (n == 0) break;
    at += n;
  }
  return at;
}

std::string_view trimmed_end(std::string_view text) {
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t' || text.back() == '\r')) text.remove_suffix(1);
  return text;
}

/// "> > text": how often quoted, and where the text begins.
int quote_marks(std::string_view line, std::size_t& at) {
  int depth = 0;
  at = 0;
  while (true) {
    std::size_t next = at;
    while (next < line.size() && line[next] == ' ' && next < at + 2) ++next;
    if (next >= line.size() || line[next] != '>') break;
    at = next + 1;
    ++depth;
  }
  if (depth > 0 && at < line.size() && line[at] == ' ') ++at;
  return depth;
}

constexpr std::array<std::string_view, 13> bullets = {"\xE2\x80\xA2",
                                                      "\xE2\x97\x8F",
                                                      "\xE2\x96\xAA",
                                                      "\xE2\x97\xA6",
                                                      "\xE2\x80\xA3",
                                                      "\xE2\x88\x99",
                                                      "\xE2\x96\xA0",
                                                      "\xE2\x81\x83",
                                                      "\xC2\xB7",
                                                      "*",
                                                      "-",
                                                      "\xE2\x80\x93",
                                                      "\xE2\x80\x94"};

/// Bytes of the box to tick that the text begins with, blanks after it included, and whether it is ticked.
std::size_t tick_size(std::string_view text, int& tick) {
  static constexpr std::array<std::string_view, 12> ticked = {
      "[x]",          "[X]",          "(x)",          "(X)",         "[v]", "[V]", "[*]", "[\xE2\x9C\x93]",
      "\xE2\x98\x91", "\xE2\x98\x92", "\xE2\x9C\x93", "\xE2\x9C\x94"};
  static constexpr std::array<std::string_view, 6> open = {"[ ]", "[]", "( )", "[_]", "\xE2\x98\x90", "[  ]"};
  const auto find = [&](const auto& list, int state) -> std::size_t {
    for (const std::string_view box : list)
      if (starts_with(text, box) && text.size() > box.size()) {
        const std::size_t after = skip_blanks(text, box.size());
        if (after >= text.size()) continue;
        tick = state;
        return after;
      }
    return 0;
  };
  const std::size_t size = find(ticked, 1);
  return size != 0 ? size : find(open, -1);
}

/// Bytes of the bullet or item number the text begins with ("- ", "3. ", "a) ", "(2) "), blanks after it included; 0 if
/// there is none.
std::size_t bullet_size(std::string_view text) {
  for (const std::string_view b : bullets)
    if (starts_with(text, b) && text.size() > b.size() && !starts_with(text.substr(b.size()), b)) {
      const std::size_t after = skip_blanks(text, b.size());
      const bool spaced = after > b.size();
      if (spaced && after < text.size() && !(b == "-" && (is_digit(text[after]) || text[after] == '$'))) return after;
      if (!spaced && b.size() > 1 && b[0] == '\xE2') return b.size();
    }
  std::size_t at = starts_with(text, "(") || starts_with(text, "#") ? 1 : 0;
  const std::size_t from = at;
  while (at < text.size() && is_digit(text[at]) && at - from < 3) ++at;
  const bool lettered = at == from && at + 1 < text.size() && is_letter(text[at]);
  if (lettered) ++at;
  if (at == from || at >= text.size()) return 0;
  const char end = text[at];
  if (end != '.' && end != ')' && !(end == ':' && from > 0)) return 0;
  if (lettered && end == '.' && from == 0) return 0;
  const std::size_t after = skip_blanks(text, at + 1);
  return after > at + 1 && after < text.size() ? after : 0;
}

/// Three or more points in a row, blanks between them allowed: a leader. Returns where it ends, or `at`.
std::size_t leader_end(std::string_view text, std::size_t at) {
  std::size_t points = 0, end = at, i = at;
  while (i < text.size()) {
    const bool middle_dot = starts_with(text.substr(i), "\xC2\xB7");
    if (text[i] == '.' && points > 1 && i + 1 < text.size() && is_digit(text[i + 1]) && (i == 0 || text[i - 1] == ' '))
      break; // " .50"
    if (text[i] == '.' || text[i] == '_' || middle_dot) {
      ++points;
      i += middle_dot ? 2 : 1;
      end = i;
    } else if (starts_with(text.substr(i), "\xE2\x80\xA6")) {
      points += 3;
      i += 3;
      end = i;
    } else if (text[i] == ' ' && points > 0 && i + 1 < text.size() && (text[i + 1] == '.' || text[i + 1] == '_')) ++i;
    else break;
  }
  return points >= 3 ? end : at;
}

bool is_rule(std::string_view text) {
  std::size_t marks = 0;
  for (std::size_t i = 0; i < text.size();) {
    const unsigned char c = static_cast<unsigned char>(text[i]);
    if (c == '-' || c == '=' || c == '_' || c == '*' || c == '~' || c == '.' || c == '#') ++marks, ++i;
    else if (c == '|' || c == '+' || c == ':' || c == ' ' || c == '\t') ++i;
    else if (c == 0xE2 && i + 2 < text.size() &&
             (static_cast<unsigned char>(text[i + 1]) == 0x94 || static_cast<unsigned char>(text[i + 1]) == 0x95 ||
              (static_cast<unsigned char>(text[i + 1]) == 0x80 &&
               (static_cast<unsigned char>(text[i + 2]) == 0x93 || static_cast<unsigned char>(text[i + 2]) == 0x94))))
      ++marks, i += 3;
    else return false;
  }
  return marks >= 2;
}

/// Bytes of the name and time that a chat puts before a message ("Terry 9:12 AM: "); 0 if there is none.
std::size_t named_chat_head(std::string_view text, std::string& speaker) {
  std::size_t at = 0, words = 0;
  while (at < text.size() && at < 40 && !is_digit(text[at])) {
    if (std::string_view(":;,$|\t").find(text[at]) != std::string_view::npos) return 0;
    words += text[at++] == ' ';
  }
  const std::size_t name = at;
  if (name == 0 || text[name - 1] != ' ' || words > 3) return 0;
  std::size_t clock = 0;
  while (at < text.size() &&
         (is_digit(text[at]) || (text[at] == ':' && at + 1 < text.size() && is_digit(text[at + 1]))))
    clock += text[at++] == ':';
  if (clock != 1 || at - name > 5) return 0;
  at = skip_blanks(text, at);
  if (at + 1 < text.size() && std::string_view("AaPp").find(text[at]) != std::string_view::npos &&
      (text[at + 1] == 'M' || text[at + 1] == 'm'))
    at += 2;
  if (at >= text.size() || text[at] != ':') return 0;
  const std::size_t after = skip_blanks(text, at + 1);
  if (after >= text.size() || after == at + 1) return 0;
  speaker = std::string(text.substr(0, name - 1));
  return after;
}

/// Bytes of the time and name that a chat puts before a message ("[6/3/24, 9:12 AM] Terry: ", "8/12/25 18:04 - Chayo:
/// ", "9:12 Terry: "); 0 if there is none. `speaker` becomes the name.
std::size_t chat_head(std::string_view text, std::string& speaker) {
  std::size_t at = starts_with(text, "[") ? 1 : 0;
  const bool bracket = at == 1;
  bool clock = false, digit = false;
  const auto is_time_sign = [](char c) {
    return is_digit(c) || std::string_view("/.:-, ").find(c) != std::string_view::npos;
  };
  const std::size_t begin = at;
  while (at < text.size() && at - begin < 32) {
    if (is_time_sign(text[at])) {
      clock = clock || (text[at] == ':' && digit && at + 1 < text.size() && is_digit(text[at + 1]));
      digit = is_digit(text[at]);
      ++at;
    } else if (const std::size_t wide = blank_at(text, at); wide != 0) at += wide;
    else if ((text[at] == 'A' || text[at] == 'P' || text[at] == 'a' || text[at] == 'p') && at + 1 < text.size() &&
             (text[at + 1] == 'M' || text[at + 1] == 'm'))
      at += 2;
    else break;
  }
  if (bracket && (at >= text.size() || text[at] != ']')) { // "[Sat Sep 7 2024, 10:02 AM]"
    const std::size_t close = text.find(']');
    if (close > 40) return 0; // or nowhere
    for (std::size_t i = begin + 1; i + 2 < close; ++i)
      clock = clock || (text[i] == ':' && is_digit(text[i - 1]) && is_digit(text[i + 1]) && is_digit(text[i + 2]));
    at = close;
  }
  if (!clock) return 0;
  if (bracket) {
    if (at >= text.size() || text[at] != ']') return 0;
    at = skip_blanks(text, at + 1);
  }
  const std::size_t name = at;
  std::size_t words = 0;
  while (at < text.size() && at - name < 40 && text[at] != ':') {
    if (text[at] == '(' && at > name) { // "Marge (6 Lindell Ct): "
      const std::size_t close = text.find(')', at);
      if (close == std::string_view::npos || close - at > 30) return 0;
      at = close + 1;
      continue;
    }
    if (is_digit(text[at]) || text[at] == '$' || text[at] == '\t') return 0;
    words += text[at] == ' ';
    ++at;
  }
  if (at >= text.size() || text[at] != ':' || at == name || words > 3) return 0;
  const std::size_t after = skip_blanks(text, at + 1);
  if (after >= text.size() || after == at + 1) return 0;
  speaker = std::string(text.substr(name, at - name));
  return after;
}

class CellSplitter {
public:
  explicit CellSplitter(Row& row) : row_(row), t_(row.text), at_(row.body) {}

  void run() {
    at_ = skip_outer_blanks(at_);
    while (at_ < t_.size()) {
      if (const std::size_t bar = bar_at(t_, at_); bar != 0) {
        row_.tabular = true;
        barred_ = true;
        if (has_left_ || !row_.cells.empty() || at_ > first_) close();
        has_left_ = true;
        at_ += bar;
        from_ = skip_outer_blanks(at_);
        at_ = from_;
      } else if (t_[at_] == '\t') {
        row_.tabular = true;
        close();
        ++at_;
        from_ = at_;
      } else if (const std::size_t end = leader_end(t_, at_); end > at_) {
        close();
        at_ = skip_outer_blanks(end);
        from_ = at_;
      } else if (const std::size_t gap = gap_end(at_); gap > at_ && !barred_ && !row_.tabular) {
        close();
        at_ = gap;
        from_ = at_;
      } else ++at_;
    }
    if (from_ < t_.size() || (row_.tabular && !barred_)) close();
    if (barred_ && !row_.cells.empty() && row_.cells.back().start == row_.cells.back().end) row_.cells.pop_back();
  }

  void begin() { first_ = from_ = skip_outer_blanks(row_.body); }

private:
  std::size_t skip_outer_blanks(std::size_t at) const {
    while (at < t_.size() && blank_at(t_, at) != 0) at += blank_at(t_, at);
    return at;
  }
  /// Two or more blanks part cells.
  std::size_t gap_end(std::size_t at) const {
    const std::size_t end = skip_outer_blanks(at);
    std::size_t blanks = 0;
    for (std::size_t i = at; i < end; i += blank_at(t_, i)) ++blanks;
    return blanks >= 2 ? end : at;
  }
  void close() {
    std::size_t end = at_;
    while (end > from_ &&
           (t_[end - 1] == ' ' || (end > from_ + 1 && starts_with(std::string_view(t_).substr(end - 2), "\xC2\xA0"))))
      end -= t_[end - 1] == ' ' ? 1 : 2;
    if (end <= from_ && !row_.tabular) return;
    end = std::max(end, from_);
    Cell c;
    c.start = static_cast<std::uint32_t>(from_);
    c.end = static_cast<std::uint32_t>(end);
    c.column = screen_column(t_, from_);
    c.column_end = screen_column(t_, end);
    row_.cells.push_back(c);
  }

  Row& row_;
  const std::string& t_;
  std::size_t at_, from_ = 0, first_ = 0;
  bool has_left_ = false, barred_ = false;
};

/// "800.00 (1,306.07)" in a cell of a table: two columns that came too near each other.
void part_sums(Row& row) {
  static constexpr std::string_view signs = "0123456789.,$()-";
  if (row.tabular || row.cells.size() < 3) return;
  const auto is_sum = [](std::string_view t) {
    while (!t.empty() && (t.back() == ')' || t.back() == '-')) t.remove_suffix(1);
    return t.size() > 3 && (t[t.size() - 3] == '.' || t[t.size() - 3] == ',') && is_digit(t[t.size() - 4]) &&
           t.find_first_not_of(signs) == std::string_view::npos;
  };
  const Cell last = row.cells.back();
  const std::string_view text = row.cell(row.cells.size() - 1);
  const std::size_t gap = text.find(' ');
  if (gap == std::string_view::npos || !is_sum(text.substr(0, gap)) || !is_sum(text.substr(gap + 1))) return;
  Cell first = last, second = last;
  first.end = last.start + static_cast<std::uint32_t>(gap);
  second.start = first.end + 1;
  first.column_end = screen_column(row.text, first.end);
  second.column = screen_column(row.text, second.start);
  row.cells.back() = first;
  row.cells.push_back(second);
}

Row make_row(std::string_view line, std::size_t number) {
  Row row;
  row.line = number;
  line = trimmed_end(line);
  std::size_t feeds = 0; // a new page
  while (feeds < line.size() && line[feeds] == '\f') ++feeds;
  line.remove_prefix(feeds);
  std::size_t at = 0;
  row.depth = quote_marks(line, at);
  at += feeds;
  row.offset = static_cast<std::uint32_t>(at);
  row.text = std::string(line.substr(at - feeds));
  const std::size_t first = skip_blanks(row.text, 0);
  row.indent = screen_column(row.text, first);
  row.blank = first >= row.text.size();
  row.body = static_cast<std::uint32_t>(first);
  if (row.blank) return row;
  row.rule = is_rule(row.text);
  if (row.rule) return row;
  if (const std::size_t ticked = tick_size(std::string_view(row.text).substr(first), row.tick); ticked != 0) {
    row.bulleted = true;
    row.body = static_cast<std::uint32_t>(first + ticked);
  } else if (const std::size_t size = bullet_size(std::string_view(row.text).substr(first)); size != 0) {
    row.bulleted = true;
    row.body = static_cast<std::uint32_t>(first + size);
  }
  if (const std::size_t head = chat_head(std::string_view(row.text).substr(row.body), row.speaker); head != 0)
    row.body += static_cast<std::uint32_t>(head);
  else if (const std::size_t named = named_chat_head(std::string_view(row.text).substr(row.body), row.speaker);
           named != 0)
    row.body += static_cast<std::uint32_t>(named);
  if (row.text[0] == '\t') row.body = 0; // an empty first cell counts
  CellSplitter splitter(row);
  splitter.begin();
  splitter.run();
  part_sums(row);
  return row;
}

// --------------------------------------------------------------------------------------------------------------------
// CSV

struct Record {
  std::vector<std::string> fields;
  std::size_t line = 1, lines = 1;
};

/// RFC 4180 with the given separator. Empty optional: a quoted field that never ends.
std::optional<std::vector<Record>> parse_csv(std::string_view text, char separator) {
  std::vector<Record> out;
  Record record;
  std::string field;
  bool quoted = false, was_quoted = false;
  std::size_t line = 1;
  const auto end_field = [&] {
    record.fields.push_back(std::move(field));
    field.clear();
    was_quoted = false;
  };
  const auto end_record = [&] {
    end_field();
    record.lines = line - record.line + 1;
    out.push_back(std::move(record));
    record = {};
  };
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (quoted) {
      if (c == '"' && i + 1 < text.size() && text[i + 1] == '"') field += '"', ++i;
      else if (c == '"') quoted = false;
      else field += c == '\n' || c == '\r' ? ' ' : c;
      if (c == '\n') ++line;
      continue;
    }
    if (c == '"' && field.find_first_not_of(' ') == std::string::npos && !was_quoted)
      field.clear(), quoted = was_quoted = true;
    else if (c == separator) end_field();
    else if (c == '\n') {
      end_record();
      ++line;
      record.line = line;
    } else if (c != '\r') field += c;
  }
  if (quoted) return std::nullopt;
  if (!field.empty() || !record.fields.empty()) end_record();
  return out;
}

bool numeric_field(std::string_view f) {
  bool digit = false;
  for (const char c : f) {
    if (is_digit(c)) digit = true;
    else if (std::string_view(" $.,-+()'").find(c) == std::string_view::npos && static_cast<unsigned char>(c) < 0x80 &&
             !(c == 'U' || c == 'S' || c == 'D' || c == 'C' || c == 'A' || c == 'R' || c == 'E'))
      return false;
  }
  return digit;
}

/// A text is CSV if nearly every line has the same number of fields, and either fields are quoted or the same field of
/// most lines is a number and the first line's is not.
bool looks_like_csv(const std::vector<Record>& records, std::string_view text, char separator) {
  std::size_t most = 0, lines = 0;
  for (const Record& r : records) most = std::max(most, r.fields.size());
  if (most < 2) return false;
  std::vector<std::size_t> numbers(most, 0);
  std::size_t same = 0;
  const Record* head = nullptr;
  for (const Record& r : records) {
    if (r.fields.size() == 1 && r.fields[0].find_first_not_of(" \t") == std::string::npos) continue;
    ++lines;
    if (r.fields.size() != most) continue;
    ++same;
    if (head == nullptr) head = &r;
    for (std::size_t i = 0; i < most; ++i) numbers[i] += numeric_field(r.fields[i]);
  }
  if (lines < 3 || same * 10 < lines * 7 || head == nullptr) return false;
  for (std::size_t i = 0; i < most; ++i)
    if (numbers[i] * 2 >= same && !numeric_field(head->fields[i]) && !head->fields[i].empty()) {
      // "Cleaning, stove, 50.00" under a sentence is no table: a head is short and has no sentence in it.
      std::size_t words = 1;
      for (const std::string& f : head->fields) words += static_cast<std::size_t>(std::count(f.begin(), f.end(), ' '));
      if (separator == '\t' || words <= most * 3) return true;
    }
  const std::string quote_pair = std::string("\"") + separator;
  return text.find(quote_pair) != std::string_view::npos && same == lines;
}

Row row_of(const Record& record) {
  Row row;
  row.line = record.line;
  row.lines = record.lines;
  row.tabular = true;
  for (std::size_t i = 0; i < record.fields.size(); ++i) {
    if (i > 0) row.text += " | ";
    std::string_view field = record.fields[i];
    field.remove_prefix(std::min(skip_blanks(field, 0), field.size()));
    field = trimmed_end(field);
    Cell c;
    c.start = static_cast<std::uint32_t>(row.text.size());
    row.text += field;
    c.end = static_cast<std::uint32_t>(row.text.size());
    c.column = c.start;
    c.column_end = c.end;
    row.cells.push_back(c);
  }
  row.blank = std::all_of(row.cells.begin(), row.cells.end(), [](const Cell& c) { return c.start == c.end; });
  return row;
}

std::optional<std::vector<Row>> csv_rows(std::string_view text) {
  for (const char separator : {',', ';'}) {
    const auto records = parse_csv(text, separator);
    if (!records || !looks_like_csv(*records, text, separator)) continue;
    std::vector<Row> rows;
    for (const Record& r : *records) rows.push_back(row_of(r));
    return rows;
  }
  return std::nullopt;
}

} // namespace

std::uint32_t screen_column(std::string_view text, std::size_t bytes) {
  std::uint32_t column = 0;
  for (std::size_t i = 0; i < bytes && i < text.size(); ++i) {
    if (text[i] == '\t') column = (column / 8 + 1) * 8;
    else if ((static_cast<unsigned char>(text[i]) & 0xC0u) != 0x80u) ++column;
  }
  return column;
}

std::vector<Row> split_rows(std::string_view text) {
  if (starts_with(text, "\xEF\xBB\xBF")) text.remove_prefix(3);
  if (auto rows = csv_rows(text)) return std::move(*rows);
  std::vector<Row> rows;
  std::size_t from = 0, number = 1;
  while (from <= text.size()) {
    std::size_t end = text.find_first_of("\n\r", from);
    if (end == std::string_view::npos) end = text.size();
    rows.push_back(make_row(text.substr(from, end - from), number++));
    if (end < text.size() && text[end] == '\r' && end + 1 < text.size() && text[end + 1] == '\n') ++end;
    if (end >= text.size()) break;
    from = end + 1;
  }
  return rows;
}

} // namespace wearline
