#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "forecourse/store/csv/csv_reader.h"
#include "forecourse/store/records/cell.h"
#include "forecourse/store/records/column.h"

namespace forecourse::store {

/// Where the values of one column of a kind come from.
struct ColumnSource {
  std::optional<std::size_t> cell;                         ///< of the file's rows; empty: none
  std::string unit;                                        ///< of bare numbers
  std::optional<Value> constant;                           ///< the same in every row
  std::vector<std::pair<std::string, std::string>> words;  ///< what the file writes, and what it stands for here
  bool of_moment = false;                                  ///< day and time stand in one cell

  [[nodiscard]] bool known() const { return cell || constant; }
};

/// Rows of a file that are no records: those in which one cell says one of these texts.
struct LeftOut {
  std::size_t cell = 0;
  std::vector<std::string> texts;
};

/// How the rows of one file are to be read: a source for each column of the kind.
struct Layout {
  std::size_t cells = 0;  ///< in each row
  std::vector<ColumnSource> sources;
  CellForm form;
  std::vector<LeftOut> left_out;
};

/// Reads the header row of a file in our own form: names of columns, `depth` or `depth [in]`, in any order.
///
/// Columns that are not known, stand twice, have a unit that does not fit, or are needed and not there, are told.
/// \return empty, with the reason told, when the rows cannot be read
[[nodiscard]] std::optional<Layout> own_layout(CsvReader& reader, const Kind& kind, std::uint32_t text_index,
                                               std::vector<Diagnostic>& diagnostics);

/// A unit that bare numbers of a column are in; what is wrong with it, if it does not fit.
[[nodiscard]] std::optional<CellFault> unfit_unit(const Column& column, std::string_view unit);

}  // namespace forecourse::store
