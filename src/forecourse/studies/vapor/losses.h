#pragma once

#include "forecourse/studies/vapor/vapor.h"

namespace forecourse::studies {

/// How the tanks of a product are filled.
struct FillingHere {
  std::optional<bool> submerged;     ///< every fill has a drop tube; empty: not known
  std::optional<bool> balanced;      ///< vapor goes back to the tanker
  std::optional<double> efficiency;  ///< of that [1], entered or tested
};

/// Every way in which vapor of a gasoline is lost, and their sums.
void tell_losses(const FillingHere& filling, ProductVapor& product);

}  // namespace forecourse::studies
