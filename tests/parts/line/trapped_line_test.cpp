// SOURCE: [trapped_liquid_faq, printed 0.19 MPa/K at D/t 100]: TRAP rows of check_values.csv; the closed-ends form
// computed.
#include "forecourse/parts/line/trapped_line.h"

#include <gtest/gtest.h>

#include "support/check_values.h"

namespace forecourse::test {
namespace {

using namespace parts;

constexpr double mega = 1e6;

double printed_case(double bore_by_wall) {
  const double bulk_modulus = mega / 4e-4;
  if (bore_by_wall == 0.0) return pressure_per_degree(210e-6, 36e-6, 1.0 / bulk_modulus) / mega;
  return pressure_per_degree(210e-6, 36e-6, thin_line_yield(bulk_modulus, bore_by_wall, 1.0, 2e5 * mega)) / mega;
}

TEST(TrappedLine, MeetsTheRows) {
  EXPECT_TRUE(agrees(row("TRAP-100"), printed_case(100.0)));
  EXPECT_TRUE(agrees(row("TRAP-10"), printed_case(10.0)));
  EXPECT_TRUE(agrees(row("TRAP-0"), printed_case(0.0)));
  const double yield = closed_line_yield(0.914e9, 0.0525, 0.00391, 200e9, 0.3);
  EXPECT_TRUE(agrees(row("TRAP-gas-steel"), pressure_per_degree(0.0012, 3.0 * 1.17e-5, yield) / mega));
}

TEST(TrappedLine, APocketGivesWay) {
  EXPECT_DOUBLE_EQ(pocket_volume({1e-3, 1e5}, 2e5), 5e-4);
  EXPECT_DOUBLE_EQ(pressure_per_degree(0.0012, 0.0012, 1e-9), 0.0);  // a line that grows as the fuel does
}

}  // namespace
}  // namespace forecourse::test
