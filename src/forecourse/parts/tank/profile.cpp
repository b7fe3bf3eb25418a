#include "forecourse/parts/tank/profile.h"

#include <algorithm>
#include <cmath>

namespace forecourse::parts {
namespace {

constexpr double usual_crown = 1.0;     // diameters
constexpr double usual_knuckle = 0.06;  // diameters
constexpr double usual_ellipse = 0.25;  // diameters
constexpr double close = 1e-9;          // of the diameter: entered sizes that say the same

/// Depth of a crown and its knuckle: the crown's center lies on the axis, the knuckle touches shell and crown.
double dished_depth(double crown, double knuckle, double radius) {
  return crown - std::sqrt((crown - knuckle) * (crown - knuckle) - (radius - knuckle) * (radius - knuckle));
}

std::variant<Head, std::string> dished_sizes(Head head, double diameter) {
  const double r = 0.5 * diameter;
  const bool depth_entered = head.depth > 0.0;
  if (depth_entered && head.dish_radius == 0.0 && head.knuckle_radius == 0.0) {
    if (head.depth > r) return "a dished head is no deeper than half the diameter";
    head.dish_radius = (r * r + head.depth * head.depth) / (2.0 * head.depth);
    return head;
  }
  if (head.dish_radius == 0.0) head.dish_radius = usual_crown * diameter;
  if (head.dish_radius < r)
    return "the dish radius is less than half the diameter, so that its crown does not reach the shell";
  if (depth_entered && head.knuckle_radius == 0.0) {
    const double rest = head.dish_radius - head.depth;
    const double over = head.dish_radius - r;
    const double knuckle =
        over > 0.0 ? (head.dish_radius * head.dish_radius - r * r - rest * rest) / (2.0 * over) : 0.0;
    if (head.depth > head.dish_radius || knuckle < -close * diameter || knuckle > r)
      return "no knuckle joins a crown of this dish radius to the shell at this depth";
    head.knuckle_radius = std::max(0.0, knuckle);
    return head;
  }
  if (head.knuckle_radius == 0.0) head.knuckle_radius = usual_knuckle * diameter;
  if (head.knuckle_radius > r) return "the knuckle radius is more than half the diameter";
  const double depth = dished_depth(head.dish_radius, head.knuckle_radius, r);
  if (depth_entered && std::abs(depth - head.depth) > 1e-3 * diameter)
    return "the depth of the dished head does not follow from its dish and knuckle radius";
  head.depth = depth;
  return head;
}

/// The pieces of a head that bulges toward growing x from 0, from the joint outward.
std::vector<ProfilePiece> outward(const Head& head, double r) {
  const double a = head.depth;
  if (!(a > 0.0)) return {};
  switch (head.kind) {
    case HeadKind::flat:
      return {};
    case HeadKind::conical:
      return {ConePiece{0.0, a, r, 0.0}};
    case HeadKind::elliptical:
    case HeadKind::hemispherical:
      return {ArcPiece{0.0, a, 0.0, a, r, 0.0}};
    case HeadKind::dished:
      break;
  }
  const double crown = head.dish_radius, knuckle = head.knuckle_radius, center = a - crown;
  const ArcPiece ball{0.0, a, center, crown, crown, 0.0};
  if (!(knuckle > 0.0)) return {ball};
  const double joint = crown > knuckle ? std::clamp(-knuckle * center / (crown - knuckle), 0.0, a) : 0.0;
  ArcPiece top = ball;
  top.from = joint;
  return {ArcPiece{0.0, joint, 0.0, knuckle, knuckle, r - knuckle}, top};
}

struct Shifted {
  double by;
  ProfilePiece operator()(ConePiece c) const {
    c.from += by;
    c.to += by;
    return c;
  }
  ProfilePiece operator()(ArcPiece a) const {
    a.from += by;
    a.to += by;
    a.center += by;
    return a;
  }
};

struct Mirrored {
  ProfilePiece operator()(const ConePiece& c) const { return ConePiece{-c.to, -c.from, c.radius_to, c.radius_from}; }
  ProfilePiece operator()(ArcPiece a) const {
    std::swap(a.from, a.to);
    a.from = -a.from;
    a.to = -a.to;
    a.center = -a.center;
    return a;
  }
};

/// The place on the ellipse [half axes from its center], kept from going over its end by rounding.
double along(const ArcPiece& arc, double x) { return std::clamp((x - arc.center) / arc.reach, -1.0, 1.0); }

struct Radius {
  double x;
  double operator()(const ConePiece& c) const {
    const double share = (x - c.from) / (c.to - c.from);
    return std::max(0.0, c.radius_from + (c.radius_to - c.radius_from) * share);
  }
  double operator()(const ArcPiece& a) const {
    const double s = along(a, x);
    return a.offset + a.height * std::sqrt((1.0 - s) * (1.0 + s));
  }
};

struct SurfaceRadius {
  double x;
  double operator()(const ConePiece& c) const {
    return Radius{x}(c)*std::hypot(1.0, (c.radius_to - c.radius_from) / (c.to - c.from));
  }
  double operator()(const ArcPiece& a) const {
    const double s = along(a, x), up = std::sqrt((1.0 - s) * (1.0 + s)), slope = a.height / a.reach * s;
    const double stretch = std::hypot(up, slope);
    return a.height * stretch + (a.offset > 0.0 && up > 0.0 ? a.offset * stretch / up : 0.0);
  }
};

struct Lowest {
  double sine, cosine;
  double operator()(const ConePiece& c) const {
    return std::min(c.from * sine - c.radius_from * cosine, c.to * sine - c.radius_to * cosine);
  }
  double operator()(const ArcPiece& a) const {
    const double along_axis = a.reach * sine, across = a.height * cosine;
    const double norm = std::hypot(along_axis, across);
    const double x = a.center - (norm > 0.0 ? a.reach * along_axis / norm : 0.0);
    const double at = std::clamp(x, a.from, a.to);
    return at * sine - Radius{at}(a)*cosine;
  }
};

struct Crossings {
  double at_zero, slope;
  std::vector<double>& out;

