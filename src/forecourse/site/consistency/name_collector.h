#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "forecourse/site/fields/fields_site.h"
#include "forecourse/site/fields/passing_visitor.h"

namespace forecourse::site {

/// One mention of another part by its id.
struct Mention {
  std::string key;  ///< where it is written: "to"
  PartKind kind = PartKind::product;
  Name name;
};

/// Visitor of the descriptions in fields/ that collects every mention of another part.
class NameCollector : public PassingVisitor {
 public:
  [[nodiscard]] const std::vector<Mention>& mentions() const { return mentions_; }
  [[nodiscard]] static SourceSpan here() { return {}; }

  void reference(std::string_view key, Name& member, PartKind kind, std::string_view, Need = Need::optional) {
    if (!member.empty()) mentions_.push_back({std::string(key), kind, member});
  }
  void references(std::string_view key, std::vector<Name>& members, PartKind kind, std::string_view doc) {
    for (Name& member : members) reference(key, member, kind, doc);
  }
  void name_sets(std::string_view key, std::vector<std::vector<Name>>& sets, PartKind kind, std::string_view doc) {
    for (auto& set : sets) references(key, set, kind, doc);
  }
  template <class T>
  void table(std::string_view, std::optional<T>& member, std::string_view) {
    if (member) fields(*this, *member);
  }
  template <class T>
  void section(std::string_view, T& member, std::string_view) {
    fields(*this, member);
  }
  template <class T>
  void list(std::string_view, std::vector<T>& members, std::string_view) {
    for (T& member : members) fields(*this, member);
  }

 private:
  std::vector<Mention> mentions_;
};

}  // namespace forecourse::site
