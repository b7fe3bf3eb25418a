#pragma once

#include "forecourse/studies/incident/overfill/overfill.h"
#include "forecourse/studies/incident/overfill/overfill_case.h"

namespace forecourse::studies::overfilling {

/// What an overfill is computed from.
struct Setup {
  std::string problem;  ///< what is missing
  const site::Tank* tank = nullptr;
  const site::Fill* fill = nullptr;
  const site::Delivery* delivery = nullptr;
  const site::TruckCompartment* compartment = nullptr;
  std::string product;
  Case everything;         ///< with every barrier that is there
  double hose_bore = 0.0;  ///< [m]; 0: not entered
  std::vector<std::string> warnings;
};

[[nodiscard]] Setup set_up(const site::Site& site, const site::IncidentRequest& request, Inputs& inputs);

/// The valve, the alarm and the driver, and whether each is assured.
[[nodiscard]] std::vector<BarrierState> barriers_of(const Setup& setup);

}  // namespace forecourse::studies::overfilling
