#pragma once

#include <string>
#include <vector>

#include "forecourse/report/kit/kit_report.h"
#include "forecourse/report/tank/tank_report.h"

namespace forecourse::cli {

/// Writes tables into the sheets of one spreadsheet file (XLSX). False, with the reason on standard error, if it cannot
/// be written.
[[nodiscard]] bool write_workbook(const std::string& file, const std::vector<report::NumberTable>& tables);

/// The same of words and numbers; no text becomes a formula.
[[nodiscard]] bool write_workbook(const std::string& file, const std::vector<report::CellTable>& tables);

}  // namespace forecourse::cli
