#include "forecourse/parts/tank/round_body.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "forecourse/parts/tank/circle_segment.h"
#include "forecourse/parts/tank/panel_integral.h"

namespace forecourse::parts {
namespace {

constexpr double upright_below = 1e-9;  // cosine of the incline: changes the volume by less than its square
constexpr double infinite = std::numeric_limits<double>::infinity();

/// Area of a section below the surface.
struct FilledArea {
  double operator()(const ProfilePiece& piece, double x, double above) const {
    return segment_area(radius_at(piece, x), above);
  }
};

struct Chord {
  double operator()(const ProfilePiece& piece, double x, double above) const {
    return chord_width(radius_at(piece, x), above);
  }
};

struct WettedArc {
  double operator()(const ProfilePiece& piece, double x, double above) const {
    const double r = radius_at(piece, x);
    if (above <= -r) return 0.0;
    return 2.0 * surface_radius(piece, x) * (above >= r ? std::numbers::pi : filled_half_angle(r, above));
  }
};

}  // namespace

RoundBody::RoundBody(const RoundTank& tank)
    : pieces_(profile_of(tank)), sine_(std::sin(tank.incline)), cosine_(std::cos(tank.incline)) {
  if (cosine_ < upright_below) {
    cosine_ = 0.0;
    sine_ = 1.0;
  }
  lowest_ = infinite;
  highest_ = -infinite;
  for (const ProfilePiece& piece : pieces_) {
    lowest_ = std::min(lowest_, lowest_of(piece, sine_, cosine_));
    highest_ = std::max(highest_, -lowest_of(piece, -sine_, cosine_));
  }
  const double box = 0.25 * std::numbers::pi * tank.diameter * tank.diameter * (end() - begin());
  capacity_ = box;  // until it is known, the measure of what is close
  capacity_ = volume(full_level() * 2.0);
}

double RoundBody::radius(double x) const {
  for (const ProfilePiece& piece : pieces_) {
    if (x <= end_of(piece)) return radius_at(piece, std::max(x, begin_of(piece)));
  }
  return radius_at(pieces_.back(), end());
}

double RoundBody::surface_above_axis(double x, double level) const {
  const double above = level + lowest_ - x * sine_;
  if (cosine_ > 0.0) return above / cosine_;
  return above > 0.0 ? infinite : -infinite;
}

template <class Section>
double RoundBody::sum_of_piece(const ProfilePiece& piece, double level, double close, const Section& section) const {
  std::vector<double> splits{begin_of(piece), end_of(piece)};
  if (cosine_ > 0.0) {
    add_crossings(piece, (level + lowest_) / cosine_, sine_ / cosine_, splits);
  } else if (const double x = level + lowest_; x > splits[0] && x < splits[1]) {
    splits.push_back(x);
  }
  std::sort(splits.begin(), splits.end());
  double total = 0.0;
  for (std::size_t i = 0; i + 1 < splits.size(); ++i) {
    const SoftEnds ends{splits[i], splits[i + 1]};
    const double middle = 0.5 * (ends.from + ends.to);
    if (!(ends.to > ends.from) || surface_above_axis(middle, level) <= -radius_at(piece, middle)) continue;
    total += panel_integral([&](double x) { return section(piece, x, surface_above_axis(x, level)); }, ends, close);
  }
  return total;
}

template <class Section>
double RoundBody::sum(double level, double close, const Section& section) const {
  double total = 0.0;
  for (const ProfilePiece& piece : pieces_) total += sum_of_piece(piece, level, close, section);
  return total;
}

double RoundBody::volume(double level) const {
  if (level <= 0.0) return 0.0;
  return sum(level, 1e-13 * capacity_, FilledArea{});
}

double RoundBody::surface_area(double level) const {
  if (level <= 0.0 || level >= full_level()) return 0.0;
  if (upright()) {
    const double r = radius(level + lowest_);
    return std::numbers::pi * r * r;
  }
  return sum(level, 1e-11 * capacity_ / full_level() * cosine_, Chord{}) / cosine_;
}

double RoundBody::end_faces(double level) const {
  double total = 0.0;
  for (const double x : {begin(), end()}) total += segment_area(radius(x), surface_above_axis(x, level));
  return total;
}

double RoundBody::wetted_area(double level) const {
  if (level <= 0.0) return 0.0;
  return sum(level, 1e-11 * capacity_ / full_level(), WettedArc{}) + end_faces(level);
}

std::vector<double> RoundBody::kinks() const {
  std::vector<double> levels{0.0, full_level()};
  const auto take = [&](double x, double r) {
    for (const double side : {-1.0, 1.0}) levels.push_back(level_at(x, side * r));
  };
  take(begin(), radius(begin()));
  for (const ProfilePiece& piece : pieces_) take(end_of(piece), radius_at(piece, end_of(piece)));
  for (double& level : levels) level = std::clamp(level, 0.0, full_level());
  std::sort(levels.begin(), levels.end());
  const auto same = [&](double a, double b) { return b - a < 1e-12 * full_level(); };
  levels.erase(std::unique(levels.begin(), levels.end(), same), levels.end());
  levels.back() = full_level();
  return levels;
}

}  // namespace forecourse::parts
