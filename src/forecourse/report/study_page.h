#pragma once

#include <string>
#include <vector>

#include "forecourse/base/default_used.h"
#include "forecourse/checks/finding.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/html/page.h"
#include "forecourse/report/terminal/page.h"
#include "forecourse/report/units.h"

namespace forecourse::report {

/// What a report on one study tells besides its result.
struct ReportFacts {
  std::string date;
  std::string command;            ///< that makes the report again
  std::vector<SourceText> texts;  ///< the site file, and behind it those of records
  std::vector<checks::Finding> findings = {};
  std::vector<std::string> written = {};      ///< paths
  site::Display display = site::Display::us;  ///< of sentences in the document
};

/// What stands around the sections of one study, on its page and in the terminal.
struct AroundStudy {
  std::string version;
  std::vector<DefaultUsed> defaults;
  std::vector<Diagnostic> warnings;
  std::vector<std::string> cautions;
};

/// A page that is begun: the station and the title cells that every page of a study has.
///
/// \param study as its heading: "Line tests and leak detectors"
/// \param cell  as its title cell: "line test"
[[nodiscard]] html::Page titled_page(const std::string& study, const std::string& cell, const std::string& version,
                                     const site::Site& site, const std::string& date,
                                     const std::vector<SourceText>& texts);

// What may stand at its end, each under a heading of its own; empty where there is none.

[[nodiscard]] std::string warnings_html(const std::vector<Diagnostic>& warnings);
[[nodiscard]] std::string run_again_html(const std::string& command);

/// The page of one study: title cells, the caution above every number, the body, and behind it the values that were
/// not entered, warnings, cautions and how to make it again. `study` and `cell` as for titled_page().
[[nodiscard]] std::string study_page(const std::string& study, const std::string& cell, const std::string& caution,
                                     const std::string& body, const AroundStudy& around, const site::Site& site,
                                     const ReportFacts& facts);

/// The same end in the terminal, with the paths that were written.
void tell_end(const AroundStudy& around, site::Display display, Glyphs glyphs, const std::vector<std::string>& written,
              terminal::Page& page);

}  // namespace forecourse::report
