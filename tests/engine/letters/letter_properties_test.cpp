// What must hold for every letter, over generated cases of every place: compared with the assessment of the same case.

#include "letters/letter.h"
#include "rulebook/rule_store.h"
#include "support/letters.h"

#include <algorithm>
#include <map>
#include <random>
#include <regex>
#include <set>

using namespace wearline;
using namespace wearline::test;
using nlohmann::json;

namespace {

/// Cases as a person may leave them: any fact may be missing.
class Cases {
public:
  explicit Cases(unsigned seed) : random_(seed) {}

  json next() {
    const auto& packs = real_rules().rules().packs;
    json c = {{"wearline", 1}, {"side", one({"tenant", "adviser", "landlord"})}, {"lines", json::array()}};
    if (!chance(10))
      c["jurisdiction"] = std::next(packs.begin(), static_cast<std::ptrdiff_t>(pick(packs.size())))->first;
    tenancy(c);
    if (!chance(8))
      c["deposits"].push_back({{"kind", "security"},
                               {"amount", sum(50'000, 400'000)},
                               {"paid", c["tenancy"].value("began", "2023-01-01")}});
    statement(c);
    events(c);
    const std::size_t count = chance(8) ? 0 : 1 + pick(7);
    for (std::size_t i = 0; i < count; ++i) c["lines"].push_back(line(i));
    return c;
  }
  Day today() { return out_ + days{static_cast<int>(pick(120)) - 10}; }

private:
  std::size_t pick(std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n - 1)(random_); }
  bool chance(std::size_t one_in) { return pick(one_in) == 0; }
  std::string one(std::initializer_list<const char*> names) { return names.begin()[pick(names.size())]; }
  std::string sum(std::size_t least, std::size_t most) {
    return Money::cents(static_cast<std::int64_t>(least + pick(most - least))).plain();
  }
  std::string name(const std::vector<Choice>& choices) { return choices[pick(choices.size())].id; }

  void tenancy(json& c) {
    out_ = *parse_day("2025-01-01") + days{static_cast<int>(pick(700))};
    const Day began = out_ - days{static_cast<int>(100 + pick(3000))};
    json t = json::object();
    if (!chance(6)) t["began"] = iso(began);
    if (!chance(6)) t["ended"] = iso(out_);
    if (!chance(4)) t["possessionReturned"] = iso(out_);
    if (!chance(3)) t["monthlyRent"] = sum(60'000, 300'000);
    if (!chance(3)) t["forwardingAddressGiven"] = iso(out_ + days{static_cast<int>(pick(20)) - 10});
    c["tenancy"] = t;
  }

