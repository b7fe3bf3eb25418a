#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "forecourse/site/text/value_reader.h"
#include "forecourse/store/mapping/mapping.h"

namespace forecourse::store {
namespace {

using site::Entry;
using site::Node;
using site::NodeKind;

constexpr std::array<std::string_view, 10> known_keys{"format", "kind",       "separator", "decimal", "thousands",
                                                      "dates",  "skip_lines", "header",    "columns", "leave_out"};
constexpr std::array<std::string_view, 4> column_keys{"column", "unit", "value", "words"};
constexpr std::array<std::string_view, 3> date_words{"year-month-day", "month/day/year", "day/month/year"};
constexpr Range whole_from_one{1.0, 1000.0, false, "a whole number from 1 to 1000"};
constexpr Range line_count{0.0, 1000.0, false, "a whole number from 0 to 1000"};

class MappingReader {
 public:
  MappingReader(const site::ReadRun& run, Mapping& mapping) : run_(run), value_(run), mapping_(mapping) {}

  void read(const Node& root) {
    tell_unknown(root, {known_keys.begin(), known_keys.end()});
    read_kind(root);
    read_form(root);
    if (mapping_.kind == nullptr) return;
    mapping_.columns.resize(mapping_.kind->columns.size());
    read_columns(root);
    read_left_out(root);
  }

 private:
  void tell_unknown(const Node& table, const std::vector<std::string_view>& known) {
    for (const Entry& entry : table.entries) {
      if (std::ranges::find(known, entry.key) != known.end()) continue;
      run_.error(entry.key_where, fmt::format("a mapping has no key '{}'", entry.key),
                 site::offer(entry.key, known, "there are"));
    }
  }

  void read_kind(const Node& root) {
    const Entry* entry = find_entry(root, "kind");
    if (entry == nullptr) {
      run_.error(root.where, "kind is missing: which records the file holds",
                 fmt::format("write kind = \"dips\", or one of: {}", fmt::join(kind_names(), ", ")));
      return;
    }
    const auto index = value_.word("kind", entry->node, kind_names());
    if (index) mapping_.kind = &kinds()[*index];
  }

  void read_form(const Node& root) {
    if (const auto mark = letter(root, "separator", {",", ";", "\t"})) mapping_.separator = *mark;
    if (const auto mark = letter(root, "decimal", {".", ","})) mapping_.form.decimal = *mark;
    if (const auto mark = letter(root, "thousands", {",", ".", " ", "'"})) mapping_.form.thousands = *mark;
    if (mapping_.form.decimal == mapping_.form.thousands) {
      run_.error(find_entry(root, "thousands")->node.where, "thousands and decimal are the same mark",
                 "decimal is a point unless stated");
    }
    if (const Entry* entry = find_entry(root, "dates")) {
      const auto index = value_.word("dates", entry->node, {date_words.begin(), date_words.end()});
      if (index) mapping_.form.dates = static_cast<DateOrder>(*index);
    }
    if (const Entry* entry = find_entry(root, "header")) {
      mapping_.header = value_.fact("header", entry->node).value_or(true);
    }
    if (const Entry* entry = find_entry(root, "skip_lines")) {
      mapping_.skip_lines = whole("skip_lines", entry->node, line_count).value_or(0);
    }
  }

  std::optional<std::size_t> whole(std::string_view key, const Node& node, const Range& range) {
    const auto number = value_.number(key, node, range);
    if (!number) return std::nullopt;
    const auto count = static_cast<std::size_t>(number->likely);
    if (static_cast<double>(count) == number->likely) return count;
    run_.error(node.where, fmt::format("{} is {}, but must be {}", key, run_.written(node), range.words));
    return std::nullopt;
  }

  std::optional<char> letter(const Node& root, std::string_view key, const std::vector<std::string_view>& known) {
    const Entry* entry = find_entry(root, key);
    if (entry == nullptr) return std::nullopt;
    const bool text = entry->node.kind == NodeKind::text;
    if (text && std::ranges::find(known, entry->node.text) != known.end()) return entry->node.text.front();
    run_.error(
        entry->node.where, fmt::format("{} cannot be {}", key, run_.written(entry->node)),
        key == "separator" ? R"(write ",", ";" or "\t")" : fmt::format("write \"{}\"", fmt::join(known, "\" or \"")));
    return std::nullopt;
  }

  void read_columns(const Node& root) {
    const Entry* table = find_entry(root, "columns");
    if (table == nullptr || table->node.kind != NodeKind::table) {
      run_.error(table == nullptr ? root.where : table->node.where, "[columns] is missing: where each value comes from",
                 "write [columns], and below it day = \"Date\" with the names of the file's own header");
      return;
    }
    for (const Entry& entry : table->node.entries) {
      const auto found = mapping_.kind->find(entry.key);
      if (!found) {
        run_.error(entry.key_where, fmt::format("{} have no column '{}'", mapping_.kind->name, entry.key),
                   site::offer(entry.key, column_names(*mapping_.kind), "their columns are"));
        continue;
      }
      read_column(mapping_.kind->columns[*found], entry.node, mapping_.columns[*found]);
    }
    const std::vector<Column>& columns = mapping_.kind->columns;
    const auto there = [&](std::size_t i) { return find_entry(table->node, columns[i].name) != nullptr; };
    for (std::size_t i = 0; i < columns.size(); ++i) {
      if (columns[i].need == Need::required && !there(i)) missing(table->node, columns[i].name);
    }
    for (const std::vector<std::size_t>& set : mapping_.kind->one_of) {
      if (std::ranges::any_of(set, there)) continue;
      std::vector<std::string_view> names;
      names.reserve(set.size());
      for (const std::size_t i : set) names.push_back(columns[i].name);
      missing(table->node, fmt::format("{}", fmt::join(names, " or ")));
    }
  }

