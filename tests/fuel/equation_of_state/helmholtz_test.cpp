// SOURCE: [coolprop, dev/fluids] coefficients of the published equations; rows are a second computation
#include "forecourse/fuel/equation_of_state/helmholtz.h"

#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/base/api_units.h"
#include "forecourse/base/constants.h"
#include "forecourse/fuel/ethanol_density.h"
#include "support/check_values.h"

namespace forecourse::fuel {
namespace {

using test::CheckRow;

const HelmholtzFluid& fluid_of(const std::string& name) {
  if (name == "Ethanol") return helmholtz_fluid(PureFluid::ethanol);
  if (name == "n-Heptane") return helmholtz_fluid(PureFluid::n_heptane);
  if (name == "n-Octane") return helmholtz_fluid(PureFluid::n_octane);
  if (name == "Toluene") return helmholtz_fluid(PureFluid::toluene);
  EXPECT_EQ(name, "MethylOleate");
  return helmholtz_fluid(PureFluid::methyl_oleate);
}

double in_unit_of_row(const CheckRow& check, const LiquidState& s) {
  if (check.quantity == "liquid density") return s.density;
  if (check.quantity == "cubical expansion") return s.expansion;
  if (check.quantity == "isothermal bulk modulus") return s.isothermal.pascal / 1e9;
  if (check.quantity == "isentropic bulk modulus") return s.isentropic.pascal / 1e9;
  EXPECT_EQ(check.quantity, "sound speed");
  return s.speed_of_sound;
}

TEST(Helmholtz, AgreesWithASecondComputation) {
  const auto rows = test::rows_starting("EOS-");
  EXPECT_EQ(rows.size(), 150u);
  for (const CheckRow& check : rows) {
    const auto parts = test::parts_of(check.inputs);
    const LiquidState s = liquid_state(fluid_of(parts.at(0)), test::kelvin_in(parts.at(1)), standard_atmosphere);
    EXPECT_EQ(s.status, LiquidStatus::ok) << check.id;
    EXPECT_TRUE(test::agrees(check, in_unit_of_row(check, s)));
  }
}

constexpr PureFluid all_fluids[] = {PureFluid::ethanol, PureFluid::n_heptane, PureFluid::n_octane, PureFluid::toluene,
                                    PureFluid::methyl_oleate};

TEST(Helmholtz, DensityLeadsBackToThePressure) {
  for (PureFluid fluid : all_fluids) {
    for (double pressure : {standard_atmosphere, 1e6, 2e7}) {
      const LiquidState s = liquid_state(helmholtz_fluid(fluid), 288.15, pressure);
      ASSERT_EQ(s.status, LiquidStatus::ok);
      // Newton stops at 1e-13 of the density, which is K_T times that in pressure
      EXPECT_NEAR(helmholtz_pressure(helmholtz_fluid(fluid), 288.15, s.density), pressure, 1.0);
    }
  }
}

TEST(Helmholtz, ExpansionAndIsothermalModulusAreDerivativesOfDensity) {
  for (PureFluid fluid : all_fluids) {
    const HelmholtzFluid& f = helmholtz_fluid(fluid);
    const LiquidState s = liquid_state(f, 288.15, 1e6);
    constexpr double dt = 0.05;  // [K]
    constexpr double dp = 1e5;   // [Pa]
    const double by_heat =
        std::log(liquid_state(f, 288.15 + dt, 1e6).density / liquid_state(f, 288.15 - dt, 1e6).density) / (2.0 * dt);
    const double by_pressure =
        std::log(liquid_state(f, 288.15, 1e6 + dp).density / liquid_state(f, 288.15, 1e6 - dp).density) / (2.0 * dp);
    EXPECT_NEAR(s.expansion, -by_heat, 1e-6 * s.expansion);                           // central difference
    EXPECT_NEAR(s.isothermal.pascal, 1.0 / by_pressure, 1e-6 * s.isothermal.pascal);  // central difference
  }
}

TEST(Helmholtz, IsentropicExceedsIsothermalByTheRatioOfSpecificHeats) {
  for (PureFluid fluid : all_fluids) {
    const LiquidState s = liquid_state(helmholtz_fluid(fluid), 288.15, standard_atmosphere);
    EXPECT_GT(s.specific_heat_ratio, 1.15);
    EXPECT_LT(s.specific_heat_ratio, 1.40);
    EXPECT_DOUBLE_EQ(s.isentropic.pascal, s.isothermal.pascal * s.specific_heat_ratio);
  }
}

TEST(Helmholtz, EthanolAgreesWithTheOtherRouteByOimlR22) {
  for (double celsius : {0.0, 15.0, 30.0, 40.0}) {
    const double kelvin = kelvin_from_celsius(celsius);
    const LiquidState s = liquid_state(helmholtz_fluid(PureFluid::ethanol), kelvin, standard_atmosphere);
    EXPECT_NEAR(s.density, ethanol_water_density(1.0, kelvin), 0.4);  // the equation of state is stated to 0.05 %
    EXPECT_NEAR(s.expansion, ethanol_water_expansion(1.0, kelvin), 3e-6);
  }
}

TEST(Helmholtz, RefusesWhatLiesOutsideItsLimitsWithoutNumbers) {
  const HelmholtzFluid& f = helmholtz_fluid(PureFluid::methyl_oleate);
  EXPECT_EQ(liquid_state(f, 250.0, standard_atmosphere).status, LiquidStatus::out_of_range);
  EXPECT_EQ(liquid_state(f, 360.0, standard_atmosphere).status, LiquidStatus::out_of_range);
  EXPECT_EQ(liquid_state(f, 288.15, 0.0).status, LiquidStatus::out_of_range);
  EXPECT_EQ(liquid_state(f, 288.15, 60e6).status, LiquidStatus::out_of_range);
  EXPECT_TRUE(std::isnan(liquid_state(f, 250.0, standard_atmosphere).density));
}

}  // namespace
}  // namespace forecourse::fuel
