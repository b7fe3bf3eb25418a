#pragma once

#include "forecourse/studies/delivery/delivery.h"
#include "forecourse/studies/delivery/setup/setup.h"

namespace forecourse::studies::delivering {

/// Runs a delivery and tells it.
[[nodiscard]] DeliveryRun tell_run(const Setup& setup, bool charts, const Context& context);

}  // namespace forecourse::studies::delivering
