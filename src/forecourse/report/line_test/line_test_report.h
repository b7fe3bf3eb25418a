#pragma once

#include <string>
#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/study_page.h"
#include "forecourse/report/terminal/text.h"
#include "forecourse/studies/line_test/line_test.h"

namespace forecourse::report {

using LineTestFacts = ReportFacts;

/// One line above every number, and what every report ends with.
[[nodiscard]] std::vector<std::string> line_test_cautions();

[[nodiscard]] std::string line_test_summary(const studies::LineTestResult& result, const site::Site& site,
                                            const terminal::Style& style, const LineTestFacts& facts = {});

/// The whole document; SI with the unit in the key.
[[nodiscard]] Json line_test_document(const studies::LineTestResult& result, const LineTestFacts& facts = {});

/// The section alone, for a report of several studies, and a page of its own.
[[nodiscard]] std::string line_test_section(const studies::LineTestResult& result, const site::Site& site);
[[nodiscard]] std::string line_test_report(const studies::LineTestResult& result, const site::Site& site,
                                           const LineTestFacts& facts = {});

}  // namespace forecourse::report
