#pragma once

#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/studies/meter/meter.h"

namespace forecourse::checks {

/// The last proving of each meter against every limit of its state: the worst of its draws, each limit in its own
/// form. A limit from memory decides nothing.
[[nodiscard]] std::vector<Finding> check_meter(const studies::MeterResult& result);

}  // namespace forecourse::checks
