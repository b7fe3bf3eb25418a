#pragma once

#include "forecourse/site/equipment/tank_equipment.h"

namespace forecourse::network {

/// The pipe of a drop tube, for the laws of pipes.
[[nodiscard]] inline site::Pipe pipe_of(const site::DropTube& tube) {
  site::Pipe pipe;
  pipe.where = tube.where;
  pipe.length = tube.length;
  pipe.bore = tube.bore;
  pipe.roughness = tube.roughness;
  return pipe;
}

}  // namespace forecourse::network
