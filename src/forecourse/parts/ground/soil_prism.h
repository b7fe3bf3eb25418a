#pragma once

#include <span>

namespace forecourse::parts {

/// The soil that a horizontal cylinder would lift: between two planes that rise from a level along the cylinder, over
/// its length; the ends are upright. All depths count from grade, downward. See docs/theory/flotation.md.
struct SoilPrism {
  double length = 0.0;  ///< along the cylinder [m], > 0
  double width = 0.0;   ///< at its base: the cylinder's outside diameter [m], > 0
  double slope = 0.0;   ///< of the planes, horizontal for vertical [1], >= 0; 0: upright
  double base = 0.0;    ///< depth from which the planes rise [m], > 0
};

/// Something with upright walls that stands where the prism would be.
struct TakenOut {
  double area = 0.0;  ///< seen from above [m2]
  double from = 0.0;  ///< depth of its top [m]
  double to = 0.0;    ///< depth of its underside [m]
};

/// A layer between two depths.
struct Layer {
  double from = 0.0;  ///< [m]
  double to = 0.0;    ///< [m]
};

/// Volume between the planes of a prism in a layer, with all that stands in it.
/// \param layer depths [m]; what lies above grade or below the base is left out
/// \return [m3]
/// \error none for planes
/// \source closed form; the planes from [flotation_permit_1999, page 6]
[[nodiscard]] double prism_volume(const SoilPrism& prism, Layer layer);

/// Volume that lies above the layer's lower and below its upper depth, of what was taken out.
/// \return [m3]
/// \error none
/// \source closed form
[[nodiscard]] double taken_volume(std::span<const TakenOut> taken, Layer layer);

/// Volume of a level cylinder of the prism's width and length between two depths.
/// \param crown depth of its highest line [m]
/// \return [m3]
/// \error rounding
/// \source closed form
[[nodiscard]] double cylinder_volume(const SoilPrism& prism, double crown, Layer layer);

}  // namespace forecourse::parts
