// wearline dates: the legal days of cases, in the order of the calendar, as text, JSON lines or an iCalendar file.

#include "answers.h"
#include "calendar_file.h"
#include "read_input.h"

#include <algorithm>
#include <iostream>
#include <nlohmann/json.hpp>

namespace wearline::cli {

namespace {

using Json = nlohmann::json;

std::string text_of(const Json& object, const char* name) {
  const auto found = object.find(name);
  return found != object.end() && found->is_string() ? found->get<std::string>() : std::string();
}

/// One deadline of one case. `day`: the earliest day it can be, the one to keep to; empty where it is not known.
struct DeadlineDay {
  std::string file, day;
  Json deadline;
};

/// Days that are known come first, in their order.
bool sooner(const DeadlineDay& a, const DeadlineDay& b) {
  if (a.day.empty() != b.day.empty()) return b.day.empty();
  return a.day < b.day;
}

std::string day_of_deadline(const Json& deadline) {
  for (const char* name : {"last", "first"})
    if (const auto found = deadline.find(name); found != deadline.end() && found->is_object())
      if (std::string day = text_of(*found, "earliest"); !day.empty()) return day;
  return {};
}

std::string stem(const std::filesystem::path& file) { return file == "-" ? "case" : file.stem().string(); }

class Days {
public:
  explicit Days(const DatesOptions& options) : options_(options), today_(day_of(options)) {}

  void take(const Judged& judged) {
    if (const auto* faults = std::get_if<Faults>(&judged.assessment)) return fail(*faults, judged.file);
    const Json result = Json::parse(std::get<std::string>(judged.assessment), nullptr, false);
    if (const Faults faults = faults_of(result); !faults.empty()) return fail(faults, judged.file);
    for (const Json& deadline : result.value("dates", Json::array()))
      days_.push_back({judged.file.string(), day_of_deadline(deadline), deadline});
  }

  int print() {
    std::stable_sort(days_.begin(), days_.end(), sooner);
    if (options_.calendar) std::cout << calendar_file(still_open(), "Wearline", today_);
    else
      for (const DeadlineDay& d : days_) options_.json ? print_json(d) : print_text(d);
    return status_;
  }

private:
  void fail(const Faults& faults, const std::filesystem::path& file) {
    print_faults(faults, file);
    status_ = status_errors;
  }

  std::vector<CalendarDay> still_open() const {
    std::vector<CalendarDay> out;
    for (const DeadlineDay& d : days_) {
      if (text_of(d.deadline, "state") != "open" || d.day.empty() || d.day < today_) continue;
      const std::string about = stem(d.file);
      std::string why;
      for (const char* name : {"rule", "text", "ifMissed", "source"})
        if (const std::string text = text_of(d.deadline, name); !text.empty())
          why += (why.empty() ? "" : "\n\n") + text;
      out.push_back({text_of(d.deadline, "id") + "-" + about + "@wearline", d.day,
                     text_of(d.deadline, "label") + " (" + about + ")", why});
    }
    return out;
  }

  static void print_json(const DeadlineDay& d) {
    Json out = {{"file", d.file}, {"day", d.day.empty() ? Json() : Json(d.day)}};
    out.update(d.deadline);
    std::cout << out.dump(-1, ' ', false, Json::error_handler_t::replace) << '\n';
  }

  /// "2026-08-31  missed       landlord  Return the deposit  (case.json)"
  static void print_text(const DeadlineDay& d) {
    const auto padded = [](std::string text, std::size_t width) {
      text.resize(std::max(width, text.size()), ' ');
      return text;
    };
    std::cout << padded(d.day.empty() ? "-" : d.day, 12) << padded(text_of(d.deadline, "state"), 13)
              << padded(text_of(d.deadline, "who"), 10) << text_of(d.deadline, "label") << "  (" << d.file << ")\n";
  }

  const DatesOptions& options_;
  std::string today_;
  std::vector<DeadlineDay> days_;
  int status_ = status_ok;
};

} // namespace

int dates(const DatesOptions& options) {
  const auto cases = case_files(options.cases);
  if (const auto* faults = std::get_if<Faults>(&cases)) return refuse(*faults, options.json, {}, options.format);
  Days days(options);
  const Faults faults = judge_each(std::get<std::vector<std::filesystem::path>>(cases), options, Answers::own,
                                   [&](const Judged& judged) { days.take(judged); });
  return faults.empty() ? days.print() : refuse(faults, options.json, {}, options.format);
}

} // namespace wearline::cli
