#include "forecourse/store/export.h"

#include "forecourse/store/csv/csv_writer.h"

namespace forecourse::store {

std::string export_kind(Store& store, const Kind& kind) {
  std::string out;
  std::vector<std::string> cells;
  for (const Column& column : kind.columns) cells.emplace_back(column.name);
  append_row(out, cells);
  store.each_row(kind, [&](const Row& row) {
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const std::string& text = row.values[i].text;
      cells[i] = kind.columns[i].type == ColumnType::name ? guarded(text) : text;
    }
    append_row(out, cells);
  });
  return out;
}

std::vector<SourceText> export_records(Store& store) {
  std::vector<SourceText> out;
  for (const KindSummary& one : store.summary()) {
    if (one.rows == 0) continue;
    out.push_back({std::string(one.kind->name) + ".csv", export_kind(store, *one.kind)});
  }
  return out;
}

}  // namespace forecourse::store
