#pragma once

#include <string>
#include <vector>

#include "forecourse/decide/compare/incident/incident_comparison.h"
#include "forecourse/report/incident/incident_view.h"
#include "forecourse/report/units.h"

namespace forecourse::report {

/// What every writer of an incident at two stations needs: its result put in words, the same on every sheet.

/// "Struck at D3, A against B"
[[nodiscard]] std::string incident_compare_title(const decide::IncidentComparison& comparison);

/// What B changes, or that it buys nothing; then the ranges, the cases that go the other way, the runs with drawn
/// inputs, and what to mind.
[[nodiscard]] std::vector<std::string> incident_compare_answer(const decide::IncidentComparison& comparison,
                                                               site::Display display, Glyphs glyphs);

/// Everything else, in the order in which it is read.
[[nodiscard]] std::vector<IncidentPart> incident_compare_parts(const decide::IncidentComparison& comparison,
                                                               site::Display display, Glyphs glyphs);

/// What to mind of A and of B; what is said of both alike stands once.
[[nodiscard]] std::vector<std::string> incident_compare_warnings(const decide::IncidentComparison& comparison);

/// Two figures with their unit, and their difference: that of the figures as shown, or that it is smaller than they
/// show.
struct ShownBeside {
  std::string a;
  std::string b;
  std::string difference;
};
[[nodiscard]] ShownBeside shown_beside(decide::IncidentAmount amount, const decide::Beside& value, bool differs,
                                       site::Display display, Glyphs glyphs);

/// "What escapes"
[[nodiscard]] const char* words_of(decide::IncidentFigure figure);

}  // namespace forecourse::report