  void take(double x, double from, double to) const {
    if (x > from && x < to) out.push_back(x);
  }
  void operator()(const ConePiece& c) const {
    const double widening = (c.radius_to - c.radius_from) / (c.to - c.from);
    const double line = at_zero - c.from * slope;
    for (const double side : {1.0, -1.0}) {
      const double steep = widening + side * slope;
      if (steep != 0.0) take(c.from + (side * line - c.radius_from) / steep, c.from, c.to);
    }
  }
  void operator()(const ArcPiece& a) const {
    const double steep = a.reach * slope;
    const double norm = std::hypot(steep, a.height);
    for (const double side : {1.0, -1.0}) {
      const double line = side * (at_zero - a.center * slope) - a.offset;
      const double below = (norm - line) * (norm + line);
      if (below < 0.0) continue;
      const double root = a.height * std::sqrt(below);
      for (const double sign : {1.0, -1.0})
        take(a.center + a.reach * ((side * line * steep + sign * root) / norm / norm), a.from, a.to);
    }
  }
};

}  // namespace

std::variant<Head, std::string> head_sizes(const Head& head, double diameter) {
  Head out = head;
  const double r = 0.5 * diameter;
  switch (head.kind) {
    case HeadKind::flat:
      if (head.depth > 0.0) return "a flat head has no depth";
      return out;
    case HeadKind::conical:
      if (!(head.depth > 0.0)) return "the depth of a conical head follows from nothing else";
      return out;
    case HeadKind::elliptical:
      if (out.depth == 0.0) out.depth = usual_ellipse * diameter;
      return out;
    case HeadKind::hemispherical:
      if (out.depth > 0.0 && std::abs(out.depth - r) > 1e-3 * diameter)
        return "a hemispherical head is as deep as half the diameter";
      out.depth = r;
      return out;
    case HeadKind::dished:
      break;
  }
  return dished_sizes(head, diameter);
}

std::vector<ProfilePiece> profile_of(const RoundTank& tank) {
  const double r = 0.5 * tank.diameter;
  std::vector<ProfilePiece> pieces;
  const auto low = std::get<Head>(head_sizes(tank.low, tank.diameter));
  const auto high = std::get<Head>(head_sizes(tank.high, tank.diameter));
  for (const ProfilePiece& piece : outward(low, r)) pieces.insert(pieces.begin(), std::visit(Mirrored{}, piece));
  if (tank.length > 0.0) pieces.push_back(ConePiece{0.0, tank.length, r, r});
  for (const ProfilePiece& piece : outward(high, r)) pieces.push_back(std::visit(Shifted{tank.length}, piece));
  std::erase_if(pieces, [](const ProfilePiece& piece) { return !(end_of(piece) > begin_of(piece)); });
  return pieces;
}

double radius_at(const ProfilePiece& piece, double x) { return std::visit(Radius{x}, piece); }

double surface_radius(const ProfilePiece& piece, double x) { return std::visit(SurfaceRadius{x}, piece); }

double begin_of(const ProfilePiece& piece) {
  return std::visit([](const auto& p) { return p.from; }, piece);
}

double end_of(const ProfilePiece& piece) {
  return std::visit([](const auto& p) { return p.to; }, piece);
}

double lowest_of(const ProfilePiece& piece, double sine, double cosine) {
  return std::visit(Lowest{sine, cosine}, piece);
}

void add_crossings(const ProfilePiece& piece, double at_zero, double slope, std::vector<double>& out) {
  std::visit(Crossings{at_zero, slope, out}, piece);
}

}  // namespace forecourse::parts
