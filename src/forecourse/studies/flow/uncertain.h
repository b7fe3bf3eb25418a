#pragma once

#include <vector>

#include "forecourse/site/site.h"

namespace forecourse::studies {

/// Places of the uncertain values that can move a flow: all but those of emergency stops, interlocks, deliveries,
/// operations and what the flow study is asked for.
[[nodiscard]] std::vector<SourceSpan> uncertain_in_flow(const site::Site& site);

}  // namespace forecourse::studies
