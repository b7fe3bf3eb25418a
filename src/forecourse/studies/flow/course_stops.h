#pragma once

#include <optional>
#include <string>

#include "forecourse/studies/flow/flow.h"

namespace forecourse::studies {

/// What the course to one open hose shows at its stops. A member that is empty is not known apart: the part is not on
/// the course, or its loss was entered together with others.
struct CourseStops {
  std::string tank;
  std::string pump;
  std::optional<double> pump_rise;  ///< [Pa]
  std::optional<double> pump_flow;  ///< [m3/s]
  std::optional<double> line_loss;  ///< [Pa] of all lines and legs together
  double line_length = 0.0;         ///< [m] from the pump to the sump
  double line_velocity = 0.0;       ///< [m/s] the highest
  std::string inlet;                ///< place where the course leaves the line
  std::optional<GradePoint> sump;   ///< the line there
  std::optional<GradePoint> shear_valve;
  std::optional<double> filter_loss;  ///< [Pa]
  std::optional<double> meter_loss;   ///< [Pa]
  std::optional<double> hose_loss;    ///< [Pa] whip, breakaway, curb hose and swivel together
  std::optional<double> lumped_loss;  ///< [Pa] dispenser and hose entered as one
  std::optional<GradePoint> outlet;   ///< of the nozzle
};

/// Picked from the budget and the grade line of an open hose; losses of one stop are added up.
/// \pre none: a hose without a course gives stops without numbers.
[[nodiscard]] CourseStops course_stops(const HoseFlow& hose);

}  // namespace forecourse::studies
