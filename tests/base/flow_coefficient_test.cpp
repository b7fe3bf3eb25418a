// SOURCE: [isa_75_01, definition of the flow coefficient] [fluids_library, fluids/fittings.py]
#include "forecourse/base/flow_coefficient.h"

#include <gtest/gtest.h>

namespace forecourse {
namespace {

TEST(FlowCoefficient, RatioOfCvToKvIsThePublishedOne) {
  // The library prints 1.1560992283536566 for Cv = this Kv; it rounds the pound-force in the eleventh digit.
  EXPECT_NEAR(flow_area_from_kv(1.0) / flow_area_from_cv(1.0), 1.1560992283536566, 1e-10);
}

TEST(FlowCoefficient, KvOfTheStandardIs0_865Cv) {
  EXPECT_NEAR(flow_area_from_cv(1.0) / flow_area_from_kv(1.0), 0.865, 5e-4);  // half of the last digit
}

TEST(FlowCoefficient, InchesOfANominalTwoInchPipe) { EXPECT_DOUBLE_EQ(in_inches(0.0508), 2.0); }

}  // namespace
}  // namespace forecourse
