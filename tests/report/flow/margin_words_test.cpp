// How far the fuel stands from boiling, in words.
#include "forecourse/report/flow/spans/margin_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace forecourse::report {
namespace {

studies::FlowResult sample() {
  studies::FlowResult result;
  studies::VaporMargin known;
  known.system = "regular";
  known.place = "inlet of pump P1";
  known.temperature = 300.0;
  known.atmospheric = 80000.0;
  known.atmospheric_from = "entered";
  known.pressure_absolute = 90000.0;
  known.vapor_pressure = 50000.0;
  known.margin = 40000.0;
  studies::VaporMargin missing;
  missing.system = "diesel";
  missing.place = "inlet of pump P2";
  missing.reason = "where its inlet sits is not known";
  result.spans.margins = {known, missing};
  return result;
}

TEST(MarginWords, TellWhatIsKnownAndWhyTheRestIsNot) {
  const auto rows = margin_rows(sample(), site::Display::si, Glyphs::ascii);
  ASSERT_EQ(rows.size(), 2U);
  EXPECT_EQ(rows[0].place, "regular, inlet of pump P1");
  EXPECT_EQ(rows[0].absolute, "90");
  EXPECT_EQ(rows[0].vapor, "50");
  EXPECT_EQ(rows[0].margin, "40");
  EXPECT_TRUE(rows[0].reason.empty());
  EXPECT_EQ(rows[1].margin, "-");
  EXPECT_EQ(rows[1].reason, "where its inlet sits is not known");
}

TEST(MarginWords, AirIsToldOnceWithItsOrigin) {
  EXPECT_THAT(air_in_words(sample(), site::Display::si, Glyphs::ascii),
              testing::StartsWith("Air at 80 kPa absolute, entered. "));
  EXPECT_TRUE(air_in_words({}, site::Display::si).empty());
}

}  // namespace
}  // namespace forecourse::report
