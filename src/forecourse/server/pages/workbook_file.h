#pragma once

#include <string>
#include <vector>

#include "forecourse/report/kit/kit_report.h"
#include "forecourse/report/tank/tank_report.h"

namespace forecourse::server {

/// Writes tables into the sheets of one spreadsheet file (XLSX).
///
/// \return why it cannot be written; empty: it is
[[nodiscard]] std::string write_workbook(const std::string& file, const std::vector<report::NumberTable>& tables);

/// The same of words and numbers; no text becomes a formula.
[[nodiscard]] std::string write_workbook(const std::string& file, const std::vector<report::CellTable>& tables);

/// The same into memory, in a folder of its own that is gone afterwards.
[[nodiscard]] std::string make_workbook(std::string& bytes, const std::vector<report::CellTable>& tables);

}  // namespace forecourse::server
