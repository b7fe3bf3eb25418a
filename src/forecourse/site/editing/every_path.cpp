#include "forecourse/site/editing/every_path.h"

#include <fmt/format.h>

#include <algorithm>

#include "forecourse/site/editing/path.h"
#include "forecourse/site/text/read_run.h"

namespace forecourse::site {

namespace {

/// Walks a path through every item that a star stands for.
class StarWalk {
 public:
  void walk(const Node& table, std::string_view rest, const std::string& before) {
    const std::size_t dot = rest.find('.');
    const std::string_view key = rest.substr(0, dot);
    const Entry* entry = find_entry(table, key);
    if (dot == std::string_view::npos || entry == nullptr) {
      if (rest.find('*') == std::string_view::npos) paths.push_back(before + std::string(rest));
      return;
    }
    const std::string path = before + std::string(key) + ".";
    rest = rest.substr(dot + 1);
    if (is_table_list(entry->node)) return walk_list(entry->node, rest, path);
    if (entry->node.kind == NodeKind::table) return walk(entry->node, rest, path);
    if (rest.find('*') == std::string_view::npos) paths.push_back(path + std::string(rest));
  }

  std::vector<std::string> paths;
  std::vector<std::string_view> passed;  ///< names of items that were not meant

 private:
  void walk_list(const Node& list, std::string_view rest, const std::string& before) {
    const bool every = rest == "*" || rest.starts_with("*.");
    std::size_t longest = 0;
    for (std::size_t i = 0; i < list.items.size(); ++i) longest = std::max(longest, meant(list, i, rest, every));
    for (std::size_t i = 0; i < list.items.size(); ++i) {
      const std::size_t length = meant(list, i, rest, every);
      const std::string_view name = item_name(list.items[i]);
      if (length == 0 || length < longest) {
        if (std::find(passed.begin(), passed.end(), name) == passed.end()) passed.push_back(name);
        continue;
      }
      const std::string path = before + (name.empty() ? std::to_string(i + 1) : std::string(name));
      if (length == rest.size()) {
        paths.push_back(path);
      } else {
        walk(list.items[i], rest.substr(length + 1), path + ".");
      }
    }
  }

  static std::size_t meant(const Node& list, std::size_t i, std::string_view rest, bool every) {
    return every ? 1 : item_match(list.items[i], i + 1, rest);
  }
};

}  // namespace

Parsed<std::vector<std::string>> every_path(const Node& root, std::string_view path) {
  const bool at_dispensers = path.starts_with("hose.") || path.starts_with("inlet.");
  if (!at_dispensers && path.find('*') == std::string_view::npos) return {{std::string(path)}, {}};
  StarWalk stars;
  stars.walk(root, at_dispensers ? "dispenser.*." + std::string(path) : std::string(path), "");
  if (!stars.paths.empty()) return {std::move(stars.paths), {}};
  const std::string_view named = path.substr(std::min(path.find('.') + 1, path.size()));
  std::string hint = "write it as hose.*.limiter or line.*.bore";
  if (!stars.passed.empty()) hint = offer(named.substr(0, named.rfind('.')), stars.passed, "there are");
  return {{}, {{Severity::error, fmt::format("'{}' is nothing in the file", path), std::nullopt, std::move(hint), {}}}};
}

}  // namespace forecourse::site
