#pragma once

#include <string_view>
#include <variant>

#include "forecourse/store/csv/csv_reader.h"
#include "forecourse/store/records/column.h"
#include "forecourse/store/records/row.h"

namespace forecourse::store {

/// In which order the numbers of a date stand. A year of four digits in front is read with every order.
enum class DateOrder { year_first, month_first, day_first };

/// How dates and numbers are written in a file.
struct CellForm {
  DateOrder dates = DateOrder::year_first;
  char decimal = '.';     ///< '.' or ','
  char thousands = '\0';  ///< between groups of three digits; none: there are no groups
};

/// Why a cell cannot be read.
struct CellFault {
  std::string message;
  std::string hint;
};

/// Reads one cell that is not empty.
///
/// \param unit of a quantity whose cells are bare numbers; empty: each cell has its own
[[nodiscard]] std::variant<Value, CellFault> read_cell(const Column& column, const CsvCell& cell, const CellForm& form,
                                                       std::string_view unit);

/// The day and the time that one cell holds together, "11/02/2026 6:30 AM": the part for a column of this type.
[[nodiscard]] std::string_view part_of_moment(std::string_view cell, ColumnType type);

/// The day "2026-11-02" as it is stored; none when the text is no such day.
[[nodiscard]] std::optional<site::Date> stored_day(std::string_view text);

}  // namespace forecourse::store
