// SOURCE: common practice, no source: figures that an independent script computed (96 in by 260 in); closed forms
#include "forecourse/studies/tank/tank.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/tank_checks.h"
#include "forecourse/site/read.h"

namespace forecourse::studies {
namespace {

constexpr double inch = 0.0254;

double gallons(double si) { return from_si(si, "gal"); }

site::Site site_of(const std::string& more) {
  const std::string text =
      "format = 1\n[site]\nrules = [\"us-federal\"]\n[[product]]\nid = \"regular\"\ndensity = \"740 kg/m3\"\nviscosity "
      "= \"0.50 mPa.s\"\n" +
      more;
  auto read = site::read_site(text);
  std::erase_if(read.diagnostics, [](const Diagnostic& d) { return d.severity != Severity::error; });
  for (const Diagnostic& d : read.diagnostics) ADD_FAILURE() << d.message;
  return read.value;
}

const std::string level_tank =
    "[[tank]]\nid = \"T1\"\nproduct = \"regular\"\n"
    "shape = { kind = \"horizontal-cylinder\", inside_diameter = \"96 in\", length = \"260 in\", heads = \"flat\" }\n"
    "reading = { depth = \"50 in\" }\n";

const std::string pitched_tank =
    "[[tank]]\nid = \"T1\"\nproduct = \"regular\"\n"
    "shape = { kind = \"horizontal-cylinder\", inside_diameter = \"96 in\", length = \"400 in\", heads = \"dished\", "
    "pitch = "
    "\"2 %\", low_end = \"fill\" }\n"
    "reading = { depth = \"50 in\", at = \"300 in\", water = \"1 in\" }\n"
    "gauge = { kind = \"automatic\", at = \"300 in\" }\n"
    "overfill_alarm = { at_share = \"90 %\", heard_at_fill = true }\n"
    "[[tank.fill]]\nid = \"F1\"\nat = \"20 in\"\noverfill_valve = { closes_at = \"90 in\", restricts_at = \"86 in\" "
    "}\n";

TankTold only_tank(const site::Site& site, TankOptions options = {}) {
  TankResult result = study_tank(site, options);
  EXPECT_EQ(result.tanks.size(), 1U);
  EXPECT_EQ(result.tanks.front().problem, "");
  return result.tanks.front();
}

TEST(TankStudy, ATankOf96By260Inches) {
  TankOptions options;
  options.rate = to_si(380.0, "gpm");
  const TankTold tank = only_tank(site_of(level_tank), options);
  EXPECT_NEAR(gallons(tank.capacity), 8147.0, 0.5);  // printed to a gallon
  ASSERT_EQ(tank.rooms.size(), 2U);
  EXPECT_NEAR(tank.rooms[0].level / inch, 80.98, 0.02);  // the issue's own tolerance
  EXPECT_NEAR(tank.rooms[1].level / inch, 86.66, 0.02);
  EXPECT_NEAR(gallons(*tank.rooms[0].room), 3043.0, 1.0);
  EXPECT_NEAR(*tank.from_90_to_95 / 60.0, 1.07, 0.005);  // printed to a hundredth
}

TEST(TankStudy, RoutesOfALevelTank) {
  TankOptions options;
  options.rate = to_si(380.0, "gpm");
  const TankTold tank = only_tank(site_of(level_tank + "[[tank.fill]]\nid = \"F1\"\n"), options);
  const auto& s = tank.overfill.settings;
  ASSERT_EQ(s.size(), 6U);
  EXPECT_NEAR(*s[0].depth / inch, 86.66, 0.02);
  EXPECT_NEAR(*s[1].depth / inch, 80.98, 0.02);
  EXPECT_NEAR(gallons(*s[3].volume), gallons(tank.capacity) - 380.0, 1e-6);  // a minute's flow below the top
  EXPECT_NE(s[4].impossible, "");  // half an hour at 380 gpm is more than the tank holds
  EXPECT_FALSE(s[4].volume);
}

TEST(TankStudy, APitchedTankIsNotALevelOne) {
  const site::Site site = site_of(pitched_tank);
  const TankTold tank = only_tank(site);
  // A level chart at the low end, where the fill is, is set late: the surface there lies higher than in the middle.
  bool level_chart = false;
  for (const WrongSetting& w : tank.overfill.wrong) {
    if (w.by != "level chart") continue;
    level_chart = true;
    const bool at_low_end = w.device == OverfillDevice::shutoff;
    EXPECT_EQ(w.late, !at_low_end) << w.true_share;  // the fill near the low end sees it deeper, the gauge shallower
  }
  EXPECT_TRUE(level_chart);
  EXPECT_GT(tank.chart.dry_below, 0.0);
  EXPECT_GT(tank.now->water.value(), 0.0);
  // Depths at two places of one level differ by the slope.
  ASSERT_GE(tank.places.size(), 2U);
  EXPECT_NEAR(*tank.places[0].depth - *tank.places[1].depth, 0.02 * (300.0 - 20.0) * inch, 1e-9);
}

TEST(TankStudy, TheChartIsTheVolumeAtEachDepth) {
  TankOptions options;
  options.step = 10.0 * inch;
  const TankTold tank = only_tank(site_of(level_tank), options);
  ASSERT_EQ(tank.chart.rows.size(), 11U);  // 0 to 90 in, and the top
  EXPECT_NEAR(gallons(tank.chart.rows.back().volume), 8147.0, 0.5);
  EXPECT_NEAR(tank.chart.rows[5].volume, tank.now->volume, 1e-12);
}

TEST(TankStudy, CompartmentsAreBodiesOfTheirOwn) {
  const TankResult result = study_tank(
      site_of("[[product]]\nid = \"diesel\"\ndensity = \"840 kg/m3\"\nviscosity = \"3 mPa.s\"\n[[tank]]\nid = \"T2\"\n"
              "shape = { kind = \"horizontal-cylinder\", inside_diameter = \"96 in\", length = \"30 ft\", heads = "
              "\"flat\" }\n"
              "[[tank.compartment]]\nid = \"T2a\"\nproduct = \"regular\"\nfrom = \"0 ft\"\nlength = \"10 ft\"\nreading "
              "= { depth = \"48 in\" }\n"
              "[[tank.compartment]]\nid = \"T2b\"\nproduct = \"diesel\"\nfrom = \"10 ft\"\nlength = \"20 ft\"\n"),
      {});
  ASSERT_EQ(result.tanks.size(), 2U);
  EXPECT_NEAR(result.tanks[1].capacity, 2.0 * result.tanks[0].capacity, 1e-9);
  EXPECT_NEAR(result.tanks[0].now->share, 0.5, 1e-12);
  EXPECT_FALSE(result.tanks[1].now);
}

TEST(TankStudy, WhatIsMissingIsSaid) {
  const TankResult none = study_tank(site_of("[[tank]]\nid = \"T1\"\nproduct = \"regular\"\n"), {});
  EXPECT_NE(none.tanks.front().problem.find("shape"), std::string::npos);
  std::string text = pitched_tank;
  text.replace(text.find(", at = \"300 in\", water"), 15, "");
  const TankTold tank = only_tank(site_of(text));
  EXPECT_FALSE(tank.now);
  EXPECT_NE(tank.not_read, "");
  EXPECT_FALSE(tank.rooms.front().room);
}

TEST(TankStudy, ADepthWithASpreadGivesAVolumeWithOne) {
  std::string text = level_tank;
  text.replace(text.find("\"50 in\""), 7, "{ low = \"49 in\", likely = \"50 in\", high = \"52 in\" }");
  const TankTold tank = only_tank(site_of(text));
  EXPECT_LT(*tank.now->least, tank.now->volume);
  TankOptions high;
  high.depth = 52.0 * inch;
  EXPECT_DOUBLE_EQ(*tank.now->most, only_tank(site_of(level_tank), high).now->volume);
}

TEST(TankStudy, OptionsThatDoNotFit) {
  const site::Site site = site_of(level_tank);
  TankOptions options;
  options.tank = "T9";
  EXPECT_EQ(check_options(site, options).size(), 1U);
  options = {};
  options.depth = 97.0 * inch;
  EXPECT_EQ(check_options(site, options).size(), 1U);
  options.depth = 95.0 * inch;
  EXPECT_TRUE(check_options(site, options).empty());
  options.share = 1.2;
  EXPECT_EQ(check_options(site, options).size(), 1U);
}

TEST(TankChecks, OneOfTheRoutesIsEnough) {
  const auto state = [](const std::string& equipment) {
    const site::Site site = site_of(level_tank + equipment);
    const auto findings = checks::check_tanks(site, study_tank(site, {}));
    return findings.size() == 1 ? std::string(checks::word(findings.front().state)) : std::string("none");
  };
  const std::string fill = "[[tank.fill]]\nid = \"F1\"\n";
  const std::string valve = fill + "overfill_valve = { closes_at = ";
  EXPECT_EQ(state(""), "none");
  EXPECT_EQ(state(fill), "falls short");
  EXPECT_EQ(state(valve + "\"86 in\" }\n"), "meets");
  // Above 95 %, but below the top: no fitting is wetted (route C).
  EXPECT_EQ(state(valve + "\"90 in\" }\n"), "meets");
  EXPECT_EQ(state("overfill_alarm = { at_depth = \"80 in\", heard_at_fill = true }\n" + fill), "meets");
  EXPECT_EQ(state("overfill_alarm = { at_depth = \"80 in\" }\n" + fill), "not determined");
  EXPECT_EQ(state("overfill_alarm = { at_depth = \"80 in\", heard_at_fill = false }\n" + fill), "falls short");
}

// Readings made from a tank of other sizes are fitted back.
TEST(TankCalibration, FindsTheTankThatTheReadingsCameFrom) {
  const parts::TankVolume truth(parts::RoundTank{.diameter = 2.44, .length = 9.1, .incline = std::atan(0.012)});
  const double start = 1.0, along = 1.0;
  std::string points;
  for (int i = 0; i <= 24; ++i) {
    const double added = 1.5 * i;
    const double depth = truth.depth_at({.along = along}, truth.level(start + added));
    points +=
        (i == 0 ? "[\"" : ", [\"") + std::to_string(added) + " m3\", \"" + std::to_string(depth * 1000.0) + " mm\"]";
  }
  const TankTold tank =
      only_tank(site_of("[[tank]]\nid = \"T1\"\nproduct = \"regular\"\n"
                        "shape = { kind = \"horizontal-cylinder\", inside_diameter = \"2.40 m\", length = \"9.0 m\", "
                        "heads = \"flat\", pitch = "
                        "\"1 %\", low_end = \"fill\" }\ncalibration = { at = \"1 m\", points = [" +
                        points + "] }\n"));
  ASSERT_TRUE(tank.calibration);
  const CalibrationTold& fit = *tank.calibration;
  EXPECT_EQ(fit.problem, "");
  EXPECT_LT(fit.residual, 1e-6);  // depths are written to a thousandth of a millimeter
  EXPECT_NEAR(fit.sizes[0].value, 2.44, 1e-4);
  EXPECT_NEAR(fit.sizes[1].value, 9.1, 1e-3);
  EXPECT_NEAR(fit.sizes[2].value, 0.012, 1e-4);
  EXPECT_NEAR(fit.sizes[4].value, start, 1e-3);
  EXPECT_NEAR(fit.capacity, truth.capacity(), 1e-3);
}

// A few readings about the middle cannot tell diameter from length: something is held, and said.
TEST(TankCalibration, SaysWhatCannotBeToldApart) {
  std::string points;
  for (int i = 0; i <= 5; ++i)
    points += std::string(i == 0 ? "" : ", ") + "[\"" + std::to_string(100 * i) + " gal\", \"" +
              std::to_string(40 + 1.0 * i) + " in\"]";
  const TankTold tank =
      only_tank(site_of(level_tank + "calibration = { uncertainty = \"0.1 in\", points = [" + points + "] }\n"));
  const CalibrationTold& fit = *tank.calibration;
  EXPECT_EQ(fit.problem, "");
  std::size_t held = 0;
  for (const FittedSize& size : fit.sizes) held += size.held.empty() ? 0U : 1U;
  EXPECT_GE(held, 2U);
}

// SOURCE: closed form: linear least squares of y = a x + b, by its sums
// Five readings of an upright tank of 4 m2; the sums are taken here by hand.
TEST(TankCalibration, AnUprightTankIsFittedByItsAreaAndItsStart) {
  const double area = 4.0, diameter = std::sqrt(4.0 * area / std::numbers::pi);
  const std::array<double, 5> depth{0.200, 0.452, 0.697, 0.951, 1.203}, added{0.0, 1.0, 2.0, 3.0, 4.0};
  std::string points;
  for (std::size_t i = 0; i < depth.size(); ++i)
    points += std::string(i == 0 ? "" : ", ") + "[\"" + std::to_string(added[i]) + " m3\", \"" +
              std::to_string(depth[i]) + " m\"]";
  const auto fitted = [&](const std::string& shape) {
    return *only_tank(site_of("[[tank]]\nid = \"T1\"\nproduct = \"regular\"\nshape = " + shape +
                              "\ncalibration = { points = [" + points + "] }\n"))
                .calibration;
  };
  const CalibrationTold fit = fitted("{ kind = \"vertical-cylinder\", inside_diameter = \"" + std::to_string(diameter) +
                                     " m\", height = \"2.5 m\", heads = \"flat\" }");
  ASSERT_EQ(fit.problem, "");
  // Mean depth 0.7006 m, mean volume 2 m3; Sxx = 0.62752120 m2, Sxy = 2.505 m4: a = 3.991897, b = -0.796723.
  const double n = 5.0, mean = 0.7006;
  double sxx = 0.0, sxy = 0.0;
  for (std::size_t i = 0; i < depth.size(); ++i) {
    sxx += (depth[i] - mean) * (depth[i] - mean);
    sxy += (depth[i] - mean) * (added[i] - 2.0);
  }
  EXPECT_NEAR(sxx, 0.62752120, 1e-8);
  EXPECT_NEAR(sxy, 2.505, 1e-12);
  const double a = sxy / sxx, b = 2.0 - a * mean;
  double squares = 0.0;
  for (std::size_t i = 0; i < depth.size(); ++i) squares += std::pow((a * depth[i] + b - added[i]) / area, 2);
  const double sigma = std::sqrt(squares / (n - 2.0));
  ASSERT_EQ(fit.sizes.size(), 3U);
  EXPECT_NEAR(fit.sizes[0].entered, area, 1e-5);  // the diameter is written to a thousandth of a millimeter
  EXPECT_NEAR(fit.sizes[0].value, a, 1e-6);
  EXPECT_NEAR(*fit.sizes[0].standard_error, area * sigma / std::sqrt(sxx), 1e-7);
  EXPECT_NEAR(fit.sizes[2].value, -b, 1e-6);
  EXPECT_NEAR(*fit.sizes[2].standard_error, area * sigma * std::sqrt(1.0 / n + mean * mean / sxx), 1e-7);
  EXPECT_NEAR(fit.residual, sigma, 1e-7);
  EXPECT_FALSE(fit.sizes[1].held.empty());
  EXPECT_EQ(fit.not_apart.size(), 1U);
  EXPECT_NEAR(fit.capacity, 2.5 * a, 1e-5);
  // A box of the same area reads the same, and its length is not told from its width.
  const CalibrationTold box =
      fitted("{ kind = \"rectangular\", length = \"2.5 m\", width = \"1.6 m\", height = \"2.5 m\" }");
  EXPECT_NEAR(box.sizes[0].value, a, 1e-6);
  EXPECT_EQ(box.not_apart.size(), 2U);
}

}  // namespace
}  // namespace forecourse::studies
