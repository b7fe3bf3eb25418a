#include "forecourse/studies/tank/outline.h"

#include <cmath>
#include <utility>

#include "forecourse/parts/tank/panel_integral.h"
#include "forecourse/parts/tank/profile.h"
#include "forecourse/parts/tank/round_body.h"

namespace forecourse::studies {
namespace {

constexpr int points_of_an_arc = 12;

/// Places along the axis with the radius there, from the low end to the high.
std::vector<std::pair<double, double>> half_outline(const parts::RoundTank& tank) {
  const std::vector<parts::ProfilePiece> pieces = parts::profile_of(tank);
  std::vector<std::pair<double, double>> out;
  for (const parts::ProfilePiece& piece : pieces) {
    const double from = parts::begin_of(piece), to = parts::end_of(piece);
    const int steps = std::holds_alternative<parts::ArcPiece>(piece) ? points_of_an_arc : 1;
    for (int i = 0; i <= steps; ++i) {
      const double x = parts::SoftEnds{from, to}.at(static_cast<double>(i) / steps);
      out.emplace_back(x, parts::radius_at(piece, x));
    }
  }
  return out;
}

}  // namespace

TankPoint long_section_point(const network::TankInside& inside, double x, double above) {
  if (const auto* round = std::get_if<parts::RoundTank>(&inside.volume.shape())) {
    const parts::RoundBody body(*round);
    return {inside.start + x * std::cos(round->incline) - above * std::sin(round->incline), body.level_at(x, above)};
  }
  if (const auto* box = std::get_if<parts::BoxTank>(&inside.volume.shape()))
    return {inside.start + x * std::cos(box->pitch) - above * std::sin(box->pitch), inside.volume.level_at({x}, above)};
  return {inside.start + x, above};
}

std::vector<TankPoint> long_section(const network::TankInside& inside) {
  std::vector<TankPoint> out;
  if (const auto* round = std::get_if<parts::RoundTank>(&inside.volume.shape())) {
    const auto half = half_outline(*round);
    for (const auto& [x, r] : half) out.push_back(long_section_point(inside, x, -r));
    for (auto at = half.rbegin(); at != half.rend(); ++at)
      out.push_back(long_section_point(inside, at->first, at->second));
  } else if (const auto* box = std::get_if<parts::BoxTank>(&inside.volume.shape())) {
    for (const auto& [x, up] : {std::pair(0.0, 0.0), std::pair(box->length, 0.0), std::pair(box->length, box->height),
                                std::pair(0.0, box->height)})
      out.push_back(long_section_point(inside, x, up));
  }
  return out;
}

Stick stick_at(const network::TankInside& inside, double along) {
  const double x = inside.place(along).along;
  if (const auto* round = std::get_if<parts::RoundTank>(&inside.volume.shape())) {
    const parts::RoundBody body(*round);
    if (body.steep())
      return {long_section_point(inside, body.begin(), 0.0), long_section_point(inside, body.end(), 0.0),
              body.end() - body.begin()};
    const double r = body.radius(x);
    return {long_section_point(inside, x, -r), long_section_point(inside, x, r), 2.0 * r};
  }
  if (const auto* box = std::get_if<parts::BoxTank>(&inside.volume.shape()))
    return {long_section_point(inside, x, 0.0), long_section_point(inside, x, box->height), box->height};
  return {{along, 0.0}, {along, inside.volume.full_level()}, inside.volume.full_level()};
}

}  // namespace forecourse::studies
