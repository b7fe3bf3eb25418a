#pragma once

#include "forecourse/studies/flow/spans/ranges.h"

namespace forecourse::studies {

/// The rows of one set: how far each value alone moves each system that it moves.
/// \param moves per value, set to true where it moves a flow
[[nodiscard]] std::vector<FlowSpan> value_spans(const std::vector<site::UncertainValue>& values,
                                                const OneAtATime& singles, std::size_t set,
                                                const network::StationNetwork& network, std::vector<bool>& moves);

}  // namespace forecourse::studies
