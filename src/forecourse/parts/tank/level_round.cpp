#include "forecourse/parts/tank/level_round.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "forecourse/parts/tank/circle_segment.h"
#include "forecourse/parts/tank/profile.h"

namespace forecourse::parts {

std::optional<LevelRound> LevelRound::of(const RoundTank& tank) {
  if (tank.incline != 0.0) return std::nullopt;
  LevelRound out;
  out.radius_ = 0.5 * tank.diameter;
  out.length_ = tank.length;
  for (const Head& entered : {tank.low, tank.high}) {
    const Head head = std::get<Head>(head_sizes(entered, tank.diameter));
    if (head.kind == HeadKind::dished) return std::nullopt;
    if (head.kind == HeadKind::conical) out.conical_ += head.depth;
    if (head.kind == HeadKind::elliptical || head.kind == HeadKind::hemispherical) out.elliptical_ += head.depth;
  }
  return out;
}

/// A cone's sections have their chord at the same height: segments of growing circles, summed.
double LevelRound::cone_volume(double half_angle) const {
  const bool over = half_angle > 0.5 * std::numbers::pi;
  const double angle = over ? std::numbers::pi - half_angle : half_angle;
  const double m = std::cos(angle), q = std::sin(angle);
  const double far = m > 0.0 ? m * m * m * std::log((1.0 + q) / m) : 0.0;
  const double part = radius_ * radius_ * conical_ * (angle - 2.0 * m * q + far) / 3.0;
  return over ? std::numbers::pi / 3.0 * radius_ * radius_ * conical_ - part : part;
}

double LevelRound::volume(double level) const {
  const double h = std::clamp(level, 0.0, 2.0 * radius_);
  const double angle = filled_half_angle(radius_, h - radius_);
  double total = length_ * segment_of_angle(radius_, angle);
  if (elliptical_ > 0.0) total += std::numbers::pi * elliptical_ * h * h * (3.0 * radius_ - h) / (6.0 * radius_);
  if (conical_ > 0.0) total += cone_volume(angle);
  return total;
}

double LevelRound::surface_area(double level) const {
  if (level <= 0.0 || level >= 2.0 * radius_) return 0.0;
  const double half = 0.5 * chord_width(radius_, level - radius_), above = std::abs(level - radius_);
  double total = 2.0 * half * length_;
  total += 0.5 * std::numbers::pi * elliptical_ * half * half / radius_;
  if (conical_ > 0.0) {
    const double far = above > 0.0 ? above * above * std::log((radius_ + half) / above) : 0.0;
    total += conical_ / radius_ * (radius_ * half - far);
  }
  return total;
}

double LevelRound::level(double volume) const {
  const double full = this->volume(2.0 * radius_);
  if (volume <= 0.0) return 0.0;
  if (volume >= full) return 2.0 * radius_;
  const auto level_of = [this](double angle) {
    const double s = std::sin(0.5 * angle);
    return 2.0 * radius_ * s * s;
  };
  double low = 0.0, high = std::numbers::pi, angle = 0.5 * std::numbers::pi;
  for (int round = 0; round < 100; ++round) {
    const double h = level_of(angle);
    const double over = this->volume(h) - volume;
    (over > 0.0 ? high : low) = angle;
    const double slope = surface_area(h) * radius_ * std::sin(angle);
    double next = slope > 0.0 ? angle - over / slope : -1.0;
    if (!(next > low && next < high)) next = 0.5 * (low + high);
    const double step = next - angle;
    angle = next;
    if (std::abs(step) < 1e-15 * angle || high - low < 1e-15) break;
  }
  return level_of(angle);
}

}  // namespace forecourse::parts
