// SOURCE: rows TANK of check_values.csv: published tank volumes and a second, independent quadrature; closed forms
#include "forecourse/parts/tank/tank_volume.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <numbers>
#include <string>
#include <vector>

#include "forecourse/base/api_units.h"
#include "forecourse/parts/tank/profile.h"
#include "forecourse/parts/tank/round_body.h"
#include "support/check_values.h"

namespace forecourse::parts {
namespace {

using test::agrees;
using test::row;

constexpr double inch = 0.0254;
constexpr double pi = std::numbers::pi;

double gallons(double cubic_meters) { return cubic_meters / cubic_meters_from_gallons(1.0); }

RoundTank round_tank(double diameter, double length, Head head = {}, double incline = 0.0) {
  return {diameter, length, head, head, incline};
}

Head head_of(HeadKind kind, double depth = 0.0) { return {.kind = kind, .depth = depth}; }

// The must-hold figures of a tank of 96 in by 260 in.
TEST(TankVolume, ATankOf96By260Inches) {
  const TankVolume tank(round_tank(96.0 * inch, 260.0 * inch));
  EXPECT_NEAR(gallons(tank.capacity()), 8147.0, 0.5);                   // printed to a gallon
  EXPECT_NEAR(tank.level(0.90 * tank.capacity()) / inch, 80.98, 0.01);  // printed to a hundredth
  EXPECT_NEAR(tank.level(0.95 * tank.capacity()) / inch, 86.66, 0.01);
  EXPECT_NEAR(gallons(0.90 * tank.capacity() - tank.volume(50.0 * inch)), 3043.0, 1.0);
}

// Each row at its own tolerance: 1e-6 relative, of the torispherical row as printed, 1e-7.
TEST(TankVolume, PublishedHeads) {
  const struct {
    const char* id;
    Head head;
    double relative;
  } rows[] = {
      {"TANK-ellip", head_of(HeadKind::elliptical, 42.0 * inch), 1e-9},
      {"TANK-spher", head_of(HeadKind::dished, 42.0 * inch), 1e-9},
      {"TANK-cone", head_of(HeadKind::conical, 42.0 * inch), 1e-9},
      {"TANK-tori", head_of(HeadKind::dished), 1e-7},
      {"TANK-flat", Head{}, 1e-9},
  };
  for (const auto& r : rows) {
    const TankVolume tank(round_tank(108.0 * inch, 156.0 * inch, r.head));
    EXPECT_TRUE(agrees(row(r.id), gallons(tank.volume(36.0 * inch)), {.relative = r.relative}));
    EXPECT_NEAR(gallons(tank.exact_volume(36.0 * inch)), gallons(tank.volume(36.0 * inch)), 1e-8);
  }
}

TEST(TankVolume, PublishedDepths) {
  const TankVolume elliptical(round_tank(10.0, 25.0, head_of(HeadKind::elliptical, 2.0)));
  for (const auto& check : test::rows_starting("TANK-ell10-"))
    EXPECT_TRUE(agrees(check, elliptical.volume(test::input_number(check, "h")), {.relative = 1e-12}));
  const TankVolume flat(round_tank(1.5, 5.0));
  for (const auto& check : test::rows_starting("TANK-flat1.5-"))
    EXPECT_TRUE(agrees(check, flat.volume(test::input_number(check, "h")), {.relative = 1e-12}));
  const Head dished = std::get<Head>(head_sizes(head_of(HeadKind::dished), 108.0));
  EXPECT_TRUE(agrees(row("TANK-toridepth"), dished.depth, {.relative = 1e-12}));
}

TEST(TankVolume, WettedArea) {
  const TankVolume tank(round_tank(72.0 * inch, 120.0 * inch));
  const double square_foot = 144.0 * inch * inch;
  EXPECT_TRUE(agrees(row("TANK-wet"), *tank.wetted_area(24.0 * inch) / square_foot, {.absolute = 5e-7}));  // as printed
  const TankVolume ball(round_tank(2.0, 0.0, head_of(HeadKind::hemispherical)));
  EXPECT_NEAR(*ball.wetted_area(0.5), 2.0 * pi * 0.5, 1e-9);  // a cap's surface
  const TankVolume box(BoxTank{3.0, 2.0, 1.0, 0.02, 0.03});
  EXPECT_NEAR(*box.wetted_area(box.full_level()), 22.0, 1e-12);
}

// Shares of a full shell and of a full elliptical head, printed to nine digits.
TEST(TankVolume, SharesOfTheDepth) {
  const TankVolume shell(round_tank(2.0, 3.0));
  const TankVolume ball(round_tank(2.0, 0.0, head_of(HeadKind::hemispherical)));
  for (const auto& check : test::rows_starting("TANK-frac-")) {
    const double h = 2.0 * test::input_number(check, "h/D");
    const auto both = test::parts_of(check.expected);
    EXPECT_NEAR(shell.volume(h) / shell.capacity(), std::stod(both[0]), 1e-9);
    EXPECT_NEAR(ball.volume(h) / ball.capacity(), std::stod(both[1]), 1e-9);
    test::count_check(check);
  }
}

TEST(TankVolume, PitchedShell) {
  for (const auto& check : test::rows_starting("TANK-tilt-")) {
    const double slope = test::input_number(check, "slope");
    const double place = check.inputs.find("x=4.5") != std::string::npos ? 4.5 : 0.3;
    const double dip = *test::number_in(check.inputs.substr(check.inputs.find("dip")));
    const TankVolume tank(round_tank(2.438, 9.0, {}, std::atan(slope)));
    EXPECT_TRUE(agrees(check, tank.volume(tank.level_at({.along = place}, dip)), {.absolute = 1e-6}));  // as printed
  }
}

TEST(TankVolume, UprightTanks) {
  const double r = 1.5;
  const RoundTank shape{2.0 * r, 4.0, head_of(HeadKind::conical, 0.6), head_of(HeadKind::hemispherical), 0.5 * pi};
  const TankVolume tank(shape);
  EXPECT_NEAR(tank.full_level(), 0.6 + 4.0 + r, 1e-12);
  EXPECT_NEAR(tank.volume(0.3), pi * r * r * 0.6 / 3.0 / 8.0, 1e-12);  // half as deep, an eighth
  EXPECT_NEAR(tank.volume(0.6 + 2.0), pi * r * r * (0.2 + 2.0), 1e-11);
  EXPECT_NEAR(tank.capacity(), pi * r * r * (0.2 + 4.0 + r * 2.0 / 3.0), 1e-11);
  EXPECT_NEAR(tank.surface_area(2.0), pi * r * r, 1e-12);
  EXPECT_NEAR(tank.depth_at({}, 2.0), 2.0, 1e-12);
}

TEST(TankVolume, Boxes) {
  const TankVolume level(BoxTank{3.0, 2.0, 1.0});
  EXPECT_NEAR(level.volume(0.4), 2.4, 1e-14);
  EXPECT_NEAR(level.level(2.4), 0.4, 1e-14);
  const double pitch = std::atan(0.1), roll = std::atan(0.2);
  const TankVolume leaning(BoxTank{3.0, 2.0, 1.0, pitch, roll});
  // While three corners' edges alone are wet it is a pyramid: the corner's edges are cut at level / direction.
  const double level_of_corner = 0.05;
  const double along = level_of_corner / std::sin(pitch), across = level_of_corner / (std::cos(pitch) * std::sin(roll)),
               up = level_of_corner / (std::cos(pitch) * std::cos(roll));
  EXPECT_NEAR(leaning.volume(level_of_corner), along * across * up / 6.0, 1e-14);
  EXPECT_NEAR(leaning.capacity(), 6.0, 1e-13);
  EXPECT_NEAR(leaning.volume(0.5 * leaning.full_level()), 3.0, 1e-13);  // by symmetry
}

TEST(TankVolume, DipPlacesAndTheirDryLevels) {
  const double slope = 0.02;
  const TankVolume tank(round_tank(2.4, 9.0, {}, std::atan(slope)));
  const StickRange high = tank.range_of({.along = 8.0});
  EXPECT_NEAR(high.bottom, 8.0 * std::sin(std::atan(slope)), 1e-12);
  EXPECT_EQ(tank.depth_at({.along = 8.0}, 0.9 * high.bottom), 0.0);
  EXPECT_GT(tank.volume(0.9 * high.bottom), 0.0);
  EXPECT_NEAR(tank.depth_at({.along = 8.0}, tank.level_at({.along = 8.0}, 1.0)), 1.0, 1e-12);
  // Along the axis the surface rises against the bottom by the slope.
  EXPECT_NEAR(tank.depth_at({.along = 1.0}, 1.5) - tank.depth_at({.along = 6.0}, 1.5), 5.0 * slope, 1e-12);
  // A stick that is rolled about the axis shows the whole diameter when the tank is full there.
  const TankVolume level(round_tank(2.4, 9.0));
  EXPECT_NEAR(level.depth_at({.along = 1.0, .roll = 0.3}, level.level_at({.along = 1.0, .roll = 0.3}, 0.4)), 0.4,
              1e-12);
}

TEST(TankVolume, WhatStandsInsideTakesRoom) {
  const TankVolume bare(round_tank(2.4, 9.0));
  const TankVolume fitted(round_tank(2.4, 9.0), {{0.3, 0.2, 1.2}});
  EXPECT_NEAR(fitted.volume(0.7), bare.volume(0.7) - 0.15, 1e-12);
  EXPECT_NEAR(fitted.capacity(), bare.capacity() - 0.3, 1e-12);
  EXPECT_NEAR(fitted.level(fitted.volume(0.7)), 0.7, 1e-12);
  EXPECT_EQ(tank_problem(round_tank(2.4, 9.0), {{300.0, 0.2, 1.2}}),
            "what stands inside takes more room than there is at its level");
}

TEST(TankVolume, ChartsAreStraightBetweenTheirLines) {
  const TankVolume chart(DipChart{{{0.0, 0.0}, {0.5, 1.0}, {1.0, 3.0}}});
  EXPECT_NEAR(chart.volume(0.75), 2.0, 1e-15);
  EXPECT_NEAR(chart.level(2.0), 0.75, 1e-15);
  EXPECT_NEAR(chart.surface_area(0.75), 4.0, 1e-15);
  EXPECT_EQ(chart.volume(7.0), 3.0);
}

TEST(TankVolume, HeadsThatDoNotFit) {
  const auto why = [](Head head) { return tank_problem(round_tank(2.0, 3.0, head)).value_or(""); };
  EXPECT_EQ(why(head_of(HeadKind::conical)), "the depth of a conical head follows from nothing else");
  EXPECT_EQ(why({.kind = HeadKind::dished, .dish_radius = 0.9}),
            "the dish radius is less than half the diameter, so that its crown does not reach the shell");
  EXPECT_EQ(why(head_of(HeadKind::hemispherical, 0.3)), "a hemispherical head is as deep as half the diameter");
  EXPECT_EQ(why(head_of(HeadKind::flat, 0.3)), "a flat head has no depth");
  EXPECT_EQ(why(head_of(HeadKind::elliptical)), "");
}

/// A round tank told once more, with other formulas: radius and bulge as one function each, areas by the arc cosine,
/// sums by adaptive Simpson quadrature between cuts that are searched, not solved for.
class SecondOpinion {
 public:
  explicit SecondOpinion(const RoundTank& tank) : tank_(tank), r_(0.5 * tank.diameter) {
    low_ = std::get<Head>(head_sizes(tank.low, tank.diameter));
    high_ = std::get<Head>(head_sizes(tank.high, tank.diameter));
  }

