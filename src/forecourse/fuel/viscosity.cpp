#include "forecourse/fuel/viscosity.h"

#include <cmath>

#include "forecourse/base/api_units.h"
#include "forecourse/fuel/undetermined.h"

namespace forecourse::fuel {
namespace {

constexpr double offset = 0.7;      // [mm2/s], of the simple form
constexpr double well_above = 0.7;  // [mm2/s], below which the simple form needs more terms

double ordinate(double viscosity) {
  return std::log10(std::log10(centistoke_from_square_meter_per_second(viscosity) + offset));
}

}  // namespace

ViscosityLaw fit_viscosity_law(double temperature_1, double viscosity_1, double temperature_2, double viscosity_2) {
  const double y1 = ordinate(viscosity_1);
  const double y2 = ordinate(viscosity_2);
  const double b = (y1 - y2) / (std::log10(temperature_2) - std::log10(temperature_1));
  if (!(std::isfinite(y1) && std::isfinite(y2) && std::isfinite(b) && b > 0.0)) {
    return {undetermined, undetermined, ViscosityStatus::not_determined};
  }
  return {y1 + b * std::log10(temperature_1), b, ViscosityStatus::ok};
}

KinematicViscosity kinematic_viscosity(const ViscosityLaw& law, double temperature) {
  const double centistoke = std::pow(10.0, std::pow(10.0, law.a - law.b * std::log10(temperature))) - offset;
  if (law.status == ViscosityStatus::not_determined || !std::isfinite(centistoke) || !(centistoke > 0.0)) {
    return {undetermined, ViscosityStatus::not_determined};
  }
  return {square_meter_per_second_from_centistoke(centistoke),
          centistoke < well_above ? ViscosityStatus::low_viscosity : ViscosityStatus::ok};
}

}  // namespace forecourse::fuel
