#include "forecourse/fuel/ethanol_density.h"

#include <array>
#include <span>

#include "forecourse/base/api_units.h"
#include "forecourse/fuel/undetermined.h"

namespace forecourse::fuel {
namespace {

constexpr double base_celsius = 20.0;
constexpr double lowest_celsius = -20.0;
constexpr double highest_celsius = 40.0;

// [oiml_r22, table of coefficients] as two independent copies of the published table agree; two other public copies
// carry the misprints 0.16911721 and -1.161156 among C.
constexpr std::array a = {998.20123,   -192.9769495, 389.1238958, -1668.103923, 13522.15441, -88292.78388,
                          306287.4042, -613838.1234, 747017.2998, -547846.1354, 223446.0334, -39032.85426};
constexpr std::array b = {-0.20618513, -5.2682542e-3, 3.6130013e-5, -3.8957702e-7, 7.169354e-9, -9.9739231e-11};
constexpr std::array c1 = {0.1693443461530087, -10.46914743455169, 71.96353469546523, -704.7478054272792,
                           3924.090430035045,  -12101.64659068747, 22486.46550400788, -26055.62982188164,
                           18523.73922069467,  -7420.201433430137, 1285.617841998974};
constexpr std::array c2 = {-0.01193013005057010, 0.2517399633803461, -2.170575700536993, 13.53034988843029,
                           -50.29988758547014,   109.6355666577570,  -142.2753946421155, 108.0435942856230,
                           -44.14153236817392,   7.442971530188783};
constexpr std::array c3 = {-6.802995733503803e-4, 1.876837790289664e-2, -0.2002561813734156,
                           1.022992966719220,     -2.895696483903638,   4.810060584300675,
                           -4.672147440794683,    2.458043105903461,    -0.5411227621436812};
constexpr std::array c4 = {4.075376675622027e-6, -8.763058573471110e-6, 6.515031360099368e-6, -1.515784836987210e-6};
constexpr std::array c5 = {-2.788074354782409e-8, 1.345612883493354e-8};
constexpr std::array<std::span<const double>, 6> c = {c1, c2, c3, c4, c5, std::span<const double>()};

// coefficients[0] + coefficients[1] p + ...
double polynomial(std::span<const double> coefficients, double p) {
  double sum = 0.0;
  for (std::size_t i = coefficients.size(); i-- > 0;) sum = sum * p + coefficients[i];
  return sum;
}

struct DensityAndSlope {
  double density;  // [kg/m3]
  double slope;    // [kg/(m3 K)]
};

DensityAndSlope evaluate(double p, double celsius) {
  const double x = celsius - base_celsius;
  DensityAndSlope sum{polynomial(a, p), 0.0};
  double power = 1.0;  // x^(k-1)
  for (std::size_t k = 1; k <= b.size(); ++k) {
    const double coefficient = b[k - 1] + p * polynomial(c[k - 1], p);
    sum.slope += static_cast<double>(k) * coefficient * power;
    power *= x;
    sum.density += coefficient * power;
  }
  return sum;
}

bool within(double p, double celsius) {
  constexpr double slack = 1e-9;  // [degC]: a limit entered in kelvin stays within after conversion
  return p >= 0.0 && p <= 1.0 && celsius >= lowest_celsius - slack && celsius <= highest_celsius + slack;
}

}  // namespace

double ethanol_water_density(double ethanol_mass_fraction, double temperature) {
  const double celsius = celsius_from_kelvin(temperature);
  if (!within(ethanol_mass_fraction, celsius)) return undetermined;
  return evaluate(ethanol_mass_fraction, celsius).density;
}

double ethanol_water_expansion(double ethanol_mass_fraction, double temperature) {
  const double celsius = celsius_from_kelvin(temperature);
  if (!within(ethanol_mass_fraction, celsius)) return undetermined;
  const DensityAndSlope at = evaluate(ethanol_mass_fraction, celsius);
  return -at.slope / at.density;
}

double ethanol_volume_fraction(double ethanol_mass_fraction) {
  const double temperature = kelvin_from_celsius(base_celsius);
  return ethanol_mass_fraction * ethanol_water_density(ethanol_mass_fraction, temperature) /
         ethanol_water_density(1.0, temperature);
}

}  // namespace forecourse::fuel
