#pragma once

#include "forecourse/studies/incident/setup/make_case.h"

namespace forecourse::studies {

/// What stands at the place of an incident, so that only steps for it are listed.
struct EquipmentHere {
  bool has_valve = false;  ///< a shear valve at one of the ends at least
  bool has_link = false;   ///< a fusible link on it
  bool has_riser = false;
  bool has_detector = false;
  bool has_sump = false;
  bool has_sensor = false;          ///< in that sump
  bool has_interlock = false;       ///< by which that sensor stops a pump
  bool has_stop = false;            ///< the site has an emergency stop
  bool may_have_bar = false;        ///< a stabilizer bar holds the valves, or it is not entered whether
  bool may_have_two_walls = false;  ///< the line has two walls, or it is not entered whether
  const site::Hose* hose = nullptr;
  const site::Tank* tank = nullptr;  ///< of an overfill
};

[[nodiscard]] EquipmentHere equipment_here(const Scene& scene);

}  // namespace forecourse::studies
