#pragma once
// Numbers and dates as people read them, in the language of the reader.

#include "values/calendar.h"
#include "values/money.h"
#include "values/range.h"
#include "wear/valuation.h"
#include "wording/wording.h"

#include <string>
#include <string_view>

namespace wearline {

class Speech {
public:
  /// `currency`: ISO 4217; dollars get a "$", other currencies and none only the number.
  Speech(const Wording& wording, std::string_view language, std::string_view currency)
      : wording_(&wording), language_(language), currency_(currency) {}

  std::string_view language() const { return language_; }
  std::string say(std::string_view key, Wording::Args args = {}) const { return wording_->say(key, args); }
  /// Wording::fill
  template <class Values> std::string fill(std::string_view key, const Values& values) const {
    return wording_->fill(key, values);
  }
  bool has(std::string_view key) const { return wording_->has(key); }

  std::string money(Money m) const;               ///< "$1,180.00", "-$5.00"
  std::string money(const Range<Money>& m) const; ///< "$38.27 to $160.00", or one sum
  std::string day(Day d) const;                   ///< "July 31, 2026"
  std::string weekday(Day d) const;               ///< "Friday"
  std::string span(const DaySpan& d) const;       ///< a day, "between ... and ...", "before ...", "after ..."
  std::string length(Age age) const;              ///< "6 years and 4 months", "5 months", "less than a month"
  std::string about(Age age) const;               ///< the same to the nearest year from two years on, after "about"
  std::string percent(Share share) const;         ///< "8.3%"; whole numbers without decimals
  std::string quantity(const Quantity& q) const;  ///< "3 rooms", "1 room", "2.5"

private:
  const Wording* wording_;
  std::string_view language_, currency_;
};

} // namespace wearline
