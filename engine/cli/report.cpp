#include "report.h"

#include "values/money.h"
#include "wrapped_text.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <vector>

namespace wearline::cli {

namespace {

using Json = nlohmann::json;

const Json& member(const Json& object, const char* name) {
  static const Json nothing;
  if (!object.is_object()) return nothing;
  const auto found = object.find(name);
  return found == object.end() ? nothing : *found;
}

std::string text_of(const Json& object, const char* name) {
  const Json& value = member(object, name);
  return value.is_string() ? value.get<std::string>() : std::string();
}

/// "1240.00" as "1,240.00"; anything else as it is.
std::string grouped(const std::string& amount) {
  const bool negative = !amount.empty() && amount.front() == '-';
  const auto money = Money::parse(negative ? std::string_view(amount).substr(1) : std::string_view(amount));
  return money ? (negative ? "-" : "") + money->grouped() : amount;
}

/// The writer of one report.
class Report {
public:
  Report(const Json& assessment, const Wording& wording, bool color) : a_(assessment), w_(wording), color_(color) {}

  std::string write() {
    heading();
    each("lines", "cli.charges", [&](const Json& line) { charge(line); });
    shared_rules();
    totals();
    each("dates", "cli.dates", [&](const Json& date) { legal_date(date); });
    each("defects", "cli.defects",
         [&](const Json& defect) { bullet(text_of(defect, "text"), cites(member(defect, "source"))); });
    each("audit", "cli.audit", [&](const Json& finding) { bullet(text_of(finding, "text")); });
    remedies();
    each("questions", "cli.questions", [&](const Json& question) { ask(question); });
    each("assumptions", "cli.assumptions", [&](const Json& taken) { bullet(text_of(taken, "text")); });
    each_check();
    each_help();
    each("cautions", "cli.cautions", [&](const Json& caution) { bullet(text_of(caution, "text")); });
    return out_.str();
  }

private:
  void title(const char* key) {
    out_.blank();
    const std::string words = w_.say(key);
    color_ ? out_.strong(words) : out_.say("", words);
    out_.say("", std::string(length(words), '-'));
  }

  template <class Say> void each(const char* list, const char* key, Say say) {
    const Json& items = member(a_, list);
    if (!items.is_array() || items.empty()) return;
    title(key);
    for (const Json& item : items) say(item);
  }

  /// What the ids in `source` stand for, as " [RCW 59.18.280; ...]".
  std::string cites(const Json& source) const {
    std::string all;
    const auto add = [&](const Json& id) {
      if (!id.is_string() || id.get_ref<const std::string&>().empty()) return;
      const Json& entry = member(member(a_, "sources"), id.get_ref<const std::string&>().c_str());
      const std::string cite = text_of(entry, entry.is_object() && entry.contains("cite") ? "cite" : "title");
      all += (all.empty() ? " [" : "; ") + (cite.empty() ? id.get<std::string>() : cite);
    };
    if (source.is_array())
      for (const Json& id : source) add(id);
    else add(source);
    return all.empty() ? all : all + "]";
  }

  std::string range(const Json& r) const {
    std::string low = grouped(text_of(r, "low"));
    const std::string high = grouped(text_of(r, "high"));
    if (low == high) return low;
    if (member(r, "likely").is_null()) return w_.say("cli.range.open", {{"low", low}, {"high", high}});
    return w_.say("cli.range", {{"low", low}, {"likely", grouped(text_of(r, "likely"))}, {"high", high}});
  }

  void bullet(const std::string& text, const std::string& cites = {}) {
    if (!text.empty()) out_.say("  - ", text + cites);
  }
  void below(const std::string& text) {
    if (!text.empty()) out_.say("    ", text);
  }

  void each_help() {
    const Json& all = member(member(a_, "law"), "help");
    if (!all.is_array() || all.empty()) return;
    title("cli.help");
    for (const Json& help : all) {
      const std::string publisher = text_of(help, "publisher"), url = text_of(help, "url");
      bullet(text_of(help, "label") + ": " + text_of(help, "title") + (publisher.empty() ? "" : ", " + publisher));
      below(url);
    }
  }

