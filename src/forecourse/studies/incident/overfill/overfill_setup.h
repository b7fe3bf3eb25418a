#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/default_used.h"
#include "forecourse/network/tanks/tank_inside.h"
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
  Case everything;  ///< with every barrier that is there
  std::optional<network::TankInside> inside;
  double level = 0.0;            ///< [m] of the liquid when the drop begins
  double hose_bore = 0.0;        ///< [m]; 0: not entered
  bool container_leaks = false;  ///< the spill container is said not to be tight
  std::vector<std::string> warnings;
  std::vector<DefaultUsed> defaults;  ///< of the pipes between truck and tank
};

/// \param known the inside of the tank, where it was found before
[[nodiscard]] Setup set_up(const site::Site& site, const site::IncidentRequest& request, Inputs& inputs,
                           const std::optional<network::TankInside>& known = {});

/// Inside, unless it is known, and what is in it: the first part of a setup. What is missing becomes its problem.
void set_tank(const site::Site& site, Inputs& inputs, Setup& setup);

/// Overfill valve, alarm, driver and spill container: the last part of a setup.
void set_barriers(const site::IncidentRequest& request, Inputs& inputs, Setup& setup);

/// The valve, the alarm and the driver, and whether each is assured.
[[nodiscard]] std::vector<BarrierState> barriers_of(const Setup& setup);

}  // namespace forecourse::studies::overfilling
