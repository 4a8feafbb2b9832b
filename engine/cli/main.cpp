// The command line: which commands and options there are. The one place that knows the option parser.

#include "built_from.h"
#include "commands.h"
#include "values/names.h"
#include "wearline/engine.h"

#include <CLI/CLI.hpp>
#include <functional>
#include <iostream>

namespace {

using namespace wearline::cli;

/// The options of every command, and the command that was chosen with its arguments.
class Program {
public:
  Program() {
    const CLI::Option* verbose =
        app_.add_flag("--verbose", verbose_, "with --version, what this program was built from as well");
    app_.set_version_flag("--version",
                          [verbose] { return verbose->count() != 0 ? versions() : std::string(wearline::version()); });
    app_.require_subcommand(1);
    app_.footer("Exit status: 0 when all was judged, 2 when an input was refused. `man wearline` tells the rest.");
    add_check();
    add_read();
    add_recognize();
    add_letter();
    add_dates();
    add_law();
    add_batch();
    add_validate();
  }

  int run(int count, char** words) {
    try {
      app_.parse(count, words);
      return chosen_();
    } catch (const CLI::ParseError& e) {
      if (e.get_exit_code() != 0 && count > 1 && is_unknown_command(words[1])) return no_such_command(words[1]);
      return app_.exit(e) == 0 ? status_ok : status_errors;
    } catch (const std::exception& e) { // out of memory, a pipe that closed: never a core dump
      std::cerr << "wearline: " << e.what() << '\n';
      return status_errors;
    }
  }

private:
  template <class Options>
  CLI::App* command(const char* name, const char* about, Options& o, int (*run)(const Options&)) {
    CLI::App* sub = app_.add_subcommand(name, about);
    sub->add_option("--rules", o.rules, "the folder of rules to use");
    sub->add_option("--format", o.format, "the version of answers that have no case in them, 1 or 2 (1 if absent)")
        ->check(CLI::Range(1, 2));
    sub->callback([this, &o, run] { chosen_ = [&o, run] { return run(o); }; });
    return sub;
  }
  template <class Options> static void day(CLI::App* sub, Options& o) {
    sub->add_option("--today", o.today, "the day to judge from, YYYY-MM-DD (this machine's date if absent)");
  }
  template <class Options> static void json(CLI::App* sub, Options& o, const char* about) {
    sub->add_flag("--json", o.json, about);
  }
  static void language(CLI::App* sub, std::string& to, const char* about) {
    sub->add_option("--language", to, about)->check(CLI::IsMember({"en", "es"}));
  }

  void add_check() {
    auto* sub = command("check", "Judge the charges of cases", check_, &check);
    json(sub, check_, "print the assessments as JSON, one line a case");
    day(sub, check_);
    sub->add_option("CASE", check_.cases, "case files, or folders of them; - reads standard input")->required();
  }
  void add_read() {
    auto* sub = command("read", "Make a case file of a statement that came as text or CSV", read_, &read);
    json(sub, read_, "print the case on one line");
    language(sub, read_.language, "the statement's language, en or es (found from its words if absent)");
    sub->add_option("--place", read_.place, "the place to put into the case (ISO 3166-2: US-WA, CA-BC)");
    sub->add_option("FILE", read_.file, "the statement, text or CSV; - reads standard input")->required();
  }
  void add_recognize() {
    auto* sub = command("recognize", "Say what charges are for: one description a line on standard input", recognize_,
                        &recognize);
    sub->alias("recognise");
    json(sub, recognize_, "print one JSON record a line");
  }
  void add_letter() {
    auto* sub = command("letter", "Write a letter or paper for one case file", letter_, &letter);
    json(sub, letter_, "print the letter as JSON, paragraph by paragraph");
    day(sub, letter_);
    sub->add_option("--kind", letter_.kind, "which letter (the one that fits best if absent)");
    sub->add_option("--language", letter_.language, "the reader's language, en or es");
    sub->add_option("CASE", letter_.file, "the case file, JSON; - reads standard input")->required();
  }
  void add_dates() {
    auto* sub = command("dates", "List the legal days of cases, soonest first", dates_, &dates);
    json(sub, dates_, "print one JSON record a day");
    day(sub, dates_);
    sub->add_flag("--ics", dates_.calendar, "print the open days as an iCalendar file");
    sub->add_option("CASE", dates_.cases, "case files, or folders of them; - reads standard input")->required();
  }
  void add_law() {
    auto* sub = command("law", "Print the rules held of a place's law, with their sources", law_, &law);
    json(sub, law_, "print the law file as JSON");
    sub->add_option("CODE", law_.place, "the place, ISO 3166-2: US-WA, CA-BC")->required();
  }
  void add_batch() {
    auto* sub = command("batch", "Judge a stream of cases, one a line, into assessments, one a line", batch_, &batch);
    day(sub, batch_);
    sub->add_option("--threads", batch_.threads, "how many work at once (one a core if absent)")
        ->check(CLI::Range(1U, 256U));
    sub->add_option("FILE", batch_.file, "newline-delimited cases; - reads standard input")->required();
  }
  void add_validate() {
    auto* sub = command("validate", "See whether a folder of rules can be used", validate_, &validate);
    json(sub, validate_, "print what it holds, or its faults, as JSON");
  }

  std::vector<std::string> names() const {
    std::vector<std::string> out;
    for (const CLI::App* sub : app_.get_subcommands([](const CLI::App*) { return true; }))
      out.push_back(sub->get_name());
    return out;
  }
  bool is_unknown_command(std::string_view word) const {
    const auto known = names();
    return word.substr(0, 1) != "-" && word != "recognise" &&
           std::find(known.begin(), known.end(), word) == known.end();
  }
  int no_such_command(const std::string& word) const {
    wearline::NameSet known;
    for (const std::string& name : names()) known.add(name);
    const std::string near(known.nearest(word));
    std::cerr << "There is no command '" << word << "'." << (near.empty() ? "" : " Did you mean '" + near + "'?")
              << " wearline --help lists them.\n";
    return status_errors;
  }

  CLI::App app_{"Checks the money taken from a residential security deposit.", "wearline"};
  std::function<int()> chosen_;
  bool verbose_ = false;
  CheckOptions check_;
  ReadOptions read_;
  Common recognize_, validate_;
  LetterOptions letter_;
  DatesOptions dates_;
  LawOptions law_;
  BatchOptions batch_;
};

} // namespace

int main(int count, char** words) { return Program().run(count, words); }