  void heading() {
    out_.say("", w_.say("cli.heading", {{"engine", text_of(a_, "engine")}, {"today", text_of(a_, "today")}}));
    const Json& law = member(a_, "law");
    const std::string name = text_of(law, "name");
    if (name.empty()) return out_.say("", w_.say("cli.no-law"));
    out_.say("", w_.say("cli.law", {{"name", name}, {"reviewed", text_of(law, "reviewed")}}));
    if (member(law, "limitedSources") == true) out_.say("", w_.say("cli.weak"));
    for (const Json& outside : member(law, "notDeposit")) out_.say("", text_of(outside, "text"));
  }

  /// Why the verdict, unless a step below says the same with its source.
  static std::string reason(const Json& line) {
    std::string why = text_of(line, "reason");
    for (const Json& step : member(line, "steps"))
      if (text_of(step, "text") == why) return {};
    return why;
  }

  /// Whether a rule is told once for this line and others (law.sharedRules).
  bool shared_with_others(const Json& bar, const Json& line) const {
    const Json& all = member(member(a_, "law"), "sharedRules");
    return std::any_of(all.begin(), all.end(), [&](const Json& shared) {
      const Json& lines = member(shared, "lines");
      return text_of(shared, "rule") == text_of(bar, "rule") &&
             std::find(lines.begin(), lines.end(), member(line, "id")) != lines.end();
    });
  }

  void charge(const Json& line) {
    out_.say(text_of(line, "id") + "  ", text_of(line, "text"));
    out_.say("    ", w_.say("cli.line",
                            {{"claimed", grouped(text_of(line, "claimed"))}, {"fair", range(member(line, "fair"))}}));
    const std::string verdict = text_of(line, "verdictText"), why = reason(line);
    out_.say("    ", (verdict.empty() ? text_of(line, "verdict") : verdict) + (why.empty() ? "" : ". " + why));
    for (const Json& step : member(line, "steps"))
      out_.say("      - ", text_of(step, "text") + cites(member(step, "source")));
    const Json& rules = member(member(a_, "law"), "rules");
    for (const Json& bar : member(line, "bars")) {
      if (shared_with_others(bar, line)) continue;
      const Json& rule = member(rules, text_of(bar, "rule").c_str());
      out_.say("      - ", text_of(rule, "text") + cites(member(rule, "source")));
    }
    for (const Json& other : member(line, "conflicts"))
      out_.say("      - ", text_of(other, "text") + cites(member(other, "source")));
    if (const std::string turn = text_of(member(line, "turningPoint"), "text"); !turn.empty())
      out_.say("      - ", turn);
    for (const Json& m : member(line, "methods"))
      out_.say("      - ", w_.say("cli.method", {{"label", text_of(m, "label")}, {"fair", range(member(m, "fair"))}}));
    if (const std::string others = text_of(member(line, "comparableDecisions"), "text"); !others.empty())
      out_.say("      - ", others);
    std::string documents;
    for (const Json& document : member(line, "documentsToRequest"))
      documents +=
          (documents.empty() ? "" : "; ") + (document.is_string() ? document.get<std::string>() : std::string());
    if (!documents.empty()) out_.say("      - ", w_.say("cli.ask-for", {{"papers", documents}}));
    out_.blank();
  }

  void shared_rules() {
    const Json& law = member(a_, "law");
    const Json& shared = member(law, "sharedRules");
    if (!shared.is_array() || shared.empty()) return;
    title("cli.shared");
    for (const Json& one : shared) {
      const Json& rule = member(member(law, "rules"), text_of(one, "rule").c_str());
      const std::string may = member(one, "applies").is_null() ? w_.say("cli.may-apply") + " " : "";
      bullet(may + text_of(rule, "text"), cites(member(rule, "source")));
    }
  }

