#include "forecourse/checks/figures/each_part.h"

#include <algorithm>
#include <array>

#include "forecourse/base/api_units.h"
#include "forecourse/site/shelf.h"

namespace forecourse::checks {

FigureAt of_part(std::string subject, SourceSpan where) {
  FigureAt out;
  out.subject = std::move(subject);
  out.where = where;
  return out;
}

std::optional<double> inside_height(const site::Tank& tank) {
  if (!tank.shape) return std::nullopt;
  const bool lies = tank.shape->kind.text == "horizontal-cylinder";
  const auto& high = lies ? tank.shape->inside_diameter : tank.shape->height;
  return high ? std::optional(high->likely.si()) : std::nullopt;
}

std::optional<bool> is_buried(const site::Tank& tank) {
  if (tank.above_ground) return !*tank.above_ground;
  if (!tank.bottom_elevation) return std::nullopt;
  const double bottom = tank.bottom_elevation->likely.si();
  if (bottom >= 0.0) return false;
  const std::optional<double> height = inside_height(tank);
  if (!height || bottom + *height > 0.0) return std::nullopt;
  return true;
}

std::string spill_exemption(const site::Tank& tank) {
  constexpr double small_transfer = cubic_meters_from_gallons(25.0);  ///< \source [cfr_280, 280.20(c)(2)(ii)]
  if (is_above_ground(tank)) return above_ground;
  const bool small = tank.largest_transfer && tank.largest_transfer->likely.si() <= small_transfer;
  return small ? "it is filled with no more than 25 gal at one time" : "";
}

std::optional<double> hose_reach(const site::Hose& hose) {
  if (!hose.curb || !hose.curb->length) return std::nullopt;
  if (!hose.whip) return hose.curb->length->likely.si();
  if (!hose.whip->length) return std::nullopt;
  return hose.curb->length->likely.si() + hose.whip->length->likely.si();
}

std::optional<double> bore_of(const site::Pipe& pipe) {
  if (pipe.bore) return pipe.bore->likely.si();
  const site::ShelfPipe* shelf = site::find_pipe(pipe.nominal.text);
  return shelf == nullptr ? std::nullopt : std::optional(shelf->bore);
}

std::optional<double> nominal_size(double bore) {
  constexpr std::array<double, 10> inches{0.5, 0.75, 1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 6.0};
  constexpr double least_share = 0.925;  // 0.929 is 2-1/2 in of Schedule 80; 1-1/4 in of Schedule 40 is 0.920 of 1-1/2
  std::optional<double> out;
  for (const double one : inches) {
    if (bore >= least_share * meters_from_inches(one)) out = meters_from_inches(one);
  }
  return out;
}

std::optional<double> vent_nominal(const site::Vent& vent) {
  const std::optional<double> bore = vent.pipe ? bore_of(*vent.pipe) : std::nullopt;
  return bore ? nominal_size(*bore) : std::nullopt;
}

std::optional<double> vent_length(const site::Vent& vent) {
  if (!vent.pipe || !vent.pipe->length) return std::nullopt;
  if (!vent.branch) return vent.pipe->length->likely.si();
  if (!vent.branch->length) return std::nullopt;
  return vent.pipe->length->likely.si() + vent.branch->length->likely.si();
}

bool breathes_through(const site::Vent& vent, const site::Tank& own, const site::Tank& tank) {
  if (&tank == &own) return true;
  return !vent.shared.empty() && std::any_of(tank.vents.begin(), tank.vents.end(),
                                             [&](const site::Vent& other) { return other.shared == vent.shared; });
}

}  // namespace forecourse::checks
