#include "forecourse/studies/flow/spans/tank_levels.h"

#include <algorithm>
#include <utility>

namespace forecourse::studies {
namespace {

using site::Site;
using site::Tank;

double or_zero(const site::Maybe<Length>& length) { return length ? length->likely.si() : 0.0; }

double pitch_of(const Tank& tank) { return tank.shape && tank.shape->pitch ? tank.shape->pitch->likely.si() : 0.0; }

/// The tank with this id, or the one that holds the compartment.
const Tank* find(const Site& site, const std::string& id) {
  for (const Tank& tank : site.tanks) {
    if (tank.id.text == id) return &tank;
    for (const site::Compartment& c : tank.compartments) {
      if (c.id.text == id) return &tank;
    }
  }
  return nullptr;
}

/// Inside height of the shell.
std::optional<double> inside_height(const Tank& tank) {
  if (!tank.shape) return std::nullopt;
  const bool lies = tank.shape->kind.text == "horizontal-cylinder";
  const auto& height = lies ? tank.shape->inside_diameter : tank.shape->height;
  return height ? std::optional(height->likely.si()) : std::nullopt;
}

struct Depth {
  double above_bottom = 0.0;  ///< [m] of the low end
  std::string means;
};

/// The higher of two depths.
void raise(std::optional<Depth>& full, double depth, const char* means) {
  if (!full || depth > full->above_bottom) full = Depth{depth, means};
}

std::optional<Depth> full_depth(const Tank& tank) {
  std::optional<Depth> full;
  const double pitch = pitch_of(tank);
  for (const site::Fill& fill : tank.fills) {
    if (!fill.overfill_valve || !fill.overfill_valve->closes_at) continue;
    raise(full, pitch * or_zero(fill.at) + fill.overfill_valve->closes_at->likely.si(),
          "where its overfill valve closes");
  }
  if (tank.overfill_alarm && tank.overfill_alarm->at_depth) {
    const double along = tank.gauge ? or_zero(tank.gauge->at) : 0.0;
    raise(full, pitch * along + tank.overfill_alarm->at_depth->likely.si(), "where its overfill alarm sounds");
  }
  if (full) return full;
  const std::optional<double> height = inside_height(tank);
  if (!height) return std::nullopt;
  return Depth{*height + pitch * or_zero(tank.shape->length), "its crown, an upper bound"};
}

/// The highest inlet of the pumps that draw from it.
Depth low_depth(const Site& site, const std::string& id, const Tank& tank) {
  std::optional<Depth> low;
  for (const site::Pump& pump : site.pumps) {
    if (pump.tank.text != id || !pump.inlet_above_bottom) continue;
    const double depth = pitch_of(tank) * or_zero(pump.at) + pump.inlet_above_bottom->likely.si();
    if (!low || depth > low->above_bottom) low = Depth{depth, "the inlet of pump " + pump.id.text};
  }
  return low.value_or(Depth{0.0, "its bottom, a lower bound"});
}

TankLevels own_levels(const Site& site, const std::string& id) {
  TankLevels out{id, {}, {}, {}, {}, {}};
  const Tank* tank = find(site, id);
  if (tank == nullptr || !tank->bottom_elevation) {
    out.reason = "the elevation of the bottom of tank " + id + " is not known: enter bottom_elevation in [[tank]]";
    return out;
  }
  const double bottom = tank->bottom_elevation->likely.si();
  const Depth low = low_depth(site, id, *tank);
  out.low = bottom + low.above_bottom;
  out.low_means = low.means;
  if (const auto full = full_depth(*tank)) {
    out.high = bottom + full->above_bottom;
    out.high_means = full->means;
  } else {
    out.reason = "how high tank " + id +
                 " can be filled is not known: enter the depth of its overfill valve or alarm, or its shape";
  }
  return out;
}

bool names(const std::vector<site::Name>& list, const std::string& id) {
  return std::any_of(list.begin(), list.end(), [&](const site::Name& name) { return name.text == id; });
}

/// The tank and all that are joined to it by siphons.
std::vector<std::string> siphoned(const Site& site, const std::string& id) {
  std::vector<std::string> joined{id};
  for (std::size_t i = 0; i < joined.size(); ++i) {
    const Tank* tank = find(site, joined[i]);
    if (tank == nullptr || tank->id.text != joined[i]) continue;  // compartments have no siphon
    for (const Tank& other : site.tanks) {
      const bool touches = names(tank->siphoned_with, other.id.text) || names(other.siphoned_with, tank->id.text);
      if (touches && std::find(joined.begin(), joined.end(), other.id.text) == joined.end()) {
        joined.push_back(other.id.text);
      }
    }
  }
  return joined;
}

}  // namespace

std::optional<double> inlet_elevation(const Site& site, const site::Pump& pump) {
  const Tank* tank = find(site, pump.tank.text);
  if (tank == nullptr || !tank->bottom_elevation || !pump.inlet_above_bottom) return std::nullopt;
  return tank->bottom_elevation->likely.si() + pitch_of(*tank) * or_zero(pump.at) +
         pump.inlet_above_bottom->likely.si();
}

TankLevels tank_levels(const Site& site, const std::string& tank) {
  TankLevels out = own_levels(site, tank);
  for (const std::string& other : siphoned(site, tank)) {
    if (other == tank) continue;
    const TankLevels theirs = own_levels(site, other);
    if (theirs.low && out.low && *theirs.low > *out.low) {
      out.low = theirs.low;
      out.low_means = theirs.low_means + " of tank " + other + ", siphoned with it";
    }
    if (theirs.high && out.high && *theirs.high < *out.high) {
      out.high = theirs.high;
      out.high_means = theirs.high_means + " of tank " + other + ", siphoned with it";
    }
  }
  return out;
}

}  // namespace forecourse::studies
