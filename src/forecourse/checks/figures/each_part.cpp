#include "forecourse/checks/figures/each_part.h"

namespace forecourse::checks {

FigureAt of_part(std::string subject, SourceSpan where) {
  FigureAt out;
  out.subject = std::move(subject);
  out.where = where;
  return out;
}

std::optional<bool> is_buried(const site::Tank& tank) {
  if (tank.above_ground) return !*tank.above_ground;
  if (!tank.bottom_elevation) return std::nullopt;
  const double bottom = tank.bottom_elevation->likely.si();
  if (bottom >= 0.0) return false;
  if (!tank.shape) return std::nullopt;
  const auto& high = tank.shape->inside_diameter ? tank.shape->inside_diameter : tank.shape->height;
  if (!high || bottom + high->likely.si() > 0.0) return std::nullopt;
  return true;
}

std::optional<double> hose_reach(const site::Hose& hose) {
  if (!hose.curb || !hose.curb->length) return std::nullopt;
  if (!hose.whip) return hose.curb->length->likely.si();
  if (!hose.whip->length) return std::nullopt;
  return hose.curb->length->likely.si() + hose.whip->length->likely.si();
}

}  // namespace forecourse::checks
