#include "forecourse/fuel/properties.h"

#include <algorithm>
#include <cmath>

#include "forecourse/base/api_units.h"
#include "forecourse/base/constants.h"
#include "forecourse/fuel/bulk_modulus.h"
#include "forecourse/fuel/equation_of_state/helmholtz.h"
#include "forecourse/fuel/ethanol_density.h"
#include "forecourse/fuel/published_ranges.h"
#include "forecourse/fuel/undetermined.h"
#include "forecourse/fuel/vapor_pressure.h"
#include "forecourse/fuel/volume_correction.h"

namespace forecourse::fuel {
namespace {

using Status = PropertyStatus;

constexpr double temperature_60 = kelvin_from_fahrenheit(60.0);
constexpr double same_temperature = 0.05;  // [K], within which a value holds as it is
constexpr double near_60 = 5.0;            // [K], beyond which a viscosity at 60 degF is warned about
constexpr const char* mpms = "API MPMS 11.1-2004";
constexpr const char* by_user = "entered";

struct Request {
  Kind kind;
  const EnteredProperties& entered;
  double temperature;
  double gauge_pressure;
};

Property not_determined(std::string why) { return {undetermined, Status::not_determined, std::move(why)}; }

// A derived value is never better than its input or its method.
Property derived(double value, Status input, Status method, std::string source) {
  return {value, std::max({input, method, Status::computed}), std::move(source)};
}

Property entered_or(const std::optional<double>& entered, Property otherwise) {
  return entered ? Property{*entered, Status::entered, by_user} : std::move(otherwise);
}

const char* reason(VolumeCorrectionStatus status) {
  switch (status) {
    case VolumeCorrectionStatus::density_out_of_range:
      return "base density outside 610.6 .. 1163.5 kg/m3";
    case VolumeCorrectionStatus::temperature_out_of_range:
      return "temperature outside -58 .. 302 degF";
    case VolumeCorrectionStatus::pressure_out_of_range:
      return "pressure above 1500 psi gauge";
    case VolumeCorrectionStatus::not_converged:
      return "no base density gives the density entered";
    case VolumeCorrectionStatus::ok:
      break;
  }
  return "";
}

bool density_is_at_state(const Request& r) { return r.entered.density && !r.entered.density_temperature; }

// ---- petroleum and its blends: API MPMS 11.1

struct Base {
  BaseDensity found;
  Status status;
  std::string source;
};

Base base_of(const Request& r) {
  if (r.entered.density) {
    const bool at_state = density_is_at_state(r);
    const double temperature = at_state ? r.temperature : *r.entered.density_temperature;
    const double pressure = at_state ? r.gauge_pressure : 0.0;
    return {refined_base_density(*r.entered.density, temperature, pressure), Status::entered, "entered density"};
  }
  if (r.entered.api_gravity) {
    const double density = density_from_api_gravity(*r.entered.api_gravity);
    return {{.group = refined_group(density), .density_60 = density}, Status::entered, "entered API gravity"};
  }
  const bool gasoline = is_gasoline(r.kind);
  const PublishedRange range = gasoline ? gasoline_relative_density : diesel_relative_density;
  const double density = density_from_relative_density(range.middle());
  return {{.group = refined_group(density), .density_60 = density},
          Status::illustrative,
          gasoline ? "middle of the published range 0.72 .. 0.78 (60/60 degF)"
                   : "middle of the published range 0.81 .. 0.89 (60/60 degF)"};
}

void refuse_petroleum(const Request& r, VolumeCorrectionStatus status, Properties& out) {
  const std::string why = std::string(mpms) + ": " + reason(status);
  out.warnings.push_back(why);
  out.base_density = not_determined(why);
  const bool at_state = density_is_at_state(r);
  out.density = at_state ? Property{*r.entered.density, Status::entered, by_user} : not_determined(why);
  out.isothermal_bulk_modulus = entered_or(r.entered.isothermal_bulk_modulus, not_determined(why));
  out.thermal_expansion = entered_or(r.entered.thermal_expansion, not_determined(why));
}

void petroleum(const Request& r, Properties& out) {
  const Base base = base_of(r);
  VolumeCorrection c{};
  VolumeCorrectionStatus status = base.found.status;
  if (status == VolumeCorrectionStatus::ok) {
    c = volume_correction(base.found.group, base.found.density_60, r.temperature, r.gauge_pressure);
    status = c.status;
  }
  if (status != VolumeCorrectionStatus::ok) return refuse_petroleum(r, status, out);
  const Status method = is_approximated_blend(r.kind) ? Status::approximation : Status::computed;
  const std::string source = std::string(mpms) + " from " + base.source;
  out.base_density = derived(base.found.density_60, base.status, method, source);
  const double density = base.found.density_60 * c.for_both;
  out.density = density_is_at_state(r) ? Property{*r.entered.density, Status::entered, by_user}
                                       : derived(density, base.status, method, source);
  out.isothermal_bulk_modulus =
      entered_or(r.entered.isothermal_bulk_modulus,
                 derived(isothermal_bulk_modulus(c.scaled_compressibility).pascal, base.status, method, source));
  out.thermal_expansion = entered_or(r.entered.thermal_expansion, derived(c.expansion, base.status, method, source));
  if (is_approximated_blend(r.kind)) {
    out.warnings.push_back(std::string(kind_name(r.kind)) + ": " + mpms +
                           " was made for hydrocarbons and is an approximation for this blend");
  }
}

// ---- fuels without a volume-correction law: what is entered

Property carried_over(const Request& r, double density, double at, const char* source) {
  const double difference = r.temperature - at;
  if (std::abs(difference) <= same_temperature) return {density, Status::entered, source};
  if (!r.entered.thermal_expansion) {
    return not_determined(
        "density is entered at another temperature and this kind has no law to carry it over: "
        "enter it at the flowing temperature, or an expansion");
  }
  return derived(density / (1.0 + *r.entered.thermal_expansion * difference), Status::entered, Status::approximation,
                 std::string(source) + " carried over by the entered expansion");
}

std::optional<Property> entered_density(const Request& r) {
  if (r.entered.density) {
    return carried_over(r, *r.entered.density, r.entered.density_temperature.value_or(r.temperature), by_user);
  }
  if (r.entered.api_gravity) {
    return carried_over(r, density_from_api_gravity(*r.entered.api_gravity), temperature_60, "entered API gravity");
  }
  return std::nullopt;
}

void entered_only(const Request& r, Properties& out) {
  const std::string why = "no published law for this kind: enter it";
  out.base_density = not_determined("API MPMS 11.1 does not cover this kind");
  out.density = entered_density(r).value_or(not_determined(why));
  out.isothermal_bulk_modulus = entered_or(r.entered.isothermal_bulk_modulus, not_determined(why));
  out.thermal_expansion = entered_or(r.entered.thermal_expansion, not_determined(why));
  if (!out.density.determined()) out.warnings.push_back("density: " + out.density.source);
}

// ---- neat ethanol: OIML R 22 and the equation of state

void neat_ethanol(const Request& r, Properties& out) {
  entered_only(r, out);
  const LiquidState state =
      liquid_state(helmholtz_fluid(PureFluid::ethanol), r.temperature, standard_atmosphere + r.gauge_pressure);
  const double density = ethanol_water_density(1.0, r.temperature);
  if (!std::isfinite(density) || state.status != LiquidStatus::ok) {
    out.warnings.push_back("OIML R 22: temperature outside -20 .. 40 degC, or pressure outside the equation of state");
    return;
  }
  const bool silent = !r.entered.density && !r.entered.api_gravity;
  if (silent) {
    const double compressed = density * (1.0 + r.gauge_pressure / state.isothermal.pascal);
    out.density = {compressed, Status::computed, "OIML R 22, pure ethanol"};
    out.warnings.clear();
  }
  out.isothermal_bulk_modulus = entered_or(
      r.entered.isothermal_bulk_modulus,
      {state.isothermal.pascal, Status::computed, "equation of state of Schroeder et al. 2014, pure ethanol"});
  out.thermal_expansion = entered_or(r.entered.thermal_expansion, {ethanol_water_expansion(1.0, r.temperature),
                                                                   Status::computed, "OIML R 22, pure ethanol"});
  out.warnings.push_back("ethanol: values of the pure liquid; fuel ethanol carries denaturant and water");
}

// ---- viscosity

Property by_law(const Request& r, const Property& density, std::vector<std::string>& warnings) {
  const KinematicViscosity nu = kinematic_viscosity(*r.entered.viscosity_law, r.temperature);
  if (nu.status == ViscosityStatus::not_determined || !density.determined()) {
    return not_determined("the entered points give no viscosity here, or the density is not determined");
  }
  const bool low = nu.status == ViscosityStatus::low_viscosity;
  if (low) warnings.push_back("viscosity: below 0.7 mm2/s ASTM D341 in its simple form is off by about 1 %");
  return derived(nu.value * density.value, density.status, low ? Status::approximation : Status::computed,
                 "ASTM D341 through the entered points");
}

Property at_60(const Request& r, PublishedRange range, Status status, const char* source,
               std::vector<std::string>& warnings) {
  if (std::abs(r.temperature - temperature_60) > near_60) {
    warnings.push_back("viscosity: the default holds at 60 degF and is taken as it is at this temperature");
    status = std::max(status, Status::illustrative);
  }
  return {range.middle(), status, source};
}

Property viscosity(const Request& r, const Property& density, std::vector<std::string>& warnings) {
  if (r.entered.dynamic_viscosity) return {*r.entered.dynamic_viscosity, Status::entered, by_user};
  if (r.entered.viscosity_law) return by_law(r, density, warnings);
  if (r.kind == Kind::ethanol) {
    return at_60(r, ethanol_viscosity, Status::published, "US DOE fuel property table, 60 degF", warnings);
  }
  if (!follows_volume_correction(r.kind)) {
    warnings.push_back("viscosity: no published law for this kind: enter it");
    return not_determined("no published law for this kind: enter it");
  }
  return is_gasoline(r.kind) ? at_60(r, gasoline_viscosity, Status::illustrative,
                                     "middle of the published range 0.37 .. 0.44 mPa.s at 60 degF", warnings)
                             : at_60(r, diesel_viscosity, Status::illustrative,
                                     "middle of the published range 2.6 .. 4.1 mPa.s at 60 degF", warnings);
}

// ---- vapor pressure

Property gasoline_vapor_pressure(const Request& r, std::vector<std::string>& warnings) {
  const bool known = r.entered.reid_vapor_pressure.has_value();
  if (!known && r.kind == Kind::gasoline_e15) return not_determined("enter the Reid or the true vapor pressure");
  const double reid = r.entered.reid_vapor_pressure.value_or(gasoline_reid_vapor_pressure.middle());
  const double fahrenheit = fahrenheit_from_kelvin(r.temperature);
  if (fahrenheit < 40.0 || fahrenheit > 100.0) {
    warnings.push_back("vapor pressure: AP-42 tabulates 40 .. 100 degF; this is its equation beyond");
  }
  const Status method = r.kind == Kind::gasoline_e0 ? Status::computed : Status::approximation;
  return derived(true_vapor_pressure_refined(reid, motor_gasoline_slope, r.temperature),
                 known ? Status::entered : Status::illustrative, method,
                 known ? "AP-42 chapter 7.1 from the entered Reid vapor pressure, slope 3"
                       : "AP-42 chapter 7.1 from the middle of the published Reid range 8 .. 15 psi, slope 3");
}

Property vapor_pressure(const Request& r, std::vector<std::string>& warnings) {
  if (r.entered.true_vapor_pressure) return {*r.entered.true_vapor_pressure, Status::entered, by_user};
  if (is_gasoline(r.kind)) return gasoline_vapor_pressure(r, warnings);
  if (r.entered.reid_vapor_pressure) {
    warnings.push_back("vapor pressure: no law leads from Reid to true vapor pressure for this kind; Reid is not used");
  }
  if (!is_diesel(r.kind)) return not_determined("no published law for this kind: enter the true vapor pressure");
  return derived(true_vapor_pressure(number_2_fuel_oil, r.temperature), Status::published,
                 is_approximated_blend(r.kind) ? Status::approximation : Status::computed,
                 "AP-42 chapter 7.1, table 7.1-2, No. 2 fuel oil");
}

}  // namespace

const char* status_word(PropertyStatus status) {
  switch (status) {
    case Status::entered:
      return "entered";
    case Status::published:
      return "published";
    case Status::computed:
      return "computed";
    case Status::approximation:
      return "approximation";
    case Status::common_practice:
      return "common practice";
    case Status::illustrative:
      return "illustrative";
    case Status::not_determined:
      break;
  }
  return "not determined";
}

Properties properties_of(Kind kind, const EnteredProperties& entered, double temperature, double gauge_pressure) {
  const Request r{kind, entered, temperature, gauge_pressure};
  Properties out{};
  if (entered.density && entered.api_gravity) {
    out.warnings.push_back("density and API gravity are both entered: density is used");
  }
  if (follows_volume_correction(kind)) {
    petroleum(r, out);
  } else if (kind == Kind::ethanol) {
    neat_ethanol(r, out);
  } else {
    entered_only(r, out);
  }
  out.dynamic_viscosity = viscosity(r, out.density, out.warnings);
  out.true_vapor_pressure = vapor_pressure(r, out.warnings);
  return out;
}

}  // namespace forecourse::fuel
