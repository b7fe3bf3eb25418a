// SOURCE: [api_11_1_2004, 11.1.6.1], [oiml_r22, general formula], [afdc_fuel_properties, table]
#include "forecourse/fuel/properties.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/base/api_units.h"
#include "forecourse/fuel/ethanol_density.h"
#include "forecourse/fuel/published_ranges.h"
#include "forecourse/fuel/vapor_pressure.h"
#include "forecourse/fuel/volume_correction.h"

namespace forecourse::fuel {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using Status = PropertyStatus;

const double at_60 = kelvin_from_fahrenheit(60.0);
const double at_80 = kelvin_from_fahrenheit(80.0);
const double line_pressure = pascal_from_psi(30.0);

constexpr Kind all_kinds[] = {Kind::gasoline_e0,  Kind::gasoline_e5, Kind::diesel_b7, Kind::gasoline_e10,
                              Kind::gasoline_e15, Kind::e85,         Kind::ethanol,   Kind::diesel_b0,
                              Kind::diesel_b5,    Kind::diesel_b20,  Kind::other};

TEST(Kinds, NamesLeadThereAndBack) {
  for (Kind kind : all_kinds) EXPECT_EQ(kind_from_name(kind_name(kind)), kind);
  EXPECT_EQ(kind_name(Kind::gasoline_e10), "gasoline-e10");
  EXPECT_EQ(kind_from_name("gasoline-e11"), std::nullopt);
}

TEST(Properties, NotDeterminedMeansNotANumberAndHasAReason) {
  for (Kind kind : all_kinds) {
    const Properties p = properties_of(kind, {}, at_80, line_pressure);
    for (const Property* one : {&p.density, &p.base_density, &p.dynamic_viscosity, &p.true_vapor_pressure,
                                &p.isothermal_bulk_modulus, &p.thermal_expansion}) {
      EXPECT_EQ(std::isnan(one->value), !one->determined()) << kind_name(kind);
      EXPECT_FALSE(one->source.empty()) << kind_name(kind);
    }
  }
}

TEST(Properties, EnteredDensityWithoutTemperatureHoldsAsItIs) {
  for (Kind kind : all_kinds) {
    const Properties p = properties_of(kind, {.density = 741.5}, at_80, line_pressure);
    EXPECT_EQ(p.density.value, 741.5) << kind_name(kind);
    EXPECT_EQ(p.density.status, Status::entered);
  }
}

TEST(Properties, EnteredDensityAtAStateLeadsToTheBaseAndBack) {
  const Properties here = properties_of(Kind::gasoline_e0, {.density = 730.0}, at_80, line_pressure);
  EXPECT_NEAR(here.base_density.value, 739.940206, 1e-6);  // as row VCF-inv-730
  const Properties there = properties_of(
      Kind::gasoline_e0, {.density = here.base_density.value, .density_temperature = at_60}, at_80, line_pressure);
  EXPECT_NEAR(there.density.value, 730.0, 1e-6);  // base temperature on ITPS-68 is printed to 1e-7 degF
  EXPECT_EQ(there.density.status, Status::computed);
}

TEST(Properties, ApiGravityIsCarriedToTheFlowingState) {
  const Properties p = properties_of(Kind::diesel_b0, {.api_gravity = 35.0}, at_80, 0.0);
  const double base = density_from_api_gravity(35.0);
  EXPECT_DOUBLE_EQ(p.base_density.value, base);
  EXPECT_DOUBLE_EQ(p.density.value, density_at(ProductGroup::fuel_oil, base, at_80, 0.0));
  EXPECT_EQ(p.density.status, Status::computed);
  EXPECT_THAT(p.density.source, HasSubstr("API gravity"));
}

TEST(Properties, BlendsAreSaidToBeAnApproximation) {
  for (Kind kind : {Kind::gasoline_e10, Kind::diesel_b5, Kind::diesel_b20}) {
    const Properties p = properties_of(kind, {.density = 800.0, .density_temperature = at_60}, at_80, 0.0);
    EXPECT_EQ(p.density.status, Status::approximation) << kind_name(kind);
    EXPECT_EQ(p.isothermal_bulk_modulus.status, Status::approximation);
    EXPECT_THAT(p.warnings, Contains(HasSubstr("approximation")));
  }
  const Properties plain = properties_of(Kind::gasoline_e0, {.api_gravity = 60.0, .dynamic_viscosity = 4e-4}, at_80, 0);
  EXPECT_THAT(plain.warnings, IsEmpty());
}

TEST(Properties, DefaultsAreIllustrativeAndSayTheirRange) {
  const Properties gasoline = properties_of(Kind::gasoline_e10, {}, at_60, 0.0);
  EXPECT_EQ(gasoline.density.status, Status::illustrative);
  EXPECT_NEAR(gasoline.density.value, density_from_relative_density(0.75), 1e-6);  // 60 degF, 0 gauge: as it is
  EXPECT_THAT(gasoline.density.source, HasSubstr("0.72 .. 0.78"));
  EXPECT_EQ(gasoline.dynamic_viscosity.value, gasoline_viscosity.middle());
  EXPECT_THAT(gasoline.dynamic_viscosity.source, HasSubstr("0.37 .. 0.44"));
  EXPECT_EQ(gasoline.true_vapor_pressure.status, Status::illustrative);
  EXPECT_THAT(gasoline.true_vapor_pressure.source, HasSubstr("8 .. 15 psi"));
  const Properties diesel = properties_of(Kind::diesel_b5, {}, at_60, 0.0);
  EXPECT_EQ(diesel.dynamic_viscosity.status, Status::illustrative);
  EXPECT_EQ(diesel.true_vapor_pressure.status, Status::approximation);
  EXPECT_EQ(diesel.density.status, Status::illustrative);
}

TEST(Properties, E15AndE85AndOthersStayNotDeterminedWithoutEntries) {
  for (Kind kind : {Kind::gasoline_e15, Kind::e85, Kind::other}) {
    const Properties p = properties_of(kind, {}, at_60, 0.0);
    for (const Property* one :
         {&p.density, &p.dynamic_viscosity, &p.true_vapor_pressure, &p.isothermal_bulk_modulus, &p.thermal_expansion}) {
      EXPECT_FALSE(one->determined()) << kind_name(kind);
    }
    EXPECT_THAT(p.warnings, Not(IsEmpty()));
  }
}

TEST(Properties, E85TakesWhatIsEntered) {
  const EnteredProperties entered{.density = 785.0,
                                  .dynamic_viscosity = 1.0e-3,
                                  .true_vapor_pressure = 3.0e4,
                                  .isothermal_bulk_modulus = 0.9e9,
                                  .thermal_expansion = 1.1e-3};
  const Properties p = properties_of(Kind::e85, entered, at_80, 0.0);
  for (const Property* one :
       {&p.density, &p.dynamic_viscosity, &p.true_vapor_pressure, &p.isothermal_bulk_modulus, &p.thermal_expansion}) {
    EXPECT_EQ(one->status, Status::entered);
  }
  EXPECT_THAT(p.warnings, IsEmpty());
}

TEST(Properties, E85DensityAtAnotherTemperatureNeedsAnExpansion) {
  EnteredProperties entered{.density = 785.0, .density_temperature = at_60};
  EXPECT_FALSE(properties_of(Kind::e85, entered, at_80, 0.0).density.determined());
  EXPECT_EQ(properties_of(Kind::e85, entered, at_60, 0.0).density.value, 785.0);
  entered.thermal_expansion = 1.1e-3;
  const Properties carried = properties_of(Kind::e85, entered, at_80, 0.0);
  EXPECT_EQ(carried.density.status, Status::approximation);
  EXPECT_NEAR(carried.density.value, 785.0 / (1.0 + 1.1e-3 * (at_80 - at_60)), 1e-9);  // rounding
}

TEST(Properties, EthanolFollowsPublishedEquations) {
  const Properties p = properties_of(Kind::ethanol, {}, at_60, 0.0);
  EXPECT_NEAR(p.density.value, ethanol_water_density(1.0, at_60), 1e-9);  // no pressure, no compression
  EXPECT_EQ(p.density.status, Status::computed);
  EXPECT_NEAR(p.isothermal_bulk_modulus.value, 0.918e9, 0.01e9);  // EOS-Ethanol-KT-15, 0.6 K colder
  EXPECT_EQ(p.dynamic_viscosity.status, Status::published);
  EXPECT_FALSE(p.true_vapor_pressure.determined());
  const Properties hot = properties_of(Kind::ethanol, {}, kelvin_from_celsius(45.0), 0.0);
  EXPECT_FALSE(hot.density.determined());
}

TEST(Properties, VaporPressureComesFromTheEnteredReid) {
  const double reid = pascal_from_psi(9.0);
  const Properties e0 = properties_of(Kind::gasoline_e0, {.reid_vapor_pressure = reid}, at_80, 0.0);
  EXPECT_DOUBLE_EQ(e0.true_vapor_pressure.value, true_vapor_pressure_refined(reid, motor_gasoline_slope, at_80));
  EXPECT_EQ(e0.true_vapor_pressure.status, Status::computed);
  const Properties e10 = properties_of(Kind::gasoline_e10, {.reid_vapor_pressure = reid}, at_80, 0.0);
  EXPECT_EQ(e10.true_vapor_pressure.status, Status::approximation);
  const Properties e85 = properties_of(Kind::e85, {.reid_vapor_pressure = reid}, at_80, 0.0);
  EXPECT_FALSE(e85.true_vapor_pressure.determined());
  EXPECT_THAT(e85.warnings, Contains(HasSubstr("Reid is not used")));
}

TEST(Properties, ViscosityComesFromEnteredPoints) {
  const ViscosityLaw law = fit_viscosity_law(kelvin_from_celsius(40.0), 2.5e-6, kelvin_from_celsius(100.0), 1.0e-6);
  const Properties p = properties_of(Kind::diesel_b0, {.density = 850.0, .viscosity_law = law}, at_60, 0.0);
  EXPECT_DOUBLE_EQ(p.dynamic_viscosity.value, 850.0 * kinematic_viscosity(law, at_60).value);
  EXPECT_EQ(p.dynamic_viscosity.status, Status::computed);
}

TEST(Properties, LeavesTheLimitsOfTheMethodNotDetermined) {
  const Properties hot = properties_of(Kind::gasoline_e0, {}, kelvin_from_fahrenheit(310.0), 0.0);
  EXPECT_FALSE(hot.density.determined());
  EXPECT_FALSE(hot.thermal_expansion.determined());
  EXPECT_THAT(hot.warnings, Contains(HasSubstr("temperature outside -58 .. 302 degF")));
  const Properties light = properties_of(Kind::gasoline_e0, {.density = 500.0}, at_60, 0.0);
  EXPECT_EQ(light.density.value, 500.0);  // entered at the flowing state: stands
  EXPECT_FALSE(light.isothermal_bulk_modulus.determined());
  EXPECT_THAT(light.warnings, Contains(HasSubstr("base density outside")));
}

TEST(Properties, SaysWhenDensityAndGravityAreBothEntered) {
  const Properties p = properties_of(Kind::gasoline_e0, {.density = 740.0, .api_gravity = 70.0}, at_60, 0.0);
  EXPECT_EQ(p.density.value, 740.0);
  EXPECT_THAT(p.warnings, Contains(HasSubstr("both entered")));
}

TEST(Properties, SaysWhenADefaultOrALawIsUsedBeyondItsTable) {
  const Properties inside = properties_of(Kind::gasoline_e0, {.reid_vapor_pressure = 6e4}, at_60, 0.0);
  EXPECT_THAT(inside.warnings, IsEmpty());
  const Properties cold = properties_of(Kind::gasoline_e0, {.reid_vapor_pressure = 6e4}, 275.0, 0.0);  // 35 degF
  EXPECT_THAT(cold.warnings, Contains(HasSubstr("AP-42 tabulates 40 .. 100 degF")));
  EXPECT_THAT(cold.warnings, Contains(HasSubstr("viscosity: the default holds at 60 degF")));
  EXPECT_EQ(properties_of(Kind::ethanol, {}, 275.0, 0.0).dynamic_viscosity.status, Status::illustrative);
}

TEST(Properties, PressureCompressesEthanolByItsIsothermalModulus) {
  const Properties slack = properties_of(Kind::ethanol, {}, at_60, 0.0);
  const Properties pressed = properties_of(Kind::ethanol, {}, at_60, 1e6);
  const double strain = pressed.density.value / slack.density.value - 1.0;
  EXPECT_NEAR(strain, 1e6 / slack.isothermal_bulk_modulus.value, 2e-5);  // the modulus rises by 1 % on the way
}

TEST(Properties, StatusHasAWord) {
  EXPECT_STREQ(status_word(Status::not_determined), "not determined");
  EXPECT_STREQ(status_word(Status::common_practice), "common practice");
}

}  // namespace
}  // namespace forecourse::fuel
