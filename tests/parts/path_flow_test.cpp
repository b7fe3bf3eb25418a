// SOURCE: [colebrook_1939, the transition law] by the exact inverse of the same laws
#include "forecourse/parts/path_flow.h"

#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/parts/inverse.h"
#include "forecourse/parts/pipe_friction.h"

namespace forecourse::parts {
namespace {

const PipeLaw vapor_hose = pipe_law({6.0, 0.0762, 1.5e-6, 2.0, 1.8e-5}, from_loss_coefficient(4.0, 0.0762, 2.0));
const PipeLaw fuel_hose = pipe_law({6.0, 0.1016, 1.5e-6, 740.0, 5e-4}, from_loss_coefficient(6.0, 0.1016, 740.0));

TEST(PathFlow, ItIsTheInverseOfItsLaws) {
  for (const PipeLaw& law : {vapor_hose, fuel_hose}) {
    const auto loss_at = [&](double q) { return loss(law, q); };
    const PathFlow path(loss_at, 0.1);
    double worst = 0.0;
    for (double q = 1e-5; q < 0.1; q *= 1.037) {
      worst = std::max(worst, std::abs(path.flow(loss_at(q).pressure_loss) / q - 1.0));
    }
    EXPECT_LT(worst, 1e-3);  // about Reynolds 2000 to 4000, where friction turns; elsewhere as below
    for (double q = 0.01; q < 0.1; q *= 1.037) {
      EXPECT_NEAR(path.flow(loss_at(q).pressure_loss), q, 1e-6 * q);
    }
  }
}

TEST(PathFlow, ItOpensAtWhatIsTakenAtNoFlow) {
  const QuadraticLaw b{0.0, 1e7};
  const PathFlow path([&](double q) { return Loss{750.0 + loss(b, q).pressure_loss, loss(b, q).slope}; }, 0.1);
  EXPECT_EQ(path.opens_at(), 750.0);
  EXPECT_EQ(path.flow(750.0), 0.0);
  EXPECT_NEAR(path.flow(750.0 + 1e7 * 4e-4), 0.02, 1e-12);  // a root is met exactly
  EXPECT_NEAR(path.flow(750.0 + 1e7 * 0.04), 0.2, 1e-9);    // beyond the last flow it goes on as one
}

TEST(PathFlow, NothingPassesAnEmptyOne) {
  EXPECT_TRUE(PathFlow().shut());
  EXPECT_EQ(PathFlow().flow(1e6), 0.0);
}

}  // namespace
}  // namespace forecourse::parts
