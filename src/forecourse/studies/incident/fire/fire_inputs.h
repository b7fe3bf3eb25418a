#pragma once

#include <optional>

#include "forecourse/parts/fire/burning_fuels.h"
#include "forecourse/studies/incident/setup/inputs.h"

namespace forecourse::studies {

struct Scene;

/// What a fire under a dispenser is computed with. What is neither entered nor follows from published laws is empty.
struct FireInputs {
  std::optional<parts::BurningFuel> fuel;  ///< row of the published table that stands for the product
  std::optional<double> diameter;          ///< [m] of the burning pool: as entered, else as wide as the sump
  std::optional<double> gas_temperature;   ///< [K] at the link: as entered, else on the axis of the fire
  std::optional<double> gas_speed;         ///< [m/s]
  std::optional<double> response_index;    ///< [(m s)^0.5]
  double conduction = 0.0;                 ///< [(m/s)^0.5]
  std::optional<double> rated;             ///< [K]
  double start = 293.15;                   ///< [K]
  double burning = 0.0;                    ///< [m/s] volume per area and time, in a deep pool
};
[[nodiscard]] FireInputs fire_inputs(const Scene& scene, Inputs& inputs);

}  // namespace forecourse::studies
