#pragma once

#include "forecourse/studies/flow/spans/set_flows.h"

namespace forecourse::studies {

/// A station with its tanks low and full, and with its filters loaded, in several open sets.
struct PlaceSpans {
  std::vector<SetFlows> low;
  std::vector<SetFlows> full;
  std::vector<SetFlows> loaded;
};

[[nodiscard]] PlaceSpans solve_place_spans(const site::Site& site, const network::StationNetwork& network,
                                           const HoseSets& sets);

/// The rows of one set: each system's level and filters, and its fuel temperature where that has no span.
/// \param likely the station as entered, in that set
[[nodiscard]] std::vector<FlowSpan> place_spans(const site::Site& site, const network::StationNetwork& network,
                                                const SetFlows& likely, const PlaceSpans& solved, std::size_t set);

}  // namespace forecourse::studies
