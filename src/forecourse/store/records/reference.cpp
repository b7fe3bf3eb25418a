#include "forecourse/store/records/reference.h"

#include <fmt/format.h>

#include "forecourse/store/records/column.h"

namespace forecourse::store {
namespace {

std::string value_of(const Column& column) {
  switch (column.type) {
    case ColumnType::day:
      return "day: `2026-11-02`";
    case ColumnType::time:
      return "local time: `06:30`";
    case ColumnType::fact:
      return "`yes` or `no`; empty: not known";
    case ColumnType::word:
      return fmt::format("`{}`", fmt::join(column.words, "`, `"));
    case ColumnType::name:
      return column.name_of == NameOf::tank      ? "id of a tank"
             : column.name_of == NameOf::hose    ? "id of a hose"
             : column.name_of == NameOf::product ? "id of a product"
                                                 : "text";
    case ColumnType::quantity:
      break;
  }
  std::string range = column.range.words[0] == '\0' ? "" : fmt::format(", {}", column.range.words);
  return fmt::format("{}: {}{}", std::string(column.quantity->noun).substr(column.quantity->noun[1] == 'n' ? 3 : 2),
                     column.quantity->examples, range);
}

std::string names_of_set(const Kind& kind, const std::vector<std::size_t>& set) {
  std::string out;
  for (const std::size_t i : set) out += fmt::format("{}`{}`", out.empty() ? "" : " or ", kind.columns[i].name);
  return out;
}

}  // namespace

std::string records_reference() {
  std::string out =
      "# The files of the records\n\n"
      "Every file of records and its columns, generated from the program. The first row names the columns, in any "
      "order; those that\nare not needed may be left out. A value has its unit with it (`71 1/4 in`), or is a bare "
      "number "
      "where the header says the unit\n(`depth [in]`). Columns marked *key* together tell one record from another. "
      "[Records](records.md) tells how the files are read.\n";
  for (const Kind& kind : kinds()) {
    std::string doc(kind.doc);
    doc.front() = static_cast<char>(doc.front() - 'a' + 'A');
    out += fmt::format("\n## {}.csv\n\n{}.\n\n| column | value | what |\n|---|---|---|\n", kind.name, doc);
    for (const Column& column : kind.columns) {
      out += fmt::format("| `{}` | {}{}{} | {} |\n", column.name, value_of(column),
                         column.need == Need::required ? ", required" : "", column.key ? ", *key*" : "", column.doc);
    }
    for (const std::vector<std::size_t>& set : kind.one_of) {
      out += fmt::format("\nEach row has {}.\n", names_of_set(kind, set));
    }
  }
  return out;
}

}  // namespace forecourse::store
