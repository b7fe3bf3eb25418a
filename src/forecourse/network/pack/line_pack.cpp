#include "forecourse/network/pack/line_pack.h"

#include <numbers>

namespace forecourse::network {

double volume_of(const Conduit& conduit) {
  return 0.25 * std::numbers::pi * conduit.bore * conduit.bore * conduit.length;
}

std::optional<double> compliance_of(const Conduit& conduit, double density, std::optional<double> bulk_modulus) {
  const double volume = volume_of(conduit);
  if (conduit.wave_speed) return volume / (density * *conduit.wave_speed * *conduit.wave_speed);
  if (!bulk_modulus || !conduit.wall || !conduit.modulus) return std::nullopt;
  return volume * (1.0 / *bulk_modulus + conduit.bore / (*conduit.modulus * *conduit.wall));
}

}  // namespace forecourse::network