  /// Radius of a head so far beyond its joint.
  [[nodiscard]] double head_radius(const Head& head, double beyond) const {
    const double rest = head.depth - beyond;
    switch (head.kind) {
      case HeadKind::flat:
        return 0.0;
      case HeadKind::conical:
        return r_ * rest / head.depth;
      case HeadKind::elliptical:
      case HeadKind::hemispherical:
        return r_ / head.depth * std::sqrt(std::max(0.0, rest * (head.depth + beyond)));
      case HeadKind::dished:
        break;
    }
    const double crown = head.dish_radius, knuckle = head.knuckle_radius;
    const double ball = std::sqrt(std::max(0.0, rest * (2.0 * crown - rest)));
    const double touch = crown > knuckle ? (r_ - knuckle) * crown / (crown - knuckle) : r_;
    if (knuckle == 0.0 || ball <= touch) return ball;
    return r_ - knuckle + std::sqrt(std::max(0.0, knuckle * knuckle - beyond * beyond));
  }

  [[nodiscard]] double radius(double x) const {
    if (x < 0.0) return head_radius(low_, -x);
    return x > tank_.length ? head_radius(high_, x - tank_.length) : r_;
  }

  /// Bulge of a head at a distance from the axis.
  [[nodiscard]] double bulge(const Head& head, double rho) const {
    double inner = 0.0, outer = head.depth;
    for (int i = 0; i < 40; ++i) {
      const double middle = 0.5 * (inner + outer);
      (head_radius(head, middle) > rho ? inner : outer) = middle;
    }
    return inner;
  }

