#pragma once

#include <string>
#include <vector>

#include "forecourse/report/station/station_sections.h"
#include "forecourse/report/station/title_cells.h"

namespace forecourse::report {

/// What is chosen of a station's report, and what stands in its title block.
struct ReportChoice {
  std::vector<std::string> sections;  ///< ids; empty: every section that has something to tell
  CellTexts cells;
};

/// Says of no name what it is: "hollin-gap.toml" is a file, "US customary" are units.
struct StationFacts {
  std::string date;                     ///< "25 Nov 2026", where no date is in the title cells; may be empty
  std::string command;                  ///< that makes the report again; may be empty
  std::vector<SourceText> texts;        ///< the texts read; the first is the site file
  std::vector<Diagnostic> before = {};  ///< what the reader of the site file had to say
};

/// One page of all studies of a station. The order is that of `station_sections`. A section that is asked for and has
/// nothing to tell says why. The caution stands above every number, with what to do first where the report tells of an
/// incident; it and the list of cautions cannot be left out.
[[nodiscard]] std::string station_report(const StationStudies& studies, const site::Site& site,
                                         const StationFacts& facts, const ReportChoice& choice = {});

}  // namespace forecourse::report
