#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/default_used.h"
#include "forecourse/site/site.h"

namespace forecourse::network {

/// What the steady network must know of a liquid.
struct Fluid {
  double density = 0.0;            ///< [kg/m3] at the flowing temperature
  double dynamic_viscosity = 0.0;  ///< [Pa s] at the flowing temperature
  double temperature = 0.0;        ///< [K]; NaN where neither known nor needed
};

/// The flowing liquid of a product.
///
/// \return empty if the product is unknown or a property can be neither taken from the file nor from published
///         data; `problems` then says which and what to enter.
/// \error that of the entered values and of docs/theory/volume-correction.md.
[[nodiscard]] std::optional<Fluid> flowing_fluid(const site::Site& site, const std::string& product,
                                                 std::vector<DefaultUsed>& defaults, std::vector<Diagnostic>& problems);

}  // namespace forecourse::network
