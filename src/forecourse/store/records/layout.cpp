#include "forecourse/store/records/layout.h"

#include <fmt/format.h>

#include "forecourse/base/unit_text.h"
#include "forecourse/site/text/read_run.h"

namespace forecourse::store {
namespace {

/// A cell of the header: "depth [in]".
struct Heading {
  std::string_view name;
  std::string_view unit;
};

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

Heading heading_of(std::string_view cell) {
  const std::size_t bracket = cell.find('[');
  if (bracket == std::string_view::npos || !cell.ends_with(']')) return {cell, {}};
  return {trimmed(cell.substr(0, bracket)), trimmed(cell.substr(bracket + 1, cell.size() - bracket - 2))};
}

class HeaderReader {
 public:
  HeaderReader(const Kind& kind, std::vector<Diagnostic>& diagnostics) : kind_(kind), diagnostics_(diagnostics) {
    layout_.sources.resize(kind.columns.size());
  }

  std::optional<Layout> read(const std::vector<CsvCell>& header, SourceSpan row) {
    layout_.cells = header.size();
    for (std::size_t i = 0; i < header.size(); ++i) take(header[i], i);
    for (std::size_t i = 0; i < kind_.columns.size(); ++i) {
      if (kind_.columns[i].need == Need::required && !layout_.sources[i].known()) missing(kind_.columns[i].name, row);
    }
    for (const std::vector<std::size_t>& set : kind_.one_of) ask_for_one(set, row);
    return good_ ? std::optional<Layout>(std::move(layout_)) : std::nullopt;
  }

 private:
  void error(SourceSpan where, std::string message, std::string hint) {
    diagnostics_.push_back({Severity::error, std::move(message), where, std::move(hint), {}});
    good_ = false;
  }

  void take(const CsvCell& cell, std::size_t place) {
    const Heading heading = heading_of(cell.text);
    const auto found = kind_.find(heading.name);
    if (!found) {
      error(cell.where, fmt::format("{} have no column '{}'", kind_.name, site::shortened(heading.name)),
            site::offer(heading.name, column_names(kind_), "their columns are"));
      return;
    }
    const Column& column = kind_.columns[*found];
    ColumnSource& source = layout_.sources[*found];
    if (source.known()) {
      error(cell.where, fmt::format("column {} stands twice", column.name), "leave one of them out");
      return;
    }
    source.cell = place;
    if (heading.unit.empty()) return;
    source.unit = heading.unit;
    if (const auto fault = unfit_unit(column, heading.unit)) error(cell.where, fault->message, fault->hint);
  }

  void missing(std::string_view name, SourceSpan row) {
    error(row, fmt::format("column {} is missing", name),
          fmt::format("columns of {}: {}", kind_.name, fmt::join(column_names(kind_), ", ")));
  }

  void ask_for_one(const std::vector<std::size_t>& set, SourceSpan row) {
    std::vector<std::string_view> names;
    for (const std::size_t i : set) {
      if (layout_.sources[i].known()) return;
      names.push_back(kind_.columns[i].name);
    }
    missing(fmt::format("{}", fmt::join(names, " or ")), row);
  }

  const Kind& kind_;
  std::vector<Diagnostic>& diagnostics_;
  Layout layout_;
  bool good_ = true;
};

}  // namespace

std::optional<CellFault> unfit_unit(const Column& column, std::string_view unit) {
  if (column.quantity == nullptr) {
    return CellFault{fmt::format("{} has no unit, but '{}' is written", column.name, unit),
                     fmt::format("write {}", column.name)};
  }
  const auto read = read_quantity("300 " + std::string(unit), *column.quantity);
  const auto* error = std::get_if<UnitTextError>(&read);
  if (error == nullptr) return std::nullopt;
  return CellFault{std::string(column.name) + " " + error->message,
                   std::string("units as in ") + column.quantity->examples};
}

std::optional<Layout> own_layout(CsvReader& reader, const Kind& kind, std::uint32_t text_index,
                                 std::vector<Diagnostic>& diagnostics) {
  std::vector<CsvCell> header;
  if (!reader.next(header)) {
    diagnostics.push_back({Severity::error,
                           "the file is empty",
                           SourceSpan{text_index, 0, 0},
                           fmt::format("its first row names columns: {}", fmt::join(column_names(kind), ",")),
                           {}});
    return std::nullopt;
  }
  return HeaderReader(kind, diagnostics).read(header, reader.row_span());
}

}  // namespace forecourse::store
