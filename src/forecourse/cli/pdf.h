#pragma once

#include <string>

#include "forecourse/report/html/paper.h"
#include "forecourse/site/site.h"

namespace forecourse::cli {

/// The paper of a word, "a4" or "letter"; an empty word: letter with US units, A4 with SI.
[[nodiscard]] report::html::Paper paper_of(const std::string& word, site::Display display);

/// Sets a report's pages with the program WeasyPrint and writes them to `file`. False, with the reason and a hint on
/// standard error, if the program is not there or fails.
[[nodiscard]] bool write_pdf(const std::string& file, const std::string& report, report::html::Paper paper);

}  // namespace forecourse::cli
