#pragma once

#include <string>

#include "forecourse/site/pipe.h"

namespace forecourse::lesson {

/// The same loss so many times over, at every flow.
/// \source closed form
[[nodiscard]] site::EnteredLoss times(double factor, const site::EnteredLoss& loss);

/// A loss as it stands in a site file, to the last bit.
[[nodiscard]] std::string loss_text(const site::EnteredLoss& loss);

}  // namespace forecourse::lesson
