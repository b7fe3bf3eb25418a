#pragma once

#include "forecourse/network/piping_system.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/flow/rest/rest_results.h"

namespace forecourse::studies {

/// The stretches of conduit of a system with volume and compliance, in the order of its runs.
[[nodiscard]] std::vector<RestStretch> stretches_of(const site::Site& site, const network::PipingSystem& system);

}  // namespace forecourse::studies