  /// Volume below the plane x sin + y cos = height, from the axis at x = 0.
  [[nodiscard]] double volume(double height, double close) const {
    const double c = std::cos(tank_.incline), s = std::sin(tank_.incline);
    const bool upright = c < 1e-9;
    const auto area = [&](double x) {
      const double r = radius(x);
      if (upright) return pi * r * r;
      const double d = (height - x * s) / c;
      if (d <= -r) return 0.0;
      return d >= r ? pi * r * r : r * r * std::acos(-d / r) + d * std::sqrt((r - d) * (r + d));
    };
    const auto kink = [](const Head& head) {  // a knuckle ends where the crown begins
      const double k = head.knuckle_radius, over = head.dish_radius - k;
      return head.kind == HeadKind::dished && k > 0.0 && over > 0.0 ? k * (head.dish_radius - head.depth) / over : 0.0;
    };
    std::vector<double> cuts{
        -low_.depth, -kink(low_), 0.0, tank_.length, tank_.length + kink(high_), tank_.length + high_.depth};
    if (upright) {
      for (double& cut : cuts) cut = std::min(cut, height);
    } else {
      for (const double side : {1.0, -1.0})
        add_ends(cuts, [&](double x) { return radius(x) + side * (height - x * s) / c; });
      std::sort(cuts.begin(), cuts.end());
    }
    double total = 0.0;
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
      constexpr int parts = 16;
      for (int k = 0; k < parts && cuts[i + 1] > cuts[i]; ++k) {
        // Squared from both ends, so that a radius that begins like a square root is met in small steps.
        const auto at = [&](double t) { return cuts[i] + (cuts[i + 1] - cuts[i]) * t * t * (3.0 - 2.0 * t); };
        const auto f = [&](double t) { return area(at(t)) * (cuts[i + 1] - cuts[i]) * 6.0 * t * (1.0 - t); };
        const double a = static_cast<double>(k) / parts, b = static_cast<double>(k + 1) / parts;
        total += simpson(f, a, b, f(a), f(0.5 * (a + b)), f(b), close, 40);
      }
    }
    return total;
  }

