#pragma once

#include <string>
#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/terminal/text.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report {

using TerminalStyle = terminal::Style;

/// What stands around the result when it is printed.
struct FlowSummaryFacts {
  std::vector<SourceText> texts;     ///< that the spans of the warnings point into
  std::vector<std::string> written;  ///< files with the whole report, as the user can open them
  std::vector<checks::Finding> findings = {};
  std::vector<std::pair<std::string, std::vector<std::string>>> more =
      {};  ///< other studies in short: title, sentences
};

/// The flow study as a practitioner acts on it, within the width of the terminal: what was asked, what is not
/// determined and why, how it stands against the requirements, then for each product the hoses, and for the first set
/// of open hoses the pumps, the lines and the pressure budget of the slowest hose; a line for every other set;
/// defaults, warnings, cautions, and where the report is.
[[nodiscard]] std::string flow_summary(const studies::FlowResult& result, const site::Site& site,
                                       const TerminalStyle& style, const FlowSummaryFacts& facts = {});

}  // namespace forecourse::report
