#include "forecourse/report/svg/shapes.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace forecourse::report::svg {
namespace {

/// A line's height at x, between its corners.
double height(const std::vector<Point>& corners, double x) {
  for (std::size_t i = 1; i < corners.size(); ++i) {
    const Point &a = corners[i - 1], &b = corners[i];
    if (x <= b.x) return a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x);
  }
  return corners.back().y;
}

TEST(SvgThinned, LeavesOutWhatLiesOnTheLine) {
  const auto out = thinned({{0, 0}, {1, 1}, {2, 2}, {3, 2}, {4, 2}});
  ASSERT_EQ(out.size(), 3u);
  EXPECT_EQ(out[1].x, 2.0);
  EXPECT_EQ(thinned({{0, 0}, {0, 0}}).size(), 2u);
  EXPECT_EQ(thinned({}).size(), 0u);
}

TEST(SvgThinned, ACurveStaysWithinATenthOfAPixel) {
  std::vector<Point> curve;
  for (int i = 0; i <= 900; ++i) curve.push_back({double(i), 50.0 * std::sin(i / 40.0) + 20.0 * std::exp(-i / 90.0)});
  const auto out = thinned(curve);
  EXPECT_LT(out.size(), curve.size() / 3);
  for (const Point& p : curve) EXPECT_NEAR(height(out, p.x), p.y, 0.1 * std::hypot(1.0, 1.5));  // steepest slope 1.5
}

TEST(SvgThinned, AReturnOnTheSameStretchIsKept) {  // a spike has its ends in one place
  const auto out = thinned({{0, 0}, {5, 0}, {5, 30}, {5, 0}, {10, 0}});
  EXPECT_TRUE(std::any_of(out.begin(), out.end(), [](const Point& p) { return p.y == 30.0; }));
}

}  // namespace
}  // namespace forecourse::report::svg
