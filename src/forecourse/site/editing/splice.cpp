#include "forecourse/site/editing/splice.h"

#include <algorithm>

#include "forecourse/site/text/statements.h"

namespace forecourse::site {

namespace {

constexpr std::size_t npos = std::string_view::npos;

bool is_blank(char c) { return c == ' ' || c == '\t'; }
bool is_space(char c) { return is_blank(c) || c == '\r' || c == '\n'; }

std::size_t line_begin(std::string_view text, std::size_t at) {
  const std::size_t line_break = at == 0 ? npos : text.rfind('\n', at - 1);
  return line_break == npos ? 0 : line_break + 1;
}
/// Offset of the line break, or of the end of the text.
std::size_t line_end(std::string_view text, std::size_t at) { return std::min(text.find('\n', at), text.size()); }

std::string_view indentation(std::string_view text, std::size_t at) {
  const std::size_t begin = line_begin(text, at);
  std::size_t end = begin;
  while (end < text.size() && is_blank(text[end])) ++end;
  return text.substr(begin, end - begin);
}

std::string_view line_break_of(std::string_view text) {
  const std::size_t first = text.find('\n');
  return first != npos && first > 0 && text[first - 1] == '\r' ? "\r\n" : "\n";
}

bool is_inline(std::string_view text, const Node& table) {
  return table.where.begin < text.size() && text[table.where.begin] == '{';
}

/// Where the last key of a table ends that stands in the table's own stretch of the text; 0 when there is none.
std::size_t last_key_end(const Node& table, std::size_t* begin) {
  std::size_t end = 0;
  for (const Entry& entry : table.entries) {
    if (entry.has_header()) continue;
    std::size_t inner_begin = entry.key_where.begin;
    std::size_t entry_end = entry.node.where.end;
    if (entry.is_dotted()) entry_end = std::max(entry_end, last_key_end(entry.node, &inner_begin));
    if (entry_end <= end) continue;
    end = entry_end;
    *begin = inner_begin;
  }
  return end;
}

Splice add_inline(std::string_view text, const Node& table, std::string_view key, std::string_view value) {
  std::size_t at = table.where.end - 1;
  while (at > table.where.begin + 1 && is_space(text[at - 1])) --at;
  const std::string entry = std::string(key) + " = " + std::string(value);
  if (!table.entries.empty()) return {at, at, ", " + entry};
  return {table.where.begin + 1, table.where.end - 1, " " + entry + " "};
}

}  // namespace

std::string apply(std::string_view text, const Splice& splice) {
  std::string result(text.substr(0, splice.begin));
  result += splice.bytes;
  result += text.substr(splice.end);
  return result;
}

Splice replace_value(const Entry& entry, std::string_view value) {
  return {entry.node.where.begin, entry.node.where.end, std::string(value)};
}

Splice add_key(std::string_view text, const Node& table, std::string_view key, std::string_view value) {
  if (is_inline(text, table)) return add_inline(text, table, key, value);
  const bool at_root = table.where.begin == table.where.end;
  const std::string entry = std::string(key) + " = " + std::string(value);
  const std::string line_break(line_break_of(text));
  std::size_t model = table.where.begin;  // whose indentation is taken
  std::size_t after = last_key_end(table, &model);
  if (after == 0 && at_root) {
    const std::size_t start = text.substr(0, 3) == "\xEF\xBB\xBF" ? 3 : 0;
    return {start, start, entry + line_break};
  }
  if (after == 0) after = table.where.end;
  std::size_t at = line_end(text, after);
  if (at > after && text[at - 1] == '\r') --at;
  return {at, at, line_break + std::string(indentation(text, model)) + entry};
}

Splice remove_key(std::string_view text, const Node& table, const Entry& entry) {
  std::size_t begin = entry.key_where.begin;
  std::size_t end = entry.node.where.end;
  if (!is_inline(text, table)) {
    begin = line_begin(text, begin);
    end = line_end(text, end);
    return {begin, std::min(end + 1, text.size()), ""};
  }
  std::size_t next = end;
  while (next < text.size() && is_space(text[next])) ++next;
  if (next < text.size() && text[next] == ',') {
    ++next;
    while (next < text.size() && is_space(text[next])) ++next;
    return {begin, next, ""};
  }
  while (begin > 0 && is_space(text[begin - 1])) --begin;
  if (begin > 0 && text[begin - 1] == ',') --begin;
  return {begin, end, ""};
}

Splice remove_table(std::string_view text, const Node& table) {
  const std::vector<Statement> all = statements_of(text);
  std::size_t first = 0;
  while (first < all.size() && all[first].begin != table.where.begin) ++first;
  if (first == all.size()) return {};
  const std::string below = std::string(key_of(text, all[first])) + ".";
  std::size_t last = first;
  while (last + 1 < all.size() &&
         (!all[last + 1].is_header || key_of(text, all[last + 1]).substr(0, below.size()) == below)) {
    ++last;
  }
  return {line_begin(text, all[first].begin), std::min(line_end(text, all[last].end) + 1, text.size()), ""};
}

}  // namespace forecourse::site
