#include "forecourse/network/volume_change.h"

#include <cmath>

#include "forecourse/base/api_units.h"
#include "forecourse/fuel/properties.h"
#include "forecourse/fuel/volume_correction.h"

namespace forecourse::network {
namespace {

template <class Q>
std::optional<double> si(const site::Maybe<Q>& entered) {
  return entered ? std::optional(entered->likely.si()) : std::nullopt;
}

fuel::EnteredProperties density_of(const site::Product& product) {
  fuel::EnteredProperties out;
  out.density = si(product.density);
  out.density_temperature = si(product.density_at);
  if (product.gravity) {
    out.density = si(product.gravity);
    out.density_temperature = kelvin_from_fahrenheit(60.0);
  }
  out.thermal_expansion = si(product.expansion);
  return out;
}

/// Volume at a temperature over that at 60 degF, by the published procedure; empty where it does not hold.
std::optional<double> volume_ratio(double base_density, double temperature) {
  const fuel::VolumeCorrection found =
      fuel::volume_correction(fuel::refined_group(base_density), base_density, temperature, 0.0);
  if (found.status != fuel::VolumeCorrectionStatus::ok) return std::nullopt;
  return 1.0 / found.for_temperature;
}

}  // namespace

VolumeChange volume_change(const site::Product& product, double from, double to) {
  const fuel::Kind kind = fuel::kind_from_name(product.kind.text).value_or(fuel::Kind::other);
  const fuel::Properties found = fuel::properties_of(kind, density_of(product), from, 0.0);
  if (found.base_density.determined()) {
    const auto before = volume_ratio(found.base_density.value, from);
    const auto after = volume_ratio(found.base_density.value, to);
    if (before && after) return {*after / *before, "API MPMS 11.1; density " + found.base_density.source};
  }
  if (!product.expansion) return {std::nullopt, "enter the density of the product, or its expansion"};
  return {std::exp(*si(product.expansion) * (to - from)), "by the entered expansion"};
}

}  // namespace forecourse::network
