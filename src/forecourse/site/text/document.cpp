#include "forecourse/site/text/document.h"

#include <toml++/toml.h>

#include <algorithm>
#include <optional>

#include "forecourse/site/text/line_starts.h"
#include "forecourse/site/text/precheck.h"
#include "forecourse/site/text/syntax_errors.h"

namespace forecourse::site {

namespace {

constexpr std::size_t most_syntax_errors = 10;
constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

/// Turns the parser's tree into ours: byte offsets, order of the text.
class TreeBuilder {
 public:
  TreeBuilder(std::string_view text, std::uint32_t text_index) : lines_(text), text_index_(text_index) {}

  [[nodiscard]] Node build(const toml::node& source) const {
    Node node;
    node.where = span(source.source());
    if (const auto* table = source.as_table()) return with_entries(std::move(node), *table);
    if (const auto* array = source.as_array()) return with_items(std::move(node), *array);
    set_value(node, source);
    return node;
  }

 private:
  [[nodiscard]] SourceSpan span(const toml::source_region& region) const {
    return {text_index_, lines_.offset(region.begin.line, region.begin.column),
            lines_.offset(region.end.line, region.end.column)};
  }

  [[nodiscard]] Node with_entries(Node node, const toml::table& table) const {
    node.kind = NodeKind::table;
    node.entries.reserve(table.size());
    for (const auto& [key, value] : table) {
      node.entries.push_back({std::string(key.str()), span(key.source()), build(value)});
    }
    std::sort(node.entries.begin(), node.entries.end(),
              [](const Entry& a, const Entry& b) { return a.key_where.begin < b.key_where.begin; });
    return node;
  }

  [[nodiscard]] Node with_items(Node node, const toml::array& array) const {
    node.kind = NodeKind::array;
    node.items.reserve(array.size());
    for (const auto& item : array) node.items.push_back(build(item));
    return node;
  }

  static void set_value(Node& node, const toml::node& source) {
    if (const auto* text = source.as_string()) {
      node.kind = NodeKind::text;
      node.text = text->get();
    } else if (const auto* integer = source.as_integer()) {
      node.kind = NodeKind::number;
      node.number = static_cast<double>(integer->get());
    } else if (const auto* real = source.as_floating_point()) {
      node.kind = NodeKind::number;
      node.number = real->get();
    } else if (const auto* truth = source.as_boolean()) {
      node.kind = NodeKind::boolean;
      node.truth = truth->get();
    } else if (const auto* date = source.as_date()) {
      node.kind = NodeKind::date;
      node.date = {date->get().year, date->get().month, date->get().day, node.where};
    } else {
      node.kind = NodeKind::time;
    }
  }

  LineStarts lines_;
  std::uint32_t text_index_;
};

/// Parses again and again, blanking what is wrong, until the rest is TOML.
class PatientParser {
 public:
  PatientParser(std::string_view text, std::uint32_t text_index)
      : work_(text), scanned_{text, text_index, statements_of(text)} {
    document_.value.root.where = {text_index, 0, 0};
  }

  Parsed<Document> parse() {
    pass_over_bare_letters();
    pass_over_deep_keys();
    while (!try_parse()) {
    }
    return std::move(document_);
  }

 private:
  void pass_over_bare_letters() {
    for (std::size_t i = 0; i < scanned_.statements.size(); ++i) {
      if (scanned_.statements[i].bare_non_ascii == std::string_view::npos) continue;
      tell(describe_bare_letter(scanned_, i));
      blank(i);
    }
    if (told_ > most_syntax_errors) document_.value.ids_lost = true;
  }

  void pass_over_deep_keys() {
    for (std::size_t i = 0; i < scanned_.statements.size(); ++i) {
      const std::size_t begin = scanned_.statements[i].deep_key;
      if (begin == std::string_view::npos) continue;
      tell({Severity::error,
            "a key has too many parts between dots",
            span(begin, begin + 1),
            "a table stands three or four deep at most: is this a site file?",
            {}});
      blank(i);
    }
  }

  bool try_parse() {
    try {
      const std::string_view work = work_;
      const bool marked = work.substr(0, byte_order_mark.size()) == byte_order_mark;
      const toml::table root = toml::parse(work.substr(marked ? byte_order_mark.size() : 0));
      document_.value.root = TreeBuilder(work, scanned_.text_index).build(root);
      document_.value.root.where = {scanned_.text_index, 0, 0};
      return true;
    } catch (const toml::parse_error& error) {
      const auto& at = error.source().begin;
      return !pass_over(error.description(), LineStarts(work_).offset(at.line, at.column));
    }
  }

  /// False when there is nothing left to pass over.
  bool pass_over(std::string_view description, std::size_t offset) {
    document_.value.complete = false;
    if (pass_over_comment(offset)) return true;
    if (scanned_.statements.empty()) return false;
    std::size_t index = statement_at_fault(scanned_, offset);
    if (is_blank_already(index)) index = first_not_blank(index);
    if (index >= scanned_.statements.size()) return false;
    tell(describe_syntax_error(scanned_, index, description, offset));
    if (told_ > most_syntax_errors) return pass_over_rest(scanned_.statements[index].begin);
    blank(index);
    return true;
  }

