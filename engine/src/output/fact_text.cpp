#include "output/fact_text.h"

#include "case/case_reader.h"

#include <type_traits>

namespace wearline {

namespace {

/// An age that is a plain number is one in JSON too.
bool plain_number(std::string_view text) {
  return !text.empty() && text.find_first_not_of("0123456789.") == std::string_view::npos && text.front() != '.';
}

} // namespace

std::int64_t code_points(std::string_view text, std::uint32_t bytes) {
  std::int64_t count = 0;
  for (std::size_t i = 0; i < bytes && i < text.size(); ++i)
    if ((static_cast<unsigned char>(text[i]) & 0xC0u) != 0x80u) ++count;
  return count;
}

void write_fact_value(JsonOut& out, const WordFact& fact) {
  std::visit(
      [&](const auto& value) {
        using T = std::decay_t<decltype(value)>;
        if constexpr (std::is_same_v<T, std::string>) {
          const bool age = fact.field == "ageYears" || fact.field == "ageYearsAtMoveIn";
          if (age && plain_number(value)) out.raw(value);
          else out.text(value);
        } else if constexpr (std::is_same_v<T, bool>) {
          out.boolean(value);
        } else if constexpr (std::is_same_v<T, std::int64_t>) {
          if (fact.field == "usefulLifeYears") out.raw(plain_thousandths(value));
          else out.number(value);
        } else if constexpr (std::is_same_v<T, Money>) {
          out.text(value.plain());
        } else if constexpr (std::is_same_v<T, Quantity>) {
          out.object().key("count").raw(plain_thousandths(value.thousandths)).pair("unit", value.unit).end_object();
        } else if constexpr (std::is_same_v<T, std::vector<std::string>>) {
          out.array();
          for (const std::string& name : value) out.text(name);
          out.end_array();
        } else {
          out.array();
          for (const Part& part : value)
            out.object().pair("kind", name_of(part.component)).pair("amount", part.amount.plain()).end_object();
          out.end_array();
        }
      },
      fact.value);
}

void write_facts(JsonOut& out, const WordFacts& facts, std::string_view text) {
  out.key("facts").object();
  for (const WordFact& fact : facts) {
    out.key(fact.field);
    write_fact_value(out, fact);
  }
  out.end_object().key("factSpans").object();
  for (const WordFact& fact : facts)
    out.key(fact.field).array().number(code_points(text, fact.start)).number(code_points(text, fact.end)).end_array();
  out.end_object();
}

} // namespace wearline
