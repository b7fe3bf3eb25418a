#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "forecourse/store/records/layout.h"

namespace forecourse::store {

/// Where one column of a kind comes from in a file that is not in our own form.
struct MappedColumn {
  site::Name heading;                ///< what the file's header calls it
  std::optional<std::size_t> place;  ///< or its number, from 0
  std::string unit;
  std::optional<Value> constant;
  std::vector<std::pair<std::string, std::string>> words;
};

/// How a file of somebody else's making is read: described once, in TOML.
///
///     kind = "dips"
///     dates = "month/day/year"
///     [columns]
///     day = "Date"
///     tank = { value = "T1" }
///     depth = { column = "Level", unit = "in" }
struct Mapping {
  const Kind* kind = nullptr;
  std::optional<char> separator;  ///< none: the likely one
  CellForm form;
  std::size_t skip_lines = 0;  ///< before the header
  bool header = true;
  std::vector<MappedColumn> columns;                                       ///< one for each of the kind
  std::vector<std::pair<site::Name, std::vector<std::string>>> leave_out;  ///< heading, and texts of rows left out
};

/// Reads a mapping. All that is wrong with it is told; with an error it must not be used.
[[nodiscard]] Parsed<Mapping> read_mapping(std::string_view text, std::uint32_t text_index);

/// Finds the columns of a mapping in a file: passes over the lines before the header and reads that.
/// \return empty, with the reason told, when a column is not there
[[nodiscard]] std::optional<Layout> mapped_layout(CsvReader& reader, const Mapping& mapping,
                                                  std::vector<Diagnostic>& diagnostics);

}  // namespace forecourse::store
