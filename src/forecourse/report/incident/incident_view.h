#pragma once

#include <string>
#include <vector>

#include "forecourse/report/units.h"
#include "forecourse/report/word_table.h"
#include "forecourse/studies/incident/incident.h"

namespace forecourse::report {

/// A part of an incident's telling, the same on a terminal and on a page.
struct IncidentPart {
  std::string title;
  std::vector<std::string> sentences;
  std::vector<std::pair<std::string, WordTable>> tables;  ///< caption and table
  std::vector<std::string> items;
  bool only_verbose = false;  ///< on a terminal only when all is asked for
};

/// "Struck at D3": what happened where.
[[nodiscard]] std::string incident_title(const studies::IncidentResult& result);

/// The answer in sentences: what escapes, as a range where it is one, and where it goes.
[[nodiscard]] std::vector<std::string> incident_answer(const studies::IncidentResult& result, site::Display display,
                                                       Glyphs glyphs);

/// Everything else, in the order in which it is read.
[[nodiscard]] std::vector<IncidentPart> incident_parts(const studies::IncidentResult& result, site::Display display,
                                                       Glyphs glyphs);

/// A value with a unit that people read, by its SI unit: "45.0 s", "0.14 gal".
[[nodiscard]] std::string shown(double si, const std::string& unit, site::Display display, Glyphs glyphs);
/// A spread: "0.14 gal", or "0.14 to 20 gal".
[[nodiscard]] std::string shown(const studies::Spread& spread, Measure measure, site::Display display, Glyphs glyphs);

}  // namespace forecourse::report
