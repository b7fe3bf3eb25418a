#pragma once

#include <string>
#include <vector>

namespace forecourse::cli {

/// Writes the blanks of sheets into a spreadsheet file (XLSX): a worksheet for each sheet, with the columns of the file
/// of readings, so that one that is saved as CSV can be read back. False, with the reason on standard error, if it
/// cannot be written.
///
/// \param rows cells in the order of `store::sheet_columns`; the first names the sheet
[[nodiscard]] bool write_sheets_workbook(const std::string& file, const std::vector<std::vector<std::string>>& rows);

}  // namespace forecourse::cli
