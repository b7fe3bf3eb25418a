#pragma once

#include <optional>
#include <string>
#include <utility>
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
};

/// "Struck at D3": what happened where.
[[nodiscard]] std::string incident_title(const studies::IncidentResult& result);

/// The answer in sentences: what escapes, as a range where it is one, and where it goes.
[[nodiscard]] std::vector<std::string> incident_answer(const studies::IncidentResult& result, site::Display display,
                                                       Glyphs glyphs);

/// Everything else, in the order in which it is read.
[[nodiscard]] std::vector<IncidentPart> incident_parts(const studies::IncidentResult& result, site::Display display,
                                                       Glyphs glyphs);

/// Parts one below the other, on a terminal and on a page.
void add_parts(const std::vector<IncidentPart>& parts, terminal::Page& page);
/// \param level of their headings
[[nodiscard]] std::string parts_html(const std::vector<IncidentPart>& parts, int level);

/// What escapes in the worst of the cases told, where that lies above the range: there a barrier that is counted on
/// fails too [m3]. Empty: the range holds every case.
[[nodiscard]] std::optional<double> beyond_range(const studies::IncidentResult& result);

/// "a, b"
[[nodiscard]] std::string joined(const std::vector<std::string>& all, const char* between);
/// "sump sensor" of "sump-sensor"
[[nodiscard]] std::string spaced(std::string word);

/// A value with a unit that people read, by its SI unit: "45.0 s", "0.14 gal".
[[nodiscard]] std::string shown(double si, const std::string& unit, site::Display display, Glyphs glyphs);
/// A spread: "0.14 gal", or "0.14 to 20 gal".
[[nodiscard]] std::string shown(const studies::Spread& spread, Measure measure, site::Display display, Glyphs glyphs);

}  // namespace forecourse::report
