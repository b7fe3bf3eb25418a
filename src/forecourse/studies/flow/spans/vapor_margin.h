#pragma once

#include <vector>

#include "forecourse/network/solve.h"
#include "forecourse/studies/flow/spans/span_results.h"

namespace forecourse::studies {

/// How far the fuel stays from boiling at the inlet of each pump and where its pressure is lowest on the way, at each
/// end of its temperature and with the lowest pressure of the air.
///
/// At a pump's inlet: air + density * g * (surface - inlet); what the inlet itself loses is not counted. On the way:
/// air + the lowest gauge pressure of the places whose elevation is entered, the nozzle's outlet (the air) among them.
/// \param state of the open set asked first
/// \source common practice, no source
[[nodiscard]] std::vector<VaporMargin> vapor_margins(const site::Site& site, const network::StationNetwork& network,
                                                     const network::StationState& state);

}  // namespace forecourse::studies
