// Closed forms of filling, wave speeds, and a second computation (fill_reference.py: computed, not published).
// SOURCE: [surge_analysis, wave speed in rigid pipe]
#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/network/build.h"
#include "forecourse/network/pack/line_pack.h"
#include "forecourse/studies/flow/rest/fill_time.h"
#include "forecourse/studies/flow/rest/rest.h"
#include "support/stations.h"

namespace forecourse::studies {
namespace {

using network::compliance_of;
using network::Conduit;
using network::volume_of;

const auto constant = [](double q) { return [q](double) { return q; }; };

TEST(TimeToPump, ConstantFlowIsVolumeOverFlow) {
  EXPECT_NEAR(*time_to_pump({0.0, 0.05, 0.12}, constant(2e-3), {}), 60.0, 1e-9);
}

TEST(TimeToPump, DetectorHoldsTheFlowUntilItHasOpened) {
  const Detector detector{2e-4, 4.0};
  EXPECT_NEAR(*time_to_pump({0.0, 6e-4}, constant(2e-3), detector), 3.0, 1e-9);
  EXPECT_NEAR(*time_to_pump({0.0, 0.1}, constant(2e-3), detector), 4.0 + (0.1 - 8e-4) / 2e-3, 1e-6);
  EXPECT_NEAR(*time_to_pump({0.0, 0.1}, constant(2e-3), Detector{0.0, 4.0}), 54.0, 1e-9);
}

// dt = dV / (q0 (1 - V/V1)): t = -V1/q0 ln(1 - V/V1).
TEST(TimeToPump, FallingFlowAgreesWithItsClosedForm) {
  const auto flow = [](double v) { return 2e-3 * (1.0 - v / 0.2); };
  EXPECT_NEAR(*time_to_pump({0.0, 0.1}, flow, {}), -0.2 / 2e-3 * std::log(0.5), 1e-4);
  EXPECT_FALSE(time_to_pump({0.0, 0.3}, flow, {}).has_value());
}

TEST(Compliance, GivesTheWaveSpeedsOfTheSources) {
  const Conduit rigid{1.0, 0.1, 1.0, 1e30, {}};
  EXPECT_NEAR(std::sqrt(volume_of(rigid) / (900.0 * *compliance_of(rigid, 900.0, 1.5e9))), 1290.99444874, 1e-5);
  const Conduit soft{1.0, 0.05, 0.004, 1e10, {}};  // computed, not published
  EXPECT_NEAR(std::sqrt(volume_of(soft) / (740.0 * *compliance_of(soft, 740.0, 1.3e9))), 818.071311, 1e-4);
  EXPECT_FALSE(compliance_of({1.0, 0.05, {}, 1e10, {}}, 740.0, 1.3e9).has_value());
}

const char* const station_text = R"(format = 1
[[product]]
id = "regular"
kind = "gasoline-e0"
density = "745 kg/m3"
viscosity = "0.6 mPa.s"
isothermal_bulk_modulus = "1 GPa"
[[tank]]
id = "T1"
product = "regular"
surface_elevation = "-2.5 m"
[[pump]]
id = "P1"
tank = "T1"
curve = { shutoff = "200 kPa", per_flow_squared = "4e9 Pa.s2/m6" }
check_valve = true
discharge_elevation = "-1 m"
leak_detector = { opening_time = "4 s", restricted = "0.2 L/s", loss = 0 }
[[line]]
id = "line"
from = "P1"
to = "D1.regular"
length = "60 m"
bore = "52.5 mm"
roughness = "0.045 mm"
wall = "4 mm"
modulus = "10 GPa"
loss = 4
[[dispenser]]
id = "D1"
elevation = "0.2 m"
  [[dispenser.inlet]]
  product = "regular"
  line_elevation = "-1 m"
  riser = { length = "1.2 m", bore = "40.9 mm", roughness = "0.045 mm", wall = "4 mm", modulus = "200 GPa", loss = 3 }
  [[dispenser.hose]]
  id = "D1.a"
  product = "regular"
  outlet_elevation = "0.9 m"
  curb = { length = "3.5 m", bore = "19 mm", roughness = "0.0015 mm" }
)";

std::vector<LineAtRest> at_rest(std::string text) {
  const std::string loss = ", loss = 0";
  if (const auto found = text.find(loss); found != std::string::npos) text.erase(found, loss.size());
  text.replace(text.find("restricted = \"0.2 L/s\""), 22, "restricted = \"0.2 L/s\", loss = \"0 kPa.min^2/L^2\"");
  const site::Site site = test::station(text);
  return lines_at_rest(site, network::build_network(site));
}

TEST(LineAtRest, EmptyLineFillsAsTheSecondComputationSays) {
  const RestHose hose = at_rest(station_text).front().hoses.front();
  ASSERT_TRUE(hose.empty.time.has_value()) << hose.empty.reason;
  EXPECT_NEAR(*hose.empty.without_detector, 21.853556737, 2e-3);  // the flow passes Re 2000 to 4000 nowhere
  EXPECT_NEAR(*hose.empty.time, 25.737089237, 2e-3);
}

TEST(LineAtRest, HeldLineStandsAtShutoffAndDecayedAtTheLiquid) {
  const LineAtRest rest = at_rest(station_text).front();
  ASSERT_TRUE(rest.held_pressure.has_value()) << rest.held_by;
  EXPECT_NEAR(*rest.held_pressure, 200e3, 1e-6);
  const RestPlace& pump = rest.places.front();
  EXPECT_NEAR(*pump.held_gauge, 200e3 - 745.0 * 9.80665 * 1.5, 1e-6);
  EXPECT_NEAR(*pump.decayed_gauge, -745.0 * 9.80665 * 1.5, 1e-6);
  EXPECT_TRUE(pump.below_atmosphere);
  EXPECT_EQ(*rest.hoses.front().held.time, 0.0);
  const double packed = *rest.line_compliance * 745.0 * 9.80665 * 3.4;
  EXPECT_NEAR(*rest.hoses.front().decayed.time, packed / 0.2e-3, 1e-9);
}

}  // namespace
}  // namespace forecourse::studies
