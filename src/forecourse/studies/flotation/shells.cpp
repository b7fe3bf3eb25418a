#include "forecourse/studies/flotation/shells.h"

#include <array>
#include <string_view>
#include <utility>
#include <variant>

#include "forecourse/parts/tank/profile.h"

namespace forecourse::studies {
namespace {

template <class Q>
std::optional<double> si(const site::Maybe<Q>& entered) {
  return entered ? std::optional(entered->likely.si()) : std::nullopt;
}

parts::HeadKind head_kind(std::string_view word) {
  constexpr std::array<std::pair<std::string_view, parts::HeadKind>, 4> kinds{
      {{"dished", parts::HeadKind::dished},
       {"elliptical", parts::HeadKind::elliptical},
       {"hemispherical", parts::HeadKind::hemispherical},
       {"conical", parts::HeadKind::conical}}};
  for (const auto& [name, kind] : kinds) {
    if (word == name) return kind;
  }
  return parts::HeadKind::flat;
}

/// The head that lies a wall further out; without sizes they follow from the kind and the diameter.
parts::Head head(const site::TankShape& shape, double wall) {
  parts::Head out;
  out.kind = head_kind(shape.heads.text);
  if (const auto depth = si(shape.head_depth)) out.depth = *depth + wall;
  if (const auto radius = si(shape.dish_radius)) out.dish_radius = *radius + wall;
  return out;
}

std::optional<parts::TankVolume> level_cylinder(double diameter, double length, const parts::Head& head) {
  const parts::RoundTank tank{diameter, length, head, head, 0.0};
  if (parts::tank_problem(tank)) return std::nullopt;
  return parts::TankVolume(tank);
}

}  // namespace

std::optional<Shells> shells_of(const site::TankShape& shape) {
  const std::optional<double> diameter = si(shape.outside_diameter), inside = si(shape.inside_diameter);
  const std::optional<double> length = si(shape.length);
  if (shape.kind.text != "horizontal-cylinder" || !diameter || !length) return std::nullopt;
  const double wall = inside ? 0.5 * (*diameter - *inside) : 0.0;
  const parts::Head outer = head(shape, wall);
  const bool flat = outer.kind == parts::HeadKind::flat;
  const double outer_length = *length + (flat ? 2.0 * wall : 0.0);
  std::optional<parts::TankVolume> outside = level_cylinder(*diameter, outer_length, outer);
  if (!outside) return std::nullopt;
  const auto sizes = parts::head_sizes(outer, *diameter);  // fits, or there were no outside
  const double bulge = flat ? 0.0 : std::get<parts::Head>(sizes).depth;
  Shells out{*diameter, outer_length, bulge, wall, *outside, {}};
  if (inside) out.inside = level_cylinder(*inside, *length, head(shape, 0.0));
  return out;
}

}  // namespace forecourse::studies
