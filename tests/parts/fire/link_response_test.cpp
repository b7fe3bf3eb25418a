// SOURCE: [nureg_1805_sheets, sprinkler activation sheet] [nist_correlation_guide, sprinkler activation time]
// SOURCE: [imo_a800, appendix 1, sensitivity and plunge oven]
#include "forecourse/parts/fire/link_response.h"

#include <gtest/gtest.h>

#include <cmath>
#include <utility>

#include "forecourse/base/api_units.h"
#include "forecourse/parts/fire/fire_plume.h"
#include "support/check_values.h"

namespace forecourse::parts {
namespace {

using test::agrees;
using test::row;

TEST(LinkResponse, GasOf600DegreesAt2MetersASecond) {
  // 100/sqrt(2) ln(580/528.9) = 6.52 s; asked for: 6.5 s within 2 %.
  EXPECT_NEAR(operating_time(HeatLink{100.0}, HotGas{580.0, 2.0}, 51.1), 6.5, 0.02 * 6.5);
}

TEST(LinkResponse, AgreesWithPublishedSheets) {
  const HotGas jet = ceiling_jet(262.5e3, 2.2, 2.09);
  EXPECT_TRUE(agrees(row("DET-spr-t"), operating_time(HeatLink{55.0}, jet, 68.0 - 16.6)));
  const double fixed = operating_time(HeatLink{306.0}, ceiling_jet(1e6, 3.0, 4.0),
                                      celsius_from_fahrenheit(128.0) - celsius_from_fahrenheit(77.0));
  EXPECT_TRUE(agrees(row("DET-fth-t"), fixed));
  EXPECT_TRUE(agrees(row("DET-smk-t"), operating_time(HeatLink{5.0}, ceiling_jet(10.23e3, 1.3, 2.1), 10.0)));
  const HotGas faster{jet.rise, jet.speed * 0.197 / 0.195};
  EXPECT_TRUE(agrees(row("DET-nist-t"), operating_time(HeatLink{55.0}, faster, 68.0 - 16.6)));
}

TEST(LinkResponse, AgreesWithASecondComputation) {
  const HotGas jet = ceiling_jet(2e6, 1.0, 2.5);
  const double rise = celsius_from_fahrenheit(165.0) - 20.0;
  EXPECT_TRUE(agrees(row("DET-165F-34"), operating_time(HeatLink{34.0}, jet, rise)));
  EXPECT_TRUE(agrees(row("DET-165F-130"), operating_time(HeatLink{130.0}, jet, rise)));
}

// The oven of the PLUNGE rows: 2.5 m/s, 127 degC, start 20 degC, rated 73.9 degC.
const HotGas oven{107.0, 2.5};
constexpr double to_rating = 53.9;

TEST(LinkResponse, PlungeTimesAgreeWithASecondComputation) {
  const auto rows = test::rows_starting("PLUNGE-");
  EXPECT_EQ(rows.size(), 7U);
  for (const auto& check : rows) {
    const auto dash = check.id.rfind('-');
    const HeatLink link{std::stod(check.id.substr(7, dash - 7)), std::stod(check.id.substr(dash + 1))};
    EXPECT_TRUE(agrees(check, operating_time(link, oven, to_rating))) << check.id;
    EXPECT_NEAR(response_index(check.number(), oven, to_rating, link.conduction) / link.response_index, 1.0, 1e-6);
  }
}

// An oven of the requirement and the ratings it is for [degC]; 2.5 m/s and a start at 20 degC are those above.
struct Oven {
  const char* row;
  double lowest_rating, highest_rating;
};

// What a link of an index takes at the ends of the band: fastest and slowest [s].
std::pair<double, double> times_in(const Oven& oven_of, double index) {
  const auto [cool, hot] = test::parse_range(row(oven_of.row).expected);
  return {operating_time(HeatLink{index}, HotGas{hot - 20.0, 2.5}, oven_of.lowest_rating - 20.0),
          operating_time(HeatLink{index}, HotGas{cool - 20.0, 2.5}, oven_of.highest_rating - 20.0)};
}

TEST(LinkResponse, OvensOfTheRequirementLetEveryRatingGo) {
  const Oven ovens[] = {{"A800-plunge-57", 57, 57},
                        {"A800-plunge-58-77", 58, 77},
                        {"A800-plunge-78-107", 78, 107},
                        {"A800-plunge-121-149", 121, 149},
                        {"A800-plunge-163-191", 163, 191}};
  for (const Oven& each : ovens) {
    const auto [fast, slow] = times_in(each, special_response_mean[1]);
    EXPECT_LT(fast, slow) << each.row;
    EXPECT_LT(slow, 60.0) << each.row;  // 43 s at most
    EXPECT_GT(times_in(each, special_response_mean[0]).first, 8.0) << each.row;
    test::count_check(row(each.row));
  }
}

TEST(LinkResponse, PublishedFiguresAreAsPrinted) {
  const auto generic = test::parts_of(row("DET-rti").expected);
  for (std::size_t i = 0; i < sprinkler_indices.size(); ++i) {
    EXPECT_EQ(sprinkler_indices[i].response_index, std::stod(generic[i]));
  }
  test::count_check(row("DET-rti"));
  EXPECT_TRUE(agrees(row("A800-RTI-special-lo"), special_response_mean[0], {}));
  EXPECT_TRUE(agrees(row("A800-RTI-special-hi"), special_response_mean[1], {}));
  EXPECT_TRUE(agrees(row("A800-RTI-special-anylo"), special_response_single[0], {}));
  EXPECT_TRUE(agrees(row("A800-RTI-special-anyhi"), special_response_single[1], {}));
}

TEST(LinkResponse, NeverLetsGoInGasThatIsTooCool) {
  EXPECT_TRUE(std::isinf(operating_time(HeatLink{100.0}, HotGas{51.0, 2.0}, 51.1)));
  EXPECT_TRUE(std::isinf(operating_time(HeatLink{100.0}, HotGas{51.1, 2.0}, 51.1)));
  EXPECT_TRUE(std::isfinite(operating_time(HeatLink{100.0}, HotGas{52.0, 2.0}, 51.1)));
  EXPECT_TRUE(std::isinf(operating_time(HeatLink{100.0, 1.0}, HotGas{52.0, 2.0}, 51.1)));
  EXPECT_TRUE(std::isinf(operating_time(HeatLink{100.0}, HotGas{500.0, 0.0}, 51.1)));
  EXPECT_TRUE(std::isinf(operating_time(HeatLink{100.0, 1.0}, HotGas{500.0, 0.0}, 51.1)));
  EXPECT_EQ(operating_time(HeatLink{100.0}, HotGas{500.0, 2.0}, 0.0), 0.0);
  EXPECT_TRUE(std::isnan(response_index(10.0, HotGas{50.0, 2.0}, 51.1, 0.0)));
}

TEST(LinkResponse, RateIntegratesToTheClosedForm) {
  const HeatLink link{150.0, 1.0};
  const double end = operating_time(link, oven, to_rating), step = end / 1000.0;
  double rise = 0.0;
  for (int i = 0; i < 1000; ++i) {  // midpoint rule
    rise += step * heating_rate(link, oven, rise + 0.5 * step * heating_rate(link, oven, rise));
  }
  EXPECT_NEAR(rise, to_rating, 1e-4);  // second order: (1e-3)^2 of 100 K
  EXPECT_NEAR(link_rise_after(link, oven, end), to_rating, 1e-10);
}

TEST(LinkResponse, RateVanishesAtTheLeastGasRise) {
  const HeatLink link{150.0, 1.0};
  const double least = least_gas_rise(link, 2.5, to_rating);
  EXPECT_NEAR(heating_rate(link, HotGas{least, 2.5}, to_rating), 0.0, 1e-13);
  EXPECT_LT(heating_rate(link, HotGas{0.0, 2.5}, 10.0), 0.0);  // cools in cool air
}

TEST(RadiatedLink, KeepsTheBalanceOfHeat) {
  const RadiatedLink link{8e3, 4e3, 25.0};
  const double end = operating_time(link, 54.0), step = end / 1000.0;
  double rise = 0.0;
  for (int i = 0; i < 1000; ++i) rise += step * heating_rate(link, rise + 0.5 * step * heating_rate(link, rise));
  EXPECT_NEAR(rise, 54.0, 1e-4);  // second order
}

TEST(RadiatedLink, NeverLetsGoWhereTheAirCoolsItEnough) {
  EXPECT_TRUE(std::isinf(operating_time(RadiatedLink{1e3, 4e3, 25.0}, 54.0)));  // 40 K at most
  EXPECT_DOUBLE_EQ(operating_time(RadiatedLink{1e3, 4e3, 0.0}, 54.0), 216.0);   // no cooling: 4e3 * 54 / 1e3
  EXPECT_TRUE(std::isinf(operating_time(RadiatedLink{0.0, 4e3, 0.0}, 54.0)));
}

}  // namespace
}  // namespace forecourse::parts
