// SOURCE: [tp410, loss = K rho v2 / 2] [isa_75_01, definition of the flow coefficient]
#include "forecourse/parts/entered_loss.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace forecourse::parts {
namespace {

double loss_at(const EnteredLoss& entered, double density, double flow) {
  return loss(std::get<Law>(entered_law(entered, density)), flow).pressure_loss;
}

TEST(EnteredLoss, TheSameDeviceEnteredFiveWaysLosesTheSame) {
  // 1 L/s through a device that loses 20 kPa of gasoline in proportion to flow squared.
  const double flow = 1e-3, pressure = 2e4, density = 740.0, bore = 0.025;
  const double area = std::numbers::pi / 4.0 * bore * bore, velocity = flow / area;
  const double k = pressure / (0.5 * density * velocity * velocity);
  const double av = flow / std::sqrt(pressure / density);
  const EnteredLoss ways[] = {LossCoefficient{k, bore}, FlowArea{av}, LossAtFlow{pressure, flow},
                              LossPoints{{{flow, pressure}, {2.0 * flow, 4.0 * pressure}}},
                              QuadraticLaw{0.0, pressure / (flow * flow)}};
  for (const EnteredLoss& way : ways) EXPECT_NEAR(loss_at(way, density, flow), pressure, 1e-9) << way.index();
}

TEST(EnteredLoss, FaultyPointsAreHandedBack) {
  const auto made = entered_law(LossPoints{{{1e-3, 2.0}, {2e-3, 1.0}}}, 740.0);
  EXPECT_EQ(std::get<CurveFault>(made), (CurveFault{CurveFault::Kind::loss_falls, 1}));
}

}  // namespace
}  // namespace forecourse::parts
