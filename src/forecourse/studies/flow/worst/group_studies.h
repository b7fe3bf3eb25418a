#pragma once

#include "forecourse/network/piping_system.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::studies {

/// Fills in the ladders and worst states of every group of hoses that a running pump feeds, by the result's options.
void study_groups(const site::Site& site, const network::StationNetwork& network, FlowResult& result,
                  const Context& context);

}  // namespace forecourse::studies
