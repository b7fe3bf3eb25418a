#include "forecourse/network/pack/held_line.h"

#include <algorithm>
#include <limits>

#include "forecourse/base/index.h"

namespace forecourse::network {
namespace {

const site::Pump* find_pump(const site::Site& site, const std::string& id) {
  const auto found =
      std::find_if(site.pumps.begin(), site.pumps.end(), [&](const site::Pump& p) { return p.id.text == id; });
  return found == site.pumps.end() ? nullptr : &*found;
}

/// Of a pump that runs against shut hoses [Pa], piezometric.
double shutoff_of(const PipingSystem& system, const PumpPoint& pump) {
  const double rise = -loss(system.runs[at(pump.run)].elements.front(), 0.0).pressure_loss;
  return system.weight_of(surface_of(system, pump)) + rise;
}

std::optional<double> strongest_shutoff(const PipingSystem& system) {
  std::optional<double> out;
  for (const PumpPoint& pump : system.pumps) {
    if (!pump.running) continue;
    const double one = shutoff_of(system, pump);
    out = std::max(out.value_or(one), one);
  }
  return out;
}

void relieve(const site::Site& site, const PipingSystem& system, HeldLine& line) {
  for (const PumpPoint& pump : system.pumps) {
    const site::Pump* entered = find_pump(site, pump.id);
    if (!entered->pressure_relief) continue;
    const bool has_height = entered->discharge_elevation && system.elevations_known;
    const double height =
        has_height ? system.weight_of(pump.discharge_elevation) : system.weight_of(surface_of(system, pump));
    const double relief = height + entered->pressure_relief->likely.si();
    if (relief >= *line.held) continue;
    line.held = relief;
    line.held_by = "pressure relief of pump " + pump.id;
  }
}

}  // namespace

double surface_of(const PipingSystem& system, const PumpPoint& pump) {
  return system.openings[at(system.runs[at(pump.run)].from) - system.places.size()].elevation;
}

HeldLine held_line(const site::Site& site, const PipingSystem& system) {
  HeldLine out;
  double lowest = std::numeric_limits<double>::infinity();
  for (const PumpPoint& pump : system.pumps) lowest = std::min(lowest, surface_of(system, pump));
  out.decayed = system.weight_of(lowest);
  out.shutoff = strongest_shutoff(system);
  for (const PumpPoint& pump : system.pumps) {
    const site::Pump* entered = find_pump(site, pump.id);
    if (entered == nullptr || !entered->check_valve.value_or(false)) {
      out.held.reset();
      out.held_by = "nothing: pump " + pump.id + " has no check valve in the file, so the line falls to the liquid";
      return out;
    }
    if (!pump.running) continue;
    const double shutoff = shutoff_of(system, pump);
    if (out.held && shutoff <= *out.held) continue;
    out.held = shutoff;
    out.held_by = "check valve of pump " + pump.id + ", at its pressure without flow";
  }
  if (!out.held) {
    out.held_by = "nothing: no pump runs";
  } else {
    relieve(site, system, out);
  }
  return out;
}

}  // namespace forecourse::network