  void statement(json& c) {
    json s = json::object();
    const Day sent = out_ + days{static_cast<int>(1 + pick(70))};
    if (chance(6)) {
      c["statement"] = {{"came", false}};
      return;
    }
    if (!chance(3)) s["dated"] = iso(sent);
    if (!chance(4)) s["sent"] = iso(sent);
    if (!chance(3)) s["received"] = iso(sent + days{static_cast<int>(pick(8))});
    if (chance(2))
      s["how"] = one({"mail", "first-class-mail", "certified-mail", "email", "personal-delivery", "portal"});
    if (chance(2)) s["refundPaid"] = sum(0, 200'000);
    else if (chance(2)) s["statedRefund"] = sum(0, 200'000);
    else if (chance(3)) s["statedBalanceDue"] = sum(1'000, 100'000);
    if (s.contains("refundPaid") && chance(2)) s["refundSent"] = iso(sent);
    for (const char* paper : {"written", "itemised", "reasons", "receipts", "photos", "estimate", "signed"})
      if (chance(3)) s["enclosed"].push_back(paper);
      else if (chance(4)) s["missing"].push_back(paper);
    c["statement"] = s;
  }

  void events(json& c) {
    for (const char* what : {"tenant-demand", "tenant-objected", "papers-requested"})
      if (chance(6)) c["events"].push_back({{"what", what}, {"on", iso(out_ + days{static_cast<int>(5 + pick(60))})}});
  }

  json line(std::size_t at) {
    const auto& guide = real_rules().rules().wear;
    const Element& element = guide.elements[pick(guide.elements.size())];
    json l = {{"id", std::to_string(at + 1)},
              {"text", "Charge number " + std::to_string(at + 1)},
              {"kind", element.kind},
              {"element", element.id}};
    if (!chance(12)) l["amount"] = sum(1'000, 150'000);
    if (!element.findings.empty() && !chance(5)) l["finding"] = element.findings[pick(element.findings.size())].id;
    if (chance(2)) l["installed"] = iso(out_ - days{static_cast<int>(pick(7000))});
    if (chance(3)) l["cause"] = name(guide.causes);
    if (chance(3)) l["atMoveIn"] = name(guide.at_move_in);
    if (chance(6)) l["landlordFactors"].push_back(name(guide.landlord_factors));
    if (chance(4)) l["remedy"] = one({"replace", "repair"});
    if (chance(4)) l["charged"] = {{"count", 3}, {"unit", "room"}}, l["damaged"] = {{"count", 1}, {"unit", "room"}};
    if (chance(4)) l["proof"].push_back(one({"receipts", "photos"}));
    else if (chance(5)) l["proofMissing"].push_back(one({"receipts", "photos"}));
    if (chance(15)) l["credit"] = true;
    return l;
  }

  std::mt19937 random_;
  Day out_;
};

Money money(const json& text) { return *Money::parse(text.get<std::string>()); }

/// "-$1,234.50", "$80.00 (open)" in cents.
std::int64_t cents(const std::string& cell) {
  std::int64_t value = 0;
  bool minus = false;
  for (const char c : cell) {
    if (c == '-') minus = true;
    if (c == '(') break;
    if (c >= '0' && c <= '9') value = value * 10 + (c - '0');
  }
  return minus ? -value : value;
}

/// Every sum in a sentence, in cents.
std::vector<std::int64_t> sums_in(const std::string& text) {
  static const std::regex sum(R"(-?\$?\d[\d,]*\.\d\d)");
  std::vector<std::int64_t> out;
  for (std::sregex_iterator at(text.begin(), text.end(), sum), end; at != end; ++at) out.push_back(cents(at->str()));
  return out;
}

/// What stands in each "(Law: ...)" or "(Official guide: ...)" of a text.
std::vector<std::string> cites_in(const std::string& text) {
  std::vector<std::string> out;
  for (const std::string label : {"(Law: ", "(Official guide: "})
    for (std::size_t at = 0; (at = text.find(label, at)) != std::string::npos; ++at)
      out.push_back(text.substr(at + label.size(), text.find(".)", at) - at - label.size()));
  return out;
}

/// Whether `cites` is a row of citations, word for word, of sources that `may` stand.
template <class May> bool all_held(std::string cites, const Pack& pack, May&& may) {
  while (!cites.empty()) {
    const Reference* held = nullptr; // the longest citation that fits: one may begin like another
    for (const Reference& r : pack.sources)
      if (may(r) && cites.compare(0, r.text.size(), r.text) == 0 &&
          (cites.size() == r.text.size() || cites.compare(r.text.size(), 2, "; ") == 0) &&
          (!held || held->text.size() < r.text.size()))
        held = &r;
    if (!held) return false;
    cites.erase(0, std::min(cites.size(), held->text.size() + 2));
  }
  return true;
}

/// One case with its assessment.
struct Assessed {
  json c, result;
  Day today;
};

/// One letter of it.
struct Written {
  const json& c;
  const json& result;
  json letter;
  Day today;
  std::string kind;

  const json* line(const std::string& id) const {
    for (const auto& l : result["lines"])
      if (l["id"] == id) return &l;
    return nullptr;
  }
};

constexpr int rounds = 150;

/// Generated once; cases that the reader refuses (a date that cannot be) are left out.
const std::vector<Assessed>& assessed_cases() {
  static const std::vector<Assessed> all = [] {
    Cases cases(1);
    std::vector<Assessed> out;
    while (out.size() < rounds) {
      Assessed one{cases.next(), {}, cases.today()};
      one.result = json::parse(assess(one.c.dump(), real_rules(), one.today));
      if (one.result["errors"].empty()) out.push_back(std::move(one));
    }
    return out;
  }();
  return all;
}

const std::vector<Written>& letters(const std::string& language) {
  static std::map<std::string, std::vector<Written>> all;
  auto& written = all[language];
  if (written.empty())
    for (const Assessed& one : assessed_cases())
      for (const LetterKind kind : letter_kinds()) {
        const std::string name(name_of(kind));
        const auto answer =
            letter(one.c.dump(), real_rules(), one.today, json{{"kind", name}, {"language", language}}.dump());
        written.push_back({one.c, one.result, json::parse(answer), one.today, name});
      }
  return written;
}

/// Calls `look` with every kind of letter of the generated cases.
template <class Look> void over_letters(Look&& look, const std::string& language = "en") {
  for (const Written& w : letters(language)) {
    INFO(w.kind << ' ' << w.c.dump() << ' ' << iso(w.today));
    look(w);
  }
}

} // namespace

TEST_CASE("Every letter has its caution last and never sends it", "[letter]") {
  over_letters([](const Written& w) {
    const json& paragraphs = w.letter["paragraphs"];
    if (paragraphs.empty() || paragraphs.back()["role"] != "caution" || paragraphs.back()["on"] != true)
      FAIL("no caution");
    const std::string caution = paragraphs.back()["text"];
    if (caution.find("not legal advice") == std::string::npos) FAIL(caution);
    if (w.letter["text"].get<std::string>().find("not legal advice") != std::string::npos) FAIL("the caution is sent");
  });
}

TEST_CASE("No letter has a gap: no unfilled placeholder, no missing sentence, no paragraph twice", "[letter]") {
  static const std::regex gap(R"(\{[a-z]+\}|\[[a-z0-9-]+(\.[a-z0-9-]+)+\]|  )");
  const auto look = [](const Written& w) {
    const std::string all = w.letter.dump();
    std::smatch found;
    if (std::regex_search(all, found, gap)) FAIL(found.str() << " in " << all);
    std::set<std::string> ids;
    for (const auto& p : w.letter["paragraphs"])
      if (!ids.insert(p["id"]).second || p["id"].get<std::string>().empty()) FAIL("twice or empty: " << p.dump());
  };
  over_letters(look);
  over_letters(look, "es");
}

TEST_CASE("No letter asks for more than the assessment finds", "[letter]") {
  int asked = 0, forfeited = 0;
  over_letters([&](const Written& w) {
    const std::string ask = words(w.letter, "ask");
    if (ask.empty() || w.result["totals"]["shortfall"].is_null()) return;
    const json& t = w.result["totals"];
    const bool all = ask.find("all that was kept") != std::string::npos;
    // Nothing may be kept: the deposit with its interest, less what came back.
    Money most = std::max(money(t["shortfall"]["likely"]), money(t["owedByTenant"]["likely"]));
    if (all) most = std::max(most, money(w.result["remedies"]["sumDueForfeited"]["likely"]));
    if (all && w.result["remedies"]["forfeits"] != "yes")
      FAIL("nothing is forfeited for certain: " << w.result["remedies"].dump());
    for (const std::int64_t sum : sums_in(ask)) {
      if (sum > most.in_cents()) FAIL(ask << " but at most " << most.plain());
      ++asked;
    }
    forfeited += all;
  });
  CHECK(asked > rounds);
  CHECK(forfeited > 5);
}

TEST_CASE("The table of charges says what the assessment says, and adds up", "[letter]") {
  int rows_seen = 0;
  over_letters([&](const Written& w) {
    const json table = paragraph(w.letter, "charges");
    if (table.is_null() || table["head"].size() != 4 || table["head"][3] != "in question") return;
    std::int64_t charged = 0, fair = 0, rest = 0;
    for (std::size_t i = 0; i + 1 < table["rows"].size(); ++i) {
      const json& row = table["rows"][i];
      const json& line = w.result["lines"][i];
      if (row[2] == "") continue; // no amount
      charged += cents(row[1]), fair += cents(row[2]), rest += cents(row[3]);
      if (cents(row[1]) != money(line["claimed"]).in_cents() ||
          cents(row[2]) != money(line["fair"]["likely"]).in_cents() || cents(row[1]) - cents(row[2]) != cents(row[3]))
        if (line["claimed"].get<std::string>()[0] != '-') FAIL(row.dump() << " is not " << line.dump());
      ++rows_seen;
    }
    const json& total = table["rows"].back();
    if (cents(total[1]) != charged || cents(total[2]) != fair || cents(total[3]) != rest) FAIL(table.dump());
  });
  CHECK(rows_seen > rounds);
}

TEST_CASE("The table of sums adds up", "[letter]") {
  int seen = 0;
  over_letters([&](const Written& w) {
    const json table = paragraph(w.letter, "sums");
    if (table.is_null() || table["head"].size() != 2) return;
    std::int64_t sum = 0;
    for (const auto& row : table["rows"]) {
      const std::string name = row[0];
      const std::int64_t value = cents(row[1]);
      if (name == "Fair refund" || name == "Refund" || name == "Still to be paid back") {
        if (value != sum) FAIL(table.dump());
        ++seen;
      } else if (name == "Fair charges beyond the deposit" || name == "Charges beyond the deposit") {
        if (value != -sum) FAIL(table.dump());
        break;
      } else {
        sum += value;
      }
    }
  });
  CHECK(seen > rounds);
}

TEST_CASE("No letter accepts or questions more of a charge than the assessment", "[letter]") {
  static const std::regex accepted(R"(I accept (\S+) of it|I agree to (\S+) of it|I count (\S+) for this charge)");
  int partly = 0, fully = 0;
  over_letters([&](const Written& w) {
    if (w.kind == "itemized-statement") return;
    for (const auto& p : w.letter["paragraphs"]) {
      if (p["id"] == "accepted")
        for (const auto& id : p["lines"]) {
          const json& line = *w.line(id);
          if (line["fair"]["low"] != line["claimed"]) FAIL(p.dump());
          ++fully;
        }
      const std::string text = p["text"];
      if (p["id"].get<std::string>().rfind("line-", 0) != 0 || text.find("I see no amount") != std::string::npos)
        continue;
      const json& line = *w.line(p["lines"][0]);
      if (line["fair"]["low"] == line["claimed"]) FAIL("questions a fair charge: " << text);
      std::smatch found;
      if (!std::regex_search(text, found, accepted)) continue;
      const std::string sum = found[1].matched ? found[1].str() : found[2].matched ? found[2].str() : found[3].str();
      if (sum != "nothing" && cents(sum) != money(line["fair"]["likely"]).in_cents())
        FAIL(text << " is not " << line["fair"].dump());
      ++partly;
    }
  });
  CHECK(partly > rounds / 4);
  CHECK(fully > rounds / 4);
}

TEST_CASE("No letter cites a section that the pack does not hold, or one from memory", "[letter]") {
  int cited = 0;
  over_letters([&](const Written& w) {
    const auto cites = cites_in(w.letter["text"]);
    if (cites.empty()) return;
    const Pack* pack = real_rules().rules().pack(w.c.value("jurisdiction", ""));
    if (!pack) FAIL("cites without law");
    for (const std::string& cite : cites) {
      if (!all_held(cite, *pack, [](const Reference& r) { return r.read != "memory"; }))
        FAIL('"' << cite << "\" is not a readable source of " << pack->jurisdiction);
      ++cited;
    }
  });
  CHECK(cited > rounds);
}

TEST_CASE("What was not read in the law or a guide to it is never stated firmly", "[letter]") {
  int careful = 0;
  over_letters([&](const Written& w) {
    const Pack* pack = real_rules().rules().pack(w.c.value("jurisdiction", ""));
    if (!pack) return;
    for (const auto& p : w.letter["paragraphs"]) {
      const std::string text = p["text"];
      const bool hedged = text.find("As I understand it: ") != std::string::npos ||
                          text.find("As far as I know: ") != std::string::npos;
      careful += hedged;
      for (const std::string& cite : cites_in(text)) {
        const bool sure = all_held(
            cite, *pack, [](const Reference& r) { return r.read == "statute-text" || r.read == "official-guide"; });
        if (!hedged && (!sure || pack->weak)) FAIL(text);
      }
    }
  });
  CHECK(careful > rounds / 2);
}

TEST_CASE("No letter names a missed day that is not missed", "[letter]") {
  int named = 0;
  over_letters([&](const Written& w) {
    for (const auto& p : w.letter["paragraphs"]) {
      const std::string id = p["id"];
      if (id.rfind("missed-", 0) != 0) continue;
      const json* duty = nullptr;
      for (const auto& date : w.result["dates"])
        if (date["id"] == id.substr(7)) duty = &date;
      if (!duty || (*duty)["state"] != "missed" || (*duty)["who"] != "landlord")
        FAIL(p.dump() << " but " << (duty ? duty->dump() : "no such duty"));
      if ((*duty)["last"]["latest"].get<std::string>() >= iso(w.today)) FAIL("not past: " << p.dump());
      ++named;
    }
  });
  CHECK(named > rounds / 2);
}

TEST_CASE("A landlord's statement keeps the likely fair sum of each charge and pays back the rest", "[letter]") {
  int kept_lines = 0;
  over_letters([&](const Written& w) {
    if (w.kind != "itemized-statement") return;
    const json table = paragraph(w.letter, "charges");
    if (table.is_null()) return;
    std::int64_t kept = 0;
    for (std::size_t i = 0; i + 1 < table["rows"].size(); ++i) {
      const json& line = *w.line(table["lines"][i]);
      if (cents(table["rows"][i][2]) != cents(line["fair"]["likely"])) FAIL(table.dump());
      kept += cents(table["rows"][i][2]);
      ++kept_lines;
    }
    if (kept != cents(table["rows"].back()[2])) FAIL(table.dump());
  });
  CHECK(kept_lines > rounds / 2);
}

TEST_CASE("The letter proposed first is one of the side's own and gives its reason", "[letter]") {
  Cases cases(2);
  for (int i = 0; i < rounds * 2; ++i) {
    const json c = cases.next();
    const Day today = cases.today();
    const json answer = json::parse(letter(c.dump(), real_rules(), today, "{}"));
    if (!answer["errors"].empty()) continue;
    INFO(c.dump());
    REQUIRE_FALSE(answer["proposed"].empty());
    CHECK(answer["kind"] == answer["proposed"][0]["kind"]);
    std::set<std::string> own, seen;
    for (const auto& kind : answer["kinds"]) own.insert(kind["kind"]);
    for (const auto& fit : answer["proposed"]) {
      CHECK(own.count(fit["kind"]) == 1);
      CHECK_FALSE(fit["why"].get<std::string>().empty());
      CHECK(seen.insert(fit["kind"]).second);
    }
  }
}
