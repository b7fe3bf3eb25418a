#include "forecourse/fuel/volume_correction.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "forecourse/base/api_units.h"
#include "forecourse/base/constants.h"

namespace forecourse::fuel {
namespace {

constexpr double temperature_15 = kelvin_from_celsius(15.0);

// [api_11_1_2004, 11.1.5.3 and 11.1.6.1]
constexpr double base_temperature_68 = 60.0068749;  // 60 degF of ITS-90 on ITPS-68 [degF]
constexpr double base_shift = 0.01374979547;        // delta60 [degF]
constexpr double lowest_density = 610.6;            // [kg/m3]
constexpr double highest_density = 1163.5;          // [kg/m3]
constexpr double lowest_temperature = -58.0;        // [degF]
constexpr double highest_temperature = 302.0;       // [degF]
constexpr double highest_pressure = 1500.0;         // [psi]
constexpr double fp_scale = 1e-5;                   // Fp is printed in 1e-5/psi
constexpr std::array itps68 = {-0.148759, -0.267408, 1.080760, 1.269056, -4.089591, -1.871251, 7.438081, -3.536296};
constexpr double itps68_scale = 630.0;  // [degC]

struct GroupRow {
  ProductGroup group;
  double low, high;   // base density [kg/m3]
  double k0, k1, k2;  // of alpha60 [1/degF] with density in kg/m3
};
constexpr std::array<GroupRow, 5> groups = {{
    {ProductGroup::crude, lowest_density, highest_density, 341.0957, 0.0, 0.0},
    {ProductGroup::gasoline, lowest_density, 770.3520, 192.4571, 0.2438, 0.0},
    {ProductGroup::transition, 770.3520, 787.5195, 1489.0670, 0.0, -0.00186840},
    {ProductGroup::jet, 787.5195, 838.3127, 330.3010, 0.0, 0.0},
    {ProductGroup::fuel_oil, 838.3127, highest_density, 103.8720, 0.2701, 0.0},
}};

const GroupRow& row_of(ProductGroup group) { return groups[static_cast<std::size_t>(group)]; }

double polynomial(double x, int derivative) {
  double sum = 0.0;
  for (std::size_t i = itps68.size(); i-- > 0;) {
    const double power = static_cast<double>(i + 1);
    sum += derivative == 0 ? itps68[i] * std::pow(x, power) : itps68[i] * power * std::pow(x, power - 1.0);
  }
  return sum;
}

double itps68_slope(double celsius) { return 1.0 - polynomial(celsius / itps68_scale, 1) / itps68_scale; }

VolumeCorrectionStatus limits(const GroupRow& row, double density_60, double fahrenheit, double psi) {
  // A density at the upper end of a group belongs to the next one, save at the end of the whole range.
  if (!(density_60 >= row.low && density_60 <= row.high)) return VolumeCorrectionStatus::density_out_of_range;
  constexpr double slack = 1e-9;  // [degF], [psi]: a limit entered in SI stays within after conversion
  if (!(fahrenheit >= lowest_temperature - slack && fahrenheit <= highest_temperature + slack)) {
    return VolumeCorrectionStatus::temperature_out_of_range;
  }
  if (!(psi <= highest_pressure + slack)) return VolumeCorrectionStatus::pressure_out_of_range;
  return VolumeCorrectionStatus::ok;
}

double alpha60(const GroupRow& row, double density) { return (row.k0 / density + row.k1) / density + row.k2; }

double shifted(const GroupRow& row, double density_60) {
  const double a = base_shift / 2.0 * alpha60(row, density_60);
  const double b = (2.0 * row.k0 + row.k1 * density_60) / (row.k0 + (row.k1 + row.k2 * density_60) * density_60);
  return density_60 * (1.0 + std::expm1(a * (1.0 + 0.8 * a)) / (1.0 + a * (1.0 + 1.6 * a) * b));
}

// The equations of 11.1.6.1 in their own units, without limits.
VolumeCorrection correction(const GroupRow& row, double density_60, double temperature, double psi) {
  VolumeCorrection c{.group = row.group};
  c.temperature_68 = itps68_temperature(temperature);
  c.shifted_density = shifted(row, density_60);
  const double t68 = fahrenheit_from_kelvin(c.temperature_68);
  const double dt = t68 - base_temperature_68;
  const double alpha = alpha60(row, c.shifted_density);
  const double square = c.shifted_density * c.shifted_density;
  const double fp = fp_scale * std::exp(-1.9947 + 0.00013427 * t68 + (793920.0 + 2326.0 * t68) / square);
  c.for_temperature = std::exp(-alpha * dt * (1.0 + 0.8 * alpha * (dt + base_shift)));
  c.for_pressure = 1.0 / (1.0 - fp * psi);
  c.for_both = c.for_temperature * c.for_pressure;
  c.expansion_60 = per_kelvin_from_per_fahrenheit(alpha);
  c.scaled_compressibility = per_pascal_from_per_psi(fp);
  const double thermal = alpha * (1.0 + 0.8 * alpha * (2.0 * dt + base_shift));
  const double of_pressure = psi * fp * (0.00013427 + 2326.0 / square) * c.for_pressure;
  c.expansion = per_kelvin_from_per_fahrenheit(thermal - of_pressure) * itps68_slope(celsius_from_kelvin(temperature));
  return c;
}

// False position with halved end values (Illinois): density times CTPL rises with density throughout a group.
// The repeated division by CTPL that 11.1.6.2 describes swings in the transition group above about 250 degF.
BaseDensity search(const GroupRow& row, double observed_density, double temperature, double psi) {
  constexpr int most = 100;
  constexpr double close = 1e-13;
  const auto excess = [&](double density) {
    return density * correction(row, density, temperature, psi).for_both / observed_density - 1.0;
  };
  double a = row.low, b = row.high;
  double at_a = excess(a), at_b = excess(b);
  for (int i = 1; i <= most; ++i) {
    const double middle = b - at_b * (b - a) / (at_b - at_a);
    const double at_middle = excess(middle);
    if (std::abs(at_middle) <= close) return {VolumeCorrectionStatus::ok, row.group, middle, i};
    if ((at_middle > 0.0) == (at_b > 0.0)) {
      at_a *= 0.5;
    } else {
      a = b;
      at_a = at_b;
    }
    b = middle;
    at_b = at_middle;
  }
  return {VolumeCorrectionStatus::not_converged, row.group, undetermined, most};
}

// Whether the observed density lies between those of the two ends of a group.
bool holds(const GroupRow& row, double observed_density, double temperature, double psi) {
  constexpr double join = 2e-7;  // two groups meet to this share of the density at -58 .. 302 degF
  const double low = row.low * correction(row, row.low, temperature, psi).for_both;
  const double high = row.high * correction(row, row.high, temperature, psi).for_both;
  return observed_density >= low * (1.0 - join) && observed_density <= high * (1.0 + join);
}

}  // namespace

double itps68_temperature(double temperature) {
  return temperature - polynomial(celsius_from_kelvin(temperature) / itps68_scale, 0);
}

double density_from_relative_density(double relative_density) {
  return relative_density * water_density_at_60_fahrenheit;
}

double density_from_api_gravity(double api_gravity) {
  return density_from_relative_density(141.5 / (api_gravity + 131.5));
}

double api_gravity_from_density(double density_60) {
  return 141.5 * water_density_at_60_fahrenheit / density_60 - 131.5;
}

ProductGroup refined_group(double density_60) {
  for (std::size_t i = 1; i + 1 < groups.size(); ++i) {
    if (density_60 < groups[i].high) return groups[i].group;
  }
  return ProductGroup::fuel_oil;
}

VolumeCorrection volume_correction(ProductGroup group, double density_60, double temperature, double gauge_pressure) {
  const GroupRow& row = row_of(group);
  const double psi = std::max(0.0, psi_from_pascal(gauge_pressure));
  const VolumeCorrectionStatus status = limits(row, density_60, fahrenheit_from_kelvin(temperature), psi);
  if (status != VolumeCorrectionStatus::ok) return {status, group};
  return correction(row, density_60, temperature, psi);
}

double rounded_correction(double factor) {
  constexpr double places = 1e5;
  return std::round(factor * places) / places;
}

double density_at(ProductGroup group, double density_60, double temperature, double gauge_pressure) {
  return density_60 * volume_correction(group, density_60, temperature, gauge_pressure).for_both;
}

BaseDensity base_density(ProductGroup group, double observed_density, double temperature, double gauge_pressure) {
  const GroupRow& row = row_of(group);
  const double psi = std::max(0.0, psi_from_pascal(gauge_pressure));
  const VolumeCorrectionStatus state = limits(row, row.low, fahrenheit_from_kelvin(temperature), psi);
  if (state != VolumeCorrectionStatus::ok) return {state, group};
  if (!holds(row, observed_density, temperature, psi)) {
    return {VolumeCorrectionStatus::density_out_of_range, group};
  }
  BaseDensity found = search(row, observed_density, temperature, psi);
  found.density_60 = std::clamp(found.density_60, row.low, row.high);
  return found;
}

BaseDensity refined_base_density(double observed_density, double temperature, double gauge_pressure) {
  BaseDensity found;
  for (std::size_t i = 1; i < groups.size(); ++i) {
    found = base_density(groups[i].group, observed_density, temperature, gauge_pressure);
    if (found.status == VolumeCorrectionStatus::ok) break;
  }
  return found;
}

double density_15_from_60(ProductGroup group, double density_60) {
  return density_at(group, density_60, temperature_15, 0.0);
}

BaseDensity density_60_from_15(double density_15) { return refined_base_density(density_15, temperature_15, 0.0); }

double correction_to_15(double density_15, double temperature, double gauge_pressure) {
  const BaseDensity base = density_60_from_15(density_15);
  return density_at(base.group, base.density_60, temperature, gauge_pressure) / density_15;
}

}  // namespace forecourse::fuel
