#pragma once

#include <string>

#include "forecourse/server/pages/pdf.h"

namespace forecourse::cli {

using server::paper_of;

/// Sets a report's pages with the program WeasyPrint and writes them to `file`. False, with the reason and a hint on
/// standard error, if the program is not there or fails.
[[nodiscard]] bool write_pdf(const std::string& file, const std::string& report, report::html::Paper paper);

}  // namespace forecourse::cli
