// SOURCE: [noaa_oil_data, records EX00009 to EX00047] measured viscosities at 20, 40 and 50 degC
#include "forecourse/fuel/viscosity.h"

#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/base/api_units.h"
#include "support/check_values.h"

namespace forecourse::fuel {
namespace {

using test::CheckRow;
using test::input_number;

ViscosityLaw law_through(double celsius_1, double centistoke_1, double celsius_2, double centistoke_2) {
  return fit_viscosity_law(kelvin_from_celsius(celsius_1), square_meter_per_second_from_centistoke(centistoke_1),
                           kelvin_from_celsius(celsius_2), square_meter_per_second_from_centistoke(centistoke_2));
}

double centistoke_at(const ViscosityLaw& law, double celsius) {
  return centistoke_from_square_meter_per_second(kinematic_viscosity(law, kelvin_from_celsius(celsius)).value);
}

TEST(Viscosity, PredictsMeasuredValuesBetweenTwoPoints) {
  const auto rows = test::rows_starting("VISC-EX");
  EXPECT_EQ(rows.size(), 6u);
  for (const CheckRow& check : rows) {
    const ViscosityLaw law = law_through(20.0, input_number(check, "nu20"), 50.0, input_number(check, "nu50"));
    // the row states 0.1 % above 2 mm2/s and 1 % below 1.5 mm2/s; no row lies between
    const double relative = check.number() > 2.0 ? 0.001 : 0.01;
    EXPECT_TRUE(test::agrees(check, centistoke_at(law, 40.0), {0.0, relative}));
  }
}

TEST(Viscosity, ExtrapolatesAsASecondComputation) {
  const auto rows = test::rows_starting("VISC-D341");
  EXPECT_EQ(rows.size(), 3u);
  for (const CheckRow& check : rows) {
    const ViscosityLaw law = law_through(40.0, input_number(check, "nu40"), 100.0, input_number(check, "nu100"));
    EXPECT_TRUE(test::agrees(check, centistoke_at(law, input_number(check, "t"))));
  }
}

TEST(Viscosity, GoesThroughBothPointsAndFallsWithTemperature) {
  const ViscosityLaw law = law_through(15.0, 4.7, 60.0, 1.8);
  EXPECT_NEAR(centistoke_at(law, 15.0), 4.7, 1e-12);  // rounding of the logarithms
  EXPECT_NEAR(centistoke_at(law, 60.0), 1.8, 1e-12);
  for (double celsius = -20.0; celsius < 100.0; celsius += 5.0) {
    EXPECT_GT(centistoke_at(law, celsius), centistoke_at(law, celsius + 5.0));
  }
}

TEST(Viscosity, SaysSoBelowZeroPointSeven) {
  const ViscosityLaw gasoline = law_through(20.0, 0.65894, 50.0, 0.50403);
  EXPECT_EQ(kinematic_viscosity(gasoline, kelvin_from_celsius(40.0)).status, ViscosityStatus::low_viscosity);
  const ViscosityLaw diesel = law_through(40.0, 2.5, 100.0, 1.0);
  EXPECT_EQ(kinematic_viscosity(diesel, kelvin_from_celsius(20.0)).status, ViscosityStatus::ok);
}

TEST(Viscosity, RefusesPointsThatCarryNoLaw) {
  EXPECT_EQ(law_through(20.0, 3.0, 20.0, 2.0).status, ViscosityStatus::not_determined);
  EXPECT_EQ(law_through(20.0, 2.0, 50.0, 3.0).status, ViscosityStatus::not_determined);
  EXPECT_EQ(law_through(20.0, 0.29, 50.0, 0.2).status, ViscosityStatus::not_determined);
  const KinematicViscosity nothing = kinematic_viscosity(law_through(20.0, 2.0, 50.0, 3.0), 300.0);
  EXPECT_EQ(nothing.status, ViscosityStatus::not_determined);
  EXPECT_TRUE(std::isnan(nothing.value));
}

}  // namespace
}  // namespace forecourse::fuel
