#pragma once

#include <string>
#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report {

/// What the report says about itself. Nothing here is looked up: what is not handed in is not printed.
struct FlowReportFacts {
  std::string date;               ///< "25 Nov 2026"; empty: no date
  std::string command_line;       ///< that makes the report again
  std::vector<SourceText> texts;  ///< the texts read, for the places of the warnings; the first is the site file
  std::vector<checks::Finding> findings = {};
  std::string more = {};  ///< sections of other studies, HTML, ahead of the defaults
};

/// The flow study as one self-contained HTML page.
[[nodiscard]] std::string flow_report(const studies::FlowResult& result, const site::Site& site,
                                      const FlowReportFacts& facts = {});

}  // namespace forecourse::report