  /// The same as columns of liquid parallel to the axis, summed over the circle.
  [[nodiscard]] double volume_of_columns(double height, int rings) const {
    const double c = std::cos(tank_.incline), s = std::sin(tank_.incline);
    double total = 0.0;
    for (int i = 0; i < rings; ++i) {
      const double rho = r_ * (i + 0.5) / rings;
      const double begin = -bulge(low_, rho), end = tank_.length + bulge(high_, rho);
      for (int k = 0; k < rings; ++k) {
        const double y = rho * std::cos(pi * (k + 0.5) / rings);
        const double surface = (height - y * c) / s;
        total += (std::clamp(surface, begin, end) - begin) * rho;
      }
    }
    return total * (r_ / rings) * (2.0 * pi / rings);
  }

 private:
  /// Where a concave function passes 0, on both sides of its top.
  template <class F>
  void add_ends(std::vector<double>& cuts, const F& f) const {
    const double begin = cuts.front(), end = cuts[5];
    double low = begin, high = end;
    for (int i = 0; i < 200; ++i) {
      const double a = low + (high - low) / 3.0, b = high - (high - low) / 3.0;
      (f(a) < f(b) ? low : high) = f(a) < f(b) ? a : b;
    }
    const double top = f(begin) > f(low) ? begin : (f(end) > f(low) ? end : low);
    if (f(top) <= 0.0) return;
    for (const double outer : {begin, end}) {
      double in = top, out = outer;
      for (int i = 0; i < 100; ++i) (f(0.5 * (in + out)) > 0.0 ? in : out) = 0.5 * (in + out);
      cuts.push_back(in);
    }
  }

