#pragma once

#include "forecourse/network/solve.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::studies {

/// Finds what moves the flows and how far: every uncertain value alone, fuel temperature, tank levels, loaded filters,
/// and the margin over the vapor pressure; and puts the range of each flow into the states and summaries.
///
/// \param result with states and hoses as found with likely values; gets `spans`, and `low` and `high` of each flow
/// \param solver of `network`, which was built from `site`
void add_spans(const site::Site& site, const network::StationNetwork& network, network::StationSolver& solver,
               FlowResult& result, const Context& context);

}  // namespace forecourse::studies
