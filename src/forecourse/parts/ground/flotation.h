#pragma once

#include <optional>
#include <span>

namespace forecourse::parts {

/// Something in the ground that weighs, and that water lifts as far as it stands in it. See docs/theory/flotation.md.
struct Body {
  double weight = 0.0;     ///< in air, soil below water saturated [N], >= 0
  double submerged = 0.0;  ///< volume of its outside below the water [m3], >= 0
  double room = 0.0;       ///< part of `submerged` that is empty inside [m3]; 0 for soil and concrete
  bool lifted = false;     ///< a tank or a sump: what the water lifts; else it holds down
};

/// Weight less the weight of the water displaced.
/// \param water unit weight of the water [N/m3]
/// \return [N], negative where the body would float
/// \error none
/// \source closed form
[[nodiscard]] double submerged_weight(const Body& body, double water);

/// What the water lifts with: the weight of the water that the lifted bodies displace.
/// \param water unit weight of the water [N/m3]
/// \return [N]
/// \error none
/// \source closed form; [flotation_permit_1999, pages 6 and 8]
[[nodiscard]] double buoyant_force(std::span<const Body> bodies, double water);

/// What holds down: the lifted bodies by their weight in air, all others by their submerged weight.
/// \param water unit weight of the water [N/m3]
/// \return [N]
/// \error none
/// \source [flotation_permit_1999, pages 6 and 8]
[[nodiscard]] double hold_down_force(std::span<const Body> bodies, double water);

/// How a safety factor against flotation is defined. The three differ by a factor of two and more on the same ground,
/// so that a factor says nothing without its definition.
enum class FactorKind {
  hold_down,  ///< weight in air of what is lifted and submerged weight of the rest, over the water that the first
              ///< displace
  total,      ///< all weights in air, soil below water saturated, over the water displaced by all
  submerged,  ///< all submerged weights, over the water that the empty room displaces
};

/// Safety factor against flotation by one of three definitions.
/// \param water unit weight of the water [N/m3], > 0
/// \return [1]; nothing where nothing is lifted, or there is no empty room under water
/// \error none; friction and cohesion are left out, so that the ground holds somewhat more
/// \source [flotation_permit_1999, pages 6 and 8] for hold-down; [vault_forum, worked vault] for all three
[[nodiscard]] std::optional<double> flotation_factor(std::span<const Body> bodies, double water, FactorKind kind);

/// Weight that must be added, where the water does not lift it, to reach a factor defined by hold-down.
/// \param factor wanted [1], > 0
/// \return [N]; negative: there is that much more than needed
/// \error none
/// \source [fema_p259, appendix C, example C7]
[[nodiscard]] double missing_weight(std::span<const Body> bodies, double water, double factor);

}  // namespace forecourse::parts
