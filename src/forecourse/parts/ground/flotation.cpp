#include "forecourse/parts/ground/flotation.h"

namespace forecourse::parts {
namespace {

/// What is held against what, of one definition.
struct Balance {
  double down = 0.0;  ///< [N]
  double up = 0.0;    ///< [N]
};

Balance balance(std::span<const Body> bodies, double water, FactorKind kind) {
  Balance out;
  for (const Body& body : bodies) {
    switch (kind) {
      case FactorKind::hold_down:
        out.down += body.lifted ? body.weight : submerged_weight(body, water);
        out.up += body.lifted ? water * body.submerged : 0.0;
        break;
      case FactorKind::total:
        out.down += body.weight;
        out.up += water * body.submerged;
        break;
      case FactorKind::submerged:
        out.down += body.weight - water * (body.submerged - body.room);
        out.up += water * body.room;
        break;
    }
  }
  return out;
}

}  // namespace

double submerged_weight(const Body& body, double water) { return body.weight - water * body.submerged; }

double buoyant_force(std::span<const Body> bodies, double water) {
  return balance(bodies, water, FactorKind::hold_down).up;
}

double hold_down_force(std::span<const Body> bodies, double water) {
  return balance(bodies, water, FactorKind::hold_down).down;
}

std::optional<double> flotation_factor(std::span<const Body> bodies, double water, FactorKind kind) {
  const Balance both = balance(bodies, water, kind);
  if (!(both.up > 0.0)) return std::nullopt;
  return both.down / both.up;
}

double missing_weight(std::span<const Body> bodies, double water, double factor) {
  return factor * buoyant_force(bodies, water) - hold_down_force(bodies, water);
}

}  // namespace forecourse::parts
