#pragma once

#include <optional>
#include <string>

#include "forecourse/site/product.h"

namespace forecourse::network {

/// How the volume of a product changes with its temperature, and by which method.
struct VolumeChange {
  std::optional<double> factor;  ///< volume at the second temperature over that at the first [1]
  std::string words;             ///< the method, or what to enter
};

/// \param from [K]
/// \param to   [K]
/// \source [api_11_1_2004, 11.1.6.1] where the product has a density that it holds for; else the entered expansion
/// \error that of docs/theory/volume-correction.md
[[nodiscard]] VolumeChange volume_change(const site::Product& product, double from, double to);

}  // namespace forecourse::network