  template <class F>
  double simpson(const F& f, double a, double b, double fa, double fm, double fb, double close, int halvings) const {
    const double m = 0.5 * (a + b), left = f(0.5 * (a + m)), right = f(0.5 * (m + b));
    const double whole = (b - a) / 6.0 * (fa + 4.0 * fm + fb);
    const double halves = (b - a) / 12.0 * (fa + 4.0 * left + 2.0 * fm + 4.0 * right + fb);
    if (halvings == 0 || std::abs(halves - whole) < close) return halves + (halves - whole) / 15.0;
    return simpson(f, a, m, fa, left, fm, 0.5 * close, halvings - 1) +
           simpson(f, m, b, fm, right, fb, 0.5 * close, halvings - 1);
  }

  RoundTank tank_;
  double r_;
  Head low_, high_;
};

/// Numbers that are the same on every machine.
class Draw {
 public:
  explicit Draw(std::uint64_t seed) : state_(seed) {}
  double operator()(double low, double high) {
    state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
    return low + (high - low) * static_cast<double>((state_ >> 11)) * 0x1p-53;
  }

 private:
  std::uint64_t state_;
};

Head random_head(Draw& draw, double diameter) {
  switch (static_cast<int>(draw(0.0, 6.0))) {
    case 0:
      return {};
    case 1:
      return head_of(HeadKind::elliptical, diameter * draw(0.05, 0.6));
    case 2:
      return head_of(HeadKind::hemispherical);
    case 3:
      return head_of(HeadKind::conical, diameter * draw(0.02, 0.7));
    case 4:
      return head_of(HeadKind::dished, diameter * draw(0.02, 0.5));
    default:
      return {HeadKind::dished, 0.0, diameter * draw(0.6, 1.5), diameter * draw(0.02, 0.3)};
  }
}

RoundTank random_tank(Draw& draw) {
  RoundTank tank;
  tank.diameter = draw(0.8, 4.0);
  tank.length = tank.diameter * draw(0.5, 6.0);
  tank.low = random_head(draw, tank.diameter);
  tank.high = random_head(draw, tank.diameter);
  const double kind = draw(0.0, 8.0);
  if (kind < 1.0)
    tank.incline = 0.0;
  else if (kind < 2.0)
    tank.incline = 0.5 * pi;
  else if (kind < 3.0)
    tank.incline = std::atan(std::pow(10.0, draw(-9.0, -2.0)));  // nearly level
  else if (kind < 4.0)
    tank.incline = draw(0.0, 0.5 * pi);
  else
    tank.incline = std::atan(draw(0.0, 0.10));
  return tank;
}

struct Worst {
  double volume = 0.0;  ///< against the second opinion, of the capacity
  double back = 0.0;    ///< volume there and back, of the capacity
  double level = 0.0;   ///< level there and back, of the full level
  double fall = 0.0;    ///< how far a volume lies below that of a lower level, of the capacity
};

Worst worst_of(int tanks) {
  Worst worst;
  Draw draw(6);
  for (int i = 0; i < tanks; ++i) {
    const RoundTank shape = random_tank(draw);
    const TankVolume tank(shape);
    const RoundBody body(shape);
    const SecondOpinion second(shape);
    const double capacity = tank.capacity();
    for (const double level :
         {tank.full_level() * draw(0.0, 1.0), tank.full_level() * std::pow(10.0, draw(-5.0, 0.0))}) {
      const double volume = tank.volume(level);
      const double height = level - body.level_at(0.0, 0.0);
      worst.volume = std::max(worst.volume, std::abs(volume - second.volume(height, 1e-12 * capacity)) / capacity);
      worst.back = std::max(worst.back, std::abs(tank.volume(tank.level(volume)) - volume) / capacity);
      if (volume > 1e-7 * capacity && volume < (1.0 - 1e-7) * capacity)
        worst.level = std::max(worst.level, std::abs(tank.level(volume) - level) / tank.full_level());
    }
    double before = 0.0;
    for (int k = 1; k <= 200; ++k) {
      const double volume = tank.volume(tank.full_level() * k / 200.0);
      worst.fall = std::max(worst.fall, (before - volume) / capacity);
      before = volume;
    }
  }
  return worst;
}

// The bound asked for is 1e-9 of the capacity; what is reached is told by the record.
void expect_within(const Worst& worst) {
  testing::Test::RecordProperty("volume", std::to_string(worst.volume * 1e12));
  EXPECT_LT(worst.volume, 1e-9);
  EXPECT_LT(worst.back, 1e-9);
  EXPECT_LT(worst.level, 1e-9);
  EXPECT_EQ(worst.fall, 0.0);
  std::printf("worst of capacity: volume %.2g, back %.2g, level %.2g\n", worst.volume, worst.back, worst.level);
}

TEST(TankVolume, RandomTanksAgainstAdaptiveQuadrature) { expect_within(worst_of(300)); }

TEST(FullTankVolume, RandomTanksAgainstAdaptiveQuadrature) { expect_within(worst_of(10000)); }

// Columns parallel to the axis, a double sum: 1e-4 is its own error with 300 rings.
TEST(TankVolume, ColumnsParallelToTheAxisSumToTheSame) {
  Draw draw(11);
  for (int i = 0; i < 12; ++i) {
    RoundTank shape = random_tank(draw);
    shape.incline = draw(0.05, 1.5);
    const TankVolume tank(shape);
    const RoundBody body(shape);
    const double level = tank.full_level() * draw(0.2, 0.8);
    const double second = SecondOpinion(shape).volume_of_columns(level - body.level_at(0.0, 0.0), 300);
    EXPECT_NEAR(tank.volume(level) / tank.capacity(), second / tank.capacity(), 1e-4);
  }
}

TEST(TankVolume, SurfaceIsTheChangeOfVolume) {
  Draw draw(21);
  for (int i = 0; i < 60; ++i) {
    const TankVolume tank(random_tank(draw));
    const double level = tank.full_level() * draw(0.1, 0.9), step = 1e-4 * tank.full_level();
    const double slope = (tank.exact_volume(level + step) - tank.exact_volume(level - step)) / (2.0 * step);
    // A joint that the surface passes within the step costs digits: 1e-3.
    EXPECT_NEAR(tank.surface_area(level) / slope, 1.0, 1e-3);
  }
}

}  // namespace
}  // namespace forecourse::parts
