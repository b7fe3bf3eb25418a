#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "forecourse/studies/flow/flow.h"
#include "support/stations.h"

namespace forecourse::studies {
namespace {

/// Whoever asked went away at the n-th look: the study ends with what it has, and tells no flow that it does not know.
TEST(CancelledFlowStudy, EndsAtAnyMoment) {
  for (const char* name : {"hollin-gap", "marle-cross"}) {
    const site::Site site = test::station(test::site_text(name));
    for (int looks = 0; looks < 60; ++looks) {
      int left = looks;
      Context context;
      context.cancelled = [&left] { return left-- <= 0; };
      const FlowResult result = study_flow(site, {}, context);
      for (const Ladder& ladder : result.ladders) {
        for (const LadderStep& step : ladder.steps) {
          ASSERT_FALSE(step.hoses.empty()) << name << ", " << looks;
          for (const double flow : step.flow) EXPECT_TRUE(std::isnan(flow) || flow >= 0.0) << name << ", " << looks;
        }
      }
    }
  }
}

}  // namespace
}  // namespace forecourse::studies
