#pragma once

#include <string>
#include <vector>

#include "forecourse/report/tank/tank_report.h"

namespace forecourse::cli {

/// Writes tables into the sheets of one spreadsheet file (XLSX). False, with the reason on standard error, if it cannot
/// be written.
[[nodiscard]] bool write_workbook(const std::string& file, const std::vector<report::NumberTable>& tables);

}  // namespace forecourse::cli
