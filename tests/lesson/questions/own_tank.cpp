#include "lesson/questions/own_tank.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace forecourse::test {
namespace {

constexpr int slices = 1000;
constexpr double far_apart = 100.0;  // [m] deeper than any tank

double segment(double depth, double diameter) {
  const double r = 0.5 * diameter;
  const double h = std::clamp(depth, 0.0, diameter);
  return r * r * std::acos(1.0 - h / r) - (r - h) * std::sqrt(std::max(0.0, h * (diameter - h)));
}

}  // namespace

OwnTank::OwnTank(const site::Tank& tank)
    : diameter_(tank.shape->inside_diameter->likely.si()),
      length_(tank.shape->length->likely.si()),
      pitch_(tank.shape->pitch ? tank.shape->pitch->likely.si() : 0.0),
      bottom_(tank.bottom_elevation ? tank.bottom_elevation->likely.si() : 0.0) {
  if (tank.reading && tank.reading->depth) reading_ = tank.reading->depth->likely.si();
  if (tank.reading && tank.reading->at) reading_at_ = tank.reading->at->likely.si();
}

double OwnTank::volume(double depth, double along) const {
  double sum = 0.0;
  for (int i = 0; i < slices; ++i) {
    const double x = (i + 0.5) / slices * length_;
    sum += segment(depth - (x - along) * pitch_, diameter_);
  }
  return sum * length_ / slices;
}

double OwnTank::depth(double wanted, double along) const {
  double low = -far_apart * pitch_;
  double high = diameter_ + far_apart * pitch_;
  for (int i = 0; i < 60; ++i) {
    const double middle = 0.5 * (low + high);
    (volume(middle, along) < wanted ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

double OwnTank::capacity() const { return 0.25 * std::numbers::pi * diameter_ * diameter_ * length_; }

double OwnTank::surface() const { return bottom_ + reading_ + reading_at_ * pitch_; }

double OwnTank::now() const { return volume(reading_, reading_at_); }

}  // namespace forecourse::test