  void total(const char* key, const char* name) {
    const Json& value = member(member(a_, "totals"), name);
    const std::string_view row(name);
    const bool only_where_some = row == "keptApart" || row == "paidApart" || row == "owedByTenant";
    if (value.is_null() || (only_where_some && text_of(value, "high") == "0.00")) return;
    out_.row("  ", w_.say(key),
             value.is_object() ? range(value) : grouped(value.is_string() ? value.get<std::string>() : std::string()),
             40);
  }

  void totals() {
    if (!member(a_, "totals").is_object()) return;
    title("cli.totals");
    for (const auto& [key, name] : {std::pair{"cli.total.claimed", "claimed"},
                                    {"cli.total.fair", "fair"},
                                    {"cli.total.paidApart", "paidApart"},
                                    {"cli.total.deposit", "deposit"},
                                    {"cli.total.interest", "interest"},
                                    {"cli.total.keptApart", "keptApart"},
                                    {"cli.total.fairRefund", "fairRefund"},
                                    {"cli.total.paidBack", "paidBack"},
                                    {"cli.total.shortfall", "shortfall"},
                                    {"cli.total.owedByTenant", "owedByTenant"}})
      total(key, name);
    if (const std::string more = text_of(member(a_, "totals"), "counterclaim"); !more.empty()) out_.say("  ", more);
    if (const std::string counted = text_of(member(member(a_, "totals"), "counted"), "text"); !counted.empty())
      out_.say("  ", counted);
  }

  void legal_date(const Json& date) {
    const std::string label = text_of(date, "label"), state = text_of(date, "stateText");
    out_.say("  - ",
             (label.empty() ? text_of(date, "duty") : label) + ": " + (state.empty() ? text_of(date, "state") : state));
    below(text_of(date, "text") + cites(member(date, "source")));
    const std::string condition = text_of(date, "condition");
    if (!condition.empty()) below(w_.say("cli.date.condition", {{"condition", condition}}));
    for (const Json& one : member(date, "alternatives"))
      out_.say("      - ", w_.say("cli.date.alternative",
                                  {{"condition", text_of(one, "condition")}, {"rule", text_of(one, "rule")}}) +
                               cites(member(one, "source")));
    below(text_of(date, "ifMissed"));
    below(text_of(date, "caveat"));
  }

  void remedies() {
    const Json& r = member(a_, "remedies");
    if (!r.is_object()) return;
    title("cli.remedies");
    const std::string least = text_of(r, "least"), most = text_of(r, "most");
    if (!least.empty() && !most.empty())
      out_.say("  ", w_.say(least == most ? "cli.remedy" : "cli.remedy-range",
                            {{"least", grouped(least)}, {"most", grouped(most)}}));
    if (!text_of(r, "text").empty()) out_.say("  ", text_of(r, "text") + cites(member(r, "source")));
    for (const Json& item : member(r, "items")) bullet(text_of(item, "text"), cites(member(item, "source")));
  }

  void ask(const Json& question) {
    const std::string effect = text_of(question, "effect");
    const bool moves = !effect.empty() && effect != "0.00";
    bullet(text_of(question, "text") + (moves ? " " + w_.say("cli.swing", {{"swing", grouped(effect)}}) : ""));
  }

  void each_check() {
    const Json& checks = member(member(a_, "law"), "caveats");
    if (!checks.is_array() || checks.empty()) return;
    title("cli.checks");
    for (const Json& check : checks) bullet(check.is_string() ? check.get<std::string>() : text_of(check, "text"));
  }

  const Json& a_;
  const Wording& w_;
  bool color_;
  WrappedText out_;
};

} // namespace

std::string language_of(const Json& assessment) {
  const std::string language = text_of(assessment, "language");
  return language.empty() ? "en" : language;
}

std::string report(const Json& assessment, const Wording& wording, bool color) {
  return Report(assessment, wording, color).write();
}

} // namespace wearline::cli
