#pragma once

#include <functional>
#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/station/station_studies.h"
#include "forecourse/site/site.h"

namespace forecourse::report {

/// What the sections of a station's report are written from.
struct StationSource {
  const StationStudies& studies;
  const site::Site& site;
  const std::vector<SourceText>& texts;   ///< the first is the site file
  const std::vector<Diagnostic>& before;  ///< what the reader of the site file had to say
  const std::string& command;             ///< that makes the report again; may be empty
};

/// A section of the report that can be chosen.
struct StationSection {
  std::string id;                                          ///< "flow", "incident-1"
  std::string name;                                        ///< "Hoses and flows"
  std::string why_empty;                                   ///< what is said where it has nothing to tell
  std::function<std::string(const StationSource&)> write;  ///< HTML; empty: it has nothing to tell
};

/// All that the report of a station can have, in the order in which it is read. The caution, and the list of cautions
/// at the end, are no sections: no choice leaves them out.
[[nodiscard]] std::vector<StationSection> station_sections(const site::Site& site);

/// What is wrong with ids, each with the nearest one.
[[nodiscard]] std::vector<Diagnostic> check_sections(const std::vector<std::string>& ids, const site::Site& site);

}  // namespace forecourse::report