  bool pass_over_rest(std::size_t begin) {
    document_.value.ids_lost = true;
    blank_bytes(begin, work_.size());
    return true;
  }

  /// A comment on a line of its own can only be wrong by a control character in it.
  bool pass_over_comment(std::size_t offset) {
    const std::size_t break_before = work_.rfind('\n', offset == 0 ? 0 : offset - 1);
    const std::size_t line = break_before == std::string::npos ? 0 : break_before + 1;
    const std::size_t begin = work_.find_first_not_of(" \t", line);
    if (begin == std::string::npos || work_[begin] != '#' || begin > offset) return false;
    const std::size_t end = std::min(work_.find('\n', begin), work_.size());
    tell({Severity::error, "a comment holds a control character", span(begin, end), "remove it", {}});
    if (told_ > most_syntax_errors) return pass_over_rest(begin);
    blank_bytes(begin, end);
    return true;
  }

  [[nodiscard]] SourceSpan span(std::size_t begin, std::size_t end) const {
    return {scanned_.text_index, static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
  }

  [[nodiscard]] bool is_blank_already(std::size_t index) const {
    const Statement& s = scanned_.statements[index];
    return std::all_of(work_.begin() + static_cast<std::ptrdiff_t>(s.begin),
                       work_.begin() + static_cast<std::ptrdiff_t>(s.end),
                       [](char c) { return c == ' ' || c == '\n' || c == '\r'; });
  }

  [[nodiscard]] std::size_t first_not_blank(std::size_t index) const {
    std::size_t i = index;
    while (i > 0 && is_blank_already(i)) --i;
    if (!is_blank_already(i)) return i;
    while (index < scanned_.statements.size() && is_blank_already(index)) ++index;
    return index;
  }

  void tell(Diagnostic diagnostic) {
    ++told_;
    if (told_ <= most_syntax_errors) {
      document_.diagnostics.push_back(std::move(diagnostic));
    } else if (told_ == most_syntax_errors + 1) {
      document_.diagnostics.push_back(
          {Severity::note, "more errors were not looked for", diagnostic.where, "put these right first", {}});
    }
  }

  [[nodiscard]] bool may_name_a_part(const Statement& statement) const {
    const std::string_view key = key_of(scanned_.text, statement);
    return statement.is_header || statement.equals == std::string_view::npos || key == "id" || key == "from" ||
           key == "to" || key == "product" || key == "tank";
  }

  /// A statement; a header with all that stands under it.
  void blank(std::size_t index) {
    const auto& all = scanned_.statements;
    std::size_t last = index;
    document_.value.complete = false;
    if (may_name_a_part(all[index])) document_.value.ids_lost = true;
    if (all[index].is_header) {
      const std::string below = std::string(key_of(scanned_.text, all[index])) + ".";
      while (last + 1 < all.size() && (!all[last + 1].is_header || is_below(all[last + 1], below))) ++last;
    }
    if (told_ <= most_syntax_errors) note_half_read(index);
    for (std::size_t i = index; i <= last; ++i) scanned_.statements[i].unclosed = '\0';  // blamed once
    blank_bytes(all[index].begin, all[last].end);
  }

  void note_half_read(std::size_t index) {
    const auto& all = scanned_.statements;
    while (index > 0 && !all[index].is_header) --index;
    document_.value.half_read.push_back(span(all[index].begin, all[index].end));
  }

  [[nodiscard]] bool is_below(const Statement& header, const std::string& prefix) const {
    return key_of(scanned_.text, header).substr(0, prefix.size()) == prefix;
  }

  void blank_bytes(std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i) {
      if (work_[i] == '\n' || (work_[i] == '\r' && i + 1 < work_.size() && work_[i + 1] == '\n')) continue;
      work_[i] = ' ';
    }
  }

  std::string work_;
  ScannedText scanned_;
  Parsed<Document> document_{};
  std::size_t told_ = 0;
};

}  // namespace

const Entry* find_entry(const Node& table, std::string_view key) {
  for (const Entry& entry : table.entries) {
    if (entry.key == key) return &entry;
  }
  return nullptr;
}

Parsed<Document> read_document(std::string_view text, std::uint32_t text_index) {
  if (std::optional<Diagnostic> fault = why_unreadable(text, text_index)) {
    Parsed<Document> nothing;
    nothing.value.root.where = {text_index, 0, 0};
    nothing.value.complete = false;
    nothing.value.ids_lost = true;
    nothing.diagnostics.push_back(std::move(*fault));
    return nothing;
  }
  return PatientParser(text, text_index).parse();
}

std::string_view text_of(std::string_view text, SourceSpan where) {
  const std::size_t begin = std::min<std::size_t>(where.begin, text.size());
  return text.substr(begin, std::min<std::size_t>(where.end, text.size()) - begin);
}

}  // namespace forecourse::site
