// SOURCE: [carslaw_jaeger, well-stirred cylinder]: the CBP, LINE and LINELEAK rows of the check values, computed a
// second time by quadrature and by numerical inversion; closed form of one time constant.
#include "forecourse/parts/line/line_cooling.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "forecourse/base/api_units.h"
#include "support/check_values.h"

namespace forecourse::test {
namespace {

using namespace parts;

SoilCooling dimensionless(double alpha) { return {1.0, 1.0, alpha, 1.0}; }  // beta is the time

TEST(LineCooling, MeetsTheDimensionlessRows) {
  int held = 0;
  for (const CheckRow& check : rows_starting("CBP-")) {
    const std::size_t dash = check.id.find('-', 4);  // CBP-alpha-beta
    const double alpha = std::stod(check.id.substr(4, dash - 4));
    const double beta = std::stod(check.id.substr(dash + 1));
    EXPECT_TRUE(agrees(check, remaining(dimensionless(alpha), beta))) << check.id;
    ++held;
  }
  EXPECT_EQ(held, 18);
}

/// The ground and the fuel of the LINE rows.
SoilCooling cooling_of(const std::string& id) {
  SoilCooling out{0.0262, 1.5, 2.0e6, 1546600.0};
  if (id.find("3in") != std::string::npos) out.radius = 0.039;
  if (id.find("dry") != std::string::npos) {
    out.conductivity = 0.3;
    out.ground_heat = 1.4e6;
  }
  if (id.find("diesel") != std::string::npos) out.fuel_heat = 1596000.0;
  return out;
}

double hours_of(const std::string& id) { return 3600.0 * std::stod(id.substr(id.rfind('-') + 1)); }

TEST(LineCooling, MeetsTheRowsOfLines) {
  int held = 0;
  for (const CheckRow& check : rows_starting("LINE-")) {
    EXPECT_TRUE(agrees(check, remaining(cooling_of(check.id), hours_of(check.id)))) << check.id;
    ++held;
  }
  EXPECT_EQ(held, 32);
}

TEST(LineCooling, MeetsTheApparentLeaks) {
  int held = 0;
  for (const CheckRow& check : rows_starting("LINELEAK-")) {
    const SoilCooling law = cooling_of(check.id);
    const double volume = std::numbers::pi * law.radius * law.radius * 30.0;
    const double expansion = check.id.find("diesel") == std::string::npos ? 0.00121 : 0.00084;
    const double rate = volume * expansion * 5.5556 * fading(law, hours_of(check.id));
    // 1 percent: the row was got by differences of a rounded share.
    EXPECT_TRUE(agrees(check, rate * 3600.0 / cubic_meters_from_gallons(1.0), {0.0, 0.01})) << check.id;
    ++held;
  }
  EXPECT_EQ(held, 16);
}

TEST(LineCooling, FadingIsTheSlope) {
  for (const CoolingLaw& law : {CoolingLaw(SteadyCooling{5400.0}), CoolingLaw(cooling_of("2in-damp"))}) {
    for (const double t : {60.0, 1800.0, 40000.0}) {
      const double h = 1e-3 * t;
      // Central differences err by the third derivative: 1e-6 of the slope here; the integral by 1e-8 over the step.
      EXPECT_NEAR((remaining(law, t - h) - remaining(law, t + h)) / (2.0 * h), fading(law, t), 2e-5 * fading(law, t));
    }
  }
}

TEST(LineCooling, ThereAndBack) {
  for (const CoolingLaw& law : {CoolingLaw(SteadyCooling{5400.0}), CoolingLaw(cooling_of("3in-dry"))}) {
    for (const double t : {300.0, 7200.0}) {
      EXPECT_NEAR(time_until_remaining(law, remaining(law, t)), t, 1e-5 * t);
      EXPECT_NEAR(time_until_fading(law, fading(law, t)), t, 1e-5 * t);
    }
  }
}

TEST(LineCooling, BeginsWhole) {
  EXPECT_EQ(remaining(cooling_of("2in-damp"), 0.0), 1.0);
  EXPECT_GT(remaining(cooling_of("2in-damp"), 1e-3), 0.995);
  EXPECT_EQ(time_until_fading(SteadyCooling{100.0}, 1.0), 0.0);
}

}  // namespace
}  // namespace forecourse::test
