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
};

/// The flow study as one self-contained HTML page.
[[nodiscard]] std::string flow_report(const studies::FlowResult& result, const site::Site& site,
                                      const FlowReportFacts& facts = {});

/// Which pieces of a product's section are written.
struct ProductPieces {
  bool hoses = true;   ///< flows, and what holds everywhere in each set of open hoses
  bool course = true;  ///< the course to the slowest hose, drawn
};

/// Sections of the page as HTML, for a report of several studies; what has nothing to tell is empty.
[[nodiscard]] std::string asked_section(const studies::FlowResult& result, const site::Site& site);
[[nodiscard]] std::string reservations_section(const studies::FlowResult& result);
[[nodiscard]] std::string plan_section(const studies::FlowResult& result, const site::Site& site);
/// One for each product.
[[nodiscard]] std::string product_sections(const studies::FlowResult& result, const site::Site& site,
                                           ProductPieces pieces = {});
[[nodiscard]] std::string defaults_section(const std::vector<DefaultUsed>& defaults, site::Display display);
[[nodiscard]] std::string sources_section(const studies::FlowResult& result);
[[nodiscard]] std::string warnings_section(const std::vector<Diagnostic>& warnings,
                                           const std::vector<SourceText>& texts);
/// The command that makes the report again; empty without one.
[[nodiscard]] std::string again_section(const std::string& command);
/// The text of the site file, folded up, on a screen only.
[[nodiscard]] std::string site_file_details(const std::vector<SourceText>& texts);

}  // namespace forecourse::report
