#include "forecourse/site/editing/nearest_path.h"

#include <algorithm>
#include <span>
#include <vector>

#include "forecourse/base/nearest_word.h"
#include "forecourse/site/editing/key_tree.h"
#include "forecourse/site/editing/path.h"

namespace forecourse::site {

namespace {

constexpr std::size_t npos = std::string_view::npos;

/// A stretch at the beginning of a path, and what it was meant to be.
struct Meant {
  std::string word;
  std::size_t length = 0;  ///< of what was written for it
};

std::string_view first_word(std::string_view rest) { return rest.substr(0, rest.find('.')); }

std::string_view behind(std::string_view rest, std::size_t length) {
  return rest.size() > length ? rest.substr(length + 1) : std::string_view();
}

/// The first `count` words of a path.
std::string_view first_words(std::string_view rest, std::size_t count) {
  std::size_t end = npos;
  for (std::size_t at = 0; count > 0; --count) {
    end = rest.find('.', at);
    if (end == npos) break;
    at = end + 1;
  }
  return rest.substr(0, end);
}

const KnownKey* nearest_key(const std::vector<KnownKey>& keys, std::string_view word) {
  std::vector<std::string_view> names;
  names.reserve(keys.size());
  for (const KnownKey& key : keys) names.push_back(key.name);
  const auto exact = std::find(names.begin(), names.end(), word);
  const auto near =
      exact != names.end() ? std::optional(*exact) : nearest_word(word, std::span<const std::string_view>(names));
  if (!near) return nullptr;
  return &*std::find_if(keys.begin(), keys.end(), [&](const KnownKey& key) { return key.name == *near; });
}

/// The item that is named, or the one with the nearest name, whose dots the user may have left out.
const Node* nearest_item(const Node& list, std::string_view rest, Meant& meant) {
  if (first_word(rest) == "*") {
    meant = {"*", 1};
    return &list.items.front();
  }
  const Node* best = nullptr;
  for (std::size_t i = 0; i < list.items.size(); ++i) {
    const std::size_t fits = item_match(list.items[i], i + 1, rest);
    if (fits <= meant.length) continue;
    best = &list.items[i];
    meant = {std::string(rest.substr(0, fits)), fits};
  }
  if (best != nullptr) return best;
  std::size_t least = npos;
  for (const Node& item : list.items) {
    const std::string_view name = item_name(item);
    const auto dots = static_cast<std::size_t>(std::count(name.begin(), name.end(), '.'));
    for (std::size_t count = dots + 1; count > 0; --count) {
      const std::string_view written = first_words(rest, count);
      const std::string_view alone[] = {name};
      if (name.empty() || !nearest_word(written, std::span<const std::string_view>(alone))) continue;
      const std::size_t distance = edit_distance(written, name);
      if (distance >= least) continue;
      least = distance;
      best = &item;
      meant = {std::string(name), written.size()};
    }
  }
  return best;
}

/// Puts the rest of a path right. `table` is null where the file has no such table.
std::optional<std::string> put_right(const Node* table, const std::vector<KnownKey>& keys, std::string_view rest) {
  const KnownKey* key = nearest_key(keys, first_word(rest));
  if (key == nullptr) return std::nullopt;
  std::string out(key->name);
  rest = behind(rest, first_word(rest).size());
  if (rest.empty()) return out;
  const Entry* entry = table == nullptr ? nullptr : find_entry(*table, key->name);
  const Node* inside = entry == nullptr ? nullptr : &entry->node;
  if (key->is_list) {
    if (inside == nullptr || !is_table_list(*inside)) return std::nullopt;
    Meant meant;
    inside = nearest_item(*inside, rest, meant);
    if (inside == nullptr) return std::nullopt;
    out += "." + meant.word;
    rest = behind(rest, meant.length);
    if (rest.empty()) return out;
  }
  if (key->below == nullptr) return std::nullopt;
  if (inside != nullptr && inside->kind != NodeKind::table) return out;  // set as a whole
  const auto deeper = put_right(inside, key->below(), rest);
  return deeper ? std::optional(out + "." + *deeper) : std::nullopt;
}

void collect_paths(const Node& table, const std::string& before, std::vector<std::string>& paths) {
  for (const Entry& entry : table.entries) {
    const std::string path = before + entry.key;
    paths.push_back(path);
    if (entry.node.kind == NodeKind::table) collect_paths(entry.node, path + ".", paths);
    if (!is_table_list(entry.node)) continue;
    for (std::size_t i = 0; i < entry.node.items.size(); ++i) {
      const std::string_view name = item_name(entry.node.items[i]);
      const std::string item = path + "." + (name.empty() ? std::to_string(i + 1) : std::string(name));
      paths.push_back(item);
      collect_paths(entry.node.items[i], item + ".", paths);
    }
  }
}

/// The first path of the file that ends in what was written.
std::optional<std::string> completed(const Node& root, std::string_view path) {
  std::vector<std::string> paths;
  collect_paths(root, "", paths);
  const std::string end = "." + std::string(path);
  const auto found = std::find_if(paths.begin(), paths.end(), [&](const std::string& p) { return p.ends_with(end); });
  return found == paths.end() ? std::nullopt : std::optional(*found);
}

}  // namespace

std::optional<std::string> nearest_path(const Node& root, std::string_view path) {
  constexpr std::string_view at_dispensers[] = {"hose", "inlet"};
  const std::string every_dispenser = "dispenser.*.";
  auto right = put_right(&root, keys_of_site_file(), path);
  if (!right && nearest_word(first_word(path), std::span<const std::string_view>(at_dispensers))) {
    right = put_right(&root, keys_of_site_file(), every_dispenser + std::string(path));
    if (right) right->erase(0, every_dispenser.size());
  }
  if (!right) right = completed(root, path);
  return right == path ? std::nullopt : right;
}

}  // namespace forecourse::site
