// SOURCE: [hooper_1981, table of constants] [darby_2001, table of constants] [lmno_k, table of minor loss coefficients]
#include "forecourse/parts/fittings.h"

#include <gtest/gtest.h>

#include <numbers>
#include <set>

#include "forecourse/parts/loss.h"
#include "support/check_values.h"

namespace forecourse::parts {
namespace {

using test::agrees;
using test::row;

TEST(Fittings, TwoConstantsAgreeWithASecondComputation) {
  const auto elbow = find_two_k("elbow 90 standard, threaded");
  ASSERT_TRUE(elbow);
  EXPECT_TRUE(agrees(row("K-hooper-90std"), loss_coefficient(*elbow, 1e5, 2.067 * 0.0254)));
}

TEST(Fittings, ThreeConstantsAgreeWithASecondComputation) {
  const auto elbow = find_three_k("elbow 90, threaded");
  ASSERT_TRUE(elbow);
  EXPECT_TRUE(agrees(row("K-darby-90std"), loss_coefficient(*elbow, 1e5, 2.0 * 0.0254)));
}

// Loss of a law in velocity heads at a Reynolds number.
double heads(const QuadraticLaw& law, double reynolds, double bore, double density, double viscosity) {
  const double velocity = reynolds * viscosity / (density * bore);
  const double flow = velocity * std::numbers::pi / 4.0 * bore * bore;
  return loss(law, flow).pressure_loss / (0.5 * density * velocity * velocity);
}

TEST(Fittings, LawIsTheCorrelationAtEveryReynoldsNumber) {
  const double bore = 0.0525, density = 740.0, viscosity = 5e-4, nominal = 0.0508;
  for (const double reynolds : {10.0, 500.0, 3000.0, 1e5, 1e7}) {
    for (const TwoK& fitting : two_k_table()) {
      const QuadraticLaw law = fitting_law(fitting, bore, density, viscosity);
      EXPECT_NEAR(heads(law, reynolds, bore, density, viscosity) / loss_coefficient(fitting, reynolds, bore), 1.0,
                  1e-13);  // rounding
    }
    for (const ThreeK& fitting : three_k_table()) {
      const QuadraticLaw law = fitting_law(fitting, nominal, bore, density, viscosity);
      EXPECT_NEAR(heads(law, reynolds, bore, density, viscosity) / loss_coefficient(fitting, reynolds, nominal), 1.0,
                  1e-13);  // rounding
    }
  }
}

TEST(Fittings, TurbulentElbowLiesInThePublishedRangeWithItsScatter) {
  const auto range = find_k_range("elbow 90, threaded");
  ASSERT_TRUE(range);
  const double k = loss_coefficient(*find_three_k("elbow 90, threaded"), 1e6, 0.0254);
  EXPECT_GT(k, 0.7 * range->lowest);  // published K scatter by -20 to +30 %
  EXPECT_LT(k, 1.3 * range->highest);
}

TEST(Fittings, NamesAreUniqueAndFound) {
  std::set<std::string_view> names;
  for (const KRange& entry : k_ranges()) {
    EXPECT_TRUE(names.insert(entry.name).second) << entry.name;
    EXPECT_LE(entry.lowest, entry.highest);
  }
  EXPECT_FALSE(find_two_k("no such fitting"));
  EXPECT_FALSE(find_three_k("no such fitting"));
  EXPECT_FALSE(find_k_range("no such fitting"));
}

}  // namespace
}  // namespace forecourse::parts
