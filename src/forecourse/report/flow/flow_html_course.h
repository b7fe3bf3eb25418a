#pragma once

#include <string>

#include "forecourse/report/flow/flow_view.h"
#include "forecourse/report/svg/budget.h"
#include "forecourse/report/svg/grade_line.h"

namespace forecourse::report {

/// The grade line to a hose with its title, and how to read it.
[[nodiscard]] svg::GradeChart grade_chart(const studies::HoseFlow& hose, const site::Site& site,
                                          const std::string& product, bool heights_known, const std::string& id);
[[nodiscard]] std::string grade_note(const studies::HoseFlow& hose, site::Display display, bool heights_known);

/// The pressure budget of a hose.
[[nodiscard]] svg::BudgetChart budget_chart(const studies::HoseFlow& hose, const ShownBudget& budget,
                                            site::Display display, const std::string& id);

/// The developed section of the course to the slowest open hose, with what it does not show and the band as a table.
[[nodiscard]] std::string section_figure(const site::Site& site, const studies::SystemFlow& system, bool heights_known,
                                         const std::string& id);

/// The course to the slowest and to the fastest open hose as HTML: grade lines with their tables, and where the
/// pressure goes on the way to the slowest, drawn and as a table that adds up.
///
/// \param heights_known false: heights count from the liquid in the tank
/// \param id            beginning of the ids of the drawings, unique in the page
[[nodiscard]] std::string course_figures(const studies::SystemFlow& system, const site::Site& site, bool heights_known,
                                         const std::string& id);

}  // namespace forecourse::report
