#include "forecourse/studies/flow/course_stops.h"

#include <algorithm>

namespace forecourse::studies {
namespace {

using network::ElementKind;

void add(std::optional<double>& sum, double loss) { sum = sum.value_or(0.0) + loss; }

void add_row(CourseStops& stops, const BudgetRow& row) {
  switch (row.kind) {
    case ElementKind::pump:
      stops.pump = row.owner;
      stops.pump_rise = -row.loss;
      stops.pump_flow = row.flow;
      return;
    case ElementKind::leg:
    case ElementKind::line:
      add(stops.line_loss, row.loss);
      stops.line_velocity = std::max(stops.line_velocity, row.velocity);
      return;
    case ElementKind::riser:
    case ElementKind::shear_valve:
      stops.inlet = row.owner;
      return;
    case ElementKind::filter:
      return add(stops.filter_loss, row.loss);
    case ElementKind::meter:
      return add(stops.meter_loss, row.loss);
    case ElementKind::whip_hose:
    case ElementKind::breakaway:
    case ElementKind::curb_hose:
    case ElementKind::swivel:
      return add(stops.hose_loss, row.loss);
    case ElementKind::hose_set:
      return add(stops.lumped_loss, row.loss);
    default:
      return;
  }
}

/// The last place before the nozzle, or the one where the riser begins.
void find_sump(CourseStops& stops, const std::vector<GradePoint>& points) {
  for (std::size_t i = 1; i + 1 < points.size(); ++i) {
    if (!points[i].part.empty()) continue;
    if (!stops.inlet.empty() && points[i].place != stops.inlet) continue;
    stops.sump = points[i];
  }
  if (!stops.sump) return;
  if (stops.inlet.empty()) stops.inlet = stops.sump->place;
  for (const GradePoint& point : points) {
    if (point.place != stops.pump) continue;
    stops.line_length = stops.sump->distance - point.distance;
    return;
  }
}

void find_shear_valve(CourseStops& stops, const std::vector<GradePoint>& points) {
  const auto valve = std::find_if(points.begin(), points.end(), [](const GradePoint& point) {
    return point.part == network::word(ElementKind::shear_valve);
  });
  if (valve != points.end()) stops.shear_valve = *valve;
}

}  // namespace

CourseStops course_stops(const HoseFlow& hose) {
  CourseStops stops;
  for (const BudgetRow& row : hose.budget) add_row(stops, row);
  if (hose.grade_line.size() < 2) return stops;
  stops.tank = hose.grade_line.front().place;
  stops.outlet = hose.grade_line.back();
  find_sump(stops, hose.grade_line);
  find_shear_valve(stops, hose.grade_line);
  return stops;
}

}  // namespace forecourse::studies
