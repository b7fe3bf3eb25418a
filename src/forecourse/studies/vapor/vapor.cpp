#include "forecourse/studies/vapor/vapor.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "forecourse/base/api_units.h"
#include "forecourse/base/constants.h"
#include "forecourse/fuel/properties.h"
#include "forecourse/parts/vapor/emissions.h"
#include "forecourse/studies/gasoline.h"
#include "forecourse/studies/vapor/losses.h"

namespace forecourse::studies {
namespace {

template <class Q>
std::optional<double> si(const site::Maybe<Q>& entered) {
  return entered ? std::optional(entered->likely.si()) : std::nullopt;
}

fuel::Kind kind_of(const site::Product& product) {
  return fuel::kind_from_name(product.kind.text).value_or(fuel::Kind::other);
}

/// Temperature of the fuel and whether the pressure entered belongs to it.
struct At {
  std::optional<double> temperature;  ///< [K]
  bool as_entered = true;
};

At temperature_of(const site::Site& site, const site::Product& product, const VaporOptions& options) {
  const std::optional<double> entered = product.temperature ? si(product.temperature) : si(site.ground_temperature);
  if (!options.temperature) return {entered, true};
  return {options.temperature, entered && *entered == *options.temperature};
}

/// True vapor pressure, from what was entered alone: one from the middle of a range is no answer.
std::optional<double> pressure_at(const site::Product& product, double temperature, bool as_entered,
                                  std::string& source) {
  fuel::EnteredProperties entered;
  entered.reid_vapor_pressure = si(product.reid_vapor_pressure);
  if (as_entered) entered.true_vapor_pressure = si(product.true_vapor_pressure);
  const fuel::Property found = fuel::properties_of(kind_of(product), entered, temperature, 0.0).true_vapor_pressure;
  if (!found.determined() || found.status == fuel::PropertyStatus::illustrative) {
    source = "enter reid_vapor_pressure, or true_vapor_pressure at its temperature";
    return std::nullopt;
  }
  source = found.source + " (" + fuel::status_word(found.status) + ")";
  return found.value;
}

void set_molar_mass(const site::Product& product, ProductVapor& out) {
  if (product.vapor_molar_mass) {
    out.molar_mass = kilograms_from_grams(product.vapor_molar_mass->likely);
    out.molar_mass_source = "entered";
    return;
  }
  const double found =
      out.gasoline && out.reid_vapor_pressure ? parts::gasoline_vapor_molar_mass(*out.reid_vapor_pressure) : NAN;
  if (std::isfinite(found)) {
    out.molar_mass = found;
    out.molar_mass_source = "AP-42 table 7.1-2 by Reid vapor pressure (published)";
  } else {
    out.molar_mass_source = "enter vapor_molar_mass, or a reid_vapor_pressure from 7 to 13 psi";
  }
}

void set_curve(const site::Product& product, ProductVapor& out) {
  constexpr int steps = 12;
  std::string unused;
  for (int i = 0; i <= steps; ++i) {
    const double at = kelvin_from_fahrenheit(40.0 + 60.0 * i / steps);  // where AP-42 tabulates
    if (const auto pressure = pressure_at(product, at, false, unused)) out.curve.push_back({at, *pressure});
  }
}

bool holds(const site::Tank& tank, const std::string& product) {
  return tank.product.text == product ||
         std::any_of(tank.compartments.begin(), tank.compartments.end(),
                     [&](const site::Compartment& one) { return one.product.text == product; });
}

std::optional<double> tested_efficiency(const site::Site& site, const site::VaporReturn& vapor) {
  if (!vapor.efficiency_test) return std::nullopt;
  const site::EfficiencyTest& test = *vapor.efficiency_test;
  if (!test.vented || !test.loaded || !test.vapor_temperature) return std::nullopt;
  return parts::stage_one_efficiency({*si(test.vented), *si(test.vapor_temperature), *si(test.loaded),
                                      si(site.atmospheric_pressure).value_or(standard_atmosphere)});
}

/// How the tanks of a product are filled; where they differ, as the worst of them.
FillingHere filling_of(const site::Site& site, const std::string& product) {
  FillingHere out;
  for (const site::Tank& tank : site.tanks) {
    if (!holds(tank, product)) continue;
    out.balanced = out.balanced.value_or(true) && tank.vapor_return.has_value();
    if (!tank.fills.empty()) {
      const bool tubes = std::all_of(tank.fills.begin(), tank.fills.end(),
                                     [](const site::Fill& fill) { return fill.drop_tube.has_value(); });
      out.submerged = out.submerged.value_or(true) && tubes;
    }
    if (!tank.vapor_return) continue;
    const std::optional<double> entered = si(tank.vapor_return->efficiency);
    const std::optional<double> efficiency = entered ? entered : tested_efficiency(site, *tank.vapor_return);
    if (efficiency) out.efficiency = std::min(out.efficiency.value_or(1.0), *efficiency);
  }
  return out;
}

std::optional<double> throughput_of(const site::Site& site, const std::string& product) {
  if (!site.operations) return std::nullopt;
  for (const site::Throughput& one : site.operations->throughput) {
    if (one.product.text == product) return si(one.per_month);
  }
  return std::nullopt;
}

ProductVapor tell_product(const site::Site& site, const site::Product& product, const VaporOptions& options) {
  ProductVapor out;
  out.product = product.id.text;
  out.where = product.where;
  out.gasoline = fuel::is_gasoline(kind_of(product));
  out.reid_vapor_pressure = si(product.reid_vapor_pressure);
  const At at = temperature_of(site, product, options);
  out.temperature = at.temperature;
  if (at.temperature) {
    out.true_vapor_pressure = pressure_at(product, *at.temperature, at.as_entered, out.pressure_source);
  } else {
    out.pressure_source = "enter the temperature of the product, or ground_temperature";
  }
  set_molar_mass(product, out);
  set_curve(product, out);
  out.throughput = throughput_of(site, out.product);
  if (out.gasoline) tell_losses(filling_of(site, out.product), out);
  return out;
}

int gasoline_nozzles(const site::Site& site, const std::vector<ProductVapor>& products) {
  const auto is_gasoline = [&](const std::string& id) {
    return std::any_of(products.begin(), products.end(),
                       [&](const ProductVapor& p) { return p.gasoline && p.product == id; });
  };
  int count = 0;
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Hose& hose : dispenser.hoses) {
      const bool blends = std::any_of(hose.blend.begin(), hose.blend.end(),
                                      [&](const site::BlendShare& share) { return is_gasoline(share.product.text); });
      if (blends || is_gasoline(hose.product.text)) ++count;
    }
  }
  return count;
}

