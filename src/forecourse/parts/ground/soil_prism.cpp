#include "forecourse/parts/ground/soil_prism.h"

#include <algorithm>

#include "forecourse/parts/tank/circle_segment.h"

namespace forecourse::parts {

double prism_volume(const SoilPrism& prism, Layer layer) {
  const double low = std::clamp(prism.base - layer.to, 0.0, prism.base);  // heights above the base
  const double high = std::clamp(prism.base - layer.from, 0.0, prism.base);
  if (high <= low) return 0.0;
  const double mean_width = prism.width + prism.slope * (low + high);  // two planes, each at its mean
  return prism.length * mean_width * (high - low);
}

double taken_volume(std::span<const TakenOut> taken, Layer layer) {
  double sum = 0.0;
  for (const TakenOut& one : taken) {
    sum += one.area * std::max(0.0, std::min(one.to, layer.to) - std::max(one.from, layer.from));
  }
  return sum;
}

double cylinder_volume(const SoilPrism& prism, double crown, Layer layer) {
  const double radius = 0.5 * prism.width, axis = crown + radius;
  const double above = segment_area(radius, axis - layer.from) - segment_area(radius, axis - layer.to);
  return prism.length * std::max(0.0, above);
}

}  // namespace forecourse::parts
