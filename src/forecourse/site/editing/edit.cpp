#include "forecourse/site/edit.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "forecourse/site/editing/every_path.h"
#include "forecourse/site/editing/key_tree.h"
#include "forecourse/site/editing/nearest_path.h"
#include "forecourse/site/editing/splice.h"
#include "forecourse/site/read.h"

namespace forecourse::site {

namespace {

Parsed<std::string> refuse(std::string_view text, std::vector<Diagnostic> why) {
  return {std::string(text), std::move(why)};
}

Diagnostic fault(std::string message, std::string hint) {
  return {Severity::error, std::move(message), std::nullopt, std::move(hint), {}};
}

/// A text in double quotes, with what must be escaped.
std::string in_double_quotes(std::string_view value) {
  std::string quoted = "\"";
  for (const char c : value) {
    if (c == '"' || c == '\\') quoted += '\\';
    const auto code = static_cast<unsigned char>(c);
    if (code < 0x20U || code == 0x7FU) {
      quoted += fmt::format("\\u{:04X}", code);
    } else {
      quoted += c;
    }
  }
  return quoted + '"';
}

bool fits_single_quotes(std::string_view value) {
  return std::none_of(value.begin(), value.end(), [](char c) {
    const auto code = static_cast<unsigned char>(c);
    return c == '\'' || code < 0x20U || code == 0x7FU;
  });
}

/// The bytes of a value that is TOML as it stands; empty when it is not.
std::string as_toml(std::string_view value) {
  const std::string text = "x = " + std::string(value);
  const Parsed<Document> read = read_document(text, 0);
  if (!read.ok() || read.value.root.entries.size() != 1) return {};
  const Entry& entry = read.value.root.entries.front();
  return entry.key == "x" ? std::string(text_of(text, entry.node.where)) : std::string();
}

/// The ways in which the user may have meant a value, the likeliest first.
std::vector<std::string> readings_of(std::string_view value, std::string_view old) {
  std::vector<std::string> readings;
  const std::string toml = as_toml(value);
  if (!toml.empty()) readings.push_back(toml);
  const bool quoted_already = !toml.empty() && (toml.front() == '"' || toml.front() == '\'');
  const bool single = !old.empty() && old.front() == '\'' && fits_single_quotes(value);
  if (!quoted_already) readings.push_back(single ? fmt::format("'{}'", value) : in_double_quotes(value));
  return readings;
}

bool was_there(const Diagnostic& d, const std::vector<Diagnostic>& before) {
  return std::any_of(before.begin(), before.end(), [&](const Diagnostic& old) { return old.message == d.message; });
}

/// A place in the edited text as a place in the text before.
SourceSpan place_before(SourceSpan where, const Splice& splice) {
  const auto shift = [&](std::uint32_t at) {
    const std::size_t new_end = splice.begin + splice.bytes.size();
    if (at <= splice.begin) return at;
    if (at >= new_end) return static_cast<std::uint32_t>(at - new_end + splice.end);
    return static_cast<std::uint32_t>(std::min<std::size_t>(at, splice.end));
  };
  return {where.text, shift(where.begin), shift(where.end)};
}

/// Errors of the edited text that lie in what was written.
std::vector<Diagnostic> trouble_with(std::string_view text, const Splice& splice) {
  const std::vector<Diagnostic> before = read_site(text).diagnostics;
  std::vector<Diagnostic> trouble;
  for (Diagnostic& d : read_site(apply(text, splice)).diagnostics) {
    if (d.severity != Severity::error || !d.where) continue;
    const bool inside = d.where->begin < splice.begin + splice.bytes.size() && d.where->end > splice.begin;
    if (!inside || was_there(d, before)) continue;
    d.where = place_before(*d.where, splice);
    d.related.clear();
    trouble.push_back(std::move(d));
  }
  return trouble;
}

Splice splice_for(std::string_view text, const PathTarget& target, std::string_view value) {
  return target.entry != nullptr ? replace_value(*target.entry, value)
                                 : add_key(text, *target.table, target.missing, value);
}

std::string_view old_value(std::string_view text, const PathTarget& target) {
  return target.entry != nullptr ? text_of(text, target.entry->node.where) : std::string_view();
}

bool has_own_header(std::string_view text, const PathTarget& target) {
  return target.item != nullptr ? text_of(text, target.item->where).substr(0, 2) == "[["
                                : target.entry != nullptr && target.entry->has_header();
}

/// True for a table that is only made by dotted keys, or an item inside a list in brackets.
bool has_no_bytes_of_its_own(std::string_view text, const PathTarget& target) {
  if (target.item != nullptr) return !has_own_header(text, target);
  return target.entry != nullptr && target.entry->is_dotted();
}

/// The key at the root of the file that a path begins with, where it is a list of which the file has nothing.
std::string_view list_not_there(const Node& root, std::string_view path) {
  const std::string_view first = path.substr(0, path.find('.'));
  if (first == path || find_entry(root, first) != nullptr) return {};
  for (const KnownKey& key : keys_of_site_file()) {
    if (key.name == first && key.is_list) return key.name;
  }
  return {};
}

/// Why a path could not be set, with the path that was most likely meant.
std::vector<Diagnostic> with_nearest(const Node& root, std::string_view path, std::vector<Diagnostic> why) {
  if (const auto near = nearest_path(root, path)) {
    why.resize(1);
    why.front().hint = fmt::format("did you mean {}?", *near);
  }
  return why;
}

}  // namespace

Parsed<std::string> set_everywhere(std::string_view text, std::string_view path, std::string_view value) {
  const Node root = read_document(text, 0).value.root;
  const Parsed<std::vector<std::string>> paths = every_path(root, path);
  if (!paths.ok() && path.find('*') == std::string_view::npos) return refuse(text, paths.diagnostics);
  if (!paths.ok()) return refuse(text, with_nearest(root, path, paths.diagnostics));
  if (const std::string_view list = list_not_there(root, path); !list.empty()) {
    return refuse(text, {fault(fmt::format("the file has no [[{}]] to set anything of", list),
                               fmt::format("add one to the file: [[{}]]", list))});
  }
  std::string changed(text);
  for (const std::string& one : paths.value) {
    Parsed<std::string> set = set_value(changed, one, value);
    if (!set.ok()) return refuse(text, with_nearest(root, path, std::move(set.diagnostics)));
    changed = std::move(set.value);
  }
  return {std::move(changed), {}};
}

Parsed<std::string> set_value(std::string_view text, std::string_view path, std::string_view value) {
  const Parsed<Document> document = read_document(text, 0);
  const auto followed = follow_path(document.value.root, path);
  if (const auto* why = std::get_if<Diagnostic>(&followed)) return refuse(text, {*why});
  const auto& target = std::get<PathTarget>(followed);
  if (has_own_header(text, target) || has_no_bytes_of_its_own(text, target)) {
    return refuse(text, {fault(fmt::format("'{}' is a whole table", path), "name one of its keys in the path")});
  }
  std::vector<Diagnostic> first_trouble;
  for (const std::string& reading : readings_of(value, old_value(text, target))) {
    const Splice splice = splice_for(text, target, reading);
    std::vector<Diagnostic> trouble = trouble_with(text, splice);
    if (trouble.empty()) return {apply(text, splice), {}};
    if (first_trouble.empty()) first_trouble = std::move(trouble);
  }
  return refuse(text, std::move(first_trouble));
}

Parsed<std::string> remove_value(std::string_view text, std::string_view path) {
  const Parsed<Document> document = read_document(text, 0);
  const auto followed = follow_path(document.value.root, path);
  if (const auto* why = std::get_if<Diagnostic>(&followed)) return refuse(text, {*why});
  const auto& target = std::get<PathTarget>(followed);
  if (target.entry == nullptr) {
    return refuse(text, {fault(fmt::format("there is no '{}' to remove", path), "")});
  }
  if (has_no_bytes_of_its_own(text, target)) {
    return refuse(text, {fault(fmt::format("'{}' has no header of its own", path), "remove its keys one by one")});
  }
  const bool list_with_headers =
      target.item == nullptr && target.entry->has_header() && target.entry->node.kind == NodeKind::array;
  if (list_with_headers) {
    return refuse(text, {fault(fmt::format("'{}' is a list", path), "name one of its items by its id")});
  }
  const Splice splice = !has_own_header(text, target) ? remove_key(text, *target.table, *target.entry)
                        : target.item != nullptr      ? remove_table(text, *target.item)
                                                      : remove_table(text, target.entry->node);
  return {apply(text, splice), {}};
}

Parsed<std::string> value_at(std::string_view text, std::string_view path) {
  const Parsed<Document> document = read_document(text, 0);
  const auto followed = follow_path(document.value.root, path);
  if (const auto* why = std::get_if<Diagnostic>(&followed)) return {"", {*why}};
  const auto& target = std::get<PathTarget>(followed);
  if (target.entry == nullptr) return {"", {fault(fmt::format("'{}' is not given", path), "")}};
  return {std::string(text_of(text, target.item != nullptr ? target.item->where : target.entry->node.where)), {}};
}

}  // namespace forecourse::site
