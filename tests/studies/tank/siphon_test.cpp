// SOURCE: closed form: two upright tanks joined by a bar of q = c sqrt(h), and of q = c h
#include "forecourse/studies/tank/siphon.h"

#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/base/unit_text.h"
#include "forecourse/parts/tank/equalizing.h"
#include "forecourse/site/read.h"

namespace forecourse::studies {
namespace {

parts::JoinedTanks two_upright(double a, double b, std::function<double(double)> law) {
  return {{{[a](double volume) { return volume / a; }, 0.0}, {[b](double volume) { return volume / b; }, 0.0}},
          {{0, 1, std::move(law)}}};
}

// dh/dt = -c (1/A + 1/B) sqrt(h): the root of the difference falls evenly, to nothing at a moment.
TEST(Equalizing, TurbulentBarByItsClosedForm) {
  const double a = 6.0, b = 10.0, c = 0.004, h0 = 1.2;
  const auto law = [c](double h) { return h > 0.0 ? c * std::sqrt(h) : -c * std::sqrt(-h); };
  const auto course = parts::joined_course(two_upright(a, b, law), {a * (1.0 + h0), b * 1.0}, 2000.0, 40);
  for (const parts::JoinedMoment& m : course) {
    const double root = std::max(0.0, std::sqrt(h0) - 0.5 * c * (1.0 / a + 1.0 / b) * m.time);
    EXPECT_NEAR(m.surfaces[0] - m.surfaces[1], root * root, 1e-6);  // 1e-9 m3 a step, some hundred steps
    EXPECT_NEAR(m.volumes[0] + m.volumes[1], a * (1.0 + h0) + b, 1e-9);
  }
}

TEST(Equalizing, LaminarBarByItsClosedForm) {
  const double a = 6.0, b = 10.0, c = 0.01, h0 = 1.2;
  const auto course =
      parts::joined_course(two_upright(a, b, [c](double h) { return c * h; }), {a * (1.0 + h0), b * 1.0}, 2000.0, 20);
  for (const parts::JoinedMoment& m : course)
    EXPECT_NEAR(m.surfaces[0] - m.surfaces[1], h0 * std::exp(-c * (1.0 / a + 1.0 / b) * m.time), 1e-6);
}

// A steady draw from A: B gives its share, and the bar's law says how much lower A lies.
TEST(Equalizing, ASteadyDrawTakesEachByItsArea) {
  const double a = 6.0, b = 10.0, c = 0.01, draw = 0.002;
  parts::JoinedTanks tanks = two_upright(a, b, [c](double h) { return c * h; });
  tanks.tanks[0].draw = draw;
  const auto last = parts::joined_course(tanks, {a * 2.0, b * 2.0}, 5000.0, 10).back();
  const double through = draw * b / (a + b);
  EXPECT_NEAR(parts::bar_flows(tanks, last)[0], -through, 1e-8);
  EXPECT_NEAR(last.surfaces[1] - last.surfaces[0], through / c, 1e-6);
}

site::Site siphoned(const std::string& bar) {
  const std::string shape =
      "shape = { kind = \"horizontal-cylinder\", inside_diameter = \"96 in\", length = \"27 ft\", heads = \"flat\" }\n"
      "bottom_elevation = \"-13 ft\"\n";
  const std::string text =
      "format = 1\n[[product]]\nid = \"regular\"\ndensity = \"740 kg/m3\"\nviscosity = \"0.50 mPa.s\"\n"
      "[[tank]]\nid = \"T1\"\nproduct = \"regular\"\n" +
      shape + "reading = { depth = \"60 in\" }\nsiphoned_with = [\"T2\"]\ngauge = { kind = \"automatic\" }\n" + bar +
      "[[tank]]\nid = \"T2\"\nproduct = \"regular\"\n" + shape +
      "reading = { depth = \"40 in\" }\n"
      "[[pump]]\nid = \"P1\"\ntank = \"T1\"\ncurve = { shutoff = \"30 psi\", per_flow_squared = \"0.002 psi/gpm^2\" "
      "}\n";
  return site::read_site(text).value;
}

TEST(Siphon, TanksFindOneLevelAndLoseIt) {
  const auto all =
      siphons(siphoned("siphon = { kind = \"siphon\", pipe = { length = \"20 ft\", bore = \"2 in\", roughness = "
                       "\"0.05 mm\" }, end_above_bottom = \"6 in\" }\n"),
              {to_si(20.0, "gpm")});
  ASSERT_EQ(all.size(), 1U);
  const SiphonTold& told = all.front();
  ASSERT_EQ(told.problem, "");
  EXPECT_EQ(told.gauge, "T1");
  // Alike and level: half of both together.
  EXPECT_NEAR(told.tanks[0].equal_volume, 0.5 * (told.tanks[0].volume + told.tanks[1].volume), 1e-9);
  ASSERT_TRUE(told.equal_after);
  EXPECT_GT(*told.equal_after, 60.0);
  ASSERT_EQ(told.draws.size(), 1U);
  // Alike tanks: toward half of the draw, which is not quite reached in the time it runs.
  EXPECT_LT(told.draws[0].bar_flow, 0.5 * to_si(20.0, "gpm"));
  EXPECT_GT(told.draws[0].bar_flow, 0.35 * to_si(20.0, "gpm"));
  EXPECT_GT(told.draws[0].difference, 0.0);
  EXPECT_LT(*told.draws[0].gauge_error, 0.0);  // the gauge stands in the lower tank
  EXPECT_NEAR(*told.lost_at, to_si(-13.0, "ft") + to_si(6.0, "in"), 1e-12);
  EXPECT_EQ(told.tanks[0].stranded, 0.0);
  EXPECT_GT(told.tanks[1].stranded, 0.0);
}

TEST(Siphon, WithoutABarNothingIsDetermined) {
  const auto all = siphons(siphoned(""), {to_si(20.0, "gpm")});
  ASSERT_EQ(all.size(), 1U);
  EXPECT_NE(all.front().problem.find("siphon = {"), std::string::npos);
}

}  // namespace
}  // namespace forecourse::studies
