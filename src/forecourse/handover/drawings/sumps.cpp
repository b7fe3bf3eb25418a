#include "forecourse/handover/drawings/sumps.h"

namespace forecourse::handover {

std::optional<checks::Outline> sump_on_plan(const site::Sump& sump, Point middle) {
  if (sump.diameter) return checks::Outline{{{middle.x, middle.y}}, 0.5 * sump.diameter->likely.si()};
  const auto& size = sump.top ? sump.top : sump.floor;
  if (!size) return std::nullopt;
  const double x = 0.5 * size->x.si(), y = 0.5 * size->y.si();
  return checks::Outline{{{middle.x - x, middle.y - y},
                          {middle.x + x, middle.y - y},
                          {middle.x + x, middle.y + y},
                          {middle.x - x, middle.y + y}},
                         0.0};
}

std::optional<Path> sump_in_section(const site::Sump& sump, double x) {
  if (!sump.depth) return std::nullopt;
  const double depth = sump.depth->likely.si();
  const double floor = sump.floor_elevation ? sump.floor_elevation->likely.si() : -depth;
  const auto half = [&](const std::optional<site::Position>& size) -> std::optional<double> {
    if (size) return 0.5 * size->x.si();
    return sump.diameter ? std::optional(0.5 * sump.diameter->likely.si()) : std::nullopt;
  };
  const auto low = half(sump.floor ? sump.floor : sump.top), high = half(sump.top ? sump.top : sump.floor);
  if (!low || !high) return std::nullopt;
  return Path{sump.floor_elevation ? "sumps" : "sumps-assumed",
              {{x - *high, floor + depth}, {x - *low, floor}, {x + *low, floor}, {x + *high, floor + depth}},
              true};
}

}  // namespace forecourse::handover
