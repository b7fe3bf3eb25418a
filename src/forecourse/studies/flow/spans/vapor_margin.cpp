#include "forecourse/studies/flow/spans/vapor_margin.h"

#include <algorithm>
#include <cmath>

#include "forecourse/base/constants.h"
#include "forecourse/fuel/properties.h"
#include "forecourse/fuel/standard_atmosphere.h"
#include "forecourse/site/liquid_level.h"
#include "forecourse/studies/flow/spans/tank_levels.h"

namespace forecourse::studies {
namespace {

using network::PipingSystem;

/// The pressure of the air and where it comes from.
struct Air {
  std::optional<double> lowest;  ///< [Pa] absolute
  std::string from;
};

Air air_at(const site::Site& site) {
  if (site.atmospheric_pressure) return {site.atmospheric_pressure->low.si(), "entered"};
  if (!site.altitude) return {};
  return {fuel::standard_atmosphere_at(site.altitude->high.si()), "standard atmosphere at the altitude entered"};
}

const site::Product* find_product(const site::Site& site, const std::string& id) {
  const auto found =
      std::find_if(site.products.begin(), site.products.end(), [&](const site::Product& p) { return p.id.text == id; });
  return found == site.products.end() ? nullptr : &*found;
}

/// Low, likely and high of the flowing temperature, each once [K]; empty where it is not known.
std::vector<double> temperatures_of(const site::Site& site, const site::Product& product, double likely) {
  const auto& entered = product.temperature ? product.temperature : site.ground_temperature;
  if (entered && entered->is_uncertain()) return {entered->low.si(), entered->likely.si(), entered->high.si()};
  if (std::isnan(likely)) return {};
  return {likely};
}

/// True vapor pressure at one temperature.
struct Boiling {
  std::optional<double> pressure;  ///< [Pa] absolute
  std::string from;                ///< its source, or why there is none
};

Boiling boiling_at(const site::Product& product, double temperature, bool is_likely) {
  fuel::EnteredProperties entered;
  if (product.reid_vapor_pressure) entered.reid_vapor_pressure = product.reid_vapor_pressure->high.si();
  if (product.true_vapor_pressure && is_likely) entered.true_vapor_pressure = product.true_vapor_pressure->high.si();
  const fuel::Kind kind = fuel::kind_from_name(product.kind.text).value_or(fuel::Kind::other);
  const fuel::Property found = fuel::properties_of(kind, entered, temperature, 0.0).true_vapor_pressure;
  if (!found.determined() || found.status == fuel::PropertyStatus::illustrative) {
    const bool needs_reid = product.true_vapor_pressure && !is_likely;
    return {std::nullopt, needs_reid ? "the true vapor pressure is entered at the likely temperature alone: enter "
                                       "reid_vapor_pressure in [[product]]"
                                     : "the vapor pressure is not known: enter reid_vapor_pressure or "
                                       "true_vapor_pressure in [[product]]"};
  }
  return {found.value, found.source + " (" + fuel::status_word(found.status) + ")"};
}

/// A place and its gauge pressure, or why it is not known.
struct Place {
  std::string name;
  std::optional<double> gauge;  ///< [Pa]
  std::string reason;
};

Place inlet_of(const site::Site& site, const PipingSystem& system, const site::Pump& pump) {
  Place out{"inlet of pump " + pump.id.text, {}, {}};
  const auto level = site::liquid_level(site, pump.tank.text);
  if (!pump.inlet_above_bottom) {
    out.reason = "where its inlet sits is not known: enter inlet_above_bottom in [[pump]]";
  } else if (const auto inlet = inlet_elevation(site, pump); level && inlet) {
    out.gauge = system.weight_of(*level - *inlet);
  } else {
    out.reason = "the liquid level in its tank is not known: enter bottom_elevation and reading in [[tank]]";
  }
  return out;
}

Place lowest_of(const PipingSystem& system, const network::SystemState& state) {
  Place out{"outlet of its nozzles, lowest on the way", 0.0, {}};
  if (!system.elevations_known) return out;
  for (std::size_t i = 0; i < system.places.size(); ++i) {
    if (!system.places[i].elevation_entered) continue;
    const double gauge = state.pressure[i] - system.weight_of(system.places[i].elevation);
    if (gauge < *out.gauge) out = {system.places[i].id + ", lowest on the way", gauge, {}};
  }
  return out;
}

class Margins {
 public:
  Margins(const site::Site& site, const PipingSystem& system, const site::Product& product)
      : system_(system),
        product_(product),
        air_(air_at(site)),
        temperatures_(temperatures_of(site, product, system.fluid.temperature)) {}

  void add(const Place& place, std::vector<VaporMargin>& out) const {
    VaporMargin row{system_.id, place.name, {}, air_.lowest, air_.from, {}, {}, {}, {}, place.reason};
    if (!air_.lowest)
      row.reason = "the pressure of the air is not known: enter atmospheric_pressure or altitude in [site]";
    if (row.reason.empty() && temperatures_.empty()) {
      row.reason = "the fuel's temperature is not known: enter temperature in [[product]]";
    }
    if (!row.reason.empty()) {
      out.push_back(std::move(row));
      return;
    }
    row.pressure_absolute = *air_.lowest + *place.gauge;
    for (const double temperature : temperatures_) out.push_back(at(row, temperature));
  }

 private:
  [[nodiscard]] VaporMargin at(VaporMargin row, double temperature) const {
    row.temperature = temperature;
    const Boiling boiling = boiling_at(product_, temperature, temperature == system_.fluid.temperature);
    row.vapor_pressure = boiling.pressure;
    if (boiling.pressure) {
      row.vapor_pressure_from = boiling.from;
      row.margin = *row.pressure_absolute - *boiling.pressure;
    } else {
      row.reason = boiling.from;
    }
    return row;
  }

  const PipingSystem& system_;
  const site::Product& product_;
  Air air_;
  std::vector<double> temperatures_;
};

}  // namespace

std::vector<VaporMargin> vapor_margins(const site::Site& site, const network::StationNetwork& network,
                                       const network::StationState& state) {
  std::vector<VaporMargin> out;
  for (std::size_t s = 0; s < network.systems.size(); ++s) {
    const PipingSystem& system = network.systems[s];
    const site::Product* product = find_product(site, system.product);
    if (!system.graph || product == nullptr || !state.systems[s].report.usable()) continue;
    const Margins margins(site, system, *product);
    for (const site::Pump& pump : site.pumps) {
      const bool is_here = std::any_of(system.pumps.begin(), system.pumps.end(),
                                       [&](const network::PumpPoint& p) { return p.id == pump.id.text; });
      if (is_here) margins.add(inlet_of(site, system, pump), out);
    }
    margins.add(lowest_of(system, state.systems[s]), out);
  }
  return out;
}

}  // namespace forecourse::studies
