#pragma once

#include <array>

#include "forecourse/report/drawing/section.h"
#include "forecourse/report/units.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/flow/course_stops.h"

namespace forecourse::report::drawing {

/// What the site lists along one course; null or empty: not listed.
struct Listed {
  const site::Tank* tank = nullptr;
  const site::Pump* pump = nullptr;
  const site::Dispenser* dispenser = nullptr;
  const site::Inlet* inlet = nullptr;
  const site::Hose* hose = nullptr;
  const site::Delivery* delivery = nullptr;  ///< that drops into the tank
};

[[nodiscard]] Listed listed_on(const site::Site& site, const studies::CourseStops& course,
                               const studies::HoseFlow& hose);

/// The eleven cells of the band.
[[nodiscard]] std::array<Stop, 11> stop_cells(const Listed& listed, const studies::CourseStops& course,
                                              const studies::HoseFlow& hose, site::Display display, bool heights_known);

}  // namespace forecourse::report::drawing
