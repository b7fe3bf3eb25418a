#include "forecourse/site/editing/path.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <vector>

#include "forecourse/site/text/read_run.h"

namespace forecourse::site {

namespace {

constexpr std::size_t npos = std::string_view::npos;

Diagnostic fault(std::string message, std::string hint) {
  return {Severity::error, std::move(message), std::nullopt, std::move(hint), {}};
}

/// The text of a key in a table; empty when there is none.
std::string_view text_in(const Node& table, std::string_view key) {
  const Entry* entry = find_entry(table, key);
  return entry != nullptr && entry->node.kind == NodeKind::text ? std::string_view(entry->node.text)
                                                                : std::string_view();
}

class PathWalk {
 public:
  PathWalk(const Node& root, std::string_view path)
      : path_(path), rest_(path), inside_(&root), at_{&root, nullptr, nullptr, {}} {}

  std::variant<PathTarget, Diagnostic> walk() {
    if (path_.empty() || path_.find("..") != npos || path_.front() == '.' || path_.back() == '.') {
      return fault(fmt::format("'{}' is no path to a value", path_), "write it as line.trunk.bore");
    }
    while (true) {
      const std::size_t dot = rest_.find('.');
      const std::string_view key = rest_.substr(0, dot);
      const Entry* entry = find_entry(*inside_, key);
      if (entry == nullptr) {
        at_.entry = nullptr;
        at_.missing = prefix_ + std::string(rest_);
        return at_;
      }
      at_.entry = entry;
      if (dot == npos) return at_;
      rest_ = rest_.substr(dot + 1);
      if (auto trouble = enter(*entry)) return *trouble;
      if (at_.item != nullptr) return at_;
    }
  }

 private:
  /// Goes into the value of an entry, as there is more of the path.
  std::optional<Diagnostic> enter(const Entry& entry) {
    if (entry.node.kind == NodeKind::table) {
      inside_ = &entry.node;
      if (entry.is_dotted()) {
        prefix_ += entry.key + ".";
      } else {
        go_into(entry.node);
      }
      return std::nullopt;
    }
    if (is_table_list(entry.node)) return enter_list(entry);
    return fault(
        fmt::format("'{}' leads nowhere: {} is {}, which has no keys", path_, entry.key, noun_of(entry.node.kind)),
        fmt::format("set {} as a whole", entry.key));
  }

  /// A table with a stretch of its own, to which keys can be added.
  void go_into(const Node& table) {
    inside_ = &table;
    at_.table = &table;
    prefix_.clear();
  }

  std::optional<Diagnostic> enter_list(const Entry& entry) {
    const Node* best = nullptr;
    std::size_t length = 0;
    for (std::size_t i = 0; i < entry.node.items.size(); ++i) {
      const std::size_t fits = item_match(entry.node.items[i], i + 1, rest_);
      if (fits > length) {
        length = fits;
        best = &entry.node.items[i];
      }
    }
    if (best == nullptr) return unknown_item(entry);
    if (length == rest_.size()) {
      at_.item = best;
    } else {
      go_into(*best);
      rest_ = rest_.substr(length + 1);
    }
    return std::nullopt;
  }

  [[nodiscard]] Diagnostic unknown_item(const Entry& entry) const {
    std::vector<std::string_view> known;
    for (const Node& item : entry.node.items) {
      if (!item_name(item).empty()) known.push_back(item_name(item));
    }
    const std::string_view meant = rest_.substr(0, rest_.rfind('.'));
    const std::string hint =
        known.empty() && !entry.node.items.empty()
            ? fmt::format("no [[{0}]] of the file has an id: give it one, id = \"a\", and write {0}.a", entry.key)
            : offer(meant, known, "there are");
    return fault(fmt::format("there is no {} '{}'", entry.key, meant), hint);
  }

  std::string_view path_;
  std::string_view rest_;
  const Node* inside_;  ///< where the next key is looked up
  std::string prefix_;  ///< keys between `at_.table` and `inside_`, which only dotted keys make
  PathTarget at_;
};

}  // namespace

std::string_view item_name(const Node& item) {
  const std::string_view id = text_in(item, "id");
  return id.empty() ? text_in(item, "product") : id;
}

bool is_table_list(const Node& node) {
  return node.kind == NodeKind::array && !node.items.empty() && node.items.front().kind == NodeKind::table;
}

std::size_t item_match(const Node& item, std::size_t number, std::string_view rest) {
  const auto fits = [&](std::string_view name) {
    return !name.empty() && rest.substr(0, name.size()) == name &&
           (rest.size() == name.size() || rest[name.size()] == '.');
  };
  const std::string_view name = item_name(item);
  if (fits(name)) return name.size();
  const std::string by_number = std::to_string(number);
  return fits(by_number) ? by_number.size() : 0;
}

std::variant<PathTarget, Diagnostic> follow_path(const Node& root, std::string_view path) {
  return PathWalk(root, path).walk();
}

}  // namespace forecourse::site