std::vector<StaticTargets> static_targets(int nozzles) {
  constexpr std::array<std::pair<int, int>, 5> bands{{{1, 6}, {7, 12}, {13, 18}, {19, 24}, {25, 0}}};
  constexpr std::array<double, 13> gallons{500.0,  1000.0, 1500.0,  2000.0,  3000.0,  4000.0, 5000.0,
                                           6000.0, 8000.0, 10000.0, 15000.0, 20000.0, 25000.0};
  std::vector<StaticTargets> out;
  for (const auto& [from, to] : bands) {
    StaticTargets& band = out.emplace_back();
    band.nozzles_from = from;
    band.nozzles_to = to;
    band.constant_read = parts::static_test_constant(from).read;
    band.here = nozzles >= from && (to == 0 || nozzles <= to);
    for (const double ullage : gallons) {
      const double room = cubic_meters_from_gallons(ullage);
      band.targets.push_back({room, parts::static_test_target({room, from})});
    }
  }
  return out;
}

VaporTests tests_of(const site::Site& site, const site::Tank& tank) {
  VaporTests out;
  out.tank = tank.id.text;
  const site::VaporReturn& vapor = *tank.vapor_return;
  out.where = vapor.where;
  out.efficiency = tested_efficiency(site, vapor);
  if (!vapor.pressure_test) return out;
  out.end = si(vapor.pressure_test->end);
  if (vapor.pressure_test->ullage)
    out.federal_target = parts::static_test_target({*si(vapor.pressure_test->ullage), 1});
  if (vapor.pressure_test->ullage && vapor.pressure_test->nozzles) {
    out.target = parts::static_test_target(
        {*si(vapor.pressure_test->ullage), static_cast<int>(std::lround(vapor.pressure_test->nozzles->likely))});
  }
  return out;
}

}  // namespace

const char* word(LossStatus status) {
  constexpr std::array<const char*, 3> words{"computed", "read in its source or a public copy",
                                             "from memory, not verified"};
  return words[static_cast<std::size_t>(status)];
}

VaporResult study_vapor(const site::Site& site, const VaporOptions& options, const Context& context) {
  static_cast<void>(context);
  VaporResult result;
  result.options = options;
  result.version = FORECOURSE_VERSION;
  for (const site::Product& product : site.products) result.products.push_back(tell_product(site, product, options));
  result.gasoline_throughput = gasoline_throughput(site);
  if (result.gasoline_throughput) result.tier = parts::throughput_tier(*result.gasoline_throughput);
  result.gasoline_nozzles = gasoline_nozzles(site, result.products);
  result.static_targets = static_targets(result.gasoline_nozzles);
  for (const site::Tank& tank : site.tanks) {
    if (tank.vapor_return) result.tests.push_back(tests_of(site, tank));
  }
  result.care = product_care(site, options.temperature);
  return result;
}

}  // namespace forecourse::studies
