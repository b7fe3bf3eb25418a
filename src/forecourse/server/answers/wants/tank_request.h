#pragma once

#include "forecourse/server/answers/wants/want_reader.h"
#include "forecourse/studies/tank/tank.h"

namespace forecourse::server {

/// The options of the tank study out of a want; what is wrong is kept by the reader.
[[nodiscard]] studies::TankOptions read_tank_want(WantReader& want);

}  // namespace forecourse::server
