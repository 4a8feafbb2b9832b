#pragma once
// What version 1 of the format called the members and words of a document, by place: the table
// engine/rules/schema/version-1.json, which says how it is written. The engine itself knows the present names only.

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace wearline {

/// Versions of the case file and of every answer: schema/README.md.
constexpr int oldest_format = 1, newest_format = 2;

/// One place of a document. A list is the same place as its items.
class OlderPlace {
public:
  /// What version 1 called a member; the same name where it was not renamed.
  std::string_view was(std::string_view member) const;
  /// The present name of a member of version 1; empty where only version 2 has a member so called.
  std::string_view now(std::string_view was) const;
  /// Whether version 1 has no such member.
  bool added(std::string_view member) const;
  /// The place of a member by its present name; null where nothing in it was called otherwise.
  const OlderPlace* below(std::string_view member) const;

  /// The same of a text that stands here.
  std::string_view word_was(std::string_view word) const;
  std::string_view word_now(std::string_view was) const;
  /// Whether a text here is a JSON Pointer into the case.
  bool holds_pointers() const { return pointers_; }

private:
  friend class OlderTable;
  struct Member {
    std::string now, was;
    bool added = false;
    std::unique_ptr<OlderPlace> place;
  };
  const Member* member(std::string_view now) const;

  std::vector<Member> members_; ///< in the order of their present names
  std::unique_ptr<OlderPlace> any_;
  std::vector<std::pair<std::string, std::string>> words_;
  bool pointers_ = false;
};

/// The root of a document: "case", "assessment", "letter", "reading", "recognition", "catalogue".
const OlderPlace& older_document(std::string_view name);

/// A JSON Pointer into a case of the present version as one into a case of version 1.
std::string older_pointer(std::string_view pointer);

/// A document's JSON text in the names of version 1, else byte for byte as it is. `json` is well formed.
std::string in_older_names(std::string_view json, const OlderPlace& document);

} // namespace wearline
