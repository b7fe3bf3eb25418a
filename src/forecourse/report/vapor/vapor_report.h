#pragma once

#include <string>
#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/study_page.h"
#include "forecourse/report/terminal/text.h"
#include "forecourse/studies/vapor/vapor.h"

namespace forecourse::report {

using VaporFacts = ReportFacts;

/// One line above every number, and what every report ends with.
[[nodiscard]] std::vector<std::string> vapor_cautions();

[[nodiscard]] std::string vapor_summary(const studies::VaporResult& result, const site::Site& site,
                                        const terminal::Style& style, const VaporFacts& facts = {});

/// The whole document; SI with the unit in the key.
[[nodiscard]] Json vapor_document(const studies::VaporResult& result, const VaporFacts& facts = {});

/// The section alone, for a report of several studies, and a page of its own.
[[nodiscard]] std::string vapor_section(const studies::VaporResult& result, const site::Site& site);
[[nodiscard]] std::string vapor_report(const studies::VaporResult& result, const site::Site& site,
                                       const VaporFacts& facts = {});

}  // namespace forecourse::report
