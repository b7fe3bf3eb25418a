#pragma once

#include <array>
#include <string>

#include "forecourse/report/drawing/section_stops.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/flow/course_stops.h"

namespace forecourse::report::drawing {

/// Paths in the site file of what stands at the eleven stops of one course: "pump.P1", "dispenser.D1.hose.D1.a.nozzle".
/// Where a part is not listed, that of what would hold it; empty where that is not listed either.
[[nodiscard]] std::array<std::string, 11> course_paths(const site::Site& site, const Listed& listed,
                                                       const studies::CourseStops& course);

/// The stop of a point of the grade line, and what stands there.
[[nodiscard]] svg::Shows shown_at(const studies::GradePoint& point, const studies::CourseStops& course,
                                  const std::array<std::string, 11>& paths);

}  // namespace forecourse::report::drawing
