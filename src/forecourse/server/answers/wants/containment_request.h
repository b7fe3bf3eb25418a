#pragma once

#include "forecourse/server/answers/wants/want_reader.h"
#include "forecourse/studies/containment/containment.h"

namespace forecourse::server {

/// The members "inflows" and "sensor_dead_for" of a want.
[[nodiscard]] studies::ContainmentOptions read_containment_want(WantReader& want);

}  // namespace forecourse::server