  void missing(const Node& table, std::string_view name) {
    run_.error(table.where, fmt::format("[columns] has no {}", name),
               "name the file's own column, or write { value = \"...\" } when it is the same in every row");
  }

  /// `"Level"`, `3`, or a table with column or value.
  void read_column(const Column& column, const Node& node, MappedColumn& mapped) {
    if (node.kind != NodeKind::table) {
      place(column, node, mapped);
      return;
    }
    tell_unknown(node, {column_keys.begin(), column_keys.end()});
    const Entry* from = find_entry(node, "column");
    const Entry* value = find_entry(node, "value");
    if ((from == nullptr) == (value == nullptr)) {
      run_.error(node.where,
                 fmt::format("{} comes from a column or is one value, not {}", column.name,
                             from == nullptr ? "neither" : "both"),
                 "write { column = \"Level\", unit = \"in\" } or { value = \"T1\" }");
      return;
    }
    if (from != nullptr) place(column, from->node, mapped);
    if (value != nullptr) constant(column, value->node, mapped);
    if (const Entry* unit = find_entry(node, "unit")) read_unit(column, unit->node, mapped);
    if (const Entry* words = find_entry(node, "words")) read_words(column, words->node, mapped);
  }

  void place(const Column& column, const Node& node, MappedColumn& mapped) {
    if (node.kind == NodeKind::number) {
      if (const auto number = whole(column.name, node, whole_from_one)) mapped.place = *number - 1;
    } else if (const auto name = value_.name(column.name, node)) {
      mapped.heading = *name;
      if (!mapping_.header) {
        run_.error(node.where, "a file without a header has no column of this name", "write its number, from 1");
      }
    }
  }

  void constant(const Column& column, const Node& node, MappedColumn& mapped) {
    const auto text = value_.name(column.name, node);
    if (!text) return;
    auto read = read_cell(column, {text->text, node.where}, {}, {});
    if (const CellFault* fault = std::get_if<CellFault>(&read)) {
      run_.error(node.where, fault->message, fault->hint);
    } else {
      mapped.constant = std::move(std::get<Value>(read));
    }
  }

  void read_unit(const Column& column, const Node& node, MappedColumn& mapped) {
    const auto unit = value_.name("unit", node);
    if (!unit) return;
    mapped.unit = unit->text;
    if (const auto fault = unfit_unit(column, unit->text)) run_.error(node.where, fault->message, fault->hint);
  }

  void read_words(const Column& column, const Node& node, MappedColumn& mapped) {
    if (node.kind != NodeKind::table) {
      run_.error(node.where, "words say what the file writes and what it stands for",
                 "write words = { \"1\" = \"T1\", \"2\" = \"T2\" }");
      return;
    }
    for (const Entry& entry : node.entries) {
      const auto meant = value_.name(entry.key, entry.node);
      if (!meant) continue;
      auto read = read_cell(column, {meant->text, entry.node.where}, {}, mapped.unit);
      const CellFault* fault = std::get_if<CellFault>(&read);
      if (fault != nullptr) run_.error(entry.node.where, fault->message, fault->hint);
      mapped.words.emplace_back(entry.key, meant->text);
    }
  }

  void read_left_out(const Node& root) {
    const Entry* table = find_entry(root, "leave_out");
    if (table == nullptr) return;
    if (table->node.kind != NodeKind::table) {
      run_.error(table->node.where, "leave_out is a table", "write [leave_out], and below it Tank = [\"Total\", \"\"]");
      return;
    }
    for (const Entry& entry : table->node.entries) {
      auto& [heading, texts] = mapping_.leave_out.emplace_back();
      heading = {entry.key, entry.key_where};
      for (const Node& item : entry.node.items) {
        if (item.kind == NodeKind::text) texts.push_back(item.text);
      }
      if (texts.empty()) {
        run_.error(entry.node.where, fmt::format("leave_out.{} is a list of texts", entry.key),
                   "write [\"Total\", \"\"]: rows with one of these in that column are left out");
      }
    }
  }

  const site::ReadRun& run_;
  site::ValueReader value_;
  Mapping& mapping_;
};

}  // namespace

Parsed<Mapping> read_mapping(std::string_view text, std::uint32_t text_index) {
  Parsed<site::Document> document = site::read_document(text, text_index);
  Parsed<Mapping> result;
  result.diagnostics = std::move(document.diagnostics);
  std::vector<SourceSpan> half_read;
  std::vector<SourceSpan> uncertain;
  const site::ReadRun run{text, result.diagnostics, half_read, uncertain, document.value.complete};
  document.value.root.where.text = text_index;
  MappingReader(run, result.value).read(document.value.root);
  return result;
}

}  // namespace forecourse::store
